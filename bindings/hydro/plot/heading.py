"""What falls short, in words above a picture."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from matplotlib.axes import Axes

from hydro import UnitSet

from .figures import KEPT, flow_in_words, length_in_words
from .line import MOST_MARKS, WORST_FIRST, DrawnLine
from .paper import font_size, size_of

MOST_SENTENCES = 6  # one a line
MOST_NUMBERS = 6  # of outlets, or of their runs, that do the same


def draw_heading(ax: Axes, title: str, lines: Sequence[DrawnLine], units: UnitSet) -> None:
    found = [(line.name, words) for line in lines if (words := findings(line, units))]
    sentences = [it if name == title else f"{name}: {it}" for name, it in found[:MOST_SENTENCES]]
    if len(found) > MOST_SENTENCES:
        sentences.append(f"and on {len(found) - MOST_SENTENCES} more")
    if not found and any(line.doing for line in lines):
        sentences.append("every outlet has its rated pressure")
    if any(len(line.doing) > MOST_MARKS for line in lines):
        sentences.append("(of each stretch of outlets the worst is marked)")
    columns = max(20, int(size_of(ax)[0] / (0.52 * font_size("medium"))))
    rows = [title, *(row for it in sentences for row in textwrap.wrap(it, columns))]
    words = "\n".join(filter(None, rows)).replace(KEPT, " ")
    # The middle title, moved to the left: the caller's own set_title takes its place.
    ax.set_title(words, x=0, ha="left", fontsize="medium", parse_math=False)


def findings(line: DrawnLine, units: UnitSet) -> str:
    """What is wrong on a line; empty when nothing is."""
    parts = []
    for doing in WORST_FIRST:
        runs = [(first, last) for what, first, last in line.runs() if what == doing]
        if runs and doing == "shut":
            parts.append("shut")
        elif runs and doing != "works":
            parts.append(f"{numbers_in_words(runs)} {doing}")
        if runs and doing == "broken":
            parts[-1] += f" ({flow_in_words(line.escaping, units.flow)} escapes)"
    for opening in line.openings:
        place = length_in_words(opening.distance, units.length)
        flow = flow_in_words(opening.flow, units.flow)
        parts.append(f"{opening.kind} at {place} ({flow} escapes)")
    return "; ".join(parts)


def numbers_in_words(runs: Sequence[tuple[int, int]]) -> str:
    """`outlets 3 to 10, 12`; of very many the first."""
    parts: list[str] = []
    for first, last in runs:
        if last > first + 1:
            parts.append(f"{first}{KEPT}to{KEPT}{last}")
        else:
            parts += [str(number) for number in sorted({first, last})]
    if len(parts) > MOST_NUMBERS:
        parts[MOST_NUMBERS - 1 :] = ["..."]
    return ("outlets " if runs[-1][1] > runs[0][0] else "outlet ") + ", ".join(parts)
