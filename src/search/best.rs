//! The best of many candidates, without keeping them all.

use core::cmp::Ordering;

use super::candidate::Candidate;

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

/// The best `N` candidates that it was given, the best first. It holds them inline and allocates nothing.
///
/// ```
/// use beadseat::search::Best;
/// let best = Best::<10>::new();
/// assert_eq!(best.iter().count(), 0);
/// ```
#[derive(Clone, Debug)]
pub struct Best<const N: usize, S = LeastMargin> {
    score: S,
    kept: [Option<Candidate>; N],
}

impl<const N: usize> Best<N> {
    /// By the least margin.
    pub const fn new() -> Self {
        Self::by(LeastMargin)
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
