"""Makes body_networks.csv: bodies that hold heat in air at given flows, followed in time by SciPy.

Formulas
  bay            mixed; heat carried in = heat carried out + what walls and bodies take: sum of capacity times temperature over the
                 ways that come = that over the ways that leave, all above outside; heat given off in a passage goes with its ways,
                 each its share; a wall takes heat0 + slope times rise
  air at a part  mean of its bay; or, in a passage and in a row of a bay, the air that comes, warmed by weight times heat over what
                 the air carries per kelvin: 1/2 for what is spread along the way, 1/2 for the same row, the wake factor for rows
                 before, 0 for rows behind and for the own heat of what counts from the air that comes
  chain          C dT/dt = heat in less heat out; heat = difference of temperature over the resistances between; the power enters
                 at the junction, the far end of the chain is the air at the part
Method: the temperatures of all bays and the heats of all chains are the unknowns of one dense linear system (numpy.linalg.solve),
set up anew from these formulas; the bodies by scipy.integrate.solve_ivp, Radau, rtol 1e-10, atol 1e-10, checked against LSODA to
1e-6 K and against the exponential of the matrix (scipy.linalg.expm) to 2e-8 K; times of limits by its events, to brentq's own
tolerance on the continuous output.

Lines of the table (SI; bays from 0, then passages; outside -1; several numbers in a field are parted by blanks):
  network,name,bays,passages,temperature outside
  way,place of its passage,from,to,heat carried per kelvin (negative: backwards),share,heat of movers
  wall,bay,heat0,slope
  chassis,bay,heat capacity,conductance
  part,place,1 if along,power,limit,heat capacities (0 for none) of hot sides of links,resistances of links,
      weights of all heats given off at its place in the order of parts, then of loose heats
  loose,place,heat
  start,temperature of all bodies
  at,time,temperatures of bodies (parts in order, each from the junction outwards, then chassis),of bays,junctions of parts
  reached,part,time

Run: python3 body_networks.py > body_networks.csv         (under a minute; SciPy 1.10, NumPy 1.24)
"""
import random

import numpy as np
from scipy.integrate import solve_ivp
from scipy.linalg import expm

OUT = 293.15


class Drawn:
    def __init__(self, seed, bays):
        r = random.Random(seed)
        self.bays = bays
        ends = [(-1, 0)] + [(i, i + 1) for i in range(bays - 1)] + [(bays - 1, -1)]
        for _ in range(bays):
            a, b = r.randrange(-1, bays), r.randrange(-1, bays)
            if a != b:
                ends.append((a, b))
        self.ends = ends
        flow = [0.0] * len(ends)
        main = r.uniform(8, 25)
        for p in range(bays + 1):
            flow[p] += main

        def path(a, b):  # along the main row of bays
            return [(p, 1) for p in range(a + 1, b + 1)] if b > a else [(p, -1) for p in range(b + 1, a + 1)]
        for p in range(bays + 1, len(ends)):  # a loop each, with the side way and back along the main row
            f = r.uniform(0.5, 6) * r.choice([1, 1, -1])
            a, b = ends[p]
            flow[p] += f
            for q, s in path(b, a) if a != -1 and b != -1 else (
                    [(q, 1) for q in range(0, a + 1)] if b == -1 else [(q, 1) for q in range(b + 1, bays + 1)]):
                flow[q] += s * f
        self.ways = []  # place, from, to, capacity, share, movers
        split = r.randrange(1, bays + 1)
        for p, (a, b) in enumerate(ends):
            if p == split:  # a bank of two columns, one blown back through
                back = 0.3 * abs(flow[p])
                sign = 1 if flow[p] >= 0 else -1
                through = abs(flow[p]) + 2 * back
                for c in (sign * (abs(flow[p]) + back), -sign * back):
                    self.ways.append((bays + p, a, b, c, abs(c) / through, r.uniform(0, 6)))
            else:
                self.ways.append((bays + p, a, b, flow[p], 1.0, 0.0))
        self.walls = [(i, r.uniform(-3, 3), r.uniform(0.2, 3)) for i in range(bays) if r.random() < 0.5]
        self.chassis = [(i, r.uniform(300, 3000), r.uniform(1, 8)) for i in range(bays) if r.random() < 0.5]
        self.loose = [(r.randrange(bays + len(ends)), r.uniform(1, 10)) for _ in range(2)]
        self.parts = []
        for _ in range(2 * bays + 2):
            place = r.randrange(bays + len(ends))
            n = r.choice([1, 2, 3, 3])
            caps = [r.choice([0, 1, 1]) * 10 ** r.uniform(1, 2.7) for _ in range(n)]
            res = [10 ** r.uniform(-1.3, 0.2) for _ in range(n)]
            row = r.choice([None, 1, 2, 3])
            self.parts.append(dict(place=place, power=r.uniform(2, 40), caps=caps, res=res, row=row, wake=r.choice([1, 1.6]),
                                   inlet=r.random() < 0.4))
        self.start = OUT + r.choice([0, -20, 35])
        self.place()

    def place(self):
        """What the air carries at each place, and where it comes from."""
        n = self.bays + len(self.ends)
        self.carried = [0.0] * n
        self.up = list(range(self.bays)) + [None] * len(self.ends)
        for p in range(self.bays, n):
            net = sum(w[3] for w in self.ways if w[0] == p)
            a, b = self.ends[p - self.bays]
            self.up[p] = a if net >= 0 else b
            self.carried[p] = sum(abs(w[3]) for w in self.ways if w[0] == p and (w[3] >= 0) == (net >= 0))
        for w in self.ways:
            into = w[2] if w[3] >= 0 else w[1]
            if into >= 0:
                self.carried[into] += abs(w[3])
        for k, part in enumerate(self.parts):
            part['along'] = part['place'] >= self.bays or part['row'] is not None
            weights = []
            for j, other in enumerate(self.parts):
                if other['place'] != part['place']:
                    continue
                if part['row'] is None or other['row'] is None:
                    weights.append(0.0 if j == k and part['inlet'] else 0.5)
                elif other['row'] < part['row']:
                    weights.append(part['wake'])
                else:
                    weights.append(0.5 if other['row'] == part['row'] and not part['inlet'] else 0.0)
            weights += [0.5 for place, _ in self.loose if place == part['place']]
            part['weights'] = weights


def nodes(part):
    return [i for i, c in enumerate(part['caps']) if c > 0]


class Equations:
    def __init__(self, d):
        self.d = d
        self.first = []
        count = 0
        for part in d.parts:
            self.first.append(count)
            count += len(nodes(part))
        self.chassis = count
        self.size = count + len(d.chassis)
        nb, nq = d.bays, len(d.parts)
        self.n = nb + nq
        a = np.zeros((self.n, self.n))
        # right side: constant + matrix times rises of bodies
        self.b0 = np.zeros(self.n)
        self.bx = np.zeros((self.n, self.size))
        heats = {}  # place -> list of unknown numbers; constants apart
        for k, part in enumerate(d.parts):
            heats.setdefault(part['place'], []).append(nb + k)
        loose = {}
        for place, heat in d.loose:
            loose[place] = loose.get(place, 0) + heat
        arrive_a = {}
        arrive_0 = {}
        for i in range(nb):  # heat that comes with the air into each bay
            row, const = np.zeros(self.n), 0.0
            for place, f, t, c, share, movers in d.ways:
                source, into = (f, t) if c >= 0 else (t, f)
                if source == i:
                    a[i, i] += abs(c)
                if into == i:
                    if source >= 0:
                        row[source] += abs(c)
                    for q in heats.get(place, []):
                        row[q] += share
                    const += share * loose.get(place, 0) + movers
            arrive_a[i], arrive_0[i] = row, const
            a[i] -= row
            self.b0[i] += const + loose.get(i, 0)
            for q in heats.get(i, []):
                a[i, q] -= 1
        for i, heat, slope in d.walls:
            a[i, i] += slope
            self.b0[i] -= heat
        for m, (i, _, conductance) in enumerate(d.chassis):
            a[i, i] += conductance
            self.bx[i, self.chassis + m] += conductance
        self.local = []
        for k, part in enumerate(d.parts):
            p = part['place']
            row, const = np.zeros(self.n), 0.0
            if not part['along']:
                row[p] = 1
            else:
                if p < nb:
                    row += arrive_a[p] / d.carried[p]
                    const += arrive_0[p] / d.carried[p]
                elif d.up[p] >= 0:
                    row[d.up[p]] = 1
                inside = [j for j, o in enumerate(d.parts) if o['place'] == p]
                for j, w in zip(inside, part['weights']):
                    row[nb + j] += w / d.carried[p]
                for (place, heat), w in zip([e for e in d.loose if e[0] == p], part['weights'][len(inside):]):
                    const += w * heat / d.carried[p]
            self.local.append((row, const))
            own = nodes(part)
            if own:
                res = sum(part['res'][own[-1]:])
                a[nb + k] = row
                a[nb + k, nb + k] += res
                self.bx[nb + k, self.first[k] + len(own) - 1] = 1
                self.b0[nb + k] = -const
            else:
                a[nb + k, nb + k] = 1
                self.b0[nb + k] = part['power']
        self.a = a

    def air(self, x):
        return np.linalg.solve(self.a, self.b0 + self.bx @ (x - OUT))

    def rates(self, _, x):
        y = self.air(x)
        out = np.zeros(self.size)
        for k, part in enumerate(self.d.parts):
            own = nodes(part)
            coming = part['power']
            for m, link in enumerate(own):
                at = self.first[k] + m
                if m + 1 < len(own):
                    going = (x[at] - x[at + 1]) / sum(part['res'][link:own[m + 1]])
                else:
                    going = y[self.d.bays + k]
                out[at] = (coming - going) / part['caps'][link]
                coming = going
        for m, (i, capacity, conductance) in enumerate(self.d.chassis):
            at = self.chassis + m
            out[at] = conductance * (OUT + y[i] - x[at]) / capacity
        return out

    def junctions(self, x):
        y = self.air(x)
        all = []
        for k, part in enumerate(self.d.parts):
            own = nodes(part)
            if own:
                all.append(x[self.first[k]] + part['power'] * sum(part['res'][:own[0]]))
            else:
                row, const = self.local[k]
                all.append(OUT + row @ y + const + part['power'] * sum(part['res']))
        return np.array(all)


def numbers(values):
    return ' '.join(repr(float(v)) for v in values)


def main():
    for line in __doc__.splitlines():
        print(('# ' + line).rstrip())
    for seed, bays in ((1, 1), (2, 2), (3, 3), (4, 5), (5, 8), (6, 12)):
        d = Drawn(seed, bays)
        e = Equations(d)
        x0 = np.full(e.size, d.start)
        times = [10.0, 60.0, 300.0, 900.0, 3000.0]
        probe = solve_ivp(e.rates, (0, 3000), x0, 'Radau', rtol=1e-10, atol=1e-10, t_eval=times)
        check = solve_ivp(e.rates, (0, 3000), x0, 'LSODA', rtol=1e-11, atol=1e-10, t_eval=times)
        assert probe.success and check.success and np.abs(probe.y - check.y).max() < 1e-6, np.abs(probe.y - check.y).max()
        still = e.rates(0, np.zeros(e.size))
        matrix = np.array([e.rates(0, unit) - still for unit in np.eye(e.size)]).T
        rest = np.linalg.solve(matrix, -still)
        for i, t in enumerate(times):
            assert np.abs(rest + expm(matrix * t) @ (x0 - rest) - probe.y[:, i]).max() < 2e-8
        begin, end = e.junctions(x0), e.junctions(probe.y[:, -1])
        limits = [begin[k] + 0.63 * (end[k] - begin[k]) if nodes(d.parts[k]) and end[k] > begin[k] + 1 else 1000.0 for k in range(len(d.parts))]
        events = []
        for k, limit in enumerate(limits):
            def event(t, x, k=k, limit=limit):
                return e.junctions(x)[k] - limit
            event.direction = 1
            events.append(event)
        run = solve_ivp(e.rates, (0, 3000), x0, 'Radau', rtol=1e-10, atol=1e-10, events=events)
        print(f'network,{bays} bays,{bays},{len(d.ends)},{OUT}')
        for w in d.ways:
            print(f'way,{w[0]},{w[1]},{w[2]},{w[3]!r},{w[4]!r},{w[5]!r}')
        for w in d.walls:
            print(f'wall,{w[0]},{w[1]!r},{w[2]!r}')
        for c in d.chassis:
            print(f'chassis,{c[0]},{c[1]!r},{c[2]!r}')
        for place, heat in d.loose:
            print(f'loose,{place},{heat!r}')
        for k, p in enumerate(d.parts):
            print(f"part,{p['place']},{int(p['along'])},{p['power']!r},{float(limits[k])!r},{numbers(p['caps'])},{numbers(p['res'])},{numbers(p['weights'])}")
        print(f'start,{d.start}')
        for i, t in enumerate(times):
            x = probe.y[:, i]
            print(f'at,{t},{numbers(x)},{numbers(OUT + e.air(x)[:bays])},{numbers(e.junctions(x))}')
        for k, found in enumerate(run.t_events):
            if len(found):
                print(f'reached,{k},{float(found[0])!r}')


main()
