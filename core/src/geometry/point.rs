use serde::{Deserialize, Serialize};
use std::ops::{Add, Mul, Sub};

/// A point or vector in the section plane, m: `x` to the right, `z` up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Up.
    pub z: f64,
}

impl Point {
    /// The point at these coordinates.
    pub const fn new(x: f64, z: f64) -> Self {
        Self { x, z }
    }

    /// Scalar product.
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.z * other.z
    }

    /// Signed area of the parallelogram from `self` to `other`, positive counter-clockwise.
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.z - self.z * other.x
    }

    /// Distance from the origin.
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// The vector of length 1 in this direction; zero stays zero.
    pub fn unit(self) -> Self {
        let length = self.length();
        if length > 0.0 { self * (1.0 / length) } else { self }
    }

    /// Turned a quarter counter-clockwise.
    pub fn left(self) -> Self {
        Self::new(-self.z, self.x)
    }

    /// The point a part `t` of the way to `other`.
    pub fn lerp(self, other: Self, t: f64) -> Self {
        self + (other - self) * t
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.z + other.z)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.z - other.z)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.z * factor)
    }
}
