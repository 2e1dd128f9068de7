//! Orders by a key, for types whose fields stand in another order.

/// Gives a type the order of a key, which must tell any two unequal values apart.
macro_rules! ordered {
    ($type:ty, |$value:ident| $key:expr) => {
        impl Ord for $type {
            fn cmp(&self, other: &Self) -> core::cmp::Ordering {
                let key = |$value: &Self| $key;
                key(self).cmp(&key(other))
            }
        }

        impl PartialOrd for $type {
            fn partial_cmp(&self, other: &Self) -> Option<core::cmp::Ordering> {
                Some(self.cmp(other))
            }
        }
    };
}
pub(crate) use ordered;
