"""The peer of bench_stack: the same stack in numpy. SFC64, one thread, in chunks that stay in the cache; and the exact sum by
characteristic function and FFT.   stack_peer.py draw SAMPLES | stack_peer.py exact"""

import sys
import time

import numpy as np

SIGMA = np.array([0.004 + 0.0003 * i for i in range(24)])  # mm, as in bench/stack.cc
HALF = np.array([0.01 + 0.001 * i for i in range(12)])
CHUNK = 4096
PARTS = [0.00135, 0.99865]


def draw(samples):
    rng = np.random.Generator(np.random.SFC64(600))
    out = np.empty(samples)
    for at in range(0, samples, CHUNK):
        n = min(CHUNK, samples - at)
        out[at : at + n] = SIGMA @ rng.standard_normal((24, n)) + HALF @ rng.uniform(-1.0, 1.0, (12, n))
    return out.std(), np.quantile(out, PARTS)


def exact():
    reach = HALF.sum() + 9 * np.sqrt((SIGMA**2).sum())
    n = 4096
    step = 2 * reach / n
    t = 2 * np.pi * np.fft.fftfreq(n, step)
    phi = np.exp(-0.5 * (SIGMA**2).sum() * t * t) * np.prod(np.sinc(HALF[:, None] * t / np.pi), axis=0)
    density = np.fft.fftshift(np.fft.ifft(phi).real) / step
    x = (np.arange(n) - n // 2) * step
    cumulative = np.concatenate([[0.0], np.cumsum(0.5 * (density[1:] + density[:-1]) * step)])
    sd = np.sqrt((SIGMA**2).sum() + (HALF**2).sum() / 3)
    return sd, np.interp(PARTS, cumulative, x)


exact() if sys.argv[1] == "exact" else draw(CHUNK)
start, worked = time.perf_counter(), time.process_time()
sd, q = exact() if sys.argv[1] == "exact" else draw(int(sys.argv[2]))
print(1e3 * (time.perf_counter() - start), 1e3 * (time.process_time() - worked), sd, q[0], q[1])
