use super::section::STEEL_MODULUS_MPA;
use super::timber_class::{TIMBER_KG_M3, TimberClass};
use super::tube::STEEL_KG_M3;
use super::{Beam, Board, Brace, Item, Kind, Leg, Plate, Steel, Tie, Timber, TimberBeam};

/// Mean modulus of the flanges of timber formwork beams, as C24 of EN 338.
const TIMBER_BEAM_MODULUS_KPA: f64 = 11.0e6;

impl Item {
    /// What bending analysis needs of it, if it is a beam of known material. Stiffness is the mean short-term value.
    pub fn beam(&self) -> Option<Beam> {
        match &self.kind {
            Kind::Timber(timber) => timber_stiffness(timber),
            Kind::TimberBeam(beam) => Some(timber_beam_stiffness(beam)),
            Kind::RatedBeam(beam) => Some(Beam {
                ei_knm2: beam.stiffness_knm2,
                ea_kn: beam.axial_kn,
                depth_m: beam.depth_m,
                breadth_m: beam.breadth_m,
                mass_kg_m: beam.mass_kg_m,
            }),
            Kind::Steel(steel) => Some(steel_stiffness(steel)),
            _ => None,
        }
    }

    /// It as a board.
    pub fn board(&self) -> Option<&Board> {
        match &self.kind {
            Kind::Board(board) => Some(board),
            _ => None,
        }
    }

    /// It as a rolled steel beam.
    pub fn steel(&self) -> Option<&Steel> {
        match &self.kind {
            Kind::Steel(steel) => Some(steel),
            _ => None,
        }
    }

    /// It as a tie.
    pub fn tie(&self) -> Option<&Tie> {
        match &self.kind {
            Kind::Tie(tie) => Some(tie),
            _ => None,
        }
    }

    /// It as a leg or prop.
    pub fn leg(&self) -> Option<&Leg> {
        match &self.kind {
            Kind::Leg(leg) => Some(leg),
            _ => None,
        }
    }

    /// It as a diagonal.
    pub fn brace(&self) -> Option<&Brace> {
        match &self.kind {
            Kind::Brace(brace) => Some(brace),
            _ => None,
        }
    }

    /// It as a base or sole plate.
    pub fn plate(&self) -> Option<&Plate> {
        match &self.kind {
            Kind::Plate(plate) => Some(plate),
            _ => None,
        }
    }
}

fn timber_stiffness(timber: &Timber) -> Option<Beam> {
    let modulus_kpa = TimberClass::named(&timber.class)?.modulus_mpa * 1e3;
    let Timber { breadth_m, depth_m, .. } = *timber;
    let area = breadth_m * depth_m;
    Some(Beam {
        ei_knm2: modulus_kpa * area * depth_m * depth_m / 12.0,
        ea_kn: modulus_kpa * area,
        depth_m,
        breadth_m,
        mass_kg_m: TIMBER_KG_M3 * area,
    })
}

/// Axial stiffness is that of its two flanges, each taken as a fifth of the depth; common practice.
fn timber_beam_stiffness(beam: &TimberBeam) -> Beam {
    let flange_m = beam.depth_m / 5.0;
    Beam {
        ei_knm2: beam.stiffness_knm2,
        ea_kn: TIMBER_BEAM_MODULUS_KPA * 2.0 * beam.breadth_m * flange_m,
        depth_m: beam.depth_m,
        breadth_m: beam.breadth_m,
        mass_kg_m: beam.mass_kg_m,
    }
}

fn steel_stiffness(steel: &Steel) -> Beam {
    let properties = steel.section.properties();
    let count = steel.count();
    let modulus_kpa = STEEL_MODULUS_MPA * 1e3;
    Beam {
        ei_knm2: count * modulus_kpa * properties.major_inertia_mm4 * 1e-12,
        ea_kn: count * modulus_kpa * properties.area_mm2 * 1e-6,
        depth_m: steel.section.dimensions().h * 1e-3,
        breadth_m: steel.breadth_m,
        mass_kg_m: count * STEEL_KG_M3 * properties.area_mm2 * 1e-6,
    }
}
