//! Wheel bolts, studs and nuts: what holds, and how strong it is.

use crate::record::words;

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
        /// ISO 898-1 class 8.8.
        C8_8 = "8.8",
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
