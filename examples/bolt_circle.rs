//! From a caliper to a bolt circle, with invented readings: what was measured, what it can be, what it must
//! not be taken for, and where its holes are.
//!
//! ```sh
//! cargo run --release --all-features --example bolt_circle
//! ```

use beadseat::Toleranced;
use beadseat::units::{deg, mm};
use beadseat::uom::si::length::millimeter;
use beadseat::wheel::{
    BoltCircle,
    drilling::{FiveHoleRule, Identified, MeasuredCircle, NearMiss},
};

const HELP: &str = "\
bolt_circle

From a caliper to a bolt circle, with invented readings: what was measured, what it can be, what it must not be
taken for, and where its holes are. It takes no arguments.
";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    if std::env::args().skip(1).any(|argument| argument == "--help") {
        print!("{HELP}");
        return Ok(());
    }
    let read = |value: f64, off: f64| Toleranced::within(mm(value), mm(off));
    println!("Invented readings of a wheel with five holes of 14.5 mm.\n");

    // Over the outer edges of two neighbours, with a tape and with a caliper.
    for (tool, over, off) in [("tape", 81.0, 1.0), ("caliper", 80.35, 0.1)] {
        let circle = MeasuredCircle::over_outer_edges(5, 1, read(over, off), read(14.5, 0.1))?;
        let found = Identified::from(circle);
        let names: Vec<_> = found.compatible().map(|c| c.circle().to_string()).collect();
        println!(
            "{tool:<8} {over} ± {off} mm over two neighbours: {:.2} ± {:.2} mm, so {}",
            circle.diameter().get::<millimeter>(),
            circle.max_uncertainty().get::<millimeter>(),
            names.join(" or "),
        );
    }

    let holes: BoltCircle = "5x112".parse()?;
    if let Some(rule) = FiveHoleRule::on(&holes, mm(14.5)) {
        println!(
            "shop rule of five holes: reads {:.2} mm, {:.2} mm too much",
            rule.reading().get::<millimeter>(),
            rule.error().get::<millimeter>(),
        );
    }
    println!("\nnot to be mistaken for");
    for near in holes.near_misses() {
        if let Some(miss) = NearMiss::of(holes, near) {
            println!(
                "{near:<9} every hole off by {:.3} mm, the worst by {:.3} mm with one seated",
                miss.centred().get::<millimeter>(),
                miss.worst_hole().get::<millimeter>(),
            );
        }
    }
    println!("\nholes of {holes}, from the middle, the first one up");
    for (n, hole) in holes.centres(deg(90.0)).enumerate() {
        println!(
            "{}  x {:>9.4}  y {:>9.4}",
            n + 1,
            hole.x().get::<millimeter>(),
            hole.y().get::<millimeter>()
        );
    }
    Ok(())
}
