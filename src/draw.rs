//! Dimensioned drawings of a wheel in its corner, before and after a change: feature `svg`.
//!
//! Two views, as first-angle projection arranges them: a section through the spindle, of a front wheel seen from the
//! front and of a rear wheel from the rear, and below it a plan seen from above in the position that was found nearest,
//! or at full lock. The section shows of an obstacle what its plane cuts, and names those that it does not reach. Line types follow
//! ISO 128-2 and first-angle projection ISO 128-3 (both from memory); all is black and grey on white, and is
//! told apart without colour. A drawing is an upright sheet of A4, 210 × 297 mm, with a margin of 10 mm all round;
//! paper is measured in millimetres, so that a print at its own size is to the scale that is stated. Capitals are
//! no lower than 2.5 mm, the height of ISO 3098 (from memory).
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

mod beside;
mod callout;
mod cut;
mod detail;
mod dimension;
mod flat;
mod front;
mod legend;
mod lettering;
mod outline;
mod paper;
mod plan;
mod scene;
mod sheet;

pub use paper::Drawing;
pub use scene::Scene;

use front::Front;
use plan::Plan;

impl Scene<'_> {
    /// The section through the spindle, straight ahead at ride height, with section width, overall diameter and
    /// inset; of a corner that is known [`at_rest`](Self::at_rest), with all that moves and every gap. The least clearance is turned about the spindle into the section,
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
        sheet::compose(self, &[&Front::new(self)], false)
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
        sheet::compose(self, &[&Plan::new(self)], false)
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
        sheet::compose(self, &[&Front::new(self), &Plan::new(self)], true)
    }
}
