//! Identification numbers and date codes against the rows of `tests/reference/`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

mod common;

use beadseat::tire::identification::{
    DateCode, IdentificationForm, IdentificationNumber, IdentificationReading, ManufactureWeek,
};
use beadseat::{Field, ParseErrorKind, literal};
use common::{Row, Tally, rows};

/// What a row says of one reading, or what we answer: form, plant, rest, week, years, days.
#[derive(Debug, PartialEq)]
struct Said {
    form: &'static str,
    plant: String,
    middle: String,
    week: String,
    years: Vec<String>,
}

fn answer(reading: &IdentificationReading) -> Said {
    let middle: Vec<&str> = [reading.size_code(), reading.maker_code()].into_iter().flatten().collect();
    Said {
        form: reading.form().name(),
        plant: reading.plant().unwrap_or_default().into(),
        middle: middle.join("|"),
        week: reading.date().map_or(String::new(), |date| date.manufacture_week().to_string()),
        years: reading
            .date()
            .map_or(vec![], |date| date.candidates().map(|week| week.year().to_string()).collect()),
    }
}

/// `new13`, `old10-3digit` … in our names, with the number of symbols where it is told.
fn form(told: &str) -> (&'static str, Option<usize>) {
    let digits: String =
        told.chars().skip_while(|c| !c.is_ascii_digit()).take_while(char::is_ascii_digit).collect();
    let name = match told {
        "new13" => "current",
        "retread7" => "retread",
        "new9-partial" => "current_undated",
        "date-only" => "date_alone",
        _ if told.ends_with("-3digit") => "earlier_three_digit",
        _ if told.starts_with("old") => "earlier",
        _ => panic!("unknown form {told}"),
    };
    (name, digits.parse().ok())
}

fn expected(row: &Row) -> Vec<Said> {
    let parts = |column: &str| -> Vec<String> { row[column].split(" or ").map(String::from).collect() };
    let (forms, plants, middles) = (parts("form"), parts("plant"), parts("middle"));
    let (weeks, years) = (parts("week"), parts("year"));
    let pick = |column: &[String], n: usize| column.get(n).or(column.last()).unwrap().replace('-', "");
    let said = |n: usize| Said {
        form: form(&forms[n]).0,
        plant: pick(&plants, n),
        middle: pick(&middles, n),
        week: pick(&weeks, n),
        years: pick(&years, n).split('|').filter(|y| !y.is_empty()).map(String::from).collect(),
    };
    (0..forms.len()).map(said).collect()
}

/// Why a row that calls itself an error is read.
const LEFT: &str = "in the future, which the caller judges";
const DOUBTED: &str = "week 53 of ISO 8601 alone, which is read with a doubt";
const UPPER: &str = "lower case, which may be read";

#[test]
fn every_case_is_read_or_refused_as_its_row_says() {
    let mut tally = Tally::of("identification numbers");
    for row in &rows("tin_cases.csv") {
        let code = &row["code"];
        if &row["verdict"] == "error" {
            match IdentificationNumber::parse(code) {
                // A maker who counts ISO weeks, which the row advises against, has that week.
                Ok(number) if row["note"].contains("ISO 8601 gives") => {
                    let date = number.date().unwrap();
                    let doubt = beadseat::Marking::parse(code).unwrap().for_choice();
                    assert!(doubt.contains("misread or false"), "{code}: {doubt}");
                    assert!(date.is_iso_only() && date.candidates().all(|week| week.is_iso_only()), "{code}");
                    tally.left(code, DOUBTED);
                }
                Err(_) => tally.checked(row),
                // A number from the future is read; the day it is held against is the caller's.
                Ok(number) if row["note"].contains("future") => {
                    let week = number.date().unwrap().candidates().next().unwrap();
                    assert!(week > ManufactureWeek::new(47, 2026).unwrap(), "{code}");
                    tally.left(code, LEFT);
                }
                // Lower case may be read, the row says.
                Ok(number) => {
                    assert!(row["note"].starts_with("lower case"), "{code} is read as {number}");
                    assert_eq!(number.symbols(), code.to_ascii_uppercase());
                    tally.left(code, UPPER);
                }
            }
            continue;
        }
        let number = IdentificationNumber::parse(code).unwrap();
        let answered: Vec<Said> = number.readings().map(|r| answer(&r)).collect();
        for said in expected(row) {
            assert!(answered.contains(&said), "{code}: {said:?} not in {answered:?}");
        }
        if matches!(&row["verdict"], "ok" | "partial" | "ambiguous-low") {
            assert_eq!(answered[0], expected(row)[0], "{code}");
        }
        for told in row["form"].split(" or ") {
            if let (_, Some(symbols)) = form(told) {
                assert_eq!(number.symbols().len(), symbols, "{code}");
            }
        }
        assert_eq!(number.is_ambiguous(), row["form"].contains("retread7 or"), "{code}");
        assert_eq!(IdentificationNumber::parse(&number.to_string()), Ok(number));
        tally.checked(row);
    }
    tally.close(23 + 11, &[(LEFT, 2), (UPPER, 1), (DOUBTED, 1)]);
}

#[test]
fn the_calendar_has_its_weeks() {
    let mut tally = Tally::of("weeks of a year");
    for row in &rows("tin_week_calendar.csv") {
        let year: u16 = row["year"].parse().unwrap();
        assert_eq!(ManufactureWeek::weeks_in(year).to_string(), row["weeks"], "{year}");
        tally.checked(row);
    }
    tally.close(65, &[]);
}

#[cfg(feature = "jiff")]
mod with_days {
    use super::*;
    use jiff::civil::{Date, date};

    fn days(week: ManufactureWeek) -> (String, String) {
        (week.first_day().to_string(), week.last_day().to_string())
    }

    #[test]
    fn every_case_has_the_days_of_its_row() {
        let mut tally = Tally::of("days of the numbers");
        for row in rows("tin_cases.csv") {
            if row["first_day"].is_empty() {
                continue;
            }
            let number = IdentificationNumber::parse(&row["code"]).unwrap();
            // Seven symbols either way: the row names the retread's date first.
            let mut readings: Vec<_> = number.readings().take(row["form"].split(" or ").count()).collect();
            if number.is_ambiguous() {
                readings.reverse();
            }
            let weeks = readings.iter().flat_map(|r| r.date().unwrap().candidates());
            let (first, last): (Vec<_>, Vec<_>) = weeks.map(days).unzip();
            assert_eq!(
                (first.join("|"), last.join("|")),
                (row["first_day"].to_owned(), row["last_day"].to_owned())
            );
            tally.checked(&row);
        }
        tally.close(22, &[]);
    }

    #[test]
    fn the_calendar_has_its_days() {
        let mut tally = Tally::of("days of the calendar");
        for row in rows("tin_week_calendar.csv") {
            let year: u16 = row["year"].parse().unwrap();
            let last = ManufactureWeek::new(ManufactureWeek::weeks_in(year), year).unwrap();
            assert_eq!(days(last), (row["last_week_first"].to_owned(), row["last_week_last"].to_owned()));
            tally.checked(&row);
            if year == 1971 {
                continue; // numbers began later in that year
            }
            let first = ManufactureWeek::new(1, year).unwrap();
            assert_eq!(days(first), (row["week01_first"].to_owned(), row["week01_last"].to_owned()));
            tally.checked(&row);
        }
        tally.close(129, &[]);
    }

    #[test]
    fn week_53_of_iso_years_has_iso_days() {
        let of = |code: &str| days(DateCode::parse(code).unwrap().candidates().next().unwrap());
        for (code, first, last) in [
            ("5304", "2004-12-27", "2005-01-02"),
            ("5309", "2009-12-28", "2010-01-03"),
            ("5315", "2015-12-28", "2016-01-03"),
            ("5320", "2020-12-28", "2021-01-03"),
            ("5326", "2026-12-28", "2027-01-03"),
            ("5399", "2099-12-28", "2100-01-03"),
        ] {
            assert_eq!(of(code), (first.to_owned(), last.to_owned()), "{code}");
        }
    }

    #[test]
    fn the_marking_cases_have_their_days() {
        let mut tally = Tally::of("days of the marking cases");
        for row in rows("marking_cases.csv") {
            let Some(code) = row["input"].strip_prefix("tin week ") else { continue };
            let code = code.strip_suffix(" -> first and last day").unwrap();
            let week = DateCode::parse(code).unwrap().candidates().next().unwrap();
            let (first, last) = days(week);
            assert_eq!(format!("{first} to {last}"), row["expected"]);
            tally.checked(&row);
        }
        tally.close(10, &[]);
    }

    #[test]
    fn a_code_from_the_future_is_the_callers_to_judge() {
        let day = date(2026, 11, 25);
        let age = |text: &str| IdentificationNumber::parse(text).unwrap().date().unwrap().age_on(day);
        for future in ["1AB2C3D4E0199", "ABCD3197"] {
            assert!(age(future).is_err(), "{future}");
        }
        assert!(age("1AB2C3D4E4726").is_ok()); // the week of that day
        assert_eq!(age("1AB2C3D4E4826").unwrap_err().week(), ManufactureWeek::new(48, 2026).unwrap());
    }

    #[test]
    fn age_is_a_span_of_days_or_of_decades() {
        let code = DateCode::parse("4726").unwrap(); // 22 to 28 November 2026
        let on = |d: Date| code.age_on(d).map(|age| (age.made_first(), age.made_last()));
        assert!(on(date(2026, 11, 21)).is_err());
        assert_eq!(on(date(2026, 11, 22)), Ok((date(2026, 11, 22), date(2026, 11, 22))));
        assert_eq!(on(date(2026, 11, 25)), Ok((date(2026, 11, 22), date(2026, 11, 25))));
        assert_eq!(on(date(2026, 12, 25)), Ok((date(2026, 11, 22), date(2026, 11, 28))));

        // In 1985 a tire of week 31 and digit 7 was of 1977.
        let age = DateCode::parse("317").unwrap().age_on(date(1985, 6, 1)).unwrap();
        assert_eq!((age.made_first(), age.made_last()), (date(1977, 7, 31), date(1977, 8, 6)));
        assert_eq!((age.min().get_years(), age.min().get_months(), age.min().get_days()), (7, 9, 26));
        assert_eq!(age.on(), date(1985, 6, 1));
        let age = DateCode::parse("317").unwrap().age_on(date(2026, 6, 1)).unwrap();
        assert_eq!((age.is_over(28), age.is_over(35), age.is_over(49)), (Some(true), None, Some(false)));
    }

    #[test]
    fn a_day_has_a_week_from_may_1971_to_the_end_of_2099() {
        assert_eq!(ManufactureWeek::containing(date(1971, 4, 24)), None);
        assert_eq!(ManufactureWeek::containing(date(1971, 4, 25)), ManufactureWeek::new(17, 1971));
        assert_eq!(ManufactureWeek::containing(date(2100, 1, 2)), ManufactureWeek::new(52, 2099));
        assert_eq!(ManufactureWeek::containing(date(2100, 1, 3)), None);
        assert_eq!(ManufactureWeek::containing(Date::MIN), None);
        assert_eq!(ManufactureWeek::containing(Date::MAX), None);
        assert_eq!(ManufactureWeek::containing(date(0, 12, 31)), None);
    }
}

#[test]
fn the_marking_cases_are_read() {
    let mut tally = Tally::of("marking cases of numbers");
    for row in rows("marking_cases.csv") {
        let (input, expected) = (&row["input"], &row["expected"]);
        if let Some(year) = input.strip_prefix("weeks in ") {
            let year = year.split(' ').next().unwrap().parse().unwrap();
            assert_eq!(ManufactureWeek::weeks_in(year).to_string(), expected, "{input}");
            tally.checked(&row);
        } else if let Some(text) = input.strip_prefix("parse TIN ") {
            let number = IdentificationNumber::parse(text);
            let week = |n: IdentificationNumber| n.date().unwrap().manufacture_week();
            let years = |n: IdentificationNumber| -> Vec<u16> {
                n.date().unwrap().candidates().map(|week| week.year()).collect()
            };
            match expected {
                "week 27 of 2025, plant 1AB" => {
                    let number = number.unwrap();
                    assert_eq!((number.plant(), week(number), years(number)), (Some("1AB"), 27, vec![2025]));
                }
                "ambiguous 1989 or 1979 (most recent 1989)" => {
                    // Of a letter of 1996, which could not know 1999.
                    let mut years = years(number.unwrap());
                    years.retain(|&year| year <= 1996);
                    assert_eq!((week(number.unwrap()), years), (43, vec![1989, 1979]));
                }
                "ambiguous: 3rd week of 1981 or 1991" => {
                    assert_eq!((week(number.unwrap()), years(number.unwrap())), (3, vec![1991, 1981]));
                }
                "31st week of 1997 among candidates 1997 1987 1977" => {
                    assert_eq!((week(number.unwrap()), years(number.unwrap())), (31, vec![1997, 1987, 1977]));
                }
                "retread, plant 1AB, week 27 of 2023" => {
                    let number = number.unwrap();
                    assert!(number.form().is_retread());
                    assert_eq!((number.plant(), week(number), years(number)), (Some("1AB"), 27, vec![2023]));
                }
                _ => assert!(expected.starts_with("error: ") && number.is_err(), "{input}"),
            }
            tally.checked(&row);
        } else if input == "new tire TIN symbol count" {
            assert_eq!(expected, "13");
            assert_eq!(IdentificationNumber::parse("1AB2C3D4E1615").unwrap().symbols().len(), 13);
            tally.checked(&row);
        } else if input == "retread TIN symbol count" {
            assert_eq!(expected, "7");
            assert_eq!(IdentificationNumber::parse("1AB0117").unwrap().symbols().len(), 7);
            tally.checked(&row);
        } else if input == "date digits before the 1999 rule" {
            assert_eq!(expected, "3");
            assert!(DateCode::parse("018").unwrap().has_three_digits());
            tally.checked(&row);
        } else if input == "optional group maximum symbols (old form)" {
            assert_eq!(expected, "4");
            let number = IdentificationNumber::parse("ABCD EFHJ 3208").unwrap();
            assert_eq!(number.maker_code(), Some("EFHJ"));
            assert!(IdentificationNumber::parse("ABCD EFHJX 3208").unwrap().size_code().is_none());
            tally.checked(&row);
        }
    }
    tally.close(5 + 8 + 4, &[]);
}

#[track_caller]
fn refuses(text: &str, kind: ParseErrorKind, field: Field, part: &str) {
    let error = IdentificationNumber::parse(text).unwrap_err();
    assert_eq!((error.kind(), error.field(), &text[error.span()]), (kind, field, part), "{text}");
}

#[test]
fn an_error_names_the_group_and_the_place() {
    use Field::{IdentificationNumber as Number, Text};
    use ParseErrorKind::{Empty, Missing, OutOfRange, TooLong};
    refuses("", Empty, Text, "");
    refuses("DOT", Missing, Number, "");
    refuses("DOT-R  ", Missing, Number, "");
    refuses(&"A".repeat(256), TooLong, Text, &"A".repeat(255));
    refuses("1AB2C3D4G0118", OutOfRange, Number, "G");
    refuses("1AB 2C3D4É 0118", OutOfRange, Number, "É");
    refuses("1AB 2C3D4E 01/18", OutOfRange, Number, "/");
    refuses("1AB 2C3D4E 5316", OutOfRange, Field::DateCode, "5316");
    refuses("DOT 1AB 2C3D4E 00-17", OutOfRange, Field::DateCode, "00-17");
    refuses("1AB2C3D4E01A8", OutOfRange, Field::DateCode, "01A8");
    refuses("ABCD5416", OutOfRange, Field::DateCode, "5416");
    refuses("ABCD999", OutOfRange, Field::DateCode, "999");
    refuses("5418", OutOfRange, Field::DateCode, "5418");
    refuses("1AB018", OutOfRange, Number, "1AB018");
    refuses("ABCD", OutOfRange, Number, "ABCD");
    refuses("DOT ABCDE FHJKL MNP", OutOfRange, Field::DateCode, "L MNP");
    refuses("DOT ABCDE FHJKL MNPR", OutOfRange, Number, "ABCDE FHJKL MNPR");
    refuses("DOT-R ABCDEF", OutOfRange, Number, "ABCDEF");
}

#[test]
fn the_prefix_and_the_layout_are_read() {
    let same = |a: &str, b: &str| assert_eq!(IdentificationNumber::parse(a), IdentificationNumber::parse(b));
    same("DOT 1AB 2C3D4E 1615", "1AB2C3D4E1615");
    same("dot1ab\u{a0}2c3d4e-16-15", "1AB2C3D4E1615");
    same("DOT-1AB2C3D4E1615", "1AB2C3D4E1615");
    same("DOT-RAB CD 3208", "RABCD3208"); // no gap behind the R: it is a symbol
    same("0 1 1 8", "0118");
    let canonical = |text: &str| IdentificationNumber::parse(text).unwrap().to_string();
    assert_eq!(canonical("abcd ef 5312"), "AB CD EF 5312");
    assert_eq!(canonical("abcdefh018"), "AB CD EFH 018");
    assert_eq!(canonical("1AB0117"), "1AB 0117");
    assert_eq!(canonical("AB10117"), "AB10117");
    assert_eq!(canonical("dot-r ab10117"), "DOT-R AB1 0117");
    assert_eq!(canonical("DOT-R-ABC DE FHJK 0117"), "DOT-R ABC DE FHJK 0117");
    assert_eq!(canonical("DOT-R ABC DE 317"), "DOT-R ABC DE 317");
    assert_eq!(canonical("DOT efefef"), "DOT EF EF EF");
    assert_eq!(canonical("DOT abcd"), "DOT AB CD");
    assert_eq!(canonical("1ab2c3d4e"), "1AB 2C3D4E");
    assert_eq!(format!("[{:>6}]", literal!(DateCode, "0118")), "[  0118]");
}

#[test]
fn words_are_not_numbers() {
    for word in ["RETREAD", "MADE", "PLY", "TREAD", "TUBELESS", "XL"] {
        assert!(IdentificationNumber::parse(word).is_err(), "{word}");
    }
}

#[test]
fn three_digits_end_in_mid_2000_and_begin_in_may_1971() {
    let years = |code: &str| -> Vec<u16> {
        DateCode::parse(code).unwrap().candidates().map(|week| week.year()).collect()
    };
    assert_eq!(years("260"), [2000, 1990, 1980]);
    assert_eq!(years("270"), [1990, 1980]);
    assert_eq!(years("161"), [1991, 1981]);
    assert_eq!(years("171"), [1991, 1981, 1971]);
    assert!(DateCode::parse("530").is_err()); // 2000 had a week 53, but not in three digits
    assert!(DateCode::of_year_digit(1, 10).is_none());
    assert!(DateCode::new(1, 1999).is_none());
    assert!(DateCode::parse("53").is_err() && DateCode::parse("01180").is_err());
}

#[test]
fn values_are_small() {
    assert!(size_of::<IdentificationNumber>() <= 32);
    assert!(size_of::<IdentificationReading>() <= 32);
    assert!(size_of::<DateCode>() <= 4 && size_of::<ManufactureWeek>() <= 4);
}

#[test]
fn forms_say_what_they_are() {
    let read = |text: &str| IdentificationNumber::parse(text).unwrap();
    assert!(read("1AB2C3D4E").form().is_partial());
    assert!(read("DOT-R ABC DE 0117").form() == IdentificationForm::EarlierRetread);
    assert!(read("DOT-R ABC DE F 317").form() == IdentificationForm::EarlierRetreadThreeDigit);
    assert!(read("DOT-R ABC DE F 317").form().citation().is_from_memory());
    assert!(read("DOT-R AB1 0117").is_marked_retread() && !read("1AB0117").is_marked_retread());
    // A number without its date may end in digits: that reading is offered last.
    let last = read("1ABCDE317").readings().last().unwrap();
    assert_eq!((last.form(), last.date()), (IdentificationForm::CurrentUndated, None));
}
