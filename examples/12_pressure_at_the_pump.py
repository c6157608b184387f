"""What each pressure at the pump brings to a row: arrays of pressures in, arrays of numbers out."""

import numpy as np

import hydro
from hydro import ft, gpm, inch, psi

row = hydro.Line(
    name="row 1",
    pipe=hydro.Pipe(inside_diameter=1.61 * inch, hazen_williams=150),
    outlet=hydro.Outlet(flow=2.5 * gpm, at=40 * psi),
    count=16,
    spacing=30 * ft,
    ground_rise=12 * ft,
)

held = np.linspace(40, 60, 6) * psi
solutions = [hydro.solve(hydro.Layout(hydro.Supply(pressure=each), [row])) for each in held]
lowest = np.array([each.line("row 1").pressure.min() / psi for each in solutions])
flow = np.array([each.inflow / gpm for each in solutions])
short = np.array([len(hydro.check(each).below_rated) for each in solutions])

print("psi held  lowest psi  gal/min  below rated")
for figures in zip(held / psi, lowest, flow, short):
    print("{:8.0f}  {:10.1f}  {:7.1f}  {:11}".format(*figures))
enough = np.interp(40, lowest, held / psi)
print(f"The last outlet gets its 40 psi from about {enough:.1f} psi on.")
