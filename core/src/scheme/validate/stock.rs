use super::Errors;
use crate::scheme::{Stock, Subject};

/// Lengths of one kind of bar.
const MOST_LENGTHS: usize = 12;

impl Errors {
    /// Whether bars can be bought and cut so.
    pub(super) fn check_stock(&mut self, settings: Subject, stock: &Stock) {
        let Stock { timber_m, beams_m, steel_m, tubes_m, rods_m, saw_m } = stock;
        for lengths_m in [timber_m, beams_m, steel_m, tubes_m, rods_m] {
            self.count(settings, "lengths of stock", lengths_m.len(), MOST_LENGTHS);
            for length_m in lengths_m {
                self.range(settings, "a length of stock", *length_m, (0.3, 30.0), "m");
            }
        }
        self.range(settings, "a width of saw cuts", *saw_m, (0.0, 0.05), "m");
    }
}
