#!/usr/bin/env python3
"""Torsion and shear of regular polygons, across flats 1: writes beam_sections.csv, from which core/beam/section_table.cc
was copied.

Torsion: Prandtl's function as a harmonic function less r²/2, nought on the boundary. The harmonic function is a sum of
powers and of poles crowded exponentially near the corners (Gopal and Trefethen, SIAM J. Numer. Anal. 57, 2019), fitted on half
a side by least squares; symmetry does the rest. K is the polar moment less the energy of the harmonic function.
Shear: Cowper's flexure function (J. Appl. Mech. 33, 1966), linear in Poisson's ratio, as a harmonic polynomial fitted to the
slope it has on the boundary. The circle gives 7/6 and 1, the square 6/5 and 11/10, as he prints them: asserted below.

Run with Debian's python3-numpy: /usr/bin/python3 tests/data/beam_sections.py
"""
import os

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))


def torsion(n, poles=40, powers=24):
    half_side, corner = 0.5 * np.tan(np.pi / n), 0.5 / np.cos(np.pi / n)
    turn = np.exp(-1j * np.pi / n)  # The corner comes to lie on the real axis.
    y = half_side * np.concatenate([1 - np.logspace(-14, 0, 500), np.linspace(0, 1, 100)])
    k = np.arange(1, poles + 1)
    beyond = 2 * np.exp(-4 * (np.sqrt(poles) - np.sqrt(k))) * corner
    strength = beyond * (corner + beyond) ** (n - 1)

    def basis(z):
        value, slope = [np.ones_like(z)], [np.zeros_like(z)]
        for p, q in zip(corner + beyond, strength):
            value.append(q / (z**n - p**n))
            slope.append(-q * n * z ** (n - 1) / (z**n - p**n) ** 2)
        for m in range(1, powers):
            value.append((z / corner) ** (n * m))
            slope.append(n * m * (z / corner) ** (n * m - 1) / corner)
        return np.array(value).T, np.array(slope).T

    rows = basis((0.5 + 1j * y) * turn)[0].real
    scale = np.linalg.norm(rows, axis=0)
    fit = np.linalg.lstsq(rows / scale, 0.5 * (0.25 + y**2), rcond=1e-15)[0] / scale
    t, w = np.polynomial.legendre.leggauss(400)
    t, w = (t + 1) / 2, w / 2
    value, slope = basis((0.5 + 1j * half_side * (1 - t**4)) * turn)
    energy = 2 * n * half_side * np.sum(w * 4 * t**3 * (value @ fit).real * (slope @ fit * turn).real)
    side = 2 * half_side
    second_moment = n * side * 0.25 / 24 * (6 * corner**2 - side**2)
    constant = 2 * second_moment - energy
    stress = 0.5 - (basis(np.array([0.5 * turn]))[1] @ fit * turn).real[0]
    return constant, constant / stress


def boundary(n, points=400):
    if n == 0:
        z = np.exp(2j * np.pi * np.arange(points) / points)
        return z, z, np.full(points, 2 * np.pi / points)
    t, w = np.polynomial.legendre.leggauss(points)
    s = np.sin(np.pi * (t + 1) / 4) ** 2
    ws = w / 2 * np.pi * np.sqrt(s * (1 - s))
    corners = np.exp(2j * np.pi * np.arange(n + 1) / n)
    z = np.concatenate([a + (b - a) * s for a, b in zip(corners, corners[1:])])
    normal = np.repeat(np.exp(1j * np.pi * (2 * np.arange(n) + 1) / n), points)
    return z, normal, np.concatenate([ws * abs(b - a) for a, b in zip(corners, corners[1:])])


def shear(n, degree):
    z, normal, weight = boundary(n)
    x, y, l, m = z.real, z.imag, normal.real, normal.imag
    k = np.arange(1, degree + 1)
    slopes = (z[:, None] ** (k - 1) * normal[:, None]).real
    root = np.sqrt(weight)
    wanted = [-l * y**2 - 2 * m * x * y, -l * (x**2 - y**2) / 2 - m * x * y]
    fits = [np.linalg.lstsq(slopes * root[:, None], b * root, rcond=1e-15)[0] / k for b in wanted]
    out = (z * normal.conj()).real  # Area integrals of homogeneous polynomials by the boundary.
    area, second = np.sum(weight * out) / 2, np.sum(weight * out * x**2) / 4
    moment = [sum(c[j] * np.sum(weight * out * x * (z ** (j + 1)).real) / (j + 4) for j in range(degree)) for c in fits]
    moment[0] += np.sum(weight * out * x**2 * y**2) / 6
    return [-area / second * v / (2 * second) for v in moment]


def main():
    assert np.allclose(shear(0, 12), [7 / 6, 1], atol=1e-12)
    assert np.allclose(shear(4, 60), [6 / 5, 11 / 10], atol=1e-9)
    assert np.allclose(torsion(3)[0], 9 * np.sqrt(3) / 80, rtol=1e-12)
    with open(os.path.join(HERE, "beam_sections.csv"), "w", encoding="utf-8") as out:
        out.write(f"# Written by beam_sections.py with numpy {np.__version__}, Debian 12. Across flats 1.\n")
        out.write("# Torsion to 1e-10; shear_p and shear_q to 1e-3: compared between polynomials of two degrees.\n")
        out.write("flats,torsion_constant,torsion_modulus,shear_p,shear_q\n")
        for n in range(3, 25):
            coarse, fine = shear(n, 110), shear(n, 220)
            assert np.allclose(coarse, fine, atol=1e-3), n
            out.write("%d,%.11f,%.11f,%.4f,%.4f\n" % (n, *torsion(n), *fine))


main()
