#!/usr/bin/env python3
"""Second opinion on readings and their uncertainty: writes metrology_scipy_quantiles.csv and metrology_scipy_planes.csv.

Quantiles: scipy.stats.t and norm.
Planes: every reading brought to 20 deg C one by one with the ratio of expansions (not the linear form), form by
scipy.linalg.lstsq, its covariance by the pseudo-inverse, each influence by shifting it and computing everything again
(no sensitivity by formula), degrees of freedom by Welch and Satterthwaite, factors from scipy.stats.t, the bound for a
round bore from scipy.stats.f.

Run with Debian's python3-scipy: /usr/bin/python3 tests/data/metrology_scipy.py
"""
import csv
import math
import os

import numpy
import scipy
from scipy import linalg, stats

HERE = os.path.dirname(os.path.abspath(__file__))
NOTE = f"# Written by metrology_scipy.py with scipy {scipy.__version__}, numpy {numpy.__version__}, Debian 12."


def write(name, notes, heads, rows):
    with open(os.path.join(HERE, name), "w", newline="", encoding="utf-8") as file:
        for note in [NOTE] + notes:
            file.write(note + "\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(heads)
        out.writerows(rows)


def quantiles():
    rows = []
    for nu in (1, 2, 3, 4, 5, 7, 9, 12, 16, 24, 50, 100, 299, 301, 1000, 5000):
        for p in (0.6, 0.9, 0.95, 0.975, 0.9875, 0.995, 0.9999):
            t = stats.t.ppf(p, nu)
            rows.append(["student", p, nu, f"{t:.15g}"])
    for p in (0.5, 0.9, 0.95, 0.975, 0.995, 0.9999):
        rows.append(["normal", p, "", f"{stats.norm.ppf(p):.15g}"])
    write("metrology_scipy_quantiles.csv", ["# p-quantile of Student's distribution with nu degrees of freedom."],
          ["kind", "p", "nu", "quantile"], rows)


def form(case, values):
    """Mean, cos and sin part of the form at 20 deg C for shifted influences, in metres."""
    read = values["scale_add"] + numpy.array(case["readings"])
    part = 1 + values["ap"] * (values["tp"] - 20)
    gauge = 1 + values["ag"] * (values["tg"] - 20)
    at20 = read * gauge / part
    theta = numpy.radians(case["directions"])
    x = numpy.column_stack((numpy.ones(len(theta)), numpy.cos(2 * theta), numpy.sin(2 * theta)))
    return linalg.lstsq(x, at20)[0], x


def plane(case):
    nominal = {"scale_add": 0.0, "ap": case["ap"], "ag": case["ag"], "tp": case["tp"], "tg": case["tg"]}
    beta, x = form(case, nominal)
    cov = linalg.pinv(x.T @ x)
    one = math.hypot(case["s"], case["resolution"] / math.sqrt(12))
    one_dof = case["n_s"] - 1
    k_own = stats.t.ppf(0.975, math.floor(one_dof))
    raw = math.hypot(beta[1], beta[2])
    unit = numpy.array([0.0, beta[1] / raw, beta[2] / raw])
    noise = one**2 * (cov[1, 1] + cov[2, 2])
    # A round bore shows R^2 / (noise/2) as chi-square with two degrees of freedom over its estimate: 2 F(2, nu).
    tail = 2 * stats.f.isf(0.02, 2, one_dof)
    half = math.sqrt(max(0.0, raw**2 - noise))
    low = math.sqrt(max(0.0, raw**2 - max(1.0, tail - k_own**2) * noise / 2))
    allowance = max(raw - half, half - low)

    influences = [("scale_add", case["calibration"] / 2), ("scale_add", case["ring"] / 2),
                  ("scale_add", case["resolution"] / math.sqrt(12)),
                  ("ap", case["ap"] * 0.1 / math.sqrt(3)), ("ag", case["ag"] * 0.1 / math.sqrt(3)),
                  ("tp", case["u_tp"]), ("tg", case["u_tg"])]
    common = 0.0
    for name, u in influences:
        up, down = dict(nominal), dict(nominal)
        up[name] += u
        down[name] -= u
        common += ((form(case, up)[0][0] - form(case, down)[0][0]) / 2) ** 2
    size = beta[0]
    for name_a, name_t in (("ap", "u_tp"), ("ag", "u_tg")):
        common += (size * case[name_a] * 0.1 / math.sqrt(3) * case[name_t]) ** 2

    def expanded(direction):
        own2 = one**2 * direction @ cov @ direction
        u2 = own2 + common
        dof = math.floor(u2**2 / (own2**2 / one_dof))
        return math.sqrt(u2), stats.t.ppf(0.975, dof) * math.sqrt(u2)

    mean = numpy.array([1.0, 0.0, 0.0])
    u_mean, big_mean = expanded(mean)
    _, big_least = expanded(mean - unit)
    _, big_greatest = expanded(mean + unit)
    big_oval = 2 * (k_own * one * math.sqrt(unit @ cov @ unit) + allowance)
    return [size, u_mean, big_mean, size - half, big_least + allowance, size + half, big_greatest + allowance,
            2 * half, big_oval]


def cases():
    rng = numpy.random.default_rng(20261125)
    sets = [[0, 45, 90, 135], [0, 60, 120], [10, 70, 130, 100], [0, 45, 90, 135, 0, 45, 90, 135], [0, 30, 60, 90, 120, 150],
            [0, 45, 90], [200, 245, 290, 335, 20]]
    for i in range(21):
        directions = sets[i % len(sets)]
        size = (0.1, 0.052, 0.24)[i // len(sets)]
        oval = (0.0, 3e-6, 22e-6)[i % 3]
        theta = numpy.radians(directions)
        s = float(rng.choice([0.7e-6, 1.5e-6, 3e-6]))
        readings = size + oval / 2 * numpy.cos(2 * (theta - 0.4)) + rng.normal(0, s, len(directions))
        yield {"directions": directions, "readings": [round(float(v), 7) for v in readings], "s": s,
               "n_s": int(rng.choice([5, 10, 30])), "calibration": float(rng.choice([1e-6, 3e-6])),
               "ring": float(rng.choice([0.0, 1.5e-6])), "resolution": float(rng.choice([0.5e-6, 1e-6, 2.54e-6])),
               "ap": float(rng.choice([10.5e-6, 11.5e-6, 23e-6])), "ag": 11.5e-6,
               "tp": float(rng.choice([14, 20, 27.5])), "tg": float(rng.choice([18, 20, 23])),
               "u_tp": float(rng.choice([0.5, 2.886751345948129])), "u_tg": 0.5}


def planes():
    heads = ["directions_deg", "readings_m", "s", "n_s", "calibration", "ring", "resolution", "ap", "ag", "tp", "tg",
             "u_tp", "u_tg", "mean", "u_mean", "U_mean", "least", "U_least", "greatest", "U_greatest", "ovality",
             "U_ovality"]
    rows = []
    for case in cases():
        row = [" ".join(str(d) for d in case["directions"]), " ".join(f"{r:.7f}" for r in case["readings"])]
        row += [f"{case[k]:.16g}" for k in heads[2:13]]
        rows.append(row + [f"{v:.13e}" for v in plane(case)])
    write("metrology_scipy_planes.csv", ["# Lengths in m, temperatures in deg C, expansions in 1/K."], heads, rows)


quantiles()
planes()
