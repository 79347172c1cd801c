use super::*;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::edit::{Edit, apply};
use falsewright_core::scheme::{Scheme, TieEnd, heron_lane};

fn print(scheme: &Scheme) -> Print {
    Print::worked_out(scheme, &Catalogue::generic())
}

fn changed(edit: impl FnOnce(&Scheme) -> Edit) -> (Print, Print) {
    let demo = heron_lane().unwrap();
    let after = apply(&demo, &edit(&demo)).unwrap();
    (print(&demo), print(&after))
}

fn names(differences: &[Difference], kind: DifferenceKind) -> Vec<&str> {
    differences.iter().filter(|difference| difference.kind == kind).map(|difference| difference.name.as_str()).collect()
}

fn row<'a>(groups: &'a [Group], name: &str) -> &'a Row {
    groups.iter().flat_map(|group| &group.rows).find(|row| row.name == name).unwrap_or_else(|| panic!("no row {name}"))
}

#[test]
fn a_copy_does_not_differ() {
    let demo = heron_lane().unwrap();
    let copy = Scheme { option: "B".into(), name: "Another".into(), ..demo.clone() };
    let (a, b) = (print(&demo), print(&copy));
    assert_eq!(differences(&a, &b), []);
    let groups = table(&a, &b);
    assert!(groups.iter().flat_map(|group| &group.rows).all(|row| !row.differs() && row.difference.is_empty()));
    assert!(groups.iter().map(|group| group.same).sum::<usize>() > 20);
}

#[test]
fn a_wider_way_is_marked_on_both_and_told_in_figures() {
    let (a, b) = changed(|demo| {
        let way = &demo.openings[0];
        let (left_m, width_m) = (way.left_m - 0.05, way.width_m + 0.1);
        Edit::ResizeOpening { opening: way.id, left_m, width_m, height_m: way.height_m }
    });
    for (this, other) in [(&a, &b), (&b, &a)] {
        let found = differences(this, other);
        assert!(names(&found, DifferenceKind::Differs).contains(&"Clear way A1"), "{found:?}");
        assert!(found.iter().all(|difference| difference.d.starts_with('M') && !difference.name.is_empty()));
        assert!(!found.iter().any(|difference| difference.name.starts_with("Wall shutter")), "{found:?}");
    }
    let groups = table(&a, &b);
    let width = row(&groups, "Clear width, mm");
    let [before, after] = width.values.clone().map(|value| value.parse::<f64>().unwrap());
    assert!(after > before, "{width:?}");
    assert_eq!(width.difference, format!("+{}", after - before));
    assert_eq!(row(&groups, "Weight of equipment, kg").fails, [false; 2]);
    let of = [KeyFigures::of(&a.worked), KeyFigures::of(&b.worked)];
    assert_eq!(before, (of[0].clear_m.unwrap()[0] * 1e3).round());
    let beams =
        groups.iter().flat_map(|group| &group.rows).find(|row| row.name.ends_with(", kg") && row.name.contains("UB"));
    assert!(beams.is_some_and(|row| row.difference.starts_with('+')), "longer transfer beams weigh more: {groups:?}");
    let weight = row(&groups, "Weight of equipment, kg");
    assert_eq!(weight.values[1], format!("{:.0}", of[1].equipment.mass_kg));
}

#[test]
fn what_only_one_has_is_told_apart_from_what_is_moved() {
    let (a, b) = changed(|demo| Edit::Remove(demo.ties[0].id));
    let gone = a.worked.design.model.ties[0].mark.clone();
    let only = differences(&a, &b);
    assert!(names(&only, DifferenceKind::Only).iter().any(|name| name.ends_with(&format!(" {gone}"))), "{only:?}");
    assert!(names(&differences(&b, &a), DifferenceKind::Only).is_empty());

    let (a, b) = changed(|demo| Edit::MoveTieRow { row: demo.ties[0].id, z_m: demo.ties[0].z_m + 0.02 });
    let moved = differences(&b, &a);
    assert!(!names(&moved, DifferenceKind::Differs).is_empty() && names(&moved, DifferenceKind::Only).is_empty());
}

#[test]
fn another_item_in_the_same_place_differs() {
    let (a, b) = changed(|demo| {
        let row = demo.ties.iter().find(|row| matches!(row.to, TieEnd::Shutter { .. })).unwrap();
        Edit::SetTieItem { row: row.id, item: other_tie(&row.item) }
    });
    let found = differences(&b, &a);
    assert_eq!(names(&found, DifferenceKind::Differs).len(), 1, "{found:?}");
    let groups = table(&a, &b);
    let items = groups.iter().find(|group| group.title == "Items").unwrap();
    assert_eq!(items.rows.len(), 1);
    assert!(items.rows[0].name.ends_with(", tie"), "{items:?}");
    assert!(items.same > 5);
}

fn other_tie(than: &str) -> String {
    let catalogue = Catalogue::generic();
    let other = catalogue.iter().find(|item| item.tie().is_some() && item.code != than);
    other.unwrap().code.clone()
}

#[test]
fn a_thicker_wall_is_marked_as_concrete() {
    let (a, b) = changed(|demo| {
        let mut section = demo.section.clone();
        section.outline.iter_mut().for_each(|corner| corner.x_m *= 1.01);
        Edit::SetSection(section)
    });
    let found = differences(&b, &a);
    assert!(found.iter().any(|difference| difference.name.starts_with("Pour ")), "{found:?}");
    assert!(names(&differences(&a, &b), DifferenceKind::Only).iter().any(|name| name.starts_with("Wall shutter")));
}

#[test]
fn what_cannot_be_computed_is_told_and_never_looks_better() {
    let demo = heron_lane().unwrap();
    let mut faulty = demo.clone();
    faulty.bays.length_m = -1.0;
    let groups = table(&print(&demo), &print(&faulty));
    let worst = row(&groups, "Worst ratio");
    assert_eq!((worst.values[1].as_str(), worst.difference.as_str()), ("▲ cannot be computed", ""));
    assert_eq!(worst.fails, [false, true]);
}
