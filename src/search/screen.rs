//! Many setups against what one vehicle leaves.

use super::walk::{Candidates, Search, away};
use crate::fitment::{Position, Setup, Trial};
use crate::units::{Length, mm};

/// What one axle leaves, all of which is linear in where a wheel stands and how large its tire is.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Windows {
    outboard: Length,
    inboard: Length,
    middle: Length,
    least_diameter: Length,
    most_diameter: Length,
}

const FAR: Length = mm(f64::INFINITY);

impl Windows {
    const OPEN: Self = Self {
        outboard: FAR,
        inboard: FAR,
        middle: FAR,
        least_diameter: mm(f64::NEG_INFINITY),
        most_diameter: FAR,
    };

    /// Without a branch, so that many go through at once.
    fn admits(&self, half_width: Length, middle: Length, diameter: Length) -> bool {
        (half_width + middle <= self.outboard)
            & (half_width - middle <= self.inboard)
            & (middle <= self.middle)
            & (diameter >= self.least_diameter)
            & (diameter <= self.most_diameter)
    }
}

/// What varies between setups on one axle, each in a column of its own.
///
/// All at nominal size: half the width of the tire, or of the rim where that is wider; how far outboard of the hub face
/// the middle of the rim stands; the overall diameter. [`Screen::measures`] gives them for a setup.
#[derive(Clone, Copy, Debug)]
pub struct Columns<'a> {
    /// Half the width of the tire.
    pub half_width: &'a [Length],
    /// The middle of the rim, outboard of the hub face.
    pub middle: &'a [Length],
    /// The overall diameter of the tire.
    pub diameter: &'a [Length],
}

/// What a vehicle leaves beside, above and below its wheels, to screen setups by three numbers of each.
///
/// It only compares columns with windows, and says of none that it is beyond which an assessment would not call so. What it
/// admits is still to be judged, in full or as of a `Stock`.
///
/// ```
/// use beadseat::prelude::*;
/// use beadseat::search::{Columns, Screen, Search, Wishes};
/// let front = Axle::new().with_track(mm(1538.0))?;
/// let car = Vehicle::new(Kind::Passenger).with_front(front);
/// let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46")?), rear: None };
/// let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
/// let screen = Screen::of(Search::new(&car, &original, &conditions, &limits, &wishes));
/// let measures = |wheel: &str| screen.measures(Position::Front, &Setup::parse("225/45R17 94W", wheel).ok()?);
/// let rows = [measures("7.5Jx17 ET42").ok_or("unknown")?, measures("7.5Jx17 ET10").ok_or("unknown")?];
/// let [half_width, middle, diameter] = [0, 1, 2].map(|column| rows.map(|row| row[column]));
/// let columns = Columns { half_width: &half_width, middle: &middle, diameter: &diameter };
/// let mut answers = [false; 2];
/// assert_eq!(screen.admits(Position::Front, &columns, &mut answers), 1);
/// assert_eq!(answers, [true, false]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct Screen<'a> {
    front: Option<(Trial<'a>, Windows)>,
    rear: Option<(Trial<'a>, Windows)>,
}

impl core::fmt::Debug for Screen<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let windows = |axle: &Option<(Trial<'_>, Windows)>| axle.as_ref().map(|(_, windows)| *windows);
        f.debug_struct("Screen")
            .field("front", &windows(&self.front))
            .field("rear", &windows(&self.rear))
            .finish()
    }
}

impl<'a> Screen<'a> {
    /// Of the vehicle of a search. Wishes do not count.
    pub fn of(search: Search<'a>) -> Self {
        let candidates = search.part(0..0);
        let with_windows = |trial: Trial<'a>| {
            // A setup that is not the original, to see where the checks end.
            let away = trial.original().map(|original| away(original, original));
            let windows = away.map_or(Windows::OPEN, |away| {
                let [outboard, inboard, middle, least_diameter, most_diameter] = trial.tried(&away).windows();
                Windows { outboard, inboard, middle, least_diameter, most_diameter }
            });
            (trial, windows)
        };
        let Candidates { front, rear, .. } = candidates;
        Self { front: front.map(with_windows), rear: rear.map(with_windows) }
    }

    fn on(&self, place: Position) -> Option<&(Trial<'a>, Windows)> {
        if place.axle() == Position::Front { self.front.as_ref() } else { self.rear.as_ref() }
    }

    /// The columns of one setup on the front axle or the rear one: half the width, the middle, the diameter; nothing
    /// where it cannot be told by them and must be judged in full.
    pub fn measures(&self, place: Position, setup: &Setup) -> Option<[Length; 3]> {
        self.on(place)?.0.measures(setup)
    }

    /// Which of the rows an axle may admit, and how many. The columns and the answers are as long as the
    /// shortest of them.
    pub fn admits(&self, place: Position, columns: &Columns<'_>, answers: &mut [bool]) -> usize {
        let windows = self.on(place).map_or(Windows::OPEN, |(_, windows)| *windows);
        let rows = columns.half_width.iter().zip(columns.middle).zip(columns.diameter);
        let mut admitted = 0;
        for (answer, ((half_width, middle), diameter)) in answers.iter_mut().zip(rows) {
            *answer = windows.admits(*half_width, *middle, *diameter);
            admitted += usize::from(*answer);
        }
        admitted
    }
}
