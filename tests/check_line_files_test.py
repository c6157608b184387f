"""The files that check_line writes, read by the parsers of Python's standard library.

    check_line_files_test.py PROGRAM EXAMPLES_FOLDER

Exit status: 0 all is well; otherwise it says what is not.
"""

import csv
import json
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as xml
from pathlib import Path

SVG = "{http://www.w3.org/2000/svg}"

# Names that CSV, JSON and XML each have to guard.
HOSTILE = """
name = '''a, "b" & <c> ]]> 'fünf' — 水'''
[supply]
pressure = "40 psi"
[pipe.wide]
inside_diameter = "2 in"
hazen_williams = 150
[outlet.'spray, "A" & <B>']
flow = "2 gpm"
at = "30 psi"
[[line]]
name = '''=row, "1" & </text><b> \\ 水'''
pipe = "wide"
outlet = 'spray, "A" & <B>'
count = 300
spacing = "1 ft"
"""


def run(program, description, folder):
    files = {kind: folder / f"out.{kind}" for kind in ("csv", "json", "svg")}
    options = [text for kind, file in files.items() for text in (f"--{kind}", str(file))]
    done = subprocess.run([program, description, *options], capture_output=True, text=True)
    assert done.returncode in (0, 1), done.stderr
    with files["csv"].open(newline="", encoding="utf-8") as stream:
        table = list(csv.DictReader(stream, strict=True))
    whole = json.loads(files["json"].read_text(encoding="utf-8"))
    return table, whole, xml.fromstring(files["svg"].read_bytes())


def run_breaks(program, description, folder):
    files = {kind: folder / f"breaks.{kind}" for kind in ("csv", "svg")}
    options = [text for kind, file in files.items() for text in (f"--{kind}", str(file))]
    done = subprocess.run(
        [program, description, '--break-every=kind="capped"', *options],
        capture_output=True,
        text=True,
    )
    assert done.returncode in (0, 1), done.stderr
    assert done.stderr == "", "progress where there is no terminal"
    with files["csv"].open(newline="", encoding="utf-8") as stream:
        table = list(csv.DictReader(stream, strict=True))
    return table, xml.fromstring(files["svg"].read_bytes())


def expect_same(table, solution, prefix=""):
    """The table has what the JSON has, number by number."""
    rows = iter(table)
    for line in solution["lines"]:
        for i, kind in enumerate(line["kind"]):
            row = next(rows)
            assert row["line"] == line["name"] and row["outlet"] == str(i + 1), row
            assert row["kind"] == solution["outlet_kinds"][kind]["name"], row
            assert float(row["rated_pressure_pa"]) == solution["outlet_kinds"][kind]["rated"], row
            assert float(row["distance_m"]) == line["distance"][i], row
            for name, unit in (
                ("pressure", "pa"),
                ("line_pressure", "pa"),
                ("flow", "m3_per_s"),
                ("velocity", "m_per_s"),
            ):
                assert float(row[f"{prefix}{name}_{unit}"]) == line[name][i], (name, row)
            assert row[prefix + "state"] == line["state"][i], row
    assert next(rows, None) is None, "more rows than outlets"


def texts_of(picture):
    return [element.text for element in picture.iter(SVG + "text")]


def main(program, examples):
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        bench = f"{examples}/ouzel_strips.toml"
        table, whole, picture = run(program, bench, folder)
        assert whole["format"] == "hydro solution 1"
        assert len(table) == 20
        expect_same(table, whole)
        expect_same(table, whole["before"], "before_")
        assert {"row 1", "row 2", "rated 25 psi", "7 broken"} <= set(texts_of(picture))

        hostile = folder / "hostile.toml"
        hostile.write_text(HOSTILE, encoding="utf-8")
        table, whole, picture = run(program, str(hostile), folder)
        expect_same(table, whole)
        assert whole["before"] is None and "before_state" not in table[0]
        assert whole["site"] == picture.find(SVG + "title").text == "a, \"b\" & <c> ]]> 'fünf' — 水"
        assert whole["lines"][0]["name"] in texts_of(picture)
        assert picture.find(f".//{SVG}b") is None

        table, picture = run_breaks(program, bench, folder)
        assert [row["outcome"] for row in table].count("skipped") == 1  # that is sheared already
        assert {"row 1", "row 2", "before", "stop working"} <= set(texts_of(picture))
        table, picture = run_breaks(program, str(hostile), folder)
        assert len(table) == 300 and table[0]["line"] == whole["lines"][0]["name"]
        assert picture.find(SVG + "title").text == "a, \"b\" & <c> ]]> 'fünf' — 水"
        assert picture.find(f".//{SVG}b") is None


if __name__ == "__main__":
    main(*sys.argv[1:])
