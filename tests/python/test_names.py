"""Every public name of the C++ headers is reachable, and speaks Python."""

import re
from pathlib import Path

import pytest

import hydro

ROOT = Path(__file__).resolve().parents[2]


def test_names():
    import hydro._hydro as inside

    public = {name for name in vars(inside) if not name.startswith("_")}
    in_python = {"__version__", "units", "InvalidInput", "NotSolved"}
    in_python |= {"UnitSystem", "FirstOutlet", "OutletState"}
    assert (public - {"s", "min", "h", "K"}) | in_python == set(hydro.__all__)
    assert all(hasattr(hydro.units, risky) for risky in ("s", "min", "h", "K"))
    assert hydro.Pressure.__module__ == hydro.InvalidInput.__module__ == "hydro"
    stated = re.search(r"project\(.*?VERSION (\S+)", (ROOT / "CMakeLists.txt").read_text(), re.S)
    assert hydro.__version__ == stated[1]


@pytest.mark.parametrize("name", sorted(hydro.__all__))
def test_signatures_speak_python(name):
    thing = getattr(hydro, name)
    described = [thing, *vars(thing).values()] if isinstance(thing, type) else [thing]
    for part in described:
        assert not re.search(r"::|boost", getattr(part, "__doc__", None) or "")
