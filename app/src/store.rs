//! The state of the page. Nothing else writes signals that views share.

mod clipboard;
mod items;
mod marks;
mod options;
mod pane;
mod printing;
mod settled;
mod timing;

use crate::canvas::paint::Shown;
use crate::editor::{
    Action, Document, Editor, Job, Key, KeyInput, Outcome, Overlay, PointerInput, Refusal, ScreenPoint, Selection,
    StepName, Target, Tool, View,
};
use crate::language::{Language, load, speak, spoken};
use crate::memo::Memo;
use crate::persistence::{Import, Saved};
use crate::units::{System, set_system, system};
use crate::worked::Worked;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Id, Scheme};
use leptos::prelude::*;
use leptos::task::spawn_local;
use options::Tray;
pub use pane::{Laid, Pane};
pub use printing::reduction_on_paper;
use std::sync::Arc;
pub use timing::now_ms;

/// What the page is written in. Views are made anew when it changes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Wording {
    /// Of its words.
    pub language: Language,
    /// Of its values.
    pub system: System,
}

/// How a pointer event reaches the editor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Pressed.
    Down,
    /// Moved.
    Move,
    /// Released.
    Up,
    /// Taken away by the browser.
    Cancel,
}

/// Handle on the state of the page; copies share it.
#[derive(Clone, Copy)]
pub struct Store {
    editor: RwSignal<Editor>,
    message: RwSignal<Option<String>>,
    saved: RwSignal<Saved>,
    shown: RwSignal<Shown>,
    note: RwSignal<Option<usize>>,
    left_handed: RwSignal<bool>,
    wording: RwSignal<Wording>,
    commits: RwSignal<u64>,
    item: RwSignal<Option<String>>,
    look_ups: RwSignal<u64>,
    import: RwSignal<Option<Import>>,
    menu: RwSignal<Option<ScreenPoint>>,
    tray: Tray,
    /// The scheme as drawn, with the drag that is going on.
    pub scheme: Memo<Arc<Scheme>>,
    /// Generic items and the scheme's own.
    pub catalogue: Memo<Arc<Catalogue>>,
    /// What is computed for it.
    pub worked: Memo<Arc<Worked>>,
    /// The same for the margin, which follows when the drawing has been painted.
    pub settled: ReadSignal<Arc<Worked>>,
    /// Marks over the view in hand.
    pub overlay: Memo<Overlay>,
    /// The views of the sheet.
    panes: [Pane; 3],
    laid: RwSignal<Laid>,
    /// Whether the page is being printed.
    pub printing: RwSignal<bool>,
    /// What is selected, if it is one thing.
    pub selection: Memo<Selection>,
    /// What is under the pointer.
    pub hover: Memo<Selection>,
    /// All that is selected.
    pub chosen: Memo<Vec<Target>>,
    /// The names of all steps.
    pub steps: Memo<Vec<StepName>>,
    /// The number of the state that is shown.
    pub at: Memo<usize>,
    /// The pen in hand.
    pub tool: Memo<Tool>,
}

impl Store {
    /// Starts with the options of a job, of which `document` is on the sheet, and makes the store known to all views.
    pub fn provide(job: Job, document: Document, saved: Saved, left_handed: bool, laid: Laid, tray_open: bool) -> Self {
        let wording = RwSignal::new(Wording { language: spoken(), system: system() });
        let editor = RwSignal::new(Editor::of(document));
        let shown = RwSignal::new(Shown::default());
        let commits = RwSignal::new(0);
        let generic = Catalogue::generic();
        let scheme = Memo::new(move |_| Arc::new(editor.with(|editor| editor.shown().clone())));
        let items = Memo::new(move |_| scheme.with(|scheme| scheme.items.clone()));
        let catalogue =
            Memo::new(move |_| items.with(|_| Arc::new(generic.clone().with_items_of(&scheme.get_untracked()))));
        let worked =
            Memo::new(move |_| Arc::new(timing::measure_solve(|| Worked::out(&scheme.get(), &catalogue.get()))));
        let sources = pane::Sources { editor, scheme, worked, catalogue, shown, wording };
        let settled = settled::settled(editor, worked);
        let panes = View::ALL.map(|view| Pane::new(view, sources));
        let in_hand = Memo::new(move |_| editor.with(Editor::view));
        let store = Self {
            editor,
            message: RwSignal::new(None),
            saved: RwSignal::new(saved),
            shown,
            note: RwSignal::new(None),
            left_handed: RwSignal::new(left_handed),
            wording,
            commits,
            item: RwSignal::new(None),
            look_ups: RwSignal::new(0),
            import: RwSignal::new(None),
            menu: RwSignal::new(None),
            tray: Tray::new(job, tray_open, scheme, catalogue, worked, settled, wording),
            scheme,
            catalogue,
            worked,
            settled,
            overlay: Memo::new(move |_| panes[in_hand.get() as usize].overlay.get()),
            panes,
            laid: RwSignal::new(laid),
            printing: RwSignal::new(false),
            selection: Memo::new(move |_| editor.with(Editor::selection)),
            hover: Memo::new(move |_| editor.with(Editor::hover)),
            chosen: Memo::new(move |_| editor.with(|editor| editor.chosen().to_vec())),
            steps: Memo::new(move |_| {
                commits.track();
                editor.with_untracked(|editor| editor.document().steps())
            }),
            at: Memo::new(move |_| {
                commits.track();
                editor.with_untracked(|editor| editor.document().at())
            }),
            tool: Memo::new(move |_| editor.with(Editor::tool)),
        };
        provide_context(store);
        store.follow_options();
        store.follow_printing();
        store
    }

    /// The store of the page.
    pub fn here() -> Self {
        expect_context()
    }

    /// Reads the editor, and again whenever it changes.
    pub fn read<T>(&self, read: impl FnOnce(&Editor) -> T) -> T {
        self.editor.with(read)
    }

    /// Reads the editor once.
    pub fn peek<T>(&self, read: impl FnOnce(&Editor) -> T) -> T {
        self.editor.with_untracked(read)
    }

    fn act(&self, act: impl FnOnce(&mut Editor) -> Outcome) {
        if self.apply(act) {
            self.drawn_on();
        }
    }

    /// Whether a change was committed.
    fn apply(&self, act: impl FnOnce(&mut Editor) -> Outcome) -> bool {
        let mut outcome = Outcome::default();
        self.editor.maybe_update(|editor| {
            outcome = act(editor);
            outcome.scheme_changed || outcome.committed || outcome.view_changed
        });
        if outcome.message.is_some() {
            self.message.set(outcome.message.map(|message| self.in_marks(&message)));
        } else if outcome.committed && self.message.with_untracked(Option::is_some) {
            self.message.set(None);
        }
        if outcome.committed {
            self.commits.update(|count| *count += 1);
            self.set_menu(None);
        }
        if outcome.scheme_changed {
            self.worked.with_untracked(|_| ());
            timing::measure_paint();
        }
        outcome.committed
    }

    /// Hands a pointer event on a view to the editor.
    pub fn pointer(&self, view: View, phase: Phase, input: PointerInput) {
        let worked = self.worked.get_untracked();
        self.act(|editor| match phase {
            _ if !editor.enter(view) => Outcome::default(),
            Phase::Down => editor.pointer_down(input, &worked.design),
            Phase::Move => editor.pointer_move(input, &worked.design),
            Phase::Up => editor.pointer_up(input, &worked.design),
            Phase::Cancel => editor.pointer_cancel(input),
        });
    }

    /// Tells the editor that the pointer stays pressed in its place, and asks what can be done there.
    pub fn hold(&self, at: ScreenPoint) {
        if untrack(|| self.presenting()) {
            return;
        }
        let worked = self.worked.get_untracked();
        let mut held = false;
        self.act(|editor| {
            let outcome = editor.pointer_held(&worked.design);
            held = outcome.is_some();
            outcome.unwrap_or_default()
        });
        if held {
            self.menu.set(Some(at));
        }
    }

    /// Does something with the selection.
    pub fn perform(&self, action: Action) {
        match action {
            Action::Copy => self.copy(),
            Action::Cut => self.cut(),
            Action::Paste => self.paste_from_clipboard(),
            Action::SelectAll => {
                let worked = self.worked.get_untracked();
                self.act(|editor| editor.choose_all(&worked.design.model));
            }
            _ => self.act(|editor| editor.act(action).unwrap_or_default()),
        }
    }

    /// Where the list of what can be done stands, if it is open.
    pub fn menu(&self) -> Option<ScreenPoint> {
        self.menu.get()
    }

    /// Closes the list once the pointer that opened it goes elsewhere.
    pub fn leave_menu(&self, at: ScreenPoint, slop_px: f64) {
        if self.menu.with_untracked(|menu| menu.is_some_and(|from| from.distance(at) > slop_px)) {
            self.menu.set(None);
        }
    }

    /// Opens the list of what can be done here, or closes it.
    pub fn set_menu(&self, at: Option<ScreenPoint>) {
        let at = at.filter(|_| !untrack(|| self.presenting()));
        if self.menu.with_untracked(|menu| *menu != at) {
            self.menu.set(at);
        }
    }

    /// Hands a key to the editor, `held` once it repeats; false: it is not for the editor.
    pub fn key(&self, input: KeyInput, held: bool) -> bool {
        let KeyInput { key: Key::Char(letter), modifiers } = input else { return self.editor_key(input, held) };
        match (letter.to_ascii_lowercase(), modifiers.control, modifiers.shift) {
            ('z', true, false) => self.undo(),
            ('z', true, true) | ('y', true, false) => self.redo(),
            _ => return self.editor_key(input, held),
        }
        true
    }

    fn editor_key(&self, input: KeyInput, held: bool) -> bool {
        let worked = self.worked.get_untracked();
        let mut taken = false;
        self.act(|editor| {
            let outcome = if held { editor.key_held(input, &worked.design) } else { editor.key(input, &worked.design) };
            taken = outcome.is_some();
            outcome.unwrap_or_default()
        });
        taken
    }

    /// Pans, zooms, undoes, selects: whatever cannot be refused.
    pub fn run(&self, run: impl FnOnce(&mut Editor) -> Outcome) {
        self.act(run);
    }

    /// Changes something that can be refused; the reason is told to the user. False: refused.
    pub fn try_run(&self, run: impl FnOnce(&mut Editor) -> Result<Outcome, Refusal>) -> bool {
        let mut done = true;
        self.act(|editor| {
            run(editor).unwrap_or_else(|refusal| {
                done = false;
                Outcome { message: Some(refusal.to_string()), ..Outcome::default() }
            })
        });
        done
    }

    /// Changes something that can be refused; the reason is left to the caller to tell.
    pub fn attempt(&self, run: impl FnOnce(&mut Editor) -> Result<Outcome, Refusal>) -> Result<(), Refusal> {
        let mut done = Ok(());
        self.act(|editor| {
            run(editor).unwrap_or_else(|refusal| {
                done = Err(refusal);
                Outcome::default()
            })
        });
        done
    }

    /// Makes one edit of the scheme.
    pub fn edit(&self, edit: Edit) {
        self.try_run(|editor| editor.perform(edit));
    }

    /// Opens another scheme; undo brings the present one back. Among several options it takes the name of the one
    /// whose place it takes, unless it has one.
    pub fn open(&self, mut scheme: Scheme) {
        if scheme.option.is_empty() && !untrack(|| self.job(Job::is_single)) {
            scheme.option = self.peek(|editor| editor.scheme().option.clone());
        }
        self.act(|editor| editor.open(scheme));
        self.fit();
    }

    /// Whether [`Self::settled`] is what is drawn.
    pub fn is_settled(&self) -> bool {
        self.settled.with(|settled| self.worked.with(|worked| Arc::ptr_eq(settled, worked)))
    }

    /// Whether a drag goes on that [`Self::settled`] has not followed yet.
    pub fn lags_behind_drag(&self) -> bool {
        !self.is_settled() && self.peek(Editor::is_dragging)
    }

    /// What the page is written in.
    pub fn wording(&self) -> Wording {
        self.wording.get()
    }

    /// Speaks another language, once its words are there.
    pub fn set_language(&self, language: Language) {
        let store = *self;
        spawn_local(async move {
            if load(language).await {
                speak(language);
                store.wording.update(|wording| wording.language = language);
            } else {
                store.tell(Some(say!(
                    "The words of this language could not be fetched. Try again when there is a network."
                )));
                store.wording.notify();
            }
        });
    }

    /// Shows values in other units.
    pub fn set_system(&self, system: System) {
        set_system(system);
        self.wording.update(|wording| wording.system = system);
    }

    /// Lets fingers draw again after a pen was used.
    pub fn leave_pen_mode(&self) {
        self.editor.update(|editor| editor.set_pen_mode(false));
    }

    /// Selects what a note is about, and opens the note.
    pub fn choose_note(&self, index: Option<usize>) {
        self.note.set(index);
        let worked = self.worked.get_untracked();
        let owner = index.and_then(|index| worked.design.results.findings.get(index)?.owner);
        if let Some(owner) = owner {
            self.select(owner);
        }
    }

    /// Adds an element to the selection, or takes it out.
    pub fn toggle(&self, id: Id) {
        self.act(|editor| editor.toggle_element(id));
    }

    /// Whether an element is among what is selected.
    pub fn has_chosen(&self, id: Id) -> bool {
        self.chosen.with_untracked(|chosen| chosen.iter().any(|target| target.element() == Some(id)))
    }

    /// Selects an element.
    pub fn select(&self, id: Id) {
        self.act(|editor| editor.select_element(id));
    }

    /// The open note.
    pub fn note(&self) -> Option<usize> {
        self.note.get()
    }

    /// Whether marks on the drawing can be tapped: not while a pen that draws is in hand.
    pub fn takes_taps(&self) -> bool {
        matches!(self.tool.get(), Tool::Select | Tool::Hand) && !self.presenting()
    }

    /// Whether dimensions can be tapped: also with the outline's pen in hand, while it draws nothing.
    pub fn takes_dimensions(&self) -> bool {
        let rests = || self.overlay.with(|overlay| overlay.preview.is_empty() && overlay.stroke.is_empty());
        self.takes_taps() || (self.tool.get() == Tool::Outline && rests())
    }

    /// What to tell the user.
    pub fn message(&self) -> Option<String> {
        self.message.get()
    }

    /// Tells the user something, or nothing any more.
    pub fn tell(&self, message: Option<String>) {
        self.message.set(message);
    }

    /// What is shown besides the works.
    pub fn shown(&self) -> Shown {
        self.shown.get()
    }

    /// Changes what is shown besides the works.
    pub fn show(&self, change: impl FnOnce(&mut Shown)) {
        self.shown.update(change);
    }

    /// Whether the pens stand at the left.
    pub fn left_handed(&self) -> bool {
        self.left_handed.get()
    }

    /// Moves the pens to the other side.
    pub fn change_hand(&self) {
        self.left_handed.update(|left| *left = !*left);
    }

    /// How the scheme is kept in this browser.
    pub fn saved(&self) -> Saved {
        self.saved.get()
    }

    /// Notes how the scheme is kept in this browser.
    pub fn set_saved(&self, saved: Saved) {
        self.saved.set(saved);
    }

    /// Grows with every committed change.
    pub fn commits(&self) -> u64 {
        self.commits.get()
    }
}
