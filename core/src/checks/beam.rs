use super::comparison::no_resistance;
use super::en1995::{KN_SOLID, Notch};
use super::timber_strut::check_notch;
use super::{rated_beam, steel, timber, timber_beam};
use crate::catalogue::{EndNotch, Item, Kind};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// Greatest forces of a beam, without sign.
#[derive(Clone, Copy, Debug)]
pub(super) struct BeamForces {
    pub moment_knm: f64,
    pub shear_kn: f64,
    pub bearing_kn: Option<f64>,
    pub bearing_length_m: f64,
}

/// Bending, shear and, where a support force is given, bearing of timber, a timber formwork beam, a rated beam or a steel section.
/// Greatest moment and shear are taken as if they met at one place.
pub fn check_beam(
    item: &Item,
    basis: Basis,
    moment_knm: f64,
    shear_kn: f64,
    bearing_kn: Option<f64>,
    bearing_length_m: f64,
) -> Vec<Verdict> {
    let forces = BeamForces {
        moment_knm: moment_knm.abs(),
        shear_kn: shear_kn.abs(),
        bearing_kn: bearing_kn.map(f64::abs),
        bearing_length_m: bearing_length_m.max(0.0),
    };
    match &item.kind {
        Kind::Timber(timber) => {
            let mut verdicts = timber::check(timber, basis, forces);
            if let Some(EndNotch { left_m, from_support_m, taper }) = timber.notch {
                let notch = Notch {
                    depth_mm: timber.depth_m * 1e3,
                    left_mm: left_m * 1e3,
                    from_support_mm: from_support_m * 1e3,
                    taper,
                    kn: KN_SOLID,
                };
                verdicts.push(check_notch(item, basis, forces.shear_kn, &notch));
            }
            verdicts
        }
        Kind::TimberBeam(beam) => timber_beam::check(beam, basis, forces),
        Kind::RatedBeam(beam) => rated_beam::check(beam, basis, forces),
        Kind::Steel(steel) => steel::check(steel, basis, forces),
        _ => {
            let reason = format!("{} is not a beam", item.code);
            vec![no_resistance(CheckKind::Bending, forces.moment_knm, "kNm", &reason)]
        }
    }
}
