//! What stands in the section, by its edges.

use crate::geometry::{Bounds, Edge, Point, edges_of, encloses};
use crate::model::{Model, Part};
use crate::scheme::Id;
use crate::sentence::{Sentence, Value, member};

/// How a part is called.
pub fn named(part: &Part) -> Value {
    member(&format!("{} {}", part.mark, part.role.name()))
}

/// Something that stands still.
pub struct Still {
    pub name: Sentence,
    pub edges: Vec<Edge>,
    /// Around it; none where there is nothing of it.
    bounds: Option<Bounds>,
}

impl Still {
    pub fn new(name: Sentence, edges: impl Iterator<Item = Edge>) -> Self {
        let edges: Vec<Edge> = edges.collect();
        let bounds = Bounds::around(edges.iter().flat_map(|edge| [edge.from, edge.to]));
        Self { name, edges, bounds }
    }

    /// The concrete of each pour up to this one.
    pub fn concrete_up_to(model: &Model, pour: Id) -> impl Iterator<Item = Self> {
        let own = model.pours.iter().position(|other| other.id == pour).map_or(0, |index| index + 1);
        model.pours[..own].iter().map(|pour| {
            let edges = pour.regions.iter().flatten().flat_map(|ring| edges_of(ring));
            Self::new(sentence!("the concrete of {}", &pour.mark), edges)
        })
    }

    /// How far it is from an outline at least.
    pub fn apart(&self, outline: &[Point; 4]) -> f64 {
        Bounds::around(*outline).zip(self.bounds).map_or(f64::INFINITY, |(own, other)| own.apart(&other))
    }

    /// A place that an outline has in common with it.
    pub fn overlap(&self, outline: &[Point; 4]) -> Option<Point> {
        if self.apart(outline) > 0.0 { None } else { overlap(self.edges.iter().copied(), outline) }
    }
}

/// A place that an outline has in common with what closed edges are around.
pub fn overlap(edges: impl Iterator<Item = Edge> + Clone, outline: &[Point; 4]) -> Option<Point> {
    let own = Bounds::around(*outline)?;
    let near = |edge: &Edge| Bounds::around([edge.from, edge.to]).is_some_and(|bounds| bounds.meets(&own));
    let crossing = edges.clone().filter(near).find_map(|edge| edges_of(outline).find_map(|own| own.meeting(&edge)));
    // Where no sides cross, one is all within the other or not at all.
    let within = || encloses(edges.clone(), outline[0]).then_some(outline[0]);
    let inner = |point: &Point| own.meets(&Bounds { min: *point, max: *point });
    let mut ends = edges.clone().map(|edge| edge.from).filter(inner);
    let holding = || ends.find(|point| encloses(edges_of(outline), *point));
    crossing.or_else(within).or_else(holding)
}
