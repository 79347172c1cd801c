use super::{Displacement, Dof};

/// Why a frame cannot be solved.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FrameError {
    /// A part of the frame can move without resistance.
    #[error("node {node} can move {dof} without resistance; support or brace it, or take out a release")]
    Mechanism {
        /// Where it moves most.
        node: usize,
        /// How it moves.
        dof: Dof,
        /// How all nodes move together: the one that moves most moves 1 m, or turns by 1 rad where none shifts.
        movement: Vec<Displacement>,
    },
    /// A member is released so much that it can move while its nodes rest.
    #[error("member {member} can move between its nodes; take out one of its releases")]
    LooseMember {
        /// The member.
        member: usize,
    },
    /// A contact where something else holds the node rigidly or pushes it.
    #[error("node {node} has a contact where it is held {dof} already; keep one of the two")]
    HeldTwice {
        /// The node.
        node: usize,
        /// In which direction.
        dof: Dof,
    },
    /// The ground is said to move where nothing stands on it.
    #[error(
        "settlement {index} moves the ground {dof} at node {node}, which no support or spring holds there; add one"
    )]
    NotHeld {
        /// Which settlement.
        index: usize,
        /// The node.
        node: usize,
        /// In which direction.
        dof: Dof,
    },
    /// Both ends of a member coincide.
    #[error("member {member} has no length; join its nodes into one")]
    ZeroLength {
        /// The member.
        member: usize,
    },
    /// A member, support, spring or load names a node that is not there.
    #[error("{what} {index} is at node {node}, which is not in the frame; add the node first")]
    UnknownNode {
        /// Kind of the thing that names the node.
        what: &'static str,
        /// Which of its kind.
        index: usize,
        /// The missing node.
        node: usize,
    },
    /// A load names a member that is not there.
    #[error("{what} {index} is on member {member}, which is not in the frame; add the member first")]
    UnknownMember {
        /// Kind of the load.
        what: &'static str,
        /// Which of its kind.
        index: usize,
        /// The missing member.
        member: usize,
    },
    /// A number is infinite or not a number.
    #[error("{what} {index} has a value that is not finite; give it a number")]
    NonFinite {
        /// Kind of the thing.
        what: &'static str,
        /// Which of its kind.
        index: usize,
    },
    /// A member without axial stiffness, or any stiffness below zero.
    #[error("{what} {index} has a stiffness out of range; axial stiffness must be positive, any other not negative")]
    Stiffness {
        /// Kind of the thing.
        what: &'static str,
        /// Which of its kind.
        index: usize,
    },
    /// A load reaches beyond its member or ends before it begins.
    #[error("a load from {a} m to {b} m is not on member {member} of {length} m; move it or split it")]
    LoadOffMember {
        /// The member.
        member: usize,
        /// Where the load begins.
        a: f64,
        /// Where it ends.
        b: f64,
        /// Length of the member.
        length: f64,
    },
    /// A load across a member that has no bending stiffness.
    #[error("member {member} is a bar and cannot bear a load across it; give it bending stiffness or load its nodes")]
    LoadAcrossBar {
        /// The member.
        member: usize,
    },
    /// Rounding has spoiled the balance of forces.
    #[error(
        "forces at node {node} do not balance {dof}; the stiffnesses differ too widely, bring them closer together"
    )]
    IllConditioned {
        /// Where the balance is worst.
        node: usize,
        /// In which direction.
        dof: Dof,
    },
    /// One-sided parts keep going slack and tight.
    #[error(
        "which parts go slack did not settle in {rounds} rounds; tie or brace the frame so that it does not rest on them alone"
    )]
    NoContact {
        /// Rounds tried.
        rounds: usize,
    },
    /// The loads are beyond the elastic critical load.
    #[error("the frame buckles elastically under these loads; brace or stiffen it, or lower the loads")]
    Unstable,
    /// Axial forces of a second-order analysis keep changing.
    #[error(
        "the second-order analysis did not settle in {rounds} rounds; the loads are too near buckling, brace or stiffen the frame"
    )]
    NotConverged {
        /// Rounds tried.
        rounds: usize,
    },
}
