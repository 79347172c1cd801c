use super::*;
use falsewright_core::sentence;
use falsewright_core::sentence::{length, length_mm, member as of_member, number, word};

fn german(words: &[(&'static str, &'static str)]) {
    GERMAN.set(words.iter().copied().collect());
    speak(Language::German);
}

#[test]
fn english_is_said_as_it_stands() {
    assert_eq!(t("Undo"), "Undo");
    assert_eq!(say!("Row {} carries {}", 3, "12 kN"), "Row 3 carries 12 kN");
    assert_eq!(listed("2 shutters and 1 row of ties"), "2 shutters and 1 row of ties");
    assert_eq!(step("Duplicate 2 shutters"), "Duplicate 2 shutters");
}

#[test]
fn a_translation_may_turn_the_words_round() {
    german(&[("Row {} carries {}", "{1} trägt Reihe {0}")]);
    assert_eq!(say!("Row {} carries {}", 3, "12 kN"), "12 kN trägt Reihe 3");
    assert_eq!(t("no such text"), "no such text");
}

#[test]
fn results_are_told_in_the_language_and_units_of_the_page() {
    let told_now = || {
        told(&sentence!(
            "{} carries {} in {}; {} by {}.",
            of_member("S1 primary"),
            number(12.345, "kN", 2),
            word("bending"),
            length(3.6, 3),
            length_mm(0.45)
        ))
    };
    assert_eq!(told_now(), "S1 primary carries 12.35\u{a0}kN in bending; 3.600\u{a0}m by 450\u{a0}mm.");
    units::set_system(units::System::Customary);
    assert_eq!(told_now(), "S1 primary carries 2.775\u{a0}kip in bending; 11′-9\u{a0}3/4″ by 1′-5\u{a0}11/16″.");
    german(&[
        ("{} carries {} in {}; {} by {}.", "{0} trägt {1} auf {2}; {3} mal {4}."),
        ("primary", "Riegel"),
        ("bending", "Biegung"),
    ]);
    units::set_system(units::System::Metric);
    assert_eq!(told_now(), "S1 Riegel trägt 12,35\u{a0}kN auf Biegung; 3,600\u{a0}m mal 450\u{a0}mm.");
}

#[test]
fn steps_that_were_kept_in_english_are_told_in_german() {
    german(&[
        ("Duplicate", "Verdoppeln"),
        ("Copy to the opposite face", "Gegenüber kopieren"),
        ("shutters", "Schalungen"),
        ("row of ties", "Ankerreihe"),
        ("leg lines", "Stielreihen"),
        ("and", "und"),
        ("Rename", "Umbenennen"),
    ]);
    assert_eq!(step("Rename"), "Umbenennen");
    assert_eq!(step("Duplicate row of ties"), "Verdoppeln: Ankerreihe");
    assert_eq!(
        step("Copy to the opposite face 2 shutters, 3 leg lines and 1 row of ties"),
        "Gegenüber kopieren: 2 Schalungen, 3 Stielreihen und 1 Ankerreihe"
    );
    assert_eq!(step("What nobody knows"), "What nobody knows");
    assert_eq!(listed("2 shutters"), "2 Schalungen");
}

#[test]
fn tags_of_languages_are_read_without_their_country() {
    assert_eq!(Language::of_tag("de-AT"), Some(Language::German));
    assert_eq!(Language::of_tag("EN_us"), Some(Language::English));
    assert_eq!(Language::of_tag("den"), None);
}
