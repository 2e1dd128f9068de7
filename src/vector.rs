//! Small vectors, of two or three.

pub(crate) type Flat = [f64; 2];

pub(crate) fn add<const N: usize>(a: [f64; N], b: [f64; N]) -> [f64; N] {
    core::array::from_fn(|i| a[i] + b[i])
}

pub(crate) fn sub<const N: usize>(a: [f64; N], b: [f64; N]) -> [f64; N] {
    core::array::from_fn(|i| a[i] - b[i])
}

pub(crate) fn scale<const N: usize>(a: [f64; N], by: f64) -> [f64; N] {
    a.map(|x| x * by)
}

pub(crate) fn dot<const N: usize>(a: [f64; N], b: [f64; N]) -> f64 {
    (1..N).fold(a[0] * b[0], |sum, i| sum + a[i] * b[i])
}

/// The area between two, positive where the second turns from the first as the second axis does.
pub(crate) fn area(a: Flat, b: Flat) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}
