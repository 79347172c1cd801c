use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
use super::en1995;
use crate::catalogue::Item;
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// Bending and rolling shear of a board, per metre of width. Shear as in a solid rectangle, `1.5 V / t`, against the
/// planar shear strength.
pub fn check_board(item: &Item, basis: Basis, moment_knm_m: f64, shear_kn_m: f64) -> Vec<Verdict> {
    let (moment, shear) = (moment_knm_m.abs(), shear_kn_m.abs());
    let Some(board) = item.board() else {
        let reason = format!("{} is not a board", item.code);
        return vec![no_resistance(CheckKind::Bending, moment, "kNm/m", &reason)];
    };
    let divisor = Divisor::new(basis, gamma::PLYWOOD);
    let kmod = en1995::formwork_kmod();
    let factor = kmod / divisor.value();
    let source = match basis {
        Basis::WorkingLoad => "Common practice: EN 1995-1-1 strength (kmod 0.7, γM 1.2) by a load factor of 1.5",
        Basis::LimitStateB1 => "EN 1995-1-1 6.1, kmod 0.7, γM 1.2",
        Basis::LimitStateB2 => "EN 1995-1-1 6.1, kmod 0.7, γM 1.2; EN 12812 class B2",
    };
    let bending = Comparison {
        check: CheckKind::Bending,
        demand: moment,
        resistance: factor * board.bending_mpa * 1e3 * board.modulus_m3_m,
        unit: "kNm/m",
        source: source.into(),
    };
    let bending_numbers = formula!(
        "{} kNm/m / ({} × {} N/mm² × {} cm³/m / {})",
        number(moment),
        stated(kmod),
        number(board.bending_mpa),
        number(board.modulus_m3_m * 1e6),
        divisor
    );
    let rolling = Comparison {
        check: CheckKind::Shear,
        demand: shear,
        resistance: factor * board.shear_mpa * 1e3 * board.thickness_m / 1.5,
        unit: "kN/m",
        source: source.into(),
    };
    let rolling_numbers = formula!(
        "1.5 × {} kN/m / ({} × {} N/mm² × {} mm / {})",
        number(shear),
        stated(kmod),
        number(board.shear_mpa),
        number(board.thickness_m * 1e3),
        divisor
    );
    vec![
        bending.verdict("M / (kmod fm W / γ)", bending_numbers),
        rolling.verdict("1.5 V / (kmod fv t / γ)", rolling_numbers),
    ]
}
