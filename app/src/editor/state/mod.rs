//! The scheme being edited and all that is going on with it.

mod actions;
mod choosing;
mod cursor;
mod keys;
mod pointers;
mod steps;
mod typing;
mod views;

pub use actions::Action;

use super::gesture::Recogniser;
use super::label::lost;
use super::overlay::handles;
use super::tool::{Context, Event, Pen, Step};
use super::{Document, Modifiers, Overlay, PointerKind, Selection, Target, Tool, View};
use crate::language::{key, t, told};
use falsewright_core::layout::concrete::faces;
use falsewright_core::model::{Face, Model};
use falsewright_core::scheme::edit::{Edit, EditError, apply};
use falsewright_core::scheme::{Id, Scheme};
use std::fmt;
use views::Views;

/// What an event changed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outcome {
    /// [`Editor::shown`] is another: compute and draw it.
    pub scheme_changed: bool,
    /// [`Editor::scheme`] is another: save it.
    pub committed: bool,
    /// Viewport, tool, selection or overlay changed: draw them.
    pub view_changed: bool,
    /// Something to tell the user.
    pub message: Option<String>,
}

impl Outcome {
    fn view() -> Self {
        Self { view_changed: true, ..Self::default() }
    }

    fn committed() -> Self {
        Self { scheme_changed: true, committed: true, view_changed: true, message: None }
    }

    /// Together with what was kept before it.
    fn after(self, kept: Option<Self>) -> Self {
        match kept {
            Some(kept) if !self.committed => Self { message: self.message, ..kept },
            _ => self,
        }
    }
}

/// Why a change was refused.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// The scheme cannot be so.
    Edit(EditError),
    /// The typed value is not understood.
    Quantity(super::QuantityError),
    /// The dimension is no longer there.
    Dimension,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Edit(error) => f.write_str(&told(&error.sentence())),
            Self::Quantity(error) => error.fmt(f),
            Self::Dimension => f.write_str(t("This dimension is no longer on the drawing.")),
        }
    }
}

impl std::error::Error for Refusal {}

impl From<EditError> for Refusal {
    fn from(error: EditError) -> Self {
        Self::Edit(error)
    }
}

impl From<super::QuantityError> for Refusal {
    fn from(error: super::QuantityError) -> Self {
        Self::Quantity(error)
    }
}

/// A scheme being edited.
pub struct Editor {
    document: Document,
    /// Faces of the committed scheme.
    faces: Vec<Face>,
    /// What a drag would give, with its edit.
    preview: Option<(Edit, Scheme)>,
    refusal: Option<String>,
    views: Views,
    recogniser: Recogniser,
    pen: Pen,
    /// All that is selected, in the order in which it was.
    chosen: Vec<Target>,
    /// Taps add to the selection.
    adding: bool,
    /// A key is held: it goes on with the step that it began.
    nudging: bool,
    hover: Selection,
    wheel_zooms: bool,
    /// Snapping is switched off.
    free: bool,
    /// What was typed to open the field of the chosen dimension.
    typed: Option<char>,
    cursor: cursor::Cursor,
}

impl Editor {
    /// Starts with a scheme and an empty history.
    pub fn new(scheme: Scheme) -> Self {
        Self::of(Document::new(scheme))
    }

    /// Starts with a scheme and its steps.
    pub fn of(document: Document) -> Self {
        let mut editor = Self {
            faces: faces_of(&document.scheme),
            document,
            preview: None,
            refusal: None,
            views: Views::default(),
            recogniser: Recogniser::default(),
            pen: Pen::new(Tool::default()),
            chosen: Vec::new(),
            adding: false,
            nudging: false,
            hover: None,
            wheel_zooms: false,
            free: false,
            typed: None,
            cursor: cursor::Cursor::default(),
        };
        editor.fit_all();
        editor
    }

    /// The scheme as last committed: what is saved.
    pub fn scheme(&self) -> &Scheme {
        &self.document.scheme
    }

    /// The scheme with all its steps.
    pub fn document(&self) -> &Document {
        &self.document
    }

    /// The scheme with the drag that is going on: what is computed and drawn.
    pub fn shown(&self) -> &Scheme {
        self.preview.as_ref().map_or(&self.document.scheme, |(_, scheme)| scheme)
    }

    /// Replaces the scheme, as one step that can be undone.
    pub fn open(&mut self, scheme: Scheme) -> Outcome {
        let kept = self.keep_proposal();
        self.drop_gesture();
        if scheme == self.document.scheme {
            return Outcome::view().after(kept);
        }
        let label = if scheme.section.outline.is_empty() { key("New sheet") } else { key("Open another scheme") };
        self.commit(scheme, label);
        self.fit_all();
        Outcome::committed()
    }

    /// Ends what goes on; what is proposed is kept.
    pub fn put_down(&mut self) -> Outcome {
        let kept = self.keep_proposal();
        let shown = self.preview.is_some();
        self.drop_gesture();
        kept.unwrap_or(Outcome { scheme_changed: shown, ..Outcome::view() })
    }

    /// Takes another document in hand if `exchange` puts one there; the view stays.
    pub fn exchange(&mut self, exchange: impl FnOnce(&mut Document) -> bool) -> Outcome {
        self.drop_gesture();
        if !exchange(&mut self.document) {
            return Outcome::view();
        }
        self.adding = false;
        self.chosen.clear();
        self.settle();
        Outcome::committed()
    }

    /// Whether nothing is selected and nothing goes on that Escape would end.
    pub fn is_at_rest(&self) -> bool {
        let rests = self.preview.is_none() && !self.recogniser.busy();
        rests && self.chosen.is_empty() && matches!(self.tool(), Tool::Select | Tool::Hand)
    }

    /// Whether the whole section is on the screen.
    pub fn shows_all(&self) -> bool {
        let viewport = self.viewport_on(View::Section);
        self.bounds_on(View::Section).is_none_or(|bounds| {
            let (a, b) = (viewport.to_screen(bounds.min), viewport.to_screen(bounds.max));
            a.x >= 0.0 && b.y >= 0.0 && b.x <= viewport.width_px && a.y <= viewport.height_px
        })
    }

    /// What is under the pointer.
    pub fn hover(&self) -> Selection {
        self.hover
    }

    /// Whether a drag goes on that changes what is shown.
    pub fn is_dragging(&self) -> bool {
        self.preview.is_some()
    }

    /// Whether points are drawn to the grid and to what is there.
    pub fn snaps(&self) -> bool {
        !self.free
    }

    /// Switches snapping off or on, for hands without a keyboard.
    pub fn set_snaps(&mut self, snaps: bool) -> Outcome {
        self.free = !snaps;
        Outcome::view()
    }

    /// The tool in hand.
    pub fn tool(&self) -> Tool {
        self.pen.tool()
    }

    /// Takes up a tool; what is proposed is kept, what else is going on is dropped.
    pub fn set_tool(&mut self, tool: Tool) -> Outcome {
        if let Some(kept) = self.keep_proposal() {
            self.pen = Pen::new(tool);
            return kept;
        }
        let shown = self.preview.is_some();
        self.drop_gesture();
        self.pen = Pen::new(tool);
        Outcome { scheme_changed: shown, ..Outcome::view() }
    }

    /// Whether a pen was used, so that fingers only move the sheet and tap.
    pub fn pen_mode(&self) -> bool {
        self.recogniser.pen_mode
    }

    /// Enters or leaves the mode in which fingers only move the sheet and tap.
    pub fn set_pen_mode(&mut self, pen_mode: bool) {
        self.recogniser.pen_mode = pen_mode;
    }

    /// Whether a plain wheel zooms instead of panning.
    pub fn set_wheel_zooms(&mut self, zooms: bool) {
        self.wheel_zooms = zooms;
    }

    /// Applies one edit as one step of the history. What is proposed is kept before.
    pub fn perform(&mut self, edit: Edit) -> Result<Outcome, Refusal> {
        let kept = self.keep_proposal();
        self.drop_gesture();
        match (self.change(&edit), kept) {
            (Err(refusal), Some(kept)) => Ok(Outcome { message: Some(refusal.to_string()), ..kept }),
            (done, kept) => done.map(|done| done.after(kept)),
        }
    }

    /// Marks over a view of what is shown; what is being drawn only over the view in hand.
    pub fn overlay_on(&self, view: View) -> Overlay {
        let scheme = self.shown();
        let fresh;
        let faces = match self.preview {
            Some(_) => {
                fresh = faces_of(scheme);
                &fresh
            }
            None => &self.faces,
        };
        let model = Model::default();
        let places = self.places_on(view, scheme, faces, &model);
        let handles = handles(&places, self.selection(), self.viewport_on(view).length_m(1.0));
        let mut overlay = Overlay { hover: self.hover, handles, refusal: self.refusal.clone(), ..Overlay::default() };
        if view == self.view() {
            self.pen.overlay(&mut overlay);
        }
        overlay
    }

    /// Tells the tool.
    fn step(&mut self, event: Event, model: &Model, kind: PointerKind, modifiers: Modifiers) -> Step {
        let mut pen = std::mem::take(&mut self.pen);
        let step = pen.step(event, &self.context(model, kind, modifiers));
        self.pen = pen;
        step
    }

    fn context<'a>(&'a self, model: &'a Model, kind: PointerKind, modifiers: Modifiers) -> Context<'a> {
        let reach_px = kind.reach_px();
        Context {
            places: self.places(model),
            viewport: self.viewport(),
            selection: self.selection(),
            chosen: &self.chosen,
            adds: self.adding || modifiers.shift,
            kind,
            reach_px,
            modifiers,
            free: self.free,
        }
    }

    fn change(&mut self, edit: &Edit) -> Result<Outcome, Refusal> {
        let label = self.step_name(edit);
        self.change_as(edit, &label)
    }

    fn change_as(&mut self, edit: &Edit, label: &str) -> Result<Outcome, Refusal> {
        let shown = self.preview.take().is_some();
        let after = apply(&self.document.scheme, edit)?;
        if after == self.document.scheme {
            return Ok(Outcome { scheme_changed: shown, ..Outcome::view() });
        }
        let message = lost(edit, &self.document.scheme, &after);
        self.commit(after, label);
        Ok(Outcome { message, ..Outcome::committed() })
    }

    /// Drops preview and gesture; the tool starts afresh.
    fn drop_gesture(&mut self) {
        self.preview = None;
        self.refusal = None;
        self.recogniser.reset();
        self.let_cursor_go();
        self.pen = Pen::new(self.pen.tool());
    }

    fn commit(&mut self, scheme: Scheme, label: &str) {
        let before = std::mem::replace(&mut self.document.scheme, scheme);
        let goes_on = self.nudging && self.document.history.undo_label() == Some(label);
        if !goes_on {
            self.document.history.record(&before, label);
        }
        self.settle();
    }

    /// Brings what depends on the committed scheme up to date.
    fn settle(&mut self) {
        self.faces = faces_of(&self.document.scheme);
        self.hover = None;
        let Self { chosen, faces, document, .. } = self;
        chosen.retain(|target| match target {
            Target::Face(of) => faces.iter().any(|face| face.of == *of),
            Target::Dimension(_) => true,
            other => other.element().is_some_and(|id| find(&document.scheme, id).is_some()),
        });
    }
}

fn faces_of(scheme: &Scheme) -> Vec<Face> {
    faces(&scheme.section, scheme.ground.level_m)
}

/// The element of this id.
fn find(scheme: &Scheme, id: Id) -> Option<Target> {
    let section = &scheme.section;
    let mut corners = section.outline.iter().chain(section.cells.iter().flat_map(|cell| &cell.corners));
    if corners.any(|corner| corner.id == id) {
        return Some(Target::Corner(id));
    }
    let any = |found: bool, target: Target| found.then_some(target);
    any(section.joints.iter().any(|joint| joint.id == id), Target::Joint(id))
        .or(any(scheme.shutters.iter().any(|shutter| shutter.id == id), Target::Shutter(id)))
        .or(any(scheme.ties.iter().any(|row| row.id == id), Target::TieRow(id)))
        .or(any(scheme.falsework.iter().any(|falsework| falsework.id == id), Target::Falsework(id)))
        .or(any(scheme.falsework.iter().any(|f| f.leg_lines.iter().any(|line| line.id == id)), Target::LegLine(id)))
        .or(any(scheme.openings.iter().any(|opening| opening.id == id), Target::Opening(id)))
}
