//! What makes a text a marking: a word, a shape that only one kind has, or parts that agree.

use super::approval::Approval;
use super::date;
use super::kind::Marking;
use super::reading::{List, Readings};
use crate::rim::SeatTaper;
use crate::text::{Field, ParseError, ParseErrorKind, Scanner, Text};
use crate::tire::{
    LoadIndex, LoadRange, ServiceDescription, SizeClass, SpeedSymbol, Structure, TireSize,
    energy_label::EnergyLabel,
    grading::{Grade, Grading},
    identification::{IdentificationForm, IdentificationNumber, ManufactureWeek},
    sidewall::{MoldedLimit, SidewallLine, SidewallMark, SidewallMarks},
};
use crate::wheel::{BoltCircle, Parts, Thread, Wheel, WheelStamp, counts_holes, drilling::DualDrilling};

/// What a word in front says that a text is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Claim {
    Nothing,
    Tire,
    Wheel,
    LoadIndex,
    SpeedSymbol,
    Number,
    Date,
}

const TIRE_BY_WIDTH: &str = "a tire if the first number is the width of its section";
const MOTORCYCLE_BY_WIDTH: &str = "a motorcycle tire if the first number is its width in inches";
const TIRE_BY_DIAMETER: &str = "a tire if the first number is its overall diameter and the second its width";
const TIRE_FOR_LIGHT_TRUCK: &str =
    "a light truck's tire, whose LT is often left away; without it one of an off-road vehicle";
const RIM_BY_WIDTH: &str = "a rim if the first number is the width between its flanges";
const RIM_BY_DIAMETER: &str = "a wheel if the greater number is its diameter and the other its width";
const WHEEL_WITH_OUTSET: &str = "a wheel if the number behind the dash is its outset in mm";
const HOLES: &str = "a bolt circle if one number counts the holes and the other is the diameter through them";
const THREAD: &str = "a thread if the first number is its diameter and the second its pitch";
const INDEX: &str = "a load index if it stands on a tire beside its size";
const SPEED: &str = "a speed symbol if it stands behind a load index";
const RANGE: &str = "a load range if it stands behind the size of a light truck's or a trailer's tire";
const CONE: &str = "the angle was not told: 60° as on nearly all cars, but 80° and 90° are made too";
const DATE: &str = "a date of manufacture if it stands behind DOT on a tire; by itself it is any four digits";
const NUMBER: &str = "an identification number if it is molded on a tire, where DOT stands in front";
const TO_COME: &str = "the week is yet to come: it is misread, or false, or no date";
const WEEK: &str = "the week and the year of a tire; on a wheel the month stands first";
const OTHER: &str = "as it stands";

/// A text without what people write around it: where it begins, and it.
fn stripped(text: &str) -> (usize, &str) {
    let is_space = |c: char| c.is_ascii_whitespace() || matches!(c, '\u{a0}' | '\u{202f}' | '\u{2009}');
    let mut inner = text.trim_matches(is_space);
    let mut start = text.len() - text.trim_start_matches(is_space).len();
    for (open, close) in [
        ("\"", "\""),
        ("'", "'"),
        ("\u{201c}", "\u{201d}"),
        ("\u{201e}", "\u{201c}"),
        ("\u{ab}", "\u{bb}"),
        ("`", "`"),
        ("\u{2018}", "\u{2019}"),
    ] {
        if let Some(within) = inner.strip_prefix(open).and_then(|rest| rest.strip_suffix(close)) {
            start += open.len() + within.len() - within.trim_start_matches(is_space).len();
            inner = within.trim_matches(is_space);
            break;
        }
    }
    let bare =
        inner.trim_end_matches(|c: char| is_space(c) || matches!(c, '.' | ',' | ';' | ':' | '!' | '?'));
    if bare.is_empty() { (start, inner) } else { (start, bare) }
}

/// Steps over the word in front, and says what it claims.
fn claim(scanner: &mut Scanner<'_>) -> Claim {
    if scanner.at_digit() {
        return Claim::Nothing;
    }
    let words: &[(Claim, &[&str])] = match scanner.peek(0) {
        b'T' => &[
            (Claim::Tire, &["TIRE SIZE", "TYRE SIZE", "TIRES", "TYRES", "TIRE", "TYRE"]),
            (Claim::Number, &["TIN"]),
        ],
        b'R' => &[(Claim::Tire, &["REIFEN"]), (Claim::Wheel, &["RIM SIZE", "RIMS", "RIM"])],
        b'W' => &[(Claim::Wheel, &["WHEEL SIZE", "WHEELS", "WHEEL"])],
        b'F' => &[(Claim::Wheel, &["FELGEN", "FELGE"])],
        b'P' => &[(Claim::Tire, &["PNEUS", "PNEU"])],
        b'L' => &[(Claim::LoadIndex, &["LOAD INDEX", "LI"])],
        b'S' => &[
            (Claim::SpeedSymbol, &["SPEED SYMBOL", "SPEED RATING", "SPEED INDEX", "SI"]),
            (Claim::Nothing, &["SIZE"]),
        ],
        b'D' => &[
            (Claim::Date, &["DATE CODE", "DATE OF MANUFACTURE", "DATE", "DOT CODE", "DOT DATE"]),
            (Claim::Number, &["DOT TIN", "DOT NUMBER", "DOT NO"]),
        ],
        b'M' => &[(Claim::Date, &["MFG DATE", "MFG", "MANUFACTURED"])],
        _ => return Claim::Nothing,
    };
    for (claim, spellings) in words {
        let mut ahead = *scanner;
        if ahead.eat_any(spellings) {
            ahead.skip_colon();
            if ahead.at_end() {
                return Claim::Nothing;
            }
            *scanner = ahead;
            return *claim;
        }
    }
    Claim::Nothing
}

/// Every reading of a text, where dates up to a week are past.
pub(super) fn recognise(text: &str, present: ManufactureWeek) -> Result<Readings, ParseError> {
    let mut scanner = Scanner::new(text);
    scanner.begin()?;
    let (start, bare) = stripped(text);
    let mut scanner = Scanner::new(bare);
    let claim = claim(&mut scanner);
    let behind = scanner.at();
    let bare = bare.get(behind..).unwrap_or_default();
    let found = of_claim(claim, bare, present);
    found.map_err(|error| error.behind(start + behind))
}

fn of_claim(claim: Claim, text: &str, present: ManufactureWeek) -> Result<Readings, ParseError> {
    let mut list = List::default();
    let error = match claim {
        Claim::Tire => tires(text, &mut list),
        Claim::Wheel => wheels(text, &mut list),
        Claim::LoadIndex => LoadIndex::parse(text)
            .map(|index| list.push(Marking::LoadIndex(index), OTHER))
            .or_else(|error| {
                plausible_service(text)
                    .map(|service| list.push(Marking::ServiceDescription(service), OTHER))
                    .map_err(|_| error)
            })
            .err(),
        Claim::SpeedSymbol => {
            SpeedSymbol::parse(text).map(|symbol| list.push(Marking::SpeedSymbol(symbol), OTHER)).err()
        }
        Claim::Number => numbers(text, present, &mut list),
        Claim::Date => date::parse(text)
            .map(|code| match date::may_be_month(text) {
                true if date::is_past(code, present) => list.push_doubtful(Marking::DateCode(code), WEEK),
                _ => push_date(code, present, &mut list),
            })
            .err(),
        Claim::Nothing => anything(text, present, &mut list),
    };
    list.done().ok_or_else(|| error.unwrap_or(unrecognised(text)))
}

/// Nothing tells what the text is.
fn unrecognised(text: &str) -> ParseError {
    ParseError::new(ParseErrorKind::Unrecognised, Field::Text, 0, text.len())
}

fn push_date(code: crate::tire::identification::DateCode, present: ManufactureWeek, list: &mut List) {
    let marking = Marking::DateCode(code);
    if date::is_past(code, present) {
        list.push(marking, OTHER);
    } else {
        list.push_doubtful(marking, TO_COME);
    }
}

/// What stands behind `DOT` or `TIN`.
fn numbers(text: &str, present: ManufactureWeek, list: &mut List) -> Option<ParseError> {
    // Behind the certificate the date stands alone often.
    let mut scanner = Scanner::new(text);
    let error = match scanner.begin() {
        Ok(()) => {
            if scanner.eat_str("DOT") {
                scanner.skip_colon();
            }
            let behind = scanner.at();
            let rest = text.get(behind..).unwrap_or_default();
            match date::parse(rest) {
                Ok(code) => {
                    push_date(code, present, list);
                    return None;
                }
                // `KW` is a plant too.
                Err(error) if is_date(rest) && Scanner::new(rest).eat_word("WEEK") => {
                    return Some(error.behind(behind));
                }
                Err(_) => {}
            }
            // `DOT:` and `TIN` are `DOT`.
            let mut number = Text::new();
            let whole = if text.len() >= 4 && text.as_bytes()[3] == b'-' || behind == 3 {
                text
            } else {
                number.str("DOT ").str(rest);
                number.as_str()
            };
            match IdentificationNumber::parse(whole) {
                Ok(read) => {
                    // A week whose word is written in two, which would be shown as one.
                    let mut shown = Text::new();
                    read.write(&mut shown);
                    let shown = shown.as_str();
                    if let Ok(code) = date::parse(shown.strip_prefix("DOT ").unwrap_or(shown)) {
                        push_date(code, present, list);
                        return None;
                    }
                    match read.date() {
                        Some(code) if read.form() == IdentificationForm::DateAlone => {
                            push_date(code, present, list);
                        }
                        Some(code) if !date::is_past(code, present) => {
                            list.push_doubtful(Marking::IdentificationNumber(read), TO_COME);
                        }
                        _ => list.push(Marking::IdentificationNumber(read), OTHER),
                    }
                    return None;
                }
                Err(error) if core::ptr::eq(whole, text) => error,
                // Without the four bytes in front, and with those that stand there.
                Err(error) => {
                    let moved = |at: usize| (at + behind).saturating_sub(4).min(text.len());
                    ParseError::new(
                        error.kind(),
                        error.field(),
                        moved(error.span().start),
                        moved(error.span().end),
                    )
                }
            }
        }
        Err(error) => error,
    };
    Some(error)
}

/// Tires alone, where a word in front says so.
fn tires(text: &str, list: &mut List) -> Option<ParseError> {
    match SidewallLine::parse(text) {
        Ok(line) => {
            list.push(of_line(line), OTHER);
            None
        }
        Err(error) => Some(error),
    }
}

/// Wheels alone, where a word in front says so.
fn wheels(text: &str, list: &mut List) -> Option<ParseError> {
    match (Wheel::parse(text), Parts::parse(text)) {
        (Ok(wheel), _) => list.push(Marking::Wheel(wheel), OTHER),
        (_, Ok(parts)) if parts.size.is_some() => push_parts(&parts, list),
        (_, Ok(parts)) => match single(&parts) {
            Some(part) => list.push(part, OTHER),
            None => return Some(end_is_missing(text, Field::RimWidth)),
        },
        (Err(a), Err(b)) => return Some(further(a, b)),
    }
    None
}

fn end_is_missing(text: &str, field: Field) -> ParseError {
    ParseError::new(ParseErrorKind::Missing, field, text.len(), text.len())
}

fn of_line(line: SidewallLine) -> Marking {
    if line.is_bare() { Marking::Tire(line.tire()) } else { Marking::SidewallLine(line) }
}

/// One that stands alone, or said twice, is itself.
fn of_marks(marks: SidewallMarks) -> Marking {
    let mut text = Text::new();
    marks.write(&mut text);
    let text = text.as_str();
    if let Ok(service) = ServiceDescription::parse(text) {
        Marking::ServiceDescription(service)
    } else if let Ok(limit) = MoldedLimit::parse(text) {
        Marking::MoldedLimit(limit)
    } else if let Ok(mark) = SidewallMark::parse(text) {
        Marking::SidewallMark(mark)
    } else {
        Marking::SidewallMarks(marks)
    }
}

fn of_stamp(stamp: WheelStamp) -> Marking {
    if stamp.is_more_than_a_wheel() { Marking::WheelStamp(stamp) } else { Marking::Wheel(stamp.wheel()) }
}

fn push_parts(parts: &Parts, list: &mut List) {
    if parts.presumed_seat {
        list.push_doubtful(of_stamp(parts.stamp), CONE);
    } else {
        list.push(of_stamp(parts.stamp), RIM_BY_WIDTH);
    }
}

/// The one part that there is of a wheel without a size.
fn single(parts: &Parts) -> Option<Marking> {
    let stamp = &parts.stamp;
    let wheel = stamp.wheel();
    if stamp.has_own_part() || parts.size.is_some() {
        return None;
    }
    let circles = match (wheel.bolt_circle(), wheel.second_bolt_circle()) {
        (Some(first), Some(second)) => DualDrilling::new(first, second).map(Marking::DualDrilling),
        (Some(circle), None) => Some(Marking::BoltCircle(circle)),
        _ => None,
    };
    let mut found = [
        circles,
        wheel.inset().map(Marking::Inset),
        wheel.backspacing().map(Marking::Backspacing),
        wheel.bore().map(Marking::Bore),
        stamp.seat().map(Marking::Seat),
        stamp.thread().map(Marking::Thread),
    ]
    .into_iter()
    .flatten();
    let one = found.next()?;
    // A number without its word is no bore where nothing else is.
    (found.next().is_none() && !(parts.bare_bore && matches!(one, Marking::Bore(_)))).then_some(one)
}

/// A service description in which both load indices can be of one tire: the second lies a few below the first.
fn plausible_service(text: &str) -> Result<ServiceDescription, ParseError> {
    let service = ServiceDescription::parse(text)?;
    if is_plausible(service) { Ok(service) } else { Err(unrecognised(text)) }
}

/// How far a second load index lies from the first. Common practice, no source: tables have up to eight below.
const FURTHEST: u16 = 12;

fn is_plausible(service: ServiceDescription) -> bool {
    const WIDEST_RIM: u16 = 14;
    // `7J` is the width and the contour of a rim.
    if service.single().number() <= WIDEST_RIM
        && service.dual().is_none()
        && matches!(service.speed(), SpeedSymbol::B | SpeedSymbol::E | SpeedSymbol::J | SpeedSymbol::K)
    {
        return false;
    }
    service.dual().is_none_or(|dual| service.single().number() - dual.number() <= FURTHEST)
}

/// The second service description is of the same tire: its load lies as near as that of a pair.
fn has_plausible_services(marks: &SidewallMarks) -> bool {
    let is_near = |second: ServiceDescription| {
        let load = |service: ServiceDescription| service.single().number();
        marks.service().is_none_or(|first| load(first).abs_diff(load(second)) <= FURTHEST)
    };
    marks.service().is_none_or(is_plausible) && marks.second_service().is_none_or(is_near)
}

/// Tires, wheels, and what two numbers alone can be beside them.
fn sizes(text: &str, list: &mut List) -> Result<(), ParseError> {
    let line = SidewallLine::parse(text);
    if let Ok(line) = line {
        // A width in millimetres with a letter or a stroke behind is nothing else.
        if matches!(
            line.tire().size(),
            TireSize::Metric(_) | TireSize::FullProfile(_) | TireSize::AlphaNumeric(_)
        ) {
            list.push(of_line(line), TIRE_BY_WIDTH);
            return Ok(());
        }
    }
    let parts = Parts::parse(text);
    let wheel = Wheel::parse(text);
    let tire = line.ok().map(of_line);
    let circle = BoltCircle::parse(text).ok().or_else(|| match parts.as_ref().ok().and_then(single) {
        Some(Marking::BoltCircle(circle)) => Some(circle),
        _ => None,
    });
    // No wheel is so large that it has other circles than those that are made.
    let circle = circle
        .filter(|circle| circle.is_standard() || crate::units::in_mm(circle.diameter()) <= LARGEST_CIRCLE_MM);
    let size = line.ok().map(|line| line.tire().size());
    let bare_wheel = wheel.ok().map(|wheel| wheel.size()).filter(|size| size.contour().is_none());
    let is_small = bare_wheel.is_some_and(|size| size.diameter().tenths() < SURELY_A_RIM);
    let has_dash = bare_wheel.is_some_and(|size| size.is_multi_piece());

    if circle.is_some_and(|circle| circle.is_standard() || is_small && has_dash) {
        list.push(Marking::BoltCircle(circle.ok_or(unrecognised(text))?), HOLES);
    }
    if let (Some(size), Some(line)) = (bare_wheel, as_dashed_tire(text)) {
        if !size.is_multi_piece() && wheel.is_ok_and(|wheel| wheel == Wheel::of_size(size)) {
            list.push(of_line(line), TIRE_BY_WIDTH);
        }
    }
    let of_tire = size.map_or(TIRE_BY_WIDTH, when_tire);
    let tire_first = size.is_some_and(|size| {
        size.is_told_from_rim() || matches!(size, TireSize::Flotation(_)) || is_of_implements(&size, text)
    });
    if let (Some(tire), true) = (tire, tire_first) {
        list.push(tire, of_tire);
    }
    match (wheel, &parts) {
        (Ok(wheel), _) => list
            .push(Marking::Wheel(wheel), if is_small && !has_dash { RIM_BY_DIAMETER } else { RIM_BY_WIDTH }),
        (Err(_), Ok(parts)) if parts.size.is_some() => push_parts(parts, list),
        _ => {}
    }
    if let Some(tire) = tire {
        list.push(tire, of_tire);
    }
    if let Ok(line) = line {
        push_light_truck(line, list);
    }
    push_with_outset(text, line.is_ok(), list);
    if let Some(circle) = circle {
        list.push(Marking::BoltCircle(circle), HOLES);
    }
    if let Some(part) = parts.as_ref().ok().filter(|parts| parts.size.is_none()).and_then(single) {
        if parts.is_ok_and(|parts| parts.presumed_seat) {
            list.push_doubtful(part, CONE);
        } else {
            list.push(part, THREAD);
        }
    }
    if !list.is_empty() {
        return Ok(());
    }
    // A wheel that contradicts itself is still a wheel.
    let contradicts = |error: &ParseError| error.kind() == ParseErrorKind::Contradiction;
    let (line, stamp) = (line.err(), parts.as_ref().err().copied());
    if let Some(error) = wheel.err().filter(contradicts).or(stamp.filter(contradicts)) {
        return Err(error);
    }
    let mut worst = line.filter(|_| is_begun_as_size(text)).unwrap_or(ParseError::new(
        ParseErrorKind::Missing,
        Field::Text,
        0,
        0,
    ));
    // Three digits and a stroke are a tire.
    if text.split_once('/').is_some_and(|(width, _)| {
        let width = width.trim_start_matches(|c: char| c.is_ascii_alphabetic() || c == ' ').trim_end();
        width.len() == 3 && width.bytes().all(|byte| byte.is_ascii_digit())
    }) {
        return Err(worst);
    }
    if counts_holes(text) {
        return Err(end_is_missing(text, Field::BoltCircle));
    }
    // A month and a year could be holes on inches, and are neither.
    let of_circle = BoltCircle::parse(text).err().filter(|error| error.kind() == ParseErrorKind::Ambiguous);
    if date::is_two_numbers(text) && (text.starts_with('0') || of_circle.is_none()) {
        return Err(ParseError::new(ParseErrorKind::Ambiguous, Field::DateCode, 0, text.len()));
    }
    if let Some(error) = of_circle {
        return Err(error);
    }
    let claims_size = parts.as_ref().is_ok_and(|parts| parts.size.is_none() && parts.is_anything());
    if claims_size && single(parts.as_ref().unwrap_or(&Parts::NONE)).is_none() {
        worst = further(worst, end_is_missing(text, Field::RimWidth));
    }
    for error in stamp.into_iter().chain(wheel.err()).chain(BoltCircle::parse(text).err()) {
        worst = further(worst, error);
    }
    Err(worst)
}

/// The greatest bolt circle there is, on trucks. Common practice, no source.
const LARGEST_CIRCLE_MM: f64 = 335.0;

/// Whether digits stand in front, or three behind a prefix, or two behind a load letter.
fn is_begun_as_size(text: &str) -> bool {
    let letters = text.bytes().take_while(u8::is_ascii_alphabetic).count();
    let (prefix, rest) = text.split_at_checked(letters).unwrap_or_default();
    let digits = rest.trim_start().bytes().take_while(u8::is_ascii_digit).count();
    let is_prefix = ["P", "LT", "ST", "HL", "T", "M"].iter().any(|known| prefix.eq_ignore_ascii_case(known));
    match letters {
        0 => digits > 0,
        _ if is_prefix => digits > 0 && digits <= 3,
        1 => digits == 2,
        2 => digits == 2 && prefix.starts_with(['M', 'm']),
        _ => false,
    }
}

/// From this code on, what could be a rim diameter is one; in tenths of an inch.
const SURELY_A_RIM: u16 = 100;

fn when_tire(size: TireSize) -> &'static str {
    const WIDEST_MM: f64 = 5.5 * 25.4;
    match size {
        TireSize::Flotation(_) => TIRE_BY_DIAMETER,
        _ if size.rim_diameter().tenths() >= 140
            && size.nominal_width().is_some_and(|width| crate::units::in_mm(width) <= WIDEST_MM) =>
        {
            MOTORCYCLE_BY_WIDTH
        }
        _ => TIRE_BY_WIDTH,
    }
}

/// Whether a size by width in inches is one of implements, trailers or small tractors: a whole width, a dash and a rim
/// from 10 in, or an `L`. Common practice, no source.
fn is_of_implements(size: &TireSize, text: &str) -> bool {
    let TireSize::Numeric(_) = size else { return false };
    let decimal = text.bytes().take_while(|byte| *byte != b'-').any(|byte| matches!(byte, b'.' | b','));
    size.structure() == Structure::Diagonal
        && (!decimal && size.rim_diameter().tenths() >= SURELY_A_RIM
            || text.bytes().any(|byte| byte.eq_ignore_ascii_case(&b'L')))
}

/// The tire of two decimals, where `x` stands in place of its dash.
fn as_dashed_tire(text: &str) -> Option<SidewallLine> {
    let (width, rim) = text.split_once(['x', 'X', '*', '\u{d7}'])?;
    let (width, rim) = (width.trim(), rim.trim());
    let decimals = width.len() - width.find(['.', ','])? - 1;
    if decimals != 2 || width.len() + rim.len() > 16 {
        return None;
    }
    let mut dashed = Text::new();
    dashed.str(width).byte(b'-').str(rim);
    let line = SidewallLine::parse(dashed.as_str()).ok()?;
    let size = line.tire().size();
    // On half-inch codes it is the rims that have two decimals.
    let is_made = size.rim_diameter().seat_taper() == SeatTaper::FiveDegree;
    (matches!(size, TireSize::Numeric(_)) && is_made).then_some(line)
}

/// The same tire with `LT`, where a table lists it so.
fn push_light_truck(line: SidewallLine, list: &mut List) {
    let size = line.tire().size();
    if !matches!(size, TireSize::Flotation(_)) || size.class() == SizeClass::LightTruck {
        return;
    }
    let (mut plain, mut own) = (Text::new(), Text::new());
    line.write(&mut plain);
    size.write(&mut own);
    let Some(rest) = plain.as_str().strip_prefix(own.as_str()) else { return };
    let mut with = Text::new();
    with.str(own.as_str()).str("LT").str(rest);
    if let Ok(line) = SidewallLine::parse(with.as_str()) {
        if line.tire().size().listing().is_some() {
            list.push(of_line(line), TIRE_FOR_LIGHT_TRUCK);
        }
    }
}

/// `20x10-12` as a wheel with its outset; where no tire is read, only what is more than any rim in the wheel's place:
/// `13x5.00-6` is the size of a small tire.
fn push_with_outset(text: &str, is_tire: bool, list: &mut List) {
    const LEAST_WHEEL: u16 = 130;
    const LONGEST: usize = 24;
    let Some((size, outset)) = text.rsplit_once('-') else { return };
    let glued =
        size.ends_with(|c: char| c.is_ascii_digit()) && outset.starts_with(|c: char| c.is_ascii_digit());
    if text.len() > LONGEST || !glued || !size.contains(['x', 'X', '*', '\u{d7}']) {
        return;
    }
    let mut spaced = Text::new();
    spaced.str(size).str(" -").str(outset);
    match Wheel::parse(spaced.as_str()) {
        Ok(wheel)
            if wheel.size().diameter().tenths() >= LEAST_WHEEL
                && wheel.inset().is_some_and(|inset| {
                    is_tire
                        || crate::units::in_mm(-inset.length())
                            >= f64::from(wheel.size().diameter().tenths()) / 10.0
                }) =>
        {
            list.push(Marking::Wheel(wheel), WHEEL_WITH_OUTSET);
        }
        _ => {}
    }
}

/// A text that no word in front explains.
fn anything(text: &str, present: ManufactureWeek, list: &mut List) -> Option<ParseError> {
    let bytes = text.as_bytes();
    if bytes.iter().all(u8::is_ascii_digit) {
        return digits(text, present, list);
    }
    let claims_number = bytes.get(..3).is_some_and(|word| word.eq_ignore_ascii_case(b"DOT"));
    if claims_number {
        return certified(text, present, list);
    }
    // A month and a year, or a week: nothing says which, nor of what.
    if date::is_year_beside_number(text) {
        return Some(ParseError::new(ParseErrorKind::Ambiguous, Field::DateCode, 0, text.len()));
    }
    if is_date(text) {
        return date::parse(text).map(|code| push_date(code, present, list)).err();
    }
    // Behind the word of a permit stands its number and nothing else.
    if claims_permit(bytes) {
        return match Approval::parse(text) {
            Ok(approval) => {
                list.push(Marking::Approval(approval), OTHER);
                None
            }
            Err(error) => Some(error),
        };
    }
    let mut worst = match sizes(text, list) {
        Ok(()) => return None,
        Err(error) => error,
    };
    let of_sizes = worst;
    if let Ok(symbol) = SpeedSymbol::parse(text) {
        list.push(Marking::SpeedSymbol(symbol), SPEED);
        let mut named = Text::new();
        named.str("LR").str(text);
        if let Ok(range) = LoadRange::parse(named.as_str()) {
            list.push(Marking::SidewallMark(SidewallMark::LoadRange(range)), RANGE);
        }
        return None;
    }
    if let Ok(service) = plausible_service(text) {
        list.push(Marking::ServiceDescription(service), INDEX);
        return None;
    }
    let letter = bytes.first().copied().unwrap_or(0).to_ascii_uppercase();
    if let Ok(approval) = Approval::parse(text) {
        list.push(Marking::Approval(approval), OTHER);
        return None;
    }
    match MoldedLimit::parse(text) {
        Ok(limit) => {
            list.push(Marking::MoldedLimit(limit), OTHER);
            return None;
        }
        // A number without a unit of speed is no limit for that.
        Err(error) if !letter.is_ascii_digit() => worst = further(worst, error),
        Err(_) => {}
    }
    match SidewallMark::parse(text) {
        Ok(SidewallMark::Approval(mark)) => list.push(Marking::Approval(Approval::Mark(mark)), OTHER),
        Ok(mark) => list.push(Marking::SidewallMark(mark), OTHER),
        Err(error) => worst = further(worst, error),
    }
    match Grading::parse(text) {
        Ok(grading) => list.push(Marking::Grading(grading), OTHER),
        // A number with something else behind is no grading for that.
        Err(error)
            if error.span().start <= 3 || bytes.get(error.span().start).is_some_and(u8::is_ascii_digit) => {}
        Err(error) => worst = further(worst, error),
    }
    match Grade::parse(text) {
        Ok(grade) => list.push(Marking::Grade(grade), OTHER),
        Err(error) => worst = further(worst, error),
    }
    match EnergyLabel::parse(text) {
        Ok(label) => list.push(Marking::Label(label), OTHER),
        Err(error) if error.span().start > 1 => worst = further(worst, error),
        Err(_) => {}
    }
    if !list.is_empty() {
        return None;
    }
    match SidewallMarks::parse(text) {
        Ok(marks) if has_plausible_services(&marks) => {
            list.push(of_marks(marks), OTHER);
            return None;
        }
        Ok(_) => {}
        Err(error) if error.span().start == 0 || letter.is_ascii_digit() => {}
        Err(error) => worst = further(worst, error),
    }
    if let Ok(number) = IdentificationNumber::parse(text) {
        if is_whole(&number, text) && number.date().is_some_and(|code| date::is_past(code, present)) {
            list.push_doubtful(Marking::IdentificationNumber(number), NUMBER);
            return None;
        }
    }
    if letter == b'M' && is_begun_as_size(text) {
        if let Err(error) = Thread::parse(text) {
            worst = further(worst, error);
        }
    }
    if let Err(error) = Approval::parse(text) {
        let is_country =
            letter == b'E' && bytes.get(1).is_some_and(u8::is_ascii_digit) && !is_begun_as_size(text);
        if is_country {
            return Some(error);
        }
        if matches!(letter, b'K' | b'A' | b'U') {
            worst = further(worst, error);
        }
    }
    if let Err(error) = ServiceDescription::parse(text) {
        let has_symbol = bytes.last().is_some_and(u8::is_ascii_alphabetic);
        if has_symbol && error.field() == Field::DualLoadIndex && error.kind() == ParseErrorKind::OutOfRange {
            return Some(error);
        }
    }
    if of_sizes.kind() == ParseErrorKind::Contradiction {
        return Some(of_sizes);
    }
    // What was not even begun to be read resembles nothing, nor does a number alone.
    let not_begun =
        worst.span().start == 0 && matches!(worst.kind(), ParseErrorKind::Missing | ParseErrorKind::Trailing);
    let unit = text.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',')).trim_start();
    let is_number = letter.is_ascii_digit()
        && ["", "mm", "kg", "kgs", "lb", "lbs", "psi", "kpa", "bar", "km/h", "mph"]
            .iter()
            .any(|known| unit.eq_ignore_ascii_case(known));
    // One or two digits with any letter behind begin no size.
    let is_cut = worst.field() == Field::Structure && worst.span().start <= 2;
    Some(if not_begun || is_number || is_cut { unrecognised(text) } else { worst })
}

/// Digits alone: a load index, or possibly a date.
fn digits(text: &str, present: ManufactureWeek, list: &mut List) -> Option<ParseError> {
    if text.len() == 4 {
        return match date::parse(text) {
            Ok(code) if date::is_past(code, present) => {
                list.push_doubtful(Marking::DateCode(code), DATE);
                None
            }
            Ok(_) => Some(ParseError::new(ParseErrorKind::OutOfRange, Field::DateCode, 0, text.len())),
            Err(error) => Some(error),
        };
    }
    if text.len() > 4 {
        return Some(unrecognised(text));
    }
    match LoadIndex::parse(text) {
        Ok(index) => {
            list.push(Marking::LoadIndex(index), INDEX);
            None
        }
        Err(error) => Some(error),
    }
}

/// A text that begins with `DOT`: a number, a date, a wheel with that mark, or the mark alone.
fn certified(text: &str, present: ManufactureWeek, list: &mut List) -> Option<ParseError> {
    if let Ok(mark) = SidewallMark::parse(text) {
        list.push(Marking::SidewallMark(mark), OTHER);
        return None;
    }
    match Parts::parse(text) {
        Ok(parts) if parts.size.is_some() => {
            push_parts(&parts, list);
            return None;
        }
        Err(error)
            if error.kind() == ParseErrorKind::Contradiction
                && matches!(error.field(), Field::BoltCircle | Field::Bore) =>
        {
            return Some(error);
        }
        _ => {}
    }
    if let Some(marks) = SidewallMarks::parse(text).ok().filter(|marks| marks.service().is_none()) {
        list.push(of_marks(marks), OTHER);
        return None;
    }
    numbers(text, present, list)
}

/// Whether the word of a permit stands in front.
fn claims_permit(bytes: &[u8]) -> bool {
    matches!(bytes, [b'K' | b'k', b'B' | b'b', b'A' | b'a', ..] | [b'A' | b'a', b'B' | b'b', b'E' | b'e', ..])
}

/// Whether a week with its year is written out.
fn is_date(text: &str) -> bool {
    let mut scanner = Scanner::new(text);
    scanner.begin().is_ok() && date::is_written_out(&scanner)
}

/// Whether it is all of a current number: 13 symbols, letters among them, parted where its groups end or not at all.
fn is_whole(number: &IdentificationNumber, text: &str) -> bool {
    if number.form() != IdentificationForm::Current {
        return false;
    }
    let mut symbols = 0;
    let mut letters = 0;
    let mut parted = true;
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() {
            symbols += 1;
            letters += u32::from(byte.is_ascii_alphabetic());
        } else {
            parted &= matches!(symbols, 3 | 9);
        }
    }
    letters >= 2 && parted
}

/// The error that begins later; if they begin together, the longer, which has read more, or else the first.
fn further(a: ParseError, b: ParseError) -> ParseError {
    let (of_a, of_b) = (a.span(), b.span());
    if of_b.start > of_a.start || of_a.start == of_b.start && of_b.end > of_a.end { b } else { a }
}
