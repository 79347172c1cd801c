//! Wall shutters that stand empty, what holds fixed ends, battered faces and the limits of the pour, against statics.

use falsewright_core::Design;
use falsewright_core::actions::fresh_concrete::slope::force_on_slope;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::limits::{Limit, TEMPERATURES_C, site_limits};
use falsewright_core::model::FaceKind;
use falsewright_core::results::{Check, CheckKind, Severity};
use falsewright_core::scheme::{
    Arrangement, CastAnchor, Corner, Delivery, FixedEnd, HeldBy, Id, PressureMethod, Scheme, Section, SiteWind, TieEnd,
    heron_lane,
};
use falsewright_tests::assert_close;
use falsewright_tests::formula::ratio_of;
use falsewright_tests::simple::{
    anchors, assert_closes, beam_of, box_scheme, check, demand, face, fluid, shutter, solved, stiff_tie, tie_kn,
};

fn gust(basic_speed_m_s: f64, working_speed_m_s: f64) -> SiteWind {
    SiteWind { working_speed_m_s, ..SiteWind::gust(basic_speed_m_s) }
}
/// `0.613 × 20² × 1.3` N/m² on a shutter 3 m high, kN/m.
const WIND_KN_M: f64 = 0.613 * 400.0 * 1.3e-3 * 3.0;

fn kentledge(below_m: f64, weight_kn: f64) -> Option<FixedEnd> {
    Some(FixedEnd { below_m, by: HeldBy::Kentledge { weight_kn, friction: 0.4 } })
}

/// A shutter 3 m high on the left outer face of a box, two soldiers in a bay of 2 m, its foot held. Ties that hardly
/// stretch take the concrete, so that props 2 m above its foot take next to nothing of it.
fn propped(wind: Option<SiteWind>, held: Option<FixedEnd>) -> Scheme {
    let mut scheme = box_scheme(4.0, 2.5, 0.0);
    scheme.bays.length_m = 2.0;
    scheme.concrete = fluid();
    scheme.loads.wind = wind;
    let left = face(&scheme, FaceKind::OuterWall, 900, 0.0);
    scheme.shutters = vec![shutter(10, left, Arrangement::UprightPrimaries)];
    scheme.shutters[0].foot_held = true;
    scheme.items = vec![stiff_tie(), beam_of("EI900", 900.0)];
    let mut props = anchors(20, 10, 2.5, "PROP76", 2.5);
    props.held = held;
    scheme.ties = vec![props, anchors(21, 10, 1.0, "STIFF_TIE", 0.1), anchors(22, 10, 2.5, "STIFF_TIE", 0.1)];
    scheme
}

/// Wind of 20 m/s: `0.613 × 400 × 1.3 = 0.3188` kPa, 0.956 kN/m at 1.5 m. Moments about the foot give the props at 2 m
/// three quarters of it. Props 2.5 m long that fall 2 m run 1.5 m: axially 2.5 / 1.5 of the level force, upright 2 / 1.5.
#[test]
fn raking_props_by_statics() {
    let design = solved(&propped(Some(gust(20.0, 0.0)), kentledge(2.0, 20.0)));
    let level_kn = 0.75 * WIND_KN_M;
    assert_close("pulled prop", demand(&design, "B1 prop", CheckKind::Tension), level_kn * 2.5 / 1.5, 1e-9);
    let lift_kn = level_kn * 2.0 / 1.5;
    let uplift = check(&design, "B1 fixed end", CheckKind::Uplift);
    assert_close("block lifted", uplift.demand, 1.2 * lift_kn, 1e-9);
    assert_close("block's weight", uplift.resistance, 20.0, 1e-12);
    let sliding = check(&design, "B1 fixed end", CheckKind::Sliding);
    assert_close("block pulled", sliding.demand, 1.2 * level_kn, 1e-9);
    assert_close("its friction", sliding.resistance, 0.4 * (20.0 - 1.2 * lift_kn), 1e-9);
    assert_eq!(sliding.case, "P2 empty, greatest wind toward the concrete");
    let empty = design.results.ledger.iter().find(|entry| entry.case == "empty, S1, greatest wind").unwrap();
    assert_close("wind on the bay", empty.levels[0].into_kn, 2.0 * WIND_KN_M, 1e-12);
    assert!(empty.difference < 1e-9, "{empty:#?}");
    assert_closes(&design, "horizontal", 1e-9);
    assert_closes(&design, "vertical, S1", 1e-6);
}

/// Pushed outward, the props push back and up: the shutter's foot must be held down against what they lift. In limit
/// states wind takes 1.5 and weight 0.9.
#[test]
fn raking_props_lift_the_shutter_that_they_prop() {
    let mut scheme = propped(Some(gust(20.0, 0.0)), kentledge(2.0, 20.0));
    let weight =
        |design: &Design, basis_factor: f64| check(design, "S1 foot", CheckKind::Uplift).resistance / basis_factor;
    // Both soldiers of 3 m: 2 × 18 kg/m or so; the weight is the bill's.
    let design = solved(&scheme);
    let own_kg: f64 = design.quantities.iter().filter(|line| line.owner == Some(Id(10))).map(|line| line.mass_kg).sum();
    assert_close("its weight", weight(&design, 1.0), own_kg * 9.81e-3, 1e-9);
    let lifted = demand(&design, "S1 foot", CheckKind::Uplift);
    assert_close("lifted", lifted, 1.2 * 2.0 * 0.75 * WIND_KN_M * 2.0 / 1.5, 1e-3);

    scheme.shutters[0].hold_down_kn = Some(3.0);
    assert_close("held down", weight(&solved(&scheme), 1.0), own_kg * 9.81e-3 + 2.0 * 3.0, 1e-9);
    scheme.shutters[0].hold_down_kn = None;
    scheme.basis = falsewright_core::scheme::Basis::LimitStateB1;
    assert_close("favourable weight", weight(&solved(&scheme), 0.9), own_kg * 9.81e-3, 1e-9);
}

/// Two props with a block of 20 kN each, 20 / 9.81e-3 kg; or two anchors of 20 mm, 200 mm deep, in steel of 7850 kg/m³.
#[test]
fn what_holds_fixed_ends_is_in_the_bill() {
    let line = |held: Option<FixedEnd>, item: &str| {
        let design = solved(&propped(None, held));
        let bill = design.quantities;
        let whole = bill.iter().find(|line| line.item == "Equipment for one bay").unwrap().mass_kg;
        (bill.into_iter().find(|line| line.item == item), whole)
    };
    let (block, with_blocks) = line(kentledge(2.0, 20.0), "Block of kentledge");
    let block = block.unwrap();
    assert_eq!((block.owner, block.size.to_string()), (Some(Id(20)), "20.0 kN".to_owned()));
    assert_eq!((block.count, block.pieces, block.unit), (2.0, 2.0, "no."));
    assert_close("blocks", block.mass_kg, 2.0 * 2038.736, 1e-6);

    let cast = CastAnchor { depth_m: 0.2, head_m: 0.1, rod_m: 0.02, edge_m: 1.0, strength_mpa: 16.0 };
    let anchored = Some(FixedEnd { below_m: 2.0, by: HeldBy::Anchor(cast) });
    let (anchor, _) = line(anchored, "Headed anchor, cast in");
    let anchor = anchor.unwrap();
    assert_eq!((anchor.count, anchor.size.to_string()), (2.0, "20 mm × 200 mm".to_owned()));
    assert_close("anchors", anchor.mass_kg, 2.0 * 0.2 * std::f64::consts::PI * 1e-4 * 7850.0, 1e-6);

    let (none, without) = line(Some(FixedEnd { below_m: 2.0, by: HeldBy::Thrust }), "Block of kentledge");
    assert_eq!(none, None);
    assert_close("all equipment", with_blocks - without, block.mass_kg, 1e-9);
}

/// The notional load is a tenth of the shutter's weight at three quarters of its height: 2.25 / 2 of it on the props.
#[test]
fn the_notional_load_acts_with_the_working_wind() {
    let calm = gust(1e-3, 0.0);
    let design = solved(&propped(Some(calm), kentledge(2.0, 20.0)));
    let own_kg: f64 = design.quantities.iter().filter(|line| line.owner == Some(Id(10))).map(|line| line.mass_kg).sum();
    let of_each = 0.1 * own_kg * 9.81e-3 / 2.0 * 2.25 / 2.0;
    let pulled = check(&design, "B1 prop", CheckKind::Tension);
    assert_close("pulled", pulled.demand, of_each * 2.5 / 1.5, 1e-6);
    assert_eq!(pulled.case, "P2 empty, working wind toward the concrete");
}

/// A shutter without props stands on its own thickness: weight × half of it against the wind at half its height.
#[test]
fn without_props_a_shutter_stands_on_its_weight() {
    let mut scheme = propped(Some(gust(20.0, 0.0)), None);
    scheme.ties.remove(0);
    let design = solved(&scheme);
    let own_kg: f64 = design.quantities.iter().filter(|line| line.owner == Some(Id(10))).map(|line| line.mass_kg).sum();
    let overturning = check(&design, "S1 on its own weight", CheckKind::Overturning);
    assert_close("wind", overturning.demand, 1.2 * 2.0 * WIND_KN_M * 1.5, 1e-9);
    let depth_m = 0.0176 + 0.2 + 0.15;
    assert_close("weight", overturning.resistance, own_kg * 9.81e-3 * depth_m / 2.0, 1e-9);
    assert!(overturning.ratio > 1.0);
}

#[test]
fn what_is_not_told_is_said() {
    let says = |scheme: &Scheme, part: &str| {
        let design = solved(scheme);
        let found = design.results.findings.iter().find(|finding| finding.text.contains(part));
        assert!(
            found.is_some_and(|finding| finding.severity == Severity::Warn),
            "{part}: {:#?}",
            design.results.findings
        );
    };
    says(&propped(None, kentledge(2.0, 20.0)), "The wind on the site is not given");
    says(&propped(Some(gust(20.0, 0.0)), None), "B1 pushes with");
    says(&propped(Some(gust(20.0, 0.0)), kentledge(2.0, 20.0)), "T1 pulls with");
    says(&propped(Some(gust(20.0, 0.0)), kentledge(2.0, 20.0)), "tells of no plate");
    let thrust = Some(FixedEnd { below_m: 0.0, by: HeldBy::Thrust });
    says(&propped(Some(gust(20.0, 0.0)), thrust), "falls over before the pour");
    let mut pulled = propped(Some(gust(20.0, 0.0)), thrust);
    pulled.ties[1].held = thrust;
    says(&pulled, "which only an anchor can hold");
}

/// A tie anchored in concrete of 16 N/mm², head 0.2 m deep: cone `8.9 × 4 × 200^1.5 = 100.69` kN in cracked concrete, with
/// room on all sides, by 1.5 × 1.5.
#[test]
fn ties_pull_on_their_anchors() {
    let mut scheme = propped(None, None);
    let cast = CastAnchor { depth_m: 0.2, head_m: 0.1, rod_m: 0.02, edge_m: 1.0, strength_mpa: 16.0 };
    scheme.ties = vec![anchors(20, 10, 1.1, "TIE20", 1.0), anchors(21, 10, 2.6, "TIE20", 3.0)];
    scheme.shutters[0].foot_held = false;
    scheme.ties[0].held = Some(FixedEnd { below_m: 0.0, by: HeldBy::Anchor(cast) });
    let design = solved(&scheme);
    let anchor = check(&design, "T1 fixed end", CheckKind::Tension);
    // The fluid's 112.5 kN/m less 30 kN/m of the upper tie, by moments.
    assert_close("pulled", anchor.demand, 82.5, 1e-9);
    assert_close("borne", anchor.resistance, 8.9 * 4.0 * 200f64.powf(1.5) * 1e-3 / 2.25, 1e-9);
}

/// A plate of 140 mm on 75 mm of a sawn waling, 24 mm of hole.
#[test]
fn plates_press_on_timber_walings() {
    let mut scheme = propped(None, None);
    scheme.shutters[0].foot_held = false;
    scheme.shutters[0].primary = "T75x150".into();
    scheme.ties = vec![anchors(20, 10, 1.1, "TIE20", 1.0), anchors(21, 10, 2.6, "TIE20", 3.0)];
    let design = solved(&scheme);
    let bearing = check(&design, "T1 plate", CheckKind::Bearing);
    assert_close("pressed", bearing.demand, 82.5, 1e-9);
    // C16 across the grain with wane, wet: 1.7 or 1.9 N/mm² × 0.6 × 1.4, read from the formula's own numbers.
    let net_mm2 = 75.0 * 140.0 - std::f64::consts::PI / 4.0 * 24.0 * 24.0;
    assert_close("by area", bearing.resistance / net_mm2 * 1e3, 1.9 * 0.6 * 1.4, 1e-9);
    // M = 82.5 × 0.08² / (8 × 0.14); W = 116 × 16² / 4 mm³.
    let bending = check(&design, "T1 plate", CheckKind::Bending);
    assert_close("moment", bending.demand, 82.5 * 0.0064 / 1.12, 1e-9);
    assert_close("borne", bending.resistance, 116.0 * 64.0 * 235e-6 / 1.65, 1e-9);
}

/// A wall 3 m high whose right face leans by `run_m`, its left face upright.
fn battered(run_m: f64) -> Scheme {
    let corner = |(id, (x_m, z_m)): (u32, (f64, f64))| Corner { id: Id(id), x_m, z_m, cut: None };
    let corners = [(0.0, 0.0), (1.5, 0.0), (1.5 - run_m, 3.0), (0.0, 3.0)];
    let outline = (1..).zip(corners).map(corner).collect();
    let mut scheme = Scheme::blank(Section { outline, cells: vec![], joints: vec![] });
    scheme.bays.length_m = 2.0;
    scheme.concrete = fluid();
    let kind = if run_m > 0.0 { FaceKind::SlopeOver } else { FaceKind::OuterWall };
    let right = face(&scheme, kind, 0, 1.5);
    scheme.shutters = vec![shutter(10, right, Arrangement::UprightPrimaries)];
    scheme.items = vec![stiff_tie(), beam_of("EI900", 900.0)];
    scheme.ties = vec![anchors(20, 10, 0.6, "TIE20", 1.0), anchors(21, 10, 2.1, "TIE20", 3.0)];
    scheme
}

/// Fluid 3 m deep on a face that leans 1 in 5: level 112.5 kN/m as on an upright one; up 112.5 / 5 = 22.5 kN/m. Along the
/// face the pressure's moment about its foot is `∫ 25 (3 − z) z dz × 1.04 = 117` kNm/m. Level ties at 0.6 and 2.1 m meet
/// the uprights, which stand 0.0176 + 0.2 + 0.15 m square behind the face and so `δ = 0.3676 × 0.2 / √1.04` higher.
#[test]
fn a_battered_shutter_by_statics() {
    let scheme = battered(0.6);
    let design = solved(&scheme);
    let delta = 0.3676 * 0.2 / 1.04f64.sqrt();
    let upper = (117.0 + 112.5 * delta - 112.5 * 0.6) / 1.5;
    assert_close("upper tie", tie_kn(&design, "T2.1"), upper, 1e-6);
    assert_close("lower tie", tie_kn(&design, "T1.1"), 112.5 - upper, 1e-6);
    let face = &design.model.shutters[0].face;
    let slope = force_on_slope(face.from, face.to, [75.0, 0.0]);
    assert_close("up", slope.upward_kn_m, 22.5, 1e-12);
    assert_close("lifted", demand(&design, "S1 foot", CheckKind::Uplift), 1.2 * 2.0 * 22.5, 1e-9);
    assert_closes(&design, "horizontal", 1e-9);
    assert_closes(&design, "vertical", 1e-9);
    assert!(
        !design.results.findings.iter().any(|finding| finding.text.contains("slope")),
        "{:#?}",
        design.results.findings
    );
}

/// The same wall with both its shutters, tied and propped: what one face pushes more than the other goes to the props.
#[test]
fn a_batter_against_an_upright_face() {
    let mut scheme = battered(0.6);
    let left = face(&scheme, FaceKind::OuterWall, 0, 0.0);
    scheme.shutters.push(shutter(11, left, Arrangement::UprightPrimaries));
    for row in &mut scheme.ties {
        row.to = TieEnd::Shutter { id: Id(11) };
    }
    scheme.shutters.iter_mut().for_each(|shutter| shutter.foot_held = true);
    let mut props = anchors(30, 10, 1.8, "PROP76", 3.0);
    props.held = kentledge(1.7, 100.0);
    scheme.ties.push(props);
    let design = solved(&scheme);
    let entry = design.results.ledger.iter().find(|entry| entry.case == "horizontal, S1 + S2").unwrap();
    assert!(entry.levels.iter().any(|level| level.level.starts_with("faces against each other")), "{entry:#?}");
    assert!(entry.difference < 1e-9, "{entry:#?}");
    assert_closes(&design, "vertical", 1e-9);
}

#[test]
fn a_steeper_lean_never_lowers_the_uplift() {
    let mut last = 0.0;
    for step in 1..=10 {
        let lifted = demand(&solved(&battered(0.1 * f64::from(step))), "S1 foot", CheckKind::Uplift);
        assert!(lifted > last, "{step}: {lifted} after {last}");
        last = lifted;
    }
}

#[test]
fn more_wind_never_makes_it_easier() {
    let mut last: Vec<(String, CheckKind, f64)> = Vec::new();
    for speed in [5.0, 10.0, 18.0, 25.0, 40.0, 60.0] {
        let wind = gust(speed, speed.min(18.0));
        let mut ratios = Vec::new();
        let mut alone = propped(Some(wind), None);
        alone.ties.remove(0);
        for (what, scheme) in [("propped", propped(Some(wind), kentledge(2.0, 20.0))), ("alone", alone)] {
            let design = solved(&scheme);
            let of = |check: &Check| (format!("{what} {}", check.member), check.check, check.ratio);
            ratios.extend(design.results.checks.iter().map(of));
        }
        for (member, kind, before) in &last {
            let after = ratios.iter().find(|(m, k, _)| m == member && k == kind).map(|found| found.2);
            assert!(after.is_some_and(|after| after >= before - 1e-9), "{member} {kind:?}: {before}, then {after:?}");
        }
        last = ratios;
    }
    assert!(last.iter().any(|(_, kind, _)| *kind == CheckKind::Overturning));
}

/// Every formula of these stages reads back to its ratio.
#[test]
fn formulas_of_the_empty_stage_work_out() {
    let mut kinds = std::collections::BTreeSet::new();
    let mut alone = propped(Some(gust(20.0, 0.0)), None);
    alone.ties.remove(0);
    alone.shutters[0].foot_held = false;
    let cast = CastAnchor { depth_m: 0.12, head_m: 0.04, rod_m: 0.02, edge_m: 0.25, strength_mpa: 12.0 };
    let anchored = propped(Some(gust(20.0, 0.0)), Some(FixedEnd { below_m: 2.0, by: HeldBy::Anchor(cast) }));
    for scheme in [propped(Some(gust(20.0, 0.0)), kentledge(2.0, 20.0)), alone, anchored, battered(0.5)] {
        for check in solved(&scheme).results.checks {
            if !check.ratio.is_finite() {
                continue;
            }
            let read =
                ratio_of(&check.formula.to_string()).unwrap_or_else(|| panic!("{}: {}", check.member, check.formula));
            assert!((read - check.ratio).abs() <= 0.004 * check.ratio.max(1e-3), "{}: {}", check.member, check.formula);
            kinds.insert(check.check);
        }
    }
    use CheckKind::{Anchorage, Overturning, Sliding, Tension, Uplift};
    for kind in [Overturning, Sliding, Uplift, Anchorage, Tension] {
        assert!(kinds.contains(&kind), "{kind:?} in {kinds:?}");
    }
}

/// 15 m³/h into walls of 2 × 0.45 × 10 m²: 4.35 m in 2.61 h; then 3.7 m² … of roof. The whole pour is 76 m³.
#[test]
fn a_pour_is_a_history() {
    let scheme = heron_lane().unwrap();
    let design = solved(&scheme);
    let [base, walls] = &design.results.fillings[..] else { panic!("two pours") };
    assert_close("base", base.filling.duration_h(), 41.85 / 15.0, 1e-9);
    assert_close("walls and roof", walls.filling.duration_h(), 76.0 / 15.0, 1e-9);
    assert_close("rise", walls.governing_rise_m_h, 15.0 / 9.0, 1e-12);
    assert_close("after an hour", walls.filling.surface_m(1.0), 0.65 + 15.0 / 9.0, 1e-9);
    // The diagram of the full pour is the envelope of all times.
    for diagram in design.results.pressures.iter().filter(|diagram| diagram.points[0].0 > 0.6) {
        for &(z, kpa) in &diagram.points {
            let at = |step: i32| {
                let time_h = walls.filling.duration_h() * f64::from(step) / 40.0;
                walls.filling.pressure_kpa(z, time_h, 25.0, diagram.limit_kpa)
            };
            let greatest = (0..=40).map(at).fold(0.0, f64::max);
            assert_close("envelope", greatest, kpa, 1e-9);
        }
    }
}

/// At the limit everything passes; two parts in a hundred faster something fails. Warmer concrete allows no less.
#[test]
fn the_card_for_the_site_is_the_inverse() {
    let mut scheme = heron_lane().unwrap();
    // A scheme with little in hand.
    scheme.ties.iter_mut().filter(|row| row.item == "TIE20").for_each(|row| row.item = "TIE15".into());
    let card = site_limits(&scheme, &Catalogue::generic()).unwrap();
    assert_eq!(card.iter().map(|pour| pour.mark.as_str()).collect::<Vec<_>>(), ["P1", "P2"]);
    assert_eq!(card[0].limits, [const { Limit::Any }; 6]);
    // Ties of 90 kN are too weak for the coldest concrete at any rate.
    assert!(matches!(card[1].limits[0], Limit::Never { .. }), "{card:#?}");
    let mut last = 0.0;
    for (&temperature_c, limit) in TEMPERATURES_C.iter().zip(&card[1].limits).skip(1) {
        let Limit::UpTo { delivery_m3_h, rise_m_h, governing: Some(governing) } = limit else { panic!("{limit:?}") };
        assert_close("delivery", *delivery_m3_h, rise_m_h * 9.0, 1e-12);
        assert!(*rise_m_h >= last, "{temperature_c}: {rise_m_h} after {last}");
        last = *rise_m_h;
        let solved_at = |part: f64| {
            let mut placed = scheme.clone();
            placed.concrete.temperature_c = temperature_c;
            placed.concrete.delivery = Delivery::Volume { rate_m3_h: delivery_m3_h * part };
            let design = solved(&placed);
            design.results.checks.into_iter().filter(|check| check.case == "P2, full").collect::<Vec<_>>()
        };
        assert!(solved_at(1.0).iter().all(|check| check.ratio <= 1.0));
        let beyond = solved_at(1.02);
        let failed = beyond.iter().filter(|check| check.ratio > 1.0).map(|check| check.member.as_str());
        assert!(
            failed.clone().any(|member| governing.member == member),
            "{governing:?}: {:?}",
            failed.collect::<Vec<_>>()
        );
    }
    // Full head knows no rate, so that no pour is limited by one: it passes, or never does.
    scheme.concrete.method = PressureMethod::FullHead;
    let card = site_limits(&scheme, &Catalogue::generic()).unwrap();
    assert!(card.iter().flat_map(|pour| &pour.limits).all(|limit| matches!(limit, Limit::Any | Limit::Never { .. })));
}

/// A fall of nothing is not written, so that a scheme without these fields keeps its bytes.
#[test]
fn schemes_without_these_fields_stay_as_they_are() {
    let mut scheme = box_scheme(4.0, 2.5, 0.0);
    let left = face(&scheme, FaceKind::OuterWall, 900, 0.0);
    scheme.shutters = vec![shutter(10, left, Arrangement::UprightPrimaries)];
    scheme.ties = vec![anchors(20, 10, 2.5, "PROP76", 2.5)];
    let text = falsewright_core::scheme::write(&scheme);
    for word in ["\"wind\"", "\"held\"", "hold_down"] {
        assert!(!text.contains(word), "{word}");
    }
    scheme.ties[0].held = kentledge(2.0, 20.0);
    scheme.loads.wind = Some(gust(20.0, 0.0));
    scheme.shutters[0].hold_down_kn = Some(2.0);
    let back = falsewright_core::scheme::read(&falsewright_core::scheme::write(&scheme)).unwrap();
    assert_eq!(back, scheme);
}
