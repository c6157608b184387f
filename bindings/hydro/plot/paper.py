"""The Axes as a sheet of paper: its size, its colours, words on it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np
from matplotlib import pyplot
from matplotlib.axes import Axes
from matplotlib.font_manager import FontProperties

from .figures import Numbers

HUE = "#14558f"  # the only one, dark enough for black and white
GREY = "#555555"


def new_axes(height: float) -> Axes:
    """Of this height [inch]."""
    return pyplot.subplots(figsize=(8, height), layout="constrained")[1]


def size_of(ax: Axes) -> tuple[float, float]:
    """Width and height [pt], before what stands around the Axes has been given room."""
    box = ax.get_window_extent()
    return box.width * 72 / ax.figure.dpi, box.height * 72 / ax.figure.dpi


def font_size(name: str = "small") -> float:
    """In [pt]."""
    return float(FontProperties(size=name).get_size_in_points())


def write(
    ax: Axes, words: str, place: Iterable[float], offset: Iterable[float], **style: Any
) -> None:
    """Words at an offset [pt] from a place. They are no formulas: a $ in a name is a dollar."""
    usual = {"fontsize": "small", "va": "center", "color": GREY, "parse_math": False}
    where = {"textcoords": "offset points", "annotation_clip": False}
    ax.annotate(words, tuple(place), tuple(offset), **{**where, **usual, **style})


def offsets_apart(ax: Axes, heights: Sequence[float], gap: float) -> Numbers:
    """How far up [pt] to write beside these heights, for words at least a gap [pt] apart."""
    bottom, top = ax.get_ylim()
    per_point = (top - bottom) / (0.75 * size_of(ax)[1])  # what stands around takes a quarter
    wanted: Numbers = np.asarray(heights, dtype=float) / per_point
    return apart(wanted, gap) - wanted


def apart(wanted: Numbers, gap: float) -> Numbers:
    """Heights as near to the wanted ones as may be, each at least a gap from the next."""
    order = np.argsort(wanted, kind="stable")
    gaps = gap * np.arange(len(wanted))
    # Heights less the gaps below them must not fall: those that would, share their mean.
    pools: list[list[float]] = []
    for height in wanted[order] - gaps:
        pools.append([height])
        while len(pools) > 1 and np.mean(pools[-2]) > np.mean(pools[-1]):
            pools[-2:] = [pools[-2] + pools[-1]]
    heights = np.empty(len(wanted))
    heights[order] = [np.mean(pool) for pool in pools for _ in pool] + gaps
    return heights
