//! Views, heading and legend on one sheet of paper.

use alloc::vec::Vec;

use super::callout::{self, COLUMN, Column, SHELF, SPACINGS};
use super::flat::{Extent, Flat};
use super::legend;
use super::lettering::{LEADING, SIZE, clean, lines};
use super::paper::{Drawing, Frame, Paper, Set};
use super::scene::{Figure, Scene};

/// An upright sheet of A4: ISO 216 (from memory).
const PAPER: Flat = [210.0, 297.0];

/// What a printer leaves white: common practice, no source.
pub(super) const EDGE: f64 = 10.0;

/// Where its margins are, left and right.
pub(super) const SIDES: [f64; 2] = [EDGE, PAPER[0] - EDGE];

/// Size of the name of what is drawn, and of what is said of it.
const NAME: f64 = 4.5;
const HEADING: f64 = 4.0;

/// Height of a title above a view.
const TITLE: f64 = 7.0;

/// Between a view and the columns beside it.
const BESIDE: f64 = 2.0;

/// Scales to choose from: the first that the sheet holds.
const SCALES: [f64; 22] = [
    1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0,
    100.0, 150.0, 200.0, 500.0,
];

/// A view where it stands, with what is called out beside it.
struct Placed<'a> {
    figure: &'a dyn Figure,
    frame: Frame,
    columns: [Column; 2],
    height: f64,
}

/// Puts views on paper, one below the other.
pub(super) fn compose(scene: &Scene<'_>, figures: &[&dyn Figure], is_sheet: bool) -> Drawing {
    let mut paper = Paper::new();
    let width = PAPER[0] - 2.0 * EDGE;
    let mut down = EDGE;
    let [name, heading] = [scene.name, scene.heading].map(clean);
    for (text, size, most) in [(&name, NAME, 2), (&heading, HEADING, 4)] {
        for line in lines(text, size, width, most) {
            down += 1.3 * size;
            paper.text([EDGE, down - 0.4 * size], Set::Start, size, &line);
        }
    }
    let around: f64 = figures.iter().map(|figure| TITLE + below(*figure)).sum();
    let free = PAPER[1] - EDGE - down - around - legend::HEIGHT;
    let placed = fit(figures, width, free);
    let scale = placed.first().map_or(1.0, |first| first.frame.scale);
    for Placed { figure, mut frame, columns: [left, right], height } in placed {
        down += TITLE;
        paper.text([EDGE, down - 2.5], Set::Start, SIZE, &clean(&figure.title()));
        frame.corner[1] += down;
        let rows = [down, down + height];
        left.write(&mut paper, &frame, EDGE + COLUMN, true, rows);
        right.write(&mut paper, &frame, PAPER[0] - EDGE - COLUMN, false, rows);
        figure.draw(&frame, &mut paper);
        down += height + figure.margin()[1];
        for note in figure.notes() {
            down += LEADING;
            paper.text([EDGE, down - 0.25 * LEADING], Set::Start, SIZE, note);
        }
    }
    legend::draw(&mut paper, [EDGE, down], scale, scene.units);
    for figure in figures {
        figure.draw_detail([PAPER[0] - EDGE - COLUMN, down], &mut paper);
    }
    let title = match figures.first() {
        _ if is_sheet && !heading.is_empty() => heading,
        Some(figure) => figure.title(),
        None => name,
    };
    paper.into_drawing(PAPER, &title)
}

/// Height below a view: its dimensions, and what is said of it.
fn below(figure: &dyn Figure) -> f64 {
    figure.margin()[1] + figure.notes().len() as f64 * LEADING
}

/// Views at the largest scale at which they and their names stand in the height that is free, the first of them at its
/// upper edge.
fn fit<'a>(figures: &[&'a dyn Figure], width: f64, free: f64) -> Vec<Placed<'a>> {
    let beside = COLUMN + SHELF + BESIDE;
    let right = figures.iter().fold(0.0, |most, figure| figure.margin()[0].max(most));
    let room = width - 2.0 * beside - right;
    // Views below each other share their sides, so that what is in line is in line.
    let mut sides = Extent::NOTHING;
    figures.iter().for_each(|figure| sides.hold_all(&[figure.window().least, figure.window().most]));
    let mut placed = Vec::new();
    for scale in SCALES {
        let wide = sides.size()[0] / scale;
        if wide > room {
            continue;
        }
        for spacing in SPACINGS {
            placed = figures
                .iter()
                .map(|&figure| {
                    let mut window = figure.window();
                    (window.least[0], window.most[0]) = (sides.least[0], sides.most[0]);
                    let left = EDGE + beside + 0.5 * (room - wide);
                    let mut frame = Frame { scale, window, corner: [left, 0.0], flipped: figure.flipped() };
                    let high = window.size()[1] / scale;
                    let columns = callout::columns(figure.callouts(), &frame, high, spacing);
                    let height = columns.iter().fold(high, |most, column| column.need().max(most));
                    // Dimensions stand right below the view.
                    frame.corner[1] = height - high;
                    Placed { figure, frame, columns, height }
                })
                .collect();
            if placed.iter().map(|placed| placed.height).sum::<f64>() <= free {
                return placed;
            }
        }
    }
    placed
}
