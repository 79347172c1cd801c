//! More load never helps, more strength never hurts: each action and clause function in the direction it must go.

use falsewright_core::actions::fresh_concrete::envelope::PressureEnvelope;
use falsewright_core::actions::fresh_concrete::filling::Filling;
use falsewright_core::actions::fresh_concrete::pressure_limit;
use falsewright_core::actions::horizontal::{LeastLateral, Sway, sway_en12812};
use falsewright_core::actions::imposed::{heaping_en12812_kpa, working_area_en1991_kpa};
use falsewright_core::actions::wind::{Terrain, WindSite, probability_factor};
use falsewright_core::catalogue::{Catalogue, Grain, Item, LayUp, standard_section, standard_sections};
use falsewright_core::checks::buckling::{critical_force_kn, imperfection, reduction};
use falsewright_core::checks::concrete::{Anchor, Cement, PlateOnSlab, punching_stress};
use falsewright_core::checks::fittings::{Coupler, Spigot, TiePlate};
use falsewright_core::checks::ground::{SolePlate, fill_depth_m, pressure_at_depth_kpa};
use falsewright_core::checks::hollow::{side_wall_kn, tube_wall_kn};
use falsewright_core::checks::lateral_torsional::{MomentShape, critical_moment_knm};
use falsewright_core::checks::prop::PropClass;
use falsewright_core::checks::stability::{Standing, check_overturning};
use falsewright_core::checks::striking::{
    characteristic_at, equivalent_age_h, history_to, hours_until, hours_until_in, nurse_saul_c_h, strength_reached_mpa,
};
use falsewright_core::checks::web::{WebLoad, propose_stiffener, stiffened, web_resistance};
use falsewright_core::checks::{
    BeamColumn, GeneralMethod, StrutForces, check_beam_column, check_brace, check_stack, en1993, en1995,
};
use falsewright_core::results::{CheckKind, Verdict};
use falsewright_core::scheme::{
    Basis, CementChemistry, Concrete, Consistency, Delivery, FormElement, Hardening, PressureMethod, Temperature,
};
use proptest::prelude::*;

const BASES: [Basis; 3] = [Basis::WorkingLoad, Basis::LimitStateB1, Basis::LimitStateB2];

fn item(code: &str) -> Item {
    Catalogue::generic().get(code).unwrap_or_else(|| panic!("no {code}")).clone()
}

fn pressure(method: PressureMethod, density: f64, celsius: f64, rise: f64, height: f64) -> f64 {
    let delivery = Delivery::Rise { rate_m_h: rise };
    let concrete = Concrete { unit_weight_kn_m3: density, temperature_c: celsius, method, delivery };
    pressure_limit(&concrete, rise, height, height).kpa
}

fn methods(setting_time_h: f64) -> Vec<PressureMethod> {
    let din = Consistency::ALL.into_iter().map(|class| PressureMethod::Din18218 { class, setting_time_h });
    let aci = [FormElement::Wall, FormElement::Column].into_iter().map(|element| PressureMethod::Aci347 {
        element,
        chemistry: CementChemistry::Blended,
        slump_mm: 150.0,
        vibrated_depth_m: 1.0,
    });
    din.chain(aci).collect()
}

proptest! {
    #[test]
    fn pressure_by_din_and_aci(
        t in 5.0..30.0, warmer in 0.0..5.0, r in 0.0..8.0, faster in 0.0..3.0, h in 0.5..11.0, higher in 0.0..2.0,
        set in 5.0..19.0, later in 0.0..3.0,
    ) {
        for (method, slower) in methods(set).into_iter().zip(methods(set + later)) {
            let base = pressure(method, 25.0, t, r, h);
            prop_assert!(base <= 25.0 * h + 1e-9 && base >= 0.0);
            prop_assert!(pressure(method, 25.0, t, r + faster, h) >= base - 1e-9, "rise {method:?}");
            prop_assert!(pressure(method, 25.0, t, r, h + higher) >= base - 1e-9, "height {method:?}");
            prop_assert!(pressure(method, 25.0, t + warmer, r, h) <= base + 1e-9, "warmth {method:?}");
            prop_assert!(pressure(method, 26.0, t, r, h) >= base - 1e-9, "density {method:?}");
            prop_assert!(pressure(slower, 25.0, t, r, h) >= base - 1e-9, "setting {method:?}");
        }
    }

    #[test]
    fn pressure_over_time_stays_within_its_envelope(
        q in 5.0..60.0, low in 2.0..20.0, high in 2.0..20.0, z in 0.0..4.0, t in 0.0..30.0, later in 0.0..5.0, p in 10.0..150.0,
    ) {
        let filling = Filling::new(Delivery::Volume { rate_m3_h: q }, &[(0.0, low), (3.0, low), (3.0, high), (4.0, low)]);
        let envelope = PressureEnvelope { density_kn_m3: 25.0, limit_kpa: p, height_m: 4.0 };
        let now = filling.pressure_kpa(z, t, 25.0, p);
        prop_assert!(filling.pressure_kpa(z, t + later, 25.0, p) >= now - 1e-9);
        prop_assert!(now <= envelope.at_depth_kpa(4.0 - z) + 1e-9);
        let full = filling.pressure_kpa(z, filling.duration_h() + 1e-9, 25.0, p);
        prop_assert!((full - envelope.at_depth_kpa(4.0 - z)).abs() < 1e-6);
        let volume = 3.0 * low + (low + high) / 2.0;
        prop_assert!((filling.duration_h() - volume / q).abs() < 1e-9);
    }

    #[test]
    fn loads(v in 0.0..5000.0, k in 0.0..200.0, more in 0.0..100.0, h in 1.0..30.0, m in 1.0..10.0, w in 0.0..60.0) {
        let lateral = |v, k| LeastLateral::new(0.025, v, k).governing_kn();
        prop_assert!(lateral(v + more, k) >= lateral(v, k) && lateral(v, k + more) >= lateral(v, k));
        prop_assert!(Sway::en1993(h + more, m).phi <= Sway::en1993(h, m).phi + 1e-15);
        prop_assert!(Sway::en1993(h, m + more).phi <= Sway::en1993(h, m).phi + 1e-15);
        prop_assert!(sway_en12812(h + more) <= sway_en12812(h) + 1e-15);
        prop_assert!(heaping_en12812_kpa(w + more) >= heaping_en12812_kpa(w));
        prop_assert!(working_area_en1991_kpa(w + more) >= working_area_en1991_kpa(w));
    }

    #[test]
    fn wind(v in 15.0..35.0, h in 1.0..60.0, higher in 0.0..20.0, years in 2.0..50.0, more in 0.0..50.0) {
        for terrain in [Terrain::Sea, Terrain::I, Terrain::II, Terrain::III, Terrain::IV] {
            let site = WindSite { basic_m_s: v, terrain, height_m: h, orography: 1.0, return_years: years };
            let peak = |site: WindSite| site.peak().pressure_kpa;
            prop_assert!(peak(WindSite { height_m: h + higher, ..site }) >= peak(site) - 1e-12, "height_m");
            prop_assert!(peak(WindSite { return_years: years + more, ..site }) >= peak(site) - 1e-12, "return_years");
            prop_assert!(peak(WindSite { basic_m_s: v + 1.0, ..site }) > peak(site), "basic_m_s");
        }
        prop_assert!(probability_factor(years) <= 1.0 + 1e-12);
    }

    #[test]
    fn timber(
        l in 50.0..300.0, more in 0.0..100.0, end in 0.0..300.0, clear in 50.0..900.0, left in 80.0..199.0, x in 0.0..200.0,
        length in 100.0..5000.0, side in 40.0..200.0,
    ) {
        let bearing = |l, end, clear| en1995::bearing_length_mm(l, end, clear);
        prop_assert!(bearing(l + more, end, clear) >= bearing(l, end, clear));
        prop_assert!(bearing(l, end + more, clear) >= bearing(l, end, clear));
        prop_assert!(bearing(l, end, clear + more) >= bearing(l, end, clear));
        let notch = |left_mm: f64, from_support_mm| {
            en1995::Notch { depth_mm: 200.0, left_mm, from_support_mm, taper: 0.0, kn: 5.0 }
        };
        let deeper = notch(f64::max(left - more / 2.0, 60.0), x);
        prop_assert!(deeper.shear_kn(4.0, 0.67, 75.0) <= notch(left, x).shear_kn(4.0, 0.67, 75.0) * (1.0 + 1e-9));
        prop_assert!(notch(left, x + more).factor() <= notch(left, x).factor() + 1e-12);
        let kc = |length, side| en1995::slenderness(length, side, 21.0, 7400.0, 0.2).kc;
        prop_assert!(kc(length + more, side) <= kc(length, side) + 1e-12);
        prop_assert!(kc(length, side + more) >= kc(length, side) - 1e-12);
        prop_assert!(en1995::depth_factor(side + more) <= en1995::depth_factor(side));
    }

    #[test]
    fn plywood(pairs in 2u32..14, more in 1u32..6) {
        let (thin, thick) = (LayUp::birch(2 * pairs + 1), LayUp::birch(2 * (pairs + more) + 1));
        for grain in [Grain::Along, Grain::Across] {
            prop_assert!(thick.bearing_inertia_mm3(grain) > thin.bearing_inertia_mm3(grain));
            prop_assert!(thick.bending_mpa(grain) * thick.modulus_mm2() > thin.bending_mpa(grain) * thin.modulus_mm2());
            prop_assert!(thick.rolling_stress(grain) < thin.rolling_stress(grain));
        }
        let both = thin.bearing_inertia_mm3(Grain::Along) + thin.bearing_inertia_mm3(Grain::Across);
        prop_assert!((both / thin.inertia_mm3() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn steel(which in 0usize..74, ss in 5.0..300.0, more in 0.0..200.0, l in 0.2..15.0, n in 0.0..1.0, v in 0.0..1.0) {
        let (_, section) = standard_sections().nth(which).expect("a section");
        let properties = section.properties();
        for load in [WebLoad::OneFlange { panel_mm: 2000.0 }, WebLoad::BothFlanges { panel_mm: 2000.0 },
                     WebLoad::End { beyond_mm: 20.0 }] {
            let bears = |ss| web_resistance(&section, 275.0, ss, load).resistance_kn;
            prop_assert!(bears(ss + more) >= bears(ss) * (1.0 - 1e-9), "{load:?}");
        }
        let critical = |l: f64, zg| critical_moment_knm(&properties, MomentShape::uniform_load(zg), l);
        prop_assert!(critical(l + more / 50.0, 50.0) <= critical(l, 50.0) * (1.0 + 1e-12));
        prop_assert!(critical(l, 50.0 + more) <= critical(l, 50.0) * (1.0 + 1e-12));
        let beside = |n| en1993::moment_with_axial(100.0, n, 0.3);
        prop_assert!(beside(f64::min(n + more / 200.0, 1.0)) <= beside(n));
        prop_assert!(en1993::high_shear(v + more / 200.0) >= en1993::high_shear(v));
        prop_assert!(critical_force_kn(1e-6, l + more / 50.0) <= critical_force_kn(1e-6, l));
        for curve in ["a0", "a", "b", "c", "d"] {
            let alpha = imperfection(curve).expect("curve");
            prop_assert!(reduction(l + more / 50.0, alpha) <= reduction(l, alpha) + 1e-12);
        }
    }

    #[test]
    fn stiffeners(force in 1.0..600.0, more in 0.0..200.0) {
        let section = standard_section("UB 305x165x40").expect("a section");
        let resistance = |t| stiffened(&section, 275.0, t, true).resistance_kn;
        for pair in [6.0, 8.0, 10.0, 12.0, 15.0, 20.0].windows(2) {
            prop_assert!(resistance(pair[1]) >= resistance(pair[0]));
        }
        let thickness = |force| propose_stiffener(&section, 275.0, force, true).map_or(f64::INFINITY, |s| s.thickness_mm);
        prop_assert!(thickness(force + more) >= thickness(force));
    }

    #[test]
    fn props(greatest in 2.0..5.5, part in 0.3..1.0, more in 0.0..0.7) {
        for class in [PropClass::A, PropClass::B, PropClass::C, PropClass::D, PropClass::E] {
            let bears = |part: f64| class.characteristic_kn(greatest, greatest * f64::min(part, 1.0)).expect("in range");
            prop_assert!(bears(part + more) <= bears(part) + 1e-12);
            prop_assert_eq!(class.characteristic_kn(greatest, greatest * 1.01), None);
        }
    }

    #[test]
    fn ground(p in 1.0..200.0, b in 0.1..1.0, l in 0.1..2.0, z in 0.0..2.0, more in 0.01..1.0, qa in 20.0..500.0) {
        prop_assert!(pressure_at_depth_kpa(p, b, l, z + more) < pressure_at_depth_kpa(p, b, l, z));
        prop_assert!(fill_depth_m(p, b, l, qa + more) <= fill_depth_m(p, b, l, qa));
        prop_assert!(fill_depth_m(p + more, b, l, qa) >= fill_depth_m(p, b, l, qa));
        let depth = fill_depth_m(p, b, l, qa);
        prop_assert!(pressure_at_depth_kpa(p, b, l, depth) <= qa * (1.0 + 1e-9));
        let plate = |length_m| SolePlate { length_m, breadth_m: b, base_m: 0.1 };
        prop_assert!(plate(l + more).effects(p).pressure_kpa < plate(l).effects(p).pressure_kpa);
        prop_assert!(plate(l + more).effects(p).moment_knm >= plate(l).effects(p).moment_knm);
    }

    #[test]
    fn concrete(
        edge in 0.05..1.0, more in 0.0..0.5, depth in 0.05..0.5, fck in 12.0..50.0, spacing in 0.05..1.0, slab in 0.1..1.0,
    ) {
        let anchor = Anchor { depth_m: depth, head_m: 0.06, rod_m: 0.02, edge_m: edge, spacing_m: spacing, cracked: true };
        let bears = |anchor: Anchor, fck| anchor.characteristic_kn(fck);
        prop_assert!(bears(Anchor { edge_m: edge + more, ..anchor }, fck) >= bears(anchor, fck) - 1e-9, "edge_m");
        prop_assert!(bears(Anchor { spacing_m: spacing + more, ..anchor }, fck) >= bears(anchor, fck) - 1e-9, "spacing_m");
        prop_assert!(bears(Anchor { cracked: false, ..anchor }, fck) >= bears(anchor, fck), "cracked");
        prop_assert!(bears(anchor, fck + more) >= bears(anchor, fck));
        let plate = PlateOnSlab { sides_m: [0.15, 0.2], slab_m: slab, to_edge_m: edge };
        let bearing = |plate: PlateOnSlab| plate.local_bearing_kn(10.0);
        prop_assert!(bearing(PlateOnSlab { to_edge_m: edge + more, ..plate }) >= bearing(plate) - 1e-9, "to_edge_m");
        prop_assert!(bearing(PlateOnSlab { slab_m: slab + more, ..plate }) >= bearing(plate) - 1e-9, "slab_m");
        prop_assert!(punching_stress(fck + more, 0.005, 0.2, 1.5) >= punching_stress(fck, 0.005, 0.2, 1.5));
        let shears = |plate: PlateOnSlab| plate.punching_kn(fck, 0.005, 0.2, 1.5);
        prop_assert!(shears(PlateOnSlab { to_edge_m: edge + more, ..plate }) >= shears(plate) - 1e-9, "to_edge_m");
    }

    #[test]
    fn young_concrete(hours in 1.0..200.0, more in 0.0..100.0, t in 0.0..35.0, warmer in 0.0..10.0, needed in 1.0..35.0) {
        for measure in [equivalent_age_h, nurse_saul_c_h] {
            prop_assert!(measure(&[(hours + more, t)]) >= measure(&[(hours, t)]));
            prop_assert!(measure(&[(hours, t + warmer)]) >= measure(&[(hours, t)]));
        }
        for cement in [Cement::Rapid, Cement::Normal, Cement::Slow] {
            let reached = |hours, t| strength_reached_mpa(38.0, cement, &[(hours, t)]);
            prop_assert!(reached(hours + more, t) >= reached(hours, t));
            let wait = |needed, t| hours_until(needed, 38.0, cement, t).expect("reachable");
            prop_assert!(wait(needed + warmer / 10.0, t) >= wait(needed, t));
            prop_assert!(wait(needed, t + warmer) <= wait(needed, t) * (1.0 + 1e-12));
            prop_assert!((reached(wait(needed, t), t) / needed - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn fittings(
        force in 0.1..60.0, more in 0.0..20.0, thickness in 0.005..0.03, gap in 0.02..0.1, play in 0.0..0.004, lap in 0.05..0.3,
    ) {
        for basis in BASES {
            let plate = |thickness_m, gap_m| TiePlate {
                length_m: 0.12, width_m: 0.12, thickness_m, gap_m, hole_m: 0.02, nut_m: 0.03, yield_mpa: 235.0,
            };
            let bends = |plate: TiePlate, force| plate.check_bending(basis, force).ratio();
            let base = bends(plate(thickness, gap), force);
            prop_assert!(bends(plate(thickness, gap), force + more) >= base);
            prop_assert!(bends(plate(thickness + more * 1e-3, gap), force) <= base);
            prop_assert!(bends(plate(thickness, gap + more * 1e-3), force) >= base);
            prop_assert!(plate(thickness + 0.01, gap).stiff_bearing_mm() > plate(thickness, gap).stiff_bearing_mm());
            prop_assert!(Coupler::RightAngleB.allowed_kn(basis) > Coupler::RightAngleA.allowed_kn(basis));
            prop_assert!(Coupler::SwivelB.allowed_kn(basis) > Coupler::SwivelA.allowed_kn(basis));
            let brace = item("TUBE48");
            let slips = |force| check_brace(&brace, basis, force, 1.7).iter().map(Verdict::ratio).fold(0.0, f64::max);
            prop_assert!(slips(force + more) >= slips(force));
        }
        let spigot = |play: f64, lap_m| Spigot { inside_m: 0.0403, spigot_m: 0.0403 - play, lap_m };
        prop_assert!(spigot(play + 0.001, lap).kink() > spigot(play, lap).kink());
        prop_assert!(spigot(play, lap + 0.05).kink() <= spigot(play, lap).kink());
        prop_assert!(spigot(play + 0.001, lap).eccentricity_m() > spigot(play, lap).eccentricity_m());
    }

    #[test]
    fn jacks(force in 0.1..60.0, more in 0.0..20.0, height in 0.7..9.0, extension in 0.05..0.45, further in 0.0..0.2) {
        let leg = item("LEG48");
        let stack = leg.leg().and_then(|leg| leg.stack.clone()).expect("a stack");
        let bears = |extension: f64| stack.part_at(extension, 0.45);
        prop_assert!(bears(extension + further) <= bears(extension));
        prop_assert!(bears(extension) <= 1.0 && bears(extension + further) >= stack.part_at_greatest - 1e-12);
        for basis in BASES {
            let worst = |force| {
                let verdicts = check_stack(&leg, basis, &StrutForces::axial(force), height, 1.5, false);
                [CheckKind::Bearing, CheckKind::Spigot].map(|kind| {
                    verdicts.iter().find(|verdict| verdict.check == kind).map_or(0.0, Verdict::ratio)
                })
            };
            let (before, after) = (worst(force), worst(force + more));
            prop_assert!(after[0] >= before[0] && after[1] >= before[1] - 1e-12, "{before:?} {after:?}");
        }
    }

    #[test]
    fn hollow_walls(t in 2.0..12.0, thicker in 0.0..4.0, b in 20.0..200.0, longer in 0.0..100.0, n in 0.0..0.9, more in 0.0..0.1) {
        prop_assert!(side_wall_kn(150.0, t + thicker, 355.0, b) >= side_wall_kn(150.0, t, 355.0, b));
        prop_assert!(side_wall_kn(150.0, t, 355.0, b + longer) >= side_wall_kn(150.0, t, 355.0, b));
        prop_assert!(side_wall_kn(200.0, t, 355.0, b) <= side_wall_kn(150.0, t, 355.0, b));
        prop_assert!(tube_wall_kn(48.3, t + thicker, 235.0, b, n) >= tube_wall_kn(48.3, t, 235.0, b, n));
        prop_assert!(tube_wall_kn(48.3, t, 235.0, b + longer, n) >= tube_wall_kn(48.3, t, 235.0, b, n));
        prop_assert!(tube_wall_kn(48.3, t, 235.0, b, n + more) <= tube_wall_kn(48.3, t, 235.0, b, n));
    }

    #[test]
    fn beam_columns(n in 1.0..200.0, my in 0.0..40.0, mz in 0.0..8.0, more in 0.0..5.0, length in 0.5..5.0) {
        let beam = item("UB203x133x25");
        let member = BeamColumn {
            compression_kn: n, moment_knm: my, minor_moment_knm: mz, major_m: length, minor_m: length / 2.0,
        };
        let worst = |member: BeamColumn| {
            let verdicts = check_beam_column(&beam, Basis::LimitStateB1, &member);
            verdicts.iter().map(Verdict::ratio).fold(0.0, f64::max)
        };
        let base = worst(member);
        prop_assert!(worst(BeamColumn { compression_kn: n + more, ..member }) >= base, "compression_kn");
        prop_assert!(worst(BeamColumn { moment_knm: my + more, ..member }) >= base, "moment_knm");
        prop_assert!(worst(BeamColumn { minor_moment_knm: mz + more, ..member }) >= base, "minor_moment_knm");
        prop_assert!(worst(BeamColumn { major_m: length + more, ..member }) >= base - 1e-9, "major_m");
        let general = |ultimate, critical| {
            let method = GeneralMethod { ultimate, critical, flexural: Some(0.34), lateral: Some(0.49) };
            method.check(Basis::LimitStateB1).ratio()
        };
        prop_assert!(general(1.0 + n, 2.0 + more) <= general(1.0 + n, 2.0));
        prop_assert!(general(1.0 + n + more, 2.0) <= general(1.0 + n, 2.0) + 1e-12);
    }

    #[test]
    fn histories(early in 1.0..60.0, t in 1.0..35.0, warmer in 0.0..10.0, last in 1.0..35.0, needed in 1.0..30.0) {
        let history = |t| Temperature::History { hours_celsius: vec![[early, t], [24.0, last]] };
        let wait = |needed, t| hours_until_in(needed, 38.0, Cement::Normal, &history(t)).expect("reachable");
        prop_assert!(wait(needed, t + warmer) <= wait(needed, t) * (1.0 + 1e-12));
        prop_assert!(wait(needed + 1.0, t) >= wait(needed, t));
        let hours = wait(needed, t);
        let reached = strength_reached_mpa(38.0, Cement::Normal, &history_to(&history(t), hours));
        prop_assert!((reached / needed - 1.0).abs() < 1e-6, "{reached} for {needed}");
        let fck = |hours| {
            let hardening = Hardening { class_mpa: 30.0, cement: Cement::Normal, temperature: history(t) };
            characteristic_at(&hardening, hours)
        };
        prop_assert!(fck(hours + 24.0) >= fck(hours));
    }

    #[test]
    fn balance(holds in 1.0..100.0, tips in 0.0..50.0, more in 0.0..20.0) {
        for basis in [Basis::WorkingLoad, Basis::LimitStateB1, Basis::LimitStateB2] {
            let base = Standing { holding: holds, tipping_permanent: tips, tipping_variable: tips, held: 0.0 };
            let ratio = |standing: Standing| check_overturning(basis, &standing).ratio();
            prop_assert!(ratio(Standing { holding: holds + more, ..base }) <= ratio(base) + 1e-12, "holding");
            prop_assert!(ratio(Standing { held: more, ..base }) <= ratio(base) + 1e-12, "held");
            prop_assert!(ratio(Standing { tipping_variable: tips + more, ..base }) >= ratio(base) - 1e-12, "tipping_variable");
            let enough = Standing { held: base.hold_down(basis), ..base };
            prop_assert!(ratio(enough) <= 1.0 + 1e-9);
        }
    }
}
