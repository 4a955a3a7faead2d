#!/usr/bin/env python3
"""Second opinion on contacts and on how balls share a load: writes bearings_contact.csv, bearings_rest.csv and bearings_turn.csv.

Contacts: complete elliptic integrals and root of scipy instead of our own. Rest: the equations of equilibrium of the inner ring written
down as they stand in the books (sum of the balls' pushes equals the load) and given to scipy.optimize.root (MINPACK hybrid), started
from several places; the answer of least residual counts, and none is kept over 1e-10 of the load.

Turn: forces and couples of the rotor put down as vectors in space and taken into the leaning bearing by a rotation matrix; each angle by
root; wear of both rings at 360 places from the ball loads there.

Run with Debian's python3-scipy: /usr/bin/python3 tests/data/bearings_load_scipy.py
"""
import csv
import os

import numpy
import scipy
from scipy.optimize import brentq, root
from scipy.special import ellipe, ellipk

HERE = os.path.dirname(os.path.abspath(__file__))
NOTE = f"# Written by bearings_load_scipy.py with scipy {scipy.__version__}, numpy {numpy.__version__}, Debian 12."
YOUNG, POISSON = 207e9, 0.3


def contact(ball, groove, ring):
    """Axis ratio, stiffness in N/m^1.5 and stress in Pa/N^(1/3) of a ball in a groove; ring: curvature along the rolling, 1/m."""
    rolling, across = 2 / ball + ring, 2 / ball - 1 / groove
    total, difference = rolling + across, abs(rolling - across) / (rolling + across)
    k = brentq(lambda x: 1 - 2 / (x * x - 1) * (ellipk(1 - 1 / x**2) / ellipe(1 - 1 / x**2) - 1) - difference, 1.0001, 1e5,
               xtol=1e-13, rtol=1e-14)
    first, second = ellipk(1 - 1 / k**2), ellipe(1 - 1 / k**2)
    gives = 2 * (1 - POISSON**2) / YOUNG
    long_axis = (3 * k * k * second * gives / (numpy.pi * total)) ** (1 / 3)
    deflection = 1.5 * first * gives / (numpy.pi * long_axis)
    return k, deflection**-1.5, 1.5 / (numpy.pi * long_axis**2 / k)


def together(ball, pitch, inner, outer):
    _, ci, _ = contact(ball, inner, 2 / (pitch - ball))
    _, ce, _ = contact(ball, outer, -2 / (pitch + ball))
    return (ci ** (-2 / 3) + ce ** (-2 / 3)) ** -1.5


class Bearing:
    def __init__(self, balls, ball, pitch, groove, clearance, cage):
        self.reach = (2 * groove - 1) * ball
        self.gap = clearance / 2
        self.c = together(ball, pitch, groove * ball, groove * ball)
        cosine = 1 - clearance / (2 * self.reach)
        self.circle = pitch / 2 + (groove - 0.5) * ball * cosine
        self.psi = cage + 2 * numpy.pi * numpy.arange(balls) / balls

    def push(self, x):
        """x: shifts in m, tilts in rad. Ball loads, and the five sums of them."""
        c, s = numpy.cos(self.psi), numpy.sin(self.psi)
        u = self.reach - self.gap + x[0] * c + x[1] * s
        v = x[2] + self.circle * (x[3] * s - x[4] * c)
        r = numpy.hypot(u, v)
        q = self.c * numpy.maximum(r - self.reach, 0) ** 1.5
        return q, numpy.array([(q * u / r * c).sum(), (q * u / r * s).sum(), (q * v / r).sum(),
                               self.circle * (q * v / r * s).sum(), -self.circle * (q * v / r * c).sum()])


def rest(b, load, tilt, rng):
    """Five unknowns, or three where the tilt is given."""
    many = 5 if tilt is None else 3
    size = max(abs(load[:3]).max(), abs(load[3:5]).max() / b.circle)
    scale = numpy.array([1e-5, 1e-5, 1e-5, 1e-5 / b.circle, 1e-5 / b.circle])[:many]
    arm = numpy.array([1, 1, 1, b.circle, b.circle])[:many]

    def misfit(y):
        x = numpy.zeros(5)
        x[:many] = y * scale
        if tilt is not None:
            x[3:] = tilt
        return (b.push(x)[1][:many] - load[:many]) / arm / size

    best = None
    for attempt in range(400):
        start = numpy.sign(load[:many] + 1e-300) * rng.uniform(0, 12, many)
        found = root(misfit, start, method="hybr", options={"xtol": 1e-14, "maxfev": 4000})
        found = root(misfit, found.x, method="hybr", options={"xtol": 1e-15, "maxfev": 4000})
        worst = abs(misfit(found.x)).max()
        if best is None or worst < best[0]:
            best = (worst, found.x)
        if best[0] < 2e-13:
            break
    assert best[0] < 1e-10, best[0]
    x = numpy.zeros(5)
    x[:many] = best[1] * scale
    if tilt is not None:
        x[3:] = tilt
    return x, b.push(x)[0]


def rotation(axis, angle):
    """Rodrigues: matrix that turns about a unit axis."""
    k = numpy.array([[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]])
    return numpy.eye(3) + numpy.sin(angle) * k + (1 - numpy.cos(angle)) * k @ k


def one_turn(rng, balls, ball, pitch, inner, outer, clearance, lean, rotor, ground, angles=72, places=360):
    """Mean over each ring's places of (mean over the turn of load³)^(10/9); and the greatest ball load. Space: x down, z along the shaft.
    rotor: mass, offset, force, couple, tip radius. ground: up, drag, along. Outer ring held, and turning."""
    mass, offset, force, couple, radius = rotor
    theta = 2 * numpy.pi * numpy.arange(places) / places
    inner_cubes, held_cubes, hardest = numpy.zeros(places), numpy.zeros(places), 0.0
    phase = 0.0
    for k in range(angles):
        turned = 2 * numpy.pi * k / angles
        out = numpy.array([numpy.cos(turned), numpy.sin(turned), 0.0])
        side = numpy.array([-out[1], out[0], 0.0])
        lean_by = rotation(side, lean)
        along = lean_by @ numpy.array([0, 0, 1.0])
        tip = numpy.array([1.0, 0, 0]) - along[0] * along
        tip *= radius / numpy.linalg.norm(tip)
        soil = numpy.array([-ground[0], ground[1], ground[2]])
        weight = numpy.array([mass * 9.80665, 0, 0])
        total = soil + weight + force * out
        moment = numpy.cross(tip, soil) + numpy.cross(offset * along, weight) + couple * numpy.cross([0, 0, 1.0], out)
        axes = numpy.array([lean_by @ out, side, along])
        phase = (phase + 0.6180339887498949) % 1
        b = Bearing(balls, ball, pitch, 0.52, clearance, phase * 2 * numpy.pi / balls)
        b.reach = inner + outer - ball
        b.c = together(ball, pitch, inner, outer)
        b.circle = pitch / 2 + (inner - ball / 2) * (1 - clearance / (2 * b.reach))
        x, q = rest(b, -numpy.concatenate([axes @ total, (axes @ moment)[:2]]), None, rng)
        hardest = max(hardest, q.max())
        b.psi = theta
        inner_cubes += b.push(x)[0] ** 3 / angles
        b.psi = theta - turned
        held_cubes += b.push(x)[0] ** 3 / angles
    return (inner_cubes ** (10 / 9)).mean(), (held_cubes ** (10 / 9)).mean(), held_cubes.mean() ** (10 / 9), hardest


def write(name, note, head, rows):
    with open(os.path.join(HERE, name), "w", newline="") as file:
        file.write(f"{NOTE}\n# {note}\n")
        csv.writer(file, lineterminator="\n").writerows([head] + rows)


def contacts():
    rows = []
    for ball, pitch, groove in [(7.938, 38.5, 0.515), (12.7, 65.0, 0.52), (14.288, 77.5, 0.53), (20.0, 60.0, 0.505), (6.0, 90.0, 0.6)]:
        for side, ring in (("inner", 2 / (pitch - ball)), ("outer", -2 / (pitch + ball))):
            k, c, stress = contact(ball * 1e-3, groove * ball * 1e-3, ring * 1e3)
            rows.append([f"{side}-{ball}", side, ball, pitch, groove, f"{k:.14e}", f"{c:.14e}", f"{stress:.14e}"])
    write("bearings_contact.csv", "mm; ratio of axes, stiffness in N/m^1.5, stress in Pa/N^(1/3); 207 GPa, 0.3.",
          ["id", "side", "ball_mm", "pitch_mm", "groove", "axis_ratio", "stiffness", "stress"], rows)


def rests():
    rng = numpy.random.default_rng(281)
    rows = []
    for number in range(60):
        balls, ball = int(rng.integers(7, 15)), rng.uniform(7, 16)
        pitch = max(3.2, 1.15 / numpy.sin(numpy.pi / balls)) * ball * rng.uniform(1, 1.3)
        clearance = [rng.uniform(5, 50), 0.0, -rng.uniform(1, 6), rng.uniform(50, 120)][number % 4]
        cage = rng.uniform(0, 2 * numpy.pi)
        b = Bearing(balls, ball * 1e-3, pitch * 1e-3, 0.52, clearance * 1e-6, cage)
        force = 10 ** rng.uniform(2, 3.7)
        load = force * rng.uniform(-1, 1, 5) * numpy.array([1, 1, 0.5, b.circle, b.circle])
        tilt = rng.uniform(-3e-3, 3e-3, 2) if number % 3 == 2 else None
        if tilt is not None:
            load[3:] = 0
        x, q = rest(b, load, tilt, rng)
        rows.append([f"R{number}", balls, repr(ball), repr(pitch), repr(clearance), repr(cage), *[repr(v) for v in load],
                     *([repr(v) for v in tilt] if tilt is not None else ["", ""]), f"{q.max():.12e}", f"{(q**3).mean():.12e}",
                     f"{(q**(10 / 3)).mean():.12e}", f"{x[2]:.12e}"])
    write("bearings_rest.csv", "mm, um, rad; load in N and N m; ball loads in N: greatest, mean of cubes, mean of 10/3; z in m. Groove 0.52.",
          ["id", "balls", "ball_mm", "pitch_mm", "clearance_um", "cage", "x", "y", "z", "about_x", "about_y", "tilt_x", "tilt_y",
           "greatest", "cubes", "powers", "shift_z"], rows)


def turns():
    rng = numpy.random.default_rng(16281)
    rows = []
    for name, lean, clearance, rotor, ground in [
            ("orchard", 5.0, 15.0, (12.0, 0.0, 0.0, 35.0, 0.25), (1500.0, 0.0, 150.0)),
            ("steep", 10.0, 30.0, (18.0, 0.02, 160.0, 90.0, 0.3), (2500.0, 700.0, -400.0)),
            ("couple", 5.0, 20.0, (0.0, 0.0, 0.0, 60.0, 0.25), (0.0, 0.0, 0.0))]:
        found = one_turn(rng, 10, 14.288e-3, 77.5e-3, 7.43e-3, 7.57e-3, clearance * 1e-6, numpy.radians(lean), rotor, ground)
        rows.append([name, lean, clearance, *rotor, *ground, *[f"{v:.9e}" for v in found]])
    write("bearings_turn.csv", "deg, um, kg, m, N, N m, m, N; N^(10/3) thrice, N. Ten balls 14.288 on 77.5, grooves 7.43 and 7.57 mm.",
          ["id", "lean", "clearance_um", "mass", "offset", "force", "couple", "radius", "up", "drag", "along", "inner", "outer_held",
           "outer_turns", "greatest"], rows)


if __name__ == "__main__":
    contacts()
    rests()
    turns()
