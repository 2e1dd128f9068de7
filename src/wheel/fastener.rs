//! Wheel bolts, studs and nuts: what holds, and how strong it is.

use crate::Citation;
use crate::record::words;
use crate::units::{Force, Stress, inches, ksi, megapascals, mm};
use crate::wheel::{Pitch, Thread};

words! {
    /// What holds the wheel: a bolt into the hub, or a nut on a stud.
    ///
    /// ```
    /// assert_eq!(beadseat::wheel::FastenerKind::Nut.name(), "nut");
    /// ```
    FastenerKind {
        /// A bolt screwed into a threaded hub.
        Bolt = "bolt",
        /// A nut on a stud of the hub.
        Nut = "nut",
    }
}

words! {
    /// The strength class of a bolt or stud: ISO 898-1 property classes, SAE J429 grades.
    ///
    /// ```
    /// assert_eq!(beadseat::wheel::PropertyClass::C10_9.name(), "10.9");
    /// ```
    PropertyClass {
        /// ISO 898-1 class 4.6.
        C4_6 = "4.6",
        /// ISO 898-1 class 4.8.
        C4_8 = "4.8",
        /// ISO 898-1 class 5.6.
        C5_6 = "5.6",
        /// ISO 898-1 class 5.8.
        C5_8 = "5.8",
        /// ISO 898-1 class 6.8.
        C6_8 = "6.8",
        /// ISO 898-1 class 8.8.
        C8_8 = "8.8",
        /// ISO 898-1 class 9.8, made up to 16 mm.
        C9_8 = "9.8",
        /// ISO 898-1 class 10.9.
        C10_9 = "10.9",
        /// ISO 898-1 class 12.9.
        C12_9 = "12.9",
        /// SAE J429 grade 5.
        Grade5 = "grade 5",
        /// SAE J429 grade 8.
        Grade8 = "grade 8",
    }
}

impl PropertyClass {
    /// Proof and yield stress of a class in a thread.
    fn stresses(self, thread: Thread) -> Option<(Stress, Stress)> {
        let d = thread.major_diameter();
        let metric = matches!(thread.pitch(), Pitch::Metric { .. });
        Some(match self {
            Self::C4_6 if metric => (megapascals(225.0), megapascals(240.0)),
            Self::C4_8 if metric => (megapascals(310.0), megapascals(340.0)),
            Self::C5_6 if metric => (megapascals(280.0), megapascals(300.0)),
            Self::C5_8 if metric => (megapascals(380.0), megapascals(420.0)),
            Self::C6_8 if metric => (megapascals(440.0), megapascals(480.0)),
            Self::C8_8 if metric && d <= mm(16.0) => (megapascals(580.0), megapascals(640.0)),
            Self::C8_8 if metric => (megapascals(600.0), megapascals(660.0)),
            Self::C9_8 if metric && d <= mm(16.0) => (megapascals(650.0), megapascals(720.0)),
            Self::C10_9 if metric => (megapascals(830.0), megapascals(940.0)),
            Self::C12_9 if metric => (megapascals(970.0), megapascals(1100.0)),
            Self::Grade5 if !metric && d <= inches(1.0) => (ksi(85.0), ksi(92.0)),
            Self::Grade8 if !metric => (ksi(120.0), ksi(130.0)),
            _ => return None,
        })
    }

    /// The proof stress: what the thread bears without a lasting stretch. 580 MPa for 8.8 up to 16 mm and
    /// 600 above, 830 for 10.9, 970 for 12.9, 225 to 440 for 4.6 to 6.8 (ISO 898-1); 85 ksi for grade 5 and
    /// 120 ksi for grade 8 (SAE J429).
    ///
    /// `None` for a class on a thread of the other system, for 9.8 above 16 mm, and for grade 5 above 1 in,
    /// whose lower stress is not in the table.
    ///
    /// ```
    /// use beadseat::{units::megapascals, wheel::{PropertyClass, Thread}};
    /// let [small, large] = [Thread::parse("M16x1.5")?, Thread::parse("M18x1.5")?];
    /// assert_eq!(PropertyClass::C8_8.proof_stress(small), Some(megapascals(580.0)));
    /// assert_eq!(PropertyClass::C8_8.proof_stress(large), Some(megapascals(600.0)));
    /// assert_eq!(PropertyClass::Grade8.proof_stress(small), None);
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn proof_stress(self, thread: Thread) -> Option<Stress> {
        self.stresses(thread).map(|(proof, _)| proof)
    }

    /// The yield stress, which leaves a stretch of 0.2 %: 640 MPa for 8.8 up to 16 mm and 660 above, 940
    /// for 10.9, 1100 for 12.9, 240 to 480 for 4.6 to 6.8 (ISO 898-1; of 4.8, 5.8 and 6.8 the stress of a
    /// whole bolt); 92 ksi for grade 5, 130 ksi for grade 8 (SAE J429, from memory). `None` as for
    /// [`PropertyClass::proof_stress`].
    ///
    /// ```
    /// use beadseat::{units::megapascals, wheel::{PropertyClass, Thread}};
    /// let stress = PropertyClass::C10_9.yield_stress(Thread::parse("M14x1.5")?);
    /// assert_eq!(stress, Some(megapascals(940.0)));
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub fn yield_stress(self, thread: Thread) -> Option<Stress> {
        self.stresses(thread).map(|(_, stress)| stress)
    }

    /// The proof load, proof stress times stress area. Standards print it from a stress area rounded to
    /// three digits, so theirs is up to half a percent off this one. `None` as for
    /// [`PropertyClass::proof_stress`].
    ///
    /// ```
    /// use beadseat::{units::kilonewtons, wheel::{PropertyClass, Thread}};
    /// let load = PropertyClass::C10_9.proof_load(Thread::parse("M14x1.5")?).ok_or("no such class")?;
    /// assert!(load > kilonewtons(103.3) && load < kilonewtons(103.4)); // 103.75 kN from 125 mm²
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn proof_load(self, thread: Thread) -> Option<Force> {
        Some(self.proof_stress(thread)? * thread.stress_area())
    }

    /// The source of the proof stress, and of the yield stress of an ISO class; that of a grade's yield stress is
    /// [`Citation::YIELD_STRESS_SAE`].
    pub const fn citation(self) -> Citation {
        match self {
            Self::Grade5 | Self::Grade8 => Citation::PROOF_STRESS_SAE,
            _ => Citation::PROOF_STRESS_ISO,
        }
    }
}
