//! Factors on loads. Permanent 1.35, variable 1.5 and favourable 0.9 of EN 12812 are from memory; 1.5 on the pressure of
//! fresh concrete as in DIN 18218:2010 (from memory). Which loads meet is in [`super::combinations`].

use crate::scheme::Basis;

/// Factors on unfavourable loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Self weight, and fresh concrete on soffits once placed.
    pub permanent: f64,
    /// Construction operations and wind.
    pub variable: f64,
    /// Lateral pressure of fresh concrete on shutters.
    pub fresh_concrete_pressure: f64,
}

/// Factors of a basis: 1.0 against permissible values, or those of limit states.
pub fn factors(basis: Basis) -> Factors {
    match basis {
        Basis::WorkingLoad => Factors { permanent: 1.0, variable: 1.0, fresh_concrete_pressure: 1.0 },
        Basis::LimitStateB1 | Basis::LimitStateB2 => {
            Factors { permanent: 1.35, variable: 1.5, fresh_concrete_pressure: 1.5 }
        }
    }
}

/// Permanent and variable load together, each unfavourable.
pub fn combined(factors: Factors, permanent: f64, variable: f64) -> f64 {
    factors.permanent * permanent + factors.variable * variable
}

/// Standing against overturning, uplift and sliding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// On what holds.
    pub favourable: f64,
    /// On permanent loads that tip.
    pub permanent: f64,
    /// On variable loads that tip.
    pub variable: f64,
}

/// Factors of balance: 1.2 in all on the working-load basis, 0.9 against 1.35 and 1.5 in limit states.
pub fn balance(basis: Basis) -> Balance {
    match basis {
        Basis::WorkingLoad => Balance { favourable: 1.0, permanent: 1.2, variable: 1.2 },
        Basis::LimitStateB1 | Basis::LimitStateB2 => Balance { favourable: 0.9, permanent: 1.35, variable: 1.5 },
    }
}
