"""Golden values of tones in noise: python3 tones.py > tones.csv (needs NumPy).

Integrates the stepwise density of the noise on a fine grid instead of band by band; bands as ECMA-418-1 gives them, quoted second-hand."""
import numpy
from numpy import log10, sqrt

EDGES = 1000 * 10 ** ((numpy.arange(31) - 16.5) / 10)
GRID = numpy.arange(20, 17000, 0.01) + 0.005


def bands(f):
    dfc = 25 + 75 * (1 + 1.4 * (f / 1000) ** 2) ** 0.69
    f1 = f - dfc / 2 if f <= 500 else -dfc / 2 + sqrt(dfc ** 2 + 4 * f ** 2) / 2
    low = 20 if f < 171.4 else -149.5 + 1.001 * f - 6.90e-5 * f ** 2 if f <= 1600 else 6.8 + 0.806 * f - 8.20e-6 * f ** 2
    high = 149.5 + 1.035 * f + 7.70e-5 * f ** 2 if f <= 1600 else 3.3 + 1.215 * f + 2.16e-5 * f ** 2
    return low, f1, f1 + dfc, high


def judge(levels, tones):
    power = 10 ** (numpy.array(levels) / 10)
    density = power / numpy.diff(EDGES)
    grid = density[numpy.clip(numpy.searchsorted(EDGES, GRID) - 1, 0, 29)]
    heard = set(range(len(tones)))
    result = []
    for i in sorted(heard, key=lambda k: -tones[k][1]):
        f = tones[i][0]
        if i not in heard or not 89.1 <= f <= 11220:
            continue
        low, f1, f2, high = bands(f)

        def noise(a, b):
            return grid[(GRID > a) & (GRID <= b)].sum() * 0.01

        def tonal(a, b, which):
            return sum(10 ** (tones[k][1] / 10) for k in which if a <= tones[k][0] <= b)

        near = 21 * 10 ** (1.2 * abs(log10(f / 212)) ** 1.8)
        one = {k for k in heard if tones[k][1] <= tones[i][1] and f1 <= tones[k][0] <= f2 and abs(tones[k][0] - f) < near} | {i}
        heard -= one - {i}
        everything = range(len(tones))
        tone = sum(10 ** (tones[k][1] / 10) for k in one)
        lower = noise(low, f1) + tonal(low, f1, everything)
        if f < 171.4:
            lower *= 100 / (f1 - low)
        upper = noise(f2, high) + tonal(f2, high, everything)
        middle = noise(f1, f2) + tonal(f1, f2, everything)
        result.append((f, 10 * log10(tone), 10 * log10(tone / noise(f1, f2)), 10 * log10(2 * middle / (lower + upper)), len(one)))
    return sorted(result)


PINK = [30.0] * 30
FALLING = [50 - 1.2 * i for i in range(30)]
FAN = [28, 30, 32, 33, 34, 36, 37, 38, 39, 40, 41, 41, 40, 40, 39, 38, 37, 36, 35, 34, 32, 30, 28, 26, 24, 21, 18, 15, 12, 9]
SCENES = [
    (PINK, [(95, 45), (160, 40), (170, 38)]),
    (PINK, [(300, 40), (321.7, 39), (352, 35)]),
    (FALLING, [(291.6667, 42), (583.3333, 40), (875, 35), (1166.6667, 30)]),
    (FALLING, [(1800, 33), (1850, 31), (1990, 28), (3600, 20), (11219, 5), (12000, 20)]),
    (FAN, [(50, 50), (100, 40), (150, 44), (260, 41), (275, 45), (300, 40), (4000, 25), (5100, 24), (171.3, 39), (500.5, 36)]),
]
print("# Tones in noise of third-octave levels: tone-to-noise ratio and prominence ratio of each that is heard of its own.")
print(f"# Made by tones.py beside this file: NumPy {numpy.__version__}.")
print("# levels of the thirds;tones frequency:level;then for each: frequency level TNR PR together")
for levels, tones in SCENES:
    print(" ".join(f"{each:g}" for each in levels), " ".join(f"{f!r}:{level}" for f, level in tones),
          "|".join(f"{f!r} {level:.4f} {tnr:.4f} {pr:.4f} {n}" for f, level, tnr, pr, n in judge(levels, tones)), sep=";")
