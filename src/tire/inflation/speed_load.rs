//! What speed and camber do to the load a tire may carry and the pressure it needs.

use crate::step::Teller;
use crate::tire::size::AtSpeed;
use crate::tire::{SpeedSymbol, Tire, inflation::SpeedVariation};
use crate::units::{self, Angle, Pressure, Ratio, Velocity, at_most, in_deg, in_kmh, in_ratio};
use crate::{Citation, OutOfRange};

/// What a vehicle's top speed asks of a tire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedRule {
    load_share: Option<Ratio>,
    load_citation: Citation,
    pressure_increase: Option<Pressure>,
    pressure_citation: Citation,
}

impl SpeedRule {
    /// The share of the load index that may be carried; `None` where only the maker knows.
    pub const fn load_share(&self) -> Option<Ratio> {
        self.load_share
    }

    /// What is added to the pressure that the load alone needs; `None` where only the maker knows.
    pub const fn pressure_increase(&self) -> Option<Pressure> {
        self.pressure_increase
    }

    /// The source of [`SpeedRule::load_share`].
    pub const fn load_citation(&self) -> Citation {
        self.load_citation
    }

    /// The source of [`SpeedRule::pressure_increase`].
    pub const fn pressure_citation(&self) -> Citation {
        self.pressure_citation
    }
}

/// Linear between the corners of a table, flat outside them.
fn between(corners: &[(f64, f64)], x: f64) -> f64 {
    let mut y = corners.first().map_or(0.0, |c| c.1);
    for pair in corners.windows(2) {
        if let [(x0, y0), (x1, y1)] = *pair {
            if x > x0 {
                y = y0 + (y1 - y0) * (x.min(x1) - x0) / (x1 - x0);
            }
        }
    }
    y
}

/// Percent of the load index, passenger tires. Source: Crolla (ed.) 2009, Fig. 10.1-14, p. 291.
const V_LOAD: &[(f64, f64)] = &[(210.0, 100.0), (220.0, 97.0), (230.0, 94.0), (240.0, 91.0)];
const W_LOAD: &[(f64, f64)] = &[(240.0, 100.0), (250.0, 95.0), (260.0, 90.0), (270.0, 85.0)];
const Y_LOAD: &[(f64, f64)] = &[(270.0, 100.0), (280.0, 95.0), (290.0, 90.0), (300.0, 85.0)];

/// Extra kPa, passenger tires. Source: R to V Crolla (ed.) 2009, p. 291; W from memory.
const R_TO_V_PRESSURE: &[(f64, f64)] = &[(160.0, 0.0), (210.0, 30.0)];
const W_PRESSURE: &[(f64, f64)] = &[(190.0, 0.0), (240.0, 50.0)];

/// Where the table of fast motorcycle tires begins; below, they carry their load index.
const FAST_FROM_KMH: f64 = 130.0;

/// Up to here a Y tire needs no extra pressure; above, no rule is known.
const Y_KNOWN_KMH: f64 = 190.0;

impl Tire {
    /// What a top speed asks of this tire; `None` without a service description.
    ///
    /// Passenger tires: V, W and Y lose load in the last 30 km/h, and R to W need extra pressure at
    /// speed. No rule is known for the extra pressure of Y above 190 km/h, nor for anything above a
    /// tire's own speed symbol, nor for a speed that is not a number: those are absent, not zero; nor for off-road
    /// tires here ([`SpeedVariation`] has theirs). V and W of motorcycles lose load above
    /// 210 and 240 km/h by UN R75, and no rule of their pressure is known. Other tires carry their load index up
    /// to their symbol's speed. A bonus for going slower is never applied. Source: see [`SpeedRule`].
    ///
    /// ```
    /// use beadseat::{tire::Tire, units::{kmh, kpa, percent}};
    /// let rule = Tire::parse("225/45R17 94W")?.at_speed(kmh(250.0)).ok_or("no service")?;
    /// assert_eq!(rule.load_share(), Some(percent(95.0)));
    /// assert_eq!(rule.pressure_increase(), Some(kpa(50.0)));
    /// assert_eq!(Tire::parse("225/45R17 94H")?.at_speed(kmh(250.0)).and_then(|r| r.load_share()), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn at_speed(&self, top_speed: Velocity) -> Option<SpeedRule> {
        let symbol = self.service()?.speed();
        let v = in_kmh(top_speed);
        let pressure_citation = match symbol {
            SpeedSymbol::W => Citation::SPEED_PRESSURE_W,
            _ => Citation::SPEED_PRESSURE,
        };
        let unknown = SpeedRule {
            load_share: None,
            load_citation: Citation::SPEED_LOAD,
            pressure_increase: None,
            pressure_citation,
        };
        if !at_most(v, in_kmh(symbol.speed())) || v < 0.0 {
            return Some(unknown);
        }
        let (percent, extra) = match self.size().rules().at_speed {
            AtSpeed::Unknown => return Some(unknown),
            AtSpeed::Motorcycle => {
                let fast = SpeedVariation::motorcycle_fast(symbol, self.size().size_speed_letter());
                let share = fast.map(|fast| fast.load_share(units::kmh(v.max(FAST_FROM_KMH))).ok());
                return Some(SpeedRule {
                    load_share: share
                        .unwrap_or_else(|| (!symbol.is_open_ended()).then(|| units::percent(100.0))),
                    load_citation: Citation::SPEED_VARIATION_MOTORCYCLE_FAST,
                    ..unknown
                });
            }
            AtSpeed::Indexed => (100.0, Some(0.0)),
            AtSpeed::Passenger => match symbol {
                SpeedSymbol::Y | SpeedSymbol::AboveY => {
                    (between(Y_LOAD, v), at_most(v, Y_KNOWN_KMH).then_some(0.0))
                }
                SpeedSymbol::W | SpeedSymbol::AboveW => (between(W_LOAD, v), Some(between(W_PRESSURE, v))),
                SpeedSymbol::V => (between(V_LOAD, v), Some(between(R_TO_V_PRESSURE, v))),
                _ => (100.0, Some(between(R_TO_V_PRESSURE, v))),
            },
        };
        Some(SpeedRule {
            load_share: Some(units::percent(percent)),
            load_citation: Citation::SPEED_LOAD,
            pressure_increase: extra.map(units::kpa),
            pressure_citation,
        })
    }
}

/// Tells how a share or a pressure comes about between the rows of a table.
fn tell_between(
    corners: &[(f64, f64)],
    kmh: f64,
    what: &str,
    unit: &'static str,
    source: Citation,
    tell: &mut Teller<'_>,
) -> f64 {
    let y = between(corners, kmh);
    let row = corners.windows(2).rev().find(|pair| matches!(pair, [(x0, _), _] if kmh > *x0));
    let Some([(x0, y0), (x1, y1)]) = row else {
        return tell.given(format_args!("{what}, read from the table"), y, unit, source);
    };
    tell.given(format_args!("row of the table below: speed"), *x0, "km/h", source);
    tell.given(format_args!("{what} in that row"), *y0, unit, source);
    tell.given(format_args!("row of the table above: speed"), *x1, "km/h", source);
    tell.given(format_args!("{what} in that row"), *y1, unit, source);
    let numbers = [*y0, *y1, kmh, *x0, *x1];
    let form = ("{0} + ({1} − {0}) × (min({2}, {4}) − {3}) / ({4} − {3})", &numbers[..]);
    tell.worked(format_args!("{what} at that speed"), form, y, unit, source)
}

impl Tire {
    /// Tells how the share of load of [`Tire::at_speed`] comes about, in percent.
    pub(crate) fn tell_load_at_speed(&self, kmh: f64, tell: &mut Teller<'_>) -> Option<f64> {
        let rule = self.at_speed(units::kmh(kmh))?;
        let (share, source) = (in_ratio(rule.load_share()?) * 100.0, rule.load_citation());
        let what = "share of the load index";
        let corners = match (self.size().rules().at_speed, self.service()?.speed()) {
            (AtSpeed::Passenger, SpeedSymbol::Y | SpeedSymbol::AboveY) => Y_LOAD,
            (AtSpeed::Passenger, SpeedSymbol::W | SpeedSymbol::AboveW) => W_LOAD,
            (AtSpeed::Passenger, SpeedSymbol::V) => V_LOAD,
            _ => {
                let name = format_args!("{what} at that speed, read from the table");
                return Some(tell.given(name, share, "%", source));
            }
        };
        Some(tell_between(corners, kmh, what, "%", source, tell))
    }

    /// The same of the pressure that is added.
    pub(crate) fn tell_pressure_at_speed(&self, kmh: f64, tell: &mut Teller<'_>) -> Option<f64> {
        let rule = self.at_speed(units::kmh(kmh))?;
        let (extra, source) = (rule.pressure_increase()?, rule.pressure_citation());
        let what = "pressure to add";
        let corners = match (self.size().rules().at_speed, self.service()?.speed()) {
            (AtSpeed::Passenger, SpeedSymbol::W | SpeedSymbol::AboveW) => W_PRESSURE,
            (AtSpeed::Passenger, SpeedSymbol::Y | SpeedSymbol::AboveY) | (AtSpeed::Indexed, _) => {
                let name = format_args!("{what} at that speed, read from the table");
                return Some(tell.given(name, units::in_kpa(extra), "kPa", source));
            }
            _ => R_TO_V_PRESSURE,
        };
        Some(tell_between(corners, kmh, what, "kPa", source, tell))
    }
}

/// Tells how the factor of [`camber_load_factor`] comes about at so many degrees.
pub(crate) fn tell_camber_load_factor(degrees: f64, tell: &mut Teller<'_>) -> Option<f64> {
    let factor = in_ratio(camber_load_factor(units::deg(degrees)).ok()?);
    let form = ("1 − 0.05 × max({0} − 2, 0)", &[degrees][..]);
    Some(tell.worked(format_args!("share of the load at that camber"), form, factor, "", Citation::CAMBER))
}

/// The share of its load that a passenger tire carries at a camber: all of it up to 2°, then
/// `1 − 0.05·(γ − 2)` up to 4°. Source: Crolla (ed.) 2009, p. 296 (printed as pressure increases).
///
/// # Errors
/// Beyond 4° either way there is no rule.
///
/// ```
/// use beadseat::{tire::inflation::camber_load_factor, units::{deg, percent}};
/// assert_eq!(camber_load_factor(deg(-1.5))?, percent(100.0));
/// assert!(camber_load_factor(deg(3.0))? < percent(95.1));
/// assert!(camber_load_factor(deg(4.5)).is_err());
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn camber_load_factor(camber: Angle) -> Result<Ratio, OutOfRange> {
    let gamma = OutOfRange::check("camber", in_deg(camber), "deg", -4.0, 4.0)?;
    Ok(units::ratio(1.0 - 0.05 * (gamma.abs() - 2.0).max(0.0)))
}

/// What the pressure that the load alone needs is multiplied by at a camber: the
/// [load factor](camber_load_factor) to the power −1.25, which is 1 up to 2° and 1.141 at 4°. Passenger
/// tires. Source: Crolla (ed.) 2009, p. 296, whose printed increases it gives to the digit.
///
/// # Errors
/// Beyond 4° either way there is no rule.
///
/// ```
/// use beadseat::{tire::inflation::camber_pressure_factor, units::{deg, percent}, uom::si::ratio::ratio};
/// assert_eq!(camber_pressure_factor(deg(1.5))?, percent(100.0));
/// assert!((camber_pressure_factor(deg(-3.0))?.get::<ratio>() - 1.066).abs() < 0.0005);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
pub fn camber_pressure_factor(camber: Angle) -> Result<Ratio, OutOfRange> {
    Ok(units::ratio(libm::pow(in_ratio(camber_load_factor(camber)?), -1.0 / 0.8)))
}
