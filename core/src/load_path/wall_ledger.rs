//! What comes in and goes out at each level of a group of wall shutters: level forces outward positive, upright ones
//! upward.

use super::wall_facing::Path;
use super::wall_frame::GroupResult;
use super::wall_rows::AS_GOOD_AS_NOTHING_KN;
use crate::model::{Model, PlacedTieRow, Pour};
use crate::results::{LedgerEntry, LedgerLevel};
use crate::scheme::Arrangement;

/// The path of the level forces, and of the upright ones where there are any.
pub fn entries(
    pour: &Pour,
    model: &Model,
    paths: &[&Path],
    rows: &[&PlacedTieRow],
    solved: &GroupResult,
    tie_forces: &[Vec<Vec<f64>>],
) -> Vec<LedgerEntry> {
    let sum = |part: &dyn Fn(usize, &Path) -> f64| -> f64 {
        paths.iter().enumerate().map(|(index, path)| part(index, path)).sum()
    };
    let bay = model.bay_m;
    let width = |path: &Path| path.widths.iter().sum::<f64>();
    let concrete = sum(&|_, path| path.pressure.resultant_kn_m() * bay);
    let facing = sum(&|_, path| match path.shutter.arrangement {
        Arrangement::UprightPrimaries => path.facing.iter().sum::<f64>() * bay / path.shutter.face.stretch(),
        Arrangement::LevelPrimaries => path.facing.iter().sum::<f64>() * path.pressure.resultant_kn_m(),
    });
    let on_upright = |path: &Path| width(path) * path.load_kn_m() / path.shutter.face.stretch();
    let on_uprights = sum(&|_, path| on_upright(path));
    let missing = |index: usize| match &solved.missing_prop {
        Some(prop) if prop.upright == index => prop.force_kn,
        _ => 0.0,
    };
    let held = |index: usize, path: &Path| -> f64 {
        let id = path.shutter.id;
        let at_rows = rows.iter().zip(&solved.links).filter(|(row, _)| row.shutter == id || row.to == Some(id));
        at_rows.map(|(_, force)| force).sum::<f64>() + solved.feet[index] + missing(index)
    };
    let from_uprights = sum(&|index, path| width(path) * held(index, path));
    let feet = sum(&|index, path| width(path) * (solved.feet[index] + missing(index)));
    let ties: f64 = tie_forces.iter().flatten().flatten().sum();

    let level = |name: &'static str, into_kn, out_kn| LedgerLevel { level: name, into_kn, out_kn };
    let mut levels = vec![
        level("facing", concrete, facing),
        level("secondaries", facing, on_uprights),
        level("uprights", on_uprights, from_uprights),
        level("ties, props and feet", from_uprights, ties + feet),
    ];
    if paths.len() > 1 {
        let to_right = sum(&|_, path| path.shutter.outward * on_upright(path));
        let at_feet = sum(&|index, path| path.shutter.outward * width(path) * (solved.feet[index] + missing(index)));
        let outward_of = |id| paths.iter().find(|path| path.shutter.id == id).map_or(0.0, |path| path.shutter.outward);
        let fixed = rows.iter().zip(tie_forces).filter(|(row, _)| row.to.is_none());
        let at_fixed: f64 =
            fixed.map(|(row, forces)| outward_of(row.shutter) * forces.iter().flatten().sum::<f64>()).sum();
        levels.push(level("faces against each other, to fixed ends and feet", to_right, at_fixed + at_feet));
    }
    let marks: Vec<&str> = paths.iter().map(|path| path.shutter.mark.as_str()).collect();
    let marks = marks.join(" + ");
    let horizontal = LedgerEntry::new(pour.mark.clone(), sentence!("horizontal, {}", &marks), levels);

    let lean = |path: &Path| path.shutter.face.lean() * -path.shutter.outward;
    let by_concrete = sum(&|_, path| lean(path) * path.pressure.resultant_kn_m() * bay);
    let raking = rows.iter().zip(tie_forces).filter(|(row, _)| row.below_m() > 0.0);
    let by_props: f64 =
        raking.map(|(row, forces)| forces.iter().flatten().sum::<f64>() * row.below_m() / row.run_m()).sum();
    let held_down = sum(&|index, path| width(path) * solved.lifts[index]);
    if by_concrete.abs().max(by_props.abs()).max(held_down.abs()) < AS_GOOD_AS_NOTHING_KN {
        return vec![horizontal];
    }
    let up = vec![level("lifted by concrete and props, to weight and hold-downs", by_concrete + by_props, held_down)];
    vec![horizontal, LedgerEntry::new(pour.mark.clone(), sentence!("vertical, {}", &marks), up)]
}
