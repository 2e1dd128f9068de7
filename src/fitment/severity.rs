//! The findings of a report by how grave they are.

use super::check::{Check, Position, Verdict};
use super::report::Report;

impl Report {
    /// Every finding, the gravest first: beyond, marginal, not assessed, within, not applicable; of one verdict what
    /// kills before what wears.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Setup, Verdict};
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
    /// let report = Change::front(old, new).assess(&Vehicle::new(Kind::Passenger));
    /// assert_eq!(report.by_severity().map(|c| c.id().name()).next(), Some("bead_diameter"));
    /// assert_eq!(report.by_severity().count(), report.checks().count());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn by_severity(&self) -> impl Iterator<Item = Check> {
        [Verdict::Beyond, Verdict::Marginal, Verdict::NotAssessed, Verdict::Within, Verdict::NotApplicable]
            .into_iter()
            .flat_map(|verdict| self.by_gravity(verdict).copied())
    }

    /// The gravest finding that was made; nothing where nothing was assessed.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Setup};
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
    /// let report = Change::front(old, new).assess(&Vehicle::new(Kind::Passenger));
    /// assert!(report.worst().is_some_and(|c| c.id().name() == "bead_diameter"));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn worst(&self) -> Option<Check> {
        self.by_severity().find(|check| check.verdict().gravity() > 0)
    }

    /// The findings that bear on one place, the gravest first: its own, and of an end those of its axle; of an axle
    /// those of its ends too. A finding that rests on the narrower gap of an axle bears on both of its ends.
    ///
    /// ```
    /// use beadseat::fitment::{Change, Position, Setup, Verdict};
    /// use beadseat::vehicle::{Kind, Vehicle};
    /// let [old, new] = [Setup::parse("205/55R16", "6.5Jx16")?, Setup::parse("225/45R17", "7.5Jx16")?];
    /// let report = Change::front(old, new).assess(&Vehicle::new(Kind::Passenger));
    /// let worst = report.at(Position::FrontLeft).next().ok_or("nothing")?;
    /// assert_eq!((worst.id().name(), worst.verdict()), ("bead_diameter", Verdict::Beyond));
    /// assert_eq!(report.verdict_at(Position::FrontLeft), Verdict::Beyond);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn at(&self, place: Position) -> impl Iterator<Item = Check> {
        self.by_severity().filter(move |check| {
            let found = check.position();
            let is_by_gap = check.id().definition().is_by_gap();
            found == place
                || found == place.axle()
                || found.axle() == place
                || is_by_gap && found.axle() == place.axle()
        })
    }

    /// The verdict on one place: the worst of the findings that bear on it, and at best [`Verdict::Marginal`] where a
    /// vital one is missing.
    pub fn verdict_at(&self, place: Position) -> Verdict {
        let of = |check: Check| match check.verdict() {
            Verdict::NotAssessed if check.id().is_vital() => Verdict::Marginal,
            verdict => verdict,
        };
        self.at(place).map(of).reduce(Verdict::graver).unwrap_or(Verdict::NotAssessed)
    }

    /// The findings with one verdict, the gravest first: what kills before what wears, front before
    /// rear, and of the same kind the one further out.
    pub(super) fn by_gravity(&self, verdict: Verdict) -> impl Iterator<Item = &Check> {
        let rank = |c: &Check| c.id().definition().harm;
        let mut given = [false; Report::ROWS];
        core::iter::from_fn(move || {
            let left = self.findings().enumerate().filter(|(row, c)| c.verdict() == verdict && !given[*row]);
            let (row, next) = left.min_by(|(_, a), (_, b)| {
                rank(a).cmp(&rank(b)).then(a.relative_margin().total_cmp(&b.relative_margin()))
            })?;
            given[row] = true;
            Some(next)
        })
    }
}

impl Check {
    /// The margin as a share of the limit, to compare unlike findings. A designation that differs is outside by
    /// all of it.
    pub(super) fn relative_margin(&self) -> f64 {
        let share = self.margin_number().zip(self.limit()).and_then(|(margin, limit)| {
            let bound = limit.nearer_to(self.measured()?)?;
            Some(margin / bound.abs().max(1.0))
        });
        share.unwrap_or(if self.verdict() == Verdict::Beyond { f64::NEG_INFINITY } else { 0.0 })
    }
}
