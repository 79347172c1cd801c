//! Duplicates, mirror images, and elements pasted elsewhere.

use super::*;
use crate::scheme::{TieRow, heron_lane};

fn tied_left() -> Scheme {
    let scheme = with_left_wall(&box_scheme());
    done(&scheme, &[Edit::AddTieRows { shutter: scheme.shutters[0].id, spacing_m: 1.0 }])
}

fn all(scheme: &Scheme) -> Vec<Id> {
    let shutters = scheme.shutters.iter().map(|shutter| shutter.id);
    let rows = scheme.ties.iter().map(|row| row.id);
    let falsework = scheme.falsework.iter().map(|of| of.id);
    shutters.chain(rows).chain(falsework).chain(scheme.openings.iter().map(|of| of.id)).collect()
}

fn refused(scheme: &Scheme, edit: Edit) -> String {
    apply(scheme, &edit).unwrap_err().to_string()
}

#[test]
fn a_wall_mirrored_gives_the_other_wall_drawn_by_hand() {
    let left = tied_left();
    let both = done(&left, &[Edit::Mirror(all(&left))]);
    let right = [
        Edit::AddShutter(face(&left, FaceKind::OuterWall, 1.0)),
        Edit::AddShutter(face(&left, FaceKind::InnerWall, -1.0)),
    ];
    let drawn = done(&left, &right);
    let faces = |scheme: &Scheme| scheme.shutters.iter().map(|shutter| shutter.face).collect::<Vec<_>>();
    assert_eq!(faces(&both), faces(&drawn));
    let rows = both.ties.len() - left.ties.len();
    assert_eq!(rows, left.ties.len());
    for (row, copy) in left.ties.iter().zip(&both.ties[rows..]) {
        assert_eq!((copy.shutter, copy.to), (both.shutters[2].id, TieEnd::Shutter { id: both.shutters[3].id }));
        assert!((row.z_m - copy.z_m).abs() < 1e-12 && row.item == copy.item);
    }
    assert!(refused(&both, Edit::Mirror(all(&left))).contains("there already"));
}

#[test]
fn shutters_of_battered_walls_are_copied_mirrored_and_put_on_the_other_face() {
    let scheme = box_scheme();
    let [right, left] = [2, 3].map(|i: usize| scheme.section.outline[i]);
    let lean = |corner: crate::scheme::Corner, by: f64| {
        let to = Point::new(corner.x_m + by, corner.z_m);
        Edit::MoveCorner { corner: corner.id, to }
    };
    let scheme = done(&scheme, &[lean(right, -0.1), lean(left, 0.1)]);
    let batters = [-1.0, 1.0].map(|x| face(&scheme, FaceKind::SlopeOver, x));
    let one = done(&scheme, &[Edit::AddShutter(batters[0])]);
    let id = one.shutters[0].id;
    let excerpt = Box::new(Excerpt::of(&one, &[id]).unwrap());
    assert_eq!(done(&scheme, &[Edit::Paste { excerpt, onto: None }]).shutters[0].face, batters[0]);
    assert_eq!(done(&one, &[Edit::Mirror(vec![id])]).shutters[1].face, batters[1]);
    let both = done(&one, &[Edit::Opposite(vec![id])]);
    assert_eq!(both.shutters[1].face, face(&scheme, FaceKind::InnerWall, 1.0));
    let inner = done(&scheme, &[Edit::AddShutter(both.shutters[1].face)]);
    let back = done(&inner, &[Edit::Opposite(vec![inner.shutters[0].id])]);
    assert_eq!(back.shutters[1].face, batters[0]);
}

#[test]
fn falsework_and_its_diagonals_are_mirrored() {
    let twin = Section::twin_box(3.5, 3.0, Walls { wall_m: 0.45, roof_m: 0.4, base_m: 0.5, haunch_m: 0.2 }, 0.4);
    let mut scheme = with_falsework(&Scheme::blank(twin));
    let lines = &mut scheme.falsework[0].leg_lines;
    lines.iter_mut().enumerate().for_each(|(i, line)| line.braced = i == 0);
    let (line, x_m) = (lines[1].id, lines[1].x_m + 0.1);
    let scheme = done(&scheme, &[Edit::MoveLegLine { line, x_m }]);
    let both = done(&scheme, &[Edit::Mirror(vec![scheme.falsework[0].id])]);
    let middle = both.section.outline.iter().map(|corner| corner.x_m).sum::<f64>() / 4.0;
    let [one, other] = [&both.falsework[0].leg_lines, &both.falsework[1].leg_lines];
    let count = one.len();
    for (i, line) in one.iter().enumerate() {
        let image = &other[count - 1 - i];
        assert!((line.x_m + image.x_m - 2.0 * middle).abs() < 1e-9);
    }
    let braced: Vec<bool> = other.iter().map(|line| line.braced).collect();
    assert_eq!(braced.iter().position(|braced| *braced), Some(count - 2), "the last gap: {braced:?}");
    assert_eq!(braced.iter().filter(|braced| **braced).count(), 1);
}

#[test]
fn what_has_no_mirror_image_is_refused_with_the_reason() {
    let scheme = tied_left();
    let edge = scheme.section.cells[0].corners[1].id;
    let skew = done(&scheme, &[Edit::MoveEdge { edge, distance_m: -0.5 }]);
    assert!(refused(&skew, Edit::Mirror(vec![skew.shutters[1].id])).contains("other side of the centre line"));
    assert!(refused(&scheme, Edit::Mirror(vec![scheme.ties[0].id])).contains("needs a shutter"));
    let corner = scheme.section.outline[0].id;
    assert!(refused(&scheme, Edit::Mirror(vec![corner])).contains("Nothing chosen can be copied"));
}

#[test]
fn a_shutter_goes_to_the_other_face_of_its_wall_once() {
    let outer = face(&box_scheme(), FaceKind::OuterWall, -1.0);
    let scheme = done(&box_scheme(), &[Edit::AddShutter(outer)]);
    let id = scheme.shutters[0].id;
    let both = done(&scheme, &[Edit::Opposite(vec![id])]);
    assert_eq!(both.shutters[1].face, face(&scheme, FaceKind::InnerWall, 1.0));
    assert!(refused(&both, Edit::Opposite(vec![id])).contains("there already"));
    // A duplicate goes there first, then to the other wall, until no face is left.
    let more = done(&both, &[Edit::Duplicate(vec![id])]);
    assert_eq!(more.shutters[2].face, face(&scheme, FaceKind::OuterWall, 1.0));
    let inner = done(&more, &[Edit::Duplicate(vec![both.shutters[1].id])]);
    assert_eq!(inner.shutters.len(), 4);
    assert!(refused(&inner, Edit::Duplicate(vec![id])).contains("no free place"));
}

#[test]
fn rows_and_lines_are_duplicated_between_their_neighbours() {
    let scheme = tied_left();
    let mut rows: Vec<TieRow> = scheme.ties.clone();
    rows.sort_by(|a, b| a.z_m.total_cmp(&b.z_m));
    let more = done(&scheme, &[Edit::Duplicate(vec![rows[0].id])]);
    let copy = more.ties.last().unwrap();
    assert!((copy.z_m - (rows[0].z_m + rows[1].z_m) / 2.0).abs() < 1e-9);
    assert_eq!((copy.shutter, copy.to), (rows[0].shutter, rows[0].to));
    // The uppermost has no room above: it goes below.
    let top = rows.last().unwrap();
    let below = done(&scheme, &[Edit::Duplicate(vec![top.id])]);
    assert!(below.ties.last().unwrap().z_m < top.z_m);
    let scheme = with_falsework(&box_scheme());
    let lines = &scheme.falsework[0].leg_lines;
    let more = done(&scheme, &[Edit::Duplicate(vec![lines[0].id])]);
    assert!((more.falsework[0].leg_lines[1].x_m - (lines[0].x_m + lines[1].x_m) / 2.0).abs() < 1e-9);
}

#[test]
fn an_excerpt_finds_its_faces_in_a_section_of_another_size() {
    let demo = heron_lane().unwrap();
    let excerpt = Excerpt::of(&demo, &all(&demo)).unwrap();
    assert_eq!(Excerpt::read(&excerpt.write()), Ok(excerpt.clone()));
    let mut wider = Scheme::blank(demo.section.clone());
    let cell = &wider.section.cells[0].corners;
    let wide = Edit::SetLength { edge: cell[1].id, from: cell[3].id, length_m: 8.0, carry: true };
    wider = done(&wider, &[wide]);
    let pasted = done(&wider, &[Edit::Paste { excerpt: Box::new(excerpt), onto: None }]);
    assert_eq!(all(&pasted).len(), all(&demo).len());
    let faces = |scheme: &Scheme| scheme.shutters.iter().map(|shutter| shutter.face).collect::<Vec<_>>();
    assert_eq!(faces(&pasted), faces(&demo));
    let lines = |scheme: &Scheme| scheme.falsework[0].leg_lines.iter().map(|line| line.x_m).collect::<Vec<_>>();
    for (was, is) in lines(&demo).iter().zip(lines(&pasted)) {
        assert!((is - (0.45 + (was - 0.45) * 8.0 / 7.2)).abs() < 1e-9);
    }
}

#[test]
fn several_are_removed_even_where_one_takes_another_along() {
    let demo = heron_lane().unwrap();
    let (shutter, row) = (demo.shutters[4].id, demo.ties[4].id);
    assert_eq!(demo.ties[4].shutter, shutter);
    let less = done(&demo, &[Edit::RemoveAll(vec![shutter, row])]);
    assert_eq!(less.shutters.len(), demo.shutters.len() - 1);
    assert!(apply(&demo, &Edit::RemoveAll(vec![shutter, Id(9999)])).is_err());
    let ring: Vec<Id> = demo.section.cells[0].corners.iter().map(|corner| corner.id).collect();
    let filled = done(&demo, &[Edit::RemoveAll(ring.clone())]);
    assert!(filled.section.cells.is_empty() && filled.falsework.is_empty());
    assert!(matches!(apply(&demo, &Edit::RemoveAll(ring[..2].to_vec())), Err(EditError::LastCorners(_))));
}

#[test]
fn alignment_makes_all_like_the_first() {
    let demo = heron_lane().unwrap();
    let ids: Vec<Id> = demo.shutters[4..8].iter().map(|shutter| shutter.id).collect();
    let mut varied = demo.clone();
    varied.shutters[4].secondaries.max_m = 0.2;
    let alike = done(&varied, &[Edit::Align { ids: ids.clone(), how: Align::Spacing }]);
    assert!(alike.shutters[4..].iter().all(|shutter| shutter.secondaries.max_m == 0.2));
    let level = done(&demo, &[Edit::Align { ids, how: Align::Level }]);
    let faces = faces_of(&level);
    let head = |shutter: &Shutter| {
        let face = faces.iter().find(|face| face.of == shutter.face).unwrap();
        face.from.z.max(face.to.z) + shutter.above_m
    };
    assert!(level.shutters[4..].iter().all(|shutter| (head(shutter) - head(&level.shutters[4])).abs() < 1e-9));
    let rows: Vec<Id> = demo.ties[4..8].iter().map(|row| row.id).collect();
    let even = done(&demo, &[Edit::Align { ids: rows, how: Align::Apart }]);
    let levels: Vec<f64> = even.ties[4..8].iter().map(|row| row.z_m).collect();
    assert!(levels.windows(2).all(|pair| (pair[1] - pair[0] - 1.2).abs() < 1e-9), "0.95 to 4.55: {levels:?}");
    let mixed = vec![demo.shutters[0].id, demo.ties[0].id];
    assert_eq!(apply(&demo, &Edit::Align { ids: mixed, how: Align::Level }), Err(EditError::Unlike));
}
