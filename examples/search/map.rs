//! A map of where one tire may stand: width of the rim against inset, for one diameter of rim.
//!
//! A bar a rim width spans the insets at which nothing is beyond; beside its ends stands what ends it. A4, black on white.

use beadseat::fitment::{CheckId, Setup};
use beadseat::rim::RimDiameter;
use beadseat::search::{Candidate, Search};
use beadseat::tire::TireSize;
use beadseat::units::in_mm;
use svg::Document;
use svg::node::element::{Circle, Group, Line, Rectangle, Text};

use crate::common::plain;

/// An interval of inset on rims of one width.
struct Bar {
    width_in: f64,
    least: (f64, Option<CheckId>),
    most: (f64, Option<CheckId>),
}

/// What is drawn.
pub(crate) struct Map {
    size: TireSize,
    code: RimDiameter,
    bars: Vec<Bar>,
    best: (f64, f64),
    original: Option<Setup>,
    name: String,
}

const SHEET: (f64, f64) = (297.0, 210.0);
/// Left, top, right and bottom of the plot.
const PLOT: [f64; 4] = [28.0, 34.0, 282.0, 172.0];
const LETTER: f64 = 3.2;

impl Map {
    /// Of the tire of the best candidate, over all rims of its code.
    pub(crate) fn of(
        search: &Search<'_>,
        best: &Candidate,
        original: Option<Setup>,
        name: &str,
    ) -> Option<Self> {
        let of =
            |candidate: &Candidate| candidate.choices().next().map(|choice| choice.setup().tire().size());
        let place =
            |setup: &Setup| Some((width_in(setup), in_mm(setup.wheel().inset_or_assumed()?.length())));
        let size = of(best)?;
        let mut bars = Vec::new();
        // The rims of one size stand beside one another in the lattice.
        let beside = search.points() / u64::from(search.sizes().max(1));
        let at = u32::try_from(best.number() / beside.max(1)).ok()?;
        for candidate in search.part(at..at + 1).filter(|candidate| of(candidate) == Some(size)) {
            let Some(choice) = candidate.choices().next() else { continue };
            let (min, max) = (choice.insets().min(), choice.insets().max());
            bars.push(Bar {
                width_in: width_in(choice.setup()),
                least: (in_mm(min.value().length()), min.check()),
                most: (in_mm(max.value().length()), max.check()),
            });
        }
        let best = place(best.choices().next()?.setup())?;
        Some(Self { size, code: size.rim_diameter(), bars, best, original, name: name.to_owned() })
    }

    /// The SVG document.
    pub(crate) fn drawing(&self) -> String {
        let original = self.original.and_then(|setup| {
            let wheel = setup.wheel();
            Some((width_in(&setup), in_mm(wheel.inset_or_assumed()?.length())))
        });
        let marks = || [Some(self.best), original].into_iter().flatten();
        // What nothing limits goes to the edge of the sheet.
        let ends = self.bars.iter().flat_map(|bar| [bar.least, bar.most]);
        let insets =
            || ends.clone().filter(|end| end.1.is_some()).map(|end| end.0).chain(marks().map(|mark| mark.1));
        let [low, high] =
            [insets().fold(f64::INFINITY, f64::min), insets().fold(f64::NEG_INFINITY, f64::max)];
        let (low, high) = ((low / 10.0).floor() * 10.0 - 20.0, (high / 10.0).ceil() * 10.0 + 20.0);
        let widths = || self.bars.iter().map(|bar| bar.width_in).chain(marks().map(|mark| mark.0));
        let (narrow, wide) =
            (widths().fold(f64::INFINITY, f64::min) - 0.5, widths().fold(f64::NEG_INFINITY, f64::max) + 0.5);
        let [left, top, right, bottom] = PLOT;
        let x = |inset: f64| left + (inset.clamp(low, high) - low) / (high - low) * (right - left);
        let y = |width: f64| bottom - (width - narrow) / (wide - narrow) * (bottom - top);
        // Rims are half inches apart, or quarters.
        let has_quarters = self.bars.iter().any(|bar| bar.width_in * 2.0 != (bar.width_in * 2.0).round());
        let apart = if has_quarters { 0.25 } else { 0.5 };
        let half = (y(0.0) - y(apart)).min(12.0) * 0.42;

        let mut sheet =
            Group::new().set("font-family", "sans-serif").set("font-size", LETTER).set("stroke-width", 0.25);
        sheet = sheet
            .add(
                letters(left, 14.0, "start", &format!("{} on rims of code {}", self.size, self.code))
                    .set("font-size", 5),
            )
            .add(letters(left, 20.5, "start", &self.name.chars().take(120).collect::<String>()))
            .add(letters(
                left,
                26.0,
                "start",
                "bars: insets at which no check is beyond; beside each end the check that ends it",
            ))
            .add(rule((left, bottom), (right, bottom)))
            .add(rule((left, bottom), (left, top)))
            .add(letters(
                (left + right) / 2.0,
                bottom + 13.0,
                "middle",
                "inset of the wheel, mm (to the left outboard)",
            ))
            .add(letters(left, top - 3.0, "middle", "rim width, in"));
        let step = if high - low > 160.0 { 20 } else { 10 };
        for inset in (low as i32..=high as i32).filter(|inset| inset % step == 0) {
            let at = x(f64::from(inset));
            sheet = sheet
                .add(rule((at, bottom), (at, top)).set("stroke", "#bbb").set("stroke-width", 0.1))
                .add(rule((at, bottom), (at, bottom + 1.5)))
                .add(letters(at, bottom + 6.0, "middle", &inset.to_string()));
        }
        for half_inches in (narrow * 2.0) as i32 + 1..=(wide * 2.0) as i32 - 1 {
            let width = f64::from(half_inches) / 2.0;
            sheet = sheet.add(rule((left - 1.5, y(width)), (left, y(width)))).add(letters(
                left - 3.0,
                y(width) + 1.1,
                "end",
                &width.to_string(),
            ));
        }
        for bar in &self.bars {
            let (from, to, middle) = (x(bar.least.0), x(bar.most.0), y(bar.width_in));
            let rectangle = Rectangle::new()
                .set("class", "feasible")
                .set("data-width-in", bar.width_in)
                .set("data-min-mm", bar.least.0)
                .set("data-max-mm", bar.most.0)
                .set("data-min-by", bar.least.1.map_or("", |check| check.name()))
                .set("data-max-by", bar.most.1.map_or("", |check| check.name()))
                .set("x", from)
                .set("y", middle - half)
                .set("width", to - from)
                .set("height", 2.0 * half)
                .set("fill", "#ddd")
                .set("stroke", "#000");
            sheet = sheet.add(rectangle);
            for (at, (_, check), anchor, away) in
                [(from, bar.least, "end", -1.5), (to, bar.most, "start", 1.5)]
            {
                let text = check.map_or("nothing known".into(), |check| plain(check.name()));
                // Inside, where there is no room beside it.
                let is_out = (left + 25.0..right - 25.0).contains(&at);
                let (anchor, away) = match (is_out, anchor) {
                    (true, _) => (anchor, away),
                    (false, "end") => ("start", 1.5),
                    (false, _) => ("end", -1.5),
                };
                sheet = sheet.add(letters(at + away, middle + 1.1, anchor, &text));
            }
        }
        let (width, inset) = self.best;
        sheet = sheet
            .add(Circle::new().set("cx", x(inset)).set("cy", y(width)).set("r", 1.4).set("fill", "#000"))
            .add(letters(left, bottom + 21.0, "start", &format!("● best: {width} in, ET{inset}")));
        if let Some((width, inset)) = original {
            let (a, b) = (x(inset), y(width));
            let code =
                self.original.map(|setup| setup.wheel().size().diameter().to_string()).unwrap_or_default();
            sheet = sheet
                .add(rule((a - 1.8, b - 1.8), (a + 1.8, b + 1.8)).set("stroke-width", 0.5))
                .add(rule((a - 1.8, b + 1.8), (a + 1.8, b - 1.8)).set("stroke-width", 0.5))
                .add(letters(
                    left + 90.0,
                    bottom + 21.0,
                    "start",
                    &format!("× original: {width} in, ET{inset}, code {code}"),
                ));
        }
        let (across, down) = SHEET;
        let background = Rectangle::new().set("width", across).set("height", down).set("fill", "#fff");
        Document::new()
            .set("width", format!("{across}mm"))
            .set("height", format!("{down}mm"))
            .set("viewBox", (0, 0, across, down))
            .add(background)
            .add(sheet)
            .to_string()
            + "\n"
    }
}

fn width_in(setup: &Setup) -> f64 {
    f64::from(setup.wheel().size().width().quarters()) / 4.0
}

fn letters(x: f64, y: f64, anchor: &str, text: &str) -> Text {
    let text: String = text.chars().filter(|c| !c.is_control()).collect();
    Text::new(text).set("x", x).set("y", y).set("text-anchor", anchor)
}

fn rule(from: (f64, f64), to: (f64, f64)) -> Line {
    Line::new().set("x1", from.0).set("y1", from.1).set("x2", to.0).set("y2", to.1).set("stroke", "#000")
}
