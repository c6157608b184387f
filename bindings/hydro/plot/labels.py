"""Words on a plan, none upon a mark or upon others; what finds no room is left out."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from matplotlib.axes import Axes

from .figures import Numbers
from .paper import font_size, write


class Labels:
    def __init__(self, ax: Axes, marks: Numbers) -> None:
        """marks: their places, one a row."""
        ax.apply_aspect()
        self._ax = ax
        self._marks = self._on_paper(marks)
        self._taken: list[tuple[Numbers, Numbers]] = []  # middles and half sizes [pt]

    def _on_paper(self, places: Numbers) -> Numbers:
        pixels: Numbers = self._ax.transData.transform(places)
        return pixels * (72 / float(self._ax.figure.dpi))

    def add(self, words: str, place: Numbers, directions: Iterable[Numbers], color: str) -> None:
        """In the first of these directions from the place in which there is room."""
        half = np.array([0.3 * len(words) + 0.2, 0.6]) * font_size()
        for direction in directions:
            offset = direction * (7 + half)
            middle = self._on_paper(place) + offset
            on_mark = (np.abs(self._marks - middle) < half + 3).all(axis=1).any()
            on_words = any((np.abs(at - middle) < half + size).all() for at, size in self._taken)
            if not on_mark and not on_words:
                self._taken.append((middle, half))
                write(self._ax, words, place, offset, ha="center", color=color)
                return
