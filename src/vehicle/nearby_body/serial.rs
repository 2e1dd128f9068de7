//! A body around the wheel as it stands in a file.
#![allow(dead_code, unreachable_pub, reason = "words have more than is used of them here")]

use core::fmt;
use core::marker::PhantomData;

use serde::de::{Error, SeqAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{BodyKind, Form, GapSide, MAX_POINTS, NearbyBodies, NearbyBody};
use crate::file::{Content, Forgotten, Path, Shaped};
use crate::record::{read_as_object, words, written};
use crate::sweep::{Carrier, MAX_OBSTACLES, ObstacleError, Point};
use crate::text::bounded;
use crate::tire::condition::VehicleSide;
use crate::units::{Length, in_mm, mm};

impl Shaped for Point {
    const CONTENT: Content =
        Content::List { of: &Content::Number { least: -5000.0, most: 5000.0 }, least: 3, most: 3 };
}

impl Serialize for Point {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        [self.forward(), self.outboard(), self.up()].map(in_millimetres).serialize(serializer)
    }
}

fn in_millimetres(length: Length) -> f64 {
    written(length, in_mm, mm)
}

impl<'de> Deserialize<'de> for Point {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let [forward, outboard, up] = <[f64; 3]>::deserialize(deserializer).map_err(bounded)?;
        Self::new(mm(forward), mm(outboard), mm(up)).map_err(Error::custom)
    }
}

words! {
    /// A [`Carrier`] without its places.
    CarrierWord {
        /// It stands still with the body.
        Body = "body",
        /// It steers and travels with the knuckle.
        Knuckle = "knuckle",
        /// What rises and falls with the hub.
        Unsprung = "unsprung",
        /// It swings with a control arm.
        Arm = "arm",
        /// It moves with a tie rod.
        Rod = "rod",
    }
}

/// Points of an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outline([Point; MAX_POINTS], u8);

impl Shaped for Outline {
    const CONTENT: Content = Content::List { of: &Point::CONTENT, least: 1, most: MAX_POINTS };
}

impl Serialize for Outline {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0.iter().take(usize::from(self.1)))
    }
}

impl<'de> Deserialize<'de> for Outline {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let mut list: [Option<Point>; MAX_POINTS] = [None; MAX_POINTS];
        let mut free = list.iter_mut();
        read_each(deserializer, "a list of 1 to 8 points", |point| {
            *free.next().ok_or(ObstacleError::Points)? = Some(point);
            Ok(())
        })?;
        let first = list[0].ok_or_else(|| D::Error::custom(ObstacleError::Points))?;
        Ok(Self(list.map(|point| point.unwrap_or(first)), list.iter().flatten().count() as u8))
    }
}

read_as_object! {
    /// A body as it stands in a file.
    struct Body one_of ["points_mm" "arc_mm" "disc_mm" "gap_mm"]
    needs {
        /// What body it is.
        what: BodyKind = "what"; }
    {

        /// Points on it, up to eight, each forward of, outboard of and above the middle of the hub face.
        points: Outline = "points_mm";

        /// Three points of an arc, as of an arch lip.
        arc: [Point; 3] = "arc_mm";

        /// Its middle and a point on its axis, of a disc.
        disc: [Point; 2] = "disc_mm";

        /// Radius of the disc.
        disc_radius: Length = "disc_radius_mm" [mm "mm" 0 1000];

        /// How far from the tire it is, where only that was measured.
        gap: Length = "gap_mm" [mm "mm" -100 500];

        /// On which side of the tire the gap is.
        gap_side: GapSide = "gap_side";

        /// How high above the middle of the hub the gap is.
        height: Length = "height_mm" [mm "mm" -1000 1000];

        /// How far ahead of the middle of the hub the gap is.
        forward: Length = "forward_mm" [mm "mm" -1000 1000];

        /// How far its surface is from those points.
        radius: Length = "radius_mm" [mm "mm" 0 1000];

        /// How far the measurement may be off.
        uncertainty: Length = "uncertainty_mm" [mm "mm" 0 100];

        /// What it moves with.
        carrier: CarrierWord = "carrier";

        /// Where its arm or rod is hinged to the body.
        pivot: Point = "pivot_mm";

        /// The other end of its arm or rod.
        end: Point = "end_mm";

        /// The side of the vehicle it is on, if only on one.
        side: VehicleSide = "side";
    }
}

impl Body {
    fn body<E: Error>(&self) -> Result<NearbyBody, E> {
        let kind = self.what;
        let body = match (self.points, self.arc, self.disc, self.gap) {
            (Some(Outline(points, count)), None, None, None) => {
                NearbyBody::outline(kind, points.get(..usize::from(count)).unwrap_or_default())
            }
            (None, Some(points), None, None) => NearbyBody::arc(kind, points),
            (None, None, Some([centre, on_axis]), None) => {
                let radius = self.disc_radius.ok_or_else(|| E::missing_field("disc_radius_mm"))?;
                NearbyBody::disc(kind, centre, on_axis, radius)
            }
            (None, None, None, Some(gap)) => {
                let side = self.gap_side.ok_or_else(|| E::missing_field("gap_side"))?;
                let height = self.height.ok_or_else(|| E::missing_field("height_mm"))?;
                NearbyBody::gap(kind, side, gap, height, self.forward.unwrap_or_default())
            }
            _ => return Err(E::custom("one of `points_mm`, `arc_mm`, `disc_mm` and `gap_mm` is wanted")),
        };
        let is_gap = self.gap.is_some();
        if !is_gap && (self.gap_side.is_some() || self.height.is_some() || self.forward.is_some())
            || self.disc.is_none() && self.disc_radius.is_some()
        {
            return Err(E::custom(
                "`gap_side`, `height_mm` and `forward_mm` belong to a gap, `disc_radius_mm` to a disc",
            ));
        }
        let carrier = match (self.carrier, self.pivot, self.end) {
            (None, None, None) => return self.carried(body.map_err(E::custom)?),
            (Some(CarrierWord::Body), None, None) => Carrier::Body,
            (Some(CarrierWord::Knuckle), None, None) => Carrier::Knuckle,
            (Some(CarrierWord::Unsprung), None, None) => Carrier::Unsprung,
            (Some(CarrierWord::Arm), Some(pivot), Some(end)) => Carrier::Arm { pivot, end },
            (Some(CarrierWord::Rod), Some(inner), Some(outer)) => Carrier::Rod { outer, inner },
            _ => return Err(E::custom("an arm and a rod, and nothing else, have `pivot_mm` and `end_mm`")),
        };
        self.carried(body.and_then(|body| body.carried_by(carrier)).map_err(E::custom)?)
    }

    /// With what does not depend on its form.
    fn carried<E: Error>(&self, body: NearbyBody) -> Result<NearbyBody, E> {
        let body = body
            .with_radius(self.radius.unwrap_or_default())
            .and_then(|body| body.with_uncertainty(self.uncertainty.unwrap_or_default()))
            .map_err(E::custom)?;
        Ok(self.side.map_or(body, |side| body.only_on(side)))
    }
}

impl<'de> Deserialize<'de> for NearbyBody {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Body::deserialize(deserializer)?.body()
    }
}

impl Serialize for NearbyBody {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let of_form = match &self.form {
            Form::Points(..) | Form::Arc(_) => 1,
            Form::Disc { .. } => 2,
            Form::Gap { .. } => 4,
        };
        let hinged = matches!(self.carrier, Carrier::Arm { .. } | Carrier::Rod { .. });
        // Beside its form: what it is, radius, uncertainty, carrier.
        let entries = 4 + of_form + 2 * usize::from(hinged) + usize::from(self.side.is_some());
        let mut map = serializer.serialize_map(Some(entries))?;
        map.serialize_entry("what", &self.kind)?;
        match &self.form {
            Form::Points(points, count) => map.serialize_entry("points_mm", &Outline(*points, *count))?,
            Form::Arc(points) => map.serialize_entry("arc_mm", points)?,
            Form::Disc { centre, on_axis, radius } => {
                map.serialize_entry("disc_mm", &[centre, on_axis])?;
                map.serialize_entry("disc_radius_mm", &in_millimetres(*radius))?;
            }
            Form::Gap { side, gap, height, forward } => {
                map.serialize_entry("gap_mm", &in_millimetres(*gap))?;
                map.serialize_entry("gap_side", side)?;
                map.serialize_entry("height_mm", &in_millimetres(*height))?;
                map.serialize_entry("forward_mm", &in_millimetres(*forward))?;
            }
        }
        map.serialize_entry("radius_mm", &in_millimetres(self.radius))?;
        map.serialize_entry("uncertainty_mm", &in_millimetres(self.uncertainty))?;
        let word = match self.carrier {
            Carrier::Body => CarrierWord::Body,
            Carrier::Knuckle => CarrierWord::Knuckle,
            Carrier::Unsprung => CarrierWord::Unsprung,
            Carrier::Arm { .. } => CarrierWord::Arm,
            Carrier::Rod { .. } => CarrierWord::Rod,
        };
        map.serialize_entry("carrier", &word)?;
        if let Carrier::Arm { pivot, end } | Carrier::Rod { inner: pivot, outer: end } = &self.carrier {
            map.serialize_entry("pivot_mm", pivot)?;
            map.serialize_entry("end_mm", end)?;
        }
        if let Some(side) = self.side {
            map.serialize_entry("side", &side)?;
        }
        map.end()
    }
}

impl Shaped for NearbyBodies {
    const CONTENT: Content = Content::List { of: &Body::CONTENT, least: 0, most: 2 * MAX_OBSTACLES };

    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<Self>, D::Error> {
        let (mut around, mut blank, mut told) = (Self::new(), false, false);
        read_each(deserializer, "a list of bodies, up to 16 around a wheel", |body: OrBlank| {
            match body.0 {
                Some(body) => {
                    told = true;
                    around.push(body)?;
                }
                None => blank = true,
            }
            Ok(())
        })?;
        Ok((told || !blank).then_some(around))
    }

    /// One that is not known leaves all of them out: what stands nearest is then not known either.
    fn forget(&mut self, path: Path<'_>) -> Forgotten {
        let is_here = path.split().0.parse().is_ok_and(|number: usize| number < self.iter().count());
        if is_here { Forgotten::Whole } else { Forgotten::Nothing }
    }
}

/// A body, or nothing in an object of nothing but `null`.
struct OrBlank(Option<NearbyBody>);

impl<'de> Deserialize<'de> for OrBlank {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let body = Body::read(deserializer)?;
        Ok(Self(body.map(|body| body.body()).transpose()?))
    }
}

impl Serialize for NearbyBodies {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}

impl<'de> Deserialize<'de> for NearbyBodies {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(Self::read(deserializer)?.unwrap_or_default())
    }
}

/// Reads a list, each of which is taken where it stands or refused.
fn read_each<'de, D: Deserializer<'de>, T: Deserialize<'de>>(
    deserializer: D,
    what: &'static str,
    take: impl FnMut(T) -> Result<(), ObstacleError>,
) -> Result<(), D::Error> {
    struct Each<F, T>(&'static str, F, PhantomData<T>);
    impl<'de, T: Deserialize<'de>, F: FnMut(T) -> Result<(), ObstacleError>> Visitor<'de> for Each<F, T> {
        type Value = ();

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str(self.0)
        }

        fn visit_seq<A: SeqAccess<'de>>(mut self, mut list: A) -> Result<(), A::Error> {
            while let Some(item) = list.next_element()? {
                (self.1)(item).map_err(A::Error::custom)?;
            }
            Ok(())
        }
    }
    deserializer.deserialize_seq(Each(what, take, PhantomData)).map_err(bounded)
}
