"""Makes random_networks.csv: random networks of passages and banks, solved by SciPy.

Each branch has the drop  a q + c q (q^4 + q0^4)^(1/4) - p  over the volume flow q: p is 0 for a passage and the shut-off
pressure of a bank. Bays are numbered from 0, the outside is -1. The unknowns are the bay pressures; the flow of each branch
comes from its drop by Brent's method, and scipy.optimize.root closes the balance of every bay. Density is 1 everywhere.

Run: python3 random_networks.py > random_networks.csv   (made with SciPy 1.17, NumPy 2.4)
"""
import numpy as np
from scipy.optimize import brentq, root

rng = np.random.default_rng(20260)
Q0 = 1e-5


def drop(q, a, c, p):
    return a * q + c * q * (q ** 4 + Q0 ** 4) ** 0.25 - p


def flow(dp, a, c, p):
    lo, hi = -1.0, 1.0
    while drop(lo, a, c, p) > dp:
        lo *= 2
    while drop(hi, a, c, p) < dp:
        hi *= 2
    return brentq(lambda q: drop(q, a, c, p) - dp, lo, hi, xtol=1e-18, rtol=8.9e-16, maxiter=500)


def network(bays):
    branches = []

    def add(i, k, bank=False):
        a = 0.0 if rng.random() < 0.4 else 10 ** rng.uniform(1, 3)
        c = 10 ** rng.uniform(3, 6)
        p = rng.uniform(20, 200) if bank else 0.0
        if bank:
            a = rng.uniform(100, 2000)
        branches.append((i, k, a, c, p))

    for i in range(bays):
        add(i, int(rng.integers(-1, i)))
    for _ in range(bays):
        i, k = rng.integers(-1, bays, 2)
        if i != k:
            add(int(i), int(k))
    for _ in range(max(2, bays // 5)):
        add(-1, int(rng.integers(0, bays)))
        i, k = rng.integers(-1, bays, 2)
        if i != k:
            add(int(i), int(k), bank=True)
        add(int(rng.integers(0, bays)), -1, bank=True)
    return branches


def solve(bays, branches):
    def at(p, bay):
        return 0.0 if bay < 0 else p[bay]

    def flows(p):
        return np.array([flow(at(p, i) - at(p, k), a, c, s) for i, k, a, c, s in branches])

    def balance(p):
        b = np.zeros(bays)
        for (i, k, *_), q in zip(branches, flows(p)):
            if i >= 0:
                b[i] -= q
            if k >= 0:
                b[k] += q
        return b

    for attempt in range(40):
        start = rng.normal(0, 5 + 10 * attempt, bays)
        for method in ("hybr", "lm"):
            found = root(balance, start, method=method, tol=1e-15)
            q = flows(found.x)
            # polish: Newton with a Jacobian from the slopes
            p = found.x
            for _ in range(20):
                jac = np.zeros((bays, bays))
                for (i, k, a, c, s), x in zip(branches, flows(p)):
                    m = (x ** 4 + Q0 ** 4) ** 0.25
                    g = 1 / (a + c * m * (1 + (x / m) ** 4))
                    for r in (i, k):
                        if r >= 0:
                            jac[r, r] -= g
                    if i >= 0 and k >= 0:
                        jac[i, k] += g
                        jac[k, i] += g
                p = p - np.linalg.solve(jac, balance(p))
            q = flows(p)
            if np.max(np.abs(balance(p))) < 1e-13 * np.max(np.abs(q)) + 1e-16:
                return p, q
    raise RuntimeError("not solved")


print("# made by random_networks.py with SciPy; see there")
print("network,from,to,a,c,p,flow,pressure_of_from,pressure_of_to")
for number in range(10):
    bays = 3 + 3 * number
    branches = network(bays)
    p, q = solve(bays, branches)
    for (i, k, a, c, s), x in zip(branches, q):
        print(number, i, k, repr(float(a)), repr(float(c)), repr(float(s)), repr(float(x)),
              repr(0.0 if i < 0 else float(p[i])), repr(0.0 if k < 0 else float(p[k])), sep=",")
