"""Times the frame solver beside general-purpose Python libraries and LAPACK on the same bents. See README.md."""

import json
import math
import os
import statistics
import subprocess
import sys
import time
import warnings

# Its other threads would spin on after each call and take time from what is measured next.
os.environ["OPENBLAS_NUM_THREADS"] = "1"

import numpy
import scipy.linalg

ROUNDS, RUNS = 7, 3

# One library fits a polynomial to each of thousands of members, and warns each time.
warnings.simplefilter("ignore")


class Own:
    """The solver's own time, taken anew beside each of the others': a computer is not equally fast at all times."""

    def __init__(self, binary, legs):
        self.command, self.times, self.least = [binary, str(legs), "time"], [], math.inf

    def seconds(self):
        text = subprocess.run(self.command, check=True, capture_output=True, text=True).stdout
        found = json.loads(text)
        self.times.append(found["median"]["all"])
        self.least = min(self.least, found["least"]["all"])
        return self.times[-1]

    def beside(self, run, prepare):
        """Median and least time of `run` over all rounds, and median of its ratio to the own time of the same round."""
        times, ratios = [], []
        for _ in range(ROUNDS):
            own, round = self.seconds(), [timed(run, prepare()) for _ in range(RUNS)]
            times += round
            ratios.append(statistics.median(round) / own)
        return statistics.median(times), min(times), statistics.median(ratios)


def timed(run, prepared):
    start = time.perf_counter()
    run(prepared)
    return time.perf_counter() - start


class Case:
    """A frame case with names replaced by numbers."""

    def __init__(self, case):
        self.number = {node["id"]: index for index, node in enumerate(case["nodes"])}
        self.nodes = [(node["x"], node["y"]) for node in case["nodes"]]
        self.members = case["members"]
        self.ends = [(self.number[m["i"]], self.number[m["j"]]) for m in self.members]
        self.hinged = [(m["release_i"], m["release_j"]) for m in self.members]
        self.supports = {self.number[s["node"]]: (s["ux"], s["uy"], s["rz"]) for s in case["supports"]}
        self.line = {load["member"]: load["w1"] for load in case["loads"] if load["type"] == "dist"}
        self.pushed = {self.number[load["node"]]: load["Fx"] for load in case["loads"] if load["type"] == "node"}


class Banded:
    """The bent as a band matrix in LAPACK's storage, nodes in order of x."""

    def __init__(self, case):
        order = sorted(range(len(case.nodes)), key=lambda node: case.nodes[node])
        self.first = {node: 3 * place for place, node in enumerate(order)}
        size = 3 * len(order)
        self.load = numpy.zeros(size)
        blocks = []
        for member, (i, j), (hinge_i, hinge_j) in zip(case.members, case.ends, case.hinged):
            (x, y), (x2, y2) = case.nodes[i], case.nodes[j]
            length = numpy.hypot(x2 - x, y2 - y)
            cosine, sine = (x2 - x) / length, (y2 - y) / length
            stiffness, fixed = self.member(member, length, case.line.get(member["id"], 0.0) * cosine)
            for hinged, at in ((hinge_i, 2), (hinge_j, 5)):
                if hinged and stiffness[at, at] > 1e-9 * abs(stiffness).max():
                    fixed = fixed - stiffness[:, at] * fixed[at] / stiffness[at, at]
                    stiffness = stiffness - numpy.outer(stiffness[:, at], stiffness[at]) / stiffness[at, at]
                if hinged:
                    stiffness[at] = stiffness[:, at] = fixed[at] = 0.0
            turn = numpy.zeros((6, 6))
            for at in (0, 3):
                turn[at : at + 3, at : at + 3] = [[cosine, sine, 0], [-sine, cosine, 0], [0, 0, 1]]
            unknowns = [self.first[i] + k for k in range(3)] + [self.first[j] + k for k in range(3)]
            blocks.append((unknowns, turn.T @ stiffness @ turn))
            self.load[unknowns] += turn.T @ fixed
        self.width = max(max(unknowns) - min(unknowns) for unknowns, _ in blocks)
        self.band = numpy.zeros((self.width + 1, size))
        for unknowns, stiffness in blocks:
            for row, at_row in enumerate(unknowns):
                for column, at_column in enumerate(unknowns):
                    if at_row >= at_column:
                        self.band[at_row - at_column, at_column] += stiffness[row, column]
        for node, force in case.pushed.items():
            self.load[self.first[node]] += force
        largest = self.band[0].max()
        for node, held in case.supports.items():
            for k in range(3):
                if held[k]:
                    self.band[0, self.first[node] + k] += 1e9 * largest
        self.band[0, self.band[0] < 1e-9 * largest] = largest

    @staticmethod
    def member(member, length, w):
        axial, ei = member["E"] * member["A"] / length, member["E"] * member["I"]
        a, b, c, d = 12 * ei / length**3, 6 * ei / length**2, 4 * ei / length, 2 * ei / length
        stiffness = numpy.array(
            [
                [axial, 0, 0, -axial, 0, 0],
                [0, a, b, 0, -a, b],
                [0, b, c, 0, -b, d],
                [-axial, 0, 0, axial, 0, 0],
                [0, -a, -b, 0, a, -b],
                [0, b, d, 0, -b, c],
            ]
        )
        half, corner = w * length / 2, w * length**2 / 12
        return stiffness, numpy.array([0, half, corner, 0, half, -corner])

    def solve(self, copies):
        band, load = copies
        return scipy.linalg.solveh_banded(band, load, True, True, True, check_finite=False)

    def copies(self):
        return self.band.copy(), self.load.copy()

    def shifts(self):
        x = self.solve(self.copies())
        return [(x[self.first[node]], x[self.first[node] + 1]) for node in range(len(self.first))]


def opensees(case):
    import openseespy.opensees as ops

    ops.wipe()
    ops.model("basic", "-ndm", 2, "-ndf", 3)
    for node, (x, y) in enumerate(case.nodes):
        ops.node(node + 1, x, y)
    joined = {node for (i, j), (a, b) in zip(case.ends, case.hinged) for node, hinged in ((i, a), (j, b)) if not hinged}
    for node in range(len(case.nodes)):
        ux, uy, rz = case.supports.get(node, (False, False, False))
        ops.fix(node + 1, int(ux), int(uy), int(rz or node not in joined))
    ops.geomTransf("Linear", 1)
    ops.timeSeries("Linear", 1)
    ops.pattern("Plain", 1, 1)
    for tag, (member, (i, j), (a, b)) in enumerate(zip(case.members, case.ends, case.hinged), 1):
        hinges = ("-release", int(a) + 2 * int(b)) if a or b else ()
        ops.element("elasticBeamColumn", tag, i + 1, j + 1, member["A"], member["E"], member["I"], 1, *hinges)
        if member["id"] in case.line:
            ops.eleLoad("-ele", tag, "-type", "-beamUniform", case.line[member["id"]], 0.0)
    for node, force in case.pushed.items():
        ops.load(node + 1, force, 0.0, 0.0)
    ops.constraints("Plain")
    ops.numberer("RCM")
    ops.system("ProfileSPD")
    ops.algorithm("Linear")
    ops.integrator("LoadControl", 1.0)
    ops.analysis("Static")
    return ops


def pynite(case):
    from Pynite import FEModel3D

    model = FEModel3D()
    for node, (x, y) in enumerate(case.nodes):
        model.add_node(str(node), x, y, 0.0)
        ux, uy, rz = case.supports.get(node, (False, False, False))
        model.def_support(str(node), ux, uy, True, True, True, rz)
    for member, (i, j), (a, b) in zip(case.members, case.ends, case.hinged):
        name = member["id"]
        model.add_material(name, member["E"], member["E"] / 2.6, 0.3, 0.0)
        model.add_section(name, member["A"], member["I"], member["I"], member["I"])
        model.add_member(name, str(i), str(j), name, name)
        if a or b:
            model.def_releases(name, Rzi=a, Rzj=b)
        if name in case.line:
            model.add_member_dist_load(name, "FY", case.line[name], case.line[name])
    for node, force in case.pushed.items():
        model.add_node_load(str(node), "FX", force)
    return model


def anastruct(case):
    """Its frames with hinges come out singular: the same bent with every joint rigid."""
    from anastruct import SystemElements

    system = SystemElements(mesh=3)
    nodes = {}
    for member, (i, j) in zip(case.members, case.ends):
        ends = [list(case.nodes[i]), list(case.nodes[j])]
        tag = system.add_element(ends, EA=member["E"] * member["A"], EI=member["E"] * member["I"])
        nodes[i], nodes[j] = system.element_map[tag].node_id1, system.element_map[tag].node_id2
        if member["id"] in case.line:
            system.q_load(case.line[member["id"]], tag, "element")
    for node in case.supports:
        system.add_support_hinged(nodes[node])
    for node, force in case.pushed.items():
        system.point_load(nodes[node], Fx=force)
    return system


def farthest(left, right):
    left, right = numpy.array(left), numpy.array(right)
    return abs(left - right).max() / abs(left).max()


def compare(binary, legs):
    text = subprocess.run([binary, str(legs)], check=True, capture_output=True, text=True).stdout
    case = Case(json.loads(text)["cases"][0])
    own, banded = Own(binary, legs), Banded(case)
    shifts = banded.shifts()
    rows = [("LAPACK banded solve alone", own.beside(banded.solve, banded.copies))]

    ops = opensees(case)
    ops.analyze(1)
    found = [ops.nodeDisp(node + 1)[:2] for node in range(len(case.nodes))]
    assert farthest(shifts, found) < 1e-6, "OpenSees finds something else"
    rows.append(("OpenSees analysis call", own.beside(lambda ops: ops.analyze(1), lambda: opensees(case))))

    model = pynite(case)
    model.analyze_linear(check_stability=False)
    found = [(model.nodes[str(node)].DX["Combo 1"], model.nodes[str(node)].DY["Combo 1"]) for node in range(len(case.nodes))]
    assert farthest(shifts, found) < 1e-6, "PyNite finds something else"
    rows.append(("PyNite analysis call", own.beside(lambda model: model.analyze_linear(), lambda: pynite(case))))

    if legs <= 200:
        rows.append(("anaStruct analysis call, all joints rigid", own.beside(lambda s: s.solve(), lambda: anastruct(case))))

    print(f"{legs} legs: factorise, solve and all extremes {statistics.median(own.times) * 1e3:.3f} ms, least {own.least * 1e3:.3f}")
    for name, (seconds, least, ratio) in rows:
        by_least = f"{ratio:8.2f} times as long, {least / own.least:8.2f} by the least times"
        print(f"  {name:42} {seconds * 1e3:10.3f} ms {by_least}")


def main(binary, *legs):
    for count in legs or ("10", "50", "200", "1000"):
        compare(binary, int(count))


main(*sys.argv[1:])
