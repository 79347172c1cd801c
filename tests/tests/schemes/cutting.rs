//! Pieces of the demo cut from stock.

use falsewright_core::catalogue::{Catalogue, Kind};
use falsewright_core::design;
use falsewright_core::quantities::cut_lists;
use falsewright_core::scheme::{Scheme, Stock, heron_lane, read, write};
use std::collections::BTreeMap;

/// Against the placed parts: all pieces once, each within its bar, bars of the right kind.
#[test]
fn all_bars_of_the_demo_are_cut_from_stock() {
    let scheme = heron_lane().expect("the demo reads");
    let catalogue = Catalogue::generic();
    let model = design(&scheme, &catalogue).expect("it computes").model;
    let stock = Stock::default();
    let lists = cut_lists(&stock, &model, &catalogue);

    let mut wanted: BTreeMap<String, BTreeMap<u32, u64>> = BTreeMap::new();
    for part in &model.parts {
        let item = catalogue.get(&part.item).expect("an item");
        let is_bar = !matches!(item.kind, Kind::Board(_) | Kind::Leg(_) | Kind::Plate(_));
        if is_bar {
            let mm = (part.solid.length_m() * 1e3 - 1e-3).ceil() as u32;
            *wanted.entry(item.name.clone()).or_default().entry(mm).or_default() += u64::from(part.count);
        }
    }
    let mut cut: BTreeMap<String, BTreeMap<u32, u64>> = BTreeMap::new();
    for list in &lists {
        let pieces = cut.entry(list.item.to_string()).or_default();
        let kind = &catalogue.iter().find(|item| list.item == item.name.as_str()).expect("an item").kind;
        for bar in &list.plan.bars {
            assert!(stock.of(kind).iter().any(|m| (m * 1e3 - f64::from(bar.stock_mm)).abs() < 0.5), "{bar:?}");
            let length: u32 = bar.pieces.iter().map(|(mm, count)| mm * count).sum();
            let cuts: u32 = bar.pieces.iter().map(|(_, count)| count).sum::<u32>() - 1;
            assert!(length + 3 * cuts <= bar.stock_mm, "{bar:?}");
            for (mm, count) in &bar.pieces {
                *pieces.entry(*mm).or_default() += u64::from(*count) * bar.count;
            }
        }
        for (mm, count) in &list.plan.too_long {
            assert!(stock.of(kind).iter().all(|m| m * 1e3 < f64::from(*mm)));
            *pieces.entry(*mm).or_default() += u64::from(*count);
        }
    }
    assert_eq!(cut, wanted);
    assert!(wanted.len() > 4, "{}", wanted.len());
}

#[test]
fn what_has_no_stock_lengths_is_bought_to_length() {
    let scheme = heron_lane().expect("the demo reads");
    let catalogue = Catalogue::generic();
    let model = design(&scheme, &catalogue).expect("it computes").model;
    let only_rods = Stock { timber_m: vec![], beams_m: vec![], steel_m: vec![], tubes_m: vec![], ..Stock::default() };
    let lists = cut_lists(&only_rods, &model, &catalogue);
    assert!(!lists.is_empty() && lists.iter().all(|list| list.item.contains("Tie rod")), "{lists:?}");
}

#[test]
fn stock_is_kept_and_refused_like_all_else() {
    let scheme = Scheme { stock: Some(Stock::default()), ..heron_lane().expect("the demo reads") };
    assert_eq!(read(&write(&scheme)).expect("it is read"), scheme);
    let refused = |change: &dyn Fn(&mut Stock), what: &str| {
        let mut scheme = scheme.clone();
        change(scheme.stock.as_mut().expect("it has some"));
        let errors = scheme.validate().expect_err(what);
        assert!(errors.iter().any(|error| error.to_string().contains(what)), "{what}: {errors:?}");
    };
    refused(&|stock| stock.timber_m = vec![4.8; 13], "lengths of stock");
    refused(&|stock| stock.rods_m.push(0.0), "a length of stock");
    refused(&|stock| stock.steel_m.push(f64::NAN), "a length of stock");
    refused(&|stock| stock.saw_m = -0.001, "a width of saw cuts");
}
