//! What new elements are made of, until the user says otherwise. Common practice for walls up to about 5 m.

use crate::model::{Face, FaceKind};
use crate::scheme::{
    Arrangement, Bearing, Direction, FaceRef, Falsework, Id, Lateral, LegLine, Opening, Shutter, Spacing, TieEnd,
    TieRow,
};

const FACING: &str = "PLY21";
const SECONDARY: &str = "TB20";
const PRIMARY: &str = "2PFC150x75";
const KICKER_TIMBER: &str = "T75x150";
const SOFFIT_PRIMARY: &str = "2PFC125";
const TIE: &str = "TIE20";
const PROP: &str = "PROP76";
const LEG: &str = "LEG48";
const BASE: &str = "BASE250";
const BASE_ON_GROUND: &str = "SOLE300x600";
const BRACE: &str = "TUBE48B";
const TRANSFER: &str = "UB305x165x40";
const TRESTLE: &str = "LEG89";

/// Faces lower than this are formed by timber alone, m.
pub(super) const KICKER_M: f64 = 0.8;
/// Leg lines and bents stand at most this far apart, m.
const LEGS_APART_M: f64 = 1.2;
/// From a wall to the first leg line, m.
const WALL_TO_LEG_M: f64 = 0.3;
/// From a wall to the first leg line where a shutter stands between: board, secondary, primary and half of a base, m.
const SHUTTERED_WALL_TO_LEG_M: f64 = 0.5;
/// From the end of a bay to the first bent or primary, m.
const BAY_END_M: f64 = 0.4;
/// Cylinder strength of a slab cast earlier, MPa.
const SLAB_MPA: f64 = 25.0;
/// From the head of an ordinary way to the transfer beams, m.
const WAY_TO_BEAM_M: f64 = 0.15;
/// From the underside of the transfer beams to the soffit: beams, stubs and the soffit form, m.
const BEAM_TO_SOFFIT_M: f64 = 0.95;
/// Height of an ordinary way, m.
const WAY_M: f64 = 3.6;
/// Least height of any way, m.
const LEAST_WAY_M: f64 = 1.0;

/// Guards at each side of a way, m.
const GUARD_M: f64 = 0.25;
/// From a way to the wall beside its trestle: guard, tolerance and a base at each trestle leg, m.
const GUARD_TO_WALL_M: f64 = GUARD_M + 0.05 + 0.25;
/// From the guard and tolerance of a way to the middle of its trestle's leg: half of a base, m.
pub(super) const TRESTLE_FOOT_M: f64 = 0.125;
/// Leg lines stand at least this far beside a trestle: so far that larger bases have room, m.
pub(super) const TRESTLE_TO_LEG_M: f64 = 0.4;
/// Least and greatest distance between the legs of a trestle, m.
const TRESTLE_M: [f64; 2] = [0.3, 0.95];

/// Distance from the foot and head of a shutter to the first and last row, m.
pub(super) const SHUTTER_END_TO_TIE_M: f64 = 0.35;
/// From the head of a kicker to its row, m.
pub(super) const KICKER_TO_TIE_M: f64 = 0.05;
/// Rows that hold a whole shutter stand at most this far apart, m.
pub(super) const TIES_APART_M: f64 = 0.9;
/// A shutter's head stands at most this far above its highest row, m.
pub(super) const HEAD_OVER_TIE_M: f64 = 0.7;

pub(super) fn shutter(id: Id, face: &Face) -> Shutter {
    let on_joint = face.of.pour != FaceRef::LOWEST;
    let height_m = (face.to.z - face.from.z).abs();
    let low = height_m < KICKER_M;
    Shutter {
        id,
        face: face.of,
        arrangement: Arrangement::UprightPrimaries,
        facing: FACING.into(),
        secondary: if low { KICKER_TIMBER } else { SECONDARY }.into(),
        secondaries: Spacing { edge_m: 0.1_f64.min(height_m / 4.0), max_m: 0.25 },
        primary: if low { KICKER_TIMBER } else { PRIMARY }.into(),
        primaries: Spacing { edge_m: BAY_END_M, max_m: 1.0 },
        below_m: if on_joint { 0.1 } else { 0.0 },
        above_m: if face.kind == FaceKind::OuterWall { 0.1 } else { 0.0 },
        foot_held: true,
        hold_down_kn: None,
        hinge: None,
    }
}

/// Where new lines of legs stand under a soffit, between walls that stand or shutters of them.
pub(super) const fn leg_lines(shuttered: bool) -> Spacing {
    Spacing { edge_m: if shuttered { SHUTTERED_WALL_TO_LEG_M } else { WALL_TO_LEG_M }, max_m: LEGS_APART_M }
}

/// Diagonals in the first gap between leg lines and in the last.
pub(super) fn brace_ends(lines: &mut [LegLine]) {
    let count = lines.len();
    lines.iter_mut().enumerate().for_each(|(i, line)| line.braced = i == 0 || i + 2 == count);
}

/// A tie across concrete, a prop otherwise.
pub(super) fn tie_row(id: Id, shutter: Id, to: TieEnd, across_concrete: bool, z_m: f64) -> TieRow {
    let item = if across_concrete { TIE } else { PROP };
    let spacing = Spacing { edge_m: BAY_END_M, max_m: 1.2 };
    TieRow { id, shutter, to, z_m, item: item.into(), spacing, held: None }
}

/// The far end of a prop that meets no shutter.
pub(super) const FIXED: TieEnd = TieEnd::Fixed { length_m: 2.0 };

pub(super) fn falsework(id: Id, face: &Face, extent: [f64; 2], lines: Spacing, on_slab: bool) -> Falsework {
    let places = lines.positions(extent[1] - extent[0]);
    let last = places.len().saturating_sub(2);
    let line = |(i, place): (usize, &f64)| LegLine {
        id: Id(id.0 + 1 + i as u32),
        x_m: extent[0] + place,
        braced: i == 0 || i == last,
    };
    Falsework {
        id,
        soffit: face.of,
        direction: Direction::Across,
        facing: FACING.into(),
        secondary: SECONDARY.into(),
        secondaries: Spacing { edge_m: 0.1, max_m: 0.4 },
        primary: SOFFIT_PRIMARY.into(),
        leg: LEG.into(),
        base: if on_slab { BASE } else { BASE_ON_GROUND }.into(),
        brace: BRACE.into(),
        leg_lines: places.iter().enumerate().map(line).collect(),
        bents: Spacing { edge_m: BAY_END_M, max_m: LEGS_APART_M },
        lift_m: 1.5,
        lateral: Lateral::Braced,
        bearing: if on_slab { Bearing::Slab { strength_mpa: SLAB_MPA } } else { Bearing::Ground },
        slab: None,
    }
}

/// An opening under a soffit this high above the floor, with so much room at either side; none where it is too low.
pub(super) fn opening(
    id: Id,
    falsework: Id,
    [left_m, width_m]: [f64; 2],
    soffit_m: f64,
    beside_m: f64,
) -> Option<Opening> {
    let highest = soffit_m - BEAM_TO_SOFFIT_M - WAY_TO_BEAM_M;
    let height_m = WAY_M.min((highest / 0.05).floor() * 0.05);
    (height_m >= LEAST_WAY_M).then(|| Opening {
        id,
        falsework,
        left_m,
        width_m,
        height_m,
        guard_m: GUARD_M,
        beam_underside_m: height_m + WAY_TO_BEAM_M,
        transfer: TRANSFER.into(),
        transfers: 2,
        restraint_m: None,
        trestle: TRESTLE.into(),
        trestle_m: (((beside_m - GUARD_TO_WALL_M) / 0.05).floor() * 0.05).clamp(TRESTLE_M[0], TRESTLE_M[1]),
        built_width_m: None,
        built_height_m: None,
    })
}
