"""How likely is trouble on row 2 with each head more, when not all is known exactly?"""

from pathlib import Path

import hydro
from hydro import ft, psi

strips = hydro.read_layout(Path(__file__).with_name("ouzel_strips.toml")).without_faults()
guess = hydro.Uncertainty(
    manufacturing_variation=0.04,
    rating=0.02,
    inside_diameter=0.01,
    wall=0.05,
    loss_coefficient=0.3,
    supply_pressure=1 * psi,
    elevation=0.5 * ft,
)
found = hydro.chance_of_trouble(strips, "row 2", 6, guess, realisations=4000, progress=True)
print(hydro.trouble_report(strips, "row 2", found, guess), end="")
