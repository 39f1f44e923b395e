"""Golden values of bands and weightings: python3 bands.py > bands.csv (needs NumPy).

The tabulated weightings are those of IEC 61672-1:2013, table 3, as open implementations list them."""
import numpy

NOMINAL = [25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
           6300, 8000, 10000, 12500, 16000, 20000]
A = [-44.7, -39.4, -34.6, -30.2, -26.2, -22.5, -19.1, -16.1, -13.4, -10.9, -8.6, -6.6, -4.8, -3.2, -1.9, -0.8, 0, 0.6, 1.0, 1.2, 1.3, 1.2,
     1.0, 0.5, -0.1, -1.1, -2.5, -4.3, -6.6, -9.3]
C = [-4.4, -3.0, -2.0, -1.3, -0.8, -0.5, -0.3, -0.2, -0.1, 0, 0, 0, 0, 0, 0, 0, 0, 0, -0.1, -0.2, -0.3, -0.5, -0.8, -1.3, -2.0, -3.0, -4.4,
     -6.2, -8.5, -11.2]
F1, F2, F3, F4 = 20.598997, 107.65265, 737.86223, 12194.217


# by poles in the complex plane: another way to the same filters than the closed form
def weighted(f, zeros, poles):
    s = 2j * numpy.pi * f
    h = s ** zeros
    for pole in poles:
        h = h / (s + 2 * numpy.pi * pole)
    return 20 * numpy.log10(abs(h))


def a(f):
    return weighted(f, 4, [F1, F1, F2, F3, F4, F4]) - weighted(1000, 4, [F1, F1, F2, F3, F4, F4])


def c(f):
    return weighted(f, 2, [F1, F1, F4, F4]) - weighted(1000, 2, [F1, F1, F4, F4])


print("# Third-octave bands of IEC 61260-1:2014 and weightings of IEC 61672-1:2013, as tabulated to 0.1 dB and at the exact middles.")
print(f"# Made by bands.py beside this file: NumPy {numpy.__version__}.")
print("# third;nominal;middle;lower;upper;A tabulated;A;C tabulated;C")
for i, nominal in enumerate(NOMINAL):
    n = i - 16
    middle, lower, upper = (float(1000 * numpy.power(10.0, (n + d) / 10)) for d in (0, -0.5, 0.5))
    print(f"{i};{nominal};{middle!r};{lower!r};{upper!r};{A[i]};{a(middle):.6f};{C[i]};{c(middle):.6f}")
