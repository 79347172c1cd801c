//! Elements copied between drawings.

use super::*;
use falsewright_core::scheme::edit::Excerpt;

/// The demo with nothing on its concrete.
fn bare() -> Desk {
    let mut desk = Desk::blank();
    let outcome = desk.editor.open(Scheme::blank(heron_lane().unwrap().section));
    desk.seen(outcome);
    desk
}

fn all(desk: &mut Desk) -> String {
    desk.modifiers.control = true;
    desk.key(Key::Char('a'));
    desk.modifiers.control = false;
    desk.editor.copied().unwrap()
}

#[test]
fn all_equipment_pasted_on_the_same_section_gives_the_same_results() {
    let mut from = Desk::demo();
    let text = all(&mut from);
    let mut to = bare();
    let settings = from.scheme().clone();
    for edit in [
        Edit::SetConcrete(settings.concrete),
        Edit::SetBays(settings.bays),
        Edit::SetLoads(settings.loads),
        Edit::SetGround(settings.ground),
        Edit::SetLimits(settings.limits),
    ] {
        to.editor.perform(edit).unwrap();
    }
    let step = to.editor.document().at();
    let outcome = to.editor.paste(&text).unwrap();
    to.seen(outcome);
    assert_eq!(to.editor.document().at(), step + 1);
    assert_eq!(to.editor.chosen().len(), Excerpt::read(&text).unwrap().count());
    let ratios = |desk: &Desk| {
        let mut ratios: Vec<f64> = desk.design.results.checks.iter().map(|check| check.ratio).collect();
        ratios.sort_by(f64::total_cmp);
        ratios
    };
    let outcome = from.editor.perform(Edit::SetName("as it was".into())).unwrap();
    from.seen(outcome);
    let (was, is) = (ratios(&from), ratios(&to));
    assert!(was.len() > 100 && was.len() == is.len(), "{} {}", was.len(), is.len());
    assert!(was.iter().zip(&is).all(|(a, b)| (a - b).abs() <= 1e-9 * a.abs()));
}

#[test]
fn pasting_where_everything_stands_says_what_is_there() {
    let mut desk = Desk::demo();
    let text = all(&mut desk);
    let before = desk.scheme().clone();
    let refusal = desk.editor.paste(&text).unwrap_err();
    assert!(refusal.to_string().contains("there already"), "{refusal}");
    assert_eq!(*desk.scheme(), before);
    for other in ["", "hello", "{}", "{\"falsewright\":\"elements\",\"schema\":99}", "[1]"] {
        let refusal = desk.editor.paste(other).unwrap_err().to_string();
        assert!(refusal.starts_with("What is on the clipboard cannot be pasted here"), "{other}: {refusal}");
    }
}

#[test]
fn a_shutter_goes_to_the_face_that_is_selected() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Shutter);
    desk.tap(0.0, 2.0);
    let text = desk.editor.copied().unwrap();
    desk.tool(Tool::Select);
    desk.tap(6.45, 2.0);
    assert!(matches!(desk.editor.selection(), Some(Target::Face(_))));
    let outcome = desk.editor.paste(&text).unwrap();
    desk.seen(outcome);
    let [first, second] = desk.scheme().shutters.as_slice() else { panic!("two shutters") };
    assert_ne!(first.face, second.face);
    assert_eq!((&first.primary, first.primaries), (&second.primary, second.primaries));
    assert_eq!(desk.editor.selection(), Some(Target::Shutter(second.id)));
    // On a level face it cannot stand.
    desk.tap(3.4, 4.5);
    assert!(desk.editor.paste(&text).unwrap_err().to_string().starts_with("There is no face of its kind"));
}

#[test]
fn cutting_and_pasting_brings_the_same_equipment_back() {
    let mut desk = Desk::demo();
    let before = desk.scheme().clone();
    let text = all(&mut desk);
    let outcome = desk.editor.cut();
    desk.seen(outcome);
    assert!(desk.scheme().shutters.is_empty() && desk.scheme().openings.is_empty());
    let outcome = desk.editor.paste(&text).unwrap();
    desk.seen(outcome);
    let after = desk.scheme();
    assert_eq!(after.shutters.len(), before.shutters.len());
    let levels = |scheme: &Scheme| scheme.ties.iter().map(|row| row.z_m).collect::<Vec<_>>();
    assert_eq!(levels(after), levels(&before));
    assert_eq!(after.openings[0].left_m, before.openings[0].left_m);
}

#[test]
fn a_duplicate_is_selected_and_can_be_taken_back() {
    let mut desk = Desk::demo();
    desk.tap(0.225, 2.2);
    desk.act(Action::Duplicate);
    let copy = desk.scheme().ties.last().unwrap();
    assert!((copy.z_m - 2.825).abs() < 1e-9, "halfway to the next at 3.45 m: {}", copy.z_m);
    assert_eq!(desk.editor.selection(), Some(Target::TieRow(copy.id)));
    assert_eq!(desk.editor.undo_label(), Some("Duplicate row of ties"));
    desk.editor.undo();
    assert_eq!(*desk.scheme(), heron_lane().unwrap());
}
