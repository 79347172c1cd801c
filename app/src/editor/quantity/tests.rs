use super::*;

#[test]
fn lengths_are_read_as_they_are_written() {
    let cases = [
        ("3.6+0.45", 4.05),
        ("450", 0.45),
        ("450mm", 0.45),
        ("450 mm", 0.45),
        ("1,2 m", 1.2),
        ("2*300+1200", 1.8),
        ("300*2", 0.6),
        ("20", 0.02),
        ("19.5", 19.5),
        ("7200/4", 1.8),
        ("7.2/2", 3.6),
        ("3 600 mm - 1.2m", f64::NAN),
        ("3600 mm - 1.2m", 2.4),
        ("−0.2", -0.2),
        ("25 cm", 0.25),
        ("2 × 1.2 m", 2.4),
        (".5", 0.5),
    ];
    for (text, expected) in cases {
        match parse_length(text) {
            Ok(length) => assert!((length - expected).abs() < 1e-12, "{text}: {length}"),
            Err(error) => assert!(expected.is_nan(), "{text}: {error}"),
        }
    }
}

#[test]
fn what_is_not_understood_is_said() {
    assert_eq!(parse_length("  "), Err(QuantityError::Empty));
    assert_eq!(parse_length("4 yd"), Err(QuantityError::Unit("yd".into())));
    assert_eq!(parse_length("1.2.3"), Err(QuantityError::Number("1.2.3".into())));
    assert_eq!(parse_length("3+"), Err(QuantityError::Missing(Gap::AtEnd)));
    assert_eq!(parse_length("3**2"), Err(QuantityError::Missing(Gap::BetweenSigns)));
    assert_eq!(parse_length("2m*3m"), Err(QuantityError::Area));
    assert_eq!(parse_length("3/0"), Err(QuantityError::Divisor));
    assert_eq!(parse_length("(3)"), Err(QuantityError::Character('(')));
    assert!(matches!(parse_length("99999999 m"), Err(QuantityError::Range(_))));
    assert!(matches!(parse_length(&"9".repeat(400)), Err(QuantityError::Range(_))));
}

#[test]
fn feet_and_inches_are_read_on_any_page() {
    let (foot, inch) = (0.3048, 0.0254);
    let cases = [
        ("12'-6 1/2\"", 12.0 * foot + 6.5 * inch),
        ("12' 6 1/2\"", 12.0 * foot + 6.5 * inch),
        ("12′-6 1/2″", 12.0 * foot + 6.5 * inch),
        ("12’6”", 12.5 * foot),
        ("12'6", 12.5 * foot),
        ("12'-6", 12.5 * foot),
        ("12' - 6\"", 12.5 * foot),
        ("12 ft 6 in", 12.5 * foot),
        ("12 ft - 6 in", 11.5 * foot),
        ("12' + 6\"", 12.5 * foot),
        ("12'-1 m", 12.0 * foot - 1.0),
        ("12'-300 mm", 12.0 * foot - 0.3),
        ("6 in", 6.0 * inch),
        ("6\"", 6.0 * inch),
        ("6''", 6.0 * inch),
        ("1/2\"", 0.5 * inch),
        ("1/2 in", 0.5 * inch),
        ("3/16″+1/16″", 0.25 * inch),
        ("-0'-6\"", -0.5 * foot),
        ("−6 1/2″", -6.5 * inch),
        ("2*12'-6\"", 25.0 * foot),
        ("4 feet / 2", 2.0 * foot),
        ("12.5 ft", 12.5 * foot),
    ];
    for bare in [Bare::Guessed, Bare::Millimetres, Bare::Metres, Bare::Inches, Bare::Feet] {
        for (text, expected) in cases {
            match parse_length_in(text, bare) {
                Ok(length) => assert!((length - expected).abs() < 1e-12, "{text}: {length}"),
                Err(error) => panic!("{text}: {error}"),
            }
        }
    }
}

#[test]
fn a_bare_number_is_what_the_field_shows() {
    let cases = [
        ("47 1/4", Bare::Inches, 47.25 * 0.0254),
        ("16", Bare::Inches, 0.4064),
        ("2*16+1.5", Bare::Inches, 33.5 * 0.0254),
        ("8", Bare::Feet, 2.4384),
        ("25*2", Bare::Feet, 50.0 * 0.3048),
        ("19.5", Bare::Millimetres, 0.0195),
        ("12", Bare::Metres, 12.0),
        ("3.6 m", Bare::Feet, 3.6),
        ("1/2", Bare::Inches, 0.0127),
    ];
    for (text, bare, expected) in cases {
        let length = parse_length_in(text, bare).expect(text);
        assert!((length - expected).abs() < 1e-12, "{text}: {length}");
    }
    assert!(parse_length_in("3 600", Bare::Millimetres).is_err());
    assert!(parse_length_in("1 5/4 in", Bare::Inches).is_err(), "no fraction of an inch as a rule has it");
    assert_eq!(parse_length_in("1/0 in", Bare::Inches), Err(QuantityError::Divisor));
}
