use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::catalogue::Section;
use falsewright_core::checks::hollow::{side_wall_kn, tube_wall_kn};

/// Published tables have three figures.
pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Hollow beams");
    let square = Section::Hollow { h_mm: 100.0, b_mm: 100.0, t_mm: 5.0 }.properties();
    rows.from("EN 10210-2 Annex B (from memory)", "cm²", 0.005).check(
        "A of 100 × 100 × 5",
        18.7,
        square.area_mm2 / 1e2,
    );
    rows.from("EN 10210-2 Annex B (from memory)", "cm³", 0.005);
    rows.check("Wpl of 100 × 100 × 5", 66.4, square.plastic_modulus_mm3 / 1e3);
    let tube = Section::Round { d_mm: 48.3, t_mm: 4.0 }.properties();
    rows.from("EN 39 tube, worked independently", "cm²", FOUR_FIGURES).check(
        "A of 48.3 × 4.0",
        5.567,
        tube.area_mm2 / 1e2,
    );
    rows.from("EN 39 tube, worked independently", "cm³", FOUR_FIGURES);
    rows.check("Wpl of 48.3 × 4.0", 7.871, tube.plastic_modulus_mm3 / 1e3);
    rows.from("EN 1993-1-8 Table 7.11 from memory, by hand: λ 0.9876, χ 0.6743", "kN", FOUR_FIGURES);
    rows.check("Side wall of 150 × 100 × 6.3 S355 on 100 mm", 174.55, side_wall_kn(150.0, 6.3, 355.0, 100.0));
    rows.from("EN 1993-1-8 Table 7.3 from memory, by hand: kp 0.775, η 2.070", "kN", FOUR_FIGURES);
    rows.check("48.3 × 4.0 S235 on 100 mm, half stressed", 22.11, tube_wall_kn(48.3, 4.0, 235.0, 100.0, 0.5));
    rows.rows
}
