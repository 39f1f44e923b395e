"""Roots in the right half plane by eigenvalues, and by construction: python3 routh.py > routh.csv (needs NumPy)."""
import numpy

random = numpy.random.default_rng(20)
print("# Polynomials, highest power first, and how many of their roots lie in the right half plane and on the imaginary axis.")
print(f"# Made by routh.py beside this file: NumPy {numpy.__version__}. 'roots': numpy.roots; 'built': integer factors of known roots.")
print("# how;in the right half plane;on the axis;coefficients")


def row(how, right, on, coefficients):
    print(f"{how};{right};{on};{' '.join(repr(float(c)) for c in coefficients)}")


count = 0
while count < 240:
    degree = count % 8 + 1
    kind = count // 8 % 3
    if kind == 0:
        coefficients = random.normal(size=degree + 1)
    elif kind == 1:
        # near the border: roots left and right at random, more often left
        coefficients = numpy.array([random.choice([-1.0, 1.0])])
        left = degree
        while left > 0:
            real = random.choice([-1, -1, -1, 1]) * 10 ** random.uniform(-2, 2)
            if left > 1 and random.random() < 0.5:
                imaginary = 10 ** random.uniform(-2, 2)
                coefficients = numpy.convolve(coefficients, [1, -2 * real, real * real + imaginary * imaginary])
                left -= 2
            else:
                coefficients = numpy.convolve(coefficients, [1, -real])
                left -= 1
    else:
        coefficients = random.uniform(0.5, 1.5, size=degree + 1) * [1.5 ** (k * (degree - k)) for k in range(degree + 1)]
    roots = numpy.roots(coefficients)
    if numpy.min(numpy.abs(roots.real) / numpy.abs(roots)) < 1e-5:
        continue
    row("roots", int((roots.real > 0).sum()), 0, coefficients)
    count += 1

# integers, so that zeros in the table are zeros; roots on the axis and mirrored in it among them
count = 0
while count < 100:
    coefficients = numpy.array([1])
    right = on = 0
    for _ in range(random.integers(1, 5)):
        kind = random.integers(0, 6)
        p = int(random.integers(1, 4))
        q = int(random.integers(1, 4))
        if kind == 0:
            coefficients = numpy.convolve(coefficients, [1, p])
        elif kind == 1:
            coefficients = numpy.convolve(coefficients, [1, -p])
            right += 1
        elif kind == 2:
            coefficients = numpy.convolve(coefficients, [1, 0, p])
            on += 2
        elif kind == 3:
            coefficients = numpy.convolve(coefficients, [1, 0, -p * p])
            right += 1
        elif kind == 4:
            coefficients = numpy.convolve(coefficients, [1, p, q])
        else:
            coefficients = numpy.convolve(coefficients, [1, -p, q])
            right += 2
    row("built", right, on, coefficients)
    count += 1
