//! Concrete and quantities of small schemes counted by hand.

use falsewright_core::Design;
use falsewright_core::model::FaceKind;
use falsewright_core::quantities::{Quantity, equipment};
use falsewright_core::scheme::{Arrangement, Direction, Id, Lateral, Section, TieEnd};
use falsewright_tests::assert_close;
use falsewright_tests::simple::{anchors, box_scheme, clear_way, face, falsework, scheme, shutter, solved, spaced};

/// All lines of the bill with this mark whose item starts so.
fn lines<'a>(design: &'a Design, mark: &str, item: &str) -> Vec<&'a Quantity> {
    design.quantities.iter().filter(|line| line.mark == mark && line.item.starts_with(item)).collect()
}

fn count(design: &Design, mark: &str, item: &str) -> f64 {
    lines(design, mark, item).iter().map(|line| line.count).sum()
}

fn mass(design: &Design, mark: &str, item: &str) -> f64 {
    lines(design, mark, item).iter().map(|line| line.mass_kg).sum()
}

/// A cell of 4 × 3 m with haunches of 0.3 m in walls of 0.4, roof and base of 0.5 m: 4.8 × 4.0 − 4 × 3 + 0.3² =
/// 7.29 m², of which the base 4.8 × 0.5 = 2.4 m². In a bay of 10 m 72.9 m³, at 25 kN/m³ 1 822.5 kN.
#[test]
fn concrete_of_a_bay() {
    let design = solved(&box_scheme(4.0, 3.0, 0.3));
    let [base, walls] = &design.model.pours[..] else { panic!("two pours") };
    assert_close("base", base.volume_m3, 24.0, 1e-9);
    assert_close("walls and roof", walls.volume_m3, 48.9, 1e-9);
    assert_close("weight", base.weight_kn + walls.weight_kn, 1822.5, 1e-9);
    assert_close("in the bill", count(&design, "", "Concrete in one bay, all pours"), 72.9, 1e-9);
}

/// Common practice: 1 000 m³ of reinforced concrete weigh about 2 500 t; 25 kN/m³ are 2.548 t/m³.
#[test]
fn a_thousand_cubic_metres() {
    let mut block = scheme(Section::u_trough(4.0, 3.0, 1.0, 1.0, 0.0), &[]);
    // 6 × 4 − 4 × 3 = 12 m² over 83.333 m.
    block.bays.length_m = 1000.0 / 12.0;
    let design = solved(&block);
    let bill = lines(&design, "", "Concrete in one bay, all pours");
    assert_close("m³", bill[0].count, 1000.0, 1e-9);
    assert_close("t", bill[0].mass_kg / 1e3, 2500.0, 0.025);
}

/// One outer and one inner shutter, 3.5 and 3 m high, over a bay of 4 m: secondaries 0.1 m from the ends and at most
/// 0.3 m apart, three soldiers (0.5, 2.0, 3.5 m) and two rows of ties.
#[test]
fn wall_equipment() {
    let mut scheme = box_scheme(4.0, 3.0, 0.0);
    scheme.bays.length_m = 4.0;
    let outer = shutter(10, face(&scheme, FaceKind::OuterWall, 900, 0.0), Arrangement::UprightPrimaries);
    let inner = shutter(11, face(&scheme, FaceKind::InnerWall, 900, 0.4), Arrangement::UprightPrimaries);
    scheme.shutters = vec![outer, inner];
    scheme.shutters.iter_mut().for_each(|shutter| shutter.primaries = spaced(0.5, 1.6));
    scheme.ties = vec![anchors(20, 10, 1.2, "TIE15", 1.0), anchors(21, 10, 2.6, "TIE15", 1.0)];
    scheme.ties.iter_mut().for_each(|row| row.to = TieEnd::Shutter { id: Id(11) });
    let design = solved(&scheme);
    assert_close("outer board", count(&design, "S1", "Birch"), 3.5 * 4.0, 1e-9);
    assert_close("inner board", count(&design, "S2", "Birch"), 3.0 * 4.0, 1e-9);
    assert_close("mass of board", mass(&design, "S2", "Birch"), 12.0 * 12.0, 1e-9);
    // (3.5 − 0.2) / 0.3 = 11 gaps; (3 − 0.2) / 0.3 = 9.33, so 10 gaps.
    assert_eq!(count(&design, "S1", "Timber formwork beam"), 12.0);
    assert_eq!(count(&design, "S2", "Timber formwork beam"), 11.0);
    assert_close("beams", mass(&design, "S1", "Timber formwork beam"), 12.0 * 4.0 * 5.0, 1e-9);
    assert_eq!(count(&design, "S1", "Twin channels"), 3.0);
    assert_eq!(lines(&design, "S1", "Twin channels")[0].size, "3.500 m");
    for row in ["T1", "T2"] {
        assert_eq!(count(&design, row, "Tie rod"), 3.0);
        assert_eq!(count(&design, row, "Nut and plate"), 6.0);
        // Wall 0.4, twice board 17.6 mm, beam 0.2 and channel 0.15 m, and 0.3 m beyond.
        assert_eq!(lines(&design, row, "Tie rod")[0].size, "1.435 m");
    }
    // Sheets of 2.44 × 1.22 m: 14 and 12 m² take 5 each. 12 + 11 beams, 6 soldiers, 6 rods, 12 nuts.
    let all = equipment(&design.quantities);
    assert_eq!(all.pieces, 10.0 + 23.0 + 6.0 + 6.0 + 12.0);
    let stated = design.quantities.iter().find(|line| line.item == "Equipment for one bay").unwrap();
    assert_close("mass of all", all.mass_kg, stated.mass_kg, 1e-9);
    // S1, the higher one: 14 m² of board of 12 kg/m², 12 beams of 20 kg, 3 soldiers of 3.5 m with 2 × 22.8 cm² of
    // steel.
    let lift = design.quantities.iter().find(|line| line.item.starts_with("Heaviest shutter")).unwrap();
    assert_eq!(lift.item, "Heaviest shutter in one lift, S1");
    let soldier_kg = 3.5 * 2.0 * 22.8e-4 * 7850.0;
    assert_close("lift", lift.mass_kg, 168.0 + 240.0 + 3.0 * soldier_kg, 2e-3);
    // A soldier of 125 kg is for a crane, a beam of 20 kg for one person.
    let [soldier, beam] = ["Twin channels", "Timber formwork beam"].map(|item| lines(&design, "S1", item)[0]);
    assert_close("soldier", soldier.piece_kg().unwrap(), soldier_kg, 2e-3);
    assert_close("beam", beam.piece_kg().unwrap(), 20.0, 1e-9);
    assert!(soldier.is_heavy() && !beam.is_heavy() && !lift.is_heavy());
}

/// Three bents (0.5, 2, 3.5 m along a bay of 4 m) of two legs with one diagonal, under primaries across.
#[test]
fn falsework_equipment() {
    let mut scheme = box_scheme(4.0, 3.0, 0.0);
    scheme.bays.length_m = 4.0;
    let mut table = falsework(50, face(&scheme, FaceKind::Soffit, 900, 2.4), Direction::Across, &[1.2, 3.6]);
    table.bents = spaced(0.5, 1.5);
    table.lift_m = 1.5;
    table.lateral = Lateral::Braced;
    table.leg_lines[0].braced = true;
    scheme.falsework = vec![table];
    let design = solved(&scheme);
    assert_close("board", count(&design, "F1", "Birch"), 16.0, 1e-9);
    assert_eq!(count(&design, "F1", "Timber formwork beam"), 11.0);
    assert_eq!(count(&design, "F1", "HE 200 B"), 3.0);
    assert_close("primaries", mass(&design, "F1", "HE 200 B"), 3.0 * 4.0 * 61.3, 1e-3);
    assert_eq!(count(&design, "L1", "Leg 60.3"), 3.0);
    assert_eq!(count(&design, "L2", "Head and base jack for Leg"), 6.0);
    assert_eq!(count(&design, "L1", "Steel base plate"), 3.0);
    // Legs 0.51 to 3.0824 m are held once, at 2.0 m: one level tube and two diagonals in each bent.
    assert_eq!(count(&design, "F1", "Diagonal"), 3.0 * 3.0);
    assert_eq!(count(&design, "F1", "Coupler"), 2.0 * 3.0 * 3.0);
    let level = lines(&design, "F1", "Diagonal").into_iter().find(|line| line.size == "2.400 m").unwrap();
    assert_eq!(level.count, 3.0);
    assert_close("level tubes", level.mass_kg, 3.0 * 2.4 * 4.37, 1e-3);
}

/// Two beams side by side in each of three bents, and two trestle legs with posts at each side.
#[test]
fn opening_equipment() {
    let mut scheme = box_scheme(8.0, 4.0, 0.0);
    scheme.bays.length_m = 2.0;
    let soffit = face(&scheme, FaceKind::Soffit, 900, 4.4);
    scheme.falsework = vec![falsework(50, soffit, Direction::Across, &[0.8, 3.6, 4.4, 5.2, 8.0])];
    scheme.openings = vec![clear_way("LEG76", 0.7)];
    let design = solved(&scheme);
    // Bents 0.5 and 1.5 m along; beams from 1.8 − 0.15 to 7.0 + 0.15 m.
    let beams = lines(&design, "A1", "UB 305");
    assert_eq!((beams[0].count, beams[0].size.to_string().as_str()), (4.0, "5.500 m"));
    assert_close("beams", beams[0].mass_kg, 4.0 * 5.5 * 40.3, 2e-3);
    for trestle in ["A1t1", "A1t2", "A1t3", "A1t4"] {
        assert_eq!(count(&design, trestle, "Leg 76.1"), 2.0);
        assert_eq!(count(&design, trestle, "Steel base plate"), 2.0);
        assert_eq!(count(&design, &format!("{trestle} post"), "Leg 60.3"), 2.0);
    }
    for (line, plates) in [("L1", 2.0), ("L2", 0.0), ("L3", 0.0), ("L5", 2.0)] {
        assert_eq!(count(&design, line, "Leg 60.3"), 2.0);
        assert_eq!(count(&design, line, "Steel base plate"), plates);
    }
}
