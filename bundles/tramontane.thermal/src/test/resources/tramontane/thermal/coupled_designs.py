"""Makes coupled_designs.txt: small designs with flow, temperature and speed in agreement, solved by SciPy as one system.

Unknown are the mass flow of every passage, pressure and temperature of every bay, speed and setting of every bank, all at once.

Equations
  air          CIPM-2007 (A. Picard and others, Metrologia 45 (2008) 149-155) for the density of moist air, with the water vapour of
               the air outside everywhere; viscosity by Sutherland, ISO 2533 eq. (22); pressure of the standard atmosphere,
               ISO 2533 eq. (12); specific heat (1006 + 1860 w)/(1 + w), w the vapour per dry air (ASHRAE Fundamentals, ch. 1)
  resistance   dp = a q mu/mu0 + b q (q^4 + q0^4)^(1/4) rho/1.2, mu0 that of 293.15 K; with a = 0 q0 is the flow of 1e-4 Pa in
               the measurement at its Reynolds number, (1e-4/b)^(1/2) (mu/rho)/(mu0/1.2), else 0; rho, mu those of the air that
               enters
  mover        scipy.interpolate.PchipInterpolator through its points; fan laws Q ~ n, dp ~ n^2 rho, P ~ n^3 rho (ISO 5801, AMCA
               210). Between two measured speeds both curves are brought to the speed, pressures and powers at equal flow mixed
               in proportion to the distance. Columns side by side share the flow, movers behind one another add their pressures
  passage      dp = p_from - p_to + (rho_outside - rho) g (z_to - z_from), rho that of the air that enters; no buoyancy to or
               from outside
  bay          mass flows add up to nothing; sum of m cp (T_from - T) over the air that comes in, plus the heat put into the
               passages it comes by, plus that put into the bay, is nothing. All electrical input of a mover goes into its air
  speed        setting times rated speed; of an unregulated DC motor setting times n, (rho/1.2)(n/n1)^2 (1 - n1/n0) = 1 - n/n0,
               rho the density where the bank draws
  setting      1, or that of the condition, or straight between the points of the control law; the highest of several
  part         T of the air plus its heat times its resistances. The air at it is that of its bay. In a passage it is that
               which comes, warmed by half of what is put in besides; its own heat is contained in a resistance against the air
               that comes to it. With rows: by all of earlier rows times its wake factor and half of its own row besides

Solved by scipy.optimize.root (hybr) from many random beginnings until ten have converged, then polished by Newton's method with
central differences; all must come to the same, to 1e-9 of each unknown's scale, and every equation must be met to 1e-11 of its
scale. Curves are used within their points only.

Lines of the table (SI):
  design,name
  file,the design as a file on one line
  flow,passage,mass flow
  bay,bay,temperature,pressure above outside
  bank,bank,speed,setting,electrical input
  part,heat source,junction temperature

Run: python3 coupled_designs.py > coupled_designs.txt   (made with SciPy 1.10, NumPy 1.24)
"""
import json
import math

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import root

G = 9.80665
RATIO = 18.01528 / 28.96546


def saturation(t):
    return math.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t)


class Air:
    def __init__(self, condition):
        self.t = condition.get("outsideTemperature", 293.15)
        z = condition.get("altitude", 0.0)
        h = 6356766 * z / (6356766 + z)
        self.p = condition.get("pressure", 101325 * ((288.15 - 0.0065 * h) / 288.15) ** (G / (287.05287 * 0.0065)))
        self.x = condition.get("humidity", 0.5) * self.saturated(self.t)
        self.cp = self.specific_heat(self.t)
        self.rho = self.density(self.t)

    def saturated(self, t):
        c = t - 273.15
        return (1.00062 + 3.14e-8 * self.p + 5.6e-7 * c * c) * saturation(t) / self.p

    def vapour(self, t):
        return min(self.x, self.saturated(t))               # what it cannot hold when it is cooled is lost

    def specific_heat(self, t):
        x = self.vapour(t)
        w = RATIO * x / (1 - x)
        return (1006 + 1860 * w) / (1 + w)

    def density(self, t):
        c, x, q = t - 273.15, self.vapour(t), self.p / t
        z = (1 - q * (1.58123e-6 - 2.9331e-8 * c + 1.1043e-10 * c * c + (5.707e-6 - 2.051e-8 * c) * x
                      + (1.9898e-4 - 2.376e-6 * c) * x * x) + q * q * (1.83e-11 - 0.765e-8 * x * x))
        return self.p * 28.96546e-3 / (z * 8.314472 * t) * (1 - x * (1 - RATIO))


def viscosity(t):
    return 1.458e-6 * t ** 1.5 / (t + 110.4)


MU0 = viscosity(293.15)


def resistance(passage, m, rho, mu):
    q = m / rho
    a, b = passage.get("linear", 0.0), passage.get("quadratic", 0.0)
    q0 = 0.0 if a > 0 else math.sqrt(1e-4 / b) * (mu / rho) / (MU0 / 1.2)
    return a * q * mu / MU0 + b * rho / 1.2 * q * (q ** 4 + q0 ** 4) ** 0.25


class Mover:
    def __init__(self, part):
        self.curves = sorted(((c["speed"], np.array(c["flow"]), PchipInterpolator(c["flow"], c["pressure"]),
                               PchipInterpolator(c["flow"], c["power"]) if "power" in c else None) for c in part["curves"]),
                             key=lambda c: c[0])
        self.rated = part.get("ratedSpeed", part["curves"][0]["speed"])
        self.n0 = part.get("noLoadSpeed") if part.get("motor") == "DC unregulated" else None

    def shares(self, n):
        below = [c for c in self.curves if c[0] <= n]
        above = [c for c in self.curves if c[0] >= n]
        if not below:
            return [(above[0], 1.0)]
        if not above:
            return [(below[-1], 1.0)]
        lo, hi = below[-1], above[0]
        if lo is hi:
            return [(lo, 1.0)]
        w = (n - lo[0]) / (hi[0] - lo[0])
        return [(lo, 1 - w), (hi, w)]

    def at(self, q, n, rho):
        """Pressure, electrical input, whether within the points."""
        p = w = 0.0
        inside = True
        for (speed, flows, pressure, power), share in self.shares(n):
            r = n / speed
            at = q / r
            inside &= flows[0] <= at <= flows[-1]
            end = min(max(at, flows[0]), flows[-1])              # on the way only: no answer lies beyond the points
            p += share * r * r * rho / 1.2 * (float(pressure(end)) - 3000 * (at - end))
            if power is not None:
                w += share * r ** 3 * rho / 1.2 * float(power(end))
        return p, w, inside


class System:
    def __init__(self, design):
        self.design = design
        self.condition = design.get("conditions", [{}])[0]
        self.air = Air(self.condition)
        path = design["airPath"]
        self.bays = [b if isinstance(b, dict) else {"id": b} for b in path["bays"]]
        self.number = {b["id"]: i for i, b in enumerate(self.bays)}
        self.passages = path["passages"]
        self.banks = [p for p in self.passages if p["kind"] == "bank"]
        movers = {m["id"]: Mover(m) for m in design.get("airMovers", [])}
        self.mover = {b["id"]: movers[b["mover"]] for b in self.banks}
        self.laws = [] if "speed" in self.condition else design.get("controlLaws", [])
        nb, ne, nk = len(self.bays), len(self.passages), len(self.banks)
        self.scale = np.concatenate([np.full(ne, 0.01), np.full(nb, 10.0), np.full(nb, 10.0), np.full(nk, 100.0), np.ones(nk)])
        self.put = {}
        for s in design["heatSources"]:
            q = s["power"] * self.condition.get("heatFactor", 1.0) * self.condition.get("heatFactors", {}).get(s["id"], 1.0)
            shares = [x if isinstance(x, dict) else {"place": x} for x in s["into"]]
            left = 1 - sum(x.get("share", 0.0) for x in shares)
            missing = sum("share" not in x for x in shares)
            s["_heat"] = q
            s["_into"] = [(x["place"], q * x.get("share", left / max(1, missing))) for x in shares]
            for place, part in s["_into"]:
                self.put[place] = self.put.get(place, 0.0) + part

    def split(self, x):
        nb, ne, nk = len(self.bays), len(self.passages), len(self.banks)
        x = x * self.scale
        m, p, t = x[:ne], x[ne:ne + nb], self.air.t + x[ne + nb:ne + 2 * nb]
        return m, p, t, x[ne + 2 * nb:ne + 2 * nb + nk], x[ne + 2 * nb + nk:]

    def bay(self, name, values, outside):
        return outside if name == "outside" else values[self.number[name]]

    def upstream(self, passage, m):
        return passage["from"] if m >= 0 else passage["to"]

    def bank_at(self, e, m, t, n):
        passage = self.passages[e]
        up = self.bay(self.upstream(passage, m[e]), t, self.air.t)
        rho = self.air.density(up)
        columns = passage.get("across", 1) * passage.get("along", 1)
        series = passage.get("series", 1)
        p, w, inside = self.mover[passage["id"]].at(m[e] / rho / columns, n, rho)
        return series * p, columns * series * w, inside

    def heats(self, m, t, n):
        heat = []
        bank = 0
        for e, passage in enumerate(self.passages):
            q = self.put.get(passage["id"], 0.0)
            if passage["kind"] == "bank":
                q += self.bank_at(e, m, t, n[bank])[1]
                bank += 1
            heat.append(q)
        return heat

    def residual(self, x):
        m, p, t, n, s = self.split(x)
        if not np.isfinite(x).all() or (t < 200).any() or (t > 700).any() or (np.abs(m) > 10).any() or (n <= 0).any() \
                or (n > 3000).any() or (s <= 0).any():
            raise ValueError("lost")
        air = self.air
        out = []
        mass = np.zeros(len(self.bays))
        energy = np.zeros(len(self.bays))
        heat = self.heats(m, t, n)
        bank = 0
        for e, passage in enumerate(self.passages):
            up = self.bay(self.upstream(passage, m[e]), t, air.t)
            rho = air.density(up)
            if passage["kind"] == "bank":
                drop = -self.bank_at(e, m, t, n[bank])[0]
                bank += 1
            else:
                drop = resistance(passage, m[e], rho, viscosity(up))
            lift = 0.0
            if "outside" not in (passage["from"], passage["to"]):
                z = [self.bays[self.number[passage[end]]].get("height", 0.0) for end in ("from", "to")]
                lift = (air.rho - rho) * G * (z[1] - z[0])
            out.append((self.bay(passage["from"], p, 0.0) - self.bay(passage["to"], p, 0.0) + lift - drop) / 10)
            if passage["from"] != "outside":
                mass[self.number[passage["from"]]] -= m[e]
            if passage["to"] != "outside":
                mass[self.number[passage["to"]]] += m[e]
            down = passage["to"] if m[e] >= 0 else passage["from"]
            if down != "outside":
                i = self.number[down]
                energy[i] += abs(m[e]) * air.cp * (up - t[i]) + heat[e]
        for i, b in enumerate(self.bays):
            energy[i] += self.put.get(b["id"], 0.0)
        out += list(mass / 0.01) + list(energy / 100)
        for k, b in enumerate(self.banks):
            mover = self.mover[b["id"]]
            rho = air.density(self.bay(b["from"], t, air.t))
            if mover.n0 is None:
                out.append((n[k] - s[k] * mover.rated) / 100)
            else:
                free = n[k] / s[k]
                out.append(rho / 1.2 * (free / mover.rated) ** 2 * (1 - mover.rated / mover.n0) - 1 + free / mover.n0)
            asked = [np.interp(self.sensor(law["sensor"], m, t, n), law["temperature"], law["speed"]) for law in self.laws
                     if b["id"] in law.get("banks", [c["id"] for c in self.banks])]
            out.append(s[k] - (max(asked) if asked else self.condition.get("speed", 1.0)))
        return np.array(out)

    def passage_air(self, e, m, t, own):
        passage = self.passages[e]
        up = self.bay(self.upstream(passage, m[e]), t, self.air.t)
        return up + 0.5 * (self.put.get(passage["id"], 0.0) - own) / (abs(m[e]) * self.air.cp)

    def sensor(self, name, m, t, n):
        if name == "outside":
            return self.air.t
        if name in self.number:
            return t[self.number[name]]
        for e, passage in enumerate(self.passages):
            if passage["id"] == name:
                if passage["kind"] == "bank":
                    return self.bay(self.upstream(passage, m[e]), t, self.air.t)
                return self.passage_air(e, m, t, 0.0)
        return self.junction(next(s for s in self.design["heatSources"] if s["id"] == name), m, t)

    def junction(self, source, m, t):
        place, heat = source["_into"][0]
        inlet = bool(source.get("chain")) and source["chain"][-1]["kind"] == "resistance" \
            and source["chain"][-1].get("reference", "inlet air") == "inlet air"
        rise = heat * sum(link["resistance"] for link in source.get("chain", []))
        if place in self.number:
            return t[self.number[place]] + rise
        e = next(i for i, p in enumerate(self.passages) if p["id"] == place)
        if "row" not in source:
            return self.passage_air(e, m, t, heat if inlet else 0.0) + rise
        up = self.bay(self.upstream(self.passages[e], m[e]), t, self.air.t)
        warm = 0.0
        for other in self.design["heatSources"]:
            for k, (where, q) in enumerate(other["_into"]):
                if where != place:
                    continue
                row = other.get("row") if k == 0 else None
                if row is None:
                    warm += 0.5 * q
                elif row < source["row"]:
                    warm += source.get("wake", 1.0) * q
                elif row == source["row"] and not inlet:
                    warm += 0.5 * q
        return up + warm / (abs(m[e]) * self.air.cp) + rise

    def start(self, rng):
        nb, nk = len(self.bays), len(self.banks)
        m = [p.get("_hint", 1) * 10 ** rng.uniform(-0.7, 0.3) for p in self.passages]
        return np.concatenate([m, rng.normal(0, 1, nb), rng.uniform(0.3, 2, nb),
                               [self.mover[b["id"]].rated * rng.uniform(0.6, 1) / 100 for b in self.banks], rng.uniform(0.6, 1, nk)])

    def polish(self, x):
        for _ in range(20):
            f = self.residual(x)
            jac = np.empty((len(x), len(x)))
            for i in range(len(x)):
                h = 1e-6 * max(1e-2, abs(x[i]))
                hi, lo = x.copy(), x.copy()
                hi[i] += h
                lo[i] -= h
                jac[:, i] = (self.residual(hi) - self.residual(lo)) / (2 * h)
            step = np.linalg.solve(jac, -f)
            x = x + step
            if np.abs(step).max() < 1e-14:
                break
        return x

    def solve(self):
        rng = np.random.default_rng(1)
        found = []
        for _ in range(3000):
            x0 = self.start(rng)
            try:
                sol = root(self.residual, x0, method="hybr", options={"xtol": 1e-13, "maxfev": 4000})
                if np.abs(sol.fun).max() > 1e-6:
                    continue
                x = self.polish(sol.x)
            except (ValueError, OverflowError, ZeroDivisionError, np.linalg.LinAlgError):
                continue
            m, p, t, n, s = self.split(x)
            if np.abs(self.residual(x)).max() > 1e-11 or (n <= 0).any() or (t < self.air.t - 1).any():
                continue
            found.append(x)
            if len(found) == 10:
                break
        assert len(found) == 10, (self.design["equipment"]["name"], len(found))
        for x in found:
            assert np.abs(x - found[0]).max() < 1e-9, (self.design["equipment"]["name"], found)
        x = found[0]
        m, p, t, n, s = self.split(x)
        k = 0
        for e, passage in enumerate(self.passages):
            assert abs(m[e]) > 1e-6
            if passage["kind"] == "bank":
                assert self.bank_at(e, m, t, n[k])[2], passage
                k += 1
        return x


def square(id, frm, to, b, **more):
    return {"id": id, "kind": "measured resistance", "from": frm, "to": to, "quadratic": b, **more}


def bank(id, frm, to, mover="F", **more):
    return {"id": id, "kind": "bank", "from": frm, "to": to, "mover": mover, **more}


def source(id, power, *into, junction=0.2, surface=0.3, reference="inlet air", **more):
    chain = [{"kind": "junction to case", "resistance": junction},
             {"kind": "resistance", "resistance": surface, "reference": reference}]
    return {"id": id, "power": power, "into": list(into), "chain": chain, **more}


F = {"id": "F", "curves": [{"speed": 314.0, "flow": [0, 0.01, 0.02, 0.03, 0.04, 0.05], "pressure": [80, 78, 70, 54, 30, 0],
                            "power": [6, 6.5, 7, 7.2, 7, 6.4]}]}
BIG = {"id": "B", "curves": [{"speed": 280.0, "flow": [0, 0.02, 0.05, 0.08, 0.1], "pressure": [240, 232, 190, 90, 0],
                              "power": [28, 31, 36, 37, 33]},
                             {"speed": 180.0, "flow": [0, 0.02, 0.04, 0.064], "pressure": [98, 88, 60, 0],
                              "power": [7, 8.6, 10, 9]}]}
DC = {**F, "id": "D", "motor": "DC unregulated", "noLoadSpeed": 420.0}


def design(name, movers, bays, passages, sources, **more):
    return {"format": 1, "equipment": {"name": name}, "airMovers": movers, "airPath": {"bays": bays, "passages": passages},
            "heatSources": sources, **more}


DESIGNS = [
    design("drawn", [F], ["box"], [square("in", "outside", "box", 20000), bank("fan", "box", "outside")],
           [source("cpu", 150, "box")]),
    design("blown", [F], ["box"], [bank("fan", "outside", "box"), square("out", "box", "outside", 20000)],
           [source("cpu", 150, "box")]),
    design("high, hot and humid, two curves, cards in a row", [BIG], ["front", "rear"],
           [square("in", "outside", "front", 9000), square("cards", "front", "rear", 12000),
            bank("fans", "rear", "outside", "B", across=2)],
           [source("a", 120, "cards", row=1, wake=1.3), source("b", 200, "cards", row=2, wake=1.4, reference="mean air"),
            source("c", 80, {"place": "cards", "share": 0.7}, "rear", row=3, wake=1.2), source("d", 90, "front")],
           conditions=[{"id": "c", "outsideTemperature": 313.15, "altitude": 3000, "humidity": 0.8, "speed": 0.83, "heatFactor": 1.1,
                        "heatFactors": {"b": 0.9}}]),
    design("two ways side by side, a linear part", [F], ["front", "rear"],
           [square("in", "outside", "front", 5000),
            {"id": "left", "kind": "measured resistance", "from": "front", "to": "rear", "linear": 400, "quadratic": 9000},
            square("right", "front", "rear", 60000), bank("fan", "rear", "outside", across=2)],
           [source("l", 100, "left"), source("r", 60, "right", reference="mean air"), source("f", 40, "front")]),
    design("air goes round", [F], ["front", "rear"],
           [square("in", "outside", "front", 30000), bank("fan", "front", "rear", across=2),
            square("back", "rear", "front", 12000), square("out", "rear", "outside", 40000)],
           [source("cpu", 150, "rear"), source("psu", 50, "back")]),
    design("air goes backwards", [F, BIG], ["left", "middle", "right"],
           [square("a", "left", "outside", 15000, _hint=-1), bank("weak", "left", "middle"),
            square("between", "right", "middle", 30000, _hint=-1), bank("strong", "right", "outside", "B"),
            square("b", "outside", "right", 90000), square("slot", "middle", "outside", 200000, _hint=-1)],
           [source("cpu", 150, "between"), source("psu", 50, "middle"), source("lamp", 70, "a")],
           conditions=[{"id": "c", "humidity": 0.0, "outsideTemperature": 283.15}]),
    design("chimney", [], [{"id": "low", "height": 0.1}, {"id": "high", "height": 1.9}],
           [square("in", "outside", "low", 8000), square("shaft", "low", "high", 4000), square("out", "high", "outside", 8000)],
           [source("coil", 400, "low"), source("lamp", 60, "shaft")]),
    design("two chimneys", [], [{"id": "low", "height": 0.0}, {"id": "left", "height": 1.0}, {"id": "right", "height": 1.4},
                                {"id": "top", "height": 2.0}],
           [square("in", "outside", "low", 3000), square("l1", "low", "left", 4000), square("r1", "low", "right", 9000),
            square("l2", "left", "top", 4000), square("r2", "right", "top", 9000), square("out", "top", "outside", 3000)],
           [source("coil", 300, "left"), source("lamp", 150, "right"), source("floor", 100, "low")],
           conditions=[{"id": "c", "outsideTemperature": 303.15, "humidity": 0.9}]),
    design("tall, with a fan at the bottom", [F], [{"id": "low", "height": 0.0}, {"id": "middle", "height": 0.9},
                                                   {"id": "high", "height": 2.2}],
           [bank("fan", "outside", "low"), square("a", "low", "middle", 20000), square("b", "middle", "high", 25000),
            square("side", "middle", "outside", 90000), square("out", "high", "outside", 30000)],
           [source("x", 200, "low"), source("y", 300, "middle")],
           conditions=[{"id": "c", "speed": 0.5}]),
    design("a DC motor in warm air", [DC], ["box"],
           [square("in", "outside", "box", 20000), bank("fan", "box", "outside", "D")], [source("cpu", 300, "box")],
           conditions=[{"id": "c", "altitude": 2000}]),
    design("controlled by a bay", [F], ["box", "rear"],
           [square("in", "outside", "box", 20000), square("grid", "box", "rear", 5000), bank("fan", "rear", "outside", series=2)],
           [source("cpu", 200, "box")],
           controlLaws=[{"id": "quiet", "sensor": "box", "temperature": [293.15, 303.15, 318.15], "speed": [0.2, 0.4, 1.0]}]),
    design("a DC motor controlled by a junction", [DC], ["box"],
           [square("in", "outside", "box", 20000), bank("fan", "box", "outside", "D")], [source("cpu", 250, "box")],
           conditions=[{"id": "c", "outsideTemperature": 308.15}],
           controlLaws=[{"id": "hot", "sensor": "cpu", "temperature": [393.15, 473.15], "speed": [0.3, 1.0]}]),
    design("several laws", [F, BIG], ["plenum", "box", "rear"],
           [square("in", "outside", "box", 30000), square("cards", "box", "rear", 8000), bank("push", "outside", "plenum"),
            square("grid", "plenum", "box", 60000),
            bank("pull", "rear", "outside", "B"), square("leak", "outside", "rear", 150000)],
           [source("cpu", 250, "cards", "rear"), source("psu", 100, "box")],
           controlLaws=[{"id": "one", "sensor": "cards", "banks": ["pull"], "temperature": [293.15, 323.15], "speed": [0.4, 1.0]},
                        {"id": "two", "sensor": "cpu", "banks": ["push"], "temperature": [333.15, 413.15], "speed": [0.3, 1.0]},
                        {"id": "three", "sensor": "rear", "banks": ["push", "pull"], "temperature": [293.15, 343.15],
                         "speed": [0.2, 0.9]}]),
    design("fans in a tall cabinet, controlled", [DC], [{"id": "low", "height": 0.2}, {"id": "high", "height": 1.8}],
           [square("in", "outside", "low", 30000), square("cards", "low", "high", 9000), bank("top", "high", "outside", "D", across=2),
            square("gap", "high", "outside", 400000, _hint=-1)],
           [source("a", 300, "cards", row=1), source("b", 250, "cards", row=2, wake=1.5)],
           controlLaws=[{"id": "exhaust", "sensor": "top", "temperature": [298.15, 318.15], "speed": [0.15, 0.9]}]),
]


def plain(value):
    if isinstance(value, dict):
        return {k: plain(v) for k, v in value.items() if not k.startswith("_")}
    return [plain(v) for v in value] if isinstance(value, list) else value


def main():
    print("# made by coupled_designs.py with SciPy; see there")
    for each in DESIGNS:
        system = System(each)
        x = system.solve()
        m, p, t, n, s = system.split(x)
        print(f"design,{each['equipment']['name']}")
        print("file," + json.dumps(plain(each)))
        for e, passage in enumerate(system.passages):
            print(f"flow,{passage['id']},{float(m[e])!r}")
        for i, b in enumerate(system.bays):
            print(f"bay,{b['id']},{float(t[i])!r},{float(p[i])!r}")
        for k, b in enumerate(system.banks):
            power = system.bank_at(system.passages.index(b), m, t, n[k])[1]
            print(f"bank,{b['id']},{float(n[k])!r},{float(s[k])!r},{power!r}")
        for part in each["heatSources"]:
            print(f"part,{part['id']},{float(system.junction(part, m, t))!r}")


if __name__ == "__main__":
    main()
