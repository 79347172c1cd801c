//! Chains of thicknesses and clear sizes across the section.

use super::{Dimension, DimensionKey, SAME_M, room_m};
use crate::editor::Bounds;
use crate::editor::places::Places;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Corner, Id, SectionEdge};
use falsewright_core::sorting::sort;

/// Faces that lean by more of their length are measured by no chain.
const MOST_LEAN: f64 = 0.5;

/// Places (or levels) of upright (or level) edges across the section, each with the corner where its edge starts.
type Chain = Vec<(f64, Id)>;

/// The edges met by a line across the section at level `at` (or up it at place `at`), and the outermost such edges of
/// all where the line meets none: feet of a portal, heads of a trough.
fn chain(edges: &[SectionEdge], upright: bool, at: f64) -> Chain {
    let of = |p: Point| if upright { (p.x, p.z) } else { (p.z, p.x) };
    // A battered wall is measured at its foot, a falling slab at its lower end.
    let true_edges = || {
        edges.iter().filter(|edge| !edge.cut).filter_map(|edge| {
            let ((value, a), (other, b)) = (of(edge.line.from), of(edge.line.to));
            let lower = if upright { a < b } else { value < other };
            let foot = if lower { value } else { other };
            ((value - other).abs() <= MOST_LEAN * (a - b).abs()).then_some((foot, edge.corner, a.min(b)..=a.max(b)))
        })
    };
    let mut chain: Chain =
        true_edges().filter(|edge| edge.2.contains(&at)).map(|(value, corner, _)| (value, corner)).collect();
    let lowest = true_edges().min_by(|a, b| a.0.total_cmp(&b.0));
    let highest = true_edges().max_by(|a, b| a.0.total_cmp(&b.0));
    chain.extend(lowest.into_iter().chain(highest).map(|(value, corner, _)| (value, corner)));
    sort(&mut chain, |a, b| a.0.total_cmp(&b.0));
    chain.dedup_by(|a, b| (a.0 - b.0).abs() < SAME_M);
    chain
}

/// One chain through the middle of each cell, or of the section without any, those that say the same left out.
fn all_chains(places: &Places, upright: bool) -> Vec<Chain> {
    let section = &places.scheme.section;
    let rings = section.cells.iter().map(|cell| &cell.corners);
    let rings = rings.chain(std::iter::once(&section.outline).filter(|_| section.cells.is_empty()));
    let edges = section.edges();
    let mut chains: Vec<Chain> = Vec::new();
    for ring in rings {
        let Some(bounds) = Bounds::around(ring.iter().map(Corner::point)) else { continue };
        let middle = bounds.min.lerp(bounds.max, 0.5);
        let chain = chain(&edges, upright, if upright { middle.z } else { middle.x });
        let same = |other: &Chain| {
            other.len() == chain.len() && other.iter().zip(&chain).all(|(a, b)| (a.0 - b.0).abs() < SAME_M)
        };
        if chain.len() >= 2 && !chains.iter().any(same) {
            chains.push(chain);
        }
    }
    chains
}

pub(super) fn widest_chain(places: &Places, upright: bool) -> Option<Chain> {
    all_chains(places, upright).into_iter().max_by_key(Vec::len)
}

pub(super) fn chains(places: &Places, row_m: f64, all: &mut Vec<Dimension>) {
    let Some(bounds) = places.section() else { return };
    let right = |value: f64, row: f64| Point::new(value, bounds.min.z - row * row_m);
    let left = bounds.min.x - room_m(places, -1.0);
    let up = |value: f64, row: f64| Point::new(left - row * row_m, value);
    for (upright, whole) in [(true, DimensionKey::Width), (false, DimensionKey::Height)] {
        let place: &dyn Fn(f64, f64) -> Point = if upright { &right } else { &up };
        let mut add = |key, from: f64, to: f64, row: f64| {
            let at = |value| if upright { Point::new(value, bounds.min.z) } else { Point::new(bounds.min.x, value) };
            let (measured, line) = ([at(from), at(to)], [place(from, row), place(to, row)]);
            all.push(Dimension::new(key, measured, line, to - from));
        };
        let chains = all_chains(places, upright);
        let mut rows = 0.0;
        for chain in chains.iter().filter(|chain| chain.len() > 2) {
            rows += 1.0;
            for pair in chain.windows(2) {
                add(DimensionKey::Edges { edge: pair[1].1, from: pair[0].1 }, pair[0].0, pair[1].0, rows);
            }
        }
        if !chains.is_empty() {
            let ends = [bounds.min, bounds.max].map(|p| if upright { p.x } else { p.z });
            add(whole, ends[0], ends[1], rows + 1.0);
        }
    }
    let mut keys: Vec<DimensionKey> = Vec::new();
    all.retain(|dimension| {
        let fresh = !keys.contains(&dimension.key);
        keys.push(dimension.key);
        fresh
    });
}

/// The edit of a value typed into a chain: the edge moves with all beyond it.
pub(super) fn typed(places: &Places, edge: Id, from: Id, now: &Dimension, value_m: f64) -> Option<Edit> {
    let edges = places.scheme.section.edges();
    let square = |corner: Id| {
        let edge = edges.iter().find(|edge| edge.corner == corner && !edge.cut)?;
        let along = edge.line.vector();
        Some(along.x.abs().min(along.z.abs()) < SAME_M)
    };
    if (square(edge)? && square(from)?) || value_m <= 0.0 {
        return Some(Edit::SetLength { edge, from, length_m: value_m, carry: true });
    }
    let by = (now.measured[1] - now.measured[0]).unit() * (value_m - now.value_m);
    Some(Edit::CarryEdge { edge, by, from })
}
