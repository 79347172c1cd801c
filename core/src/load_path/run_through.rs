//! Members of falsework that run across to the walls through shutters which stand there.

use super::record::Record;
use crate::catalogue::Item;
use crate::layout::span;
use crate::model::{Model, PlacedFalsework, PlacedShutter, TOUCHING_M};
use crate::results::Severity;
use crate::scheme::Direction;
use crate::sentence::{term, word};

/// Tells which falsework does, since its loads are worked out as if it reached the walls.
pub fn tell(model: &Model, record: &mut Record) {
    for falsework in &model.falsework {
        let depth = |item: &Item| item.beam().map_or(0.0, |beam| beam.depth_m);
        let secondary_m = falsework.head_m + depth(&falsework.primary);
        let (members, low_m, high_m) = match falsework.direction {
            Direction::Across => (term("primaries"), falsework.head_m, secondary_m),
            Direction::Along => (term("secondaries"), secondary_m, secondary_m + depth(&falsework.secondary)),
        };
        let crossed = |shutter: &&PlacedShutter| {
            shutter.pour == falsework.pour
                && low_m < shutter.top_m - TOUCHING_M
                && high_m > shutter.bottom_m + TOUCHING_M
                && overlaps(falsework, shutter, (low_m + high_m) / 2.0)
        };
        let marks: Vec<&str> = model.shutters.iter().filter(crossed).map(|shutter| shutter.mark.as_str()).collect();
        if !marks.is_empty() {
            record.find(
                Severity::Note,
                falsework.id,
                sentence!(
                    "The {} of {} are worked out as if they reached the walls; there they run through {}.",
                    word(members),
                    &falsework.mark,
                    marks.join(", ")
                ),
                sentence!(
                    "Cut them back to the shutters and carry the edge of the soffit on these, or end the shutters below."
                ),
            );
        }
    }
}

/// Whether what runs across at a level is where the board of a shutter is.
fn overlaps(falsework: &PlacedFalsework, shutter: &PlacedShutter, level_m: f64) -> bool {
    let (left, right) = span(&falsework.faces);
    let face = shutter.face.x_at(level_m);
    let back = face + shutter.outward * shutter.facing.board().map_or(0.0, |board| board.thickness_m);
    face.max(back).min(right) - face.min(back).max(left) > TOUCHING_M
}
