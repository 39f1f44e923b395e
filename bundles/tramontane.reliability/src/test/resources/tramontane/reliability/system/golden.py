# Golden values for systems with repair, spares and k of n. Transients: scipy.linalg.expm of the generator with the down states
# merged; steady state and mean time: exact rational arithmetic (fractions); quantiles: scipy.stats.poisson; Weibull k of n:
# scipy.integrate.quad over the binomial survival, scipy.optimize.brentq for L10.
# Run: python3 golden.py (writes repair.csv, poisson.csv, weibull.csv beside it)
from fractions import Fraction
import math
import numpy as np
import scipy
from scipy import integrate, linalg, optimize, stats

head = f"made by golden.py with SciPy {scipy.__version__}"

def solve(a, b):
    n = len(b)
    m = [row[:] + [x] for row, x in zip(a, b)]
    for i in range(n):
        p = next(r for r in range(i, n) if m[r][i] != 0)
        m[i], m[p] = m[p], m[i]
        m[i] = [x / m[i][i] for x in m[i]]
        for r in range(n):
            if r != i:
                f = m[r][i]
                m[r] = [x - f * y for x, y in zip(m[r], m[i])]
    return [row[n] for row in m]

with open("repair.csv", "w") as out:
    print("# " + head, file=out)
    print("needed,units,lambda,repair,crews,unavailability,mean,failures,time,failed", file=out)
    for k, n, lam, mttr, crews, t in [(1, 2, "1e-5", 24, 1, 87600), (1, 2, "1e-5", 24, 2, 87600), (2, 3, "1e-5", 24, 1, 8760), (3, 4, "1e-5", 168, 4, 87600),
                                   (5, 6, "1e-5", 72, 1, 43800), (2, 5, "1e-5", 24, 1, 87600), (2, 5, "2e-4", 500, 2, 2000), (4, 8, "1e-4", 10, 8, 8760)]:
        l, mu = Fraction(lam), Fraction(1, mttr)
        fail = [(n - i) * l for i in range(n)]
        fix = [0] + [min(i, crews) * mu for i in range(1, n + 1)]
        pi = [Fraction(1)]
        for i in range(n):
            pi.append(pi[-1] * fail[i] / fix[i + 1])
        total = sum(pi)
        unavailability = sum(pi[n - k + 1:]) / total
        failures = sum(p * f for p, f in zip(pi, fail)) / total
        d = n - k + 1
        a = [[Fraction(0)] * d for _ in range(d)]
        for i in range(d):
            a[i][i] = fail[i] + fix[i]
            if i + 1 < d:
                a[i][i + 1] = -fail[i]
            if i > 0:
                a[i][i - 1] = -fix[i]
        mean = solve(a, [Fraction(1)] * d)[0]
        q = np.zeros((d + 1, d + 1))
        for i in range(d):
            q[i, i] = -float(fail[i] + fix[i])
            q[i, i + 1] = float(fail[i])
            if i > 0:
                q[i, i - 1] = float(fix[i])
        failed = linalg.expm(q * t)[0, d]
        print(f"{k},{n},{lam},{mttr},{crews},{float(unavailability):.15e},{float(mean):.15e},{float(failures):.15e},{t},{failed:.15e}", file=out)

with open("poisson.csv", "w") as out:
    print("# " + head, file=out)
    print("demand,confidence,spares,shortage", file=out)
    for m in [1e-4, 0.05, 0.5, 2, 7.3, 40, 1500]:
        for c in [0.5, 0.9, 0.95, 0.99, 0.9999]:
            s = int(stats.poisson.ppf(c, m))
            print(f"{m},{c},{s},{stats.poisson.sf(s, m):.15e}", file=out)

with open("weibull.csv", "w") as out:
    print("# " + head + "; scale 1", file=out)
    print("needed,units,shape,mean,L10,L50,mean failed until 0.5", file=out)
    for k, n, b in [(1, 1, 0.5), (1, 2, 3), (3, 4, 1.1), (3, 4, 3), (5, 6, 0.8), (2, 5, 2), (4, 5, 6)]:
        failed = lambda t: stats.binom.sf(n - k, n, -math.expm1(-t ** b))
        q = 1 / min(b, 1)
        mean = integrate.quad(lambda v: (1 - failed(v ** q)) * q * v ** (q - 1), 0, np.inf, epsabs=0, epsrel=1e-12, limit=500)[0]
        life = [math.exp(optimize.brentq(lambda y: failed(math.exp(y)) - p, -20, 3, xtol=1e-14)) for p in (0.1, 0.5)]
        part = integrate.quad(lambda v: failed(v ** q) * q * v ** (q - 1), 0, 0.5 ** (1 / q), epsabs=0, epsrel=1e-12)[0] / 0.5
        print(f"{k},{n},{b},{mean:.13e},{life[0]:.13e},{life[1]:.13e},{part:.13e}", file=out)
