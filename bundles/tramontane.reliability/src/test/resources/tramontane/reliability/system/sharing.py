# Failure probability of systems whose units share load, by nested Gauss-Legendre quadrature over the times of the failures
# (NumPy; no state equations, no moments). Each case is also computed with fewer points; the difference stands in the last column.
# Run: python3 sharing.py > sharing.csv
import sys
import numpy as np

# case: kinds (scale, shape); states: (up, {group: ageing}, [(to, units, kind, group)])
def needed(k, n, shape, ageing):
    states = []
    for i in range(n + 1):
        states.append((n - i >= k, {0: 1.0 if i == 0 else ageing[min(i, len(ageing)) - 1]}, [(i + 1, n - i, 0, 0)] if i < n and n - i >= k else []))
    return [(1.0, shape)], states

# two banks of two and three, at most one failed in each; the bank with a failure speeds up by one factor, the other by another
def banks():
    kinds = [(1.0, 3.0), (1.6, 1.5)]
    a, b, c, d = 1.4, 1.1, 1.25, 1.05
    states = [
        (True, {0: 1, 1: 1}, [(1, 2, 0, 0), (2, 3, 1, 1)]),
        (True, {0: a, 1: b}, [(4, 1, 0, 0), (3, 3, 1, 1)]),
        (True, {0: d, 1: c}, [(3, 2, 0, 0), (4, 2, 1, 1)]),
        (True, {0: a * d, 1: b * c}, [(4, 1, 0, 0), (4, 2, 1, 1)]),
        (False, {}, []),
    ]
    return kinds, states

# three banks of two, any one failed in the first is borne together with any one of the others
def three():
    kinds = [(1.0, 2.0), (1.3, 3.0), (0.9, 1.2)]
    states = [
        (True, {0: 1, 1: 1, 2: 1}, [(1, 2, 0, 0), (2, 2, 1, 1), (3, 2, 2, 2)]),
        (True, {0: 1.5, 1: 1.1, 2: 1.2}, [(6, 1, 0, 0), (4, 2, 1, 1), (5, 2, 2, 2)]),
        (True, {0: 1.1, 1: 1.3, 2: 1.15}, [(4, 2, 0, 0), (6, 1, 1, 1), (6, 2, 2, 2)]),
        (True, {0: 1.2, 1: 1.05, 2: 1.4}, [(5, 2, 0, 0), (6, 2, 1, 1), (6, 1, 2, 2)]),
        (True, {0: 1.6, 1: 1.4, 2: 1.3}, [(6, 1, 0, 0), (6, 1, 1, 1), (6, 2, 2, 2)]),
        (True, {0: 1.7, 1: 1.2, 2: 1.6}, [(6, 1, 0, 0), (6, 2, 1, 1), (6, 1, 2, 2)]),
        (False, {}, []),
    ]
    return kinds, states

def cumulative(kind, age):
    return (age / kind[0]) ** kind[1]

def hazard(kind, age):
    return kind[1] / kind[0] * (age / kind[0]) ** (kind[1] - 1)

def failed(kinds, states, t, points):
    x, w = np.polynomial.legendre.leggauss(points)
    x, w = (x + 1) / 2, w / 2
    # time = v^q with q so that all powers of v are whole: Gauss-Legendre then converges fast
    q = next(q for q in range(1, 99) if all(abs(k[1] * q - round(k[1] * q)) < 1e-9 for k in kinds))
    groups = len(states[0][1])
    def enter(s, now, ages, weight):
        up, factors, exits = states[s]
        if not up:
            return weight.sum()
        lo, hi = now ** (1 / q), t ** (1 / q)
        v = lo[:, None] + (hi - lo[:, None]) * x
        u = v ** q
        measure = weight[:, None] * w * (hi - lo[:, None]) * q * v ** (q - 1)
        later = [ages[g][:, None] + factors.get(g, 1) * (u - now[:, None]) for g in range(groups)]
        stay = np.ones_like(u)
        for (to, units, kind, g) in exits:
            stay = stay * np.exp(-units * (cumulative(kinds[kind], later[g]) - cumulative(kinds[kind], ages[g])[:, None]))
        total = 0.0
        for (to, units, kind, g) in exits:
            density = measure * stay * units * factors[g] * hazard(kinds[kind], later[g])
            total += enter(to, u.ravel(), [l.ravel() for l in later], density.ravel())
        return total
    return enter(0, np.zeros(1), [np.zeros(1)] * groups, np.ones(1))

# four banks of two, one failed in any of them is borne, two of the first and third or second and fourth together, too
FOUR = [[1.5, 1.1, 1.2, 1.05], [1.1, 1.3, 1.15, 1.2], [1.2, 1.05, 1.4, 1.1], [1.05, 1.2, 1.1, 1.3], [1.7, 1.15, 1.6, 1.2], [1.15, 1.5, 1.2, 1.6]]

def four():
    kinds = [(1.0, 2.0), (1.3, 3.0), (0.9, 1.5), (1.1, 2.5)]
    borne = {(0, 2): 5, (2, 0): 5, (1, 3): 6, (3, 1): 6}
    states = [(True, dict.fromkeys(range(4), 1), [(g + 1, 2, g, g) for g in range(4)])]
    for f in range(4):
        states.append((True, dict(enumerate(FOUR[f])), [(borne.get((f, g), 7), 1 if g == f else 2, g, g) for g in range(4)]))
    for s, pair in ((4, (0, 2)), (5, (1, 3))):
        states.append((True, dict(enumerate(FOUR[s])), [(7, 1 if g in pair else 2, g, g) for g in range(4)]))
    return kinds, states + [(False, {}, [])]

CASES = {
    "1 of 2, shape 3, 1.3": needed(1, 2, 3.0, [1.3]),
    "2 of 3, shape 3, 1.3": needed(2, 3, 3.0, [1.3]),
    "1 of 2, shape 0.7, 1.3": needed(1, 2, 0.7, [1.3]),
    "1 of 2, shape 1.5, 2.5": needed(1, 2, 1.5, [2.5]),
    "1 of 2, shape 3, 4": needed(1, 2, 3.0, [4.0]),
    "1 of 2, shape 3, 0.5": needed(1, 2, 3.0, [0.5]),
    "1 of 3, shape 3, 1.3 1.8": needed(1, 3, 3.0, [1.3, 1.8]),
    "3 of 5, shape 2.2, 1.15 1.4": needed(3, 5, 2.2, [1.15, 1.4]),
    "two banks": banks(),
    "three banks": three(),
    "four banks": four(),
}

print("# F(t) by nested Gauss-Legendre quadrature, made by sharing.py with NumPy", np.__version__)
print("case,time,failed,difference")
for name, (kinds, states) in CASES.items():
    for t in [0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 1.2]:
        fine = failed(kinds, states, t, 40)
        print(f"\"{name}\",{t},{fine:.15e},{abs(failed(kinds, states, t, 28) / fine - 1):.1e}")
