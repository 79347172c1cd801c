//! Draws a ring point by point, by a rough stroke, or as a rectangle by its diagonal. The first ring is the outline,
//! further ones are cells; a line from an edge back to it reshapes the edge.

mod rings;

use crate::editor::freehand::{self, Sheet, Sketch};
use crate::editor::snap::{Snap, SnapReason, angle_deg, unit_at};
use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Key, LengthEntry, Overlay, QuantityError, Readout, parse_length};
use crate::language::{t, told};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::{Edit, apply};
use rings::{reshaping, ring_edit, sharp};

/// A typed length goes in a direction of whole 15° when the pointer is this near to one, degrees.
const NEAR_DIRECTION_DEG: f64 = 4.0;

/// Between the two lengths of a typed point.
const BETWEEN: char = ';';

/// Longest text of a typed length.
const LONGEST_ENTRY: usize = 40;

/// As near as a hand draws with a mouse or a pen, px; a finger as near as a part of its reach.
const FINEST_PX: f64 = 8.0;
const FINEST_OF_REACH: f64 = 0.6;

/// A stroke ends on an edge if it ends so many hand-widths from it.
const END_REACH: f64 = 1.5;

/// What is going on.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum State {
    /// No pointer.
    #[default]
    Idle,
    /// The first point would come here.
    Pointing(Snap),
    /// The first point is being typed.
    Starting {
        /// Where the pointer is.
        pointer: Snap,
        /// What is typed.
        entry: String,
    },
    /// Points are set; the next would come where the pointer is, or as far off as is typed.
    Drawing {
        /// Points so far.
        points: Vec<Point>,
        /// Where the pointer is drawn to.
        pointer: Snap,
        /// What is typed.
        entry: String,
        /// The stroke that goes on from the last point.
        stroke: Vec<Point>,
    },
    /// A stroke is being drawn from nothing; with the rectangle of which it may be the diagonal.
    Stroke(Vec<Point>, Option<[Point; 2]>),
    /// What a stroke gave is shown, and waits to be kept or refused.
    Proposed,
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match event {
            Event::Hover(_) if *self == Self::Proposed => Step::none(),
            Event::Tap(_) if *self == Self::Proposed => self.answer(Change::Keep),
            Event::Hover(at) => {
                self.point_at(at, context);
                Step::none()
            }
            Event::Tap(at) => {
                self.point_at(at, context);
                self.set_point(context)
            }
            Event::Drag { from, at, first, .. } => self.pull(from, at, first, context),
            Event::Drop => self.let_go(context),
            Event::Cancel => {
                match self {
                    Self::Stroke(..) => *self = Self::Idle,
                    Self::Drawing { stroke, .. } => stroke.clear(),
                    _ => {}
                }
                Step::none()
            }
            Event::Key(key) => self.key(key, context),
        }
    }

    /// Keeps or drops what is proposed.
    fn answer(&mut self, change: Change) -> Step {
        *self = Self::Idle;
        Step { select_new: change == Change::Keep, ..Step::change(change) }
    }

    fn point_at(&mut self, at: Point, context: &Context) {
        match self {
            Self::Drawing { points, pointer, .. } => {
                let snapper = context.snapper().with_drawn(points);
                let last = points.last().copied().unwrap_or(at);
                *pointer = if context.modifiers.shift { snapper.direction(last, at) } else { snapper.snap(at) };
            }
            _ => *self = Self::Pointing(context.snapper().snap(at)),
        }
    }

    /// A drag from a drawn point goes on drawing; from nothing it is a stroke. What was proposed is kept.
    fn pull(&mut self, from: Point, at: Point, first: bool, context: &Context) -> Step {
        match self {
            Self::Drawing { stroke, .. } => {
                stroke.push(at);
                self.point_at(at, context);
                Step::none()
            }
            Self::Stroke(stroke, rectangle) if !first => {
                stroke.push(at);
                *rectangle = freehand::diagonal(stroke, finest_m(context)).map(|ends| snapped(context, ends));
                Step::none()
            }
            _ => {
                let change = if *self == Self::Proposed { Change::Keep } else { Change::None };
                *self = Self::Stroke(vec![from, at], None);
                Step::change(change)
            }
        }
    }

    fn let_go(&mut self, context: &Context) -> Step {
        match self {
            Self::Drawing { .. } => self.go_on(context),
            Self::Stroke(stroke, _) => {
                let sheet = Sheet { section: &context.places.scheme.section };
                let read = freehand::read(stroke, finest_m(context), &sheet);
                *self = Self::Idle;
                match read {
                    Some(Sketch::Rectangle(ends)) => {
                        let [a, b] = snapped(context, ends);
                        let ring = [a, Point::new(b.x, a.z), b, Point::new(a.x, b.z)];
                        Step::add(ring_edit(context, &sharp(&ring)))
                    }
                    Some(Sketch::Ring(ring)) => self.propose(ring_edit(context, &ring), context),
                    Some(Sketch::Line(points)) => self.take_line(points, context),
                    None => Step::none(),
                }
            }
            _ => Step::none(),
        }
    }

    /// Shows what a stroke gave, or says why it cannot be.
    fn propose(&mut self, edit: Edit, context: &Context) -> Step {
        match apply(context.places.scheme, &edit) {
            Ok(_) => {
                *self = Self::Proposed;
                Step::preview(edit)
            }
            Err(error) => Step::say(error.to_string()),
        }
    }

    /// A line from an edge back to it reshapes the edge; any other is the start of a ring.
    fn take_line(&mut self, points: Vec<Point>, context: &Context) -> Step {
        if let Some(edit) = reshaping(context, &points, END_REACH * finest_m(context)) {
            return self.propose(edit, context);
        }
        let snapper = context.snapper().with_drawn(&points);
        let pointer = points.last().map_or(snapper.snap(Point::default()), |last| snapper.snap(*last));
        *self = Self::Drawing { points, pointer, entry: String::new(), stroke: Vec::new() };
        Step::none()
    }

    /// Sets the points of a stroke that goes on from the last one.
    fn go_on(&mut self, context: &Context) -> Step {
        let finest_m = finest_m(context);
        if let Self::Drawing { points, pointer, stroke, .. } = self {
            let stroke = std::mem::take(stroke);
            let sheet = Sheet { section: &context.places.scheme.section };
            let bent = points.last().map(|last| freehand::onward(*last, &stroke, finest_m, &sheet));
            if let Some([on_the_way @ .., _]) = bent.as_deref()
                && !on_the_way.is_empty()
                && pointer.reason != SnapReason::Close
            {
                points.extend(bent.iter().flatten());
                return Step::none();
            } else if let Some([on_the_way @ .., _]) = bent.as_deref() {
                points.extend(on_the_way);
            }
        }
        self.set_point(context)
    }

    /// Sets a point where the pointer is drawn to.
    fn set_point(&mut self, context: &Context) -> Step {
        match self {
            Self::Pointing(snap) => {
                let (points, pointer) = (vec![snap.point], *snap);
                *self = Self::Drawing { points, pointer, entry: String::new(), stroke: Vec::new() };
                Step::none()
            }
            Self::Drawing { pointer, .. } if pointer.reason == SnapReason::Close => self.close(context),
            Self::Drawing { points, pointer, entry, .. } => {
                entry.clear();
                if points.last() != Some(&pointer.point) {
                    points.push(pointer.point);
                }
                match reshaping(context, points, 0.0) {
                    Some(edit) => self.finish(edit, context),
                    None => Step::none(),
                }
            }
            _ => Step::none(),
        }
    }

    fn key(&mut self, key: Key, context: &Context) -> Step {
        if *self == Self::Proposed {
            return match key {
                Key::Enter => self.answer(Change::Keep).taken(),
                Key::Escape | Key::Backspace | Key::Delete => self.answer(Change::Drop).taken(),
                _ => Step::none(),
            };
        }
        if matches!(self, Self::Pointing(_) | Self::Starting { .. } | Self::Idle) {
            return self.start_by_key(key, context);
        }
        let Self::Drawing { points, pointer, entry, .. } = self else { return Step::none() };
        match key {
            Key::Char(c) if starts_length(c) || (!entry.is_empty() && belongs_to_length(c)) => {
                if entry.chars().count() < LONGEST_ENTRY {
                    entry.push(c);
                }
                Step::none().taken()
            }
            Key::Enter if entry.is_empty() => self.close(context).taken(),
            Key::Enter if entry.contains(BETWEEN) => match parse_point(entry) {
                Ok(point) => {
                    entry.clear();
                    points.push(origin(context) + point);
                    Step::none().taken()
                }
                Err(error) => Step::say(error.to_string()).taken(),
            },
            Key::Enter => match parse_length(entry) {
                Ok(length_m) => {
                    entry.clear();
                    if let Some(&last) = points.last() {
                        points.push(last + direction(last, pointer.point) * length_m);
                    }
                    Step::none().taken()
                }
                Err(error) => Step::say(error.to_string()).taken(),
            },
            Key::Backspace if !entry.is_empty() => {
                entry.pop();
                Step::none().taken()
            }
            Key::Backspace => {
                points.pop();
                if points.is_empty() {
                    *self = Self::Idle;
                }
                Step::none().taken()
            }
            Key::Escape if !entry.is_empty() => {
                entry.clear();
                Step::none().taken()
            }
            Key::Escape => {
                *self = Self::Idle;
                Step::none().taken()
            }
            _ => Step::none(),
        }
    }

    /// The first point may be typed as well: across and up from the lower left of what is drawn, or of the sheet.
    fn start_by_key(&mut self, key: Key, context: &Context) -> Step {
        let pointer = match self {
            Self::Pointing(snap) => *snap,
            Self::Starting { pointer, .. } => *pointer,
            _ => Snap { point: Point::default(), reason: SnapReason::Free },
        };
        let mut entry = match self {
            Self::Starting { entry, .. } => std::mem::take(entry),
            // A digit is for the dimension of what is selected.
            _ if !context.chosen.is_empty() => return Step::none(),
            _ => String::new(),
        };
        match key {
            Key::Char(c) if starts_length(c) || (!entry.is_empty() && belongs_to_length(c)) => {
                if entry.chars().count() < LONGEST_ENTRY {
                    entry.push(c);
                }
            }
            Key::Backspace if !entry.is_empty() => {
                entry.pop();
            }
            Key::Escape if !entry.is_empty() => entry.clear(),
            Key::Enter if !entry.is_empty() => {
                let typed = match parse_point(&entry) {
                    Ok(typed) => typed,
                    Err(error) => {
                        *self = Self::Starting { pointer, entry };
                        return Step::say(error.to_string()).taken();
                    }
                };
                let point = origin(context) + typed;
                let pointer = Snap { point, reason: SnapReason::Free };
                *self = Self::Drawing { points: vec![point], pointer, entry: String::new(), stroke: Vec::new() };
                return Step::none().taken();
            }
            _ => return Step::none(),
        }
        *self = if entry.is_empty() { Self::Pointing(pointer) } else { Self::Starting { pointer, entry } };
        Step::none().taken()
    }

    /// The last point of the ring that is being drawn.
    pub(in crate::editor) fn last_point(&self) -> Option<Point> {
        if let Self::Drawing { points, .. } = self { points.last().copied() } else { None }
    }

    /// Makes the ring, or keeps the points and says why it cannot be.
    fn close(&mut self, context: &Context) -> Step {
        let Self::Drawing { points, .. } = self else { return Step::none() };
        if points.len() < 3 {
            return Step::say(t("An outline needs three points at least."));
        }
        let edit = ring_edit(context, &sharp(points));
        self.finish(edit, context)
    }

    /// Commits what the points make, or keeps them and says why it cannot be.
    fn finish(&mut self, edit: Edit, context: &Context) -> Step {
        match apply(context.places.scheme, &edit) {
            Ok(_) => {
                *self = Self::Idle;
                Step::change(Change::Commit(edit))
            }
            Err(error) => Step::say(told(&error.sentence())),
        }
    }

    pub(in crate::editor) fn overlay(&self, overlay: &mut Overlay) {
        match self {
            Self::Idle => {}
            Self::Pointing(snap) => overlay.snap = Some(*snap),
            Self::Starting { pointer, entry } => {
                overlay.snap = Some(*pointer);
                overlay.entry = Some(LengthEntry { at: pointer.point, text: entry.clone(), length_m: None });
            }
            Self::Proposed => overlay.proposed = true,
            Self::Drawing { points, pointer, entry, stroke } => {
                overlay.snap = Some(*pointer);
                overlay.stroke.clone_from(stroke);
                overlay.preview.clone_from(points);
                overlay.preview.push(pointer.point);
                if let Some(&last) = points.last() {
                    let along = pointer.point - last;
                    let angle_deg = Some(angle_deg(along));
                    let length = Readout::length(pointer.point, "", along.length());
                    overlay.readout = Some(Readout { angle_deg, ..length });
                    if !entry.is_empty() {
                        let length_m = parse_length(entry).ok();
                        overlay.entry = Some(LengthEntry { at: pointer.point, text: entry.clone(), length_m });
                    }
                }
            }
            Self::Stroke(_, Some([a, b])) => {
                let (c, d) = (Point::new(b.x, a.z), Point::new(a.x, b.z));
                overlay.preview = vec![*a, c, *b, d, *a];
                let by_m = Some((b.z - a.z).abs());
                overlay.readout = Some(Readout { by_m, ..Readout::length(*b, "", (b.x - a.x).abs()) });
            }
            Self::Stroke(stroke, None) => overlay.stroke.clone_from(stroke),
        }
    }
}

fn finest_m(context: &Context) -> f64 {
    context.viewport.length_m(FINEST_PX.max(FINEST_OF_REACH * context.reach_px))
}

/// Lower left and upper right of a rectangle by its snapped corners.
fn snapped(context: &Context, ends: [Point; 2]) -> [Point; 2] {
    let snapper = context.snapper();
    let [a, b] = ends.map(|end| snapper.snap(end).point);
    [Point::new(a.x.min(b.x), a.z.min(b.z)), Point::new(a.x.max(b.x), a.z.max(b.z))]
}

fn direction(from: Point, to: Point) -> Point {
    let angle = angle_deg(to - from);
    let whole = (angle / 15.0).round() * 15.0;
    if (angle - whole).abs() <= NEAR_DIRECTION_DEG { unit_at(whole) } else { (to - from).unit() }
}

fn starts_length(c: char) -> bool {
    c.is_ascii_digit() || c == '.' || c == ','
}

fn belongs_to_length(c: char) -> bool {
    starts_length(c) || c == BETWEEN || "+-*/ mc'\"ftin′″".contains(c)
}

/// What typed points are measured from: the lower left of what is drawn, or of the sheet.
fn origin(context: &Context) -> Point {
    context.places.section().map_or(Point::default(), |bounds| bounds.min)
}

/// A point as two lengths, across and up.
fn parse_point(text: &str) -> Result<Point, QuantityError> {
    let (across, up) = text.split_once(BETWEEN).ok_or(QuantityError::OneLength)?;
    Ok(Point::new(parse_length(across)?, parse_length(up)?))
}
