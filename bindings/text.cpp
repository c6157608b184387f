// text.cpp: description files in; reports, tables and drawings out.

#include "hydro/text/csv.hpp"
#include "hydro/text/drawing.hpp"
#include "hydro/text/json.hpp"
#include "hydro/text/read_layout.hpp"
#include "hydro/text/report.hpp"
#include "hydro/text/write_file.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

/// A solution that may be left out is read where it is.
struct MaybeSolution {
  const Solution* solution = nullptr;
};

}  // namespace

template <>
struct Type<MaybeSolution> {
  static std::string accepts() { return "Solution | None"; }
  static MaybeSolution from(py::handle given, const Where& where) {
    return {given.is_none() ? nullptr : &Type<Solution>::from(given, where)};
  }
};

namespace {

void bind_readers(py::module_& module) {
  def(module,
      "read_layout",
      &read_layout,
      {"file"},
      "Reads a description file (TOML 1.0). Its faults are in the layout; reports are in US units "
      "when the supply's pressure is given in psi. InvalidInput with every mistake, each with "
      "file, "
      "line and column.");
  def(
      module,
      "read_layout_text",
      [](const std::string& text, const std::string& name) { return read_layout_text(text, name); },
      {"text", {"name", py::str("text")}},
      "The same from text; `name` stands for the file in errors.");
  def(module,
      "read_outlets",
      &read_outlets,
      {"file"},
      "The kinds of outlets that a description file defines, used or not.");
  def(
      module,
      "read_fault",
      [](const std::string& text, const std::vector<Outlet>& outlets) {
        return read_fault(text, outlets);
      },
      {"text", {"outlets", py::tuple()}},
      "Reads the inside of an inline table. outlets: those that a wrong one may be, by their "
      "names.\n\n"
      ">>> read_fault('line = \"row 2\", outlet = 7, kind = \"head off\"')\n"
      "head_off('row 2', 7)");
}

void bind_writers(py::module_& module) {
  def(
      module,
      "report",
      [](const Solution& solution,
         const MaybeSolution& after,
         std::optional<UnitSystem> units,
         const std::vector<SkippedFault>& skipped) {
        const ReportOptions options{.units = units, .skipped = skipped};
        return after.solution ? report(solution, *after.solution, options)
                              : report(solution, options);
      },
      {"solution",
       may_be_left_out("after"),
       may_be_left_out("units", Passing::by_name),
       {"skipped", py::tuple(), Passing::by_name}},
      "A solved layout told to the person who waters from it; with `after`, what the faults of "
      "that "
      "one do to the rest. units: \"us\" or \"si\", default those of the site. skipped: faults to "
      "be listed. InvalidInput when the two do not have the same lines and outlets.");
  def(
      module,
      "to_csv",
      [](const Solution& solution, const MaybeSolution& after) {
        return after.solution ? to_csv(solution, *after.solution) : to_csv(solution);
      },
      {"solution", may_be_left_out("after")},
      "One row for each outlet (RFC 4180); numbers in SI, the unit in the column's name. The last "
      "five columns are followed by those of the first solution when two are given.");
  def(
      module,
      "to_json",
      [](const Solution& solution, const MaybeSolution& after) {
        return after.solution ? to_json(solution, *after.solution) : to_json(solution);
      },
      {"solution", may_be_left_out("after")},
      "All that is known, as one object (RFC 8259); quantities are numbers in SI.");
  def(
      module,
      "to_svg",
      [](const Solution& solution, const MaybeSolution& after, std::optional<UnitSystem> units) {
        const DrawingOptions options{.units = units};
        return after.solution ? to_svg(solution, *after.solution, options)
                              : to_svg(solution, options);
      },
      {"solution", may_be_left_out("after"), may_be_left_out("units", Passing::by_name)},
      "The pressure at every outlet along each line, as an SVG picture. units: \"us\" or \"si\", "
      "default those of the site.");
  def(
      module,
      "write_file",
      [](const std::filesystem::path& path, const std::string& text) { write_file(path, text); },
      {"path", "text"},
      "A text into a file, whole or not at all. InvalidInput with the path and the reason.");
}

}  // namespace

void bind_text(py::module_& module) {
  bind_readers(module);
  bind_writers(module);
}

}  // namespace hydro::bindings
