//! What comes in and goes out at each level of a group of wall shutters, outward positive.

use super::wall::Path;
use super::wall_frame::GroupResult;
use crate::model::{Model, PlacedTieRow, Pour};
use crate::results::{LedgerEntry, LedgerLevel};
use crate::scheme::Arrangement;

pub fn entry(
    pour: &Pour,
    model: &Model,
    paths: &[&Path],
    rows: &[&PlacedTieRow],
    solved: &GroupResult,
    tie_forces: &[Vec<Vec<f64>>],
) -> LedgerEntry {
    let sum = |part: &dyn Fn(usize, &Path) -> f64| -> f64 {
        paths.iter().enumerate().map(|(index, path)| part(index, path)).sum()
    };
    let bay = model.bay_m;
    let width = |path: &Path| path.widths.iter().sum::<f64>();
    let concrete = sum(&|_, path| path.pressure.resultant_kn_m() * bay);
    let facing = sum(&|_, path| match path.shutter.arrangement {
        Arrangement::UprightPrimaries => path.facing.iter().sum::<f64>() * bay,
        Arrangement::LevelPrimaries => path.facing.iter().sum::<f64>() * path.pressure.resultant_kn_m(),
    });
    let on_uprights = sum(&|_, path| width(path) * path.load_kn_m());
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

    let level = |name: &str, into_kn, out_kn| LedgerLevel { level: name.into(), into_kn, out_kn };
    let levels = vec![
        level("facing", concrete, facing),
        level("secondaries", facing, on_uprights),
        level("uprights", on_uprights, from_uprights),
        level("ties, props and feet", from_uprights, ties + feet),
    ];
    let marks: Vec<&str> = paths.iter().map(|path| path.shutter.mark.as_str()).collect();
    LedgerEntry::new(pour.mark.clone(), format!("horizontal, {}", marks.join(" + ")), levels)
}
