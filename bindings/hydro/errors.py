"""What is raised when an input cannot be accepted, or a layout not be solved."""

from __future__ import annotations

TYPE_CHECKING = False  # as in typing, which takes long to import
if TYPE_CHECKING:
    from ._hydro import Problem, Solution


class InvalidInput(ValueError):
    """An input cannot be accepted. The text has every mistake, one a line.

    `problems` has them one by one, each with its place, key and message.
    """

    __module__ = "hydro"

    def __init__(self, message: str, problems: tuple[Problem, ...] = ()) -> None:
        super().__init__(message)
        self.problems = problems

    def __reduce__(self) -> tuple[type, tuple[str, tuple[Problem, ...]]]:
        return InvalidInput, (str(self), self.problems)


class NotSolved(RuntimeError):
    """The equations could not be met. The text has the residuals that were left.

    `unfinished` is what was reached, which is not an answer.
    """

    __module__ = "hydro"

    def __init__(self, message: str, unfinished: Solution) -> None:
        super().__init__(message)
        self.unfinished = unfinished

    def __reduce__(self) -> tuple[type, tuple[str, Solution]]:
        return NotSolved, (str(self), self.unfinished)


class NotDrained(RuntimeError):
    """The time in which a tank runs empty could not be integrated as well as asked for."""

    __module__ = "hydro"


class NotCalibrated(RuntimeError):
    """The least squares of a calibration did not settle.

    `steps` is how many were taken, `last_step` how long the last was, `misfits` those of the
    readings, each in its own standard errors, as reached.
    """

    __module__ = "hydro"

    def __init__(
        self, message: str, steps: int, last_step: float, misfits: tuple[float, ...]
    ) -> None:
        super().__init__(message)
        self.steps = steps
        self.last_step = last_step
        self.misfits = misfits

    def __reduce__(self) -> tuple[type, tuple[str, int, float, tuple[float, ...]]]:
        return NotCalibrated, (str(self), self.steps, self.last_step, self.misfits)


class Stopped(RuntimeError):
    """The function that is told the progress of a work stopped it. What was found is lost.

    `done` is how many parts were, `of` how many there are.
    """

    __module__ = "hydro"

    def __init__(self, message: str, done: int, of: int) -> None:
        super().__init__(message)
        self.done = done
        self.of = of

    def __reduce__(self) -> tuple[type, tuple[str, int, int]]:
        return Stopped, (str(self), self.done, self.of)
