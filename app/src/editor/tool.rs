//! The pens at the foot of the sheet, and what they are told and answer.

use super::hit::hits;
use super::places::Places;
use super::snap::Snapper;
use super::tools::{joint, legs, opening, outline, select, shutter, ties};
use super::{Key, Modifiers, Overlay, PointerKind, ScreenPoint, Selection, Target, View, Viewport};
use crate::language::t;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;

/// What a press on the drawing does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tool {
    /// Selects, moves, and takes typed dimensions.
    #[default]
    Select,
    /// Draws the outline, then cells in it, point by point.
    Outline,
    /// Puts construction joints.
    Joint,
    /// Puts shutters on wall faces.
    Shutter,
    /// Puts rows of ties on shutters.
    Ties,
    /// Puts falsework under soffits and leg lines in it.
    Legs,
    /// Keeps a way open through falsework.
    Opening,
    /// Moves the sheet.
    Hand,
}

impl Tool {
    /// All, in the order they are shown.
    pub const ALL: [Self; 8] =
        [Self::Select, Self::Outline, Self::Joint, Self::Shutter, Self::Ties, Self::Legs, Self::Opening, Self::Hand];

    /// Whether it does its work on a view. On others it only selects.
    pub fn works_on(self, view: View) -> bool {
        match self {
            Self::Select | Self::Hand => true,
            Self::Ties => view != View::Plan,
            Self::Legs | Self::Opening => view != View::Elevation,
            Self::Outline | Self::Joint | Self::Shutter => view == View::Section,
        }
    }

    /// The letter that takes it up.
    pub fn letter(self) -> char {
        match self {
            Self::Select => 'v',
            Self::Outline => 'l',
            Self::Joint => 'j',
            Self::Shutter => 's',
            Self::Ties => 't',
            Self::Legs => 'f',
            Self::Opening => 'o',
            Self::Hand => 'h',
        }
    }
}

/// What a tool sees.
pub(super) struct Context<'a> {
    /// The committed scheme and its places.
    pub places: Places<'a>,
    pub viewport: &'a Viewport,
    pub selection: Selection,
    /// All that is selected.
    pub chosen: &'a [Target],
    /// Taps add to the selection.
    pub adds: bool,
    pub kind: PointerKind,
    /// How near a pointer must come, px.
    pub reach_px: f64,
    pub modifiers: Modifiers,
    /// Snapping is switched off.
    pub free: bool,
}

impl Context<'_> {
    pub fn snapper(&self) -> Snapper {
        Snapper::new(self.places.scheme, self.viewport, self.modifiers.control || self.free)
    }

    /// The uppermost thing at a point that is wanted.
    pub fn hit(&self, at: Point, wanted: impl Fn(&Target) -> bool) -> Option<Target> {
        hits(&self.places, self.viewport, at, self.reach_px).into_iter().find(wanted)
    }
}

/// What a tool is told, in world points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Event {
    Hover(Point),
    Tap(Point),
    Drag { from: Point, at: Point, first: bool, screen: ScreenPoint },
    Drop,
    Cancel,
    Key(Key),
}

/// What a tool answers.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Step {
    pub change: Change,
    pub select: Option<Selection>,
    /// Adds a thing to the selection, or takes it out.
    pub toggle: Option<Target>,
    /// Selects all these.
    pub choose: Option<Vec<Target>>,
    /// Selects what the change adds.
    pub select_new: bool,
    pub message: Option<String>,
    /// Holds this world point under this screen point.
    pub hold: Option<(Point, ScreenPoint)>,
    /// A key was for the tool.
    pub taken: bool,
}

#[derive(Debug, Default, PartialEq)]
pub(super) enum Change {
    #[default]
    None,
    /// Shows what an edit would give.
    Preview(Edit),
    /// Commits what is shown.
    Keep,
    /// Shows what was before.
    Drop,
    Commit(Edit),
}

impl Step {
    pub fn none() -> Self {
        Self::default()
    }

    pub fn change(change: Change) -> Self {
        Self { change, ..Self::default() }
    }

    pub fn preview(edit: Edit) -> Self {
        Self::change(Change::Preview(edit))
    }

    /// Commits an edit and selects what it adds.
    pub fn add(edit: Edit) -> Self {
        Self { select_new: true, ..Self::change(Change::Commit(edit)) }
    }

    pub fn select(selection: Selection) -> Self {
        Self { select: Some(selection), ..Self::default() }
    }

    pub fn toggle(target: Option<Target>) -> Self {
        Self { toggle: target.map(Target::whole), ..Self::default() }
    }

    pub fn say(message: impl Into<String>) -> Self {
        Self { message: Some(message.into()), ..Self::default() }
    }

    pub fn taken(mut self) -> Self {
        self.taken = true;
        self
    }
}

/// The tool in hand with what it is doing.
#[derive(Debug)]
pub(super) enum Pen {
    Select(select::State),
    Outline(outline::State),
    Joint(joint::State),
    Shutter(shutter::State),
    Ties(ties::State),
    Legs(legs::State),
    Opening(opening::State),
    Hand,
}

impl Default for Pen {
    fn default() -> Self {
        Self::new(Tool::default())
    }
}

impl Pen {
    pub fn new(tool: Tool) -> Self {
        match tool {
            Tool::Select => Self::Select(Default::default()),
            Tool::Outline => Self::Outline(Default::default()),
            Tool::Joint => Self::Joint(Default::default()),
            Tool::Shutter => Self::Shutter(Default::default()),
            Tool::Ties => Self::Ties(Default::default()),
            Tool::Legs => Self::Legs(Default::default()),
            Tool::Opening => Self::Opening(Default::default()),
            Tool::Hand => Self::Hand,
        }
    }

    pub fn tool(&self) -> Tool {
        match self {
            Self::Select(_) => Tool::Select,
            Self::Outline(_) => Tool::Outline,
            Self::Joint(_) => Tool::Joint,
            Self::Shutter(_) => Tool::Shutter,
            Self::Ties(_) => Tool::Ties,
            Self::Legs(_) => Tool::Legs,
            Self::Opening(_) => Tool::Opening,
            Self::Hand => Tool::Hand,
        }
    }

    pub fn step(&mut self, event: Event, context: &Context) -> Step {
        if !self.tool().works_on(context.places.seen.view) {
            match event {
                Event::Tap(_) => return select::State::default().step(event, context),
                Event::Drag { first: true, .. } => return Step::say(t("This pen does not draw on this view.")),
                Event::Hover(_) | Event::Drag { .. } => return Step::none(),
                Event::Drop | Event::Cancel | Event::Key(_) => {}
            }
        }
        match self {
            Self::Select(state) => state.step(event, context),
            Self::Outline(state) => state.step(event, context),
            Self::Joint(state) => state.step(event, context),
            Self::Shutter(state) => state.step(event, context),
            Self::Ties(state) => state.step(event, context),
            Self::Legs(state) => state.step(event, context),
            Self::Opening(state) => state.step(event, context),
            Self::Hand => match event {
                Event::Tap(_) => select::State::default().step(event, context),
                _ => Step::none(),
            },
        }
    }

    /// A press that stays in its place selects, whatever the tool.
    pub fn hold(&mut self, at: Point, context: &Context) -> Step {
        match self {
            Self::Select(state) => state.hold(at, context),
            _ => select::State::default().hold(at, context),
        }
    }

    /// The last point of an outline that is being drawn.
    pub fn last_point(&self) -> Option<Point> {
        if let Self::Outline(state) = self { state.last_point() } else { None }
    }

    /// Whether what is shown waits to be kept or refused.
    pub fn proposes(&self) -> bool {
        matches!(self, Self::Outline(outline::State::Proposed))
    }

    pub fn overlay(&self, overlay: &mut Overlay) {
        match self {
            Self::Select(state) => state.overlay(overlay),
            Self::Outline(state) => state.overlay(overlay),
            Self::Joint(state) => state.overlay(overlay),
            Self::Opening(state) => state.overlay(overlay),
            _ => {}
        }
    }
}
