//! Holds the property tests; see `tests/`.
