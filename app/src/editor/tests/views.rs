//! The elevation of a shutter and the plan of falsework: what is done there is done on the section too.

use super::*;
use falsewright_core::scheme::{Arrangement, Falsework, Id, Shutter, TieRow};

impl Desk {
    fn on(view: View) -> Self {
        let mut desk = Self::demo();
        for view in View::ALL {
            desk.editor.viewport_on_mut(view).resize(1200.0, 900.0);
            desk.editor.fit_on(view);
        }
        assert!(desk.editor.enter(view));
        desk
    }

    fn subject(&self) -> Id {
        self.editor.seen(self.editor.view()).subject.unwrap()
    }

    fn shutter(&self) -> &Shutter {
        let id = self.subject();
        self.scheme().shutters.iter().find(|shutter| shutter.id == id).unwrap()
    }

    fn rows(&self) -> Vec<TieRow> {
        let id = self.subject();
        let mut rows: Vec<TieRow> = self.scheme().ties.iter().filter(|row| row.holds(id)).cloned().collect();
        rows.sort_by(|a, b| a.z_m.total_cmp(&b.z_m));
        rows
    }

    fn falsework(&self) -> &Falsework {
        &self.scheme().falsework[0]
    }

    fn bay_m(&self) -> f64 {
        self.scheme().bays.length_m
    }

    /// A place on a shutter that is on no primary and no tie.
    fn between_primaries(&self) -> f64 {
        let primaries = self.shutter().primaries.positions(self.bay_m());
        (primaries[3] + primaries[4]) / 2.0
    }
}

fn value(desk: &Desk, key: DimensionKey) -> f64 {
    desk.editor.dimensions().into_iter().find(|dimension| dimension.key == key).unwrap().value_m
}

#[test]
fn a_row_is_pulled_to_another_height_and_is_there_on_the_section_too() {
    let mut desk = Desk::on(View::Elevation);
    let row = desk.rows()[1].clone();
    let y = desk.between_primaries();
    desk.drag((y, row.z_m), (y + 0.1, row.z_m + 0.3));
    let moved = desk.scheme().ties.iter().find(|of| of.id == row.id).unwrap().z_m;
    assert!((moved - row.z_m - 0.3).abs() < 0.051, "{moved}");
    assert_eq!(desk.editor.selection(), Some(Target::TieRow(row.id)));
    let line = |editor: &Editor, view| {
        let handles = editor.overlay_on(view).handles;
        handles.into_iter().find(|handle| handle.target == Target::TieRow(row.id)).unwrap().at.z
    };
    assert_eq!(line(&desk.editor, View::Section), moved);
    assert_eq!(line(&desk.editor, View::Elevation), moved);
    let outcome = desk.editor.undo();
    desk.seen(outcome);
    assert_eq!(desk.rows()[1], row);
}

#[test]
fn a_tie_pulled_along_the_bay_spaces_the_primaries_of_both_shutters_that_it_joins() {
    let mut desk = Desk::on(View::Elevation);
    let before = desk.shutter().primaries.positions(desk.bay_m());
    let z = desk.rows()[1].z_m;
    desk.drag((before[2], z), (before[2] + 0.5, z + 0.05));
    let after = desk.shutter().primaries.positions(desk.bay_m());
    assert!(after.len() < before.len(), "{after:?}");
    let ends = |row: &TieRow| [Some(row.shutter), if let TieEnd::Shutter { id } = row.to { Some(id) } else { None }];
    let joined: Vec<Id> = desk.rows().iter().flat_map(ends).flatten().collect();
    assert!(joined.iter().any(|id| *id != desk.subject()));
    for id in joined {
        let other = desk.scheme().shutters.iter().find(|shutter| shutter.id == id).unwrap();
        assert_eq!(other.primaries, desk.shutter().primaries);
    }
    let placed = desk.design.model.ties.iter().find(|row| row.id == desk.rows()[1].id).unwrap();
    assert_eq!(placed.places_m, after);
    assert_eq!(desk.editor.dimensions().iter().filter(|of| matches!(of.key, DimensionKey::Along(_))).count(), 1);
}

#[test]
fn a_primary_is_pulled_like_a_tie_and_the_shutter_between_them_is_not() {
    let mut desk = Desk::on(View::Elevation);
    let before = desk.shutter().primaries;
    let (y, z) = (before.positions(desk.bay_m())[2], (desk.rows()[0].z_m + desk.rows()[1].z_m) / 2.0);
    desk.drag((y, z), (y - 0.4, z));
    assert!(desk.shutter().primaries.max_m < before.max_m);
    assert_eq!(desk.editor.selection(), Some(Target::Shutter(desk.subject())));
    let now = desk.shutter().primaries;
    desk.drag((desk.between_primaries(), z), (desk.between_primaries() + 0.4, z));
    assert_eq!(desk.shutter().primaries, now);
}

#[test]
fn on_walings_a_tie_spaces_its_own_row_and_a_typed_value_all_rows_alike() {
    let mut desk = Desk::on(View::Elevation);
    let level = Shutter { arrangement: Arrangement::LevelPrimaries, ..desk.shutter().clone() };
    let outcome = desk.editor.perform(Edit::SetShutter(level)).unwrap();
    desk.seen(outcome);
    let rows = desk.rows();
    let spacings = |desk: &Desk| desk.rows().iter().map(|row| row.spacing.max_m).collect::<Vec<_>>();
    assert!(rows.iter().all(|row| row.spacing == rows[0].spacing));
    let outcome = desk.editor.type_dimension(DimensionKey::Along(rows[0].id), "800").unwrap();
    desk.seen(outcome);
    assert!(spacings(&desk).iter().all(|max_m| *max_m == 0.8));
    let (y, z) = (desk.rows()[1].spacing.positions(desk.bay_m())[2], rows[1].z_m);
    desk.drag((y, z), (y + 0.5, z));
    let after = spacings(&desk);
    assert!(after[1] > 0.8 && after.iter().filter(|max_m| **max_m == 0.8).count() == rows.len() - 1, "{after:?}");
    let chains = desk.editor.dimensions().iter().filter(|of| matches!(of.key, DimensionKey::Along(_))).count();
    assert_eq!(chains, 2, "each spacing has a chain of its own");
}

#[test]
fn dimensions_of_the_elevation_are_typed() {
    let mut desk = Desk::on(View::Elevation);
    let (shutter, row) = (desk.subject(), desk.rows()[0].id);
    for (key, text, expected) in [
        (DimensionKey::TieRow(row), "0.4", 0.4),
        (DimensionKey::Along(shutter), "920/2", 0.46),
        (DimensionKey::AlongEnd(shutter), "300", 0.3),
        (DimensionKey::BayLength, "9.5 m", 9.5),
    ] {
        let outcome = desk.editor.type_dimension(key, text).unwrap();
        desk.seen(outcome);
        assert!((value(&desk, key) - expected).abs() < 0.02, "{key:?}: {}", value(&desk, key));
    }
    let key = DimensionKey::ShutterHeight(shutter);
    let height = value(&desk, key);
    let outcome = desk.editor.type_dimension(key, &format!("{:.3}", height + 0.1)).unwrap();
    desk.seen(outcome);
    assert!((value(&desk, key) - height - 0.1).abs() < 1e-9);
    assert!(desk.editor.type_dimension(DimensionKey::Along(shutter), "0").is_err());
}

#[test]
fn a_leg_line_is_pulled_sideways_and_its_bents_along_the_bay() {
    let mut desk = Desk::on(View::Plan);
    let (line, bents) = (desk.falsework().leg_lines[0], desk.falsework().bents);
    let positions = bents.positions(desk.bay_m());
    let between = (positions[2] + positions[3]) / 2.0;
    desk.drag((line.x_m, between), (line.x_m + 0.2, between + 0.1));
    let moved = desk.falsework().leg_lines.iter().find(|of| of.id == line.id).unwrap().x_m;
    assert!((moved - line.x_m - 0.2).abs() < 0.051, "{moved}");
    assert_eq!((desk.falsework().bents, desk.editor.selection()), (bents, Some(Target::LegLine(line.id))));
    desk.drag((moved, positions[2]), (moved, positions[2] - 0.5));
    assert!(desk.falsework().bents.max_m < bents.max_m);
    assert_eq!(desk.falsework().leg_lines.iter().find(|of| of.id == line.id).unwrap().x_m, moved);
    assert_eq!(desk.design.model.falsework[0].bents_m, desk.falsework().bents.positions(desk.bay_m()));
}

#[test]
fn a_bent_is_pulled_between_its_legs() {
    let mut desk = Desk::on(View::Plan);
    let before = desk.falsework().bents;
    let lines = &desk.falsework().leg_lines;
    let (x, y) = ((lines[0].x_m + lines[1].x_m) / 2.0, before.positions(desk.bay_m())[0]);
    desk.drag((x, y), (x, y + 0.2));
    assert!((desk.falsework().bents.edge_m - before.edge_m - 0.2).abs() < 0.051);
    assert_eq!(desk.editor.selection(), Some(Target::Falsework(desk.falsework().id)));
}

#[test]
fn the_way_is_pulled_wider_and_typed_on_the_plan() {
    let mut desk = Desk::on(View::Plan);
    let way = desk.scheme().openings[0].clone();
    let right = way.left_m + way.width_m;
    let y = desk.bay_m() / 2.0 + 0.1;
    desk.drag((right, y), (right - 0.2, y));
    let width = desk.scheme().openings[0].width_m;
    assert!((width - way.width_m + 0.2).abs() < 0.051, "{width}");
    let height = desk.scheme().openings[0].height_m;
    assert_eq!(height, way.height_m);
    let outcome = desk.editor.type_dimension(DimensionKey::OpeningWidth(way.id), "3.4").unwrap();
    desk.seen(outcome);
    assert!((desk.scheme().openings[0].width_m - 3.4).abs() < 1e-9);
    let outcome = desk.editor.type_dimension(DimensionKey::Along(desk.falsework().id), "1").unwrap();
    desk.seen(outcome);
    assert!(value(&desk, DimensionKey::Along(desk.falsework().id)) <= 1.0);
}

#[test]
fn a_tap_selects_the_same_thing_on_every_view_and_the_views_follow() {
    let mut desk = Desk::on(View::Section);
    let kicker = desk.scheme().shutters[0].id;
    let outcome = desk.editor.select_element(kicker);
    desk.seen(outcome);
    assert_eq!(desk.editor.seen(View::Elevation).subject, Some(kicker));
    desk.editor.enter(View::Elevation);
    desk.editor.fit();
    let row = desk.rows()[0].clone();
    desk.tap(desk.between_primaries(), row.z_m);
    assert_eq!(desk.editor.selection(), Some(Target::TieRow(row.id)));
    assert_eq!(desk.editor.seen(View::Elevation).subject, Some(kicker), "its row is held by it");
    desk.editor.enter(View::Plan);
    let line = desk.falsework().leg_lines[1];
    let bents = desk.falsework().bents.positions(desk.bay_m());
    desk.tap(line.x_m, (bents[0] + bents[1]) / 2.0);
    assert_eq!(desk.editor.selection(), Some(Target::LegLine(line.id)));
    assert_eq!(desk.editor.seen(View::Elevation).subject, Some(kicker));
    desk.tap(desk.scheme().openings[0].left_m + 1.0, (bents[0] + bents[1]) / 2.0);
    assert!(matches!(desk.editor.selection(), Some(Target::Opening(_))), "{:?}", desk.editor.selection());
}

#[test]
fn several_move_only_as_the_view_shows_them() {
    let mut desk = Desk::on(View::Plan);
    let (line, row) = (desk.falsework().leg_lines[0], desk.scheme().ties[0].clone());
    let outcome = desk.editor.choose(vec![Target::LegLine(line.id), Target::TieRow(row.id)]);
    desk.seen(outcome);
    let bents = desk.falsework().bents.positions(desk.bay_m());
    let y = (bents[1] + bents[2]) / 2.0;
    desk.drag((line.x_m, y), (line.x_m + 0.1, y + 0.5));
    assert_eq!(desk.scheme().ties[0].z_m, row.z_m);
    assert!((desk.falsework().leg_lines[0].x_m - line.x_m - 0.1).abs() < 0.051);
}

#[test]
fn pens_draw_on_the_views_that_show_their_work_and_select_on_others() {
    let mut desk = Desk::on(View::Elevation);
    let rows = desk.rows();
    let (y, z) = (desk.between_primaries(), (rows[0].z_m + rows[1].z_m) / 2.0);
    desk.tool(Tool::Ties);
    desk.tap(y, z);
    assert_eq!(desk.rows().len(), rows.len() + 1);
    let outcome = desk.editor.undo();
    desk.seen(outcome);
    for tool in [Tool::Outline, Tool::Joint, Tool::Shutter, Tool::Legs, Tool::Opening] {
        let before = desk.scheme().clone();
        desk.tool(tool);
        desk.tap(y, rows[1].z_m);
        assert_eq!(desk.editor.selection(), Some(Target::TieRow(rows[1].id)), "{tool:?}");
        desk.drag((y, z), (y + 2.0, z - 1.0));
        assert_eq!(*desk.scheme(), before, "{tool:?}");
    }
    desk.editor.enter(View::Plan);
    desk.tool(Tool::Legs);
    let lines = desk.falsework().leg_lines.len();
    let x = (desk.falsework().leg_lines[0].x_m + desk.falsework().leg_lines[1].x_m) / 2.0;
    desk.tap(x, 0.1);
    assert_eq!(desk.falsework().leg_lines.len(), lines + 1);
}

#[test]
fn a_drag_stays_on_its_view_and_another_cannot_be_entered_meanwhile() {
    let mut desk = Desk::on(View::Elevation);
    let row = desk.rows()[1].clone();
    let y = desk.between_primaries();
    desk.down(y, row.z_m);
    desk.go(y, row.z_m + 0.2);
    assert!(!desk.editor.enter(View::Section));
    desk.up(y, row.z_m + 0.2);
    assert!(desk.editor.enter(View::Section));
}

#[test]
fn a_sheet_without_shutters_or_falsework_has_empty_views() {
    let mut desk = Desk::boxed();
    for view in [View::Elevation, View::Plan] {
        desk.editor.enter(view);
        assert_eq!(desk.editor.seen(view).subject, None);
        assert!(desk.editor.dimensions().is_empty());
        let before = desk.scheme().clone();
        desk.tap(2.0, 2.0);
        desk.drag((1.0, 1.0), (3.0, 2.0));
        assert_eq!((desk.editor.chosen(), desk.scheme()), (&[][..], &before));
    }
}

#[test]
fn everything_is_hit_and_dragged_in_every_direction_without_breaking_the_scheme() {
    for view in [View::Elevation, View::Plan] {
        for kind in [PointerKind::Mouse, PointerKind::Touch] {
            let mut desk = Desk::on(view);
            desk.kind = kind;
            let bounds = desk.editor.bounds_on(view).unwrap();
            let at = |i: u32, j: u32| {
                let p = Point::new(f64::from(i) / 9.0, f64::from(j) / 9.0);
                let size = bounds.max - bounds.min;
                (bounds.min.x - 0.1 + size.x * p.x * 1.02, bounds.min.z - 0.1 + size.z * p.z * 1.02)
            };
            for i in 0..10 {
                for j in 0..10 {
                    let (x, z) = at(i, j);
                    let by = [(1.0, 0.1), (-0.7, 0.2), (0.1, 0.9), (0.0, -3.0)][((i + j) % 4) as usize];
                    desk.drag((x, z), (x + by.0, z + by.1));
                }
            }
        }
    }
}

#[test]
fn keys_do_on_each_view_what_a_pointer_does() {
    let press = |desk: &mut Desk, keys: &[Key]| keys.iter().for_each(|key| assert!(desk.key(*key), "{key:?}"));
    let space = Key::Char(' ');
    let mut desk = Desk::on(View::Elevation);
    let rows = desk.rows();
    desk.tool(Tool::Ties);
    press(&mut desk, &[Key::PageDown, Key::PageDown, space]);
    let place = desk.editor.cursor().unwrap();
    assert_eq!(desk.rows().len(), rows.len() + 1);
    assert!((place.z - (rows[0].z_m + rows[1].z_m) / 2.0).abs() < 1e-9 && place.x == desk.bay_m() / 2.0);
    // From the foot of the shutter.
    let foot = desk.editor.bounds_on(View::Elevation).unwrap().min.z;
    assert!(desk.editor.cursor_place().unwrap().z < place.z - foot);
    let count = desk.rows().len();
    (0..count + 1).for_each(|_| press(&mut desk, &[Key::PageDown]));
    assert_eq!(desk.rows().len(), count);

    assert!(desk.editor.enter(View::Plan));
    assert_eq!(desk.editor.cursor(), None, "it was at a place of the elevation");
    desk.tool(Tool::Legs);
    let lines = desk.falsework().leg_lines.len();
    press(&mut desk, &[Key::PageDown, Key::PageDown, space]);
    assert_eq!(desk.falsework().leg_lines.len(), lines + 1);
    let Some(Target::LegLine(added)) = desk.editor.selection() else { panic!("{:?}", desk.editor.selection()) };
    press(&mut desk, &[Key::Escape]);
    desk.tool(Tool::Select);
    // It is taken hold of at the cursor, and pulled.
    let at = |desk: &Desk| desk.falsework().leg_lines.iter().find(|line| line.id == added).unwrap().x_m;
    let before = at(&desk);
    desk.modifiers.shift = true;
    press(&mut desk, &[space]);
    desk.modifiers.shift = false;
    press(&mut desk, &[Key::Right, Key::Right]);
    assert!(desk.editor.cursor_holds());
    press(&mut desk, &[space]);
    assert!(at(&desk) > before + 0.02, "{} from {before}", at(&desk));
    // Pens that draw nothing on a view have no places there.
    desk.tool(Tool::Shutter);
    assert!(!desk.key(Key::PageDown));
}
