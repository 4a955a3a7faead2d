#!/usr/bin/env python3
"""Makes pattern_scipy.csv: the least that any arrangement of seeded rotors leaves, by another method than the program's.

Half the rotors' sums as points, the other half's looked up in a KD-tree (scipy), in doubles throughout; to seven rotors every
arrangement is looked at as well, and must agree. Invented rotors, numpy's default generator with the seed of each row.
Run with Debian's python3-scipy: /usr/bin/python3 tests/data/pattern_scipy.py > tests/data/pattern_scipy.csv
"""
import itertools

import numpy as np
from scipy.spatial import cKDTree

# positions, rotors, judged, seed
CASES = [
    (6, 5, "couple", 1), (6, 7, "both", 2), (4, 7, "couple", 3), (8, 6, "both", 4), (12, 5, "couple", 5),
    (6, 8, "couple", 6), (6, 9, "both", 7), (6, 10, "couple", 8), (6, 10, "both", 9), (6, 11, "couple", 10),
    (6, 12, "both", 11), (6, 13, "couple", 12), (6, 14, "both", 13), (6, 16, "couple", 14), (4, 16, "both", 15),
    (8, 10, "couple", 16), (8, 12, "both", 17), (12, 8, "both", 18), (10, 9, "couple", 19), (24, 6, "both", 20),
    (3, 12, "couple", 21), (5, 10, "both", 22),
]


def sums_of(shares, unit):
    sums = np.zeros((1, 2), dtype=complex)
    for share in shares:
        sums = (sums[:, None, :] + unit[None, :, None] * share[None, None, :]).reshape(-1, 2)
    return np.concatenate([sums.real, sums.imag], axis=1)


def least(shares, positions):
    unit = np.exp(2j * np.pi * np.arange(positions) / positions)
    half = len(shares) // 2
    left = sums_of(shares[1:half], unit)
    first = np.concatenate([shares[0], [0.0, 0.0]])
    tree = cKDTree(left + first)
    distance, _ = tree.query(-sums_of(shares[half:], unit))
    return float(distance.min())


def looked_at(shares, positions):
    unit = np.exp(2j * np.pi * np.arange(positions) / positions)
    best = np.inf
    for places in itertools.product(range(positions), repeat=len(shares) - 1):
        total = shares[0] + (unit[list(places)][:, None] * shares[1:]).sum(axis=0)
        best = min(best, float(np.sqrt((abs(total) ** 2).sum())))
    return best


def main():
    print("# The least of all arrangements, N; by tests/data/pattern_scipy.py (scipy's KD-tree of half sums).")
    print("# shares: of each rotor in plane A and in plane B, N; plane B nought where the couple judges.")
    print("positions,rotors,judged,seed,least,shares")
    for positions, rotors, judged, seed in CASES:
        draw = np.random.default_rng(seed)
        shares = np.zeros((rotors, 2))
        shares[:, 0] = draw.normal(10, 1.5, rotors)
        if judged == "both":
            shares[:, 1] = draw.normal(-10, 1.5, rotors)
        found = least(shares, positions)
        if positions ** rotors < 4e5:
            assert abs(found - looked_at(shares, positions)) < 1e-9, (positions, rotors)
        cells = " ".join(repr(float(x)) for x in shares.ravel())
        print(f"{positions},{rotors},{judged},{seed},{found!r},{cells}")


if __name__ == "__main__":
    main()
