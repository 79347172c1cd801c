//! What the equipment of one bay comes to over all bays: uses, time, handling and cost.

use super::{Quantity, equipment};
use crate::scheme::{Bays, Programme};
use serde::Serialize;

const DAYS_A_WEEK: f64 = 7.0;
const KG_A_TONNE: f64 = 1000.0;

/// All bays with so many sets of equipment.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Reuse {
    /// How many bays there are.
    pub bays: u32,
    /// Sets of equipment for them.
    pub sets: u32,
    /// Bays that the busiest set serves.
    pub uses: u32,
    /// Days from the first pour of the job to the end of the last cycle.
    pub days: f64,
    /// Whole weeks of hire, those of all sets added up.
    pub set_weeks: u32,
    /// Facing set up, once for every bay.
    pub formed_m2: f64,
    /// Facing bought, renewals included.
    pub bought_m2: f64,
    /// Pieces set up, those of every bay added up.
    pub pieces: f64,
    /// Their mass, likewise.
    pub handled_kg: f64,
    /// What that costs; none where no rate is known.
    pub cost: Option<Cost>,
}

/// Cost of all bays, in the currency of the rates; 0 for what has no rate.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Cost {
    /// Of equipment hired.
    pub hire: f64,
    /// Of facing bought.
    pub facing: f64,
    /// Of setting and striking.
    pub work: f64,
    /// Of all by each square metre of facing set up; none where there is no facing.
    pub per_m2: Option<f64>,
}

impl Cost {
    /// All of it.
    pub fn total(&self) -> f64 {
        self.hire + self.facing + self.work
    }
}

/// Goes through all bays with the equipment of a bill for one bay. Whatever is not facing counts as hired.
pub fn reuse(bays: &Bays, programme: &Programme, bill: &[Quantity]) -> Reuse {
    let Programme { sets, cycle_days, facing_uses, rates } = *programme;
    let (count, sets) = (bays.count, sets.max(1));
    let (least, busier) = (count / sets, count % sets);
    let of_sets = |of_one: &dyn Fn(u32) -> u32| busier * of_one(least + 1) + (sets - busier) * of_one(least);
    let uses = least + u32::from(busier > 0);
    let set_weeks = of_sets(&|uses| (f64::from(uses) * cycle_days / DAYS_A_WEEK).ceil() as u32);
    let facings = of_sets(&|uses| uses.div_ceil(facing_uses.max(1)));

    let facing = bill.iter().filter(|line| line.unit == "m²");
    let (facing_m2, facing_kg) = facing.fold((0.0, 0.0), |(area, mass), line| (area + line.count, mass + line.mass_kg));
    let all = equipment(bill);
    let (formed_m2, bought_m2) = (facing_m2 * f64::from(count), facing_m2 * f64::from(facings));
    let known = [rates.hire_per_t_week, rates.facing_per_m2, rates.work_per_m2];
    let cost = known.iter().any(Option::is_some).then(|| {
        let [hire, facing, work] = known.map(Option::unwrap_or_default);
        let hired_t = (all.mass_kg - facing_kg) / KG_A_TONNE;
        let (hire, facing, work) = (hired_t * f64::from(set_weeks) * hire, bought_m2 * facing, formed_m2 * work);
        let per_m2 = (formed_m2 > 0.0).then(|| (hire + facing + work) / formed_m2);
        Cost { hire, facing, work, per_m2 }
    });
    Reuse {
        bays: count,
        sets,
        uses,
        days: f64::from(uses) * cycle_days,
        set_weeks,
        formed_m2,
        bought_m2,
        pieces: all.pieces * f64::from(count),
        handled_kg: all.mass_kg * f64::from(count),
        cost,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scheme::Rates;

    fn line(unit: &'static str, count: f64, pieces: f64, mass_kg: f64) -> Quantity {
        let (item, size) = Default::default();
        Quantity { mark: "S1".into(), owner: None, item, size, count, unit, pieces, mass_kg }
    }

    /// By hand: 7 bays with 3 sets are 3, 2 and 2. At 10 days a bay those are 30, 20 and 20 days: 5, 3 and 3 weeks. Facing
    /// that serves two bays is bought twice, once and once: 4 × 20 m².
    #[test]
    fn sets_share_bays_as_evenly_as_they_can() {
        let bill = [line("m²", 20.0, 8.0, 200.0), line("no.", 6.0, 6.0, 300.0), line("kg", 500.0, 0.0, 500.0)];
        let rates = Rates { hire_per_t_week: Some(40.0), facing_per_m2: Some(15.0), work_per_m2: Some(30.0) };
        let programme = Programme { sets: 3, cycle_days: 10.0, facing_uses: 2, rates };
        let reuse = reuse(&Bays { length_m: 6.0, count: 7 }, &programme, &bill);
        assert_eq!((reuse.uses, reuse.set_weeks, reuse.days), (3, 11, 30.0));
        assert_eq!((reuse.formed_m2, reuse.bought_m2), (140.0, 80.0));
        assert_eq!((reuse.pieces, reuse.handled_kg), (98.0, 3500.0));
        let cost = reuse.cost.unwrap();
        assert_eq!((cost.hire, cost.facing, cost.work), (0.3 * 11.0 * 40.0, 1200.0, 4200.0));
        assert!((cost.per_m2.unwrap() - (132.0 + 1200.0 + 4200.0) / 140.0).abs() < 1e-12);
    }

    #[test]
    fn what_has_no_rate_costs_nothing_and_no_rate_no_cost() {
        let bays = Bays { length_m: 6.0, count: 4 };
        let bill = [line("m²", 10.0, 4.0, 100.0)];
        assert_eq!(reuse(&bays, &Programme::default(), &bill).cost, None);
        let rates = Rates { work_per_m2: Some(25.0), ..Rates::default() };
        let cost = reuse(&bays, &Programme { rates, ..Programme::default() }, &bill).cost.unwrap();
        assert_eq!((cost.total(), cost.per_m2), (1000.0, Some(25.0)));
        let cost = reuse(&bays, &Programme { rates, ..Programme::default() }, &[]).cost.unwrap();
        assert_eq!((cost.total(), cost.per_m2), (0.0, None));
    }
}
