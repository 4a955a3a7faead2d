#!/usr/bin/env python3
"""Second opinion on press fits, independent of closed forms: writes fits_scipy_joint.csv and fits_scipy_friction.csv.

Joints: the equilibrium equation u'' + u'/r - u/r^2 = 0 of each ring is solved numerically (scipy solve_bvp) under one
pascal at the joint; the pressure that closes the interference follows (scipy brentq). Nothing of Lame's solution is used.
Friction: prediction interval for one new observation from scipy.stats.t.

Run with Debian's python3-scipy: /usr/bin/python3 tests/data/fits_scipy.py
"""
import csv
import os

import numpy
import scipy
from scipy.integrate import solve_bvp
from scipy.optimize import brentq
from scipy.stats import t as student

HERE = os.path.dirname(os.path.abspath(__file__))
NOTE = f"# Written by fits_scipy.py with scipy {scipy.__version__}, numpy {numpy.__version__}, Debian 12."


def growth(inside, outside, modulus, poisson, pressure_inside, pressure_outside):
    """Radial movement at inside and outside, and the hoop stress there, of a ring in plane stress; radii in m."""
    c = modulus / (1 - poisson**2)

    def slope(r, y):
        return numpy.vstack((y[1], y[0] / r**2 - y[1] / r))

    def ends(a, b):
        return numpy.array([
            (c * (a[1] + poisson * a[0] / inside) + pressure_inside) / 1e6,
            (c * (b[1] + poisson * b[0] / outside) + pressure_outside) / 1e6,
        ])

    r = numpy.linspace(inside, outside, 200)
    scale = max(pressure_inside, pressure_outside) * outside / modulus
    start = numpy.vstack((numpy.full_like(r, scale), numpy.zeros_like(r)))
    found = solve_bvp(slope, ends, r, start, tol=1e-10, max_nodes=200000)
    assert found.success, found.message
    y = found.sol(numpy.array([inside, outside]))
    hoop = c * (y[0] / numpy.array([inside, outside]) + poisson * y[1])
    return y[0], hoop


def joint(diameter, ring_inside, hub_outside, ring, hub, interference):
    d, di, do = diameter / 2, ring_inside / 2, hub_outside / 2

    def gap(p):
        hub_move, _ = growth(d, do, *hub, p, 0.0)
        ring_move, _ = growth(di, d, *ring, 0.0, p)
        return (hub_move[0] - ring_move[1]) * 2 - interference

    p = brentq(gap, 1e5, 1e9, xtol=1e-3, rtol=1e-12)
    _, hub_hoop = growth(d, do, *hub, p, 0.0)
    ring_move, ring_hoop = growth(di, d, *ring, 0.0, p)
    return p, hub_hoop[0], ring_hoop[1], ring_hoop[0], 2 * ring_move[0]


STEEL, IRON, DUCTILE, ALLOY = (207e9, 0.30), (110e9, 0.26), (169e9, 0.275), (71e9, 0.33)
JOINTS = [
    (0.120, 0.107, 0.180, STEEL, IRON, 45e-6),
    (0.090, 0.080, 0.130, STEEL, DUCTILE, 30e-6),
    (0.090, 0.080, 0.110, STEEL, ALLOY, 25e-6),
    (0.062, 0.052, 0.090, STEEL, STEEL, 20e-6),
    (0.200, 0.150, 0.600, STEEL, IRON, 100e-6),
    (0.0254, 0.0127, 0.0508, IRON, STEEL, 10e-6),
]
# Friction read from presses of one shop, invented numbers.
SHOPS = [
    [0.105, 0.112, 0.098, 0.121, 0.109, 0.117, 0.101, 0.110],
    [0.131, 0.127, 0.140, 0.119, 0.136, 0.125, 0.133, 0.129, 0.122, 0.138, 0.128, 0.134],
]


def main():
    with open(os.path.join(HERE, "fits_scipy_joint.csv"), "w", newline="") as file:
        file.write(NOTE + "\n# Lengths in m, moduli and stresses in Pa; raceway: change of the ring's inside diameter.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow("diameter ring_inside hub_outside ring_e ring_nu hub_e hub_nu interference pressure hub_hoop"
                     " ring_hoop ring_inside_hoop raceway".split())
        for d, di, do, ring, hub, delta in JOINTS:
            found = joint(d, di, do, ring, hub, delta)
            out.writerow([d, di, do, *ring, *hub, delta, *(f"{x:.10e}" for x in found)])
    with open(os.path.join(HERE, "fits_scipy_friction.csv"), "w", newline="") as file:
        file.write(NOTE + "\n# each: friction of each press, joined by spaces; 95 % prediction interval of one more.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["each", "mean", "deviation", "least", "greatest"])
        for each in SHOPS:
            x = numpy.array(each)
            n, mean, s = len(x), x.mean(), x.std(ddof=1)
            least, greatest = student.interval(0.95, n - 1, loc=mean, scale=s * numpy.sqrt(1 + 1 / n))
            out.writerow([" ".join(map(str, each)), *(f"{v:.12f}" for v in (mean, s, least, greatest))])


if __name__ == "__main__":
    main()
