//! What holds the fixed end of a tie or prop: kentledge, or an anchor in concrete cast earlier.

use super::concrete::Anchor;
use super::stability::{Standing, check_sliding, check_uplift};
use crate::actions::factors::balance;
use crate::results::Verdict;
use crate::scheme::{Basis, CastAnchor, HeldBy};

/// Forces of no size but that of rounding, kN.
const AS_GOOD_AS_NOTHING_KN: f64 = 1e-6;

/// Force on a fixed end, kN, unfactored.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndForce {
    /// Along the surface that it stands on, of either sign.
    pub along_kn: f64,
    /// Out of that surface; negative: pressed on.
    pub out_kn: f64,
    /// Factor of the load on the basis.
    pub factor: f64,
}

/// Kentledge against lifting and sliding; an anchor against tension and shear together. What is only thrust against
/// has no check. `anchor` places a cast anchor among its neighbours.
///
/// The force is variable. What it lifts takes its factored part off the weight that gives friction; what it presses down
/// is not counted on.
pub fn check_fixed_end(
    by: &HeldBy,
    basis: Basis,
    force: &EndForce,
    anchor: impl Fn(&CastAnchor) -> Anchor,
) -> Vec<Verdict> {
    match by {
        HeldBy::Thrust => Vec::new(),
        HeldBy::Kentledge { weight_kn, friction } => {
            let factors = balance(basis);
            let out_kn = force.out_kn.max(0.0);
            let left_kn = (weight_kn - out_kn * factors.variable / factors.favourable).max(0.0);
            let lifted = Standing { holding: *weight_kn, tipping_variable: out_kn, ..Standing::default() };
            let pushed = Standing { holding: left_kn, tipping_variable: force.along_kn.abs(), ..Standing::default() };
            let sliding = check_sliding(basis, &pushed, *friction);
            if out_kn > AS_GOOD_AS_NOTHING_KN { vec![check_uplift(basis, &lifted), sliding] } else { vec![sliding] }
        }
        HeldBy::Anchor(cast) => {
            let anchor = anchor(cast);
            let tension_kn = force.out_kn.max(0.0) * force.factor;
            let shear_kn = force.along_kn.abs() * force.factor;
            if shear_kn > AS_GOOD_AS_NOTHING_KN {
                vec![anchor.check_together(basis, cast.strength_mpa, tension_kn, shear_kn)]
            } else {
                vec![anchor.check(basis, cast.strength_mpa, tension_kn)]
            }
        }
    }
}
