"""A head is knocked off: what the row had before and has after, in words and in a picture."""

from pathlib import Path

import hydro
import hydro.plot
from hydro import gpm, psi

bench = hydro.read_layout(Path(__file__).with_name("ouzel_strips.toml")).without_faults()
before = hydro.solve(bench)
after = hydro.solve(bench.with_fault(hydro.head_off("row 2", 4)))

change = hydro.compare(before, after)
print(f"{change.escaping / gpm:.1f} gal/min escape.")
for it in change.newly_below_minimum:
    print(f"{it.line}, outlet {it.outlet} falls to {it.pressure / psi:.1f} psi.")

picture = Path("09_draw_a_break.png")
ax = hydro.plot.pressure_profile(after, "row 2", before=before)
ax.figure.savefig(picture)
print(f"{picture} shows row 2.")
