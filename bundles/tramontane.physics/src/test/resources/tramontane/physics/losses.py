"""Golden values of friction and local losses: python3 losses.py > losses.csv (needs the library fluids)."""
import math
import fluids

print("# Friction factors, loss coefficients and discharge coefficients.")
print(f"# Made by losses.py beside this file: library fluids {fluids.__version__}.")
print("# what;first argument;second argument;third argument;value")


def row(what, first, second, third, value):
    print(f"{what};{first!r};{second!r};{third!r};{float(value)!r}")


for reynolds in (100.0, 1000.0, 2000.0, 3000.0, 4000.0, 1e4, 2e4, 1e5, 1e6, 1e7):
    for roughness in (0.0, 1e-5, 1e-4, 1e-3, 5e-3, 0.01, 0.05):
        row("churchill", reynolds, roughness, 0.0, fluids.Churchill_1977(reynolds, roughness))
        if reynolds >= 4000:
            row("colebrook", reynolds, roughness, 0.0, fluids.Colebrook(reynolds, roughness))
            row("haaland", reynolds, roughness, 0.0, fluids.Haaland(reynolds, roughness))
for ratio in (0.02, 0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.99):
    large = 0.1
    small = large * math.sqrt(ratio)
    # fluids gives the contraction on the smaller, the expansion on the upstream section: both the smaller one
    row("contraction", ratio, 0.0, 0.0, fluids.contraction_sharp(large, small, method="Rennels"))
    # its Rennels form of the expansion is that of Borda and Carnot
    row("expansion", ratio, 0.0, 0.0, fluids.diffuser_sharp(small, large, method="Rennels"))
for degrees in (10.0, 30.0, 45.0, 60.0, 90.0, 120.0, 180.0):
    row("mitre", math.radians(degrees), 0.0, 0.0, fluids.bend_miter(degrees, method="Rennels"))
    for radius in (0.5, 1.0, 1.5, 2.0, 4.0):
        for friction in (0.01, 0.02, 0.03):
            row("rounded", math.radians(degrees), radius, friction,
                fluids.bend_rounded(Di=1.0, angle=degrees, rc=radius, fd=friction, method="Rennels"))
for ratio in (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75):
    for reynolds in (5e3, 1e4, 3e4, 1e5, 1e6):
        for diameter in (0.05, 0.1, 0.3):
            rho, mu = 1.2, 1.8e-5
            mass = reynolds * math.pi * diameter * mu / 4
            for tap in ("corner", "D", "flange"):
                row("discharge " + tap, ratio, reynolds, diameter,
                    fluids.C_Reader_Harris_Gallagher(diameter, ratio * diameter, rho, mu, mass, taps=tap))
# tables of R. D. Blevins, Applied Fluid Dynamics Handbook (1984)
for free in (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8):
    row("Blevins square screen", free, 0.0, 0.0, fluids.square_edge_screen(free))
    row("Blevins square grille", free, 0.0, 0.0, fluids.square_edge_grill(free))
    for reynolds in (100.0, 200.0, 400.0):
        row("Blevins round screen", free, reynolds, 0.0, fluids.round_edge_screen(free, reynolds))
