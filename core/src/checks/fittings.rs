//! Tube fittings, known by their published loads, and the plates of ties.

use super::comparison::Comparison;
use super::divisor::{Divisor, gamma, stated_load_factor};
use crate::catalogue::{Item, Kind};
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// Couplers of EN 74-1 on 48.3 mm tube.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coupler {
    /// Right-angle, class A.
    RightAngleA,
    /// Right-angle, class B.
    RightAngleB,
    /// Sleeve in tension or swivel, class A.
    SwivelA,
    /// Sleeve in tension or swivel, class B.
    SwivelB,
    /// Putlog.
    Putlog,
}

impl Coupler {
    /// Safe working slip, NASC TG20:13 (confirmed in print), kN.
    pub fn working_kn(self) -> f64 {
        match self {
            Self::RightAngleA => 6.1,
            Self::RightAngleB => 9.1,
            Self::SwivelA => 3.6,
            Self::SwivelB => 5.5,
            Self::Putlog => 0.63,
        }
    }

    /// What a basis allows, kN.
    pub fn allowed_kn(self, basis: Basis) -> f64 {
        stated_load_factor(basis) * self.working_kn()
    }
}

/// A spigot that joins two tubes end to end: how far it lets them kink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spigot {
    /// Inside diameter of the tubes.
    pub inside_m: f64,
    /// Diameter of the spigot.
    pub spigot_m: f64,
    /// How far it enters each tube.
    pub lap_m: f64,
}

impl Spigot {
    /// Kink between the tubes by the play on both sides, EN 12811-1 10.2.2.2 (from memory): `tan ψ = 1.25 d / l0`, rad.
    pub fn kink(&self) -> f64 {
        1.25 * (self.inside_m - self.spigot_m).max(0.0) / self.lap_m
    }

    /// Eccentricity that the play lets a force have, m.
    pub fn eccentricity_m(&self) -> f64 {
        (self.inside_m - self.spigot_m).max(0.0) / 2.0
    }
}

/// Steel plate of a tie over the gap between a waling's two sections.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TiePlate {
    /// Along the waling.
    pub length_m: f64,
    /// Across it.
    pub width_m: f64,
    /// Thickness.
    pub thickness_m: f64,
    /// Gap that it bridges.
    pub gap_m: f64,
    /// Hole for the rod.
    pub hole_m: f64,
    /// Nut or washer that presses on it.
    pub nut_m: f64,
    /// Yield strength.
    pub yield_mpa: f64,
}

impl TiePlate {
    /// Bending of the plate as a beam over the gap under the nut, EN 1993-1-1 6.2.5, plastic: `M = F (gap / 4 − nut / 8)`.
    pub fn check_bending(&self, basis: Basis, force_kn: f64) -> Verdict {
        let arm_m = (self.gap_m / 4.0 - self.nut_m / 8.0).max(self.hole_m / 8.0);
        let modulus_mm3 = (self.length_m - self.hole_m).max(0.0) * self.thickness_m * self.thickness_m / 4.0 * 1e9;
        let divisor = Divisor::new(basis, gamma::STEEL);
        let comparison = Comparison {
            check: CheckKind::Bending,
            demand: force_kn * arm_m,
            resistance: super::en1993::moment_knm(modulus_mm3, self.yield_mpa) / divisor.value(),
            unit: "kNm",
            source: super::steel::source("EN 1993-1-1 6.2.5", basis),
        };
        let numbers = formula!(
            "{} kN × {} m / ({} mm³ × {} N/mm² / {})",
            number(force_kn),
            number(arm_m),
            number(modulus_mm3),
            number(self.yield_mpa),
            divisor
        );
        comparison.verdict("F (g / 4 − d / 8) / (Wpl fy / γ)", numbers)
    }

    /// Bending of the plate where it presses evenly on what it lies on and stands out from the nut, EN 1993-1-1 6.2.5,
    /// plastic: `M = F (l − d)² / (8 l)` over its width less the hole.
    pub fn check_overhang(&self, basis: Basis, force_kn: f64) -> Verdict {
        let beyond_m = (self.length_m - self.nut_m).max(0.0);
        let modulus_mm3 = (self.width_m - self.hole_m).max(0.0) * self.thickness_m * self.thickness_m / 4.0 * 1e9;
        let divisor = Divisor::new(basis, gamma::STEEL);
        let comparison = Comparison {
            check: CheckKind::Bending,
            demand: force_kn * beyond_m * beyond_m / (8.0 * self.length_m),
            resistance: super::en1993::moment_knm(modulus_mm3, self.yield_mpa) / divisor.value(),
            unit: "kNm",
            source: super::steel::source("EN 1993-1-1 6.2.5", basis),
        };
        let numbers = formula!(
            "{} kN × ({} m)² / (8 × {} m) / ({} mm³ × {} N/mm² / {})",
            number(force_kn),
            number(beyond_m),
            number(self.length_m),
            number(modulus_mm3),
            number(self.yield_mpa),
            divisor
        );
        comparison.verdict("F (l − d)² / (8 l) / (Wpl fy / γ)", numbers)
    }

    /// Bearing on a sawn timber across the grain, the hole taken off; none on other primaries, whose own bearing is
    /// checked.
    pub fn check_on_timber(&self, primary: &Item, basis: Basis, force_kn: f64) -> Option<Verdict> {
        let Kind::Timber(timber) = &primary.kind else { return None };
        let across_m = self.width_m.min(timber.breadth_m);
        Some(super::timber::check_plate(timber, basis, [self.length_m, across_m, self.hole_m], force_kn))
    }

    /// Length of each waling section that the plate presses on, mm, for its web.
    pub fn stiff_bearing_mm(&self) -> f64 {
        (self.length_m + 2.0 * self.thickness_m) * 1e3
    }
}
