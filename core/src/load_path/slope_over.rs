//! Slopes that face up too steeply to stand without a form, which fresh concrete lifts.

use super::record::Record;
use crate::checks::stability::Standing;
use crate::layout::takes_shutter;
use crate::model::{Face, FaceKind, Model};
use crate::results::{Finding, Severity};
use crate::scheme::Scheme;
use crate::sentence::{at_least, number};

/// Tells how hard fresh concrete lifts a form on each of them as a fluid, and what has to hold it down.
pub fn tell(scheme: &Scheme, model: &Model, record: &mut Record) {
    let is_steep = |face: &&Face| face.kind == FaceKind::SlopeOver && !takes_shutter(face);
    for face in model.faces.iter().filter(is_steep) {
        let Some(pour) = model.pour(face.of.pour) else { continue };
        let middle = face.from.lerp(face.to, 0.5);
        let across = face.to - face.from;
        let pressure_kpa = scheme.concrete.unit_weight_kn_m3 * (pour.top_m - middle.z);
        let (uplift, thrust) = (pressure_kpa * across.x.abs(), pressure_kpa * across.z.abs());
        let forces = Standing {
            holding: scheme.loads.formwork_kpa * across.length(),
            tipping_variable: uplift,
            ..Standing::default()
        };
        let text = sentence!(
            "A slope of {} faces up too steeply to stand without a form. On each metre of bay fresh concrete lifts the form \
             by {} and thrusts it sideways by {}; {} have to hold it down beside its own weight. It lies at x = {}, \
             level {}.",
            &pour.mark,
            number(uplift, "kN", 1),
            number(thrust, "kN", 1),
            at_least(forces.hold_down(scheme.basis), "kN", 1),
            number(middle.x, "m", 2),
            number(middle.z, "m", 2)
        );
        record.results.findings.push(Finding {
            severity: Severity::Warn,
            owner: None,
            at: Some(middle),
            check: None,
            text,
            remedy: sentence!(
                "Hold a form down on it by anchors in earlier concrete or by weight, and have it checked."
            ),
        });
    }
}
