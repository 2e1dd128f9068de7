//! A drawing of a front wheel among what surrounds it, before and after a change: `draw [FILE]`.
//!
//! Writes the sheet to a file, or to the standard output. The vehicle and all of its measurements are
//! invented.

use std::error::Error;

use beadseat::draw::Scene;
use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Profile, RimSection, SteeringAxis,
    TireSection,
};
use beadseat::units::{deg, mm};
use beadseat::uom::si::length::millimeter;

const LABELS: [&str; 7] = [
    "strut tube",
    "spring seat",
    "chassis member",
    "arch lip",
    "tie rod",
    "inner wing above the hub",
    "bolt of the wing liner",
];

fn point(forward: f64, outboard: f64, up: f64) -> Result<Point, Box<dyn Error>> {
    Ok(Point::new(mm(forward), mm(outboard), mm(up))?)
}

fn surroundings() -> Result<Obstacles, Box<dyn Error>> {
    let strut =
        Obstacle::capped_cylinder(point(-5.0, -172.0, 70.0)?, point(-20.0, -215.0, 430.0)?, mm(26.0))?;
    let seat = Obstacle::disc(point(-14.0, -192.0, 352.0)?, point(-20.0, -215.0, 430.0)?, mm(68.0))?;
    let member = Obstacle::segment(point(380.0, -362.0, 40.0)?, point(-380.0, -362.0, 60.0)?);
    let lip =
        Obstacle::arch_lip(point(390.0, 84.0, 40.0)?, point(0.0, 72.0, 425.0)?, point(-380.0, 84.0, 60.0)?)?;
    let rod = Obstacle::capped_cylinder(point(-80.0, -112.0, -60.0)?, point(-70.0, -400.0, -50.0)?, mm(9.0))?;
    let wing = Obstacle::measured(
        mm(0.0),
        &[(mm(250.0), mm(-272.0)), (mm(360.0), mm(-250.0)), (mm(425.0), mm(-150.0)), (mm(440.0), mm(-20.0))],
    )?;
    let bolt = Obstacle::point(point(310.0, -140.0, 262.0)?);
    let mut around = Obstacles::new();
    around.push(strut.with_uncertainty(mm(2.0))?.carried_by(Carrier::Knuckle)?)?;
    around.push(seat.with_radius(mm(3.0))?.carried_by(Carrier::Knuckle)?)?;
    around.push(member.with_radius(mm(20.0))?.with_uncertainty(mm(5.0))?)?;
    around.push(lip.with_uncertainty(mm(3.0))?)?;
    around.push(rod.carried_by(Carrier::Travels)?)?;
    around.push(wing.with_uncertainty(mm(4.0))?)?;
    around.push(bolt.with_radius(mm(8.0))?.with_uncertainty(mm(2.0))?)?;
    Ok(around)
}

fn main() -> Result<(), Box<dyn Error>> {
    // A 205/55R16 on a 6.5J rim of inset 46, and a 225/50R17 on a 7.5J rim of inset 40.
    let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    let before = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    let rim = RimSection::new(mm(-40.0), mm(107.0), mm(233.0), mm(198.0))?;
    let after = Profile::new(rim, TireSection::new(mm(116.5), mm(328.5))?)?;

    let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(-0.5))?;
    let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0))?;
    let corner = Corner::new()
        .with_camber(deg(-0.5))?
        .with_camber_change(deg(-1.2), mm(80.0))?
        .steered(axis, deg(39.0), deg(33.0))?
        .travelling(mm(60.0), mm(80.0))?;

    let around = surroundings()?;
    let swept = corner.clearance(&after, &around, Effort::default())?.ok_or("no obstacle")?;
    let heading = format!(
        "Invented vehicle: the {} is nearest, at {:.1} mm",
        LABELS[swept.obstacle()],
        swept.upper().get::<millimeter>(),
    );
    let scene = Scene::new(&corner, &after, &around)
        .with_before(&before)
        .with_labels(&LABELS)
        .with_swept(&swept)
        .with_heading(&heading);
    match std::env::args().nth(1) {
        Some(file) => std::fs::write(file, scene.sheet().to_string())?,
        None => println!("{}", scene.sheet()),
    }
    Ok(())
}
