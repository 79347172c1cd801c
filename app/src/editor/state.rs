//! The scheme being edited and all that is going on with it.

use super::{Dimension, DimensionKey, KeyInput, Overlay, PointerInput, Selection, Tool, Viewport, Wheel};
use falsewright_core::Design;
use falsewright_core::scheme::edit::{Edit, EditError};
use falsewright_core::scheme::{Id, Scheme};

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

/// Why a change was refused.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// The scheme cannot be so.
    #[error(transparent)]
    Edit(#[from] EditError),
    /// The typed value is not understood.
    #[error(transparent)]
    Quantity(#[from] super::QuantityError),
    /// The dimension is no longer there, or only measures.
    #[error("This dimension cannot be typed; change what it measures instead.")]
    Dimension,
}

/// A scheme being edited.
pub struct Editor {
    scheme: Scheme,
    tool: Tool,
    selection: Selection,
    viewport: Viewport,
}

impl Editor {
    /// Starts with a scheme and an empty history.
    pub fn new(scheme: Scheme) -> Self {
        let viewport = Viewport::new(800.0, 600.0);
        Self { scheme, tool: Tool::default(), selection: None, viewport }
    }

    /// The scheme as last committed: what is saved.
    pub fn scheme(&self) -> &Scheme {
        &self.scheme
    }

    /// The scheme with the drag that is going on: what is computed and drawn.
    pub fn shown(&self) -> &Scheme {
        &self.scheme
    }

    /// Replaces the scheme, as one step that can be undone.
    pub fn open(&mut self, scheme: Scheme) -> Outcome {
        self.scheme = scheme;
        Outcome::default()
    }

    /// What is selected.
    pub fn selection(&self) -> Selection {
        self.selection
    }

    /// Selects something, or nothing.
    pub fn select(&mut self, selection: Selection) -> Outcome {
        self.selection = selection;
        Outcome::default()
    }

    /// Selects the element of this id, whatever it is.
    pub fn select_element(&mut self, id: Id) -> Outcome {
        let _ = id;
        Outcome::default()
    }

    /// The tool in hand.
    pub fn tool(&self) -> Tool {
        self.tool
    }

    /// Takes up a tool; what is going on is dropped.
    pub fn set_tool(&mut self, tool: Tool) -> Outcome {
        self.tool = tool;
        Outcome::default()
    }

    /// What part of the section is on the screen.
    pub fn viewport(&self) -> &Viewport {
        &self.viewport
    }

    /// Changes what part is on the screen.
    pub fn viewport_mut(&mut self) -> &mut Viewport {
        &mut self.viewport
    }

    /// Shows the whole section, with room for dimensions.
    pub fn fit(&mut self) -> Outcome {
        Outcome::default()
    }

    /// A button, pen or finger goes down.
    pub fn pointer_down(&mut self, input: PointerInput, design: &Design) -> Outcome {
        let _ = (input, design);
        Outcome::default()
    }

    /// A pointer moves, pressed or not.
    pub fn pointer_move(&mut self, input: PointerInput, design: &Design) -> Outcome {
        let _ = (input, design);
        Outcome::default()
    }

    /// A button, pen or finger goes up.
    pub fn pointer_up(&mut self, input: PointerInput, design: &Design) -> Outcome {
        let _ = (input, design);
        Outcome::default()
    }

    /// The browser takes a pointer away: what is going on is dropped.
    pub fn pointer_cancel(&mut self, input: PointerInput) -> Outcome {
        let _ = input;
        Outcome::default()
    }

    /// Pans; zooms with `control`, or always if [`Editor::set_wheel_zooms`].
    pub fn wheel(&mut self, wheel: Wheel) -> Outcome {
        let _ = wheel;
        Outcome::default()
    }

    /// Whether a plain wheel zooms instead of panning.
    pub fn set_wheel_zooms(&mut self, zooms: bool) {
        let _ = zooms;
    }

    /// A key press; none: not for the editor.
    pub fn key(&mut self, input: KeyInput, design: &Design) -> Option<Outcome> {
        let _ = (input, design);
        None
    }

    /// Applies one edit as one step of the history.
    pub fn perform(&mut self, edit: Edit) -> Result<Outcome, Refusal> {
        let _ = edit;
        Ok(Outcome::default())
    }

    /// The dimension lines of what is shown.
    pub fn dimensions(&self) -> Vec<Dimension> {
        Vec::new()
    }

    /// Gives a dimension a typed value.
    pub fn type_dimension(&mut self, key: DimensionKey, text: &str) -> Result<Outcome, Refusal> {
        let _ = (key, text);
        Err(Refusal::Dimension)
    }

    /// Takes back the last step.
    pub fn undo(&mut self) -> Outcome {
        Outcome::default()
    }

    /// Does again what was taken back.
    pub fn redo(&mut self) -> Outcome {
        Outcome::default()
    }

    /// What undo would take back.
    pub fn undo_label(&self) -> Option<&str> {
        None
    }

    /// What redo would do again.
    pub fn redo_label(&self) -> Option<&str> {
        None
    }

    /// Marks over the drawing.
    pub fn overlay(&self) -> Overlay {
        Overlay::default()
    }
}
