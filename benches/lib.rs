//! Holds the criterion benches and their baselines.
