//! The kinds of markings, and what each is for.

use super::approval::Approval;
use crate::Citation;
use crate::text::Text;
use crate::tire::{
    LoadIndex, ServiceDescription, SpeedSymbol, Tire,
    energy_label::EnergyLabel,
    grading::{Grade, Grading},
    identification::{DateCode, IdentificationNumber},
    sidewall::{LineContradiction, MoldedLimit, SidewallLine, SidewallMark, SidewallMarks},
};
use crate::wheel::{
    Backspacing, BoltCircle, Bore, Inset, Seat, Thread, Wheel, WheelStamp, drilling::DualDrilling,
};

/// A marking of any kind, recognised by its evidence: a word, a shape that only one kind has, or parts that agree.
///
/// # Recognition
/// A text is read in every way there is; [`readings`](super::readings) answers them all, and parsing the best. What is
/// best where two numbers alone could be several things:
///
/// * A bolt circle that is made, `8x6.5`, comes before a wheel; else two numbers with `x` are a wheel, whichever of them
///   is its diameter, `7x16`, `10x5`, `9x8`. A tire of two decimals that a table lists comes before a rim, `6.00x16`.
/// * A rim of several pieces and a cross-ply tire are both written with a dash. It is a tire if the width has two
///   decimals or none, if the rim code is a half inch, if it is agricultural or has an `L`, and else a wheel: `6.00-16`,
///   `7-16`, `11-22.5`, `9.5-24` are tires, `7.0-20` and `6.00E-16` wheels. Common practice, no source.
/// * Three digits and fewer are a load index if there is one. Four are *possibly* a date, if the date lies in the past.
/// * An identification number has `DOT` or `TIN` in front, or all of its 13 symbols in their groups with a date in the
///   past. A date of other digits has `DOT` or `DATE` in front.
///
/// Quotes around a text and a stop at its end are stripped. A word in front says what it is: `TIRE`, `WHEEL`, `RIM`,
/// `PCD`, `ET`, `CB`, `BS`, `THREAD`, `LABEL`, `LOAD INDEX`, `SPEED SYMBOL`.
///
/// Where nothing can be read, the error is that of the kind which the text resembles most; of a wheel that contradicts
/// itself, that of the wheel. In files a marking is its canonical text: that of its kind, with its word in front where
/// it would be read as something else without, so that it reads back as itself.
///
/// ```
/// use beadseat::Marking;
/// for (text, kind) in [
///     ("205/55R16 91V", "tire"),
///     ("7Jx16 H2 ET45", "wheel"),
///     ("7x16", "wheel"),
///     ("690 kg 7x16 JWL", "wheel"),
///     ("25x8-12", "tire"),
///     ("6.00-16", "tire"),
///     ("11-22.5", "tire"),
///     ("9.5-24", "tire"),
///     ("7.0-20", "wheel"),
///     ("7.0D20", "tire"),
///     ("8x6.5", "bolt_circle"),
///     ("5 on 4 1/2", "bolt_circle"),
///     ("4x98 4x108", "dual_drilling"),
///     ("offset 35", "inset"),
///     ("BS 4.5\"", "backspacing"),
///     ("Ø57.1", "bore"),
///     ("acorn", "seat"),
///     ("M14x1.5", "thread"),
///     ("91V", "service_description"),
///     ("91", "load_index"),
///     ("V", "speed_symbol"),
///     ("DOT 1AB 2C3D4E 2725", "tin"),
///     ("DATE 2725", "date_code"),
///     ("TREADWEAR 400 TRACTION AA TEMPERATURE A", "grading"),
///     ("TRACTION AA", "grading"),
///     ("C/B/71 dB", "label"),
///     ("MAX LOAD 615 kg (1356 LBS)", "molded_limit"),
///     ("M+S", "sidewall_mark"),
///     ("E4 0234567", "approval"),
/// ] {
///     assert_eq!(text.parse::<Marking>()?.kind(), kind, "{text}");
/// }
/// let error = "205/55R31".parse::<Marking>().unwrap_err();
/// assert_eq!(error.span(), 7..9);
/// assert_eq!("7.0D20".parse::<Marking>()?.to_string(), "TIRE 7.0-20");
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Marking {
    /// A tire size, with service description and how it is built.
    Tire(Tire),
    /// A tire size with more beside it: maximum load and pressure, marks of winter and of tubes, or a mark of
    /// another family.
    SidewallLine(SidewallLine),
    /// A wheel size, with what stands beside it.
    Wheel(Wheel),
    /// A wheel with more stamped on it: load, date, marks, origin.
    WheelStamp(WheelStamp),
    /// A bolt circle alone.
    BoltCircle(BoltCircle),
    /// A screw thread alone, as of a wheel bolt.
    Thread(Thread),
    /// Load index and speed symbol without a size.
    ServiceDescription(ServiceDescription),
    /// A load index alone.
    LoadIndex(LoadIndex),
    /// A speed symbol alone.
    SpeedSymbol(SpeedSymbol),
    /// A tire identification number, or a part of one.
    IdentificationNumber(IdentificationNumber),
    /// The date group of an identification number by itself.
    DateCode(DateCode),
    /// An inset without a wheel.
    Inset(Inset),
    /// A backspacing without a wheel.
    Backspacing(Backspacing),
    /// A centre bore alone.
    Bore(Bore),
    /// A seat of bolts or nuts.
    Seat(Seat),
    /// Two bolt circles of one wheel.
    DualDrilling(DualDrilling),
    /// What a tire label states.
    Label(EnergyLabel),
    /// An approval or a permit of a tire or a wheel.
    Approval(Approval),
    /// A quality grading: treadwear, traction and temperature.
    Grading(Grading),
    /// One of the grades alone.
    Grade(Grade),
    /// A molded maximum without a size: of load, pressure or speed.
    MoldedLimit(MoldedLimit),
    /// A single mark of a sidewall.
    SidewallMark(SidewallMark),
    /// Marks and maxima of a sidewall together, without its size.
    SidewallMarks(SidewallMarks),
}

impl Marking {
    /// A stable name of the kind: `tire`, `wheel`, `bolt_circle`, `dual_drilling`, `inset`, `backspacing`, `bore`, `seat`,
    /// `thread`, `service_description`, `load_index`, `speed_symbol`, `tin`, `date_code`, `grading`, `label`,
    /// `molded_limit`, `sidewall_mark`, `approval`.
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => "tire",
            Self::Wheel(_) | Self::WheelStamp(_) => "wheel",
            Self::BoltCircle(_) => "bolt_circle",
            Self::Thread(_) => "thread",
            Self::ServiceDescription(_) => "service_description",
            Self::LoadIndex(_) => "load_index",
            Self::SpeedSymbol(_) => "speed_symbol",
            Self::IdentificationNumber(_) => "tin",
            Self::DateCode(_) => "date_code",
            Self::Inset(_) => "inset",
            Self::Backspacing(_) => "backspacing",
            Self::Bore(_) => "bore",
            Self::Seat(_) => "seat",
            Self::DualDrilling(_) => "dual_drilling",
            Self::Label(_) => "label",
            Self::Approval(_) => "approval",
            Self::Grading(_) | Self::Grade(_) => "grading",
            Self::MoldedLimit(_) => "molded_limit",
            Self::SidewallMark(_) => "sidewall_mark",
            Self::SidewallMarks(marks) if marks.service().is_some() => "service_description",
            Self::SidewallMarks(marks) if marks.has_only_limits() => "molded_limit",
            Self::SidewallMarks(_) => "sidewall_mark",
        }
    }

    /// What cannot all be true of a tire that it names; of anything else nothing.
    ///
    /// ```
    /// use beadseat::{Marking, tire::sidewall::LineContradiction};
    /// let slow = Marking::parse("205/55ZR16 91V")?;
    /// assert_eq!(slow.contradictions().collect::<Vec<_>>(), [LineContradiction::SpeedBelowSize]);
    /// assert_eq!(Marking::parse("5x112")?.contradictions().count(), 0);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn contradictions(&self) -> impl Iterator<Item = LineContradiction> + use<> {
        let line = match *self {
            Self::Tire(tire) => Some(tire.into()),
            Self::SidewallLine(line) => Some(line),
            _ => None,
        };
        line.into_iter().flat_map(|line: SidewallLine| line.contradictions())
    }

    /// What kind of marking it is, in words.
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert_eq!(Marking::parse("H")?.meaning(), "a speed symbol: the speed a tire is made for");
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn meaning(&self) -> &'static str {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => {
                "a tire: its size, what it carries and how fast, and how it is built"
            }
            Self::Wheel(_) | Self::WheelStamp(_) => {
                "a wheel: its rim, where the rim stands, and how it meets the hub"
            }
            Self::BoltCircle(_) => "a bolt circle: how many fastener holes, on what diameter",
            Self::Thread(_) => "a screw thread: its outer diameter and its pitch",
            Self::ServiceDescription(_) => "a service description: the load of one tire, and at which speed",
            Self::LoadIndex(_) => "a load index: the load of one tire, as a number from a table",
            Self::SpeedSymbol(_) => "a speed symbol: the speed a tire is made for",
            Self::DateCode(date) if date.has_three_digits() => {
                "a date of manufacture: week, and last digit of the year, before mid 2000"
            }
            Self::DateCode(_) => "a date of manufacture: two digits of week, two of year",
            Self::Inset(_) => "an inset: how far the middle of the rim lies inboard of the mounting face",
            Self::Backspacing(_) => "a backspacing: from the mounting face to the inner edge of the rim",
            Self::Bore(_) => "a centre bore: the hole that a wheel is centred by",
            Self::Seat(_) => "a seat: the shape under the head of a bolt or nut",
            Self::DualDrilling(_) => {
                "two bolt circles in one wheel, the holes of one between those of the other"
            }
            Self::Label(_) => "a tire label: fuel efficiency, wet grip, rolling noise",
            Self::Approval(approval) => approval.meaning(),
            Self::IdentificationNumber(_) => "a tire identification number: who made it, and in which week",
            Self::Grading(_) => "grades of wear, wet traction and heat in a test, for comparing tires",
            Self::Grade(Grade::Treadwear(_)) => "a grade of wear in a test, against a control tire of 100",
            Self::Grade(Grade::Traction(_)) => "a grade of braking straight ahead on wet pavement",
            Self::Grade(Grade::Temperature(_)) => "a grade of the heat endured at speed in a laboratory",
            Self::MoldedLimit(_) => "the most that the tire may bear",
            Self::SidewallMark(mark) => mark.meaning(),
            Self::SidewallMarks(_) => "marks and maxima of a sidewall, without its size",
        }
    }

    /// What it means when tires or wheels are chosen.
    ///
    /// ```
    /// use beadseat::Marking;
    /// assert!(Marking::parse("5x112")?.for_choice().contains("exactly"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn for_choice(&self) -> &'static str {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => {
                "the rim diameter must be the wheel's exactly; load and speed must cover the vehicle's; the rim width \
                 must be approved"
            }
            Self::Wheel(_) | Self::WheelStamp(_) => {
                "diameter, holes and bore must be the tire's and the hub's; width, inset and rating decide fit and \
                 strength"
            }
            Self::BoltCircle(_) => "it must be the hub's exactly: near misses seem to fit and do not seat",
            Self::Thread(_) => "fastener and hub must have the same, or the thread strips",
            Self::ServiceDescription(_) => {
                "load at the right pressure and speed must both cover the vehicle's; not below the original's"
            }
            Self::LoadIndex(_) => {
                "with the pressure it must carry the axle's share; not below the original's"
            }
            Self::SpeedSymbol(_) => "not below the vehicle's top speed, unless local law excepts snow tires",
            Self::DateCode(date) if date.has_three_digits() => "more than 25 years old: not for the road",
            Self::DateCode(date) if date.is_iso_only() => ISO_ONLY,
            Self::DateCode(_) => "tells the age; the whole number behind DOT is what recall lists go by",
            Self::IdentificationNumber(number) if matches!(number.date(), Some(date) if date.is_iso_only()) => {
                ISO_ONLY
            }
            Self::Inset(_) => {
                "less inset moves the wheel outboard by as much; with the width it gives both rim edges"
            }
            Self::Backspacing(_) => {
                "the inset follows from it with the rim width and the width of the flange, which is presumed"
            }
            Self::Bore(_) => {
                "not below the hub's spigot; above it a centring ring or a centring seat must centre"
            }
            Self::Seat(_) => "fastener and wheel must have the same, or the clamp load is lost",
            Self::DualDrilling(_) => "it fits the hubs of either circle exactly, and none between",
            Self::Label(_) => "compares tires of one size; says nothing of snow, wear or handling",
            Self::Approval(approval) => approval.for_choice(),
            Self::IdentificationNumber(_) => "tells the age; ask for the recall lists by it",
            Self::Grade(Grade::Treadwear(_)) => {
                "compares tires of one maker fairly, of different makers loosely"
            }
            Self::Grade(Grade::Traction(_)) => "AA grips best; says nothing of cornering or of deep water",
            Self::Grade(Grade::Temperature(_)) => {
                "C is the legal minimum; holds for a tire that is neither soft nor overloaded"
            }
            Self::MoldedLimit(MoldedLimit::Pressure(_)) => {
                "not the pressure to inflate to: that is on the vehicle's placard"
            }
            Self::MoldedLimit(_) => "a limit, not advice: the vehicle's placard says how to load and inflate",
            Self::Grading(_) => "compares tires of one maker fairly, of different makers loosely",
            Self::SidewallMark(mark) => mark.for_choice(),
            Self::SidewallMarks(_) => "they belong to the size beside them: read that too",
        }
    }

    /// Where its meaning is laid down.
    ///
    /// ```
    /// use beadseat::{Citation, Marking};
    /// assert_eq!(Marking::parse("91")?.citation(), Citation::LOAD_INDEX);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn citation(&self) -> Citation {
        match self {
            Self::Tire(_) | Self::SidewallLine(_) => Citation::OVERALL_DIAMETER,
            Self::Wheel(_) | Self::WheelStamp(_) => Citation::RIM_SPECIFIED,
            Self::BoltCircle(_) => Citation::DESIGNATION,
            Self::Thread(_) => Citation::THREAD_STRESS_AREA,
            Self::ServiceDescription(_) | Self::LoadIndex(_) => Citation::LOAD_INDEX,
            Self::SpeedSymbol(_) => Citation::SPEED_SYMBOL,
            Self::DateCode(_) => Citation::DATE_CODE,
            Self::IdentificationNumber(number) => number.form().citation(),
            Self::Grading(grading) => grading.traction().citation(),
            Self::Grade(grade) => grade.citation(),
            Self::MoldedLimit(_) => Citation::MOLDED_LIMIT,
            Self::SidewallMark(mark) => mark.citation(),
            Self::SidewallMarks(_) => Citation::MOLDED_LIMIT,
            Self::Inset(_) | Self::Backspacing(_) | Self::Bore(_) | Self::Seat(_) | Self::DualDrilling(_) => {
                Citation::DESIGNATION
            }
            Self::Label(_) => Citation::LABEL_RESISTANCE,
            Self::Approval(_) => Citation::APPROVAL_MARK,
        }
    }

    /// Its canonical text by itself, which may be that of another kind too.
    pub(super) fn write_plain(&self, text: &mut Text) {
        match self {
            Self::Tire(x) => x.write(text),
            Self::SidewallLine(x) => x.write(text),
            Self::Wheel(x) => x.write(text),
            Self::WheelStamp(x) => x.write(text),
            Self::BoltCircle(x) => x.write(text),
            Self::Thread(x) => x.write(text),
            Self::ServiceDescription(x) => x.write(text),
            Self::LoadIndex(x) => x.write(text),
            Self::SpeedSymbol(x) => x.write(text),
            // What makes it one stands in front.
            Self::DateCode(x) => x.write(text.str("DATE ")),
            Self::IdentificationNumber(x) => {
                if !x.writes_dot() {
                    text.str("DOT ");
                }
                x.write(text);
            }
            Self::Inset(x) => x.write(text),
            Self::Backspacing(x) => x.write(text),
            Self::Bore(x) => x.write(text.str("CB ")),
            Self::Seat(x) => x.write(text),
            Self::DualDrilling(x) => x.write(text),
            Self::Label(x) => x.write(text),
            Self::Approval(x) => x.write(text),
            Self::Grading(x) => x.write(text),
            Self::Grade(x) => x.write(text),
            Self::MoldedLimit(x) => x.write(text),
            Self::SidewallMark(x) => x.write(text),
            Self::SidewallMarks(x) => x.write(text),
        }
    }
}

/// Of a week 53 that only ISO 8601 has.
const ISO_ONLY: &str =
    "only a maker who counts ISO weeks has that week 53: else the date is misread or false";
