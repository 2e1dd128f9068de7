//! What speedometer and odometer show, and what the law lets them.

use core::ops::RangeInclusive;

use crate::step::Teller;
use crate::units::{self, Length, Ratio, Velocity, in_kmh, in_ratio};
use crate::{Citation, OutOfRange};

/// A law of speedometers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum SpeedometerLaw {
    /// UN R39 §5.3: never less than the true speed, nor more than it by over 10 % and 4 km/h.
    UnR39,
    /// UN R39 for motorcycles: 8 km/h in place of 4. From memory.
    UnR39Motorcycle,
    /// 49 CFR 393.82, US commercial vehicles: within 8 km/h (5 mph) at 80 km/h (50 mph). It says nothing
    /// of other speeds.
    UsCommercial,
}

/// The share of the true speed that UN R39 lets a speedometer exceed it by, beside the constant.
const R39_SHARE: f64 = 0.1;

/// 49 CFR 393.82 says it in both units, within 8 km/h at 80 km/h or 5 mph at 50 mph: a tenth.
const US_KMH: (f64, f64) = (80.0, 50.0 * 1.609_344);
const US_SHARE: f64 = 0.1;

/// Speeds that are read, km/h.
const MOST_KMH: f64 = 600.0;

fn checked(speed: Velocity) -> Result<f64, OutOfRange> {
    OutOfRange::check("speed", in_kmh(speed), "km/h", 1.0, MOST_KMH)
}

impl SpeedometerLaw {
    /// What UN R39 adds to 10 %, km/h.
    const fn constant_kmh(self) -> Option<f64> {
        match self {
            Self::UnR39 => Some(4.0),
            Self::UnR39Motorcycle => Some(8.0),
            Self::UsCommercial => None,
        }
    }

    /// What may be shown at a true speed.
    ///
    /// # Errors
    /// Outside 1 to 600 km/h, and for [`SpeedometerLaw::UsCommercial`] at any other speed than its own.
    ///
    /// ```
    /// use beadseat::{tire::rolling::SpeedometerLaw, units::kmh};
    /// let shown = SpeedometerLaw::UnR39.shown_at(kmh(110.0))?;
    /// assert_eq!(*shown.start(), kmh(110.0));
    /// assert!((*shown.end() - kmh(125.0)).abs() < kmh(1e-9));
    /// let shown = SpeedometerLaw::UsCommercial.shown_at(kmh(80.0))?;
    /// assert!(shown.contains(&kmh(73.0)) && !shown.contains(&kmh(71.0)));
    /// assert!(SpeedometerLaw::UsCommercial.shown_at(kmh(100.0)).is_err());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn shown_at(self, true_speed: Velocity) -> Result<RangeInclusive<Velocity>, OutOfRange> {
        let v = checked(true_speed)?;
        let (least, most) = match self.constant_kmh() {
            Some(constant) => (v, v + R39_SHARE * v + constant),
            None => {
                OutOfRange::check("speed", v, "km/h", US_KMH.0, US_KMH.1)?;
                (v - US_SHARE * v, v + US_SHARE * v)
            }
        };
        Ok(units::kmh(least)..=units::kmh(most))
    }

    /// The greatest legal over-read as a share of a true speed; the share falls as the speed rises.
    ///
    /// # Errors
    /// As [`SpeedometerLaw::shown_at`].
    ///
    /// ```
    /// use beadseat::{tire::rolling::SpeedometerLaw, units::{kmh, percent}};
    /// let share = SpeedometerLaw::UnR39.max_over_read(kmh(200.0))?;
    /// assert!((share - percent(12.0)).abs() < percent(1e-9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn max_over_read(self, true_speed: Velocity) -> Result<Ratio, OutOfRange> {
        let shown = self.shown_at(true_speed)?;
        Ok(match self.constant_kmh() {
            Some(constant) => units::ratio(R39_SHARE + constant / in_kmh(true_speed)),
            None => *shown.end() / true_speed - units::ratio(1.0),
        })
    }

    /// Tells how the greatest legal over-read comes about, in percent; nothing of the rule without a constant.
    pub(crate) fn tell_max_over_read(self, kmh: f64, tell: &mut Teller<'_>) -> Option<f64> {
        let (constant, source) = (self.constant_kmh()?, self.citation());
        tell.given(format_args!("true speed"), kmh, "km/h", None);
        tell.given(format_args!("speed that may be shown above a tenth"), constant, "km/h", source);
        let most = (R39_SHARE + constant / kmh) * 100.0;
        let form = ("(0.1 + {0} / {1}) × 100", &[constant, kmh][..]);
        Some(tell.worked(format_args!("greatest legal over-read"), form, most, "%", source))
    }

    /// The source of the rule.
    ///
    /// ```
    /// use beadseat::{Citation, tire::rolling::SpeedometerLaw};
    /// assert_eq!(SpeedometerLaw::UnR39.citation(), Citation::SPEEDOMETER);
    /// ```
    pub const fn citation(self) -> Citation {
        match self {
            Self::UnR39 => Citation::SPEEDOMETER,
            Self::UnR39Motorcycle => Citation::SPEEDOMETER_MOTORCYCLE,
            Self::UsCommercial => Citation::SPEEDOMETER_US,
        }
    }
}

/// A speedometer after the rolling circumference was changed.
///
/// It counts turns of the wheel, so it shows `(1 + e)/x` of the true speed: `e` its over-read on the
/// original tires, `x` the change of [circumference](crate::tire::rolling::Rolling::relative_to). Where `e` is not known,
/// the original is taken to have obeyed the law, and every answer is an interval.
///
/// ```
/// use beadseat::{tire::rolling::{Speedometer, SpeedometerLaw}, units::{kmh, percent}};
/// let larger = Speedometer::new(SpeedometerLaw::UnR39).with_change(percent(103.0))?;
/// // With an over-read of 5 % there is room for 3 % more circumference; unmeasured, nobody can say.
/// assert_eq!(larger.with_over_read(percent(5.0))?.is_legal_at(kmh(100.0))?, Some(true));
/// assert_eq!(larger.with_over_read(percent(1.0))?.is_legal_at(kmh(100.0))?, Some(false));
/// assert_eq!(larger.is_legal_at(kmh(100.0))?, None);
/// # Ok::<(), beadseat::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Speedometer {
    law: SpeedometerLaw,
    over_read: Option<f64>,
    change: f64,
}

impl Speedometer {
    /// On the original tires, with an over-read that is not known.
    pub const fn new(law: SpeedometerLaw) -> Self {
        Self { law, over_read: None, change: 1.0 }
    }

    /// With an over-read that was measured on the original tires. A measurement on worn ones flatters:
    /// 6.4 mm of wear is 2 % of the radius.
    ///
    /// # Errors
    /// Outside −20 to 30 %.
    pub fn with_over_read(self, over_read: Ratio) -> Result<Self, OutOfRange> {
        let e = OutOfRange::check("over-read", units::in_percent(over_read), "%", -20.0, 30.0)?;
        Ok(Self { over_read: Some(e / 100.0), ..self })
    }

    /// With tires of another circumference.
    ///
    /// # Errors
    /// Outside 50 to 200 % of the original.
    pub fn with_change(self, change: Ratio) -> Result<Self, OutOfRange> {
        let x = OutOfRange::check("circumference", units::in_percent(change), "%", 50.0, 200.0)?;
        Ok(Self { change: x / 100.0, ..self })
    }

    /// What it shows at a true speed: one value if the over-read is known, else all it may show.
    ///
    /// # Errors
    /// Where the law does not answer; see [`SpeedometerLaw::shown_at`].
    ///
    /// ```
    /// use beadseat::{tire::rolling::{Speedometer, SpeedometerLaw}, units::{kmh, percent, ratio}};
    /// let exact = Speedometer::new(SpeedometerLaw::UnR39).with_over_read(percent(0.0))?;
    /// let shown = exact.with_change(ratio(656.8 / 631.9))?.shown_at(kmh(100.0))?;
    /// assert!((*shown.start() - kmh(96.2089)).abs() < kmh(1e-4) && shown.start() == shown.end());
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn shown_at(&self, true_speed: Velocity) -> Result<RangeInclusive<Velocity>, OutOfRange> {
        checked(true_speed)?;
        // The true speed that the original tires would have at these turns of the wheel.
        let turns = true_speed / self.change;
        match self.over_read {
            Some(e) => {
                let shown = turns * (1.0 + e);
                Ok(shown..=shown)
            }
            None => self.law.shown_at(turns),
        }
    }

    /// The true speed when it shows a speed: one value if the over-read is known, else all it may be.
    ///
    /// # Errors
    /// Outside 1 to 600 km/h shown, and without a known over-read for a law that holds at one speed only.
    ///
    /// ```
    /// use beadseat::{tire::rolling::{Speedometer, SpeedometerLaw}, units::{kmh, ratio}};
    /// let unknown = Speedometer::new(SpeedometerLaw::UnR39).with_change(ratio(656.8 / 631.9))?;
    /// let truly = unknown.true_at(kmh(100.0))?;
    /// assert!(*truly.start() < kmh(91.0) && *truly.end() > kmh(103.9));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn true_at(&self, shown: Velocity) -> Result<RangeInclusive<Velocity>, OutOfRange> {
        let v = checked(shown)?;
        let (least, most) = match (self.over_read, self.law.constant_kmh()) {
            (Some(e), _) => (v / (1.0 + e), v / (1.0 + e)),
            (None, Some(constant)) => (((v - constant) / (1.0 + R39_SHARE)).max(0.0), v),
            (None, None) => {
                let (least, most) = US_KMH;
                return Err(OutOfRange { what: "true speed", value: v, unit: "km/h", least, most });
            }
        };
        Ok(units::kmh(least * self.change)..=units::kmh(most * self.change))
    }

    /// Whether the law is kept at a true speed; `None` if that hangs on the over-read nobody measured.
    ///
    /// # Errors
    /// As [`Speedometer::shown_at`].
    pub fn is_legal_at(&self, true_speed: Velocity) -> Result<Option<bool>, OutOfRange> {
        let (shown, legal) = (self.shown_at(true_speed)?, self.law.shown_at(true_speed)?);
        let no_more = |a: &Velocity, b: &Velocity| units::at_most(in_kmh(*a), in_kmh(*b));
        Ok(if no_more(legal.start(), shown.start()) && no_more(shown.end(), legal.end()) {
            Some(true)
        } else if !no_more(shown.start(), legal.end()) || !no_more(legal.start(), shown.end()) {
            Some(false)
        } else {
            None
        })
    }

    /// The changes of circumference that keep the law at a true speed; `None` without a known over-read,
    /// with which only an unchanged circumference is sure to.
    ///
    /// # Errors
    /// Where the law does not answer; see [`SpeedometerLaw::shown_at`].
    ///
    /// ```
    /// use beadseat::{tire::rolling::{Speedometer, SpeedometerLaw}, units::{kmh, percent}};
    /// let meter = Speedometer::new(SpeedometerLaw::UnR39).with_over_read(percent(5.0))?;
    /// let changes = meter.legal_changes(kmh(100.0))?.ok_or("no over-read")?;
    /// assert!((*changes.start() - percent(92.105)).abs() < percent(0.001));
    /// assert!((*changes.end() - percent(105.0)).abs() < percent(1e-9));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn legal_changes(&self, true_speed: Velocity) -> Result<Option<RangeInclusive<Ratio>>, OutOfRange> {
        let legal = self.law.shown_at(true_speed)?;
        Ok(self.over_read.map(|e| {
            let on_original = true_speed * (1.0 + e);
            on_original / *legal.end()..=on_original / *legal.start()
        }))
    }

    /// The law it is held against.
    pub const fn law(&self) -> SpeedometerLaw {
        self.law
    }
}

/// The distance covered while the odometer counts another: the count times the change of circumference,
/// for an odometer that was right before.
///
/// ```
/// use beadseat::{tire::rolling::true_distance, units::{meters, ratio}};
/// assert_eq!(true_distance(meters(1000.0), ratio(1.01)), meters(1010.0));
/// ```
pub fn true_distance(counted: Length, change: Ratio) -> Length {
    counted * in_ratio(change)
}
