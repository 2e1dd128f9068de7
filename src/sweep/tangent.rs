//! What bounds a clearance over a box: speeds, and the tangent it falls along.

use super::cell::{STEER, TRAVEL, VARIABLES};

/// A clearance as far as it is known: one that is not a number is none at all.
pub(super) fn known(clearance: f64) -> f64 {
    if clearance < f64::INFINITY { clearance } else { f64::NEG_INFINITY }
}

/// Bounds over a box.
pub(super) struct Speeds {
    /// Of the distance, for each variable.
    pub(super) distance: [f64; VARIABLES],
    /// How far the point moves from its place in the middle.
    pub(super) moved: f64,
    /// What of that is not along the tangent, shared among the variables.
    pub(super) bends: [f64; VARIABLES],
}

/// The tangent of a part's distance, along which the point moves.
pub(super) struct Tangent {
    pub(super) slope: [f64; VARIABLES],
    /// `α` and `β` of steer: of the point itself first, then what each other variable adds.
    pub(super) levers: [f64; VARIABLES],
    pub(super) turns: [f64; VARIABLES],
}

impl Tangent {
    /// The most it falls over a box. Linear in all but steer, so it is lowest at one of their corners.
    pub(super) fn fall(&self, h: &[f64; VARIABLES]) -> f64 {
        let mut corners = [(0.0, self.levers[STEER], self.turns[STEER]); 1 << (VARIABLES - 1)];
        let mut count = 1;
        for (i, &half) in h.iter().enumerate().skip(TRAVEL) {
            if half > 0.0 {
                let [fall, lever, turn] = [self.slope[i], self.levers[i], self.turns[i]].map(|x| x * half);
                for j in 0..count {
                    let corner = corners[j];
                    corners[j] = (corner.0 + fall, corner.1 - lever, corner.2 - turn);
                    corners[count + j] = (corner.0 - fall, corner.1 + lever, corner.2 + turn);
                }
                count *= 2;
            }
        }
        let falls = corners[..count]
            .iter()
            .map(|&(fall, lever, turn)| fall + fall_in_steer(turn.abs(), lever, h[STEER]));
        // What is not a number is in every corner, and then there is no fall that is known.
        falls.fold(f64::NAN, f64::max)
    }

    /// What each variable may contribute.
    pub(super) fn falls(&self, h: &[f64; VARIABLES]) -> [f64; VARIABLES] {
        let mut falls = [0.0; VARIABLES];
        for i in TRAVEL..VARIABLES {
            let mixed = 0.5 * self.turns[i].abs() * h[i] * h[STEER];
            falls[i] = self.slope[i].abs() * h[i] + mixed;
            falls[STEER] += mixed;
        }
        falls[STEER] += fall_in_steer(self.turns[STEER].abs(), self.levers[STEER], h[STEER]);
        falls
    }
}

/// The most that `lever·(1 − cos θ) − slope·sin θ` can be for `|θ| ≤ half`.
fn fall_in_steer(slope: f64, lever: f64, half: f64) -> f64 {
    if lever >= 0.0 {
        return slope * half + 0.5 * lever * half * half;
    }
    let rise = -lever * (1.0 - half * half / 12.0);
    if slope >= rise * half { slope * half - 0.5 * rise * half * half } else { slope * slope / (2.0 * rise) }
}
