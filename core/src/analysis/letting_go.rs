use super::cut::Cut;
use super::{Displacement, Dof, Frame, LoadCase, Solution};

/// A frame without what has let go: slack members bear no axial force at their node i, open contacts are gone, and so is
/// what they grip, also where they have `slid`. Members and springs keep their numbers.
pub(super) fn without(frame: &Frame, parts: &[(Cut, f64)], open: &[bool], slid: &[bool]) -> Frame {
    let mut rest = frame.clone();
    let mut gone = vec![false; frame.contacts.len()];
    for ((&(cut, _), &open), &slid) in parts.iter().zip(open).zip(slid) {
        match cut {
            Cut::Along(member) if open && frame.members[member].axial_release == [false; 2] => {
                rest.members[member].axial_release[0] = true;
            }
            Cut::Contact(contact) if open || slid => {
                gone[contact] = open;
                if let Some(grip) = frame.contacts[contact].grips {
                    release(&mut rest, frame.contacts[contact].node, grip);
                }
            }
            _ => {}
        }
    }
    let mut gone = gone.into_iter();
    rest.contacts.retain(|_| gone.next() != Some(true));
    rest
}

fn release(frame: &mut Frame, node: usize, dof: Dof) {
    for support in frame.supports.iter_mut().filter(|support| support.node == node) {
        *[&mut support.ux, &mut support.uy, &mut support.rz][dof as usize] = false;
    }
    for spring in frame.springs.iter_mut().filter(|spring| spring.node == node && spring.dof == dof) {
        spring.k = 0.0;
    }
}

/// Loads on a frame without what has let go: nothing moves the ground where it holds nothing any more.
pub(super) fn loads_on(rest: &Frame, loads: &LoadCase) -> LoadCase {
    let mut left = loads.clone();
    left.settlements.retain(|settlement| rest.holds(settlement.node, settlement.dof));
    left
}

/// How far a part is from working, in m or rad: the gap of a contact, the slack of a member.
pub(super) fn gap(
    frame: &Frame,
    loads: &LoadCase,
    (cut, sign): (Cut, f64),
    moved: impl Fn(usize) -> Displacement,
) -> f64 {
    match cut {
        Cut::Along(member) => {
            let data = &frame.members[member];
            let (length, cosine, sine) = frame.direction(data);
            let along = |node: usize, [x, y]: [f64; 2]| {
                let Displacement { ux, uy, rz } = moved(node);
                cosine * (ux - rz * y) + sine * (uy + rz * x)
            };
            let longer = along(data.j, data.arms[1]) - along(data.i, data.arms[0]);
            let gaps = loads.gaps.iter().filter(|gap| gap.member == member).map(|gap| gap.along);
            let strains = loads.strains.iter().filter(|strain| strain.member == member);
            let free = gaps.sum::<f64>() + strains.map(|strain| strain.axial * length).sum::<f64>();
            sign * (free - longer)
        }
        Cut::Contact(contact) => {
            let data = &frame.contacts[contact];
            let Displacement { ux, uy, rz } = moved(data.node);
            let under = loads.settlements.iter().filter(|under| under.node == data.node && under.dof == data.dof);
            sign * ([ux, uy, rz][data.dof as usize] - under.map(|under| under.by).sum::<f64>())
        }
        Cut::Turn(..) | Cut::Ground(..) => 0.0,
    }
}

/// The solution of a frame without what has let go, told of all its contacts.
pub(super) fn tell_all(mut rest: Solution, parts: &[(Cut, f64)], open: &[bool]) -> Solution {
    let mut left = std::mem::take(&mut rest.contact_forces).into_iter();
    for ((cut, _), open) in parts.iter().zip(open) {
        if let Cut::Contact(_) = cut {
            rest.contact_forces.push(if *open { 0.0 } else { left.next().unwrap_or(0.0) });
        }
    }
    rest
}
