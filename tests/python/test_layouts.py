"""Layouts built in Python, read from a file, and solved by the program: bit for bit the same."""

import copy
import json
import os
import pickle
import subprocess
from typing import Any

import pytest

pytest.importorskip("hypothesis")

from hypothesis import given, settings
from random_parts import DESCRIPTIONS, description, layouts, parameters, records

import hydro
from hydro import *  # noqa: F403  what is printed of a record is valid input after this

CHECK_LINE = os.environ.get("HYDRO_CHECK_LINE", "")
SERIES = ("distance", "pressure", "line_pressure", "flow", "velocity")


SINGLE = ("inflow", "end_flow", "inlet_velocity", "inlet_pressure", "end_pressure", "inlet_shut")
OF_SUPPLY = ("flow", "pressure", "source_pressure", "held_shut")


def bits(solution: hydro.Solution) -> list[tuple[str, ...]]:
    of_lines = [
        (
            line.name,
            *(getattr(line, name).si.tobytes() for name in SERIES),
            *(repr(getattr(line, name)) for name in SINGLE),
            str(line.state),
            str(line.check_valve),
        )
        for line in solution.lines
    ]
    points = [solution.supply, *solution.further_supplies]
    return of_lines + [tuple(repr(getattr(point, name)) for name in OF_SUPPLY) for point in points]


@settings(max_examples=60)
@given(layouts())
def test_a_layout_built_in_python_is_that_of_its_file(layout: hydro.Layout) -> None:
    from_file = hydro.read_layout_text(description(layout))
    assert from_file.supply == layout.supply and from_file.water == layout.water
    assert from_file.further_supplies == layout.further_supplies
    assert from_file.site == layout.site
    assert from_file.lines == layout.lines and from_file.sets == layout.sets
    assert from_file.faults == layout.faults
    assert from_file == layout and hash(from_file) == hash(layout)
    solution, solution_of_file = hydro.solve(layout), hydro.solve(from_file)
    assert bits(solution) == bits(solution_of_file)
    assert hydro.to_json(solution) == hydro.to_json(solution_of_file)


@pytest.mark.skipif(not CHECK_LINE, reason="HYDRO_CHECK_LINE does not name the program")
@settings(max_examples=60)
@given(layouts())
def test_a_layout_is_solved_as_the_program_solves_its_file(
    tmp_path_factory: pytest.TempPathFactory, layout: hydro.Layout
) -> None:
    folder = tmp_path_factory.mktemp("program")
    file, written = folder / "line.toml", folder / "line.json"
    file.write_text(description(layout), encoding="utf-8")
    done = subprocess.run(
        [CHECK_LINE, str(file), "--json", str(written)], capture_output=True, text=True
    )
    assert done.returncode in (0, 1), done.stderr
    of_program = json.loads(written.read_text(encoding="utf-8"))
    solution = hydro.solve(layout)
    for line, line_of_program in zip(solution.lines, of_program["lines"], strict=True):
        assert line.name == line_of_program["name"]
        for name in SERIES:
            assert getattr(line, name).si.tolist() == line_of_program[name]
    for point, of_supply in zip(
        [solution.supply, *solution.further_supplies],
        [of_program["supply"], *of_program["further_supplies"]],
        strict=True,
    ):
        assert point.flow.to(m3_per_s) == of_supply["inflow"]
    if layout.faults:
        before = hydro.solve(layout.without_faults())
        assert before.to_dict(None) == {"format": of_program["format"], **of_program["before"]} | {
            "before": None,
            "comparison": None,
        }
        assert hydro.to_json(before, solution) == written.read_text(encoding="utf-8")
    else:
        assert hydro.to_json(solution) == written.read_text(encoding="utf-8")


@settings(max_examples=15)
@given(layouts())
def test_a_layout_survives_pickle_and_copy(layout: hydro.Layout) -> None:
    again = pickle.loads(pickle.dumps(layout))
    assert again == layout and hash(again) == hash(layout) and again.faults == layout.faults
    assert bits(hydro.solve(again)) == bits(hydro.solve(layout))
    assert copy.copy(layout) is layout and copy.deepcopy(layout) is layout
    solution = hydro.solve(layout)
    solved = pickle.loads(pickle.dumps(solution))
    assert bits(solved) == bits(solution) and hydro.to_json(solved) == hydro.to_json(solution)
    assert solved.layout == layout


@settings(max_examples=15)
@given(layouts())
def test_lines_and_faults_are_taken_in_and_out(layout: hydro.Layout) -> None:
    sound = layout.without_faults()
    assert sound.faults == ()
    assert sound.with_faults(layout.faults) == layout
    one_by_one = sound
    for fault in layout.faults:
        one_by_one = one_by_one.with_fault(fault)
    assert one_by_one == layout
    more = sound.with_line(sound.lines[0].replace(name="one more"))
    assert len(more.lines) == len(sound.lines) + 1
    assert more != sound and more.without("one more") == sound
    for line in sound.lines:
        assert sound.line(line.name) == line == sound.lines[sound.index_of(line.name)]
        assert sound.with_line(line) == sound


@settings(max_examples=15)
@given(layouts())
def test_sets_run_and_stop(layout: hydro.Layout) -> None:
    names = [each.name for each in layout.sets]
    if not names:
        with pytest.raises(hydro.InvalidInput, match="set_names"):
            layout.watering("set 0")
        return
    assert layout.running_sets == ()
    first = layout.watering(names[0])
    assert first == layout.watering([names[0]]) and first.running_sets == (names[0],)
    assert first.without_watering() == layout and (first == layout) is False
    assert repr(first).endswith(f", sets {len(names)}, running {names[0]}>")
    again = pickle.loads(pickle.dumps(first))
    assert again == first and again.sets == layout.sets and again.running_sets == (names[0],)
    # It opens what it names, what feeds that, and what hangs on it unnamed by others.
    by_own_valve = {line.name for line in layout.lines if str(line.valve).count("shut")}
    left_open = {it.line for it in layout.faults if isinstance(it, hydro.ValveLeftOpen)}
    for index, line in enumerate(layout.lines):
        if line.name in layout.sets[0].lines and not by_own_valve:
            assert not first.is_shut(index)
        if line.name in by_own_valve - left_open:
            assert first.inlet_is_shut(index) and layout.inlet_is_shut(index)
            if not any(other.joins for other in layout.lines):
                assert first.is_shut(index) and layout.is_shut(index)
    everything = layout.watering(names)
    assert everything.running_sets == tuple(names)
    for solved in (hydro.solve(first), hydro.solve(everything)):
        for index, done in enumerate(solved.lines):
            assert done.shut is solved.layout.is_shut(index)
            if done.shut:
                assert set(done.state) <= {"closed"} and done.inflow == 0 * m3_per_s


@settings(max_examples=15)
@given(layouts(), layouts())
def test_the_supply_is_changed(layout: hydro.Layout, other: hydro.Layout) -> None:
    sound = layout.without_faults()
    assert sound.with_supply(sound.supply) == sound
    changed = sound.with_supply(other.supply)
    assert changed.supply == other.supply == changed.supply_as_it_is
    assert changed.lines == sound.lines and changed.with_supply(sound.supply) == sound
    assert layout.supply_as_it_is == hydro.with_faults(layout.supply, layout.faults)
    as_they_are = [hydro.with_faults(it, layout.faults) for it in layout.further_supplies]
    assert layout.further_supplies_as_they_are == tuple(as_they_are)
    assert sound.with_further_supplies(sound.further_supplies) == sound
    more = [*sound.further_supplies, other.supply.replace(name="one more")]
    longer = sound.with_further_supplies(more)
    assert longer.further_supplies == tuple(more) and longer != sound
    assert longer.with_further_supplies(sound.further_supplies) == sound


# Records


@pytest.mark.parametrize("kind", DESCRIPTIONS, ids=lambda kind: str(kind.__name__))
def test_a_record_is_what_it_prints_what_it_pickles_and_what_it_was_made_of(kind: type) -> None:
    @given(records(kind), records(kind))
    def examine(record: Any, other: Any) -> None:
        fields = {name: getattr(record, name) for name in parameters(kind)}
        for again in (
            eval(repr(record)),
            pickle.loads(pickle.dumps(record)),
            kind(**fields),
            other.replace(**fields),
            record.replace(),
        ):
            assert type(again) is kind and again == record and hash(again) == hash(record)
            assert {name: getattr(again, name) for name in parameters(kind)} == fields
        assert copy.copy(record) is record and copy.deepcopy(record) is record
        others = {name: getattr(other, name) for name in parameters(kind)}
        assert (record == other) == (fields == others)

    examine()
