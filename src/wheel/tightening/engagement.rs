//! How much of a thread holds.

use crate::units::{self, Length, Ratio, in_mm, in_mm2};
use crate::wheel::Thread;
use crate::{OutOfRange, Toleranced, literal};

/// The length of thread of a bolt in its hub, or of a nut on its stud, once the wheel is in between.
///
/// `E = usable length − (disc thickness + spacer)`. The usable length is measured from the seat of a bolt
/// to the end of its thread, or from the hub face to the end of a stud's thread; the disc thickness from
/// the seat in the wheel to its mounting face. Behind a stud's nut only the threads inside the nut hold.
///
/// ```
/// use beadseat::{Toleranced, literal, units::{mm, ratio}, wheel::{tightening::Engagement, Thread}};
/// let within = |length| Toleranced::within(mm(length), mm(0.5));
/// let thread = literal!(Thread, "M14x1.5");
/// let bolt = Engagement::new(thread, within(27.0), within(15.0), Toleranced::exact(mm(5.0)))?;
/// assert!((bolt.turns().nominal() - ratio(14.0 / 3.0)).abs() < ratio(1e-9));
/// assert!(bolt.turns().max() < thread.min_turns().ok_or("not in the chart")?); // too short
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engagement {
    thread: Thread,
    length: Toleranced<Length>,
}

fn checked_disc(disc: Toleranced<Length>) -> Result<Toleranced<Length>, OutOfRange> {
    disc.checked(|mm| OutOfRange::check("disc thickness", in_mm(mm), "mm", 1.0, 200.0).map(units::mm))
}

fn checked_spacer(spacer: Toleranced<Length>) -> Result<Toleranced<Length>, OutOfRange> {
    spacer.checked(|mm| OutOfRange::check("spacer", in_mm(mm), "mm", 0.0, 200.0).map(units::mm))
}

impl Engagement {
    /// From the usable length of the thread, the thickness of the disc and that of a spacer: 0 for none.
    ///
    /// # Errors
    /// A usable length outside 1 to 400 mm, a disc outside 1 to 200 mm, a spacer outside 0 to 200 mm.
    ///
    /// ```
    /// use beadseat::{Toleranced, literal, units::mm, wheel::{tightening::Engagement, Thread}};
    /// let [usable, disc, spacer] = [27.0, 15.0, -5.0].map(|length| Toleranced::exact(mm(length)));
    /// assert!(Engagement::new(literal!(Thread, "M14x1.5"), usable, disc, spacer).is_err());
    /// ```
    pub fn new(
        thread: Thread,
        usable_length: Toleranced<Length>,
        disc_thickness: Toleranced<Length>,
        spacer: Toleranced<Length>,
    ) -> Result<Self, OutOfRange> {
        let usable = usable_length
            .checked(|mm| OutOfRange::check("usable length", in_mm(mm), "mm", 1.0, 400.0).map(units::mm))?;
        let between = checked_disc(disc_thickness)? + checked_spacer(spacer)?;
        Ok(Self { thread, length: usable - between })
    }

    /// The thread that is engaged.
    pub const fn thread(&self) -> Thread {
        self.thread
    }

    /// The length engaged; negative by as much as the thread does not even reach.
    pub const fn length(&self) -> Toleranced<Length> {
        self.length
    }

    /// The turns from the first thread to tight, the length over the pitch.
    pub fn turns(&self) -> Toleranced<Ratio> {
        self.length.map(|length| length / self.thread.pitch_length())
    }

    /// What is left between the end of the bolt's thread and that of a blind hole in the hub, whose thread
    /// is so deep from the hub face. Negative, the bolt bottoms: it is tight without clamping the wheel. A
    /// plain tip of the bolt needs room of its own.
    ///
    /// ```
    /// use beadseat::{Toleranced, literal, units::mm, wheel::{tightening::Engagement, Thread}};
    /// let [usable, disc, none, depth] = [32.0, 11.0, 0.0, 20.0].map(|length| Toleranced::exact(mm(length)));
    /// let bolt = Engagement::new(literal!(Thread, "M12x1.5"), usable, disc, none)?;
    /// assert!(bolt.room_in(depth).nominal() < mm(0.0)); // 21 mm do not go into 20
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn room_in(&self, thread_depth: Toleranced<Length>) -> Toleranced<Length> {
        thread_depth - self.length
    }

    /// The usable length that a fastener needs to engage as much behind another disc and spacer:
    /// `E + disc thickness + spacer`.
    ///
    /// # Errors
    /// A disc outside 1 to 200 mm, a spacer outside 0 to 200 mm.
    ///
    /// ```
    /// use beadseat::{Toleranced, literal, units::mm, wheel::{tightening::Engagement, Thread}};
    /// let [usable, disc, none] = [45.0, 15.0, 0.0].map(|length| Toleranced::exact(mm(length)));
    /// let old = Engagement::new(literal!(Thread, "M12x1.25"), usable, disc, none)?;
    /// let [disc, spacer] = [18.0, 15.0].map(|length| Toleranced::exact(mm(length)));
    /// assert!((old.usable_length_to_keep(disc, spacer)?.nominal() - mm(63.0)).abs() < mm(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn usable_length_to_keep(
        &self,
        disc_thickness: Toleranced<Length>,
        spacer: Toleranced<Length>,
    ) -> Result<Toleranced<Length>, OutOfRange> {
        Ok(self.length + checked_disc(disc_thickness)? + checked_spacer(spacer)?)
    }
}

/// Least turns by thread, from a trade chart of wheel fasteners.
const LEAST_TURNS: &[(Thread, f64)] = &[
    (literal!(Thread, "M12x1.5"), 6.5),
    (literal!(Thread, "M12x1.25"), 8.0),
    (literal!(Thread, "M14x1.5"), 7.5),
    (literal!(Thread, "M14x1.25"), 9.0),
    (literal!(Thread, "7/16-20"), 8.0),
    (literal!(Thread, "1/2-20"), 8.0),
    (literal!(Thread, "9/16-18"), 8.0),
];

/// `tan 30°` as the handbook prints it.
const TAN_30: f64 = 0.577_35;

impl Thread {
    /// The least turns that a wheel fastener of this thread is to engage, by a trade chart
    /// ([`Citation::LEAST_TURNS`](crate::Citation::LEAST_TURNS)); `None` for a thread that is not in it.
    ///
    /// ```
    /// use beadseat::{literal, units::ratio, wheel::Thread};
    /// assert_eq!(literal!(Thread, "M14x1.5").min_turns(), Some(ratio(7.5)));
    /// assert_eq!(literal!(Thread, "M22x1.5").min_turns(), None);
    /// ```
    pub fn min_turns(&self) -> Option<Ratio> {
        LEAST_TURNS.iter().find(|(thread, _)| thread == self).map(|&(_, turns)| units::ratio(turns))
    }

    /// The least length engaged at which an equally strong bolt breaks before its thread is stripped:
    /// `Le = 2·As/(π·Kn·[1/2 + 0.57735·(Es − Kn)/P])`, with the stress area `As`, the pitch `P`, the
    /// *least* pitch diameter `Es` of the bolt and the *greatest* minor diameter `Kn` of the nut or hole,
    /// which are limits of manufacture. A softer hub or nut needs more. Source: Machinery's Handbook, from
    /// memory ([`Citation::LEAST_ENGAGEMENT`](crate::Citation::LEAST_ENGAGEMENT)).
    ///
    /// # Errors
    /// If the pitch diameter is not between the basic minor and the basic pitch diameter, or the minor
    /// diameter not between the basic one and that pitch diameter.
    ///
    /// ```
    /// use beadseat::{literal, units::mm, wheel::Thread};
    /// let least = literal!(Thread, "M14x1.5").min_engagement(mm(12.854), mm(12.676))?;
    /// assert!((least - mm(11.002371)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn min_engagement(
        &self,
        least_pitch_diameter: Length,
        max_minor_diameter: Length,
    ) -> Result<Length, OutOfRange> {
        let [basic, minor] = [self.pitch_diameter(), self.minor_diameter()].map(in_mm);
        let es = OutOfRange::check("least pitch diameter", in_mm(least_pitch_diameter), "mm", minor, basic)?;
        let kn = OutOfRange::check("greatest minor diameter", in_mm(max_minor_diameter), "mm", minor, es)?;
        let overlap = 0.5 + TAN_30 * (es - kn) / in_mm(self.pitch_length());
        Ok(units::mm(2.0 * in_mm2(self.stress_area()) / (core::f64::consts::PI * kn * overlap)))
    }
}
