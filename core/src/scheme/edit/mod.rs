//! Pure edits: a scheme and what to change give another valid scheme, or the reason why not.

mod align;
mod defaults;
mod error;
mod excerpt;
mod falsework;
mod follow;
mod items;
mod opening;
mod outline;
mod place;
mod repeats;
mod several;
mod shutters;
mod spread;

pub use align::Align;
pub use error::EditError;
pub use excerpt::Excerpt;
pub use falsework::soffit_extent;

use crate::catalogue::Item;
use crate::geometry::Point;
use crate::model::Role;
use crate::scheme::{
    Basis, Bays, Concrete, Corner, Cut, FaceRef, Falsework, Ground, Id, Limits, Loads, Moving, Opening, Programme,
    Ring, Scheme, SchemeError, Section, Shutter, Stock, Striking, TieRow,
};

/// One change of a scheme. An edge is named by the corner where it starts, as listed in its ring.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Replaces the section by another with ids of its own; equipment of the old one goes.
    SetSection(Section),
    /// Puts a corner on an edge.
    AddCorner {
        /// Start of the edge.
        edge: Id,
        /// Where the corner comes.
        at: Point,
    },
    /// Moves a corner.
    MoveCorner {
        /// The corner.
        corner: Id,
        /// Where it goes.
        to: Point,
    },
    /// Moves both corners of an edge along its normal.
    MoveEdge {
        /// Start of the edge.
        edge: Id,
        /// Out of its ring, so that the ring grows; negative: inward.
        distance_m: f64,
    },
    /// Moves one edge so that it is this far from a parallel one, on the side where it is.
    SetLength {
        /// Start of the edge that moves.
        edge: Id,
        /// Start of the parallel edge that stays.
        from: Id,
        /// Distance between them.
        length_m: f64,
        /// Whether all that lies beyond the moving edge goes with it, so that it keeps its own thicknesses.
        carry: bool,
    },
    /// Gives a corner a haunch or chamfer, or takes it away.
    SetCut {
        /// The corner.
        corner: Id,
        /// Its haunch or chamfer.
        cut: Option<Cut>,
    },
    /// Makes a void of a ring of corners, which get ids of their own.
    AddCell(Vec<Corner>),
    /// Leads a ring along new points from one of its edges to another, or back to the same one: a downstand, a kicker, a
    /// step or a recess. The shorter part of the ring between them goes.
    Reshape {
        /// Start of the edge with the first point on it.
        from: Id,
        /// Start of the edge with the last point on it.
        to: Id,
        /// From edge to edge.
        points: Vec<Point>,
    },
    /// Moves an edge with all that lies beyond it, so that what is beyond keeps its own sizes.
    CarryEdge {
        /// Start of the edge.
        edge: Id,
        /// Along one axis; what lies further in this axis than the edge, as seen from `from`, goes with it.
        by: Point,
        /// Start of the edge on the near side, which stays.
        from: Id,
    },
    /// Puts a construction joint at a level.
    AddJoint {
        /// Its level.
        z_m: f64,
    },
    /// Moves a construction joint.
    MoveJoint {
        /// The joint.
        joint: Id,
        /// Its new level.
        z_m: f64,
    },
    /// Removes a corner, cell, joint, shutter, row, falsework, leg line or opening, and what cannot be without it.
    Remove(Id),
    /// Removes several elements.
    RemoveAll(Vec<Id>),
    /// Moves several corners and joints at once.
    MoveSection {
        /// Corners and their new places.
        corners: Vec<(Id, Point)>,
        /// Joints and their new levels.
        joints: Vec<(Id, f64)>,
    },
    /// Puts another of each element beside it.
    Duplicate(Vec<Id>),
    /// Copies elements to the other side of the section's centre line.
    Mirror(Vec<Id>),
    /// Copies shutters to the other face of their walls.
    Opposite(Vec<Id>),
    /// Makes elements like the first of them.
    Align {
        /// The elements.
        ids: Vec<Id>,
        /// What becomes the same.
        how: Align,
    },
    /// Places copied elements.
    Paste {
        /// What was copied.
        excerpt: Box<Excerpt>,
        /// The face that it goes to; none: to those that match.
        onto: Option<FaceRef>,
    },
    /// Several edits as one.
    Several(Vec<Edit>),
    /// Puts a shutter of usual build-up on a wall face.
    AddShutter(FaceRef),
    /// Puts shutters of usual build-up on all wall faces of the outside, or of the cells, that have none.
    AddShutters {
        /// Faces of cells.
        inner: bool,
    },
    /// Puts rows of usual spacing on all shutters that nothing holds: ties, or props where they meet no shutter.
    HoldShutters,
    /// Sets how far a shutter reaches beyond its face.
    MoveShutterEnds {
        /// The shutter.
        shutter: Id,
        /// Below the face.
        below_m: f64,
        /// Above the face.
        above_m: f64,
    },
    /// Replaces the shutter of the same id.
    SetShutter(Shutter),
    /// Ties a shutter to the one across the concrete at a level, or props it where there is none.
    AddTieRow {
        /// The shutter.
        shutter: Id,
        /// Level of the row.
        z_m: f64,
    },
    /// Props a shutter from a fixed point outside.
    AddProp {
        /// The shutter.
        shutter: Id,
        /// Level of the row.
        z_m: f64,
        /// Length of the props.
        length_m: f64,
    },
    /// Replaces the ties of a shutter, or its props where it has no opposite, by rows over its whole height.
    AddTieRows {
        /// The shutter.
        shutter: Id,
        /// No two rows stand further apart than this.
        spacing_m: f64,
    },
    /// Moves a row to another level.
    MoveTieRow {
        /// The row.
        row: Id,
        /// Its new level.
        z_m: f64,
    },
    /// Changes the tie or prop of a row.
    SetTieItem {
        /// The row.
        row: Id,
        /// Catalogue code.
        item: String,
    },
    /// Replaces the row of the same id.
    SetTieRow(TieRow),
    /// Puts falsework of usual build-up under a soffit.
    AddFalsework(FaceRef),
    /// Replaces the falsework of the same id.
    SetFalsework(Falsework),
    /// Puts another line of legs under a soffit.
    AddLegLine {
        /// The falsework.
        falsework: Id,
        /// Where the line stands.
        x_m: f64,
    },
    /// Moves a line of legs.
    MoveLegLine {
        /// The line.
        line: Id,
        /// Where it goes.
        x_m: f64,
    },
    /// Places all leg lines anew, equally apart between the outer two.
    RespaceLegLines {
        /// The falsework.
        falsework: Id,
        /// How far apart.
        spacing: LegSpacing,
    },
    /// Puts diagonals into the gap to the right of a leg line, or takes them out.
    ToggleBraced(Id),
    /// Keeps a way open through falsework.
    AddOpening {
        /// The falsework.
        falsework: Id,
        /// Left edge of the clear way.
        left_m: f64,
        /// Clear width.
        width_m: f64,
    },
    /// Moves an opening sideways.
    MoveOpening {
        /// The opening.
        opening: Id,
        /// Left edge of the clear way.
        left_m: f64,
    },
    /// Changes the clear way; the transfer beams keep their distance above it.
    ResizeOpening {
        /// The opening.
        opening: Id,
        /// Left edge of the clear way.
        left_m: f64,
        /// Clear width.
        width_m: f64,
        /// Clear height.
        height_m: f64,
    },
    /// Replaces the opening of the same id.
    SetOpening(Opening),
    /// Renames the scheme.
    SetName(String),
    /// Marks the drawings with a revision.
    SetRevision(String),
    /// Renames this option of the job.
    SetOption(String),
    /// Sets the concrete and its delivery.
    SetConcrete(Concrete),
    /// Sets the rules that resistances follow.
    SetBasis(Basis),
    /// Sets length and number of bays.
    SetBays(Bays),
    /// Sets the loads that do not come from the concrete.
    SetLoads(Loads),
    /// Sets the limits of deflection and clearance.
    SetLimits(Limits),
    /// Sets the ground.
    SetGround(Ground),
    /// Sets how the concrete hardens, so that the times of striking are computed; none: they are not.
    SetStriking(Option<Striking>),
    /// Sets how bays are taken from where they were cast; none: they stay.
    SetMoving(Option<Moving>),
    /// Sets how sets of equipment go from bay to bay; none: that is not worked out.
    SetProgramme(Option<Programme>),
    /// Sets what bars are bought in; none: cutting is not worked out.
    SetStock(Option<Stock>),
    /// Adds an item of the user's own, or replaces the one of the same code.
    SetItem(Item),
    /// Replaces all items of the user's own.
    SetItems(Vec<Item>),
    /// Adds an item of the user's own, or replaces the one of the same code, and makes part of an element of it.
    UseItem {
        /// The shutter, row of ties, falsework or opening.
        element: Id,
        /// What the item does there.
        role: Role,
        /// The item.
        item: Item,
    },
    /// Removes the user's own item of this code.
    RemoveItem(String),
}

/// How leg lines are placed anew.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LegSpacing {
    /// This many lines.
    Count(u32),
    /// As few lines as keep this distance, m.
    Apart(f64),
}

/// The scheme after an edit.
///
/// # Errors
/// Refuses what names no element, what is no number, and what would leave a scheme that is not valid.
pub fn apply(scheme: &Scheme, edit: &Edit) -> Result<Scheme, EditError> {
    let mut after = scheme.clone();
    apply_each(&mut after, edit)?;
    check(&after)?;
    Ok(after)
}

fn apply_each(scheme: &mut Scheme, edit: &Edit) -> Result<(), EditError> {
    if let Edit::Several(edits) = edit {
        return edits.iter().try_for_each(|edit| apply_each(scheme, edit));
    }
    let before = scheme.clone();
    change(scheme, edit)?;
    if scheme.section != before.section || scheme.ground != before.ground {
        follow::follow(&before, scheme);
    }
    repeats::settle(scheme);
    Ok(())
}

/// Refuses what is not valid. A blank sheet may be edited, although there is nothing on it to compute.
fn check(scheme: &Scheme) -> Result<(), EditError> {
    let blank = scheme.section.outline.is_empty() && scheme.section.cells.is_empty();
    let missing =
        |error: &SchemeError| blank && matches!(error, SchemeError::TooFewCorners { ring: Ring::Outline, .. });
    let errors = scheme.validate().err().unwrap_or_default();
    errors.into_iter().find(|error| !missing(error)).map_or(Ok(()), |error| Err(EditError::Invalid(Box::new(error))))
}

fn change(scheme: &mut Scheme, edit: &Edit) -> Result<(), EditError> {
    match edit {
        Edit::SetSection(section) => outline::set_section(scheme, section),
        Edit::Reshape { from, to, points } => outline::reshape(scheme, *from, *to, points)?,
        Edit::CarryEdge { edge, by, from } => outline::carry_edge(scheme, *edge, *by, *from)?,
        Edit::AddCorner { edge, at } => outline::add_corner(scheme, *edge, *at)?,
        Edit::MoveCorner { corner, to } => outline::move_corner(scheme, *corner, *to)?,
        Edit::MoveEdge { edge, distance_m } => outline::move_edge(scheme, *edge, *distance_m)?,
        Edit::SetLength { edge, from, length_m, carry } => {
            outline::set_length(scheme, *edge, *from, *length_m, *carry)?
        }
        Edit::SetCut { corner, cut } => outline::set_cut(scheme, *corner, *cut)?,
        Edit::AddCell(corners) => outline::add_cell(scheme, corners),
        Edit::AddJoint { z_m } => outline::add_joint(scheme, *z_m)?,
        Edit::MoveJoint { joint, z_m } => outline::move_joint(scheme, *joint, *z_m)?,
        Edit::Remove(id) => remove(scheme, *id)?,
        Edit::RemoveAll(ids) => several::remove_all(scheme, ids)?,
        Edit::MoveSection { corners, joints } => several::move_section(scheme, corners, joints)?,
        Edit::Duplicate(ids) => spread::duplicate(scheme, ids)?,
        Edit::Mirror(ids) => spread::mirror(scheme, ids)?,
        Edit::Opposite(ids) => spread::opposite(scheme, ids)?,
        Edit::Align { ids, how } => align::align(scheme, ids, *how)?,
        Edit::Paste { excerpt, onto } => {
            place::place(scheme, excerpt, onto.map_or(place::Onto::Matching, place::Onto::Face))?;
        }
        Edit::Several(edits) => edits.iter().try_for_each(|edit| change(scheme, edit))?,
        Edit::AddShutter(face) => shutters::add_shutter(scheme, *face)?,
        Edit::AddShutters { inner } => shutters::add_shutters(scheme, *inner)?,
        Edit::HoldShutters => shutters::hold_all(scheme)?,
        Edit::MoveShutterEnds { shutter, below_m, above_m } => {
            shutters::move_ends(scheme, *shutter, *below_m, *above_m)?
        }
        Edit::SetShutter(shutter) => shutters::set_shutter(scheme, shutter)?,
        Edit::AddTieRow { shutter, z_m } => shutters::add_row(scheme, *shutter, *z_m)?,
        Edit::AddProp { shutter, z_m, length_m } => shutters::add_prop(scheme, *shutter, *z_m, *length_m)?,
        Edit::AddTieRows { shutter, spacing_m } => shutters::add_rows(scheme, *shutter, *spacing_m)?,
        Edit::MoveTieRow { row, z_m } => shutters::move_row(scheme, *row, *z_m)?,
        Edit::SetTieItem { row, item } => shutters::set_item(scheme, *row, item)?,
        Edit::SetTieRow(row) => shutters::set_row(scheme, row)?,
        Edit::AddFalsework(soffit) => falsework::add_falsework(scheme, *soffit)?,
        Edit::SetFalsework(falsework) => falsework::set_falsework(scheme, falsework)?,
        Edit::AddLegLine { falsework, x_m } => falsework::add_line(scheme, *falsework, *x_m)?,
        Edit::MoveLegLine { line, x_m } => falsework::move_line(scheme, *line, *x_m)?,
        Edit::RespaceLegLines { falsework, spacing } => falsework::respace(scheme, *falsework, *spacing)?,
        Edit::ToggleBraced(line) => falsework::toggle_braced(scheme, *line)?,
        Edit::AddOpening { falsework, left_m, width_m } => {
            opening::add(scheme, *falsework, *left_m, *width_m)?;
        }
        Edit::MoveOpening { opening, left_m } => opening::shift(scheme, *opening, *left_m)?,
        Edit::ResizeOpening { opening, left_m, width_m, height_m } => {
            opening::resize(scheme, *opening, *left_m, *width_m, *height_m)?;
        }
        Edit::SetOpening(opening) => opening::set(scheme, opening)?,
        Edit::SetName(name) => scheme.name.clone_from(name),
        Edit::SetRevision(revision) => scheme.revision.clone_from(revision),
        Edit::SetOption(option) => scheme.option.clone_from(option),
        Edit::SetConcrete(concrete) => scheme.concrete = *concrete,
        Edit::SetBasis(basis) => scheme.basis = *basis,
        Edit::SetBays(bays) => scheme.bays = *bays,
        Edit::SetLoads(loads) => scheme.loads = *loads,
        Edit::SetLimits(limits) => scheme.limits = *limits,
        Edit::SetGround(ground) => scheme.ground = *ground,
        Edit::SetStriking(striking) => scheme.striking.clone_from(striking),
        Edit::SetMoving(moving) => scheme.moving = *moving,
        Edit::SetProgramme(programme) => scheme.programme = *programme,
        Edit::SetStock(stock) => scheme.stock.clone_from(stock),
        Edit::SetItem(item) => items::set(scheme, item)?,
        Edit::SetItems(items) => items::set_all(scheme, items)?,
        Edit::UseItem { element, role, item } => items::make_of(scheme, *element, *role, item)?,
        Edit::RemoveItem(code) => items::remove(scheme, code)?,
    }
    Ok(())
}

/// Removes one element; what hangs on it goes with it.
fn remove(scheme: &mut Scheme, id: Id) -> Result<(), EditError> {
    if outline::remove(&mut scheme.section, id)? {
        return Ok(());
    }
    let removed = remove_placed(scheme, id);
    follow::drop_orphans(scheme);
    if removed { Ok(()) } else { Err(EditError::Missing { what: "element", id }) }
}

/// Removes an element that is placed on the section; false: there is none of this id.
fn remove_placed(scheme: &mut Scheme, id: Id) -> bool {
    let Scheme { shutters, ties, falsework, openings, .. } = scheme;
    let mut removed = false;
    let mut keep = |own: Id| {
        removed |= own == id;
        own != id
    };
    shutters.retain(|shutter| keep(shutter.id));
    ties.retain(|row| keep(row.id));
    openings.retain(|opening| keep(opening.id));
    falsework.retain(|falsework| keep(falsework.id));
    falsework.iter_mut().for_each(|falsework| falsework.leg_lines.retain(|line| keep(line.id)));
    removed
}

#[cfg(test)]
mod tests;
