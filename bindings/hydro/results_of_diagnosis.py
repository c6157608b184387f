"""What the answers of finding the fault are in the forms of other libraries."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    import pandas

from ._hydro import (
    Calibration,
    Drift,
    FoundFaults,
    MakeRight,
    NextReadings,
    Pa,
    m,
    m3_per_s,
    rps,
)
from .results import _table
from .results_of_what_ifs import _frame, _in_percent, answer_to_dict
from .units import s


def faults_to_dataframe(self: FoundFaults) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each candidate, most probable first. ImportError without pandas.
    """
    return _frame(
        {
            "kind": str(fault.candidate.kind),
            "line": fault.candidate.line,
            "outlet": fault.candidate.outlet,
            "place_m": None if fault.candidate.place is None else fault.candidate.place.to(m),
            "gauge": fault.candidate.gauge,
            "probability": fault.probability,
            "log_evidence": fault.log_evidence,
            "misfit": fault.misfit,
        }
        for fault in self.faults
    )


def learnt_to_dataframe(self: Calibration) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each input that can be learnt: shares of the value, of pressures [Pa]. ImportError
    without pandas.
    """
    return _frame(
        {
            "kind": str(learnt.kind),
            "of": learnt.of,
            "before": learnt.before,
            "after": learnt.after,
            "factor": learnt.factor,
            "deviation": learnt.deviation,
            "more_pa": None if learnt.more is None else learnt.more.to(Pa),
            "more_deviation_pa": (
                None if learnt.more_deviation is None else learnt.more_deviation.to(Pa)
            ),
            "learnt": learnt.learnt,
        }
        for learnt in self.learnt
    )


def next_to_dataframe(self: NextReadings) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each reading or look that could be taken, best first. ImportError without pandas.
    """
    return _frame(
        {
            "place": "look" if possible.reading is None else str(possible.reading.place),
            "line": where.line,
            "outlet": where.outlet or None,
            "information_bit": possible.information,
            "time_s": possible.time.to(s),
            "worth_bit": possible.worth,
        }
        for possible in self.readings
        for where in (possible.reading or possible.look,)
        if where is not None
    )


def ways_to_dataframe(self: MakeRight) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each way; extra_s is the longest time that a line has to run on. ImportError without
    pandas.
    """
    return _frame(
        {
            "deed": str(way.deed),
            "best": number == self.best,
            "below_rated": len(way.below_rated),
            "out_of_work": len(way.out_of_work),
            "escaping_m3_per_s": way.escaping.to(m3_per_s),
            "extra_s": max((extra.time.to(s) for extra in way.extra), default=0.0),
        }
        for number, way in enumerate(self.ways)
    )


def drift_to_dataframe(self: Drift) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each place, in SI, the unit in the column's name; alarm and since are indices of
    days. ImportError without pandas.
    """
    units = {"pressure": (Pa, "pa"), "flow": (m3_per_s, "m3_per_s"), "speed": (rps, "r_per_s")}
    return _frame(
        {
            "place": str(its.place.place),
            "line": its.place.line,
            "outlet": its.place.outlet or None,
            **{
                f"{name}_{ending}": None if value is None else value.to(unit)
                for kind, (unit, ending) in units.items()
                for name in (f"normal_{kind}", f"last_{kind}")
                for value in (getattr(its, name),)
            },
            "trend": its.trend,
            "alarm": its.alarm,
            "since": its.since,
        }
        for its in self.places
    )


def _html_of_faults(found: FoundFaults) -> str:
    rows = []
    for walk in found.walk:
        outlets = "" if walk.first is None else f"{walk.first} to {walk.last}"
        if walk.first is not None and walk.first == walk.last:
            outlets = str(walk.first)
        share = ">99 %" if walk.probability > 0.99 else _in_percent(walk.probability)
        rows.append([str(walk.kind), walk.line or "the supply", outlets, share])
    told = "" if found.explained else "<p>No single fault explains these readings.</p>"
    return told + _table("", ["what", "where", "outlets", "how likely"], rows)


def add_methods() -> None:
    """Makes the functions of this file methods of the compiled classes."""
    for owner, to_frame in (
        (Calibration, learnt_to_dataframe),
        (Drift, drift_to_dataframe),
        (FoundFaults, faults_to_dataframe),
        (MakeRight, ways_to_dataframe),
        (NextReadings, next_to_dataframe),
    ):
        setattr(owner, "to_dict", answer_to_dict)
        setattr(owner, "to_dataframe", to_frame)
    setattr(FoundFaults, "_repr_html_", _html_of_faults)
