use super::*;
use crate::editor::Editor;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::heron_lane;

/// A document of this option with so many steps.
fn document(option: &str, steps: usize) -> Document {
    let mut editor = Editor::new(Scheme { option: option.into(), ..heron_lane().unwrap() });
    for step in 0..steps {
        editor.perform(Edit::SetName(format!("{option} {step}"))).unwrap();
    }
    editor.document().clone()
}

/// Options A to C with one, two and three steps, B on the sheet.
fn three() -> (Job, Document) {
    Job::of(vec![document("A", 1), document("B", 2), document("C", 3)], 1, Vec::new())
}

fn names(job: &Job, on_sheet: &Document) -> Vec<String> {
    job.order().iter().map(|id| job.scheme(*id, on_sheet).unwrap().option.clone()).collect()
}

fn away(job: &Job) -> Vec<String> {
    job.put_away().map(|id| job.resting(id).unwrap().scheme().option.clone()).collect()
}

fn id(job: &Job, on_sheet: &Document, option: &str) -> OptionId {
    let all = job.order().iter().copied().chain(job.put_away());
    all.into_iter().find(|id| job.scheme(*id, on_sheet).unwrap().option == option).unwrap()
}

#[test]
fn every_option_keeps_its_own_steps_while_others_are_on_the_sheet() {
    let (mut job, mut on_sheet) = three();
    assert_eq!((names(&job, &on_sheet), on_sheet.at()), (vec!["A".into(), "B".into(), "C".into()], 2));
    for (option, steps) in [("C", 3), ("A", 1), ("B", 2), ("C", 3)] {
        let id = id(&job, &on_sheet, option);
        assert!(job.switch(id, &mut on_sheet));
        assert_eq!((on_sheet.scheme().option.as_str(), on_sheet.at(), job.here()), (option, steps, id));
        assert!(!job.switch(id, &mut on_sheet), "it is there already");
    }
    assert_eq!(on_sheet, document("C", 3));
}

#[test]
fn what_is_put_away_comes_back_with_its_steps_by_undo_and_by_hand() {
    let (mut job, mut on_sheet) = three();
    let b = job.here();
    assert!(job.take_out(b, &mut on_sheet));
    assert_eq!((names(&job, &on_sheet), on_sheet.scheme().option.as_str()), (vec!["A".into(), "C".into()], "C"));
    assert_eq!((away(&job), job.undo_step()), (vec!["B".into()], Some(TrayStep::PutAway)));
    assert!(job.undo(&mut on_sheet));
    assert_eq!((on_sheet.clone(), job.here(), job.place_of(b)), (document("B", 2), b, Some(1)));
    assert!(job.redo(&mut on_sheet));
    assert_eq!(away(&job), ["B"]);
    assert!(job.bring_back(b, &mut on_sheet));
    assert_eq!(
        (names(&job, &on_sheet), on_sheet.clone()),
        (vec!["A".into(), "C".into(), "B".into()], document("B", 2))
    );
    assert!(!job.bring_back(b, &mut on_sheet) && away(&job).is_empty());
}

#[test]
fn the_last_option_cannot_be_put_away() {
    let (mut job, mut on_sheet) = three();
    for option in ["A", "C"] {
        let id = id(&job, &on_sheet, option);
        assert!(job.take_out(id, &mut on_sheet));
    }
    let last = job.here();
    assert!(job.is_single() && !job.take_out(last, &mut on_sheet));
    assert_eq!(away(&job), ["A", "C"]);
}

#[test]
fn an_order_is_changed_and_taken_back() {
    let (mut job, mut on_sheet) = three();
    let c = id(&job, &on_sheet, "C");
    assert!(job.place(c, 0) && !job.place(c, 0));
    assert_eq!(names(&job, &on_sheet), ["C", "A", "B"]);
    assert!(job.place(c, 99));
    assert_eq!(names(&job, &on_sheet), ["A", "B", "C"]);
    assert!(job.undo(&mut on_sheet) && job.undo(&mut on_sheet) && !job.undo(&mut on_sheet));
    assert_eq!(names(&job, &on_sheet), ["A", "B", "C"]);
    assert!(job.redo(&mut on_sheet));
    assert_eq!(names(&job, &on_sheet), ["C", "A", "B"]);
    assert_eq!((job.beside(c, -1), job.beside(c, 1)), (id(&job, &on_sheet, "B"), id(&job, &on_sheet, "A")));
}

#[test]
fn a_copy_stands_behind_its_original_and_undo_belongs_to_whatever_was_done_last() {
    let (mut job, mut on_sheet) = three();
    let name = job.free_name(&on_sheet);
    assert_eq!(name, "D");
    let copy = Document::new(Scheme { option: name, ..on_sheet.scheme().clone() });
    job.add(copy, TrayStep::Copy, &mut on_sheet);
    assert_eq!(names(&job, &on_sheet), ["A", "B", "D", "C"]);
    assert_eq!((on_sheet.at(), job.undo_step()), (0, Some(TrayStep::Copy)));
    assert!(job.drawn_on() && !job.drawn_on());
    assert_eq!(job.undo_step(), None, "the drawing has steps of its own");
    let d = job.here();
    job.take_out(d, &mut on_sheet);
    assert_eq!(job.undo_step(), Some(TrayStep::PutAway));
    let a = id(&job, &on_sheet, "A");
    job.switch(a, &mut on_sheet);
    assert_eq!(job.undo_step(), None);
}

#[test]
fn a_blank_option_taken_back_leaves_nothing_and_one_drawn_on_is_kept() {
    let (mut job, mut on_sheet) = three();
    job.add(Document::new(Scheme::empty()), TrayStep::New, &mut on_sheet);
    assert!(job.undo(&mut on_sheet));
    assert!(away(&job).is_empty());
    assert_eq!(on_sheet, document("B", 2));
    job.add(document("D", 1), TrayStep::New, &mut on_sheet);
    assert!(job.undo(&mut on_sheet));
    assert_eq!(away(&job), ["D"]);
}

#[test]
fn opening_other_options_puts_those_there_away_and_is_taken_back() {
    let (mut job, mut on_sheet) = three();
    job.replace(vec![document("X", 0), document("Y", 0)], 7, vec![document("Z", 0)], &mut on_sheet);
    assert_eq!((names(&job, &on_sheet), on_sheet.scheme().option.as_str()), (vec!["X".into(), "Y".into()], "X"));
    let mut kept = away(&job);
    kept.sort();
    assert_eq!(kept, ["A", "B", "C", "Z"]);
    assert!(job.undo(&mut on_sheet));
    assert_eq!(
        (names(&job, &on_sheet), on_sheet.clone()),
        (vec!["A".into(), "B".into(), "C".into()], document("B", 2))
    );
}

#[test]
fn a_file_holds_the_tray_and_the_browser_also_what_was_put_away() {
    let (mut job, mut on_sheet) = three();
    let a = id(&job, &on_sheet, "A");
    job.take_out(a, &mut on_sheet);
    let file = job.file(&on_sheet, false);
    assert_eq!((file.at, file.options.len(), file.put_away.len()), (0, 2, 0));
    let kept = job.file(&on_sheet, true);
    assert_eq!(kept.put_away.len(), 1);
    let rests: Vec<bool> = job.documents().map(|document| document.is_some()).collect();
    assert_eq!(rests, [false, true, true]);
    assert_eq!(scheme::Job::read(&kept.write()), Ok(kept));
}

#[test]
fn what_there_is_no_room_for_is_handed_out_and_no_step_leads_to_it() {
    let (mut job, mut on_sheet) = three();
    for number in 0..MOST_PUT_AWAY + 3 {
        job.add(document(&number.to_string(), 1), TrayStep::Copy, &mut on_sheet);
        let here = job.here();
        job.take_out(here, &mut on_sheet);
    }
    let gone: Vec<String> = job.let_go().iter().map(|document| document.scheme().option.clone()).collect();
    assert_eq!(gone, ["0", "1", "2"]);
    assert_eq!(away(&job).len(), MOST_PUT_AWAY);
    let before = names(&job, &on_sheet);
    while job.undo(&mut on_sheet) {
        for id in job.order() {
            assert!(job.scheme(*id, &on_sheet).is_some());
        }
    }
    assert_eq!(names(&job, &on_sheet), before);
}
