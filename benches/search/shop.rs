//! Invented shops: tires and wheels around what a vehicle of the invented scenarios has, put together in no order.

use beadseat::fitment::Setup;
use beadseat::search::Pair;
use beadseat::units::{kg, kpa};

/// Numbers in no order, the same on every run.
struct Any(u64);

impl Any {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % end
    }

    fn of<T: Copy>(&mut self, some: &[T]) -> T {
        some[self.below(some.len())]
    }
}

/// What a shop has for a kind of vehicle.
pub(crate) struct Range {
    /// What stands before the width of a tire and behind its size.
    pub(crate) around: (&'static str, &'static [&'static str]),
    pub(crate) widths: &'static [u32],
    pub(crate) aspects: &'static [u32],
    pub(crate) codes: &'static [&'static str],
    pub(crate) pressures: &'static [f64],
    /// Widths of rims, and what stands behind them.
    pub(crate) rims: (&'static [&'static str], &'static str),
    pub(crate) insets: core::ops::Range<i32>,
    pub(crate) drillings: &'static [&'static str],
    pub(crate) ratings: &'static [f64],
}

pub(crate) const OF_CARS: Range = Range {
    around: ("", &["91V", "94W XL", "95V", "91H"]),
    widths: &[185, 195, 205, 215, 225, 235, 245],
    aspects: &[35, 40, 45, 50, 55, 60, 65],
    codes: &["15", "16", "17", "18", "19"],
    pressures: &[230.0, 250.0, 270.0],
    rims: (&["6", "6.5", "7", "7.5", "8", "8.5"], "J"),
    insets: 15..65,
    drillings: &["5x112 57.1", "5x112 66.6", "5x114.3 57.1", "5x108 63.4"],
    ratings: &[560.0, 615.0, 690.0, 750.0],
};

pub(crate) const OF_PICKUPS: Range = Range {
    around: ("LT", &["121/118S LRE", "119/116Q LRE", "123/120R LRE"]),
    widths: &[225, 235, 245, 255, 265, 275, 285],
    aspects: &[60, 65, 70, 75, 80, 85],
    codes: &["16", "17", "18", "20"],
    pressures: &[380.0, 450.0, 550.0],
    rims: (&["7", "7.5", "8", "8.5", "9"], "J"),
    insets: -20..60,
    drillings: &["6x139.7 100", "6x139.7 106.1", "8x165.1 116.7"],
    ratings: &[1000.0, 1150.0, 1450.0],
};

pub(crate) const OF_TRUCKS: Range = Range {
    around: ("", &["152/148M", "154/150L", "156/150L", "150/147K"]),
    widths: &[275, 285, 295, 305, 315],
    aspects: &[60, 70, 75, 80],
    codes: &["19.5", "22.5"],
    pressures: &[700.0, 800.0, 850.0],
    rims: (&["7.50", "8.25", "9.00"], ""),
    insets: 120..180,
    drillings: &["10x335 281", "8x275 221"],
    ratings: &[3350.0, 3550.0, 4000.0],
};

/// Tires and wheels, each told by its place.
pub(crate) struct Shop {
    pub(crate) tires: Vec<Setup>,
    pub(crate) wheels: Vec<Setup>,
}

impl Shop {
    pub(crate) fn with(range: &Range, tires: usize, wheels: usize) -> Self {
        let mut any = Any(1);
        let mut shop = Self { tires: Vec::new(), wheels: Vec::new() };
        while shop.tires.len() < tires {
            let (width, aspect, code) = (any.of(range.widths), any.of(range.aspects), any.of(range.codes));
            let (before, behind) = range.around;
            let tire = format!("{before}{width}/{aspect}R{code} {}", any.of(behind));
            let setup = Setup::parse(&tire, "6.5Jx16").ok();
            shop.tires.extend(setup.and_then(|setup| setup.with_pressure(kpa(any.of(range.pressures))).ok()));
        }
        while shop.wheels.len() < wheels {
            let (widths, behind) = range.rims;
            let hump = if behind.is_empty() { "" } else { " H2" };
            let inset = range.insets.start + any.below(range.insets.len()) as i32;
            let size = format!("{}{behind}x{}{hump}", any.of(widths), any.of(range.codes));
            let setup =
                Setup::parse("205/55R16", &format!("{size} ET{inset} {}", any.of(range.drillings))).ok();
            shop.wheels
                .extend(setup.and_then(|setup| setup.with_wheel_rating(kg(any.of(range.ratings))).ok()));
        }
        shop
    }

    /// Any tire on any wheel.
    pub(crate) fn pairs(&self, rows: usize) -> Vec<Pair> {
        let mut any = Any(2);
        let mut pair =
            || Pair { tire: any.below(self.tires.len()) as u32, wheel: any.below(self.wheels.len()) as u32 };
        (0..rows).map(|_| pair()).collect()
    }

    /// Each tire and each wheel once.
    pub(crate) fn each_once(&self) -> Vec<Pair> {
        (0..self.tires.len().min(self.wheels.len()) as u32).map(|n| Pair { tire: n, wheel: n }).collect()
    }
}
