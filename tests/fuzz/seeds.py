"""Writes each case of ../data/frames/open.json, without what is expected of it, as a file of its own."""

import json
import pathlib
import sys

FEATURES = {
    "id": "features", "analysis": "linear",
    "nodes": [{"id": "a", "x": 0, "y": 0}, {"id": "b", "x": 2, "y": 0}, {"id": "c", "x": 2, "y": 2}],
    "members": [
        {"id": "m", "i": "a", "j": "b", "E": 1e6, "A": 0.1, "I": 1e-3, "GA": 1e4, "arms": [[0.1, 0], [0, 0.1]],
         "shear_release": [False, True], "weight": 1},
        {"id": "n", "i": "b", "j": "c", "E": 1e6, "A": 0.1, "I": 1e-3, "axial_release": [True, False], "acts": "tension"},
        {"id": "o", "i": "a", "j": "c", "E": 1e6, "A": 0.1, "I": 0, "acts": "compression"},
    ],
    "supports": [{"node": "a", "ux": True, "uy": True, "rz": True}, {"node": "c", "ux": True}],
    "springs": [{"node": "b", "dof": "rz", "k": 10}],
    "contacts": [{"node": "b", "dof": "uy", "pushes": 1}, {"node": "c", "dof": "uy", "pushes": -1, "k": 50}],
    "loads": [
        {"type": "self_weight", "factor": 1}, {"type": "settlement", "node": "a", "dof": "uy", "by": 0.01},
        {"type": "strain", "member": "m", "axial": 1e-4, "curvature": 1e-3},
        {"type": "gap", "member": "n", "a": 1, "along": 1e-3, "across": 0, "turn": 1e-3},
        {"type": "point", "member": "m", "dir": "y", "P": -3, "a": 0.5},
    ],
}


def main(folder):
    data = pathlib.Path(__file__).parent.parent / "data" / "frames" / "open.json"
    for case in json.loads(data.read_text())["cases"] + [FEATURES]:
        for known in ("expected", "disagreement", "family", "title"):
            case.pop(known, None)
        for analysis in ("linear", "linear_buckling", "second_order"):
            text = json.dumps({"cases": [{**case, "analysis": analysis}]})
            (pathlib.Path(folder) / f"{case['id']}-{analysis}.json").write_text(text)


main(sys.argv[1])
