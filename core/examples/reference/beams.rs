use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::actions::fresh_concrete::envelope::PressureEnvelope;
use falsewright_core::analysis::{
    Axis, DistributedLoad, Dof, Extremes, Frame, LoadCase, Member, NodalLoad, Solution, Spring, Support,
};
use falsewright_core::checks::check_deflection;
use falsewright_core::checks::ground::BeamOnSprings;

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("continuous beam", continuous),
    ("two unequal spans", two_spans),
    ("simple span, load 0 -> w", ramp),
    ("simple span, symmetric triangle", triangle),
    ("simple span, symmetric trapezoid", trapezoid),
    ("cantilever", cantilever),
    ("simple span L with equal overhangs", equal_overhangs),
    ("simple span with one overhang", one_overhang),
    ("propped cantilever", propped_cantilever),
    ("fixed-fixed", fixed),
    ("vertical soldier", soldier),
    ("two equal spans on three equal springs", two_spans_on_springs),
    ("limits of the same formula", limits_of_springs),
    ("three equal spans on four equal springs", three_spans_on_springs),
    ("infinite beam on Winkler foundation", winkler),
    ("simple span deflection limit", deflection_limit),
];

const ANY_EA_KN: f64 = 1e6;

#[derive(Clone, Copy)]
enum Hold {
    Free,
    Pin,
    Fixed,
    Spring(f64),
}

/// A straight beam along x: its nodes with how they are held.
struct Beam {
    frame: Frame,
    places: Vec<f64>,
}

impl Beam {
    fn new(nodes: &[(f64, Hold)], ei: f64) -> Self {
        let mut frame = Frame::default();
        let places: Vec<f64> = nodes.iter().map(|node| node.0).collect();
        for &(x, hold) in nodes {
            let node = frame.add_node(x, 0.0);
            let (uy, rz) = match hold {
                Hold::Free => (false, false),
                Hold::Pin => (true, false),
                Hold::Fixed => (true, true),
                Hold::Spring(k) => {
                    frame.springs.push(Spring { node, dof: Dof::Uy, k });
                    (false, false)
                }
            };
            frame.supports.push(Support { node, ux: node == 0, uy, rz });
        }
        for node in 1..places.len() {
            frame.add_member(Member::beam(node - 1, node, ei, ANY_EA_KN));
        }
        Self { frame, places }
    }

    /// Under a downward load whose kinks are at `kinks` and that is `load(x)` between them.
    fn solve(&self, kinks: &[f64], load: impl Fn(f64) -> f64) -> Option<Solved> {
        let mut loads = LoadCase::default();
        for (member, ends) in self.places.windows(2).enumerate() {
            let mut cuts = vec![ends[0], ends[1]];
            cuts.extend(kinks.iter().copied().filter(|kink| ends[0] < *kink && *kink < ends[1]));
            cuts.sort_by(f64::total_cmp);
            for cut in cuts.windows(2) {
                let inside = 1e-9 * (cut[1] - cut[0]);
                loads.distributed.push(DistributedLoad {
                    member,
                    axis: Axis::Y,
                    w1: -load(cut[0] + inside),
                    w2: -load(cut[1] - inside),
                    a: cut[0] - ends[0],
                    b: cut[1] - ends[0],
                });
            }
        }
        self.with(&loads)
    }

    fn with(&self, loads: &LoadCase) -> Option<Solved> {
        Some(Solved { solution: self.frame.factorise().ok()?.solve(loads).ok()?, places: self.places.clone() })
    }
}

struct Solved {
    solution: Solution,
    places: Vec<f64>,
}

impl Solved {
    fn reaction(&self, node: usize) -> f64 {
        self.solution.reaction(node).fy
    }

    /// Moment at a node, just before it where it has a member there.
    fn moment(&self, node: usize) -> f64 {
        match node {
            0 => self.solution.moment_at(0, 0.0),
            node => self.solution.moment_at(node - 1, self.places[node] - self.places[node - 1]),
        }
    }

    fn span(&self, member: usize) -> Extremes {
        self.solution.extremes(member)
    }

    /// Greatest moment of a span at whole multiples of a length from the start of the beam.
    fn greatest_at_parts(&self, member: usize, part: f64) -> f64 {
        let (from, to) = (self.places[member], self.places[member + 1]);
        let first = libm::ceil(from / part - 1e-9) as u32;
        let places = (first..).map(|index| f64::from(index) * part).take_while(|&x| x <= to + 1e-9);
        places.map(|x| self.solution.moment_at(member, x - from)).fold(f64::NEG_INFINITY, f64::max)
    }

    fn settlement(&self, node: usize) -> f64 {
        -self.solution.displacement(node).uy
    }

    fn length(&self, member: usize) -> f64 {
        self.places[member + 1] - self.places[member]
    }
}

/// One span between two ways of holding, under a load.
fn one_span(case: &Case, holds: [Hold; 2], kinks: &[f64], load: impl Fn(f64) -> f64) -> Option<Solved> {
    let beam = Beam::new(&[(0.0, holds[0]), (case.positive("L")?, holds[1])], case.number_or("EI", 1.0));
    beam.solve(kinks, load)
}

fn continuous(case: &Case) -> Option<Got> {
    let spans = case.number("n").filter(|n| (1.0..=100.0).contains(n))?;
    let (w, length, ei) = (case.number_or("w", 1.0), case.positive("L")?, case.number_or("EI", 1.0));
    let nodes: Vec<(f64, Hold)> = (0..=spans as usize).map(|index| (index as f64 * length, Hold::Pin)).collect();
    let solved = Beam::new(&nodes, ei).solve(&[], |_| w)?;
    let scale = (w * length * length, w * length, w * libm::pow(length, 4.0) / ei);
    let supports: Vec<f64> = (0..nodes.len()).map(|node| solved.moment(node) / scale.0).collect();
    let reactions: Vec<f64> = (0..nodes.len()).map(|node| solved.reaction(node) / scale.1).collect();
    let members: Vec<Extremes> = (0..nodes.len() - 1).map(|member| solved.span(member)).collect();
    let each = |value: &dyn Fn(&Extremes) -> f64| -> Vec<f64> { members.iter().map(value).collect() };
    let shear = members.iter().fold(0.0_f64, |most, span| most.max(span.shear_max.0).max(-span.shear_min.0));
    Some(
        Got::default()
            .with("M_supports", supports)
            .with("R", reactions)
            .with("M_spans", each(&|span| span.moment_max.0 / scale.0))
            .with("x_Mmax", each(&|span| span.moment_max.1 / length))
            .with("defl", each(&|span| -span.deflection_min.0 / scale.2))
            .with("x_defl", each(&|span| span.deflection_min.1 / length))
            .with("V_max", shear / scale.1),
    )
}

fn two_spans(case: &Case) -> Option<Got> {
    let (first, second) = (case.positive("L1")?, case.positive("L2")?);
    let one = case.number("w").or_else(|| case.number("w1"))?;
    let other = case.number("w").or_else(|| case.number("w2"))?;
    let nodes = [(0.0, Hold::Pin), (first, Hold::Pin), (first + second, Hold::Pin)];
    let solved = Beam::new(&nodes, 1.0).solve(&[], |x| if x < first { one } else { other })?;
    Some(Got::of(&[
        ("M_B", solved.moment(1)),
        ("R_A", solved.reaction(0)),
        ("R_B", solved.reaction(1)),
        ("R_C", solved.reaction(2)),
        ("M1", solved.span(0).moment_max.0),
        ("M2", solved.span(1).moment_max.0),
    ]))
}

fn ramp(case: &Case) -> Option<Got> {
    let (w, length) = (case.number("w")?, case.positive("L")?);
    let solved = one_span(case, [Hold::Pin; 2], &[], |x| w * x / length)?;
    let span = solved.span(0);
    Some(Got::of(&[
        ("R_light", solved.reaction(0)),
        ("R_heavy", solved.reaction(1)),
        ("M_max", span.moment_max.0),
        ("x_M", span.moment_max.1),
        ("defl", -span.deflection_min.0),
        ("x_defl", span.deflection_min.1),
    ]))
}

fn triangle(case: &Case) -> Option<Got> {
    let (w, length) = (case.number("w")?, case.positive("L")?);
    let solved = one_span(case, [Hold::Pin; 2], &[length / 2.0], |x| w * (1.0 - (2.0 * x / length - 1.0).abs()))?;
    let span = solved.span(0);
    Some(Got::of(&[("R", solved.reaction(0)), ("M_max", span.moment_max.0), ("defl", -span.deflection_min.0)]))
}

fn trapezoid(case: &Case) -> Option<Got> {
    let (w, length, ramp) = (case.number("w")?, case.positive("L")?, case.positive("a")?);
    let ei = case.number_or("EI", 1.0);
    let load = |x: f64| w * (x.min(length - x) / ramp).min(1.0);
    let solved = one_span(case, [Hold::Pin; 2], &[ramp, length - ramp], load)?;
    let span = solved.span(0);
    let deflection = -span.deflection_min.0;
    Some(Got::of(&[
        ("R", solved.reaction(0)),
        ("M_max", span.moment_max.0),
        ("defl", deflection),
        ("defl_EI", deflection * ei),
    ]))
}

fn cantilever(case: &Case) -> Option<Got> {
    let (w, length, ei) = (case.number_or("w", 1.0), case.positive("L")?, case.number_or("EI", 1.0));
    let point = case.number_or("P", 1.0);
    let holds = [Hold::Fixed, Hold::Free];
    let even = one_span(case, holds, &[], |_| w)?;
    let at_root = one_span(case, holds, &[], |x| w * (1.0 - x / length))?;
    let at_tip = one_span(case, holds, &[], |x| w * x / length)?;
    let tip = NodalLoad { node: 1, fx: 0.0, fy: -point, mz: 0.0 };
    let beam = Beam::new(&[(0.0, Hold::Fixed), (length, Hold::Free)], ei);
    let by_point = beam.with(&LoadCase { nodal: vec![tip], ..LoadCase::default() })?;
    Some(Got::of(&[
        ("M_udl", -even.moment(0)),
        ("defl_udl", even.settlement(1)),
        ("theta_udl", -even.solution.displacement(1).rz),
        ("M_tri_max_at_root", -at_root.moment(0)),
        ("defl_tri_max_at_root", at_root.settlement(1)),
        ("M_tri_max_at_tip", -at_tip.moment(0)),
        ("defl_tri_max_at_tip", at_tip.settlement(1)),
        ("M_point", -by_point.moment(0)),
        ("defl_point", by_point.settlement(1)),
    ]))
}

fn equal_overhangs(case: &Case) -> Option<Got> {
    let (w, length, over) = (case.number("w")?, case.positive("L")?, case.positive("a")?);
    let nodes = [(0.0, Hold::Free), (over, Hold::Pin), (over + length, Hold::Pin), (2.0 * over + length, Hold::Free)];
    let solved = Beam::new(&nodes, 1.0).solve(&[], |_| w)?;
    Some(Got::of(&[
        ("M_support", solved.moment(1)),
        ("M_mid", solved.solution.moment_at(1, length / 2.0)),
        ("R", solved.reaction(1)),
        ("a_equal_moments", length / 8f64.sqrt()),
    ]))
}

fn one_overhang(case: &Case) -> Option<Got> {
    let (w, length, over) = (case.number("w")?, case.positive("L")?, case.positive("a")?);
    let nodes = [(0.0, Hold::Pin), (length, Hold::Pin), (length + over, Hold::Free)];
    let solved = Beam::new(&nodes, 1.0).solve(&[], |_| w)?;
    Some(Got::of(&[
        ("R_A", solved.reaction(0)),
        ("R_B", solved.reaction(1)),
        ("M_B", solved.moment(1)),
        ("M_span", solved.span(0).moment_max.0),
    ]))
}

fn propped_cantilever(case: &Case) -> Option<Got> {
    let w = case.number("w")?;
    let solved = one_span(case, [Hold::Pin, Hold::Fixed], &[], |_| w)?;
    let span = solved.span(0);
    Some(Got::of(&[
        ("M_fix", solved.moment(1)),
        ("R_fix", solved.reaction(1)),
        ("R_prop", solved.reaction(0)),
        ("M_span", span.moment_max.0),
        ("defl", -span.deflection_min.0),
        ("x_defl", span.deflection_min.1),
    ]))
}

fn fixed(case: &Case) -> Option<Got> {
    let (w, length) = (case.number("w")?, case.positive("L")?);
    let ei = case.number_or("EI", 1.0);
    let nodes = [(0.0, Hold::Fixed), (length / 2.0, Hold::Free), (length, Hold::Fixed)];
    let solved = Beam::new(&nodes, ei).solve(&[], |_| w)?;
    Some(Got::of(&[("M_end", solved.moment(0)), ("M_mid", solved.moment(1)), ("defl", solved.settlement(1))]))
}

/// An upright on rigid supports under the envelope of fresh concrete; levels from its foot.
fn soldier(case: &Case) -> Option<Got> {
    let (height, width) = (case.positive("H")?, case.number_or("width_m", 1.0));
    let pressure = PressureEnvelope {
        density_kn_m3: case.positive("D")?,
        limit_kpa: case.positive("Pmax").or_else(|| case.positive("P_max"))?,
        height_m: height,
    };
    let levels = case.numbers("supports_m").filter(|levels| levels.iter().all(|z| (0.0..=height).contains(z)))?;
    let mut nodes: Vec<(f64, Hold)> = levels.iter().map(|&level| (level, Hold::Pin)).collect();
    if levels.first().is_none_or(|&level| level > 0.0) {
        nodes.insert(0, (0.0, Hold::Free));
    }
    if levels.last().is_some_and(|&level| level < height) {
        nodes.push((height, Hold::Free));
    }
    let load = |level: f64| width * pressure.at_depth_kpa(height - level);
    let solved = Beam::new(&nodes, case.positive("EI")?).solve(&[height - pressure.fluid_depth_m()], load)?;
    let held: Vec<usize> = (0..nodes.len()).filter(|&node| matches!(nodes[node].1, Hold::Pin)).collect();
    let reactions: Vec<f64> = held.iter().map(|&node| solved.reaction(node)).collect();
    let moments: Vec<f64> = held.iter().map(|&node| solved.moment(node)).collect();
    let total: f64 = reactions.iter().sum();
    let mut got = Got::default()
        .with("R", reactions)
        .with("M_support", moments)
        .with("sum_R", total)
        .with("defl_top_mm", 1e3 * solved.settlement(nodes.len() - 1))
        .with("defl_base_mm", 1e3 * solved.settlement(0));
    for (number, pair) in held.windows(2).enumerate() {
        let greatest = solved.greatest_at_parts(pair[0], height / SOLDIER_PARTS);
        got = got.with(&format!("M_max_span{}", number + 1), greatest);
    }
    Some(got)
}

/// The source of the soldier's cases reads moments where its 120 elements meet, not at the very peak.
const SOLDIER_PARTS: f64 = 120.0;

fn on_springs(case: &Case, spans: usize) -> Option<Solved> {
    let (w, length, k) = (case.number("w")?, case.positive("L")?, case.positive("k")?);
    let nodes: Vec<(f64, Hold)> = (0..=spans).map(|index| (index as f64 * length, Hold::Spring(k))).collect();
    Beam::new(&nodes, case.positive("EI")?).solve(&[], |_| w)
}

fn two_spans_on_springs(case: &Case) -> Option<Got> {
    let solved = on_springs(case, 2)?;
    Some(Got::of(&[
        ("R_A", solved.reaction(0)),
        ("R_B", solved.reaction(1)),
        ("M_B", solved.moment(1)),
        ("settle_A", solved.settlement(0)),
        ("settle_B", solved.settlement(1)),
    ]))
}

/// The middle reaction where supports give nothing, and where they give far more than the beam.
fn limits_of_springs(case: &Case) -> Option<Got> {
    let (w, length) = (case.number("w")?, case.positive("L")?);
    let middle = |hold: Hold| -> Option<f64> {
        let nodes: Vec<(f64, Hold)> = (0..3).map(|index| (f64::from(index) * length, hold)).collect();
        Some(Beam::new(&nodes, 1.0).solve(&[], |_| w)?.reaction(1))
    };
    let soft = 1e-6 / (length * length * length);
    Some(Got::of(&[("R_B_rigid", middle(Hold::Pin)?), ("R_B_soft", middle(Hold::Spring(soft))?)]))
}

fn three_spans_on_springs(case: &Case) -> Option<Got> {
    let solved = on_springs(case, 3)?;
    let reactions: Vec<f64> = (0..4).map(|node| solved.reaction(node)).collect();
    Some(Got::default().with("R", reactions).with("M_B", solved.moment(1)))
}

fn winkler(case: &Case) -> Option<Got> {
    let beam = BeamOnSprings::new(case.number("P")?, case.positive("k_kN_m2")?, case.positive("EI")?);
    Some(Got::of(&[("beta", beam.beta), ("y0_mm", 1e3 * beam.settlement_m), ("M0", beam.moment_knm)]))
}

fn deflection_limit(case: &Case) -> Option<Got> {
    let w = case.number("w")?;
    let solved = one_span(case, [Hold::Pin; 2], &[], |_| w)?;
    let deflection = -solved.span(0).deflection_min.0;
    let verdict = check_deflection(deflection, solved.length(0), case.positive("limit")?);
    Some(Got::of(&[("defl_mm", verdict.demand), ("limit_mm", verdict.resistance), ("util", verdict.ratio())]))
}
