//! A cursor on the drawing that keys move and press with, for hands without a pointer.

use super::{Editor, Outcome};
use crate::editor::places::Places;
use crate::editor::tool::Event;
use crate::editor::{Key, KeyInput, Modifiers, PointerKind, ScreenPoint, Tool, View, Viewport};
use falsewright_core::geometry::Point;
use falsewright_core::layout::takes_shutter;
use falsewright_core::model::{FaceKind, Model};
use falsewright_core::sorting::sort;

/// Steps of the cursor, m: the finest that is at least so long on the screen is taken.
const STEPS_M: [f64; 7] = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0];
const STEP_PX: f64 = 12.0;
/// So many steps with Shift.
const LARGE: f64 = 5.0;
/// With Control, m; nothing draws the cursor to it then.
const FINE_M: f64 = 0.005;
/// The cursor stays so far inside the drawing, px.
const INSIDE_PX: f64 = 40.0;
/// One press of an arrow moves the sheet so far with the hand, px.
const SHEET_PX: f64 = 60.0;
/// A pointer that moved less has not moved, px.
const STILL_PX: f64 = 2.0;
/// A soffit is pointed at from this far below it, m.
const BELOW_SOFFIT_M: f64 = 0.3;

/// The cursor and what it holds.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cursor {
    /// Where it is; none while a pointer is in use.
    at: Option<Point>,
    /// Where it was pressed, while it stays pressed, and whether it has been moved since.
    pressed: Option<(Point, bool)>,
    /// Where the pointer was last.
    pointer: Option<ScreenPoint>,
}

impl Editor {
    /// Where the cursor of the keys is; none while a pointer is in use.
    pub fn cursor(&self) -> Option<Point> {
        self.cursor.at
    }

    /// The same to the right and up from where typed points are measured from: the lower left corner of the section, of the
    /// shutter in elevation, of the room in plan.
    pub fn cursor_place(&self) -> Option<Point> {
        let model = Model::default();
        let places = self.places(&model);
        let of = if self.view() == View::Section { places.section() } else { places.subject() };
        let origin = of.map_or(Point::default(), |bounds| bounds.min);
        self.cursor.at.map(|at| at - origin)
    }

    /// Whether the cursor is pressed and drags.
    pub fn cursor_holds(&self) -> bool {
        self.cursor.pressed.is_some()
    }

    /// A pointer takes over, once it really moves. False: it only stands where it was.
    pub(super) fn pointer_takes_over(&mut self, at: ScreenPoint, moves_only: bool) -> bool {
        let still = moves_only && self.cursor.pointer.is_some_and(|last| last.distance(at) < STILL_PX);
        if self.cursor.at.is_some() && still {
            return false;
        }
        self.cursor = Cursor { pointer: Some(at), ..Cursor::default() };
        true
    }

    pub(super) fn let_cursor_go(&mut self) {
        self.cursor.pressed = None;
    }

    /// A key for the cursor; none: it is for something else.
    pub(super) fn cursor_key(&mut self, input: KeyInput, model: &Model) -> Option<Outcome> {
        let KeyInput { key, modifiers } = input;
        let arrow = arrow(key);
        match key {
            _ if arrow.is_some() && self.tool() == Tool::Hand => {
                let by = arrow.unwrap_or_default() * SHEET_PX;
                self.viewport_mut().pan(-by.x, by.z);
                Some(Outcome::view())
            }
            _ if arrow.is_some() => Some(self.move_cursor(arrow.unwrap_or_default(), modifiers, model)),
            Key::PageDown => self.next_place(true, model),
            Key::PageUp => self.next_place(false, model),
            Key::Char(' ') | Key::Enter => {
                let at = self.cursor.at?;
                match self.cursor.pressed.take() {
                    Some((_, true)) => Some(self.tell_tool(Event::Drop, model, modifiers)),
                    Some((from, false)) => Some(self.tell_tool(Event::Tap(from), model, Modifiers::default())),
                    None if modifiers.shift && self.tool() != Tool::Outline => {
                        self.cursor.pressed = Some((at, false));
                        Some(Outcome::view())
                    }
                    None => Some(self.tell_tool(Event::Tap(at), model, Modifiers::default())),
                }
            }
            Key::Escape => {
                self.cursor.pressed.take()?;
                Some(self.tell_tool(Event::Cancel, model, modifiers))
            }
            _ => None,
        }
    }

    /// Brings the cursor to the end of what a typed length has drawn.
    pub(super) fn follow_drawn(&mut self, before: Option<Point>, model: &Model) {
        if let (Some(_), Some(last)) = (self.cursor.at, self.pen.last_point())
            && before != Some(last)
        {
            self.put_cursor(last, Modifiers::default(), model);
        }
    }

    fn move_cursor(&mut self, by: Point, modifiers: Modifiers, model: &Model) -> Outcome {
        let step = match modifiers {
            Modifiers { control: true, .. } => FINE_M,
            Modifiers { shift: true, .. } => step_m(self.viewport()) * LARGE,
            _ => step_m(self.viewport()),
        };
        let next = match self.cursor.at.or(self.pen.last_point()) {
            Some(at) => at + by * step,
            None => self.first_place(),
        };
        // On whole steps across and along, but where it stood exactly on something it leaves only in this direction.
        let whole = |value: f64, moved: f64| if moved == 0.0 { value } else { (value / step).round() * step };
        self.put_cursor(Point::new(whole(next.x, by.x), whole(next.z, by.z)), modifiers, model)
    }

    /// The middle of the drawing, on a whole tenth of a metre.
    fn first_place(&self) -> Point {
        let view = self.viewport();
        let middle = view.to_world(ScreenPoint::new(view.width_px / 2.0, view.height_px / 2.0));
        let whole = |value: f64| (value * 10.0).round() / 10.0;
        Point::new(whole(middle.x), whole(middle.z))
    }

    fn put_cursor(&mut self, at: Point, modifiers: Modifiers, model: &Model) -> Outcome {
        self.cursor.at = Some(at);
        self.keep_in_sight(at);
        let direct = Modifiers { shift: false, ..modifiers };
        if let Some((from, moved)) = self.cursor.pressed {
            self.cursor.pressed = Some((from, true));
            let screen = self.viewport().to_screen(at);
            return self.tell_tool(Event::Drag { from, at, first: !moved, screen }, model, direct);
        }
        self.hover = self.context(model, PointerKind::Mouse, direct).hit(at, |_| true);
        // Straight on from the last point of an outline, nothing beside the way draws the cursor to it.
        let straight = self.pen.last_point().is_some_and(|last| last != at && (last.x == at.x || last.z == at.z));
        self.tell_tool(Event::Hover(at), model, Modifiers { shift: straight, ..direct })
    }

    fn keep_in_sight(&mut self, at: Point) {
        let screen = self.viewport().to_screen(at);
        let beyond =
            |value: f64, size: f64| value - value.clamp(INSIDE_PX.min(size / 2.0), (size - INSIDE_PX).max(size / 2.0));
        let (dx, dy) = (beyond(screen.x, self.viewport().width_px), beyond(screen.y, self.viewport().height_px));
        if (dx, dy) != (0.0, 0.0) {
            self.viewport_mut().pan(-dx, -dy);
        }
    }

    fn tell_tool(&mut self, event: Event, model: &Model, modifiers: Modifiers) -> Outcome {
        let step = self.step(event, model, PointerKind::Mouse, modifiers);
        self.take(step)
    }

    /// To the next place where the pen in hand does something, all round.
    fn next_place(&mut self, forward: bool, model: &Model) -> Option<Outcome> {
        let places = self.places_for_pen(model);
        let count = places.len();
        let here = self.cursor.at.and_then(|at| places.iter().position(|place| (*place - at).length() < 1e-9));
        let next = match here {
            Some(here) if forward => (here + 1) % count,
            Some(here) => (here + count - 1) % count,
            None if forward => 0,
            None => count.checked_sub(1)?,
        };
        let place = *places.get(next)?;
        self.let_cursor_go();
        Some(self.put_cursor(place, Modifiers::default(), model))
    }

    fn places_for_pen(&self, model: &Model) -> Vec<Point> {
        let places = self.places(model);
        let middle = |a: Point, b: Point| a.lerp(b, 0.5);
        if self.view() != View::Section {
            return self.places_on_bay(&places);
        }
        match self.tool() {
            Tool::Select | Tool::Hand => Vec::new(),
            Tool::Outline => places.scheme.section.edges().iter().map(|edge| edge.line.from).collect(),
            Tool::Joint => places.section().map(|b| middle(b.min, b.max)).into_iter().collect(),
            Tool::Shutter => {
                let walls = self.faces.iter().filter(|face| takes_shutter(face));
                walls.map(|face| middle(face.from, face.to)).collect()
            }
            Tool::Ties => {
                let shutters = places.scheme.shutters.iter().filter_map(|shutter| places.board(shutter));
                shutters.map(|[foot, head]| middle(foot, head)).collect()
            }
            Tool::Legs => {
                let soffits = self.faces.iter().filter(|face| face.kind == FaceKind::Soffit);
                soffits.map(|face| middle(face.from, face.to) - Point::new(0.0, BELOW_SOFFIT_M)).collect()
            }
            Tool::Opening => {
                let rooms = places.scheme.falsework.iter().filter_map(|falsework| places.falsework_bounds(falsework));
                rooms.map(|room| room.min.lerp(room.max, 0.5)).collect()
            }
        }
    }

    /// On an elevation between the rows of its shutter, on a plan between the leg lines; in the middle of the bay.
    fn places_on_bay(&self, places: &Places) -> Vec<Point> {
        let Some(bounds) = places.subject().filter(|_| self.tool().works_on(self.view())) else { return Vec::new() };
        let along = places.bay_m() / 2.0;
        let subject = places.seen.subject;
        let mut across = match (self.view(), self.tool()) {
            (View::Elevation, Tool::Ties) => {
                let rows = places.scheme.ties.iter().filter(|row| subject.is_some_and(|id| row.holds(id)));
                rows.map(|row| row.z_m).chain([bounds.min.z, bounds.max.z]).collect()
            }
            (View::Plan, Tool::Legs) => {
                let lines = subject.and_then(|id| places.falsework(id)).map(|of| &of.leg_lines);
                lines.into_iter().flatten().map(|line| line.x_m).chain([bounds.min.x, bounds.max.x]).collect()
            }
            (View::Plan, Tool::Opening) => vec![bounds.min.x, bounds.max.x],
            _ => Vec::new(),
        };
        sort(&mut across, f64::total_cmp);
        across.windows(2).map(|pair| self.view().at(along, (pair[0] + pair[1]) / 2.0)).collect()
    }
}

/// The direction of an arrow key.
fn arrow(key: Key) -> Option<Point> {
    Some(match key {
        Key::Left => Point::new(-1.0, 0.0),
        Key::Right => Point::new(1.0, 0.0),
        Key::Up => Point::new(0.0, 1.0),
        Key::Down => Point::new(0.0, -1.0),
        _ => return None,
    })
}

fn step_m(view: &Viewport) -> f64 {
    let fine = STEPS_M.into_iter().find(|step| step * view.px_per_m >= STEP_PX);
    fine.unwrap_or(STEPS_M[STEPS_M.len() - 1])
}
