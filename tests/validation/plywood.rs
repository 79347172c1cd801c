use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::catalogue::{Catalogue, Grain, LayUp, board_section};
use falsewright_core::checks::check_board;
use falsewright_core::scheme::Basis;

/// Nominal thickness, plies, mean thickness, W, I, fm along and across, E along and across.
const BIRCH: [(u32, u32, [f64; 7]); 8] = [
    (9, 7, [9.2, 14.1, 64.9, 45.6, 32.1, 11395.0, 6105.0]),
    (12, 9, [12.0, 24.0, 144.0, 42.9, 33.2, 10719.0, 6781.0]),
    (15, 11, [14.8, 36.5, 270.0, 41.3, 33.8, 10316.0, 7184.0]),
    (18, 13, [17.6, 51.6, 454.0, 40.2, 34.1, 10048.0, 7452.0]),
    (21, 15, [20.4, 69.4, 707.0, 39.4, 34.3, 9858.0, 7642.0]),
    (24, 17, [23.2, 89.7, 1040.0, 38.9, 34.4, 9717.0, 7783.0]),
    (27, 19, [26.0, 113.0, 1460.0, 38.4, 34.5, 9607.0, 7893.0]),
    (30, 21, [28.8, 138.0, 1990.0, 38.1, 34.6, 9519.0, 7981.0]),
];

/// Least thickness, Z in 10³ mm³, I in 10³ mm⁴ for a metre.
const BS5268: [(f64, f64, f64); 9] = [
    (6.1, 6.2, 18.9),
    (8.8, 12.9, 56.8),
    (11.5, 22.0, 127.0),
    (13.9, 32.2, 224.0),
    (17.1, 48.7, 417.0),
    (20.0, 66.7, 667.0),
    (22.9, 87.4, 1001.0),
    (25.2, 106.0, 1330.0),
    (28.1, 132.0, 1849.0),
];

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Plywood");
    for (nominal, plies, [thickness, modulus, inertia, along, across, stiff_along, stiff_across]) in BIRCH {
        let source = match nominal {
            9 | 12 | 18 => "Handbook of Finnish Plywood, printed in the Structural Engineer's Pocket Book",
            _ => "Handbook of Finnish Plywood, from memory",
        };
        let board = LayUp::birch(plies);
        let of = format!("of {nominal} mm birch");
        rows.from(source, "mm", 0.005).check(format!("Thickness {of}"), thickness, board.thickness_mm());
        rows.check(format!("W {of}, mm³/mm"), modulus, board.modulus_mm2());
        rows.check(format!("I {of}, mm⁴/mm"), inertia, board.inertia_mm3());
        rows.from(source, "N/mm²", 0.003);
        rows.check(format!("fm along {of}"), along, board.bending_mpa(Grain::Along));
        rows.check(format!("fm across {of}"), across, board.bending_mpa(Grain::Across));
        rows.check(format!("E along {of}"), stiff_along, board.bending_modulus_mpa(Grain::Along));
        rows.check(format!("E across {of}"), stiff_across, board.bending_modulus_mpa(Grain::Across));
    }
    rows.from("BS 5268-2:2002 table on a public reference page", "10³ mm³", 0.006);
    for (thickness, modulus, _) in BS5268 {
        rows.check(format!("Z of a metre of {thickness} mm"), modulus, board_section(thickness).0 * 1e-3);
    }
    rows.from("BS 5268-2:2002 table on a public reference page", "10³ mm⁴", 0.006);
    for (thickness, _, inertia) in BS5268 {
        rows.check(format!("I of a metre of {thickness} mm"), inertia, board_section(thickness).1 * 1e-3);
    }
    sheeting(&mut rows);
    rows.rows
}

/// 18 mm, three spans of 300 mm under 60 kPa.
fn sheeting(rows: &mut Rows) {
    let item = Catalogue::generic().get("PLY18").unwrap_or_else(|| panic!("no PLY18")).clone();
    let verdicts = check_board(&item, Basis::LimitStateB1, 0.81, 16.2);
    rows.from("EN 1995-1-1, kmod 0.7, γM 1.2, worked independently", "", 0.002);
    rows.check("Bending of 18 mm over 300 mm under 60 kPa", 0.6692, verdicts[0].ratio());
    rows.check("Rolling shear of 18 mm over 300 mm under 60 kPa", 0.8865, verdicts[1].ratio());
    let board = LayUp::birch(13);
    rows.from("By hand: S = 3.92 + 7.84 + 9.075 mm³/mm outside 0.7 mm, I = 260.85 mm⁴/mm", "1/mm", FOUR_FIGURES);
    rows.check("Rolling stress for a unit of shear, 18 mm", 0.07987, board.rolling_stress(Grain::Along));
}
