//! What a tire and a wheel must be bought with to pass what the vehicle asks of them.

use super::wishes::Keep;
use crate::fitment::{CheckId, DependsOn, Setup, Trial, Verdict};
use crate::tire::{LoadIndex, LoadRange, LoadVersion, ServiceDescription, SpeedSymbol, Tire};
use crate::units::{self, Length, Mass, Pressure, in_kg, in_kpa};
use crate::vehicle::{Axle, Fastening};
use crate::wheel::{BoltCircle, Seat, Spigot, Thread};

/// What a candidate must be bought with on one axle. What is absent is not known to be needed: its check was not judged.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Needs {
    load_index: Option<LoadIndex>,
    speed_symbol: Option<SpeedSymbol>,
    load_version: Option<LoadVersion>,
    load_range: Option<LoadRange>,
    pressure: Option<Pressure>,
    pressure_full_load: Option<Pressure>,
    wheel_rating: Option<Mass>,
    barrel_radius: Option<Length>,
    spoke_back: Option<Length>,
    bolt_circle: Option<BoltCircle>,
    bore: Option<Spigot>,
    seat: Option<Seat>,
    thread: Option<Thread>,
    fastening: Option<Fastening>,
}

impl Needs {
    /// The least load index, in pairs where the axle has pairs.
    pub const fn load_index(&self) -> Option<LoadIndex> {
        self.load_index
    }

    /// The slowest speed symbol.
    pub const fn speed_symbol(&self) -> Option<SpeedSymbol> {
        self.speed_symbol
    }

    /// The load version that the load index is reached in; none for the standard one.
    pub const fn load_version(&self) -> Option<LoadVersion> {
        self.load_version
    }

    /// The load range that the load index is reached in, of sizes whose load versions are called so.
    pub const fn load_range(&self) -> Option<LoadRange> {
        self.load_range
    }

    /// The cold pressure for the normal load.
    pub const fn pressure(&self) -> Option<Pressure> {
        self.pressure
    }

    /// The cold pressure for full load and top speed.
    pub const fn pressure_full_load(&self) -> Option<Pressure> {
        self.pressure_full_load
    }

    /// The least rating of the wheel.
    pub const fn wheel_rating(&self) -> Option<Mass> {
        self.wheel_rating
    }

    /// The least inside radius of the rim's barrel over the brake.
    pub const fn barrel_radius(&self) -> Option<Length> {
        self.barrel_radius
    }

    /// How far the back of the spokes must stand outboard of the wheel's mounting face at least, over the caliper.
    pub const fn spoke_back(&self) -> Option<Length> {
        self.spoke_back
    }

    /// The holes of the hub.
    pub const fn bolt_circle(&self) -> Option<BoltCircle> {
        self.bolt_circle
    }

    /// The bore that the spigot centres; a larger one needs a ring.
    pub const fn bore(&self) -> Option<Spigot> {
        self.bore
    }

    /// The seat of the hub's own fasteners.
    pub const fn seat(&self) -> Option<Seat> {
        self.seat
    }

    /// The thread of the fasteners.
    pub const fn thread(&self) -> Option<Thread> {
        self.thread
    }

    /// Whether they are bolts or nuts.
    pub const fn fastening(&self) -> Option<Fastening> {
        self.fastening
    }
}

impl Needs {
    /// For tires that are alike on both axles: the service description, as it holds on this axle, and the strength of the
    /// one that both have.
    pub(super) fn as_alike(&mut self, own: &Self, trial: &Trial<'_>, tire: &Tire) {
        let service = tire.service();
        self.load_index =
            own.load_index.and(service.and_then(|service| service.index(trial.formation(tire))));
        self.speed_symbol = own.speed_symbol.and(service.map(|service| service.speed()));
        (self.load_version, self.load_range) = (tire.load_version(), tire.load_range());
        self.wheel_rating = own.wheel_rating;
    }
}

/// How many load indices above the least that carries the load are tried: one that needs more pressure than it may
/// have is not enough.
const MORE_INDICES: u16 = 15;

/// A setup with what it must be bought with.
#[derive(Clone, Copy)]
pub(super) struct Bought {
    pub(super) setup: Setup,
    pub(super) needs: Needs,
    /// The check that is beyond whatever is bought; the setup has the first that was tried.
    pub(super) fails: Option<CheckId>,
}

impl Bought {
    /// The setup and its needs, or the check that nothing bought passes.
    pub(super) fn passed(self) -> Result<(Setup, Needs), CheckId> {
        self.fails.map_or(Ok((self.setup, self.needs)), Err)
    }
}

/// The setup with the least it must be bought with. What stays has what it has.
pub(super) fn bought(trial: &Trial<'_>, axle: &Axle, setup: Setup, keep: Keep) -> Bought {
    let mut setup = setup;
    let buys_wheel = keep != Keep::Wheels;
    let hub = axle.hub().filter(|_| buys_wheel);
    let mut needs = Needs {
        bolt_circle: hub.and_then(|hub| hub.bolt_circle()),
        bore: hub.and_then(|hub| hub.spigot()),
        seat: hub.and_then(|hub| hub.seat()),
        thread: hub.and_then(|hub| hub.thread()),
        fastening: hub.and_then(|hub| hub.fastening()),
        ..Needs::default()
    };
    if buys_wheel && setup.wheel_rating().is_none() {
        // Ratings are stamped in steps of 5 kg: common practice, no source.
        let rating = trial.wheel_share().map(|share| units::kg(libm::ceil(in_kg(share) / 5.0) * 5.0));
        if let Some(rated) = rating.and_then(|rating| setup.with_wheel_rating(rating).ok()) {
            (setup, needs.wheel_rating) = (rated, rating);
        }
    }
    let [barrel, spokes] = trial.around_brake(&setup.wheel().size());
    if buys_wheel && setup.barrel_radius().is_none() && setup.barrel_thickness().is_none() {
        if let Some(open) = barrel.and_then(|barrel| setup.with_barrel_radius(barrel).ok()) {
            (setup, needs.barrel_radius) = (open, barrel);
        }
    }
    if buys_wheel && setup.spoke_back().is_none() {
        if let Some(clear) = spokes.and_then(|spokes| setup.with_spoke_back(spokes).ok()) {
            (setup, needs.spoke_back) = (clear, spokes);
        }
    }
    let least = match setup.tire().service() {
        Some(_) => None,
        None if keep == Keep::Tires => None,
        None => {
            needs.speed_symbol = speed_symbol(trial, setup);
            let of_original = trial.original().and_then(|original| original.tire().service());
            let speed = needs.speed_symbol.or(of_original.map(|service| service.speed()));
            speed.and_then(|speed| Some((least_index(trial, setup, speed)?, speed)))
        }
    };
    let Some((least, speed)) = least else { return pumped(trial, axle, setup, needs) };
    let mut first = None;
    let mut fits = |tire: Tire, number: u16| {
        let service = LoadIndex::new(number).and_then(|index| described(trial, index, speed))?;
        let tire = tire.with_service(service);
        let (version, range) = (tire.load_version(), tire.load_range());
        let needs =
            Needs { load_index: LoadIndex::new(number), load_version: version, load_range: range, ..needs };
        let bought = pumped(trial, axle, setup.called(tire), needs);
        let does = bought.fails.is_none().then_some(bought);
        first = first.or(Some(bought));
        does
    };
    let last = least.number() + MORE_INDICES;
    let expected = |tire: &Tire| tire.expected_load_index().map(|expected| expected.number().min(last));
    let strengths = strengths(trial, setup.tire());
    let as_expected = strengths.into_iter().flatten().flat_map(|tire| {
        let numbers = expected(&tire).map(|most| least.number()..=most);
        numbers.into_iter().flatten().map(move |number| (tire, number))
    });
    // More is asked for than is expected of the size in any strength, or nothing is known of it.
    let tried = expected(&setup.tire()).filter(|_| strengths.contains(&Some(setup.tire())));
    let from = tried.map_or(least.number(), |most| (most + 1).max(least.number()));
    let more = (from..=last).map(|number| (setup.tire(), number));
    if let Some(bought) = as_expected.chain(more).find_map(|(tire, number)| fits(tire, number)) {
        return bought;
    }
    first.unwrap_or(Bought { setup, needs, fails: Some(CheckId::TireLoad) })
}

/// The load ranges that are tried. Weaker and stronger ones are rare: common practice, no source.
const RANGES: [LoadRange; 4] = [
    crate::literal!(LoadRange, "LRC"),
    crate::literal!(LoadRange, "LRD"),
    crate::literal!(LoadRange, "LRE"),
    crate::literal!(LoadRange, "LRF"),
];

/// A tire in the strengths that it is looked for in, the weakest first: load ranges whose letter stands for a pressure,
/// or standard and extra load, and high load in the place of a tire that has it.
fn strengths(trial: &Trial<'_>, tire: Tire) -> [Option<Tire>; 4] {
    if tire.load_version().is_some() || tire.load_range().is_some() {
        return [Some(tire), None, None, None];
    }
    let rules = tire.size().rules();
    if rules.letter_pressures.is_some() {
        return RANGES.map(|range| Some(tire.with_load_range(range)));
    }
    if !rules.is_passenger {
        return [Some(tire), None, None, None];
    }
    let extra = tire.with_load_version(LoadVersion::Extra);
    let of_original = trial.original().and_then(|original| original.tire().load_version());
    let high = of_original.filter(|version| *version == LoadVersion::High);
    [Some(tire), Some(extra), high.map(|high| tire.with_load_version(high)), None]
}

/// A setup at its pressures: the placard's if they will do, or as little as it needs.
fn pumped(trial: &Trial<'_>, axle: &Axle, setup: Setup, needs: Needs) -> Bought {
    let at_placard = at_pressures(trial, axle, setup, needs, true);
    if at_placard.fails == Some(CheckId::Inflation) {
        let as_needed = at_pressures(trial, axle, setup, needs, false);
        if as_needed.fails.is_none() {
            return as_needed;
        }
    }
    at_placard
}

fn at_pressures(trial: &Trial<'_>, axle: &Axle, setup: Setup, needs: Needs, at_placard: bool) -> Bought {
    let (mut setup, mut needs) = inflated(trial, axle, setup, needs, at_placard);
    // What is judged at its best, because not all is known, asks for more than can be told before.
    for _ in 0..2 {
        let Some((least, for_full_load)) = trial.tried(&setup).asks_for_pressure() else { break };
        if !for_full_load {
            pump(&mut setup, &mut needs, Some(stepped(least)), None);
        }
        let full = needs.pressure_full_load.map_or(stepped(least), |full| full.max(stepped(least)));
        pump(&mut setup, &mut needs, None, Some(full));
    }
    Bought { setup, needs, fails: trial.tried(&setup).fails(DependsOn::Purchase) }
}

/// Pressures are set in steps of 10 kPa: common practice, no source.
fn stepped(pressure: Pressure) -> Pressure {
    units::kpa(libm::ceil(in_kpa(pressure) / 10.0 - 1e-9) * 10.0)
}

/// Sets the pressures that are known.
fn pump(setup: &mut Setup, needs: &mut Needs, normal: Option<Pressure>, full: Option<Pressure>) {
    if let Some(inflated) = normal.and_then(|pressure| setup.with_pressure(pressure).ok()) {
        (*setup, needs.pressure) = (inflated, normal);
    }
    if let Some(inflated) = full.and_then(|pressure| setup.with_pressure_full_load(pressure).ok()) {
        (*setup, needs.pressure_full_load) = (inflated, full);
    }
}

/// The same index alone and in a pair, where the axle has pairs.
fn described(trial: &Trial<'_>, index: LoadIndex, speed: SpeedSymbol) -> Option<ServiceDescription> {
    ServiceDescription::new(index, trial.is_dual().then_some(index), speed)
}

/// The slowest symbol that is fast enough; nothing where that cannot be said.
fn speed_symbol(trial: &Trial<'_>, setup: Setup) -> Option<SpeedSymbol> {
    let any = LoadIndex::new(100)?;
    let verdict = |symbol| {
        let service = described(trial, any, symbol)?;
        let setup = setup.called(setup.tire().with_service(service));
        Some(trial.tried(&setup).verdict_of(CheckId::SpeedSymbol))
    };
    // In brackets it is for tires of their own.
    let mut symbols = SpeedSymbol::ALL.iter().copied().filter(|symbol| !symbol.is_open_ended());
    symbols
        .find(|&symbol| verdict(symbol).is_some_and(|verdict| verdict != Verdict::Beyond))
        .filter(|&symbol| matches!(verdict(symbol), Some(Verdict::Within | Verdict::Marginal)))
}

/// The least index that carries the load and is not below the original's where that counts; nothing where neither can
/// be said.
fn least_index(trial: &Trial<'_>, setup: Setup, speed: SpeedSymbol) -> Option<LoadIndex> {
    const LAST: u16 = 279;
    let verdicts = |number: u16| {
        let service = described(trial, LoadIndex::new(number)?, speed)?;
        let setup = setup.called(setup.tire().with_service(service));
        let tried = trial.tried(&setup);
        Some([CheckId::TireLoad, CheckId::TireLoadVsOriginal].map(|id| tried.verdict_of(id)))
    };
    let is_enough = |number| verdicts(number).is_some_and(|of| of.iter().all(|v| *v != Verdict::Beyond));
    if !is_enough(LAST) || is_enough(0) {
        return None;
    }
    let (mut below, mut enough) = (0, LAST);
    while enough - below > 1 {
        let middle = below + (enough - below) / 2;
        if is_enough(middle) { enough = middle } else { below = middle }
    }
    LoadIndex::new(enough)
}

/// The setup at the pressures that it needs, and at least at the placard's or not, in steps of 10 kPa, as far as they
/// are known.
fn inflated(trial: &Trial<'_>, axle: &Axle, setup: Setup, needs: Needs, at_placard: bool) -> (Setup, Needs) {
    let (mut setup, mut needs) = (setup, needs);
    let Some(asked) = trial.tried(&setup).pressures() else { return (setup, needs) };
    let most = asked.permitted();
    let highest = |of: &[Option<Pressure>]| {
        let highest = of.iter().flatten().copied().reduce(Pressure::max).map(stepped);
        highest.map(|pressure| most.map_or(pressure, |most| pressure.min(most)))
    };
    let placard = |pressure: Option<Pressure>| pressure.filter(|_| at_placard);
    let normal =
        highest(&[placard(axle.placard()), asked.normal_load().pressure(), asked.as_original().pressure()]);
    let full = highest(&[normal, placard(axle.placard_full_load()), asked.full_load().pressure()]);
    pump(&mut setup, &mut needs, normal, full);
    (setup, needs)
}
