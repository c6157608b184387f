"""Wherever a limb shears a riser of the strips: who stops turning, and what shows the gauge?"""

from pathlib import Path

import hydro
from hydro import psi

farm = hydro.read_layout(Path(__file__).with_name("ouzel_bench.toml"))
strips = farm.watering(["rows 1 and 2"])
sheared = hydro.riser_sheared("", 0)
found = hydro.break_every_outlet(strips, fault=sheared, progress=True)

print("sheared  others that stop turning, row 1   row 2   psi at the gauge")
for index, it in enumerate(found.breaks):
    on_row_1 = sum(other.line == "row 1" for other in found.newly_out_of_work(index))
    on_row_2 = it.more_out_of_work - on_row_1
    gauge = it.gauge_reading / psi
    print(f"{it.line}, {it.outlet:2}  {on_row_1:31}  {on_row_2:6}  {gauge:17.1f}")
assert found.worst is not None
worst = found.breaks[found.worst]
print(
    f"The worst is {worst.line}, outlet {worst.outlet}: {worst.more_out_of_work} of the "
    f"{len(found.breaks) - 1} others stop."
)
