//! Setups that differ from axle to axle.

use super::best::Best;
use super::candidate::Candidate;
use super::choice::{Choice, Choices};
use super::walk::Search;
use crate::fitment::{Setups, Verdict, fails_together};
use crate::rim::RimDiameter;

impl Search<'_> {
    /// The best `N` setups whose tires differ in size from axle to axle, of all pairs of the `EACH` best of either axle
    /// by itself; none where the original has only one axle. It allocates nothing, and holds what it compares inline.
    ///
    /// What fits an axle by itself is found as by [`Search::candidates`], each at the best inset of its own interval. Of
    /// every pair an assessment must find nothing beyond: that the rolling circumferences keep the ratio of the original's
    /// within what all-wheel drive or stability control allow is one of its checks. Tires are looked for that are no
    /// narrower in the rear than in front, on rims whose diameters differ as the original's do: common practice, no source.
    ///
    /// A pair is missed where one of its halves is not among the `EACH` best of its axle.
    ///
    /// ```
    /// use beadseat::prelude::*;
    /// use beadseat::search::{Search, Wishes};
    /// let car = Vehicle::new(Kind::Passenger).with_drive(Drive::Rear);
    /// let original = Setups::both(Setup::parse("205/55R16 91V", "6.5Jx16 ET46")?);
    /// let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
    /// let search = Search::new(&car, &original, &conditions, &limits, &wishes);
    /// let pairs = search.staggered::<12, 3>();
    /// let first = pairs.iter().next().ok_or("no pair")?;
    /// let widths: Vec<_> = first.choices().map(|c| c.setup().tire().size().nominal_width()).collect();
    /// assert!(widths.len() == 2 && widths[0] <= widths[1]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn staggered<const EACH: usize, const N: usize>(&self) -> Best<N> {
        self.staggered_while::<EACH, N>(|_| true)
    }

    /// The same for as long as a caller lets it go on, who is asked before each candidate of an axle and before each pair,
    /// and told how many sizes have been walked: twice those of [`Search::sizes`] in all. It gives the pairs that it has
    /// found until then.
    ///
    /// ```
    /// use beadseat::prelude::*;
    /// use beadseat::search::{Search, Wishes};
    /// let car = Vehicle::new(Kind::Passenger).with_drive(Drive::Rear);
    /// let original = Setups::both(Setup::parse("205/55R16 91V", "6.5Jx16 ET46")?);
    /// let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
    /// let search = Search::new(&car, &original, &conditions, &limits, &wishes);
    /// let pairs = search.staggered_while::<12, 3>(|walked| walked < 10);
    /// assert_eq!(pairs.iter().count(), 0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn staggered_while<const EACH: usize, const N: usize>(
        &self,
        mut goes_on: impl FnMut(u32) -> bool,
    ) -> Best<N> {
        let mut pairs = Best::new();
        let Setups { front: Some(old_front), rear: Some(old_rear) } = *self.original else { return pairs };
        let rims = [old_front, old_rear].map(|old| old.tire().size().rim_diameter());
        let all = self.sizes();
        let mut each = |is_front: bool| {
            let mut best = Best::<EACH>::new();
            let mut candidates = self.candidates();
            if is_front {
                candidates.rear = None
            } else {
                candidates.front = None
            }
            let before = if is_front { 0 } else { all };
            while goes_on(before + (all - candidates.sizes_left())) {
                let Some(candidate) = candidates.next() else { return Some(best) };
                best.offer(candidate);
            }
            None
        };
        let Some((fronts, rears)) = each(true).and_then(|fronts| Some((fronts, each(false)?))) else {
            return pairs;
        };
        let whole = self.candidates();
        let (Some(on_front), Some(on_rear)) = (&whole.front, &whole.rear) else { return pairs };
        for front in fronts.iter() {
            for rear in rears.iter() {
                let (Some(a), Some(b)) = (only(front), only(rear)) else { continue };
                if !goes_on(2 * all) {
                    return pairs;
                }
                if !is_staggered(a, b, rims) {
                    continue;
                }
                let tried = [on_front.tried(a.setup()), on_rear.tried(b.setup())];
                if fails_together(&tried[0], &tried[1]).is_some() {
                    continue;
                }
                let proposed = Setups { front: Some(*a.setup()), rear: Some(*b.setup()) };
                let report = self.report(self.vehicle, proposed);
                if report.overall() != Verdict::Beyond {
                    let number = front.number() * self.points() + rear.number();
                    pairs.offer(Candidate::new(Choices { number, on: [Some(*a), Some(*b)] }, &report));
                }
            }
        }
        pairs
    }
}

fn only(candidate: &Candidate) -> Option<&Choice> {
    candidate.choices().next()
}

/// Whether the tires differ, the wider one in the rear, on rims as far apart in diameter as the original's.
fn is_staggered(front: &Choice, rear: &Choice, [old_front, old_rear]: [RimDiameter; 2]) -> bool {
    let [front, rear] = [front, rear].map(|choice| choice.setup().tire().size());
    let step = |front: RimDiameter, rear: RimDiameter| i32::from(rear.tenths()) - i32::from(front.tenths());
    let widths = front.nominal_width().zip(rear.nominal_width());
    front != rear
        && widths.is_none_or(|(front, rear)| front <= rear)
        && step(front.rim_diameter(), rear.rim_diameter()) == step(old_front, old_rear)
}
