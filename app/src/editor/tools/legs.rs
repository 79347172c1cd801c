//! Puts falsework under the soffit above the point tapped, then a line of legs where it is tapped; lines over its whole
//! width by a pull of one spacing along its bearers.

use super::select::moved;
use crate::editor::tool::{Change, Context, Event, Step};
use crate::editor::{Target, View};
use crate::language::t;
use falsewright_core::geometry::Point;
use falsewright_core::model::{Face, FaceKind};
use falsewright_core::scheme::FaceRef;
use falsewright_core::scheme::Id;
use falsewright_core::scheme::edit::{Edit, LegSpacing};

/// Lines stand no nearer, m.
const LEAST_SPACING_M: f64 = 0.3;

/// What is going on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum State {
    /// Nothing.
    #[default]
    Idle,
    /// A leg line is being moved.
    Moving(Target),
    /// The pull is the spacing of the lines under this soffit.
    Pulling(FaceRef),
}

impl State {
    pub(in crate::editor) fn step(&mut self, event: Event, context: &Context) -> Step {
        match (*self, event) {
            (Self::Idle, Event::Tap(at)) => tapped(context, at),
            (Self::Idle, Event::Drag { from, at, first: true, .. }) => match line(context, from) {
                Some(line) => {
                    *self = Self::Moving(line);
                    Step { select: Some(Some(line)), ..moved(context, line, from, at) }
                }
                None => match soffit(context, from) {
                    Some(face) => {
                        *self = Self::Pulling(face.of);
                        pulled(context, face.of, from, at)
                    }
                    None => Step::none(),
                },
            },
            (Self::Pulling(soffit), Event::Drag { from, at, .. }) => pulled(context, soffit, from, at),
            (Self::Pulling(_), Event::Drop) => {
                *self = Self::Idle;
                Step { select_new: true, ..Step::change(Change::Keep) }
            }
            (Self::Moving(line), Event::Drag { from, at, .. }) => moved(context, line, from, at),
            (Self::Moving(_), Event::Drop) => {
                *self = Self::Idle;
                Step::change(Change::Keep)
            }
            (_, Event::Cancel) => {
                *self = Self::Idle;
                Step::change(Change::Drop)
            }
            _ => Step::none(),
        }
    }
}

fn tapped(context: &Context, at: Point) -> Step {
    if let Some(line) = line(context, at) {
        return Step::select(Some(line));
    }
    let Some(soffit) = soffit(context, at) else {
        return Step::say(t("Tap a soffit, or the room under it, to put falsework there."));
    };
    match context.places.scheme.falsework.iter().find(|falsework| falsework.soffit == soffit.of) {
        Some(falsework) => Step::add(Edit::AddLegLine { falsework: falsework.id, x_m: context.snapper().step(at.x) }),
        None => Step::add(Edit::AddFalsework(soffit.of)),
    }
}

/// Falsework with its lines so far apart; nothing while the pull is no spacing to speak of.
fn pulled(context: &Context, soffit: FaceRef, from: Point, at: Point) -> Step {
    let apart_m = context.snapper().step((at.x - from.x).abs());
    let scheme = context.places.scheme;
    let there = scheme.falsework.iter().find(|falsework| falsework.soffit == soffit).map(|falsework| falsework.id);
    let respace = |falsework: Id| Edit::RespaceLegLines { falsework, spacing: LegSpacing::Apart(apart_m) };
    match there {
        _ if apart_m < LEAST_SPACING_M => Step::change(Change::Drop),
        Some(falsework) => Step::preview(respace(falsework)),
        None => Step::preview(Edit::Several(vec![Edit::AddFalsework(soffit), respace(scheme.fresh_id())])),
    }
}

fn line(context: &Context, at: Point) -> Option<Target> {
    context.hit(at, |target| matches!(target, Target::LegLine(_)))
}

/// The soffit within reach, or the one above the point.
fn soffit<'a>(context: &'a Context, at: Point) -> Option<&'a Face> {
    let faces = context.places.faces;
    if context.places.seen.view == View::Plan {
        let under = context.hit(at, |target| matches!(target, Target::Falsework(_)))?;
        return context.places.soffit(context.places.falsework(under.element()?)?);
    }
    let of = |target: &Target| match target {
        Target::Face(of) => faces.iter().find(|face| face.of == *of && face.kind == FaceKind::Soffit),
        _ => None,
    };
    let on = context.hit(at, |target| of(target).is_some()).as_ref().and_then(of);
    on.or_else(|| context.places.soffit_above(at))
}
