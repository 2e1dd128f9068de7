//! Which standard bolt circle was measured?

use crate::literal;
use crate::units::{Length, mm};
use crate::wheel::{BoltCircle, drilling::MeasuredCircle};

/// A standard bolt circle, and how far the measured one is from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    circle: BoltCircle,
    off: Length,
    compatible: bool,
}

impl Candidate {
    /// The standard bolt circle that it is taken for.
    pub const fn circle(&self) -> BoltCircle {
        self.circle
    }

    /// The measured diameter less the standard one.
    pub const fn off(&self) -> Length {
        self.off
    }

    /// Whether that is within the worst uncertainty of the measurement.
    pub const fn is_compatible(&self) -> bool {
        self.compatible
    }
}

/// The bolt circles in use with as many holes as were measured, the nearest first.
///
/// Only those that are [compatible](Candidate::is_compatible) with the measurement can be it: if there are
/// two, measure better, with holes further apart; never take the likelier one. If there is none, the hole
/// count or the measurement is wrong, or the circle is not in [`BoltCircle::STANDARD`].
///
/// ```
/// use beadseat::{Toleranced, units::mm, wheel::drilling::{Identified, MeasuredCircle}};
/// let read = |chord, off| MeasuredCircle::between_centres(5, 1, Toleranced::within(mm(chord), mm(off)));
/// // Neighbours 66.5 mm apart, with a tape that is good for 1 mm: two patterns remain.
/// let rough = Identified::from(read(66.5, 1.0)?);
/// let circles: Vec<_> = rough.compatible().map(|c| c.circle().to_string()).collect();
/// assert_eq!(circles, ["5x112", "5x114.3"]);
/// assert!(rough.is_ambiguous());
/// // With a caliper that is good for 0.1 mm, one remains.
/// let fine = Identified::from(read(65.85, 0.1)?);
/// assert_eq!(fine.only().map(|c| c.circle()), Some("5x112".parse()?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Identified {
    measured: MeasuredCircle,
}

impl From<MeasuredCircle> for Identified {
    fn from(measured: MeasuredCircle) -> Self {
        Self { measured }
    }
}

impl Identified {
    /// The circle as it was measured.
    pub const fn measured(&self) -> MeasuredCircle {
        self.measured
    }

    fn candidate(&self, circle: BoltCircle) -> Candidate {
        let diameter = circle.diameter();
        let off = self.measured.diameter() - diameter;
        Candidate { circle, off, compatible: self.measured.includes(diameter) }
    }

    /// Every standard circle with that many holes, the nearest first.
    ///
    /// ```
    /// use beadseat::{Toleranced, units::mm, wheel::drilling::{Identified, MeasuredCircle}};
    /// let measured = MeasuredCircle::between_centres(4, 2, Toleranced::within(mm(103.0), mm(0.2)))?;
    /// let nearest = Identified::from(measured).nearest_first().next().ok_or("no circle of four holes")?;
    /// assert_eq!(nearest.circle().to_string(), "4x101.6");
    /// assert!(!nearest.is_compatible());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn nearest_first(&self) -> impl Iterator<Item = Candidate> + use<> {
        let this = *self;
        let of_count = standard_with(this.measured.count());
        // From the measured diameter outward, on both sides.
        let above = of_count.partition_point(|circle| circle.diameter() < this.measured.diameter());
        let (smaller, larger) = of_count.split_at(above);
        let mut smaller = smaller.iter().rev().map(move |&circle| this.candidate(circle)).peekable();
        let mut larger = larger.iter().map(move |&circle| this.candidate(circle)).peekable();
        core::iter::from_fn(move || match (smaller.peek(), larger.peek()) {
            (Some(a), Some(b)) if a.off <= -b.off => smaller.next(),
            (Some(_), None) => smaller.next(),
            _ => larger.next(),
        })
    }

    /// Those that can be it, the nearest first.
    pub fn compatible(&self) -> impl Iterator<Item = Candidate> + use<> {
        self.nearest_first().take_while(Candidate::is_compatible)
    }

    /// The circle, if only one can be it.
    pub fn only(&self) -> Option<Candidate> {
        let mut compatible = self.compatible();
        compatible.next().filter(|_| compatible.next().is_none())
    }

    /// Whether more than one can be it.
    pub fn is_ambiguous(&self) -> bool {
        self.compatible().nth(1).is_some()
    }
}

macro_rules! standard {
    ($($circle:literal)*) => {
        impl BoltCircle {
            /// The bolt circles in use on road vehicles, by number of holes and then by diameter. Those of
            /// 4.25, 4.5, 4.75, 5, 5.5 and 6.5 in are among them in millimetres. Source:
            /// [`Citation::BOLT_CIRCLES`](crate::Citation::BOLT_CIRCLES).
            ///
            /// ```
            /// use beadseat::wheel::BoltCircle;
            /// assert!(BoltCircle::STANDARD.contains(&"5x4.5in".parse()?));
            /// # Ok::<(), beadseat::ParseError>(())
            /// ```
            pub const STANDARD: &[Self] = &[$(literal!(BoltCircle, $circle),)*];
        }
    };
}

standard! {
    "3x98" "3x112"
    "4x95.25" "4x98" "4x100" "4x101.6" "4x108" "4x110" "4x112" "4x114.3" "4x130" "4x140" "4x165.1"
    "5x98" "5x100" "5x105" "5x107.95" "5x108" "5x110" "5x112" "5x114.3" "5x115" "5x118" "5x120" "5x120.65"
    "5x127" "5x130" "5x135" "5x139.7" "5x150" "5x160" "5x165.1" "5x205"
    "6x114.3" "6x115" "6x120" "6x125" "6x127" "6x130" "6x132" "6x135" "6x139.7" "6x140" "6x170" "6x180"
    "6x205" "6x222.25" "6x245"
    "7x150"
    "8x165.1" "8x170" "8x180" "8x200" "8x210" "8x225" "8x275"
    "9x160"
    "10x225" "10x285.75" "10x335"
}

/// The standard circles of a number of holes, by diameter.
fn standard_with(count: u8) -> &'static [BoltCircle] {
    let from = |count| BoltCircle::STANDARD.partition_point(|circle| circle.count() < count);
    BoltCircle::STANDARD.get(from(count)..from(count + 1)).unwrap_or(&[])
}

impl BoltCircle {
    /// Where the circle stands in [`BoltCircle::STANDARD`], if it does.
    ///
    /// ```
    /// use beadseat::wheel::BoltCircle;
    /// assert!(BoltCircle::parse("5x112")?.is_standard());
    /// assert!(!BoltCircle::parse("5x113")?.is_standard());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn is_standard(&self) -> bool {
        standard_with(self.count()).contains(self)
    }

    /// The standard circles that this one can be taken for: as many holes, and a diameter that differs, but
    /// by no more than 5 mm. The nearest first.
    ///
    /// ```
    /// use beadseat::wheel::BoltCircle;
    /// let near: Vec<_> = BoltCircle::parse("5x112")?.near_misses().map(|m| m.to_string()).collect();
    /// assert_eq!(near, ["5x110", "5x114.3", "5x115", "5x108", "5x107.95"]);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn near_misses(&self) -> impl Iterator<Item = Self> + use<> {
        let this = *self;
        let measured = MeasuredCircle::exactly(this);
        Identified::from(measured)
            .nearest_first()
            .take_while(|candidate| candidate.off.abs() <= NEAR_MISS + mm(1e-9))
            .map(|candidate| candidate.circle)
            .filter(move |circle| *circle != this)
    }
}

/// Circles of one hole count that differ by no more than this can be taken for each other.
pub(crate) const NEAR_MISS: Length = mm(5.0);
