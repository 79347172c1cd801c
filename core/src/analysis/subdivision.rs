use super::{DistributedLoad, Frame, Gap, LoadCase, Member, PointLoad, Strain};

/// Parts of a member whose axial force falls from its greatest value to nothing: each has a constant axial force, and
/// the critical weight of a cantilever comes out within 0.05 %.
const PARTS_OF_FULL_CHANGE: f64 = 32.0;

/// Parts that follow a change of the axial force along a member; 1 if it is constant. The error of constant parts grows
/// with the change and falls with the square of their number.
pub(super) fn parts_for_change(at_i: f64, at_j: f64) -> usize {
    let change = (at_i - at_j).abs();
    if change == 0.0 {
        return 1;
    }
    let relative = (change / at_i.abs().max(at_j.abs())).min(1.0);
    (libm::ceil(PARTS_OF_FULL_CHANGE * relative.sqrt()) as usize).max(2)
}

/// A frame with its members cut into parts.
pub(super) struct Subdivision {
    pub frame: Frame,
    /// First part of each member; one more than there are members. The frame's first nodes are the original ones.
    pub starts: Vec<usize>,
    /// Length of each part.
    pub lengths: Vec<f64>,
}

impl Subdivision {
    /// Cuts each member into the given number of equal parts.
    pub fn new(frame: &Frame, parts: impl Fn(usize) -> usize) -> Self {
        let mut fine = Frame {
            nodes: frame.nodes.clone(),
            members: Vec::with_capacity(2 * frame.members.len()),
            supports: frame.supports.clone(),
            springs: frame.springs.clone(),
            contacts: frame.contacts.clone(),
        };
        let mut starts = Vec::with_capacity(frame.members.len() + 1);
        let mut lengths = Vec::with_capacity(2 * frame.members.len());
        starts.push(0);
        for (index, member) in frame.members.iter().enumerate() {
            let parts = parts(index).max(1);
            let (length, ..) = frame.direction(member);
            let [from, to] = frame.ends(member);
            let mut i = member.i;
            for part in 1..=parts {
                let last = part == parts;
                let t = part as f64 / parts as f64;
                let j = if last {
                    member.j
                } else {
                    fine.add_node(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y))
                };
                fine.add_member(Member { i, j, ..*member }.part(part == 1, last));
                lengths.push(length / parts as f64);
                i = j;
            }
            starts.push(fine.members.len());
        }
        Self { frame: fine, starts, lengths }
    }

    /// The same loads on the parts. They must lie on their members.
    pub fn loads(&self, loads: &LoadCase) -> LoadCase {
        let mut fine =
            LoadCase { nodal: loads.nodal.clone(), settlements: loads.settlements.clone(), ..LoadCase::default() };
        for load in &loads.distributed {
            let growth = (load.w2 - load.w1) / (load.b - load.a);
            for (member, from, to) in self.parts(load.member) {
                let (start, end) = (load.a.max(from), load.b.min(to));
                if start < end {
                    fine.distributed.push(DistributedLoad {
                        member,
                        w1: load.w1 + growth * (start - load.a),
                        w2: load.w1 + growth * (end - load.a),
                        a: start - from,
                        b: end - from,
                        ..*load
                    });
                }
            }
        }
        for load in &loads.point {
            if let Some((member, from)) = self.part_at(load.member, load.a) {
                fine.point.push(PointLoad { member, a: load.a - from, ..*load });
            }
        }
        for gap in &loads.gaps {
            if let Some((member, from)) = self.part_at(gap.member, gap.a) {
                fine.gaps.push(Gap { member, a: gap.a - from, ..*gap });
            }
        }
        for strain in &loads.strains {
            fine.strains.extend(self.parts(strain.member).map(|(member, ..)| Strain { member, ..*strain }));
        }
        fine
    }

    /// Part of a member at a place, and where that part begins.
    fn part_at(&self, member: usize, a: f64) -> Option<(usize, f64)> {
        self.parts(member).take_while(|(_, from, _)| *from <= a.max(0.0)).last().map(|(part, from, _)| (part, from))
    }

    /// Parts of a member with their start and end, from node i.
    pub fn parts(&self, member: usize) -> impl Iterator<Item = (usize, f64, f64)> {
        let first = self.starts[member];
        (first..self.starts[member + 1]).map(move |part| {
            let length = self.lengths[part];
            (part, (part - first) as f64 * length, (part - first + 1) as f64 * length)
        })
    }
}
