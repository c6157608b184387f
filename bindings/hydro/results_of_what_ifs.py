"""What the answers of what-ifs are in the forms of other libraries."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from typing import Any

    import pandas

    from ._hydro import Chance, Margin, RoomAtCount

from . import _hydro, units
from ._hydro import (
    Breaks,
    Chances,
    FlowSensitivity,
    LongestLine,
    PressureSensitivity,
    Remedies,
    Room,
    SmallestPipe,
    Solution,
    ft,
    gpm,
    lpm,
    psi,
    to_csv,
    unit_set,
    words_of,
)
from .results import _both, _table, to_dict

MOST_ROWS = 30
"""of a table in a notebook"""
SI_UNITS = {
    _hydro.Length: _hydro.m,
    _hydro.Velocity: _hydro.m_per_s,
    _hydro.Pressure: _hydro.Pa,
    _hydro.Flow: _hydro.m3_per_s,
    _hydro.Volume: _hydro.m3,
    _hydro.Power: units.W,
    _hydro.RotationalSpeed: _hydro.rps,
    _hydro.Temperature: units.K,
    _hydro.Time: units.s,
    _hydro.Area: _hydro.m2,
    _hydro.Energy: units.J,
}


def _plain(value: Any) -> Any:
    """What JSON can write: numbers in SI, texts, lists and dicts."""
    if value is None or isinstance(value, (bool, int, float)):
        return value
    if isinstance(value, str):
        return str(value)
    if unit := SI_UNITS.get(type(value)):
        return value.to(unit)
    if hasattr(value, "si"):  # a series or a table
        return value.si.tolist()
    if isinstance(value, Solution):
        return to_dict(value)
    if isinstance(value, (list, tuple)) or hasattr(value, "tolist"):
        return [_plain(element) for element in value]
    if type(value).__name__ in _hydro.__dict__:
        return {
            name: _plain(getattr(value, name))
            for name, member in vars(type(value)).items()
            if isinstance(member, property)
        }
    return repr(value)


def answer_to_dict(self: Any) -> dict[str, Any]:
    """to_dict(self) -> dict[str, Any]

    All that is known, by the names of the members: numbers in SI, words as texts.
    """
    members = _plain(self)
    assert isinstance(members, dict)
    return members


def _frame(rows: Iterable[Mapping[str, Any]]) -> pandas.DataFrame:
    try:
        import pandas
    except ImportError as error:
        raise ImportError(
            "to_dataframe needs pandas, which is not installed (Debian: python3-pandas)"
        ) from error
    return pandas.DataFrame(list(rows))


def breaks_to_dataframe(self: Breaks) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each outlet, with the columns of to_csv: numbers in SI, the unit in the column's
    name. ImportError without pandas.
    """
    try:
        import pandas
    except ImportError as error:
        raise ImportError(
            "to_dataframe needs pandas, which is not installed (Debian: python3-pandas)"
        ) from error
    import io

    return pandas.read_csv(
        io.StringIO(to_csv(self)),
        dtype={name: str for name in ("line", "outcome", "why", "weakest_line")},
        keep_default_na=False,
        na_values={"weakest_outlet": [""]},
        float_precision="round_trip",
    )


def chances_to_dataframe(self: Chances) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each outlet: mean and deviation of pressure [Pa] and flow [m3/s], and chances.
    ImportError without pandas.
    """
    return _frame(
        {
            "line": line.name,
            "outlet": outlet,
            "mean_pressure_pa": line.pressure.mean.si[outlet - 1],
            "deviation_pressure_pa": line.pressure.deviation.si[outlet - 1],
            "mean_flow_m3_per_s": line.flow.mean.si[outlet - 1],
            "deviation_flow_m3_per_s": line.flow.deviation.si[outlet - 1],
            "below_rated": line.below_rated[outlet - 1],
            "below_minimum": line.below_minimum[outlet - 1],
            "above_maximum": line.above_maximum[outlet - 1],
        }
        for line in self.lines
        for outlet in range(1, len(line.below_rated) + 1)
    )


def counts_to_dataframe(self: Room | LongestLine) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each count that was tried: the weakest outlet, pressures [Pa], flow [m3/s], and what
    is left of each limit. ImportError without pandas.
    """
    return _frame(
        {
            "added": count.added,
            "line": count.line,
            "outlet": count.outlet,
            "pressure_pa": _plain(count.pressure),
            "rated_pa": _plain(count.rated),
            "supply_pressure_pa": _plain(count.supply_pressure),
            "inflow_m3_per_s": _plain(count.inflow),
            "fits": count.fits(),
            **{f"{margin.limit}_left": margin.left for margin in count.margins},
        }
        for count in self.counts
    )


def sensitivity_to_dataframe(self: PressureSensitivity | FlowSensitivity) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each input; what it does to the figure in Pa or m3/s, by the share, by the metre and
    by one step. ImportError without pandas.
    """
    unit = "pa" if isinstance(self, PressureSensitivity) else "m3_per_s"
    return _frame(
        {
            "input": str(influence.input),
            "at": influence.at,
            "kind": influence.kind,
            "number": influence.number,
            f"by_share_{unit}": _plain(influence.by_share),
            f"by_metre_{unit}": _plain(influence.by_height),
            f"by_one_step_{unit}": _plain(influence.by_one_step()),
        }
        for influence in self.influences
    )


def remedies_to_dataframe(self: Remedies) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each remedy, in the order of the ranking. ImportError without pandas.
    """
    return _frame(
        {
            "kind": str(remedy.kind),
            "deed": remedy.deed,
            "cures": remedy.cures,
            "cost": remedy.cost,
            "below_rated": remedy.after.below_rated,
            "lowest_share": remedy.after.lowest_share,
            "inflow_m3_per_s": _plain(remedy.after.flow),
        }
        for remedy in self.ranked
    )


def _cut(rows: list[list[str]]) -> list[list[str]]:
    if len(rows) > MOST_ROWS:
        rows[MOST_ROWS // 2 : -MOST_ROWS // 2] = [["..."] * len(rows[0])]
    return rows


def _share(share: float | None) -> str:
    return "" if share is None else f"{100 * share:.0f} %"


def _chance(chance: Chance) -> str:
    """No and every case are told apart from few and most."""
    if chance.times in (0, chance.of):
        return "none" if chance.times == 0 else "all"
    return _in_percent(chance.share())


def _in_percent(share: float) -> str:
    if 0 < share < 0.005:
        return "<1 %"
    return ">99 %" if 0.995 <= share < 1 else f"{100 * share:.0f} %"


def _both_flows(flow: Any) -> str:
    return f"{flow.to(gpm):.1f} gal/min ({flow.to(lpm):.0f} L/min)"


def _html_of_breaks(found: Breaks) -> str:
    names = unit_set(found.before.layout.units)
    rows = [
        [
            it.line,
            str(it.outlet),
            f"{it.escaping.to(names.flow):.1f}",
            f"{it.gauge_reading.to(names.pressure):.1f}",
            str(it.more_below_rated),
            str(it.more_out_of_work),
        ]
        for it in found.breaks
    ]
    columns = [
        "broken on",
        "outlet",
        f"{names.flow} escape",
        f"{names.pressure} at the gauge",
        "others below rated",
        "others out of work",
    ]
    left_out = len(found.skipped) + len(found.not_solved)
    rest = f"<p>{left_out} outlets were not broken.</p>" if left_out else ""
    return _table("", columns, _cut(rows)) + rest


def _html_of_chances(found: Chances) -> str:
    says = (
        f"<p>At least one outlet is below its rated pressure: {_chance(found.any_below_rated)} of "
        f"{found.realisations} cases; below its minimum: {_chance(found.any_below_minimum)}.</p>"
    )
    columns = ["line", "outlet", "mean pressure", "below rated", "below minimum", "above maximum"]
    rows = [
        [
            line.name,
            str(outlet),
            _both(line.pressure.mean[outlet - 1]),
            *(
                _in_percent(chances[outlet - 1]) if line.is_judged[outlet - 1] else "-"
                for chances in (line.below_rated, line.below_minimum, line.above_maximum)
            ),
        ]
        for line in found.lines
        for outlet in range(1, len(line.below_rated) + 1)
    ]
    return says + _table("", columns, _cut(rows))


def _nearest(margins: Sequence[Margin]) -> str:
    if not margins:
        return ""
    nearest = min(margins, key=lambda margin: (not margin.passed, margin.left))
    end = "passed" if nearest.passed else "left"
    return f"{nearest.limit.replace('_', ' ')}: {_share(abs(nearest.left))} {end}"


def _table_of_counts(caption: str, what: str, counts: Iterable[RoomAtCount]) -> str:
    rows = [
        [
            str(count.added),
            f"{count.line}, {count.outlet}" if count.outlet else "",
            _both(count.pressure) if count.outlet else "",
            _both_flows(count.inflow),
            _nearest(count.margins),
        ]
        for count in counts
    ]
    columns = [what, "weakest outlet", "pressure", "flow", "nearest limit"]
    return _table(caption, columns, _cut(rows))


def _html_of_room(room: Room) -> str:
    return _table_of_counts(f"{room.line}: room for {room.outlets} more", "more", room.counts)


def _html_of_longest_line(longest: LongestLine) -> str:
    length = f"{longest.length.to(ft):.0f} ft ({longest.length.to(_hydro.m):.0f} m)"
    caption = f"{longest.line}: {longest.outlets} outlets, {length}"
    return _table_of_counts(caption, "outlets", longest.counts)


def _html_of_sensitivity(found: PressureSensitivity | FlowSensitivity) -> str:
    is_pressure = isinstance(found, PressureSensitivity)
    unit: Any = psi if is_pressure else gpm
    rows = [
        [
            words_of(influence.input),
            influence.at or "the supply",
            influence.kind,
            str(influence.number or ""),
            f"{influence.by_one_step() / unit:+.1f}",
        ]
        for influence in found.influences
    ]
    step = f"{'psi' if is_pressure else 'gal/min'} for 1 % or 0.1 ft (3 cm) more"
    return _table("", ["input", "of", "kind", "number", step], _cut(rows))


def _html_of_remedies(found: Remedies) -> str:
    if not found.ranked:
        return "<p>Nothing falls short, or nothing was found that helps.</p>"
    rows = [
        [
            remedy.deed,
            "yes" if remedy.cures else "no",
            "" if remedy.cost is None else f"{remedy.cost:.2f}",
            str(remedy.after.below_rated),
            _share(remedy.after.lowest_share),
        ]
        for remedy in found.ranked
    ]
    columns = ["what is done", "cures", "cost", "still below rated", "lowest share of rated"]
    return _table("", columns, rows)


def _html_of_smallest_pipe(found: SmallestPipe) -> str:
    rows = [
        [laid.line, f"{laid.start.to(ft):.0f} to {laid.end.to(ft):.0f} ft", laid.pipe.name]
        for laid in found.pipes
    ]
    cost = "" if found.cost is None else f"<p>Cost: {found.cost:.2f}.</p>"
    none = "" if found.found else "<p>No way to lay the lines keeps every limit.</p>"
    return none + _table("", ["line", "from the inlet", "pipe"], rows) + cost


def add_methods() -> None:
    """Makes the functions of this file methods of the compiled classes."""
    for owner, to_frame, html in (
        (Breaks, breaks_to_dataframe, _html_of_breaks),
        (Chances, chances_to_dataframe, _html_of_chances),
        (Room, counts_to_dataframe, _html_of_room),
        (LongestLine, counts_to_dataframe, _html_of_longest_line),
        (PressureSensitivity, sensitivity_to_dataframe, _html_of_sensitivity),
        (FlowSensitivity, sensitivity_to_dataframe, _html_of_sensitivity),
        (Remedies, remedies_to_dataframe, _html_of_remedies),
        (SmallestPipe, None, _html_of_smallest_pipe),
    ):
        setattr(owner, "to_dict", answer_to_dict)
        setattr(owner, "_repr_html_", html)
        if to_frame is not None:
            setattr(owner, "to_dataframe", to_frame)
