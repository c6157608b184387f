"""What the answers of the watering day are in the forms of other libraries."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    from typing import Any

    import pandas

from ._hydro import (
    Application,
    DayPlan,
    Length,
    LineSurge,
    MissedWater,
    RunTime,
    SoilWaterDay,
    WaterNeed,
    m,
    to_csv,
)
from .results_of_what_ifs import _frame, answer_to_dict


def _row_of_account(day: int, entry: SoilWaterDay) -> dict[str, Any]:
    row: dict[str, Any] = {"day": day}
    for name, member in vars(SoilWaterDay).items():
        if isinstance(member, property):
            value = getattr(entry, name)
            is_depth = isinstance(value, Length)
            row[f"{name}_m" if is_depth else name] = value.to(m) if is_depth else value
    return row


def account_to_dataframe(self: WaterNeed) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each day of the account: day 0 is today, -1 yesterday. Depths are in metres, as the
    columns' names say. ImportError without pandas.
    """
    return _frame(
        _row_of_account(day, entry)
        for day, entry in enumerate([*self.days, self.today], start=-len(self.days))
    )


def plan_to_dataframe(self: DayPlan) -> pandas.DataFrame:
    """to_dataframe(self) -> pandas.DataFrame

    One row for each turn, with the columns of to_csv: numbers in SI, the unit in the column's
    name; NaN where something is not known. ImportError without pandas.
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
        dtype={"sets": str},
        keep_default_na=False,
        na_values={
            name: [""] for name in ("speed_r_per_s", "gauge_reading_pa", "shaft_energy_j")
        },
        float_precision="round_trip",
    )


def add_methods() -> None:
    """Makes the functions of this file methods of the compiled classes."""
    for owner in (Application, DayPlan, LineSurge, MissedWater, RunTime, WaterNeed):
        setattr(owner, "to_dict", answer_to_dict)
    setattr(WaterNeed, "to_dataframe", account_to_dataframe)
    setattr(DayPlan, "to_dataframe", plan_to_dataframe)
