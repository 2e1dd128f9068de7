//! What a label states, as people write it off.

use super::{NoiseClass, SoundLevel};
use crate::text::{Field, ParseError, Scanner, Text, designation, tri};

/// The classes and the sound level that a tire label states: fuel efficiency, wet grip, rolling noise.
///
/// # Syntax
/// ```text
/// label = class [ "/" ] class [ "/" ] [ noise ] number [ "dB" [ "(A)" ] ] [ noise ]
/// class = "A" … "G"           noise = "A" | "B" | "C"
/// ```
/// 40 to 120 dB. `EU` or `label` may stand in front. The classes F and G are of the label before 2021 alone. Canonical
/// `C/B/71 dB`, with the class of noise behind it.
///
/// ```
/// use beadseat::tire::energy_label::EnergyLabel;
/// let label: EnergyLabel = "c b 71dB".parse()?;
/// assert_eq!(label.to_string(), "C/B/71 dB");
/// assert_eq!((label.fuel_efficiency(), label.wet_grip()), ('C', 'B'));
/// assert_eq!(label.sound().decibels(), 71);
/// # Ok::<(), beadseat::ParseError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct EnergyLabel {
    fuel: u8,
    wet: u8,
    sound: SoundLevel,
    noise: Option<NoiseClass>,
}

impl EnergyLabel {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        if scanner.eat_any(&[
            "EU TIRE LABEL",
            "EU TYRE LABEL",
            "EU LABEL",
            "TIRE LABEL",
            "TYRE LABEL",
            "LABEL",
        ]) {
            scanner.skip_colon();
        }
        let fuel = tri!(scan_class(scanner));
        skip_separator(scanner);
        let wet = tri!(scan_class(scanner));
        skip_separator(scanner);
        let mut noise = scan_noise(scanner);
        if noise.is_some() {
            skip_separator(scanner);
        }
        let at = scanner.at();
        let decibels = tri!(scanner.whole(Field::Label));
        let sound = match SoundLevel::new(if decibels <= 120 { decibels as u8 } else { 0 }) {
            Some(sound) => sound,
            None => return Err(scanner.range(Field::Label, at)),
        };
        let mut ahead = *scanner;
        ahead.skip_space();
        if ahead.eat_word("DB") || ahead.eat_word("DBA") {
            let _ = ahead.eat_str("(A)");
            *scanner = ahead;
        }
        if noise.is_none() {
            let mut ahead = *scanner;
            skip_separator(&mut ahead);
            noise = scan_noise(&mut ahead);
            if noise.is_some() {
                *scanner = ahead;
            }
        }
        Ok(Self { fuel, wet, sound, noise })
    }

    pub(crate) fn write(&self, text: &mut Text) {
        text.byte(self.fuel).byte(b'/').byte(self.wet).byte(b'/');
        text.whole(u32::from(self.sound.decibels())).str(" dB");
        if let Some(noise) = self.noise {
            text.byte(b' ').str(noise.name());
        }
    }

    /// The class of fuel efficiency, that is, of rolling resistance.
    pub const fn fuel_efficiency(&self) -> char {
        self.fuel as char
    }

    /// The class of wet grip.
    pub const fn wet_grip(&self) -> char {
        self.wet as char
    }

    /// The level of rolling noise.
    pub const fn sound(&self) -> SoundLevel {
        self.sound
    }

    /// The class of rolling noise, if it is told.
    pub const fn noise(&self) -> Option<NoiseClass> {
        self.noise
    }

    /// Whether a class stands there that only the label before 2021 had.
    ///
    /// ```
    /// use beadseat::tire::energy_label::EnergyLabel;
    /// assert!(EnergyLabel::parse("F/C/72 dB")?.is_former());
    /// assert!(!EnergyLabel::parse("E/C/72 dB")?.is_former());
    /// # Ok::<(), beadseat::ParseError>(())
    /// ```
    pub const fn is_former(&self) -> bool {
        self.fuel > b'E' || self.wet > b'E'
    }
}

const fn scan_class(scanner: &mut Scanner<'_>) -> Result<u8, ParseError> {
    match scanner.peek(0) {
        class @ b'A'..=b'G' if !scanner.peek(1).is_ascii_alphanumeric() => {
            scanner.step(1);
            Ok(class)
        }
        _ => Err(scanner.missing(Field::Label)),
    }
}

const fn scan_noise(scanner: &mut Scanner<'_>) -> Option<NoiseClass> {
    let class = match scanner.peek(0) {
        b'A' => NoiseClass::A,
        b'B' => NoiseClass::B,
        b'C' => NoiseClass::C,
        _ => return None,
    };
    if scanner.peek(1).is_ascii_alphanumeric() {
        return None;
    }
    scanner.step(1);
    Some(class)
}

const fn skip_separator(scanner: &mut Scanner<'_>) {
    scanner.skip_space();
    let _ = scanner.eat(b'/') || scanner.eat(b'-') || scanner.eat(b',');
    scanner.skip_space();
}

designation!(EnergyLabel in "beadseat::tire::energy_label", "B A 70" => "B/A/70 dB", wrong "B A 30");
