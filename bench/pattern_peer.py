#!/usr/bin/env python3
"""The peer of bench_pattern: the least of all arrangements by halves and a KD-tree, numpy and scipy (Debian python3-scipy).

Talks over its standard input and output, a line a question:
    case NAME JUDGED POSITIONS FIXED SHARES...   share of a rotor in plane A, in plane B, next rotor; answers "ok"
    run NAME WORKERS                       answers milliseconds, those worked on a processor, and the least
FIXED of a case is a list of positions of its first rotors, the rest is searched; or '-': then the first rotor is fixed, since
a turn of all is free. Written as somebody would who knows the tools: no loop over arrangements in Python.
"""
import sys
import time

import numpy as np
from scipy.spatial import cKDTree


def half_sums(shares, unit):
    """All sums of a half: one row an arrangement, real coordinates of both planes."""
    sums = np.zeros((1, 2), dtype=complex)
    for share in shares:
        sums = (sums[:, None, :] + unit[None, :, None] * share[None, None, :]).reshape(-1, 2)
    return sums


def points(sums, planes):
    used = sums[:, :planes]
    return np.ascontiguousarray(np.concatenate([used.real, used.imag], axis=1))


def search(case, workers):
    shares, unit, planes, fixed = case
    offset = sum((s * unit[p] for s, p in zip(shares, fixed)), np.zeros(2, dtype=complex))
    free = shares[len(fixed):]
    if not fixed:
        offset, free = shares[0] * unit[0], shares[1:]
    cut = len(free) // 2
    left = points(half_sums(free[:cut], unit) + offset, planes)
    right = points(half_sums(free[cut:], unit), planes)
    small, large = (left, right) if len(left) <= len(right) else (right, left)
    distance, _ = cKDTree(small).query(-large, k=1, workers=workers)
    return float(distance.min())


def main():
    cases = {}
    for line in sys.stdin:
        words = line.split()
        if words[0] == "case":
            name, judged, positions = words[1], words[2], int(words[3])
            fixed = [int(w) for w in words[4].split(",") if w != "-"]
            shares = np.array([float(w) for w in words[5:]]).reshape(-1, 2)
            unit = np.exp(2j * np.pi * np.arange(positions) / positions)
            cases[name] = (shares, unit, 1 if judged == "couple" else 2, fixed)
            print("ok", flush=True)
        elif words[0] == "run":
            begin, worked = time.perf_counter(), time.process_time()
            least = search(cases[words[1]], int(words[2]))
            times = (time.perf_counter() - begin, time.process_time() - worked)
            print(*(t * 1e3 for t in times), repr(least), flush=True)


if __name__ == "__main__":
    main()
