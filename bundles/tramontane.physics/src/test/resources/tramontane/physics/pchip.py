"""Golden values of monotone curves: python3 pchip.py > pchip.csv (needs NumPy and SciPy)."""
import numpy
import scipy
from scipy.interpolate import PchipInterpolator

CURVES = {
    "two points": ([0, 2], [1, 5]),
    "straight": ([0, 1, 3, 4], [8, 6, 2, 0]),
    "fan, monotone": ([0, 0.004, 0.01, 0.018, 0.024, 0.03], [90, 78, 66, 41, 20, 0]),
    "fan with a dip": ([0, 0.005, 0.011, 0.016, 0.022, 0.03, 0.034], [80, 62, 48, 51, 44, 15, 0]),
    "flat pieces": ([0, 1, 2, 3, 4, 5], [0, 0, 1, 1, 1, 3]),
    "steep step": ([-5, -1, -0.99, 4], [-3, -2.9, 7, 7.1]),
    "uneven end": ([0, 1, 1.1], [0, 1, -5]),
    "zigzag": ([0, 1, 2, 3, 4], [1, -1, 1, -1, 1]),
}
print("# Values and slopes of monotone piecewise cubic curves at 25 places between the points of each curve.")
print(f"# Made by pchip.py beside this file: scipy.interpolate.PchipInterpolator, SciPy {scipy.__version__}, NumPy {numpy.__version__}.")
print("# curve;points x;points y;x;value;slope")
for name, (x, y) in CURVES.items():
    curve = PchipInterpolator(x, y)
    slope = curve.derivative()
    xs = " ".join(map(str, x))
    ys = " ".join(map(str, y))
    for at in numpy.linspace(x[0], x[-1], 25):
        print(f"{name};{xs};{ys};{float(at)!r};{float(curve(at))!r};{float(slope(at))!r}")
