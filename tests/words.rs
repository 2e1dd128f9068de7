//! The words of every enum: each is read as its variant, and nothing else is.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used, reason = "helpers of tests")]

use std::collections::BTreeSet;
use std::fmt::Debug;
use std::fs;
use std::path::Path;
use std::str::FromStr;

use beadseat::UnknownWord;

/// What is asked of an enum with words.
#[cfg(feature = "serde")]
trait Word:
    Copy + Debug + PartialEq + FromStr<Err = UnknownWord> + serde::Serialize + serde::de::DeserializeOwned
{
}
#[cfg(feature = "serde")]
impl<
    T: Copy + Debug + PartialEq + FromStr<Err = UnknownWord> + serde::Serialize + serde::de::DeserializeOwned,
> Word for T
{
}
#[cfg(not(feature = "serde"))]
trait Word: Copy + Debug + PartialEq + FromStr<Err = UnknownWord> {}
#[cfg(not(feature = "serde"))]
impl<T: Copy + Debug + PartialEq + FromStr<Err = UnknownWord>> Word for T {}

fn law<T: Word>(all: &[T], name: fn(T) -> &'static str) {
    assert!(!all.is_empty());
    let words: Vec<&str> = all.iter().map(|&variant| name(variant)).collect();
    assert_eq!(words.iter().collect::<BTreeSet<_>>().len(), words.len(), "{words:?}");
    for (&variant, &word) in all.iter().zip(&words) {
        assert_eq!(word.parse(), Ok(variant));
        let mut near = vec![format!("{word} "), format!(" {word}"), format!("{word}_"), word[1..].to_owned()];
        near.extend([word.to_uppercase(), word.to_lowercase(), word.replace('_', "-")]);
        for near in near.iter().filter(|near| !words.contains(&near.as_str())) {
            let error = near.parse::<T>().expect_err(near);
            let allowed: BTreeSet<&str> = error.allowed().iter().copied().collect();
            assert_eq!(allowed, words.iter().copied().collect(), "{near}");
            let message = error.to_string();
            assert!(words.iter().all(|word| message.contains(&format!("`{word}`"))), "{message}");
        }
        in_files(variant, word);
    }
    let error = "x".repeat(10_000_000).parse::<T>().unwrap_err();
    assert!(error.to_string().len() < 2000, "an error does not repeat the text");
}

#[cfg(feature = "serde")]
fn in_files<T: Word>(variant: T, word: &str) {
    assert_eq!(serde_json::to_value(variant).unwrap(), word);
    assert_eq!(serde_json::from_value::<T>(word.into()).unwrap(), variant);
    for wrong in [serde_json::json!(format!("{word} ")), serde_json::json!(null), serde_json::json!(0)] {
        assert!(serde_json::from_value::<T>(wrong.clone()).is_err(), "{wrong}");
    }
}

#[cfg(not(feature = "serde"))]
fn in_files<T: Word>(_: T, _: &str) {}

macro_rules! enums {
    ($($($part:ident)::+ ;)*) => {
        /// The path of each, and its law.
        const ENUMS: &[(&str, fn())] = &[$(
            (stringify!($($part)::+), || law(beadseat::$($part)::+::ALL, beadseat::$($part)::+::name)),
        )*];
    };
}

enums! {
    Status;
    fitment::measure::Preparation;
    fitment::pressures::Assumes;
    fitment::Caution;
    fitment::CheckId;
    fitment::comparison::Ground;
    fitment::EffectId;
    fitment::moves::MoveId;
    fitment::Origin;
    fitment::pressures::PressureBasis;
    fitment::FieldOfLaw;
    fitment::LimitSet;
    fitment::Position;
    fitment::measure::Tool;
    fitment::TractionClass;
    fitment::UnitSystem;
    fitment::Verdict;
    tire::condition::ArrowTurn;
    tire::sidewall::Cord;
    tire::energy_label::FormerLabelClass;
    tire::identification::IdentificationForm;
    tire::energy_label::LabelClass;
    tire::sidewall::MarkTopic;
    tire::energy_label::NoiseClass;
    tire::RimRangeBasis;
    tire::condition::SideFacingOut;
    tire::SizeClass;
    tire::Structure;
    tire::grading::TemperatureGrade;
    tire::energy_label::TireClass;
    tire::grading::TractionGrade;
    tire::inflation::TruckSizes;
    tire::condition::VehicleSide;
    vehicle::AxleType;
    search::Expectation; search::Keep;
    vehicle::BodyKind;
    vehicle::Drive;
    vehicle::Fastening;
    vehicle::GapSide;
    vehicle::Kind;
    wheel::FastenerKind;
    wheel::PropertyClass;
    wheel::Valve;
    wheel::strength::WheelMetal;
}

#[test]
fn a_word_is_read_as_its_variant_and_nothing_else_is() {
    for (_, law) in ENUMS {
        law();
    }
}

/// The enums whose words are read, by the sources of the crate.
fn in_sources(folder: &Path, found: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            in_sources(&path, found);
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        let mut inside = false;
        for line in text.lines() {
            inside |= line.starts_with("words! {");
            let name = if inside {
                line.strip_prefix("    ").and_then(|line| line.strip_suffix(" {"))
            } else {
                line.trim_start()
                    .strip_prefix("crate::text::worded!(")
                    .and_then(|line| line.split_once(' '))
                    .map(|(name, _)| name)
            };
            let name = name.map(|name| name.trim_end_matches(" closed"));
            if let Some(name) = name.filter(|name| name.chars().all(char::is_alphanumeric)) {
                found.insert(name.to_owned());
                inside = false;
            }
        }
    }
}

#[test]
fn no_enum_is_left_out() {
    let mut found = BTreeSet::new();
    in_sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut found);
    // The two classes of the label come of one macro; what is inside the crate alone has no word of its own.
    assert!(found.remove("CarrierWord"));
    found.extend(["LabelClass", "FormerLabelClass"].map(str::to_owned));
    let last = |path: &str| path.rsplit([':', ' ']).next().unwrap_or(path).to_owned();
    assert_eq!(found, ENUMS.iter().map(|(path, _)| last(path)).collect());
}
