use super::Errors;
use crate::scheme::{Bays, Programme, Rates, Subject};

impl Errors {
    /// Whether sets can go from bay to bay so.
    pub(super) fn check_programme(&mut self, settings: Subject, programme: &Programme, bays: &Bays) {
        const DEAREST: f64 = 1e9;
        let Programme { sets, cycle_days, facing_uses, rates } = programme;
        self.range(settings, "a number of sets", f64::from(*sets), (1.0, f64::from(bays.count.max(1))), "");
        self.range(settings, "a cycle", *cycle_days, (0.1, 1000.0), "d");
        self.range(settings, "a number of uses of facing", f64::from(*facing_uses), (1.0, 10_000.0), "");
        let Rates { hire_per_t_week, facing_per_m2, work_per_m2 } = rates;
        for rate in [hire_per_t_week, facing_per_m2, work_per_m2].into_iter().flatten() {
            self.range(settings, "a rate", *rate, (0.0, DEAREST), "");
        }
    }
}
