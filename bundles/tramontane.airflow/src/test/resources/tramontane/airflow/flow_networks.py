"""Makes flow_networks.csv: whole air paths of 5 to 200 bays, solved by SciPy from the formulas alone; and joint_networks.csv:
small ones with two dipping banks and all their joint states.

Formulas
  moist air        CIPM-2007 (A. Picard and others, Metrologia 45 (2008) 149-155); viscosity by Sutherland, ISO 2533 eq. (22)
  local loss       dp = c q (q^4 + q0^4)^(1/4), c = K rho/(2 A^2), q0 = 10 mu A_holes/(rho d)
  measured         dp = a q mu/mu0 + b q |q| rho/rho0, mu0 that of 293.15 K; with a = 0 linear in the way of a local loss, q0
                   being the flow of 1e-4 Pa in the measurement at its Reynolds number: (1e-4/b)^(1/2) (mu/rho)/(mu0/rho0); the
                   drop of a filter times the clogging
  flap             forwards the open loss and p q/sqrt(q^2 + q1^2), backwards c q (q^4 + q2^4)^(1/4) of the leak, with
                   s = max(sqrt(p c), slope of the leak at rest, twice that of the open flap), q1 = p/(s - slope of the open
                   flap at rest), q2 = s/c
  mover            scipy.interpolate.PchipInterpolator through the measured points; beyond the ends the slope at the end and a
                   square term highest pressure/largest flow^2; where the curve rises at that end, the slope
                   times t/(1 + |t|/w)^2 instead of t, t the flow beyond it, w 2 % of the largest; fan laws Q ~ n, dp ~ n^2 rho (ISO 5801, AMCA 210). Between two
                   measured speeds n1 < n2 the fan laws bring both curves to the speed n, and at equal flow the pressure is
                   ((n2 - n) p1 + (n - n1) p2)/(n2 - n1); outside them the curve of the nearest speed alone
  failed mover     local loss of (1 + 0.707)^2 on its open area, times 2 where the air turns it, times 3 where it is locked; open
                   area 0.6 of the frame where not stated
  bank             each column is a branch of its own between the two bays, so that columns share flow by themselves; all take
                   the air of the bay from which the bank as a whole gets it
  buoyancy         (rho outside - rho) g (z to - z from), rho of the air that enters; none to or from the outside

Method: mass flows and pressures together are the unknowns; Newton's method with analytic slopes, each step by
scipy.sparse.linalg.spsolve and shortened until the sum of squares falls. Air is that of the bay upstream; directions are taken
from the solution before until they stay. Every solution is checked: mass balances to 1e-12 of the largest flow, branch laws to
1e-12 of the largest pressure. Up to 60 bays it is also found by scipy.optimize.root (hybr) on the bay pressures alone, the flow
of each branch by bisection, and must agree to 1e-9 of the largest flow. Networks with a bank whose curve dips: the bank's flow is
imposed from far backwards upwards, the rest solved, what the bank gives more than is asked of it brought to zero by
scipy.optimize.brentq, all laws together polished by Newton's method. The state reached from rest is the first crossing met from
zero flow, upwards where the bank gives more than is asked at rest.

Drawn again are: networks with unlike air in which a branch flows less than 1e-6 kg/s but not nothing, or in which other first
directions lead to another solution; crossings closer than 1 % of the largest flow, and an excess that turns back within 0.5 % of
the highest pressure from zero; up to 45 times dipping curves with fewer than three crossings. A dipping curve is scaled such that
its rise lies where the path asks for it.

Joint states: air as outside everywhere; each column of a dipping bank has a flow of its own, so that columns may share unevenly.
From 400 random sets of their flows, a third of them far outside the measured ones, two searches start, both by scipy.optimize.root (hybr): one on what each column gives more
than is asked of it, the rest of the path solved for each set of flows; one on all equations at once, from masses and pressures
scattered about such a solution. What they end at is polished by Newton's method, checked as above, and counts as one state
where flows differ by less than 1e-6 of the largest measured flow, columns of a bank having changed places perhaps. A state is
stable where all eigenvalues of the derivatives of those excesses by the columns' flows have negative real parts. Drawn again are
networks in which the banks hardly see each other, with fewer than five states, with several columns but no uneven state, with
states closer than 1 % of the largest flow or met fewer than five times, or with an eigenvalue below 1 % of a usual slope.

Lines of the table (SI; several numbers in a field are parted by blanks; bays from 0, outside -1; cold: every bay like the air
outside, warm: bays at their temperatures):
  network,name,bays,temperature outside,barometric pressure,relative humidity,clogging,density outside,viscosity outside
  mover,id,open area or empty,frame width,frame height
  curve,mover,speed,density,flows,pressures
  bay,height,temperature,density,viscosity,pressure cold,pressure warm
  passage,from,to,kind,parameters,mass flow cold,mass flow warm
      area K | width height K | diameter discharge | width height ratio K | a b density filter | area K leak share leak K lifting
  bank,from,to,mover,across,along,series,speed,failed,mass flow of each column cold,the same warm
  crossing,cold or warm,bank,mass flow,pressure that the bank gives,1 if stable,1 if reached from rest
Those of joint_networks.csv: the same as far as they give the network, and
  state,1 if stable,1 if the columns of each bank share evenly,mass flow of each column of bank 0,of each column of bank 1

Run: python3 flow_networks.py > flow_networks.csv         (takes half an hour)
     python3 flow_networks.py joint > joint_networks.csv  (takes some minutes)
Made with SciPy 1.10.1 and NumPy 1.24.2, each network in a run of its own with its number behind the command, the tables joined
from these by number. Each network has its own random numbers, so that this makes no difference.
"""
import sys

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, root
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import spsolve

G = 9.80665
PLAIN = (1 + 0.707) ** 2
LOSS = {"removed": PLAIN, "freewheeling": 2 * PLAIN, "locked": 3 * PLAIN}


class Again(Exception):
    """This draw has no clear answer."""


# air

def vapour(p, t, h):
    c = t - 273.15
    f = 1.00062 + 3.14e-8 * p + 5.6e-7 * c * c
    return h * f * np.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t) / p


def moist(p, t, x):
    c = t - 273.15
    z = 1 - p / t * (1.58123e-6 - 2.9331e-8 * c + 1.1043e-10 * c * c + (5.707e-6 - 2.051e-8 * c) * x
                     + (1.9898e-4 - 2.376e-6 * c) * x * x) + (p / t) ** 2 * (1.83e-11 - 0.765e-8 * x * x)
    return p * 28.96546e-3 / (z * 8.314472 * t) * (1 - x * (1 - 18.01528 / 28.96546))


def sutherland(t):
    return 1.458e-6 * t ** 1.5 / (t + 110.4)


# laws: volume flow to drop and slope

def local(q, c, q0):
    m = (q ** 4 + q0 ** 4) ** 0.25
    r = np.divide(q, m, out=np.zeros_like(q), where=m > 0)
    return c * q * m, c * m * (1 + r ** 4)


class Curve:
    """A measured curve."""

    def __init__(self, speed, density, flow, pressure):
        self.speed, self.density = speed, density
        self.flow, self.pressure = np.array(flow), np.array(pressure)
        self.value = PchipInterpolator(self.flow, self.pressure)
        self.slope = self.value.derivative()
        self.square = max(pressure) / flow[-1] ** 2
        self.ends = float(self.slope(flow[0])), float(self.slope(flow[-1]))

    def rise(self, q):
        inside = np.clip(q, self.flow[0], self.flow[-1])
        low, high = np.minimum(q - self.flow[0], 0), np.maximum(q - self.flow[-1], 0)
        (before, first), (after, last) = self.beyond(self.ends[0], low), self.beyond(self.ends[1], high)
        value = self.value(inside) + before + self.square * low ** 2 + after - self.square * high ** 2
        slope = np.where(q < self.flow[0], first + 2 * self.square * low,
                         np.where(q > self.flow[-1], last - 2 * self.square * high, self.slope(inside)))
        return value, slope

    def beyond(self, slope, t):
        """What the slope of an end adds beyond it, and its derivative; a rise dies away."""
        if slope <= 0:
            return slope * t, slope
        far = 1 + np.abs(t) / (0.02 * self.flow[-1])
        return slope * t / far ** 2, slope * (2 - far) / far ** 3


class Mover:
    def __init__(self, name, area, width, height, curves):
        self.name, self.area, self.width, self.height, self.curves = name, area, width, height, curves

    def open(self):
        return self.area if self.area else 0.6 * self.width * self.height

    def shares(self, speed):
        """The curves that hold at a speed, and how much each counts."""
        below = [c for c in self.curves if c.speed <= speed]
        above = [c for c in self.curves if c.speed > speed]
        if not below or not above:
            return [(max(below, key=lambda c: c.speed) if below else min(above, key=lambda c: c.speed), 1.0)]
        low, high = max(below, key=lambda c: c.speed), min(above, key=lambda c: c.speed)
        weight = (speed - low.speed) / (high.speed - low.speed)
        return [(low, 1 - weight), (high, weight)]


class Path:
    """An air path; columns of banks are branches of their own."""

    def __init__(self, air, clogging, height, passages, banks):
        self.passages, self.banks = passages, banks
        self.height = np.append(height, 0.0)
        self.bays = len(height)
        self.clogging = clogging
        ends = [(f, t) for f, t, *_ in passages]
        group = list(range(len(passages)))
        columns = []
        for k, bank in enumerate(banks):
            for column in bank.columns():
                ends.append((bank.start, bank.end))
                group.append(len(passages) + k)
                columns.append((bank, column))
        self.start = np.array([e[0] for e in ends])
        self.end = np.array([e[1] for e in ends])
        self.group = np.array(group)
        self.columns = columns
        self.groups = len(passages) + len(banks)
        self.air(*air)

    def air(self, density, viscosity):
        """Density and viscosity of each bay, the outside last."""
        self.density, self.viscosity = density, viscosity
        inner = (self.start >= 0) & (self.end >= 0)
        self.rise = np.where(inner, self.height[self.end] - self.height[self.start], 0)
        self.unlike = density[self.start] != density[self.end]

    def laws(self, forward):
        """Takes the air that enters each branch, by the direction of each group."""
        entry = np.where(forward[self.group], self.start, self.end)
        rho, mu = self.density[entry], self.viscosity[entry]
        n = len(entry)
        a, c, q0 = np.zeros(n), np.zeros(n), np.zeros(n)
        flaps, runs = [], {}
        reference = sutherland(293.15)
        for e, (_, _, kind, v) in enumerate(self.passages):
            if kind == "measured":
                factor = self.clogging if v[3] else 1
                a[e] = v[0] * factor * mu[e] / reference
                c[e] = v[1] * factor * rho[e] / v[2]
                q0[e] = 0 if v[0] else (1e-4 / v[1]) ** 0.5 * (mu[e] / rho[e]) / (reference / v[2])
                continue
            if kind == "flap":
                flaps.append((e, self.flap(v, rho[e], mu[e])))
                continue
            if kind == "opening":
                area, loss = v
                hole, holes = (4 * area / np.pi) ** 0.5, area
            elif kind == "rectangle":
                area, loss = v[0] * v[1], v[2]
                hole, holes = 2 * area / (v[0] + v[1]), area
            elif kind == "round":
                area, loss = np.pi / 4 * v[0] ** 2, v[1] ** -2
                hole, holes = v[0], area
            else:  # grille
                area, loss = v[0] * v[1], v[3]
                holes = v[2] * area
                hole = (4 * holes / np.pi) ** 0.5
            c[e] = loss * rho[e] / (2 * area ** 2)
            q0[e] = 10 * mu[e] * holes / (rho[e] * hole)
        for k, (bank, column) in enumerate(self.columns):
            e = len(self.passages) + k
            area = bank.mover.open()
            standing = [LOSS[s] for s in column if s]
            if standing:
                c[e] = sum(standing) * rho[e] / (2 * area ** 2)
                q0[e] = 10 * mu[e] * (np.pi * area / 4) ** 0.5 / rho[e]
            running = sum(not s for s in column)
            if running:
                runs.setdefault((bank.mover, bank.speed), []).append((e, running))
        runs = [(curve, weight, speed, np.array([e for e, _ in es]), np.array([r for _, r in es]))
                for (mover, speed), es in runs.items() for curve, weight in mover.shares(speed)]

        def law(mass):
            q = mass / rho
            drop, slope = local(q, c, q0)
            drop += a * q
            slope += a
            for e, (co, q0o, cl, p, s) in flaps:
                if q[e] <= 0:
                    drop[e], slope[e] = local(q[e], cl, s / cl)
                else:
                    drop[e], slope[e] = local(q[e], co, q0o)
                    q1 = p / (s - co * q0o)
                    size = np.hypot(q[e], q1)
                    drop[e] += p * q[e] / size
                    slope[e] += p * q1 ** 2 / size ** 3
            for curve, weight, speed, es, count in runs:
                ratio = speed / curve.speed
                value, fall = curve.rise(q[es] / ratio)
                scale = weight * count * rho[es] / curve.density * ratio
                drop[es] -= value * scale * ratio
                slope[es] -= fall * scale
            return drop, slope / rho

        buoyancy = (self.density[-1] - rho) * G * self.rise
        return law, buoyancy

    @staticmethod
    def flap(v, rho, mu):
        area, loss, share, leak_loss, lifting = v
        leak = share * area
        co, q0o = loss * rho / (2 * area ** 2), 10 * mu * (np.pi * area / 4) ** 0.5 / rho
        cl, q0l = leak_loss * rho / (2 * leak ** 2), 10 * mu * (np.pi * leak / 4) ** 0.5 / rho
        return co, q0o, cl, lifting, max((lifting * cl) ** 0.5, cl * q0l, 2 * co * q0o)

    def net(self, mass):
        return np.bincount(self.group, mass, self.groups)


class Bank:
    def __init__(self, start, end, mover, across, along, series, speed, failed):
        self.start, self.end, self.mover, self.speed = start, end, mover, speed
        self.across, self.along, self.series, self.failed = across, along, series, failed

    def columns(self):
        return [[self.failed.get(c * self.series + s + 1) for s in range(self.series)] for c in range(self.across * self.along)]


# solving

def newton(path, forward, keep, inflow, start):
    """Solves with given directions; keep: branches whose law counts; the rest have no flow."""
    law, buoyancy = path.laws(forward)
    n, bays = len(path.start), path.bays
    used = np.flatnonzero(keep)
    b = len(used)
    f, t = path.start[used], path.end[used]
    rows = [np.arange(b)]
    cols = [np.arange(b)]
    ones = []
    for ends, sign in ((f, -1.0), (t, 1.0)):
        at = np.flatnonzero(ends >= 0)
        rows += [at, b + ends[at]]
        cols += [b + ends[at], at]
        ones += [np.full(len(at), sign), np.full(len(at), sign)]
    rows, cols = np.concatenate(rows), np.concatenate(cols)
    ones = np.concatenate(ones)

    def full(m):
        mass = np.zeros(n)
        mass[used] = m
        return mass

    def step(slope, r):
        jac = csc_matrix((np.concatenate([slope, ones]), (rows, cols)), shape=(b + bays, b + bays))
        return spsolve(jac, -r)

    def residual(x, drop):
        p = np.append(x[b:], 0.0)
        r = np.empty(b + bays)
        r[:b] = drop - buoyancy[used] - p[f] + p[t]
        balance = inflow.copy()
        np.subtract.at(balance, f[f >= 0], x[:b][f >= 0])
        np.add.at(balance, t[t >= 0], x[:b][t >= 0])
        r[b:] = balance
        return r

    def at(x):
        drop, slope = law(full(x[:b]))
        return drop[used], slope[used]

    if start is None:
        x = np.zeros(b + bays)
        rest, _ = at(x)
        x[:b] = 0.02
        there, _ = at(x)
        x[:b] = 0
        x += step(np.maximum((there - rest) / 0.02, 1e-3), residual(x, rest))
    else:
        x = np.append(start[0][used], start[1])
    best, best_error = None, np.inf
    polish = 0
    for _ in range(300):
        drop, slope = at(x)
        r = residual(x, drop)
        p_scale = max(1e-3, np.max(np.abs(drop)), np.max(np.abs(x[b:])))
        m_scale = max(1e-6, np.max(np.abs(x[:b])))
        error = max(np.max(np.abs(r[:b])) / p_scale, np.max(np.abs(r[b:])) / m_scale)
        if error < best_error:
            best, best_error = x, error
        if error < 1e-11:
            polish += 1
            if polish > 4:
                break
        d = step(np.where(np.abs(slope) > 1e-9, slope, 1e-9), r)
        length = 1.0
        if error > 1e-9:
            weight = np.append(np.full(b, 1 / p_scale), np.full(bays, 1 / m_scale))
            before = np.sum((r * weight) ** 2)
            while length > 1e-9:
                after = np.sum((residual(x + length * d, at(x + length * d)[0]) * weight) ** 2)
                if after < (1 - 1e-4 * length) * before:
                    break
                length /= 2
        x = x + length * d
    if best_error > 1e-10:
        raise Again("residual %g" % best_error)
    return full(best[:b]), best[b:]


def strict(path, mass, pressure, forward):
    """Refuses what does not meet the equations to 1e-12."""
    law, buoyancy = path.laws(forward)
    drop = law(mass)[0]
    p = np.append(pressure, 0.0)
    unmet = drop - buoyancy - p[path.start] + p[path.end]
    balance = np.zeros(path.bays + 1)
    np.subtract.at(balance, path.start, mass)
    np.add.at(balance, path.end, mass)
    if (np.max(np.abs(unmet)) > 1e-12 * max(np.max(np.abs(p)), np.max(np.abs(drop)))
            or np.max(np.abs(balance[:-1])) > 1e-12 * np.max(np.abs(mass))):
        raise Again("not to 1e-12")


def solve(path, imposed=None, start=None, forward=None, fixed=None):
    """Solves; imposed: mass flow of the last bank (one that dips), None where its law counts."""
    keep = np.ones(len(path.start), bool)
    inflow = np.zeros(path.bays)
    if imposed is not None:
        last = path.groups - 1
        keep = path.group != last
        for bay, sign in ((path.banks[-1].start, -1), (path.banks[-1].end, 1)):
            if bay >= 0:
                inflow[bay] += sign * imposed
    forward = np.ones(path.groups, bool) if forward is None else forward.copy()
    for _ in range(60):
        if imposed is not None:
            forward[-1] = imposed >= 0
        mass, pressure = newton(path, forward, keep, inflow, start)
        net = path.net(mass)
        turned = np.where(np.abs(net) <= 1e-12 * np.max(np.abs(net)), forward, net > 0)
        if imposed is not None:
            turned[-1] = imposed >= 0
        like = np.ones(path.groups, bool)
        like[path.group[path.unlike]] = False
        turned = np.where(like, forward, turned)
        if np.all(turned == forward):
            return mass, pressure, forward
        forward = turned
        start = mass, pressure
    raise Again("directions")


def clear(path, mass, pressure, forward, imposed, rng):
    """Refuses what depends on how air turns."""
    net = path.net(mass)
    if imposed is not None:
        net[-1] = imposed
    top = np.max(np.abs(net))
    for e in np.flatnonzero(path.unlike):
        size = abs(net[path.group[e]])
        still = size < 1e-12 * top and path.rise[e] == 0 and path.group[e] < len(path.passages)
        if size < 1e-6 and not still:
            raise Again("a branch turns")
    if not np.any(path.unlike):
        return
    for first in (~forward, rng.random(path.groups) < 0.5, rng.random(path.groups) < 0.5):
        other, _, _ = solve(path, imposed, None, first)
        if np.max(np.abs(other - mass)) > 1e-9 * top:
            raise Again("several directions")


def check_by_root(path, mass, pressure, forward, imposed):
    """The same by root finding on the bay pressures alone; True if it got there by itself."""
    law, buoyancy = path.laws(forward)
    keep = np.ones(len(path.start), bool)
    inflow = np.zeros(path.bays)
    if imposed is not None:
        keep = path.group != path.groups - 1
        for bay, sign in ((path.banks[-1].start, -1), (path.banks[-1].end, 1)):
            if bay >= 0:
                inflow[bay] += sign * imposed

    def flows(p):
        p = np.append(p, 0.0)
        want = p[path.start] - p[path.end] + buoyancy
        low, high = np.full(len(want), -1e-2), np.full(len(want), 1e-2)
        for _ in range(60):
            over, under = (law(low)[0] > want) & keep, (law(high)[0] < want) & keep
            if not over.any() and not under.any():
                break
            low[over] *= 2
            high[under] *= 2
        for _ in range(70):
            mid = (low + high) / 2
            over = law(mid)[0] > want
            high = np.where(over, mid, high)
            low = np.where(over, low, mid)
        mid = (low + high) / 2
        return np.where(keep, mid, 0), np.where(keep, 1 / np.maximum(law(mid)[1], 1e-9), 0)

    def balance(p):
        m, g = flows(p)
        f = inflow.copy()
        jac = np.zeros((path.bays, path.bays))
        for s, t, x, c in zip(path.start, path.end, m, g):
            if s >= 0:
                f[s] -= x
                jac[s, s] -= c
            if t >= 0:
                f[t] += x
                jac[t, t] -= c
            if s >= 0 and t >= 0:
                jac[s, t] += c
                jac[t, s] += c
        return f, jac

    own = np.where(keep, mass, 0)
    top = np.max(np.abs(mass))
    rng = np.random.default_rng(1)
    for attempt in range(6):
        near = attempt > 3
        begin = pressure * rng.normal(1, 0.1, path.bays) if near else rng.normal(0, 3 + 10 * attempt, path.bays)
        found = root(balance, begin, jac=True, method="hybr", options={"xtol": 1e-14, "maxfev": 600})
        if np.max(np.abs(balance(found.x)[0])) < 1e-10 * top:
            if np.max(np.abs(flows(found.x)[0] - own)) > 1e-9 * top:
                raise RuntimeError("root finder disagrees by %g" % np.max(np.abs(flows(found.x)[0] - own)))
            return not near
    raise Again("not confirmed")


# banks that dip

def excess(path, m, start, forward):
    mass, pressure, forward = solve(path, m, start, forward)
    bank = path.banks[-1]
    p = np.append(pressure, 0.0)
    law, buoyancy = path.laws(forward)
    columns = np.flatnonzero(path.group == path.groups - 1)
    whole = np.zeros(len(path.start))
    whole[columns] = m / len(columns)
    gives = -law(whole)[0][columns[0]]
    asked = p[bank.end] - p[bank.start] - buoyancy[columns[0]]
    return gives - asked, (mass, pressure), forward


def crossings(path, rng, per_interval):
    """All crossings of the last bank, by rising flow: mass flow, pressure, stable, reached, masses, pressures, directions."""
    bank = path.banks[-1]
    curve, = bank.mover.curves
    columns = bank.across * bank.along
    scale = bank.speed / curve.speed * columns * path.density[bank.start]
    measured = np.unique(np.append(curve.flow, 0.0)) * scale
    largest = measured[-1]
    grid = [np.linspace(-3 * largest, 0, 3 * per_interval, endpoint=False)]
    for low, high in zip(measured[:-1], measured[1:]):
        grid.append(np.linspace(low, high, per_interval, endpoint=False))
    grid.append(np.linspace(largest, 4 * largest, 3 * per_interval))
    grid = np.concatenate(grid)
    values, states = [], []
    state, forward = None, None
    for m in grid:
        e, state, forward = excess(path, m, state, forward)
        values.append(e)
        states.append((state, forward))
    values = np.array(values)
    highest = np.max(curve.pressure) * (bank.speed / curve.speed) ** 2
    if values[0] < 0 or values[-1] > 0:
        raise Again("crossing far off")
    for i in range(1, len(grid) - 1):
        if (values[i] - values[i - 1]) * (values[i + 1] - values[i]) < 0 and abs(values[i]) < 5e-3 * highest:
            raise Again("nearly a crossing")
    found = []
    for i in range(1, len(grid)):
        if values[i - 1] > 0 >= values[i] or values[i - 1] < 0 <= values[i]:
            if grid[i - 1] < 0 <= grid[i]:
                raise Again("crossing at rest")
            begin, forward = states[i - 1]
            m = brentq(lambda x: excess(path, x, begin, forward)[0], grid[i - 1], grid[i], xtol=1e-15, rtol=1e-14)
            _, (mass, pressure), forward = excess(path, m, begin, forward)
            clear(path, mass, pressure, forward, m, rng)
            columns_at = path.group == path.groups - 1
            guess = mass.copy()
            guess[columns_at] = m / columns
            mass, pressure, after = solve(path, None, (guess, pressure), forward)
            flow = mass[columns_at].sum()
            if abs(flow - m) > 1e-9 * largest or np.any(after != forward):
                raise Again("polish went astray")
            p = np.append(pressure, 0.0)
            gives = p[bank.end] - p[bank.start] - path.laws(forward)[1][columns_at][0]
            found.append([flow, gives, bool(values[i - 1] > 0), False, mass, pressure, forward])
    if len(found) % 2 == 0 or any(b[0] - a[0] < 1e-2 * largest for a, b in zip(found, found[1:])):
        raise Again("crossings close together")
    at_rest = excess(path, 0.0, *states[np.argmin(np.abs(grid))])[0]
    if abs(at_rest) < 5e-3 * highest:
        raise Again("almost a crossing at rest")
    ahead = [c for c in found if c[0] * at_rest > 0]
    (ahead[0] if at_rest > 0 else ahead[-1])[3] = True
    return found


# drawing

def short(x):
    return float("%.4g" % x)


def draw_curve(rng, largest, highest, speed, dips=False):
    n = int(rng.integers(6 if dips else 5, 10))
    flow = np.cumsum(rng.uniform(0.5, 1.5, n))
    flow = (flow - flow[0] * (1.0 if rng.random() < 0.8 else 0.7)) / flow[-1] * largest
    fall = np.cumsum(rng.uniform(0.3, 1.2, n))
    pressure = highest * (1 - (fall - fall[0]) / (fall[-1] - fall[0]) * rng.uniform(0.9, 1.0))
    if dips:
        k = int(rng.integers(1, n - 3))
        if rng.random() < 0.25:
            pressure[0] = pressure[1] * rng.uniform(0.8, 0.95)
        pressure[k + 1] = pressure[k] * rng.uniform(0.95, 1.1)
        pressure[k] = pressure[k + 1] * rng.uniform(0.5, 0.85)
        pressure[k + 2:] = pressure[k + 1] * np.linspace(0.9, 0.0, n - k - 2)
    return Curve(speed, short(rng.choice([1.2, 1.2, 1.15, 1.184])), [short(q) for q in flow], [short(p) for p in pressure])


def draw_mover(rng, name, dips=False):
    side = rng.uniform(0.06, 0.14)
    speed = rng.uniform(150, 800)
    largest, highest = 10 ** rng.uniform(-2, -1), 10 ** rng.uniform(1.6, 2.4)
    curves = [draw_curve(rng, largest, highest, short(speed), dips)]
    if not dips and rng.random() < 0.4:
        slow = rng.uniform(0.5, 0.75)
        curves.append(draw_curve(rng, largest * slow, highest * slow ** 2, short(speed * slow)))
    area = short(0.55 * side ** 2) if rng.random() < 0.5 else None
    return Mover(name, area, short(side), short(side * rng.uniform(0.9, 1.1)), curves)


def draw_passage(rng, i, k):
    kind = rng.choice(["opening", "rectangle", "round", "grille", "measured", "measured"])
    size = 10 ** rng.uniform(-3.2, -1.9)
    side = size ** 0.5 * rng.uniform(0.5, 1.5)
    if kind == "opening":
        v = [size, rng.uniform(1, 4)]
    elif kind == "rectangle":
        v = [side, size / side, rng.uniform(1, 4)]
    elif kind == "round":
        v = [(4 * size / np.pi) ** 0.5, rng.uniform(0.55, 0.95)]
    elif kind == "grille":
        v = [side, 2 * size / side, rng.uniform(0.3, 0.8), rng.uniform(1.5, 12)]
    else:
        a = 0.0 if rng.random() < 0.5 else 10 ** rng.uniform(1, 3.3)
        v = [a, 10 ** rng.uniform(3.5, 6), rng.choice([1.2, 1.1]), float(rng.random() < 0.3)]
    return i, k, str(kind), [short(x) for x in v]


def draw_flap(rng, i, k):
    return i, k, "flap", [short(x) for x in (10 ** rng.uniform(-3, -2), rng.uniform(1, 3), rng.uniform(0.01, 0.2),
                                             rng.uniform(2, 3), rng.uniform(0.5, 15))]


def draw(rng, bays, dips, flaps, fails, high):
    outside = (short(rng.uniform(288, 313)), float(round(rng.uniform(75000, 101325))), short(rng.uniform(0.1, 0.6)))
    clogging = short(rng.uniform(1, 2))
    height = np.array([short(rng.uniform(0, 1.5)) if high else 0.0 for _ in range(bays)])
    heat = np.array([short(outside[0] + rng.uniform(1, 30)) for _ in range(bays)])
    passages = []
    for i in range(bays):
        passages.append(draw_passage(rng, i, int(rng.integers(max(-1, i - 12), i))))
    degree = np.bincount([e for f, t, *_ in passages for e in (f, t) if e >= 0], minlength=bays)
    for i in np.flatnonzero(degree == 1):
        if high or rng.random() < 0.8:
            passages.append(draw_passage(rng, int(i), int(-1 if rng.random() < 0.5 else rng.integers(0, bays))))
    for _ in range(bays // 2):
        i, k = rng.integers(-1, bays, 2)
        if i != k:
            passages.append(draw_passage(rng, int(i), int(k)))
    if flaps:
        for k in rng.choice(len(passages), max(2, len(passages) // 8), replace=False):
            f, t, *_ = passages[k]
            passages[k] = draw_flap(rng, f, t)
    passages = [p for p in passages if p[0] != p[1]]
    movers = [draw_mover(rng, "M%d" % j) for j in range(int(rng.integers(1, 4)))]
    banks = []
    for b in range(max(2, bays // 7)):
        mover = movers[int(rng.integers(len(movers)))]
        across, along, series = int(rng.integers(1, 4)), int(rng.integers(1, 3)), 1 + int(rng.random() < 0.25)
        failed = {}
        if fails and (b == 0 or rng.random() < 0.3):
            for position in range(1, across * along * series + 1):
                if rng.random() < 0.35:
                    failed[position] = str(rng.choice(["locked", "freewheeling", "removed"]))
            failed = failed or {across * along * series: "locked"}
        i = int(rng.integers(0, bays))
        k = -1 if rng.random() < 0.6 else int(rng.integers(0, bays))
        if i == k:
            continue
        if rng.random() < 0.5:
            i, k = k, i
        speed = short(mover.curves[0].speed * rng.uniform(0.5, 1.25))
        banks.append(Bank(i, k, mover, across, along, series, speed, failed))
    if dips:
        mover = draw_mover(rng, "D", dips=True)
        across, series, failed = int(rng.integers(1, 4)), 1 + int(rng.random() < 0.25), {}
        if series == 2 and fails:
            across, failed = 1, {1: "locked"}
        i = int(rng.integers(0, bays))
        i, k = (i, -1) if rng.random() < 0.5 else (-1, i)
        banks.append(Bank(i, k, mover, across, 1, series, short(mover.curves[0].speed * rng.uniform(0.7, 1.2)), failed))
    x = vapour(outside[1], outside[0], outside[2])
    everywhere = np.append(heat, outside[0])
    warm = moist(outside[1], everywhere, x), sutherland(everywhere)
    cold = np.full(bays + 1, warm[0][-1]), np.full(bays + 1, warm[1][-1])
    path = Path(cold, clogging, height, passages, banks)
    if dips:
        aim(path, rng)
    return outside, clogging, heat, movers, path, cold, warm


def aim(path, rng):
    """Scales the dipping curve so that the middle of its rise is what the path asks for at that flow."""
    bank = path.banks[-1]
    curve = bank.mover.curves[0]
    k = int(np.flatnonzero(np.diff(curve.pressure) > 0)[-1])
    columns = bank.across
    ratio = bank.speed / curve.speed
    rho = path.density[bank.start]
    m = (curve.flow[k] + curve.flow[k + 1]) / 2 * ratio * columns * rho
    e, (_, pressure), _ = excess(path, m, None, None)
    law, _ = path.laws(np.ones(path.groups, bool))
    at = path.group == path.groups - 1
    gives = -law(np.where(at, m / columns, 0))[0][at][0]
    asked = gives - e
    standing = len(bank.failed)
    if asked <= 1 or gives <= 0 or standing and asked < gives / 20:
        raise Again("nothing to aim at")
    factor = asked / gives * rng.uniform(0.97, 1.03)
    bank.mover.curves[0] = Curve(curve.speed, curve.density, list(curve.flow), [short(p * factor) for p in curve.pressure])


def numbers(values):
    return " ".join(repr(float(v)) for v in values)


def result(values):
    return " ".join("0" if v == 0 else "%.15g" % v for v in values)


def make(number, bays, dips, flaps, fails, high):
    for attempt in range(400):
        rng = np.random.default_rng([2024, number, attempt])
        try:
            outside, clogging, heat, movers, path, cold, warm = draw(rng, bays, dips, flaps, fails, high)
            states, lines, alone = [], [], 0
            for name, air in (("cold", cold), ("warm", warm)):
                path.air(*air)
                if dips:
                    rough = crossings(path, rng, 4)
                    if bays > 40 and len(rough) < 3 and attempt < 45:
                        raise Again("one crossing")
                    found = crossings(path, rng, 40)
                    # several where that can be had
                    if len(found) < 3 and attempt < 45:
                        raise Again("one crossing")
                    for c in found:
                        lines.append("crossing,%s,%d,%s,%s,%d,%d" % (name, len(path.banks) - 1, result([c[0]]), result([c[1]]), c[2], c[3]))
                    reached = next(c for c in found if c[3])
                    mass, pressure, forward = reached[4:]
                    imposed = reached[0]
                else:
                    mass, pressure, forward = solve(path)
                    imposed = None
                    clear(path, mass, pressure, forward, None, rng)
                strict(path, mass, pressure, forward)
                if bays <= 60:
                    alone += check_by_root(path, mass, pressure, forward, imposed)
                states.append((mass, pressure))
            break
        except Again as why:
            print(number, attempt, why, file=sys.stderr)
    else:
        raise RuntimeError("network %d" % number)
    about = [word for word, on in (("dip", dips), ("flaps", flaps), ("failed", fails), ("heights", high)) if on]
    title = "%02d: %d bays%s" % (number, bays, "".join(" " + a for a in about))
    print(title, "attempt", attempt, "branches", len(path.start), "alone", alone, file=sys.stderr, flush=True)
    print("network", title, bays, *(repr(v) for v in outside), repr(clogging), repr(float(warm[0][-1])), repr(float(warm[1][-1])), sep=",")
    for mover in {id(b.mover): b.mover for b in path.banks}.values():
        print("mover", mover.name, "" if mover.area is None else repr(mover.area), repr(mover.width), repr(mover.height), sep=",")
        for c in mover.curves:
            print("curve", mover.name, repr(c.speed), repr(c.density), numbers(c.flow), numbers(c.pressure), sep=",")
    for i in range(bays):
        print("bay", repr(float(path.height[i])), repr(float(heat[i])), repr(float(warm[0][i])), repr(float(warm[1][i])),
              *(result([p[i]]) for _, p in states), sep=",")
    for e, (f, t, kind, v) in enumerate(path.passages):
        print("passage", f, t, kind, numbers(v), *(result([m[e]]) for m, _ in states), sep=",")
    for k, b in enumerate(path.banks):
        at = path.group == len(path.passages) + k
        print("bank", b.start, b.end, b.mover.name, b.across, b.along, b.series, repr(b.speed),
              " ".join("%d:%s" % item for item in sorted(b.failed.items())), *(result(m[at]) for m, _ in states), sep=",")
    for line in lines:
        print(line)


# two banks that dip

def joint(path, dips, flow, start):
    """The rest of the path with given mass flows of branches that dip: what each gives more than is asked of it."""
    keep = np.ones(len(path.start), bool)
    keep[dips] = False
    inflow = np.zeros(path.bays + 1)
    np.subtract.at(inflow, path.start[dips], flow)
    np.add.at(inflow, path.end[dips], flow)
    forward = np.ones(path.groups, bool)
    mass, pressure = newton(path, forward, keep, inflow[:-1], start)
    mass[dips] = flow
    law, _ = path.laws(forward)
    drop, slope = law(mass)
    p = np.append(pressure, 0.0)
    return p[path.start[dips]] - p[path.end[dips]] - drop[dips], slope, mass, pressure


def excess_slopes(path, dips, slope):
    """Derivatives of what each branch that dips gives more than is asked of it by the mass flows of all of them."""
    rest = np.setdiff1d(np.arange(len(path.start)), dips)
    incidence = np.zeros((path.bays + 1, len(path.start)))
    incidence[path.start, np.arange(len(path.start))] += 1
    incidence[path.end, np.arange(len(path.start))] -= 1
    incidence = incidence[:-1]
    nodal = incidence[:, rest] / slope[rest] @ incidence[:, rest].T
    return -incidence[:, dips].T @ np.linalg.solve(nodal, incidence[:, dips]) - np.diag(slope[dips])


def joint_states(path, dips, likes, largest, rng, starts):
    """States, as mass flows of the branches that dip, likes by rising flow, and how often each of both searches met each."""
    n, bays = len(path.start), path.bays
    law, _ = path.laws(np.ones(path.groups, bool))
    incidence = np.zeros((bays + 1, n))
    incidence[path.start, np.arange(n)] -= 1
    incidence[path.end, np.arange(n)] += 1
    incidence = incidence[:-1]

    def whole(x):
        drop, slope = law(x[:n])
        r = np.concatenate([(drop + incidence.T @ x[n:]) / 50, incidence @ x[:n] / 0.01])
        jac = np.block([[np.diag(slope) / 50, incidence.T / 50], [incidence / 0.01, np.zeros((bays, bays))]])
        return r, jac

    found, met = [], []
    for _ in range(starts):
        first = rng.uniform(-0.5, 1.5, len(dips)) * largest
        if rng.random() < 1 / 3:
            first *= 10 ** rng.uniform(0, 1, len(dips))
        try:
            _, _, mass, pressure = joint(path, dips, first, None)
        except Again:
            continue
        last = [mass, pressure]

        def reduced(m):
            e, slope, last[0], last[1] = joint(path, dips, m, (last[0], last[1]))
            return e, excess_slopes(path, dips, slope)

        ends = []
        try:
            end = root(reduced, first, jac=True, method="hybr", options={"xtol": 1e-12, "maxfev": 200})
            if np.max(np.abs(end.fun)) < 1e-8:
                joint(path, dips, end.x, None)
                ends.append((0, last[0], last[1]))
        except Again:
            pass
        far = np.concatenate([mass, pressure])
        far[:n] += rng.normal(0, 0.3, n) * largest.mean()
        far[n:] *= rng.uniform(0.5, 1.5, bays)
        end = root(whole, far, jac=True, method="hybr", options={"xtol": 1e-12, "maxfev": 600})
        if np.max(np.abs(end.fun)) < 1e-9:
            ends.append((1, end.x[:n], end.x[n:]))
        for how, mass, pressure in ends:
            forward = np.ones(path.groups, bool)
            try:
                mass, pressure = newton(path, forward, np.ones(n, bool), np.zeros(bays), (mass, pressure))
                strict(path, mass, pressure, forward)
            except Again:
                continue
            m = mass[dips].copy()
            for like in likes:
                m[like] = np.sort(m[like])
            for k, known in enumerate(found):
                if np.max(np.abs(known - m) / largest) < 1e-6:
                    met[k][how] += 1
                    break
            else:
                met.append([1 - how, how])
                found.append(m)
    return found, met


def make_joint(number, bays, columns):
    for attempt in range(1000):
        rng = np.random.default_rng([2025, number, attempt])
        outside = (short(rng.uniform(288, 313)), float(round(rng.uniform(75000, 101325))), short(rng.uniform(0.1, 0.6)))
        passages = [draw_passage(rng, i, int(rng.integers(-1, i))) for i in range(bays)]
        passages += [draw_passage(rng, int(i), -1) for i in rng.choice(bays, 2, replace=False)]
        passages = [p[:3] + (p[3][:3] + [0.0],) if p[2] == "measured" else p for p in passages]
        i, k = rng.choice(bays, 2, replace=False)
        i, k = int(i), int(k)
        places = [(-1, i), [(-1, k), (k, -1), (i, k)][int(rng.integers(3))]]
        banks, members, likes, largest = [], [], [], []
        for b, (f, t) in enumerate(places):
            mover = draw_mover(rng, "D%d" % b, dips=True)
            speed = short(mover.curves[0].speed * rng.uniform(0.7, 1.2))
            members.append([len(banks) + c for c in range(columns[b])])
            likes.append(np.array(members[-1]))
            banks += [Bank(f, t, mover, 1, 1, 1, speed, {}) for _ in range(columns[b])]
        if number == 2:
            falling = draw_mover(rng, "M")
            falling.curves = falling.curves[:1]
            banks.append(Bank(-1, k, falling, 2, 1, 1, falling.curves[0].speed, {}))
        x = vapour(outside[1], outside[0], outside[2])
        rho, mu = float(moist(outside[1], outside[0], x)), float(sutherland(outside[0]))
        path = Path((np.full(bays + 1, rho), np.full(bays + 1, mu)), 1.0, np.zeros(bays), passages, banks)
        dips = len(passages) + np.arange(sum(columns))
        rise, largest = np.zeros(len(dips)), np.zeros(len(dips))
        for like in likes:
            bank = banks[like[0]]
            curve, = bank.mover.curves
            r = int(np.flatnonzero(np.diff(curve.pressure) > 0)[-1])
            rise[like] = (curve.flow[r] + curve.flow[r + 1]) / 2 * bank.speed / curve.speed * rho
            largest[like] = curve.flow[-1] * bank.speed / curve.speed * rho
        try:
            # curves scaled such that the middles of both rises lie where the path asks for them together
            e, slope, mass, _ = joint(path, dips, rise, None)
            asks = -excess_slopes(path, dips, slope) - np.diag(slope[dips])
            if abs(asks[0, -1]) < 0.2 * (asks[0, 0] * asks[-1, -1]) ** 0.5:
                raise Again("banks far apart")
            gives = -path.laws(np.ones(path.groups, bool))[0](mass)[0][dips]
            for like in likes:
                asked = gives[like[0]] - e[like[0]]
                if asked <= 1 or gives[like[0]] <= 0:
                    raise Again("nothing to aim at")
                mover = banks[like[0]].mover
                curve, = mover.curves
                factor = asked / gives[like[0]] * rng.uniform(0.97, 1.03)
                mover.curves[0] = Curve(curve.speed, curve.density, list(curve.flow), [short(p * factor) for p in curve.pressure])
            if len(joint_states(path, dips, likes, largest, rng, 25)[0]) < 5:
                raise Again("few states")
            found, met = joint_states(path, dips, likes, largest, rng, 400)
            if min(map(sum, met)) < 5:
                raise Again("hard to find %s" % met)
            lines = []
            for m in sorted(found, key=tuple):
                others = [np.max(np.abs(m - other) / largest) for other in found if other is not m]
                if min(others, default=1) < 1e-2:
                    raise Again("states close together")
                slopes = excess_slopes(path, dips, joint(path, dips, m, None)[1])
                values = np.linalg.eigvals(slopes).real
                if np.min(np.abs(values)) < 1e-2 * np.median(np.abs(np.diag(slopes))):
                    raise Again("almost a fold")
                even = all(np.ptp(m[like]) < 1e-6 * largest[like[0]] for like in likes)
                lines.append("state,%d,%d,%s" % (np.max(values) < 0, even, ",".join(result(m[like]) for like in likes)))
            if columns != (1, 1) and all(",1,0," not in line and ",0,0," not in line for line in lines):
                raise Again("none uneven")
        except Again as why:
            print(number, attempt, why, file=sys.stderr)
            continue
        break
    else:
        raise RuntimeError("joint network %d" % number)
    title = "%d: %d bays" % (number, bays)
    print(title, "attempt", attempt, "states", len(found), "met", met, file=sys.stderr, flush=True)
    print("network", title, bays, *(repr(v) for v in outside), "1.0", repr(rho), repr(mu), sep=",")
    for mover in {id(b.mover): b.mover for b in path.banks}.values():
        print("mover", mover.name, "" if mover.area is None else repr(mover.area), repr(mover.width), repr(mover.height), sep=",")
        for c in mover.curves:
            print("curve", mover.name, repr(c.speed), repr(c.density), numbers(c.flow), numbers(c.pressure), sep=",")
    for _ in range(bays):
        print("bay", "0.0", repr(outside[0]), repr(rho), repr(mu), sep=",")
    for f, t, kind, v in passages:
        print("passage", f, t, kind, numbers(v), sep=",")
    for like in likes:
        b = banks[like[0]]
        print("bank", b.start, b.end, b.mover.name, len(like), 1, 1, repr(b.speed), "", sep=",")
    for b in banks[len(dips):]:
        print("bank", b.start, b.end, b.mover.name, b.across, b.along, b.series, repr(b.speed), "", sep=",")
    for line in lines:
        print(line)


if __name__ == "__main__":
    if sys.argv[1:2] == ["joint"]:
        print("# made by flow_networks.py joint, with SciPy; see there for formulas, method and what the columns mean")
        for number, (bays, columns) in enumerate([(3, (1, 1)), (4, (2, 1)), (6, (1, 2))]):
            if not sys.argv[2:] or str(number) in sys.argv[2:]:
                make_joint(number, bays, columns)
        sys.exit()
    which = [int(a) for a in sys.argv[1:]] or range(40)
    print("# made by flow_networks.py with SciPy; see there for formulas, method and what the columns mean")
    for number in which:
        make(number, round(5 * 40 ** (number / 39)), number % 4 == 1, number % 4 == 3, number % 2 == 0 or number % 8 in (1, 3),
             number % 5 == 0 and number % 4 != 1)
