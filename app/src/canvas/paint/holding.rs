//! What holds the fixed ends of ties and props, as signs: a support, a block, an anchor.

use super::Path;
use crate::editor::ends;
use falsewright_core::geometry::Point;
use falsewright_core::model::{Model, PlacedTieRow};
use falsewright_core::scheme::HeldBy;

/// Height of a support and half of its width.
const SUPPORT_M: f64 = 0.1;
/// Width and height of the sign of a block.
const BLOCK_M: [f64; 2] = [0.5, 0.25];

/// The sign at the fixed end of a row on the section; empty for one between two shutters.
pub fn holding(row: &PlacedTieRow, model: &Model) -> Path {
    let mut path = Path::default();
    let part = model.parts.iter().find(|part| part.owner == row.id).filter(|_| row.to.is_none());
    let Some([from, foot]) = part.map(ends) else { return path };
    let at = |x: f64, z: f64| foot + Point::new(x, z);
    if row.below_m() <= 0.0 {
        // Against something upright.
        let out = SUPPORT_M.copysign(foot.x - from.x);
        path.line([at(0.0, -SUPPORT_M), at(0.0, SUPPORT_M)]);
        for z in [-1.0, -0.3, 0.4] {
            path.line([at(0.0, z * SUPPORT_M), at(0.6 * out, (z + 0.6) * SUPPORT_M)]);
        }
        return path;
    }
    path.ring([at(0.0, 0.0), at(SUPPORT_M, -SUPPORT_M), at(-SUPPORT_M, -SUPPORT_M)]);
    match row.held.map(|held| held.by) {
        Some(HeldBy::Kentledge { .. }) => {
            let [half, low] = [BLOCK_M[0] / 2.0, -SUPPORT_M - BLOCK_M[1]];
            path.rectangle(at(-half, low), at(half, -SUPPORT_M));
            path.line([at(-half, low), at(half, -SUPPORT_M)]);
            path.line([at(-half, -SUPPORT_M), at(half, low)]);
        }
        Some(HeldBy::Anchor(anchor)) => {
            let low = -SUPPORT_M - anchor.depth_m;
            path.line([at(0.0, -SUPPORT_M), at(0.0, low)]);
            path.line([at(-anchor.head_m / 2.0, low), at(anchor.head_m / 2.0, low)]);
        }
        Some(HeldBy::Thrust) | None => {}
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::catalogue::Catalogue;
    use falsewright_core::design;
    use falsewright_core::scheme::heron_lane;

    #[test]
    fn every_prop_has_a_sign_at_its_foot_and_no_tie_between_shutters_has() {
        let scheme = heron_lane().expect("the demo is readable");
        let catalogue = Catalogue::generic().with_items_of(&scheme);
        let model = design(&scheme, &catalogue).expect("the demo can be computed").model;
        let (free, joined): (Vec<_>, Vec<_>) = model.ties.iter().partition(|row| row.to.is_none());
        assert!(!free.is_empty() && !joined.is_empty());
        assert!(free.iter().all(|row| !holding(row, &model).finish().is_empty()));
        assert!(joined.iter().all(|row| holding(row, &model).finish().is_empty()));
    }
}
