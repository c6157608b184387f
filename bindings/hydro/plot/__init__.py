"""Pictures: pressure along lines, lines seen from above, a pump at work; breaks, chances, faults.

    import hydro.plot                        # needs matplotlib, which nothing else here does
    ax = hydro.plot.pressure_profile(after, "row 2", before=before)
    ax.figure.savefig("row_2.png")

Each function draws on the Axes that it is given, or on those of a new figure, and returns them.
What an outlet does is told by the shape of its mark, so that a picture may be printed in black and
white:

    filled disc           works
    ring                  below its rated pressure
    triangle, point down  below the minimum at which it works
    triangle, point up    above its maximum
    diamond               dry: the pressure does not lift water to it
    bar                   no water: the line is cut or open before it
    square                capped
    upright line          the line is shut on purpose
    cross                 broken
    star                  the line itself is open: a leak, a cut, an open end

Of a line with more than 50 outlets the worst of each stretch is marked.
"""

# The files, from the ground up; each knows only those above it:
#
#   arguments        what all pictures take
#   figures          quantities as numbers and in words
#   line             a line in the units drawn, and what its outlets do
#   paper            sizes, colours and words on the Axes
#   marks, heading   the shapes and their legend; what falls short, in words
#   limits, profile  the pressure along lines
#   course, labels   where a line lies; words that find room
#   plan             lines seen from above
#   pump             where a pump's curve meets what the lines take
#   breaks           what each outlet does when another breaks
#   chances          how likely outlets fall short
#   faults           how likely the fault is at each place

try:
    import matplotlib
except ModuleNotFoundError as missing:
    raise ModuleNotFoundError(
        "hydro.plot needs matplotlib: install the package python3-matplotlib, or matplotlib by pip",
        name=missing.name,
    ) from missing

from .breaks import break_matrix
from .chances import chance_profile
from .faults import fault_strips
from .plan import plan_view
from .profile import pressure_profile
from .pump import pump_curve

__all__ = [
    "break_matrix",
    "chance_profile",
    "fault_strips",
    "plan_view",
    "pressure_profile",
    "pump_curve",
]
