//! What the native benchmark `matrix of … legs` runs, for an engine of WebAssembly to time: `time.mjs` does so.

#[path = "../../../core/benches/bent/mod.rs"]
mod bent;
#[allow(dead_code)]
#[path = "../../../core/src/analysis/skyline.rs"]
mod skyline;
#[path = "../../../core/benches/stiffness/mod.rs"]
mod stiffness;

use bent::Bent;
use faer::sparse::SparseColMat;
use faer::sparse::linalg::solvers::SymbolicLlt;
use skyline::Skyline;
use std::cell::RefCell;
use stiffness::Stiffness;

/// One bent's matrix, as each solver keeps it.
struct Prepared {
    stiffness: Stiffness,
    skyline: Skyline,
    matrix: SparseColMat<usize, f64>,
    order: SymbolicLlt<usize>,
}

thread_local! {
    static PREPARED: RefCell<Option<Prepared>> = const { RefCell::new(None) };
}

/// Prepares the bent of this many legs, and sees that both solvers agree on it.
#[unsafe(no_mangle)]
pub extern "C" fn prepare(legs: usize) {
    bent::warm_heap();
    let stiffness = Stiffness::new(&Bent::new(legs).frame);
    let (skyline, matrix) = (stiffness.skyline(), stiffness.sparse());
    let order = stiffness::order(&matrix);
    stiffness.check(&skyline, &matrix);
    PREPARED.with_borrow_mut(|prepared| *prepared = Some(Prepared { stiffness, skyline, matrix, order }));
}

fn first_of(solve: impl Fn(&Prepared) -> f64) -> f64 {
    PREPARED.with_borrow(|prepared| prepared.as_ref().map_or(f64::NAN, solve))
}

/// Factorises and solves by the skyline solver, and gives the first movement.
#[unsafe(no_mangle)]
pub extern "C" fn by_skyline() -> f64 {
    first_of(|it| it.stiffness.solve_skyline(&it.skyline)[0])
}

/// The same by the sparse library, which finds an order first.
#[unsafe(no_mangle)]
pub extern "C" fn by_sparse() -> f64 {
    first_of(|it| it.stiffness.solve_sparse(stiffness::order(&it.matrix), &it.matrix)[(0, 0)])
}

/// The same with the order known.
#[unsafe(no_mangle)]
pub extern "C" fn by_sparse_in_order() -> f64 {
    first_of(|it| it.stiffness.solve_sparse(it.order.clone(), &it.matrix)[(0, 0)])
}
