"""Heat from surfaces and through solids by the equations behind the relations: python3 heat.py > heat.csv (needs SciPy and mpmath)."""
import math

import mpmath
import numpy
import scipy
from scipy import linalg, special
from scipy.integrate import solve_bvp, solve_ivp
from scipy.optimize import brentq

print("# Heat transfer by numerical solution of the differential equations, by series, and by other people's relations.")
print(f"# Made by heat.py beside this file: SciPy {scipy.__version__}, NumPy {numpy.__version__}, mpmath {mpmath.__version__}.")
print("# what;first argument;second argument;third argument;value")


def row(what, first, second, third, value):
    print(f"{what};{float(first)!r};{float(second)!r};{float(third)!r};{float(value):.9g}")


def flat_plate():
    """Boundary layer on a flat plate (Blasius; Pohlhausen): f''' + f f''/2 = 0, local Nu/sqrt(Re)."""
    wall_shear = brentq(lambda s: solve_ivp(lambda x, f: [f[1], f[2], -f[0] * f[2] / 2], (0, 12), [0, 0, s],
                                            rtol=1e-11, atol=1e-12).y[1, -1] - 1, 0.3, 0.35, xtol=1e-12)
    row("blasius shear", 0, 0, 0, wall_shear)

    def flow(prandtl, flux):
        # T'' + Pr/2 (f T' - n f' T) = 0, wall temperature as x^(n/2): n 0 even temperature, n 1 even flux; decaying solution
        # by the complementary pair from the wall: T = 1 + s a, s so that T vanishes outside
        def right(x, y):
            f, g, h, t, d, u, e = y
            return [g, h, -f * h / 2, d, -prandtl / 2 * (f * d - flux * g * t), e, -prandtl / 2 * (f * e - flux * g * u)]
        end = 12 if prandtl >= 0.5 else 25
        y = solve_ivp(right, (0, end), [0, 0, wall_shear, 1, 0, 0, 1], rtol=1e-11, atol=1e-13, method="DOP853").y[:, -1]
        return y[3] / y[5]

    for prandtl in (0.6, 0.7, 0.71, 0.8, 1.0, 2.0, 7.0, 15.0, 50.0):
        row("plate", prandtl, 0, 0, flow(prandtl, 0))
        row("plate of even flux", prandtl, 0, 0, flow(prandtl, 1))


def chebyshev(n):
    """Points, second derivative and weights of Clenshaw and Curtis on -1..1 (Trefethen)."""
    x = numpy.cos(math.pi * numpy.arange(n + 1) / n)
    c = numpy.ones(n + 1)
    c[0] = c[n] = 2
    c *= (-1.0) ** numpy.arange(n + 1)
    d = numpy.outer(c, 1 / c) / (numpy.subtract.outer(x, x) + numpy.eye(n + 1))
    d -= numpy.diag(d.sum(axis=1))
    theta = math.pi * numpy.arange(n + 1) / n
    w = numpy.zeros(n + 1)
    v = numpy.ones(n - 1)
    for k in range(1, n // 2):
        v -= 2 * numpy.cos(2 * k * theta[1:-1]) / (4 * k * k - 1)
    v -= numpy.cos(n * theta[1:-1]) / (n * n - 1)
    w[0] = w[n] = 1 / (n * n - 1)
    w[1:-1] = 2 * v / n
    return x, d @ d, w


def rectangle(aspect, n=32):
    """Developed laminar flow in a rectangle: Nu at even wall temperature and at even flux (H1)."""
    x, second, weight = chebyshev(n)
    inner, w = second[1:-1, 1:-1], weight[1:-1]
    one = numpy.eye(n - 1)
    # sides 2 and 2 aspect
    laplace = numpy.kron(inner, one) + numpy.kron(one, inner) / aspect ** 2
    area = numpy.kron(w, w)
    diameter = 4 * 4 * aspect / (4 * (1 + aspect))
    factors = linalg.lu_factor(laplace)
    u = linalg.lu_solve(factors, -numpy.ones((n - 1) ** 2))
    u /= area @ u / 4
    even_flux = linalg.lu_solve(factors, u)
    h1 = diameter ** 2 / 4 / (-(area @ (u * even_flux)) / 4)
    # smallest eigenvalue of laplace t = -e u t by inverse iteration
    t, e = numpy.ones((n - 1) ** 2), 0
    for _ in range(60):
        new = linalg.lu_solve(factors, -u * t)
        e = (t @ t) / (new @ t)
        t = new / numpy.abs(new).max()
    return e * diameter ** 2 / 4, h1


def parallel_plates():
    """Entry of laminar flow between plates of one temperature; mean Nu against y = Re Pr d/L = 1/x*.

    Half the gap is 1, the mean velocity 1, x in u a^2/nu. Boundary-layer equations (no diffusion along the flow), marched with
    steps growing by a fixed ratio; the error of the first-order steps is taken off by Richardson's rule. Mean Nu from the
    mixed temperature: exp(-4 Nu x*).
    """
    points = 501
    s = numpy.linspace(0, 1, points)
    y = 1 - (1 - s) ** 2.2
    gap = numpy.diff(y)
    below, above = gap[:-1], gap[1:]
    trapezoid = numpy.zeros(points)
    trapezoid[:-1] += gap / 2
    trapezoid[1:] += gap / 2
    first_low = -above / (below * (below + above))
    first_mid = (above - below) / (below * above)
    first_up = below / (above * (below + above))
    second_low = 2 / (below * (below + above))
    second_mid = -2 / (below * above)
    second_up = 2 / (above * (below + above))

    def bands(u, v, diffusion, dx):
        # rows 0 (middle of the channel, symmetric) to points - 2; the wall is known
        m = points - 1
        band = numpy.zeros((3, m))
        band[1, 0] = u[0] / dx + 2 * diffusion / gap[0] ** 2
        band[0, 1] = -2 * diffusion / gap[0] ** 2
        inside = slice(1, m)
        band[1, inside] = u[inside] / dx + v[inside] * first_mid - diffusion * second_mid
        band[2, 0:m - 1] = v[inside] * first_low - diffusion * second_low
        up = v[inside] * first_up - diffusion * second_up
        band[0, 2:m] = up[:-1]
        return band

    def march(prandtls, growth, entry, stations):
        """Mean Nu at the stations (x/(u a^2/nu)) for each Prandtl number."""
        edges = [1e-8]
        for station in stations:
            steps = max(1, math.ceil(math.log(station / edges[-1]) / math.log(growth)))
            edges += list(edges[-1] * (station / edges[-1]) ** (numpy.arange(1, steps + 1) / steps))
            edges[-1] = station
        u = numpy.ones(points) if entry else 1.5 * (1 - y ** 2)
        u[-1] = 0
        v = numpy.zeros(points)
        t = [numpy.append(numpy.ones(points - 1), 0.0) for _ in prandtls]
        found = {}
        last = 0.0
        for x in edges:
            dx = x - last
            last = x
            if entry:
                old = u
                u, v = u.copy(), v.copy()
                for _ in range(3):
                    band = bands(u, v, 1.0, dx)
                    right = numpy.stack([u[:-1] * old[:-1] / dx, numpy.ones(points - 1)], axis=1)
                    both = linalg.solve_banded((1, 1), band, right, check_finite=False)
                    a, b = trapezoid[:-1] @ both[:, 0], trapezoid[:-1] @ both[:, 1]
                    u = numpy.append(both[:, 0] + (1 - a) / b * both[:, 1], 0.0)
                    change = (u - old) / dx
                    v = -numpy.append(0, numpy.cumsum(gap * (change[1:] + change[:-1]) / 2))
            for i, prandtl in enumerate(prandtls):
                band = bands(u, v, 1 / prandtl, dx)
                t[i] = numpy.append(linalg.solve_banded((1, 1), band, u[:-1] * t[i][:-1] / dx, check_finite=False), 0.0)
            if x in stations:
                found[x] = [-math.log(trapezoid @ (u * ti)) / (4 * x / (16 * p)) for ti, p in zip(t, prandtls)]
        return found

    def refined(prandtls, entry, stations):
        coarse = march(prandtls, 1.02, entry, stations)
        fine = march(prandtls, 1.00995, entry, stations)
        return {x: [2 * f - c for f, c in zip(fine[x], coarse[x])] for x in stations}

    ys = (1e4, 3e3, 1e3, 500.0, 200.0, 100.0, 50.0, 20.0, 10.0)
    # x = 16 Pr/y; velocity developed, so the Prandtl number is only a scale
    developed = refined([1.0], False, [16 / v for v in ys])
    for v in ys:
        row("plates, developed velocity", v, 0, 0, developed[16 / v][0])
    for prandtl in (0.1, 0.7, 1.0, 10.0, 1000.0):
        both = refined([prandtl], True, [16 * prandtl / v for v in ys])
        for v in ys:
            row("plates, from the entry", v, prandtl, 0, both[16 * prandtl / v][0])


def fins():
    """Fin equation T'' = m^2 T as boundary value problem: efficiency, and W/K of round pins with a convective tip, k 180."""
    for ml in (0.1, 0.2, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0):
        s = solve_bvp(lambda x, t: [t[1], ml * ml * t[0]], lambda a, b: [a[0] - 1, b[1]],
                      numpy.linspace(0, 1, 41), numpy.ones((2, 41)), tol=1e-9, max_nodes=100000)
        row("fin efficiency", ml, 0, 0, -s.sol(0)[1] / ml ** 2)
    k = 180.0
    for h in (10.0, 50.0, 200.0):
        for diameter in (0.001, 0.003):
            for length in (0.005, 0.02, 0.05):
                m2 = 4 * h / (k * diameter) * length ** 2
                s = solve_bvp(lambda x, t: [t[1], m2 * t[0]], lambda a, b: [a[0] - 1, b[1] + h * length / k * b[0]],
                              numpy.linspace(0, 1, 41), numpy.ones((2, 41)), tol=1e-9, max_nodes=100000)
                row("pin", h, diameter, length, -s.sol(0)[1] * k * math.pi / 4 * diameter ** 2 / length)


def spreading():
    """Disc of even flux on a round plate, even coefficient below: the series in Bessel functions, times k and source radius.

    First argument source over plate radius, second thickness over plate radius, third h b/k. Without the parts of straight
    conduction. A. D. Kennedy (1960); M. M. Yovanovich et al.
    """
    n = 200_000
    zero = (numpy.arange(1, n + 1) + 0.25) * math.pi
    zero -= 3 / (8 * zero)
    for _ in range(3):
        j1 = special.j1(zero)
        zero -= j1 / (special.j0(zero) - j1 / zero)
    below = special.j0(zero) ** 2
    for e in (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9):
        j1 = special.j1(zero * e)
        for tau in (0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0):
            tanh = numpy.tanh(zero * tau)
            for biot in (0.01, 0.03, 0.1, 1.0, 10.0):
                phi = (zero + biot * tanh) / (zero * tanh + biot)
                row("spreading mean", e, tau, biot, 4 / (math.pi * e) * (j1 ** 2 * phi / (zero ** 3 * below)).sum())
                row("spreading maximum", e, tau, biot, 2 / math.pi * (j1 * phi / (zero ** 2 * below)).sum())


def half_space():
    """Disc of even flux on a half-space by Hankel integrals (H. S. Carslaw, J. C. Jaeger), times k and radius."""
    with mpmath.workdps(20):
        mean = 2 / mpmath.pi * mpmath.quadosc(lambda x: mpmath.besselj(1, x) ** 2 / x ** 2, [0, mpmath.inf], period=mpmath.pi)
        centre = mpmath.quadosc(lambda x: mpmath.besselj(1, x) / x, [0, mpmath.inf], period=2 * mpmath.pi) / mpmath.pi
    row("half-space mean", 0, 0, 0, mean)
    row("half-space centre", 0, 0, 0, centre)


def bypass():
    """Share of the air between fins: both ways laminar, one total pressure before and one static pressure behind the sink; ends by
    Culham and Muzychka (2001) and by Rennels and Hudson (2012), nu 1.6e-5.

    Sink A: 16 fins of 0.8 mm in 60 mm, 25 mm high, 60 mm long, base 4 mm; arguments flow, width and height of the duct.
    """
    nu, fins, t, width, height, length, base = 1.6e-5, 16, 0.0008, 0.060, 0.025, 0.060, 0.004

    def friction(velocity, d, developed):
        x = length / (d * velocity * d / nu)
        f = math.sqrt((3.44 / math.sqrt(x)) ** 2 + developed ** 2) / (velocity * d / nu)
        return 4 * f * length / d * velocity ** 2 / 2

    def hydraulic(a, b):
        return 2 * a * b / (a + b) if a > 0 and b > 0 else 0

    gap = (width - fins * t) / (fins - 1)
    r = gap / height
    developed = 24 - 32.527 * r + 46.721 * r ** 2 - 40.829 * r ** 3 + 22.954 * r ** 4 - 6.089 * r ** 5
    s = 1 - fins * t / width
    open_area = (fins - 1) * gap * height

    def between(flow):
        v, u = flow / open_area, flow / (width * height)
        return friction(v, hydraulic(gap, height), developed) + (0.42 * (1 - s * s) + (1 - s * s) ** 2) * v * v / 2 + u * u / 2

    for w, h in ((0.061, 0.030), (0.070, 0.035), (0.080, 0.040), (0.100, 0.060), (0.180, 0.056)):
        above, beside = w * (h - height - base), (w - width) * (height + base)
        area = above + beside
        d = (above * hydraulic(w, h - height - base) + beside * hydraulic((w - width) / 2, height + base)) / area
        beta = math.sqrt(area / (w * h))
        jet = 1 + 0.622 * (1 - 0.215 * beta ** 2 - 0.785 * beta ** 5)
        contraction = 0.0696 * (1 - beta ** 5) * jet ** 2 + (jet - 1) ** 2

        def past(flow):
            v = flow / area
            return friction(v, d, 24) + (contraction + 1) * v * v / 2

        for flow in (1e-5, 1e-4, 5e-4, 1e-3):
            share = brentq(lambda q: between(q * flow) - past((1 - q) * flow), 1e-9, 1 - 1e-9, xtol=1e-14)
            row("bypass", flow, w, h, share)


def banks():
    """ESDU 73031 (1973), plain tube banks of ten rows and more, Pr 0.71, as in the library ht 1.0.7: a Re^m Pr^0.34."""
    for reynolds in (50.0, 100.0, 200.0, 500.0, 1e3, 2e3, 5e3, 1e4, 5e4, 1e5):
        for staggered, low, high in ((0, (0.742, 0.431), (0.211, 0.651)), (1, (1.309, 0.360), (0.273, 0.635))):
            a, m = low if reynolds <= 300 else high
            row("ESDU bank", reynolds, staggered, 0, a * reynolds ** m * 0.71 ** 0.34)


flat_plate()
for long in (1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0):
    even_temperature, even_flux = rectangle(1 / long)
    row("rectangle, even temperature", 1 / long, 0, 0, even_temperature)
    row("rectangle, even flux", 1 / long, 0, 0, even_flux)
parallel_plates()
fins()
spreading()
half_space()
bypass()
banks()
