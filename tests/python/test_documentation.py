"""What the texts of the package say is true, and the stub is what the module says of itself."""

import doctest
import inspect
import subprocess
import sys
from pathlib import Path

import pytest

import hydro
import hydro.units

ROOT = Path(__file__).resolve().parents[2]
PUBLIC = [name for name in hydro.__all__ if not name.startswith("__")]


def doctests():
    """The examples of every public thing, as if after `from hydro import *`."""
    names = {name: getattr(hydro, name) for name in PUBLIC}
    finder = doctest.DocTestFinder(exclude_empty=True)
    for name in PUBLIC:
        for test in finder.find(names[name], name, module=False, globs=names):
            if test.examples:
                yield pytest.param(test, id=test.name)


@pytest.mark.parametrize("test", list(doctests()))
def test_examples_in_texts_give_what_they_say(test, monkeypatch):
    monkeypatch.chdir(ROOT)  # some read examples/ouzel_strips.toml
    told = []
    runner = doctest.DocTestRunner(optionflags=doctest.NORMALIZE_WHITESPACE)
    assert runner.run(test, out=told.append).failed == 0, "".join(told)


def test_every_function_has_an_example():
    functions = {name for name in PUBLIC if inspect.isfunction(getattr(hydro, name))}
    assert functions - {test.id for test in doctests()} == set()


@pytest.mark.parametrize("name", PUBLIC)
def test_everything_public_has_a_text(name):
    value = getattr(hydro, name)
    if inspect.isclass(value) or inspect.isfunction(value):
        assert inspect.getdoc(value)
    if inspect.isfunction(value):
        assert inspect.signature(value)
    if inspect.isclass(value) and value.__module__ == "hydro":
        for member, held in vars(value).items():
            if isinstance(held, property):
                assert held.__doc__, f"{name}.{member}"


def test_the_stub_is_what_the_module_says_of_itself():
    command = [sys.executable, "-P", str(ROOT / "bindings" / "write_stub.py")]
    written = subprocess.run(command, capture_output=True, check=True, text=True).stdout
    assert written == (ROOT / "bindings" / "hydro" / "_hydro.pyi").read_text()
