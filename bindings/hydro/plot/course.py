"""Where a line lies, seen from above, in the unit drawn; places and directions are (x, y)."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from hydro import InvalidInput, Length, LengthUnit

from .figures import Numbers


class Course:
    def __init__(self, corners: Numbers, length: float) -> None:
        """A line of this length on a polyline that is at least about as long."""
        self.length = length
        self._corners = corners
        self._distances = distances_along(corners)
        self._shrunk = min(1.0, self._distances[-1] / length)
        inside = self._distances < length * self._shrunk
        self.pipe = np.vstack([corners[inside], self.at([length])])

    def at(self, distances: npt.ArrayLike) -> Numbers:
        """Places, one a row, at these distances along the line."""
        along = np.asarray(distances) * self._shrunk
        x, y = self._corners.T
        return np.column_stack(
            [np.interp(along, self._distances, x), np.interp(along, self._distances, y)]
        )

    def along(self, distance: float) -> Numbers:
        """The direction in which the line runs there, the mean of both at a bend; its larger part
        is 1."""
        near = 1e-3 * self.length
        first, last = self.at(np.clip([distance - near, distance + near], 0, self.length))
        step: Numbers = last - first
        return step / (np.abs(step).max() or 1.0)

    def beside(self, distance: float) -> tuple[Numbers, list[Numbers]]:
        """The place, and the directions to the left and to the right of the line there."""
        x, y = self.along(distance)
        return self.at([distance])[0], [np.array([-y, x]), np.array([y, -x])]


def course_of(
    name: str, points: Sequence[tuple[Length, Length]], length: Length, unit: LengthUnit
) -> Course:
    """Of the line of this name and length."""
    where = f"courses[{name!r}]"
    corners = []
    for number, point in enumerate(points, start=1):
        pair = tuple(point) if isinstance(point, (tuple, list)) else (point,)
        if len(pair) != 2 or not all(isinstance(part, Length) for part in pair):
            raise TypeError(
                f"{where}: point {number} is {point!r}, not a pair of Lengths: "
                "write (120 * ft, 30 * ft)"
            )
        corners.append([part.to(unit) for part in pair])
        if not np.isfinite(corners[-1]).all():
            raise InvalidInput(f"{where}: point {number} is {point!r}, must be finite")
    if len(corners) < 2:
        raise InvalidInput(f"{where}: has {len(corners)} points, must have 2 or more")
    needed = length.to(unit)
    given = distances_along(np.array(corners))[-1]
    if given < 0.99 * needed:
        raise InvalidInput(
            f"{where}: is {given:.1f} {unit} long, too short for the line: from its inlet to its "
            f"far end it is {needed:.1f} {unit}"
        )
    return Course(np.array(corners), needed)


def distances_along(corners: Numbers) -> Numbers:
    steps = np.hypot(*np.diff(corners, axis=0).T)
    return np.concatenate([[0.0], np.cumsum(steps)])
