"""Makes air_balances.csv: temperatures in random networks of bays through which air goes, solved by NumPy.

Every bay i is mixed. With T its temperature above outside, C what the air of a way carries per kelvin, q heat put into the air
of a way and Q into a bay, G a linear conductance of its walls to outside, steady energy balance over the bay says

    sum over ways that end in i of (C (T_from - T_i) + q) + Q_i - G_i T_i = 0

where "from" and "ends" go with the air, not with how the way is written down; T of outside is 0. Heat put into a way in which
air stands goes half to each end. The matrix of these sums is solved densely by numpy.linalg.solve.

Air goes along random paths from outside to outside, through every bay at least once, and round in random rings that may carry
up to thirty times what goes through; the paths that share a way are added up, so that it may go backwards. Some ways are two
ways side by side that blow against each other. In every third network bays have walls; in those some bays have nothing else.

Lines of the table (SI; bays from 0, outside -1; capacity positive from its first to its second bay):
  network,number,bays
  way,from,to,capacity,heat
  bay,heat,conductance,rise
  total,heat to outside by air,heat through walls

Run: python3 air_balances.py > air_balances.csv   (made with NumPy 1.24)
"""
import numpy as np

rng = np.random.default_rng(20261)
SIZES = [3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 70, 90, 110, 130, 150, 175, 200]


def network(bays, walled):
    sealed = set(rng.choice(bays, bays // 10, replace=False).tolist()) if walled else set()
    open_bays = [i for i in range(bays) if i not in sealed]
    flow = {}

    def along(path, amount):
        for a, b in zip(path, path[1:]):
            if a == b:
                continue
            if (b, a) in flow and min(a, b) >= 0:
                flow[(b, a)] -= amount
            else:
                flow[(a, b)] = flow.get((a, b), 0.0) + amount

    todo = list(rng.permutation(open_bays))
    while todo:
        length = int(rng.integers(1, 8))
        path, todo = todo[:length], todo[length:]
        along([-1] + path + [-1], 10 ** rng.uniform(-1, 1.5))
    for _ in range(max(1, bays // 4)):
        length = int(rng.integers(2, min(9, len(open_bays)) + 1))
        ring = list(rng.choice(open_bays, length, replace=False))
        along(ring + [ring[0]], 10 ** rng.uniform(-1, 2))
    ways = [[a, b, c, 0.0] for (a, b), c in flow.items()]
    for _ in range(max(1, bays // 8)):                       # two side by side that blow against each other
        a, b = rng.choice(open_bays, 2, replace=False)
        amount = 10 ** rng.uniform(-1, 1)
        ways.append([a, b, amount, 0.0])
        ways.append([a, b, -amount, 0.0])
    for _ in range(max(1, bays // 10)):                      # air stands
        a, b = rng.choice(open_bays, 2, replace=False)
        ways.append([a, b if rng.random() < 0.7 else -1, 0.0, 0.0])
    for way in ways:
        if rng.random() < 0.3:
            way[3] = 10 ** rng.uniform(0, 2.3)
    heat = np.where(rng.random(bays) < 0.5, 10 ** rng.uniform(0, 2.3, bays), 0.0)
    wall = 10 ** rng.uniform(-1, 1, bays) * (rng.random(bays) < 0.6) if walled else np.zeros(bays)
    for i in sealed:
        wall[i] = 10 ** rng.uniform(-1, 1)
    order = rng.permutation(len(ways))
    return [ways[k] for k in order], heat, wall


def solve(ways, heat, wall):
    n = len(heat)
    a = np.diag(wall.copy())
    b = heat.copy()
    for frm, to, c, q in ways:
        if c == 0:
            for end in (frm, to):
                if end >= 0:
                    b[end] += q / 2
            continue
        up, down = (frm, to) if c > 0 else (to, frm)
        if down >= 0:
            a[down, down] += abs(c)
            if up >= 0:
                a[down, up] -= abs(c)
            b[down] += q
    t = np.linalg.solve(a, b)
    for _ in range(2):                                        # the residual once more, against rounding
        t += np.linalg.solve(a, b - a @ t)
    air = 0.0
    for frm, to, c, q in ways:
        if c == 0:
            air += q / 2 * ((frm < 0) + (to < 0))
        else:
            up, down = (frm, to) if c > 0 else (to, frm)
            if down < 0:
                air += abs(c) * (t[up] if up >= 0 else 0.0) + q
    walls = float(wall @ t)
    total = heat.sum() + sum(w[3] for w in ways)
    assert abs(air + walls - total) < 1e-11 * total, (air, walls, total)
    return t, air, walls


print("# made by air_balances.py with NumPy; see there")
for number in range(40):
    ways, heat, wall = network(SIZES[number // 2], number % 3 == 2)
    rise, air, walls = solve(ways, heat, wall)
    print(f"network,{number},{len(heat)}")
    for frm, to, c, q in ways:
        print(f"way,{frm},{to},{float(c)!r},{float(q)!r}")
    for q, g, t in zip(heat, wall, rise):
        print(f"bay,{float(q)!r},{float(g)!r},{float(t)!r}")
    print(f"total,{float(air)!r},{float(walls)!r}")
