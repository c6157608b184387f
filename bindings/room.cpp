// room.cpp: how many more outlets a line can take, how long it can be, where to feed it from.

#include "hydro/what_ifs/inlet_position.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/longest_line.hpp"
#include "hydro/what_ifs/more_outlets.hpp"
#include "hydro/what_ifs/room_on_line.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/at_work.hpp"
#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* name_of_line = "Name of the line.";

std::string outline_of_end(RoomEnd end, const std::vector<Margin>& ended_by) {
  std::string text = "ended by " + std::string(py::str(py::cast(end)));
  for (const Margin& margin : ended_by)
    text +=
        (&margin == &ended_by.front() ? ": " : ", ") + std::string(py::str(py::cast(margin.limit)));
  return text;
}

void bind_limits(py::module_& module) {
  Record<CheckOptions>("CheckOptions", "The largest that is accepted; common practice, no source.")
      .field("pressure_variation", &CheckOptions::pressure_variation, "Of pressure [-].")
      .field("flow_variation", &CheckOptions::flow_variation, "Of flow [-].")
      .field("velocity", &CheckOptions::velocity, "In lines.")
      .description(module);
  Record<Limits>("Limits", "What is judged, and by what.")
      .field("judged", &Limits::judged, "Default: all.")
      .field("lines", &Limits::lines, "Whose outlets and pipes are judged, by name; empty: all.")
      .field("accepted", &Limits::accepted, "As check takes it.")
      .description(module);
  Record<Margin>("Margin", "How near a limit is, where it is nearest.")
      .field("limit", &Margin::limit, "Which.")
      .field("line", &Margin::line, "Empty: of all lines together, or of a supply.")
      .field("outlet", &Margin::outlet, "From 1 on; None: not of one outlet.")
      .field("supply", &Margin::supply, "Name of a further one; empty: the first, or none.")
      .field("left", &Margin::left, "Of the limit [-]; below 0 it is passed by so much.")
      .field("passed", &Margin::passed, "As a check finds it.")
      .result(module);
  def(module,
      "every_limit",
      &every_limit,
      {},
      "All of them, in the order in which they are told.\n\n"
      ">>> every_limit()[0]\n"
      "Limit.rated");
  def(module,
      "supply_limit",
      &supply_limit,
      {"limit"},
      "As a supply's findings name it; None: a limit of outlets or pipes.\n\n"
      ">>> supply_limit(\"suction\")\n"
      "SupplyLimit.suction");
  def(module,
      "margins",
      &margins,
      {"solution", {"limits", py::cast(Limits{})}},
      ("How much is left of each limit that is judged and is there. InvalidInput for a line that "
       "is "
       "not there.\n\n" +
       example_row +
       ">>> [round(margin.left, 2) for margin in margins(solve(farm), "
       "Limits(judged=[\"rated\"]))]\n"
       "[0.23]")
          .c_str());
  def(module,
      "passed",
      &passed,
      {"margins"},
      ("Those that are passed.\n\n" + example_row +
       ">>> passed(margins(solve(farm), Limits(judged=[\"rated\"])))\n"
       "[]")
          .c_str());
}

void bind_more_outlets(py::module_& module) {
  Record<MoreOutlets>("MoreOutlets", "Which outlets are added, and where.")
      .field("where", &MoreOutlets::where, "Beyond the last outlet or between them.")
      .field("outlet", &MoreOutlets::outlet, "None: that of the last outlet before it.")
      .field("spacing",
             &MoreOutlets::spacing,
             "Beyond: from outlet to outlet, None: that of the line, of an uneven one that of its "
             "last two outlets. Between: the nearest that two may stand, None: 1 mm.")
      .description(module);
  def(module,
      "with_more_outlets",
      &with_more_outlets,
      {"layout", "line", "more", "count"},
      ("The layout with so many more outlets on one of its lines. InvalidInput when the line has "
       "no "
       "outlet, when its far end joins another and it should go on, or when there is no place left "
       "between.\n\n" +
       example_row +
       ">>> with_more_outlets(farm, \"row 1\", MoreOutlets(), 3).line(\"row 1\").outlet_count()\n"
       "27")
          .c_str());
  def(module,
      "places_for_more",
      &places_for_more,
      {"layout", "line", "more"},
      ("How many have a place between the outlets of a line; beyond the last one "
       "most_outlets.\n\n" +
       example_row +
       ">>> places_for_more(farm, \"row 1\", MoreOutlets(where=\"between\", spacing=9 * ft))\n"
       "23")
          .c_str());
}

/// The keywords of RoomOptions.
RoomOptions room_options(const Limits& limits, int most, const MoreOutlets& more) {
  return {.limits = limits, .most = most, .more = more};
}
std::vector<Parameter> with_room_options(std::vector<Parameter> parameters) {
  const RoomOptions defaults;
  parameters.emplace_back("limits", py::cast(defaults.limits), Passing::by_name);
  parameters.emplace_back("most", py::cast(defaults.most), Passing::by_name);
  parameters.emplace_back("more", py::cast(defaults.more), Passing::by_name);
  return with_work(std::move(parameters));
}
const std::string words_on_room =
    "limits: that must be kept. most: that are tried, 1 to 100000. more: which outlets, and "
    "where. ";

void bind_room_on_line(py::module_& module) {
  auto at_count =
      Record<RoomAtCount>("RoomAtCount", "The whole layout with so many outlets more.")
          .field("added", &RoomAtCount::added, "So many; of longest_line, all outlets.")
          .field("line", &RoomAtCount::line, "Of the outlet with the smallest share of its rating.")
          .field("outlet", &RoomAtCount::outlet, "Its number; 0: none is judged.")
          .field("pressure", &RoomAtCount::pressure, "There, gauge.")
          .field("rated", &RoomAtCount::rated, "Its own.")
          .field("supply_pressure", &RoomAtCount::supply_pressure, "Of the first supply.")
          .field("inflow", &RoomAtCount::inflow, "Out of all supplies together.")
          .field("margins", &RoomAtCount::margins, "Of each limit that is judged.")
          .result(module);
  method(at_count, "fits", &RoomAtCount::fits, {}, "No limit is passed.");
  auto room =
      Record<Room>("Room", "How many more outlets a line can take.")
          .field("line", &Room::line, name_of_line)
          .field("outlets", &Room::outlets, "That fit.")
          .field("end", &Room::end, "What ends it.")
          .field("counts", &Room::counts, "From 0 on; the last is too many if a limit ends it.")
          .field("ended_by",
                 &Room::ended_by,
                 "Limits that one more passes; if the layout passes some as it is, those.")
          .field("judged", &Room::judged, "The other limits were left out.")
          .result(module, [](const Room& self) {
            return py::str("<hydro.Room: " + std::to_string(self.outlets) + " more on " +
                           self.line + ", " + outline_of_end(self.end, self.ended_by) + ">");
          });
  method(room, "fails_as_it_is", &Room::fails_as_it_is, {}, "A limit is passed with none added.");
  def(
      module,
      "room_on_line",
      [](const Layout& layout,
         const std::string& line,
         const Limits& limits,
         int most,
         const MoreOutlets& more,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return room_on_line(layout, line, room_options(limits, most, more), work);
        });
      },
      with_room_options({"layout", "line"}),
      ("How many more outlets a line can take before the first limit is passed, on any line, its "
       "supply as it is, and what it is that ends it. InvalidInput for a line to which no water "
       "comes; NotSolved.\n" +
       words_on_room + words_on_work + example_row +
       ">>> room_on_line(farm, \"row 1\", limits=Limits(judged=[\"rated\"]))\n"
       "<hydro.Room: 14 more on row 1, ended by limit: rated>")
          .c_str());
  Record<RoomWithPipe>("RoomWithPipe", "Room on a line that is all of another pipe.")
      .field("pipe", &RoomWithPipe::pipe, "In place of its pipe and reaches.")
      .field("room", &RoomWithPipe::room, "With it.")
      .result(module);
  def(
      module,
      "room_by_pipe",
      [](const Layout& layout,
         const std::string& line,
         const std::vector<Pipe>& pipes,
         const Limits& limits,
         int most,
         const MoreOutlets& more,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return room_by_pipe(layout, line, pipes, room_options(limits, most, more), work);
        });
      },
      with_room_options({"layout", "line", "pipes"}),
      ("The same with each of these pipes in turn, in place of the line's pipe and reaches.\n" +
       words_on_room + words_on_work + example_row +
       ">>> wider = nominal_pipe(\"2 in\", \"PVC Class 160\")\n"
       ">>> found = room_by_pipe(farm, \"row 1\", [pipe, wider], "
       "limits=Limits(judged=[\"rated\"]))\n"
       ">>> found[0].room.outlets < found[1].room.outlets\n"
       "True")
          .c_str());
}

LongestLineOptions longest_options(const Limits& limits,
                                   int most,
                                   const std::optional<Length>& spacing,
                                   const std::optional<Length>& first_at,
                                   const std::optional<Outlet>& outlet) {
  return {
      .limits = limits, .most = most, .spacing = spacing, .first_at = first_at, .outlet = outlet};
}
std::vector<Parameter> with_longest_options(std::vector<Parameter> parameters) {
  const LongestLineOptions defaults;
  parameters.emplace_back("limits", py::cast(defaults.limits), Passing::by_name);
  parameters.emplace_back("most", py::cast(defaults.most), Passing::by_name);
  for (const char* name : {"spacing", "first_at", "outlet"})
    parameters.push_back(may_be_left_out(name, Passing::by_name));
  return with_work(std::move(parameters));
}
const std::string words_on_longest =
    "limits: that must be kept. most: outlets that are tried. spacing: default the line's, of an "
    "uneven one its last. first_at: default the line's. outlet: default the line's first. ";

void bind_longest_line(py::module_& module) {
  Record<LongestLine>("LongestLine", "How long a line can be.")
      .field("line", &LongestLine::line, name_of_line)
      .field("outlets", &LongestLine::outlets, "0: a limit is passed at every count tried.")
      .field("length", &LongestLine::length, "From the inlet to the last outlet.")
      .field("fewest", &LongestLine::fewest, "Outlets at which no limit is passed.")
      .field("end", &LongestLine::end, "What ends it.")
      .field("counts", &LongestLine::counts, "`added` counts all outlets here, from 1 on.")
      .field(
          "ended_by", &LongestLine::ended_by, "Limits that one more passes, or the last one tried.")
      .field("judged", &LongestLine::judged, "The other limits were left out.")
      .result(module, [](const LongestLine& self) {
        return py::str("<hydro.LongestLine: " + self.line + ", outlets " +
                       std::to_string(self.outlets) + ", length " + to_python(self.length) + ", " +
                       outline_of_end(self.end, self.ended_by) + ">");
      });
  def(
      module,
      "with_outlets",
      [](const Layout& layout,
         const std::string& line,
         int count,
         const std::optional<Length>& spacing,
         const std::optional<Length>& first_at,
         const std::optional<Outlet>& outlet) {
        return with_outlets(
            layout,
            line,
            longest_options({}, LongestLineOptions{}.most, spacing, first_at, outlet),
            count);
      },
      {"layout",
       "line",
       "count",
       may_be_left_out("spacing", Passing::by_name),
       may_be_left_out("first_at", Passing::by_name),
       may_be_left_out("outlet", Passing::by_name)},
      ("The line of a layout laid anew with so many outlets, from 1 on; keywords as of "
       "longest_line.\n\n" +
       example_row +
       ">>> wider_spaced = with_outlets(farm, \"row 1\", 7, spacing=30 * ft)\n"
       ">>> round(wider_spaced.line(\"row 1\").whole_length().to(ft), 6)\n"
       "200.0")
          .c_str());
  def(
      module,
      "longest_line",
      [](const Layout& layout,
         const std::string& line,
         const Limits& limits,
         int most,
         const std::optional<Length>& spacing,
         const std::optional<Length>& first_at,
         const std::optional<Outlet>& outlet,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return longest_line(
              layout, line, longest_options(limits, most, spacing, first_at, outlet), work);
        });
      },
      with_longest_options({"layout", "line"}),
      ("How long a line can be for a spacing, and how short it must not be: the last count of "
       "outlets before a limit is passed. InvalidInput for a line that feeds or joins another, or "
       "has a fault of its own; NotSolved.\n" +
       words_on_longest + words_on_work + example_row +
       ">>> longest_line(farm, \"row 1\", limits=Limits(judged=[\"rated\"])).outlets\n"
       "38")
          .c_str());
  Record<LongestWithPipe>("LongestWithPipe", "Length of a line that is all of one pipe.")
      .field("pipe", &LongestWithPipe::pipe, "In place of its pipe and reaches.")
      .field("longest", &LongestWithPipe::longest, "With it.")
      .result(module);
  def(
      module,
      "longest_by_pipe",
      [](const Layout& layout,
         const std::string& line,
         const std::vector<Pipe>& pipes,
         const Limits& limits,
         int most,
         const std::optional<Length>& spacing,
         const std::optional<Length>& first_at,
         const std::optional<Outlet>& outlet,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return longest_by_pipe(
              layout, line, pipes, longest_options(limits, most, spacing, first_at, outlet), work);
        });
      },
      with_longest_options({"layout", "line", "pipes"}),
      ("The same with each of these pipes in turn, in place of the line's pipe and reaches.\n" +
       words_on_longest + words_on_work + example_row +
       ">>> wider = nominal_pipe(\"2 in\", \"PVC Class 160\")\n"
       ">>> only = Limits(judged=[\"rated\"])\n"
       ">>> found = longest_by_pipe(farm, \"row 1\", [pipe, wider], limits=only)\n"
       ">>> found[0].longest.length < found[1].longest.length\n"
       "True")
          .c_str());
}

void bind_inlet_position(py::module_& module) {
  Record<InletPosition>("InletPosition", "A row fed at a place.")
      .field("place", &InletPosition::place, "From the present inlet, along the row.")
      .field("lowest", &InletPosition::lowest, "Pressure at an outlet of the row.")
      .field("lowest_outlet", &InletPosition::lowest_outlet, "Its number as it is now.")
      .field("highest", &InletPosition::highest, "Pressure at an outlet of the row.")
      .field("lowest_share", &InletPosition::lowest_share, "Of the rated pressure [-].")
      .field("variation",
             &InletPosition::variation,
             "Of pressure [-]; infinite where the whole row is dry.")
      .result(module);
  Record<InletPositions>("InletPositions", "Places from which to feed a row.")
      .field("present", &InletPositions::present, "As it is.")
      .field("best", &InletPositions::best, "Of equal ones the nearest to the present inlet.")
      .field("all", &InletPositions::all, "In the order of their places.")
      .result(module);
  const InletPositionOptions defaults;
  def(
      module,
      "inlet_position",
      [](const Layout& layout,
         const std::string& line,
         InletGoal goal,
         const std::vector<Length>& places,
         const std::optional<Pipe>& feed_pipe,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return inlet_position(
              layout, line, {.goal = goal, .places = places, .feed_pipe = feed_pipe}, work);
        });
      },
      with_work({"layout",
                 "line",
                 {"goal", py::cast(defaults.goal), Passing::by_name},
                 {"places", py::tuple(), Passing::by_name},
                 may_be_left_out("feed_pipe", Passing::by_name)}),
      ("Where along a row to feed it from. InvalidInput when the row has no outlets, feeds or "
       "joins a line, has a fault of its own or no water, or when a place is not on it; "
       "NotSolved.\n"
       "goal: what makes a place the best. places: from the present inlet on; default the inlet, "
       "every outlet, and half-way between two. feed_pipe: that leads there; default the way there "
       "takes no pressure but for the ground. " +
       std::string(words_on_work) + example_row +
       ">>> inlet_position(farm, \"row 1\").best.lowest_share > 37 / 30\n"
       "True")
          .c_str());
  def(module,
      "with_inlet_at",
      &with_inlet_at,
      {"layout", "line", "place", may_be_left_out("feed_pipe")},
      ("The layout with the row fed at a place: the line of its name leads there, lines `NAME, "
       "near "
       "part` and `NAME, far part` carry its outlets.\n\n" +
       example_row +
       ">>> [line.name for line in with_inlet_at(farm, \"row 1\", 240 * ft).lines]\n"
       "['row 1', 'row 1, near part', 'row 1, far part']")
          .c_str());
}

}  // namespace

void bind_room(py::module_& module) {
  bind_limits(module);
  bind_more_outlets(module);
  bind_room_on_line(module);
  bind_longest_line(module);
  bind_inlet_position(module);
}

}  // namespace hydro::bindings
