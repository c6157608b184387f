"""What is refused, and in which words."""

import re

import pytest
from sample_line import LINE

import hydro


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
def test_invalid_input(bench, use, message):
    with pytest.raises(hydro.InvalidInput, match=message):
        use(bench)


def test_all_mistakes_of_a_file_are_told_with_their_place(tmp_path):
    file = tmp_path / "farm.toml"
    text = LINE.format(pressure="40", count=0, ground_rise="0 psi")
    file.write_text(text)
    with pytest.raises(hydro.InvalidInput) as caught:
        hydro.read_layout(file)
    told = [re.search(r"farm\.toml:(\d+)", line)[1] for line in str(caught.value).splitlines()]
    wrong = [text.splitlines()[int(number) - 1].split()[0] for number in told]
    assert wrong == ["pressure", "count", "ground_rise"]


def test_errors_are_pythons_own_kinds():
    assert issubclass(hydro.InvalidInput, ValueError)
    assert issubclass(hydro.NotSolved, RuntimeError)
    with pytest.raises(TypeError):
        hydro.solve("farm.toml")
    with pytest.raises(TypeError):
        hydro.read_layout(3)
