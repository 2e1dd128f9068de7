//! What tests of random vehicles have in common.

use proptest::prelude::*;

/// A value that may be missing.
pub(crate) fn maybe<T: core::fmt::Debug + Clone + 'static>(
    value: impl Strategy<Value = T> + 'static,
) -> BoxedStrategy<Option<T>> {
    prop_oneof![4 => value.prop_map(Some), 1 => Just(None)].boxed()
}

/// Applies a setter to what is not missing.
macro_rules! set {
    ($record:ident $(, $with:ident $value:expr)*) => {
        $(if let Some(value) = $value { $record = $record.$with(value); })*
    };
}
macro_rules! try_set {
    ($record:ident $(, $with:ident $value:expr)*) => {
        $(if let Some(value) = $value { $record = $record.$with(value).unwrap(); })*
    };
}
