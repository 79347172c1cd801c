//! The options of the job: which is on the sheet, what the others came to, which is laid beside it, and whether the
//! sheet is shown to others. Only the option on the sheet is worked out as it changes.

mod shown;

use super::{Store, Wording};
use crate::comparison::{Difference, Print, differences};
use crate::editor::{Document, Editor, Job, OptionId, TrayStep, called};
use crate::language::t;
use crate::memo::Memo;
use crate::persistence::put_aside;
use crate::worked::Worked;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::{self, Scheme};
use leptos::prelude::*;
use std::sync::Arc;
use std::time::Duration;

/// What the store keeps of the options.
#[derive(Clone, Copy)]
pub(super) struct Tray {
    job: RwSignal<Job>,
    /// Of those that are not on the sheet; one that is missing waits to be worked out.
    prints: RwSignal<Vec<(OptionId, Arc<Print>)>>,
    here: Memo<OptionId>,
    /// Of the one on the sheet, as it follows a change.
    print_here: Memo<Arc<Print>>,
    open: RwSignal<bool>,
    beside: RwSignal<Option<OptionId>>,
    /// What differs on the sheet, and on the option beside it.
    apart: Memo<[Arc<Vec<Difference>>; 2]>,
    presenting: RwSignal<bool>,
    /// The next size of the drawing shows the whole section.
    refit: StoredValue<bool>,
}

impl Tray {
    pub fn new(
        job: Job,
        open: bool,
        scheme: Memo<Arc<Scheme>>,
        catalogue: Memo<Arc<Catalogue>>,
        worked: Memo<Arc<Worked>>,
        settled: ReadSignal<Arc<Worked>>,
        wording: RwSignal<Wording>,
    ) -> Self {
        let job = RwSignal::new(job);
        let prints = RwSignal::new(Vec::<(OptionId, Arc<Print>)>::new());
        let beside = RwSignal::new(None);
        let here = Memo::new(move |_| job.with(Job::here));
        let print_here = Memo::of_every(move || {
            settled.track();
            here.track();
            let catalogue = catalogue.get_untracked();
            Arc::new(Print::new(&scheme.get_untracked(), catalogue, worked.get_untracked()))
        });
        let apart = Memo::new(move |_| {
            wording.track();
            let other = beside.get().and_then(|id| prints.with(|prints| print_of(prints, id)));
            let Some(other) = other else { return Default::default() };
            let here = print_here.get();
            [Arc::new(differences(&here, &other)), Arc::new(differences(&other, &here))]
        });
        Self {
            job,
            prints,
            here,
            print_here,
            open: RwSignal::new(open),
            beside,
            apart,
            presenting: RwSignal::new(false),
            refit: StoredValue::new(false),
        }
    }
}

fn print_of(prints: &[(OptionId, Arc<Print>)], id: OptionId) -> Option<Arc<Print>> {
    prints.iter().find(|(of, _)| *of == id).map(|(_, print)| print.clone())
}

impl Store {
    /// Works out the options that rest and were not yet, one after the other, once there is somewhere to see them.
    pub(super) fn follow_options(&self) {
        let store = *self;
        let tray = self.tray;
        Effect::new(move || {
            if !tray.open.get() && tray.beside.get().is_none() {
                return;
            }
            let missing = tray.prints.with(|prints| {
                let known = |id: &OptionId| *id == tray.here.get() || print_of(prints, *id).is_some();
                tray.job.with(|job| job.order().iter().copied().find(|id| !known(id)))
            });
            if let Some(id) = missing {
                set_timeout(move || store.work_out_resting(id), Duration::ZERO);
            }
        });
    }

    fn work_out_resting(&self, id: OptionId) {
        let scheme = self.tray.job.with_untracked(|job| job.resting(id).map(|document| document.scheme().clone()));
        if self.tray.prints.with_untracked(|prints| print_of(prints, id).is_none())
            && let Some(scheme) = scheme
        {
            self.keep_print(id, Print::worked_out(&scheme, &Catalogue::generic()));
        }
    }

    fn keep_print(&self, id: OptionId, print: Print) {
        self.tray.prints.update(|prints| {
            prints.retain(|(of, _)| *of != id);
            prints.push((id, Arc::new(print)));
        });
    }

    /// Reads the options.
    pub fn job<T>(&self, read: impl FnOnce(&Job) -> T) -> T {
        self.tray.job.with(read)
    }

    /// The option on the sheet.
    pub fn in_hand(&self) -> OptionId {
        self.tray.here.get()
    }

    /// What an option is called.
    pub fn option_name(&self, id: OptionId) -> String {
        if id == self.in_hand() {
            return self.scheme.with(|scheme| called(scheme).to_owned());
        }
        self.job(|job| job.resting(id).map(|document| called(document.scheme()).to_owned())).unwrap_or_default()
    }

    /// What an option came to; none while it waits to be worked out.
    pub fn print(&self, id: OptionId) -> Option<Arc<Print>> {
        if id == self.in_hand() {
            return Some(self.tray.print_here.get());
        }
        self.tray.prints.with(|prints| print_of(prints, id))
    }

    /// Puts another option on the sheet.
    pub fn switch_to(&self, id: OptionId) {
        let before = self.tray.job.with_untracked(Job::here);
        self.exchange(|job, on_sheet| job.switch(id, on_sheet));
        // The two that are beside each other stay so.
        if self.tray.beside.get_untracked() == Some(id) {
            self.tray.beside.set(Some(before));
        }
    }

    /// Puts the option on the sheet that is so many places further in the tray, round its ends.
    pub fn step_option(&self, by: isize) {
        self.switch_to(self.tray.job.with_untracked(|job| job.beside(job.here(), by)));
    }

    /// Adds a blank option.
    pub fn new_option(&self) {
        self.add_option(TrayStep::New, |name, scheme| Scheme {
            option: name,
            name: scheme.name.clone(),
            ..Scheme::empty()
        });
    }

    /// Adds an option like the one on the sheet, with steps of its own from here on.
    pub fn copy_option(&self) {
        self.add_option(TrayStep::Copy, |name, scheme| Scheme { option: name, ..scheme.clone() });
    }

    fn add_option(&self, step: TrayStep, make: impl FnOnce(String, &Scheme) -> Scheme) {
        self.exchange(|job, on_sheet| {
            let scheme = make(job.free_name(on_sheet), on_sheet.scheme());
            job.add(Document::new(scheme), step, on_sheet);
            true
        });
    }

    /// Names an option, as a step of its own drawing.
    pub fn rename_option(&self, id: OptionId, name: &str) {
        let name = name.trim();
        if id == self.tray.job.with_untracked(Job::here) {
            self.edit(scheme::edit::Edit::SetOption(name.to_owned()));
        } else {
            self.tray.job.update(|job| {
                job.change(id, |document| document.name_option(name));
            });
            self.commits.update(|count| *count += 1);
        }
    }

    /// Moves an option in the tray.
    pub fn move_option(&self, id: OptionId, by: isize) {
        let moved = self.tray.job.try_maybe_update(|job| {
            let at = job.place_of(id).unwrap_or_default();
            let moved = at.checked_add_signed(by).is_some_and(|to| job.place(id, to));
            (moved, moved)
        });
        if moved == Some(true) {
            self.commits.update(|count| *count += 1);
        }
    }

    /// Takes an option out of the tray. It can be brought back.
    pub fn put_away(&self, id: OptionId) {
        let name = untrack(|| self.option_name(id));
        if self.tray.beside.get_untracked() == Some(id) {
            self.lay_beside(None);
        }
        if self.exchange(|job, on_sheet| job.take_out(id, on_sheet)) {
            let here = self.tray.job.with_untracked(Job::here);
            if self.tray.beside.get_untracked() == Some(here) {
                self.lay_beside(None);
            }
            self.tell(Some(say!("Option {} is put away. Undo brings it back, and so does the tray.", name)));
        }
        for document in self.tray.job.try_update(Job::let_go).unwrap_or_default() {
            put_aside(&scheme::write(document.scheme()));
        }
    }

    /// Brings back an option that was put away.
    pub fn bring_back(&self, id: OptionId) {
        self.exchange(|job, on_sheet| job.bring_back(id, on_sheet));
    }

    /// Opens a file: a single option on the sheet, as a step of its drawing; several in place of those in the tray,
    /// which are put away.
    pub fn open_job(&self, mut file: scheme::Job) {
        if file.options.len() == 1 && file.put_away.is_empty() {
            self.open(file.options.remove(0));
            return;
        }
        self.lay_beside(None);
        let documents = |schemes: Vec<Scheme>| schemes.into_iter().map(Document::new).collect();
        let done = self.exchange(|job, on_sheet| {
            job.replace(documents(file.options), file.at, documents(file.put_away), on_sheet);
            true
        });
        if done {
            self.tray.open.set(true);
            self.fit();
            self.tell(Some(
                t("The options of the file lie in the tray. Those that were there are put away; undo brings them back.")
                    .to_owned(),
            ));
        }
    }

    /// All options of the job as text: for a file, or for the browser with what was put away.
    pub fn job_text(&self, with_put_away: bool) -> String {
        self.peek(|editor| self.tray.job.with_untracked(|job| job.file(editor.document(), with_put_away))).write()
    }

    /// The steps of all resting options, in the order in which [`Self::job_text`] has them, if they are others than
    /// at this count of changes; with the count now.
    pub fn resting_steps(&self, known: Option<u64>) -> Option<(u64, Vec<String>)> {
        self.tray.job.with_untracked(|job| {
            let changes = job.changes();
            let steps = |document: Option<&Document>| document.map(Document::written_steps).unwrap_or_default();
            (known != Some(changes)).then(|| (changes, job.documents().map(steps).collect()))
        })
    }

    /// What undo takes back: a step of the tray if that was changed last, else one of the drawing.
    pub fn undo_label(&self) -> Option<String> {
        let step = self.job(Job::undo_step).map(TrayStep::label);
        step.map(str::to_owned).or_else(|| self.read(|editor| editor.undo_label().map(str::to_owned)))
    }

    /// What redo does again.
    pub fn redo_label(&self) -> Option<String> {
        let step = self.job(Job::redo_step).map(TrayStep::label);
        step.map(str::to_owned).or_else(|| self.read(|editor| editor.redo_label().map(str::to_owned)))
    }

    /// Takes back what was done last.
    pub fn undo(&self) {
        let proposed = self.overlay.with_untracked(|overlay| overlay.proposed);
        if !proposed && self.tray.job.with_untracked(Job::undo_step).is_some() {
            self.lay_beside(None);
            self.exchange(Job::undo);
        } else {
            self.run(Editor::undo);
        }
    }

    /// Does again what was taken back last.
    pub fn redo(&self) {
        if self.tray.job.with_untracked(Job::redo_step).is_some() {
            self.lay_beside(None);
            self.exchange(Job::redo);
        } else {
            self.run(Editor::redo);
        }
    }

    /// Whether the next size of the drawing shows the whole section; asked once.
    pub(super) fn takes_refit(&self) -> bool {
        self.tray.refit.try_update_value(std::mem::take).unwrap_or_default()
    }

    /// Notes that the drawing itself was changed.
    pub(super) fn drawn_on(&self) {
        let _ = self.tray.job.try_maybe_update(|job| (job.drawn_on(), ()));
    }

    /// Changes which document is on the sheet; what the one that leaves came to is kept for as long as it rests.
    fn exchange(&self, change: impl FnOnce(&mut Job, &mut Document) -> bool) -> bool {
        self.act(Editor::put_down);
        let left = self.tray.job.with_untracked(Job::here);
        let scheme = self.scheme.get_untracked();
        let print = Print::new(&scheme, self.catalogue.get_untracked(), self.worked.get_untracked());
        let mut done = false;
        self.apply(|editor| {
            editor.exchange(|on_sheet| {
                let changed = self.tray.job.try_maybe_update(|job| (false, change(job, on_sheet)));
                done = changed.unwrap_or_default();
                done
            })
        });
        if done {
            if self.tray.job.with_untracked(Job::here) != left {
                self.keep_print(left, print);
                self.note.set(None);
            }
            self.tray.job.notify();
            if self.scheme.with_untracked(|now| now.section != scheme.section) {
                self.fit();
            }
        }
        done
    }
}
