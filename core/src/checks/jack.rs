//! Jacks at their extension, and the joints between standards.

use super::comparison::{Comparison, no_resistance};
use super::divisor::stated_load_factor;
use super::fittings::Spigot;
use super::strut::{Strut, StrutForces};
use crate::catalogue::{Item, Leg, Stack, Stacked, Unstacked};
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::{Sentence, word};

/// A leg of this height put together from its standards and jacks: how far the jacks extend, what they bear at that, and
/// the kink at its spigots. Nothing where the item does not say what it is put together from. `alone`: a head jack may
/// stand without a standard, as on a transfer beam.
pub fn check_stack(
    item: &Item,
    basis: Basis,
    forces: &StrutForces,
    height_m: f64,
    buckling_length_m: f64,
    alone: bool,
) -> Vec<Verdict> {
    let Some((leg, stack)) = item.leg().and_then(|leg| Some((leg, leg.stack.as_ref()?))) else { return Vec::new() };
    let stacked = match stack.under(height_m) {
        Err(Unstacked::TooShort { .. }) if alone => Stacked { standards: 0, head_m: height_m, base_m: 0.0 },
        Err(unstacked) => return vec![unstacked_verdict(unstacked, height_m)],
        Ok(stacked) => stacked,
    };
    let jacks = [("head", stacked.head_m, stack.head_jack_m[1]), ("base", stacked.base_m, stack.base_jack_m[1])];
    let part = |jack: &(&str, f64, f64)| jack.1 / jack.2;
    let (name, extension_m, greatest_m) = if part(&jacks[1]) > part(&jacks[0]) { jacks[1] } else { jacks[0] };
    let mut verdicts = vec![
        extension(name, extension_m, greatest_m, stacked.standards),
        load(leg, stack, basis, forces.compression_kn, (name, extension_m, greatest_m)),
    ];
    if let (Some(joint), true) = (&stack.spigot, stacked.standards > 1) {
        let tube = leg.tube();
        let inside_m = tube.diameter_m - 2.0 * tube.wall_m;
        let spigot = Spigot { inside_m, spigot_m: joint.spigot_m, lap_m: joint.lap_m };
        verdicts.push(kink(leg, basis, forces, &spigot, buckling_length_m));
    }
    verdicts
}

fn unstacked_verdict(unstacked: Unstacked, height_m: f64) -> Verdict {
    match unstacked {
        Unstacked::TooShort { least_m } => {
            let reason = format!("its shortest standard and jacks stand {} m high", number(least_m));
            no_resistance(CheckKind::Extension, height_m, "m", &reason)
        }
        Unstacked::TooFar { extension_m, greatest_m } => {
            let (comparison, numbers) = range(extension_m, greatest_m);
            comparison.verdict("both extensions / both ranges", numbers)
        }
    }
}

/// An extension by its range, with the numbers.
fn range(extension_m: f64, greatest_m: f64) -> (Comparison, Sentence) {
    let comparison = Comparison {
        check: CheckKind::Extension,
        demand: extension_m,
        resistance: greatest_m,
        unit: "m",
        source: "Range of its jacks, with the standards that leave them least".into(),
    };
    let numbers = formula!("{} m / {} m", number(extension_m), number(greatest_m));
    (comparison, numbers)
}

fn extension(name: &'static str, extension_m: f64, greatest_m: f64, standards: usize) -> Verdict {
    let (comparison, numbers) = range(extension_m, greatest_m);
    comparison.verdict_given(formula!("{} standards, {} jack", standards, word(name)), "e / emax", numbers)
}

/// A jack bears less the further it extends.
fn load(
    leg: &Leg,
    stack: &Stack,
    basis: Basis,
    force_kn: f64,
    (name, extension_m, greatest_m): (&'static str, f64, f64),
) -> Verdict {
    let (factor, part) = (stated_load_factor(basis), stack.part_at(extension_m, greatest_m));
    let comparison = Comparison {
        check: CheckKind::Bearing,
        demand: force_kn,
        resistance: factor * part * leg.jack_working_kn,
        unit: "kN",
        source: match basis {
            Basis::WorkingLoad => "Stated working load of the jack at its extension".into(),
            _ => "Stated working load of the jack at its extension × 1.65 taken as characteristic, γM 1.1".into(),
        },
    };
    let numbers = formula!(
        "{} kN / ({} × {} × {} kN)",
        number(force_kn),
        number(factor),
        number(part),
        number(leg.jack_working_kn)
    );
    comparison.verdict_given(formula!("{} jack, e = {} m", word(name), number(extension_m)), "N / (k r Nwork)", numbers)
}

/// Buckling of a leg that its spigots kink in the middle between two held levels, where it harms most: `N ψ L / 4` beside
/// its other moments.
fn kink(leg: &Leg, basis: Basis, forces: &StrutForces, spigot: &Spigot, length_m: f64) -> Verdict {
    let moment_knm = forces.compression_kn.max(0.0) * spigot.kink() * length_m / 4.0;
    let kinked = StrutForces { moment_knm: forces.moment_knm.abs() + moment_knm, ..*forces };
    let strut = Strut { tube: leg.tube(), yield_mpa: leg.yield_mpa, curve: &leg.curve, length_m };
    let verdicts = strut.check(basis, &kinked);
    let worst = verdicts.into_iter().max_by(|a, b| a.ratio().total_cmp(&b.ratio()));
    let mut verdict =
        worst.unwrap_or_else(|| no_resistance(CheckKind::Spigot, forces.compression_kn, "kN", "no strength known"));
    verdict.check = CheckKind::Spigot;
    verdict.source = formula!("{}; kink of the spigots by EN 12811-1 10.2.2.2 (from memory)", verdict.source);
    let kink = formula!("ψ = {}, N ψ L / 4 = {} kNm in M", number(spigot.kink()), number(moment_knm));
    verdict.formula.given = Some(match verdict.formula.given {
        Some(given) => formula!("{}; {}", kink, given),
        None => kink,
    });
    verdict
}
