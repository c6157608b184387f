"""Lines that join others, and further supplies: how they are told, asked, refused and kept."""

import pickle
from collections.abc import Callable
from typing import Any

import pytest

import hydro
from hydro import ft, gpm, inch, m, psi, rpm

# Ouzel Bench (invented): rows 1 and 2 with a cross pipe between their far ends, a tank on the hill.
LATERAL = hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
HEAD = hydro.Outlet(flow=3.52 * gpm, at=25 * psi, minimum=18 * psi)
ROW = hydro.Line(
    name="row 1",
    fed_by="manifold",
    pipe=LATERAL,
    outlet=HEAD,
    count=10,
    spacing=36 * ft,
    ground_rise=0 * ft,
    riser=hydro.Riser(height=4 * ft),
)
MANIFOLD = hydro.Line(name="manifold", pipe=LATERAL, length=30 * ft)
ROW_2 = ROW.replace(name="row 2", tap=0 * ft, ground_rise=3 * ft)
CROSS = hydro.Line(name="cross pipe", fed_by="row 1", joins="row 2", pipe=LATERAL, length=30 * ft)
SPARE = hydro.Line(
    name="spare",
    fed_by="hill tank",
    joins="row 2",
    joins_outlet=4,
    check_valve=True,
    pipe=LATERAL,
    length=90 * ft,
)
PUMP = hydro.Pump(
    points=[
        hydro.PumpPoint(flow=0 * gpm, head=150 * ft),
        hydro.PumpPoint(flow=130 * gpm, head=107.75 * ft),
    ],
    curve_speed=2600 * rpm,
)
TANK = hydro.Supply(name="hill tank", tank=hydro.Tank(level=6 * ft), elevation=80 * ft)
RING = hydro.Layout(
    hydro.Supply(pump=PUMP), [MANIFOLD, ROW, ROW_2, CROSS, SPARE], further_supplies=[TANK]
)


def test_a_ring_is_told_by_its_lines() -> None:
    index = {line.name: RING.index_of(line.name) for line in RING.lines}
    assert RING.joined_by(index["cross pipe"]) == index["row 2"] == RING.joined_by(index["spare"])
    assert RING.joined_by(index["row 1"]) is None
    assert [RING.supply_of(i) for i in range(5)] == [0, 0, 0, 0, 1]
    assert RING.feeder_of(index["spare"]) is None and RING.further_supplies == (TANK,)
    assert hydro.ends_at(SPARE, ROW_2) == 4 * 36 * ft
    assert hydro.ends_at(SPARE.replace(joins_outlet=None, joins_at=9 * ft), ROW_2) == 9 * ft
    assert hydro.ends_at(CROSS, ROW_2) == ROW_2.whole_length()
    # The cross pipe rises from the end of row 1 to that of row 2; the spare line comes down.
    assert RING.ground_rise(index["cross pipe"]).to(ft) == pytest.approx(3)
    assert RING.inlet_elevation(index["spare"]) == 80 * ft
    assert RING.ground_rise(index["spare"]).to(ft) == pytest.approx(3 * 4 / 10 - 80)
    assert repr(RING) == "<hydro.Layout: lines 5, outlets 20, faults 0, further supplies 1>"
    with pytest.raises(IndexError, match="^line_index: is 5 of 5 lines, counted from 0$"):
        RING.joined_by(5)


def test_where_water_can_come() -> None:
    closed = RING.with_line(ROW.replace(valve=hydro.Valve(opening="shut")))
    row = closed.index_of("row 1")
    assert closed.inlet_is_shut(row) and not closed.is_shut(row) and not closed.is_cut_off(row)
    assert closed.has_water(row, 10 * ft)
    alone = closed.without("cross pipe")
    assert alone.is_shut(row) and not alone.has_water(row, 10 * ft)
    # Of a row that is cut both parts have water; without the cross pipe the part beyond has none.
    cut = RING.with_fault(hydro.line_cut("row 1", 100 * ft))
    assert cut.open_end_of(row) == 100 * ft
    assert cut.has_water(row, 99 * ft) and cut.has_water(row, 101 * ft)
    assert all(cut.outlet_has_water(row, outlet) for outlet in range(1, 11))
    tree = RING.without("cross pipe").with_fault(hydro.line_cut("row 1", 100 * ft))
    assert tree.has_water(row, 99 * ft) and not tree.has_water(row, 101 * ft)
    assert [tree.outlet_has_water(row, outlet) for outlet in (2, 3)] == [True, False]
    assert tree.inlet_has_water(row) and not tree.has_water_beyond_open_end(row)
    assert cut.inlet_has_water(row) and cut.has_water_beyond_open_end(row)
    # A check valve lets the spare line give water, but have none from row 2.
    spare = RING.index_of("spare")
    assert RING.has_water(spare, 0 * ft)
    assert not RING.without("spare").is_cut_off(RING.without("spare").index_of("row 2"))


def test_supplies_are_changed_and_their_faults_told() -> None:
    strainer = hydro.Filter(loss=1 * psi, at=80 * gpm)
    creek = hydro.Supply(name="creek", pump=PUMP, filter=strainer)
    two = RING.with_further_supplies([TANK, creek])
    assert two.further_supplies == (TANK, creek) and two != RING
    assert two.with_further_supplies([TANK]) == RING
    faults: list[hydro.Fault] = [
        hydro.pump_worn(0.1, supply="creek"),
        hydro.filter_dirty(5 * psi, supply="creek"),
    ]
    broken = two.with_faults([*faults, hydro.pump_worn(0.2)])
    assert broken.further_supplies == two.further_supplies
    assert broken.further_supplies_as_they_are == (TANK, hydro.with_faults(creek, faults))
    assert broken.further_supplies_as_they_are[1].filter == strainer.replace(loss=5 * psi)
    assert broken.supply_as_it_is == hydro.with_faults(two.supply, [hydro.pump_worn(0.2)])
    assert [hydro.supply_of(fault) for fault in broken.faults] == ["creek", "creek", ""]
    assert hydro.describe(faults[1], broken, "us").startswith("creek: ")
    assert pickle.loads(pickle.dumps(broken)) == broken
    assert hydro.takes_water_in(TANK) and not hydro.takes_water_in(creek)
    into_tank = hydro.operating_point(TANK, -5 * gpm)
    assert into_tank.flow == -5 * gpm and into_tank.pressure >= into_tank.source_pressure
    with pytest.raises(hydro.InvalidInput, match="^flow: is -"):
        hydro.operating_point(creek, -5 * gpm)
    with pytest.raises(hydro.InvalidInput, match="creek"):
        broken.with_further_supplies([TANK])


def ring_with(**changes: Any) -> Callable[[], object]:
    """The ring with another cross pipe."""
    return lambda: RING.with_line(CROSS.replace(**changes))


def supplied_by(*further: hydro.Supply) -> Callable[[], object]:
    return lambda: RING.with_further_supplies([TANK, *further])


@pytest.mark.parametrize(
    "use, message",
    [
        (ring_with(joins="row 9"), 'line "cross pipe": joins: is "row 9", but there is no such'),
        (ring_with(joins_at=400 * ft), "joins_at: is 121.92 m, beyond the far end of line"),
        (ring_with(joins_outlet=11), 'joins_outlet: is 11, but line "row 2" has 10 outlets'),
        (ring_with(joins="cross pipe"), "joins: is its own far end; say where along it, with"),
        (ring_with(joins_at=1 * ft, joins_outlet=1), "are both given; take one of the two ways"),
        (ring_with(joins="", joins_at=1 * ft), "joins_at: is given, but joins is not"),
        (ring_with(ground_rise=2 * ft), "ground_rise: brings its far end to an elevation of "),
        (
            lambda: RING.with_line(ROW_2.replace(ground_rise=None, joins="cross pipe")),
            "ground_rise: is not given, and how high line .* hangs on it in turn; give one of them",
        ),
        (
            lambda: RING.with_line(SPARE.replace(tap=5 * ft)),
            'tap: is given, but "hill tank" is a supply, not a line',
        ),
        (supplied_by(TANK), 'further supply 2: name: is "hill tank", which is the name of further'),
        (supplied_by(TANK.replace(name="row 1")), "which is the name of a line already"),
        (supplied_by(TANK.replace(name="")), "further supply 2: name: is empty; every further"),
        (supplied_by(hydro.Supply(name="creek")), "further supply 2: "),
        (
            lambda: RING.with_supply(RING.supply.replace(name="creek")),
            'supply: name: is "creek"; only further supplies have one',
        ),
        (lambda: RING.with_further_supplies([]), 'fed_by: is "hill tank", but there is no such'),
        (lambda: RING.without("row 2"), 'joins: is "row 2", but there is no such line'),
        (
            lambda: RING.with_fault(hydro.end_open("cross pipe")),
            'line: is "cross pipe", whose far end joins line "row 2"; "line cut" parts them',
        ),
        (
            lambda: RING.with_fault(hydro.pump_worn(0.1, supply="creek")),
            'fault 1: supply: is "creek", but there is no such further supply',
        ),
        (lambda: RING.with_fault(hydro.pump_worn(0.1, supply="hill tank")), "fault 1: "),
        (
            lambda: hydro.ends_at(SPARE, MANIFOLD),
            "joins_outlet: is 4, but the line has no outlets",
        ),
    ],
)
def test_what_is_refused(use: Callable[[], object], message: str) -> None:
    with pytest.raises(hydro.InvalidInput, match=message):
        use()


def test_how_many_further_supplies_there_may_be() -> None:
    many = [TANK.replace(name=f"tank {n}") for n in range(hydro.most_further_supplies)]
    assert len(RING.with_further_supplies([TANK, *many[1:]]).further_supplies) == len(many)
    with pytest.raises(hydro.InvalidInput, match="there are 1001, must be at most 1000"):
        RING.with_further_supplies([TANK, *many])


def test_a_far_end_may_seem_off_by_same_height() -> None:
    rise = RING.ground_rise(RING.index_of("cross pipe"))
    near = CROSS.replace(ground_rise=rise + 0.99 * hydro.same_height)
    assert RING.with_line(near).line("cross pipe").ground_rise == near.ground_rise
    with pytest.raises(hydro.InvalidInput, match="ground_rise: brings its far end"):
        RING.with_line(CROSS.replace(ground_rise=rise + 1.01 * hydro.same_height))


def test_a_file_tells_what_python_does() -> None:
    text = """
[supply]
pressure = "40 psi"
[[further_supply]]
name = "hill tank"
tank = { level = "6 ft" }
elevation = "80 ft"
[pipe.lateral]
inside_diameter = "1.754 in"
hazen_williams = 150
[[line]]
name = "main"
pipe = "lateral"
length = "30 ft"
[[line]]
name = "spare"
fed_by = "hill tank"
joins = "main"
joins_at = "20 ft"
check_valve = true
pipe = "lateral"
length = "90 ft"
"""
    read = hydro.read_layout_text(text)
    assert read.further_supplies == (TANK,)
    assert read.line("spare").joins_at == 20 * ft and read.line("spare").check_valve is True
    assert read.line("main").joins == "" and read.line("main").check_valve is None
