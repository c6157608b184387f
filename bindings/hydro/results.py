"""What solutions are in the forms of other libraries: dicts, data frames, tables of a notebook."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from typing import Any

    import pandas

    from ._hydro import (
        AboveMaximum,
        BelowMinimum,
        BelowRated,
        OperatingPoint,
        Pressure,
        UnitSet,
    )

from ._hydro import (
    Check,
    Comparison,
    Layout,
    LineSolution,
    Solution,
    gpm,
    kPa,
    lpm,
    psi,
    to_csv,
    to_json,
    unit_set,
)

MOST_ROWS = 60
"""of a table; of a longer line the ends are shown"""


def to_dict(self: Solution, before: Solution | None = None) -> dict[str, Any]:
    """to_dict(self, before: Solution | None = None) -> dict[str, Any]

    All that is known, with the members of to_json: numbers in SI, lists with one entry an outlet.
    before: the same layout without its faults, to be compared with.

    >>> row = Line(name="main", pipe=nominal_pipe("3 in", "PVC Sch 40"), length=100 * m)
    >>> solve(Layout(Supply(pressure=3 * bar), [row])).to_dict()["supply"]["pressure"]
    300000.0
    """
    import json

    text = to_json(self) if before is None else to_json(before, self)
    members: dict[str, Any] = json.loads(text)
    return members


def to_dataframe(self: Solution, before: Solution | None = None) -> pandas.DataFrame:
    """to_dataframe(self, before: Solution | None = None) -> pandas.DataFrame

    One row an outlet, with the columns of to_csv: numbers in SI, the unit in the column's name.
    before: the same layout without its faults, in columns of its own. ImportError without pandas.
    """
    try:
        import pandas
    except ImportError as error:
        raise ImportError(
            "to_dataframe needs pandas, which is not installed (Debian: python3-pandas)"
        ) from error
    import io

    text = to_csv(self) if before is None else to_csv(before, self)
    texts = ["line", "kind", "state", "before_state"]
    return pandas.read_csv(
        io.StringIO(text),
        dtype={name: str for name in texts},
        keep_default_na=False,
        float_precision="round_trip",
    )


def _table(caption: str, columns: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    from html import escape

    def row(cells: Iterable[str], kind: str) -> str:
        return "<tr>" + "".join(f"<{kind}>{escape(cell)}</{kind}>" for cell in cells) + "</tr>"

    body = "".join(row(cells, "td") for cells in rows)
    return (
        f"<table><caption>{escape(caption)}</caption>"
        f"<thead>{row(columns, 'th')}</thead><tbody>{body}</tbody></table>"
    )


def _rows_of_line(line: LineSolution, states: Sequence[str], units: UnitSet) -> list[list[str]]:
    columns = [
        [f"{number:.1f}" for number in series]
        for series in (
            line.distance.to(units.length),
            line.pressure.to(units.pressure),
            line.flow.to(units.flow),
        )
    ]
    rows = [
        [str(outlet), *figures, state.replace("_", " ")]
        for outlet, (*figures, state) in enumerate(zip(*columns, states), start=1)
    ]
    if len(rows) > MOST_ROWS:
        rows[MOST_ROWS // 2 : -MOST_ROWS // 2] = [["..."] * len(rows[0])]
    return rows


def _table_of_line(line: LineSolution, states: Sequence[str], units: UnitSet) -> str:
    columns = [
        "outlet",
        f"at {units.length}",
        str(units.pressure),
        str(units.flow),
        "what it does",
    ]
    return _table(line.name, columns, _rows_of_line(line, states, units))


def _html_of_line_solution(line: LineSolution) -> str:
    return _table_of_line(line, line.state, unit_set("si"))


def _html_of_solution(solution: Solution) -> str:
    units = unit_set(solution.layout.units)
    states = [line["state"] for line in to_dict(solution)["lines"]]
    summary = "" if solution.residuals.are_met() else "<p>NOT SOLVED: no answer.</p>"
    summary += _sentence_on("the supply", solution.supply, units)
    further = zip(solution.layout.further_supplies, solution.further_supplies)
    summary += "".join(_sentence_on(supply.name, point, units) for supply, point in further)
    return summary + "".join(
        _table_of_line(line, of_line, units)
        for line, of_line in zip(solution.lines, states)
        if of_line
    )


def _sentence_on(name: str, point: OperatingPoint, units: UnitSet) -> str:
    from html import escape

    flow, pressure = point.flow.to(units.flow), point.pressure.to(units.pressure)
    way = "Into" if flow < 0 else "Out of"
    shut = ", held shut by the other supplies" if point.held_shut else ""
    return (
        f"<p>{way} {escape(name)}: {abs(flow):.1f} {units.flow} at "
        f"{pressure:.1f} {units.pressure}{shut}.</p>"
    )


def _both(pressure: Pressure) -> str:
    """For what does not know the units of its readers."""
    return f"{pressure.to(psi):.1f} psi ({pressure.to(kPa):.0f} kPa)"


def _table_of_findings(
    below_rated: Iterable[BelowRated],
    below_minimum: Iterable[BelowMinimum],
    above_maximum: Iterable[AboveMaximum] = (),
) -> str:
    rows = [
        (short.line, short.outlet, "below rated", short.pressure, short.rated)
        for short in below_rated
    ]
    rows += [
        (low.line, low.outlet, "below minimum", low.pressure, low.minimum) for low in below_minimum
    ]
    rows += [
        (high.line, high.outlet, "above maximum", high.pressure, high.maximum)
        for high in above_maximum
    ]
    columns = ["line", "outlet", "is", "pressure", "judged by"]
    cells = [
        [line, str(outlet), what, _both(pressure), _both(limit)]
        for line, outlet, what, pressure, limit in rows
    ]
    return _table("", columns, cells) if rows else ""


def _html_of_check(found: Check) -> str:
    table = _table_of_findings(found.below_rated, found.below_minimum, found.above_maximum)
    return table or "<p>Every outlet has the pressure that it needs.</p>"


def _html_of_comparison(change: Comparison) -> str:
    flows = (
        f"<p>{change.escaping.to(gpm):.1f} gal/min ({change.escaping.to(lpm):.0f} L/min) more "
        f"escape; the other outlets miss {change.missing.to(gpm):.1f} gal/min "
        f"({change.missing.to(lpm):.0f} L/min).</p>"
    )
    table = _table_of_findings(change.newly_below_rated, change.newly_below_minimum)
    return flows + (table or "<p>No other outlet falls below its pressures.</p>")


def _html_of_layout(layout: Layout) -> str:
    from html import escape

    units = unit_set(layout.units)
    any_joins = any(line.joins for line in layout.lines)
    rows = [
        [
            line.name,
            line.fed_by or "the supply",
            *([line.joins] if any_joins else []),
            line.pipe.name or f"{line.pipe.inside_diameter.to(units.bore):.3g} {units.bore}",
            f"{line.whole_length().to(units.length):.1f}",
            str(line.outlet_count()),
        ]
        for line in layout.lines
    ]
    joins = ["joins"] if any_joins else []
    columns = ["line", "fed by", *joins, "pipe", f"length {units.length}", "outlets"]
    faults = "".join(f"<p>{escape(repr(fault))}</p>" for fault in layout.faults)
    return _table(layout.site.name, columns, rows) + faults


def add_methods() -> None:
    """Makes the functions of this file methods of the compiled classes."""
    for owner, name, function in (
        (Solution, "to_dict", to_dict),
        (Solution, "to_dataframe", to_dataframe),
        (Solution, "_repr_html_", _html_of_solution),
        (LineSolution, "_repr_html_", _html_of_line_solution),
        (Check, "_repr_html_", _html_of_check),
        (Comparison, "_repr_html_", _html_of_comparison),
        (Layout, "_repr_html_", _html_of_layout),
    ):
        setattr(owner, name, function)
