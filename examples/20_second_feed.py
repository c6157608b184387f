"""Does a second feed help? A sheared riser, without and with a cross pipe between two rows' ends."""

from pathlib import Path

import hydro
from hydro import ft, gpm, psi


def still(solution: hydro.Solution) -> int:
    """Heads that stand still."""
    return len(hydro.check(solution).below_minimum)


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
break_it = hydro.riser_sheared("row 2", 7)
one = hydro.solve(alone.with_fault(break_it))
two = hydro.solve(ring.with_fault(break_it))

print("psi       row 1           row 2")
print("outlet  alone  ring     alone  ring")
columns = [it.line(row).pressure.to(psi) for row in ("row 1", "row 2") for it in (one, two)]
for number, (a, b, c, d) in enumerate(zip(*columns), start=1):
    print(f"{number:6}  {a:5.1f} {b:5.1f}     {c:5.1f} {d:5.1f}")
print(f"Heads that stand still: {still(one)} alone, {still(two)} in the ring;", end="")
print(f" before the break {still(hydro.solve(alone))} and {still(hydro.solve(ring))}.")
through = two.line("cross pipe").end_flow / gpm
print(f"Through the cross pipe: {through:.1f} gal/min towards row 2.")
lost = [it.line("row 2").flow[6] / gpm for it in (one, two)]
print(f"Out of the break: {lost[0]:.1f} gal/min alone, {lost[1]:.1f} in the ring.")
