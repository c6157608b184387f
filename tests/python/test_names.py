"""Every public name of the C++ headers is reachable under the same name, and speaks Python."""

import re

import pytest
from headers import ROOT, declared_in_namespace, fields_of, members_of, structs

import hydro
import hydro._hydro as inside

# What is told otherwise in Python, and how.
ELSEWHERE = {
    "Between": "a tuple of the least and the most",
    "BreakOptions": "the keywords of break_every_outlet",
    "ChanceOptions": "the keywords of chances",
    "CalendarDate": "datetime.date",
    "Choice": "a value and its word: a member of a StrEnum",
    "chosen": 'ValveOpening("half closed")',
    "word_of": "the member itself is its word",
    "DayOptions": "the keywords of day_plan",
    "NextReadingOptions": "the keywords of next_reading",
    "MakeRightOptions": "the keywords of make_right",
    "DriftOptions": "the keywords of find_drift",
    "DiagnosisReportOptions": "the keywords of diagnosis_report",
    "CalibrateOptions": "the keywords of calibrate",
    "DayReportOptions": "the keywords of day_report",
    "DrainOptions": "the keywords of drain",
    "DrawingOptions": "the keywords of to_svg",
    "EmissionDesign": "the keywords of design_emission_uniformity",
    "FillOptions": "the keywords of filling",
    "InletPositionOptions": "the keywords of inlet_position",
    "LongestLineOptions": "the keywords of longest_line",
    "PumpReadingPlace": "the keywords of pump_from_readings",
    "RemedyOptions": "the keywords of remedies",
    "ReportOptions": "the keywords of report",
    "RoomOptions": "the keywords of room_on_line",
    "SetsTogetherOptions": "the keywords of sets_together",
    "SmallestPipeOptions": "the keywords of smallest_pipe",
    "SoilWaterOptions": "the keywords of water_need",
    "SolveOptions": "the keywords of solve",
    "SurgeOptions": "the keywords of surges",
    "Work": "the keywords threads and progress of what takes long",
    "Influence": "a template; its classes have names: PressureInfluence",
    "Quantity": "a template; its classes have names: Pressure",
    "Sensitivity": "a template; its classes have names: PressureSensitivity",
    "Series": "a template; its classes have names: PressureSeries",
    "SeriesSpread": "a template; its classes have names: PressureSeriesSpread",
    "Spread": "a template; its classes have names: PressureSpread",
    "Uniformity": "a template; its classes have names: FlowUniformity",
    "Unit": "a template; its classes have names: PressureUnit",
    "Acceleration": "only gravity is one, which is a number",
    "read_date": "datetime.date.fromisoformat",
    "from_text": 'Pressure("25 psi")',
    "si": "the .si of a series; of one quantity .to(unit)",
    "plain": "a number needs no unit",
    "to_message": "the words of messages, which Python hears ready made",
    "in_quotes": "likewise",
    "list_in_quotes": "likewise",
    "listed_at_most": "likewise",
    "is_control": "likewise",
    "version": "__version__",
}
RISKY_UNITS = {"J", "K", "W", "day", "h", "min", "s"}  # namesakes of common variables live in hydro.units
KEYWORDS = {
    "BreakOptions": "break_every_outlet",
    "ChanceOptions": "chances",
    "DayOptions": "day_plan",
    "NextReadingOptions": "next_reading",
    "MakeRightOptions": "make_right",
    "DriftOptions": "find_drift",
    "DiagnosisReportOptions": "diagnosis_report",
    "CalibrateOptions": "calibrate",
    "DayReportOptions": "day_report",
    "DrainOptions": "drain",
    "DrawingOptions": "to_svg",
    "EmissionDesign": "design_emission_uniformity",
    "FillOptions": "filling",
    "InletPositionOptions": "inlet_position",
    "LongestLineOptions": "longest_line",
    "PumpReadingPlace": "pump_from_readings",
    "RemedyOptions": "remedies",
    "ReportOptions": "report",
    "RoomOptions": "room_on_line",
    "SetsTogetherOptions": "sets_together",
    "SmallestPipeOptions": "smallest_pipe",
    "SoilWaterOptions": "water_need",
    "SolveOptions": "solve",
    "SurgeOptions": "surges",
    "Work": "chances",
}
TEMPLATES = {
    "Influence": "PressureInfluence",
    "Sensitivity": "PressureSensitivity",
    "Series": "PressureSeries",
    "SeriesSpread": "FlowSeriesSpread",
    "Spread": "NumberSpread",
    "Uniformity": "FlowUniformity",
    "Unit": "PressureUnit",
}
IN_PYTHON_ALONE = {
    "__version__",
    "readings_from_table",  # which C++ reads from TOML only
    "units",
    "FlowFigureKind",  # FlowFigure::Kind
    "PressureFigureKind",  # PressureFigure::Kind
    "FlowTable",  # a Series of rows and columns, one after another
    "PressureTable",
}
MEMBERS_ELSEWHERE = {
    "Series": {  # as Python's own sequences
        "size": "len()",
        "empty": "len() == 0",
        "at": "[]",
        "front": "[0]",
        "back": "[-1]",
        "begin": "iter()",
        "end": "iter()",
    },
    "Unit": {  # what converts by
        "numerator": "number * unit",
        "denominator": "number * unit",
        "before": "number * unit",
        "after": "number * unit",
        "to_si": "number * unit",
        "from_si": ".to(unit)",
    },
}


def test_every_name_of_the_headers_is_reachable() -> None:
    declared = declared_in_namespace()
    assert len(declared) > 150 and {"solve", "Pipe", "psi", "UnitSystem", "gravity"} <= declared
    missing = {
        name
        for name in declared - set(ELSEWHERE) - RISKY_UNITS
        if not hasattr(hydro, name) or name not in hydro.__all__
    }
    assert missing == set()
    assert set(ELSEWHERE) <= declared, "an exception that is none any more"
    assert not [name for name in ELSEWHERE if hasattr(hydro, name)]
    assert all(hasattr(hydro.units, name) and not hasattr(hydro, name) for name in RISKY_UNITS)


def test_nothing_is_public_in_python_alone() -> None:
    made_of_templates = {
        name
        for name in hydro.__all__
        if re.fullmatch(r"(\w+)(Influence|Sensitivity|Series|Spread|Unit|Uniformity)", name) and name not in ELSEWHERE
    }
    assert set(hydro.__all__) - declared_in_namespace() - made_of_templates == IN_PYTHON_ALONE


@pytest.mark.parametrize("name", [name for name in structs() if name not in {"Between", "CalendarDate", "Choice"}])
def test_every_member_of_a_struct_is_reachable(name: str) -> None:
    fields, methods = members_of(name)
    if name in KEYWORDS:
        text = getattr(hydro, KEYWORDS[name]).__doc__
        assert all(f"{field}: " in text for field in fields)
        return
    kind = getattr(hydro, TEMPLATES.get(name, name))
    elsewhere = MEMBERS_ELSEWHERE.get(name, {})
    carried = {"problems", "unfinished", "done", "of", "steps", "last_step", "misfits"}
    of_an_error = carried if issubclass(kind, Exception) else set()
    missing = {member for member in (*fields, *methods) if not hasattr(kind, member)}
    assert missing - of_an_error == set(elsewhere)
    for field in set(fields) - set(elsewhere):
        assert isinstance(getattr(kind, field), property)


@pytest.mark.parametrize("name", [name for name in structs() if hasattr(hydro, name)])
def test_a_struct_has_no_other_attributes_than_in_cpp(name: str) -> None:
    fields, methods = members_of(name)
    own = {key for key in vars(getattr(hydro, name)) if not key.startswith("_")}
    of_python = {"replace", "to_dict", "to_dataframe"}
    assert own - {*fields, *methods} <= of_python


def test_names() -> None:
    public = {name for name in vars(inside) if not name.startswith("_")}
    in_python = {"__version__", "units", "InvalidInput", "NotCalibrated", "NotDrained", "NotSolved", "Stopped", "readings_from_table"}
    in_python |= {
        name for name, kind in vars(hydro).items() if isinstance(kind, type(hydro.UnitSystem))
    }
    assert (public - RISKY_UNITS) | in_python == set(hydro.__all__)
    assert hydro.Pressure.__module__ == hydro.InvalidInput.__module__ == "hydro"
    stated = re.search(r"project\(.*?VERSION (\S+)", (ROOT / "CMakeLists.txt").read_text(), re.S)
    assert stated and hydro.__version__ == stated[1]


@pytest.mark.parametrize("name", sorted(hydro.__all__))
def test_signatures_speak_python(name: str) -> None:
    thing = getattr(hydro, name)
    described = [thing, *vars(thing).values()] if isinstance(thing, type) else [thing]
    for part in described:
        assert not re.search(r"::|boost", getattr(part, "__doc__", None) or "")


# One vocabulary: fields of C++, keywords of Python, keys of a file

FILE = """
[site]
x = 1
[water]
x = 1
[supply]
x = 1
pressure = "3 bar"
pump = { x = 1 }
tank = { x = 1 }
hydrant = { x = 1 }
suction = { x = 1 }
filter = { x = 1 }
gauge = { x = 1 }
[[further_supply]]
x = 1
[pipe.lateral]
x = 1
inside_diameter = "1 in"
hazen_williams = 150
[outlet.spray]
x = 1
flow = "1 gpm"
at = "20 psi"
[[line]]
x = 1
name = "row 1"
pipe = "lateral"
outlet = "spray"
count = 3
spacing = "1 m"
riser = { x = 1, height = "1 m" }
valve = { x = 1, kind = "gate" }
[[set]]
x = 1
"""
PARTS = {  # what a part is called in a message of the reader
    "Site": "site: ",
    "Water": "water: ",
    "Supply": "supply: ",
    "Pump": "supply: pump.",
    "Tank": "supply: tank.",
    "Hydrant": "supply: hydrant.",
    "Suction": "supply: suction.",
    "Filter": "supply: filter.",
    "Gauge": "supply: gauge.",
    "Pipe": 'pipe "lateral": ',
    "Outlet": 'outlet "spray": ',
    "Line": 'line "row 1": ',
    "Riser": 'line "row 1": riser.',
    "Valve": 'line "row 1": valve.',
    "WateringSet": "set 1: ",
}
NO_KEYS = {
    "Site": {"name", "units"},  # `name` of the whole file; units follow from the supply's
    "Supply": {"name"},  # of further ones
    "Pipe": {"name"},  # of its table
    "Outlet": {"name"},
}
KEYS_ALONE = {"Pipe": {"size"}, "Riser": {"size", "kind"}}  # bore and wall by nominal_pipe


@pytest.mark.parametrize("name", PARTS)
def test_fields_are_keywords_and_keys(name: str) -> None:
    kind = getattr(hydro, name)
    with pytest.raises(TypeError) as refused:
        kind(x=1)
    assert str(refused.value) == f"{name} has no x; it takes {', '.join(fields_of(name))}"
    with pytest.raises(TypeError) as refused:
        kind().replace(x=1)
    assert str(refused.value) == f"{name} has no x; it has {', '.join(fields_of(name))}"

    fields = set(fields_of(name)) - NO_KEYS.get(name, set())
    assert keys_of_part(PARTS[name]) == fields | KEYS_ALONE.get(name, set())


def test_a_further_supply_has_the_keys_of_the_first_and_a_name() -> None:
    assert keys_of_part("further supply 1: ") == set(fields_of("Supply"))


def keys_of_part(called: str) -> set[str]:
    """As the reader says them of a part, which is called so in its message."""
    with pytest.raises(hydro.InvalidInput) as read:
        hydro.read_layout_text(FILE)
    said = f'{called}"x": is not a key known here; accepted are '
    (accepted,) = (line.split(said)[1] for line in str(read.value).splitlines() if said in line)
    return set(accepted.split(", "))
