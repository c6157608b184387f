"""Heads are added to the end of a row one at a time: how many until there is trouble, and which?"""

from itertools import count

import hydro
from hydro import ft, ft_per_s, gpm, inch, psi

row = hydro.Line(
    name="row 1",
    pipe=hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150),
    outlet=hydro.Outlet(flow=3.5 * gpm, at=25 * psi),
    count=6,
    spacing=36 * ft,
    ground_rise=2 * ft,
)
strip = hydro.Layout(hydro.Supply(pressure=30 * psi), [row])


def troubles(found: hydro.Check) -> list[str]:
    short = [f"Outlet {it.outlet} lacks its {it.rated / psi:.0f} psi." for it in found.below_rated]
    fast = [
        f"The water runs at {it.velocity / ft_per_s:.1f} ft/s, more than the customary 5."
        for it in found.fast_water
    ]
    uneven = [f"Flows differ by {it.flow:.0%}." for it in found.variations if it.too_wide]
    return short + fast + uneven


print("heads  gal/min  psi at the last")
for heads in count(row.outlet_count()):
    solution = hydro.solve(strip.with_line(row.replace(count=heads)))
    last = solution.line("row 1").pressure[-1]
    print(f"{heads:5}  {solution.inflow / gpm:7.1f}  {last / psi:15.1f}")
    if found := troubles(hydro.check(solution)):
        print(f"Head {heads} is one too many.", *found)
        break
