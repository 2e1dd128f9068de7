//! Structs of optional facts: each field is checked when it is set, and knows its key in a scenario file.

use core::marker::PhantomData;

use uom::si::{Dimension, Quantity, Units};

/// Makes a struct whose fields are all optional but those under `needs`.
///
/// A field is `name: Type = "key"` for a value that is valid by its type, or
/// `name: Quantity = "key" [constructor reader "unit" least to most]` for a measured quantity. `Type [lent]` is read
/// by reference: it is large, or owns what it holds. `also { name = "key" [constructor "unit" least to most] by method; }`
/// is read by a method that may refuse it, and is not written; `but method` leaves it out.
macro_rules! record {
    (
        $(#[$doc:meta])*
        $name:ident $(blank $blank:ident)? $(one_of [$($one_of:literal)+])? $(needs { $($(#[doc = $ndoc:literal])* $need:ident: $ntype:ty = $nkey:literal;)+ })?
        $(also { $($also:tt)+ })? {
            $($(#[doc = $fdoc:literal])* $field:ident / $with:ident: $type:ty $(as $from:ty)? $([$lent:ident])? = $key:literal $([$ctor:ident $read:ident $unit:literal $least:literal to $most:literal])?;)*
        }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $name {
            $($($need: $ntype,)+)?
            $($field: crate::record::stored!($type $([$unit])?),)*
        }

        impl $name {
            crate::record::constructor!($($blank)? ; $($($need: $ntype,)+)? ; $($field $([$unit])?;)*);

            $($($(#[doc = $ndoc])* pub const fn $need(&self) -> $ntype { self.$need })+)?

            $(
                crate::record::getter!($(#[doc = $fdoc])* $field $type $([$lent])? $([$unit])?);
                crate::record::setter!($field $with $key $type $(as $from)? $([$lent])? $([$read $unit $least $most])?);
            )*
        }

        #[cfg(feature = "serde")]
        crate::record::read_as_object! {
            $name $(one_of [$($one_of)+])?
            needs { $($($(#[doc = $ndoc])* $need: $ntype = $nkey;)+)? }
            $(also { $($also)+ })?
            { $($(#[doc = $fdoc])* $field: $type = $key $([$ctor $unit $least $most])?;)* }
        }

        #[cfg(feature = "serde")]
        impl $name {
            /// How many entries are written.
            pub(crate) fn entries(&self) -> usize {
                let known = [$(self.$field().is_some(),)*];
                let needed: &[&str] = &[$($($nkey,)+)?];
                needed.len() + known.into_iter().filter(|known| *known).count()
            }

            /// Writes what is known into an object that may hold more.
            pub(crate) fn write_entries<M: serde::ser::SerializeMap>(&self, map: &mut M) -> Result<(), M::Error> {
                $($(map.serialize_entry($nkey, &self.$need)?;)+)?
                $(if let Some(value) = self.$field() {
                    map.serialize_entry($key, &crate::record::shown!(value $([$ctor $read])?))?;
                })*
                Ok(())
            }
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                use serde::ser::SerializeMap;
                let mut map = serializer.serialize_map(Some(self.entries()))?;
                self.write_entries(&mut map)?;
                map.end()
            }
        }
    };
}
pub(crate) use record;

/// Reads a struct of optional facts, and facts that it cannot do without, from an object. With `struct` in front, it
/// makes the struct too.
#[cfg(feature = "serde")]
macro_rules! read_as_object {
    (
        $(#[$doc:meta])*
        struct $name:ident $(one_of $one_of:tt)?
        needs { $($(#[doc = $ndoc:literal])* $need:ident: $ntype:ty = $nkey:literal;)* }
        { $($(#[doc = $fdoc:literal])* $field:ident: $type:ty = $key:literal $([$($range:tt)+])?;)* }
    ) => {
        $(#[$doc])*
        struct $name {
            $($need: $ntype,)*
            $($field: Option<$type>,)*
        }

        crate::record::read_as_object! {
            $name $(one_of $one_of)?
            needs { $($(#[doc = $ndoc])* $need: $ntype = $nkey;)* }
            { $($(#[doc = $fdoc])* $field: $type = $key $([$($range)+])?;)* }
        }
    };
    (
        $name:ident $(one_of [$($one_of:literal)+])?
        needs { $($(#[doc = $ndoc:literal])* $need:ident: $ntype:ty = $nkey:literal;)* }
        $(also { $(#[doc = $adoc:literal])* $also:ident = $akey:literal [$actor:ident $aunit:literal $aleast:literal to $amost:literal] by $apply:ident but $undo:ident; })?
        { $($(#[doc = $fdoc:literal])* $field:ident: $type:ty = $key:literal $([$ctor:ident $unit:literal $least:literal $most:literal])?;)* }
    ) => {
        impl $name {
            /// What its files hold.
            pub(crate) const OBJECT: &'static crate::file::Object = &crate::file::Object {
                name: stringify!($name),
                entries: &[
                    $(crate::file::Entry::needed($nkey, <$ntype as crate::file::Shaped>::CONTENT, concat!($($ndoc),*)),)*
                    $(crate::file::Entry::optional($key, crate::record::content!($type $([$least $most])?), concat!($($fdoc),*)),)*
                    $(crate::file::Entry::optional($akey, crate::file::Content::Number { least: $aleast as f64, most: $amost as f64 }, concat!($($adoc),*)),)?
                ],
                one_of: &[$($($one_of),+)?],
            };
        }

        impl crate::file::Shaped for $name {
            const CONTENT: crate::file::Content = crate::file::Content::Object(Self::OBJECT);

            fn read<'de, D: serde::Deserializer<'de>>(deserializer: D) -> Result<Option<Self>, D::Error> {
                Self::read_or_blank(deserializer, true)
            }

            fn forget(&mut self, path: crate::file::Path<'_>) -> crate::file::Forgotten {
                use crate::file::Forgotten;
                let (key, rest) = path.split();
                match key {
                    $($nkey => Forgotten::needed(&mut self.$need, rest),)*
                    $($key => crate::record::forget!(self.$field, rest $([$ctor])?),)*
                    $($akey => if rest.is_none() { self.$undo() } else { Forgotten::Nothing },)?
                    _ => Forgotten::Nothing,
                }
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                use serde::de::Error;
                Self::read_or_blank(deserializer, false)?.ok_or_else(|| D::Error::custom("nothing is told"))
            }
        }

        impl $name {
            /// Nothing for an object that has keys and nothing behind them, where that may be.
            fn read_or_blank<'de, D: serde::Deserializer<'de>>(
                deserializer: D,
                may_be_blank: bool,
            ) -> Result<Option<Self>, D::Error> {
                struct Reader(bool);
                impl<'de> serde::de::Visitor<'de> for Reader {
                    type Value = Option<$name>;

                    fn expecting(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                        f.write_str(concat!("an object with the facts of a ", stringify!($name)))
                    }

                    fn visit_map<A: serde::de::MapAccess<'de>>(self, mut map: A) -> Result<Option<$name>, A::Error> {
                        const KEYS: &[&str] = &[$($nkey,)* $($key,)* $($akey,)?];
                        let mut given = crate::file::Given::default();
                        $(let mut $need: Option<$ntype> = None;)*
                        $(let mut $field: Option<$type> = None;)*
                        $(let mut $also = None;)?
                        while let Some(text) = map.next_key::<alloc::string::String>()? {
                            if given.pass_question(&text, &mut map)? {
                                continue;
                            }
                            let key = given.key(text, KEYS)?;
                            match key.name {
                                $($nkey => $need = key.value(&mut map)?,)*
                                $($key => $field = crate::record::read!(map, key $key $([$ctor $unit $least $most])?),)*
                                $($akey => $also = crate::record::read!(map, key $akey [$actor $aunit $aleast $amost]),)?
                                _ => {}
                            }
                        }
                        let known = [false, $($need.is_some(),)* $($field.is_some(),)* $($also.is_some(),)?];
                        if self.0 && given.is_anything() && !known.contains(&true) {
                            return Ok(None);
                        }
                        let read = $name {
                            $($need: $need.ok_or_else(|| <A::Error as serde::de::Error>::missing_field($nkey))?,)*
                            $($field: $field.into(),)*
                        };
                        $(let read = match $also {
                            Some(told) => read.$apply(told).map_err(<A::Error as serde::de::Error>::custom)?,
                            None => read,
                        };)?
                        Ok(Some(read))
                    }
                }
                deserializer.deserialize_map(Reader(may_be_blank)).map_err(crate::text::bounded)
            }
        }
    };
}
#[cfg(feature = "serde")]
pub(crate) use read_as_object;

/// `new`, with the needed facts.
macro_rules! constructor {
    ($blank:ident ; ; $($field:ident $([$unit:literal])?;)*) => {
        /// A value in which nothing is known yet.
        pub const fn $blank() -> Self {
            Self { $($field: crate::record::unknown!($($unit)?),)* }
        }
    };
    ( ; $($need:ident: $ntype:ty,)* ; $($field:ident $([$unit:literal])?;)*) => {
        /// With nothing known but what is given here.
        #[allow(clippy::new_without_default)]
        pub const fn new($($need: $ntype),*) -> Self {
            Self { $($need,)* $($field: crate::record::unknown!($($unit)?),)* }
        }
    };
}
pub(crate) use constructor;

/// How a field is kept: a quantity in the space of its number alone.
macro_rules! stored {
    ($type:ty) => { Option<$type> };
    ($type:ty [$unit:literal]) => { crate::record::Optional<$type> };
}
pub(crate) use stored;

/// A field of which nothing is known.
macro_rules! unknown {
    () => {
        None
    };
    ($unit:literal) => {
        crate::record::Optional::NONE
    };
}
pub(crate) use unknown;

/// A quantity that may be unknown, which then is no number: half as large as an [`Option`] of it, of which a vehicle
/// has dozens. What is set has been checked to lie in a range, so it is a number.
#[derive(Clone, Copy)]
pub(crate) struct Optional<Q>(Q);

impl<D, U> Optional<Quantity<D, U, f64>>
where
    D: Dimension + ?Sized,
    U: Units<f64> + ?Sized,
{
    pub(crate) const NONE: Self =
        Self(Quantity { dimension: PhantomData, units: PhantomData, value: f64::NAN });

    pub(crate) const fn get(self) -> Option<Quantity<D, U, f64>> {
        if self.0.value.is_nan() { None } else { Some(self.0) }
    }

    #[cfg(feature = "serde")]
    pub(crate) const fn take(&mut self) -> Option<Quantity<D, U, f64>> {
        core::mem::replace(self, Self::NONE).get()
    }
}

impl<D, U> From<Option<Quantity<D, U, f64>>> for Optional<Quantity<D, U, f64>>
where
    D: Dimension + ?Sized,
    U: Units<f64> + ?Sized,
{
    fn from(known: Option<Quantity<D, U, f64>>) -> Self {
        known.map_or(Self::NONE, Self)
    }
}

impl<D, U> PartialEq for Optional<Quantity<D, U, f64>>
where
    D: Dimension + ?Sized,
    U: Units<f64> + ?Sized,
{
    fn eq(&self, other: &Self) -> bool {
        self.get() == other.get()
    }
}

impl<D, U> core::fmt::Debug for Optional<Quantity<D, U, f64>>
where
    D: Dimension + ?Sized,
    U: Units<f64> + ?Sized,
    Quantity<D, U, f64>: core::fmt::Debug,
{
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        self.get().fmt(f)
    }
}

/// What is known of a field.
macro_rules! getter {
    ($(#[$doc:meta])* $field:ident $type:ty) => {
        $(#[$doc])*
        pub const fn $field(&self) -> Option<$type> { self.$field }
    };
    ($(#[$doc:meta])* $field:ident $type:ty [$unit:literal]) => {
        $(#[$doc])*
        pub const fn $field(&self) -> Option<$type> { self.$field.get() }
    };
    ($(#[$doc:meta])* $field:ident $type:ty [lent]) => {
        $(#[$doc])*
        pub const fn $field(&self) -> Option<&$type> { self.$field.as_ref() }
    };
}
pub(crate) use getter;

/// `with_…`: infallible for a type that is its own proof, checked for a quantity.
macro_rules! setter {
    ($field:ident $with:ident $key:literal $type:ty) => {
        #[doc = concat!("Sets `", stringify!($field), "` and keeps the rest.")]
        pub const fn $with(mut self, value: $type) -> Self {
            self.$field = Some(value);
            self
        }
    };
    ($field:ident $with:ident $key:literal $type:ty [lent]) => {
        #[doc = concat!("Sets `", stringify!($field), "` and keeps the rest.")]
        pub fn $with(mut self, value: $type) -> Self {
            self.$field = Some(value);
            self
        }
    };
    ($field:ident $with:ident $key:literal $type:ty as $from:ty) => {
        #[doc = concat!("Sets `", stringify!($field), "` and keeps the rest.")]
        ///
        /// # Errors
        #[doc = concat!("What is no [`", stringify!($type), "`].")]
        pub fn $with(mut self, value: $from) -> Result<Self, crate::OutOfRange> {
            self.$field = Some(<$type>::from_length(value)?);
            Ok(self)
        }
    };
    ($field:ident $with:ident $key:literal $type:ty [$read:ident $unit:literal $least:literal $most:literal]) => {
        #[doc = concat!("Sets `", stringify!($field), "` and keeps the rest.")]
        ///
        /// # Errors
        #[doc = concat!("Outside ", $least, " to ", $most, " ", $unit, ".")]
        pub fn $with(mut self, value: $type) -> Result<Self, crate::OutOfRange> {
            crate::OutOfRange::check($key, crate::units::$read(value), $unit, $least as f64, $most as f64)?;
            self.$field = Some(value).into();
            Ok(self)
        }
    };
}
pub(crate) use setter;

/// The value of a key; a quantity's range is checked while its place in the file is known.
#[cfg(feature = "serde")]
macro_rules! read {
    ($map:ident, $found:ident $key:literal) => {
        $found.value(&mut $map)?
    };
    ($map:ident, $found:ident $key:literal [$ctor:ident $unit:literal $least:literal $most:literal]) => {{
        let range =
            crate::record::InRange { what: $key, unit: $unit, least: $least as f64, most: $most as f64 };
        $found.value_by(&mut $map, range)?.map(crate::units::$ctor)
    }};
}
#[cfg(feature = "serde")]
pub(crate) use read;

/// Leaves a field out, or what stands in it.
#[cfg(feature = "serde")]
macro_rules! forget {
    ($field:expr, $rest:ident) => {
        crate::file::Forgotten::of(&mut $field, $rest)
    };
    ($field:expr, $rest:ident [$ctor:ident]) => {
        crate::file::Forgotten::nothing_else(|| $field.take().is_some(), $rest)
    };
}
#[cfg(feature = "serde")]
pub(crate) use forget;

/// What may stand behind a key.
#[cfg(feature = "serde")]
macro_rules! content {
    ($type:ty) => {
        <$type as crate::file::Shaped>::CONTENT
    };
    ($type:ty [$least:literal $most:literal]) => {
        crate::file::Content::Number { least: $least as f64, most: $most as f64 }
    };
}
#[cfg(feature = "serde")]
pub(crate) use content;

/// A value as it is written: a quantity as a number in its unit.
#[cfg(feature = "serde")]
macro_rules! shown {
    ($value:ident) => {
        $value
    };
    ($value:ident [$ctor:ident $read:ident]) => {
        crate::record::written($value, crate::units::$read, crate::units::$ctor)
    };
}
#[cfg(feature = "serde")]
pub(crate) use shown;

/// A quantity as the number of a unit that reads back as the same quantity, with no more decimals than that takes:
/// the number it was read from, without the dust of conversion. A computed quantity that no number of the unit makes
/// is written as near as one comes.
#[cfg(feature = "serde")]
pub(crate) fn written<Q: Copy + PartialEq>(quantity: Q, read: fn(Q) -> f64, make: fn(f64) -> Q) -> f64 {
    let value = read(quantity);
    let rounded = (6..=15).map(|decimals| {
        let steps = libm::exp10(f64::from(decimals));
        libm::round(value * steps) / steps
    });
    // What a number with more digits was read from lies beside what conversion makes of it.
    let beside = [0, 1, -1].map(|ulps| f64::from_bits(value.to_bits().wrapping_add_signed(ulps)));
    rounded.chain(beside).find(|&number| make(number) == quantity).unwrap_or(value)
}

/// Rounds to a millionth of the unit.
#[cfg(feature = "serde")]
pub(crate) fn tidy(value: f64) -> f64 {
    libm::round(value * 1e6) / 1e6
}

/// A number that must lie in a closed range.
#[cfg(feature = "serde")]
pub(crate) struct InRange {
    pub(crate) what: &'static str,
    pub(crate) unit: &'static str,
    pub(crate) least: f64,
    pub(crate) most: f64,
}

#[cfg(feature = "serde")]
impl<'de> serde::de::DeserializeSeed<'de> for InRange {
    type Value = f64;

    fn deserialize<D: serde::Deserializer<'de>>(self, deserializer: D) -> Result<f64, D::Error> {
        let value = <f64 as serde::Deserialize>::deserialize(deserializer).map_err(crate::text::bounded)?;
        crate::OutOfRange::check(self.what, value, self.unit, self.least, self.most)
            .map_err(serde::de::Error::custom)
    }
}

/// Makes an enum of fixed words, which may grow unless it is `closed`, with `FromStr` and serde as the word.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($variants:tt)* }) => {
        crate::record::words! { $(#[$doc])* #[non_exhaustive] $name closed { $($variants)* } }
    };
    ($(#[$doc:meta])* $name:ident closed { $($(#[$vdoc:meta])* $variant:ident = $word:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[allow(clippy::exhaustive_enums, reason = "closed")]
        pub enum $name { $($(#[$vdoc])* $variant,)* }

        impl $name {
            /// Every value of this type, in the order they are declared.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// Its stable name, as in files.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $word,)* }
            }
        }

        impl core::fmt::Display for $name {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                f.pad(self.name())
            }
        }

        crate::text::worded!($name [$($variant)*]);
    };
}
pub(crate) use words;

/// A count from 1 to `MOST`.
///
/// ```
/// use beadseat::Count;
/// assert_eq!(Count::<2>::new(2).map(Count::get), Some(2));
/// assert_eq!(Count::<2>::new(3), None);
/// assert_eq!(Count::<2>::new(0), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Count<const MOST: u8>(core::num::NonZeroU8);

impl<const MOST: u8> Count<MOST> {
    /// `None` outside 1 to `MOST`.
    pub const fn new(count: u8) -> Option<Self> {
        match core::num::NonZeroU8::new(count) {
            Some(n) if count <= MOST => Some(Self(n)),
            _ => None,
        }
    }

    /// The count as a plain number.
    pub const fn get(self) -> u8 {
        self.0.get()
    }
}

#[cfg(feature = "serde")]
impl<const MOST: u8> crate::file::Shaped for Count<MOST> {
    const CONTENT: crate::file::Content = crate::file::Content::Whole { least: 1, most: MOST };
}

#[cfg(feature = "serde")]
impl<const MOST: u8> serde::Serialize for Count<MOST> {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_u8(self.get())
    }
}

#[cfg(feature = "serde")]
impl<'de, const MOST: u8> serde::Deserialize<'de> for Count<MOST> {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        use serde::de::Error;
        Self::new(u8::deserialize(deserializer).map_err(crate::text::bounded)?)
            .ok_or_else(|| D::Error::custom(format_args!("a count from 1 to {MOST} is wanted")))
    }
}
