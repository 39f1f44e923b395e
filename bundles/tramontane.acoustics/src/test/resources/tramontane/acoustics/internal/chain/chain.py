"""Golden values of the noise of whole designs: python3 chain.py > chain.csv (needs NumPy and SciPy).

From noise sections and the operating points in points.csv to spectra, levels, ratings and tones, by the relations that the README and the
Javadoc state. cabinet and observatory are the samples with their passages as openings of stated area, so that no air flow has to be known.
"""
import math
import re

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize_scalar

# --- quantities -------------------------------------------------------------------------------------------------------------------
UNITS = {"": 1, "dB": 1, "B": 10, "rpm": math.pi / 30, "rad/s": 1, "m³/h": 1 / 3600, "m³/s": 1, "l/s": 1e-3, "mm": 1e-3, "cm": 1e-2,
         "m": 1, "m²": 1, "cm²": 1e-4, "mm²": 1e-6, "%": 0.01, "Hz": 1, "kHz": 1e3, "s": 1, "ms": 1e-3, "Pa": 1, "W": 1, "kg/m³": 1,
         "V": 1}


def quantities(text):
    if isinstance(text, (int, float)):
        return [float(text)]
    words = text.split(" ")
    numbers = [word for word in words if re.fullmatch(r"[-+]?[0-9.]+(e[-+]?\d+)?", word)]
    return [float(number) * UNITS[" ".join(words[len(numbers):])] for number in numbers]


def quantity(section, field, default=None):
    return quantities(section[field])[0] if field in section else default


# --- bands and levels -------------------------------------------------------------------------------------------------------------
THIRDS, OCTAVES = 30, 10
POSITION = np.arange(THIRDS) - 16
MIDDLE = 1000 * 10 ** (POSITION / 10)
EDGES = 1000 * 10 ** ((np.arange(THIRDS + 1) - 16.5) / 10)
NOMINAL_OCTAVE = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000]


def third_of(frequency):
    return int(math.floor(10 * math.log10(frequency / 1000) + 0.5)) + 16


def octave_of(frequency):
    return third_of(frequency) // 3


F1, F2, F3, F4 = 20.598997, 107.65265, 737.86223, 12194.217


def raw_a(f):
    return 20 * np.log10(F4 ** 2 * f ** 4 / ((f ** 2 + F1 ** 2) * np.sqrt((f ** 2 + F2 ** 2) * (f ** 2 + F3 ** 2)) * (f ** 2 + F4 ** 2)))


def raw_c(f):
    return 20 * np.log10(F4 ** 2 * f ** 2 / ((f ** 2 + F1 ** 2) * (f ** 2 + F4 ** 2)))


def weight_a(f):
    return raw_a(f) - raw_a(1000.0)


def weight_c(f):
    return raw_c(f) - raw_c(1000.0)


A, C = 10 ** (weight_a(MIDDLE) / 10), 10 ** (weight_c(MIDDLE) / 10)


def power(value):
    return 10 ** (np.asarray(value, float) / 10)


def level(value):
    return 10 * math.log10(value) if value > 0 else -math.inf


def octaves(spectrum):
    return spectrum.reshape(OCTAVES, 3).sum(axis=1)


def spread(octave):
    """Parts of an octave in its thirds, in geometric proportion, so that level and A-weighted level are those of its middle."""
    a = A[3 * octave:3 * octave + 3]

    def off(log_ratio):
        q = np.array([math.exp(-log_ratio), 1, math.exp(log_ratio)])
        q = q / q.sum()
        return q @ a - a[1]
    x = brentq(off, -20, 20, xtol=1e-15) if off(-20) * off(20) < 0 else 0.0
    q = np.array([math.exp(-x), 1, math.exp(x)])
    return q / q.sum()


SPREAD = np.concatenate([spread(k) for k in range(OCTAVES)])


def of_octaves(first, powers):
    spectrum = np.zeros(THIRDS)
    for k, p in enumerate(powers):
        o = first + k
        spectrum[3 * o:3 * o + 3] = p * SPREAD[3 * o:3 * o + 3]
    return spectrum


def shifted(spectrum, ratio):
    """All frequencies by a factor: what falls between two bands is shared, at the ends it stays in the last."""
    out = np.zeros(THIRDS)
    by = 10 * math.log10(ratio)
    for k in range(THIRDS):
        at = min(max(k + by, 0.0), THIRDS - 1.0)
        low = min(int(math.floor(at)), THIRDS - 2)
        out[low] += spectrum[k] * (1 - (at - low))
        out[low + 1] += spectrum[k] * (at - low)
    return out


def banded(section, field, beyond):
    """Values by third of a field with bands and lowestBand beside it; beyond is a value, or "held"."""
    if field not in section:
        return None
    values = quantities(section[field])
    if len(values) == 1 and "lowestBand" not in section and "bands" not in section:
        return np.full(THIRDS, values[0])
    lowest = quantity(section, "lowestBand", 63.0)
    by = 3 if section.get("bands", "octaves") == "octaves" else 1
    start = 3 * octave_of(lowest) if by == 3 else third_of(lowest)
    out = np.full(THIRDS, np.nan)
    for k, value in enumerate(values):
        out[start + by * k:start + by * (k + 1)] = value
    known = np.flatnonzero(~np.isnan(out))
    if beyond == "held":
        out[:known[0]], out[known[-1] + 1:] = out[known[0]], out[known[-1]]
    else:
        out[np.isnan(out)] = beyond
    return out


# --- the type of fan --------------------------------------------------------------------------------------------------------------
TYPE = {"axial": -0.3, "mixed-flow": -0.3, "centrifugal": 0.15, "cross-flow": 0.15}
OFF_PEAK = PchipInterpolator([0, 0.52, 0.595, 0.695, 0.795, 0.87, 0.95, 1], [15, 15, 12, 9, 6, 3, 0, 0])


def shape(kind, speed):
    """Spectrum of VDI 2081 form of a fan, A-weighted level 0 dB."""
    strouhal = 2 * MIDDLE / speed
    s = power(-5 - 5 * (np.log10(strouhal) + TYPE[kind]) ** 2)
    return s / (s @ A)


class Curve:
    """Flow coefficient of a part at its curve nearest to a speed: free delivery, best point, static efficiency over its best.

    The highest efficiency is found by optimisation here, on a grid of 200 steps of flow there, which is worth up to 0.001 dB of the
    rise left of the best point; used tells where that counts.
    """

    used = False

    def __init__(self, part, speed):
        curves = [(quantity(c, "speed", quantity(part, "ratedSpeed")), c) for c in part["curves"]]
        self.speed, curve = min(curves, key=lambda each: abs(math.log(each[0] / speed)))
        q = np.array(quantities(curve["flow"]))
        p = PchipInterpolator(q, quantities(curve["pressure"]))
        w = PchipInterpolator(q, quantities(curve["power"])) if "power" in curve else lambda x: 1.0
        self.product = lambda x: x * float(p(x)) / float(w(x)) if 0 <= x <= q[-1] else 0.0
        roots = [r for r in p.roots(extrapolate=False) if r > 0]
        self.free_flow = roots[0] if roots else q[-1]
        grid = np.linspace(0, self.free_flow, 2001)
        values = [self.product(x) for x in grid]
        i = int(np.argmax(values))
        found = minimize_scalar(lambda x: -self.product(x), bounds=(grid[max(i - 1, 0)], grid[min(i + 1, 2000)]), method="bounded",
                                options={"xatol": 1e-12})
        self.best_flow, self.most = found.x, -found.fun
        self.free, self.best = self.free_flow / self.speed, self.best_flow / self.speed

    def rise(self, coefficient):
        if coefficient >= self.best * (1 - 1e-9):
            return 0.0
        Curve.used = True
        return float(OFF_PEAK(min(max(self.product(max(coefficient, 0) * self.speed) / self.most, 0), 1)))


# --- a part as a source -----------------------------------------------------------------------------------------------------------
class Tone:
    def __init__(self, frequency, power, order):
        self.frequency, self.power, self.order = frequency, power, order


class Known:
    """A measurement: noise without tones and tones, sound power of the part's own size in standard air; fixed tones as measured."""

    def __init__(self, part, of, own, section):
        def get(field):
            return own.get(field, section.get(field))

        def si(field, default=None):
            return quantities(get(field))[0] if get(field) is not None else default

        self.speed = si("speed", quantity(part, "ratedSpeed"))
        pressure = "soundPressure" in own or "soundPower" not in own and any(
            get(field) is not None for field in ("soundPressure", "distance", "field"))
        gain = level((2 if get("field") == "half-space" else 4) * math.pi * si("distance", 1.0) ** 2) if pressure else 0.0
        size = si("rotorDiameter", of)
        still = gain
        gain += 20 * math.log10(1.2 / si("density", 1.2))
        if si("rotorDiameter") is not None:
            gain += 70 * math.log10(of / size)
        stated = own.get("soundPressure") if pressure else own.get("soundPower")
        bands = "octaves" if "octaves" in own else "thirds" if "thirds" in own else None
        weighted = get("bandWeighting") == "A"
        self.tones = []
        for t in own.get("tones", []):
            turns = self.speed / (2 * math.pi)
            f = quantity(t, "order") * turns if "order" in t else quantity(t, "frequency")
            order = 0.0 if t.get("fixed") else f / turns
            self.tones.append(Tone(f, power(quantity(t, "level")), order))
        if bands == "octaves":
            first = octave_of(quantities(get("lowestOctave") or "63 Hz")[0])
            p = power(quantities(own["octaves"]))
            if weighted:
                p = p / A[1::3][first:first + len(p)]
            for t in self.tones:
                o = octave_of(t.frequency) - first
                if 0 <= o < len(p):
                    p[o] = max(p[o] - t.power, 0)
            self.noise = of_octaves(first, p)
        elif bands == "thirds":
            first = third_of(quantities(get("lowestThird") or "50 Hz")[0])
            p = power(quantities(own["thirds"]))
            self.noise = np.zeros(THIRDS)
            self.noise[first:first + len(p)] = p / (A[first:first + len(p)] if weighted else 1)
            for t in self.tones:
                k = third_of(t.frequency)
                if 0 <= k < THIRDS:
                    self.noise[k] = max(self.noise[k] - t.power, 0)
        elif stated is not None:
            left = power(quantities(stated)[0]) - sum(t.power * A[third_of(t.frequency)] for t in self.tones)
            self.noise = shape(part["type"], self.speed) * max(left, 0)
        else:
            self.noise = np.zeros(THIRDS)
        self.assumed = bands is None
        self.noise = self.noise * power(gain)
        for t in self.tones:
            t.power *= power(gain if t.order else still)
        curve = Curve(part, self.speed) if part.get("curves") else None
        if si("flow") is not None:
            self.flow = si("flow") / self.speed * (of / size) ** 3
        elif curve is None:
            self.flow = math.nan
        else:
            self.flow = curve.best if get("at") == "best point" else curve.free


def mean(low, high, weight):
    if low > 0 and high > 0:
        return low ** (1 - weight) * high ** weight
    return (1 - weight) * low + weight * high


def between(low, high, weight):
    noise = np.array([mean(a, b, weight) for a, b in zip(low[0], high[0])])
    tones = []
    rest = list(high[1])
    for t in low[1]:
        other = next((u for u in rest if same(t, u)), None)
        if other:
            rest.remove(other)
        tones.append(Tone(t.frequency, mean(t.power, other.power if other else 0.0, weight), t.order))
    tones += [Tone(u.frequency, mean(0.0, u.power, weight), u.order) for u in rest]
    return noise, tones


def same(t, u):
    return abs(t.order - u.order) < 1e-6 * max(1, t.order) if t.order or u.order else abs(t.frequency - u.frequency) < 1e-6 * t.frequency


class Source:
    def __init__(self, part):
        section = part["sections"]["noise"]
        self.part = part
        self.size = quantity(part, "rotorDiameter", min(quantity(part, "width", math.inf), quantity(part, "height", math.inf)))
        self.exponent = quantity(section, "exponent", 50.0)
        known = [Known(part, self.size, own, section) for own in section.get("points", [section])]
        self.groups = []
        for k in sorted(known, key=lambda k: k.speed):
            if self.groups and k.speed <= self.groups[-1][0].speed * (1 + 1e-3):
                self.groups[-1].append(k)
            else:
                self.groups.append([k])
        for group in self.groups:
            group.sort(key=lambda k: k.flow)

    def at_flow(self, group, coefficient):
        curve = Curve(self.part, group[0].speed) if self.part.get("curves") else None
        flows = [k.flow for k in group]
        if len(group) > 1 and flows[0] < coefficient < flows[-1]:
            i = max(j for j in range(len(flows)) if flows[j] <= coefficient)
            w = (coefficient - flows[i]) / (flows[i + 1] - flows[i])
            return between((group[i].noise, group[i].tones), (group[i + 1].noise, group[i + 1].tones), w)
        k = group[0] if coefficient <= flows[0] else group[-1]
        gain = curve.rise(coefficient) - curve.rise(k.flow) if curve and not math.isnan(k.flow) else 0.0
        g = power(gain)
        return k.noise * g, [Tone(t.frequency, t.power * (g if t.order else 1), t.order) for t in k.tones]

    def carried(self, group, speed, flow):
        """By the sound law; where the spectrum is assumed, its A-weighted level follows the law."""
        noise, tones = self.at_flow(group, flow / speed)
        ratio = speed / group[0].speed
        g = power(self.exponent * math.log10(ratio))
        moved = shifted(noise, ratio)
        if group[0].assumed and noise.any():
            moved = shape(self.part["type"], speed) * (noise @ A)
        turns = speed / (2 * math.pi)
        return moved * g, [Tone(t.order * turns, t.power * g, t.order) if t.order else t for t in tones]

    def at(self, speed, flow, density, obstacles):
        speeds = [g[0].speed for g in self.groups]
        if speed <= speeds[0] or speed >= speeds[-1]:
            noise, tones = self.carried(self.groups[0 if speed <= speeds[0] else -1], speed, flow)
        else:
            i = max(j for j in range(len(speeds)) if speeds[j] <= speed)
            w = math.log(speed / speeds[i]) / math.log(speeds[i + 1] / speeds[i])
            noise, tones = between(self.carried(self.groups[i], speed, flow), self.carried(self.groups[i + 1], speed, flow), w)
        g = (density / 1.2) ** 2
        near = lambda d: max(0.0, 1 - d / self.size)
        part = near(obstacles[0]) + 0.5 * near(obstacles[1])
        return noise * g * power(5 * part), [Tone(t.frequency, t.power * g * power(10 * part), t.order) if t.order else t for t in tones]


# --- the way out ------------------------------------------------------------------------------------------------------------------
def walk(bay, ways):
    """Bays that sound gets to from a bay without going outside."""
    found, old = {bay}, None
    while found != old:
        old = set(found)
        found |= {e for way in ways if set(way[2]) & old for e in way[2] if e >= 0}
    return found


class Path:
    """E_i (A_i + sum S) - sum S tau E_j = W_i in each third."""

    def __init__(self, design):
        self.bays = [b if isinstance(b, str) else b["id"] for b in design["airPath"]["bays"]]
        movers = {m["id"]: m for m in design["airMovers"]}
        n = len(self.bays)
        lining = np.zeros((THIRDS, n))
        for i, b in enumerate(design["airPath"]["bays"]):
            s = {} if isinstance(b, str) else b.get("sections", {}).get("noise", {})
            if s:
                lining[:, i] = quantity(s, "area") * banded(s, "absorption", 0.0)
        self.openings, self.share = [], {}
        ways = []
        for p in design["airPath"]["passages"]:
            s = p.get("sections", {}).get("noise", {})
            loss = banded(s, "insertionLoss", 0.0)
            tau = np.ones(THIRDS) if loss is None else power(-loss)
            area = quantity(s, "area", quantity(p, "area"))
            if p["kind"] == "bank" and "area" not in s:
                area = quantity(movers[p["mover"]], "openArea") * p.get("across", 1) * p.get("along", 1)
            ends = [self.bays.index(p[e]) if p[e] != "outside" else -1 for e in ("from", "to")]
            if p["kind"] == "bank" or ends[0] != ends[1]:
                ways.append((p, s, ends, area, tau))
        for p, s, ends, area, tau in ways:
            if -1 in ends:
                self.openings.append((p["id"], s.get("face"), area, s.get("directivity", "opening") == "opening"))
        banks = [w for w in ways if w[0]["kind"] == "bank"]
        for b in banks:
            self.share[b[0]["id"]] = np.zeros((len(self.openings), THIRDS))
        for k in range(THIRDS):
            m = np.diag(lining[k].copy())
            for p, s, (i, j), area, tau in ways:
                if i == j:
                    continue
                for one, other in ((i, j), (j, i)):
                    if one >= 0:
                        m[one, one] += area
                        if other >= 0:
                            m[one, other] -= area * tau[k]
            outs = {e for way in ways if -1 in way[2] for e in way[2] if e >= 0}
            for b in banks:
                w = np.zeros(n)
                for e in b[2]:
                    if e >= 0:
                        w[e] += 0.5
                # bays from which nothing gets out have no finite level and are heard nowhere
                shut = np.array([not (walk(a, ways) & outs) and not lining[k, list(walk(a, ways))].any() for a in range(n)])
                free = np.flatnonzero(~shut)
                energy = np.zeros(n)
                energy[free] = np.linalg.solve(m[np.ix_(free, free)], w[free])
                o = 0
                for p, s, ends, area, tau in ways:
                    if -1 not in ends:
                        continue
                    inside = [e for e in ends if e >= 0]
                    out = sum(energy[e] * area * tau[k] for e in inside)
                    if p["id"] == b[0]["id"]:
                        out += 0.5 * (2 - len(inside))
                    self.share[b[0]["id"]][o, k] = out
                    o += 1


# --- who listens ------------------------------------------------------------------------------------------------------------------
B = {0: (0.73, 7.62, 158.51, 1.29), 45: (0.84, 4.01, 213.89, 1.10)}


def fit(of, x):
    return of[1] + (of[0] - of[1]) / (1 + (x / of[2]) ** of[3])


def directivity(area, angle):
    x = MIDDLE * math.sqrt(area)
    q0, q45 = np.maximum(1, fit(B[0], x)), np.maximum(1, fit(B[45], x))
    angles = np.array([0, 45, 90, 135, 180]) * math.pi / 180
    return np.array([np.interp(angle, angles, [q0[k], q45[k], q45[k], 1, 1]) for k in range(THIRDS)])


NORMAL = {"front": (0, 1, 0), "rear": (0, -1, 0), "left": (-1, 0, 0), "right": (1, 0, 0), "top": (0, 0, 1), "bottom": (0, 0, -1)}
UNDERSIDE = {"on the floor": 0.0, "on a table": 0.75, "on a wall": 1.0, "in a rack": 1.0}


class Scene:
    def __init__(self, design):
        s = design.get("sections", {}).get("noise", {})
        e = design.get("equipment", {})
        self.w, self.h, self.d = (quantity(e, x, 0.0) for x in ("width", "height", "depth"))
        space = s.get("space", {})
        kind = space.get("kind", "reflecting plane")
        stands = s.get("stands", "on the floor")
        self.under = quantity(s, "height", UNDERSIDE[stands])
        self.n = 2 if kind == "reflecting plane" or kind == "room" and stands in ("on the floor", "on a wall") else 1
        self.room = np.zeros(THIRDS)
        if kind == "room":
            l, w, h = (quantity(space, x) for x in ("length", "width", "height"))
            surface, volume = 2 * (l * w + w * h + h * l), l * w * h
            if "absorption" in space:
                alpha = banded(space, "absorption", "held")
            else:
                alpha = 24 * math.log(10) * volume / (343.2 * banded(space, "reverberationTime", "held")) / surface
            self.room = 4 * (1 - alpha) / (surface * alpha)
        positions = s.get("positions") or [{"id": "1 m", "kind": "bystanders"}]
        self.positions = [(p["id"], self.points(p, stands)) for p in positions]

    def points(self, p, stands):
        kind = p.get("kind", "point")
        if kind.startswith("operator"):
            return [(0, 0.25, 1.2 if kind.endswith("seated") else 1.5)]
        if kind == "bystanders":
            four = [(0, 1, 1.5), (-self.w / 2 - 1, -self.d / 2, 1.5), (self.w / 2 + 1, -self.d / 2, 1.5), (0, -self.d - 1, 1.5)]
            return four[:3] if stands == "on a wall" else four
        if "distance" in p:
            return [(0, quantity(p, "distance"), self.under + self.h / 2)]
        return [(quantity(p, "x", 0.0), quantity(p, "y"), quantity(p, "z"))]

    def transfer(self, opening, points):
        _, face, area, directed = opening
        total = np.zeros(THIRDS)
        for point in points:
            if face:
                n = NORMAL[face]
                middle = np.array([0, -self.d / 2, self.under + self.h / 2]) + np.array(n) * np.array([self.w, self.d, self.h]) / 2
            else:
                low, high = np.array([-self.w / 2, -self.d, self.under]), np.array([self.w / 2, 0, self.under + self.h])
                middle = np.clip(point, low, high)
            to = np.array(point) - middle
            distance = np.linalg.norm(to)
            q = np.ones(THIRDS)
            if face and directed:
                q = directivity(area, math.acos(min(1, max(-1, float(to @ np.array(n)) / distance))))
            r = max(distance, math.sqrt(area / (2 * math.pi)))
            total += q * self.n / (4 * math.pi * r * r) + self.room
        return total / len(points)


# --- ratings ----------------------------------------------------------------------------------------------------------------------
NR_A = [55.4, 35.5, 22.0, 12.0, 4.8, 0, -3.5, -6.1, -8.0]
NR_B = [0.681, 0.790, 0.870, 0.930, 0.974, 1.000, 1.015, 1.025, 1.030]
NC = [[47, 51, 54, 57, 60, 64, 67, 71, 74, 77, 80, 83], [36, 40, 44, 48, 52, 56, 60, 64, 67, 71, 75, 79],
      [29, 33, 37, 41, 45, 50, 54, 58, 62, 67, 71, 75], [22, 26, 31, 35, 40, 45, 49, 54, 58, 63, 68, 72],
      [17, 22, 27, 31, 36, 41, 46, 51, 56, 61, 66, 71], [14, 19, 24, 29, 34, 39, 44, 49, 54, 59, 64, 70],
      [12, 17, 22, 28, 33, 38, 43, 48, 53, 58, 63, 69], [11, 16, 21, 27, 32, 37, 42, 47, 52, 57, 62, 68]]


def rating_nr(o):
    return max((level(o[k]) - NR_A[k]) / NR_B[k] for k in range(9) if o[k] > 0)


def rating_nc(o):
    def band(k):
        x, y = level(o[k + 1]), NC[k]
        i = min(max(int(np.searchsorted(y, x)) - 1, 0), 10)
        return 15 + 5 * (i + (x - y[i]) / (y[i + 1] - y[i]))
    return max(band(k) for k in range(8) if o[k + 1] > 0)


# --- tones, ECMA-418-1 ------------------------------------------------------------------------------------------------------------
def critical(f):
    return 25 + 75 * (1 + 1.4 * (f / 1000) ** 2) ** 0.69


def band_of(f):
    w = critical(f)
    low = f - w / 2 if f <= 500 else -w / 2 + math.sqrt(w * w + 4 * f * f) / 2
    return low, low + w


def lower_edge(f):
    return 20.0 if f < 171.4 else -149.5 + 1.001 * f - 6.90e-5 * f * f if f <= 1600 else 6.8 + 0.806 * f - 8.20e-6 * f * f


def upper_edge(f):
    return 149.5 + 1.035 * f + 7.70e-5 * f * f if f <= 1600 else 3.3 + 1.215 * f + 2.16e-5 * f * f


def noise_between(noise, low, high):
    total = noise[0] / (EDGES[1] - EDGES[0]) * max(0.0, min(high, EDGES[0]) - low)
    for k in range(THIRDS):
        total += noise[k] / (EDGES[k + 1] - EDGES[k]) * max(0.0, min(high, EDGES[k + 1]) - max(low, EDGES[k]))
    return total


def judge(noise, tones):
    """(frequency, TNR, PR) of tones heard of their own."""
    left = sorted((t for t in tones if t[1] > 0), key=lambda t: -t[1])
    out, gone = [], set()
    for i, (f, p) in enumerate(left):
        if i in gone:
            continue
        low, high = band_of(f)
        together = p
        near = 21 * 10 ** (1.2 * abs(math.log10(f / 212)) ** 1.8)
        for j in range(i + 1, len(left)):
            g, q = left[j]
            if j not in gone and low <= g <= high and abs(g - f) < near:
                gone.add(j)
                together += q
        if not 89.1 <= f <= 11220:
            continue
        tnr = level(together) - level(noise_between(noise, low, high))
        bands = [(lower_edge(f), low), (low, high), (high, upper_edge(f))]
        w = [noise_between(noise, a, b) + sum(q for g, q in left if a <= g < b) for a, b in bands]
        if f < 171.4:
            w[0] *= 100 / (low - 20)
        pr = 10 * math.log10(w[1] / ((w[0] + w[2]) / 2))
        out.append((f, tnr, pr, level(together)))
    return out


def excess(f, tnr, pr):
    over = max(0.0, math.log10(1000 / f))
    by_noise, by_bands = tnr - 8 - 8.33 * over, pr - 9 - 10 * over
    return by_noise if tnr < -6 else max(by_noise, by_bands)  # what is lost in the noise is no tone


# --- all of it --------------------------------------------------------------------------------------------------------------------
def merged(tones):
    """Tones of one frequency are one; several powers add."""
    out = []
    for f, p in sorted(tones):
        if out and abs(out[-1][0] - f) < 0.01:
            out[-1] = (out[-1][0], out[-1][1] + p)
        else:
            out.append((f, p))
    return out


def with_tones(noise, tones):
    total = noise.copy()
    for f, p in tones:
        if 0 <= third_of(f) < THIRDS:
            total[third_of(f)] += p
    return total


def tonal(part):
    """Whether the tones of a part are stated: a list that is empty, or one with a tone of its blades where their number is stated."""
    noise = part["sections"]["noise"]
    lists = [each["tones"] for each in [noise] + noise.get("points", []) if "tones" in each]
    tones = [t for each in lists for t in each]
    if not tones or "blades" not in noise:
        return bool(lists)
    return any("order" in t and abs(t["order"] / noise["blades"] - round(t["order"] / noise["blades"])) < 0.02 for t in tones)


def figures(design, point):
    """point: {bank: {"density": ., "movers": [(running, speed, flow), ...]}}; rows (figure, place, value)."""
    movers = {m["id"]: m for m in design["airMovers"]}
    path, scene = Path(design), Scene(design)
    rows, banks, stated = [], {}, True
    for p in design["airPath"]["passages"]:
        if p["kind"] != "bank" or p["id"] not in point:
            continue
        s = p.get("sections", {}).get("noise", {})
        source = Source(movers[p["mover"]])
        obstacles = (quantity(s, "inletObstacle", quantity(p, "inletClearance", math.inf)), quantity(s, "outletObstacle", math.inf))
        noise, tones, speeds = np.zeros(THIRDS), [], []
        for running, speed, flow in point[p["id"]]["movers"]:
            if running and speed > 0:
                n, t = source.at(speed, flow, point[p["id"]]["density"], obstacles)
                noise, tones = noise + n, tones + [(x.frequency, x.power) for x in t]
                speeds.append(speed)
        banks[p["id"]] = (noise, merged(tones))
        total = with_tones(noise, tones)
        if speeds:
            stated = stated and tonal(source.part)
            rows.append(("acoustics.bank.power", p["id"], level(total @ A)))
            for k in range(THIRDS):
                if total[k] > 0:
                    rows.append((f"third {k}", p["id"], level(total[k])))
            blades = source.part["sections"]["noise"].get("blades")
            if blades:
                rows.append(("acoustics.bank.blades", p["id"], blades * np.mean(speeds) / (2 * math.pi)))
    def cut(factor, tones):
        return [(f, q * factor[min(max(third_of(f), 0), THIRDS - 1)]) for f, q in tones]
    whole = 0.0
    for o, opening in enumerate(path.openings):
        out = np.zeros(THIRDS)
        for b, (noise, tones) in banks.items():
            out += with_tones(noise * path.share[b][o], cut(path.share[b][o], tones))
        whole += out @ A
        rows.append(("acoustics.opening.power", opening[0], level(out @ A)))
    rows.append(("acoustics.power", "", level(whole)))
    section = design.get("sections", {}).get("noise", {})
    if "declaration" in section:
        d = section["declaration"]
        st = math.hypot(quantity(d, "reproducibility", 1.5), quantity(d, "production"))
        rows.append(("acoustics.power.declared", "", level(whole) + 1.514 * st + 0.564 * (2 - st)))
    for name, points in scene.positions:
        noise, tones = np.zeros(THIRDS), []
        for o, opening in enumerate(path.openings):
            h = scene.transfer(opening, points)
            for b, (n, t) in banks.items():
                noise = noise + n * path.share[b][o] * h
                tones += cut(path.share[b][o] * h, t)
        tones = merged(tones)
        total = with_tones(noise, tones)
        rows.append(("acoustics.level", name, level(total @ A)))
        rows.append(("acoustics.level.c", name, level(total @ C)))
        if "background" in section:
            g = section["background"]
            if "weighted" in g:
                back = power(quantity(g, "weighted"))
            else:
                k = quantities(g["levels"])
                lowest = quantity(g, "lowestBand", 63.0)
                if g.get("bands", "octaves") == "octaves":
                    back = of_octaves(octave_of(lowest), power(k)) @ A
                else:
                    back = power(k) @ A[third_of(lowest):third_of(lowest) + len(k)]
            rows.append(("acoustics.level.total", name, level(total @ A + back)))
        o = octaves(total)
        rows.append(("acoustics.rating.nr", name, rating_nr(o)))
        rows.append(("acoustics.rating.nc", name, rating_nc(o)))
        for k in range(OCTAVES):
            if o[k] > 0:
                rows.append((f"octave {k}", name, level(o[k])))
        heard = judge(noise, tones)
        if heard:
            f, tnr, pr, _ = max(heard, key=lambda h: excess(*h[:3]))
            if stated or excess(f, tnr, pr) >= 0:  # else one that is not stated may be worse
                rows += [("acoustics.tone.ratio", name, tnr), ("acoustics.tone.prominence", name, pr),
                         ("acoustics.tone.excess", name, excess(f, tnr, pr))]
            for f, tnr, pr, l in heard:
                rows += [(f"tone {f:.3f} Hz, level", name, l), (f"tone {f:.3f} Hz, to noise", name, tnr),
                         (f"tone {f:.3f} Hz, prominence", name, pr)]
    return rows


# --- the table --------------------------------------------------------------------------------------------------------------------
def main():
    import json
    import pathlib
    import scipy
    here = pathlib.Path(__file__).parent
    print("# Noise of whole designs at operating points, by an implementation of its own of what is documented.")
    print(f"# Made by chain.py beside this file, from the designs and points.csv beside it: SciPy {scipy.__version__}, NumPy {np.__version__}.")
    print("# design;point;figure;place;value;tolerance")
    points = {}
    for line in (here / "points.csv").read_text().splitlines():
        if not line.startswith("#"):
            design, name, bank, density, running, speed, flow = line.split(";")
            one = points.setdefault((design, name), {}).setdefault(bank, {"density": float(density), "movers": []})
            one["movers"].append((running == "1", float(speed) * math.pi / 30, float(flow) / 3600))
    for (design, name), point in points.items():
        Curve.used = False
        rows = figures(json.loads((here / f"{design}.tramontane.json").read_text()), point)
        for figure, place, value in rows:
            if math.isfinite(value):
                print(f"{design};{name};{figure};{place};{value:.9g};{'0.01' if Curve.used else '1e-6'}")


if __name__ == "__main__":
    main()
