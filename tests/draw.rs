//! Drawings: a golden sheet, hostile names, hostile scenes.
#![cfg(feature = "svg")]
#![allow(clippy::unwrap_used, reason = "helpers of tests")]

use std::path::Path;

use beadseat::draw::Scene;
use beadseat::fitment::UnitSystem;
use beadseat::sweep::{
    Carrier, ContactPatch, Corner, Effort, Obstacle, Obstacles, Point, Profile, RimSection, SteeringAxis,
    Swept, TireSection,
};
use beadseat::units::{deg, mm};
use beadseat::uom::si::{angle::degree, length::millimeter};

fn point(x: f64, y: f64, z: f64) -> Point {
    Point::new(mm(x), mm(y), mm(z)).unwrap()
}

fn profile(inset: f64, half_rim: f64, half_width: f64, radius: f64) -> Profile {
    let rim = RimSection::new(mm(-inset), mm(half_rim), mm(220.0), mm(185.0)).unwrap();
    Profile::new(rim, TireSection::new(mm(half_width), mm(radius)).unwrap()).unwrap()
}

fn corner() -> Corner {
    let patch = ContactPatch::under(mm(-46.0), mm(292.0), deg(-0.5)).unwrap();
    let axis = SteeringAxis::from_ground(patch, deg(13.5), deg(7.0), mm(-8.0), mm(22.0)).unwrap();
    let corner = Corner::new().with_camber(deg(-0.5)).unwrap();
    corner
        .steered(axis, deg(38.0), deg(32.0))
        .and_then(|corner| corner.travelling(mm(60.0), mm(70.0)))
        .unwrap()
}

/// One of each kind of shape and carrier.
fn around() -> Obstacles {
    let (pivot, end) = (point(0.0, -430.0, -90.0), point(0.0, -80.0, -120.0));
    let arm = Carrier::Arm { pivot, end };
    let strut = Obstacle::capped_cylinder(point(-5.0, -192.0, 70.0), point(-20.0, -235.0, 430.0), mm(26.0));
    let seat = Obstacle::disc(point(-14.0, -212.0, 352.0), point(-20.0, -235.0, 430.0), mm(68.0));
    let lip =
        Obstacle::arch_lip(point(390.0, 84.0, 40.0), point(0.0, 72.0, 425.0), point(-380.0, 84.0, 60.0));
    let wing = [(mm(275.0), mm(-272.0)), (mm(355.0), mm(-250.0)), (mm(440.0), mm(-150.0))];
    let member = Obstacle::segment(point(380.0, -362.0, 40.0), point(-380.0, -362.0, 60.0));
    let bolt = Obstacle::point(point(300.0, -140.0, 262.0)).with_radius(mm(8.0));
    let mut around = Obstacles::new();
    for obstacle in [
        strut.unwrap().carried_by(Carrier::Knuckle),
        seat.unwrap().carried_by(Carrier::Knuckle),
        lip.unwrap().carried_by(Carrier::Body),
        Obstacle::measured(mm(0.0), &wing),
        member.with_radius(mm(20.0)).unwrap().carried_by(Carrier::Body),
        bolt.unwrap().carried_by(Carrier::Unsprung),
        Obstacle::point(point(20.0, -260.0, -80.0)).carried_by(arm),
    ] {
        around.push(obstacle.unwrap().with_uncertainty(mm(2.0)).unwrap()).unwrap();
    }
    around
}

const LABELS: [&str; 7] = [
    "strut tube",
    "spring seat",
    "arch lip",
    "inner wing above the hub",
    "chassis member",
    "bolt of the wing liner",
    "lower arm",
];

fn swept(corner: &Corner, profile: &Profile, around: &Obstacles) -> Swept {
    corner.clearance(profile, around, Effort::default()).unwrap().unwrap()
}

/// Run with `BLESS=1` to write the golden drawing anew, and look at it.
#[test]
fn the_sheet_is_as_it_was() {
    let (corner, around) = (corner(), around());
    let (before, after) = (profile(46.0, 94.0, 107.0, 316.0), profile(40.0, 107.0, 116.5, 322.0));
    let swept = swept(&corner, &after, &around);
    let scene = Scene::new(&corner, &after, &around)
        .with_before(&before)
        .with_labels(&LABELS)
        .with_swept(&swept)
        .with_heading("within: 233 mm wide on 7.5J, and all of it clears");
    let sheet = scene.sheet().to_string() + "\n";
    assert_eq!(sheet, scene.sheet().to_string() + "\n");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/draw.svg");
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(&path, &sheet).unwrap();
    }
    assert!(sheet == std::fs::read_to_string(&path).unwrap(), "draw.svg changed; BLESS=1 rewrites it");
}

#[test]
fn every_obstacle_is_named_and_measured_in_both_views() {
    let (corner, around) = (corner(), around());
    let (before, after) = (profile(46.0, 94.0, 107.0, 316.0), profile(40.0, 107.0, 116.5, 322.0));
    let swept = swept(&corner, &after, &around);
    let scene = Scene::new(&corner, &after, &around).with_before(&before).with_swept(&swept);
    let labelled = scene.with_labels(&LABELS);
    let (front, plan) = (labelled.front_view().to_string(), labelled.plan_view_at_lock().to_string());
    for view in [&front, &plan] {
        for (number, label) in LABELS.iter().enumerate() {
            let first = label.split(' ').next().unwrap();
            assert!(view.contains(&format!("{} {first}", number + 1)), "{label}");
        }
        let rounded = (swept.upper().get::<millimeter>() * 100.0).round() / 100.0;
        assert!(view.contains(&format!(">{rounded} mm<")), "{rounded}");
        assert!(!view.contains("at worst"));
    }
    for figure in ["inset 40 (was 46)", "Ø644 (was 632)", ">width 233 (was 214)<"] {
        assert!(front.contains(figure), "{figure}");
    }
    assert!(swept.steer().abs() > deg(20.0));
    assert!(plan.contains(&format!(">steer {:.0}°<", swept.steer().abs().get::<degree>())));
    // One gap has one figure: where the worst case is told, the drawn distance is not.
    let told = labelled.with_least_clearance(mm(16.284));
    for view in [told.front_view().to_string(), told.plan_view_at_lock().to_string()] {
        assert!(view.contains(">16.28 mm at worst,<") && view.contains(">drawn at nominal size<"), "{view}");
        assert!(!view.contains(&format!(">{:.2}", swept.upper().get::<millimeter>())));
    }
    assert!(told.front_view().to_string().contains(">16.28<"));
    // In inches, and in both.
    let us = told.in_units(UnitSystem::Us).sheet().to_string();
    for figure in ["inset 1.575 (was 1.811)", ">0.641 in at worst,<", ">0.641<", "Lengths in inches."] {
        assert!(us.contains(figure), "{figure}");
    }
    assert!(!us.contains("millimetres") && !us.contains(" mm in "));
    let both = told.in_units(UnitSystem::Both).sheet().to_string();
    for figure in ["inset 40 [1.575] (was 46 [1.811])", ">16.28 [0.641]<", "Lengths in mm [inches]."] {
        assert!(both.contains(figure), "{figure}");
    }
    // Without names they have numbers, and without a wheel before nothing is said of it.
    let bare = Scene::new(&corner, &after, &around).sheet().to_string();
    for number in 1..=7 {
        assert_eq!(bare.matches(&format!("{number} obstacle")).count(), 2);
    }
    assert!(!bare.contains("(was") && !bare.contains("least clearance"));
}

#[test]
fn an_outset_is_called_so_and_a_wheel_that_does_not_steer_has_no_angle() {
    let after = profile(-12.0, 94.0, 107.0, 316.0);
    let (corner, around) = (Corner::new(), Obstacles::new());
    let sheet = Scene::new(&corner, &after, &around).sheet().to_string();
    assert!(sheet.contains("outset 12<"));
    assert!(sheet.contains("straight ahead, at ride height"));
    assert!(!sheet.contains("steering axis,") && !sheet.contains(">steer "));
}

/// Texts of the drawing's elements, as they stand in the file.
fn texts(sheet: &str) -> impl Iterator<Item = &str> {
    sheet.lines().filter(|line| line.starts_with("<text") || line.starts_with("<title"))
}

#[test]
fn names_are_text_whatever_they_are() {
    let hostile = [
        "<script>alert(1)</script>",
        "]]>&amp;<!--",
        "\u{0}\u{1b}[2J\u{7f}\u{fffe}",
        "a\u{202e}b\u{2066}c",
        "\"/><g onload='x'",
        &"Ж".repeat(10_000),
        " \n\t ",
    ];
    let (corner, around) = (corner(), around());
    let after = profile(40.0, 107.0, 116.5, 322.0);
    let heading = hostile.join(" ");
    for heading in [heading.as_str(), hostile[0], "\u{feff}"] {
        let scene = Scene::new(&corner, &after, &around).with_labels(&hostile).with_heading(heading);
        for sheet in [scene.sheet(), scene.front_view(), scene.plan_view_at_lock()] {
            let sheet = sheet.to_string();
            for wrong in ["<script", "<g ", "<!--", "]]>"] {
                assert!(!sheet.contains(wrong), "{wrong}");
            }
            assert!(
                !sheet.chars().any(|c| (c.is_control() && c != '\n') || c == '\u{202e}' || c == '\u{fffe}')
            );
            // A tag is all of its line's markup: whatever else was said is escaped.
            for line in texts(&sheet) {
                assert_eq!((line.matches('<').count(), line.matches('>').count()), (2, 2), "{line}");
            }
            assert!(sheet.contains("&lt;script&gt;"));
            // By its number alone where names are too long for what is not in the plane.
            assert!(sheet.contains(">7 obstacle<") || sheet.contains(", 7<"));
            assert!(sheet.len() < 120_000);
        }
    }
}

#[test]
fn more_names_than_obstacles_are_not_drawn() {
    let (corner, after) = (corner(), profile(40.0, 107.0, 116.5, 322.0));
    let mut around = Obstacles::new();
    around.push(Obstacle::point(point(0.0, 0.0, 400.0))).unwrap();
    let sheet = Scene::new(&corner, &after, &around).with_labels(&["one", "two"]).sheet().to_string();
    assert!(sheet.contains(">1 one<") && !sheet.contains("two"));
}

#[test]
fn a_deep_overlap_keeps_within_its_column() {
    let (corner, after) = (Corner::new(), profile(40.0, 140.0, 160.0, 440.0));
    let mut around = Obstacles::new();
    around.push(Obstacle::point(point(0.0, -40.0, 330.0)).with_radius(mm(60.0)).unwrap()).unwrap();
    let swept = swept(&corner, &after, &around);
    assert!(swept.upper() < mm(-100.0));
    let sheet = Scene::new(&corner, &after, &around).with_swept(&swept).sheet().to_string();
    let columns = texts(&sheet).filter(|line| line.contains("x=\"157\"") || line.contains("x=\"53\""));
    let mut figures = 0;
    for line in columns {
        let text = line.split(['<', '>']).nth(2).unwrap();
        assert!(text.chars().count() <= 24, "{text}");
        figures += usize::from(text.starts_with('−'));
    }
    assert_eq!(figures, 2);
}
