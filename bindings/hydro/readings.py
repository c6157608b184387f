"""What was read and seen on a walk, from tables: dicts, data frames, CSV files."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    import os
    from collections.abc import Iterable, Mapping
    from typing import Any

    import pandas

from ._hydro import Flow, Pressure, Reading, Readings, RotationalSpeed, Sight, Time, Volume
from .errors import InvalidInput

QUANTITIES: dict[str, Any] = {
    "pressure": Pressure,
    "flow": Flow,
    "speed": RotationalSpeed,
    "volume": Volume,
    "time": Time,
    "pressure_error": Pressure,
    "time_error": Time,
    "width": Pressure,
}
NUMBERS = ("flow_error", "speed_error", "doubt")
OUTLETS = ("outlet", "to_outlet")
WORDS = ("place", "seen", "line", "gauge")
OF_READING = (
    "place",
    "line",
    "outlet",
    "pressure",
    "flow",
    "speed",
    "volume",
    "time",
    "pressure_error",
    "flow_error",
    "time_error",
    "speed_error",
    "gauge",
)
OF_SIGHT = ("seen", "line", "outlet", "to_outlet", "width", "doubt")


def readings_from_table(
    table: (
        str
        | os.PathLike[str]
        | Mapping[str, Iterable[Any]]
        | Iterable[Mapping[str, Any]]
        | pandas.DataFrame
    ),
) -> Readings:
    """Readings and sights, one a row of a CSV file, a data frame, a dict of columns or rows.

    The columns are the keys of [[reading]] and [[sight]]; a row that has `seen` is a sight. A cell
    is a quantity, a text with its unit, "33.5 psi", or a number where the column names its unit,
    "pressure [psi]". Empty cells, None and NaN are not given. InvalidInput with every mistake, each
    with row and column; rows count from 1, without the heading.

    >>> rows = [{"place": "supply gauge", "pressure": "33.5 psi"},
    ...         {"seen": "turning", "line": "row 1", "outlet": 1, "to_outlet": 10}]
    >>> readings_from_table(rows).readings
    (Reading(pressure=33.5 * psi),)
    """
    readings: list[Reading] = []
    sights: list[Sight] = []
    mistakes: list[str] = []
    for number, row in enumerate(_rows(table), start=1):
        cells = {str(column): cell for column, cell in row.items() if not _is_empty(cell)}
        if not cells:
            continue
        is_sight = "seen" in cells
        fields = {}
        for column, cell in cells.items():
            try:
                name, value = _field(column, cell, OF_SIGHT if is_sight else OF_READING)
                fields[name] = value
            except (TypeError, ValueError) as error:
                mistakes.append(f'row {number}, column "{column}": {error}')
        if not is_sight and "place" not in cells:
            mistakes.append(f'row {number}: has neither "place" nor "seen"; one tells what it is')
        elif len(fields) == len(cells):
            try:
                if is_sight:
                    sights.append(Sight(**fields))
                else:
                    readings.append(Reading(**fields))
            except (TypeError, ValueError) as error:
                mistakes.append(f"row {number}: {error}")
    if mistakes:
        raise InvalidInput("\n".join(mistakes))
    return Readings(readings=readings, sights=sights)


def _rows(table: Any) -> Iterable[Mapping[str, Any]]:
    if isinstance(table, str) or hasattr(table, "__fspath__"):
        import csv

        with open(table, encoding="utf-8-sig", newline="") as file:
            return [_whole(row) for row in csv.DictReader(file, skipinitialspace=True)]
    if hasattr(table, "to_dict") and hasattr(table, "columns"):
        rows: list[Mapping[str, Any]] = table.to_dict(orient="records")
        return rows
    if hasattr(table, "items"):
        columns = {name: list(cells) for name, cells in table.items()}
        lengths = {name: len(cells) for name, cells in columns.items()}
        if len(set(lengths.values())) > 1:
            raise InvalidInput(f"columns: are of unequal length, {lengths}")
        return [dict(zip(columns, cells)) for cells in zip(*columns.values())]
    return list(table)


def _whole(row: dict[Any, Any]) -> dict[str, Any]:
    if None in row:
        raise InvalidInput(f"a row has more cells than there are columns: {row[None]}")
    return row


def _is_empty(cell: Any) -> bool:
    if cell is None or (isinstance(cell, str) and not cell.strip()):
        return True
    return isinstance(cell, float) and cell != cell  # NaN


def _field(column: str, cell: Any, accepted: tuple[str, ...]) -> tuple[str, Any]:
    """The name of a field, and its value from a cell."""
    name, bracket, unit = (part.strip() for part in column.partition("["))
    if name not in accepted:
        raise ValueError(f"is not known here; accepted are {', '.join(accepted)}")
    if name in WORDS:
        return name, str(cell).strip()
    if name in OUTLETS:
        number = float(cell)
        if not number.is_integer():
            raise ValueError(f"is {cell}, must be a whole number")
        return name, int(number)
    if name in NUMBERS:
        return name, float(cell)
    kind = QUANTITIES[name]
    if isinstance(cell, kind):
        return name, cell
    if bracket:
        return name, kind(f"{float(cell)!r} {unit.removesuffix(']').strip()}")
    if not isinstance(cell, str):
        raise ValueError(
            f"is {cell}, a bare number; write a text with its unit, or the unit in brackets behind "
            f'the column\'s name, "{name} [...]"'
        )
    return name, kind(cell)
