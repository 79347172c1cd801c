//! Small schemes for one purpose, whose forces can be worked out by hand.

use falsewright_core::catalogue::{Catalogue, Item, Kind, Leg, Tie, TimberBeam};
use falsewright_core::layout::concrete::faces;
use falsewright_core::model::FaceKind;
use falsewright_core::results::{Check, CheckKind};
use falsewright_core::scheme::{
    Arrangement, Bearing, Concrete, Delivery, Direction, FaceRef, Falsework, Id, Joint, Lateral, LegLine, Opening,
    PressureMethod, Scheme, Section, Shutter, Spacing, TieEnd, TieRow, Walls,
};
use falsewright_core::{Design, design};

/// A scheme with this section and joints at these levels; the pour above the first joint is called 900.
pub fn scheme(mut section: Section, joints_m: &[f64]) -> Scheme {
    section.joints = (900..).zip(joints_m).map(|(id, &z_m)| Joint { id: Id(id), z_m }).collect();
    Scheme::blank(section)
}

/// A box with a cell of this clear size, walls 0.4, roof 0.5 and base 0.5 m thick, and a joint at its floor.
pub fn box_scheme(width_m: f64, height_m: f64, haunch_m: f64) -> Scheme {
    let walls = Walls { wall_m: 0.4, roof_m: 0.5, base_m: 0.5, haunch_m };
    scheme(Section::box_cell(width_m, height_m, walls), &[0.5])
}

/// Concrete of 25 kN/m³ that presses as a fluid.
pub fn fluid() -> Concrete {
    Concrete {
        unit_weight_kn_m3: 25.0,
        temperature_c: 20.0,
        method: PressureMethod::FullHead,
        delivery: Delivery::Rise { rate_m_h: 1.0 },
    }
}

/// Members at `edge_m` from the ends and at most `max_m` apart.
pub fn spaced(edge_m: f64, max_m: f64) -> Spacing {
    Spacing { edge_m, max_m }
}

/// The face of this kind in pour `pour` that lies nearest to `x_m`.
pub fn face(scheme: &Scheme, kind: FaceKind, pour: u32, x_m: f64) -> FaceRef {
    let all = faces(&scheme.section, scheme.ground.level_m);
    let here = all.iter().filter(|face| face.kind == kind && face.of.pour == Id(pour));
    let distance = |face: &falsewright_core::model::Face| (face.from.lerp(face.to, 0.5).x - x_m).abs();
    here.min_by(|a, b| distance(a).total_cmp(&distance(b))).expect("no such face").of
}

/// A shutter on a face: members 0.3 m apart, its foot free.
pub fn shutter(id: u32, face: FaceRef, arrangement: Arrangement) -> Shutter {
    Shutter {
        id: Id(id),
        face,
        arrangement,
        facing: "PLY18".into(),
        secondary: "TB20".into(),
        secondaries: spaced(0.1, 0.3),
        primary: "2PFC150x75".into(),
        primaries: spaced(0.5, 1.0),
        below_m: 0.0,
        above_m: 0.0,
        foot_held: false,
        hold_down_kn: None,
        hinge: None,
    }
}

/// A row of ties from a shutter to something fixed `length_m` away.
pub fn anchors(id: u32, shutter: u32, z_m: f64, item: &str, length_m: f64) -> TieRow {
    let to = TieEnd::Fixed { length_m };
    TieRow { id: Id(id), shutter: Id(shutter), to, z_m, item: item.into(), spacing: spaced(0.5, 1.0), held: None }
}

/// Falsework under a soffit, held sideways by walls, its lifts higher than its legs.
pub fn falsework(id: u32, soffit: FaceRef, direction: Direction, lines_m: &[f64]) -> Falsework {
    let line = |(id, &x_m): (u32, &f64)| LegLine { id: Id(id), x_m, braced: false };
    Falsework {
        id: Id(id),
        soffit,
        direction,
        facing: "PLY18".into(),
        secondary: "TB20".into(),
        secondaries: spaced(0.1, 0.4),
        primary: "HE200B".into(),
        leg: "LEG60".into(),
        base: "BASE200".into(),
        brace: "TUBE48B".into(),
        leg_lines: (id + 1..).zip(lines_m).map(line).collect(),
        bents: spaced(0.5, 1.0),
        lift_m: 50.0,
        lateral: Lateral::HeldByWalls,
        bearing: Bearing::Slab { strength_mpa: 25.0 },
        slab: None,
    }
}

fn item(code: &str, kind: Kind) -> Item {
    Item { code: code.into(), name: code.into(), source: "invented for a test".into(), kind }
}

/// A tie that hardly stretches.
pub fn stiff_tie() -> Item {
    let kind = Tie {
        diameter_m: 0.5,
        area_m2: 10.0,
        breaking_kn: 1000.0,
        working_kn: 400.0,
        modulus_kpa: 205e6,
        mass_kg_m: 1.0,
        ends_kg: 1.0,
        projection_m: 0.1,
        plate: None,
    };
    item("STIFF_TIE", Kind::Tie(kind))
}

/// A leg that hardly shortens.
pub fn stiff_leg() -> Item {
    let kind = Leg {
        diameter_m: 0.9,
        wall_m: 0.44,
        yield_mpa: 355.0,
        curve: "c".into(),
        jack_working_kn: 1000.0,
        footprint_m: 0.1,
        ends_kg: 10.0,
        rating: None,
        stack: None,
    };
    item("STIFF_LEG", Kind::Leg(kind))
}

/// A beam of this stiffness, strong enough for anything, without weight.
pub fn beam_of(code: &str, stiffness_knm2: f64) -> Item {
    let kind = TimberBeam {
        breadth_m: 0.1,
        depth_m: 0.2,
        stiffness_knm2,
        moment_knm: 1e4,
        shear_kn: 1e4,
        bearing_kn: 1e4,
        mass_kg_m: 0.0,
    };
    item(code, Kind::TimberBeam(kind))
}

/// Where concrete may lie on a soffit: everywhere, from either side by sixths, and from the middle by thirds.
pub fn fronts(left: f64, right: f64) -> Vec<[f64; 2]> {
    let (sixth, middle) = ((right - left) / 6.0, (left + right) / 2.0);
    let mut fronts = vec![[left, right]];
    for k in 1..6 {
        let reach = f64::from(k) * sixth;
        fronts.extend([[left, left + reach], [right - reach, right]]);
        if k % 2 == 0 {
            fronts.push([middle - reach / 2.0, middle + reach / 2.0]);
        }
    }
    fronts
}

/// The design of a scheme that validates.
pub fn solved(scheme: &Scheme) -> Design {
    design(scheme, &Catalogue::generic()).expect("a valid scheme")
}

/// What a member must bear.
pub fn demand(design: &Design, member: &str, kind: CheckKind) -> f64 {
    check(design, member, kind).demand
}

/// The check of a member.
pub fn check<'a>(design: &'a Design, member: &str, kind: CheckKind) -> &'a Check {
    let found = design.results.checks.iter().find(|check| check.member == member && check.check == kind);
    found.unwrap_or_else(|| panic!("no check {kind:?} of {member} in {:#?}", design.results.findings))
}

/// Force of one tie or prop, such as `T1.2`.
pub fn tie_kn(design: &Design, id: &str) -> f64 {
    design.results.ties.iter().find(|tie| tie.id == id).unwrap_or_else(|| panic!("no tie {id}")).force_kn
}

/// Greatest compression of one leg, such as `L1.2`.
pub fn leg_kn(design: &Design, id: &str) -> f64 {
    design.results.legs.iter().find(|leg| leg.id == id).unwrap_or_else(|| panic!("no leg {id}")).axial_kn
}

/// Fails unless there are entries of this direction, `horizontal` or `vertical`, and each closes within `rel`.
#[track_caller]
pub fn assert_closes(design: &Design, direction: &str, rel: f64) {
    let entries: Vec<_> = design.results.ledger.iter().filter(|entry| entry.case.starts_with(direction)).collect();
    assert!(!entries.is_empty(), "no {direction} entry: {:#?}", design.results.findings);
    for entry in entries {
        assert!(entry.difference <= rel, "{entry:#?}");
    }
}

/// A clear way of 3 m from x = 2.9 m, 2.8 m high, through falsework 50, on two UB 305 × 165 × 40 for each bent.
pub fn clear_way(trestle: &str, trestle_m: f64) -> Opening {
    Opening {
        id: Id(80),
        falsework: Id(50),
        left_m: 2.9,
        width_m: 3.0,
        height_m: 2.8,
        guard_m: 0.25,
        beam_underside_m: 3.0,
        transfer: "UB305x165x40".into(),
        transfers: 2,
        restraint_m: None,
        trestle: trestle.into(),
        trestle_m,
        built_width_m: None,
        built_height_m: None,
    }
}
