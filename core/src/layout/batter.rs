//! Battered wall faces that a wall shutter can form.

use crate::model::{Face, FaceKind};

/// Run by rise of the flattest battered face that a wall shutter forms: 1 in 3. Flatter ones want a form of their own.
const FLATTEST: f64 = 1.0 / 3.0;

/// Whether a wall shutter can form a face: upright, or battered so that it faces up a little.
pub fn takes_shutter(face: &Face) -> bool {
    match face.kind {
        FaceKind::OuterWall | FaceKind::InnerWall => true,
        FaceKind::SlopeOver => (face.to.x - face.from.x).abs() <= FLATTEST * (face.to.z - face.from.z).abs(),
        _ => false,
    }
}
