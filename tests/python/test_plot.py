"""Pictures, by the artists on their Axes: what is drawn where, in which shape, in which words."""

import doctest
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")

from matplotlib import pyplot
from matplotlib.axes import Axes
from matplotlib.colors import to_hex
from matplotlib.text import Text

import hydro
import hydro.plot
from hydro import ft, gpm, inch, kPa, psi

ROOT = Path(__file__).resolve().parents[2]
BENCH = ROOT / "examples" / "ouzel_strips.toml"

SHAPES = {  # marker, whether it is filled
    "works": ("o", True),
    "below rated": ("o", False),
    "below minimum": ("v", False),
    "above maximum": ("^", True),
    "dry": ("D", False),
    "no water": ("_", False),
    "capped": ("s", False),
    "broken": ("x", False),
    "shut": ("|", False),
}
COURSES = {
    "main to tee 1": [(0 * ft, -20 * ft), (180 * ft, -20 * ft)],
    "row 1": [(180 * ft, 240 * ft), (540 * ft, 240 * ft)],
    "row 2": [(180 * ft, 270 * ft), (280 * ft, 270 * ft), (280 * ft, 520 * ft)],
}


@pytest.fixture(autouse=True)
def closed_figures():
    yield
    pyplot.close("all")


@pytest.fixture(scope="module")
def bench():
    return hydro.read_layout(BENCH)


@pytest.fixture(scope="module")
def before(bench):
    return hydro.solve(bench.without_faults())


@pytest.fixture(scope="module")
def after(bench):
    return hydro.solve(bench)


@pytest.fixture(scope="module")
def damaged(bench):
    """Both rows with everything that a line can have."""
    return hydro.solve(
        bench.with_fault(hydro.leak("row 1", 120 * ft, 6 * gpm, 30 * psi))
        .with_fault(hydro.capped("row 1", 3))
        .with_fault(hydro.head_off("row 1", 9))
        .with_fault(hydro.line_cut("row 2", 290 * ft))
    )


SPRAY = hydro.Outlet(flow=1.2 * gpm, at=30 * psi, minimum=20 * psi, maximum=50 * psi)
LATERAL = hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150)


def rows(*described, pressure=40 * psi, outlet=SPRAY, spacing=20 * ft):
    """A layout of rows on one supply, each described as (name, outlets, rise of the ground)."""
    lines = [
        hydro.Line(
            name=name, pipe=LATERAL, outlet=outlet, count=count, spacing=spacing, ground_rise=rise
        )
        for name, count, rise in described
    ]
    site = hydro.Site(units=hydro.UnitSystem.us)
    return hydro.Layout(hydro.Supply(pressure=pressure), lines, site=site)


def drawn(ax, label):
    """The artist of this label, which is the only one."""
    (line,) = [line for line in ax.lines if line.get_label() == label]
    return line


def marks(ax, line):
    """The artists of a line that have a shape, by what their outlets do."""
    start = f"{line}: "
    return {
        it.get_label().removeprefix(start): it
        for it in ax.lines
        if it.get_label().startswith(start)
    }


def is_filled(artist):
    return to_hex(artist.get_markerfacecolor()) != "#ffffff"


def legend(ax):
    return [text.get_text() for text in ax.get_legend().get_texts()]


def words(ax):
    return [text.get_text() for text in ax.texts]


def overlap(texts):
    boxes = [Text.get_window_extent(text) for text in texts]  # without a leader
    return any(a.overlaps(b) for i, a in enumerate(boxes) for b in boxes[:i])


def render(ax):
    """Draws it: warnings are errors."""
    ax.figure.canvas.draw()


# Pressure along lines


def test_a_profile_has_every_outlet_at_its_distance_and_pressure(after):
    ax = hydro.plot.pressure_profile(after, "row 2")
    assert isinstance(ax, Axes)
    render(ax)
    line = after.line("row 2")
    places = np.concatenate([it.get_xdata() for it in marks(ax, "row 2").values()])
    pressures = np.concatenate([it.get_ydata() for it in marks(ax, "row 2").values()])
    order = np.argsort(places)
    assert np.array_equal(places[order], line.distance.to(ft))
    assert np.array_equal(pressures[order], line.pressure.to(psi))
    curve = drawn(ax, "row 2")
    assert np.array_equal(curve.get_xdata(), np.delete(line.distance.to(ft), 6))
    assert np.array_equal(curve.get_ydata(), np.delete(line.pressure.to(psi), 6))
    assert curve.get_linestyle() == "-"
    assert ax.get_xlabel() == "distance from the inlet [ft]"
    assert ax.get_ylabel() == "pressure at the outlet [psi]"


def test_shapes_tell_what_outlets_do(after):
    ax = hydro.plot.pressure_profile(after)
    spacing = after.line("row 2").distance.to(ft)
    found = {
        doing: [int(np.flatnonzero(spacing == x)[0]) + 1 for x in artist.get_xdata()]
        for doing, artist in marks(ax, "row 2").items()
    }
    assert found == {
        "works": [1],
        "below rated": [2, 3, 4],
        "below minimum": [5, 6, 8, 9, 10],
        "broken": [7],
    }
    assert list(marks(ax, "row 1")) == ["works"]
    assert legend(ax) == ["works", "broken", "below minimum", "below rated"]
    rated = {(it.line, it.outlet) for it in hydro.check(after).below_rated}
    assert {("row 2", n) for n in found["below rated"] + found["below minimum"]} == rated


def test_every_shape_differs_and_no_mark_needs_its_colour(damaged):
    hill = hydro.solve(rows(("up", 12, 120 * ft), ("down", 8, -50 * ft), pressure=44 * psi))
    up = hill.layout.line("up").replace(valve=hydro.Valve(opening="shut"))
    shut = hydro.solve(hill.layout.with_line(up))
    drawings = ((damaged, ["row 1", "row 2"]), (hill, ["up", "down"]), (shut, ["up"]))
    seen = {}
    for solution, names in drawings:
        ax = hydro.plot.pressure_profile(solution, names)
        render(ax)
        for name in names:
            for doing, artist in marks(ax, name).items():
                if doing in SHAPES:
                    bare = artist.get_marker() in ("x", "_", "|")
                    seen[doing] = (artist.get_marker(), is_filled(artist) and not bare)
                assert artist.get_color() == hydro.plot.paper.HUE
    assert seen == SHAPES
    assert len(set(SHAPES.values())) == len(SHAPES)
    # The legend shows the shapes that are drawn.
    shown = hydro.plot.pressure_profile(damaged).get_legend().get_lines()
    shapes = {it.get_label(): it.get_marker() for it in shown if it.get_label() in SHAPES}
    assert shapes == {doing: SHAPES[doing][0] for doing in shapes} and len(shapes) == 6


def test_outlets_beyond_a_cut_have_no_water_and_dry_ones_before_it_are_dry(damaged):
    found = marks(hydro.plot.pressure_profile(damaged, "row 2"), "row 2")
    assert damaged.line("row 2").state[7:] == ["dry"] * 3
    assert found["dry"].get_xdata() == pytest.approx([270])
    assert found["no water"].get_xdata() == pytest.approx([306, 342])


def test_a_line_beyond_an_open_end_has_no_water(bench):
    cut = hydro.solve(bench.without_faults().with_fault(hydro.line_cut("manifold", 10 * ft)))
    assert list(marks(hydro.plot.pressure_profile(cut, "row 2"), "row 2")) == ["no water"]


def test_what_is_open_is_a_star_at_its_place_with_its_name(damaged):
    ax = hydro.plot.pressure_profile(damaged)
    leak, cut = drawn(ax, "row 1: leak"), drawn(ax, "row 2: line cut")
    assert (leak.get_marker(), cut.get_marker()) == ("*", "*")
    assert leak.get_xdata() == pytest.approx([120]) and cut.get_xdata() == pytest.approx([290])
    assert {"leak", "line cut"} < set(words(ax))
    assert "line open" in legend(ax)
    ended = hydro.solve(damaged.layout.without_faults().with_fault(hydro.end_open("row 1")))
    ax = hydro.plot.pressure_profile(ended, "row 1")
    assert drawn(ax, "row 1: end open").get_xdata() == pytest.approx([342])


def test_rated_minimum_and_near_maximum_are_labelled_lines(after):
    ax = hydro.plot.pressure_profile(after, "row 2")
    for label, pressure in (("rated 25 psi", 25), ("minimum 18 psi", 18)):
        assert drawn(ax, label).get_ydata() == pytest.approx([pressure, pressure])
        assert label in words(ax)
    assert "maximum 50 psi" not in words(ax)  # far above the 26.7 psi that there are
    near = hydro.plot.pressure_profile(hydro.solve(rows(("a", 2, 0 * ft), pressure=42 * psi)))
    assert drawn(near, "maximum 50 psi").get_ydata() == pytest.approx([50, 50])
    assert len({str(drawn(near, it)._dash_pattern) for it in words(near)}) == 3


def test_limits_of_several_kinds_say_whose_they_are_and_do_not_overlap():
    kinds = [SPRAY.replace(name=f"kind {n}", at=(30 + n / 4) * psi) for n in range(4)]
    solution = hydro.solve(
        rows(("row", 6, 0 * ft), outlet=kinds[0]).with_faults(
            [hydro.wrong_outlet("row", n + 2, kinds[n]) for n in (1, 2, 3)]
        )
    )
    ax = hydro.plot.pressure_profile(solution, units="us")
    render(ax)
    labels = [text for text in ax.texts if text.get_text().startswith("rated")]
    assert [text.get_text() for text in labels] == [
        "rated 30 psi, kind 0",
        "rated 30.2 psi, kind 1",
        "rated 30.5 psi, kind 2",
    ]
    assert not overlap(labels)
    assert "minimum 20 psi" in words(ax)  # of them all


def test_before_is_dashed_and_after_is_solid(before, after):
    ax = hydro.plot.pressure_profile(after, "row 2", before=before)
    render(ax)
    ghost = drawn(ax, "row 2, before")
    assert np.array_equal(ghost.get_xdata(), before.line("row 2").distance.to(ft))
    assert np.array_equal(ghost.get_ydata(), before.line("row 2").pressure.to(psi))
    assert ghost.is_dashed() and not drawn(ax, "row 2").is_dashed()
    assert legend(ax)[-2:] == ["after", "before"]
    assert ax.get_ylim()[1] > before.line("row 2").pressure.to(psi).max()
    assert set(marks(ax, "row 2")) == {"works", "below rated", "below minimum", "broken"}


def test_several_lines_are_named_where_they_end_before_ones_too(before, after):
    assert {"row 1", "row 2"} < set(words(hydro.plot.pressure_profile(after)))
    both = hydro.plot.pressure_profile(after, before=before)
    assert {"row 1", "row 2", "row 1, before", "row 2, before"} < set(words(both))
    one = hydro.plot.pressure_profile(after, ["row 1"])
    assert "row 1" not in words(one) and one.get_title().startswith("row 1\n")


def test_lines_are_chosen_by_name(after):
    assert marks(hydro.plot.pressure_profile(after, "row 1"), "row 2") == {}
    curves = [it.get_label() for it in hydro.plot.pressure_profile(after, ("row 2", "row 1")).lines]
    assert curves.index("row 2") < curves.index("row 1")


def test_the_heading_says_what_is_wrong(after, before, damaged):
    assert " ".join(hydro.plot.pressure_profile(after).get_title().split()) == (
        "Ouzel Bench, seed-potato strips 1 and 2 row 2: outlet 7 broken (49.4 gal/min escapes); "
        "outlets 5, 6, 8 to 10 below minimum; outlets 2 to 4 below rated"
    )
    assert hydro.plot.pressure_profile(before, "row 1").get_title() == (
        "row 1\nevery outlet has its rated pressure"
    )
    title = " ".join(hydro.plot.pressure_profile(damaged, "row 1", units="si").get_title().split())
    leak = damaged.line("row 1").openings[0]
    assert f"leak at 36.6 m ({leak.flow.to(hydro.lpm):.1f} L/min escapes)" in title
    assert "outlet 3 capped" in title


def test_a_long_heading_is_broken_into_rows(damaged):
    ax = hydro.plot.pressure_profile(damaged)
    render(ax)
    assert len(ax.get_title().splitlines()) > 3
    assert ax.title.get_window_extent().x1 <= ax.figure.bbox.x1


def test_units(after):
    for units in ("si", hydro.UnitSystem.si):
        ax = hydro.plot.pressure_profile(after, "row 2", units=units)
        assert ax.get_xlabel() == "distance from the inlet [m]"
        assert ax.get_ylabel() == "pressure at the outlet [kPa]"
        curve = drawn(ax, "row 2")
        assert np.array_equal(curve.get_ydata(), np.delete(after.line("row 2").pressure.to(kPa), 6))
        assert np.array_equal(
            curve.get_xdata(), np.delete(after.line("row 2").distance.to(hydro.m), 6)
        )
        assert {"rated 172 kPa", "minimum 124 kPa"} <= set(words(ax))


def test_outlet_numbers_stand_over_their_outlets(after):
    def numbers(solution):
        ax = hydro.plot.pressure_profile(solution)
        render(ax)
        return [
            (label.get_text(), x)
            for axis in ax.child_axes
            for label, x in zip(axis.get_xticklabels(), axis.get_xticks())
        ]

    assert numbers(after) == [(str(n + 1), pytest.approx(18 + 36 * n)) for n in range(10)]
    large = numbers(hydro.solve(rows(("a", 200, 0 * ft))))
    assert large[0] == ("1", pytest.approx(20))
    assert 5 <= len(large) <= 12 and all(x == pytest.approx(20 * int(n)) for n, x in large)
    assert numbers(hydro.solve(rows(("a", 5, 0 * ft), ("b", 6, 0 * ft)))) == []


def test_a_large_line_has_few_marks_and_all_its_worst():
    dripper = SPRAY.replace(flow=0.02 * gpm)
    large = rows(("run", 800, 0 * ft), outlet=dripper, spacing=2 * ft)
    solution = hydro.solve(large.with_fault(hydro.capped("run", 333)))
    ax = hydro.plot.pressure_profile(solution)
    render(ax)
    assert sum(len(it.get_xdata()) for it in marks(ax, "run").values()) == 50
    assert marks(ax, "run")["capped"].get_xdata() == pytest.approx([666])
    assert len(drawn(ax, "run").get_xdata()) == 799
    assert "of each stretch of outlets the worst is marked" in ax.get_title()


def test_of_very_many_lines_the_worst_are_drawn():
    described = [(f"row {n}", 3, n * ft) for n in range(20)]
    ax = hydro.plot.pressure_profile(hydro.solve(rows(*described)))
    render(ax)
    names = [name for name, _, _ in described]
    curves = [it.get_label() for it in ax.lines if it.get_label() in names]
    assert curves == [f"row {n}" for n in range(8, 20)]
    assert not overlap([text for text in ax.texts if text.get_text() in names])
    assert "(of 20 lines the 12 worst)" in ax.get_title()
    asked = hydro.plot.pressure_profile(hydro.solve(rows(*described)), names)
    assert all(marks(asked, name) for name in names)


def test_it_draws_on_the_axes_it_is_given(after, before):
    figure, axes = pyplot.subplots(2, 2, figsize=(12, 9), layout="constrained")
    assert hydro.plot.pressure_profile(after, "row 1", ax=axes[0, 0]) is axes[0, 0]
    assert hydro.plot.pressure_profile(after, before=before, ax=axes[0, 1]) is axes[0, 1]
    assert hydro.plot.plan_view(after, COURSES, ax=axes[1, 0]) is axes[1, 0]
    assert pyplot.get_fignums() == [figure.number]
    assert not axes[1, 1].lines
    figure.canvas.draw()
    axes[0, 0].set_title("mine")
    assert axes[0, 0].get_title() == "mine"


def test_a_dollar_in_a_name_is_a_dollar():
    names = ("$^$ row", "_ $5 row")  # the former would be a formula that is none
    solution = hydro.solve(rows((names[0], 3, 0 * ft), (names[1], 3, 40 * ft)))
    courses = {name: [(0 * ft, n * ft), (60 * ft, n * ft)] for n, name in enumerate(names)}
    for ax in (
        hydro.plot.pressure_profile(solution),
        hydro.plot.plan_view(solution, courses),
    ):
        render(ax)
        assert set(names) < set(words(ax))
    one = hydro.plot.pressure_profile(solution, names[0], before=solution)
    render(one)
    assert one.get_title().startswith(f"{names[0]}\n")


@pytest.mark.parametrize(
    "use, error, message",
    [
        (lambda s: hydro.plot.pressure_profile(s, "row 9"), hydro.InvalidInput, "row 9"),
        (
            lambda s: hydro.plot.pressure_profile(s, "manifold"),
            hydro.InvalidInput,
            "'manifold' has no outlets; lines with outlets are 'row 1', 'row 2'",
        ),
        (lambda s: hydro.plot.pressure_profile(s, []), hydro.InvalidInput, "lines: is empty"),
        (lambda s: hydro.plot.pressure_profile(s, [1]), TypeError, "lines: 1 is a int, not the"),
        (
            lambda s: hydro.plot.pressure_profile(s, units="metric"),
            hydro.InvalidInput,
            "units: is 'metric', must be 'us', 'si' or None",
        ),
        (
            lambda s: hydro.plot.pressure_profile(s.layout),
            TypeError,
            "solution: is a Layout, not a Solution: write hydro.solve",
        ),
        (
            lambda s: hydro.plot.pressure_profile(s, before=s.layout),
            TypeError,
            "before: is a Layout, not a Solution",
        ),
        (lambda s: hydro.plot.plan_view(s.layout, COURSES), TypeError, "solution: is a Layout"),
        (lambda s: hydro.plot.plan_view(s, {}), hydro.InvalidInput, "courses: is empty"),
        (
            lambda s: hydro.plot.plan_view(s, {"row 9": COURSES["row 1"]}),
            hydro.InvalidInput,
            "row 9",
        ),
        (
            lambda s: hydro.plot.plan_view(s, {"row 1": COURSES["row 1"][:1]}),
            hydro.InvalidInput,
            r"courses\['row 1'\]: has 1 points, must have 2 or more",
        ),
        (
            lambda s: hydro.plot.plan_view(s, {"row 1": [(0 * ft, 0 * ft), (338 * ft, 0 * ft)]}),
            hydro.InvalidInput,
            r"courses\['row 1'\]: is 338.0 ft long, too short for the line: .* it is 342.0 ft",
        ),
        (
            lambda s: hydro.plot.plan_view(s, {"row 1": [(0 * ft, 0 * ft), (400, 0)]}),
            TypeError,
            r"courses\['row 1'\]: point 2 is \(400, 0\), not a pair of Lengths: write \(120 \* ft",
        ),
        (
            lambda s: hydro.plot.plan_view(s, {"row 1": [0 * ft, 400 * ft]}),
            TypeError,
            "point 1 is 0 [*] ft, not a pair of Lengths",
        ),
        (
            lambda s: hydro.plot.plan_view(s, {"row 1": [(0 * ft, 0 * ft), (40 * psi, 0 * ft)]}),
            TypeError,
            "point 2 is .* not a pair of Lengths",
        ),
        (
            lambda s: hydro.plot.plan_view(
                s, {"row 1": [(0 * ft, 0 * ft), (float("inf") * ft, 0 * ft)]}
            ),
            hydro.InvalidInput,
            "point 2 is .* must be finite",
        ),
    ],
)
def test_what_cannot_be_drawn_is_refused_before_a_figure_is_made(after, use, error, message):
    with pytest.raises(error, match=message):
        use(after)
    assert pyplot.get_fignums() == []


def test_a_before_of_another_layout_is_refused():
    four, three = (hydro.solve(rows(("row 1", count, 0 * ft))) for count in (4, 3))
    with pytest.raises(hydro.InvalidInput, match="outlets"):
        hydro.plot.pressure_profile(four, before=three)
    assert pyplot.get_fignums() == []


# Lines seen from above


def test_outlets_stand_along_their_course_by_their_distance(after):
    ax = hydro.plot.plan_view(after, COURSES)
    assert isinstance(ax, Axes)
    render(ax)
    found = np.vstack([it.get_xydata() for it in marks(ax, "row 2").values()])
    distance = after.line("row 2").distance.to(ft)
    # 100 ft to the right, then up.
    expected = np.column_stack(
        [180 + np.minimum(distance, 100), 270 + np.maximum(distance - 100, 0)]
    )
    order = np.lexsort(found.T)
    assert found[order] == pytest.approx(expected, rel=1e-12)
    pipe = drawn(ax, "row 2").get_xydata()
    assert pipe == pytest.approx(np.array([[180, 270], [280, 270], [280, 512]]))
    assert ax.get_xlabel() == "x [ft]" and ax.get_ylabel() == "y [ft]"
    assert ax.get_aspect() in (1, "equal")
    assert drawn(ax, "main to tee 1").get_linewidth() > drawn(ax, "row 1").get_linewidth()


def test_a_plan_tells_by_shape_and_in_words_which_outlets_fall_short(after):
    ax = hydro.plot.plan_view(after, COURSES)
    assert {doing: len(it.get_xdata()) for doing, it in marks(ax, "row 2").items()} == {
        "works": 1,
        "below rated": 3,
        "below minimum": 5,
        "broken": 1,
    }
    for doing, artist in marks(ax, "row 2").items():
        assert artist.get_marker() == SHAPES[doing][0]
    title = " ".join(ax.get_title().split())
    assert "row 2: outlet 7 broken" in title and "5, 6, 8 to 10 below minimum" in title
    assert {"row 1", "row 2", "supply", "main to tee 1", "7", "10"} < set(words(ax))
    assert legend(ax) == ["works", "broken", "below minimum", "below rated"]


def test_words_on_a_plan_do_not_overlap(damaged):
    ax = hydro.plot.plan_view(damaged, COURSES)
    render(ax)
    assert not overlap(ax.texts)


def test_what_is_open_is_a_star_on_the_plan(damaged):
    ax = hydro.plot.plan_view(damaged, {name: COURSES[name] for name in ("row 1", "row 2")})
    leak, cut = drawn(ax, "row 1: leak"), drawn(ax, "row 2: line cut")
    assert leak.get_marker() == cut.get_marker() == "*"
    assert leak.get_xydata() == pytest.approx(np.array([[300, 240]]))
    assert cut.get_xydata() == pytest.approx(np.array([[280, 460]]))
    assert "leak" in words(ax) and "supply" not in words(ax)


def test_a_course_a_little_short_moves_its_outlets_together(after):
    ax = hydro.plot.plan_view(after, {"row 1": [(0 * ft, 0 * ft), (340 * ft, 0 * ft)]})
    places = drawn(ax, "row 1: works").get_xdata()
    assert places == pytest.approx(after.line("row 1").distance.to(ft) * 340 / 342)


def test_units_of_a_plan(after):
    ax = hydro.plot.plan_view(after, COURSES, units="si")
    assert ax.get_xlabel() == "x [m]" and ax.get_ylabel() == "y [m]"
    assert drawn(ax, "row 1").get_xydata()[0] == pytest.approx([180 * 0.3048, 240 * 0.3048])


# Lines that are shut


def test_shut_lines_are_left_out_of_a_profile_and_told_on_a_plan(bench):
    sets = [hydro.WateringSet(name=name, lines=[name]) for name in ("row 1", "row 2")]
    sound = bench.without_faults()
    parts = (sound.supply, sound.lines, sound.water, sound.site, sets)
    solution = hydro.solve(hydro.Layout(*parts).watering("row 1"))
    ax = hydro.plot.pressure_profile(solution)
    render(ax)
    assert marks(ax, "row 1") and not marks(ax, "row 2")
    asked = hydro.plot.pressure_profile(solution, ["row 1", "row 2"])
    render(asked)
    assert set(marks(asked, "row 2")) == {"shut"}
    plan = hydro.plot.plan_view(solution, COURSES)
    render(plan)
    assert set(marks(plan, "row 2")) == {"shut"} and "row 2: shut" in plan.get_title()


# A pump and what the lines take

AT_SPEED = "the pump at 2210\N{NO-BREAK SPACE}rpm"
PUMP = hydro.Pump(
    points=[
        hydro.PumpPoint(flow=0 * gpm, head=150 * ft),
        hydro.PumpPoint(flow=130 * gpm, head=107.75 * ft),
    ],
    curve_speed=2600 * hydro.rpm,
    speed=2210 * hydro.rpm,
    least_flow=20 * gpm,
    most_flow=130 * gpm,
)


@pytest.fixture(scope="module")
def pumped(bench):
    """The bench on a pump, sound and broken."""
    dirt = hydro.Filter(loss=1.5 * psi, at=80 * gpm)
    fed = bench.with_supply(hydro.Supply(pump=PUMP, filter=dirt))
    return hydro.solve(fed.without_faults()), hydro.solve(fed)


def test_a_pump_runs_where_its_curve_meets_what_the_lines_take(pumped):
    before, _ = pumped
    ax = hydro.plot.pump_curve(before)
    render(ax)
    point = drawn(ax, "operating point")
    flow, head = point.get_xdata()[0], point.get_ydata()[0]
    assert flow == before.inflow.to(gpm)
    assert head == before.supply.pumps[0].head.to(ft)
    assert (point.get_marker(), is_filled(point)) == ("o", True)
    flows, heads = drawn(ax, AT_SPEED).get_data()
    expected = [hydro.pump_head(PUMP, it * gpm).to(ft) for it in flows]
    assert heads == pytest.approx(expected, rel=1e-12)
    taken_flows, taken_heads = drawn(ax, "the lines take").get_data()
    # Held at the pressure that the pump gives, the lines take the pump's flow.
    nearest = np.abs(taken_flows - flow).argmin()
    assert taken_flows[nearest] == pytest.approx(flow, rel=1e-9)
    assert taken_heads[nearest] == pytest.approx(head, rel=1e-9)
    assert (np.diff(taken_flows) > 0).all() and (np.diff(taken_heads) > 0).all()
    told = " ".join(ax.get_title().splitlines())
    assert f" {flow:.1f} gal/min at {head:.0f} ft, " in told
    assert told.endswith("psi at the start of the lines, inside the usable range")


def test_a_break_moves_the_pump_along_its_curve(pumped):
    before, after = pumped
    ax = hydro.plot.pump_curve(before, after)
    render(ax)
    assert drawn(ax, "after").get_xdata()[0] == after.inflow.to(gpm) > before.inflow.to(gpm)
    assert drawn(ax, "before").get_ydata()[0] > drawn(ax, "after").get_ydata()[0]
    labels = [line.get_label() for line in ax.lines]
    assert labels.count(AT_SPEED) == 1  # the same curve for both
    assert drawn(ax, "the lines take, before").get_linestyle() == "--"
    assert drawn(ax, "the lines take, after").get_linestyle() == "-"
    assert not overlap(ax.texts)


def test_a_worn_pump_has_a_curve_of_its_own(pumped):
    before, _ = pumped
    worn = hydro.solve(before.layout.with_fault(hydro.pump_worn(0.2)))
    ax = hydro.plot.pump_curve(before, worn, units="si")
    render(ax)
    sound, after = (drawn(ax, f"{AT_SPEED}, {name}") for name in ("before", "after"))
    assert after.get_ydata()[0] == pytest.approx(0.8 * sound.get_ydata()[0], rel=1e-12)
    assert [it.get_label() for it in ax.lines].count("the lines take") == 1
    assert ax.get_xlabel() == "flow of the supply [L/min]"
    assert not overlap(ax.texts)


def test_shapes_tell_where_in_its_range_a_pump_runs(pumped):
    before, _ = pumped
    for marker, limit in (("^", {"most_flow": 50 * gpm}), ("v", {"least_flow": 120 * gpm})):
        supply = before.layout.supply.replace(pump=PUMP.replace(**limit))
        ax = hydro.plot.pump_curve(hydro.solve(before.layout.with_supply(supply)))
        render(ax)
        point = drawn(ax, "operating point")
        assert (point.get_marker(), is_filled(point)) == (marker, False)
        assert ("above" if marker == "^" else "below") + " the usable range" in ax.get_title()


def test_two_pumps_are_drawn_as_one(pumped):
    before, _ = pumped
    for arrangement, times in (("parallel", 1), ("series", 2)):
        supply = hydro.Supply(pump=PUMP, second_pump=PUMP, arrangement=arrangement)
        ax = hydro.plot.pump_curve(hydro.solve(before.layout.with_supply(supply)))
        render(ax)
        (curve,) = (it for it in ax.lines if it.get_label().startswith("the pump"))
        at_rest = hydro.pump_head(PUMP, 0 * gpm).to(ft)
        assert curve.get_ydata()[0] == pytest.approx(times * at_rest, rel=1e-12)


def test_only_a_pump_has_its_curve_drawn(after, pumped):
    with pytest.raises(hydro.InvalidInput, match="^before: is fed by no pump"):
        hydro.plot.pump_curve(after)
    with pytest.raises(hydro.InvalidInput, match="^after: is fed by no pump"):
        hydro.plot.pump_curve(pumped[0], after)
    with pytest.raises(TypeError, match="^before: is a Layout"):
        hydro.plot.pump_curve(after.layout)
    with pytest.raises(hydro.InvalidInput, match="^units: is 'metric'"):
        hydro.plot.pump_curve(pumped[0], units="metric")
    assert pyplot.get_fignums() == []


# Lines that join others


@pytest.fixture(scope="module")
def ring():
    """Rows 1 and 2 with a cross pipe between their far ends, and a spare pump at the latter."""
    row = hydro.Line(
        name="row 1", pipe=LATERAL, outlet=SPRAY, count=10, spacing=36 * ft, ground_rise=0 * ft
    )
    cross = hydro.Line(
        name="cross pipe", fed_by="row 1", joins="row 2", pipe=LATERAL, length=30 * ft
    )
    spare = hydro.Line(name="spare", fed_by="spare pump", joins="row 2", pipe=LATERAL, length=9 * ft)
    return hydro.Layout(
        hydro.Supply(pump=PUMP),
        [row, row.replace(name="row 2"), cross, spare],
        site=hydro.Site(units="us"),
        further_supplies=[hydro.Supply(name="spare pump", pump=PUMP)],
    )


PLAN_OF_RING = {
    "row 1": [(0 * ft, 0 * ft), (360 * ft, 0 * ft)],
    "row 2": [(0 * ft, 30 * ft), (360 * ft, 30 * ft)],
    "cross pipe": [(360 * ft, 0 * ft), (360 * ft, 30 * ft)],
    "spare": [(369 * ft, 30 * ft), (360 * ft, 30 * ft)],
}


def test_a_profile_says_where_the_waters_meet(ring):
    solution = hydro.solve(ring)
    line = solution.line("row 2")
    ax = hydro.plot.pressure_profile(solution, "row 2")
    render(ax)
    (said,) = (text for text in ax.texts if text.get_text() == "waters meet")
    lowest = int(np.argmin(line.pressure.to(psi)))
    assert said.xy == (line.distance.to(ft)[lowest], line.pressure.to(psi)[lowest])
    assert list(line.velocity.to(hydro.ft_per_s) > 0) == [i <= lowest for i in range(10)]
    assert np.array_equal(drawn(ax, "row 2").get_xdata(), line.distance.to(ft))
    # Of a row that has all its water from its far end nothing meets.
    shut = ring.line("row 2").replace(valve=hydro.Valve(opening="shut"))
    backward = hydro.solve(ring.with_line(shut))
    ax = hydro.plot.pressure_profile(backward, "row 2")
    render(ax)
    assert "waters meet" not in words(ax) and set(marks(ax, "row 2")) <= {"works", "below rated"}
    assert np.all(np.diff(drawn(ax, "row 2").get_ydata()) > 0)


def test_the_curve_of_a_row_cut_in_a_ring_has_a_gap_there(ring):
    cut = hydro.solve(ring.with_fault(hydro.line_cut("row 1", 200 * ft)))
    line = cut.line("row 1")
    ax = hydro.plot.pressure_profile(cut, "row 1")
    render(ax)
    curve = drawn(ax, "row 1")
    places = np.insert(line.distance.to(ft), 5, np.nan)
    assert np.array_equal(curve.get_xdata(), places, equal_nan=True)
    near, far = (it.flow.to(gpm) for it in line.openings)
    assert words(ax).count("line cut") == 1
    said = f"line cut at 200.0 ft ({near + far:.1f} gal/min escapes)"
    assert said in " ".join(ax.get_title().split())


def test_further_supplies_are_named_on_a_plan(ring):
    ax = hydro.plot.plan_view(hydro.solve(ring), PLAN_OF_RING)
    render(ax)
    assert {"supply", "spare pump", "row 1", "row 2"} < set(words(ax))


def test_a_pump_beside_others_is_drawn_with_what_it_gives_itself(ring):
    solution = hydro.solve(ring)
    ax = hydro.plot.pump_curve(solution)
    render(ax)
    flow = drawn(ax, "operating point").get_xdata()[0]
    assert flow == solution.supply.flow.to(gpm) < solution.inflow.to(gpm)
    taken_flows, taken_heads = drawn(ax, "the lines take").get_data()
    nearest = np.abs(taken_flows - flow).argmin()
    assert taken_flows[nearest] == pytest.approx(flow, rel=1e-9)
    assert np.all(taken_flows >= 0) and np.all(np.diff(taken_heads) > 0)
    strong = hydro.Supply(name="spare pump", pressure=90 * psi)
    held = hydro.solve(ring.with_further_supplies([strong]))
    assert held.supply.held_shut and held.supply.flow == 0 * gpm
    ax = hydro.plot.pump_curve(held)
    render(ax)
    assert "held shut by the other supplies" in " ".join(ax.get_title().split())


# The module


def run(program):
    return subprocess.run(
        [sys.executable, "-c", program], check=True, capture_output=True, text=True
    ).stdout


@pytest.mark.parametrize("name", hydro.plot.__all__)
def test_examples_in_texts_give_what_they_say(name):
    (test,) = doctest.DocTestFinder(recurse=False).find(getattr(hydro.plot, name), name, globs={})
    told = []
    result = doctest.DocTestRunner().run(test, out=told.append)
    assert result.attempted > 0 and result.failed == 0, "".join(told)


def test_hydro_alone_does_not_import_matplotlib():
    assert run("import hydro, sys; print('matplotlib' in sys.modules)") == "False\n"


def test_without_matplotlib_the_error_says_what_is_missing():
    program = """
import sys
sys.modules["matplotlib"] = None
try:
    import hydro.plot
except ModuleNotFoundError as error:
    print(error)
"""
    assert run(program).startswith("hydro.plot needs matplotlib: install")


# Every outlet broken in turn, and chances


@pytest.fixture(scope="module")
def breaks() -> hydro.Breaks:
    return hydro.break_every_outlet(hydro.read_layout(BENCH).without_faults())


def test_each_break_is_a_row_of_the_shapes_of_what_the_others_do(breaks: hydro.Breaks) -> None:
    ax = hydro.plot.break_matrix(breaks)
    rows = np.vstack([np.array(breaks.conditions_before, dtype=object), breaks.conditions])
    drawn = {line.get_label(): line for line in ax.lines if line.get_marker() != "None"}
    for words, line in drawn.items():
        row, column = np.nonzero(rows == words.replace(" ", "_"))
        assert list(zip(line.get_xdata(), line.get_ydata())) == list(zip(column, row))
        marker, filled = SHAPES[words]
        assert line.get_marker() == marker
        if marker != "x":  # has no inside
            assert (line.get_markerfacecolor() != "white") == filled
    assert sum(len(line.get_xdata()) for line in drawn.values()) == rows.size
    assert {"works", "broken", "below minimum"} <= set(drawn)
    assert [label.get_text() for label in ax.get_yticklabels()][:2] == ["before", "row 1, 1"]
    told = [text.get_text() for text in ax.texts]
    for it in breaks.breaks:
        assert str(it.more_out_of_work) in told and f"{it.escaping.to(gpm):.1f}" in told
    assert any("gal/min" in words for words in told)
    assert [text.get_text() for text in ax.get_legend().get_texts()][0] == "works"
    in_si = hydro.plot.break_matrix(breaks, units="si")
    assert not any("gal/min" in text.get_text() for text in in_si.texts)


def test_a_matrix_that_cannot_be_drawn_is_refused(breaks: hydro.Breaks) -> None:
    with pytest.raises(TypeError, match="found: is a Solution, not Breaks"):
        hydro.plot.break_matrix(breaks.before)
    counts = hydro.break_every_outlet(breaks.before.layout, keep="counts")
    with pytest.raises(hydro.InvalidInput, match="keep='conditions'"):
        hydro.plot.break_matrix(counts)
    with pytest.raises(hydro.InvalidInput, match="units: is 'x'"):
        hydro.plot.break_matrix(breaks, units="x")
    row = breaks.before.layout.line("row 1").replace(fed_by="", count=61)
    long = hydro.Layout(hydro.Supply(pressure=40 * psi), [row])
    with pytest.raises(hydro.InvalidInput, match="has 61 outlets"):
        hydro.plot.break_matrix(hydro.break_every_outlet(long))


def test_chances_are_drawn_along_their_line() -> None:
    layout = hydro.read_layout(BENCH).without_faults()
    guess = hydro.Uncertainty(supply_pressure=3 * psi, manufacturing_variation=0.05)
    found = hydro.chances(layout, guess, realisations=200)
    ax = hydro.plot.chance_profile(found, "row 2")
    (its,) = [line for line in found.lines if line.name == "row 2"]
    curves = {curve.get_label(): curve for curve in ax.lines}
    shares = curves["below rated"].get_ydata()
    assert shares == pytest.approx([100 * share for share in its.below_rated])
    assert list(curves["below rated"].get_xdata()) == list(range(1, 11))
    for words, curve in curves.items():
        assert curve.get_marker() == SHAPES[words][0]
    assert "above maximum" not in curves  # none ever is
    with pytest.raises(hydro.InvalidInput, match="line: is 'row 9', must be one of .*'row 2'"):
        hydro.plot.chance_profile(found, "row 9")
    with pytest.raises(TypeError, match="found: is a list, not Chances"):
        hydro.plot.chance_profile([], "row 2")


def test_where_the_fault_may_be_is_drawn_along_the_lines() -> None:
    farm = hydro.read_layout(ROOT / "examples/ouzel_bench.toml").watering(["rows 1 and 2"])
    read = hydro.read_readings(ROOT / "examples/ouzel_gauge_low.toml", farm)
    found = hydro.find_fault(farm, read.readings, read.sights)
    ax = hydro.plot.fault_strips(farm, found)
    assert [label.get_text() for label in ax.get_yticklabels()] == ["supply", "row 1", "row 2"]
    row = farm.line("row 2")
    bars = {
        round(bar.get_x() + bar.get_width() / 2, 6): -bar.get_height()
        for bar in ax.patches
        if bar.get_label() != "walk here" and bar.get_y() == 2
    }
    shares = [0.0] * 10
    for fault in found.faults:
        if fault.candidate.line == "row 2" and fault.candidate.outlet is not None:
            shares[fault.candidate.outlet - 1] += fault.probability
        elif fault.candidate.line == "row 2" and fault.candidate.kind == "end open":
            shares[-1] += fault.probability  # the last outlet stands at the far end
    heights = [bars[round(row.place_of(number).to(ft), 6)] for number in range(1, 11)]
    highest = max(shares)
    assert [height / max(heights) for height in heights] == pytest.approx(
        [share / highest for share in shares]
    )
    (frame,) = [patch for patch in ax.patches if patch.get_label() == "walk here"]
    first, last = found.walk[0].first, found.walk[0].last
    assert first is not None and last is not None
    inside = [
        number
        for number in range(1, 11)
        if frame.get_x() < row.place_of(number).to(ft) < frame.get_x() + frame.get_width()
    ]
    assert inside == list(range(first, last + 1))
    assert frame.get_y() < 2 < frame.get_y() + frame.get_height()
    told = [text.get_text() for text in ax.texts]
    assert f"{100 * highest:.0f}" in told and ">99 %" in told
    assert ax.get_title(loc="left").startswith(f"Broken outlet on row 2, outlets {first} to {last}")
    assert hydro.plot.fault_strips(farm, found, units="si").get_xlabel() == "from the inlet [m]"


def test_strips_say_what_is_not_one_place() -> None:
    farm = hydro.read_layout(ROOT / "examples/ouzel_bench.toml").watering(["rows 1 and 2"])
    sound = hydro.solve(farm).line("row 2").pressure[9]

    def drawn(*pressures: hydro.Pressure) -> Axes:
        outlets = (10, 5, 1)
        readings = [
            hydro.Reading(place="riser", line="row 2", outlet=outlet, pressure=pressure)
            for outlet, pressure in zip(outlets, pressures)
        ]
        return hydro.plot.fault_strips(farm, hydro.find_fault(farm, readings))

    gauge = [hydro.Reading(place="supply gauge", pressure=33.5 * psi)]
    alone = hydro.plot.fault_strips(farm, hydro.find_fault(farm, gauge))
    assert alone.get_title(loc="left").startswith("No one place yet; likeliest ")
    for ax, words in (
        (drawn(sound), "These readings are as they should be"),
        (drawn(150 * psi, 2 * psi, 150 * psi), "No single fault explains these readings"),
    ):
        assert ax.get_title(loc="left") == words
        assert "walk here" not in [patch.get_label() for patch in ax.patches]


def test_strips_of_what_is_no_answer_are_refused() -> None:
    farm = hydro.read_layout(ROOT / "examples/ouzel_bench.toml").watering(["rows 1 and 2"])
    found = hydro.find_fault(farm, [hydro.Reading(pressure=33.5 * psi)])
    with pytest.raises(TypeError, match="found: is a list, not FoundFaults"):
        hydro.plot.fault_strips(farm, [])
    with pytest.raises(TypeError, match="layout: is a FoundFaults, not a Layout"):
        hydro.plot.fault_strips(found, farm)
    with pytest.raises(hydro.InvalidInput, match="units: is 'x'"):
        hydro.plot.fault_strips(farm, found, units="x")
