//! Elements taken out of a scheme with the faces that they stand on, to be placed again there or in another scheme.

use super::{EditError, falsework, shutters};
use crate::catalogue::Item;
use crate::geometry::Point;
use crate::json;
use crate::layout::concrete::faces;
use crate::layout::takes_shutter;
use crate::model::{Face, FaceKind};
use crate::scheme::{Falsework, Id, LegLine, Opening, Repeat, SCHEMA, Scheme, Shutter, TieEnd, TieRow};
use crate::sorting::sort;
use serde::{Deserialize, Serialize};

/// Ends this near are at the same place, m.
const SAME_M: f64 = 1e-3;

/// No excerpt is longer, bytes.
const LONGEST: usize = 1 << 20;

/// Elements that were copied. Its text is what stands on the clipboard.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Excerpt {
    /// Tells the text from any other.
    falsewright: Tag,
    /// Version of the format of schemes.
    schema: u32,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) shutters: Vec<OnFace<Shutter>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) ties: Vec<Between>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) falsework: Vec<OnFace<Falsework>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) leg_lines: Vec<OnFace<LegLine>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) openings: Vec<OnFace<Opening>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) repeats: Vec<Repeat>,
    /// The user's own items that they are made of.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) items: Vec<Item>,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Tag {
    Elements,
}

/// An element and the face that it stands on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct OnFace<T> {
    pub element: T,
    pub face: Standing,
}

/// A row and the faces at its ends.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Between {
    pub row: TieRow,
    pub near: Standing,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub far: Option<Standing>,
}

/// What a face is and where it lies, so that it can be found in another section.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Standing {
    pub kind: Kind,
    pub from: Point,
    pub to: Point,
    /// Left and right end, of a soffit with the slopes that adjoin it.
    pub extent: [f64; 2],
    /// The pour, counted from the lowest.
    pub pour: usize,
    /// Its place from the left among the faces like it in its pour.
    pub order: usize,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Kind {
    OuterWall,
    InnerWall,
    BatteredWall,
    Soffit,
}

impl Excerpt {
    /// The elements of these ids; what belongs to the section itself is left out.
    ///
    /// # Errors
    /// Refuses if nothing is left.
    pub fn of(scheme: &Scheme, ids: &[Id]) -> Result<Self, EditError> {
        let faces = faces(&scheme.section, scheme.ground.level_m);
        let wanted = |id: Id| ids.contains(&id);
        let on = |of| faces.iter().find(|face| face.of == of).and_then(|face| Standing::of(scheme, &faces, face));
        let shutter = |shutter: &Shutter| Some(OnFace { element: shutter.clone(), face: on(shutter.face)? });
        let standing = |id: Id| on(scheme.shutters.iter().find(|shutter| shutter.id == id)?.face);
        let row = |row: &TieRow| {
            let far = if let TieEnd::Shutter { id } = row.to { Some(standing(id)?) } else { None };
            Some(Between { row: row.clone(), near: standing(row.shutter)?, far })
        };
        let under = |of: &Falsework| on(of.soffit);
        let lone = || scheme.falsework.iter().filter(|falsework| !wanted(falsework.id));
        let lines = lone().flat_map(|of| of.leg_lines.iter().map(move |line| (of, line)));
        let opening = |opening: &Opening| {
            let of = scheme.falsework.iter().find(|falsework| falsework.id == opening.falsework)?;
            Some(OnFace { element: opening.clone(), face: under(of)? })
        };
        let mut excerpt = Self {
            falsewright: Tag::Elements,
            schema: SCHEMA,
            shutters: scheme.shutters.iter().filter(|shutter| wanted(shutter.id)).filter_map(shutter).collect(),
            ties: scheme.ties.iter().filter(|row| wanted(row.id)).filter_map(row).collect(),
            falsework: scheme
                .falsework
                .iter()
                .filter(|falsework| wanted(falsework.id))
                .filter_map(|of| Some(OnFace { element: of.clone(), face: under(of)? }))
                .collect(),
            leg_lines: lines
                .filter(|(_, line)| wanted(line.id))
                .filter_map(|(of, line)| Some(OnFace { element: *line, face: under(of)? }))
                .collect(),
            openings: scheme.openings.iter().filter(|opening| wanted(opening.id)).filter_map(opening).collect(),
            repeats: Vec::new(),
            items: Vec::new(),
        };
        if excerpt.count() == 0 {
            return Err(EditError::NothingTo { what: "copied" });
        }
        let ids = excerpt.ids();
        let whole = |repeat: &&Repeat| {
            let mut all = repeat.members.iter().copied().chain(repeat.moved.iter().map(|moved| moved.id));
            ids.contains(&repeat.of) && all.all(|id| ids.contains(&id))
        };
        excerpt.repeats = scheme.repeats.iter().filter(whole).cloned().collect();
        let codes = excerpt.codes();
        excerpt.items = scheme.items.iter().filter(|item| codes.contains(&item.code.as_str())).cloned().collect();
        Ok(excerpt)
    }

    /// Reads what [`Excerpt::write`] wrote.
    ///
    /// # Errors
    /// Says what else the text is.
    pub fn read(text: &str) -> Result<Self, EditError> {
        if text.len() > LONGEST || !text.trim_start().starts_with('{') {
            return Err(EditError::NotElements { why: "it is some other text".into() });
        }
        let excerpt: Self =
            json::read(text).map_err(|error: json::Error| EditError::NotElements { why: error.to_string() })?;
        if excerpt.schema > SCHEMA {
            let why = "it was copied from a newer version of this page; reload the page, then paste again";
            return Err(EditError::NotElements { why: why.into() });
        }
        Ok(excerpt)
    }

    /// As text, for the clipboard.
    pub fn write(&self) -> String {
        json::write_indented(self)
    }

    /// How many elements there are.
    pub fn count(&self) -> usize {
        self.shutters.len() + self.ties.len() + self.falsework.len() + self.leg_lines.len() + self.openings.len()
    }

    fn ids(&self) -> Vec<Id> {
        let lines = self.falsework.iter().flat_map(|of| of.element.leg_lines.iter().map(|line| line.id));
        let shutters = self.shutters.iter().map(|of| of.element.id);
        let falsework = self.falsework.iter().map(|of| of.element.id);
        shutters.chain(self.ties.iter().map(|tie| tie.row.id)).chain(falsework).chain(lines).collect()
    }

    fn codes(&self) -> Vec<&str> {
        let shutters = self.shutters.iter().flat_map(|of| {
            let Shutter { facing, secondary, primary, .. } = &of.element;
            [facing, secondary, primary]
        });
        let falsework = self.falsework.iter().flat_map(|of| {
            let Falsework { facing, secondary, primary, leg, base, brace, .. } = &of.element;
            [facing, secondary, primary, leg, base, brace]
        });
        let openings = self.openings.iter().flat_map(|of| [&of.element.transfer, &of.element.trestle]);
        let rows = self.ties.iter().map(|tie| &tie.row.item);
        shutters.chain(falsework).chain(openings).chain(rows).map(String::as_str).collect()
    }
}

impl Standing {
    /// None for a face that nothing stands on.
    pub fn of(scheme: &Scheme, faces: &[Face], face: &Face) -> Option<Self> {
        let kind = kind(face)?;
        let extent = if kind == Kind::Soffit {
            falsework::soffit_extent(faces, face)
        } else {
            [face.from.x.min(face.to.x), face.from.x.max(face.to.x)]
        };
        let pours = scheme.section.bands(&scheme.section.boundary());
        let pour = pours.iter().position(|band| band.pour == face.of.pour)?;
        let order = alike(faces, face).iter().position(|other| other.of == face.of)?;
        Some(Self { kind, from: face.from, to: face.to, extent, pour, order })
    }

    /// Seen in a mirror at `x_m`, which turns the way round the concrete too.
    pub fn mirrored(&self, x_m: f64) -> Self {
        let at = |p: Point| Point::new(2.0 * x_m - p.x, p.z);
        let [left, right] = self.extent;
        let extent = [2.0 * x_m - right, 2.0 * x_m - left];
        Self { from: at(self.to), to: at(self.from), extent, ..*self }
    }

    /// The face that lies exactly there.
    pub fn exact<'a>(&self, faces: &'a [Face]) -> Option<&'a Face> {
        let near = |a: Point, b: Point| (a - b).length() < SAME_M;
        faces.iter().find(|face| kind(face) == Some(self.kind) && near(face.from, self.from) && near(face.to, self.to))
    }

    /// The face in the same place of the order, in a section of another size.
    pub fn in_order<'a>(&self, scheme: &Scheme, faces: &'a [Face]) -> Option<&'a Face> {
        let pours = scheme.section.bands(&scheme.section.boundary());
        let pour = pours.get(self.pour)?.pour;
        let looks = (self.to.z - self.from.z).signum();
        let first = faces.iter().find(|face| {
            let same_side = self.kind == Kind::Soffit || face.normal.x.signum() == looks;
            kind(face) == Some(self.kind) && face.of.pour == pour && same_side
        })?;
        alike(faces, first).get(self.order).copied()
    }

    /// Its lower level.
    pub fn foot(&self) -> f64 {
        self.from.z.min(self.to.z)
    }
}

/// What can stand on a face.
pub(super) fn kind(face: &Face) -> Option<Kind> {
    Some(match face.kind {
        FaceKind::OuterWall => Kind::OuterWall,
        FaceKind::InnerWall => Kind::InnerWall,
        FaceKind::Soffit => Kind::Soffit,
        _ if takes_shutter(face) => Kind::BatteredWall,
        _ => return None,
    })
}

/// All faces of the same kind and pour that look the same way, from the left, then from below.
fn alike<'a>(faces: &'a [Face], face: &Face) -> Vec<&'a Face> {
    let looks = |of: &Face| if of.kind == FaceKind::Soffit { 0.0 } else { of.normal.x.signum() };
    let like = |of: &&Face| kind(of) == kind(face) && of.of.pour == face.of.pour && looks(of) == looks(face);
    let mut found: Vec<&Face> = faces.iter().filter(like).collect();
    let middle = |face: &Face| face.from.lerp(face.to, 0.5);
    sort(&mut found, |a, b| {
        let (a, b) = (middle(a), middle(b));
        a.x.total_cmp(&b.x).then(a.z.total_cmp(&b.z))
    });
    found
}

/// The shutter on a face.
pub(super) fn shutter_on(scheme: &Scheme, face: &Face) -> Option<Id> {
    scheme.shutters.iter().find(|shutter| shutter.face == face.of).map(|shutter| shutter.id)
}

/// The falsework under a soffit.
pub(super) fn falsework_under(scheme: &Scheme, face: &Face) -> Option<Id> {
    scheme.falsework.iter().find(|falsework| falsework.soffit == face.of).map(|falsework| falsework.id)
}

/// Refuses a row where one joins the same shutters at the same level.
pub(super) fn check_free(scheme: &Scheme, row: &TieRow) -> Result<(), EditError> {
    let ends = |row: &TieRow| {
        let far = if let TieEnd::Shutter { id } = row.to { Some(id) } else { None };
        (Some(row.shutter).max(far), Some(row.shutter).min(far))
    };
    let same = |other: &&TieRow| other.id != row.id && ends(other) == ends(row) && (other.z_m - row.z_m).abs() < SAME_M;
    match scheme.ties.iter().find(same) {
        Some(other) => Err(EditError::Occupied { what: "Row of ties", id: other.id }),
        None => Ok(()),
    }
}

/// Refuses a level off one of a row's shutters.
pub(super) fn check_levels(scheme: &Scheme, faces: &[Face], row: &TieRow) -> Result<(), EditError> {
    shutters::check_level(scheme, faces, row.shutter, row.z_m)?;
    if let TieEnd::Shutter { id } = row.to { shutters::check_level(scheme, faces, id, row.z_m) } else { Ok(()) }
}
