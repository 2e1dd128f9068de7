//! How hard a wheel is held: `clamp_load`.
//!
//! A 15 mm disc on a five-bolt hub gets a 5 mm spacer, and its maker states a torque. Follows the torque
//! to the preload of a bolt, from there to its strength, the slip of the wheel on the hub and the thread
//! that is left. All the data are invented; for a real wheel the maker's figures rule.

use std::error::Error;

use beadseat::units::{Force, kg, mm, nm, ratio};
use beadseat::uom::si::{
    force::kilonewton, length::millimeter, pressure::megapascal, ratio::percent, ratio::ratio as ratios,
    torque::newton_meter,
};
use beadseat::wheel::{
    BoltCircle, PropertyClass, Seat, Thread,
    tightening::{
        Engagement, Friction, FrictionJoint, SeatContact, Tightening, TighteningOrder, TorqueBand,
        tire_torque, torque_stages,
    },
};
use beadseat::{Toleranced, literal};

const HELP: &str = "\
clamp_load

How hard a wheel is held, with invented data: from a stated torque to the preload of a bolt, its strength, the slip
of the wheel on the hub and the thread that is left. It takes no arguments.
";

fn main() -> Result<(), Box<dyn Error>> {
    if std::env::args().skip(1).any(|argument| argument == "--help") {
        print!("{HELP}");
        return Ok(());
    }
    let holes = literal!(BoltCircle, "5x112");
    let thread = literal!(Thread, "M14x1.5");
    let class = PropertyClass::C10_9;
    // What a wrench gives when it is set to 140 N·m.
    let torque = Toleranced::within(nm(140.0), nm(6.0));
    println!("{holes}, {thread} bolts of class {class}, {} N·m", shown(torque, |t| t.get::<newton_meter>()));
    match TorqueBand::of(thread) {
        Some(band) if band.holds(torque.nominal()) => println!("  a usual torque for the thread"),
        Some(_) => println!("  not a usual torque for the thread: look again"),
        None => println!("  no habit is known for the thread"),
    }

    // Clean and dry; friction scatters, so the preload does.
    let mu = Toleranced::new(ratio(0.10), ratio(0.14), ratio(0.18)).ok_or("not in order")?;
    let cone = SeatContact::ring(Seat::Cone60, mm(15.0), mm(24.0))?;
    let bolt = Tightening::new(thread, cone, Friction::new(mu, mu)?);
    let preload = bolt.preload(torque)?;
    println!("\npreload        {} kN", shown(preload, kilonewtons));
    println!("nut factor     {}", shown(bolt.nut_factor(), |k| k.get::<ratios>()));

    let proof = class.proof_load(thread).ok_or("the class is not made in this thread")?;
    let stress = class.yield_stress(thread).ok_or("the class is not made in this thread")?;
    println!("of proof load  {} %", shown(bolt.share_of(proof, torque)?, |s| s.get::<percent>()));
    println!("while turning  {} MPa", shown(bolt.combined_stress(torque)?, |s| s.get::<megapascal>()));
    println!("yields at      {} kN", shown(bolt.clamp_at_yield(stress)?, kilonewtons));

    // The wheel carries 530 kg at a loaded radius of 300 mm; grip 1 is that of dry asphalt.
    let joint = FrictionJoint::new(holes, preload, Toleranced::within(ratio(0.15), ratio(0.03)))?;
    let asked = tire_torque(kg(530.0), ratio(1.0), mm(300.0))?;
    println!("\nslips at       {} N·m", shown(joint.slip_torque(), |t| t.get::<newton_meter>()));
    println!("over the tire  {}", shown(joint.safety_against(asked)?, |s| s.get::<ratios>()));
    println!("               below 1 the wheel may slip on the hub before its tire does on the road");

    let measured = |length| Toleranced::within(mm(length), mm(0.3));
    let (usable, disc, none) = (measured(27.0), measured(15.0), Toleranced::exact(mm(0.0)));
    let before = Engagement::new(thread, usable, disc, none)?;
    let after = Engagement::new(thread, usable, disc, measured(5.0))?;
    println!("\nturns without  {}", shown(before.turns(), |t| t.get::<ratios>()));
    println!("turns with     {}", shown(after.turns(), |t| t.get::<ratios>()));
    if let Some(least) = thread.min_turns() {
        println!("least          {:>6.2}, by a trade chart", least.get::<ratios>());
    }
    let longer = before.usable_length_to_keep(disc, measured(5.0))?;
    println!("bolt to keep   {} mm", shown(longer, |l| l.get::<millimeter>()));

    print!("\norder          ");
    TighteningOrder::of(holes).holes().for_each(|hole| print!("{hole} "));
    print!("\nin rounds of   ");
    torque_stages(torque.nominal()).iter().for_each(|stage| print!("{:.0} ", stage.get::<newton_meter>()));
    println!("N·m; again after 50 to 100 km");
    Ok(())
}

fn kilonewtons(force: Force) -> f64 {
    force.get::<kilonewton>()
}

/// Nominal value, then what it may be.
fn shown<Q: Copy + PartialOrd>(value: Toleranced<Q>, read: impl Fn(Q) -> f64) -> String {
    format!("{:>6.2} ({:.2} to {:.2})", read(value.nominal()), read(value.min()), read(value.max()))
}
