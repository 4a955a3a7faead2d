#!/usr/bin/env python3
"""Second opinion on the tilt of a rotor that hangs on its bearing, with single balls: writes bearings_hanging.csv.

A ring that is sunk, shifted and tilted may squeeze no ball: (along + tilt sin)^2 <= 1 + down cos + side sin at each, in units of half
the free play either way. Of all places that allows, weight and couple take the one where they have given most (scipy SLSQP; convex,
so there is one). The mean over the cage's position is held against that of a push that the weight does not matter beside.

Run with Debian's python3-scipy: /usr/bin/python3 tests/data/bearings_hanging_scipy.py
"""
import csv
import os

import numpy
import scipy
from scipy.optimize import minimize

HERE = os.path.dirname(os.path.abspath(__file__))
NOTE = f"# Written by bearings_hanging_scipy.py with scipy {scipy.__version__}, numpy {numpy.__version__}, Debian 12."
BALL, PITCH, GROOVE, CLEARANCE, RADIUS = 14.288, 77.5, 0.52, 0.020, 250.0
CAGES = 24

REACH = (2 * GROOVE - 1) * BALL
COSINE = 1 - CLEARANCE / (2 * REACH)
CIRCLE = PITCH / 2 + (GROOVE - 0.5) * BALL * COSINE
ALONG = REACH * numpy.sqrt(1 - COSINE**2)  # Half the free play along the shaft.


def tilt(balls, first, push, plane):
    """Tilt in units of ALONG / CIRCLE. plane 0: the rim moves at top and bottom; pi/2: at the sides."""
    psi = first + 2 * numpy.pi * numpy.arange(balls) / balls
    arm = numpy.cos(psi - plane)
    given = lambda x: -(x[0] * CLEARANCE / 2 + push * RADIUS * x[2] * ALONG / CIRCLE) / (1 + push)
    slack = lambda x: 1 + x[0] * numpy.cos(psi) + x[1] * numpy.sin(psi) - (x[3] + x[2] * arm) ** 2
    found = [minimize(given, start, constraints=[{"type": "ineq", "fun": slack}], method="SLSQP",
                      options={"ftol": 1e-13, "maxiter": 1000})
             for start in ([0.9, 0, 0.5, 0], [0.5, 0.05, 0.6, 0.05], [0.2, -0.1, 0.8, 0.05])]
    allowed = [f for f in found if min(slack(f.x)) > -1e-6]
    assert allowed, (balls, first, push)
    return min(allowed, key=lambda f: f.fun).x[2]


def over_cages(balls, push, plane):
    return [tilt(balls, 2 * numpy.pi * i / balls / CAGES, push, plane) for i in range(CAGES)]


with open(os.path.join(HERE, "bearings_hanging.csv"), "w", newline="") as out:
    out.write(NOTE + f"\n# {BALL} mm balls on {PITCH} mm, groove {GROOVE}, {CLEARANCE * 1e3:g} um, couple of a push at {RADIUS:g} mm;"
              " shares of the mean tilt when carried.\n")
    write = csv.writer(out, lineterminator="\n")
    write.writerow(["id", "balls", "plane", "push_over_weight", "tilt", "least", "mean", "greatest"])
    for plane, angle in (("upright", 0.0), ("level", numpy.pi / 2)):
        for balls in (7, 8, 9, 10, 12, 15, 60):
            carried = float(numpy.mean(over_cages(balls, 300.0, angle)))
            for push in (0.05, 0.1, 0.2, 0.5):
                share = numpy.array(over_cages(balls, push, angle)) / carried
                write.writerow([f"{plane}-Z{balls}-{push}", balls, plane, push, f"{carried * ALONG / CIRCLE:.8e}",
                                *(f"{v:.4f}" for v in (share.min(), share.mean(), share.max()))])
