"""Every riser of the bench is sheared in turn: which break does the most harm?"""

from pathlib import Path

import hydro
from hydro import gpm

bench = hydro.read_layout(Path(__file__).with_name("ouzel_strips.toml")).without_faults()
before = hydro.solve(bench)
breaks = [
    hydro.riser_sheared(line.name, outlet)
    for line in bench.lines
    for outlet in range(1, line.outlet_count() + 1)
]

print("broken            gal/min escape  others below rated  others out of work")
out_of_work = {}
for broken in breaks:
    harm = hydro.compare(before, hydro.solve(bench.with_fault(broken)))
    out_of_work[broken] = len(harm.newly_below_minimum)
    print(
        f"{broken.line}, outlet {broken.outlet:2}  {harm.escaping / gpm:14.1f}"
        f"  {len(harm.newly_below_rated):18}  {out_of_work[broken]:18}"
    )

worst = max(out_of_work, key=lambda broken: out_of_work[broken])
print(f"No break puts more out of work than that of {worst.line}, outlet {worst.outlet}.")
