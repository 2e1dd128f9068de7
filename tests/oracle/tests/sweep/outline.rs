//! The outline of a wheel as a polygon, from the numbers that describe it and nothing of the crate's but what it
//! refuses.

use beadseat::sweep::{Profile, RimSection, TireSection};
use beadseat::units::{mm, ratio};

/// A number of the shape: the default, one that is told, or the largest there is room for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Amount {
    Default,
    Told(f64),
    Most,
}

/// A wheel in plain numbers, millimetres and shares.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Section {
    pub(crate) centre: f64,
    pub(crate) half_rim: f64,
    pub(crate) flange: f64,
    pub(crate) barrel: f64,
    pub(crate) half_tire: f64,
    pub(crate) top: f64,
    pub(crate) widest: Option<f64>,
    pub(crate) tread: Option<f64>,
    pub(crate) drop: Amount,
    pub(crate) shoulder: Amount,
    pub(crate) growth: f64,
}

impl Section {
    /// The crate's profile, if it accepts the numbers.
    pub(crate) fn profile(&self) -> Option<Profile> {
        let Amounts { drop, shoulder } = self.amounts();
        let told = |amount, most| match amount {
            Amount::Default => None,
            Amount::Told(value) => Some(value),
            Amount::Most => Some(most),
        };
        self.accepted(told(self.drop, drop), told(self.shoulder, shoulder))
    }

    fn accepted(&self, drop: Option<f64>, shoulder: Option<f64>) -> Option<Profile> {
        let rim =
            RimSection::new(mm(self.centre), mm(self.half_rim), mm(self.flange), mm(self.barrel)).ok()?;
        let mut tire = TireSection::new(mm(self.half_tire), mm(self.top)).ok()?;
        if let Some(share) = self.widest {
            tire = tire.with_widest(ratio(share)).ok()?;
        }
        if let Some(share) = self.tread {
            tire = tire.with_tread_share(ratio(share)).ok()?;
        }
        if let Some(drop) = drop {
            tire = tire.with_crown_drop(mm(drop)).ok()?;
        }
        if let Some(radius) = shoulder {
            tire = tire.with_shoulder_radius(mm(radius)).ok()?;
        }
        Profile::new(rim, tire).and_then(|profile| profile.grown(mm(self.growth))).ok()
    }

    fn height(&self) -> f64 {
        self.top - self.flange
    }

    fn half_tread(&self) -> f64 {
        let aspect = self.height() / (2.0 * self.half_tire);
        self.half_tire * self.tread.unwrap_or((0.95 - 0.25 * aspect).clamp(0.7, 0.9))
    }

    /// Crown drop and shoulder radius; a default is as much as fits.
    fn amounts(&self) -> Amounts {
        let amount = |amount, default: f64, most: f64, fits: &dyn Fn(f64) -> bool| match amount {
            Amount::Told(value) => value,
            Amount::Default if fits(default) => default,
            Amount::Default | Amount::Most => largest(most, fits),
        };
        let drop = amount(self.drop, 0.05 * self.half_tread(), 100.0, &|drop| {
            self.accepted(Some(drop), None).is_some()
        });
        let shoulder = amount(self.shoulder, 0.2 * self.height(), 300.0, &|radius| {
            self.accepted(Some(drop), Some(radius)).is_some()
        });
        Amounts { drop, shoulder }
    }

    /// Its outline, no place of which is further inside than `off` by its arcs being chords.
    pub(crate) fn outline(&self, off: f64) -> Outline {
        let Amounts { drop, shoulder } = self.amounts();
        let (w, s, tread) = (self.half_rim, self.half_tire, self.half_tread());
        let widest = self.flange + self.height() * self.widest.unwrap_or(0.45);
        // What falls by less than a micrometre is flat.
        let crown = (drop > 1e-3).then(|| (tread * tread + drop * drop) / (2.0 * drop));
        let (edge, up) = match crown {
            Some(radius) => ([tread, self.top - drop], (tread / radius).asin()),
            None => ([tread, self.top], 0.0),
        };
        // From the greatest width up and in, angles from the upright.
        let mut tire = vec![[w, self.flange], [s, widest]];
        let centre = [edge[0] - shoulder * up.sin(), edge[1] - shoulder * up.cos()];
        let across = std::f64::consts::FRAC_PI_2 - up;
        let count = chords(shoulder, across, off);
        tire.extend((0..=count).map(|i| {
            let angle = up + across * (count - i) as f64 / count as f64;
            [centre[0] + shoulder * angle.sin(), centre[1] + shoulder * angle.cos()]
        }));
        let count = crown.map_or(1, |radius| chords(radius, up, off));
        tire.extend((0..=count).map(|i| {
            let left = (count - i) as f64 / count as f64;
            let Some(radius) = crown else { return [tread * left, self.top] };
            let (x, half) = (radius * (up * left).sin(), (0.5 * up * left).sin());
            [x, self.top - 2.0 * radius * half * half]
        }));
        let mut corners = vec![[0.0, self.barrel], [w, self.barrel]];
        corners.extend(right_of_hull(tire));
        Outline { centre: self.centre, growth: self.growth, corners, off, convex: s <= w }
    }
}

struct Amounts {
    drop: f64,
    shoulder: f64,
}

fn largest(most: f64, fits: &dyn Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (0.0, most);
    for _ in 0..70 {
        let middle = 0.5 * (low + high);
        if fits(middle) { low = middle } else { high = middle }
    }
    low
}

/// How many chords of an arc are nowhere further than `off` from it: over an angle `θ` a chord is
/// `r·(1 − cos ½θ) ≤ r·θ²/8` off.
fn chords(radius: f64, angle: f64, off: f64) -> usize {
    (angle * (radius / (8.0 * off)).sqrt()).ceil().max(1.0) as usize
}

/// From the first corner, the lowest, counterclockwise to the last, the highest in the middle: the next one is always
/// that which leaves all others to the left.
fn right_of_hull(mut points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    let mut hull = vec![points.remove(0)];
    let last = points[points.len() - 1];
    while hull[hull.len() - 1] != last {
        let from = hull[hull.len() - 1];
        let mut next = 0;
        for (i, p) in points.iter().enumerate() {
            let (to, of) =
                ([points[next][0] - from[0], points[next][1] - from[1]], [p[0] - from[0], p[1] - from[1]]);
            let turn = to[0] * of[1] - to[1] * of[0];
            if turn < 0.0 || (turn == 0.0 && of[0].hypot(of[1]) > to[0].hypot(to[1])) {
                next = i;
            }
        }
        hull.push(points.remove(next));
    }
    hull
}

/// The right half of a polygon that is the same on the left.
#[derive(Clone, Debug)]
pub(crate) struct Outline {
    centre: f64,
    growth: f64,
    corners: Vec<[f64; 2]>,
    off: f64,
    convex: bool,
}

impl Outline {
    /// The least and the greatest distance the crate may tell of a place. They differ by the chords; and in a tire wider
    /// than its rim, which is not convex, the crate says no more than that a place is inside, and how deep at most.
    pub(crate) fn distances(&self, axial: f64, radial: f64) -> (f64, f64) {
        let distance = self.distance([(axial - self.centre).abs(), radial.abs()]);
        let most = if self.convex { distance } else { distance.max(0.0) };
        (distance - self.off - self.growth, most - self.growth)
    }

    fn distance(&self, [x, y]: [f64; 2]) -> f64 {
        let (mut nearest, mut inside) = (f64::INFINITY, false);
        for edge in self.corners.windows(2) {
            let [[ax, ay], [bx, by]] = [edge[0], edge[1]];
            let (dx, dy) = (bx - ax, by - ay);
            let along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
            // An edge of no length is its end.
            let along = if along.is_nan() { 0.0 } else { along.clamp(0.0, 1.0) };
            let (ox, oy) = (x - ax - along * dx, y - ay - along * dy);
            nearest = f64::min(nearest, ox * ox + oy * oy);
            // A ray outboard leaves an area as often as it enters it, and once more from inside.
            if (ay > y) != (by > y) && x < ax + (y - ay) / dy * dx {
                inside = !inside;
            }
        }
        if inside { -nearest.sqrt() } else { nearest.sqrt() }
    }
}
