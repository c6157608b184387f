"""What the answers of finding the fault are in the forms of other libraries."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    import pandas

from ._hydro import Calibration, Drift, FoundFaults, MakeRight, NextReadings, Pa
from .results_of_what_ifs import _frame, answer_to_dict


def faults_to_dataframe(self: FoundFaults) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each candidate, most probable first. ImportError without pandas.
    """
    return _frame(
        {
            "kind": str(fault.candidate.kind),
            "line": fault.candidate.line,
            "outlet": fault.candidate.outlet,
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


def add_methods() -> None:
    """Makes the functions of this file methods of the compiled classes."""
    for owner in (Calibration, Drift, FoundFaults, MakeRight, NextReadings):
        setattr(owner, "to_dict", answer_to_dict)
    setattr(FoundFaults, "to_dataframe", faults_to_dataframe)
    setattr(Calibration, "to_dataframe", learnt_to_dataframe)
