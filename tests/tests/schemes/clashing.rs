//! Falsework drawn where shutters or the concrete are.

use falsewright_core::model::FaceKind;
use falsewright_core::results::{Finding, Severity};
use falsewright_core::scheme::{Arrangement, Direction, Id, Joint, Scheme};
use falsewright_tests::simple::{box_scheme, clear_way, face, falsework, shutter, solved};

/// A cell of 8 m from x = 0.4 m with an inner shutter on its left wall: 17.6 mm of board, 200 mm of secondaries and
/// 150 mm of uprights reach to x = 0.7676 m. Its uprights stand 0.5 m and 1.5 m along the bay of 2 m, each 0.2 m wide.
fn with_shutter(lines_m: &[f64]) -> Scheme {
    let mut scheme = box_scheme(8.0, 4.0, 0.0);
    scheme.bays.length_m = 2.0;
    let wall = face(&scheme, FaceKind::InnerWall, 900, 0.4);
    scheme.shutters = vec![shutter(40, wall, Arrangement::UprightPrimaries)];
    let soffit = face(&scheme, FaceKind::Soffit, 900, 4.4);
    scheme.falsework = vec![falsework(50, soffit, Direction::Along, lines_m)];
    scheme
}

fn clashes(scheme: &Scheme) -> Vec<Finding> {
    let findings = solved(scheme).results.findings;
    findings.into_iter().filter(|finding| finding.text.contains("are drawn where")).collect()
}

/// Legs of 60 mm stand in the way of its secondaries, which run along the bay, up to x = 0.6176 + 0.030 m; the uprights are at
/// other places along the bay.
#[test]
fn legs_where_a_shutter_is() {
    for (x_m, clash) in [(0.55, true), (0.645, true), (0.66, false), (1.0, false)] {
        let mut scheme = with_shutter(&[x_m, 4.4, 8.0]);
        scheme.falsework[0].bents.edge_m = 0.25;
        scheme.falsework[0].bents.max_m = 0.5;
        let found = clashes(&scheme);
        assert_eq!(found.len(), usize::from(clash), "{x_m}: {found:?}");
        for finding in found {
            assert_eq!(finding.severity, Severity::Warn);
            assert!(finding.text.starts_with("Parts of F1 are drawn where S1 is: L1 leg"), "{}", finding.text);
            assert!((finding.at.unwrap().x - x_m).abs() < 0.04, "{finding:?}");
        }
    }
}

/// Bents half a metre from each end of the bay stand where the uprights do: bases of 0.2 m clear them from 0.8676 m on.
#[test]
fn legs_where_uprights_are() {
    for (x_m, clash) in [(0.66, true), (0.86, true), (0.87, false)] {
        let mut scheme = with_shutter(&[x_m, 4.4, 8.0]);
        scheme.falsework[0].bents.edge_m = 0.5;
        scheme.falsework[0].bents.max_m = 0.5;
        assert_eq!(clashes(&scheme).len(), usize::from(clash), "{x_m}");
    }
}

/// A shutter of an earlier pour has been struck.
#[test]
fn shutters_of_other_pours_are_out_of_the_way() {
    let mut scheme = with_shutter(&[0.55, 4.4, 8.0]);
    scheme.section.joints.push(Joint { id: Id(901), z_m: 4.4 });
    scheme.falsework[0].soffit = face(&scheme, FaceKind::Soffit, 901, 4.4);
    assert!(clashes(&scheme).is_empty(), "{:?}", clashes(&scheme));
}

/// The outer trestle legs of a way that leaves 0.1 m beside them stand clear of the wall; the transfer beam, which reaches
/// 0.15 m beyond them, does not.
#[test]
fn transfer_beam_in_the_wall() {
    for (left_m, clash) in [(1.8, true), (1.95, false)] {
        let mut scheme = with_shutter(&[4.4]);
        scheme.shutters.clear();
        // Guard 0.25 m, tolerance 0.05 m and half a base of 0.1 m, then 0.9 m to the outer leg: at 0.5 m and 0.65 m.
        scheme.openings = vec![clear_way("LEG76", 0.9)];
        scheme.openings[0].left_m = left_m;
        let found = clashes(&scheme);
        assert_eq!(found.len(), usize::from(clash), "{left_m}: {found:?}");
        for finding in found {
            let text = finding.text.to_string();
            assert_eq!(text, "Parts of F1 are drawn where the concrete of P2 is: A1 transfer beam.");
        }
    }
}
