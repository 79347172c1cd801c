use super::*;
use crate::editor::Seen;
use falsewright_core::layout::concrete::faces;
use falsewright_core::model::Model;
use falsewright_core::scheme::edit::apply;
use falsewright_core::scheme::{Scheme, Section, Walls};

const WALLS: Walls = Walls { wall_m: 0.45, roof_m: 0.4, base_m: 0.5, haunch_m: 0.25 };

fn with<T>(scheme: &Scheme, read: impl FnOnce(&Places) -> T) -> T {
    let faces = faces(&scheme.section, scheme.ground.level_m);
    read(&Places { scheme, faces: &faces, model: &Model::default(), seen: Seen::SECTION })
}

fn values(scheme: &Scheme) -> Vec<f64> {
    with(scheme, |places| dimensions(places, 0.3).iter().map(|d| d.value_m).collect())
}

/// Types a value for the first dimension that measures `value`.
fn typed(scheme: &Scheme, value: f64, new: f64) -> Scheme {
    let edit = with(scheme, |places| {
        let all = dimensions(places, 0.3);
        let key = all.iter().find(|d| (d.value_m - value).abs() < 1e-9).unwrap().key;
        edit_for(places, key, new).unwrap()
    });
    apply(scheme, &edit).unwrap()
}

fn assert_has(scheme: &Scheme, expected: &[f64]) {
    let values = values(scheme);
    for value in expected {
        assert!(values.iter().any(|v| (v - value).abs() < 1e-9), "{value} is not among {values:?}");
    }
}

#[test]
fn a_box_shows_its_thicknesses_and_clear_sizes() {
    let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
    assert_has(&scheme, &[0.45, 6.0, 6.9, 0.5, 3.6, 0.4, 4.5, 0.25]);
    assert_eq!(values(&scheme).len(), 3 + 1 + 3 + 1 + 2);
}

#[test]
fn open_sections_are_chained_to_their_feet_and_heads() {
    let portal = Scheme::blank(Section::portal(5.0, 3.0, 0.4, 0.35, 0.2));
    assert_has(&portal, &[5.0, 3.0, 0.4, 0.35, 3.35, 5.8]);
    let trough = Scheme::blank(Section::u_trough(4.0, 2.5, 0.3, 0.45, 0.0));
    assert_has(&trough, &[4.0, 2.5, 0.3, 0.45, 2.95, 4.6]);
}

#[test]
fn a_typed_clear_size_keeps_all_thicknesses() {
    let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
    let wider = typed(&scheme, 6.0, 7.2);
    assert_has(&wider, &[0.45, 7.2, 8.1, 0.5, 3.6, 0.4, 4.5]);
    let higher = typed(&wider, 3.6, 4.5);
    assert_has(&higher, &[7.2, 4.5, 5.4, 0.5, 0.4]);
    let whole = typed(&higher, 5.4, 5.0);
    assert_has(&whole, &[4.1, 0.5, 0.4]);
    let twin = Scheme::blank(Section::twin_box(3.0, 2.4, WALLS, 0.3));
    let wider = typed(&twin, 3.0, 3.5);
    assert_has(&wider, &[3.5, 3.0, 0.3, 0.45, 7.7]);
}

#[test]
fn a_typed_thickness_keeps_the_clear_sizes() {
    let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
    let thicker = typed(&scheme, 0.5, 0.6);
    assert_has(&thicker, &[0.6, 3.6, 0.4, 4.6]);
    let haunched = typed(&scheme, 0.25, 0.3);
    assert_has(&haunched, &[0.3, 0.25]);
    let legs = haunched.section.cells[0].corners.iter().filter_map(|corner| corner.cut);
    assert!(legs.into_iter().all(|cut| cut.before_m == cut.after_m));
}

/// The outline's right wall leans in at its head by 60 mm.
fn battered() -> Scheme {
    let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
    let head = scheme.section.outline[2];
    apply(&scheme, &Edit::MoveCorner { corner: head.id, to: Point::new(head.x_m - 0.06, head.z_m) }).unwrap()
}

#[test]
fn a_batter_is_dimensioned_and_typed_and_the_wall_keeps_its_foot() {
    let scheme = battered();
    assert_has(&scheme, &[0.06, 0.45, 6.0, 6.9]);
    let steeper = typed(&scheme, 0.06, 0.1);
    assert!((steeper.section.outline[2].x_m - 6.8).abs() < 1e-9);
    assert!((steeper.section.outline[1].x_m - 6.9).abs() < 1e-9);
    let outward = typed(&scheme, 0.06, -0.1);
    assert!((outward.section.outline[2].x_m - 7.0).abs() < 1e-9);
    let plumb = typed(&scheme, 0.06, 0.0);
    assert!((plumb.section.outline[2].x_m - 6.9).abs() < 1e-9);
}

#[test]
fn a_typed_thickness_of_a_battered_wall_keeps_its_batter() {
    let scheme = battered();
    let edit = with(&scheme, |places| {
        let all = dimensions(places, 0.3);
        let wall = |d: &&Dimension| (d.value_m - 0.45).abs() < 1e-9 && d.measured[1].x > 6.5;
        edit_for(places, all.iter().find(wall).unwrap().key, 0.5).unwrap()
    });
    let thicker = apply(&scheme, &edit).unwrap();
    assert!((thicker.section.outline[1].x_m - 6.95).abs() < 1e-9);
    assert!((thicker.section.outline[2].x_m - 6.89).abs() < 1e-9);
}

#[test]
fn a_crown_is_dimensioned_by_its_falls() {
    let scheme = Scheme::blank(Section::box_cell(6.0, 3.6, WALLS));
    let top = scheme.section.outline[2];
    let crown = Edit::AddCorner { edge: top.id, at: Point::new(3.45, 4.56) };
    let crowned = apply(&scheme, &crown).unwrap();
    assert_has(&crowned, &[0.06, 4.56, 3.6, 0.4]);
    let typed = typed(&crowned, 0.06, 0.075);
    assert_has(&typed, &[0.075, 4.575]);
}
