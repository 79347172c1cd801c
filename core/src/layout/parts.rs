//! Every physical item of one bay's set of equipment, from the placed elements.

mod bent;
mod table;
mod wall;

use crate::catalogue::Item;
use crate::model::{Model, Part, Role, Solid};
use crate::scheme::Id;
use std::sync::Arc;

/// Parts of a bay of usual size, so that their list seldom grows.
const USUAL_PARTS: usize = 768;

/// All parts of a model.
pub fn of(model: &Model) -> Vec<Part> {
    let mut parts = Vec::with_capacity(USUAL_PARTS);
    for shutter in &model.shutters {
        wall::shutter(shutter, model.bay_m, &mut parts);
    }
    for row in &model.ties {
        wall::ties(row, model, &mut parts);
    }
    for falsework in &model.falsework {
        table::parts(falsework, model.bay_m, &mut parts);
        bent::parts(falsework, &mut parts);
    }
    parts
}

/// What parts of one element share.
struct Maker<'a> {
    owner: Id,
    mark: Arc<str>,
    role: Role,
    item: &'a Item,
    code: Arc<str>,
}

impl<'a> Maker<'a> {
    fn new(owner: Id, mark: &str, role: Role, item: &'a Item) -> Self {
        Self { owner, mark: mark.into(), role, item, code: item.code.as_str().into() }
    }

    fn make(&self, solid: Solid) -> Part {
        self.make_several(1, solid)
    }

    fn make_several(&self, count: u32, solid: Solid) -> Part {
        Part { mark: self.mark.clone(), owner: self.owner, role: self.role, item: self.code.clone(), count, solid }
    }
}

/// Depth and breadth of a beam item.
fn size(item: &Item) -> (f64, f64) {
    item.beam().map_or((0.0, 0.0), |beam| (beam.depth_m, beam.breadth_m))
}
