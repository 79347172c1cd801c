//! Draws a ring point by point, or a rectangle by a drag. The first ring is the outline, further ones are cells.

use crate::editor::snap::{Snap, SnapReason, angle_deg, unit_at};
use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Key, LengthEntry, Overlay, Readout, parse_length};
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::{Edit, apply};
use falsewright_core::scheme::{Corner, Id, Section};

/// A typed length goes in a direction of whole 15° when the pointer is this near to one, degrees.
const NEAR_DIRECTION_DEG: f64 = 4.0;

/// Longest text of a typed length.
const LONGEST_ENTRY: usize = 40;

/// What is going on.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum State {
    /// No pointer.
    #[default]
    Idle,
    /// The first point would come here.
    Pointing(Snap),
    /// Points are set; the next would come where the pointer is, or as far off as is typed.
    Drawing {
        /// Points so far.
        points: Vec<Point>,
        /// Where the pointer is drawn to.
        pointer: Snap,
        /// What is typed.
        entry: String,
    },
    /// A rectangle is being pulled.
    Rectangle([Point; 2]),
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match event {
            Event::Hover(at) => {
                self.point_at(at, context);
                Step::none()
            }
            Event::Tap(at) => {
                self.point_at(at, context);
                self.set_point(context)
            }
            Event::Drag { from, at, .. } => {
                self.pull(from, at, context);
                Step::none()
            }
            Event::Drop => self.let_go(context),
            Event::Cancel => {
                if let Self::Rectangle(_) = self {
                    *self = Self::Idle;
                }
                Step::none()
            }
            Event::Key(key) => self.key(key, context),
        }
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

    /// A drag from a drawn point goes on drawing; from nothing it pulls a rectangle.
    fn pull(&mut self, from: Point, at: Point, context: &Context) {
        if let Self::Drawing { .. } = self {
            self.point_at(at, context);
        } else {
            let snapper = context.snapper();
            *self = Self::Rectangle([snapper.snap(from).point, snapper.snap(at).point]);
        }
    }

    fn let_go(&mut self, context: &Context) -> Step {
        match *self {
            Self::Drawing { .. } => self.set_point(context),
            Self::Rectangle([a, b]) => {
                *self = Self::Idle;
                let (low, high) = (Point::new(a.x.min(b.x), a.z.min(b.z)), Point::new(a.x.max(b.x), a.z.max(b.z)));
                let ring = [low, Point::new(high.x, low.z), high, Point::new(low.x, high.z)];
                Step::add(ring_edit(context, &ring))
            }
            _ => Step::none(),
        }
    }

    /// Sets a point where the pointer is drawn to.
    fn set_point(&mut self, context: &Context) -> Step {
        match self {
            Self::Pointing(snap) => {
                *self = Self::Drawing { points: vec![snap.point], pointer: *snap, entry: String::new() };
                Step::none()
            }
            Self::Drawing { pointer, .. } if pointer.reason == SnapReason::Close => self.close(context),
            Self::Drawing { points, pointer, entry } => {
                entry.clear();
                if points.last() != Some(&pointer.point) {
                    points.push(pointer.point);
                }
                Step::none()
            }
            _ => Step::none(),
        }
    }

    fn key(&mut self, key: Key, context: &Context) -> Step {
        let Self::Drawing { points, pointer, entry } = self else { return Step::none() };
        match key {
            Key::Char(c) if starts_length(c) || (!entry.is_empty() && belongs_to_length(c)) => {
                if entry.chars().count() < LONGEST_ENTRY {
                    entry.push(c);
                }
                Step::none().taken()
            }
            Key::Enter if entry.is_empty() => self.close(context).taken(),
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

    /// Makes the ring, or keeps the points and says why it cannot be.
    fn close(&mut self, context: &Context) -> Step {
        let Self::Drawing { points, .. } = self else { return Step::none() };
        if points.len() < 3 {
            return Step::say("An outline needs three points at least.");
        }
        let edit = ring_edit(context, points);
        match apply(context.places.scheme, &edit) {
            Ok(_) => {
                *self = Self::Idle;
                Step::change(Change::Commit(edit))
            }
            Err(error) => Step::say(error.to_string()),
        }
    }

    pub(in crate::editor) fn overlay(&self, overlay: &mut Overlay) {
        match self {
            Self::Idle => {}
            Self::Pointing(snap) => overlay.snap = Some(*snap),
            Self::Drawing { points, pointer, entry } => {
                overlay.snap = Some(*pointer);
                overlay.preview.clone_from(points);
                overlay.preview.push(pointer.point);
                if let Some(&last) = points.last() {
                    let along = pointer.point - last;
                    let angle_deg = Some(angle_deg(along));
                    overlay.readout = Some(Readout { at: pointer.point, length_m: along.length(), angle_deg });
                    if !entry.is_empty() {
                        let length_m = parse_length(entry).ok();
                        overlay.entry = Some(LengthEntry { at: pointer.point, text: entry.clone(), length_m });
                    }
                }
            }
            Self::Rectangle([a, b]) => {
                let (c, d) = (Point::new(b.x, a.z), Point::new(a.x, b.z));
                overlay.preview = vec![*a, c, *b, d, *a];
                let length_m = (b.x - a.x).abs();
                overlay.readout = Some(Readout { at: *b, length_m, angle_deg: None });
            }
        }
    }
}

/// The first ring makes the section, a further one a cell.
fn ring_edit(context: &Context, ring: &[Point]) -> Edit {
    if !context.places.scheme.section.outline.is_empty() {
        return Edit::AddCell(ring.to_vec());
    }
    let corner = |(i, p): (u32, &Point)| Corner { id: Id(i), x_m: p.x, z_m: p.z, cut: None };
    let outline = (1..).zip(ring).map(corner).collect();
    Edit::SetSection(Section { outline, cells: Vec::new(), joints: Vec::new() })
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
    starts_length(c) || "+-*/ mc".contains(c)
}
