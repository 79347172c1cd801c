//! Time to work out the demo scheme anew, as at every pointer move.

use criterion::{Criterion, criterion_group, criterion_main};
use falsewright_core::catalogue::Catalogue;
use falsewright_core::{design, scheme};
use std::hint::black_box;

fn demo(criterion: &mut Criterion) {
    let scheme = scheme::heron_lane().expect("the demo reads");
    let catalogue = Catalogue::generic();
    criterion.bench_function("design of the demo", |bencher| {
        bencher.iter(|| design(black_box(&scheme), black_box(&catalogue)).expect("the demo computes"));
    });
}

criterion_group!(benches, demo);
criterion_main!(benches);
