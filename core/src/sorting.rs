//! Sorting with one routine for all types: the standard library's would add kilobytes to the page for each.

use std::cmp::Ordering;

/// Up to so many are sorted in place.
const FEW: usize = 16;

/// Sorts stably.
pub fn sort<T>(items: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    if items.len() <= FEW {
        for end in 1..items.len() {
            let mut at = end;
            while at > 0 && compare(&items[at - 1], &items[at]).is_gt() {
                items.swap(at - 1, at);
                at -= 1;
            }
        }
        return;
    }
    let order = order(items.len(), &mut |a, b| compare(&items[a], &items[b]));
    arrange(order, |a, b| items.swap(a, b));
}

/// The indices of a sorted list in their new order.
#[inline(never)]
fn order(count: usize, compare: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|&a, &b| compare(a, b));
    order
}

/// Brings to each place what belongs there, going round each ring of places that pass their contents on.
fn arrange(mut order: Vec<usize>, mut swap: impl FnMut(usize, usize)) {
    for start in 0..order.len() {
        let mut at = start;
        loop {
            let from = std::mem::replace(&mut order[at], at);
            if from == start {
                break;
            }
            swap(at, from);
            at = from;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn sorts_as_the_standard_library_does(keys in prop::collection::vec(0u8..20, 0..100)) {
            let mut items: Vec<(u8, usize)> = keys.into_iter().enumerate().map(|(place, key)| (key, place)).collect();
            let mut expected = items.clone();
            sort(&mut items, |a, b| a.0.cmp(&b.0));
            expected.sort_by_key(|item| item.0);
            prop_assert_eq!(items, expected);
        }
    }
}
