//! Concrete by EN 1992-1-1, as what young slabs and anchors bear. Strengths N/mm²; characteristic unless said.

use super::comparison::Comparison;
use super::divisor::{Divisor, gamma};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
pub use crate::scheme::Cement;
use std::f64::consts::PI;

impl Cement {
    /// 0.20, 0.25 and 0.38 of classes R, N and S.
    fn s(self) -> f64 {
        match self {
            Self::Rapid => 0.20,
            Self::Normal => 0.25,
            Self::Slow => 0.38,
        }
    }

    /// `βcc(t) = exp{s [1 − √(28 / t)]}`, 3.1.2(6); `t` days at 20 °C.
    pub fn hardening(self, days: f64) -> f64 {
        if days > 0.0 { libm::exp(self.s() * (1.0 - (28.0 / days).sqrt())) } else { 0.0 }
    }

    /// Age at which a part of the 28-day mean strength is reached, days at 20 °C.
    pub fn age_at(self, part: f64) -> f64 {
        let root = 1.0 - libm::log(part) / self.s();
        28.0 / (root * root)
    }
}

/// Mean strength `fcm = fck + 8`, Table 3.1.
pub fn mean_strength(fck: f64) -> f64 {
    fck + 8.0
}

/// `fcm(t)`, 3.1.2(6).
pub fn mean_strength_at(fck: f64, cement: Cement, days: f64) -> f64 {
    cement.hardening(days) * mean_strength(fck)
}

/// `fck(t) = fcm(t) − 8` from 3 to 28 days, 3.1.2(5); nothing counted before.
pub fn characteristic_strength_at(fck: f64, cement: Cement, days: f64) -> f64 {
    match days {
        t if t < 3.0 => 0.0,
        t if t < 28.0 => (mean_strength_at(fck, cement, t) - 8.0).max(0.0),
        _ => fck,
    }
}

/// Mean tensile strength, Table 3.1, up to C50/60: `0.30 fck^(2/3)`.
pub fn mean_tension(fck: f64) -> f64 {
    0.30 * libm::cbrt(fck * fck)
}

/// `fctm(t) = βcc(t)^α fctm`, 3.1.2(9): `α` is 1 before 28 days, 2/3 after.
pub fn mean_tension_at(fck: f64, cement: Cement, days: f64) -> f64 {
    let hardened = cement.hardening(days);
    mean_tension(fck) * if days < 28.0 { hardened } else { libm::cbrt(hardened * hardened) }
}

/// Secant modulus, Table 3.1, N/mm²: `22 000 (fcm / 10)^0.3`.
pub fn modulus(fck: f64) -> f64 {
    22_000.0 * libm::pow(mean_strength(fck) / 10.0, 0.3)
}

/// Plan of a plate on a slab, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateOnSlab {
    /// Sides of the plate.
    pub sides_m: [f64; 2],
    /// Thickness of the slab.
    pub slab_m: f64,
    /// From the middle of the plate to the nearest edge of the slab.
    pub to_edge_m: f64,
}

impl PlateOnSlab {
    /// Partially loaded area, 6.7(2): `Ac0 fcd √(Ac1 / Ac0) ≤ 3 fcd Ac0`, kN. The area below keeps the shape of the plate,
    /// is no more than three times as wide, no deeper than its spread allows, and ends at the edge.
    pub fn local_bearing_kn(&self, design_mpa: f64) -> f64 {
        let [a, b] = self.sides_m;
        let scale = [a, b].into_iter().fold(3.0, |least: f64, side| {
            least.min((side + self.slab_m) / side).min((2.0 * self.to_edge_m / side).max(0.0))
        });
        a * b * design_mpa * scale * 1e3
    }

    /// Control perimeter `2 d` from the plate, 6.4.2, m: cut off by an edge that is near.
    pub fn control_perimeter_m(&self, effective_depth_m: f64) -> f64 {
        let [a, b] = self.sides_m;
        let reach = 2.0 * effective_depth_m;
        let inside = 2.0 * (a + b) + 2.0 * PI * reach;
        let from_side = self.to_edge_m - a / 2.0;
        if from_side >= reach { inside } else { (b + 2.0 * (a / 2.0 + self.to_edge_m) + PI * reach).min(inside) }
    }

    /// Punching without shear reinforcement, 6.4.4, kN: `vRd,c u1 d`.
    pub fn punching_kn(&self, fck: f64, ratio: f64, effective_depth_m: f64, gamma: f64) -> f64 {
        let stress = punching_stress(fck, ratio, effective_depth_m, gamma);
        stress * self.control_perimeter_m(effective_depth_m) * effective_depth_m * 1e3
    }
}

/// `vRd,c = 0.18 / γC k (100 ρ fck)^⅓ ≥ 0.035 k^1.5 √fck`, `k = 1 + √(200 / d) ≤ 2`, 6.4.4(1), N/mm².
pub fn punching_stress(fck: f64, ratio: f64, effective_depth_m: f64, gamma: f64) -> f64 {
    let k = (1.0 + (0.2 / effective_depth_m).sqrt()).min(2.0);
    let by_steel = 0.18 / gamma * k * libm::cbrt(100.0 * ratio.min(0.02) * fck);
    by_steel.max(0.035 * k * k.sqrt() * fck.sqrt())
}

/// An anchor cast into concrete, alone, in tension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Anchor {
    /// Depth of its head.
    pub depth_m: f64,
    /// Diameter of its head.
    pub head_m: f64,
    /// Diameter of its rod.
    pub rod_m: f64,
    /// To the nearest edge of the concrete.
    pub edge_m: f64,
    /// To the next anchor.
    pub spacing_m: f64,
    /// Whether the concrete is cracked.
    pub cracked: bool,
}

impl Anchor {
    /// Concrete cone, EN 1992-4 7.2.1.4 (from memory), kN: `k1 √fck hef^1.5 Ac,N / A⁰c,N ψs`, `k1` 8.9 cracked, 12.7 not.
    /// Spacing and one edge cut the cone of side `3 hef`.
    pub fn cone_kn(&self, fck: f64) -> f64 {
        let depth_mm = self.depth_m * 1e3;
        let k1 = if self.cracked { 8.9 } else { 12.7 };
        let alone = k1 * fck.sqrt() * depth_mm * depth_mm.sqrt() * 1e-3;
        let half = 1.5 * self.depth_m;
        let near = self.edge_m.min(half);
        let along = self.spacing_m.min(2.0 * half);
        let area = (near + half) * along / (4.0 * half * half);
        alone * area * (0.7 + 0.3 * self.edge_m / half).min(1.0)
    }

    /// Pull-out of the head, EN 1992-4 7.2.1.5 (from memory), kN: `k2 Ah fck`, `k2` 7.5 cracked, 10.5 not.
    pub fn pull_out_kn(&self, fck: f64) -> f64 {
        let area = PI / 4.0 * (self.head_m * self.head_m - self.rod_m * self.rod_m) * 1e6;
        (if self.cracked { 7.5 } else { 10.5 }) * area * fck * 1e-3
    }

    /// Lesser of cone and pull-out, kN.
    pub fn characteristic_kn(&self, fck: f64) -> f64 {
        self.cone_kn(fck).min(self.pull_out_kn(fck))
    }

    /// Tension against cone and pull-out in concrete of the strength that it has when pulled.
    pub fn check(&self, basis: Basis, fck: f64, tension_kn: f64) -> Verdict {
        let divisor = Divisor::new(basis, gamma::CONCRETE);
        let comparison = Comparison {
            check: CheckKind::Tension,
            demand: tension_kn,
            resistance: self.characteristic_kn(fck) / divisor.value(),
            unit: "kN",
            source: "EN 1992-4 7.2.1 (from memory), γMc 1.5".into(),
        };
        let numbers = formula!(
            "{} kN / (least of ({} kN, {} kN) / {})",
            number(tension_kn),
            number(self.cone_kn(fck)),
            number(self.pull_out_kn(fck)),
            divisor
        );
        let given = formula!("fck = {} N/mm², cone and pull-out", number(fck));
        comparison.verdict_given(given, "F / (FRk / γ)", numbers)
    }
}

impl Anchor {
    /// Concrete edge, EN 1992-4 7.2.2.5 (from memory), kN, in concrete deeper than 1.5 times the distance to its one edge:
    /// `k9 d^α lf^β √fck c1^1.5`, `k9` 1.7 cracked, 2.4 not, `α = 0.1 √(lf / c1)`, `β = 0.1 (d / c1)^0.2`.
    pub fn edge_kn(&self, fck: f64) -> f64 {
        let (d, edge) = (self.rod_m * 1e3, self.edge_m * 1e3);
        let length = (self.depth_m * 1e3).min(12.0 * d);
        let alpha = 0.1 * (length / edge).sqrt();
        let beta = 0.1 * libm::pow(d / edge, 0.2);
        let k9 = if self.cracked { 1.7 } else { 2.4 };
        k9 * libm::pow(d, alpha) * libm::pow(length, beta) * fck.sqrt() * edge * edge.sqrt() * 1e-3
    }

    /// Shear, EN 1992-4 7.2.2 (from memory), kN: the lesser of pry-out, `k8` times the cone with `k8` 2 from 60 mm of depth
    /// and 1 below, and the concrete edge. The rod itself is not looked at.
    pub fn shear_kn(&self, fck: f64) -> f64 {
        let k8 = if self.depth_m >= 0.06 { 2.0 } else { 1.0 };
        (k8 * self.cone_kn(fck)).min(self.edge_kn(fck))
    }

    /// Tension and shear at once in concrete of the strength that it has when pulled: their ratios added, which is on the
    /// safe side of EN 1992-4 7.2.3.
    pub fn check_together(&self, basis: Basis, fck: f64, tension_kn: f64, shear_kn: f64) -> Verdict {
        let divisor = Divisor::new(basis, gamma::CONCRETE);
        let (tension, shear) = (self.characteristic_kn(fck), self.shear_kn(fck));
        let comparison = Comparison {
            check: CheckKind::Anchorage,
            demand: (tension_kn / tension + shear_kn / shear) * divisor.value(),
            resistance: 1.0,
            unit: "",
            source: "EN 1992-4 7.2.1 to 7.2.3, added (from memory), γMc 1.5".into(),
        };
        let numbers = formula!(
            "{} kN / ({} kN / {}) + {} kN / ({} kN / {})",
            number(tension_kn),
            number(tension),
            divisor,
            number(shear_kn),
            number(shear),
            divisor
        );
        let given = formula!("fck = {} N/mm², cone, pull-out, pry-out and edge", number(fck));
        comparison.verdict_given(given, "N / (NRk / γ) + V / (VRk / γ)", numbers)
    }
}

impl PlateOnSlab {
    /// Local bearing and punching of a slab without shear reinforcement, by the strength that it has when loaded. `ratio`
    /// is that of its tension reinforcement.
    pub fn check(&self, basis: Basis, fck: f64, ratio: f64, effective_depth_m: f64, force_kn: f64) -> [Verdict; 2] {
        let divisor = Divisor::new(basis, gamma::CONCRETE);
        let design_mpa = ALPHA_CC * fck / divisor.value();
        let bearing = self.local_bearing_kn(design_mpa);
        let [a, b] = self.sides_m;
        let local = Comparison {
            check: CheckKind::BasePressure,
            demand: force_kn,
            resistance: bearing,
            unit: "kN",
            source: "EN 1992-1-1 6.7(2)".into(),
        };
        let local_numbers = formula!(
            "{} kN / ({} × {} m × {} m × {} × {} N/mm² / {})",
            number(force_kn),
            number(bearing / (a * b * design_mpa * 1e3)),
            number(a),
            number(b),
            stated(ALPHA_CC),
            number(fck),
            divisor
        );
        // The least stress of 6.4.4 holds for γC 1.5; a further factor of the basis divides it too.
        let further = gamma::CONCRETE / divisor.value();
        let stress = punching_stress(fck, ratio, effective_depth_m, gamma::CONCRETE) * further;
        let perimeter = self.control_perimeter_m(effective_depth_m);
        let punching = Comparison {
            check: CheckKind::Shear,
            demand: force_kn,
            resistance: self.punching_kn(fck, ratio, effective_depth_m, gamma::CONCRETE) * further,
            unit: "kN",
            source: "EN 1992-1-1 6.4.4".into(),
        };
        let punching_numbers = formula!(
            "{} kN / ({} N/mm² × {} m × {} m)",
            number(force_kn),
            number(stress),
            number(perimeter),
            number(effective_depth_m)
        );
        [
            local.verdict("F / (√(Ac1 / Ac0) Ac0 αcc fck / γ)", local_numbers),
            punching.verdict("V / (vRd,c u1 d)", punching_numbers),
        ]
    }
}

/// `αcc` of the UK annex to EN 1992-1-1.
const ALPHA_CC: f64 = 0.85;
