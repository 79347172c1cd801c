//! An independent critical moment of a beam between forks: sine series and the energy of twisting, without `C1` and `C2`.

use falsewright_core::checks::lateral_torsional::Twisting;
use std::f64::consts::PI;

const MODULUS_MPA: f64 = 210_000.0;
const SHEAR_MODULUS_MPA: f64 = MODULUS_MPA / 2.6;
const WAVES: usize = 8;
const STEPS: usize = 200;

/// A beam between two forks that bends by end moments and loads, positive downward.
#[derive(Clone, Debug)]
pub struct Beam {
    /// Its length, m.
    pub length_m: f64,
    /// Moments at its ends, kNm; sagging is positive.
    pub ends_knm: [f64; 2],
    /// Place, m, and size, kN.
    pub loads: Vec<(f64, f64)>,
    /// Loads stand so far above the shear centre, mm.
    pub height_mm: f64,
}

impl Beam {
    /// Moment at a place, kNm.
    pub fn moment_knm(&self, x: f64) -> f64 {
        let Self { length_m: l, ends_knm: [left, right], .. } = *self;
        let by_load = |&(a, p): &(f64, f64)| if x < a { p * (l - a) * x / l } else { p * a * (l - x) / l };
        left + (right - left) * x / l + self.loads.iter().map(by_load).sum::<f64>()
    }

    /// Greatest moment by size, kNm.
    pub fn greatest_knm(&self) -> f64 {
        let places = self.loads.iter().map(|load| load.0).chain([0.0, self.length_m]);
        places.map(|x| self.moment_knm(x).abs()).fold(0.0, f64::max)
    }

    /// Factor on all loads and moments at which the section twists: `K − λ² A − λ B` is no longer positive, with
    /// `A = ∫ M² φm φn / E Iz` and `B = Σ P z φm φn`.
    pub fn critical_factor(&self, section: &Twisting) -> f64 {
        let length = self.length_m * 1e3;
        let wave = |n: usize, x: f64| ((n + 1) as f64 * PI * x / length).sin();
        let mut squared = [[0.0; WAVES]; WAVES];
        for step in 0..STEPS {
            let x = (step as f64 + 0.5) * length / STEPS as f64;
            let moment = self.moment_knm(x * 1e-3) * 1e6;
            let weight = moment * moment * length / STEPS as f64 / (MODULUS_MPA * section.minor_inertia_mm4);
            for (m, row) in squared.iter_mut().enumerate() {
                row.iter_mut().enumerate().for_each(|(n, cell)| *cell += weight * wave(m, x) * wave(n, x));
            }
        }
        let mut raised = [[0.0; WAVES]; WAVES];
        for &(a, p) in &self.loads {
            for (m, row) in raised.iter_mut().enumerate() {
                let work = p * 1e3 * self.height_mm * wave(m, a * 1e3);
                row.iter_mut().enumerate().for_each(|(n, cell)| *cell += work * wave(n, a * 1e3));
            }
        }
        let stiff = |n: usize| {
            let k = (n + 1) as f64 * PI / length;
            let torsion = SHEAR_MODULUS_MPA * section.torsion_mm4 * k * k;
            (torsion + MODULUS_MPA * section.warping_mm6 * k * k * k * k) * length / 2.0
        };
        let stands = |factor: f64| {
            let mut matrix = [[0.0; WAVES]; WAVES];
            for (m, row) in matrix.iter_mut().enumerate() {
                for (n, cell) in row.iter_mut().enumerate() {
                    *cell = -factor * factor * squared[m][n] - factor * raised[m][n];
                }
                row[m] += stiff(m);
            }
            is_positive(matrix)
        };
        let (mut low, mut high) = (0.0, 1.0);
        while stands(high) && high < 1e12 {
            (low, high) = (high, 2.0 * high);
        }
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if stands(middle) { low = middle } else { high = middle }
        }
        low
    }
}

/// Whether every pivot of Gauss's elimination is positive.
fn is_positive(mut matrix: [[f64; WAVES]; WAVES]) -> bool {
    for pivot in 0..WAVES {
        let top = matrix[pivot];
        if top[pivot] <= 0.0 {
            return false;
        }
        for row in matrix.iter_mut().skip(pivot + 1) {
            let factor = row[pivot] / top[pivot];
            row.iter_mut().zip(top).for_each(|(cell, above)| *cell -= factor * above);
        }
    }
    true
}
