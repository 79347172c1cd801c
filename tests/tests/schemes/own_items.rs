//! The supplier's values and the user's own items: in a scheme, in its results, and away again.

use falsewright_core::catalogue::exchange::{Datum, Field, from_csv, to_csv};
use falsewright_core::catalogue::{Catalogue, Item, ItemFault, Origin, standard_beam};
use falsewright_core::model::Role;
use falsewright_core::results::{Check, CheckKind, Severity};
use falsewright_core::scheme::edit::{Edit, EditError, apply};
use falsewright_core::scheme::{Scheme, heron_lane, read, write};
use falsewright_core::{Design, design};
use falsewright_tests::assert_close;
use std::collections::BTreeSet;

fn field(key: &str) -> &'static Field {
    Field::of_key(key).unwrap_or_else(|| panic!("no {key}"))
}

fn generic(code: &str) -> Item {
    Catalogue::generic().get(code).unwrap_or_else(|| panic!("no {code}")).clone()
}

fn demo() -> Scheme {
    heron_lane().expect("the demo")
}

fn worked(scheme: &Scheme) -> Design {
    design(scheme, &Catalogue::generic()).expect("a design")
}

/// The tie of the demo, and it with another working load by the supplier.
fn tie(working_kn: f64) -> (Item, Item) {
    let scheme = demo();
    let mut items = scheme.ties.iter().map(|row| generic(&row.item));
    let ours = items.find(|item| item.tie().is_some()).expect("a tie");
    let supplied =
        ours.with_supplied(&ours, field("working_kn"), &Datum::Number(working_kn), "sheet 7").expect("a tie");
    (ours, supplied)
}

#[test]
fn values_of_one_item_have_names_of_their_own() {
    for item in Catalogue::generic().iter() {
        let names: BTreeSet<&str> = item.data().iter().map(|(field, _)| field.name).collect();
        assert_eq!(names.len(), item.data().len(), "{}", item.code);
        assert!(names.iter().all(|name| !name.contains(", ") && !name.contains(": ")), "{}", item.code);
    }
}

#[test]
fn any_value_can_be_replaced_and_given_back() {
    for ours in Catalogue::generic().iter() {
        for (field, datum) in ours.data().into_iter().filter(|(field, _)| !field.is_identity()) {
            let new = match &datum {
                Datum::Number(_) if field.key == "side_by_side" => Datum::Number(3.0),
                Datum::Number(value) => Datum::Number(if *value == 0.0 { 0.1 } else { value * 0.97 }),
                Datum::Word(word) => {
                    let other = field.choices().iter().find(|choice| *choice != word).expect("another");
                    Datum::Word((*other).to_owned())
                }
            };
            let item = ours.with_supplied(ours, field, &new, "sheet: 7").expect(field.key);
            assert_eq!(item.datum(field), Some(new), "{} {}", ours.code, field.key);
            assert_eq!(item.differences(ours), [field], "{} {}", ours.code, field.key);
            let supplied = item.supplied(ours);
            assert_eq!((supplied.source.as_str(), supplied.fields), ("sheet: 7", vec![field]), "{}", item.source);
            assert_eq!(item.with_ours(ours, field).as_ref(), Ok(ours));
        }
    }
}

/// Two values by the supplier, one of them confirmed as it is; each is given back by itself.
#[test]
fn the_source_tells_which_values_are_the_suppliers() {
    let (ours, item) = tie(80.0);
    assert_eq!(item.name, ours.name.replace("90 kN", "80 kN"), "a name that tells the value tells the new one");
    assert_ne!(item.name, ours.name);
    let breaking = ours.datum(field("breaking_kn")).expect("a force");
    let both = item.with_supplied(&ours, field("breaking_kn"), &breaking, "sheet 8").expect("an item");
    assert_eq!(both.source, format!("sheet 8: breaking force, working load; otherwise {}", ours.source));
    let one = both.with_ours(&ours, field("working_kn")).expect("an item");
    assert_eq!(one.source, format!("sheet 8: breaking force; otherwise {}", ours.source));
    assert!(one.differences(&ours).is_empty() && one != ours);
    assert_eq!(one.with_ours(&ours, field("breaking_kn")).as_ref(), Ok(&ours));
    let read = Item { source: "a file".into(), ..item };
    assert_eq!(read.supplied(&ours).fields, [field("working_kn")], "by difference where the source does not tell");
}

#[test]
fn what_cannot_be_computed_with_is_refused() {
    let (ours, _) = tie(80.0);
    for value in [0.0, -3.0, f64::NAN, f64::INFINITY, 1e9] {
        let result = ours.with_supplied(&ours, field("working_kn"), &Datum::Number(value), "x");
        assert!(matches!(result, Err(ItemFault::OutOfRange { field: "working_kn", .. })), "{value}");
    }
    assert!(ours.with_datum(field("grade"), &Datum::Word("S275".into())).is_err(), "a tie has no grade");
    assert!(ours.with_datum(field("working_kn"), &Datum::Word("90".into())).is_err());
    let steel = generic("2PFC125");
    for count in [0.0, 1.5, 11.0] {
        assert!(steel.with_datum(field("side_by_side"), &Datum::Number(count)).is_err(), "{count}");
    }
    assert!(steel.with_datum(field("grade"), &Datum::Word("S999".into())).is_err());
    let mut item = ours;
    if let falsewright_core::catalogue::Kind::Tie(tie) = &mut item.kind {
        tie.working_kn = -1.0;
    }
    assert!(matches!(apply(&demo(), &Edit::SetItem(item)), Err(EditError::Item(_))));
}

/// The ratio of a tie on the working-load basis is its force by the stated load, which here is less than half the
/// breaking force: 10 % less of it, 1/0.9 of the ratio. Notes, checks and bill name the supplier's data.
#[test]
fn a_suppliers_value_is_computed_with_and_told() {
    let (ours, _) = tie(1.0);
    let stated = ours.tie().expect("a tie").working_kn;
    let (_, item) = tie(0.9 * stated);
    let before = worked(&demo());
    let scheme = apply(&demo(), &Edit::SetItem(item.clone())).expect("an edit");
    let after = worked(&scheme);
    let is_of_it = |design: &Design, check: &Check| {
        check.check == CheckKind::Tension
            && design.model.parts.iter().any(|part| *part.item == *item.code && check.is_of(part))
    };
    let tension = |design: &Design| {
        let checks = design.results.checks.iter().filter(|check| is_of_it(design, check));
        checks.map(|check| (check.ratio, check.source.clone())).collect::<Vec<_>>()
    };
    let (old, new) = (tension(&before), tension(&after));
    assert!(!old.is_empty() && old.len() == new.len());
    for ((old, _), (new, source)) in old.iter().zip(&new) {
        assert_close("ratio", *new, old / 0.9, 1e-9);
        assert!(source.to_string().ends_with(&format!("; {}, by supplier's data", item.code)), "{source}");
    }
    let note = after.results.findings.iter().find(|finding| finding.text.starts_with(&item.code)).expect("a note");
    assert_eq!(note.severity, Severity::Note);
    assert!(
        note.text
            .contains(&format!("by supplier's data, sheet 7: working load {} kN instead of {stated} kN", 0.9 * stated))
    );
    let lines = |design: &Design| {
        design
            .quantities
            .iter()
            .filter(|line| line.item.contains("by supplier's data"))
            .map(|line| line.count)
            .sum::<f64>()
    };
    assert_eq!(lines(&before), 0.0);
    assert!(lines(&after) > 0.0);
    let others = |design: &Design| {
        let checks = design.results.checks.iter().filter(|check| !is_of_it(design, check));
        checks.map(|check| (check.member.clone(), check.check, check.ratio)).collect::<Vec<_>>()
    };
    assert_eq!(others(&before), others(&after), "nothing else hangs on it");

    let back = apply(&scheme, &Edit::RemoveItem(item.code)).expect("an edit");
    assert_eq!(back, demo());
    assert_eq!(worked(&back), before);
    assert_eq!(read(&write(&scheme)).expect("the file"), scheme);
}

/// Whatever item is replaced, every check that the item is judged by says so, and something does.
#[test]
fn every_item_of_the_demo_is_named_where_it_is_the_suppliers() {
    let scheme = demo();
    let codes: BTreeSet<&str> = scheme.uses().iter().map(|used| used.code).collect();
    for code in codes {
        let ours = generic(code);
        let (field, datum) = ours.data().into_iter().find(|(field, _)| !field.is_identity()).expect("a value");
        let item = ours.with_supplied(&ours, field, &datum, "sheet 7").expect("an item");
        let after = worked(&apply(&scheme, &Edit::SetItem(item)).expect("an edit"));
        let by = format!("; {code}, by supplier's data");
        let named = after.results.checks.iter().filter(|check| check.source.contains(&by)).count();
        let parts = after.model.parts.iter().filter(|part| *part.item == *code).count();
        assert!(parts == 0 || named > 0, "{code}: {parts} parts and no check that names it");
        assert!(after.results.findings.iter().any(|finding| finding.text.starts_with(&format!("{code} ("))), "{code}");
    }
}

#[test]
fn origins_are_told_apart() {
    let section = standard_beam("HE 200 B", "S355").expect("a section");
    let strong =
        section.with_supplied(&section, field("grade"), &Datum::Word("S275".into()), "certificate").expect("steel");
    let own = Item { code: "MINE".into(), ..generic("TIE20") };
    let (_, tie) = tie(80.0);
    let mut scheme = demo();
    scheme.items = vec![section.clone(), own, tie.clone(), generic("PLY18")];
    let catalogue = Catalogue::generic().with_items_of(&scheme);
    for (code, origin) in [
        (section.code.as_str(), Origin::Standard),
        ("MINE", Origin::Own),
        (&tie.code, Origin::Supplier),
        ("PLY18", Origin::Catalogue),
        ("PLY21", Origin::Catalogue),
    ] {
        assert_eq!(catalogue.origin(code), Some(origin), "{code}");
    }
    assert_eq!(catalogue.origin("none"), None);
    scheme.items = vec![strong];
    let catalogue = Catalogue::generic().with_items_of(&scheme);
    assert_eq!(catalogue.origin(&section.code), Some(Origin::Supplier));
    assert_eq!(catalogue.ours(&section.code), Some(section));
    assert_eq!(catalogue.iter().count(), Catalogue::generic().iter().count() + 1);
}

/// A section for each part of each element that it can be; nothing else of the scheme changes.
#[test]
fn a_standard_section_becomes_a_part() {
    let scheme = demo();
    let item = standard_beam("HE 200 B", "S355").expect("a section");
    for used in scheme.uses() {
        let edit = Edit::UseItem { element: used.element, role: used.role, item: item.clone() };
        let after = apply(&scheme, &edit).expect("an edit");
        assert_eq!(after.items, std::slice::from_ref(&item));
        let changed =
            |(new, old): &(falsewright_core::scheme::Use, falsewright_core::scheme::Use)| new.code != old.code;
        let (new, old) = (after.uses(), scheme.uses());
        let differ: Vec<_> = new.into_iter().zip(old).filter(changed).collect();
        assert_eq!(differ.len(), 1);
        assert_eq!(
            (differ[0].0.element, differ[0].0.role, differ[0].0.code),
            (used.element, used.role, item.code.as_str())
        );
    }
    let shutter = scheme.shutters.first().expect("a shutter").id;
    let wrong = Edit::UseItem { element: shutter, role: Role::Leg, item: item.clone() };
    assert!(matches!(apply(&scheme, &wrong), Err(EditError::NoSuchPart { .. })));
    let opening = scheme.openings.first().expect("an opening").id;
    let edit = Edit::UseItem { element: opening, role: Role::Transfer, item };
    let after = worked(&apply(&scheme, &edit).expect("an edit"));
    let beams = after.results.checks.iter().filter(|check| check.member.ends_with("transfer beam")).count();
    assert!(
        beams >= 3
            && after
                .results
                .findings
                .iter()
                .all(|finding| finding.severity != Severity::Fail || finding.check.is_some())
    );
}

/// The whole list written out, one value of it changed, and read again: one item of the user's own.
#[test]
fn only_what_differs_from_ours_becomes_an_own_item() {
    let catalogue = Catalogue::generic();
    let text = to_csv(catalogue.iter());
    assert_eq!(catalogue.merged(&[], from_csv(&text).expect("items")), []);
    let (ours, item) = tie(77.0);
    let mut items: Vec<Item> = catalogue.iter().cloned().collect();
    items.iter_mut().find(|other| other.code == item.code).expect("it").clone_from(&item);
    let read = from_csv(&to_csv(&items)).expect("items");
    assert_eq!(catalogue.merged(&[], read), std::slice::from_ref(&item));
    let mine = Item { code: "MINE".into(), ..ours.clone() };
    assert_eq!(catalogue.merged(&[mine.clone(), item.clone()], vec![ours]), std::slice::from_ref(&mine), "ours again");
    assert_eq!(catalogue.merged(std::slice::from_ref(&mine), vec![item.clone()]), [mine.clone(), item.clone()]);
    let scheme = apply(&demo(), &Edit::SetItems(vec![mine, item])).expect("an edit");
    assert_eq!(scheme.items.len(), 2);
    assert_eq!(apply(&scheme, &Edit::SetItems(Vec::new())), Ok(demo()));
}
