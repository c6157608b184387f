"""What is refused, and in which words."""

import inspect
import operator
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest

pytest.importorskip("hypothesis")

from headers import ROOT
from random_parts import DESCRIPTIONS, needed, parameters, units_of
from sample_line import LINE

import hydro
from hydro import ft, psi

BENCH = ROOT / "examples/ouzel_strips.toml"


@pytest.mark.parametrize(
    "use, message",
    [
        (lambda bench: bench.with_fault(hydro.head_off("row 9", 7)), "row 9"),
        (lambda bench: bench.with_fault(hydro.head_off("row 1", 11)), "is 11, must be from 1 to"),
        (lambda bench: bench.with_fault(hydro.worn("row 1", 1, -1)), "share: is -1, must be above"),
        (lambda bench: bench.with_fault(hydro.capped("row 2", 7)), "outlet"),
        (lambda bench: hydro.solve(bench).line("row 9"), "row 9"),
        (lambda bench: hydro.read_layout("no such file"), "no such file"),
    ],
)
def test_invalid_input(
    bench: hydro.Layout, use: Callable[[hydro.Layout], object], message: str
) -> None:
    with pytest.raises(hydro.InvalidInput, match=message):
        use(bench)


def test_all_mistakes_of_a_file_are_told_with_their_place(tmp_path: Path) -> None:
    file = tmp_path / "farm.toml"
    text = LINE.format(pressure="40", count=0, ground_rise="0 psi")
    file.write_text(text)
    with pytest.raises(hydro.InvalidInput) as caught:
        hydro.read_layout(file)
    told = [re.search(r"farm\.toml:(\d+)", line)[1] for line in str(caught.value).splitlines()]
    wrong = [text.splitlines()[int(number) - 1].split()[0] for number in told]
    assert wrong == ["pressure", "count", "ground_rise"]


@pytest.mark.parametrize(
    "read",
    [
        lambda limits: hydro.read_layout(BENCH, limits=limits),
        lambda limits: hydro.read_layout_text(BENCH.read_text(), limits=limits),
        lambda limits: hydro.read_outlets(BENCH, limits=limits),
        lambda limits: hydro.read_fault("line = 'a', outlet = 1, kind = 'capped'", limits=limits),
        lambda limits: hydro.read_blocks(BENCH, limits=limits),
        lambda limits: hydro.read_blocks_text(BENCH.read_text(), limits=limits),
        lambda limits: hydro.read_readings(BENCH, hydro.read_layout(BENCH), limits=limits),
        lambda limits: hydro.read_readings_text(
            BENCH.read_text(), hydro.read_layout(BENCH), limits=limits
        ),
    ],
)
def test_what_a_file_may_hold_is_up_to_the_caller(
    read: Callable[[hydro.FileLimits], object],
) -> None:
    read(hydro.FileLimits())
    with pytest.raises(hydro.InvalidInput, match="has more than 9 bytes of text"):
        read(hydro.FileLimits(bytes=9))


def test_errors_are_pythons_own_kinds() -> None:
    assert issubclass(hydro.InvalidInput, ValueError)
    assert issubclass(hydro.NotSolved, RuntimeError)
    with pytest.raises(TypeError):
        hydro.solve("farm.toml")
    with pytest.raises(TypeError):
        hydro.read_layout(3)


# Arguments


class Odd:
    """Nothing that anything accepts."""

    def __repr__(self) -> str:
        return "odd"


FUNCTIONS = [
    name
    for name in hydro.__all__
    if inspect.isfunction(getattr(hydro, name)) and name != "readings_from_table"  # Python's own
]


@pytest.mark.parametrize("name", FUNCTIONS)
def test_a_function_says_what_it_needs_and_takes(name: str) -> None:
    function = getattr(hydro, name)
    stated = inspect.signature(function).parameters
    everything = ", ".join(stated) or "nothing"
    needed_ones = [key for key, value in stated.items() if value.default is value.empty]
    odd = {key: Odd() for key in stated}
    with pytest.raises(TypeError, match=f"^{name} has no colour; it takes {everything}$"):
        function(**odd, colour="red")
    with pytest.raises(TypeError, match=f"^{name} takes .*, but got 9; it takes {everything}$"):
        function(*9 * [Odd()])
    if needed_ones:
        with pytest.raises(TypeError, match=f"^{name} needs {needed_ones[0]}$"):
            function()
        one_of = "|".join(stated)
        with pytest.raises(TypeError, match=rf"^({one_of}): odd is an Odd, not an? \w+"):
            function(**odd)


@pytest.mark.parametrize("name", [kind.__name__ for kind in DESCRIPTIONS])
def test_every_field_refuses_what_is_of_another_type(name: str) -> None:
    kind = getattr(hydro, name)
    types = parameters(kind)
    blank = {key: right_value(types[key]) for key in needed(kind)}
    for key, type_ in types.items():
        assert getattr(kind(**{**blank, key: right_value(type_)}), key) == right_value(type_)
        for value, message in wrong_values(type_):
            with pytest.raises(TypeError, match=rf"^{key}(\[0\])?: {message}"):
                kind(**{**blank, key: value})
            with pytest.raises(TypeError, match=rf"^{key}(\[0\])?: {message}"):
                kind(**blank).replace(**{key: value})


def right_value(type_: str) -> Any:
    """One that a parameter of this type accepts, as its property gives it back."""
    type_ = type_.removesuffix(" | None")
    if several := re.fullmatch(r"Iterable\[(.*)\]", type_):
        return (right_value(several[1]),)
    if bounds := re.fullmatch(r"tuple\[(.*), (.*)\]", type_):
        return (right_value(bounds[1]), right_value(bounds[2]))
    plain = {"str": "a", "int": 3, "float": 0.25, "bool": True}
    if type_.endswith(" | str"):
        return list(getattr(hydro, type_.removesuffix(" | str")))[-1]
    if type_ in plain:
        return plain[type_]
    kind = getattr(hydro, type_)
    if kind in DESCRIPTIONS:
        return kind(**{key: right_value(parameters(kind)[key]) for key in needed(kind)})
    return 7 * units_of(kind)[0]


def wrong_values(type_: str) -> list[tuple[Any, str]]:
    """What a parameter of this type refuses, and how it begins to say so."""
    none = [] if type_.endswith(" | None") else [(None, "is None, not an? ")]
    type_ = type_.removesuffix(" | None")
    if several := re.fullmatch(r"Iterable\[(.*)\]", type_):
        inner = [([value], message) for value, message in wrong_values(several[1])]
        alone = [(3, "3 is a bare number, not a list"), ("ab", "'ab' is a str, not a list")]
        return [*none, *inner, *alone]
    if bounds := re.fullmatch(r"tuple\[(.*), (.*)\]", type_):
        right = right_value(bounds[2])
        inner = [((value, right), message) for value, message in wrong_values(bounds[1])]
        return [*none, *inner, (3, "3 is a bare number, not a tuple"), ((right,), "")]
    plain = {
        "str": [(3, "3 is a bare number, not a str"), (b"a", "b'a' is a bytes, not a str")],
        "int": [
            (2.5, "2.5 is a bare number, not an int: write a whole number"),
            ("3", "'3' is a str, not an int"),
            (True, "True is a bool, not an int"),
        ],
        "float": [
            ("0.5", "'0.5' is a str, not a number"),
            (True, "True is a bool, not a number"),
            (1 * psi, r"1 \* psi is a Pressure, not a number"),
            ([0.5], r"\[0.5\] is a list, not a number"),
        ],
        "bool": [(1, "1 is a bare number, not a bool: write True or False"), ("a", "'a' is a str")],
    }
    odd = (Odd(), "odd is an Odd, not an? ")
    if type_.endswith(" | str"):
        return [*none, odd, (3, "3 is a bare number, not a str")]
    if type_ in plain:
        return [*none, odd, *plain[type_]]
    kind = getattr(hydro, type_)
    if kind in DESCRIPTIONS:
        number, text = f"3 is a bare number, not an? {type_}", f"'a' is a str, not an? {type_}"
        return [*none, odd, (3, number), ("a", text)]
    other = 1 * psi if type_ != "Pressure" else 1 * ft
    unit = re.escape(repr(units_of(kind)[0]))
    return [
        *none,
        odd,
        (0.5, rf"0.5 is a bare number, not an? {type_}: write 0.5 \* [\w.]+$"),
        ("1 ft", f"'1 ft' is a str, not an? {type_}: write a number times one of "),
        (other, rf"1 \* \w+ is a {type(other).__name__}, not an? {type_}: write a number times"),
        (units_of(kind)[0], rf"{unit} is an? {type_}Unit, not an? {type_}: write a number times"),
    ]


@pytest.mark.parametrize("kind", DESCRIPTIONS, ids=lambda kind: str(kind.__name__))
def test_a_record_is_made_by_keyword_and_cannot_be_changed(kind: type) -> None:
    record = kind(**{key: right_value(parameters(kind)[key]) for key in needed(kind)})
    too_many = len(needed(kind)) + 1
    with pytest.raises(TypeError, match=f"^{kind.__name__} takes .*, but got {too_many}; it "):
        kind(*too_many * ["row 1"])
    for key in parameters(kind):
        with pytest.raises(AttributeError):
            setattr(record, key, getattr(record, key))
        with pytest.raises(AttributeError):
            delattr(record, key)
    with pytest.raises(AttributeError):
        record.colour = "red"
    assert record != "row 1" and (record == 3) is False


def test_numbers_that_are_none_here_and_texts_that_are_none_are_refused() -> None:
    with pytest.raises(ValueError, match=r"^count: is 10000000000, beyond the range"):
        hydro.Line(count=10**10)
    with pytest.raises(ValueError, match=r"^units: is 'uk', must be one of \"us\", \"si\"$"):
        hydro.Site(units="uk")
    for use in (
        lambda: hydro.Pipe(name="\udc80"),
        lambda: hydro.Pressure("25 psi\udc80"),
        lambda: hydro.read_layout("no\0file"),
    ):
        with pytest.raises(ValueError, match="surrogates not allowed|null byte"):
            use()
    assert hydro.Line(count=np.int64(3)).count == 3
    assert hydro.worn("row 1", 7, np.float32(0.5)).share == 0.5


def test_the_first_wrong_argument_is_told():
    with pytest.raises(TypeError, match="^before: 1 is a bare number"):
        hydro.compare(1, 2)  # type: ignore[arg-type]


@pytest.mark.parametrize("operate", [operator.add, operator.sub, operator.lt, operator.ge])
def test_an_array_beside_a_quantity_needs_a_unit(operate: Callable[[Any, Any], Any]) -> None:
    for other in (25 * psi, [25, 30] * psi):
        for pair in ((np.ones(2), other), (other, np.ones(2))):
            with pytest.raises(TypeError, match=r"^an array has no unit: write array \* psi"):
                operate(*pair)
