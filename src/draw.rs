//! Dimensioned drawings of a wheel in its corner, before and after a change: feature `svg`.
//!
//! Two views, as first-angle projection arranges them: a section through the spindle seen from the front, and
//! below it a plan seen from above in the position that was found nearest, or at full lock. Line types follow
//! ISO 128-2 and first-angle projection ISO 128-3 (both from memory); all is black and grey on white, and is
//! told apart without colour. Paper is measured in millimetres, so that a print at its own size is to the
//! scale that is stated.
//!
//! An outline is the envelope that clearance is reckoned with; nothing is drawn that was not given. The same
//! scene gives the same bytes on every platform.
//!
//! ```
//! use beadseat::draw::Scene;
//! use beadseat::sweep::{Corner, Obstacle, Obstacles, Point, Profile, RimSection, TireSection};
//! use beadseat::units::mm;
//!
//! let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
//! let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
//! let mut around = Obstacles::new();
//! around.push(Obstacle::point(Point::new(mm(0.0), mm(-40.0), mm(390.0))?).with_radius(mm(9.0))?)?;
//!
//! let corner = Corner::new();
//! let scene = Scene::new(&corner, &profile, &around).with_labels(&["bolt of the inner wing"]);
//! let drawing = scene.front_view().to_string();
//! assert!(drawing.contains("bolt of the inner"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod callout;
mod detail;
mod flat;
mod front;
mod legend;
mod lettering;
mod outline;
mod paper;
mod plan;
mod scene;

pub use paper::Drawing;
pub use scene::Scene;

use callout::{COLUMN, SHELF};
use flat::{Extent, Flat};
use front::Front;
use lettering::{LEADING, SIZE, clean, lines};
use paper::{Frame, Paper, Set};
use plan::Plan;
use scene::Figure;

/// Width of the paper, that of an upright A4 sheet. It is as high as it needs to be.
const WIDTH: f64 = 210.0;

const EDGE: f64 = 6.0;

/// Size of a heading.
const HEADING: f64 = 5.0;

/// Height of a title above a view.
const TITLE: f64 = 8.0;

/// Scales to choose from: the first that a view fits at.
const SCALES: [f64; 22] = [
    1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0,
    100.0, 150.0, 200.0, 500.0,
];

/// Height that a view should not exceed.
const HIGHEST: f64 = 175.0;

impl Scene<'_> {
    /// The section through the spindle, straight ahead at ride height, seen from the front, with section
    /// width, overall diameter and inset. The least clearance is turned about the spindle into the section,
    /// where it has its true length, and enlarged beside it.
    ///
    /// ```
    /// # use beadseat::draw::Scene;
    /// # use beadseat::sweep::{Corner, Obstacles, Profile, RimSection, TireSection};
    /// # use beadseat::units::mm;
    /// # let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// # let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let (corner, around) = (Corner::new(), Obstacles::new());
    /// let drawing = Scene::new(&corner, &profile, &around).front_view().to_string();
    /// assert!(drawing.contains("Ø632") && drawing.contains("inset 46"));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn front_view(&self) -> Drawing {
        self.compose(&[&Front::new(self)], false)
    }

    /// The plan, seen from above, where the least clearance was found; at full lock if it was not asked for.
    ///
    /// ```
    /// # use beadseat::draw::Scene;
    /// # use beadseat::sweep::{Corner, Obstacles, Profile, RimSection, TireSection};
    /// # use beadseat::units::mm;
    /// # let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// # let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let (corner, around) = (Corner::new(), Obstacles::new());
    /// let drawing = Scene::new(&corner, &profile, &around).plan_view_at_lock().to_string();
    /// assert!(drawing.contains("Plan from above, straight ahead, at ride height"));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn plan_view_at_lock(&self) -> Drawing {
        self.compose(&[&Plan::new(self)], false)
    }

    /// Both views at one scale, with heading and legend.
    ///
    /// ```
    /// # use beadseat::draw::Scene;
    /// # use beadseat::sweep::{Corner, Obstacles, Profile, RimSection, TireSection};
    /// # use beadseat::units::mm;
    /// # let rim = RimSection::new(mm(-46.0), mm(94.0), mm(220.0), mm(185.0))?;
    /// # let profile = Profile::new(rim, TireSection::new(mm(107.0), mm(316.0))?)?;
    /// let (corner, around) = (Corner::new(), Obstacles::new());
    /// let scene = Scene::new(&corner, &profile, &around).with_heading("Nothing is near < 10 mm");
    /// assert!(scene.sheet().to_string().contains("Nothing is near &lt; 10 mm"));
    /// # Ok::<(), beadseat::OutOfRange>(())
    /// ```
    pub fn sheet(&self) -> Drawing {
        self.compose(&[&Front::new(self), &Plan::new(self)], true)
    }

    /// Puts views on paper, one below the other.
    fn compose(&self, figures: &[&dyn Figure], is_sheet: bool) -> Drawing {
        let mut paper = Paper::new();
        let mut down = EDGE;
        let heading = clean(self.heading);
        for line in lines(&heading, HEADING, WIDTH - 2.0 * EDGE, 3) {
            down += 1.3 * HEADING;
            paper.text([EDGE, down - 0.4 * HEADING], Set::Start, HEADING, &line);
        }
        let columns = COLUMN + SHELF;
        let room = WIDTH - 2.0 * (EDGE + columns) - 4.0;
        // Views below each other share their sides, so that what is in line is in line.
        let mut window = Extent::NOTHING;
        figures.iter().for_each(|figure| window.hold_all(&[figure.window().least, figure.window().most]));
        let sides = [window.least[0], window.most[0]];
        let right = figures.iter().fold(0.0, |most, figure| figure.margin()[0].max(most));
        let high = figures.iter().fold(0.0, |most, figure| figure.window().size()[1].max(most));
        let fits = |scale: &f64| (sides[1] - sides[0]) / scale <= room - right && high / scale <= HIGHEST;
        let scale = SCALES.into_iter().find(fits).unwrap_or(SCALES[SCALES.len() - 1]);

        for figure in figures {
            let mut window = figure.window();
            (window.least[0], window.most[0]) = (sides[0], sides[1]);
            let size = window.size().map(|size| size / scale);
            let title = clean(&figure.title());
            down += TITLE;
            paper.text([EDGE, down - 3.0], Set::Start, SIZE, &title);
            let [mut left, mut right] =
                callout::columns(figure.callouts().to_vec(), window.middle()[0], size[1]);
            let detail = figure.detail();
            let height = size[1].max(callout::need(&left)).max(callout::need(&right) + detail);
            let spare = room - size[0] - figure.margin()[0];
            let corner: Flat = [EDGE + columns + 2.0 + 0.5 * spare.max(0.0), down + 0.5 * (height - size[1])];
            let frame = Frame { scale, window, corner };
            let rows = [down, down + height];
            let over_detail = [down, down + height - detail];
            callout::write(&mut paper, &frame, &mut left, EDGE + COLUMN, true, rows);
            callout::write(&mut paper, &frame, &mut right, WIDTH - EDGE - COLUMN, false, over_detail);
            // Figures stand on a ground of white that interrupts leaders.
            figure.draw(&frame, &mut paper);
            figure.draw_detail([WIDTH - EDGE - COLUMN, over_detail[1]], &mut paper);
            down += height + figure.margin()[1];
        }
        down += 0.5 * LEADING;
        legend::draw(&mut paper, [EDGE, down], WIDTH - 2.0 * EDGE, scale, self.units);
        down += legend::HEIGHT;
        let title = if is_sheet && !heading.is_empty() {
            heading
        } else {
            figures.first().map(|figure| figure.title()).unwrap_or_default()
        };
        paper.into_drawing([WIDTH, down + EDGE], &title)
    }
}
