// layout.cpp: lines, layouts, and faults on them.

#include "hydro/layout/layout.hpp"

#include "hydro/answers/drain.hpp"
#include "hydro/layout/fault.hpp"
#include "hydro/layout/line.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/watering/block.hpp"
#include "hydro/watering/crop_coefficient.hpp"
#include "hydro/watering/day_plan.hpp"
#include "hydro/watering/missed_water.hpp"
#include "hydro/watering/reference_evapotranspiration.hpp"
#include "hydro/watering/soil_water.hpp"
#include "hydro/what_ifs/priced_pipe.hpp"
#include "hydro/what_ifs/uncertainty.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr auto inside = py::return_value_policy::reference_internal;

/// Line's members take it for granted that the outlet is there.
const Line& with_outlet(const Line& line, int outlet_number, const char* key = "outlet_number") {
  const int count = line.outlet_count();
  if (outlet_number < 1 || outlet_number > count)
    throw InvalidInput(key,
                       "is " + std::to_string(outlet_number) +
                           (count == 0 ? ", but the line has no outlets"
                                       : ", must be from 1 to " + std::to_string(count)));
  return line;
}

/// What is missing may be looked up at the outlet that a fault is on.
const Line& with_nozzle_of(const Fault& fault, const Line& line) {
  const auto* const missing = std::get_if<NozzleMissing>(&fault);
  return missing && !missing->bore ? with_outlet(line, missing->outlet, "outlet") : line;
}

/// What a fault is described by: its line, or the layout.
struct LineOrLayout {
  const Line* line = nullptr;
  const Layout* layout = nullptr;
};

}  // namespace

template <>
struct Type<LineOrLayout> {
  static std::string accepts() { return "Line | Layout"; }
  static LineOrLayout from(py::handle given, const Where& where) {
    if (py::isinstance<Layout>(given)) return {.layout = &given.cast<const Layout&>()};
    return {.line = &Type<Line>::from(given, where)};
  }
};

/// One of them may stand alone.
struct SetNames {
  std::vector<std::string> names;
};
template <>
struct Type<SetNames> {
  static std::string accepts() { return "str | Iterable[str]"; }
  static SetNames from(py::handle given, const Where& where) {
    if (PyUnicode_Check(given.ptr())) return {{to_string(given, where)}};
    return {Type<std::vector<std::string>>::from(given, where)};
  }
};

namespace {

void bind_line(py::module_& module) {
  Record<PipeReach>("PipeReach", "A first length of other pipe.")
      .field("pipe", &PipeReach::pipe, "A Pipe.")
      .field("to", &PipeReach::to, "Its far end, from the line's inlet.")
      .description(module);
  Record<PlacedOutlet>("PlacedOutlet", "One outlet of those that stand unevenly.")
      .field("place", &PlacedOutlet::place, "From the line's inlet.")
      .field("outlet", &PlacedOutlet::outlet, "An Outlet.")
      .description(module);
  auto line =
      Record<Line>("Line", "A line as it is described; the keywords are the keys of a file.")
          .field("name", &Line::name, "Every line needs one of its own.")
          .field("fed_by",
                 &Line::fed_by,
                 "The line or further supply at which this one begins; empty: the supply.")
          .field("tap", &Line::tap, "Where along it; default its far end.")
          .field("tap_outlet", &Line::tap_outlet, "Or at which of its outlets, from 1 on.")
          .field("joins", &Line::joins, "The line that its far end meets; empty: it is closed.")
          .field("joins_at", &Line::joins_at, "Where along that line; default its far end.")
          .field("joins_outlet", &Line::joins_outlet, "Or at which of its outlets, from 1 on.")
          .field("pipe", &Line::pipe, "Beyond the reaches.")
          .field("reaches", &Line::reaches, "First lengths of other pipe, from the inlet on.")
          .field("outlet", &Line::outlet, "None: a main or a manifold.")
          .field("count", &Line::count, "Of outlets, 1 to most_outlets.")
          .field("spacing", &Line::spacing, "From outlet to outlet.")
          .field("first_at",
                 &Line::first_at,
                 "From the inlet to the first outlet, default one spacing.")
          .field("outlets", &Line::outlets, "Instead of the four above: from the inlet on.")
          .field("length", &Line::length, "To the far end; default to the last outlet.")
          .field("ground_rise",
                 &Line::ground_rise,
                 "Far end above near end; may be negative; default 0, or what it takes to join.")
          .field("elevations",
                 &Line::elevations,
                 "Instead: of the ground at every outlet, like the supply's.")
          .field("riser", &Line::riser, "Of every outlet.")
          .field("valve", &Line::valve, "At the inlet, default none.")
          .field(
              "check_valve", &Line::check_valve, "At the inlet: no water runs back, default False.")
          .field("regulator", &Line::regulator, "At the inlet: no more than this beyond it.")
          .field("loss_coefficient",
                 &Line::loss_coefficient,
                 "K at the inlet, on this pipe's velocity head [-], default 0.")
          .field("outlet_loss_coefficient",
                 &Line::outlet_loss_coefficient,
                 "K in the line at each outlet, on the velocity head arriving [-], default 0.")
          .field("connection_length",
                 &Line::connection_length,
                 "Pipe that loses as much as an outlet's connection in the line, default 0.")
          .description(module);
  method(line, "outlet_count", &Line::outlet_count, {}, "How many outlets it has.");
  method(
      line,
      "place_of",
      [](const Line& self, int number) { return with_outlet(self, number).place_of(number); },
      {"outlet_number"},
      "Distance of an outlet (from 1 on) "
      "from the inlet. InvalidInput when there is no such outlet.");
  method(
      line,
      "kind_of",
      [](const Line& self, int number) -> const Outlet& {
        return with_outlet(self, number).kind_of(number);
      },
      {"outlet_number"},
      "The kind that stands there. InvalidInput when there is no such outlet.",
      inside);
  method(line,
         "outlet_near",
         &Line::outlet_near,
         {"place"},
         "The outlet within 1 mm of a place, the last one if there are more.");
  method(line,
         "merged",
         &Line::merged,
         {"place"},
         "The place itself, or that of the outlet or the far end within 1 mm of it.");
  method(line, "whole_length", &Line::whole_length, {}, "From the inlet to the far end.");
  method(line,
         "pipe_at",
         &Line::pipe_at,
         {"place"},
         "The pipe that arrives at a place; at the inlet the first one.",
         inside);
  def(
      module,
      "begins_at",
      [](const Line& own, const Line& feeder) {
        if (own.tap_outlet && !own.tap) with_outlet(feeder, *own.tap_outlet, "tap_outlet");
        return begins_at(own, feeder);
      },
      {"line", "feeder"},
      "Where on its feeder a line begins.\n\n"
      ">>> main = Line(name=\"main\", length=180 * ft)\n"
      ">>> begins_at(Line(name=\"row 1\", fed_by=\"main\"), main)\n"
      "180 * ft");
  def(
      module,
      "ends_at",
      [](const Line& own, const Line& joined) {
        if (own.joins_outlet && !own.joins_at)
          with_outlet(joined, *own.joins_outlet, "joins_outlet");
        return ends_at(own, joined);
      },
      {"line", "joined"},
      "Where on the line that it joins a line ends.\n\n"
      ">>> row = Line(name=\"row 1\", count=10, spacing=20 * ft)\n"
      ">>> ends_at(Line(name=\"cross pipe\", joins=\"row 1\", joins_outlet=7), row)\n"
      "140 * ft");
  module.attr("most_outlets") = most_outlets;
  module.attr("most_lines") = most_lines;
  module.attr("most_further_supplies") = most_further_supplies;
  module.attr("same_place") = same_place;
  module.attr("same_height") = same_height;
}

void bind_parts_of_faults(py::module_& module) {
  Record<OpenRiser>("OpenRiser", "A riser standing open to the air.")
      .field("height", &OpenRiser::height, "Of its mouth above the line.")
      .field("loss_coefficient",
             &OpenRiser::loss_coefficient,
             "K, without the velocity head that is lost at the mouth [-].")
      .result(module);
  Record<OpenBody>("OpenBody", "A body standing open without its nozzle.")
      .field("bore", &OpenBody::bore, "None: not known.")
      .field("discharge_coefficient", &OpenBody::discharge_coefficient, "Cd [-].")
      .result(module);
  def(module,
      "open_riser",
      &open_riser,
      {"fault", "line"},
      "The open riser that this fault leaves on this line; None for the others. Needs no bore.\n\n"
      ">>> row = Line(name=\"row 1\", count=10, spacing=20 * ft, riser=Riser(height=2 * ft))\n"
      ">>> open_riser(riser_sheared(\"row 1\", 7), row).height\n"
      "6 * inch");
  def(
      module,
      "open_body",
      [](const Fault& fault, const Line& line) {
        return open_body(fault, with_nozzle_of(fault, line));
      },
      {"fault", "line"},
      "The open body that this fault leaves on this line; None for the others.\n\n"
      ">>> row = Line(name=\"row 1\", count=10, spacing=20 * ft)\n"
      ">>> open_body(nozzle_missing(\"row 1\", 7, bore=0.3 * inch), row).discharge_coefficient\n"
      "0.85");
  def(module,
      "open_end",
      &open_end,
      {"fault", "line"},
      "Where the fault opens the line to the air, so that no water passes; None for the "
      "others.\n\n"
      ">>> open_end(line_cut(\"row 1\", 90 * ft), Line(name=\"row 1\", count=10, spacing=20 * "
      "ft))\n"
      "90 * ft");
  def(
      module,
      "describe",
      [](const Fault& fault, const LineOrLayout& line, UnitSystem units) {
        if (line.layout && is_of_the_supply(fault)) return describe(fault, *line.layout, units);
        const Line& own = line.layout ? line.layout->line(line_of(fault)) : *line.line;
        return describe(fault, with_nozzle_of(fault, own), units);
      },
      {"fault", "line", "units"},
      "One sentence, with the values used. line: the fault's, or the layout that it is in.\n\n"
      ">>> row = Line(name=\"row 1\", count=10, spacing=20 * ft)\n"
      ">>> describe(clogged(\"row 1\", 7, 0.6), row, \"us\")\n"
      "'row 1, outlet 7: clogged, 60 % of its flow lost'");
}

/// Problems of the one part that it is, if it is one.
template <class... Part>
std::optional<std::vector<Problem>> problems_of(py::handle part) {
  std::optional<std::vector<Problem>> found;
  (void)((py::isinstance<Part>(part) && (found = problems(part.cast<const Part&>()), true)) || ...);
  return found;
}

void bind_problems(py::module_& module) {
  Record<Problem>("Problem", "One mistake in an input.")
      .field("place", &Problem::place, "What it is in: `line \"row 1\"`; empty: the key says all.")
      .field("key", &Problem::key, "The field, as it is spelt in a file: `riser.height`.")
      .field("message", &Problem::message, "Value, accepted interval, hint.")
      .result(module,
              [](const Problem& self) { return py::str("<hydro.Problem: " + self.text() + ">"); })
      .def("text",
           &Problem::text,
           "text(self) -> str\n\nThe whole of it, as InvalidInput tells it.");
  const Signature signature("problems", {"part", may_be_left_out("line")});
  define_function(
      module,
      "problems",
      [signature](py::handle, const py::args& args, const py::kwargs& kwargs) -> py::object {
        py::handle given[2];
        signature.bind(args, kwargs, given);
        const auto [part, line] = given;
        if (py::isinstance<Uncertainty>(part))
          return py::cast(
              problems(part.cast<const Uncertainty&>(), Type<Layout>::from(line, {"line"})));
        if (py::isinstance<Supply>(line))
          return py::cast(problems(Type<Fault>::from(part, {"part"}), line.cast<const Supply&>()));
        if (!line.is_none())
          return py::cast(
              problems(Type<Fault>::from(part, {"part"}), Type<Line>::from(line, {"line"})));
        auto found = problems_of<Supply,
                                 Pump,
                                 Suction,
                                 Filter,
                                 Gauge,
                                 Tank,
                                 Hole,
                                 Hydrant,
                                 Line,
                                 Valve,
                                 Pipe,
                                 Outlet,
                                 Riser,
                                 Water,
                                 Site,
                                 PricedPipe,
                                 Weather,
                                 StageLengths,
                                 Climate,
                                 Soil,
                                 Block,
                                 WaterDay,
                                 Ground,
                                 WaterAmount,
                                 RunTimeOptions,
                                 SetToWater,
                                 InterruptedRun,
                                 CandidateOptions>(part);
        if (!found)
          refuse({"part"}, part, "part of a layout", "write a Line, a Pipe or another part", "");
        return py::cast(*found);
      },
      "problems(part, line=None)\n--\n\n"
      "problems(part: Supply | Pump | Suction | Filter | Gauge | Tank | Hole | Hydrant | Line | "
      "Valve | "
      "Pipe | Outlet | Riser | Water | Site | PricedPipe | Weather | StageLengths | Climate | Soil "
      "| "
      "Block | WaterDay | Ground | WaterAmount | RunTimeOptions | SetToWater | InterruptedRun | "
      "CandidateOptions | "
      "Fault | Uncertainty, line: Line | Supply | Layout | None = None) -> list[Problem]\n\n"
      "What is wrong with one part of a layout or of a watering day, with a fault on a line or of "
      "a "
      "supply, or with an uncertainty of a layout; empty when nothing is.\n\n"
      ">>> problems(Pipe(inside_diameter=2 * inch, hazen_williams=900))[0].text()\n"
      "'hazen_williams: is 900, must be from 10 to 200'");
  def(module,
      "places_of",
      &places_of,
      {"lines"},
      "What each line is called in a Problem's place: `line \"row 1\"`.\n\n"
      ">>> places_of([Line(name=\"row 1\"), Line()])\n"
      "['line \"row 1\"', 'line 2']");
}

void bind_class(py::module_& module) {
  Record<WateringSet>("WateringSet", "Lines that are opened together while all others are shut.")
      .field("name", &WateringSet::name, "Every set needs one of its own.")
      .field("lines", &WateringSet::lines, "By name, one or more.")
      .description(module);
  py::class_<Layout> layout(
      module,
      "Layout",
      "Layout(supply, lines, water=None, site=None, sets=(), further_supplies=())\n--\n\n"
      "The supplies, the lines that hang on them, the water, the place, the sets in which it is "
      "watered, what is broken. It is examined when it is made and cannot be changed; a change "
      "makes a new "
      "one. Until sets are chosen, all lines are open whose own valve is not shut. InvalidInput "
      "with every mistake of every part.");
  Record<SkippedFault>("SkippedFault", "A fault that does not fit the layout, and why.")
      .field("fault", &SkippedFault::fault, "A Fault.")
      .field("problems", &SkippedFault::problems, "Why it does not fit.")
      .result(module);
  py::class_<PossibleFaults> possible(
      module, "PossibleFaults", "A layout with the faults that fit it, and the others.");
  property(
      possible,
      "layout",
      [](const PossibleFaults& self) { return self.layout; },
      "With the faults.");
  property(
      possible,
      "skipped",
      [](const PossibleFaults& self) { return self.skipped; },
      "The faults that do not fit.");

  const Signature signature("Layout",
                            {"supply",
                             "lines",
                             may_be_left_out("water"),
                             may_be_left_out("site"),
                             {"sets", py::tuple()},
                             {"further_supplies", py::tuple()}});
  const Signature init("__init__", signature.parameters());
  const std::vector<std::string> types{"Supply",
                                       "Iterable[Line]",
                                       "Water | None",
                                       "Site | None",
                                       "Iterable[WateringSet]",
                                       "Iterable[Supply]"};
  layout.def(py::init([signature](const py::args& args, const py::kwargs& kwargs) {
               py::handle given[6];
               signature.bind(args, kwargs, given);
               return Layout(
                   Type<Supply>::from(given[0], signature.where(0)),
                   Type<std::vector<Line>>::from(given[1], signature.where(1)),
                   Type<std::optional<Water>>::from(given[2], signature.where(2)).value_or(Water{}),
                   Type<std::optional<Site>>::from(given[3], signature.where(3)).value_or(Site{}),
                   Type<std::vector<WateringSet>>::from(given[4], signature.where(4)),
                   Type<std::vector<Supply>>::from(given[5], signature.where(5)));
             }),
             documentation(init, "__init__", true, types, "None", "").c_str());
  property(layout,
           "supply",
           &Layout::supply,
           "Supply",
           "What feeds every line that begins nowhere else.",
           inside);
  property(
      layout,
      "further_supplies",
      [](const Layout& self) { return py::tuple(py::cast(self.further_supplies())); },
      "tuple[Supply, ...]",
      "Beside the first, each with a name, in the order in which they were given.");
  property(
      layout,
      "lines",
      [](const Layout& self) { return py::tuple(py::cast(self.lines())); },
      "tuple[Line, ...]",
      "In the order in which they were given.");
  property(layout, "water", &Layout::water, "Water", "As it was given.", inside);
  property(layout, "site", &Layout::site, "Site", "As it was given.", inside);
  property(
      layout,
      "sets",
      [](const Layout& self) { return py::tuple(py::cast(self.sets())); },
      "tuple[WateringSet, ...]",
      "In the order in which they were given.");
  property(
      layout,
      "running_sets",
      [](const Layout& self) { return py::tuple(py::cast(self.running_sets())); },
      "tuple[str, ...]",
      "Names of the sets that run; empty: none was chosen.");
  property(layout,
           "supply_as_it_is",
           &Layout::supply_as_it_is,
           "Supply",
           "The supply with what its faults change.",
           inside);
  property(
      layout,
      "further_supplies_as_they_are",
      [](const Layout& self) { return py::tuple(py::cast(self.further_supplies_as_they_are())); },
      "tuple[Supply, ...]",
      "The further supplies with what their faults change.");
  property(
      layout,
      "faults",
      [](const Layout& self) { return py::tuple(py::cast(self.faults())); },
      "tuple[Fault, ...]",
      "What is broken.");
  property(layout, "outlet_count", &Layout::outlet_count, "int", "Of all lines.");
  property(layout, "units", &Layout::units, "UnitSystem", "In which reports are written.");
  property(layout,
           "outward_order",
           &Layout::outward_order,
           "list[int]",
           "Indices of the lines, each after the line that feeds it.");
  method(layout,
         "line",
         &Layout::line,
         {"name"},
         "The line of this name. InvalidInput when there is none.",
         inside);
  method(layout, "index_of", &Layout::index_of, {"line_name"}, "Position in `lines`, from 0 on.");
  const auto checked = [](const Layout& self, std::size_t line) {
    if (line >= self.lines().size())
      throw py::index_error("line_index: is " + std::to_string(line) + " of " +
                            std::to_string(self.lines().size()) + " lines, counted from 0");
    return line;
  };
  method(
      layout,
      "feeder_of",
      [=](const Layout& self, std::size_t line) { return self.feeder_of(checked(self, line)); },
      {"line_index"},
      "Index of the line that feeds this one; None: a supply does.");
  method(
      layout,
      "joined_by",
      [=](const Layout& self, std::size_t line) { return self.joined_by(checked(self, line)); },
      {"line_index"},
      "Index of the line that this one's far end meets; None: it meets none.");
  method(
      layout,
      "supply_of",
      [=](const Layout& self, std::size_t line) { return self.supply_of(checked(self, line)); },
      {"line_index"},
      "Of the supply at the start of the lines that feed this one: 0 the first, 1 on the further "
      "ones.");
  method(
      layout,
      "inlet_elevation",
      [=](const Layout& self, std::size_t line) {
        return self.inlet_elevation(checked(self, line));
      },
      {"line_index"},
      "Of the ground at a line's near end.");
  method(
      layout,
      "ground_rise",
      [=](const Layout& self, std::size_t line) { return self.ground_rise(checked(self, line)); },
      {"line_index"},
      "Of a line's far end above its near end.");
  method(
      layout,
      "ground_elevation",
      [=](const Layout& self, std::size_t line, const Length& place) {
        return self.ground_elevation(checked(self, line), place);
      },
      {"line_index", "place"},
      "Of the ground at a distance from the near end.");
  method(
      layout,
      "outlet_elevation",
      [=](const Layout& self, std::size_t line, int outlet) {
        return self.outlet_elevation(checked(self, line), outlet);
      },
      {"line_index", "outlet_number"},
      "Of the ground at an outlet (from 1 on).");
  method(
      layout,
      "outlet_at",
      [=](const Layout& self, std::size_t line, int outlet) {
        return self.outlet_at(checked(self, line), outlet);
      },
      {"line_index", "outlet_number"},
      "The kind that stands at an outlet (from 1 on), the wrong one where a fault says so.");
  method(
      layout,
      "faults_on",
      [=](const Layout& self, std::size_t line) { return self.faults_on(checked(self, line)); },
      {"line_index"},
      "In the order of the outlets.");
  method(
      layout,
      "open_end_of",
      [=](const Layout& self, std::size_t line) { return self.open_end_of(checked(self, line)); },
      {"line_index"},
      "Where a line is open to the air, so that no water passes; None: it is not.");
  method(
      layout,
      "is_cut_off",
      [=](const Layout& self, std::size_t line) { return self.is_cut_off(checked(self, line)); },
      {"line_index"},
      "Whether no water comes to any part of a line, whatever the pressures: on every way to it a "
      "line is open to the air, shut, or its regulator stuck shut, or a check valve points the "
      "other way.");
  method(
      layout,
      "is_shut",
      [=](const Layout& self, std::size_t line) { return self.is_shut(checked(self, line)); },
      {"line_index"},
      "Whether no water comes to it on purpose: by its valve or another, or by the sets that "
      "run.");
  method(
      layout,
      "inlet_is_shut",
      [=](const Layout& self, std::size_t line) { return self.inlet_is_shut(checked(self, line)); },
      {"line_index"},
      "Whether nothing passes its inlet, whatever the pressures. Where its far end joins another "
      "line it may have water all the same.");
  method(
      layout,
      "has_water",
      [=](const Layout& self, std::size_t line, const Length& place) {
        return self.has_water(checked(self, line), place);
      },
      {"line_index", "place"},
      "Whether water can come to a place on a line; at one where it is open to the air, to what "
      "lies beyond.");
  method(
      layout,
      "inlet_has_water",
      [=](const Layout& self, std::size_t line) {
        return self.inlet_has_water(checked(self, line));
      },
      {"line_index"},
      "Whether it can come to its inlet, and on to where the line is open to the air.");
  method(
      layout,
      "has_water_beyond_open_end",
      [=](const Layout& self, std::size_t line) {
        return self.has_water_beyond_open_end(checked(self, line));
      },
      {"line_index"},
      "Whether it can come to what lies beyond the place where the line is open to the air.");
  method(
      layout,
      "outlet_has_water",
      [=](const Layout& self, std::size_t line, int outlet) {
        return self.outlet_has_water(checked(self, line), outlet);
      },
      {"line_index", "outlet_number"},
      "Whether water can come to an outlet (from 1 on); one that stands where the line is open to "
      "the air lies before that place.");
  method(layout,
         "with_fault",
         &Layout::with_fault,
         {"fault"},
         "With this fault too. InvalidInput when it does not fit the layout or another fault.");
  method(layout,
         "with_faults",
         &Layout::with_faults,
         {"faults"},
         "With these faults too. InvalidInput with everything that does not fit.");
  method(layout,
         "with_possible_faults",
         &Layout::with_possible_faults,
         {"faults"},
         "With those that fit, taken one after another; the others are skipped and listed.");
  method(layout, "without_faults", &Layout::without_faults, {}, "With nothing broken.");
  method(
      layout,
      "watering",
      [](const Layout& self, const SetNames& sets) { return self.watering(sets.names); },
      {"set_names"},
      "With these sets running, one or several, and every line shut that they do not open: a line "
      "is open when such a set names it, when it feeds such a line, or when it hangs on one and no "
      "set names it or a line between. InvalidInput for a name that is not a set's, or none.");
  method(layout, "without_watering", &Layout::without_watering, {}, "With no set chosen.");
  method(
      layout,
      "with_supply",
      &Layout::with_supply,
      {"supply"},
      "With another supply. Faults stay. InvalidInput when it is no supply, or when a fault does "
      "not fit it.");
  method(
      layout,
      "with_further_supplies",
      &Layout::with_further_supplies,
      {"further_supplies"},
      "With these supplies beside the first. Faults stay. InvalidInput when one is no supply, or "
      "when a line or a fault does not fit them.");
  method(layout,
         "with_line",
         &Layout::with_line,
         {"line"},
         "With this line added, or put in the place of the line of its name. Faults stay. "
         "InvalidInput when the line or a fault does not fit the rest.");
  method(layout,
         "without",
         &Layout::without,
         {"line_name"},
         "Without the line of this name, in the sets too, and its faults. InvalidInput when there "
         "is none, when it is the only one, or when it feeds another or another joins it.");
  layout.def(
      "__eq__",
      [](const Layout& self, const Layout& other) { return self == other; },
      py::is_operator(),
      "__eq__(self, other: object) -> bool");
  layout.def(
      "__hash__",
      [](const py::object& self) {
        return py::hash(py::make_tuple(self.attr("supply"), self.attr("lines")));
      },
      "__hash__(self) -> int");
  layout.def(
      "__repr__",
      [](const Layout& self) {
        std::string supplies, sets;
        if (!self.further_supplies().empty())
          supplies = ", further supplies " + std::to_string(self.further_supplies().size());
        if (!self.sets().empty()) sets = ", sets " + std::to_string(self.sets().size());
        for (const std::string& name : self.running_sets())
          sets += (&name == self.running_sets().data() ? ", running " : " and ") + name;
        return "<hydro.Layout: lines " + std::to_string(self.lines().size()) + ", outlets " +
               std::to_string(self.outlet_count()) + ", faults " +
               std::to_string(self.faults().size()) + supplies + sets + ">";
      },
      "__repr__(self) -> str");
  copy_is_itself(layout);
  layout.def(py::pickle(
      [](const Layout& self) {
        return py::make_tuple(self.supply(),
                              self.lines(),
                              self.water(),
                              self.site(),
                              self.sets(),
                              self.faults(),
                              self.running_sets(),
                              self.further_supplies());
      },
      [](const py::tuple& state) {
        const Layout again = Layout(state[0].cast<Supply>(),
                                    state[1].cast<std::vector<Line>>(),
                                    state[2].cast<Water>(),
                                    state[3].cast<Site>(),
                                    state[4].cast<std::vector<WateringSet>>(),
                                    state[7].cast<std::vector<Supply>>())
                                 .with_faults(Type<std::vector<Fault>>::from(state[5], {"faults"}));
        const auto running = state[6].cast<std::vector<std::string>>();
        return running.empty() ? again : again.watering(running);
      }));
}

}  // namespace

void bind_layout(py::module_& module) {
  bind_line(module);
  bind_parts_of_faults(module);
  bind_problems(module);
  bind_class(module);
}

}  // namespace hydro::bindings
