"""A riser is sheared, or a valve was left open: the gauge falls alike. What tells them apart?"""

from pathlib import Path

import hydro
from hydro import psi, rpm


def tell(what: str, now: hydro.Solution) -> None:
    """One row of the table."""
    rows = ""
    for name in ("row 1", "row 2"):
        pressure = now.line(name).pressure.to(psi)
        rows += f"  {pressure[0]:4.1f} {pressure[-1]:4.1f}"
    speed, gauge = now.supply.pumps[0].speed, now.supply.gauge_reading
    assert speed is not None and gauge is not None  # the farm's pump has both
    still = len(hydro.check(now).below_minimum)
    print(f"{what:24} {speed / rpm:5.0f}  {gauge / psi:5.1f}{rows}  {still:5}")


farm = hydro.read_layout(Path(__file__).with_name("ouzel_bench.toml"))
sound = farm.watering("rows 1 and 2")
riser = hydro.throttle_up(sound, [hydro.riser_sheared("row 2", 7)])
valve = hydro.throttle_up(sound, [hydro.valve_left_open("row 3")])

print("                           rpm  gauge  row 1, psi  row 2, psi  heads")
print("                                  psi  first last  first last  that stand still")
tell("sound", riser.sound)
tell("riser sheared, row 2", riser.broken)
tell("  throttled up", riser.throttled_up.solution)
tell("row 3's valve left open", valve.broken)
tell("  throttled up", valve.throttled_up.solution)
