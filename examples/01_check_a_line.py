"""Which outlets of a row get less pressure than they are made for?"""

import hydro
from hydro import ft, gpm, inch, psi

lateral = hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
spray = hydro.Outlet(flow=1.2 * gpm, at=30 * psi, minimum=20 * psi)
row = hydro.Line(
    name="row 1", pipe=lateral, outlet=spray, count=24, spacing=20 * ft, ground_rise=6 * ft
)

solution = hydro.solve(hydro.Layout(hydro.Supply(pressure=34 * psi), [row]))
print(f"The row takes {solution.inflow / gpm:.1f} gal/min.")
for it in hydro.check(solution).below_rated:
    print(f"Outlet {it.outlet} has {it.pressure / psi:.1f} of its {it.rated / psi:.0f} psi.")
