#!/usr/bin/env python3
"""Second opinion on the beam of ninety-six elements, twenty-four rotors and three hangers that give (long_twenty_four() in
core/beam/beam_samples.h): writes beam_scipy.csv. With --serve it is the peer of bench/beam.cc: it reads lines "response N U"
and "critical U" (U unknowns a node, 2 or 4) and answers with the seconds that scipy needed.

Elements are integrated here from the shape functions of a Timoshenko beam (Friedman and Kosmatka, Computers and Structures 47,
1993), not typed as closed forms. Response: scipy.linalg.solve_banded of four real unknowns a node (x, y and both slopes, as
gyroscopics are usually written) and of two a node with the unknowns of one plane. Critical speeds: the pencil of second degree
w² M - w G - K, linearised and solved densely (scipy.linalg.eig); its positive roots are forward, its negative ones backward whirl.

Run with Debian's python3-scipy: /usr/bin/python3 tests/data/beam_scipy.py
"""
import os
import sys
import time

import numpy as np
import scipy
from scipy.linalg import eig, solve_banded
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import eigsh

HERE = os.path.dirname(os.path.abspath(__file__))
E, NU, RHO, GRAVITY = 207e9, 0.3, 7850.0, 9.80665
DIAMETER, STEP, COUNT = 0.06, 0.05, 96
AREA, INERTIA = np.pi / 4 * DIAMETER**2, np.pi / 64 * DIAMETER**4
SHEAR = 6 * (1 + NU) / (7 + 6 * NU) * E / (2 * (1 + NU)) * AREA
MASS, OFFSET, ACROSS, ALONG, SHARE, OWN = 8.0, 0.003, 0.06, 0.1, -0.004, 7.0
LEAN = np.radians(5)
ROTORS = [round((0.15 + 0.2 * i - (0.1 if i > 11 else 0)) / STEP) for i in range(24)]
HANGERS = [2, 48, 94]
STIFFNESS = 2e7
NODES = COUNT + 1


def element(rotary):
    """K and M over (w1, s1, w2, s2) by Gauss points of the shape functions."""
    length, phi = STEP, 12 * E * INERTIA / (SHEAR * STEP**2)
    x, w = np.polynomial.legendre.leggauss(6)
    x, w = (x + 1) / 2, w / 2 * length
    c = 1 / (1 + phi)
    out = c * np.array([2 * x**3 - 3 * x**2 - phi * x + 1 + phi,
                        length * (x**3 - (2 + phi / 2) * x**2 + (1 + phi / 2) * x),
                        -2 * x**3 + 3 * x**2 + phi * x,
                        length * (x**3 - (1 - phi / 2) * x**2 - phi / 2 * x)])
    d_out = c / length * np.array([6 * x**2 - 6 * x - phi, length * (3 * x**2 - (4 + phi) * x + 1 + phi / 2),
                                   -6 * x**2 + 6 * x + phi, length * (3 * x**2 - (2 - phi) * x - phi / 2)])
    tilt = c / length * np.array([6 * x**2 - 6 * x, length * (3 * x**2 - (4 + phi) * x + 1 + phi),
                                  -6 * x**2 + 6 * x, length * (3 * x**2 - (2 - phi) * x)])
    bend = c / length**2 * np.array([12 * x - 6, length * (6 * x - 4 - phi), -12 * x + 6, length * (6 * x - 2 + phi)])
    slip = d_out - tilt
    k = E * INERTIA * (bend * w) @ bend.T + SHEAR * (slip * w) @ slip.T
    m = RHO * AREA * (out * w) @ out.T + rotary * RHO * INERTIA * (tilt * w) @ tilt.T
    return k, m


def matrices(turn):
    """K, M and G of whirl in one direction (turn 1 forward, -1 backward): K - w² M + w G."""
    size = 2 * NODES
    k, m, g = np.zeros((size, size)), np.zeros((size, size)), np.zeros((size, size))
    ke, me = element(1 - 2 * turn)
    for i in range(COUNT):
        at = slice(2 * i, 2 * i + 4)
        k[at, at] += ke
        m[at, at] += me
    for h in HANGERS:
        k[2 * h, 2 * h] += STIFFNESS
    for r in ROTORS:
        m[2 * r, 2 * r] += MASS
        m[2 * r, 2 * r + 1] += MASS * OFFSET
        m[2 * r + 1, 2 * r] += MASS * OFFSET
        m[2 * r + 1, 2 * r + 1] += ACROSS - turn * SHARE * ALONG
        g[2 * r + 1, 2 * r + 1] += turn * OWN * ALONG
    return k, m, g


def roots(turn):
    k, m, g = matrices(turn)
    size, one = len(k), np.eye(len(k))
    # Scaled by diagonals and by a speed: places and slopes differ by powers of ten.
    scale = 1 / np.sqrt(np.diag(k))
    speed = 100.0
    k, m, g = (scale[:, None] * a * scale for a in (k, m * speed**2, g * speed))
    left = np.block([[np.zeros((size, size)), one], [k, g]])
    right = np.block([[one, np.zeros((size, size))], [np.zeros((size, size)), m]])
    w = eig(left, right, right=False)
    w = w[np.isfinite(w)]
    w = np.sort(w.real[(np.abs(w.imag) < 1e-6 * np.abs(w)) & (w.real > 0)])
    return speed * w[:6]


def loads(w):
    """Facing marks: rotors lean to 0 and 180 degrees in turn."""
    f = np.zeros(2 * NODES)
    for i, r in enumerate(ROTORS):
        sign = 1 if i % 2 == 0 else -1
        f[2 * r] += sign * MASS * OFFSET * np.sin(LEAN) * w**2
        f[2 * r + 1] += sign * (ACROSS * np.sin(LEAN) * np.cos(LEAN) - SHARE * ALONG * np.sin(LEAN)) * w**2
        f[2 * r + 1] -= sign * OWN * ALONG * np.sin(LEAN) * w
    return f


def weight():
    f = np.zeros(2 * NODES)
    q = -RHO * AREA * GRAVITY * STEP
    for i in range(COUNT):
        f[2 * i:2 * i + 4] += [q / 2, q * STEP / 12, q / 2, -q * STEP / 12]
    for r in ROTORS:
        f[2 * r] -= MASS * GRAVITY
        f[2 * r + 1] -= MASS * GRAVITY * OFFSET
    return f


def banded(a, half):
    size = len(a)
    out = np.zeros((2 * half + 1, size))
    for d in range(-half, half + 1):
        v = np.diagonal(a, d)
        out[half - d, max(d, 0):max(d, 0) + len(v)] = v
    return out


def both_planes(a):
    """One plane's matrix as that of both, four unknowns a node."""
    out = np.zeros((4 * NODES, 4 * NODES))
    for i in range(2 * NODES):
        for j in np.nonzero(a[i])[0]:
            for plane in (0, 1):
                out[4 * (i // 2) + 2 * plane + i % 2, 4 * (j // 2) + 2 * plane + j % 2] = a[i, j]
    return out


class Peer:
    """scipy as somebody who knows it would use it; matrices made once, outside the time."""

    def __init__(self):
        k, m, g = matrices(1)
        self.two = [banded(a, 3) for a in (k, m, g)]
        self.four = [banded(both_planes(a), 7) for a in (k, m, g)]
        unit = loads(1.0), loads(2.0)
        self.by_w2 = (unit[1] - 2 * unit[0]) / 2
        self.by_w = unit[0] - self.by_w2
        self.four_w2 = both_planes(np.diag(self.by_w2)).diagonal()
        self.four_w = both_planes(np.diag(self.by_w)).diagonal()
        # eigsh wants a pencil of first degree: the rolling spin stands as a share of a speed of 50 rad/s.
        k, _, _ = matrices(1)
        each = [m - g / 50.0 for _, m, g in (matrices(1), matrices(-1))]
        self.eigen_two = [(csc_matrix(k), csc_matrix(m)) for m in each]
        # Both whirls at once, as K x = w² (M - iG) x: x and y by the mean of both, coupled by half their difference.
        mean, half = (each[0] + each[1]) / 2, (each[0] - each[1]) / 2
        both = np.block([[mean, 1j * half], [-1j * half, mean]])
        self.eigen_four = csc_matrix(np.kron(np.eye(2), k).astype(complex)), csc_matrix(both)

    def response(self, count, unknowns):
        k, m, g = self.two if unknowns == 2 else self.four
        by_w2, by_w = (self.by_w2, self.by_w) if unknowns == 2 else (self.four_w2, self.four_w)
        half = 3 if unknowns == 2 else 7
        start = time.perf_counter()
        out = []
        for w in np.linspace(450.0 / count, 450.0, count):
            x = solve_banded((half, half), k - w * w * m + w * g, by_w2 * w * w + by_w * w, overwrite_ab=True,
                             overwrite_b=True, check_finite=False)
            out.append([STIFFNESS * abs(x[unknowns * h]) for h in HANGERS])
        return time.perf_counter() - start, out

    def critical(self, unknowns):
        start = time.perf_counter()
        if unknowns == 2:
            out = [eigsh(k, 6, m, sigma=0, return_eigenvectors=False) for k, m in self.eigen_two]
        else:
            out = [eigsh(self.eigen_four[0], 12, self.eigen_four[1], sigma=0, return_eigenvectors=False)]
        return time.perf_counter() - start, [np.sqrt(np.sort(w.real)) for w in out]


def serve():
    peer = Peer()
    for line in sys.stdin:
        words = line.split()
        if words[0] == "response":
            took, out = peer.response(int(words[1]), int(words[2]))
            print("%.9f %.12g" % (took, out[-1][0]), flush=True)
        else:
            took, out = peer.critical(int(words[1]))
            print("%.9f %.12g" % (took, min(w[0] for w in out)), flush=True)


def main():
    with open(os.path.join(HERE, "beam_scipy.csv"), "w", encoding="utf-8") as out:
        out.write("# Written by beam_scipy.py with scipy %s, numpy %s, Debian 12.\n" % (scipy.__version__, np.__version__))
        out.write("# Tolerance 1e-8 of the value: the matrix of this fine mesh leaves so much.\n")
        out.write("what,at,value\n")
        k, _, _ = matrices(0)
        x = np.linalg.solve(k, weight())
        for i, h in enumerate(HANGERS):
            out.write("rest,%d,%.12g\n" % (i + 1, STIFFNESS * abs(x[2 * h])))
        for name, turn in (("forward", 1), ("backward", -1)):
            for i, w in enumerate(roots(turn)):
                out.write("%s,%d,%.12g\n" % (name, i + 1, w))
        peer = Peer()
        _, two = peer.response(500, 2)
        _, four = peer.response(500, 4)
        assert np.allclose(two, four, rtol=1e-7)
        for row in (49, 99, 249, 499):
            for i, force in enumerate(two[row]):
                out.write("turning_%d,%d,%.12g\n" % (row + 1, i + 1, force))


if "--serve" in sys.argv:
    serve()
else:
    main()
