//! The best of many candidates, without keeping them all.

use core::cmp::Ordering;

use super::candidate::Candidate;
use super::choice::Expectation;

/// Says which of two candidates is the better one.
pub trait Score {
    /// `Greater` where the first is better.
    fn compare(&self, a: &Candidate, b: &Candidate) -> Ordering;

    /// The figure that is shown of one.
    fn score(&self, candidate: &Candidate) -> f64;
}

/// The better one leaves more where it leaves least: the largest least margin as a share of its limit, and of two as good
/// the larger next one. A candidate of which nothing is known to be left comes last; of two that are the same, the first
/// in the lattice is the better one.
///
/// ```
/// use beadseat::search::{LeastMargin, Score};
/// fn better<S: Score>(_: S) {}
/// better(LeastMargin);
/// ```
#[derive(Clone, Copy, Debug, Default)]
pub struct LeastMargin;

impl Score for LeastMargin {
    fn compare(&self, a: &Candidate, b: &Candidate) -> Ordering {
        let shares = |candidate: &Candidate| {
            let mut margins = candidate.margins();
            core::array::from_fn::<f64, 4, _>(|_| margins.next().map_or(f64::NEG_INFINITY, |m| m.share()))
        };
        let of = shares(a).into_iter().zip(shares(b));
        let by_margin = of.map(|(a, b)| a.total_cmp(&b)).find(|order| order.is_ne());
        by_margin.unwrap_or_else(|| b.number().cmp(&a.number()))
    }

    fn score(&self, candidate: &Candidate) -> f64 {
        candidate.margins().next().map_or(f64::NEG_INFINITY, |margin| margin.share())
    }
}

/// The better one is the one that a builder would rather buy. In turn:
///
/// 1. its tires can be [expected](Candidate::expectation) to bear what is asked of them, or that is at least not known;
/// 2. its sizes are [listed](Candidate::is_listed);
/// 3. its rims are [approved](Candidate::is_on_approved_rims) for its tires;
/// 4. its least margin is larger, in tenths of the limit: what is less tells nothing of tires as they are made; one of
///    which nothing is known to be left comes last;
/// 5. its rims are nearer to the measuring rims of their tires, or with seats of 15° to the narrowest or widest that a
///    table or a sheet prints;
/// 6. its sizes are nearer to the original's: in nominal width, in overall diameter, and by ten millimetres for each inch of rim
///    diameter;
/// 7. as [`LeastMargin`] says.
///
/// ```
/// use beadseat::search::{Best, Likely, Score};
/// fn better<S: Score>(_: &S) {}
/// better(Best::<3>::new().score());
/// better(&Likely);
/// ```
#[derive(Clone, Copy, Debug, Default)]
pub struct Likely;

impl Score for Likely {
    fn compare(&self, a: &Candidate, b: &Candidate) -> Ordering {
        let bought = |c: &Candidate| (c.expectation(), c.is_listed(), c.is_on_approved_rims());
        bought(a)
            .cmp(&bought(b))
            .then_with(|| tenths(a).total_cmp(&tenths(b)))
            .then_with(|| b.rim_off().cmp(&a.rim_off()))
            .then_with(|| b.apart().cmp(&a.apart()))
            .then_with(|| LeastMargin.compare(a, b))
    }

    /// A figure that is never higher for a worse one: the least margin in whole tenths of its limit, from −9.9 to 9.9, and
    /// 20 more for approved rims, 40 for listed sizes, 80 where what its tires bear is not known and 160 where they can be
    /// expected to bear what is asked of them.
    fn score(&self, candidate: &Candidate) -> f64 {
        let more = |holds: bool, points: f64| if holds { points } else { 0.0 };
        (tenths(candidate) / 10.0).clamp(-9.9, 9.9)
            + more(candidate.is_on_approved_rims(), 20.0)
            + more(candidate.is_listed(), 40.0)
            + more(candidate.expectation() >= Expectation::NotKnown, 80.0)
            + more(candidate.expectation() == Expectation::Meets, 80.0)
    }
}

/// The least margin in whole tenths of its limit.
fn tenths(candidate: &Candidate) -> f64 {
    libm::floor(LeastMargin.score(candidate) * 10.0 + 1e-9)
}

/// The best `N` candidates that it was given, the best first. It holds them inline and allocates nothing.
///
/// ```
/// use beadseat::search::Best;
/// let best = Best::<10>::new();
/// assert_eq!(best.iter().count(), 0);
/// ```
#[derive(Clone, Debug)]
pub struct Best<const N: usize, S = Likely> {
    score: S,
    kept: [Option<Candidate>; N],
}

impl<const N: usize> Best<N> {
    /// By what is [likely](Likely) to be bought.
    pub const fn new() -> Self {
        Self::by(Likely)
    }
}

impl<const N: usize> Default for Best<N> {
    fn default() -> Self {
        Self::new()
    }
}

impl<const N: usize, S> Best<N, S> {
    /// By a score of the caller's.
    pub const fn by(score: S) -> Self {
        Self { score, kept: [const { None }; N] }
    }

    /// Those that were kept, the best first.
    pub fn iter(&self) -> impl Iterator<Item = &Candidate> {
        self.kept.iter().flatten()
    }

    /// The score they are kept by.
    pub const fn score(&self) -> &S {
        &self.score
    }
}

impl<const N: usize, S: Score> Best<N, S> {
    /// Keeps a candidate if it is among the best.
    pub fn offer(&mut self, candidate: Candidate) {
        let worse = |kept: &Candidate| self.score.compare(&candidate, kept) == Ordering::Greater;
        let Some(at) = self.kept.iter().position(|kept| kept.as_ref().is_none_or(worse)) else { return };
        if let Some(from_here) = self.kept.get_mut(at..) {
            from_here.rotate_right(1);
            if let Some(first) = from_here.first_mut() {
                *first = Some(candidate);
            }
        }
    }
}

impl<const N: usize, S: Score> Extend<Candidate> for Best<N, S> {
    fn extend<I: IntoIterator<Item = Candidate>>(&mut self, candidates: I) {
        candidates.into_iter().for_each(|candidate| self.offer(candidate));
    }
}
