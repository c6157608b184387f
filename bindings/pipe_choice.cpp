// pipe_choice.cpp: the cheapest pipe with which every limit holds, and what else would help.

#include "hydro/what_ifs/priced_pipe.hpp"
#include "hydro/what_ifs/remedies.hpp"
#include "hydro/what_ifs/smallest_pipe.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bindings/at_work.hpp"
#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* money = "Money; None: there is no price, or not of all.";

/// A farm whose row falls short, and pipes that can be had.
const std::string short_row =
    ">>> spray = Outlet(name=\"spray\", flow=1.2 * gpm, at=30 * psi)\n"
    ">>> narrow = nominal_pipe(\"1 in\", \"PVC Class 200\")\n"
    ">>> row = Line(name=\"row 1\", pipe=narrow, outlet=spray, count=24, spacing=20 * ft)\n"
    ">>> farm = Layout(Supply(pressure=33 * psi), [row])\n"
    ">>> sold = [PricedPipe(nominal_pipe(size, \"PVC Class 160\"), price=Price(dollars, 20 * ft))\n"
    "...         for size, dollars in ((\"1-1/4 in\", 9), (\"1-1/2 in\", 11), (\"2 in\", 17))]\n";

void bind_prices(py::module_& module) {
  Record<Price>("Price", "So much money for such a length, as pipe is sold.")
      .needed("amount", &Price::amount, "Money, in any one currency, 0 to 1e9.")
      .needed("per", &Price::per, "1 mm to 10 km.")
      .description(module);
  Record<PricedPipe>("PricedPipe", "A pipe that can be had.")
      .needed("pipe", &PricedPipe::pipe, "Which.")
      .field("price", &PricedPipe::price, "None: not known.")
      .description(module);
  def(module,
      "cost",
      &cost,
      {"price", "length"},
      "Money for this length; nothing is rounded to whole pieces.\n\n"
      ">>> cost(Price(14.20, 20 * ft), 100 * ft)\n"
      "71.0");
}

Solution solution_of(const py::dict& state) {
  return Type<Solution>::from(state["solution"], {"solution"});
}

SmallestPipeOptions pipe_options(const Limits& limits,
                                 const std::optional<Length>& change_every,
                                 std::size_t most_ways_of_a_group,
                                 std::size_t most_tried) {
  return {.limits = limits,
          .change_every = change_every,
          .most_ways_of_a_group = most_ways_of_a_group,
          .most_tried = most_tried};
}

void bind_smallest_pipe(py::module_& module) {
  Record<LinesToSize>("LinesToSize", "Lines that are laid alike.")
      .needed("lines", &LinesToSize::lines, "By name.")
      .field("sizes", &LinesToSize::sizes, "At most so many along each of them, 1 to 10.")
      .description(module);
  Record<LaidPipe>("LaidPipe", "A length of one pipe.")
      .field("line", &LaidPipe::line, "Its name.")
      .field("pipe", &LaidPipe::pipe, "Which.")
      .field("start", &LaidPipe::start, "From the line's inlet.")
      .field("end", &LaidPipe::end, "From the line's inlet.")
      .result(module);
  Record<SmallestPipe>("SmallestPipe", "The cheapest way to lay lines, or that there is none.")
      .field("found", &SmallestPipe::found, "If not, the rest is of the widest pipe throughout.")
      .field("pipes", &SmallestPipe::pipes, "Line by line as they were named, from the inlet on.")
      .field("cost", &SmallestPipe::cost, money)
      .field("volume", &SmallestPipe::volume, "Inside the pipes.")
      .field("passed", &SmallestPipe::passed, "Limits that are; empty where found.")
      .field("solution", &SmallestPipe::solution, "So laid; its layout can be used on.")
      .field("ways", &SmallestPipe::ways, "That there are to lay all lines.")
      .field("tried", &SmallestPipe::tried, "Of these, solved.")
      .made_from([](const py::dict& state) {
        return SmallestPipe{false, {}, {}, {}, {}, solution_of(state), 0, 0};
      })
      .result(module);
  const SmallestPipeOptions defaults;
  def(
      module,
      "smallest_pipe",
      [](const Layout& layout,
         const std::vector<LinesToSize>& lines,
         const std::vector<PricedPipe>& pipes,
         const Limits& limits,
         const std::optional<Length>& change_every,
         std::size_t most_ways_of_a_group,
         std::size_t most_tried,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return smallest_pipe(layout,
                               lines,
                               pipes,
                               pipe_options(limits, change_every, most_ways_of_a_group, most_tried),
                               work);
        });
      },
      with_work(
          {"layout",
           "lines",
           "pipes",
           {"limits", py::cast(defaults.limits), Passing::by_name},
           may_be_left_out("change_every", Passing::by_name),
           {"most_ways_of_a_group", py::cast(defaults.most_ways_of_a_group), Passing::by_name},
           {"most_tried", py::cast(defaults.most_tried), Passing::by_name}}),
      ("The cheapest pipe with which every limit holds; without prices that with the least room "
       "inside. InvalidInput for a line that is not there, is named twice or is shut, prices that "
       "some have and others not, or too many ways; NotSolved.\n"
       "lines: groups, each laid alike and apart from the others. pipes: in any order. limits: "
       "that "
       "must hold. change_every: where pipe may change, from the inlet; default at outlets and "
       "where "
       "lines begin or end. most_ways_of_a_group: 1 to 10 million. most_tried: 1 to 100 million. " +
       std::string(words_on_work) + short_row +
       ">>> found = smallest_pipe(farm, [LinesToSize([\"row 1\"], sizes=2)], sold)\n"
       ">>> found.found, [laid.pipe.name for laid in found.pipes]\n"
       "(True, ['1-1/2 in PVC Class 160', '1-1/4 in PVC Class 160'])")
          .c_str());
  Record<PipeTried>("PipeTried", "What one pipe throughout would do.")
      .field("pipe", &PipeTried::pipe, "Which.")
      .field("cost", &PipeTried::cost, money)
      .field("volume", &PipeTried::volume, "Inside the pipes.")
      .field("lowest_share",
             &PipeTried::lowest_share,
             "Of rated pressure, at the outlet with the smallest [-]; None: none is judged.")
      .field("lowest_pressure", &PipeTried::lowest_pressure, "Of the same outlet.")
      .field("highest_velocity", &PipeTried::highest_velocity, "In these lines.")
      .field("flow_variation", &PipeTried::flow_variation, "The largest in these lines [-].")
      .field("passed", &PipeTried::passed, "Limits that are.")
      .field("solution", &PipeTried::solution, "So laid.")
      .made_from([](const py::dict& state) {
        return PipeTried{{}, {}, {}, {}, {}, {}, 0, {}, solution_of(state)};
      })
      .result(module);
  def(
      module,
      "try_pipes",
      [](const Layout& layout,
         const std::vector<std::string>& lines,
         const std::vector<PricedPipe>& pipes,
         const Limits& limits,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return try_pipes(layout, lines, pipes, {.limits = limits}, work);
        });
      },
      with_work(
          {"layout", "lines", "pipes", {"limits", py::cast(defaults.limits), Passing::by_name}}),
      ("One row for each pipe of the list, in its order: these lines are laid in it throughout.\n"
       "limits: that are judged. " +
       std::string(words_on_work) + short_row +
       ">>> [tried.passed == [] for tried in try_pipes(farm, [\"row 1\"], sold)]\n"
       "[False, True, True]")
          .c_str());
}

void bind_remedies(py::module_& module) {
  Record<Standing>("Standing", "How a layout stands.")
      .field("below_rated", &Standing::below_rated, "Outlets; dry ones are among them.")
      .field("lowest_share",
             &Standing::lowest_share,
             "Of rated pressure; 0: dry; None: none is judged [-].")
      .field("flow", &Standing::flow, "Out of all supplies.")
      .field("shaft_power", &Standing::shaft_power, "Of all pumps; None: none, or not known.")
      .result(module);
  Record<Remedy>("Remedy", "One thing that could be done.")
      .field("kind", &Remedy::kind, "What.")
      .field("lines", &Remedy::lines, "To which it is done; none: the supply.")
      .field("deed", &Remedy::deed, "What is done, in the units of the layout.")
      .field("cures", &Remedy::cures, "Every outlet is served then.")
      .field("passed", &Remedy::passed, "Limits that keep it from being a cure.")
      .field("cost", &Remedy::cost, "Money; None: a price is missing.")
      .field("after", &Remedy::after, "With it done.")
      .field("solution", &Remedy::solution, "With it done; its layout can be used on.")
      .made_from([](const py::dict& state) {
        return Remedy{RemedyKind::wider_pipe, {}, {}, false, {}, {}, {}, solution_of(state)};
      })
      .result(module, [](const Remedy& self) {
        return py::str("<hydro.Remedy: " + self.deed + (self.cures ? ", cures" : "") + ">");
      });
  Record<Remedies>("Remedies", "What could be done for outlets that fall short.")
      .field("before", &Remedies::before, "As it is.")
      .field("ranked", &Remedies::ranked, "Cures first; empty where nothing falls short.")
      .result(module);
  const RemedyOptions defaults;
  def(
      module,
      "remedies",
      [](const Layout& layout,
         const std::vector<PricedPipe>& pipes,
         int sizes_up,
         double most_outlets_fewer,
         double outlet_step,
         double least_outlet,
         double least_gain,
         std::optional<double> outlet_price,
         std::optional<double> lost_outlet_price,
         std::optional<double> kilowatt_price,
         int threads,
         const Progress& progress) {
        const RemedyOptions options{.pipes = pipes,
                                    .sizes_up = sizes_up,
                                    .most_outlets_fewer = most_outlets_fewer,
                                    .outlet_step = outlet_step,
                                    .least_outlet = least_outlet,
                                    .least_gain = least_gain,
                                    .outlet_price = outlet_price,
                                    .lost_outlet_price = lost_outlet_price,
                                    .kilowatt_price = kilowatt_price};
        return at_work(
            threads, progress, [&](const Work& work) { return remedies(layout, options, work); });
      },
      with_work({"layout",
                 {"pipes", py::tuple(), Passing::by_name},
                 {"sizes_up", py::cast(defaults.sizes_up), Passing::by_name},
                 {"most_outlets_fewer", py::cast(defaults.most_outlets_fewer), Passing::by_name},
                 {"outlet_step", py::cast(defaults.outlet_step), Passing::by_name},
                 {"least_outlet", py::cast(defaults.least_outlet), Passing::by_name},
                 {"least_gain", py::cast(defaults.least_gain), Passing::by_name},
                 may_be_left_out("outlet_price", Passing::by_name),
                 may_be_left_out("lost_outlet_price", Passing::by_name),
                 may_be_left_out("kilowatt_price", Passing::by_name)}),
      ("What could be done for outlets that fall short, and what each remedy buys: wider pipe, "
       "fewer "
       "or smaller outlets, more pressure, a feed to the middle, a second feed.\n"
       "pipes: that can be had; none: no remedy of pipe. sizes_up: so many of the next wider ones, "
       "1 "
       "to 20. most_outlets_fewer: share of a row that may be given up, 0 to 1 [-]. outlet_step: "
       "in "
       "which smaller outlets can be had, 0.001 to 0.5 [-]. least_outlet: share of the flow of "
       "now, "
       "0.05 to 1 [-]. least_gain: what gives less of rated pressure is left out [-]. "
       "outlet_price: "
       "money for each that is changed. lost_outlet_price: for each that is taken away. "
       "kilowatt_price: for one kW more at the shaft. " +
       std::string(words_on_work) + short_row +
       ">>> best = remedies(farm, pipes=sold).ranked[0]\n"
       ">>> best.cures, best.kind\n"
       "(True, RemedyKind.wider_pipe)")
          .c_str());
}

}  // namespace

void bind_pipe_choice(py::module_& module) {
  bind_prices(module);
  bind_smallest_pipe(module);
  bind_remedies(module);
}

}  // namespace hydro::bindings
