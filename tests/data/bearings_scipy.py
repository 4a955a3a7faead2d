#!/usr/bin/env python3
"""Second opinion on free tilt of a ball bearing, independent of the formulas: writes bearings_tilt.csv.

The inner ring is a rigid body with five freedoms. Its circle of groove centres is turned and shifted in space; in the plane of each
ball the distance from the outer groove's centre to that circle may not pass A = r_i + r_e - D_w, or the ball would be squeezed. The
greatest tilt that some shift allows is searched (scipy SLSQP) for 24 positions of the cage over one ball pitch. Nothing is
linearised.

Run with Debian's python3-scipy: /usr/bin/python3 tests/data/bearings_scipy.py
"""
import csv
import os

import numpy
import scipy
from scipy.optimize import minimize

HERE = os.path.dirname(os.path.abspath(__file__))
NOTE = f"# Written by bearings_scipy.py with scipy {scipy.__version__}, numpy {numpy.__version__}, Debian 12."
CAGES = 24


def slack(x, balls, first, inner, outer, reach, scale, shift):
    """A less the distance of the groove centres in the plane of each ball, in units of the scale squared. x: tilt, shifts."""
    tilt = x[0] * scale / inner
    dx, dy, dz = x[1] * shift, x[2] * shift, x[3] * scale
    psi = first + 2 * numpy.pi * numpy.arange(balls) / balls
    phi = psi.copy()
    for _ in range(6):  # Where the turned circle meets the plane of the ball.
        px = dx + inner * numpy.cos(phi)
        py = dy + inner * numpy.cos(tilt) * numpy.sin(phi)
        phi = phi + (px * numpy.sin(psi) - py * numpy.cos(psi)) / inner
    px = dx + inner * numpy.cos(phi)
    py = dy + inner * numpy.cos(tilt) * numpy.sin(phi)
    pz = dz + inner * numpy.sin(tilt) * numpy.sin(phi)
    radial = px * numpy.cos(psi) + py * numpy.sin(psi) - outer
    return (reach**2 - radial**2 - pz**2) / scale**2


def tilt(balls, first, inner, outer, reach):
    scale = numpy.sqrt(reach**2 - (inner - outer) ** 2)
    shift = reach - (inner - outer)
    args = (balls, first, inner, outer, reach, scale, shift)
    limit = {"type": "ineq", "fun": lambda x: slack(x, *args)}
    starts = ([0.9, 0, 0, 0], [0.7, 0.1, 0.05, 0.02], [0.7, -0.1, -0.05, -0.02], [0.5, 0.05, -0.1, 0.05])
    found = [minimize(lambda x: -x[0], start, constraints=[limit], method="SLSQP", options={"ftol": 1e-10, "maxiter": 500}).x
             for start in starts]
    allowed = [x[0] for x in found if min(slack(x, *args)) > -1e-7]
    assert len(allowed) >= 2, first
    return max(allowed) * scale / inner


def row(name, balls, ball, pitch, groove, clearance):
    reach = (2 * groove - 1) * ball
    inner = pitch / 2 + (groove - 0.5) * ball - clearance / 4
    outer = pitch / 2 - (groove - 0.5) * ball + clearance / 4
    turn = 2 * numpy.pi / balls / CAGES
    found = [tilt(balls, numpy.pi / 2 + i * turn, inner, outer, reach) for i in range(CAGES)]
    return [name, balls, ball, pitch, groove, clearance * 1e3, *(f"{v:.8e}" for v in
            (min(found), float(numpy.mean(found)), max(found)))]


with open(os.path.join(HERE, "bearings_tilt.csv"), "w", newline="") as out:
    out.write(NOTE + "\n# Lengths in mm, clearance in um, tilt to one side in radians: least, mean, greatest over the cage's position.\n")
    write = csv.writer(out, lineterminator="\n")
    write.writerow(["id", "balls", "ball_mm", "pitch_mm", "groove", "clearance_um", "least", "mean", "greatest"])
    for balls in range(6, 21):
        write.writerow(row(f"Z{balls}", balls, 14.288, 77.5, 0.52, 0.020))
    write.writerow(row("tight", 10, 14.288, 77.5, 0.52, 0.005))
    write.writerow(row("worn", 10, 14.288, 77.5, 0.52, 0.100))
    write.writerow(row("worn-odd", 9, 11.906, 60.0, 0.52, 0.100))
    write.writerow(row("open-grooves", 9, 7.938, 38.5, 0.53, 0.020))
