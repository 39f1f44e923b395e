"""Makes walls.csv: heat through walls of cabinets, solved by SciPy from the published relations.

Relations, properties of air those at the mean of face and air
  upright            Nu = (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))^2 (S. W. Churchill, H. H. S. Chu, Int. J. Heat
                     Mass Transfer 18 (1975) 1323-1329)
  lid, floor         0.54 Ra^(1/4), or 0.15 Ra^(1/3) where that is more, on a warm face that looks up or a cold one that looks
                     down; 0.52 Ra^(1/5) on the others (F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer,
                     ch. 9.6); Ra on area over perimeter, or as the wall says
  along the wall     0.664 Re^(1/2) Pr^(1/3) up to Re = 5e5, beyond 0.037 Re^0.8 Pr^(1/3) less what makes it continuous there;
                     length the side of a square of the area
  both inside        third root of the sum of third powers (S. W. Churchill, AIChE J. 23 (1977) 10-16)
  sheet              difference of its faces over its resistance per area
  outside            natural convection, emissivity times sigma (T^4 - T_outside^4), less absorptance times sunlit share of
                     the irradiance
  properties         density by CIPM-2007 with the vapour of the air outside, as far as it can hold it, viscosity and conductivity by ISO 2533, cp = (1006 +
                     1860 w)/(1 + w), in the Rayleigh number; Pr of dry air, cp 1006

The unknown is the temperature of the inner face; what comes to it is brought to what leaves by scipy.optimize.brentq. For cabinets
that air does not go through the unknown is the temperature of the air inside, at which all walls together let the heat out.

Lines of the table (SI; facing as the outer face looks):
  case,outside,pressure,humidity,irradiance
  wall,area,facing,height,resistance,emissivity,absorptance,sunlit,inside,velocity,heat,inner face,outer face
  cabinet,outside,pressure,humidity,irradiance,heat,temperature inside
  side,area,facing,height,resistance,emissivity,absorptance,sunlit

Run: python3 walls.py > walls.csv   (made with SciPy 1.10, NumPy 1.24)
"""
import math

import numpy as np
from scipy.optimize import brentq

from coupled_designs import Air, viscosity

SIGMA = 5.670374419e-8


def conductivity(t):
    return 2.64638e-3 * t ** 1.5 / (t + 245.4 * 10 ** (-12 / t))


def natural(air, face, t, length, facing, inside):
    film = (face + t) / 2
    rho, mu, k = air.density(film), viscosity(film), conductivity(film)
    pr = 1006 * mu / k
    ra = 9.80665 / film * abs(face - t) * length ** 3 / (mu / rho * k / (rho * air.specific_heat(film)))
    if facing == "side":
        nu = (0.825 + 0.387 * ra ** (1 / 6) / (1 + (0.492 / pr) ** (9 / 16)) ** (8 / 27)) ** 2
    else:
        looks_up = (facing == "up") != inside                # a face inside looks the other way
        stirs = (face > t) == looks_up
        nu = max(0.54 * ra ** 0.25, 0.15 * ra ** (1 / 3)) if stirs else 0.52 * ra ** 0.2
    return nu * k / length


def forced(air, face, t, length, velocity):
    film = (face + t) / 2
    rho, mu, k = air.density(film), viscosity(film), conductivity(film)
    pr, re = 1006 * mu / k, velocity * length * rho / mu
    laminar = 0.664 * math.sqrt(min(re, 5e5))
    turbulent = 0.037 * (re ** 0.8 - 5e5 ** 0.8) if re > 5e5 else 0.0
    return (laminar + turbulent) * pr ** (1 / 3) * k / length


def wall(air, irradiance, w, inside, velocity):
    area, facing, height, resistance, emissivity, absorptance, sunlit = w

    def flux(inner):
        h = natural(air, inner, inside, height, facing, True)
        if velocity > 0:
            h = (h ** 3 + forced(air, inner, inside, math.sqrt(area), velocity) ** 3) ** (1 / 3)
        return h * (inside - inner)

    def off(outer):
        return (natural(air, outer, air.t, height, facing, False) * (outer - air.t) + emissivity * SIGMA * (outer ** 4 - air.t ** 4)
                - absorptance * sunlit * irradiance)

    def excess(inner):
        return flux(inner) - off(inner - flux(inner) * resistance)

    lo, hi = min(inside, air.t) - 0.5, max(inside, air.t) + 0.5
    while excess(hi) > 0:
        hi += 5
    inner = brentq(excess, lo, hi, xtol=1e-13, rtol=9e-16, maxiter=500)
    return area * flux(inner), inner, inner - flux(inner) * resistance


def condition(t, p, humidity):
    return Air({"outsideTemperature": t, "pressure": p, "humidity": humidity})


def main():
    rng = np.random.default_rng(20263)
    print("# made by walls.py with SciPy; see there")
    for number in range(36):
        facing = ("side", "up", "down")[number % 3]
        t, p, humidity = 273.15 + rng.uniform(-20, 50), rng.uniform(60e3, 103e3), rng.uniform(0, 1)
        area = 10 ** rng.uniform(-2, 0.3)
        height = math.sqrt(area) / (1 if facing == "side" else 4) * (rng.uniform(0.5, 2) if number % 4 == 1 else 1)
        resistance = 10 ** rng.uniform(-3, 0) if number % 2 else 0.0
        emissivity = (0.0, 0.1, 0.9, 1.0)[int(rng.integers(4))]
        irradiance, sunlit = (rng.uniform(200, 1120), rng.uniform(0.2, 1)) if number % 5 in (0, 3) else (0.0, 0.0)
        inside = t + (-1 if number % 4 == 3 else 1) * 10 ** rng.uniform(-0.5, 1.8)
        velocity = 10 ** rng.uniform(-1.3, 1) if number % 3 != number // 3 % 3 else 0.0
        w = (area, facing, height, resistance, emissivity, rng.uniform(0.2, 0.95), sunlit)
        heat, inner, outer = wall(condition(t, p, humidity), irradiance, w, inside, velocity)
        print(f"case,{t!r},{p!r},{humidity!r},{irradiance!r}")
        print("wall," + ",".join(x if isinstance(x, str) else repr(float(x)) for x in (*w, inside, velocity, heat, inner, outer)))
    for number, (heat, irradiance) in enumerate([(80.0, 0.0), (80.0, 1000.0), (0.0, 1120.0), (3.0, 0.0), (250.0, 600.0), (0.0, 0.0)]):
        t, p, humidity = 273.15 + (35, 20, 40, -10, 25, 20)[number], 101325.0 - 6000 * number, 0.1 * number
        resistance = (0.0, 0.02, 0.0, 0.5, 0.001, 0.0)[number]
        emissivity = (0.9, 0.9, 0.85, 0.1, 0.9, 0.9)[number]
        sides = [(0.6, "side", 0.8, resistance, emissivity, 0.7, 0.5), (0.6, "side", 0.8, resistance, emissivity, 0.7, 0.0),
                 (0.4, "side", 0.8, resistance, emissivity, 0.3, 0.2), (0.375, "up", 0.12, resistance, emissivity, 0.7, 0.8),
                 (0.375, "down", 0.12, resistance, emissivity, 0.7, 0.0)]
        air = condition(t, p, humidity)

        def out(inside):
            return sum(wall(air, irradiance, w, inside, 0.0)[0] for w in sides) - heat

        inside = t if heat == 0 and irradiance == 0 else brentq(out, t + 1e-6, t + 60, xtol=1e-12, rtol=9e-16)
        print(f"cabinet,{t!r},{p!r},{humidity!r},{irradiance!r},{heat!r},{inside!r}")
        for w in sides:
            print("side," + ",".join(x if isinstance(x, str) else repr(float(x)) for x in w))


if __name__ == "__main__":
    main()
