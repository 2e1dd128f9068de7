//! The seat under a bolt head or nut.

use crate::text::{Field, ParseError, Scanner, Text, designation, tri};
use crate::units::{Angle, Length, deg, mm};

macro_rules! seats {
    ($($(#[$doc:meta])* $variant:ident = $shape:ident, $number:literal, $canonical:literal;)*) => {
        /// The shape of the seat under a bolt head or nut; the fastener's and the wheel's must be the same.
        ///
        /// # Syntax
        /// `cone 60`, `cone 80`, `cone 90`, `ball R12`, `ball R13`, `ball R14`, `ball R16`, `flat`, `shank`;
        /// `conical`, `taper` and `spherical` are read too, with or without `°`.
        ///
        /// ```
        /// use beadseat::wheel::Seat;
        /// assert_eq!("Conical 60°".parse::<Seat>()?, Seat::Cone60);
        /// assert!("ball".parse::<Seat>().is_err());
        /// # Ok::<(), beadseat::ParseError>(())
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum Seat { $($(#[$doc])* $variant,)* }

        impl Seat {
            /// Every seat that is known here.
            ///
            /// ```
            /// use beadseat::wheel::Seat;
            /// assert!(Seat::ALL.iter().all(|s| s.to_string().parse() == Ok(*s)));
            /// ```
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            pub(crate) fn write(&self, text: &mut Text) {
                text.str(match self { $(Self::$variant => $canonical,)* });
            }

            const fn of(shape: Shape, number: u16) -> Option<Self> {
                match (shape, number) { $((Shape::$shape, $number) => Some(Self::$variant),)* _ => None }
            }
        }
    };
}

#[derive(Clone, Copy)]
enum Shape {
    Cone,
    Ball,
    Flat,
    Shank,
}

seats! {
    /// Cone of 60° included angle.
    Cone60 = Cone, 60, "cone 60";
    /// Cone of 80° included angle.
    Cone80 = Cone, 80, "cone 80";
    /// Cone of 90° included angle.
    Cone90 = Cone, 90, "cone 90";
    /// Ball of 12 mm radius.
    BallR12 = Ball, 12, "ball R12";
    /// Ball of 13 mm radius.
    BallR13 = Ball, 13, "ball R13";
    /// Ball of 14 mm radius.
    BallR14 = Ball, 14, "ball R14";
    /// Ball of 16 mm radius.
    BallR16 = Ball, 16, "ball R16";
    /// Flat, with a washer: it does not centre the wheel.
    Flat = Flat, 0, "flat";
    /// Shank in the hole, with a washer.
    Shank = Shank, 0, "shank";
}

impl Seat {
    pub(crate) const fn scan(scanner: &mut Scanner<'_>) -> Result<Self, ParseError> {
        let start = scanner.at();
        let shape = if scanner.eat_str("CONICAL") || scanner.eat_str("CONE") || scanner.eat_str("TAPER") {
            Shape::Cone
        } else if scanner.eat_str("SPHERICAL") || scanner.eat_str("BALL") {
            Shape::Ball
        } else if scanner.eat_word("FLAT") {
            Shape::Flat
        } else if scanner.eat_word("SHANK") {
            Shape::Shank
        } else {
            return Err(scanner.missing(Field::Seat));
        };
        let mut number = 0;
        if matches!(shape, Shape::Cone | Shape::Ball) {
            scanner.skip_space();
            scanner.eat(b'R');
            number = tri!(scanner.whole(Field::Seat));
            let _ = scanner.eat_str("°") || scanner.eat_word("MM");
        }
        match Self::of(shape, number) {
            Some(seat) => Ok(seat),
            None => Err(scanner.range(Field::Seat, start)),
        }
    }

    pub(super) const fn of_cone(angle: u16) -> Option<Self> {
        Self::of(Shape::Cone, angle)
    }

    pub(super) const fn of_ball(radius: u16) -> Option<Self> {
        Self::of(Shape::Ball, radius)
    }

    /// Whether tightening the fastener pulls the wheel to the centre of the bolt circle: cones and balls
    /// do, and a shank centres by its fit in the hole; a flat seat does not. Common practice, no source.
    ///
    /// ```
    /// use beadseat::wheel::Seat;
    /// assert!(Seat::Cone60.is_centring() && !Seat::Flat.is_centring());
    /// ```
    pub const fn is_centring(self) -> bool {
        !matches!(self, Self::Flat)
    }

    /// The included angle of a cone.
    ///
    /// ```
    /// use beadseat::{units::deg, wheel::Seat};
    /// assert_eq!(Seat::Cone90.cone_angle(), Some(deg(90.0)));
    /// assert_eq!(Seat::BallR13.cone_angle(), None);
    /// ```
    pub const fn cone_angle(self) -> Option<Angle> {
        match self {
            Self::Cone60 => Some(deg(60.0)),
            Self::Cone80 => Some(deg(80.0)),
            Self::Cone90 => Some(deg(90.0)),
            _ => None,
        }
    }

    /// The radius of a ball.
    ///
    /// ```
    /// use beadseat::{units::mm, wheel::Seat};
    /// assert_eq!(Seat::BallR13.ball_radius(), Some(mm(13.0)));
    /// assert_eq!(Seat::Cone60.ball_radius(), None);
    /// ```
    pub const fn ball_radius(self) -> Option<Length> {
        match self {
            Self::BallR12 => Some(mm(12.0)),
            Self::BallR13 => Some(mm(13.0)),
            Self::BallR14 => Some(mm(14.0)),
            Self::BallR16 => Some(mm(16.0)),
            _ => None,
        }
    }
}

designation!(Seat in "beadseat::wheel", "Ball r13" => "ball R13", wrong "cone 75");
