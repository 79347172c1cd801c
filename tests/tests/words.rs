//! The files of words against the sources and against each other.

use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::{Hinge, Lift, Moving, Programme, Slide, heron_lane};
use falsewright_core::sentence::{Sentence, Value};
use falsewright_tests::words;
use std::collections::{BTreeMap, BTreeSet};

type Words = BTreeMap<String, String>;

fn read(language: &str) -> Words {
    let path = format!("{}/../static/language/{language}.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("the file is there");
    serde_json::from_str(&text).expect("an object of texts")
}

fn lacking(needed: &BTreeSet<String>, there: &Words) -> Vec<String> {
    needed.iter().filter(|text| !there.contains_key(*text)).cloned().collect()
}

fn needless(needed: &BTreeSet<String>, there: &Words) -> Vec<String> {
    there.keys().filter(|text| !needed.contains(*text)).cloned().collect()
}

#[test]
fn every_text_of_the_sources_is_listed_and_no_other() {
    let (texts, english) = (words::all(), read("en"));
    assert!(texts.len() > 500, "only {} texts were found in the sources", texts.len());
    let remedy = "run cargo xtask words";
    assert!(lacking(&texts, &english).is_empty(), "{remedy}: en.json lacks {:#?}", lacking(&texts, &english));
    assert!(needless(&texts, &english).is_empty(), "{remedy}: en.json need not have {:#?}", needless(&texts, &english));
    assert!(english.iter().all(|(key, text)| key == text));
}

#[test]
fn every_text_is_translated_and_no_other() {
    let (texts, german) = (words::all(), read("de"));
    assert!(lacking(&texts, &german).is_empty(), "de.json lacks {:#?}", lacking(&texts, &german));
    assert!(needless(&texts, &german).is_empty(), "de.json need not have {:#?}", needless(&texts, &german));
    assert!(german.values().all(|text| !text.trim().is_empty()));
}

/// The places of values in a template, by number.
fn places(template: &str) -> BTreeSet<usize> {
    let mut next = 0;
    let pieces = template.split('{').skip(1);
    let place = |piece: &str| {
        let name = piece.split('}').next().unwrap_or_default();
        let place = name.parse().unwrap_or(next);
        next += 1;
        place
    };
    pieces.map(place).collect()
}

#[test]
fn translations_have_the_places_of_their_originals() {
    for (english, german) in read("de") {
        assert_eq!(places(&english), places(&german), "{english}\n{german}");
        let numbered = german.contains("{0}") || german.contains("{1}");
        assert!(!(numbered && german.contains("{}")), "{german}: numbers all places or none");
        let ends = |text: &str| text.chars().last().filter(|c| matches!(c, '.' | ':' | ' ' | ','));
        assert_eq!(ends(&english), ends(&german), "{english}\n{german}");
    }
}

fn visit(sentence: &Sentence, told: &mut impl FnMut(&str)) {
    told(sentence.template);
    for value in sentence.values.iter() {
        match value {
            Value::Word(word) => told(word),
            Value::Member(name) => {
                let role = name.match_indices(' ').map(|(at, _)| &name[at + 1..]);
                let known = read_once();
                assert!(role.clone().any(|role| known.contains_key(role)) || !name.contains(' '), "{name}");
            }
            Value::List(parts) => parts.iter().for_each(|part| visit(part, told)),
            Value::Sentence(inner) => visit(inner, told),
            Value::Item(name) => told(name),
            Value::Name(_) | Value::Number { .. } | Value::Limit { .. } | Value::Stated(_) | Value::Length { .. } => {}
        }
    }
}

fn read_once() -> &'static Words {
    static GERMAN: std::sync::OnceLock<Words> = std::sync::OnceLock::new();
    GERMAN.get_or_init(|| read("de"))
}

/// What the demo says, with parts of it taken away so that it has more to say.
#[test]
fn results_say_nothing_that_has_no_words() {
    let demo = heron_lane().expect("the demo");
    let mut schemes = vec![demo.clone()];
    for change in 0..13 {
        let mut scheme = demo.clone();
        match change {
            0 => scheme.ties.clear(),
            1 => scheme.shutters.truncate(1),
            2 => scheme.loads.wind = None,
            3 => scheme.falsework.iter_mut().for_each(|of| of.leg_lines.truncate(1)),
            4 => scheme.falsework.iter_mut().flat_map(|of| &mut of.leg_lines).for_each(|line| line.braced = false),
            5 => scheme.openings.iter_mut().for_each(|of| of.width_m += 0.5),
            6 => scheme.concrete.temperature_c = 2.0,
            7 | 8 => {
                let hinge = Hinge { falsework_out: change == 8, drop_m: 0.5, ..Hinge::default() };
                scheme.shutters.iter_mut().for_each(|of| of.hinge = Some(hinge));
            }
            9 | 10 => {
                let lift = Lift { jack_kn: 1.0, lines: 3, ..Lift::default() };
                let slide = Slide { rise: -0.1, ..Slide::default() };
                scheme.moving = Some(Moving { lift, slide: Some(slide).filter(|_| change == 10), ..Moving::default() });
            }
            11 => scheme.programme = Some(Programme { cycle_days: 0.1, ..Programme::default() }),
            _ => scheme.ties.iter_mut().for_each(|row| row.held = None),
        }
        schemes.push(scheme);
    }
    let mut unknown = BTreeSet::new();
    let mut told = |text: &str| {
        let nothing = text.is_empty() || !text.chars().any(char::is_alphabetic);
        if !nothing && !read_once().contains_key(text) {
            unknown.insert(text.to_owned());
        }
    };
    let mut sentences = 0;
    for scheme in schemes {
        let catalogue = Catalogue::generic().with_items_of(&scheme);
        let Ok(design) = falsewright_core::design(&scheme, &catalogue) else { continue };
        let results = &design.results;
        for finding in &results.findings {
            visit(&finding.text, &mut told);
            visit(&finding.remedy, &mut told);
            sentences += 1;
        }
        for check in &results.checks {
            visit(&check.place, &mut told);
            visit(&check.case, &mut told);
            told(check.check.name());
            visit(&Sentence { template: "{}", values: [Value::Member(check.member.clone())].into() }, &mut told);
        }
        for entry in &results.ledger {
            visit(&entry.case, &mut told);
            entry.levels.iter().for_each(|level| told(level.level));
        }
        for room in &results.clearances {
            visit(&room.width_between, &mut told);
            visit(&room.height_below, &mut told);
        }
        for swing in &results.swings {
            visit(&swing.between, &mut told);
            swing.meets.iter().for_each(|meets| visit(meets, &mut told));
        }
        for line in &design.quantities {
            visit(&line.item, &mut told);
            visit(&line.size, &mut told);
        }
    }
    assert!(sentences > 50, "only {sentences} findings");
    assert!(unknown.is_empty(), "{unknown:#?}");
}
