use super::{SectionProperties, Tube};
use std::f64::consts::PI;

/// Hot-finished rectangular hollow section, EN 10210-2: radii 1.5 t outside and 1.0 t inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hollow {
    /// Depth.
    pub h_mm: f64,
    /// Breadth.
    pub b_mm: f64,
    /// Wall thickness.
    pub t_mm: f64,
}

/// A rectangle with rounded corners.
struct Rounded {
    area: f64,
    inertia: f64,
    /// Of half of it, about the middle.
    half_moment: f64,
}

impl Rounded {
    fn new(h: f64, b: f64, r: f64) -> Self {
        let corner = (1.0 - PI / 4.0) * r * r;
        let offset = r * (10.0 - 3.0 * PI) / (12.0 - 3.0 * PI);
        let own = r * r * r * r * (1.0 / 3.0 - PI / 16.0 - 1.0 / (9.0 * (4.0 - PI)));
        let arm = h / 2.0 - offset;
        Self {
            area: b * h - 4.0 * corner,
            inertia: b * h * h * h / 12.0 - 4.0 * (own + corner * arm * arm),
            half_moment: b * h * h / 8.0 - 2.0 * corner * arm,
        }
    }
}

impl Hollow {
    /// Properties about both axes; nothing warps.
    pub fn properties(&self) -> SectionProperties {
        let Self { h_mm: h, b_mm: b, t_mm: t } = *self;
        let (outer, inner) = (1.5 * t, t);
        let about = |h: f64, b: f64| {
            let (out, hole) = (Rounded::new(h, b, outer), Rounded::new(h - 2.0 * t, b - 2.0 * t, inner));
            (out.area - hole.area, out.inertia - hole.inertia, 2.0 * (out.half_moment - hole.half_moment))
        };
        let (area, major_inertia, plastic) = about(h, b);
        let (_, minor_inertia, minor_plastic) = about(b, h);
        SectionProperties {
            area_mm2: area,
            major_inertia_mm4: major_inertia,
            minor_inertia_mm4: minor_inertia,
            elastic_modulus_mm3: major_inertia / (h / 2.0),
            plastic_modulus_mm3: plastic,
            minor_modulus_mm3: minor_plastic,
            torsion_mm4: self.torsion_mm4(),
            warping_mm6: 0.0,
            shear_area_mm2: area * h / (b + h),
        }
    }

    /// `t³ p / 3 + 4 Am² t / p` on the middle line, EN 10210-2 Annex.
    fn torsion_mm4(&self) -> f64 {
        let Self { h_mm: h, b_mm: b, t_mm: t } = *self;
        let radius = 1.25 * t;
        let round = 2.0 * (4.0 - PI) * radius;
        let path = 2.0 * ((b - t) + (h - t)) - round;
        let inside = (b - t) * (h - t) - radius * radius * (4.0 - PI);
        t * t * t * path / 3.0 + 4.0 * inside * inside * t / path
    }
}

/// Hollow sections of EN 10210-2 by depth, breadth and thickness, mm (sizes from memory; properties computed).
const HOLLOWS: [(f64, f64, f64); 10] = [
    (60.0, 60.0, 4.0),
    (80.0, 80.0, 5.0),
    (100.0, 100.0, 5.0),
    (100.0, 100.0, 8.0),
    (120.0, 120.0, 6.3),
    (150.0, 150.0, 6.3),
    (100.0, 60.0, 5.0),
    (120.0, 80.0, 6.3),
    (150.0, 100.0, 6.3),
    (200.0, 100.0, 8.0),
];

/// Round tubes of EN 39, EN 10210-2 and EN 10219-2 by diameter and wall, mm (sizes from memory; properties computed).
const TUBES: [(f64, f64); 8] =
    [(48.3, 3.2), (48.3, 4.0), (60.3, 4.0), (76.1, 4.0), (88.9, 5.0), (114.3, 5.0), (139.7, 6.3), (168.3, 6.3)];

/// The hollow sections of the table.
pub fn standard_hollows() -> impl Iterator<Item = Hollow> {
    HOLLOWS.into_iter().map(|(h_mm, b_mm, t_mm)| Hollow { h_mm, b_mm, t_mm })
}

/// The round tubes of the table.
pub fn standard_tubes() -> impl Iterator<Item = Tube> {
    TUBES.into_iter().map(|(diameter, wall)| Tube { diameter_m: diameter * 1e-3, wall_m: wall * 1e-3 })
}
