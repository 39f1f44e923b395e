"""Golden values of sound: python3 sound.py > sound.csv (needs NumPy and SciPy)."""
import numpy
import scipy
from numpy import log10, pi, sin, sqrt
from scipy.integrate import quad
from scipy.interpolate import PchipInterpolator
from scipy.special import j1

print("# Radiation, ratings and spectra of sound, by SciPy's Bessel functions, quadrature and interpolation.")
print(f"# Made by sound.py beside this file: SciPy {scipy.__version__}, NumPy {numpy.__version__}.")
print("# what;first argument;second argument;third argument;value")


def row(what, *arguments_and_value):
    *arguments, value = map(float, arguments_and_value)
    print(";".join([what, *(repr(each) for each in (arguments + [0.0, 0.0])[:3]), f"{value:.15g}"]))


for x in numpy.concatenate([[1e-8, 1e-3, 0.1], numpy.linspace(0.3, 30, 100), [24.9999, 25.0001, 50, 100, 333.3, 1000, 12345.6]]):
    row("j1", x, j1(x))

# directivity as the mean of the pattern over the half space into which a piston in a wall radiates: Q = 2/mean
for ka in [0.001, 0.02, 0.0499, 0.0501, 0.3, 1, 2, 3.8317, 5, 10, 20]:
    def pattern(theta):
        x = ka * sin(theta)
        return 1.0 if x < 1e-7 else (2 * j1(x) / x) ** 2

    row("piston on axis", ka, 2 / quad(lambda t: pattern(t) * sin(t), 0, pi / 2, epsabs=0, epsrel=1e-13, limit=500)[0])
    for theta in [0, 0.3, pi / 4, 1.2, pi / 2]:
        row("piston pattern", ka, theta, pattern(theta))

TABLE = {"middle": ((0.73, 7.62, 158.51, 1.29), (0.84, 4.01, 213.89, 1.10)),
         "wall": ((1.70, 7.88, 121.19, 1.28), (1.90, 4.16, 221.72, 1.25))}


def fit(of, x):
    return of[1] + (of[0] - of[1]) / (1 + (x / of[2]) ** of[3])


# evenly all round at low frequency: 1 at least, and 1 behind
for place, (ahead, aside) in TABLE.items():
    for frequency in [31.5, 250, 1000, 8000]:
        for area in [0.0001, 0.01, 0.25]:
            x = frequency * sqrt(area)
            q0, q45 = max(1, fit(ahead, x)), max(1, fit(aside, x))
            for angle in [0, 0.4, pi / 4, 1.3, pi / 2, 2, 3 * pi / 4, pi]:
                row(f"opening {place}", frequency, area, angle, numpy.interp(angle, [0, pi / 4, pi / 2, 3 * pi / 4, pi], [q0, q45, q45, 1, 1]))

NC = numpy.arange(15, 71, 5)
CURVES = {1: [47, 51, 54, 57, 60, 64, 67, 71, 74, 77, 80, 83], 2: [36, 40, 44, 48, 52, 56, 60, 64, 67, 71, 75, 79],
          3: [29, 33, 37, 41, 45, 50, 54, 58, 62, 67, 71, 75], 4: [22, 26, 31, 35, 40, 45, 49, 54, 58, 63, 68, 72],
          5: [17, 22, 27, 31, 36, 41, 46, 51, 56, 61, 66, 71], 6: [14, 19, 24, 29, 34, 39, 44, 49, 54, 59, 64, 70],
          7: [12, 17, 22, 28, 33, 38, 43, 48, 53, 58, 63, 69], 8: [11, 16, 21, 27, 32, 37, 42, 47, 52, 57, 62, 68]}
for octave, levels in CURVES.items():
    for nc, level in zip(NC, levels):
        row("nc limit", octave, nc, 0, level)
    for level in numpy.linspace(levels[0], levels[-1], 9):
        row("nc band", octave, level, numpy.interp(level, levels, NC))

for omega in [100, 314.159, 1000]:
    for c in [0.4, 0.15, -0.3]:
        f = 1000 * 10 ** ((numpy.arange(30) - 16) / 10)
        strouhal = 60 * f / (pi * (omega * 60 / (2 * pi)))
        part = 10 ** ((-5 - 5 * (log10(strouhal) + c) ** 2) / 10)
        for third in [0, 8, 16, 24, 29]:
            row("fan spectrum", omega, c, third, (part / part.sum())[third])

off_peak = PchipInterpolator([0, 0.52, 0.595, 0.695, 0.795, 0.87, 0.95, 1], [15, 15, 12, 9, 6, 3, 0, 0])
for ratio in numpy.linspace(0, 1, 41):
    row("off peak", ratio, off_peak(ratio))
