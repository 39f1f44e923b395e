"""Temperature control loops in time by SciPy's integrators: python3 loops.py > loops.csv (needs NumPy and SciPy; a minute)."""
import numpy
import scipy
from scipy.integrate import solve_ivp

print("# Bodies in a row: the first is heated, neighbours are joined, the last gives its heat to air of 300 K through g0 + g1 setting.")
print("# The law is slope (T - zero) between low and high; with hysteresis it falls along the same line, so much colder.")
print("# Sampled: solve_ivp (Radau, rtol 1e-10) from instant to instant. Always: solve_ivp with the law in the right side (rtol 1e-11);")
print("# with dead time by the method of steps on its dense output. Always with hysteresis: Runge-Kutta 4, 2 ms.")
print(f"# Made by loops.py beside this file: NumPy {numpy.__version__}, SciPy {scipy.__version__}.")
print("# case;name;capacities;conductances between;g0;g1;heat;place of the sensor;slope;zero;low;high;hysteresis;"
      "sensor lag;interval;dead time;mover lag;resolution;duration")
print("# at;time;sensor;setting that acts;first body")

AIR = 300.0


class Case:
    def __init__(self, name, capacity, between, g0, g1, heat, place, slope, zero, low, high, hysteresis,
                 sensor_lag, interval, dead, mover_lag, resolution, duration):
        self.__dict__.update(locals())
        self.capacity = numpy.array(capacity, float)
        self.n = len(capacity)
        # start: everything at 320 K, setting low
        self.start = numpy.concatenate([numpy.full(self.n, 320.0), [low], [320.0]])
        self.memory = low
        given = (capacity, between, g0, g1, heat, place, slope, zero, low, high, hysteresis, sensor_lag, interval, dead, mover_lag,
                 resolution, duration)
        texts = [str(v) if isinstance(v, int) else " ".join(repr(float(x)) for x in numpy.atleast_1d(v)) for v in given]
        print(";".join(["case", name, *texts]))

    def line(self, t):
        return min(self.high, max(self.low, self.slope * (t - self.zero)))

    def law(self, t):
        if self.hysteresis == 0:
            u = self.line(t)
        else:
            self.memory = u = max(self.line(t), min(self.line(t + self.hysteresis), self.memory))
        return round(u / self.resolution) * self.resolution if self.resolution > 0 else u

    def rates(self, y, applied):
        """y: bodies, mover, sensor; lags of zero are not asked for here."""
        t = y[:self.n]
        acts = y[self.n] if self.mover_lag > 0 else applied
        flow = numpy.zeros(self.n)
        flow[0] = self.heat
        for i, g in enumerate(self.between):
            q = g * (t[i] - t[i + 1])
            flow[i] -= q
            flow[i + 1] += q
        flow[-1] -= (self.g0 + self.g1 * acts) * (t[-1] - AIR)
        out = numpy.empty(self.n + 2)
        out[:self.n] = flow / self.capacity
        out[self.n] = (applied - y[self.n]) / self.mover_lag if self.mover_lag > 0 else 0
        out[self.n + 1] = (t[self.place] - y[self.n + 1]) / self.sensor_lag if self.sensor_lag > 0 else 0
        return out

    def shown(self, y):
        return y[self.n + 1] if self.sensor_lag > 0 else y[self.place]

    def row(self, time, y, applied):
        acts = y[self.n] if self.mover_lag > 0 else applied
        print(f"at;{time!r};{self.shown(y):.9g};{acts:.9g};{y[0]:.9g}")

    def times(self):
        return [float(t) for t in numpy.linspace(0, self.duration, 21)[1:]]

    def sampled(self):
        y = self.start.copy()
        time = 0.0
        acts = self.low
        instant = 0
        waiting = []
        left = self.times()
        while left:
            if abs(time - instant * self.interval) < 1e-9:
                waiting.append((time + self.dead, self.law(self.shown(y))))
                instant += 1
            while waiting and waiting[0][0] <= time + 1e-9:
                acts = waiting.pop(0)[1]
            target = min([instant * self.interval, left[0]] + [w[0] for w in waiting])
            if target > time:
                y = solve_ivp(lambda t, x: self.rates(x, acts), (time, target), y, method="Radau", rtol=1e-10, atol=1e-10).y[:, -1]
            time = target
            if abs(time - left[0]) < 1e-9:
                self.row(left.pop(0), y, acts)

    def always(self):
        y = self.start.copy()
        if self.dead == 0:
            solved = solve_ivp(lambda t, x: self.rates(x, self.law(self.shown(x))), (0, self.duration), y, method="LSODA",
                               t_eval=self.times(), rtol=1e-11, atol=1e-11)
            for i, t in enumerate(self.times()):
                self.row(t, solved.y[:, i], self.law(self.shown(solved.y[:, i])))
            return
        left = self.times()
        pieces = []
        begin = 0.0
        while left:
            before = pieces[-1] if pieces else None
            applied = (lambda t: self.low) if before is None else (lambda t: self.law(self.shown(before(t - self.dead))))
            solved = solve_ivp(lambda t, x: self.rates(x, applied(t)), (begin, begin + self.dead), y, method="DOP853", rtol=1e-11,
                               atol=1e-11, dense_output=True, max_step=self.dead / 20)
            while left and left[0] <= begin + self.dead + 1e-9:
                t = left.pop(0)
                self.row(t, solved.sol(t), applied(t))
            y = solved.y[:, -1]
            pieces.append(solved.sol)
            begin += self.dead

    def playing(self):
        h = 0.002
        y = self.start.copy()
        left = self.times()
        self.law(self.shown(y))

        def trial(x):
            s = self.shown(x)
            return self.rates(x, max(self.line(s), min(self.line(s + self.hysteresis), self.memory)))

        for step in range(round(self.duration / h)):
            k1 = trial(y)
            k2 = trial(y + h / 2 * k1)
            k3 = trial(y + h / 2 * k2)
            k4 = trial(y + h * k3)
            y = y + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
            acts = self.law(self.shown(y))
            if abs((step + 1) * h - left[0]) < h / 2:
                self.row(left.pop(0), y, acts)
                if not left:
                    return


#     name, capacities, between, g0, g1, heat, place, slope, zero, low, high, hysteresis, lag, interval, dead, mover, resolution, duration
Case("one body, always", [200], [], 0.5, 4, 60, 0, 0.05, 310, 0.2, 1, 0, 0.0, 0.0, 0.0, 0.0, 0.0, 600).always()
Case("one body, lags, always", [200], [], 0.5, 4, 60, 0, 0.05, 310, 0.2, 1, 0, 8.0, 0.0, 0.0, 3.0, 0.0, 600).always()
Case("two bodies, sampled", [150, 400], [3], 0.3, 5, 80, 0, 0.04, 345, 0.15, 1, 0, 5.0, 2.0, 0.0, 2.0, 0.0, 800).sampled()
Case("three bodies, swings and settles, always", [60, 90, 120], [6, 5], 0.2, 4, 80, 0, 0.12, 356, 0.1, 1, 0, 6.0, 0.0, 0.0, 3.0, 0.0,
     900).always()
Case("three bodies, hunts, always", [60, 90, 120], [6, 5], 0.2, 4, 80, 0, 0.5, 359, 0.1, 1, 0, 20.0, 0.0, 0.0, 8.0, 0.0, 900).always()
Case("five bodies, sampled", [20, 50, 100, 200, 300], [4, 6, 8, 10], 0.3, 6, 90, 2, 0.06, 340, 0.1, 1, 0, 4.0, 5.0, 0.0, 2.0, 0.0,
     1200).sampled()
Case("two bodies, hunts, sampled", [80, 120], [5], 0.2, 5, 80, 0, 0.4, 345, 0.1, 1, 0, 10.0, 4.0, 3.0, 4.0, 0.0, 800).sampled()
Case("two bodies, dead time, always", [80, 120], [5], 0.2, 5, 80, 0, 0.08, 340, 0.1, 1, 0, 6.0, 0.0, 7.0, 2.0, 0.0, 700).always()
Case("one body, dead time, hunts, always", [100], [], 0.2, 5, 80, 0, 0.3, 328, 0.1, 1, 0, 5.0, 0.0, 12.0, 0.0, 0.0, 600).always()
Case("two bodies, steps of the setting, sampled", [80, 120], [5], 0.2, 5, 80, 0, 0.05, 338, 0.1, 1, 0, 6.0, 3.0, 0.0, 2.0, 0.05,
     700).sampled()
Case("two bodies, play, sampled", [80, 120], [5], 0.2, 5, 80, 0, 0.08, 340, 0.1, 1, 2.0, 6.0, 1.0, 0.5, 3.0, 0.0, 700).sampled()
Case("two bodies, play, always", [80, 120], [5], 0.2, 5, 80, 0, 0.15, 342, 0.1, 1, 2.0, 8.0, 0.0, 0.0, 4.0, 0.0, 500).playing()
Case("stiff, sampled", [0.05, 30, 4000], [5, 4], 0.3, 6, 90, 1, 0.05, 335, 0.1, 1, 0, 2.0, 1.5, 0.4, 1.0, 0.01, 600).sampled()
