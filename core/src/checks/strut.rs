//! Round tubes in compression and bending, EN 1993-1-1 6.3.3 with Annex B.

use super::buckling::{critical_force_kn, imperfection, reduction, slenderness};
use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
use super::en1993::{added_up, equivalent_moment, interaction_rate, tube_class};
use super::steel::source;
use crate::catalogue::Tube;
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::{Sentence, word};

/// Forces of a strut between two points held sideways.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StrutForces {
    /// Compression.
    pub compression_kn: f64,
    /// Moment of the frame along it, beside that of the eccentricities.
    pub moment_knm: f64,
    /// Eccentricity of the compression at its head.
    pub head_m: f64,
    /// Eccentricity at its base, to the same side.
    pub base_m: f64,
}

impl StrutForces {
    /// Compression along the axis only.
    pub fn axial(compression_kn: f64) -> Self {
        Self { compression_kn, ..Self::default() }
    }

    fn eccentricity_m(&self) -> f64 {
        self.head_m.abs().max(self.base_m.abs())
    }

    /// `Cm` of the end moments from eccentricity.
    fn equivalent_moment(&self) -> f64 {
        let greatest = self.eccentricity_m();
        let psi = if greatest > 0.0 { self.head_m * self.base_m / (greatest * greatest) } else { 1.0 };
        equivalent_moment(psi)
    }
}

pub(super) struct Strut<'a> {
    pub tube: Tube,
    pub yield_mpa: f64,
    pub curve: &'a str,
    pub length_m: f64,
}

/// What a strut resists on a basis.
struct Resistances {
    divisor: Divisor,
    slenderness: f64,
    chi: f64,
    /// Against buckling along its axis.
    buckling_kn: f64,
    /// Of its section.
    squash_kn: f64,
    moment_knm: f64,
    class: u8,
}

impl Strut<'_> {
    /// Buckling, with bending where there is any; then the section at the end with the greater moment.
    pub fn check(&self, basis: Basis, forces: &StrutForces) -> Vec<Verdict> {
        let compression = forces.compression_kn;
        let resistances = match self.resistances(basis) {
            Ok(resistances) => resistances,
            Err(reason) => return vec![no_resistance(CheckKind::Buckling, compression, "kN", &reason)],
        };
        let bends = forces.eccentricity_m() > 0.0 || forces.moment_knm != 0.0;
        if !bends {
            return vec![self.axial(&resistances, basis, compression)];
        }
        vec![self.combined(&resistances, basis, forces), self.section(&resistances, basis, forces)]
    }

    fn resistances(&self, basis: Basis) -> Result<Resistances, String> {
        let alpha = imperfection(self.curve).ok_or_else(|| format!("no buckling curve named {}", self.curve))?;
        let class = tube_class(self.tube.diameter_m / self.tube.wall_m, self.yield_mpa)
            .ok_or("the tube is of class 4 of EN 1993-1-1, which is not covered")?;
        let divisor = Divisor::new(basis, gamma::STEEL);
        let squash = self.tube.area_m2() * self.yield_mpa * 1e3;
        let slenderness = slenderness(squash, critical_force_kn(self.tube.inertia_m4(), self.length_m));
        let chi = reduction(slenderness, alpha);
        let modulus = if class <= 2 { self.tube.plastic_modulus_m3() } else { self.tube.elastic_modulus_m3() };
        Ok(Resistances {
            divisor,
            slenderness,
            chi,
            buckling_kn: chi * squash / divisor.value(),
            squash_kn: squash / divisor.value(),
            moment_knm: modulus * self.yield_mpa * 1e3 / divisor.value(),
            class,
        })
    }

    fn given(&self, resistances: &Resistances) -> Sentence {
        formula!("L = {} m, λ = {}, curve {}", number(self.length_m), number(resistances.slenderness), self.curve)
    }

    fn axial(&self, resistances: &Resistances, basis: Basis, force_kn: f64) -> Verdict {
        let comparison = Comparison {
            check: CheckKind::Buckling,
            demand: force_kn,
            resistance: resistances.buckling_kn,
            unit: "kN",
            source: source("EN 1993-1-1 6.3.1", basis),
        };
        let numbers = formula!(
            "{} kN / ({} × {} mm² × {} N/mm² / {})",
            number(force_kn),
            number(resistances.chi),
            number(self.tube.area_m2() * 1e6),
            number(self.yield_mpa),
            resistances.divisor
        );
        comparison.verdict_given(self.given(resistances), "N / (χ A fy / γ)", numbers)
    }

    /// `N / Nb + k (Cm N e + M) / Mc`, with `k` as at failure and `Cm` 1 for the moment of the frame.
    fn combined(&self, resistances: &Resistances, basis: Basis, forces: &StrutForces) -> Verdict {
        let given = formula!(
            "{}; Nb = χ A fy / γ with χ = {}, Mc = W fy / γ",
            self.given(resistances),
            number(resistances.chi)
        );
        Sum {
            check: CheckKind::Buckling,
            axial: ("Nb", resistances.buckling_kn),
            k: ("k ", factor_at_failure(resistances, forces)),
            share: ("Cm ", forces.equivalent_moment()),
            frame_knm: forces.moment_knm.abs(),
            source: source("EN 1993-1-1 6.3.3, Annex B", basis),
            given,
        }
        .verdict(forces, resistances.moment_knm)
    }

    /// `N / Npl + M / Mc` at the eccentric end, or where the frame bends the strut and half of the end's moment may
    /// carry over.
    fn section(&self, resistances: &Resistances, basis: Basis, forces: &StrutForces) -> Verdict {
        let at_end = forces.compression_kn.max(0.0) * forces.eccentricity_m();
        let frame_knm = forces.moment_knm.abs();
        let (share, frame_knm) =
            if at_end >= CARRIED_OVER * at_end + frame_knm { (1.0, 0.0) } else { (CARRIED_OVER, frame_knm) };
        Sum {
            check: CheckKind::Bending,
            axial: ("Npl", resistances.squash_kn),
            k: ("", 1.0),
            share: ("c ", share),
            frame_knm,
            source: source("EN 1993-1-1 6.2.1(7)", basis),
            given: "Npl = A fy / γ, Mc = W fy / γ".into(),
        }
        .verdict(forces, resistances.moment_knm)
    }
}

/// Most of an end's moment that reaches the next support of a continuous strut: half, where that support is fixed.
const CARRIED_OVER: f64 = 0.5;

/// `k = 1 + a n` where the sum reaches 1: `n + (1 + a n) n r = 1` with `n = N / Nb` and `r = Nb e / Mc`, the moment of
/// the frame in proportion to the force.
fn factor_at_failure(resistances: &Resistances, forces: &StrutForces) -> f64 {
    let rate = interaction_rate(resistances.slenderness, resistances.class <= 2);
    let StrutForces { compression_kn, moment_knm, .. } = *forces;
    let by_frame = if compression_kn > 0.0 { moment_knm.abs() / compression_kn } else { 0.0 };
    let lever_m = forces.equivalent_moment() * forces.eccentricity_m() + by_frame;
    let r = resistances.buckling_kn * lever_m / resistances.moment_knm;
    let n = 2.0 / (1.0 + r + ((1.0 + r) * (1.0 + r) + 4.0 * rate * r).sqrt());
    1.0 + rate * n
}

/// A sum of axial force and moment by their resistances: `N / NR + k (share N e + M) / Mc`.
struct Sum {
    check: CheckKind,
    axial: (&'static str, f64),
    k: (&'static str, f64),
    share: (&'static str, f64),
    frame_knm: f64,
    source: Sentence,
    given: Sentence,
}

impl Sum {
    fn verdict(self, forces: &StrutForces, moment_knm: f64) -> Verdict {
        let (compression_kn, eccentricity_m) = (forces.compression_kn, forces.eccentricity_m());
        let total_knm = self.k.1 * (self.share.1 * compression_kn.max(0.0) * eccentricity_m + self.frame_knm);
        let ratio = added_up(compression_kn / self.axial.1, total_knm / moment_knm);
        let comparison = Comparison {
            check: self.check,
            demand: compression_kn,
            resistance: if ratio > 0.0 { compression_kn / ratio } else { self.axial.1 },
            unit: "kN",
            source: self.source,
        };
        let symbols = formula!("N / {} + {}({}N e + M) / Mc", word(self.axial.0), word(self.k.0), word(self.share.0));
        let numbers = formula!(
            "{} kN / {} kN + {} × ({} × {} kN × {} m + {} kNm) / {} kNm",
            number(compression_kn),
            number(self.axial.1),
            number(self.k.1),
            number(self.share.1),
            number(compression_kn.max(0.0)),
            number(eccentricity_m),
            number(self.frame_knm),
            number(moment_knm)
        );
        comparison.verdict_given(self.given, symbols, numbers)
    }
}
