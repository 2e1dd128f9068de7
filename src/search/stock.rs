//! A stock of tires and wheels, any of which may be put together, against one vehicle.

use alloc::vec;
use alloc::vec::Vec;

use super::walk::Search;
use crate::fitment::{Parts, Setup, Setups, Span, Verdict, Windows};
use crate::rim::RimDiameter;
use crate::wheel::Inset;

/// A tire on a wheel, by their places in a [`Stock`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Pair {
    /// Which of the tires.
    pub tire: u32,
    /// Which of the wheels.
    pub wheel: u32,
}

/// The same on both axles.
impl From<Pair> for [Pair; 2] {
    fn from(pair: Pair) -> Self {
        [pair; 2]
    }
}

/// Tires and wheels, each judged once for itself, so that any of them put together are judged in some hundred
/// instructions.
///
/// A tire is a setup whose wheel does not count, a wheel one whose tire does not; together they are
/// [`Setup::on_wheel_of`]. They go on each axle that has an original setup.
///
/// What a tire on a rim asks of the inset is worked out when they are met a second time, and kept: a few insets between
/// which no check is graver. So lists are fast in which few tires and rims come often, in any order: wheels that differ in
/// inset, bolt circle, bore, seat or rating alone are one rim. As slow as an assessment of each are lists in which none
/// comes twice. What clears what moves around it is swept once for a range of insets, and that takes longest.
///
/// What is kept is bounded: some megabytes, whatever the length of a list, and no row allocates.
///
/// ```
/// use beadseat::prelude::*;
/// use beadseat::search::{Pair, Search, Stock, Wishes};
/// let front = Axle::new().with_track(mm(1538.0))?;
/// let car = Vehicle::new(Kind::Passenger).with_front(front);
/// let original = Setups { front: Some(Setup::parse("205/55R16 91V", "6.5Jx16 ET46")?), rear: None };
/// let (conditions, limits, wishes) = (Conditions::default(), Limits::default(), Wishes::new());
/// let search = Search::new(&car, &original, &conditions, &limits, &wishes);
/// let tires = [Setup::parse("225/45R17 94W", "7.5Jx17")?, Setup::parse("205/50R17 93W", "7.5Jx17")?];
/// let wheels = [Setup::parse("225/45R17", "7.5Jx17 ET42")?, Setup::parse("225/45R17", "7.5Jx17 ET10")?];
/// let mut stock = Stock::new(search, &tires, &wheels);
/// let rows = [Pair { tire: 0, wheel: 0 }, Pair { tire: 0, wheel: 1 }, Pair { tire: 1, wheel: 0 }];
/// let mut verdicts = [Verdict::NotAssessed; 3];
/// stock.judge(&rows, &mut verdicts);
/// assert_eq!(verdicts, [Verdict::Marginal, Verdict::Beyond, Verdict::Marginal]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct Stock<'a> {
    table: Table<'a>,
    memo: Memo,
}

impl core::fmt::Debug for Stock<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let Table { tires, wheels, rims, .. } = &self.table;
        f.debug_struct("Stock")
            .field("tires", &tires.len())
            .field("wheels", &wheels.len())
            .field("rims", &rims.len())
            .finish()
    }
}

impl<'a> Stock<'a> {
    /// Of the vehicle of a search. Wishes do not count.
    pub fn new(search: Search<'a>, tires: &'a [Setup], wheels: &'a [Setup]) -> Self {
        let Search { vehicle, original, conditions, limits, .. } = search;
        let table = Table::new(Parts::new(vehicle, original, conditions, limits), tires, wheels);
        let memo = Memo::of(&table);
        Self { table, memo }
    }

    /// The verdicts on rows, as assessments would give them; as many as the shorter of the two holds. A row is a [`Pair`]
    /// for all axles, or an array of the front's and the rear's. Of a row with a tire or a wheel that is none of the
    /// stock nothing is assessed.
    pub fn judge<R: Copy + Into<[Pair; 2]>>(&mut self, rows: &[R], verdicts: &mut [Verdict]) {
        self.memo.judge(&self.table, rows, verdicts);
    }

    /// The same on all cores, each of which keeps what it works out for as long as this takes.
    #[cfg(feature = "rayon")]
    #[cfg_attr(docsrs, doc(cfg(feature = "rayon")))]
    pub fn judge_in_parallel<R: Copy + Sync + Into<[Pair; 2]>>(&self, rows: &[R], verdicts: &mut [Verdict]) {
        use rayon::prelude::*;
        // One piece a core: what each keeps is then used most.
        let piece = rows.len().div_ceil(rayon::current_num_threads()).max(1);
        let pieces = rows.par_chunks(piece).zip(verdicts.par_chunks_mut(piece));
        pieces.for_each(|(rows, verdicts)| Memo::of(&self.table).judge(&self.table, rows, verdicts));
    }
}

/// What a row asks of a tire.
#[derive(Clone, Copy)]
struct Rubber {
    code: RimDiameter,
    is_original_size: [bool; 2],
}

/// What a row asks of a wheel.
#[derive(Clone, Copy)]
struct Metal {
    code: RimDiameter,
    rim: u32,
    inset: Option<Inset>,
    is_original: [bool; 2],
}

struct Table<'a> {
    parts: Parts<'a>,
    tires: &'a [Setup],
    wheels: &'a [Setup],
    rubber: Vec<Rubber>,
    metal: Vec<Metal>,
    rims: Vec<Setup>,
    of_the_rest: Verdict,
    /// The axles that rows go on.
    chosen: [bool; 2],
    surrounded: [bool; 2],
}

/// Both axles, by number.
const BOTH: [usize; 2] = [0, 1];

impl<'a> Table<'a> {
    fn new(parts: Parts<'a>, tires: &'a [Setup], wheels: &'a [Setup]) -> Self {
        let is_original = |n: usize, same: &dyn Fn(&Setup) -> bool| parts.original(n).is_some_and(same);
        let rubber = |tire: &Setup| Rubber {
            code: tire.tire().size().rim_diameter(),
            is_original_size: BOTH.map(|n| is_original(n, &|o| o.tire().size() == tire.tire().size())),
        };
        let mut rims = Rims::default();
        let metal = |wheel: &Setup| Metal {
            code: wheel.wheel().size().diameter(),
            rim: rims.place(parts.rim(wheel)),
            inset: wheel.wheel().inset_or_assumed(),
            is_original: BOTH.map(|n| is_original(n, &|original| original.wheel() == wheel.wheel())),
        };
        Self {
            rubber: tires.iter().map(rubber).collect(),
            metal: wheels.iter().map(metal).collect(),
            rims: rims.all,
            of_the_rest: parts.of_the_rest(),
            chosen: BOTH.map(|n| parts.is_chosen(n)),
            surrounded: BOTH.map(|n| parts.has_surroundings(n)),
            parts,
            tires,
            wheels,
        }
    }

    fn setup(&self, Pair { tire, wheel }: Pair) -> Option<Setup> {
        Some(self.tires.get(tire as usize)?.on_wheel_of(self.wheels.get(wheel as usize)?))
    }

    fn in_full(&self, pairs: [Pair; 2]) -> Option<Verdict> {
        let setup = |n: usize| if self.chosen[n] { self.setup(pairs[n]).map(Some) } else { Some(None) };
        Some(self.parts.of_all(Setups { front: setup(0)?, rear: setup(1)? }))
    }
}

/// Rims that differ, as far as it is seen: of one size only the last few are looked at.
#[derive(Default)]
struct Rims {
    all: Vec<Setup>,
    by_size: alloc::collections::BTreeMap<(u16, u16), Vec<u32>>,
}

impl Rims {
    fn place(&mut self, rim: Setup) -> u32 {
        const FEW: usize = 64;
        let size = rim.wheel().size();
        let key = (size.diameter().tenths(), size.width().quarters());
        let of_size = self.by_size.entry(key).or_default();
        let known = of_size.iter().rev().take(FEW).find(|&&n| self.all.get(n as usize) == Some(&rim));
        if let Some(&known) = known {
            return known;
        }
        let new = self.all.len() as u32;
        self.all.push(rim);
        of_size.push(new);
        new
    }
}

/// What was worked out of a tire on a rim.
#[derive(Clone, Copy)]
struct Known {
    tire: u32,
    rim: u32,
    /// Nothing where they were met once.
    windows: Option<[Windows; 2]>,
}

impl Known {
    const fn is_of(&self, pair: Pair, rim: u32) -> bool {
        self.tire == pair.tire && self.rim == rim
    }
}

/// Insets between which what moves is judged alike on an axle, the last few.
#[derive(Clone, Copy, Default)]
struct Moving {
    known: [Option<(Span, Verdict)>; 8],
    next: u8,
}

impl Moving {
    fn at(&self, inset: Inset) -> Option<Verdict> {
        self.known.iter().flatten().find(|(span, _)| span.contains(inset)).map(|(_, verdict)| *verdict)
    }

    fn keep(&mut self, span: Span, verdict: Verdict) {
        for (known, of) in self.known.iter_mut().flatten() {
            if let (true, Some(joined)) = (*of == verdict, known.joined(span)) {
                *known = joined;
                return;
            }
        }
        let places = self.known.len();
        if let Some(place) = self.known.get_mut(usize::from(self.next) % places) {
            *place = Some((span, verdict));
        }
        self.next = self.next.wrapping_add(1);
    }
}

/// What was worked out of a tire by itself: on each axle, and of front and rear together, where both are on it.
#[derive(Clone, Copy)]
struct OfTire {
    on: [Verdict; 2],
    alike: Verdict,
}

/// What was worked out: of each tire and wheel, and what came last of pairs, each in one place only.
struct Memo {
    tires: Vec<Option<OfTire>>,
    wheels: Vec<Option<[Verdict; 2]>>,
    pairs: Vec<Option<Known>>,
    moving: Vec<[Moving; 2]>,
    /// Of tires that differ between the axles.
    staggered: Vec<Option<(u32, u32, Verdict)>>,
}

/// The place of two numbers among a power of two.
fn place(a: u32, b: u32, places: usize) -> usize {
    let mixed = (u64::from(a) << 32 | u64::from(b)).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    (mixed >> 40) as usize & places.wrapping_sub(1)
}

impl Memo {
    /// The most places: two megabytes, and where anything stands around the wheels seven more.
    const MOST: usize = 1 << 15;

    fn of(table: &Table<'_>) -> Self {
        let pairs = table.tires.len().saturating_mul(table.rims.len()).saturating_mul(2);
        let places = pairs.clamp(1, Self::MOST).next_power_of_two();
        let moving = if table.surrounded.contains(&true) { places } else { 0 };
        Self {
            tires: vec![None; table.tires.len()],
            wheels: vec![None; table.wheels.len()],
            pairs: vec![None; places],
            moving: vec![<[Moving; 2]>::default(); moving],
            staggered: Vec::new(),
        }
    }

    fn judge<R: Copy + Into<[Pair; 2]>>(&mut self, table: &Table<'_>, rows: &[R], verdicts: &mut [Verdict]) {
        for (answer, row) in verdicts.iter_mut().zip(rows) {
            *answer = self.verdict(table, (*row).into()).unwrap_or(Verdict::NotAssessed);
        }
    }

    fn verdict(&mut self, table: &Table<'_>, pairs: [Pair; 2]) -> Option<Verdict> {
        let on_axles = || BOTH.into_iter().filter(|&n| table.chosen[n]);
        let mut is_original = false;
        for n in on_axles() {
            let tire = table.rubber.get(pairs[n].tire as usize)?;
            let wheel = table.metal.get(pairs[n].wheel as usize)?;
            // No tire is for a rim of another code.
            if tire.code != wheel.code {
                return Some(Verdict::Beyond);
            }
            is_original |= tire.is_original_size[n] & wheel.is_original[n];
        }
        // What does not change may be excused.
        if is_original {
            return table.in_full(pairs);
        }
        let mut worst = table.of_the_rest;
        for n in on_axles() {
            worst = worst.graver(self.of_wheel(table, pairs[n].wheel)?[n]);
        }
        if worst == Verdict::Beyond {
            return Some(worst);
        }
        for n in on_axles() {
            worst = worst.graver(self.of_tire(table, pairs[n].tire)?.on[n]);
        }
        if worst == Verdict::Beyond {
            return Some(worst);
        }
        worst = worst.graver(self.of_tires(table, pairs)?);
        let mut windows = [None; 2];
        for n in BOTH {
            if worst == Verdict::Beyond {
                return Some(worst);
            }
            if table.chosen[n] {
                windows[n] = if n == 1 && table.chosen[0] && pairs[0] == pairs[1] {
                    windows[0]
                } else {
                    self.windows(table, pairs[n])?
                };
                worst = worst.graver(of_pair(table, n, pairs[n], windows[n])?);
            }
        }
        for n in BOTH {
            if worst != Verdict::Beyond && table.surrounded[n] {
                worst = worst.graver(self.of_movement(table, n, pairs[n])?);
            }
        }
        Some(worst)
    }

    fn of_tire(&mut self, table: &Table<'_>, n: u32) -> Option<OfTire> {
        let known = self.tires.get_mut(n as usize)?;
        if known.is_none() {
            let (parts, tire) = (&table.parts, table.tires.get(n as usize)?);
            let on = BOTH.map(|n| parts.of_tire(n, tire));
            *known = Some(OfTire { on, alike: parts.of_tires([tire; 2]) });
        }
        *known
    }

    fn of_wheel(&mut self, table: &Table<'_>, n: u32) -> Option<[Verdict; 2]> {
        let known = self.wheels.get_mut(n as usize)?;
        if known.is_none() {
            let wheel = table.wheels.get(n as usize)?;
            *known = Some(BOTH.map(|n| table.parts.of_wheel(n, wheel)));
        }
        *known
    }

    /// The verdict on front and rear together.
    fn of_tires(&mut self, table: &Table<'_>, pairs: [Pair; 2]) -> Option<Verdict> {
        let [front, rear] = pairs.map(|pair| pair.tire);
        if front == rear {
            return Some(self.of_tire(table, front)?.alike);
        }
        if self.staggered.is_empty() {
            self.staggered = vec![None; Self::MOST];
        }
        let places = self.staggered.len();
        let known = self.staggered.get_mut(place(front, rear, places))?;
        match known {
            Some((a, b, verdict)) if (*a, *b) == (front, rear) => Some(*verdict),
            _ => {
                let tires = [table.tires.get(front as usize)?, table.tires.get(rear as usize)?];
                let verdict = table.parts.of_tires(tires);
                *known = Some((front, rear, verdict));
                Some(verdict)
            }
        }
    }

    /// What a tire on a rim asks of the inset, on either axle; nothing where they are met for the first time.
    fn windows(&mut self, table: &Table<'_>, pair: Pair) -> Option<Option<[Windows; 2]>> {
        let rim = table.metal.get(pair.wheel as usize)?.rim;
        let at = place(pair.tire, rim, self.pairs.len());
        let known = self.pairs.get_mut(at)?;
        match known {
            Some(known) if known.is_of(pair, rim) => {
                if known.windows.is_none() {
                    let (tire, rim) = (table.tires.get(pair.tire as usize)?, table.rims.get(rim as usize)?);
                    known.windows = Some(BOTH.map(|n| table.parts.of_pair(n, tire, rim)));
                }
                Some(known.windows)
            }
            _ => {
                *known = Some(Known { tire: pair.tire, rim, windows: None });
                if let Some(moving) = self.moving.get_mut(at) {
                    *moving = <[Moving; 2]>::default();
                }
                Some(None)
            }
        }
    }

    /// The verdict on what moves, on one axle.
    fn of_movement(&mut self, table: &Table<'_>, n: usize, pair: Pair) -> Option<Verdict> {
        let rim = table.metal.get(pair.wheel as usize)?.rim;
        let inset = table.metal.get(pair.wheel as usize)?.inset;
        let at = place(pair.tire, rim, self.pairs.len());
        // Another pair of the same row may have taken its place.
        let is_kept = self.pairs.get(at)?.is_some_and(|known| known.is_of(pair, rim));
        let mut moving = self.moving.get_mut(at).and_then(|moving| moving.get_mut(n)).filter(|_| is_kept);
        let known = inset.zip(moving.as_ref()).and_then(|(inset, moving)| moving.at(inset));
        if known.is_some() {
            return known;
        }
        let (verdict, span) = table.parts.of_movement(n, &table.setup(pair)?);
        if let Some(moving) = &mut moving {
            moving.keep(span, verdict);
        }
        Some(verdict)
    }
}

/// The verdict on a tire on a wheel of one axle, but for what moves.
fn of_pair(table: &Table<'_>, n: usize, pair: Pair, windows: Option<[Windows; 2]>) -> Option<Verdict> {
    Some(match windows {
        Some(windows) => windows.get(n)?.at(table.metal.get(pair.wheel as usize)?.inset),
        None => table.parts.of_pair_where_it_stands(n, &table.setup(pair)?),
    })
}
