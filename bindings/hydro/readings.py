"""What was read and seen on a walk, from tables: dicts, data frames, CSV files."""

from __future__ import annotations

from numbers import Real

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
        | Mapping[str, Any]
        | Iterable[Mapping[str, Any]]
        | pandas.DataFrame
    ),
) -> Readings:
    """Readings and sights, one a row of a CSV file, a data frame, a dict of columns or rows.

    The columns are the keys of [[reading]] and [[sight]]; a row that has `seen` is a sight. A cell
    is a quantity, a text with its unit, "33.5 psi", or a number where the column names its unit,
    "pressure [psi]". Empty cells, None and NaN are not given. A dict of cells is one row.
    InvalidInput with every mistake, each with row, column and what is accepted; rows count from 1,
    without the heading.

    >>> rows = [{"place": "supply gauge", "pressure": "33.5 psi"},
    ...         {"seen": "turning", "line": "row 1", "outlet": 1, "to_outlet": 10}]
    >>> readings_from_table(rows).readings
    (Reading(pressure=33.5 * psi),)
    """
    readings: list[Reading] = []
    sights: list[Sight] = []
    mistakes: list[str] = []
    for number, row in enumerate(_rows(table), start=1):
        if not hasattr(row, "items"):
            kind = type(row).__name__
            raise TypeError(f"table: row {number} is a {kind}, not a dict of columns and cells")
        cells = {str(column): cell for column, cell in row.items() if not _is_empty(cell)}
        if not cells:
            continue
        is_sight = "seen" in cells
        fields = {}
        for column, cell in cells.items():
            try:
                name, value = _field(column, cell, OF_SIGHT if is_sight else OF_READING)
                if name in fields:
                    raise ValueError(f"{name} is given twice, in two columns")
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
        return _rows_of_file(table)
    if hasattr(table, "to_dict") and hasattr(table, "columns"):
        _expect_different(table.columns)
        known = table.astype(object).where(table.notna(), None)
        rows: list[Mapping[str, Any]] = known.to_dict(orient="records")
        return rows
    if hasattr(table, "items"):
        if not any(_is_column(cells) for cells in table.values()):
            return [table]
        single = [name for name, cells in table.items() if not _is_column(cells)]
        if single:
            raise InvalidInput(f"columns: {single} have one cell, and others are lists of them")
        columns = {name: list(cells) for name, cells in table.items()}
        lengths = {name: len(cells) for name, cells in columns.items()}
        if len(set(lengths.values())) > 1:
            raise InvalidInput(f"columns: are of unequal length, {lengths}")
        return [dict(zip(columns, cells)) for cells in zip(*columns.values())]
    if not hasattr(table, "__iter__"):
        raise TypeError(
            f"table: is a {type(table).__name__}, not a CSV file, a data frame, a dict of columns "
            "or rows"
        )
    return list(table)


def _rows_of_file(path: str | os.PathLike[str]) -> list[Mapping[str, Any]]:
    import csv

    with open(path, encoding="utf-8-sig", newline="") as file:
        reader = csv.DictReader(file, skipinitialspace=True)
        _expect_different(reader.fieldnames or ())
        return [_whole(row) for row in reader]


def _expect_different(names: Iterable[Any]) -> None:
    names = [str(name).strip() for name in names]
    if twice := sorted({name for name in names if names.count(name) > 1}):
        raise InvalidInput(f"columns: {', '.join(twice)} is there more than once")


def _is_column(cells: Any) -> bool:
    return hasattr(cells, "__iter__") and not isinstance(cells, str)


def _whole(row: dict[Any, Any]) -> dict[str, Any]:
    if None in row:
        raise InvalidInput(f"a row has more cells than there are columns: {row[None]}")
    return row


def _is_empty(cell: Any) -> bool:
    if cell is None or (isinstance(cell, str) and not cell.strip()):
        return True
    return isinstance(cell, Real) and bool(cell != cell)  # NaN


def _field(column: str, cell: Any, accepted: tuple[str, ...]) -> tuple[str, Any]:
    """The name of a field, and its value from a cell."""
    name, bracket, unit = (part.strip() for part in column.partition("["))
    if name not in accepted:
        raise ValueError(f"is not known here; accepted are {', '.join(accepted)}")
    if bracket and name not in QUANTITIES:
        raise ValueError(f"has no unit; write {name} without brackets")
    if name in WORDS:
        return name, str(cell).strip()
    if name in OUTLETS:
        number = _number(cell, "must be a whole number")
        if not number.is_integer():
            raise ValueError(f"is {cell}, must be a whole number")
        return name, int(number)
    if name in NUMBERS:
        return name, _number(cell, "must be a number, a share such as 0.02 for 2 %")
    kind = QUANTITIES[name]
    if isinstance(cell, kind):
        return name, cell
    if bracket:
        unit = unit.removesuffix("]").strip()
        number = _number(cell, f"must be a number of {unit}, since the column has that unit")
        return name, kind(f"{number!r} {unit}")
    if isinstance(cell, Real):
        raise ValueError(
            f"is {cell}, a bare number; write a text with its unit, or the unit in brackets "
            f'behind the column\'s name, "{name} [...]"'
        )
    return name, kind(cell.strip() if isinstance(cell, str) else cell)


def _number(cell: Any, accepted: str) -> float:
    try:
        return float(cell)
    except (TypeError, ValueError):
        raise ValueError(f"is {cell!r}, {accepted}") from None
