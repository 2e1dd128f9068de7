//! The lattice of sizes and rims that a search walks.
//!
//! No list of the sizes that are coined today is held: the lattice has every size that its grammar writes between the
//! ends below, whether anybody makes it or not. The ends are common practice, no source.

use crate::rim::{RimDiameter, RimWidth, SeatTaper};
use crate::text::Text;
use crate::tire::{SizeClass, TireSize};
use crate::vehicle::Kind;
use crate::wheel::{BoltCircle, Spigot, Wheel};

/// Values from one to another in even steps, ends included.
struct Steps {
    from: u16,
    to: u16,
    by: u16,
}

impl Steps {
    const fn count(&self) -> u32 {
        ((self.to - self.from) / self.by + 1) as u32
    }

    const fn get(&self, n: u32) -> u32 {
        self.from as u32 + n * self.by as u32
    }
}

/// How a family writes its sizes.
#[derive(Clone, Copy, PartialEq)]
enum Form {
    /// `225/45R17`
    Metric,
    /// `31x10.50R15LT`, widths in hundredths of an inch.
    Flotation,
}

/// Sizes that one grammar writes.
struct Family {
    form: Form,
    before: &'static str,
    behind: &'static str,
    /// In tenths of the code.
    rims: Steps,
    widths: Steps,
    /// Aspect ratios, or overall diameters in inches.
    heights: Steps,
}

const fn steps(from: u16, to: u16, by: u16) -> Steps {
    Steps { from, to, by }
}

const fn metric(
    before: &'static str,
    behind: &'static str,
    rims: Steps,
    widths: Steps,
    heights: Steps,
) -> Family {
    Family { form: Form::Metric, before, behind, rims, widths, heights }
}

const PASSENGER: Family = metric("", "", steps(120, 240, 10), steps(135, 355, 10), steps(25, 85, 5));
const P_METRIC: Family = metric("P", "", steps(120, 240, 10), steps(135, 355, 10), steps(25, 85, 5));
const LIGHT_TRUCK: Family = metric("LT", "", steps(140, 220, 10), steps(195, 395, 10), steps(45, 90, 5));
const COMMERCIAL: Family = metric("", "C", steps(130, 190, 10), steps(145, 285, 10), steps(50, 85, 5));
const TRAILER: Family = metric("ST", "", steps(120, 170, 10), steps(145, 255, 10), steps(70, 90, 5));
const TRUCK: Family = metric("", "", steps(175, 245, 10), steps(205, 445, 10), steps(45, 90, 5));
const MOTORCYCLE: Family = metric("", " M/C", steps(100, 210, 10), steps(60, 240, 10), steps(45, 100, 5));
const FLOTATION: Family = Family {
    form: Form::Flotation,
    before: "",
    behind: "LT",
    rims: steps(150, 220, 10),
    widths: steps(850, 1450, 50),
    heights: steps(27, 40, 1),
};

impl Family {
    const fn count(&self) -> u32 {
        self.rims.count() * self.widths.count() * self.heights.count()
    }

    /// One of its sizes; nothing where the grammar has no such one.
    fn size(&self, n: u32) -> Option<TireSize> {
        let (n, height) = (n / self.heights.count(), self.heights.get(n % self.heights.count()));
        let (rim, width) = (n / self.widths.count(), self.widths.get(n % self.widths.count()));
        let rim = RimDiameter::from_tenths(self.rims.get(rim) as u16)?;
        let mut text = Text::new();
        text.str(self.before);
        match self.form {
            Form::Metric => {
                text.whole(width).byte(b'/').whole(height).byte(b'R');
            }
            Form::Flotation => {
                text.whole(height).byte(b'x').whole(width / 100).byte(b'.');
                text.whole(width / 10 % 10).whole(width % 10).byte(b'R');
            }
        }
        rim.write(&mut text);
        TireSize::parse(text.str(self.behind).as_str()).ok()
    }
}

/// In quarters of an inch: half inches, and of rims with seats of 15° every quarter. Tables print such ones for them, 6.75,
/// 8.25 and 9.75 among others: a tire maker's published size sheet, of which the permitted rims are.
const HALF_INCHES: Steps = steps(14, 60, 2);
const QUARTER_INCHES: Steps = steps(14, 60, 1);

/// The widths of rim that each size is tried on.
#[derive(Clone, Copy)]
pub(super) struct RimWidths {
    quarters: bool,
}

impl RimWidths {
    /// Of rims of a diameter.
    pub(super) fn on(diameter: RimDiameter) -> Self {
        Self { quarters: diameter.seat_taper() == SeatTaper::FifteenDegree }
    }

    /// Those that either has.
    pub(super) const fn or(self, other: Self) -> Self {
        Self { quarters: self.quarters || other.quarters }
    }

    const fn steps(self) -> Steps {
        if self.quarters { QUARTER_INCHES } else { HALF_INCHES }
    }

    /// How many there are.
    pub(super) const fn count(self) -> u32 {
        self.steps().count()
    }

    /// One of them; nothing where rims of the diameter have no such one.
    pub(super) fn get(self, n: u32, diameter: RimDiameter) -> Option<RimWidth> {
        let width = RimWidth::from_quarters(self.steps().get(n) as u16)?;
        (width.quarters() % 2 == 0 || Self::on(diameter).quarters).then_some(width)
    }
}

/// The lattice for a vehicle.
#[derive(Clone, Copy)]
pub(super) struct Lattice {
    families: &'static [&'static Family],
}

impl Lattice {
    /// The families that go where a size of a class was, on a kind of vehicle.
    pub(super) const fn of(size: TireSize, kind: Option<Kind>) -> Self {
        let is_rough = matches!(kind, Some(Kind::Multipurpose | Kind::Truck));
        let families: &[&Family] = match size {
            TireSize::Flotation(_) => &[&LIGHT_TRUCK, &FLOTATION],
            TireSize::Metric(size) => match size.class() {
                SizeClass::LightTruck => &[&LIGHT_TRUCK, &FLOTATION],
                SizeClass::Commercial | SizeClass::Camper => &[&COMMERCIAL],
                SizeClass::Trailer => &[&TRAILER],
                SizeClass::Truck | SizeClass::HeavyCommercial => &[&TRUCK],
                SizeClass::Motorcycle => &[&MOTORCYCLE],
                SizeClass::PMetric if is_rough => &[&P_METRIC, &LIGHT_TRUCK, &FLOTATION],
                SizeClass::PMetric => &[&P_METRIC],
                SizeClass::Passenger | SizeClass::HighLoad | SizeClass::Temporary if is_rough => {
                    &[&PASSENGER, &LIGHT_TRUCK, &FLOTATION]
                }
                SizeClass::Passenger | SizeClass::HighLoad | SizeClass::Temporary | SizeClass::Unstated => {
                    &[&PASSENGER]
                }
                // Of tractors, implements and what moves earth no lattice is held.
                SizeClass::Agricultural
                | SizeClass::ImprovedFlexion
                | SizeClass::VeryHighFlexion
                | SizeClass::Implement
                | SizeClass::Earthmover
                | SizeClass::OffRoad
                | SizeClass::AllTerrain => &[],
            },
            TireSize::FullProfile(_) | TireSize::Numeric(_) | TireSize::AlphaNumeric(_) => match kind {
                Some(Kind::Motorcycle) => &[&MOTORCYCLE],
                Some(Kind::Truck | Kind::Bus) => &[&TRUCK, &COMMERCIAL],
                Some(Kind::Passenger | Kind::Multipurpose | Kind::Trailer) | None => &[&PASSENGER],
            },
        };
        Self { families }
    }

    /// How many sizes it has.
    pub(super) fn sizes(&self) -> u32 {
        self.families.iter().map(|family| family.count()).sum()
    }

    /// One of its sizes; nothing where the grammar has no such one.
    pub(super) fn size(&self, mut n: u32) -> Option<TireSize> {
        for family in self.families {
            match n.checked_sub(family.count()) {
                Some(left) => n = left,
                None => return family.size(n),
            }
        }
        None
    }

    /// The widths of rim that it has for each size.
    pub(super) fn rim_widths(&self) -> RimWidths {
        // The rims of a family are whole inches apart, and of one taper.
        let firsts = self.families.iter().filter_map(|family| RimDiameter::from_tenths(family.rims.from));
        firsts.map(RimWidths::on).fold(RimWidths { quarters: false }, RimWidths::or)
    }
}

/// A wheel as it would be bought for a hub: the holes and the bore are the hub's, and where the seats are of 5°, with
/// humps on both sides. Nothing where there is no such wheel.
pub(super) fn wheel(
    width: RimWidth,
    diameter: RimDiameter,
    holes: Option<BoltCircle>,
    spigot: Option<Spigot>,
) -> Option<Wheel> {
    let mut text = Text::new();
    width.write(&mut text);
    if diameter.seat_taper() == SeatTaper::FiveDegree {
        // Rims below 5 in have contour B as well as J; J is taken for all.
        text.byte(b'J').byte(b'x');
        diameter.write(&mut text);
        text.str(" H2");
    } else {
        text.byte(b'x');
        diameter.write(&mut text);
    }
    if let Some(holes) = holes {
        text.byte(b' ');
        holes.write(&mut text);
    }
    if let Some(spigot) = spigot {
        text.byte(b' ').millionths(i64::from(spigot.nanometres()));
    }
    Wheel::parse(text.as_str()).ok()
}
