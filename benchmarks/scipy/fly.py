"""Answers the benchmark program: one request a line on standard input, one answer a line, both JSON.

    python3 fly.py FOLDER

The folder holds craft.json and table.f64 (model.py), and for each manoeuvre NAME.json (start, hold time) and NAME.f64
(duties of the rotors, hold after hold). Requests:

    {"do": "check"}    derivatives at the states in check.f64 against those of the benchmark program
    {"do": "fly", "manoeuvre", "method", "rtol", "atol", "holds", "max_step", "pieces"}
                       solve_ivp over each hold; in several pieces where a controller would run so often
"""

import json
import pathlib
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp

from model import Model


def check(model, folder):
    states = len_state(model)
    rows = np.fromfile(folder / "check.f64", dtype="<f8").reshape(-1, 2 * states + len(model.spin))
    worst, where, residue = 0.0, 0, 0.0
    # numbers that belong together share a scale, so that a component near zero does not blow up
    groups = [slice(0, 3), slice(3, 6), slice(6, 10), slice(10, 13), slice(13, 14), slice(14, 15), slice(15, states)]
    for row in rows:
        state, duty, theirs = row[:states], row[states:-states], row[-states:]
        ours = model.derivative(state, duty)
        for group in groups:
            error = np.abs(ours[group] - theirs[group]).max() / max(np.abs(ours[group]).max(), 1e-12)
            if error > worst:
                worst, where = float(error), group.start
        voltage, current, motors = model.pack(state, duty)
        drawn = model.electronics + (motors * (model.kt * state[15:] + model.resistance * motors)).sum()
        residue = max(residue, abs(voltage * current - drawn) / max(abs(drawn), 1.0))
    return {"states": len(rows), "worst": worst, "where": where, "power_residue": float(residue)}


def len_state(model):
    return 15 + len(model.spin)


def fly(model, folder, wish):
    told = json.loads((folder / (wish["manoeuvre"] + ".json")).read_text())
    duties = np.fromfile(folder / (wish["manoeuvre"] + ".f64"), dtype="<f8").reshape(-1, len(model.spin))
    state, hold = np.array(told["start"]), told["hold"]
    holds, pieces = wish.get("holds") or len(duties), wish.get("pieces", 1)
    options = {"method": wish["method"], "rtol": wish["rtol"], "atol": wish["atol"], "max_step": wish.get("max_step") or np.inf}
    evaluations, path = 0, []
    # core time: a run is too long to find a moment in which nothing else works
    begin = time.process_time()
    for duty in duties[:holds]:
        for _ in range(pieces):
            piece = solve_ivp(lambda t, x: model.derivative(x, duty), (0, hold / pieces), state, **options)
            state = piece.y[:, -1]
            evaluations += piece.nfev
        path.append(state)
    seconds = time.process_time() - begin
    return {"seconds": seconds, "flown": holds * hold, "evaluations": evaluations, "path": np.array(path).tolist() if wish.get("path") else []}


def main():
    folder = pathlib.Path(sys.argv[1])
    model = Model(folder)
    print(json.dumps({"python": sys.version.split()[0], "numpy": np.__version__, "scipy": scipy.__version__}), flush=True)
    for line in sys.stdin:
        wish = json.loads(line)
        answer = check(model, folder) if wish["do"] == "check" else fly(model, folder, wish)
        print(json.dumps(answer), flush=True)


if __name__ == "__main__":
    main()
