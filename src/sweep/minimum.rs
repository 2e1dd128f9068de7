//! The least clearance over all positions, with proof.

use super::bound::Bounded;
use super::cell::{Cell, VARIABLES};
use super::corner::{Corner, Pose};
use super::motion::Motion;
use super::obstacle::{MAX_OBSTACLES, MAX_PIECES, Obstacle, Obstacles, Piece, Point};
use super::profile::{Profile, ProfilePoint};
use crate::units::{self, Angle, Length, in_mm};
use crate::{Citation, OutOfRange};

/// How close an answer has to be, and how much work it may take.
///
/// ```
/// use beadseat::{sweep::Effort, units::mm};
/// assert_eq!(Effort::default().tolerance(), mm(0.1));
/// assert!(Effort::new(mm(0.0), 1000).is_err());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    tolerance: f64,
    boxes: u32,
}

impl Effort {
    /// From the greatest width of the bracket and the number of boxes of positions that may be looked at.
    ///
    /// # Errors
    /// A tolerance outside 0.001 to 100 mm.
    pub fn new(tolerance: Length, boxes: u32) -> Result<Self, OutOfRange> {
        Ok(Self { tolerance: OutOfRange::check("tolerance", in_mm(tolerance), "mm", 0.001, 100.0)?, boxes })
    }

    /// The greatest width of the bracket.
    pub const fn tolerance(&self) -> Length {
        units::mm(self.tolerance)
    }
}

/// A tenth of a millimetre, and at most twenty thousand boxes: some milliseconds. What clears the wheel takes
/// hundreds, or a few thousand; only a body deep inside the tire takes more.
impl Default for Effort {
    fn default() -> Self {
        Self { tolerance: 0.1, boxes: 20_000 }
    }
}

/// What rounding may add up to, in millimetres: coordinates of up to 10 m in `f64`, some dozens of operations.
const ROUNDING: f64 = 1e-9;

/// The least clearance, between two bounds, and where it is.
///
/// ```
/// use beadseat::sweep::{Corner, Effort, Obstacle, Obstacles, Point, Profile, RimSection, TireSection};
/// use beadseat::units::mm;
/// let rim = RimSection::new(mm(-40.0), mm(94.0), mm(220.0), mm(185.0))?;
/// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
/// let mut around = Obstacles::new();
/// around.push(Obstacle::point(Point::new(mm(0.0), mm(-40.0), mm(400.0))?))?;
/// around.push(Obstacle::point(Point::new(mm(0.0), mm(-40.0), mm(330.0))?))?;
/// let swept = Corner::new().clearance(&profile, &around, Effort::default())?.ok_or("no obstacle")?;
/// assert_eq!(swept.obstacle(), 1); // the second is the nearer one
/// assert!(swept.is_within_tolerance());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swept {
    lower: f64,
    upper: f64,
    tolerance: f64,
    work: u32,
    at: [f64; VARIABLES],
    obstacle: usize,
    point: Point,
    place: ProfilePoint,
}

impl Swept {
    /// No position is nearer than this; negative inside the wheel. The obstacle's radius and uncertainty are
    /// taken off.
    pub const fn lower(&self) -> Length {
        units::mm(self.lower)
    }

    /// The clearance at [`pose`](Self::pose).
    pub const fn upper(&self) -> Length {
        units::mm(self.upper)
    }

    /// Whether the bracket is as narrow as was asked; if not, the work ended before.
    pub fn is_within_tolerance(&self) -> bool {
        self.upper - self.lower <= self.tolerance
    }

    /// Where the result comes from.
    pub const fn citation(&self) -> Citation {
        Citation::SWEPT
    }

    /// How many boxes of positions were looked at.
    pub const fn work(&self) -> u32 {
        self.work
    }

    /// The position of the wheel that is the nearest found.
    pub const fn pose(&self) -> Pose {
        Pose::new(self.steer(), units::mm(self.at[1])).with_other_travel(units::mm(self.at[2]))
    }

    /// The same, the only obstacle that was asked for being this one of several.
    pub(crate) const fn of_obstacle(self, number: usize) -> Self {
        Self { obstacle: number, ..self }
    }

    /// Steer at that position.
    pub const fn steer(&self) -> Angle {
        units::base(self.at[0])
    }

    /// Travel at that position.
    pub const fn travel(&self) -> Length {
        units::mm(self.at[1])
    }

    /// Which obstacle it is, from 0, in the order they were added.
    pub const fn obstacle(&self) -> usize {
        self.obstacle
    }

    /// The point of that obstacle's shape that is nearest, where it is at ride height.
    pub const fn point(&self) -> Point {
        self.point
    }

    /// The place of the profile that is nearest to it.
    pub const fn profile_point(&self) -> ProfilePoint {
        self.place
    }
}

/// Steps downhill before the search.
const STEPS: usize = 6;

/// Pieces that are followed downhill.
const FOLLOWED: usize = 4;

/// Boxes that wait. Each cut takes one and leaves two, and the last is looked at first, so that what waits is
/// one box for each cut: enough for twelve cuts of every variable.
const WAITING: usize = 12 * VARIABLES;

impl Corner {
    /// The least clearance between a wheel and its obstacles over all positions of the corner; none without
    /// obstacles.
    ///
    /// Branch and bound, with the bounds proved in the crate's source: a box of positions whose lower bound is not below the nearest position found, less
    /// the tolerance, is dropped; others are cut in two, the more promising half first, until none is left or
    /// the work ends. All obstacles share the nearest position found. The lower end of the bracket is the
    /// least bound of all boxes dropped or left, so it holds whenever the work ends.
    ///
    /// # Errors
    /// If an obstacle is carried by an arm that is too short for the travel.
    ///
    /// ```
    /// use beadseat::sweep::{Corner, Effort, Obstacle, Obstacles, Part, Point, Profile, RimSection, TireSection};
    /// use beadseat::units::mm;
    /// let rim = RimSection::new(mm(-40.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let mut around = Obstacles::new();
    /// around.push(Obstacle::point(Point::new(mm(0.0), mm(-40.0), mm(400.0))?))?; // over the tread
    /// let corner = Corner::new().travelling(mm(80.0), mm(90.0))?;
    /// let swept = corner.clearance(&profile, &around, Effort::default())?.ok_or("no obstacle")?;
    /// // 84 mm at rest, of which travel takes 80.
    /// assert!(swept.lower() <= mm(4.0) && swept.upper() >= mm(3.999));
    /// assert_eq!(swept.profile_point().part(), Part::Tread);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn clearance(
        &self,
        profile: &Profile,
        around: &Obstacles,
        effort: Effort,
    ) -> Result<Option<Swept>, OutOfRange> {
        self.clearance_of(profile, around.as_slice(), effort)
    }

    /// The same of obstacles that stand in a list already.
    pub(crate) fn clearance_of(
        &self,
        profile: &Profile,
        around: &[Obstacle],
        effort: Effort,
    ) -> Result<Option<Swept>, OutOfRange> {
        let mut search = Search {
            best: None,
            upper: f64::INFINITY,
            lower: f64::INFINITY,
            tolerance: effort.tolerance,
            left: effort.boxes,
        };
        let mut promises = [[f64::INFINITY; MAX_PIECES]; MAX_OBSTACLES];
        search.first_sight(self, profile, around, &mut promises)?;
        for (number, (obstacle, promises)) in around.iter().zip(&promises).enumerate() {
            for (index, &promise) in promises.iter().enumerate() {
                let Some(piece) = Piece::of(obstacle, index) else { break };
                if search.may_drop(promise) {
                    continue;
                }
                search.exhaust(&Motion::new(self, profile, obstacle, piece)?, number);
            }
        }
        Ok(search.best.map(|Nearest { at, obstacle, point, place }| Swept {
            lower: search.lower.min(search.upper) - ROUNDING,
            upper: search.upper,
            tolerance: effort.tolerance,
            work: effort.boxes - search.left,
            at,
            obstacle,
            point,
            place,
        }))
    }
}

struct Nearest {
    at: [f64; VARIABLES],
    obstacle: usize,
    point: Point,
    place: ProfilePoint,
}

struct Search {
    best: Option<Nearest>,
    upper: f64,
    lower: f64,
    tolerance: f64,
    left: u32,
}

impl Search {
    fn try_at(&mut self, motion: &Motion<'_>, at: &[f64; VARIABLES], obstacle: usize) -> f64 {
        let (value, place) = motion.value(at);
        if value < self.upper {
            self.upper = value;
            self.best = Some(Nearest { at: *at, obstacle, point: motion.point(at), place });
        }
        value
    }

    /// Whether a box of this lower bound needs no more work; if so, it is remembered.
    fn may_drop(&mut self, lower: f64) -> bool {
        let drops = lower >= self.enough();
        if drops {
            self.lower = self.lower.min(lower);
        }
        drops
    }

    fn enough(&self) -> f64 {
        self.upper - self.tolerance + 2.0 * ROUNDING
    }

    /// What each piece promises. At first sight the nearest are followed downhill, for a good upper bound.
    // On its own: its motions would stand on the stack beside the boxes that wait.
    #[inline(never)]
    fn first_sight(
        &mut self,
        corner: &Corner,
        profile: &Profile,
        around: &[Obstacle],
        promises: &mut [[f64; MAX_PIECES]; MAX_OBSTACLES],
    ) -> Result<(), OutOfRange> {
        let mut nearest = [(f64::INFINITY, 0, 0); FOLLOWED];
        for (number, (obstacle, promise)) in around.iter().zip(&mut *promises).enumerate() {
            for (index, promise) in promise.iter_mut().enumerate() {
                let Some(piece) = Piece::of(obstacle, index) else { break };
                let motion = Motion::new(corner, profile, obstacle, piece)?;
                let (lower, seen) = self.glance(&motion, number);
                *promise = lower;
                let mut new = (seen, number, index);
                for place in &mut nearest {
                    if new.0 < place.0 {
                        core::mem::swap(place, &mut new);
                    }
                }
            }
        }
        for (_, number, index) in nearest {
            let Some(obstacle) = around.get(number) else { continue };
            let Some(piece) = Piece::of(obstacle, index) else { continue };
            if promises[number][index] < self.upper {
                self.follow(&Motion::new(corner, profile, obstacle, piece)?, number);
            }
        }
        Ok(())
    }

    /// Bounds all of a piece: the bound, and the nearer of its middle and where the slope points.
    fn glance(&mut self, motion: &Motion<'_>, obstacle: usize) -> (f64, f64) {
        let bounded = motion.bound(&motion.whole, self.upper);
        self.left = self.left.saturating_sub(1);
        if bounded.lower >= self.upper {
            return (bounded.lower, bounded.value);
        }
        if bounded.value < self.upper {
            self.try_at(motion, &motion.whole.middle, obstacle);
        }
        let seen = self.downhill(motion, &motion.whole, &bounded, obstacle);
        (bounded.lower, bounded.value.min(seen))
    }

    /// Follows the slope down, by steps half as long each.
    fn follow(&mut self, motion: &Motion<'_>, obstacle: usize) {
        let whole = motion.whole;
        let mut cell = whole;
        for _ in 0..STEPS {
            let bounded = motion.bound(&cell, f64::INFINITY);
            for i in 0..VARIABLES {
                let (least, most) = (whole.middle[i] - whole.half[i], whole.middle[i] + whole.half[i]);
                if bounded.slope[i] != 0.0 {
                    let step = -bounded.slope[i].signum() * cell.half[i];
                    cell.middle[i] = (cell.middle[i] + step).clamp(least, most);
                }
                cell.half[i] *= 0.5;
            }
            self.try_at(motion, &cell.middle, obstacle);
        }
    }

    /// Drops or cuts boxes until none is left.
    // On its own: the boxes that wait would stand on the stack beside the first sight.
    #[inline(never)]
    fn exhaust(&mut self, motion: &Motion<'_>, obstacle: usize) {
        let whole = &motion.whole;
        let mut waiting = [Cut { middle: whole.middle, times: [0; VARIABLES] }; WAITING];
        let mut count = 1;
        while count > 0 {
            count -= 1;
            let taken = waiting[count];
            let cell = taken.cell(whole);
            let bounded = motion.bound(&cell, self.enough());
            self.left = self.left.saturating_sub(1);
            if bounded.value < self.upper {
                self.try_at(motion, &cell.middle, obstacle);
            }
            if self.may_drop(bounded.lower) {
                continue;
            }
            self.downhill(motion, &cell, &bounded, obstacle);
            if self.left == 0 || count + 2 > WAITING {
                self.lower = self.lower.min(bounded.lower);
                continue;
            }
            let [better, worse] = taken.halves(&cell, &bounded);
            waiting[count] = worse;
            waiting[count + 1] = better;
            count += 2;
        }
    }

    /// Tries the corner of the box that the slope points down to.
    fn downhill(&mut self, motion: &Motion<'_>, cell: &Cell, bounded: &Bounded, obstacle: usize) -> f64 {
        let mut at = cell.middle;
        let mut foreseen = bounded.value;
        for (i, at) in at.iter_mut().enumerate() {
            let fall = bounded.slope[i] * cell.half[i];
            foreseen -= fall.abs();
            *at -= if fall > 0.0 {
                cell.half[i]
            } else if fall < 0.0 {
                -cell.half[i]
            } else {
                0.0
            };
        }
        if foreseen < self.upper { self.try_at(motion, &at, obstacle) } else { f64::INFINITY }
    }
}

/// A box that waits: how often each range of the whole was cut in two. The ranges themselves would take nearly twice
/// the stack.
#[derive(Clone, Copy)]
struct Cut {
    middle: [f64; VARIABLES],
    times: [u8; VARIABLES],
}

impl Cut {
    fn cell(&self, whole: &Cell) -> Cell {
        // The bits of 1.0 and as many halvings less: exact, whatever fits into the count.
        let left = |times: u8| f64::from_bits((1023 - u64::from(times)) << (f64::MANTISSA_DIGITS - 1));
        Cell { middle: self.middle, half: core::array::from_fn(|i| whole.half[i] * left(self.times[i])) }
    }

    /// Cuts where most may be gained; the half that the slope points to is the first.
    fn halves(&self, cell: &Cell, bounded: &Bounded) -> [Self; 2] {
        let cut =
            (0..VARIABLES).fold(0, |most, i| if bounded.weight[i] > bounded.weight[most] { i } else { most });
        let mut low = *self;
        // Where the count ends, the box that is looked at is larger than it need be.
        low.times[cut] = low.times[cut].saturating_add(1);
        let mut high = low;
        let half = 0.5 * cell.half[cut];
        low.middle[cut] -= half;
        high.middle[cut] += half;
        if bounded.slope[cut] > 0.0 { [low, high] } else { [high, low] }
    }
}
