//! Time of the analysis of frames: factorising, solving, and the extremes of every member.

mod bent;
#[allow(dead_code)]
#[path = "../src/analysis/skyline.rs"]
mod skyline;
mod stiffness;

use bent::Bent;
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use falsewright_core::analysis::{Axis, DistributedLoad, Frame, Imperfections, LoadCase, Member, Support};
use std::hint::black_box;
use stiffness::Stiffness;

const POUR_FRONTS: usize = 200;

fn solve(frame: &Frame, loads: &LoadCase) -> f64 {
    let solution = frame.factorise().expect("stands").solve(loads).expect("solves");
    solution.all_extremes().iter().map(|extremes| extremes.moment_max.0).fold(0.0, f64::max)
}

fn seven_spans() -> (Frame, LoadCase) {
    let (mut frame, mut loads) = (Frame::default(), LoadCase::default());
    let mut x = 0.0;
    frame.add_node(x, 0.0);
    for (member, b) in [1.5, 2.1, 1.8, 2.6, 1.2, 2.0, 1.7].into_iter().enumerate() {
        x += b;
        frame.add_node(x, 0.0);
        frame.add_member(Member::beam(member, member + 1, 11e6 * 9.22e-5, 11e6 * 0.0256));
        loads.distributed.push(DistributedLoad { member, axis: Axis::Y, w1: -21.5, w2: -21.5, a: 0.0, b });
    }
    frame.supports = (0..8).map(|node| Support { node, ux: node == 0, uy: true, rz: false }).collect();
    (frame, loads)
}

fn linear(criterion: &mut Criterion) {
    bent::warm_heap();
    let (frame, loads) = seven_spans();
    criterion.bench_function("beam of 7 spans", |bencher| bencher.iter(|| solve(black_box(&frame), &loads)));
    let mut group = criterion.benchmark_group("bent, legs");
    for legs in [10, 50, 200, 1000, 5000] {
        let bent = Bent::new(legs);
        group.throughput(Throughput::Elements(legs as u64));
        group.bench_function(BenchmarkId::from_parameter(legs), |bencher| {
            bencher.iter(|| solve(black_box(&bent.frame), &bent.loads));
        });
    }
}

fn fifty_legs(criterion: &mut Criterion) {
    let mut bent = Bent::new(50);
    // Slender bracing tubes would buckle first as beams; as bars they are checked on their own.
    for member in bent.frame.members.iter_mut().filter(|member| member.ei < 10.0) {
        *member = Member::bar(member.i, member.j, member.ea);
    }
    let end = bent.primary.last().map_or(0.0, |(_, start, length)| start + length);
    let fronts: Vec<LoadCase> =
        (1..=POUR_FRONTS).map(|front| bent.front(0.0, end * front as f64 / POUR_FRONTS as f64)).collect();
    criterion.bench_function("200 pour fronts on 50 legs", |bencher| {
        bencher.iter(|| {
            let factorised = black_box(&bent.frame).factorise().expect("stands");
            let extremes = |front| factorised.solve(front).expect("solves").all_extremes();
            fronts.iter().map(extremes).map(|extremes| extremes.len()).sum::<usize>()
        });
    });
    let imperfections = Imperfections { sway: Imperfections::sway_angle(0.005, 4.2, 50), bows: Vec::new() };
    criterion.bench_function("second order of 50 legs", |bencher| {
        bencher.iter(|| black_box(&bent.frame).solve_imperfect(&bent.loads, &imperfections).expect("settles"));
    });
    criterion.bench_function("lowest buckling factor of 50 legs", |bencher| {
        bencher.iter(|| black_box(&bent.frame).lowest_buckling_factor(&bent.loads).expect("stands").factor);
    });
}

/// The matrix of the bent factorised and solved by the skyline solver and by a general sparse library, which first finds
/// an order of its own, or has found it before.
fn sparse(criterion: &mut Criterion) {
    bent::warm_heap();
    for legs in [50, 200, 1000] {
        let stiffness = Stiffness::new(&Bent::new(legs).frame);
        let (skyline, matrix) = (stiffness.skyline(), stiffness.sparse());
        let symbolic = stiffness::order(&matrix);
        stiffness.check(&skyline, &matrix);
        let mut group = criterion.benchmark_group(format!("matrix of {legs} legs"));
        group.bench_function("skyline", |bencher| bencher.iter(|| stiffness.solve_skyline(black_box(&skyline))));
        group.bench_function("faer", |bencher| {
            bencher.iter(|| stiffness.solve_sparse(stiffness::order(black_box(&matrix)), &matrix));
        });
        group.bench_function("faer, order known", |bencher| {
            bencher.iter(|| stiffness.solve_sparse(symbolic.clone(), black_box(&matrix)));
        });
    }
}

criterion_group!(benches, linear, sparse, fifty_legs);
criterion_main!(benches);
