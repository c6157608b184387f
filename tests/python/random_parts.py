"""Random quantities, records and layouts, and layouts as a description file has them."""

import json
import re
from collections.abc import Callable
from typing import Any

import pytest

pytest.importorskip("hypothesis")

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

import hydro
from hydro import cm, ft, gpm, inch, kPa, kg_per_m3, lph, m, mm, mm2_per_s, psi, rpm

QUANTITIES: list[type] = [
    kind
    for kind in vars(hydro).values()
    if isinstance(kind, type) and hasattr(hydro, kind.__name__ + "Unit")
]
DESCRIPTIONS: list[type] = [
    kind
    for kind in vars(hydro).values()
    if isinstance(kind, type) and hasattr(kind, "replace") and not issubclass(kind, str)
]


def units_of(kind: type) -> list[Any]:
    """All units of a quantity, each once."""
    unit = getattr(hydro, kind.__name__ + "Unit")
    return [value for value in vars(hydro.units).values() if type(value) is unit]


def finite(most: float = 1e300) -> SearchStrategy[float]:
    """Numbers; a quantity of more than 1e294 may be infinite in SI."""
    return st.floats(min_value=-most, max_value=most)


def quantities(kind: type) -> SearchStrategy[Any]:
    """Quantities in all units, such as people write and such as come out of a calculation."""
    numbers = st.one_of(finite(), finite(1000), st.integers(-9999, 9999).map(lambda n: n / 100))
    return st.builds(lambda number, unit: number * unit, numbers, st.sampled_from(units_of(kind)))


# Records, from the types that their constructors state


def parameters(kind: type) -> dict[str, str]:
    """The parameters of a constructor and their types: `tap`, `Length | None`."""
    return {name: type_ for name, type_, _ in stated(kind)}


def needed(kind: type) -> list[str]:
    """The parameters of a constructor that have no default."""
    return [name for name, _, default in stated(kind) if not default]


def stated(kind: type) -> list[tuple[str, str, str]]:
    """Name, type and default of each parameter, as the text of the constructor says."""
    text = re.search(r"\(self, (.*)\) -> None", vars(kind)["__init__"].__doc__)
    assert text, kind
    not_in_brackets = r", (?![^\[]*\])"
    parts = [part for part in re.split(not_in_brackets, text[1]) if part not in ("*", "/")]
    split = [re.fullmatch(r"(\w+): (.*?)(?: = (.*))?", part) for part in parts]
    return [(one[1], one[2], one[3] or "") for one in split if one]


def values_of(type_: str) -> SearchStrategy[Any]:
    """Values that a parameter of this type accepts; not all of them make sense in a layout."""
    if type_.endswith(" | None"):
        return st.none() | values_of(type_.removesuffix(" | None"))
    if several := re.fullmatch(r"Iterable\[(.*)\]", type_):
        return st.lists(values_of(several[1]), max_size=3).map(tuple)
    if bounds := re.fullmatch(r"tuple\[(.*), (.*)\]", type_):
        return st.tuples(values_of(bounds[1]), values_of(bounds[2]))
    plain: dict[str, SearchStrategy[Any]] = {
        "str": st.text(max_size=5),
        "int": st.integers(-(2**31), 2**31 - 1),
        "float": finite(),
        "bool": st.booleans(),
    }
    if word := re.fullmatch(r"(\w+) \| str", type_):
        return st.sampled_from(getattr(hydro, word[1]))
    if type_ in plain:
        return plain[type_]
    kind = getattr(hydro, type_)
    return records(kind) if kind in DESCRIPTIONS else quantities(kind)


def records(kind: type) -> SearchStrategy[Any]:
    """A record with some of its fields given."""
    fields = {name: values_of(type_) for name, type_ in parameters(kind).items()}
    given = set(needed(kind))
    return st.fixed_dictionaries(
        {name: fields[name] for name in given},
        optional={name: fields[name] for name in fields if name not in given},
    ).map(lambda arguments: kind(**arguments))


# Layouts that are accepted


def between(low: float, high: float, unit: Any) -> SearchStrategy[Any]:
    """Quantities of one unit, round ones and others."""
    numbers = st.floats(low, high)
    round_ones = numbers.map(lambda number: max(low, min(high, round(number, 1))))
    return st.one_of(numbers, round_ones).map(lambda number: number * unit)


def maybe(values: SearchStrategy[Any]) -> SearchStrategy[Any]:
    return st.none() | values


@st.composite
def pipes(draw: DrawFn, name: str) -> hydro.Pipe:
    if draw(st.integers(0, 4)) == 0:
        kind = draw(st.sampled_from(["PVC Sch 40", "PVC SDR 26"]))
        size = draw(st.sampled_from(hydro.pipe_sizes(kind)))
        return hydro.nominal_pipe(size, kind).replace(name=name)
    bore = draw(st.one_of(between(0.5, 4, inch), between(12, 100, mm)))
    rating = draw(maybe(between(50, 200, psi)))
    walls: list[dict[str, Any]] = [
        {"hazen_williams": draw(st.floats(80, 150))},
        {"roughness": draw(between(0, 0.5, mm))},
        {"darcy_factor": draw(st.floats(0.01, 0.05))},
    ]
    wall = draw(st.sampled_from(walls))
    return hydro.Pipe(name=name, inside_diameter=bore, pressure_rating=rating, **wall)


@st.composite
def outlet_kinds(draw: DrawFn, name: str) -> hydro.Outlet:
    rest = {
        "name": name,
        "minimum": draw(maybe(between(2, 20, psi))),
        "maximum": draw(maybe(between(60, 90, psi))),
        "regulator": draw(maybe(between(15, 40, psi))),
        "body_bore": draw(maybe(between(6, 12, mm))),
    }
    flow = draw(st.one_of(between(0.2, 5, gpm), between(20, 900, lph)))
    way = draw(st.integers(0, 3))
    if way == 0:
        low, high = draw(between(140, 200, kPa)), draw(between(250, 400, kPa))
        steady = hydro.Compensating(low=low, high=high)
        return hydro.Outlet(flow=flow, compensating=steady, **rest)
    rated = draw(between(20, 50, psi))
    if way == 1:
        nozzle, coefficient = draw(between(1, 6, mm)), draw(maybe(st.floats(0.9, 1)))
        return hydro.Outlet(
            nozzle=nozzle, discharge_coefficient=coefficient or 0.95, rated=rated, **rest
        )
    if way == 2:
        points = [
            hydro.RatedPoint(pressure=pressure * psi, flow=factor * flow)
            for pressure, factor in ((20, 1.0), (30, draw(st.floats(1.1, 1.4))), (50, 1.6))
        ]
        return hydro.Outlet(points=points, rated=rated, **rest)
    at, exponent = draw(between(20, 50, psi)), draw(maybe(st.floats(0.3, 1)))
    rated_or_at = draw(maybe(st.just(rated)))
    return hydro.Outlet(flow=flow, at=at, exponent=exponent, rated=rated_or_at, **rest)


@st.composite
def risers(draw: DrawFn) -> hydro.Riser:
    height = draw(between(0.1, 6, ft))
    if draw(st.booleans()):
        return hydro.Riser(height=height)
    return hydro.Riser(
        height=height,
        inside_diameter=draw(between(0.4, 2, inch)),
        hazen_williams=draw(st.floats(80, 150)),
        loss_coefficient=draw(maybe(st.floats(0, 3))),
    )


@st.composite
def lines_of(
    draw: DrawFn,
    name: str,
    before: list[hydro.Line],
    further: list[hydro.Supply],
    all_pipes: Any,
    kinds: Any,
) -> hydro.Line:
    parts: dict[str, Any] = {"name": name, "pipe": draw(all_pipes)}
    if draw(st.integers(0, 3)) > 0:
        count = draw(st.integers(1, 12))
        spacing = draw(between(1, 30, ft))
        if draw(st.booleans()):
            parts |= {"outlet": draw(kinds), "count": count, "spacing": spacing}
            parts["first_at"] = draw(maybe(between(0.1, 5, m)))
        else:
            parts["outlets"] = [
                hydro.PlacedOutlet(place=number * spacing, outlet=draw(kinds))
                for number in range(1, count + 1)
            ]
        parts["riser"] = draw(risers())
        parts["outlet_loss_coefficient"] = draw(maybe(st.floats(0, 1)))
        parts["connection_length"] = draw(maybe(between(0, 20, cm)))
        if draw(st.booleans()):
            parts["elevations"] = [draw(between(-10, 10, ft)) for _ in range(count)]
        else:
            parts["ground_rise"] = draw(maybe(between(-10, 10, ft)))
    else:
        parts |= {"length": draw(between(5, 100, m)), "ground_rise": draw(between(-3, 3, m))}
    parts["loss_coefficient"] = draw(maybe(st.floats(0, 5)))
    parts["valve"] = draw(maybe(st.sampled_from(VALVES)))
    parts["regulator"] = draw(maybe(between(10, 30, psi)))
    parts["check_valve"] = draw(maybe(st.booleans()))
    line = hydro.Line(**parts)
    if draw(st.integers(0, 3)) == 0:
        reach = hydro.PipeReach(pipe=draw(all_pipes), to=line.whole_length() * 0.5)
        line = line.replace(reaches=[reach])
    if before and draw(st.integers(0, 1)) == 0:
        line = draw(joining(line, before))
    feeder = draw(st.sampled_from([None, *further, *before]))
    if feeder is None:
        return line
    if isinstance(feeder, hydro.Supply):
        return line.replace(fed_by=feeder.name)
    way = draw(st.integers(0, 2))
    if way == 0 and feeder.outlet_count() > 0:
        return line.replace(fed_by=feeder.name, tap_outlet=feeder.outlet_count())
    if way == 1:
        return line.replace(fed_by=feeder.name, tap=feeder.whole_length() * draw(st.floats(0, 1)))
    return line.replace(fed_by=feeder.name)


@st.composite
def joining(draw: DrawFn, line: hydro.Line, before: list[hydro.Line]) -> hydro.Line:
    """The line with its far end on one of those before it, or on itself; it rises to there."""
    if draw(st.integers(0, 4)) == 0:
        share = draw(st.floats(0, 0.9))
        flat = line.replace(elevations=(), ground_rise=0 * m)
        return flat.replace(joins=line.name, joins_at=line.whole_length() * share)
    other = draw(st.sampled_from(before))
    if line.elevations:  # from the last outlet on it rises to there
        line = line.replace(length=line.whole_length() + 2 * m)
    line = line.replace(joins=other.name, ground_rise=None)
    way = draw(st.integers(0, 2))
    if way == 0 and other.outlet_count() > 0:
        return line.replace(joins_outlet=draw(st.integers(1, other.outlet_count())))
    if way == 1:
        return line.replace(joins_at=other.whole_length() * draw(st.floats(0, 1)))
    return line


VALVES = [
    hydro.Valve(kind="gate"),
    hydro.Valve(kind="ball", opening="third closed"),
    hydro.Valve(kind="globe"),
    hydro.Valve(opening="shut"),
]


@st.composite
def pumps(draw: DrawFn) -> hydro.Pump:
    at_rest, most = draw(between(60, 200, ft)), draw(between(20, 150, gpm))
    points = [
        hydro.PumpPoint(flow=share * most, head=(1 - 0.3 * share**2) * at_rest)
        for share in draw(st.sampled_from([(0.0, 1.0), (0.0, 0.4, 1.0)]))
    ]
    speed = draw(maybe(between(1800, 3600, rpm)))
    return hydro.Pump(
        points=points,
        shape=draw(maybe(st.sampled_from(hydro.CurveShape))),
        curve_speed=speed,
        speed=speed and speed * draw(st.floats(0.8, 1)),
        least_flow=draw(maybe(st.just(0.1 * most))),
        most_flow=draw(maybe(st.just(1.1 * most))),
        npsh_required=draw(st.sampled_from([[], points_of_npsh(most)])),
        efficiency=draw(maybe(st.floats(0.4, 0.8))),
        power=draw(maybe(between(1, 50, hydro.hp))),
    )


def points_of_npsh(most: hydro.Flow) -> list[hydro.PumpPoint]:
    return [hydro.PumpPoint(flow=share * most, head=(1 + share) * m) for share in (0.2, 1.0)]


@st.composite
def supplies(draw: DrawFn, all_pipes: Any) -> hydro.Supply:
    """With one source, and what may stand behind it."""
    way = draw(st.integers(0, 3))
    parts: dict[str, Any] = {}
    if way == 0:
        parts["pressure"] = draw(st.one_of(between(20, 90, psi), between(100, 700, kPa)))
    elif way == 1:
        level = draw(st.one_of(between(1, 60, ft), between(0.5, 30, m)))
        parts["tank"] = hydro.Tank(level=level, diameter=draw(maybe(between(0.5, 3, m))))
    elif way == 2:
        at_rest = draw(between(30, 90, psi))
        parts["hydrant"] = hydro.Hydrant(
            pressure_at_rest=at_rest,
            residual_pressure=at_rest * draw(st.floats(0.3, 0.9)),
            flow=draw(between(50, 900, gpm)),
        )
    else:
        parts["pump"] = draw(pumps())
        if draw(st.booleans()):
            parts["second_pump"] = draw(pumps())
            parts["arrangement"] = draw(maybe(st.sampled_from(hydro.PumpArrangement)))
        if draw(st.booleans()):
            parts["suction"] = hydro.Suction(lift=draw(between(1, 9, ft)))
        elif draw(st.booleans()):
            parts["suction"] = hydro.Suction(
                lift=draw(between(1, 9, ft)),
                pipe=draw(all_pipes),
                length=draw(between(2, 30, ft)),
                loss_coefficient=draw(maybe(st.floats(0, 4))),
            )
    if draw(st.booleans()):
        loss, at = draw(between(0.5, 5, psi)), draw(between(9, 90, gpm))
        parts["filter"] = hydro.Filter(loss=loss, at=at)
        parts["gauge"] = hydro.Gauge(
            height=draw(maybe(between(1, 5, ft))),
            range=draw(maybe(between(60, 160, psi))),
            after_filter=draw(maybe(st.booleans())),
        )
    return hydro.Supply(**parts, elevation=draw(maybe(between(-30, 30, ft))))


def units_of_supply(supply: hydro.Supply) -> str:
    """A file's reports are in US units when its supply is known in such."""
    known: list[Any] = [supply.pressure]
    known += [supply.hydrant.pressure_at_rest] if supply.hydrant else []
    known += [supply.pump.points[0].head] if supply.pump else []
    known += [supply.tank.level] if supply.tank else []
    (text,) = (str(it) for it in known if it is not None)
    return "us" if text.endswith((" psi", " ft", " in")) else "si"


@st.composite
def faults_of_supply(draw: DrawFn, name: str) -> Any:
    """One that the supply may not be able to have."""
    pump = draw(maybe(st.integers(1, 2)))
    makers: list[Callable[[], Any]] = [
        lambda: hydro.pump_worn(draw(st.floats(0.01, 0.3)), pump, name),
        lambda: hydro.engine_slow(draw(between(1500, 2500, rpm)), pump, name),
        lambda: hydro.filter_dirty(draw(between(2, 9, psi)), name),
    ]
    return draw(st.sampled_from(makers))()


@st.composite
def faults_on(draw: DrawFn, line: hydro.Line, kinds: Any) -> Any:
    """One fault on a line, which may not fit it."""
    name, outlet = line.name, draw(st.integers(1, max(1, line.outlet_count())))
    place = line.whole_length() * draw(st.floats(0, 1))
    makers: list[Callable[[], Any]] = [
        lambda: hydro.head_off(name, outlet, draw(maybe(st.floats(0.5, 2)))),
        lambda: hydro.riser_sheared(name, outlet, draw(maybe(between(1, 9, inch)))),
        lambda: hydro.nozzle_missing(name, outlet, draw(maybe(between(2, 9, mm)))),
        lambda: hydro.clogged(name, outlet, draw(st.floats(0.01, 0.99))),
        lambda: hydro.worn(name, outlet, draw(st.floats(0.01, 2))),
        lambda: hydro.wrong_outlet(name, outlet, draw(kinds)),
        lambda: hydro.capped(name, outlet),
        lambda: hydro.leak(name, place, 2 * gpm, 30 * psi, draw(maybe(st.floats(0.3, 1.2)))),
        lambda: hydro.line_cut(name, place),
        lambda: hydro.end_open(name),
        lambda: hydro.valve_part_closed(name, draw(st.floats(1, 100))),
        lambda: hydro.valve_left_open(name),
        lambda: hydro.regulator_stuck_open(name),
        lambda: hydro.regulator_stuck_shut(name, draw(maybe(st.just(outlet)))),
    ]
    return draw(st.sampled_from(makers))()


@st.composite
def layouts(draw: DrawFn) -> hydro.Layout:
    """One to four lines on one to three supplies, some of which join others, with sets in which to
    water them and faults that fit; no set runs."""
    all_pipes = st.sampled_from([draw(pipes(f"pipe {n}")) for n in range(draw(st.integers(1, 3)))])
    kinds = st.sampled_from([draw(outlet_kinds(f'kind "{n}"')) for n in range(2)])
    supply = draw(supplies(all_pipes))
    further = [
        draw(supplies(all_pipes)).replace(name=f'supply "{number}"')
        for number in range(draw(st.sampled_from([0, 0, 1, 2])))
    ]
    lines: list[hydro.Line] = []
    for number in range(draw(st.integers(1, 4))):
        lines.append(draw(lines_of(f"line {number}", lines, further, all_pipes, kinds)))
    lines = draw(st.permutations(lines))
    water = hydro.Water(
        temperature=draw(maybe(between(1, 30, hydro.degC))),
        density=draw(maybe(between(990, 1010, kg_per_m3))),
        kinematic_viscosity=draw(maybe(between(0.4, 2, mm2_per_s))),
    )
    site = hydro.Site(
        name=draw(st.sampled_from(["", "bench", 'bench "2" \\ 水'])),
        altitude=draw(maybe(between(-100, 3000, m))),
        units=units_of_supply(supply),
    )
    broken = draw(st.lists(st.sampled_from(lines), max_size=3))
    faults = [draw(faults_on(line, kinds)) for line in broken]
    which = draw(st.sampled_from(["", *(it.name for it in further)]))
    faults += draw(st.lists(faults_of_supply(which), max_size=1))
    named = st.lists(st.sampled_from([line.name for line in lines]), min_size=1, unique=True)
    sets = [
        hydro.WateringSet(name=f"set {number}", lines=draw(named))
        for number in range(draw(st.integers(0, 2)))
    ]
    sound = hydro.Layout(supply, lines, water, site, sets, further)
    return sound.with_possible_faults(faults).layout


# Layouts as text


def in_file(value: Any) -> str:
    """A value as a description file has it; pipes and outlets are referred to by their names."""
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int | float):
        return repr(value)
    if isinstance(value, hydro.Pipe | hydro.Outlet):
        return in_file(value.name)
    if isinstance(value, hydro.RatedPoint | hydro.PumpPoint | hydro.EfficiencyPoint):
        both = (getattr(value, name) for name in parameters(type(value)))
        return "[" + ", ".join(map(in_file, both)) + "]"
    if isinstance(value, tuple):
        return "[" + ", ".join(map(in_file, value)) + "]"
    if type(value) in QUANTITIES:
        return in_file(str(value))
    return "{ " + ", ".join(keys_of(value)) + " }"


def keys_of(record: Any, but: tuple[str, ...] = ()) -> list[str]:
    """The fields that differ from their defaults, as keys."""
    kind = type(record)
    blank = kind(**{name: getattr(record, name) for name in needed(kind)})
    return [
        f"{name} = {in_file(getattr(record, name))}"
        for name in parameters(kind)
        if name not in but
        and (name in needed(kind) or getattr(record, name) != getattr(blank, name))
    ]


def table(name: str, keys: list[str]) -> str:
    return "\n".join([name, *keys, ""])


def description(layout: hydro.Layout) -> str:
    """The layout as a description file."""
    all_pipes: dict[str, hydro.Pipe] = {}
    kinds: dict[str, hydro.Outlet] = {}
    for supply in (layout.supply, *layout.further_supplies):
        if supply.suction and supply.suction.pipe:
            all_pipes[supply.suction.pipe.name] = supply.suction.pipe
    for line in layout.lines:
        all_pipes |= {pipe.name: pipe for pipe in [line.pipe, *(r.pipe for r in line.reaches)]}
        standing = [placed.outlet for placed in line.outlets]
        kinds |= {kind.name: kind for kind in [line.outlet, *standing] if kind}
    for fault in layout.faults:
        if isinstance(fault, hydro.WrongOutlet):
            kinds[fault.fitted.name] = fault.fitted
    text = f"name = {in_file(layout.site.name)}\n"
    text += table("[site]", keys_of(layout.site, but=("name", "units")))
    text += table("[water]", keys_of(layout.water))
    text += table("[supply]", keys_of(layout.supply))
    for name, pipe in all_pipes.items():
        text += table(f"[pipe.{in_file(name)}]", keys_of_pipe(pipe))
    for name, kind in kinds.items():
        text += table(f"[outlet.{in_file(name)}]", keys_of(kind, but=("name",)))
    for supply in layout.further_supplies:
        text += table("[[further_supply]]", keys_of(supply))
    for line in layout.lines:
        text += table("[[line]]", keys_of(line))
    for watering_set in layout.sets:
        text += table("[[set]]", keys_of(watering_set))
    for fault in layout.faults:
        text += table("[[fault]]", [f'kind = "{hydro.kind_of(fault)}"', *keys_of(fault)])
    return text


def keys_of_pipe(pipe: hydro.Pipe) -> list[str]:
    """A pipe by its bore, or by its nominal size where it has a kind."""
    if not pipe.kind:
        return keys_of(pipe, but=("name",))
    sizes = [
        size
        for size in hydro.pipe_sizes(pipe.kind)
        if hydro.nominal_size(size, pipe.kind).inside_diameter == pipe.inside_diameter
    ]
    return [f"size = {in_file(sizes[0])}", f"kind = {in_file(pipe.kind)}"]
