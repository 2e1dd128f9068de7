//! How the facts of a setup on its axle come about, told step by step for whoever wants to work them out again.

use super::check::Check;
use super::facts::{AxleFacts, Law, SetupFacts, load_speed};
use super::limits::Limit;
use super::setup::Setup;
use super::value::{Bound, Value};
use crate::step::{End, Teller};
use crate::tire::Structure;
use crate::tire::inflation::tell_camber_load_factor;
use crate::units::{Length, Pressure, in_deg, in_kg, in_kmh, in_kpa, in_mm, mm};
use crate::wheel::{Backspacing, WheelSize};
use crate::{Citation, Toleranced};

/// Which of two setups it is.
pub(super) const ORIGINAL: &str = "original";
pub(super) const PROPOSED: &str = "proposed";

/// A reading that is put in, or a designation, which is no number.
pub(super) fn value(
    tell: &mut Teller<'_>,
    name: core::fmt::Arguments<'_>,
    value: Value,
    source: impl Into<Option<Citation>>,
) -> Option<f64> {
    match value.number() {
        Some(number) => Some(tell.given(name, number, value.unit(), source)),
        None => {
            tell.words(name, format_args!("{value}"), source);
            None
        }
    }
}

/// A limit of length by whose word it is.
pub(super) fn limit(tell: &mut Teller<'_>, name: &str, limit: Limit<Length>) -> f64 {
    tell.given(format_args!("{name}"), in_mm(limit.value()), "mm", limit.citation())
}

/// What a finding is held against and what was measured, where both are put in as they are.
pub(super) fn as_given(
    check: &Check,
    [held, measured]: [(&str, Option<Citation>); 2],
    tell: &mut Teller<'_>,
) -> Option<()> {
    match check.limit()? {
        Bound::AtMost(bound) | Bound::AtLeast(bound) | Bound::Equals(bound) => {
            value(tell, format_args!("{}", held.0), bound, held.1);
        }
        Bound::Between(least, most) => {
            value(tell, format_args!("least {}", held.0), least, held.1);
            value(tell, format_args!("greatest {}", held.0), most, held.1);
        }
    }
    value(tell, format_args!("{}", measured.0), check.measured()?, measured.1);
    Some(())
}

/// The same of what is stamped on either side.
pub(super) fn as_stamped(check: &Check, [held, measured]: [&str; 2], tell: &mut Teller<'_>) -> Option<()> {
    let stamped = Some(Citation::DESIGNATION);
    as_given(check, [(held, stamped), (measured, stamped)], tell)
}

/// Whether the finding measured a number.
pub(super) fn is_measured(check: &Check, number: f64) -> bool {
    check.measured().and_then(Value::number).is_some_and(|measured| is_same(measured, number))
}

/// Whether two numbers are the same but for the last bits of arithmetic.
pub(super) fn is_same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * b.abs().max(1.0)
}

/// One end of the overall diameter, of a snow tire the larger one.
pub(super) fn diameter(
    setup: &SetupFacts<'_>,
    whose: &str,
    end: End,
    is_largest: bool,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let size = setup.tire().size();
    let new = size.tell_overall_diameter(whose, end, tell)?;
    if !(is_largest && setup.is_snow() && end == End::Most) {
        return Some(new);
    }
    let snow = in_mm(size.overall_diameter_snow()?.max());
    let name = format_args!("largest overall diameter of a snow tire");
    Some(tell.worked(name, ("{0} × 1.01", &[new]), snow, "mm", Citation::OVERALL_DIAMETER))
}

/// Half of the same.
pub(super) fn radius(
    setup: &SetupFacts<'_>,
    whose: &str,
    end: End,
    is_largest: bool,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let diameter = diameter(setup, whose, end, is_largest, tell)?;
    Some(half(tell, diameter, format_args!("{}radius of the {whose} tire", end.word())))
}

/// One end of the way of a turn.
pub(super) fn circumference(
    setup: &SetupFacts<'_>,
    whose: &str,
    end: End,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let span = setup.circumference()?;
    let diameter = setup.tire().size().tell_overall_diameter(whose, end, tell)?;
    let form = match setup.tire().size().structure() {
        Structure::Radial => "3.05 × {0}",
        Structure::Diagonal | Structure::BiasBelted => "2.99 × {0}",
    };
    let name = format_args!("{}way of one turn of the {whose} tire", end.word());
    let turn = in_mm(end.of(span));
    Some(tell.worked(name, (form, &[diameter]), turn, "mm", Citation::ROLLING_CIRCUMFERENCE))
}

/// One end of half the width of a tire on its rim.
pub(super) fn half_tire(setup: &SetupFacts<'_>, whose: &str, end: End, tell: &mut Teller<'_>) -> Option<f64> {
    let width = setup.tire().size().tell_section_width_on(setup.wheel().size().width(), end, tell)?;
    Some(half(tell, width, format_args!("half of the {}width of the {whose} tire", end.word())))
}

/// Half of a length.
pub(super) fn half(tell: &mut Teller<'_>, whole: f64, name: core::fmt::Arguments<'_>) -> f64 {
    tell.worked(name, ("{0} / 2", &[whole]), whole / 2.0, "mm", None)
}

/// One end of half the width of a rim over its flanges.
pub(super) fn half_rim(setup: &SetupFacts<'_>, whose: &str, end: End, tell: &mut Teller<'_>) -> f64 {
    let size = setup.wheel().size();
    let width = size.width().tell_length(tell);
    let flange = in_mm(end.of(size.flange_width()));
    match end {
        End::Least => tell.given(format_args!("least width of a flange"), flange, "mm", Citation::FLANGE),
        _ => {
            let name = format_args!("{}width of a flange by shop habit, no source", end.word());
            tell.given(name, flange, "mm", None)
        }
    };
    let name = format_args!("half of the {}width of the {whose} rim over its flanges", end.word());
    tell.worked(name, ("{0} / 2 + {1}", &[width, flange]), in_mm(end.of(setup.half_rim)), "mm", None)
}

/// The inset of a wheel, where it is told or follows from its backspacing.
pub(super) fn inset(setup: &SetupFacts<'_>, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
    let wheel = setup.wheel();
    let inset = in_mm(wheel.inset_or_assumed()?.length());
    let name = format_args!("inset of the {whose} wheel");
    Some(match wheel.backspacing() {
        None => tell.given(name, inset, "mm", Citation::DESIGNATION),
        Some(told) => {
            let half = half_rim(setup, whose, End::Nominal, tell);
            let told = backspacing(told, whose, tell);
            tell.worked(name, ("{0} − {1}", &[told, half]), inset, "mm", None)
        }
    })
}

/// The backspacing of a wheel that states it.
pub(super) fn backspacing(told: Backspacing, whose: &str, tell: &mut Teller<'_>) -> f64 {
    let name = format_args!("backspacing of the {whose} wheel");
    tell.given(name, in_mm(told.length()), "mm", Citation::DESIGNATION)
}

/// The middle of the outermost rim, or of the innermost one, outboard of the hub face.
pub(super) fn centre(
    on: &AxleFacts<'_>,
    setup: &SetupFacts<'_>,
    whose: &str,
    is_outer: bool,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let centres = setup.centres?;
    let inset = inset(setup, whose, tell)?;
    let is_inner_of_pair = on.is_dual && !is_outer;
    let spacing = if is_inner_of_pair { 0.0 } else { spacing(setup, whose, tell) };
    let (form, what) = match (on.is_dual, is_outer) {
        (false, _) => ("{1} − {0}", "rim"),
        (true, true) => ("{1} + {0}", "outer rim"),
        (true, false) => ("0 − {0}", "inner rim"),
    };
    let middle = in_mm(if is_outer { centres.outer } else { centres.inner });
    let name = format_args!("middle of the {whose} {what}, outboard of the hub face");
    let numbers = &[inset, spacing][..if is_inner_of_pair { 1 } else { 2 }];
    Some(tell.worked(name, (form, numbers), middle, "mm", None))
}

/// What stands between hub and wheel.
pub(super) fn spacing(setup: &Setup, whose: &str, tell: &mut Teller<'_>) -> f64 {
    let name = format_args!("spacer and adaptor under the {whose} wheel");
    tell.given(name, in_mm(setup.hub_spacing()), "mm", None)
}

/// The middle of what stands there, of a pair between its wheels.
pub(super) fn middle(
    on: &AxleFacts<'_>,
    setup: &SetupFacts<'_>,
    whose: &str,
    tell: &mut Teller<'_>,
) -> Option<f64> {
    let outer = centre(on, setup, whose, true, tell)?;
    if !on.is_dual {
        return Some(outer);
    }
    let inner = centre(on, setup, whose, false, tell)?;
    let name = format_args!("middle of the {whose} pair");
    Some(tell.worked(name, ("({0} + {1}) / 2", &[outer, inner]), (outer + inner) / 2.0, "mm", None))
}

/// The bead seat of a rim, one end of its radius.
pub(super) fn seat(size: &WheelSize, end: End, tell: &mut Teller<'_>) -> f64 {
    let diameter = size.diameter();
    let (span, source) = match diameter.specified() {
        Some(span) => (span, Citation::RIM_SPECIFIED),
        None => (Toleranced::exact(diameter.nominal()), Citation::DESIGNATION),
    };
    let seat = in_mm(end.of(span));
    tell.given(
        format_args!("{}diameter of the bead seat of code {diameter}", end.word()),
        seat,
        "mm",
        source,
    );
    half(tell, seat, format_args!("{}radius of the bead seat", end.word()))
}

/// The greatest load of the axle group.
pub(super) fn greatest_load(on: &AxleFacts<'_>, tell: &mut Teller<'_>) -> Option<f64> {
    let (load, _) = on.greatest_load.ok()?;
    Some(tell.given(format_args!("greatest load of the axle group"), in_kg(load), "kg", None))
}

/// The normal load of the axle group.
pub(super) fn normal_load(on: &AxleFacts<'_>, tell: &mut Teller<'_>) -> Option<f64> {
    let load = in_kg(on.axle.normal_load()?);
    Some(tell.given(format_args!("normal load of the axle group"), load, "kg", None))
}

/// How many wheels carry a load of the axle group.
pub(super) fn wheels(on: &AxleFacts<'_>, tell: &mut Teller<'_>) -> f64 {
    tell.given(format_args!("wheels that carry it"), on.wheels, "", None)
}

/// What one tire carries of a load of the axle group.
pub(super) fn share(on: &AxleFacts<'_>, setup: &SetupFacts<'_>, load: f64, tell: &mut Teller<'_>) -> f64 {
    let wheels = wheels(on, tell);
    let share = in_kg(setup.share(on, crate::units::kg(load)));
    let name = format_args!("share of one tire");
    if on.is_dual && setup.is_passenger {
        let form = ("{0} / {1} × 4 × 0.27", &[load, wheels][..]);
        return tell.worked(name, form, share, "kg", Citation::DUAL_PASSENGER);
    }
    tell.worked(name, ("{0} / {1}", &[load, wheels]), share, "kg", Citation::AXLE_SHARE)
}

/// The factor on a load index that does not depend on speed.
pub(super) fn factor(on: &AxleFacts<'_>, setup: &SetupFacts<'_>, tell: &mut Teller<'_>) -> f64 {
    let factor = setup.factors.capacity;
    let mut so_far = 1.0;
    let camber = in_deg(on.axle.camber().unwrap_or_default()).abs().min(4.0);
    if setup.is_passenger && camber > 2.0 {
        tell.given(format_args!("camber, no more than the rule goes"), camber, "deg", None);
        so_far = tell_camber_load_factor(camber, tell).unwrap_or(so_far);
    }
    if setup.elsewhere.is_some_and(|elsewhere| elsewhere > 1.0) {
        let source = Citation::PASSENGER_TIRE_ON_TRUCK;
        if is_same(so_far, 1.0) {
            so_far = tell.given(format_args!("load of a passenger tire, before"), 1.0, "", source);
        }
        let name = format_args!("share of the load of a passenger tire on such a vehicle");
        so_far = tell.worked(name, ("{0} / 1.10", &[so_far]), factor, "", source);
    }
    if is_same(so_far, 1.0) {
        tell.given(format_args!("share of the load index but for speed"), 1.0, "", setup.factors.citation);
    }
    so_far
}

/// The share of a load index at the speed that is asked, in percent; the whole where none is known.
pub(super) fn speed_share(on: &AxleFacts<'_>, setup: &SetupFacts<'_>, tell: &mut Teller<'_>) -> f64 {
    let known = load_speed(on, setup).map(in_kmh).and_then(|kmh| {
        tell.given(format_args!("speed at which the load is asked"), kmh, "km/h", None);
        setup.tire().tell_load_at_speed(kmh, tell)
    });
    known.unwrap_or_else(|| {
        let name = format_args!("share of the load index, at best");
        tell.given(name, 100.0, "%", setup.at_speed.load_citation)
    })
}

/// What a tire carries at a pressure on its vehicle.
pub(super) fn capacity(law: &Law, pressure: Pressure, whose: &str, tell: &mut Teller<'_>) -> Option<f64> {
    let load = law.tell_load_at(pressure, whose, tell)?;
    let (capacity, _) = law.capacity(pressure);
    if is_same(in_kg(capacity), load) {
        return Some(load);
    }
    let name = format_args!("load of a passenger tire on such a vehicle");
    let source = Citation::PASSENGER_TIRE_ON_TRUCK;
    Some(tell.worked(name, ("{0} / 1.10", &[load]), in_kg(capacity), "kg", source))
}

/// A pressure that is put in.
pub(super) fn pressure(
    tell: &mut Teller<'_>,
    name: &str,
    pressure: Pressure,
    source: Option<Citation>,
) -> f64 {
    tell.given(format_args!("{name}"), in_kpa(pressure), "kPa", source)
}

/// A length that is put in as it was measured.
pub(super) fn measured(tell: &mut Teller<'_>, name: &str, length: Length) -> f64 {
    tell.given(format_args!("{name}"), in_mm(length), "mm", None)
}

/// Nothing left, as a limit.
pub(super) fn nothing(tell: &mut Teller<'_>, source: Citation) -> f64 {
    tell.given(format_args!("least that must be left"), in_mm(mm(0.0)), "mm", source)
}
