#!/usr/bin/env python3
"""The peer of bench_bearing: scipy.optimize.root (MINPACK hybrid) on the same equations, numpy over the balls, and the same life.

Talks over its standard input and output, a line a question:
    bearing C REACH GAP CIRCLE QCI QCE COSINES... SINES...       N/m^1.5, m, m, m, N, N; answers "ok"
    case NAME X Y Z ABOUT_X ABOUT_Y TILT_X TILT_Y                 N, N m, rad; NAME three or five; answers "ok"
    run NAME COUNT                                                answers milliseconds, those worked, failures, and the lives of the first
                                                                  two and the median of all, in millions of turns
Written as somebody would who knows the tools: one start that is near, lengths in units of ten micrometres so that the solver's own scaling has
nothing to do, no Jacobian asked of the user.
"""
import sys
import time

import numpy as np
from scipy.optimize import root

UNIT = 1e-5


class Peer:
    def __init__(self):
        self.cases = {"three": [], "five": []}

    def bearing(self, words):
        numbers = np.array([float(w) for w in words])
        self.c, self.reach, self.gap, self.circle, self.qci, self.qce = numbers[:6]
        self.cos, self.sin = np.split(numbers[6:], 2)

    def push(self, x, y, z, tilt_x, tilt_y):
        u = self.reach - self.gap + x * self.cos + y * self.sin
        v = z + self.circle * (tilt_x * self.sin - tilt_y * self.cos)
        r = np.sqrt(u * u + v * v)
        q = self.c * np.maximum(r - self.reach, 0.0) ** 1.5
        return q, q * u / r, q * v / r

    def three(self, case):
        load, tilt = case[:3], case[5:]

        def left(s):
            _, across, along = self.push(*(s * UNIT), *tilt)
            return np.array([load[0] - across @ self.cos, load[1] - across @ self.sin, load[2] - along.sum()])

        found = root(left, self.start(load), method="hybr")
        return found.success, self.push(*(found.x * UNIT), *tilt)[0]

    def five(self, case):
        load = case[:5]
        scale = np.array([UNIT, UNIT, UNIT, UNIT / self.circle, UNIT / self.circle])

        def left(s):
            _, across, along = self.push(*(s * scale))
            return np.array([load[0] - across @ self.cos, load[1] - across @ self.sin, load[2] - along.sum(),
                             load[3] / self.circle - along @ self.sin, load[4] / self.circle + along @ self.cos])

        found = root(left, np.concatenate([self.start(load), [0.0, 0.0]]), method="hybr")
        return found.success, self.push(*(found.x * scale))[0]

    def start(self, load):
        across = np.hypot(load[0], load[1])
        shift = self.gap + (4.37 * across / len(self.cos) / self.c) ** (2 / 3)
        along = np.sqrt(2 * self.reach * (self.gap + (abs(load[2]) / len(self.cos) / self.c) ** (2 / 3)))
        return np.array([shift * load[0] / across, shift * load[1] / across, np.copysign(along, load[2])]) / UNIT

    def life(self, q):
        inner = np.mean(q**3) ** (1 / 3)
        outer = np.mean(q ** (10 / 3)) ** 0.3
        return ((self.qci / inner) ** (-10 / 3) + (self.qce / outer) ** (-10 / 3)) ** -0.9

    def run(self, name, count):
        solve = getattr(self, name)
        begin, worked, lives, failed = time.perf_counter(), time.process_time(), [], 0
        for case in self.cases[name][:count]:
            good, q = solve(case)
            failed += not good
            lives.append(self.life(q))
        times = (time.perf_counter() - begin) * 1e3, (time.process_time() - worked) * 1e3
        return f"{times[0]:.6f} {times[1]:.6f} {failed} {lives[0]:.12g} {lives[1]:.12g} {np.median(lives):.12g}"


def main():
    peer = Peer()
    for line in sys.stdin:
        words = line.split()
        if words[0] == "bearing":
            peer.bearing(words[1:])
        elif words[0] == "case":
            peer.cases[words[1]].append(np.array([float(w) for w in words[2:]]))
        print(peer.run(words[1], int(words[2])) if words[0] == "run" else "ok", flush=True)


if __name__ == "__main__":
    main()
