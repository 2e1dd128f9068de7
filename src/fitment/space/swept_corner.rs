//! A corner of a vehicle as the swept clearance sees it, for whoever wants to look closer or to draw it.

use super::approach::Approach;
use super::available_space::MissingFacts;
use super::corner::{Around, on_axle};
use crate::fitment::check::Position;
use crate::fitment::checks::swept;
use crate::fitment::{Change, Limits};
use crate::sweep::{Corner, Effort, Obstacle, Obstacles, Profile, Swept};
use crate::tire::condition::VehicleSide;
use crate::vehicle::{BodyKind, Vehicle};

/// How the wheels of one end of an axle move, their outlines before and after a change, and what stands around
/// them. Of a pair, before and after are the outer wheel, and the nearest approach is that of either.
///
/// Outlines and obstacles are at nominal size, as a drawing wants them; an assessment takes the worst case.
///
/// ```
/// use beadseat::{fitment::{Position, space::SweptCorner}, scenario::Scenario, tire::condition::VehicleSide, units::mm};
/// let text = std::fs::read_to_string("examples/scenarios/field-survey-wagon.json")?;
/// let scenario: Scenario = serde_json::from_str(&text)?;
/// let survey = SweptCorner::front(scenario.vehicle(), scenario.change(), scenario.limits(), VehicleSide::Left)?;
/// assert_eq!(survey.bodies().count(), survey.around().iter().count());
/// assert!(survey.nearest().is_some_and(|swept| swept.upper() > mm(10.0)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct SweptCorner {
    corner: Corner,
    before: Profile,
    after: Profile,
    /// Of a pair, the inner wheel.
    inner: Option<Profile>,
    around: Around,
}

impl SweptCorner {
    /// Of one end of the front axle.
    ///
    /// # Errors
    /// The facts that are not known.
    pub fn front(
        vehicle: &Vehicle,
        change: &Change,
        limits: &Limits,
        side: VehicleSide,
    ) -> Result<Self, MissingFacts> {
        Self::of(vehicle, change, limits, Position::Front, side)
    }

    /// Of one end of the rear axle, or the only one of a trailer.
    ///
    /// # Errors
    /// The facts that are not known.
    pub fn rear(
        vehicle: &Vehicle,
        change: &Change,
        limits: &Limits,
        side: VehicleSide,
    ) -> Result<Self, MissingFacts> {
        Self::of(vehicle, change, limits, Position::Rear, side)
    }

    fn of(
        vehicle: &Vehicle,
        change: &Change,
        limits: &Limits,
        place: Position,
        side: VehicleSide,
    ) -> Result<Self, MissingFacts> {
        on_axle(vehicle, change, limits, place, |case| {
            case.car_rules()?;
            let (original, proposed) = case.both()?;
            let around = Around::of(case, original, side)?;
            Ok(Self {
                corner: swept::corner(case, original)?,
                before: swept::outer_profile(original)?,
                after: swept::outer_profile(proposed)?,
                inner: match proposed.centres {
                    Some(centres) if case.is_dual => Some(swept::profile_at(proposed, centres.inner)?),
                    _ => None,
                },
                around,
            })
        })
    }

    /// How the wheel moves.
    pub const fn corner(&self) -> &Corner {
        &self.corner
    }

    /// The outline of the original tire on its rim.
    pub const fn before(&self) -> &Profile {
        &self.before
    }

    /// The outline of the proposed one.
    pub const fn after(&self) -> &Profile {
        &self.after
    }

    /// What stands around it.
    pub const fn around(&self) -> &Obstacles {
        &self.around.obstacles
    }

    /// What each of those is, in the same order.
    pub fn bodies(&self) -> impl Iterator<Item = BodyKind> {
        self.around.bodies()
    }

    /// How near the proposed wheel, of a pair the nearer one, is at nominal size to the body of a report's approach, in
    /// its position: the report takes the worst case, so that another position may be the nearest at nominal size.
    ///
    /// ```
    /// use beadseat::{fitment::space::SweptCorner, scenario::Scenario, tire::condition::VehicleSide};
    /// let text = std::fs::read_to_string("examples/scenarios/one-tonne-panel-van.json")?;
    /// let scenario: Scenario = serde_json::from_str(&text)?;
    /// let worst = scenario.assess().approaches().next().ok_or("no obstacle was described")?;
    /// let survey = SweptCorner::front(scenario.vehicle(), scenario.change(), scenario.limits(), VehicleSide::Left)?;
    /// let there = survey.nearest_at(&worst).ok_or("no obstacle was described")?;
    /// assert_eq!((there.travel(), there.obstacle()), (worst.travel(), worst.obstacle()));
    /// assert!(there.upper() > worst.lower());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn nearest_at(&self, worst: &Approach) -> Option<Swept> {
        let body = self.around.obstacles.as_slice().get(worst.obstacle()..)?.get(..1)?;
        let held = self.corner.held_at(worst.pose()).ok()?;
        Some(self.nearest_of_either(&held, body)?.of_obstacle(worst.obstacle()))
    }

    /// The nearest approach of the proposed wheel at nominal size; none where nothing stands around it.
    pub fn nearest(&self) -> Option<Swept> {
        self.nearest_of_either(&self.corner, self.around.obstacles.as_slice())
    }

    /// Of a pair, that of the wheel that comes nearer.
    fn nearest_of_either(&self, corner: &Corner, around: &[Obstacle]) -> Option<Swept> {
        let wheels = core::iter::once(&self.after).chain(&self.inner);
        let swept = wheels.filter_map(|wheel| corner.clearance_of(wheel, around, Effort::default()).ok()?);
        swept.reduce(|a, b| if b.upper() < a.upper() { b } else { a })
    }
}
