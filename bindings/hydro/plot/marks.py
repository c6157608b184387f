"""The shapes that tell what outlets do, and their legend."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.transforms import ScaledTranslation

from .figures import Numbers
from .line import RANK, DrawnLine
from .paper import HUE, font_size, size_of


@dataclass(frozen=True)
class Mark:
    marker: str
    filled: bool = False
    size: float = 7  # [pt]

    def style(self, scale: float = 1) -> dict[str, Any]:
        """Arguments for Axes.plot and Line2D."""
        return {
            "linestyle": "none",
            "marker": self.marker,
            "markersize": scale * self.size,
            "color": HUE,
            "markerfacecolor": HUE if self.filled else "white",
            "markeredgewidth": {"x": 2, "_": 3.5}.get(self.marker, 1.3),
        }


MARKS = {
    "broken": Mark("x", size=8),
    "capped": Mark("s", size=6.5),
    "no water": Mark("_", size=9),
    "dry": Mark("D", size=6.5),
    "below minimum": Mark("v", size=8),
    "below rated": Mark("o"),
    "above maximum": Mark("^", filled=True, size=8),
    "shut": Mark("|", size=8),
    "works": Mark("o", filled=True),
}
OPENING = Mark("*", filled=True, size=15)  # seen around an outlet at the same place


def draw_marks(ax: Axes, line: DrawnLine, x: Numbers, y: Numbers) -> None:
    """At the place (x, y) of each outlet that has one."""
    for doing, those in line.marked().items():
        ax.plot(
            x[those],
            y[those],
            label=f"{line.name}: {doing}",
            zorder=5 - RANK[doing] / len(RANK),  # the worst on top
            clip_on=False,
            **MARKS[doing].style(scale=1 if len(line.doing) <= 24 else 0.8),
        )


def draw_legend(
    ax: Axes, lines: Sequence[DrawnLine], curves: Sequence[dict[str, Any]] = ()
) -> None:
    """Below the Axes: the shapes that occur, the good first, then from the worst on; then curves
    of these styles."""
    marked = {doing for line in lines for doing in line.marked()}
    styles = [
        {"label": doing, **MARKS[doing].style()}
        for doing in sorted(marked, key=lambda it: -1 if it == "works" else RANK[it])
    ]
    if any(line.openings for line in lines):
        styles.append({"label": "line open", **OPENING.style(scale=0.75)})
    handles = [Line2D([], [], **style) for style in (*styles, *curves)]
    if not handles:
        return
    below = ScaledTranslation(0, -(24 + 1.5 * font_size("medium")) / 72, ax.figure.dpi_scale_trans)
    ax.legend(
        handles=handles,
        loc="upper left",
        bbox_to_anchor=(0, 0),
        bbox_transform=ax.transAxes + below,
        ncol=max(1, min(len(handles), int(size_of(ax)[0] / 95))),
        fontsize="small",
        frameon=False,
        borderaxespad=0,
        borderpad=0,
        handletextpad=0.4,
        columnspacing=1.4,
    )
