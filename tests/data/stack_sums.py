#!/usr/bin/env python3
"""Makes stack_sums.csv: quantiles of sums of lengths by another method than the program's.

Rectangular parts: the exact piecewise polynomial (inclusion and exclusion over all corners) in whole-number fractions.
A normal or t part on top: scipy's quadrature of that polynomial against its density. Root by scipy's brentq.
Run with Debian's python3-scipy:  python3 stack_sums.py > stack_sums.csv
"""
from fractions import Fraction
from math import factorial
import itertools

from scipy import integrate, optimize, stats


def uniform_cdf(halves):
    """Exact cumulative distribution of a sum of rectangles about nought, as a function of a float."""
    widths = [2 * Fraction(h) for h in halves]
    corners = {}
    for signs in itertools.product((0, 1), repeat=len(widths)):
        at = sum(w for w, s in zip(widths, signs) if s)
        corners[at] = corners.get(at, 0) + (-1) ** sum(signs)
    scale = Fraction(factorial(len(widths)))
    for w in widths:
        scale *= w
    middle = sum(widths) / 2

    def cdf(x):
        if x <= -middle:
            return 0.0
        if x >= middle:
            return 1.0
        y = Fraction(x) + middle
        return float(sum(c * (y - at) ** len(widths) for at, c in corners.items() if y > at and c) / scale)

    return cdf


def total_cdf(halves, extra):
    if not halves:
        return extra.cdf
    inner = uniform_cdf(halves)
    if extra is None:
        return inner
    reach = float(sum(Fraction(h) for h in halves))

    def cdf(x):
        middle = integrate.quad(lambda z: inner(x - z) * extra.pdf(z), x - reach, x + reach, epsabs=1e-13, epsrel=1e-12, limit=400)[0]
        return middle + extra.cdf(x - reach)

    return cdf


CASES = [
    ("one", ["0.1"], 0, 0),
    ("two alike", ["0.1", "0.1"], 0, 0),
    ("two", ["0.1", "0.03"], 0, 0),
    ("four of a worked stack-up", ["0.1", "0.05", "0.03", "0.05"], 0, 0),
    ("five alike", ["0.1"] * 5, 0, 0),
    ("ten alike", ["0.1"] * 10, 0, 0),
    ("twelve mixed", ["0.05", "0.05", "0.05", "0.05", "0.1", "0.1", "0.1", "0.02", "0.02", "0.02", "0.075", "0.075"], 0, 0),
    ("one wide two narrow", ["0.5", "0.005", "0.005"], 0, 0),
    ("normal alone", [], "0.04", 0),
    ("one and normal", ["0.1"], "0.02", 0),
    ("four and normal", ["0.1", "0.05", "0.03", "0.05"], "0.05", 0),
    ("three and t of three", ["0.1", "0.1", "0.05"], "0.02", 3),
    ("t of five alone", [], "0.02", 5),
    ("four and t of two", ["0.1", "0.05", "0.03", "0.05"], "0.03", 2),
    ("two and t of twelve and a half", ["0.1", "0.1"], "0.06", 12.5),
]

print("# Sums of part lengths about their middle, millimetres. Source: made by stack_sums.py with scipy 1.10.1 and exact fractions.")
print("# halves: half widths of rectangular parts, joined by +. scale, degrees: one normal (degrees 0) or t part more.")
print("# q975: 97.5 % quantile; f1: cumulative at q975 / 2. Tolerance: 1e-7 of q975, 1e-7 in f1; t: 1e-5.")
print("case,halves,scale,degrees,q975,f1")
for name, halves, scale, degrees in CASES:
    extra = None
    if scale:
        extra = stats.t(degrees, scale=float(scale)) if degrees else stats.norm(scale=float(scale))
    cdf = total_cdf(halves, extra)
    top = float(sum(Fraction(h) for h in halves)) + 60 * float(scale)
    q = optimize.brentq(lambda x: cdf(x) - 0.975, 0, top, xtol=1e-15, rtol=1e-14)
    print(f"{name},{'+'.join(halves)},{scale},{degrees},{q:.12g},{cdf(q / 2):.12g}")
