//! Invented corners from a fixed start of a small random number generator, so that every run times the same.

use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, ObstacleError, Obstacles, Point, Profile, RimSection,
    SteeringAxis, TireSection,
};
use beadseat::units::{deg, mm};

/// A corner to sweep.
pub(crate) struct Scene {
    pub(crate) corner: Corner,
    pub(crate) profile: Profile,
    pub(crate) around: Obstacles,
    /// Lengths along the eight obstacles, and round them where they are discs, in millimetres.
    pub(crate) extents: [[f64; 2]; 8],
    /// Whether the wheel moves past each of them.
    pub(crate) moves: [bool; 8],
    /// Degrees from lock to lock, millimetres from rebound to jounce, whether on a beam axle.
    pub(crate) steer: f64,
    pub(crate) travel: f64,
    pub(crate) beam: bool,
}

/// A linear congruential generator of 64 bits.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn within(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.next()
    }
}

type Position = [f64; 3];

fn point([x, y, z]: Position) -> Result<Point, ObstacleError> {
    Ok(Point::new(mm(x), mm(y), mm(z))?)
}

/// An obstacle that can be moved away.
enum Form {
    Chain(Vec<Position>),
    Arch([Position; 3]),
    Disc(Position, Position, f64),
}

struct Body {
    form: Form,
    radius: f64,
    carrier: Carrier,
    away: Position,
}

impl Body {
    fn obstacle(&self, by: f64) -> Result<Obstacle, ObstacleError> {
        let moved = |p: &Position| point([0, 1, 2].map(|i| p[i] + by * self.away[i]));
        let obstacle = match &self.form {
            Form::Chain(points) if points.len() == 1 => Obstacle::point(moved(&points[0])?),
            Form::Chain(points) => {
                Obstacle::polyline(&points.iter().map(moved).collect::<Result<Vec<_>, _>>()?)?
            }
            Form::Arch([a, b, c]) => Obstacle::arch_lip(moved(a)?, moved(b)?, moved(c)?)?,
            Form::Disc(centre, axis, radius) => Obstacle::disc(moved(centre)?, moved(axis)?, mm(*radius))?,
        };
        obstacle.with_radius(mm(self.radius))?.with_uncertainty(mm(1.0))?.carried_by(self.carrier)
    }

    #[allow(clippy::disallowed_methods, reason = "for a count of places only")]
    fn extent(&self) -> [f64; 2] {
        let span = |a: &Position, b: &Position| (0..3).map(|i| (a[i] - b[i]) * (a[i] - b[i])).sum::<f64>();
        let chain = |points: &[Position]| points.windows(2).map(|w| span(&w[0], &w[1]).sqrt()).sum();
        match &self.form {
            Form::Chain(points) => [chain(points), 0.0],
            Form::Arch(points) => [chain(points), 0.0],
            Form::Disc(_, _, radius) => [*radius, core::f64::consts::TAU * radius],
        }
    }
}

/// As many corners as are asked for, each with eight obstacles that clear the wheel by a few millimetres to
/// some centimetres.
pub(crate) fn scenes(count: usize) -> Result<Vec<Scene>, ObstacleError> {
    let mut chance = Chance(20_251_125);
    (0..count).map(|_| scene(&mut chance)).collect()
}

fn scene(chance: &mut Chance) -> Result<Scene, ObstacleError> {
    let flange = chance.within(195.0, 260.0);
    let (half_rim, bulge) = (chance.within(75.0, 125.0), chance.within(1.0, 1.25));
    let (centre, half) = (chance.within(-60.0, 10.0), half_rim * bulge);
    let top = flange + chance.within(60.0, 130.0);
    let barrel = flange - chance.within(28.0, 40.0);
    let rim = RimSection::new(mm(centre), mm(half_rim), mm(flange), mm(barrel))?;
    let profile = Profile::new(rim, TireSection::new(mm(half), mm(top))?)?.grown(mm(5.0))?;

    let steered = chance.next() < 0.65;
    let beam = chance.next() < 0.2;
    let (inner, outer) = (chance.within(28.0, 42.0), chance.within(26.0, 36.0));
    let (jounce, rebound) = (chance.within(50.0, 120.0), chance.within(60.0, 120.0));
    let mut corner = Corner::new()
        .travelling(mm(jounce), mm(rebound))?
        .with_camber(deg(chance.within(-2.0, 0.5)))?
        .with_toe(deg(chance.within(-0.2, 0.3)))?;
    let patch = ContactPatch::under(mm(centre), mm(0.93 * top), deg(0.0))?;
    let (inclination, caster) = (deg(chance.within(5.0, 15.0)), deg(chance.within(1.0, 9.0)));
    let (scrub, trail) = (mm(chance.within(-15.0, 50.0)), mm(chance.within(5.0, 40.0)));
    if steered {
        let axis = SteeringAxis::from_ground(patch, inclination, caster, scrub, trail)?;
        corner = corner.steered(axis, deg(inner), deg(outer))?;
    }
    if beam {
        corner = corner.on_beam_axle(mm(chance.within(1350.0, 1700.0)))?;
    } else if chance.next() < 0.7 {
        corner = corner
            .with_camber_change(deg(chance.within(-2.0, 0.0)), mm(80.0))?
            .with_toe_change(deg(chance.within(-0.3, 0.3)), mm(80.0))?
            .with_lateral_change(mm(chance.within(-12.0, 4.0)), mm(80.0))?;
    }

    let inside = centre - half - 20.0;
    let arm = Carrier::Arm {
        pivot: point([chance.within(-40.0, 40.0), -430.0, chance.within(-60.0, 0.0)])?,
        end: point([0.0, centre - 50.0, -90.0])?,
    };
    let upright = |chance: &mut Chance| [chance.within(-20.0, 20.0), inside, chance.within(120.0, 200.0)];
    let (strut, seat) = (upright(chance), chance.within(180.0, 280.0));
    let arch = |chance: &mut Chance, lateral: f64, out: f64| {
        let side = top + chance.within(20.0, 60.0);
        Form::Arch([
            [side, lateral, chance.within(-20.0, 80.0)],
            [chance.within(-20.0, 20.0), lateral + out, top + jounce],
            [-side, lateral, chance.within(-20.0, 80.0)],
        ])
    };
    let bodies = [
        // Strut tube and spring seat.
        Body {
            form: Form::Chain(vec![strut, [strut[0] - 30.0, strut[1] - 60.0, strut[2] + 350.0]]),
            radius: chance.within(22.0, 35.0),
            carrier: Carrier::Knuckle,
            away: [0.0, -1.0, 0.0],
        },
        Body {
            form: Form::Disc(
                [0.0, inside - 60.0, seat + 150.0],
                [-8.0, inside - 75.0, seat + 240.0],
                chance.within(55.0, 80.0),
            ),
            radius: 4.0,
            carrier: Carrier::Knuckle,
            away: [0.0, -0.7, 0.7],
        },
        // Arch lip, and the edge of the liner behind it.
        Body {
            form: arch(chance, centre + half, -10.0),
            radius: 2.0,
            carrier: Carrier::Body,
            away: [0.0, 0.6, 0.8],
        },
        Body { form: arch(chance, centre, 0.0), radius: 3.0, carrier: Carrier::Body, away: [0.0, 0.0, 1.0] },
        // Chassis member inboard, inner wing ahead, mounting behind.
        Body {
            form: Form::Chain(vec![
                [500.0, inside - 80.0, chance.within(20.0, 150.0)],
                [-500.0, inside - 60.0, chance.within(20.0, 150.0)],
            ]),
            radius: 30.0,
            carrier: Carrier::Body,
            away: [0.0, -1.0, 0.0],
        },
        Body {
            form: Form::Chain(vec![
                [top + 20.0, inside, 250.0],
                [top + 40.0, inside + 60.0, 150.0],
                [top + 50.0, inside + 140.0, 20.0],
                [top + 30.0, inside + 200.0, -80.0],
            ]),
            radius: 2.0,
            carrier: Carrier::Body,
            away: [1.0, 0.0, 0.0],
        },
        Body {
            form: Form::Chain(vec![[-top, inside, chance.within(-120.0, 60.0)]]),
            radius: 12.0,
            carrier: Carrier::Body,
            away: [-0.8, -0.6, 0.0],
        },
        // Lower arm, from pivot to ball joint inside the barrel.
        Body {
            form: Form::Chain(vec![[20.0, -430.0, -60.0], [10.0, centre - 60.0, -100.0]]),
            radius: 18.0,
            carrier: arm,
            away: [0.0, -0.4, 0.9],
        },
    ];

    let mut around = Obstacles::new();
    for body in &bodies {
        // Moved away until it clears the wheel by what it should.
        let gap = chance.within(3.0, 40.0);
        let mut by = 0.0;
        for _ in 0..40 {
            let mut alone = Obstacles::new();
            alone.push(body.obstacle(by)?)?;
            let swept = corner.clearance(&profile, &alone, Effort::new(mm(2.0), 20_000)?)?;
            match swept {
                Some(swept) if swept.upper() < mm(gap) => {
                    by += f64::max(1.0, 1000.0 * (mm(gap) - swept.upper()).value);
                }
                _ => break,
            }
        }
        around.push(body.obstacle(by)?)?;
    }
    let steer = if steered { inner + outer } else { 0.0 };
    let extents = bodies.each_ref().map(Body::extent);
    let moves = bodies.each_ref().map(|body| body.carrier != Carrier::Knuckle);
    Ok(Scene { corner, profile, around, extents, moves, steer, travel: jounce + rebound, beam })
}
