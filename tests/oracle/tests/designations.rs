//! Every designation, generated through its fields as text that is written here and not by the crate.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::fmt::{Debug, Display};
use std::str::FromStr;

use beadseat::rim::{Contour, Hump, RimDiameter, RimWidth};
use beadseat::tire::{
    LoadIndex, LoadRange, LoadVersion, Metric, ServiceDescription, SizeClass, SpeedSymbol, Structure, Tire,
    TireSize,
};
use beadseat::uom::si::length::millimeter;
use beadseat::wheel::{BoltCircle, Bore, Inset, Seat, Thread, Wheel, WheelSize};
use beadseat::{Marking, ParseError, ParseErrorKind};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// A piece of a designation as people may type it.
#[derive(Clone, Debug)]
enum Piece {
    /// Letters and signs, in any case.
    Word(String),
    /// A number that may have a decimal comma and zeros at its end.
    Number(String),
    /// A number or sign that must stand as it is.
    Fixed(String),
    /// A multiplication sign.
    Times,
    /// White space, or none.
    Gap,
    /// White space.
    Space,
}

use Piece::{Gap, Space, Times};

fn word(text: &str) -> Piece {
    Piece::Word(text.to_owned())
}

fn number(text: &str) -> Piece {
    Piece::Number(text.to_owned())
}

fn fixed(text: impl Display) -> Piece {
    Piece::Fixed(text.to_string())
}

/// One value: its canonical text and another way to write it.
#[derive(Clone, Debug)]
struct Written {
    canonical: String,
    typed: Vec<Piece>,
}

impl Written {
    /// Writes the other way out, taking one choice after another from `noise`.
    fn respelled(&self, noise: &[u8]) -> String {
        let mut noise = noise.iter().copied().cycle();
        let mut choose = |among: usize| usize::from(noise.next().unwrap_or(0)) % among;
        let spaces = [" ", "\u{a0}", "\u{202f}", "\u{2009}", "\t", "\r\n", "  "];
        let mut text = String::new();
        for piece in &self.typed {
            match piece {
                Piece::Word(word) => match choose(3) {
                    0 => text.push_str(word),
                    1 => text.push_str(&word.to_ascii_lowercase()),
                    _ => text.push_str(&word.to_ascii_uppercase()),
                },
                Piece::Number(number) => {
                    let zeros = ["", "0", "00"][choose(3)];
                    let point = [".", ","][choose(2)];
                    text.push_str(&number.replace('.', point));
                    if number.contains('.') || zeros.is_empty() {
                        text.push_str(zeros);
                    } else {
                        text.push_str(point);
                        text.push_str(zeros);
                    }
                }
                Piece::Fixed(fixed) => text.push_str(fixed),
                Piece::Times => text.push_str(["x", "X", "×", "*"][choose(4)]),
                Piece::Gap => text.push_str(if choose(2) == 0 { "" } else { spaces[choose(spaces.len())] }),
                Piece::Space => text.push_str(spaces[choose(spaces.len())]),
            }
        }
        text
    }
}

fn noise() -> impl Strategy<Value = Vec<u8>> {
    prop::collection::vec(any::<u8>(), 40)
}

/// A number of millionths, in the fewest decimals.
fn decimal(millionths: i64) -> String {
    let sign = if millionths < 0 { "-" } else { "" };
    let (whole, rest) = (millionths.abs() / 1_000_000, millionths.abs() % 1_000_000);
    let text = format!("{sign}{whole}.{rest:06}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Lengths in nanometres between two bounds in mm: whole, in tenths, or any.
fn nanometres(least: i64, most: i64) -> impl Strategy<Value = i64> {
    prop_oneof![
        (least..=most).prop_map(|mm| mm * 1_000_000),
        (least * 10..=most * 10).prop_map(|tenths| tenths * 100_000),
        least * 1_000_000..=most * 1_000_000,
    ]
}

const RIM_CODES: [&str; 28] = [
    "8", "9", "10", "11", "12", "13", "14", "15", "16", "17", "18", "19", "20", "21", "22", "23", "24", "25",
    "26", "28", "30", "14.5", "16.5", "17.5", "19.5", "20.5", "22.5", "24.5",
];

fn rim_diameter() -> impl Strategy<Value = Written> {
    select(&RIM_CODES[..]).prop_map(|code| Written { canonical: code.to_owned(), typed: vec![number(code)] })
}

/// A width of some quarter inches, as a decimal or a vulgar fraction.
fn width_of(quarters: u16, as_fraction: bool, dash: bool) -> Written {
    let canonical = decimal(i64::from(quarters) * 250_000);
    let typed = match quarters % 4 {
        rest @ 1..=3 if as_fraction => vec![
            fixed(quarters / 4),
            if dash { fixed("-") } else { Space },
            fixed(["1/4", "1/2", "3/4"][usize::from(rest) - 1]),
        ],
        _ => vec![number(&canonical)],
    };
    Written { canonical, typed }
}

fn rim_width() -> impl Strategy<Value = Written> {
    (8_u16..=80, any::<bool>(), any::<bool>())
        .prop_map(|(quarters, as_fraction, dash)| width_of(quarters, as_fraction, dash))
}

const CONTOURS: [&str; 17] =
    ["A", "B", "C", "D", "E", "F", "G", "H", "J", "JJ", "JK", "K", "L", "P", "S", "T", "V"];
const HUMPS: [&str; 10] = ["H", "H2", "FH", "FH2", "CH", "CH2", "EH", "EH2", "EH2+", "SL"];

fn one_of(marks: &'static [&'static str]) -> impl Strategy<Value = Written> {
    select(marks).prop_map(|mark| Written { canonical: mark.to_owned(), typed: vec![word(mark)] })
}

fn load_index() -> impl Strategy<Value = Written> {
    (0_u16..=279, 0_usize..=3).prop_map(|(index, digits)| Written {
        canonical: index.to_string(),
        typed: vec![fixed(format!("{index:0digits$}"))],
    })
}

const SPEEDS: [&str; 29] = [
    "A1", "A2", "A3", "A4", "A5", "A6", "A7", "A8", "B", "C", "D", "E", "F", "G", "J", "K", "L", "M", "N",
    "P", "Q", "R", "S", "T", "U", "H", "V", "W", "Y",
];

fn speed_symbol() -> impl Strategy<Value = Written> {
    prop_oneof![
        4 => one_of(&SPEEDS),
        1 => Just(Written { canonical: "(Y)".to_owned(), typed: vec![word("(Y)")] }),
    ]
}

fn service() -> impl Strategy<Value = Written> {
    (0_u16..=279, any::<Option<Index>>(), select(&SPEEDS[..]), 0..3).prop_map(
        |(single, dual, speed, bracket)| {
            let dual = dual.map(|dual| dual.index(usize::from(single) + 1));
            let indices = dual.map_or(single.to_string(), |dual| format!("{single}/{dual}"));
            match (speed, bracket) {
                ("Y", 1) => Written {
                    canonical: format!("({indices}Y)"),
                    typed: vec![fixed("("), fixed(indices), Gap, word("Y"), fixed(")")],
                },
                ("Y", 2) => Written {
                    canonical: format!("({indices}Y)"),
                    typed: vec![fixed(indices), Gap, word("(Y)")],
                },
                _ => Written {
                    canonical: format!("{indices}{speed}"),
                    typed: vec![fixed(indices), Gap, word(speed)],
                },
            }
        },
    )
}

/// Two loads at two speeds, the faster with no more load.
fn second_service() -> impl Strategy<Value = Written> {
    (0_u16..=279, any::<Index>(), 0_usize..14, 0_usize..14, any::<bool>())
        .prop_filter("two speeds", |(_, _, first, second, _)| first != second)
        .prop_map(|(more, less, first, second, left_away)| {
            let less = less.index(usize::from(more) + 1) as u16;
            let (a, b) = if first < second { (more, less) } else { (less, more) };
            let [first, second] = [first, second].map(|place| SPEEDS[place]);
            let mut typed = vec![fixed(a), Gap, word(first), fixed("/"), Gap];
            if !(a == b && left_away) {
                typed.extend([fixed(b), Gap]);
            }
            typed.push(word(second));
            Written { canonical: format!("{a}{first}/{b}{second}"), typed }
        })
}

fn load_version() -> impl Strategy<Value = Written> {
    prop_oneof![passenger_version(), Just(Written { canonical: "HL".to_owned(), typed: vec![word("HL")] })]
}

/// The versions that stand behind the size in canonical form.
fn passenger_version() -> impl Strategy<Value = Written> {
    let spellings = vec![
        ("XL", vec![word("XL")]),
        ("XL", vec![word("Reinforced")]),
        ("XL", vec![word("Extra"), Space, word("Load")]),
        ("LL", vec![word("LL")]),
    ];
    select(spellings).prop_map(|(canonical, typed)| Written { canonical: canonical.to_owned(), typed })
}

fn load_range() -> impl Strategy<Value = Written> {
    (0_usize..12, 0..4).prop_map(|(step, spelling)| {
        let letter = &"ABCDEFGHJLMN"[step..=step];
        let plies = fixed(2 * (step + 1));
        let typed = match spelling {
            0 => vec![word("LR"), word(letter)],
            1 => vec![word("Load"), Space, word("Range"), Space, word(letter)],
            2 => vec![plies, Gap, word("PR")],
            _ => vec![plies, Gap, word("ply")],
        };
        Written { canonical: format!("LR{letter}"), typed }
    })
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Mark {
    None,
    P,
    Lt,
    Hl,
    C,
}

/// The fields of a metric size.
#[derive(Clone, Debug)]
struct MetricFields {
    mark: Mark,
    width: u16,
    aspect: u16,
    structure: &'static str,
    rim: &'static str,
    spelling: u8,
}

impl MetricFields {
    fn is_passenger(&self) -> bool {
        match self.mark {
            Mark::P | Mark::Hl => true,
            Mark::Lt | Mark::C => false,
            Mark::None => !self.rim.contains('.'),
        }
    }

    fn written(&self) -> Written {
        let Self { mark, width, aspect, structure, rim, spelling } = self;
        let prefix = match mark {
            Mark::P => "P",
            Mark::Lt => "LT",
            Mark::Hl => "HL",
            Mark::None | Mark::C => "",
        };
        let suffix = if *mark == Mark::C { "C" } else { "" };
        let canonical = format!("{prefix}{width}/{aspect}{structure}{rim}{suffix}");

        let trailing_lt = *mark == Mark::Lt && spelling % 2 == 1;
        let mut typed = Vec::new();
        if !trailing_lt && !prefix.is_empty() {
            typed.extend([word(prefix), Gap]);
        }
        typed.push(fixed(width));
        if spelling / 2 % 2 == 0 {
            typed.extend([Gap, fixed("/"), Gap]);
        } else {
            typed.push(Space);
        }
        let structure = if *structure == "-" && spelling / 4 % 2 == 1 { "D" } else { structure };
        typed.extend([fixed(aspect), Gap, word(structure), Gap, number(rim)]);
        if trailing_lt {
            typed.extend([Gap, word("LT")]);
        } else if !suffix.is_empty() {
            typed.extend([Gap, word(suffix)]);
        }
        Written { canonical, typed }
    }
}

const STRUCTURES: [&str; 12] = ["R", "RF", "SR", "SRF", "HR", "HRF", "VR", "VRF", "ZR", "ZRF", "-", "B"];

fn metric_fields() -> impl Strategy<Value = MetricFields> {
    (
        select(vec![Mark::None, Mark::P, Mark::Lt, Mark::Hl, Mark::C]),
        (19_u16..=99).prop_map(|fives| fives * 5),
        (4_u16..=19).prop_map(|fives| fives * 5),
        select(&STRUCTURES[..]),
        select(&RIM_CODES[..]),
        any::<u8>(),
    )
        .prop_map(|(mark, width, aspect, structure, rim, spelling)| MetricFields {
            mark,
            // On whole-inch rims widths end in 5.
            width: match rim {
                _ if rim.contains('.') => width,
                // Wider ones are of earthmovers.
                "25" => (width / 10 * 10 + 5).min(375),
                _ => width / 10 * 10 + 5,
            },
            aspect,
            structure,
            rim,
            spelling,
        })
}

fn metric() -> impl Strategy<Value = Written> {
    metric_fields().prop_map(|fields| fields.written())
}

/// Puts parts behind a head: in order in the canonical form, shuffled in the typed one.
fn assembled(head: Written, parts: Vec<Written>) -> impl Strategy<Value = Written> {
    let canonical = parts.iter().fold(head.canonical, |text, part| format!("{text} {}", part.canonical));
    Just(parts).prop_shuffle().prop_map(move |parts| {
        let mut typed = head.typed.clone();
        for part in parts {
            typed.push(Space);
            typed.extend(part.typed);
        }
        Written { canonical: canonical.clone(), typed }
    })
}

fn tire() -> impl Strategy<Value = Written> {
    let parts = (
        metric_fields(),
        prop::option::of(service()),
        prop::option::of(passenger_version()),
        prop::option::of(load_range()),
        any::<bool>(),
    );
    parts.prop_flat_map(|(fields, service, version, range, hl_behind)| {
        let mut parts: Vec<Written> = service.into_iter().collect();
        let mut size = fields.written();
        if fields.is_passenger() {
            parts.extend(version);
        } else {
            parts.extend(range);
        }
        // `HL` may stand behind a size that would be a passenger size without it, where no other
        // version does.
        let no_version = parts.iter().all(|part| !part.canonical.ends_with('L'));
        if fields.mark == Mark::Hl && !fields.rim.contains('.') && no_version && hl_behind {
            size.typed = MetricFields { mark: Mark::None, ..fields }.written().typed;
            size.typed.extend([Space, word("HL")]);
        }
        assembled(size, parts)
    })
}

fn bolt_circle_with(separators: &'static [&'static str]) -> impl Strategy<Value = Written> {
    let diameter = prop_oneof![
        (nanometres(60, 600), select(&["", "mm"][..])).prop_map(|(nm, unit)| (
            nm,
            number(&decimal(nm)),
            unit
        )),
        (23_623_i64..=236_220, select(&["in", "\"", "\u{2033}"][..])).prop_map(|(tenths_mil, unit)| (
            tenths_mil * 2540,
            number(&decimal(tenths_mil * 100)),
            unit
        )),
        (23_623_i64..200_000).prop_map(|tenths_mil| (
            tenths_mil * 2540,
            number(&decimal(tenths_mil * 100)),
            ""
        )),
    ];
    (3_u8..=12, select(separators), diameter).prop_map(|(count, separator, (nm, diameter, unit))| {
        let separator = if separator == "x" { Times } else { fixed(separator) };
        let mut typed = vec![fixed(count), Gap, separator, Gap, diameter];
        if !unit.is_empty() {
            typed.extend([Gap, word(unit)]);
        }
        Written { canonical: format!("{count}x{}", decimal(nm)), typed }
    })
}

fn bolt_circle() -> impl Strategy<Value = Written> {
    bolt_circle_with(&["x", "-", "/"])
}

fn bore() -> impl Strategy<Value = Written> {
    (nanometres(20, 400), any::<bool>(), any::<bool>()).prop_map(|(nm, marked, unit)| {
        let mut typed = Vec::new();
        if marked {
            typed.extend([word("CB"), Gap]);
        }
        typed.push(number(&decimal(nm)));
        if unit {
            typed.extend([Gap, word("mm")]);
        }
        Written { canonical: decimal(nm), typed }
    })
}

fn inset() -> impl Strategy<Value = Written> {
    (nanometres(-300, 300), 0..5).prop_map(|(nm, spelling)| {
        let size = number(&decimal(nm.abs()));
        let minus = if spelling % 2 == 0 { "-" } else { "\u{2212}" };
        let typed = match spelling {
            0 | 1 if nm < 0 => vec![word("ET"), Gap, fixed(minus), Gap, size],
            2 if nm < 0 => vec![word("OS"), Gap, size],
            _ if nm < 0 => vec![fixed(minus), size],
            0 => vec![word("ET"), Gap, size],
            1 => vec![word("IS"), Gap, fixed("+"), Gap, size],
            2 => vec![word("OS"), Gap, fixed("-"), Gap, size],
            _ => vec![fixed("+"), size],
        };
        Written { canonical: format!("ET{}", decimal(nm)), typed }
    })
}

fn wheel_size() -> impl Strategy<Value = Written> {
    let parts = (
        select(&RIM_CODES[..]),
        any::<Index>(),
        prop::option::of(select(&CONTOURS[..])),
        prop::option::of(select(&HUMPS[..])),
        any::<[bool; 4]>(),
    );
    parts.prop_map(|(diameter, width, contour, hump, [as_fraction, dash, several, diameter_first])| {
        let code: f64 = diameter.parse().unwrap();
        // Quarter inches from 2 in to just under the diameter, at most 20 in.
        let widths = (code * 4.0).ceil().min(81.0) as usize - 8;
        let quarters = 8 + width.index(widths) as u16;
        let width = width_of(quarters, as_fraction, dash);
        // Some contours stand on rims of trucks only.
        let is_truck = quarters >= 20 && code >= 16.0;
        let contour = contour.filter(|mark| is_truck || !["H", "P", "S", "T", "V"].contains(mark));
        let separator = if several { "-" } else { "x" };
        // With a point, one of several pieces without a contour could be a tire.
        let canonical_width = match quarters % 4 {
            rest @ 1..=3 if several && contour.is_none() => {
                format!("{} {}", quarters / 4, ["1/4", "1/2", "3/4"][usize::from(rest) - 1])
            }
            _ => width.canonical.clone(),
        };
        let mut canonical = format!("{canonical_width}{}{separator}{diameter}", contour.unwrap_or_default());
        let mut typed = Vec::new();
        let contour_typed = |typed: &mut Vec<Piece>| {
            if let Some(contour) = contour {
                typed.extend([Gap, word(contour)]);
            }
        };
        // Behind all of a size `H` is the hump.
        if diameter_first && !several && contour != Some("H") {
            typed.extend([number(diameter), Gap, Times, Gap]);
            typed.extend(width.typed);
            contour_typed(&mut typed);
        } else {
            typed.extend(width.typed);
            contour_typed(&mut typed);
            typed.extend([Gap, if several { fixed("-") } else { Times }, Gap, number(diameter)]);
        }
        if let Some(hump) = hump {
            canonical = format!("{canonical} {hump}");
            typed.extend([Space, word(hump)]);
        }
        Written { canonical, typed }
    })
}

/// Whether the bore lies in the holes, and these in the rim.
fn lie_in_each_other(size: &Written, holes: Option<&Written>, bore: Option<&Written>) -> bool {
    let number = |text: &str| text.parse::<f64>().unwrap();
    let code = size.canonical.rsplit(['x', '-']).next().unwrap().split(' ').next().unwrap();
    let rim = (number(code) * 25.4).round();
    let holes = holes.map(|holes| number(holes.canonical.split_once('x').unwrap().1));
    let bore = bore.map(|bore| number(&bore.canonical));
    holes.is_none_or(|holes| holes < rim) && bore.is_none_or(|bore| bore < holes.unwrap_or(rim))
}

/// Rims of motorcycles, tractors and earthmovers.
fn rare_wheel_size() -> impl Strategy<Value = Written> {
    let motorcycle = (
        select(&["1.60", "1.85", "2.15", "2.50", "3.00", "5.50"][..]),
        select(&["10", "17", "21"][..]),
        any::<[bool; 2]>(),
    )
        .prop_map(|(width, rim, [first, mark])| {
            let mark = if mark { vec![Gap, word("M/C")] } else { vec![] };
            let width_typed = [word("MT"), Gap, fixed(width)];
            let typed = if first {
                [vec![fixed(rim)], mark, vec![Gap, Times, Gap], width_typed.to_vec()].concat()
            } else {
                [width_typed.to_vec(), vec![Gap, Times, Gap, fixed(rim)], mark].concat()
            };
            Written { canonical: format!("MT{width}x{rim}"), typed }
        });
    let numbered = (1_u8..=6, select(&["16", "18", "21"][..])).prop_map(|(number, rim)| Written {
        canonical: format!("WM{number}x{rim}"),
        typed: vec![word("WM"), Gap, fixed(number), Gap, Times, Gap, fixed(rim)],
    });
    let tractor = (
        select(&["W", "DW"][..]),
        20_u16..=92,
        select(&["", "A", "C", "L"][..]),
        select(&["24", "26.5", "28", "38", "54"][..]),
    )
        .prop_map(|(series, quarters, contour, rim)| {
            let width = decimal(i64::from(quarters) * 250_000);
            let mut typed = vec![word(series), Gap, number(&width)];
            if !contour.is_empty() {
                typed.extend([Gap, word(contour)]);
            }
            typed.extend([Gap, Times, Gap, fixed(rim)]);
            Written { canonical: format!("{series}{width}{contour}x{rim}"), typed }
        });
    let earthmover = (20_u16..=192, select(&["20", "25", "35", "63"][..]), 10_i64..=60).prop_map(
        |(quarters, rim, tenths)| {
            let flange = decimal(tenths * 100_000);
            let width = format!("{}.{:02}", quarters / 4, quarters % 4 * 25);
            let typed =
                vec![number(&width), Gap, fixed("-"), Gap, fixed(rim), fixed("/"), Gap, fixed(&flange)];
            Written { canonical: format!("{width}-{rim}/{flange}"), typed }
        },
    );
    let signed =
        (8_u16..=48, select(&["", "J", "JJ"][..]), select(&["13", "17", "22"][..]), any::<[bool; 2]>())
            .prop_map(|(quarters, contour, rim, [first, joined])| {
                let width = decimal(i64::from(quarters) * 250_000);
                let sign = || vec![Gap, word("\""), Gap];
                let letters = if contour.is_empty() { vec![] } else { vec![word(contour)] };
                let typed = if contour.is_empty() || !joined {
                    let (inches, rim) = (vec![number(&width)], vec![number(rim)]);
                    if first {
                        [rim, sign(), vec![Times, Gap], inches, sign(), letters].concat()
                    } else {
                        [inches, sign(), letters, vec![Gap, Times, Gap], rim, sign()].concat()
                    }
                } else {
                    [vec![number(&width), Gap], letters, vec![Gap, number(rim)]].concat()
                };
                Written { canonical: format!("{width}{contour}x{rim}"), typed }
            });
    prop_oneof![motorcycle, numbered, tractor, earthmover, signed]
}

fn wheel() -> impl Strategy<Value = Written> {
    let parts = (
        wheel_size(),
        prop::option::of(inset()),
        prop::option::of(bolt_circle_with(&["x"])),
        prop::option::of(bore()),
    );
    let parts = parts.prop_filter("the parts lie in each other", |(size, _, holes, bore)| {
        lie_in_each_other(size, holes.as_ref(), bore.as_ref())
    });
    parts.prop_flat_map(|(size, inset, holes, bore)| {
        assembled(size, [inset, holes, bore].into_iter().flatten().collect())
    })
}

fn thread() -> impl Strategy<Value = Written> {
    let metric =
        (nanometres(6, 30), 500_000_i64..=4_000_000, any::<bool>()).prop_map(|(major, pitch, dash)| {
            Written {
                canonical: format!("M{}x{}", decimal(major), decimal(pitch)),
                typed: vec![
                    word("M"),
                    Gap,
                    number(&decimal(major)),
                    Gap,
                    if dash { fixed("-") } else { Times },
                    Gap,
                    number(&decimal(pitch)),
                ],
            }
        });
    let series = select(&["", "UNF", "UNC", "UNS"][..]);
    let unified = (16_u32..=80, 7_u8..=32, series, any::<[bool; 2]>(), any::<Index>()).prop_map(
        |(sixty_fourths, threads, series, [mark, dash], expand)| {
            let (whole, rest) = (sixty_fourths / 64, sixty_fourths % 64);
            let reduce = 1 << rest.trailing_zeros().min(6);
            let (numerator, denominator) = (rest / reduce, 64 / reduce);
            let mut inches = Vec::new();
            let mut typed = Vec::new();
            if whole > 0 {
                inches.push(whole.to_string());
                typed.push(fixed(whole));
            }
            if rest > 0 {
                inches.push(format!("{numerator}/{denominator}"));
                let by = 1 << expand.index(reduce.trailing_zeros() as usize + 1);
                if whole > 0 {
                    typed.push(Space);
                }
                typed.push(fixed(format!("{}/{}", numerator * by, denominator * by)));
            }
            if mark {
                typed.push(fixed("\""));
            }
            typed.extend([Gap, if dash { fixed("-") } else { Times }, Gap, fixed(threads)]);
            if !series.is_empty() {
                typed.extend([Gap, word(series)]);
            }
            Written { canonical: format!("{}-{threads}", inches.join(" ")), typed }
        },
    );
    prop_oneof![metric, unified]
}

fn seat() -> impl Strategy<Value = Written> {
    let cones = (select(&["60", "80", "90"][..]), select(&["cone", "conical", "taper"][..]), any::<bool>())
        .prop_map(|(angle, name, degrees)| {
            let mut typed = vec![word(name), Gap, fixed(angle)];
            if degrees {
                typed.push(fixed("°"));
            }
            Written { canonical: format!("cone {angle}"), typed }
        });
    let balls = (select(&["12", "13", "14", "16"][..]), select(&["ball", "spherical"][..]), any::<bool>())
        .prop_map(|(radius, name, letter)| {
            let mut typed = vec![word(name), Gap];
            if letter {
                typed.push(word("R"));
            }
            typed.push(fixed(radius));
            Written { canonical: format!("ball R{radius}"), typed }
        });
    prop_oneof![cones, balls, one_of(&["flat", "shank"])]
}

trait Designation: FromStr<Err = ParseError> + Display + Debug + Copy + PartialEq {}
impl<T: FromStr<Err = ParseError> + Display + Debug + Copy + PartialEq> Designation for T {}

fn read<T: Designation>(text: &str) -> Result<T, TestCaseError> {
    text.parse().map_err(|error: ParseError| TestCaseError::fail(format!("{text:?}: {error}")))
}

/// The canonical text is read and written as it is, and the other spelling is the same value.
fn holds<T: Designation>(written: &Written, noise: &[u8]) -> Result<(), TestCaseError> {
    let value: T = read(&written.canonical)?;
    prop_assert_eq!(value.to_string(), &*written.canonical);
    prop_assert_eq!(read::<T>(&value.to_string())?, value);
    let respelled = written.respelled(noise);
    prop_assert_eq!(read::<T>(&respelled)?, value, "{:?}", respelled);
    Ok(())
}

macro_rules! round_trips {
    ($($name:ident: $type:ident;)*) => {
        mod round_trip {
            use super::*;
            proptest! {
                $(#[test] fn $name(written in super::$name(), noise in noise()) {
                    holds::<$type>(&written, &noise)?;
                })*
            }
        }
    };
}

fn contour() -> impl Strategy<Value = Written> {
    one_of(&CONTOURS)
}

fn hump() -> impl Strategy<Value = Written> {
    one_of(&HUMPS)
}

fn tire_size() -> impl Strategy<Value = Written> {
    metric()
}

round_trips! {
    rim_width: RimWidth;
    rim_diameter: RimDiameter;
    contour: Contour;
    hump: Hump;
    load_index: LoadIndex;
    speed_symbol: SpeedSymbol;
    service: ServiceDescription;
    second_service: ServiceDescription;
    load_version: LoadVersion;
    load_range: LoadRange;
    metric: Metric;
    tire_size: TireSize;
    tire: Tire;
    bolt_circle: BoltCircle;
    bore: Bore;
    inset: Inset;
    wheel_size: WheelSize;
    rare_wheel_size: WheelSize;
    wheel: Wheel;
    thread: Thread;
    seat: Seat;
}

proptest! {
    #[test]
    fn metric_fields_are_read_back(fields in metric_fields()) {
        let size: Metric = read(&fields.written().canonical)?;
        prop_assert_eq!(size.nominal_width().get::<millimeter>().round(), f64::from(fields.width));
        prop_assert_eq!(u16::from(size.aspect_ratio()), fields.aspect);
        prop_assert_eq!(size.rim_diameter().to_string(), fields.rim);
        prop_assert_eq!(size.is_run_flat(), fields.structure.ends_with("RF"));
        prop_assert_eq!(size.size_speed_letter().is_some(), "SHVZ".contains(&fields.structure[..1]));
        prop_assert_eq!(size.structure(), match fields.structure {
            "-" => Structure::Diagonal,
            "B" => Structure::BiasBelted,
            _ => Structure::Radial,
        });
        prop_assert_eq!(size.class(), match fields.mark {
            Mark::P => SizeClass::PMetric,
            Mark::Lt => SizeClass::LightTruck,
            Mark::Hl => SizeClass::HighLoad,
            Mark::C => SizeClass::Commercial,
            // Metric sizes of trucks are radials.
            Mark::None if fields.rim.contains('.') && fields.structure == "-" && fields.width >= 240 => {
                SizeClass::Implement
            }
            Mark::None if fields.rim.contains('.') => SizeClass::Truck,
            Mark::None => SizeClass::Passenger,
        });
        prop_assert_eq!(size.class().is_passenger(), fields.is_passenger());
        // H = S1·Ra/100, half a millimetre up, in whole numbers.
        let height = (u32::from(fields.width) * u32::from(fields.aspect) + 50) / 100;
        prop_assert_eq!(size.section_height().get::<millimeter>().round(), f64::from(height));
    }

    #[test]
    fn wheel_parts_are_read_back(
        size in wheel_size(),
        inset in prop::option::of(inset()),
        holes in prop::option::of(bolt_circle()),
        bore in prop::option::of(bore()),
    ) {
        let mut text = size.canonical.clone();
        for part in [&bore, &holes, &inset].into_iter().flatten() {
            text = format!("{text} {}", part.canonical);
        }
        if !lie_in_each_other(&size, holes.as_ref(), bore.as_ref()) {
            let error = text.parse::<Wheel>().unwrap_err();
            prop_assert_eq!(error.kind(), ParseErrorKind::Contradiction);
            return Ok(());
        }
        let wheel: Wheel = read(&text)?;
        prop_assert_eq!(wheel.size().to_string(), size.canonical);
        prop_assert_eq!(wheel.inset().map(|part| part.to_string()), inset.map(|part| part.canonical));
        prop_assert_eq!(wheel.bolt_circle().map(|part| part.to_string()), holes.map(|part| part.canonical));
        prop_assert_eq!(wheel.bore().map(|part| part.to_string()), bore.map(|part| part.canonical));
    }

    #[test]
    fn inches_and_millimetres_are_one(count in 3_u8..=12, ten_thousandths in 23_623_i64..=236_220) {
        let inches: BoltCircle = read(&format!("{count}x{}in", decimal(ten_thousandths * 100)))?;
        let mm: BoltCircle = read(&format!("{count}x{}", decimal(ten_thousandths * 2540)))?;
        prop_assert_eq!(inches, mm);
        prop_assert_eq!(inches.diameter(), mm.diameter());
        let exact = ten_thousandths as f64 * 2540.0 / 1e6;
        prop_assert!((mm.diameter().get::<millimeter>() - exact).abs() < 1e-9);
    }

    #[test]
    fn load_index_is_ordered_by_load(a in 0_u16..=279, b in 0_u16..=279) {
        let [x, y] = [a, b].map(|index| LoadIndex::new(index).unwrap());
        prop_assert_eq!(x.cmp(&y), x.load().partial_cmp(&y.load()).unwrap());
        prop_assert_eq!(x.cmp(&y), a.cmp(&b));
    }

    #[test]
    fn speed_symbol_is_ordered_by_speed(a in select(SpeedSymbol::ALL), b in select(SpeedSymbol::ALL)) {
        let by_speed = a.speed().partial_cmp(&b.speed()).unwrap();
        prop_assert_eq!(a.cmp(&b), by_speed.then(a.is_open_ended().cmp(&b.is_open_ended())));
    }

    #[test]
    fn rim_width_is_ordered_by_width(a in rim_width(), b in rim_width()) {
        let [x, y]: [RimWidth; 2] = [read(&a.canonical)?, read(&b.canonical)?];
        prop_assert_eq!(x.cmp(&y), x.length().partial_cmp(&y.length()).unwrap());
        let [a, b]: [f64; 2] = [a, b].map(|width| width.canonical.parse().unwrap());
        prop_assert_eq!(x.cmp(&y), a.partial_cmp(&b).unwrap());
    }

    #[test]
    fn rim_diameter_is_ordered_by_diameter(a in select(&RIM_CODES[..]), b in select(&RIM_CODES[..])) {
        let [x, y]: [RimDiameter; 2] = [read(a)?, read(b)?];
        prop_assert_eq!(x.cmp(&y), x.nominal().partial_cmp(&y.nominal()).unwrap());
        let [a, b]: [f64; 2] = [a, b].map(|code| code.parse().unwrap());
        prop_assert_eq!(x.cmp(&y), a.partial_cmp(&b).unwrap());
    }

    #[test]
    fn inset_and_bore_are_ordered_by_length(a in inset(), b in inset(), c in bore(), d in bore()) {
        let [x, y]: [Inset; 2] = [read(&a.canonical)?, read(&b.canonical)?];
        prop_assert_eq!(x.cmp(&y), x.length().partial_cmp(&y.length()).unwrap());
        let [x, y]: [Bore; 2] = [read(&c.canonical)?, read(&d.canonical)?];
        prop_assert_eq!(x.cmp(&y), x.length().partial_cmp(&y.length()).unwrap());
    }

    #[test]
    fn load_range_is_ordered_by_plies(a in 1_u8..=12, b in 1_u8..=12) {
        let [x, y]: [LoadRange; 2] = [read(&format!("{}PR", 2 * a))?, read(&format!("{}PR", 2 * b))?];
        prop_assert_eq!(x.cmp(&y), x.ply_rating().cmp(&y.ply_rating()));
        prop_assert_eq!(x.ply_rating(), 2 * a);
    }
}

/// Reads a text as one type: no panic, a span inside the text, and what is read is written and read
/// again as it was.
fn survives_as<T: Designation>(text: &str) -> Result<(), TestCaseError> {
    match text.parse::<T>() {
        Ok(value) => {
            let canonical = value.to_string();
            prop_assert!(canonical.len() <= 64 && canonical.is_ascii(), "{:?}", canonical);
            prop_assert_eq!(read::<T>(&canonical)?, value, "{:?}", text);
        }
        Err(error) => {
            let span = error.span();
            prop_assert!(text.get(span.clone()).is_some(), "{:?} of {:?}", span, text);
            let shown = error.show(text).to_string();
            let (echo, under) = shown.split_once('\n').unwrap_or_default();
            prop_assert!(echo.chars().count() <= 121, "{:?}", echo);
            prop_assert!(!echo.chars().any(char::is_control), "{:?}", echo);
            prop_assert!(under.trim_start().starts_with('^'), "{:?}", under);
            prop_assert!(under.ends_with(&error.to_string()), "{:?}", under);
        }
    }
    Ok(())
}

fn survives(text: &str) -> Result<(), TestCaseError> {
    survives_as::<RimWidth>(text)?;
    survives_as::<RimDiameter>(text)?;
    survives_as::<Contour>(text)?;
    survives_as::<Hump>(text)?;
    survives_as::<LoadIndex>(text)?;
    survives_as::<SpeedSymbol>(text)?;
    survives_as::<ServiceDescription>(text)?;
    survives_as::<LoadVersion>(text)?;
    survives_as::<LoadRange>(text)?;
    survives_as::<Metric>(text)?;
    survives_as::<TireSize>(text)?;
    survives_as::<Tire>(text)?;
    survives_as::<BoltCircle>(text)?;
    survives_as::<Bore>(text)?;
    survives_as::<Inset>(text)?;
    survives_as::<WheelSize>(text)?;
    survives_as::<Wheel>(text)?;
    survives_as::<Thread>(text)?;
    survives_as::<Seat>(text)?;
    // Whatever it is, what is shown is read as that again.
    if let Ok(marking) = text.parse::<Marking>() {
        prop_assert_eq!(marking.to_string().parse::<Marking>(), Ok(marking), "{:?}", text);
    }
    Ok(())
}

/// A valid text of any type.
fn any_text() -> impl Strategy<Value = String> {
    let written = prop_oneof![
        rim_width().boxed(),
        rim_diameter().boxed(),
        prop_oneof![15 => service(), 1 => second_service()].boxed(),
        load_version().boxed(),
        load_range().boxed(),
        metric().boxed(),
        tire().boxed(),
        bolt_circle().boxed(),
        bore().boxed(),
        inset().boxed(),
        wheel_size().boxed(),
        wheel().boxed(),
        thread().boxed(),
        seat().boxed(),
    ];
    (written, noise()).prop_map(|(written, noise)| written.respelled(&noise))
}

#[derive(Clone, Debug)]
enum Edit {
    Insert(Index, char),
    Delete(Index),
    Replace(Index, char),
    Duplicate(Index),
}

fn edit() -> impl Strategy<Value = Edit> {
    let alphabet: Vec<char> =
        "0123456789/.,-+x×*() \u{a0}\u{202f}\u{2033}\u{2212}\"°RZFDBCPLTHJXEGSYVé漢🛞\0\u{7f}\u{202e}"
            .chars()
            .collect();
    let letter = prop_oneof![4 => select(alphabet), 1 => any::<char>()];
    prop_oneof![
        (any::<Index>(), letter.clone()).prop_map(|(at, c)| Edit::Insert(at, c)),
        any::<Index>().prop_map(Edit::Delete),
        (any::<Index>(), letter).prop_map(|(at, c)| Edit::Replace(at, c)),
        any::<Index>().prop_map(Edit::Duplicate),
    ]
}

fn edited(text: &str, edits: &[Edit]) -> String {
    let mut chars: Vec<char> = text.chars().collect();
    for edit in edits {
        let place = |at: &Index| (!chars.is_empty()).then(|| at.index(chars.len()));
        match edit {
            Edit::Insert(at, c) => chars.insert(at.index(chars.len() + 1), *c),
            Edit::Delete(at) => {
                if let Some(at) = place(at) {
                    chars.remove(at);
                }
            }
            Edit::Replace(at, c) => {
                if let Some(at) = place(at) {
                    chars[at] = *c;
                }
            }
            Edit::Duplicate(at) => {
                if let Some(at) = place(at) {
                    chars.insert(at, chars[at]);
                }
            }
        }
    }
    chars.into_iter().collect()
}

proptest! {
    #[test]
    fn arbitrary_bytes_do_no_harm(
        bytes in prop_oneof![3 => prop::collection::vec(any::<u8>(), 0..80), 1 => prop::collection::vec(any::<u8>(), 80..400)],
    ) {
        survives(&String::from_utf8_lossy(&bytes))?;
    }

    #[test]
    fn arbitrary_text_does_no_harm(text in "(\\PC|[0-9RxX/ .,-]){0,140}") {
        survives(&text)?;
    }

    #[test]
    fn mutated_text_does_no_harm(text in any_text(), edits in prop::collection::vec(edit(), 0..5)) {
        survives(&edited(&text, &edits))?;
    }

    #[test]
    fn spliced_text_does_no_harm(a in any_text(), b in any_text(), from in any::<Index>(), to in any::<Index>()) {
        let a: Vec<char> = a.chars().collect();
        let b: Vec<char> = b.chars().collect();
        let head = &a[..from.index(a.len() + 1)];
        let tail = &b[to.index(b.len() + 1)..];
        survives(&head.iter().chain(tail).collect::<String>())?;
    }
}

/// Whether any designation reads the text.
fn is_read(text: &str) -> bool {
    survives(text).unwrap();
    text.parse::<Tire>().is_ok()
        || text.parse::<Wheel>().is_ok()
        || text.parse::<ServiceDescription>().is_ok()
        || text.parse::<LoadVersion>().is_ok()
        || text.parse::<LoadRange>().is_ok()
        || text.parse::<BoltCircle>().is_ok()
        || text.parse::<RimWidth>().is_ok()
        || text.parse::<RimDiameter>().is_ok()
        || text.parse::<Bore>().is_ok()
        || text.parse::<Inset>().is_ok()
        || text.parse::<Thread>().is_ok()
        || text.parse::<Seat>().is_ok()
}

/// The strategies do not test one side only: spellings differ from the canonical text, and mutated
/// texts are read as well as refused.
#[test]
fn strategies_reach_both_sides() {
    let mut runner = TestRunner::deterministic();
    let mut sample = |count: usize| -> (usize, usize) {
        let mutated = (any_text(), prop::collection::vec(edit(), 1..5));
        let texts: Vec<(String, String)> = (0..count)
            .map(|_| {
                let (text, edits) = mutated.new_tree(&mut runner).unwrap().current();
                let mutated = edited(&text, &edits);
                (text, mutated)
            })
            .collect();
        assert!(texts.iter().all(|(text, _)| is_read(text)));
        let read = texts.iter().filter(|(_, mutated)| is_read(mutated)).count();
        let respelled = texts.iter().filter(|(text, _)| !text.is_ascii() || text.contains(',')).count();
        (read, respelled)
    };
    let (read, respelled) = sample(1000);
    println!("of 1000 mutated texts {read} are read; {respelled} were respelled beyond ASCII");
    assert!((100..900).contains(&read), "{read}");
    assert!(respelled > 500, "{respelled}");
}
