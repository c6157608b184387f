"""A row as it was surveyed, with tape, level and gauge: where is it not as it should be?"""

import csv
from pathlib import Path

import numpy as np

import hydro
from hydro import ft, gpm, inch, psi

with open(Path(__file__).with_name("13_survey.csv"), newline="") as file:
    rows = list(csv.DictReader(file))


def column(name: str) -> list[float]:
    return [float(row[name]) for row in rows]


sprinkler = hydro.Outlet(flow=3.5 * gpm, at=40 * psi)
line = hydro.Line(
    name="row 3",
    pipe=hydro.nominal_pipe("1-1/2 in", "PVC Class 160"),
    outlets=[
        hydro.PlacedOutlet(place=place, outlet=sprinkler) for place in column("distance ft") * ft
    ],
    elevations=column("ground ft") * ft,
    riser=hydro.Riser(height=3 * ft, inside_diameter=0.81 * inch, hazen_williams=150),
)
supply = hydro.Supply(pressure=52 * psi, elevation=398 * ft)

computed = hydro.solve(hydro.Layout(supply, [line])).line("row 3").pressure
measured = column("gauge psi") * psi
print("outlet  measured psi  computed psi")
for outlet, (gauge, due) in enumerate(zip(measured, computed), start=1):
    remark = "  look at it" if abs(gauge - due) > 2 * psi else ""
    print(f"{outlet:6}  {gauge / psi:12.1f}  {due / psi:12.1f}{remark}")
typical = np.median(abs((measured - computed) / psi))
print(f"Half of them agree within {typical:.1f} psi.")
