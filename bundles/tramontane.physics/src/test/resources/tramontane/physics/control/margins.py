"""Gain and phase margins of random stable loops on a dense grid: python3 margins.py > margins.csv (needs NumPy and SciPy)."""
import cmath
import math

import numpy
import scipy
from scipy.optimize import brentq

random = numpy.random.default_rng(7)
print("# L(jw) = -gain (c (jwI - A)^-1 b + d) prod 1/(1 + jw lag) exp(-jw dead time), by a dense solve at each of 240 000 frequencies,")
print("# numpy.unwrap and scipy.optimize.brentq. gain margin: 1/largest |L| at phase -180 degrees (modulo 360), inf without;")
print("# phase margin: least pi + phase at |L| = 1, phase unwrapped from standstill and below pi; inf without.")
print(f"# Made by margins.py beside this file: NumPy {numpy.__version__}, SciPy {scipy.__version__}.")
print("# A by rows;b;c;d;gain;lags;dead time;gain margin;phase margin;phase crossover;gain crossover;w;real L;imaginary L;closed poles")


def text(values):
    return " ".join(f"{float(v):.17g}" for v in numpy.ravel(values))


def thermal(n):
    """Bodies in a row with a branch here and there, cooled by air: C dT/dt = -K T - dUA/dn (T - air) u."""
    capacity = 10 ** random.uniform(0, 3, n)
    k = numpy.diag(10 ** random.uniform(-1.5, 0.5, n))
    for i in range(1, n):
        j = int(random.integers(max(0, i - 2), i))
        g = 10 ** random.uniform(-0.5, 1)
        k[i, i] += g
        k[j, j] += g
        k[i, j] -= g
        k[j, i] -= g
    a = -k / capacity[:, None]
    b = numpy.zeros(n)
    b[-1] = -10 ** random.uniform(0, 2) / capacity[-1]
    c = numpy.zeros(n)
    c[0] = 1
    return a, b, c, 0.0


def swinging(n):
    """Any stable matrix: random eigenvalues, turned by a random matrix."""
    a = numpy.zeros((n, n))
    i = 0
    while i < n:
        real = -10 ** random.uniform(-2, 0.5)
        if i + 1 < n and random.random() < 0.4:
            imaginary = -real * random.uniform(0.2, 5)
            a[i:i + 2, i:i + 2] = [[real, imaginary], [-imaginary, real]]
            i += 2
        else:
            a[i, i] = real
            i += 1
    turn = random.normal(size=(n, n)) + 2 * numpy.eye(n)
    a = turn @ a @ numpy.linalg.inv(turn)
    return a, random.normal(size=n), random.normal(size=n), 0.0 if random.random() < 0.7 else random.normal()


def loop(a, b, c, d, gain, lags, dead, omega):
    n = len(b)
    omega = numpy.atleast_1d(omega)
    g = numpy.empty(len(omega), complex)
    for start in range(0, len(omega), 20000):
        w = omega[start:start + 20000]
        m = 1j * w[:, None, None] * numpy.eye(n) - a
        g[start:start + 20000] = numpy.linalg.solve(m, numpy.broadcast_to(b[:, None], (len(w), n, 1)))[:, :, 0] @ c + d
    response = -gain * g
    for lag in lags:
        response = response / (1 + 1j * omega * lag)
    return response * numpy.exp(-1j * omega * dead)


made = 0
while made < 36:
    n = made % 12 + 1
    a, b, c, d = (thermal if made % 3 < 2 else swinging)(n)
    lags = list(10 ** random.uniform(-0.5, 1.5, random.integers(0, 4)))
    dead = 0.0 if random.random() < 0.4 else 10 ** random.uniform(-1, 1)
    if d != 0 and not lags:
        continue
    rest = d - c @ numpy.linalg.solve(a, b)
    gain = -numpy.sign(rest) * 10 ** random.uniform(-0.5, 1.5 if dead > 0 else 3.5) / abs(rest)
    poles = numpy.linalg.eigvals(a)
    low = 1e-4 * min(abs(poles).min(), min([1 / t for t in lags], default=1e9))
    high = 1e3 * max(abs(poles).max(), max([1 / t for t in lags], default=0))
    if dead > 0:
        high = min(max(high, 20 / dead), 3000 / dead)
    grid = numpy.geomspace(low, high, 240000)
    response = loop(a, b, c, d, gain, lags, dead, grid)
    phase = numpy.unwrap(numpy.angle(response))
    phase -= 2 * math.pi * round(phase[0] / (2 * math.pi))
    if numpy.abs(numpy.diff(phase)).max() > 1:
        raise SystemExit("grid too coarse")
    level = numpy.floor((phase + math.pi) / (2 * math.pi))

    def at(w):
        return complex(loop(a, b, c, d, gain, lags, dead, w)[0])

    margin, crossover = math.inf, math.nan
    seen = 0.0
    for i in numpy.nonzero(numpy.diff(level))[0]:
        if abs(response[i]) > 0.5 * seen and abs(response[i]) > 1e-10 * abs(response).max():
            w = brentq(lambda x: cmath.phase(-at(x)), grid[i], grid[i + 1], xtol=1e-300, rtol=1e-14)
            if abs(at(w)) > seen:
                seen = abs(at(w))
                margin, crossover = 1 / seen, w
    room, one = math.inf, math.nan
    size = numpy.log(numpy.abs(response))
    for i in numpy.nonzero(numpy.diff(size > 0))[0]:
        w = brentq(lambda x: math.log(abs(at(x))), grid[i], grid[i + 1], xtol=1e-300, rtol=1e-14)
        p = phase[i] + cmath.phase(at(w) / response[i])
        while p >= math.pi:
            p -= 2 * math.pi
        if math.pi + p < room:
            room, one = math.pi + p, w
    # poles of the closed loop where it is rational: lags as further states
    unstable = "-"
    if dead == 0:
        m = len(lags)
        whole = numpy.zeros((n + m, n + m))
        whole[:n, :n] = a
        push = numpy.concatenate([b, numpy.zeros(m)])
        take = numpy.concatenate([c, numpy.zeros(m)])
        direct = d
        for k, lag in enumerate(lags):
            whole[n + k] = take / lag
            whole[n + k, n + k] -= 1 / lag
            push[n + k] = direct / lag
            take = numpy.zeros(n + m)
            take[n + k] = 1
            direct = 0.0
        # u = gain y
        closed = numpy.linalg.eigvals(whole + gain * numpy.outer(push, take))
        unstable = int((closed.real > 0).sum())
    w = float(10 ** random.uniform(math.log10(low * 1e3), math.log10(high / 1e3)))
    value = at(w)
    print(";".join([text(a), text(b), text(c), text(d), text(gain), text(lags), text(dead), text(margin), text(room), text(crossover),
                    text(one), text(w), text(value.real), text(value.imag), str(unstable)]))
    made += 1
