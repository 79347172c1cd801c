//! Sets of equipment that go from bay to bay.

use falsewright_core::catalogue::{Catalogue, Kind};
use falsewright_core::model::{Role, Solid};
use falsewright_core::scheme::{Programme, Rates, Scheme, heron_lane, read, write};
use falsewright_core::{Design, design};

fn demo(programme: Programme) -> Scheme {
    Scheme { programme: Some(programme), ..heron_lane().expect("the demo reads") }
}

fn worked(scheme: &Scheme) -> Design {
    design(scheme, &Catalogue::generic()).expect("it computes")
}

/// Facing by its placed sheets; all else by its mass in the bill.
#[test]
fn all_bays_are_the_placed_parts_over_and_over() {
    let rates = Rates { hire_per_t_week: Some(50.0), facing_per_m2: Some(20.0), work_per_m2: Some(35.0) };
    let scheme = demo(Programme { sets: 2, cycle_days: 8.0, facing_uses: 2, rates });
    let design = worked(&scheme);
    let catalogue = Catalogue::generic();
    let sheets = design.model.parts.iter().filter(|part| part.role == Role::Facing);
    let (facing_m2, facing_kg) = sheets.fold((0.0, 0.0), |(area, mass), part| {
        let Solid::Sheet { from, to, length_m, .. } = part.solid else { panic!("facing is a sheet") };
        let Kind::Board(board) = &catalogue.get(&part.item).expect("an item").kind else { panic!("facing is a board") };
        let own = (to - from).length() * length_m * f64::from(part.count);
        (area + own, mass + own * board.mass_kg_m2)
    });
    let all_kg: f64 = design.quantities.iter().filter(|line| line.pieces > 0.0).map(|line| line.mass_kg).sum();

    // Six bays with two sets: three uses each, 24 days are 4 weeks, and facing is bought twice for each.
    let reuse = design.reuse.expect("it is asked for");
    assert_eq!((reuse.bays, reuse.sets, reuse.uses, reuse.set_weeks), (6, 2, 3, 8));
    assert!((reuse.formed_m2 - 6.0 * facing_m2).abs() < 1e-9 && facing_m2 > 100.0, "{reuse:?} {facing_m2}");
    assert!((reuse.bought_m2 - 4.0 * facing_m2).abs() < 1e-9);
    assert!((reuse.handled_kg - 6.0 * all_kg).abs() < 1e-6);
    let cost = reuse.cost.expect("rates are known");
    let expected = [(all_kg - facing_kg) / 1000.0 * 8.0 * 50.0, 4.0 * facing_m2 * 20.0, 6.0 * facing_m2 * 35.0];
    for (told, expected) in [cost.hire, cost.facing, cost.work].into_iter().zip(expected) {
        assert!((told - expected).abs() < 1e-6 * expected, "{told} {expected}");
    }
    assert_eq!(worked(&Scheme { programme: None, ..scheme }).reuse, None);
}

#[test]
fn a_cycle_shorter_than_striking_is_told_of() {
    let told = |cycle_days: f64| {
        let results = worked(&demo(Programme { cycle_days, ..Programme::default() })).results;
        let latest_h = results.striking.iter().filter_map(|time| time.hours).fold(0.0, f64::max);
        let short = |text: &str| text.starts_with("A set is wanted for the next bay");
        let found = results.findings.iter().filter(|finding| short(&finding.text.to_string())).count();
        (latest_h / 24.0, found)
    };
    let (days, _) = told(7.0);
    assert!(days > 0.5, "{days}");
    assert_eq!((told(days * 1.001).1, told(days * 0.999).1), (0, 1));
}

#[test]
fn a_programme_is_kept_and_refused_like_all_else() {
    let rates = Rates { facing_per_m2: Some(12.5), ..Rates::default() };
    let scheme = demo(Programme { rates, ..Programme::default() });
    assert_eq!(read(&write(&scheme)).expect("it is read"), scheme);
    let refused = |change: &dyn Fn(&mut Programme), what: &str| {
        let mut scheme = scheme.clone();
        change(scheme.programme.as_mut().expect("it has one"));
        let errors = scheme.validate().expect_err(what);
        assert!(errors.iter().any(|error| error.to_string().contains(what)), "{what}: {errors:?}");
    };
    refused(&|programme| programme.sets = 0, "a number of sets");
    refused(&|programme| programme.sets = 7, "a number of sets");
    refused(&|programme| programme.cycle_days = 0.0, "a cycle");
    refused(&|programme| programme.facing_uses = 0, "a number of uses of facing");
    refused(&|programme| programme.rates.work_per_m2 = Some(-1.0), "a rate");
    refused(&|programme| programme.rates.hire_per_t_week = Some(f64::NAN), "a rate");
}
