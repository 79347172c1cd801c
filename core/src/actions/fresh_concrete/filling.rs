//! A pour as a history: where its surface is, and how it presses, at every time.

use super::rise;
use crate::scheme::Delivery;

/// A pour that fills from its lowest level up.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    delivery: Delivery,
    /// `(level m, plan area m², time h)` from the bottom up. Areas change evenly between levels; where one jumps, its
    /// level stands twice.
    steps: Vec<(f64, f64, f64)>,
}

impl Filling {
    /// Concrete delivered at this rate over plan areas `(level m, area m²)`, from the bottom up.
    pub fn new(delivery: Delivery, areas: &[(f64, f64)]) -> Self {
        let mut steps: Vec<(f64, f64, f64)> = Vec::new();
        for &(z, area) in areas {
            let time = steps.last().map_or(0.0, |&(below, area_below, time)| {
                let rate = rise(&delivery, (area + area_below) / 2.0);
                time + (z - below) / rate
            });
            steps.push((z, area, time));
        }
        Self { delivery, steps }
    }

    /// `(level m, plan area m², time h)` from the bottom up.
    pub fn steps(&self) -> &[(f64, f64, f64)] {
        &self.steps
    }

    /// When the pour is full.
    pub fn duration_h(&self) -> f64 {
        self.steps.last().map_or(0.0, |step| step.2)
    }

    /// Rate of rise at a level; of two where the area jumps, the greater.
    pub fn rise_at_m_h(&self, level_m: f64) -> f64 {
        let inside = |pair: &&[(f64, f64, f64)]| pair[0].0 <= level_m && level_m <= pair[1].0;
        let area = |pair: &[(f64, f64, f64)]| {
            let height = pair[1].0 - pair[0].0;
            if height > 0.0 {
                pair[0].1 + (pair[1].1 - pair[0].1) * (level_m - pair[0].0) / height
            } else {
                pair[0].1.min(pair[1].1)
            }
        };
        self.steps.windows(2).filter(inside).map(|pair| rise(&self.delivery, area(pair))).fold(0.0, f64::max)
    }

    /// Level of the surface at a time, with the volume between steps filled evenly.
    pub fn surface_m(&self, time_h: f64) -> f64 {
        let Some(&(bottom, ..)) = self.steps.first() else { return 0.0 };
        let mut level = bottom;
        for pair in self.steps.windows(2) {
            let ((z0, area0, t0), (z1, area1, t1)) = (pair[0], pair[1]);
            if time_h >= t1 {
                level = z1;
            } else if time_h > t0 {
                let part = (time_h - t0) / (t1 - t0);
                let share = match self.delivery {
                    Delivery::Rise { .. } => part,
                    Delivery::Volume { .. } => filled_height(area0, area1, part),
                };
                return z0 + (z1 - z0) * share;
            }
        }
        level
    }

    /// Pressure at a level and time where it cannot pass `limit_kpa`: `min(γ (surface − z), Pmax)`.
    pub fn pressure_kpa(&self, level_m: f64, time_h: f64, density_kn_m3: f64, limit_kpa: f64) -> f64 {
        (density_kn_m3 * (self.surface_m(time_h) - level_m).max(0.0)).min(limit_kpa)
    }
}

/// Height that a part of the volume of a prismoid fills, by its height: `a0 s + (a1 − a0) s² / 2 = part (a0 + a1) / 2`.
fn filled_height(area0: f64, area1: f64, part: f64) -> f64 {
    let growth = area1 - area0;
    let volume = part * (area0 + area1);
    volume / (area0 + (area0 * area0 + growth * volume).max(0.0).sqrt())
}
