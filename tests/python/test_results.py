"""Solutions in the forms of other libraries: dicts, data frames, tables of a notebook."""

import json
import sys
from html.parser import HTMLParser

import pytest

import hydro
from hydro import ft, gpm, inch, psi


class Tables(HTMLParser):
    """The cells of every row, and the tags that were opened and not closed."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.rows: list[list[str]] = []
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.open.append(tag)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.rows[-1].append("")

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] in ("td", "th"):
            self.rows[-1][-1] += data


def rows(html: str) -> list[list[str]]:
    tables = Tables(html)
    assert tables.open == []
    return tables.rows


def row_of(name: str, count: int = 4) -> hydro.Layout:
    pipe = hydro.Pipe(inside_diameter=1 * inch, hazen_williams=150)
    spray = hydro.Outlet(flow=1.2 * gpm, at=30 * psi)
    line = hydro.Line(name=name, pipe=pipe, outlet=spray, count=count, spacing=20 * ft)
    return hydro.Layout(hydro.Supply(pressure=40 * psi), [line])


def test_a_dict_has_what_json_has(before: hydro.Solution, after: hydro.Solution) -> None:
    assert after.to_dict() == json.loads(hydro.to_json(after))
    assert after.to_dict(before) == json.loads(hydro.to_json(before, after))
    assert after.to_dict(before=before)["comparison"] is not None


def test_a_data_frame_has_one_row_an_outlet_and_every_bit(
    before: hydro.Solution, after: hydro.Solution
) -> None:
    pytest.importorskip("pandas")
    frame = after.to_dataframe()
    assert list(frame.columns) == hydro.to_csv(after).splitlines()[0].split(",")
    assert len(frame) == after.layout.outlet_count
    row_2 = frame[frame.line == "row 2"]
    solved = after.line("row 2")
    assert list(row_2.outlet) == list(range(1, 11))
    assert (row_2.pressure_pa.to_numpy() == solved.pressure.si).all()
    assert (row_2.flow_m3_per_s.to_numpy() == solved.flow.si).all()
    assert row_2.state.iloc[6] == "broken"

    both = after.to_dataframe(before)
    assert (both.pressure_pa == frame.pressure_pa).all()
    assert (both.before_pressure_pa == before.to_dataframe().pressure_pa).all()
    assert both.before_state.iloc[-1] == "works"


@pytest.mark.parametrize("name", ["NA", "7", "nan", "1e5", "a,b", 'a "b"', "None"])
def test_a_data_frame_keeps_names_as_they_are(name: str) -> None:
    pytest.importorskip("pandas")
    assert set(hydro.solve(row_of(name)).to_dataframe().line) == {name}


def test_a_data_frame_needs_pandas_and_says_so(
    after: hydro.Solution, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "pandas", None)
    with pytest.raises(ImportError, match=r"needs pandas, .* \(Debian: python3-pandas\)"):
        after.to_dataframe()


def test_a_notebook_shows_each_line_as_a_table(after: hydro.Solution) -> None:
    html = after._repr_html_()  # type: ignore[attr-defined]
    shown = rows(html)
    assert shown[0] == ["outlet", "at ft", "psi", "gal/min", "what it does"]
    assert len(shown) == 2 * (1 + 10)
    assert shown[-4] == ["7", "234.0", "0.0", "49.4", "broken"]
    assert shown[-1][-1] == "below minimum"
    assert "Out of the supply: 111.8 gal/min at 43.0 psi." in html
    of_line = after.lines[-1]._repr_html_()  # type: ignore[attr-defined]
    assert rows(of_line)[0][1:4] == ["at m", "kPa", "L/min"]


def test_a_long_table_shows_both_ends() -> None:
    solution = hydro.solve(row_of("row 1", count=500))
    shown = rows(solution._repr_html_())  # type: ignore[attr-defined]
    assert [shown[1][0], shown[30][0], shown[31][0], shown[32][0], shown[-1][0]] == [
        "1",
        "30",
        "...",
        "471",
        "500",
    ]


def test_a_notebook_shows_findings_and_layouts(
    before: hydro.Solution, after: hydro.Solution
) -> None:
    found = hydro.check(after)
    shown = rows(found._repr_html_())  # type: ignore[attr-defined]
    assert len(shown) == 1 + len(found.below_rated) + len(found.below_minimum)
    assert shown[1] == ["row 2", "2", "below rated", "23.7 psi (163 kPa)", "25.0 psi (172 kPa)"]
    assert "Every outlet has" in hydro.check(before)._repr_html_()  # type: ignore[attr-defined]
    change = hydro.compare(before, after)._repr_html_()  # type: ignore[attr-defined]
    assert "49.4 gal/min (187 L/min) more escape; the other outlets miss 12.0" in change
    assert len(rows(change)) == 1 + 8 + 5
    layout = after.layout._repr_html_()  # type: ignore[attr-defined]
    assert [row[0] for row in rows(layout)[1:]] == [line.name for line in after.layout.lines]
    assert "riser_sheared(&#x27;row 2&#x27;, 7" in layout


def test_names_cannot_write_html() -> None:
    layout = row_of("<script>alert(1)</script>").with_fault(
        hydro.capped("<script>alert(1)</script>", 1)
    )
    solution = hydro.solve(layout)
    for shown in (layout, solution, solution.lines[0], hydro.check(solution)):
        assert "<script" not in shown._repr_html_()  # type: ignore[attr-defined]


def test_what_was_not_solved_is_shown_as_no_answer() -> None:
    with pytest.raises(hydro.NotSolved) as raised:
        hydro.solve(row_of("row 1"), newton_steps=0)
    unfinished = raised.value.unfinished
    assert not unfinished.residuals.are_met()
    assert "NOT SOLVED" in unfinished._repr_html_()  # type: ignore[attr-defined]
    assert str(unfinished).startswith("NOT SOLVED: no figure below is an answer.")


def test_a_notebook_tells_of_further_supplies_and_joins(bench: hydro.Layout) -> None:
    sound = bench.without_faults()
    ditch = hydro.Supply(name="<ditch>", pressure=0 * psi)
    spare = hydro.Line(
        name="spare",
        fed_by="<ditch>",
        joins="row 1",
        pipe=sound.line("row 1").pipe,
        length=30 * ft,
    )
    layout = sound.with_further_supplies([ditch]).with_line(spare)
    solution = hydro.solve(layout)
    into = -solution.further_supplies[0].flow.to(gpm)
    assert into > 0
    html = solution._repr_html_()  # type: ignore[attr-defined]
    assert f"Into &lt;ditch&gt;: {into:.1f} gal/min at 0.0 psi." in html
    assert f"Out of the supply: {solution.supply.flow.to(gpm):.1f} gal/min at " in html
    shown = rows(layout._repr_html_())  # type: ignore[attr-defined]
    assert shown[0][:3] == ["line", "fed by", "joins"]
    assert shown[-1][:3] == ["spare", "<ditch>", "row 1"]
    assert "joins" not in sound._repr_html_()  # type: ignore[attr-defined]
