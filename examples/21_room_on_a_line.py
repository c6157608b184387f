"""How many more heads can row 1 have, at 2,350 rpm? And if its pressure did not fall?"""

from pathlib import Path

import hydro
from hydro import psi, rpm

farm = hydro.read_layout(Path(__file__).with_name("ouzel_bench.toml"))
assert farm.supply.pump
faster = farm.supply.replace(pump=farm.supply.pump.replace(speed=2350 * rpm))
two_rows = farm.with_supply(faster).watering(["rows 1 and 2"])

# How fast the water runs is left out.
limits = hydro.Limits(judged=["rated", "variation", "most_flow", "suction"])
beyond = hydro.room_on_line(two_rows, "row 1", limits=limits, progress=True)

between = hydro.MoreOutlets(where="between")
room = hydro.room_on_line(two_rows, "row 1", limits=limits, more=between)
print(f"Between its heads: {room.outlets} more.")

now = hydro.solve(two_rows).supply_pressure
held = two_rows.with_supply(hydro.Supply(pressure=now))
room = hydro.room_on_line(held, "row 1", limits=limits)
print(f"Beyond its end, if the supply held its {now / psi:.1f} psi: {room.outlets} more.\n")
print(hydro.room_report(beyond, "us"), end="")
