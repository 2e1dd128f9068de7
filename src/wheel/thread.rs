//! Screw threads.

use core::cmp::Ordering;

use crate::exact::Exact;
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{Angle, Area, Length, base, in_ratio, mm2};

/// The distance between threads. `Ord` is by that distance, a fine pitch first; of two that are equal, the metric one
/// comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Pitch {
    /// Nanometres from thread to thread.
    Metric {
        /// Pitch in nanometres: 1 500 000 for 1.5 mm.
        nanometres: i32,
    },
    /// Threads to the inch.
    Unified {
        /// The number of threads on one inch of length.
        threads_per_inch: u8,
    },
}

impl Pitch {
    /// The distance as a fraction of nanometres, and whether it is counted to the inch. No threads to the inch are
    /// the greatest distance.
    const fn fraction(self) -> (i64, i64, bool) {
        const INCH_NM: i64 = 25_400_000;
        match self {
            Self::Metric { nanometres } => (nanometres as i64, 1, false),
            Self::Unified { threads_per_inch } => (INCH_NM, threads_per_inch as i64, true),
        }
    }
}

impl Ord for Pitch {
    fn cmp(&self, other: &Self) -> Ordering {
        let ((a, of_a, a_unified), (b, of_b, b_unified)) = (self.fraction(), other.fraction());
        (a * of_b).cmp(&(b * of_a)).then(a_unified.cmp(&b_unified))
    }
}

impl PartialOrd for Pitch {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// A screw thread: its major diameter and its pitch.
///
/// # Syntax
/// ```text
/// thread  = "M" diameter "x" pitch | inches "-" threads [ "UNF" | "UNC" | "UNS" ]
/// inches  = whole | [ whole " " ] numerator "/" denominator
/// ```
/// Metric M6 to M30 with a pitch of 0.5 to 4 mm; unified 1/4 to 1 1/4 in with 7 to 32 threads an inch.
/// The pitch must be given. The series letters are read and not kept: the number of threads says it.
/// `Ord` is by major diameter, then by [`Pitch`].
///
/// ```
/// use beadseat::{uom::si::area::square_millimeter, wheel::Thread};
/// let thread: Thread = "m14 × 1,5".parse()?;
/// assert_eq!(thread.to_string(), "M14x1.5");
/// assert!((thread.stress_area().get::<square_millimeter>() - 124.545545).abs() < 1e-6);
/// assert_eq!("1/2\"-20 UNF".parse::<Thread>()?.to_string(), "1/2-20");
/// assert_eq!("1-14 UNS".parse::<Thread>()?.to_string(), "1-14");
/// assert!(Thread::parse("1/2-20")? < Thread::parse("M14x1.25")?); // 12.7 mm
/// assert!(Thread::parse("M12x1.25")? < Thread::parse("M12x1.5")?);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Thread {
    major: Exact,
    pitch: Pitch,
}

/// Threads to the inch of the fine and the coarse series by 1/64 in of diameter. Source: ASME B1.1, from memory.
const SERIES: [(u16, u8, u8); 10] = [
    (16, 28, 20),
    (20, 24, 18),
    (24, 24, 16),
    (28, 20, 14),
    (32, 20, 13),
    (36, 18, 12),
    (40, 18, 11),
    (48, 16, 10),
    (56, 14, 9),
    (64, 12, 8),
];

const fn threads_of_series(sixty_fourths: u16, fine: bool) -> Option<u8> {
    let mut i = 0;
    while i < SERIES.len() {
        let (diameter, of_fine, of_coarse) = SERIES[i];
        if diameter == sixty_fourths {
            return Some(if fine { of_fine } else { of_coarse });
        }
        i += 1;
    }
    None
}

/// 1/64 in, in which unified diameters are counted.
const SIXTY_FOURTH_NM: i32 = 396_875;

impl Thread {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat(b'M') { Self::scan_metric(scanner) } else { Self::scan_unified(scanner) }
    }

    const fn scan_metric(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        scanner.skip_space();
        let major = tri!(Exact::scan_mm(scanner, Field::ThreadDiameter, 6, 30));
        scanner.skip_space();
        if !(scanner.eat_times() || scanner.eat(b'-')) {
            return Err(scanner.missing(Field::ThreadPitch));
        }
        scanner.skip_space();
        let at = scanner.at();
        let nanometres = tri!(Exact::scan_mm(scanner, Field::ThreadPitch, 0, 4)).nm();
        if nanometres < 500_000 {
            return Err(scanner.range(Field::ThreadPitch, at));
        }
        Ok(Self { major, pitch: Pitch::Metric { nanometres } })
    }

    const fn scan_unified(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let at = scanner.at();
        let (mut whole, mut numerator) = (0, tri!(scanner.whole(Field::ThreadDiameter)));
        let mut denominator = 1;
        let mut ahead = *scanner;
        if ahead.skip_space() && ahead.at_digit() {
            *scanner = ahead;
            whole = numerator;
            numerator = tri!(scanner.whole(Field::ThreadDiameter));
            if scanner.peek(0) != b'/' {
                return Err(scanner.missing(Field::ThreadDiameter));
            }
        }
        if scanner.eat(b'/') {
            denominator = tri!(scanner.whole(Field::ThreadDiameter));
        } else {
            (whole, numerator) = (numerator, 0);
        }
        if denominator == 0
            || denominator > 64
            || 64 % denominator != 0
            || numerator >= denominator
            || whole > 1
        {
            return Err(scanner.range(Field::ThreadDiameter, at));
        }
        let sixty_fourths = whole as i32 * 64 + numerator as i32 * (64 / denominator as i32);
        if sixty_fourths < 16 || sixty_fourths > 80 {
            return Err(scanner.range(Field::ThreadDiameter, at));
        }
        scanner.eat(b'"');
        scanner.skip_space();
        if !(scanner.eat(b'-') || scanner.eat_times()) {
            return Err(scanner.missing(Field::ThreadPitch));
        }
        scanner.skip_space();
        let at = scanner.at();
        let threads = tri!(scanner.whole(Field::ThreadPitch));
        if threads < 7 || threads > 32 {
            return Err(scanner.range(Field::ThreadPitch, at));
        }
        let mut ahead = *scanner;
        ahead.skip_space();
        if ahead.eat_word("UNF") || ahead.eat_word("UNC") || ahead.eat_word("UNS") {
            *scanner = ahead;
        }
        Ok(Self {
            major: Exact::from_nm(sixty_fourths * SIXTY_FOURTH_NM),
            pitch: Pitch::Unified { threads_per_inch: threads as u8 },
        })
    }

    /// A thread as people write it: `M14 1.5`, `12x1.5`, `1/2 UNF`, `1/2" 20`, `thread M12x1.5`.
    pub(super) const fn scan_phrase(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        if matches!(ahead.peek(0), b'T' | b'S' | b'B' | b'L' | b'W') {
            let named =
                ahead.eat_any(&["THREAD", "STUDS", "STUD", "BOLTS", "BOLT", "LUGS", "LUG", "WHEEL BOLT"]);
            if !named {
                return None;
            }
            ahead.skip_colon();
            let mut strict = ahead;
            if let Ok(thread) = Self::scan(&mut strict) {
                *scanner = strict;
                return Some(thread);
            }
        }
        let thread = match Self::scan_spaced(&mut ahead) {
            Some(thread) => thread,
            None => match Self::scan_series(&mut ahead) {
                Some(thread) => thread,
                None => return None,
            },
        };
        if ahead.peek(0).is_ascii_alphanumeric() {
            return None;
        }
        *scanner = ahead;
        Some(thread)
    }

    /// `M14 1.5`, `12x1.5`: metric with a space for the sign, or without the letter where the pitch has a decimal.
    const fn scan_spaced(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        let metric = ahead.eat(b'M');
        ahead.skip_space();
        let Ok(major) = Exact::scan_mm(&mut ahead, Field::ThreadDiameter, 6, 30) else { return None };
        let spaced = ahead.skip_space();
        let times = ahead.eat_times();
        ahead.skip_space();
        let at = ahead.at();
        let Ok(pitch) = Exact::scan_mm(&mut ahead, Field::ThreadPitch, 0, 4) else { return None };
        let has_decimal = ahead.at() > at + 1;
        // Of a wheel fastener, ISO 261 from memory; `26x1.95` and `20x1.75` are tires of bicycles.
        let is_common = match (major.nm() / 1_000_000, pitch.nm()) {
            _ if major.nm() % 2_000_000 != 0 => false,
            (10..=24, 1_500_000) | (10..=14, 1_250_000) | (12, 1_750_000) => true,
            _ => false,
        };
        if pitch.nm() < 500_000 || !(metric && spaced || times && has_decimal && is_common) {
            return None;
        }
        *scanner = ahead;
        Some(Self { major, pitch: Pitch::Metric { nanometres: pitch.nm() } })
    }

    /// `1/2 UNF`, `1/2" 20`: a series tells its threads to the inch.
    const fn scan_series(scanner: &mut Scanner<'_>) -> Option<Self> {
        let mut ahead = *scanner;
        let Ok(numerator @ 1..=15) = ahead.whole(Field::ThreadDiameter) else { return None };
        let mut sixty_fourths = numerator * 64;
        if ahead.eat(b'/') {
            let Ok(denominator @ (2 | 4 | 8 | 16)) = ahead.whole(Field::ThreadDiameter) else { return None };
            if numerator >= denominator {
                return None;
            }
            sixty_fourths = numerator * (64 / denominator);
        } else if numerator != 1 {
            return None;
        }
        ahead.skip_space();
        let _ = ahead.eat(b'"')
            || ahead.eat_str("\u{2033}")
            || ahead.eat_str("''")
            || ahead.eat_word("INCH")
            || ahead.eat_word("IN");
        ahead.skip_space();
        ahead.eat(b'-');
        ahead.skip_space();
        let threads = if ahead.at_digit() {
            let Ok(threads @ 7..=32) = ahead.whole(Field::ThreadPitch) else { return None };
            let mut behind = ahead;
            behind.skip_space();
            if behind.eat_any(&["TPI", "UNF", "UNC", "UNS"]) {
                ahead = behind;
            }
            if sixty_fourths < 16 {
                return None;
            }
            threads as u8
        } else {
            let fine = ahead.eat_word("UNF");
            if !fine && !ahead.eat_word("UNC") {
                return None;
            }
            match threads_of_series(sixty_fourths, fine) {
                Some(threads) => threads,
                None => return None,
            }
        };
        *scanner = ahead;
        Some(Self {
            major: Exact::from_nm(sixty_fourths as i32 * SIXTY_FOURTH_NM),
            pitch: Pitch::Unified { threads_per_inch: threads },
        })
    }

    pub(crate) fn write(&self, text: &mut Text) {
        match self.pitch {
            Pitch::Metric { nanometres } => {
                text.byte(b'M');
                self.major.write_mm(text);
                text.byte(b'x');
                Exact::from_nm(nanometres).write_mm(text);
            }
            Pitch::Unified { threads_per_inch } => {
                let sixty_fourths = (self.major.nm() / SIXTY_FOURTH_NM) as u32;
                let (whole, mut numerator, mut denominator) = (sixty_fourths / 64, sixty_fourths % 64, 64);
                while numerator > 0 && numerator % 2 == 0 {
                    numerator /= 2;
                    denominator /= 2;
                }
                if whole > 0 {
                    text.whole(whole);
                }
                if whole > 0 && numerator > 0 {
                    text.byte(b' ');
                }
                if numerator > 0 {
                    text.whole(numerator).byte(b'/').whole(denominator);
                }
                text.byte(b'-').whole(u32::from(threads_per_inch));
            }
        }
    }

    /// The major (outer) diameter.
    ///
    /// ```
    /// use beadseat::{units::inches, wheel::Thread};
    /// assert_eq!(Thread::parse("1/2-20")?.major_diameter(), inches(0.5));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn major_diameter(&self) -> Length {
        self.major.length()
    }

    /// The pitch as it is designated.
    ///
    /// ```
    /// use beadseat::wheel::{Pitch, Thread};
    /// assert_eq!(Thread::parse("1/2-20")?.pitch(), Pitch::Unified { threads_per_inch: 20 });
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn pitch(&self) -> Pitch {
        self.pitch
    }

    /// The distance from thread to thread.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Thread};
    /// assert_eq!(Thread::parse("M12x1.25")?.pitch_length(), mm(1.25));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn pitch_length(&self) -> Length {
        match self.pitch {
            Pitch::Metric { nanometres } => Exact::from_nm(nanometres).length(),
            Pitch::Unified { threads_per_inch } => crate::units::inches(1.0) / f64::from(threads_per_inch),
        }
    }

    /// The height `H = √3/2·P` of the sharp 60° triangle that the thread is cut from.
    fn triangle(&self) -> Length {
        self.pitch_length() * (libm::sqrt(3.0) / 2.0)
    }

    /// The pitch diameter, where thread and gap are equally wide: `d2 = d − 3/4·H` with the height
    /// `H = √3/2·P` of the thread triangle. Basic size: a cut thread is a little thinner. Source: ISO 724
    /// and ASME B1.1, from memory.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Thread};
    /// let d2 = Thread::parse("M14x1.5")?.pitch_diameter();
    /// assert!((d2 - mm(13.025721)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn pitch_diameter(&self) -> Length {
        self.major_diameter() - self.triangle() * 0.75
    }

    /// The minor diameter of the nut or hole, at the tips of its threads: `D1 = d − 5/4·H`. Basic size: a
    /// cut one is a little wider. Source: ISO 724 and ASME B1.1, from memory.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Thread};
    /// let d1 = Thread::parse("M14x1.5")?.minor_diameter();
    /// assert!((d1 - mm(12.376202)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn minor_diameter(&self) -> Length {
        self.major_diameter() - self.triangle() * 1.25
    }

    /// The root diameter of the bolt, at the bottom of its threads: `d3 = d − 17/12·H` metric (ISO 898-1),
    /// `d − 3/2·H` unified, the root of the thread triangle cut by a quarter (Shigley, *Mechanical
    /// Engineering Design*). From memory.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Thread};
    /// let [metric, unified] = [Thread::parse("M14x1.5")?, Thread::parse("1/2-20")?];
    /// assert!((metric.root_diameter() - mm(12.159696)).abs() < mm(1e-6));
    /// assert!((unified.root_diameter() - mm(11.050222)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn root_diameter(&self) -> Length {
        let heights = match self.pitch {
            Pitch::Metric { .. } => 17.0 / 12.0,
            Pitch::Unified { .. } => 1.5,
        };
        self.major_diameter() - self.triangle() * heights
    }

    /// The diameter of the rod that is as strong as the thread, the mean of pitch and root diameter:
    /// `d − 13/12·H` metric, `d − 9/8·H` unified.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Thread};
    /// let rod = Thread::parse("M14x1.5")?.stress_diameter();
    /// assert!((rod - mm(12.592709)).abs() < mm(1e-6));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn stress_diameter(&self) -> Length {
        (self.pitch_diameter() + self.root_diameter()) / 2.0
    }

    /// The tensile stress area, that of a rod of the [stress diameter](Thread::stress_diameter):
    /// `π/4·(d − 13/12·H)²` metric (ISO 898-1, printed with 0.9382·P) and `π/4·(d − 9/8·H)²` unified
    /// (ASME B1.1, printed with 0.9743·P).
    ///
    /// ```
    /// use beadseat::{uom::si::area::square_millimeter, wheel::Thread};
    /// let area = Thread::parse("9/16-18")?.stress_area();
    /// assert!((area.get::<square_millimeter>() - 130.955268).abs() < 1e-6);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn stress_area(&self) -> Area {
        let d = crate::units::in_mm(self.stress_diameter());
        mm2(core::f64::consts::FRAC_PI_4 * d * d)
    }

    /// How steep the thread is on its pitch diameter: `tan λ = P/(π·d2)`.
    ///
    /// ```
    /// use beadseat::{units::deg, wheel::Thread};
    /// let lead = Thread::parse("M14x1.5")?.lead_angle();
    /// assert!(lead > deg(2.09) && lead < deg(2.11));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn lead_angle(&self) -> Angle {
        base(libm::atan(self.lead_slope()))
    }

    /// The tangent of the lead angle.
    pub(super) fn lead_slope(&self) -> f64 {
        in_ratio(self.pitch_length() / self.pitch_diameter()) / core::f64::consts::PI
    }
}

designation!(Thread in "beadseat::wheel", "m12x1,50" => "M12x1.5", wrong "M14");
