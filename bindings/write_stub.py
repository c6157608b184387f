"""Writes hydro/_hydro.pyi, the types of the compiled module, from what the module says of itself.

    PYTHONPATH=BUILD/python python3 -P bindings/write_stub.py > STUB && mv STUB bindings/hydro/_hydro.pyi

The text of each compiled function begins with its signature in Python's types, one line for each
way to call it.
"""

from __future__ import annotations

import inspect
import re
import sys
import textwrap
from collections.abc import Iterator
from typing import Any

from hydro import _hydro

HEADER = '''\
"""The compiled part of the package: all that is public is in hydro, under the same names."""

import datetime
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any, ClassVar, NoReturn, TypeAlias, overload

import numpy
import pandas
from numpy.typing import NDArray

from .enumerations import (
    AddedWhere,
    BreakDetail,
    CandidateKind,
    CheckValveState,
    CurveShape,
    Deed,
    DrainEnd,
    EvapotranspirationMethod,
    FirstFall,
    FirstOutlet,
    FlowFigureKind,
    InletGoal,
    Input,
    LearntKind,
    Limit,
    OutletCondition,
    OutletState,
    PressureFigureKind,
    PumpArrangement,
    PumpRange,
    ReadingPlace,
    RegulatorState,
    RemedyKind,
    RoomEnd,
    Seen,
    ServedBy,
    SoilKind,
    SupplyLimit,
    UnitSystem,
    ValveKind,
    ValveOpening,
    WalkKind,
    WaterReason,
    WeatherEstimate,
    WhyLeft,
    WhyStop,
)

__version__: str
'''
MADE_BY_THE_LIBRARY = """\
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        \"\"\"TypeError: only the library makes it.\"\"\"
"""
INDENT = "    "
WIDTH = 100


def in_quotes(text: str, indent: str) -> str:
    """A docstring, its sentences wrapped and its examples as they are."""
    lines: list[str] = []
    for line in text.strip().splitlines():
        fits = len(indent + line) <= WIDTH or line.startswith((">>>", "..."))
        lines += [line] if fits else textwrap.wrap(line, WIDTH - len(indent))
    quotes = '"""' if '"""' not in text else "'''"
    if len(lines) == 1 and len(indent + lines[0]) <= WIDTH - 6:
        return f"{indent}{quotes}{lines[0]}{quotes}\n"
    body = "".join(f"{indent}{line}".rstrip() + "\n" for line in lines)
    return f"{indent}{quotes}{body.lstrip()}{indent}{quotes}\n"


def signatures(name: str, doc: str) -> tuple[list[str], str]:
    """The ways to call a function, and what is said of it."""
    lines = inspect.cleandoc(doc).splitlines()
    calls = []
    while lines and re.match(rf"{re.escape(name)}\(.*\) -> ", lines[0]):
        calls.append(lines.pop(0))
    return calls, "\n".join(lines).strip()


def function(name: str, doc: str, indent: str = "") -> str:
    calls, text = signatures(name, doc)
    # What compares value by value is no bool, as object.__eq__ would have it.
    ignore = "  # type: ignore[override]" if re.search(r"__(eq|ne)__.*NDArray", doc) else ""
    written = ""
    for call in calls:
        if len(calls) > 1:
            written += f"{indent}@overload{ignore if call == calls[0] else ''}\n"
        if text and call == calls[-1]:
            written += f"{indent}def {call}:\n{in_quotes(text, indent + INDENT)}"
        else:
            written += f"{indent}def {call}: ...\n"
    return written


def members(owner: type) -> Iterator[str]:
    for name, member in vars(owner).items():
        doc = getattr(member, "__doc__", None) or ""
        if isinstance(member, property):
            ((call,), _) = signatures(name, getattr(member.fget, "__doc__", None) or "")
            yield f"{INDENT}@property\n{INDENT}def {call}:\n{in_quotes(doc, INDENT * 2)}"
        elif name == "__hash__" and member is None:
            yield f"{INDENT}__hash__: ClassVar[None]  # type: ignore[assignment]\n"
        elif name == "__array_ufunc__":
            yield f"{INDENT}__array_ufunc__: ClassVar[None]\n"
        elif callable(member) and signatures(name, doc)[0]:
            yield function(name, doc, INDENT)


def stub_of(name: str, value: Any) -> str:
    if name == "Fault":
        kinds = textwrap.wrap(" | ".join(kind.__name__ for kind in value.__args__), 86)
        return "\nFault: TypeAlias = (\n" + "".join(f"{INDENT}{row}\n" for row in kinds) + ")\n"
    if isinstance(value, type):
        body = in_quotes(value.__doc__ or "", INDENT) + "".join(members(value))
        if not signatures("__init__", getattr(value.__init__, "__doc__", None) or "")[0]:
            body += MADE_BY_THE_LIBRARY
        return f"\nclass {name}:\n{body}"
    if callable(value):
        return "\n" + function(name, value.__doc__ or "")
    return f"{name}: {type(value).__name__}\n"


def main() -> None:
    public = {name: value for name, value in vars(_hydro).items() if not name.startswith("_")}
    sys.stdout.write(HEADER)
    for is_wanted in (
        lambda value: isinstance(value, type),
        lambda value: not isinstance(value, type) and not callable(value),
        lambda value: not isinstance(value, type) and callable(value),
    ):
        for name, value in public.items():
            if is_wanted(value):
                sys.stdout.write(stub_of(name, value))


if __name__ == "__main__":
    main()
