"""Golden values of life and redundancy of whole designs: python3 chain.py > chain.csv (needs NumPy and SciPy).

From the sections life, the mission and the operating points in points.json to lives, survival, repair, visits and fleet, by what the README
states. points.json holds, for each set of failed movers, the air at each bank, the speed of its movers and what the limits are asked of:
`python3 chain.py points COMMAND` makes it again, solving each design with every set of failed movers stated outright in its conditions.

Load sharing is not computed along paths in time but as a mean over Dirichlet directions of the units' thresholds of exposure: with one
shape the time to a limit scales with them, so that the scale is integrated out exactly and only the directions are sampled (Sobol points).

Taken from the product, as the README does not state them: 0.864 in the speed term of grease life and no rise where none is given; shapes
1.1 to 1.5 by ISO 281; that redundancy, repair and fleet start from conditions without what they state as failed; that a bank of which
nothing runs has passed a limit; that past a limit the rest ages as before; a fleet of one where none is given. Each corner of what is not
stated ages the rest by its own law.
"""
import itertools
import json
import math
import os
import re
import subprocess
import sys
import tempfile

import numpy as np
import scipy
from scipy import stats
from scipy.linalg import expm
from scipy.optimize import brentq
from scipy.special import gamma, gammaincc

FOLDER = os.path.dirname(os.path.abspath(__file__))
HOUR, YEAR = 3600.0, 8760.0
BOLTZMANN = 8.617333262e-5  # eV/K
UNITS = {"": 1, "h": 1, "d": 24, "min": 1 / 60, "s": 1 / 3600, "year": YEAR, "years": YEAR, "rpm": 1, "%": 0.01, "K": 1, "N": 1, "kN": 1000,
         "eV": 1, "m³/h": 1 / 3600}
Q = -math.log(0.9)


def quantities(value):
    if isinstance(value, (int, float)):
        return [float(value)]
    words = value.split(" ")
    if words[-1] == "°C":
        return [float(each) + 273.15 for each in words[:-1]]
    numbers = [word for word in words if re.fullmatch(r"[-+]?[0-9.]+", word)]
    return [float(number) * UNITS[" ".join(words[len(numbers):])] for number in numbers]


def quantity(section, field, default=None):
    return quantities(section[field])[0] if field in section else default


# --- the design ---------------------------------------------------------------------------------------------------------------------
def read(name):
    with open(os.path.join(FOLDER, name + ".tramontane.json")) as file:
        return json.load(file)


def banks(design):
    found = {}
    for passage in design["airPath"]["passages"]:
        if passage["kind"] == "bank":
            across, along, series = (passage.get(each, 1) for each in ("across", "along", "series"))
            part = next(each for each in design["airMovers"] if each["id"] == passage["mover"])
            found[passage["id"]] = {"n": across * along * series, "series": series, "from": passage["from"], "part": part,
                                    "life": part.get("sections", {}).get("life"), "own": passage.get("sections", {}).get("life", {})}
    return found


def sets_of(bank):
    """Sets of failed movers, one for each kind: by number where all are alike, else every one."""
    n = bank["n"]
    if bank["series"] == 1:
        return [tuple(range(1, k + 1)) for k in range(n + 1)]
    return [each for k in range(n + 1) for each in itertools.combinations(range(1, n + 1), k)]


def kind_of(bank, members):
    return tuple(range(1, len(members) + 1)) if bank["series"] == 1 else tuple(sorted(members))


def key(joint):
    return ";".join(bank + ":" + ",".join(map(str, members)) for bank, members in joint)


def cases(condition, all_banks):
    """What has failed in the cases of a condition, by bank, with the weight of each case."""
    lists = []
    for each in condition.get("failed", []):
        places = range(1, all_banks[each["bank"]]["n"] + 1) if each["position"] == "any one" else [each["position"]]
        lists.append([(each["bank"], place, each["state"]) for place in places])
    found = list(itertools.product(*lists))
    return [(case, 1 / len(found)) for case in found]


WHOLE = "whole"  # a condition without what it lets fail, from which redundancy starts


def limits(design):
    return [each for each in design.get("requirements", []) if each["figure"].startswith(("thermal.", "airflow."))]


# --- operating points by the product ------------------------------------------------------------------------------------------------
def solve(design, command):
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "points.tramontane.json")
        with open(path, "w") as file:
            json.dump(design, file)
        return json.loads(subprocess.run([command, "solve", path, "--format", "json"], capture_output=True, text=True).stdout)


def points(name, command):
    design = read(name)
    all_banks = banks(design)
    plain = json.loads(json.dumps(design))
    plain.get("sections", {}).pop("life", None)
    for part in plain["airMovers"]:
        part.get("sections", {}).pop("life", None)
    for passage in plain["airPath"]["passages"]:
        passage.get("sections", {}).pop("life", None)
    plain["requirements"], plain["mission"], plain["conditions"] = [], [], []
    seen = {}
    for joint in itertools.product(*[[(id, each) for each in sets_of(bank)] for id, bank in all_banks.items()]):
        for condition in design["conditions"]:
            for number, (case, _) in list(enumerate(cases(condition, all_banks))) + [(WHOLE, ((), 1))]:
                states = {(bank, place): state for bank, place, state in case}
                for bank, members in joint:
                    for place in members:
                        states.setdefault((bank, place), all_banks[bank]["own"].get("failing", "locked"))
                failed = [{"bank": bank, "position": place, "state": state} for (bank, place), state in sorted(states.items())]
                if all(len([1 for b, _ in states if b == id]) == bank["n"] for id, bank in all_banks.items()):
                    continue
                label = "%s/%s/%s" % (condition["id"], number, key(joint))
                found = json.dumps([{k: v for k, v in condition.items() if k not in ("id", "failed")}, failed])
                if found not in seen:
                    seen[found] = "c" + str(len(seen))
                    plain["conditions"].append(dict({k: v for k, v in condition.items() if k != "failed"}, id=seen[found],
                                                    **({"failed": failed} if failed else {})))
                seen[label] = seen[found]
    solved = solve(plain, command)
    by = {}
    for figure in solved["figures"]:
        if figure["id"] in ("thermal.air.temperature", "airflow.bank.speed", "airflow.total.flow", "thermal.junction.margin"):
            by.setdefault(figure["condition"], {})[figure["id"] + "@" + figure["place"]] = figure["value"]
    return {label: by[id] for label, id in seen.items() if not label.startswith("[")}


# --- life at the duty ---------------------------------------------------------------------------------------------------------------
def booser(t, speed, limit):
    return 10 ** (2450 / t - (0.301 * 0.864 * speed / limit if limit else 0))


AGE = [(0.1, 0.13), (0.2, 0.15), (0.3, 0.23), (0.4, 0.31), (0.5, 0.41), (0.6, 0.51), (0.7, 0.61), (0.8, 0.68), (0.9, 0.76)]
MOTOR = {"electrical": (1.9, 1.1), "sensor": (0.48, 0.29), "servo": (2.4, 1.7), "stepper": (11, 5.4)}


def motor_lives(kelvin):
    t = kelvin - 273.15 + 273
    return 1 / (10 ** (2.534 - 2357 / t) + 1 / (10 ** (20 - 4500 / t) + 300)), 10 ** (2357 / t - 1.83)


def motor_rate(kind, phases, hours):
    """At temperatures that change, by the rule of the handbook: characteristic lives by their reciprocals."""
    total = sum(time for time, _ in phases)
    bearing, winding = (total / sum(time / motor_lives(kelvin)[which] for time, kelvin in phases) for which in (0, 1))
    a, b = MOTOR[kind]

    def share(ratio):
        return next((value for edge, value in AGE if ratio <= edge), 1.0)
    return share(hours / bearing) / (a * bearing) + share(hours / winding) / (b * winding)


def choices(life):
    """Every corner of what is not stated: the first is what is taken."""
    law = life.get("law", "factor per 10 K")
    if law == "MIL-HDBK-217F":
        return [{"shape": 1.0}]
    default = 1.5 if law == "ISO 281" else 3.0
    if "shape" in life:
        shapes = [life["shape"]] + list(life.get("shapeBounds", []))
    else:
        shapes = [default, 1.1, 1.5 if law == "ISO 281" else 3.5]
    factors = [life["factor"]] if "factor" in life else [1.5, 1.3, 2]
    if law != "factor per 10 K":
        factors = [None]
    exponents = [life["speedExponent"]] if "speedExponent" in life else [1, 0]
    if law in ("ISO 281", "grease life"):
        exponents = [None]
    credits = [True] if law == "ISO 281" else [True, False]
    return [{"shape": s, "factor": f, "exponent": e, "credit": c} for s in shapes for f in factors for e in exponents for c in credits]


def l10(life, part, kelvin, rpm, choice, running_life):
    law = life.get("law", "factor per 10 K")
    shape = choice["shape"]
    if law == "MIL-HDBK-217F":
        return Q / motor_rate(life["motor"], [(1, kelvin)], running_life)
    if law == "ISO 281":
        power = 3 if life["rolling"] == "ball" else 10 / 3
        lives = [1e6 / (60 * rpm) * (quantity(life, "dynamicRating") / load) ** power for load in quantities(life["loads"])]
        e = 10 / 9 if life["rolling"] == "ball" else 9 / 8  # ISO/TR 1281-1
        return sum(each ** -e for each in lives) ** (-1 / e)
    rated, of = quantity(life, "rated"), life.get("statistic", "L10")
    eta = rated / ({"L1": -math.log(0.99), "L10": Q, "L50": math.log(2)}[of] ** (1 / shape) if of != "MTTF" else gamma(1 + 1 / shape))
    base = eta * Q ** (1 / shape)
    at, rated_rpm = quantity(life, "at", 313.15), quantity(life, "speed", quantity(part, "ratedSpeed"))
    if not choice["credit"]:
        kelvin = max(kelvin, at)
    if law == "grease life":
        rise, limit = quantity(life, "rise", 0), quantity(life, "greaseLimit")
        return base * booser(kelvin + rise, rpm, limit) / booser(at + rise, rated_rpm, limit)
    if law == "Arrhenius":
        by_air = math.exp(quantity(life, "activationEnergy") / BOLTZMANN * (1 / kelvin - 1 / at))
    else:
        by_air = choice["factor"] ** ((at - kelvin) / 10)
    return base * by_air * (rated_rpm / rpm) ** choice["exponent"]


def weibull(l, shape):
    eta = l / Q ** (1 / shape)
    l1, l50 = (eta * (-math.log(each)) ** (1 / shape) for each in (0.99, 0.5))
    return {"l1": l1, "": l, "l50": l50, "mean": eta * gamma(1 + 1 / shape)}


# --- load sharing -------------------------------------------------------------------------------------------------------------------
class Timed:
    """What follows from the directions of a time that scales."""

    def survival(self, t):
        with np.errstate(divide="ignore"):
            return float(gammaincc(self.n, (t / self.direction) ** self.shape).mean())

    def mean(self):
        return float(self.direction.mean()) * gamma(self.n + 1 / self.shape) / gamma(self.n)

    def life(self, share=0.9):
        return brentq(lambda t: self.survival(t) - share, 1, 1e3 * self.mean(), xtol=1e-9, rtol=1e-10)

    def visited(self, t, interval):
        if interval is None:
            return self.survival(t)
        whole = math.floor(t / interval * (1 + 1e-12))
        return self.survival(interval) ** whole * self.survival(max(0.0, t - whole * interval))

    def availability(self, interval, nodes=24):
        x, w = np.polynomial.legendre.leggauss(nodes)
        return 1 - float(sum(wi * (1 - self.survival(interval * (xi + 1) / 2)) for xi, wi in zip(x, w)) / 2)

    def interval(self, availability):
        return brentq(lambda t: self.availability(t) - availability, 10, 1e3 * self.mean(), xtol=1e-6, rtol=1e-9)


class Alike(Timed):
    """Units alike, by the spacings of their order statistics: only as many as lead to the limit."""

    def __init__(self, n, life, shape, ageing, spare):
        self.n, self.shape = spare + 1, shape
        u = stats.qmc.Sobol(spare + 1, seed=281).random_base2(16) if spare else np.full((1, 1), 0.5)
        e = -np.log1p(-u)
        z = np.cumsum(e / e.sum(axis=1, keepdims=True) / (n - np.arange(spare + 1)), axis=1)
        x = np.diff(life / Q ** (1 / shape) * z ** (1 / shape), axis=1, prepend=0)
        self.direction = (x / np.array(ageing[:spare + 1])).sum(axis=1)


class Sharing(Timed):
    """Time to a limit of units of one shape that wear at rates which depend on what has failed."""

    def __init__(self, lives, shape, rates, kept, power=20):
        n = len(lives)
        self.n, self.shape = n, shape
        u = stats.qmc.Sobol(n, seed=281).random_base2(power)
        e = -np.log1p(-u)
        z = e / e.sum(axis=1, keepdims=True)
        left = np.array(lives) / Q ** (1 / shape) * z ** (1 / shape)  # thresholds in time with nothing failed
        state = np.zeros(len(z), dtype=int)
        time = np.zeros(len(z))
        bits = 1 << np.arange(n)
        going = kept[state]
        for _ in range(n):
            if not going.any():
                break
            rate = rates[state]
            runs = (state[:, None] & bits) == 0
            with np.errstate(divide="ignore", invalid="ignore"):
                wait = np.where(runs & (rate > 0), left / rate, np.inf)
            who = wait.argmin(axis=1)
            step = np.where(going, wait[np.arange(len(z)), who], 0)
            left = left - rate * step[:, None]
            time += step
            state = np.where(going, state | bits[who], state)
            going = kept[state]
        self.direction = time


def repair(means, rates, kept, time, crews, service):
    """Markov chain over all sets: mean time to a limit and survival from new, and the share of time in which limits are kept."""
    n = len(means)
    size = 1 << n
    g = np.zeros((size, size))
    for s in range(size):
        failed = [i for i in range(n) if s >> i & 1]
        for i in range(n):
            if not s >> i & 1:
                g[s, s | 1 << i] += rates[s][i] / means[i]
        for i in failed:
            g[s, s & ~(1 << i)] += 1 / time / (1 if crews == "one for each" else len(failed))
    up = [s for s in range(size) if kept[s]]
    mean, survival = absorbed(g, up, service)
    np.fill_diagonal(g, -g.sum(axis=1))
    return mean, survival, share(g, kept)


def absorbed(g, up, service):
    """By elimination without subtraction (GTH), which keeps digits where repair is 1e4 times faster than failure."""
    index = {s: i for i, s in enumerate(up)}
    down = np.array([sum(g[s, t] for t in range(g.shape[0]) if t not in index) for s in up])
    q = g[np.ix_(up, up)].astype(np.longdouble)
    m, d, time = len(up), down.astype(np.longdouble), np.ones(len(up), dtype=np.longdouble)
    for k in range(m - 1, 0, -1):
        total = q[k, :k].sum() + d[k]
        for i in range(k):
            f = q[i, k] / total
            q[i, :k] += f * q[k, :k]
            d[i] += f * d[k]
            time[i] += f * time[k]
    mean = float(time[0] / d[0])
    full = g[np.ix_(up, up)].copy()
    full = np.pad(full, ((0, 1), (0, 1)))
    full[:-1, -1] = down
    np.fill_diagonal(full, 0)
    np.fill_diagonal(full, -full.sum(axis=1))
    return mean, 1 - float(expm(full * service)[0, -1])


def share(g, kept):
    m = g.shape[0]
    q = g.astype(np.longdouble).copy()
    np.fill_diagonal(q, 0)
    for k in range(m - 1, 0, -1):
        total = q[k, :k].sum()
        if total == 0:
            raise ValueError("not ergodic")
        q[:k, k] /= total
        q[:k, :k] += np.outer(q[:k, k], q[k, :k])
    p = np.zeros(m, dtype=np.longdouble)
    p[0] = 1
    for k in range(1, m):
        p[k] = p[:k] @ q[:k, k]
    p /= p.sum()
    return float(p[~kept].sum())


def counts(n, means, rate, kept_upto, time, crews, service):
    """The same for movers alike, by their number."""
    size = n + 1
    g = np.zeros((size, size))
    for k in range(size):
        if k < n:
            g[k, k + 1] = (n - k) * rate[k] / means
        if k > 0:
            g[k, k - 1] = (k if crews == "one for each" else 1) / time
    kept = np.arange(size) <= kept_upto
    mean, survival = absorbed(g, [k for k in range(size) if kept[k]], service)
    return mean, survival, share(g, kept)


# --- a whole design -----------------------------------------------------------------------------------------------------------------
class Chain:

    def __init__(self, name, all_points):
        self.design, self.points = read(name), all_points
        self.banks = {id: bank for id, bank in banks(self.design).items() if bank["life"] is not None}
        self.all = banks(self.design)
        self.service = self.design.get("sections", {}).get("life", {})
        self.conditions = {each["id"]: each for each in self.design["conditions"]}
        self.phases = [(each["condition"], quantity(each, "timePerYear")) for each in self.design.get("mission", [])]
        self.years = quantity(self.service, "serviceLife")
        self.none = key([(id, ()) for id in self.all])

    def air(self, condition, case, joint, bank):
        point = self.points["%s/%s/%s" % (condition, case, joint)]
        place = self.banks[bank]["from"]
        outside = quantity(self.conditions[condition], "outsideTemperature")
        kelvin = outside if place == "outside" else point["thermal.air.temperature@" + place]
        return kelvin, point.get("airflow.bank.speed@" + bank, 0) * 30 / math.pi

    def running(self, bank, place):
        """Running time of a mover in a year."""
        return sum(hours * weight for condition, hours in self.phases for case, weight in cases(self.conditions[condition], self.all)
                   if not any(each[:2] == (bank, place) for each in case))

    def wear(self, bank, place, choice, joint, stated=False):
        """Miner's sum of a mover in a year, with movers failed: those that conditions state, or those of a set alone."""
        part, life = self.banks[bank]["part"], self.banks[bank]["life"]
        total, air = 0, []
        for condition, hours in self.phases:
            found = list(enumerate(cases(self.conditions[condition], self.all))) if stated else [(WHOLE, ((), 1))]
            for number, (case, weight) in found:
                if any(each[:2] == (bank, place) for each in case):
                    continue
                kelvin, rpm = self.air(condition, number, joint, bank)
                if rpm > 0:
                    air.append((hours * weight, kelvin))
                    total += hours * weight / l10(life, part, kelvin, rpm, choice, self.motor_hours(bank))
        if life.get("law") == "MIL-HDBK-217F":
            return sum(time for time, _ in air) * motor_rate(life["motor"], air, self.motor_hours(bank)) / Q
        return total

    def motor_hours(self, bank):
        return self.years / YEAR * max(self.running(bank, place) for place in range(1, self.banks[bank]["n"] + 1))

    def passes(self, joint, members):
        """Whether a limit is passed with these movers failed."""
        for bank, failed in members:
            if len(failed) == self.all[bank]["n"]:
                return True
            needed = self.all[bank]["own"].get("needed")
            if needed is not None and self.all[bank]["n"] - len(failed) < needed:
                return True
        if any(self.all[bank]["own"].get("needed") is not None for bank, _ in members):
            return False
        if not self.has_limits():
            return any(failed for _, failed in members)
        sources = [each["id"] for each in self.design["heatSources"] if "limit" in each]
        for condition in self.judged():
            point = self.points["%s/%s/%s" % (condition, WHOLE, joint)]
            for each in limits(self.design):
                if condition in each.get("conditions", [condition]):
                    value = point[each["figure"] + "@" + each.get("place", "")]
                    if value > quantity(each, "atMost", math.inf) or value < quantity(each, "atLeast", -math.inf):
                        return True
            if any(point["thermal.junction.margin@" + source] < 0 for source in sources):
                return True
        return False

    def has_limits(self):
        return limits(self.design) or any("limit" in each for each in self.design["heatSources"])

    def judged(self):
        if "conditions" in self.service:
            return self.service["conditions"]
        letting = [id for id, each in self.conditions.items() if each.get("failed")]
        return letting or list(self.conditions)

    def figures(self, corner):
        """All figures at one corner of the unknowns: corner gives the choice for each bank."""
        found = {}
        for id, bank in self.banks.items():
            choice, life, part = corner[id], bank["life"], bank["part"]
            for condition, each in self.conditions.items():
                for number, (case, _) in enumerate(cases(each, self.all)):
                    kelvin, rpm = self.air(condition, number, self.none, id)
                    if rpm <= 0:
                        continue
                    for name, value in weibull(l10(life, part, kelvin, rpm, choice, self.motor_hours(id)), choice["shape"]).items():
                        at = "reliability.life" + ("." + name if name else ""), condition, id
                        found[at] = min(found.get(at, math.inf), value)
            movers = [(self.running(id, place), self.wear(id, place, choice, self.none, True)) for place in range(1, bank["n"] + 1)]
            for name, value in weibull(min(t / d for t, d in movers), choice["shape"]).items():
                found["reliability.mission.life" + ("." + name if name else ""), "", id] = value
            used = max(d for _, d in movers) * self.years / YEAR
            found["reliability.mission.used", "", id] = used
            found["reliability.mission.survival", "", id] = math.exp(-Q * used ** choice["shape"])
            wears = [self.wear(id, place, choice, self.none) for place in range(1, bank["n"] + 1)]
            self.fleet(found, id, [weibull(YEAR / wear, choice["shape"])["mean"] for wear in wears])
            self.group(found, [id], corner)
        if len(self.banks) > 1 and len(self.banks) == len(self.all):
            self.group(found, list(self.banks), corner)
            found["reliability.fleet.failures", "", ""] = sum(found["reliability.fleet.failures", "", id] for id in self.banks)
        return found

    def fleet(self, found, id, means):
        fleet = self.service.get("fleet", 1)
        rate = fleet * sum(1 / mean for mean in means)
        found["reliability.fleet.failures", "", id] = rate * YEAR
        restocking = quantity(self.service, "restocking")
        if restocking is not None:
            confidence = quantity(self.service, "confidence", 0.95)
            enough = (s for s in itertools.count() if stats.poisson.cdf(s, rate * restocking) >= confidence)
            found["reliability.fleet.spares", "", id] = float(next(enough))

    def group(self, found, ids, corner):
        units = [(id, place) for id in ids for place in range(1, self.banks[id]["n"] + 1)]
        n = len(units)
        place = ids[0] if len(ids) == 1 else ""
        basis = {unit: self.wear(*unit, corner[unit[0]], self.none) for unit in units}
        kept, rates = np.zeros(1 << n, dtype=bool), np.zeros((1 << n, n))
        memory = {}
        for state in range(1 << n):
            failed = {id: tuple(p for i, (b, p) in enumerate(units) if b == id and state >> i & 1) for id in self.all}
            kinds = [(id, kind_of(self.all[id], failed[id])) for id in self.all]
            joint = key(kinds)
            if joint not in memory:
                lost = self.passes(joint, [(id, members) for id, members in kinds])
                ageing = {}
                if not lost and any(len(members) < self.all[id]["n"] for id, members in kinds):
                    for id in ids:
                        for p in range(1, self.banks[id]["n"] + 1):
                            ageing[id, p] = self.wear(id, p, corner[id], joint) / basis[id, p]
                memory[joint] = lost, ageing
            lost, ageing = memory[joint]
            kept[state] = not lost
            for i, unit in enumerate(units):
                rates[state, i] = 0 if state >> i & 1 else ageing.get(unit, 1)
        # past the limit the rest ages as it did before
        for state in range(1 << n):
            if not kept[state]:
                before = [state & ~(1 << j) for j in range(n) if state >> j & 1]
                for i in range(n):
                    if not state >> i & 1:
                        rates[state, i] = max(rates[each, i] for each in before)
        # a set is reached only through sets that keep all limits
        for state in range(1, 1 << n):
            kept[state] = kept[state] and any(kept[state & ~(1 << i)] for i in range(n) if state >> i & 1)
        self.last = kept, rates
        if not kept[0]:
            return
        size = np.array([bin(s).count("1") for s in range(1 << n)])
        found["reliability.system.spare", "", place] = float(size[~kept].min() - 1)
        shapes = {corner[id]["shape"] for id in ids}
        lives = [YEAR / basis[unit] for unit in units]
        shape = shapes.pop()
        if len(ids) == 1 and self.banks[ids[0]]["series"] == 1 and max(lives) - min(lives) < 1e-9 * lives[0]:
            firsts = [(1 << k) - 1 for k in range(n + 1)]
            spare = max(k for k, first in enumerate(firsts) if kept[first])
            sharing = Alike(n, lives[0], shape, [rates[first].max() for first in firsts], spare)
        else:
            sharing = Sharing(lives, shape, rates, kept)
        interval = quantity(self.service, "interval")
        found["reliability.system.survival", "", place] = sharing.visited(self.years, interval)
        found["reliability.system.life", "", place] = sharing.life()
        found["reliability.system.life.mean", "", place] = sharing.mean()
        if interval is not None:
            found["reliability.visits.availability", "", place] = sharing.availability(interval)
        if "availability" in self.service:
            found["reliability.visits.interval", "", place] = sharing.interval(quantity(self.service, "availability"))
        if "repair" in self.service:
            time, crews = quantity(self.service, "repair"), self.service.get("crews", "one")
            means = [weibull(life, shape)["mean"] for life in lives]
            if n > 8:
                firsts = [(1 << k) - 1 for k in range(n + 1)]
                spare = max(k for k, s in enumerate(firsts) if kept[s])
                mean, survival, down = counts(n, means[0], [rates[s].max() for s in firsts], spare, time, crews, self.years)
            else:
                mean, survival, down = repair(means, rates, kept, time, crews, self.years)
            found["reliability.repair.mean", "", place] = mean
            found["reliability.repair.survival", "", place] = survival
            found["reliability.repair.availability", "", place] = 1 - down
            found["reliability.repair.downtime", "", place] = down * YEAR

    def table(self):
        """Figures with bounds: those of all corners."""
        some = next(iter(self.banks))
        corners = choices(self.banks[some]["life"])
        same = len({json.dumps(bank["life"], sort_keys=True) for bank in self.banks.values()}) == 1
        assert same, "one part"
        all_figures = [self.figures({id: corner for id in self.banks}) for corner in corners]
        table = {}
        for at in all_figures[0]:
            values = [each[at] for each in all_figures if at in each]
            table[at] = values[0], min(values), max(values)
        return table


TIMES = ("life", "l1", "l50", "mean", "interval")


def rows(name, all_points):
    for (figure, condition, place), values in Chain(name, all_points).table().items():
        scale = HOUR if figure.split(".")[-1] in TIMES or figure.endswith("downtime") else 1
        yield [name, condition, figure, place] + ["%.12g" % (each * scale) for each in values]


def names():
    return sorted(each[:-len(".tramontane.json")] for each in os.listdir(FOLDER) if each.endswith(".tramontane.json"))


if __name__ == "__main__":
    path = os.path.join(FOLDER, "points.json")
    if sys.argv[1:2] == ["points"]:
        held = json.load(open(path)) if os.path.exists(path) else {}
        for name in sys.argv[3:] or names():
            held[name] = points(name, sys.argv[2])
        with open(path, "w") as file:
            json.dump(dict(sorted(held.items())), file, ensure_ascii=False, indent=0)
    else:
        with open(path) as file:
            held = json.load(file)
        print("# Life and redundancy of whole designs, by an implementation of its own of what is documented.")
        print("# Made by chain.py beside this file, from the designs and points.json beside it: SciPy %s, NumPy %s."
              % (scipy.__version__, np.__version__))
        print("# design;condition;figure;place;value;lower;upper (SI units)")
        for name in sys.argv[1:] or names():
            for row in rows(name, held[name]):
                print(";".join(row))
