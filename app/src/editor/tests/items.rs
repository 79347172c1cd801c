//! Items of the user's own as steps of the history.

use super::*;
use falsewright_core::catalogue::exchange::{Datum, Field};
use falsewright_core::catalogue::{Item, standard_beam};
use falsewright_core::model::Role;
use falsewright_core::scheme::TieRow;

fn supplied(code: &str, working_kn: f64) -> Item {
    let ours = Catalogue::generic().get(code).expect("a tie").clone();
    let field = Field::of_key("working_kn").expect("a field");
    ours.with_supplied(&ours, field, &Datum::Number(working_kn), "sheet 7").expect("a tie")
}

#[test]
fn a_suppliers_value_is_one_step_there_and_back() {
    let demo = heron_lane().expect("the demo");
    let catalogue = Catalogue::generic();
    let is_tied = |row: &&TieRow| catalogue.get(&row.item).is_some_and(|item| item.tie().is_some());
    let row = demo.ties.iter().find(is_tied).expect("a row of ties");
    let code = row.item.clone();
    let mut editor = Editor::new(demo.clone());
    let select = editor.select_element(row.id);
    assert!(select.view_changed);
    let selected = editor.selection();

    let done = editor.perform(Edit::SetItem(supplied(&code, 50.0))).expect("an edit");
    assert!(done.committed && done.scheme_changed);
    assert_eq!(editor.undo_label(), Some("Change item"));
    assert_eq!(editor.selection(), selected, "what is selected stays so");
    let again = editor.perform(Edit::SetItem(supplied(&code, 60.0))).expect("an edit");
    assert!(again.committed && editor.scheme().items.len() == 1);
    let same = editor.perform(Edit::SetItem(supplied(&code, 60.0))).expect("an edit");
    assert!(!same.committed, "the same again is no step");

    editor.undo();
    assert_eq!(editor.scheme().items, [supplied(&code, 50.0)]);
    editor.perform(Edit::RemoveItem(code.clone())).expect("an edit");
    assert_eq!(editor.scheme(), &demo);
    editor.undo();
    editor.undo();
    assert_eq!(editor.scheme(), &demo);
    editor.redo();
    assert_eq!(editor.scheme().items, [supplied(&code, 50.0)]);
    assert!(editor.perform(Edit::RemoveItem("NONE".into())).is_err());
}

#[test]
fn a_file_of_items_is_one_step() {
    let demo = heron_lane().expect("the demo");
    let mut editor = Editor::new(demo.clone());
    let items = vec![supplied("TIE15", 50.0), supplied("TIE20", 70.0)];
    editor.perform(Edit::SetItems(items.clone())).expect("an edit");
    assert_eq!((editor.scheme().items.clone(), editor.undo_label()), (items.clone(), Some("Import items")));
    let mut faulty = items;
    if let falsewright_core::catalogue::Kind::Tie(tie) = &mut faulty[1].kind {
        tie.breaking_kn = f64::NAN;
    }
    let before = editor.scheme().clone();
    let refusal = editor.perform(Edit::SetItems(faulty)).expect_err("a fault").to_string();
    assert!(refusal.contains("breaking force"), "{refusal}");
    assert_eq!(editor.scheme(), &before);
    editor.undo();
    assert_eq!(editor.scheme(), &demo);
}

#[test]
fn a_standard_section_comes_and_goes_with_its_part() {
    let demo = heron_lane().expect("the demo");
    let mut editor = Editor::new(demo.clone());
    let item = standard_beam("HE 300 B", "S355").expect("a section");
    let element = demo.openings.first().expect("an opening").id;
    editor.perform(Edit::UseItem { element, role: Role::Transfer, item: item.clone() }).expect("an edit");
    assert_eq!((editor.scheme().items.len(), &editor.scheme().openings[0].transfer), (1, &item.code));
    let wrong = editor.perform(Edit::UseItem { element, role: Role::Facing, item });
    assert!(matches!(wrong, Err(Refusal::Edit(_))));
    editor.undo();
    assert_eq!(editor.scheme(), &demo);
}
