use super::{
    Basis, Bays, Cell, Concrete, Corner, Cut, Delivery, Ground, Id, Limits, Loads, PressureMethod, SCHEMA, Scheme,
    Section,
};

/// Thicknesses of the concrete round a cell, and its haunches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Walls {
    /// Outer walls.
    pub wall_m: f64,
    /// Roof slab.
    pub roof_m: f64,
    /// Base slab.
    pub base_m: f64,
    /// Legs of the haunches under the roof, equal; 0 for none.
    pub haunch_m: f64,
}

/// Hands out ids in order.
struct Ids(u32);

impl Ids {
    fn next(&mut self) -> Id {
        self.0 += 1;
        Id(self.0)
    }

    /// A ring of corners; a positive third number is the leg of the corner's haunch.
    fn ring(&mut self, points: &[(f64, f64, f64)]) -> Vec<Corner> {
        let corner = |&(x_m, z_m, leg): &(f64, f64, f64)| Corner {
            id: self.next(),
            x_m,
            z_m,
            cut: (leg > 0.0).then_some(Cut { before_m: leg, after_m: leg }),
        };
        points.iter().map(corner).collect()
    }

    /// A cell with haunches at its upper corners.
    fn cell(&mut self, left: f64, right: f64, floor: f64, soffit: f64, haunch: f64) -> Cell {
        let id = self.next();
        let corners = [(left, floor, 0.0), (right, floor, 0.0), (right, soffit, haunch), (left, soffit, haunch)];
        Cell { id, corners: self.ring(&corners) }
    }
}

fn rectangle(width: f64, height: f64) -> [(f64, f64, f64); 4] {
    [(0.0, 0.0, 0.0), (width, 0.0, 0.0), (width, height, 0.0), (0.0, height, 0.0)]
}

impl Section {
    /// A box with one cell of this clear size, its outer bottom left corner at the origin.
    pub fn box_cell(inner_width_m: f64, inner_height_m: f64, walls: Walls) -> Self {
        let Walls { wall_m, roof_m, base_m, haunch_m } = walls;
        let mut ids = Ids(0);
        let soffit = base_m + inner_height_m;
        Self {
            outline: ids.ring(&rectangle(inner_width_m + 2.0 * wall_m, soffit + roof_m)),
            cells: vec![ids.cell(wall_m, wall_m + inner_width_m, base_m, soffit, haunch_m)],
            joints: Vec::new(),
        }
    }

    /// A box with two cells of this clear size and a middle wall of `middle_m`.
    pub fn twin_box(inner_width_m: f64, inner_height_m: f64, walls: Walls, middle_m: f64) -> Self {
        let Walls { wall_m, roof_m, base_m, haunch_m } = walls;
        let mut ids = Ids(0);
        let soffit = base_m + inner_height_m;
        let second = wall_m + inner_width_m + middle_m;
        Self {
            outline: ids.ring(&rectangle(2.0 * (inner_width_m + wall_m) + middle_m, soffit + roof_m)),
            cells: vec![
                ids.cell(wall_m, wall_m + inner_width_m, base_m, soffit, haunch_m),
                ids.cell(second, second + inner_width_m, base_m, soffit, haunch_m),
            ],
            joints: Vec::new(),
        }
    }

    /// A trough open at the top, with haunches of leg `haunch_m` at its floor.
    pub fn u_trough(inner_width_m: f64, inner_height_m: f64, wall_m: f64, base_m: f64, haunch_m: f64) -> Self {
        let (width, top) = (inner_width_m + 2.0 * wall_m, base_m + inner_height_m);
        let (left, right) = (wall_m, wall_m + inner_width_m);
        let corners = [
            (0.0, 0.0, 0.0),
            (width, 0.0, 0.0),
            (width, top, 0.0),
            (right, top, 0.0),
            (right, base_m, haunch_m),
            (left, base_m, haunch_m),
            (left, top, 0.0),
            (0.0, top, 0.0),
        ];
        Self { outline: Ids(0).ring(&corners), cells: Vec::new(), joints: Vec::new() }
    }

    /// Two walls and a roof open at the bottom, with haunches of leg `haunch_m` under the roof.
    pub fn portal(inner_width_m: f64, inner_height_m: f64, wall_m: f64, roof_m: f64, haunch_m: f64) -> Self {
        let (width, top) = (inner_width_m + 2.0 * wall_m, inner_height_m + roof_m);
        let (left, right) = (wall_m, wall_m + inner_width_m);
        let corners = [
            (0.0, 0.0, 0.0),
            (left, 0.0, 0.0),
            (left, inner_height_m, haunch_m),
            (right, inner_height_m, haunch_m),
            (right, 0.0, 0.0),
            (width, 0.0, 0.0),
            (width, top, 0.0),
            (0.0, top, 0.0),
        ];
        Self { outline: Ids(0).ring(&corners), cells: Vec::new(), joints: Vec::new() }
    }

    /// Every id in the section.
    pub(super) fn ids(&self) -> impl Iterator<Item = Id> {
        let corners = |corners: &'_ [Corner]| corners.iter().map(|corner| corner.id).collect::<Vec<_>>();
        let cells = self.cells.iter().flat_map(move |cell| std::iter::once(cell.id).chain(corners(&cell.corners)));
        self.outline.iter().map(|corner| corner.id).chain(cells).chain(self.joints.iter().map(|joint| joint.id))
    }
}

impl Scheme {
    /// A blank sheet: no section yet.
    pub fn empty() -> Self {
        Self::blank(Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() })
    }

    /// Whether no section is drawn yet.
    pub fn is_blank(&self) -> bool {
        self.section.outline.is_empty() && self.section.cells.is_empty()
    }

    /// This section with nothing placed on it, and settings that suit most jobs: reinforced concrete at 10 °C,
    /// CIRIA Report 108 for a wall of plain Portland cement without admixtures, and the working-load basis.
    pub fn blank(section: Section) -> Self {
        Self {
            schema: SCHEMA,
            name: String::new(),
            revision: String::new(),
            option: String::new(),
            section,
            bays: Bays { length_m: 10.0, count: 6 },
            concrete: Concrete {
                unit_weight_kn_m3: 25.0,
                temperature_c: 10.0,
                method: PressureMethod::CiriaR108 { c1: 1.0, c2: 0.45 },
                delivery: Delivery::Volume { rate_m3_h: 20.0 },
            },
            basis: Basis::WorkingLoad,
            loads: Loads {
                formwork_kpa: 0.5,
                operations_kpa: 1.5,
                horizontal_fraction: 0.025,
                leg_eccentricity_m: 0.025,
                wind: None,
                plant_kn: None,
                temperature_range_k: None,
            },
            limits: Limits { span_over_deflection: 270.0, access_tolerance_m: 0.05 },
            ground: Ground { level_m: 0.0, allowable_kpa: 100.0 },
            shutters: Vec::new(),
            ties: Vec::new(),
            falsework: Vec::new(),
            openings: Vec::new(),
            striking: None,
            moving: None,
            programme: None,
            stock: None,
            repeats: Vec::new(),
            items: Vec::new(),
        }
    }

    /// Every id in use, once for each element.
    pub(super) fn ids(&self) -> impl Iterator<Item = Id> {
        let falsework = self
            .falsework
            .iter()
            .flat_map(|falsework| std::iter::once(falsework.id).chain(falsework.leg_lines.iter().map(|line| line.id)));
        self.section
            .ids()
            .chain(self.shutters.iter().map(|shutter| shutter.id))
            .chain(self.ties.iter().map(|row| row.id))
            .chain(falsework)
            .chain(self.openings.iter().map(|opening| opening.id))
    }

    /// An id above all that the scheme uses or refers to.
    pub fn fresh_id(&self) -> Id {
        let faces = self.shutters.iter().map(|shutter| shutter.face);
        let faces = faces.chain(self.falsework.iter().map(|falsework| falsework.soffit));
        let referred = faces.flat_map(|face| [face.corner, face.pour]);
        let highest = self.ids().chain(referred).map(|id| id.0).max().unwrap_or(0);
        Id(highest.saturating_add(1))
    }
}
