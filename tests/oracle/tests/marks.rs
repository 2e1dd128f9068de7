//! Marks of the sidewall: round trips, hostile text, and jiff's calendar beside ours.

#![allow(clippy::unwrap_used)]

use beadseat::ParseError;
use beadseat::fitment::{
    Change, CheckId, Conditions, Limits, Position, Setup, Setups, TireInUse, Verdict, assess,
};
use beadseat::tire::{
    energy_label::TireClass,
    grading::{Grading, TemperatureGrade, TractionGrade, TreadwearGrade},
    identification::{DateCode, IdentificationNumber, ManufactureWeek},
    sidewall::{ApprovalMark, Plies, SidewallMark},
};
use beadseat::vehicle::{Kind, Vehicle};
use jiff::ToSpan;
use jiff::civil::{Date, Weekday, date};
use proptest::prelude::*;

/// The Sunday on or before a day.
fn sunday(day: Date) -> Date {
    day.checked_sub(i64::from(day.weekday().to_sunday_zero_offset()).days()).unwrap()
}

/// The place of a day among the days of the same name in its year, from 1.
fn place_in_year(day: Date) -> u8 {
    u8::try_from((day.day_of_year() - 1) / 7 + 1).unwrap()
}

#[test]
fn a_year_has_as_many_weeks_as_sundays() {
    for year in 1970..=2099 {
        let days = date(year, 1, 1).series(1.day()).take_while(|day| day.year() == year);
        let sundays = days.filter(|day| day.weekday() == Weekday::Sunday).count();
        assert_eq!(usize::from(ManufactureWeek::weeks_in(year.unsigned_abs())), sundays, "{year}");
    }
}

#[test]
fn every_day_from_1970_to_2099_is_in_the_week_of_its_sunday() {
    let first_known = date(1971, 4, 25);
    let (mut known, mut unknown) = (0, 0);
    for day in date(1970, 1, 1).series(1.day()).take_while(|day| *day <= date(2100, 1, 9)) {
        let start = sunday(day);
        let week = ManufactureWeek::containing(day);
        if start < first_known || start.year() > 2099 {
            assert_eq!(week, None, "{day}");
            unknown += 1;
            continue;
        }
        let week = week.unwrap();
        assert_eq!(
            (week.first_day(), week.last_day()),
            (start, start.checked_add(6.days()).unwrap()),
            "{day}"
        );
        assert_eq!(i16::try_from(week.year()).unwrap(), start.year(), "{day}");
        assert_eq!(week.week(), place_in_year(start), "{day}");
        known += 1;
    }
    assert_eq!((known, unknown), (47_005, 486));
}

#[test]
fn iso_weeks_begin_six_days_before_or_one_day_after() {
    for year in 1972..=2099 {
        let ours = ManufactureWeek::new(1, year).unwrap().first_day();
        let iso = jiff::civil::ISOWeekDate::new(year as i16, 1, Weekday::Monday).unwrap().date();
        let later = (iso - ours).get_days();
        assert!(later == -6 || later == 1, "{year}: {later}");
    }
}

/// What the check of age says of a code on a day, and whether it knows the age.
fn age_verdict(code: DateCode, day: Date) -> (Verdict, Option<beadseat::fitment::Value>) {
    let setup = Setup::new("205/55R16 91V".parse().unwrap(), "7Jx16".parse().unwrap())
        .with_left(TireInUse::new().with_date_code(code));
    let setups = Setups { front: Some(setup), rear: None };
    let conditions = Conditions::new().with_date(day.to_string().parse().unwrap());
    let change = Change { original: setups, proposed: setups };
    let report = assess(&Vehicle::new(Kind::Passenger), &change, &conditions, &Limits::default());
    let check = report.get(CheckId::TireAge, Position::FrontLeft).unwrap();
    (check.verdict(), check.measured())
}

fn has_iso_53(year: u16) -> bool {
    jiff::civil::ISOWeekDate::new(year as i16, 53, Weekday::Monday).is_ok()
}

/// A week 53 of ISO 8601 is never one of the rule, and has the days of ISO 8601.
#[test]
fn a_year_has_week_53_by_one_rule_at_most() {
    for year in 1972..=2099 {
        let by_rule = ManufactureWeek::weeks_in(year) == 53;
        assert!(!(by_rule && has_iso_53(year)), "{year}");
        let week = ManufactureWeek::new(53, year);
        assert_eq!(week.map(|week| week.is_iso_only()), (by_rule || has_iso_53(year)).then_some(!by_rule));
        if let Some(week) = week.filter(|week| week.is_iso_only()) {
            let iso = |day| jiff::civil::ISOWeekDate::new(year as i16, 53, day).unwrap().date();
            assert_eq!((week.first_day(), week.last_day()), (iso(Weekday::Monday), iso(Weekday::Sunday)));
            assert!(ManufactureWeek::new(52, year).unwrap() < week);
        }
    }
}

#[test]
fn every_date_code_round_trips_or_is_refused_by_the_calendar() {
    let mut four = 0;
    for (week, year) in (0..100).flat_map(|week| (0..100).map(move |year| (week, year))) {
        let text = format!("{week:02}{year:02}");
        let in_iso = has_iso_53(2000 + year);
        let exists = week >= 1 && (week <= ManufactureWeek::weeks_in(2000 + year) || week == 53 && in_iso);
        let code = DateCode::parse(&text);
        assert_eq!(code.is_ok(), exists, "{text}");
        if let Ok(code) = code {
            assert_eq!((code.to_string(), code.manufacture_year()), (text, Some(2000 + year)));
            assert_eq!(code.is_iso_only(), week == 53 && in_iso);
            four += 1;
        }
    }
    let years: u32 = (2000..2100).map(|year| u32::from(ManufactureWeek::weeks_in(year))).sum();
    let by_iso: u32 = (2000..2100).map(|year| u32::from(has_iso_53(year))).sum();
    assert_eq!((four, by_iso), (years + by_iso, 18));

    for (week, digit) in (0..100).flat_map(|week| (0..10).map(move |digit| (week, digit))) {
        let text = format!("{week:02}{digit}");
        let last_day_of_three_digits = date(2000, 7, 1);
        let weeks = (1971..=2000).filter(|year| year % 10 == digit).filter_map(|year| {
            let week = ManufactureWeek::new(week, year).filter(|week| !week.is_iso_only());
            week.filter(|week| week.last_day() <= last_day_of_three_digits)
        });
        let mut weeks: Vec<_> = weeks.collect();
        weeks.reverse();
        match DateCode::parse(&text) {
            Ok(code) => {
                assert_eq!(code.to_string(), text);
                assert_eq!(code.candidates().collect::<Vec<_>>(), weeks, "{text}");
            }
            Err(_) => assert!(weeks.is_empty(), "{text}"),
        }
    }
}

#[test]
fn every_grading_round_trips() {
    for number in (20..=9980).step_by(20) {
        for traction in [TractionGrade::AA, TractionGrade::A, TractionGrade::B, TractionGrade::C] {
            for temperature in [TemperatureGrade::A, TemperatureGrade::B, TemperatureGrade::C] {
                let grading = Grading::new(TreadwearGrade::new(number).unwrap(), traction, temperature);
                assert_eq!(grading.to_string().parse(), Ok(grading));
                let (t, u) = (traction.name(), temperature.name());
                let molded = format!("TREADWEAR {number} TRACTION {t} TEMPERATURE {u}");
                assert_eq!(molded.parse(), Ok(grading));
                // Run together it is read as this or refused, never as another.
                let tight = Grading::parse(&format!("{number}{t}{u}"));
                assert!(tight == Ok(grading) || tight.is_err());
            }
        }
    }
}

/// Symbols of an identification number, which may end in digits.
fn symbols() -> impl Strategy<Value = String> {
    ("[0-9ABCDEFHJKLMNPRTUVWXY]{0,13}", prop_oneof![Just(""), Just("0118"), Just("317"), Just("5217")])
        .prop_map(|(front, back)| format!("{front}{back}"))
}

/// Whether a failed parse points into its text.
fn points_inside(text: &str, error: ParseError) -> bool {
    text.get(error.span()).is_some() || text.len() > 255
}

proptest! {
    #[test]
    fn an_identification_number_round_trips(
        symbols in symbols(),
        prefix in prop_oneof![Just(""), Just("DOT "), Just("DOT-R "), Just("dot-")],
    ) {
        if let Ok(number) = IdentificationNumber::parse(&format!("{prefix}{symbols}")) {
            prop_assert_eq!(number.to_string().parse(), Ok(number));
            prop_assert_eq!(number.symbols(), symbols.as_str());
            let first = number.readings().next().unwrap();
            prop_assert_eq!((first.form(), first.plant(), first.date()), (number.form(), number.plant(), number.date()));
            for reading in number.readings() {
                let date = reading.date().map_or(String::new(), |date| date.to_string());
                let groups = [reading.plant(), reading.size_code(), reading.maker_code(), Some(&date)];
                prop_assert_eq!(groups.into_iter().flatten().collect::<String>(), symbols.as_str());
            }
        }
    }

    #[test]
    fn separators_mean_nothing(symbols in symbols(), gaps in proptest::collection::vec(0..4_u8, 18)) {
        let mut spaced = String::from("DOT ");
        for (symbol, gap) in symbols.chars().zip(gaps) {
            spaced.push(symbol.to_ascii_lowercase());
            spaced.push_str(["", " ", "-", "\u{a0}"][usize::from(gap)]);
        }
        let (plain, spaced) = (IdentificationNumber::parse(&format!("DOT {symbols}")), IdentificationNumber::parse(&spaced));
        prop_assert_eq!(plain.is_ok(), spaced.is_ok());
        if let (Ok(plain), Ok(spaced)) = (plain, spaced) {
            prop_assert_eq!(plain, spaced);
        }
    }

    #[test]
    fn an_approval_round_trips(
        text in "[Ee][1-9][0-9]?( [0-9]{4,8}( (S[12]?W?(R[12]?)?|WR?|R1))?)?",
    ) {
        let mark = ApprovalMark::parse(&text).unwrap();
        prop_assert_eq!(mark.to_string(), text.as_str());
        prop_assert_eq!(SidewallMark::parse(&text), Ok(SidewallMark::Approval(mark)));
    }

    #[test]
    fn plies_round_trip_and_add_up(
        tread in prop::collection::vec((1..=20_u8, 0..7_usize), 0..=4),
        sidewall in prop::collection::vec((1..=20_u8, 0..7_usize), 0..=4),
        heading in any::<bool>(),
        swapped in any::<bool>(),
    ) {
        const WORDS: [&str; 7] = ["POLYESTER", "STEEL", "NYLON", "RAYON", "ARAMID", "FIBERGLASS", "PLIES"];
        let part = |name: &str, layers: &[(u8, usize)]| {
            let layers: Vec<String> = layers.iter().map(|(n, word)| format!("{n} {}", WORDS[*word])).collect();
            if layers.is_empty() { String::new() } else { format!("{name} {}", layers.join(" + ")) }
        };
        let (tread_text, sidewall_text) = (part("TREAD", &tread), part("SIDEWALL", &sidewall));
        let canonical = format!("{tread_text} {sidewall_text}").trim().to_owned();
        prop_assume!(!canonical.is_empty());
        let other = format!("{sidewall_text}, {tread_text}");
        let typed = if swapped { other.trim_matches([',', ' ']).to_lowercase() } else { canonical.clone() };
        let typed = if heading { format!("PLIES: {typed}") } else { typed };
        let plies = Plies::parse(&typed).map_err(|error| TestCaseError::fail(error.show(&typed).to_string()))?;
        prop_assert_eq!(plies.to_string(), canonical);
        let sum = |layers: &[(u8, usize)]| (!layers.is_empty()).then(|| layers.iter().map(|l| l.0).sum::<u8>());
        prop_assert_eq!((plies.tread_plies(), plies.sidewall_plies()), (sum(&tread), sum(&sidewall)));
        prop_assert_eq!(plies.tread().count() + plies.sidewall().count(), tread.len() + sidewall.len());
        prop_assert_eq!(SidewallMark::parse(&typed), Ok(SidewallMark::Plies(plies)));
    }

    #[test]
    fn hostile_text_is_refused_in_its_own_bounds(text in prop_oneof![
        any::<String>(),
        "\\PC{0,300}",
        "(DOT|DOT-R|E|e|UTQG|TREADWEAR|M|TREAD 2|PLIES SIDEWALL 1 STEEL|TREAD 4 PLIES)?[ -~\u{a0}é→]{0,40}",
    ]) {
        macro_rules! try_all { ($($type:ty),*) => { $(
            match text.parse::<$type>() {
                Ok(value) => prop_assert_eq!(value.to_string().parse(), Ok(value)),
                Err(error) => {
                    prop_assert!(points_inside(&text, error), "{:?}", error);
                    let _ = error.show(&text).to_string();
                }
            }
        )* } }
        try_all!(IdentificationNumber, DateCode, Grading, TreadwearGrade, SidewallMark, ApprovalMark, Plies);
    }

    #[test]
    fn a_text_is_one_kind_of_mark(text in "[0-9A-Z →+&.-]{1,13}") {
        let kinds = [
            IdentificationNumber::parse(&text).is_ok(),
            Grading::parse(&text).is_ok(),
            SidewallMark::parse(&text).is_ok(),
        ];
        prop_assert!(kinds.iter().filter(|read| **read).count() <= 1, "{}", text);
    }

    /// Any code on any day: judged, and young enough only if it can have been made by then, by the rule or by
    /// ISO 8601.
    #[test]
    fn a_code_with_a_day_is_always_judged(
        (week, year) in (1u8..=53, 0u16..100), digits in 3..=4_usize, years in 1900i16..=9999, days in 1i16..=365,
        near in -20i64..20, is_near in any::<bool>(),
    ) {
        let text = if digits == 4 { format!("{week:02}{year:02}") } else { format!("{week:02}{}", year % 10) };
        let Ok(code) = DateCode::parse(&text) else { return Ok(()) };
        let starts = code.candidates().map(|week| {
            let iso = jiff::civil::ISOWeekDate::new(week.year() as i16, week.week() as i8, Weekday::Monday);
            iso.map_or(week.first_day(), |iso| iso.date().min(week.first_day()))
        });
        let day = match is_near {
            true => starts.clone().next().unwrap().saturating_add(near.days()),
            false => date(years, 1, 1).saturating_add(i64::from(days - 1).days()),
        };
        let (verdict, age) = age_verdict(code, day);
        let possible = starts.clone().any(|start| start <= day);
        prop_assert_ne!(verdict, Verdict::NotAssessed);
        prop_assert!(possible || verdict == Verdict::Marginal, "{} on {}: {}", text, day, verdict);
        prop_assert_eq!(age.is_some(), possible, "{} on {}", text, day);
        if digits == 4 && possible && day < starts.clone().next().unwrap().saturating_add(5.years()) {
            prop_assert_eq!(verdict == Verdict::Within, !code.is_iso_only(), "{} on {}", text, day);
        }
    }

    #[test]
    fn age_never_shrinks_and_agrees_with_the_calendar(
        week in 1..=52_u8, year in 2000..2090_u16, days in 0..4000_i64, years in 0..12_u8,
    ) {
        let code = DateCode::new(week, year).unwrap();
        let made = ManufactureWeek::new(week, year).unwrap();
        let day = made.last_day().checked_add(days.days()).unwrap();
        let age = code.age_on(day).unwrap();
        prop_assert_eq!(age.made_first().checked_add(age.max()).unwrap(), day);
        prop_assert_eq!(age.made_last().checked_add(age.min()).unwrap(), day);
        prop_assert_eq!(age.made_last(), made.last_day());
        let limit = |from: Date| from.checked_add(i64::from(years).years()).unwrap();
        let expected = match (limit(made.first_day()) < day, limit(made.last_day()) < day) {
            (true, true) => Some(true),
            (false, false) => Some(false),
            _ => None,
        };
        prop_assert_eq!(age.is_over(years), expected);
        let next = code.age_on(day.tomorrow().unwrap()).unwrap();
        prop_assert!(age.is_over(years) != Some(true) || next.is_over(years) == Some(true));
        // Before the week it is of the future.
        prop_assert!(code.age_on(made.first_day().yesterday().unwrap()).is_err());
    }

    #[test]
    fn more_grip_never_lowers_a_grade(a in 0.0..1.0_f64, c in 0.0..1.0_f64, more in 0.0..0.5_f64) {
        use beadseat::units::ratio;
        let grade = |a: f64, c: f64| TractionGrade::earned_by(ratio(a), ratio(c)).unwrap();
        prop_assert!(grade(a + more, c) >= grade(a, c) && grade(a, c + more) >= grade(a, c));
        for class in [TireClass::C1, TireClass::C2, TireClass::C3] {
            use beadseat::tire::energy_label::LabelClass;
            let of = |index: f64| LabelClass::of_wet_grip(class, ratio(index)).unwrap();
            prop_assert!(of(2.0 * a + more) >= of(2.0 * a));
        }
    }
}

#[test]
fn reading_and_printing_allocate_nothing() {
    use core::fmt::Write;
    let mut line = String::with_capacity(64);
    let info = allocation_counter::measure(|| {
        for text in
            ["DOT 1AB 2C3D4E 1615", "TREADWEAR 400 TRACTION AA TEMPERATURE A", "E2 024567 S1WR1", "M+S", "?"]
        {
            line.clear();
            if let Ok(number) = IdentificationNumber::parse(text) {
                write!(line, "{number}").unwrap();
            } else if let Ok(grading) = Grading::parse(text) {
                write!(line, "{grading}").unwrap();
            } else if let Ok(mark) = SidewallMark::parse(text) {
                write!(line, "{mark}").unwrap();
            }
        }
    });
    assert_eq!(info.count_total, 0);
}
