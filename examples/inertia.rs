//! What other wheels and tires do to how a vehicle speeds up: `inertia`.
//!
//! All masses and sizes here are invented. Put yours on a scale: a tire, a bare wheel, and the share of the
//! wheel that is rim, from its shell and the density of its metal.

use std::error::Error;

use beadseat::tire::TireSize;
use beadseat::units::{Length, Mass, kg, kg_per_m3, mm};
use beadseat::uom::si::mass::kilogram;
use beadseat::uom::si::moment_of_inertia::kilogram_square_meter;
use beadseat::uom::si::ratio::{percent, ratio};
use beadseat::wheel::rotation::{RollingPart, RotatingPart, acceleration_ratio};

/// A wheel with its tire, as weighed.
struct Assembly {
    name: &'static str,
    tire: &'static str,
    tire_mass: Mass,
    wheel_mass: Mass,
    /// Mean diameter, thickness and length of the rim.
    rim: [Length; 3],
}

const ASSEMBLIES: [Assembly; 2] = [
    Assembly {
        name: "6.5Jx16, cast",
        tire: "205/55R16",
        tire_mass: kg(9.1),
        wheel_mass: kg(9.4),
        rim: [mm(392.0), mm(5.5), mm(200.0)],
    },
    Assembly {
        name: "7.5Jx17, flow formed",
        tire: "225/45R17",
        tire_mass: kg(9.6),
        wheel_mass: kg(8.2),
        rim: [mm(424.0), mm(4.0), mm(225.0)],
    },
];

/// A density of aluminium alloy, kg/m³, invented like the rest: that of a real one is in its data sheet.
const ALUMINIUM: f64 = 2680.0;

impl Assembly {
    fn rolling(&self) -> Result<RollingPart, Box<dyn Error>> {
        let size: TireSize = self.tire.parse()?;
        let outer = size.overall_diameter_nominal().ok_or("diameter of the tire")? / 2.0;
        let [diameter, thickness, length] = self.rim;
        let rim = RotatingPart::shell(kg_per_m3(ALUMINIUM), thickness, diameter, length)?;
        let parts = [
            rim,
            // What is not rim is disc and spokes, from the hub to the rim.
            RotatingPart::annulus(self.wheel_mass - rim.mass(), mm(30.0), diameter / 2.0)?,
            RotatingPart::annulus(self.tire_mass, diameter / 2.0, outer)?,
        ];
        let whole = RotatingPart::sum(parts).ok_or("parts")?;
        let radius = size.rolling().ok_or("rolling circumference")?.effective_radius().nominal();
        Ok(whole.rolling_on(radius)?)
    }
}

const HELP: &str = "\
inertia

What other wheels and tires do to how a vehicle speeds up, with invented masses and sizes. It takes no arguments.
";

fn main() -> Result<(), Box<dyn Error>> {
    if std::env::args().skip(1).any(|argument| argument == "--help") {
        print!("{HELP}");
        return Ok(());
    }
    println!("Invented wheels and tires on an invented car of 1420 kg.\n");
    println!("{:<22} {:>8} {:>10} {:>10} {:>8}", "", "mass kg", "I kg·m²", "felt as kg", "factor");
    let mut each = Vec::new();
    for assembly in &ASSEMBLIES {
        let rolling = assembly.rolling()?;
        println!(
            "{:<22} {:>8.2} {:>10.3} {:>10.2} {:>8.3}",
            assembly.name,
            rolling.part().mass().get::<kilogram>(),
            rolling.part().inertia().get::<kilogram_square_meter>(),
            rolling.effective_mass().get::<kilogram>(),
            rolling.mass_factor().get::<ratio>(),
        );
        each.push(rolling);
    }
    let [old, new] = each[..] else { return Err("two assemblies".into()) };
    let change = acceleration_ratio(kg(1420.0), &[(old, new); 4])?.get::<percent>() - 100.0;
    println!("\nAll four exchanged: {change:+.2} % acceleration on the same pull at the tread.");
    println!(
        "Gearing by the tire's diameter comes on top; so does the strength that a lighter wheel must prove."
    );
    Ok(())
}
