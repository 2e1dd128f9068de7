//! Laws of what is computed, and geometry against a general-purpose library.

#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use beadseat::Toleranced;
use beadseat::rim::RimWidth;
use beadseat::tire::{
    Formation, Tire, TireSize,
    inflation::{Inflation, InflationModel},
};
use beadseat::units::{kg, kpa, mm};
use beadseat::uom::si::f64::{Length, Mass, Pressure};
use beadseat::uom::si::{length::millimeter, mass::kilogram, pressure::kilopascal};
use beadseat::wheel::{BoltCircle, Inset};
use nalgebra::{Point2, Rotation2};
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn relative(a: f64, b: f64) -> f64 {
    (a / b - 1.0).abs()
}

/// A law of any class, with the default reference pressure or a stated one.
fn law() -> impl Strategy<Value = Inflation> {
    let tires = vec![
        ("205/55R16 {}V", true),
        ("225/45R17 {}W XL", true),
        ("HL245/40R19 {}Y", true),
        ("P225/60R16 {}S", true),
        ("P225/60R16 {}S XL", true),
        ("LT245/75R17 {}S LRC", true),
        ("LT245/75R17 {}S LRE", true),
        ("LT245/75R17 {}S", false),
        ("195/70R15C {}R", false),
        ("295/80R22.5 {}M", false),
    ];
    (select(tires), 0_u16..=279, 240.0..=1200.0).prop_map(|((pattern, has_default), index, stated)| {
        let tire: Tire = pattern.replace("{}", &index.to_string()).parse().unwrap();
        let stated = (!has_default).then_some(kpa(stated));
        tire.inflation(Formation::Single, stated).unwrap()
    })
}

/// A share from 0 to 1, with both ends.
fn share() -> impl Strategy<Value = f64> {
    prop_oneof![1 => Just(0.0), 1 => Just(1.0), 8 => 0.0..=1.0]
}

fn between(low: f64, high: f64, share: f64) -> f64 {
    (low + (high - low) * share).clamp(low, high)
}

fn pressures(law: Inflation) -> (f64, f64) {
    let [least, reference] = [law.min_pressure(), law.reference_pressure()].map(|p| p.get::<kilopascal>());
    (least, reference)
}

fn load_at(law: Inflation, kilopascals: f64) -> f64 {
    law.load_at(kpa(kilopascals)).unwrap().get::<kilogram>()
}

fn pressure_for(law: Inflation, load: f64) -> f64 {
    law.pressure_for(kg(load)).unwrap().get::<kilopascal>()
}

proptest! {
    #[test]
    fn more_pressure_never_carries_less(law in law(), a in share(), b in share()) {
        let (least, reference) = pressures(law);
        let [low, high] = if a <= b { [a, b] } else { [b, a] };
        let [low, high] = [low, high].map(|share| between(least, 1200.0, share));
        let [less, more] = [low, high].map(|pressure| load_at(law, pressure));
        prop_assert!(less <= more, "{less} kg at {low} kPa, {more} kg at {high} kPa");
        if high <= reference && high > low * (1.0 + 1e-9) {
            prop_assert!(less < more);
        }
        prop_assert!(more <= law.reference_load().get::<kilogram>());
        prop_assert!(less > 0.0);
    }

    #[test]
    fn more_load_never_needs_less_pressure(law in law(), a in share(), b in share()) {
        let most = law.reference_load().get::<kilogram>();
        let [low, high] = if a <= b { [a, b] } else { [b, a] };
        let [low, high] = [low, high].map(|share| between(most * 1e-3, most, share));
        let [less, more] = [low, high].map(|load| pressure_for(law, load));
        let (least, reference) = pressures(law);
        prop_assert!(less <= more, "{less} kPa for {low} kg, {more} kPa for {high} kg");
        prop_assert!(least <= less && more <= reference * (1.0 + 1e-12));
        if less > least * (1.0 + 1e-9) && high > low * (1.0 + 1e-9) {
            prop_assert!(less < more);
        }
    }

    #[test]
    fn pressure_and_load_are_inverse(law in law(), share in share()) {
        let (least, reference) = pressures(law);
        let pressure = between(least, reference, share);
        prop_assert!(relative(pressure_for(law, load_at(law, pressure)), pressure) < 1e-9);

        let most = law.reference_load().get::<kilogram>();
        let load = between(load_at(law, least), most, share);
        prop_assert!(relative(load_at(law, pressure_for(law, load)), load) < 1e-9);
    }

    #[test]
    fn the_reference_pressure_carries_the_load_index(law in law()) {
        let most = law.reference_load();
        prop_assert_eq!(law.load_at(law.reference_pressure()), Ok(most));
        prop_assert_eq!(law.load_at(kpa(1200.0)), Ok(most));
        prop_assert!(law.pressure_for(most * 1.000_001).is_err());
        let below: Pressure = law.min_pressure() - kpa(0.001);
        prop_assert!(law.load_at(below).is_err() && law.load_at(kpa(1200.001)).is_err());
        let nothing: Mass = kg(0.0);
        prop_assert!(law.pressure_for(nothing).is_err() && law.pressure_for(-most).is_err());
    }

    #[test]
    fn exponents_are_those_of_the_laws(law in law(), share in 0.0..0.99) {
        let (least, reference) = pressures(law);
        prop_assume!(reference > least * 1.01);
        let pressure = between(least, reference, share);
        let carried = load_at(law, pressure) / law.reference_load().get::<kilogram>();
        let tenths = if law.model() == InflationModel::LightTruck { 7 } else { 8 };
        let (left, right) = (whole_power(carried, 10), whole_power(pressure / reference, tenths));
        prop_assert!(relative(left, right) < 1e-9, "{carried} at {pressure} kPa");
    }
}

fn whole_power(base: f64, exponent: u32) -> f64 {
    (0..exponent).fold(1.0, |power, _| power * base)
}

/// A dimension, and where in its interval the real one lies: 0 at its minimum, 1 at its maximum.
#[derive(Clone, Copy, Debug)]
struct Part {
    min: f64,
    nominal: f64,
    max: f64,
    real: f64,
}

impl Part {
    fn toleranced(self) -> Toleranced<Length> {
        Toleranced::new(mm(self.min), mm(self.nominal), mm(self.max)).unwrap()
    }

    fn value(self) -> f64 {
        between(self.min, self.max, self.real)
    }
}

fn part() -> impl Strategy<Value = Part> {
    (-1e4..1e4, 0.0..100.0, 0.0..100.0, share()).prop_map(|(nominal, below, above, real)| Part {
        min: nominal - below,
        nominal,
        max: nominal + above,
        real,
    })
}

#[derive(Clone, Copy, Debug)]
enum Step {
    Add(Part),
    Subtract(Part),
    Scale(f64),
    Negate,
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        part().prop_map(Step::Add),
        part().prop_map(Step::Subtract),
        prop_oneof![Just(0.0), Just(-1.0), -3.0..3.0].prop_map(Step::Scale),
        Just(Step::Negate),
    ]
}

proptest! {
    #[test]
    fn tolerances_hold_every_combination(first in part(), steps in prop::collection::vec(step(), 0..12)) {
        let (mut chain, mut real, mut nominal) = (first.toleranced(), first.value(), first.nominal);
        let mut scale = first.nominal.abs() + 100.0;
        for step in steps {
            match step {
                Step::Add(part) => {
                    chain = chain + part.toleranced();
                    real += part.value();
                    nominal += part.nominal;
                    scale += part.nominal.abs() + 100.0;
                }
                Step::Subtract(part) => {
                    chain = chain - part.toleranced();
                    real -= part.value();
                    nominal -= part.nominal;
                    scale += part.nominal.abs() + 100.0;
                }
                Step::Scale(factor) => {
                    chain = chain * factor;
                    real *= factor;
                    nominal *= factor;
                    scale *= factor.abs().max(1.0);
                }
                Step::Negate => {
                    chain = -chain;
                    real = -real;
                    nominal = -nominal;
                }
            }
            prop_assert!(chain.min() <= chain.nominal() && chain.nominal() <= chain.max(), "{chain:?}");
            let round_off = scale * 1e-12;
            prop_assert!(in_mm(chain.min()) - round_off <= real && real <= in_mm(chain.max()) + round_off);
            prop_assert!((in_mm(chain.nominal()) - nominal).abs() <= round_off);
        }
    }

    /// The ends are reached: the interval is not wider than its combinations.
    #[test]
    fn tolerances_are_no_wider_than_needed(a in part(), b in part(), factor in -3.0..3.0) {
        let [x, y] = [a, b].map(Part::toleranced);
        let ends = |part: Part| [part.min, part.max];
        let sums: Vec<f64> = ends(a).iter().flat_map(|x| ends(b).map(|y| x + y)).collect();
        let differences: Vec<f64> = ends(a).iter().flat_map(|x| ends(b).map(|y| x - y)).collect();
        let scaled: Vec<f64> = ends(a).iter().map(|x| x * factor).collect();
        for (chain, values) in [(x + y, sums), (x - y, differences), (x * factor, scaled)] {
            let least = values.iter().copied().fold(f64::INFINITY, f64::min);
            let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            prop_assert!((in_mm(chain.min()) - least).abs() < 1e-7, "{chain:?} from {least}");
            prop_assert!((in_mm(chain.max()) - most).abs() < 1e-7, "{chain:?} to {most}");
        }
    }

    #[test]
    fn uncertainty_is_taken_as_its_size(value in -1e4..1e4, uncertainty in -100.0..100.0) {
        let x = Toleranced::within(mm(value), mm(uncertainty));
        prop_assert_eq!(x, Toleranced::within(mm(value), mm(-uncertainty)));
        prop_assert!(x.min() <= x.nominal() && x.nominal() <= x.max());
        prop_assert!((in_mm(x.max() - x.min()) - 2.0 * uncertainty.abs()).abs() < 1e-9);
    }
}

fn size() -> impl Strategy<Value = TireSize> {
    (
        select(&["", "P", "LT", "HL"][..]),
        19_u16..=99,
        4_u16..=19,
        select(&["R", "-", "B"][..]),
        select(&["13", "16", "17.5", "19", "22.5", "24"][..]),
    )
        .prop_map(|(prefix, width, aspect, structure, rim)| {
            // On whole-inch rims widths end in 5; with a dash, wide ones on half inches are of implements, whose
            // dimensions no rule tells.
            let is_implement = prefix.is_empty() && rim.contains('.') && structure != "R" && width >= 48;
            let structure = if is_implement { "R" } else { structure };
            let width = if rim.contains('.') { 5 * width } else { 5 * (width | 1) };
            format!("{prefix}{width}/{}{structure}{rim}", 5 * aspect).parse().unwrap()
        })
}

fn rim_width() -> impl Strategy<Value = RimWidth> {
    (8_u16..=80).prop_map(|quarters| RimWidth::from_quarters(quarters).unwrap())
}

proptest! {
    #[test]
    fn a_wider_rim_never_narrows_the_tire(size in size(), a in rim_width(), b in rim_width()) {
        let [narrow, wide] = if a <= b { [a, b] } else { [b, a] };
        let (on_narrow, on_wide) = (size.section_width_on(narrow).unwrap(), size.section_width_on(wide).unwrap());
        prop_assert!(on_narrow.min() <= on_wide.min());
        prop_assert!(on_narrow.nominal() <= on_wide.nominal());
        prop_assert!(on_narrow.max() <= on_wide.max());
        // Four tenths of the change of rim width, each end rounded to the millimetre.
        let change = in_mm(on_wide.nominal() - on_narrow.nominal());
        let rims = in_mm(wide.length() - narrow.length());
        prop_assert!((change - 0.4 * rims).abs() <= 1.0 + 1e-9, "{change} mm for {rims} mm");
    }

    #[test]
    fn diameters_are_in_order(size in size()) {
        let (d, snow) = (size.overall_diameter().unwrap(), size.overall_diameter_snow().unwrap());
        prop_assert!(d.min() < d.nominal() && d.nominal() < d.max() && d.max() < snow.max());
        let sum = size.rim_diameter().nominal() + size.section_height().unwrap() * 2.0;
        let listed = size.overall_diameter_citation() == beadseat::Citation::LISTED_DIMENSIONS;
        prop_assert!(listed || (in_mm(d.nominal()) - in_mm(sum)).abs() < 1e-9);
    }

    #[test]
    fn estimated_rims_are_in_order(size in size()) {
        if let Some(range) = size.estimated_rim_range() {
            prop_assert!(range.min() <= range.max());
            prop_assert!(range.contains(range.min()) && range.contains(range.max()));
            let below = RimWidth::from_quarters(range.min().quarters() - 1);
            prop_assert!(!below.is_some_and(|width| range.contains(width)));
        } else {
            prop_assert_eq!(size.family(), "truck_metric");
        }
    }

    #[test]
    fn backspacing_gives_the_inset_back(
        width in rim_width(),
        nanometres in -300_000_000_i64..=300_000_000,
        flange in 0.0..20.0,
    ) {
        let inset = Inset::from_length(mm(nanometres as f64 / 1e6)).unwrap();
        let (whole, rest) = (nanometres.abs() / 1_000_000, nanometres.abs() % 1_000_000);
        let sign = if nanometres < 0 { "-" } else { "" };
        prop_assert_eq!(format!("ET{sign}{whole}.{rest:06}").parse(), Ok(inset));

        let flange = mm(flange);
        let backspacing = inset.backspacing(width, flange);
        prop_assert_eq!(Inset::from_backspacing(width, backspacing, flange), Ok(inset));
        let overall = backspacing + inset.frontspacing(width, flange);
        prop_assert!((in_mm(overall - width.length() - flange * 2.0)).abs() < 1e-9);
    }
}

fn holes() -> impl Strategy<Value = BoltCircle> {
    (3_u8..=12, 60_000_000_i64..=600_000_000).prop_map(|(count, nanometres)| {
        let (whole, rest) = (nanometres / 1_000_000, nanometres % 1_000_000);
        format!("{count}x{whole}.{rest:06}").parse().unwrap()
    })
}

/// The centre of a hole, turned round the spindle from the first one.
fn centre(holes: BoltCircle, number: u8) -> Point2<f64> {
    let turn = Rotation2::new(std::f64::consts::TAU * f64::from(number) / f64::from(holes.count()));
    turn * Point2::new(in_mm(holes.diameter()) / 2.0, 0.0)
}

fn three_of_its_holes() -> impl Strategy<Value = (BoltCircle, [u8; 3])> {
    holes().prop_flat_map(|holes| {
        let three = subsequence((0..holes.count()).collect::<Vec<u8>>(), 3);
        (Just(holes), three.prop_map(|three| [three[0], three[1], three[2]]))
    })
}

proptest! {
    #[test]
    fn chords_are_distances_of_turned_holes(holes in holes(), first in 0_u8..12, apart in 0_u8..14) {
        let Some(chord) = holes.chord(apart) else {
            prop_assert!(apart == 0 || apart >= holes.count());
            return Ok(());
        };
        prop_assert!(0 < apart && apart < holes.count());
        let distance = nalgebra::distance(&centre(holes, first), &centre(holes, first + apart));
        prop_assert!((in_mm(chord) - distance).abs() < 1e-9, "{chord:?} against {distance} mm");
    }

    #[test]
    fn longest_chord_is_the_longest(holes in holes()) {
        let centres: Vec<_> = (0..holes.count()).map(|number| centre(holes, number)).collect();
        let longest = centres
            .iter()
            .flat_map(|a| centres.iter().map(move |b| nalgebra::distance(a, b)))
            .fold(0.0, f64::max);
        prop_assert!((in_mm(holes.longest_chord()) - longest).abs() < 1e-9);
    }

    /// The circle through three holes, from their distances and the area between them.
    #[test]
    fn three_holes_give_the_diameter((holes, numbers) in three_of_its_holes()) {
        let [i, j, k] = numbers;
        let side = |a: u8, b: u8| in_mm(holes.chord(a.abs_diff(b)).unwrap());
        let [a, b, c] = numbers.map(|number| centre(holes, number));
        let area = (b - a).perp(&(c - a)).abs() / 2.0;
        let diameter = side(i, j) * side(j, k) * side(k, i) / (2.0 * area);
        prop_assert!(relative(diameter, in_mm(holes.diameter())) < 1e-9, "{diameter} mm for {holes}");
    }
}
