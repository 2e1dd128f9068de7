//! A scenario file: a vehicle, its original setup and a proposed one, how it is used and the limits.
//!
//! Any self-describing serde format will do; JSON is what the examples read. Every key that is a
//! quantity ends in its unit. In place of `_mm`, `_kpa`, `_kg`, `_kmh` and `_nm` it may end in `_in`, `_psi` or `_bar`,
//! `_lb`, `_mph` and `_ftlb`; what is written is metric. A quantity may also be a text with its unit, under a key without
//! one: `"track": "60 1/2 in"`, `"pressure": "2,2 bar"`, `"torque": "90 ft-lb"`; a number alone is refused there.
//! What is not known is left out, or `null`; so is an object with nothing but `null` in it. A key that begins with `?` is
//! a question, whose text is passed over: [`Template`] writes all of them. Common words are understood where they have
//! one meaning (`rwd`, `car`, `conical`, `yes`). Unknown
//! keys, keys given twice, be it in two units, arrays instead of objects and values out of range are errors, and the
//! error arises where the value stands, so that a deserializer that tracks places (`serde_path_to_error`) can name it.
//! [`schema`] is the same for other programs.
//!
//! What is written reads back as the same scenario. Numbers of up to 15 digits do so by any parser, longer ones by one
//! that reads them exactly (of `serde_json`, with its feature `float_roundtrip`).
//!
//! ```
//! use beadseat::{fitment::Verdict, scenario::Scenario};
//! let scenario: Scenario = serde_json::from_str(r#"{
//!     "vehicle": { "name": "a demonstration trailer", "kind": "trailer", "drive": "none",
//!                  "rear": { "max_load_kg": 900, "axles": 1, "hub": { "bolt_circle": "4x100" } } },
//!     "original": { "rear": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30 4x100" } },
//!     "proposed": { "rear": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30 4x98" } }
//! }"#)?;
//! assert_eq!(scenario.name(), Some("a demonstration trailer"));
//! assert_eq!(scenario.assess().overall(), Verdict::Beyond); // the holes
//! # Ok::<(), serde_json::Error>(())
//! ```
//!
//! # The objects
//!
//! The keys of each object are the fields of the type it is read into, with the unit behind them:
//!
//! | object | type |
//! |---|---|
//! | `vehicle` | [`Vehicle`], and `name` |
//! | `vehicle.front`, `vehicle.rear` | [`Axle`](crate::vehicle::Axle): `max_load_kg`, `normal_load_kg`, `track_mm`, `placard_kpa`, … |
//! | `….hub` | [`Hub`](crate::vehicle::Hub): `bolt_circle`, `spigot_mm`, `spigot_height_mm`, `thread`, `seat`, `fastening`, `stud_length_mm` |
//! | `….steering`, `….travel`, `….space`, `….brake` | the types of [`vehicle`](crate::vehicle) |
//! | `original`, `proposed` | [`Setups`]: `front`, and `rear`, which may be `"same"` |
//! | `….front`, `….rear` | [`Setup`]: `tire` and `wheel`, and what is known beside them |
//! | `….adaptor` of a setup | [`Adaptor`](crate::wheel::Adaptor): `thickness_mm`, `hub_bolt_circle`, `hub_bore`, `wheel_bolt_circle`, `wheel_spigot_mm`, … |
//! | `….left`, `….right` of a setup | [`TireInUse`](crate::fitment::TireInUse): `date_code`, `tread_mm`, `arrow`, `facing_out`, `unmarked` |
//! | `spare` | [`Setup`] of the wheel that is carried along; one of `left` and `right` tells of its tire |
//! | `more_axles` | a list of up to 4 axles beside front and rear: `name`, `axle` as [`Axle`](crate::vehicle::Axle), `original` and `proposed` as [`Setup`], `driven`; see [`FurtherAxle`] |
//! | `use` | [`Conditions`]: `date`, `towing`, `top_speed_kmh` |
//! | `sources` | where values come from, as [`Provenance`]: `of`, `from`, `on`, `by` |
//! | `limits` | [`Limits`]: `set`, and the caller's own limits, with the document they stand in as `source` |

mod more_axles;
mod named;
mod origins;
mod schema;
mod setups;
mod spare;
mod template;

pub use origins::ProvenanceError;
pub use schema::Schema;
pub use template::Template;

use alloc::string::String;
use alloc::vec::Vec;

use serde::de::{Deserializer, Error};
use serde::ser::{SerializeMap, Serializer};
use serde::{Deserialize, Serialize};

use crate::file::{Forgotten, Nowhere, Path, Shaped};
use crate::fitment::derivation::Derivations;
use crate::fitment::{
    AxleTold, Basis, Change, Conditions, Document, FurtherAxle, Limits, Position, Provenance, Report, Setup,
    Setups, SpareWheel, assess,
};
use crate::record::read_as_object;
use crate::vehicle::{Kind, Vehicle};
use more_axles::MoreAxles;
use named::Named;
use origins::{MOST, Problem, Sources, is_in};
use spare::Carried;

impl Template {
    /// Of a kind of vehicle; a trailer has no front axle.
    pub const fn new(kind: Kind) -> Self {
        Self::of(ScenarioFile::OBJECT, kind)
    }
}

/// What a scenario file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    name: Option<String>,
    vehicle: Vehicle,
    change: Change,
    spare: Option<Setup>,
    /// What is told of the axles beside front and rear, and what was found of it.
    more_axles: Vec<AxleTold>,
    further: Vec<FurtherAxle>,
    conditions: Conditions,
    limits: Limits,
    basis: Basis,
    /// The findings on the spare wheel that rest on what is assumed, in front and behind.
    of_spare: [u128; 2],
}

impl Scenario {
    /// A scenario put together in a program.
    ///
    /// ```
    /// use beadseat::{fitment::{Change, Conditions, Limits, Setups}, scenario::Scenario, vehicle::Vehicle};
    /// let nothing = Setups { front: None, rear: None };
    /// let change = Change { original: nothing, proposed: nothing };
    /// let scenario = Scenario::new(Vehicle::unknown(), change, Conditions::default(), Limits::default());
    /// assert_eq!(scenario.name(), None);
    /// ```
    pub fn new(vehicle: Vehicle, change: Change, conditions: Conditions, limits: Limits) -> Self {
        let (basis, of_spare) = (Basis::default(), [0; 2]);
        let (more_axles, further) = (Vec::new(), Vec::new());
        Self {
            name: None,
            vehicle,
            change,
            spare: None,
            more_axles,
            further,
            conditions,
            limits,
            basis,
            of_spare,
        }
    }

    /// The name of the vehicle, as it stands in the file; show it through [`Excerpt`](crate::Excerpt).
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// The vehicle that the change is made to.
    pub const fn vehicle(&self) -> &Vehicle {
        &self.vehicle
    }

    /// Original and proposed setups.
    pub const fn change(&self) -> &Change {
        &self.change
    }

    /// The same with a spare wheel that is carried along.
    pub fn with_spare(self, spare: Setup) -> Self {
        let mut carrying = Self { spare: Some(spare), ..self };
        carrying.of_spare = carrying.spare_on_assumptions();
        carrying
    }

    /// The spare wheel that is carried along, to be judged on each axle.
    ///
    /// ```
    /// use beadseat::{fitment::Position, scenario::Scenario};
    /// let scenario: Scenario = serde_json::from_str(r#"{
    ///     "vehicle": { "kind": "trailer", "rear": { "max_load_kg": 900 } },
    ///     "original": { "rear": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30" } },
    ///     "proposed": { "rear": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30" } },
    ///     "spare": { "tire": "155/80R13 79T", "wheel": "4.5Jx13 ET30" }
    /// }"#)?;
    /// let spare = scenario.spare().ok_or("none")?;
    /// assert_eq!(spare.axles().collect::<Vec<_>>(), [Position::Rear]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn spare(&self) -> Option<SpareWheel<'_>> {
        let setup = self.spare.as_ref()?;
        let spare = SpareWheel::new(setup, &self.vehicle, &self.change, &self.conditions, &self.limits);
        Some(spare.resting_on_assumptions(self.of_spare))
    }

    /// The findings on the spare wheel that rest on what is assumed, as bits of the rows of its reports.
    fn spare_on_assumptions(&self) -> [u128; 2] {
        if self.basis.assumed().next().is_none() {
            return [0; 2];
        }
        let told = Self { of_spare: [0; 2], ..self.clone() };
        let less = self.without(self.basis.assumed());
        [Position::Front, Position::Rear].map(|axle| {
            let on = |scenario: &Self| scenario.spare().and_then(|spare| spare.on(axle));
            match (on(&told), on(&less)) {
                (Some(told), Some(less)) => told.rows_unlike(&less),
                (Some(_), None) => u128::MAX,
                (None, _) => 0,
            }
        })
    }

    /// The axles beside the front and the rear one, in the order of the file, each judged in a report of its own.
    ///
    /// ```
    /// # use beadseat::scenario::Scenario;
    /// let scenario: Scenario = serde_json::from_str(r#"{ "vehicle": { "kind": "truck" }, "original": {}, "proposed": {},
    ///     "more_axles": [{ "name": "tag axle", "axle": { "max_load_kg": 7500 } }] }"#)?;
    /// let names: Vec<_> = scenario.more_axles().map(|axle| axle.name()).collect();
    /// assert_eq!(names, ["tag axle"]);
    /// # Ok::<(), serde_json::Error>(())
    /// ```
    pub fn more_axles(&self) -> impl Iterator<Item = &FurtherAxle> {
        self.further.iter()
    }

    /// Judges the further axles, each beside all the others; what rests on what is assumed is at best marginal.
    fn with_further_judged(self) -> Self {
        if self.more_axles.is_empty() {
            return self;
        }
        let of = |scenario: &Self, number| {
            let vehicle = (&scenario.vehicle, &scenario.change);
            FurtherAxle::judge(&scenario.more_axles, number, vehicle, &scenario.conditions, &scenario.limits)
        };
        let without_assumed = self.without(self.basis.assumed());
        let further = (0..self.more_axles.len()).filter_map(|number| {
            let report = |scenario: &Self| of(scenario, number).map(|axle| *axle.report());
            let (judged, less) = (of(&self, number)?, report(&without_assumed)?);
            let basis = self.basis.with_rests(|values| report(&self.without(values)).unwrap_or(less));
            Some(judged.resting_on_assumptions(basis, &less))
        });
        Self { further: further.collect(), ..self.clone() }
    }

    /// How it is used.
    pub const fn conditions(&self) -> &Conditions {
        &self.conditions
    }

    /// The limits that the change is held against.
    pub const fn limits(&self) -> &Limits {
        &self.limits
    }

    /// Judges the change on the vehicle, as [`assess`] does; what rests on what is assumed is at best marginal.
    ///
    /// It is of the front and the rear axle. [`Scenario::document`] has the verdict on all axles and the spare wheel.
    pub fn assess(&self) -> Report {
        match self.basis.assumed().next() {
            Some(_) => self.held_back(self.basis.assumed(), Self::judged),
            None => self.judged(),
        }
    }

    /// Apart, so that its second report takes no stack where nothing is assumed.
    #[inline(never)]
    fn held_back<'a>(
        &self,
        assumed: impl Iterator<Item = &'a Provenance>,
        judged: impl Fn(&Self) -> Report,
    ) -> Report {
        let mut report = judged(self);
        report.hold_back(&judged(&self.without(assumed)));
        report
    }

    /// Judges another proposal on the same vehicle: what rests on values that are assumed, other than those of the
    /// proposal that it has, is at best marginal.
    ///
    /// ```
    /// use beadseat::{fitment::{Setups, Verdict}, scenario::Scenario};
    /// let scenario: Scenario = serde_json::from_str(r#"{
    ///     "vehicle": { "top_speed_kmh": 180 }, "original": {}, "proposed": {},
    ///     "sources": [{ "of": "vehicle.top_speed_kmh", "from": "assumed" }]
    /// }"#)?;
    /// # use beadseat::fitment::{CheckId, Position, Setup};
    /// let other = Setups::both(Setup::parse("205/55R16 91V", "6.5Jx16")?);
    /// let speed = scenario.assess_proposed(other).get(CheckId::SpeedSymbol, Position::Front).ok_or("no finding")?;
    /// assert_eq!(speed.verdict(), Verdict::Marginal);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn assess_proposed(&self, proposed: Setups) -> Report {
        let judged = |scenario: &Self| {
            let change = Change { proposed, ..scenario.change };
            assess(&scenario.vehicle, &change, &scenario.conditions, &scenario.limits)
        };
        let mut assumed = self.basis.assumed().filter(|value| !is_in(value.of(), "proposed")).peekable();
        if assumed.peek().is_some() { self.held_back(assumed, judged) } else { judged(self) }
    }

    /// The judgement, wherever its values come from.
    fn judged(&self) -> Report {
        assess(&self.vehicle, &self.change, &self.conditions, &self.limits)
    }

    /// How the numbers of its report came about.
    pub const fn derivations(&self) -> Derivations<'_> {
        Derivations::new(&self.vehicle, &self.change, &self.conditions, &self.limits)
    }

    /// Its report with the vehicle, its setups and what moves.
    pub fn document<'a>(&'a self, report: &'a Report) -> Document<'a> {
        let mut document = Document::new(report, &self.vehicle, &self.change).with_basis(&self.basis);
        if let Some(spare) = self.spare() {
            document = document.with_spare(spare);
        }
        document = document.with_further(&self.further);
        match &self.name {
            Some(name) => document.with_name(name),
            None => document,
        }
    }
}

impl Scenario {
    /// Says where values come from; what was said before is kept.
    ///
    /// A value is named by the keys that lead to it in a file, as `vehicle.front.track_mm`; an object stands for all that
    /// is in it. What is said of the setup in front holds for the same setup behind, unless something is said of that.
    /// The findings that rest on what is [assumed](crate::fitment::Origin::Assumed) are never better than marginal.
    ///
    /// # Errors
    /// A place of which nothing is told, one that is named twice or lies in another, and more than 256 in all.
    ///
    /// ```
    /// use beadseat::fitment::{Change, CheckId, Conditions, Limits, Origin, Position, Provenance, Reason, Setup, Verdict};
    /// use beadseat::{scenario::Scenario, units::kmh, vehicle::{Kind, Vehicle}};
    /// let car = Vehicle::new(Kind::Passenger).with_top_speed(kmh(180.0))?;
    /// let setup = Setup::parse("205/55R16 91V", "6.5Jx16 ET46")?;
    /// let change = Change::all_round(setup, setup);
    /// let scenario = Scenario::new(car, change, Conditions::default(), Limits::default());
    /// let speed = |scenario: &Scenario| scenario.assess().get(CheckId::SpeedSymbol, Position::Front);
    /// assert_eq!(speed(&scenario).map(|found| found.verdict()), Some(Verdict::Within));
    /// let guessed = [Provenance::new("vehicle.top_speed_kmh", Origin::Assumed)];
    /// let found = speed(&scenario.with_provenance(guessed)?).ok_or("no finding")?;
    /// assert_eq!((found.verdict(), found.reason()), (Verdict::Marginal, Reason::Assumed));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn with_provenance(
        mut self,
        told: impl IntoIterator<Item = Provenance>,
    ) -> Result<Self, ProvenanceError> {
        let mut list = self.basis.list().to_vec();
        for value in told {
            let refuse = |problem| ProvenanceError { of: value.of().into(), problem };
            let of = Path::new(value.of())
                .as_written(ScenarioFile::OBJECT)
                .map_err(|Nowhere { key, near }| refuse(Problem::NoKey { key, near }))?;
            if self.clone().forget(Path::new(&of)) == Forgotten::Nothing {
                return Err(refuse(Problem::NothingThere));
            }
            if let Some(before) =
                list.iter().find(|before| is_in(before.of(), &of) || is_in(&of, before.of()))
            {
                return Err(refuse(Problem::Twice { by: before.of().into() }));
            }
            if list.len() == MOST {
                return Err(refuse(Problem::TooMany));
            }
            list.push(value.at(of));
        }
        self.basis = Basis::told(list);
        self.basis = self.basis.with_rests(|without| self.without(without).judged());
        self.of_spare = self.spare_on_assumptions();
        Ok(self.with_further_judged())
    }

    /// Where its values come from, as far as that is told.
    ///
    /// ```
    /// use beadseat::{fitment::Origin, scenario::Scenario};
    /// let scenario: Scenario = serde_json::from_str(r#"{
    ///     "vehicle": { "kind": "passenger", "front": { "track_in": 60.5 } }, "original": {}, "proposed": {},
    ///     "sources": [{ "of": "vehicle.front.track_in", "from": "measured", "on": "2026-11-02", "by": "the workshop" }]
    /// }"#)?;
    /// let [track] = scenario.provenance() else { return Err("one is told".into()) };
    /// assert_eq!((track.of(), track.from()), ("vehicle.front.track_mm", Origin::Measured));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn provenance(&self) -> &[Provenance] {
        self.basis.list()
    }

    /// The same as if some of its values had not been told.
    fn without<'a>(&self, values: impl IntoIterator<Item = &'a Provenance>) -> Self {
        let mut less = self.clone();
        for value in values {
            less.forget(Path::new(value.of()));
            if let Some(behind) = self.same_behind(value.of()) {
                less.forget(Path::new(&behind));
            }
        }
        less
    }

    /// The place of the same value of an equal setup behind, unless something is said of it by itself.
    fn same_behind(&self, of: &str) -> Option<String> {
        let Change { original, proposed } = &self.change;
        let same = |front: &str, setups: &Setups| {
            let inside =
                of.strip_prefix(front).filter(|inside| inside.is_empty() || inside.starts_with('.'))?;
            let behind = alloc::format!("{}{inside}", front.replace("front", "rear"));
            let is_told =
                self.provenance().iter().any(|told| is_in(told.of(), &behind) || is_in(&behind, told.of()));
            (setups.front == setups.rear && !is_told).then_some(behind)
        };
        same("original.front", original).or_else(|| same("proposed.front", proposed))
    }

    /// Leaves out the value at a place.
    fn forget(&mut self, path: Path<'_>) -> Forgotten {
        let (key, rest) = path.split();
        let Change { original, proposed } = &mut self.change;
        match key {
            "vehicle" => leave(&mut self.vehicle, rest, Vehicle::unknown),
            "original" => leave(original, rest, Setups::none),
            "proposed" => leave(proposed, rest, Setups::none),
            "spare" => Forgotten::of(&mut self.spare, rest),
            "more_axles" => more_axles::forget(&mut self.more_axles, rest),
            "use" => leave(&mut self.conditions, rest, Conditions::default),
            "limits" => leave(&mut self.limits, rest, Limits::default),
            _ => Forgotten::Nothing,
        }
    }
}

/// Leaves out what stands in an object, or puts one in its place that knows nothing.
fn leave<T: Shaped>(object: &mut T, rest: Option<Path<'_>>, blank: fn() -> T) -> Forgotten {
    match rest {
        Some(rest) => object.forget(rest),
        None => {
            *object = blank();
            Forgotten::Done
        }
    }
}

read_as_object! {
    /// A scenario as it stands in a file.
    struct ScenarioFile
    needs {
        /// The vehicle as its maker built it, and what was measured on it.
        vehicle: Named = "vehicle";
        /// What its maker put on it.
        original: Setups = "original";
        /// What is to go on.
        proposed: Setups = "proposed";
    }
    {
        /// The spare wheel that is carried along, judged on each axle.
        spare: Carried = "spare";
        /// The axles beside the front and the rear one that differ from them, each judged by itself.
        more_axles: MoreAxles = "more_axles";
        /// How it is used.
        conditions: Conditions = "use";
        /// The limits that the change is held against; without them, those of common practice.
        limits: Limits = "limits";
        /// Where the values come from, as far as that is to be told.
        sources: Sources = "sources";
    }
}

impl<'de> Deserialize<'de> for Scenario {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let file = ScenarioFile::deserialize(deserializer)?;
        let change = Change { original: file.original, proposed: file.proposed };
        let Named { name, vehicle } = file.vehicle;
        let spare = file.spare.map(|Carried(setup)| setup);
        let (conditions, limits) = (file.conditions.unwrap_or_default(), file.limits.unwrap_or_default());
        let more_axles = file.more_axles.map(|MoreAxles(axles)| axles).unwrap_or_default();
        let scenario = Self { name, spare, more_axles, ..Self::new(vehicle, change, conditions, limits) };
        match file.sources {
            Some(Sources(told)) => scenario
                .with_provenance(told)
                .map_err(|error| D::Error::custom(format_args!("sources: {error}"))),
            None => Ok(scenario.with_further_judged()),
        }
    }
}

impl Serialize for Scenario {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        /// The vehicle with its name in front.
        struct Named<'a>(&'a Scenario);
        impl Serialize for Named<'_> {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let named = usize::from(self.0.name().is_some());
                let mut map = serializer.serialize_map(Some(named + self.0.vehicle.entries()))?;
                if let Some(name) = self.0.name() {
                    map.serialize_entry("name", name)?;
                }
                self.0.vehicle.write_entries(&mut map)?;
                map.end()
            }
        }
        let is_told = !self.provenance().is_empty();
        let more_axles = &self.more_axles;
        let beside = usize::from(self.spare.is_some()) + usize::from(!more_axles.is_empty());
        let entries = 5 + usize::from(is_told) + beside;
        let mut map = serializer.serialize_map(Some(entries))?;
        map.serialize_entry("vehicle", &Named(self))?;
        map.serialize_entry("original", &self.change.original)?;
        map.serialize_entry("proposed", &self.change.proposed)?;
        if let Some(spare) = &self.spare {
            map.serialize_entry("spare", spare)?;
        }
        if !more_axles.is_empty() {
            map.serialize_entry("more_axles", more_axles)?;
        }
        map.serialize_entry("use", &self.conditions)?;
        map.serialize_entry("limits", &self.limits)?;
        if is_told {
            map.serialize_entry("sources", self.provenance())?;
        }
        map.end()
    }
}

/// The schema of the file that [`Scenario`] is read from.
///
/// ```
/// let text = serde_json::to_string_pretty(&beadseat::scenario::schema())?;
/// assert!(text.contains("bolt_circle"));
/// # Ok::<(), serde_json::Error>(())
/// ```
pub const fn schema() -> Schema {
    Schema::of(ScenarioFile::OBJECT)
}
