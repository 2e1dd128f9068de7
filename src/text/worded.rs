//! Reading and writing the words of an enum.

/// Gives an enum with `const fn name(self)` what reads its names, and nothing else: `FromStr` and, with the
/// feature, serde.
macro_rules! worded {
    ($name:ident [$($variant:ident)*]) => {
        impl core::str::FromStr for $name {
            type Err = crate::UnknownWord;

            fn from_str(word: &str) -> Result<Self, Self::Err> {
                const WORDS: &[&str] = &[$($name::$variant.name(),)*];
                let mut all = [$(Self::$variant,)*].into_iter();
                all.find(|known| known.name() == word).ok_or(crate::UnknownWord::of(WORDS))
            }
        }

        #[cfg(feature = "serde")]
        impl crate::file::Shaped for $name {
            const CONTENT: crate::file::Content = crate::file::Content::Words(&[$($name::$variant.name(),)*]);
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.name())
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                const WORDS: &[&str] = &[$($name::$variant.name(),)*];
                deserializer.deserialize_str(crate::text::FromWord::new(WORDS))
            }
        }
    };
}
pub(crate) use worded;
