use super::tube::STEEL_KG_M3;
use super::{Hollow, Section, Steel, Tube};
use std::f64::consts::PI;

/// Modulus of elasticity of steel, EN 1993-1-1 3.2.6.
pub const STEEL_MODULUS_MPA: f64 = 210_000.0;

/// Properties of one rolled section, computed from its dimensions with exact root fillets. Major axis `y`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionProperties {
    /// Area.
    pub area_mm2: f64,
    /// Second moment of area about the major axis.
    pub major_inertia_mm4: f64,
    /// Second moment of area about the minor axis.
    pub minor_inertia_mm4: f64,
    /// Elastic modulus, major axis.
    pub elastic_modulus_mm3: f64,
    /// Plastic modulus, major axis.
    pub plastic_modulus_mm3: f64,
    /// Modulus about the minor axis that bending there counts with: plastic, but elastic of channels.
    pub minor_modulus_mm3: f64,
    /// Torsion constant, by the fitted expressions of the Steel Construction Institute.
    pub torsion_mm4: f64,
    /// Warping constant about the shear centre.
    pub warping_mm6: f64,
    /// Shear area along the web, EN 1993-1-1 6.2.6(3) with η = 1.0.
    pub shear_area_mm2: f64,
}

impl SectionProperties {
    /// Weight by length.
    pub fn mass_kg_m(&self) -> f64 {
        STEEL_KG_M3 * self.area_mm2 * 1e-6
    }
}

/// A root fillet: a square of side `r` less a quarter circle.
struct Fillet {
    area: f64,
    /// Centroid from the two plates that it joins.
    offset: f64,
    /// About its own centroid.
    inertia: f64,
}

impl Fillet {
    fn new(r: f64) -> Self {
        let area = (1.0 - PI / 4.0) * r * r;
        let offset = r * (10.0 - 3.0 * PI) / (12.0 - 3.0 * PI);
        let inertia = r * r * r * r * (1.0 - 5.0 * PI / 16.0) - area * offset * offset;
        Self { area, offset, inertia }
    }
}

/// Dimensions shared by the shapes, mm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Dimensions {
    pub h: f64,
    pub b: f64,
    pub tw: f64,
    pub tf: f64,
    pub r: f64,
}

impl Dimensions {
    /// Clear depth of the web between flanges.
    pub fn web_depth(&self) -> f64 {
        self.h - 2.0 * self.tf
    }
}

impl Section {
    pub(crate) fn dimensions(&self) -> Dimensions {
        match *self {
            Section::I { h_mm: h, b_mm: b, tw_mm: tw, tf_mm: tf, r_mm: r }
            | Section::Channel { h_mm: h, b_mm: b, tw_mm: tw, tf_mm: tf, r_mm: r } => Dimensions { h, b, tw, tf, r },
            Section::Hollow { h_mm: h, b_mm: b, t_mm: t } => Dimensions { h, b, tw: t, tf: t, r: t },
            Section::Round { d_mm: d, t_mm: t } => Dimensions { h: d, b: d, tw: t, tf: t, r: 0.0 },
        }
    }

    /// Properties of one section.
    pub fn properties(&self) -> SectionProperties {
        match self {
            Section::I { .. } => i_properties(self.dimensions()),
            Section::Channel { .. } => channel_properties(self.dimensions()),
            Section::Hollow { h_mm, b_mm, t_mm } => Hollow { h_mm: *h_mm, b_mm: *b_mm, t_mm: *t_mm }.properties(),
            Section::Round { d_mm, t_mm } => round_properties(*d_mm, *t_mm),
        }
    }
}

fn cube(x: f64) -> f64 {
    x * x * x
}

/// Second moment and plastic modulus about the major axis with this many fillets.
fn major(d: Dimensions, fillets: f64) -> (f64, f64) {
    let Dimensions { h, b, tw, tf, r } = d;
    let (hw, fillet) = (d.web_depth(), Fillet::new(r));
    let arm = hw / 2.0 - fillet.offset;
    let inertia = (b * cube(h) - (b - tw) * cube(hw)) / 12.0 + fillets * (fillet.inertia + fillet.area * arm * arm);
    let plastic = b * tf * (h - tf) + tw * hw * hw / 4.0 + fillets * fillet.area * arm;
    (inertia, plastic)
}

fn i_properties(d: Dimensions) -> SectionProperties {
    let Dimensions { h, b, tw, tf, r } = d;
    let (hw, fillet) = (d.web_depth(), Fillet::new(r));
    let area = 2.0 * b * tf + hw * tw + 4.0 * fillet.area;
    let (major_inertia, plastic) = major(d, 4.0);
    let arm = tw / 2.0 + fillet.offset;
    let minor_inertia = (2.0 * tf * cube(b) + hw * cube(tw)) / 12.0 + 4.0 * (fillet.inertia + fillet.area * arm * arm);
    let (web, root) = (tw / tf, r / tf);
    let alpha = -0.042 + 0.2204 * web + 0.1355 * root - 0.0865 * root * web - 0.0725 * web * web;
    let circle = ((tf + r) * (tf + r) + (r + 0.25 * tw) * tw) / (2.0 * r + tf);
    SectionProperties {
        area_mm2: area,
        major_inertia_mm4: major_inertia,
        minor_inertia_mm4: minor_inertia,
        elastic_modulus_mm3: major_inertia / (h / 2.0),
        plastic_modulus_mm3: plastic,
        minor_modulus_mm3: tf * b * b / 2.0 + hw * tw * tw / 4.0 + 4.0 * fillet.area * arm,
        torsion_mm4: torsion(d, alpha, circle),
        warping_mm6: minor_inertia * (h - tf) * (h - tf) / 4.0,
        shear_area_mm2: (area - 2.0 * b * tf + (tw + 2.0 * r) * tf).max(hw * tw),
    }
}

fn channel_properties(d: Dimensions) -> SectionProperties {
    let Dimensions { h, b, tw, tf, r } = d;
    let (hw, fillet) = (d.web_depth(), Fillet::new(r));
    let area = 2.0 * b * tf + hw * tw + 2.0 * fillet.area;
    let (major_inertia, plastic) = major(d, 2.0);
    let place = tw + fillet.offset;
    let centroid = (b * b * tf + hw * tw * tw / 2.0 + 2.0 * fillet.area * place) / area;
    let about_back = (2.0 * tf * cube(b) + hw * cube(tw)) / 3.0 + 2.0 * (fillet.inertia + fillet.area * place * place);
    let (web, root) = (tw / tf, r / tf);
    let alpha = -0.0908 + 0.2621 * web + 0.1231 * root - 0.0752 * web * root - 0.0945 * web * web;
    let circle = 2.0 * (3.0 * r + tw + tf - (2.0 * (2.0 * r + tw) * (2.0 * r + tf)).sqrt());
    let minor_inertia = about_back - area * centroid * centroid;
    let (depth, offset) = (h - tf, centroid - tw / 2.0);
    let square = depth * depth;
    let warping =
        square / 4.0 * (minor_inertia - area * offset * offset * (square * area / (4.0 * major_inertia) - 1.0));
    SectionProperties {
        area_mm2: area,
        major_inertia_mm4: major_inertia,
        minor_inertia_mm4: minor_inertia,
        elastic_modulus_mm3: major_inertia / (h / 2.0),
        plastic_modulus_mm3: plastic,
        minor_modulus_mm3: minor_inertia / (b - centroid),
        torsion_mm4: torsion(d, alpha, circle),
        warping_mm6: warping,
        shear_area_mm2: area - 2.0 * b * tf + (tw + r) * tf,
    }
}

/// Shear area `2 A / π`, EN 1993-1-1 6.2.6(3); nothing warps.
fn round_properties(d: f64, t: f64) -> SectionProperties {
    let tube = Tube { diameter_m: d * 1e-3, wall_m: t * 1e-3 };
    let (area, inertia) = (tube.area_m2() * 1e6, tube.inertia_m4() * 1e12);
    SectionProperties {
        area_mm2: area,
        major_inertia_mm4: inertia,
        minor_inertia_mm4: inertia,
        elastic_modulus_mm3: tube.elastic_modulus_m3() * 1e9,
        plastic_modulus_mm3: tube.plastic_modulus_m3() * 1e9,
        minor_modulus_mm3: tube.plastic_modulus_m3() * 1e9,
        torsion_mm4: 2.0 * inertia,
        warping_mm6: 0.0,
        shear_area_mm2: 2.0 * area / PI,
    }
}

/// Plates as thin rectangles, with what their junctions add (`alpha`, inscribed circle) and free ends take away.
fn torsion(d: Dimensions, alpha: f64, circle: f64) -> f64 {
    let square = circle * circle;
    let end = d.tf * d.tf;
    2.0 / 3.0 * d.b * cube(d.tf) + d.web_depth() * cube(d.tw) / 3.0 + 2.0 * alpha * square * square - 0.420 * end * end
}

impl Steel {
    /// Yield strength by grade and greatest thickness, EN 10025-2; none for a grade or thickness not known here.
    pub fn yield_mpa(&self) -> Option<f64> {
        let Dimensions { tw, tf, .. } = self.section.dimensions();
        let thickness = tw.max(tf);
        let (thin, thick) = match self.grade.as_str() {
            "S235" => (235.0, 225.0),
            "S275" => (275.0, 265.0),
            "S355" => (355.0, 345.0),
            _ => return None,
        };
        match thickness {
            t if t <= 16.0 => Some(thin),
            t if t <= 40.0 => Some(thick),
            _ => None,
        }
    }

    /// Number of sections side by side.
    pub fn count(&self) -> f64 {
        f64::from(self.side_by_side)
    }
}
