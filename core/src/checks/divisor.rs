//! From characteristic strengths to what a basis allows.

use crate::formula::stated;
use crate::scheme::Basis;
use crate::sentence::Value;

/// Load factor held in permissible values derived from characteristic ones; common practice.
const LOAD_FACTOR: f64 = 1.5;
/// Further division of resistances in class B2 of EN 12812 (from memory).
const CLASS_B2: f64 = 1.15;

/// Partial factors of materials.
pub(super) mod gamma {
    /// Steel members, EN 12812 (from memory); EN 1993-1-1 would allow 1.0.
    pub const STEEL: f64 = 1.1;
    /// Steel in tension up to breaking, EN 1993-1-8.
    pub const STEEL_BREAKING: f64 = 1.25;
    /// Solid timber, EN 1995-1-1 Table 2.3.
    pub const TIMBER: f64 = 1.3;
    /// Plywood, EN 1995-1-1 Table 2.3.
    pub const PLYWOOD: f64 = 1.2;
    /// Concrete, EN 1992-1-1 Table 2.1N.
    pub const CONCRETE: f64 = 1.5;
}

/// What a characteristic strength is divided by. Written as the product that it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Divisor {
    material: f64,
    further: f64,
}

impl Divisor {
    /// Working load: partial factor × 1.5, which for steel is the usual 1.65. Class B1: partial factor.
    /// Class B2: partial factor × 1.15.
    pub fn new(basis: Basis, material: f64) -> Self {
        let further = match basis {
            Basis::WorkingLoad => LOAD_FACTOR,
            Basis::LimitStateB1 => 1.0,
            Basis::LimitStateB2 => CLASS_B2,
        };
        Self { material, further }
    }

    pub fn value(self) -> f64 {
        self.material * self.further
    }
}

impl From<Divisor> for Value {
    fn from(Divisor { material, further }: Divisor) -> Self {
        if further == 1.0 {
            return stated(material);
        }
        formula!("({} × {})", stated(material), stated(further)).into()
    }
}

/// What a stated working load becomes on a basis, as `factor` on it. A stated working load is taken as the
/// characteristic resistance of steel equipment by 1.65.
pub(super) fn stated_load_factor(basis: Basis) -> f64 {
    Divisor::new(Basis::WorkingLoad, gamma::STEEL).value() / Divisor::new(basis, gamma::STEEL).value()
}

/// What an allowable ground pressure becomes on a basis. Limit-state forces carry at least the permanent load
/// factor 1.35, so that 1.35 times the allowable pressure is safe against them.
pub(super) fn allowable_pressure_factor(basis: Basis) -> f64 {
    match basis {
        Basis::WorkingLoad => 1.0,
        Basis::LimitStateB1 => 1.35,
        Basis::LimitStateB2 => 1.35 / CLASS_B2,
    }
}
