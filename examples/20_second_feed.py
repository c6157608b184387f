"""Does a second feed help? Two rows alone and with a cross pipe between their far ends."""

from pathlib import Path

import hydro
from hydro import ft, gpm, psi

farm = hydro.read_layout(Path(__file__).with_name("ouzel_bench.toml"))
alone = farm.watering("rows 1 and 2")
cross_pipe = hydro.Line(
    name="cross pipe",
    fed_by="row 1",
    joins="row 2",
    pipe=farm.line("row 1").pipe,
    length=30 * ft,
)
ring = alone.with_line(cross_pipe)


def tell(what: str, layout: hydro.Layout) -> None:
    """One row of the table."""
    now = hydro.solve(layout)
    text = f"{what:22}"
    for row in ("row 1", "row 2"):
        pressure = now.line(row).pressure.to(psi)
        text += f"  {pressure[0]:4.1f} {pressure[-1]:4.1f}"
    text += f"  {len(hydro.check(now).below_minimum):10}"
    last = now.lines[-1]
    print(text + (f"  {abs(last.end_flow / gpm):11.1f}" if last.name == "cross pipe" else ""))


sheared = hydro.riser_sheared("row 2", 7)
valve = hydro.valve_part_closed("row 2", 120)
print("                          psi at the ends of   heads that   through the")
print("                         row 1      row 2      stand still  cross pipe, gal/min")
tell("sound, alone", alone)
tell("  in a ring", ring)
tell("riser sheared, alone", alone.with_fault(sheared))
tell("  in a ring", ring.with_fault(sheared))
tell("valve half shut, alone", alone.with_fault(valve))
tell("  in a ring", ring.with_fault(valve))
