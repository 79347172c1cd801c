use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::catalogue::{Catalogue, Item, Stack, Stacked};
use falsewright_core::checks::{StrutForces, check_leg, check_stack};
use falsewright_core::results::CheckKind;
use falsewright_core::scheme::Basis;

fn leg48() -> Item {
    Catalogue::generic().get("LEG48").unwrap_or_else(|| panic!("no LEG48")).clone()
}

fn stack(item: &Item) -> Stack {
    item.leg().and_then(|leg| leg.stack.clone()).unwrap_or_else(|| panic!("no stack"))
}

/// Standards of 0.5 to 3.0 m, both jacks 0.05 to 0.45 m, whole load up to 0.3 m, 0.7 of it at 0.45 m.
pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Standards and jacks");
    let item = leg48();
    let stack = stack(&item);
    let under =
        |height_m| stack.under(height_m).unwrap_or(Stacked { standards: 0, head_m: f64::NAN, base_m: f64::NAN });
    rows.from("By hand: 3.70 − 3.0 − 0.5 in two jacks", "m", FOUR_FIGURES);
    rows.check("Jacks under 3.70 m", 0.10, under(3.70).head_m);
    rows.from("By hand: (2.83 − 2.5) / 2", "m", FOUR_FIGURES);
    rows.check("Jacks under 2.83 m", 0.165, under(2.83).base_m);
    rows.from("By hand: 1 − 0.3 × (0.40 − 0.30) / (0.45 − 0.30)", "", FOUR_FIGURES);
    rows.check("Part of its load at 0.40 m", 0.8, stack.part_at(0.40, 0.45));
    // Play 40.3 − 38.3 = 2 mm: ψ = 1.25 × 2 / 150 = 0.016667; 20 kN × ψ × 1.5 / 4 = 0.1250 kNm.
    let (axial, basis) = (StrutForces::axial(20.0), Basis::WorkingLoad);
    let kinked = StrutForces { moment_knm: 0.125, ..axial };
    let expected =
        check_leg(&item, basis, &kinked, 1.5).iter().take(2).map(|verdict| verdict.ratio()).fold(0.0, f64::max);
    let spigot = check_stack(&item, basis, &axial, 3.70, 1.5, false);
    let got =
        spigot.iter().find(|verdict| verdict.check == CheckKind::Spigot).map_or(f64::NAN, |verdict| verdict.ratio());
    rows.from("The same moment by hand, EN 12811-1 10.2.2.2: 20 kN × 1.25 × 2 / 150 × 1.5 m / 4", "", FOUR_FIGURES);
    rows.check("48.3 × 4.0 kinked by its spigots, 20 kN, 1.5 m", expected, got);
    rows.rows
}
