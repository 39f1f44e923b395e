# Makes family.csv: standard log densities, log survivals and log failed shares by mpmath with 60 digits.
# Run: python3 family.py (mpmath; SciPy's dependency set has it), in this folder.
from mpmath import mp, mpf, erfc, exp, log, sqrt, pi, expm1
mp.dps = 60
with open("family.csv", "w") as out:
    out.write("# Made by family.py beside this file: mpmath, 60 digits.\n")
    out.write("family,z,logdensity,logsurvival,logfailed\n")
    for z in ["-100", "-40", "-37.5", "-20", "-8", "-5.6569", "-3", "-1", "-0.663", "-0.1", "-1e-9", "0", "1e-9", "0.1", "0.66", "0.67", "1", "2.5", "3.5", "5.65", "5.66", "8", "20", "37.5", "100"]:
        x = mpf(z)
        n = [-x * x / 2 - log(2 * pi) / 2, log(erfc(x / sqrt(2)) / 2), log(erfc(-x / sqrt(2)) / 2)]
        out.write("LOGNORMAL,%s,%s\n" % (z, ",".join(mp.nstr(v, 18) for v in n)))
        if abs(x) <= 6.5 or x < 0:
            w = [x - exp(x), -exp(x), log(-expm1(-exp(x)))]
            out.write("WEIBULL,%s,%s\n" % (z, ",".join(mp.nstr(v, 18) for v in w)))
