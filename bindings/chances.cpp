// chances.cpp: how likely outlets fall short when not all of a layout is known exactly.

#include "hydro/what_ifs/chances.hpp"

#include "hydro/what_ifs/chance_of_trouble.hpp"
#include "hydro/what_ifs/uncertainty.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "bindings/at_work.hpp"
#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"
#include "bindings/table.hpp"

template <>
struct pybind11::detail::type_caster<hydro::bindings::Long> {
  PYBIND11_TYPE_CASTER(hydro::bindings::Long, const_name("int"));
  static handle cast(hydro::bindings::Long number, return_value_policy, handle) {
    return PyLong_FromUnsignedLongLong(number.value);
  }
};

namespace hydro::bindings {
namespace {

constexpr const char* name_of_line = "Name of the line.";

template <class S>
Long seed_of(const S& self) {
  return {self.seed};
}
template <class S>
void keep_seed(S& self, Long seed) {
  self.seed = seed.value;
}

template <class Q>
void bind_spread(py::module_& module, const char* name) {
  using S = Spread<Q>;
  Record<S>(name, "Of one figure.")
      .field("mean", &S::mean, "Arithmetic.")
      .field("deviation", &S::deviation, "Standard deviation.")
      .field("quantiles", &S::quantiles, "In the order of the options.")
      .result(module);
}

template <class Q>
void bind_series_spread(py::module_& module, const char* name) {
  using S = SeriesSpread<Q>;
  Record<S>(name, "Of one figure at every outlet of a line, from the inlet on.")
      .field("mean", &S::mean, "Arithmetic.")
      .field("deviation", &S::deviation, "Standard deviation.")
      .field("quantiles", &S::quantiles, "In the order of the options.")
      .result(module);
}

/// A report takes it for granted.
void expect_whole(const LineChances& line) {
  const std::size_t outlets = line.below_rated.size();
  bool fits = line.is_judged.size() == outlets && line.below_minimum.size() == outlets &&
              line.above_maximum.size() == outlets;
  for (const Series<Pressure>& quantile : line.pressure.quantiles)
    fits = fits && quantile.size() == outlets;
  if (!fits) throw py::value_error(line.name + ": not one entry for each outlet; find them again");
}

void bind_uncertainty(py::module_& module) {
  Record<OutletUncertainty>("OutletUncertainty",
                            "Of one kind of outlet, where it is not as the others.")
      .field("outlet", &OutletUncertainty::outlet, "The kind's name.")
      .field("manufacturing_variation",
             &OutletUncertainty::manufacturing_variation,
             "Cv [-]; None: as of the others.")
      .field("rating", &OutletUncertainty::rating, "Of all of the kind together [-].")
      .description(module);
  Record<Uncertainty>(
      "Uncertainty",
      "What of a layout is not known exactly, as standard deviations; those without a unit are "
      "shares of the value. What is not given is exact.")
      .field("manufacturing_variation",
             &Uncertainty::manufacturing_variation,
             "Cv, of the flow of each outlet by itself at one pressure; normal, 0 to 0.2.")
      .field("rating",
             &Uncertainty::rating,
             "Of the flow of each kind of outlet, all of that kind together; normal, 0 to 0.2.")
      .field("outlets", &Uncertainty::outlets, "Kinds for which these two are others.")
      .field("inside_diameter",
             &Uncertainty::inside_diameter,
             "Of the bore of each kind of pipe, all of its lengths together; normal, 0 to 0.1.")
      .field("wall",
             &Uncertainty::wall,
             "Of C, roughness or factor of each kind of pipe; lognormal, 0 to 1.")
      .field("loss_coefficient",
             &Uncertainty::loss_coefficient,
             "Of the K of each line, all of one line together; lognormal, 0 to 2.")
      .field("supply_pressure",
             &Uncertainty::supply_pressure,
             "Of each supply that is not a pump; normal.")
      .field("pump_head",
             &Uncertainty::pump_head,
             "Of the head of each pump, the same share at every flow; normal, 0 to 0.2.")
      .field("elevation",
             &Uncertainty::elevation,
             "Of each elevation that was measured by itself; normal.")
      .description(module);
  def(
      module,
      "realisation",
      [](const Layout& layout, const Uncertainty& uncertainty, Long seed, Long number) {
        return realisation(layout, uncertainty, seed.value, number.value);
      },
      {"layout", "uncertainty", "seed", "number"},
      ("The layout with its inputs as they are drawn for this realisation, from 0 on: the same "
       "seed "
       "and number give the same layout. Each outlet is of a kind of its own. InvalidInput for an "
       "uncertainty out of its intervals.\n\n" +
       example_row +
       ">>> guess = Uncertainty(supply_pressure=1 * psi)\n"
       ">>> drawn = [realisation(farm, guess, 1, number).supply.pressure for number in (0, 0, 1)]\n"
       ">>> drawn[0] == drawn[1], drawn[0] == drawn[2]\n"
       "(True, False)")
          .c_str());
}

void bind_results(py::module_& module) {
  auto chance = Record<Chance>("Chance", "So many of so many realisations.")
                    .field("times", &Chance::times, "In which it was so.")
                    .field("of", &Chance::of, "Of all.")
                    .result(module, [](const Chance& self) {
                      return py::str("<hydro.Chance: {} of {}>").format(self.times, self.of);
                    });
  method(chance, "share", &Chance::share, {}, "[-].");
  method(chance, "low", &Chance::low, {}, "The true one lies above it, 39 times of 40 [-].");
  method(chance, "high", &Chance::high, {}, "The true one lies below it, 39 times of 40 [-].");
  Record<LineChances>("LineChances",
                      "One line. All have one entry for each outlet; index 0 is outlet 1.")
      .field("name", &LineChances::name, name_of_line)
      .field("pressure", &LineChances::pressure, "At the device.")
      .field("flow", &LineChances::flow, "Out of the outlet.")
      .field("is_judged", &LineChances::is_judged, "Neither closed nor broken.")
      .field("below_rated", &LineChances::below_rated, "Chances [-]; 0 for those not judged.")
      .field("below_minimum", &LineChances::below_minimum, "Likewise.")
      .field("above_maximum", &LineChances::above_maximum, "Likewise.")
      .examined_by(&expect_whole)
      .result(module, [](const LineChances& self) {
        return py::str("<hydro.LineChances: {}, outlets {}>")
            .format(self.name, self.below_rated.size());
      });
  Record<UniformityChances>("UniformityChances",
                            "How even outlets of one kind water, on one line or (line empty) all.")
      .field("line", &UniformityChances::line, name_of_line)
      .field("outlet_name", &UniformityChances::outlet_name, "Of the kind.")
      .field("outlets", &UniformityChances::outlets, "Of the kind.")
      .field("christiansen", &UniformityChances::christiansen, "CU [%].")
      .field("distribution", &UniformityChances::distribution, "DU of the low quarter [%].")
      .field("statistical", &UniformityChances::statistical, "Us [%]; None of one outlet.")
      .result(module);
  Record<Kept>("Kept", "Every value that was found, a row for each realisation, from 0 on.")
      .field("outlets", &Kept::outlets, "Of all lines, in their order.")
      .field("pressure", &Kept::pressure, "A column for each outlet.")
      .shown_as(name_of_table<Pressure>() + " | None",
                [](const Kept& self, py::handle owner) {
                  return table_of(self.pressure, static_cast<std::size_t>(self.outlets), owner);
                })
      .field("flow", &Kept::flow, "A column for each outlet.")
      .shown_as(name_of_table<Flow>() + " | None",
                [](const Kept& self, py::handle owner) {
                  return table_of(self.flow, static_cast<std::size_t>(self.outlets), owner);
                })
      .field("inflow", &Kept::inflow, "One for each realisation.")
      .field("lowest_pressure",
             &Kept::lowest_pressure,
             "One for each realisation; empty where no outlet is judged.")
      .result(module, [](const Kept& self) {
        return py::str("<hydro.Kept: realisations {}, outlets {}>")
            .format(self.inflow.size(), self.outlets);
      });
  Record<Chances>("Chances", "How likely outlets of a layout fall short.")
      .field("realisations", &Chances::realisations, "That were solved.")
      .field("seed", &seed_of<Chances>, &keep_seed<Chances>, "Of the draws.")
      .field("quantiles", &Chances::quantiles, "Shares that quantiles were asked for.")
      .field("lines", &Chances::lines, "In the order of the layout.")
      .field("inflow", &Chances::inflow, "Out of all supplies together.")
      .field("lowest_pressure",
             &Chances::lowest_pressure,
             "At the device, of the outlets that are judged; None: none is.")
      .field("any_below_rated", &Chances::any_below_rated, "That at least one outlet is.")
      .field("any_below_minimum", &Chances::any_below_minimum, "Likewise.")
      .field("any_above_maximum", &Chances::any_above_maximum, "Likewise.")
      .field("times_below_rated",
             &Chances::times_below_rated,
             "In how many realisations exactly so many outlets were: entry k for k outlets.")
      .field("uniformity", &Chances::uniformity, "As uniformity_of_outlets has them.")
      .field("kept", &Chances::kept, "None unless asked for.")
      .result(module, [](const Chances& self) {
        return py::str("<hydro.Chances: realisations {}, any below rated {}, any below minimum {}>")
            .format(self.realisations, self.any_below_rated.times, self.any_below_minimum.times);
      });
  Record<TroubleAtCount>("TroubleAtCount", "Chances with so many outlets more.")
      .field("more", &TroubleAtCount::more, "So many.")
      .field("below_rated", &TroubleAtCount::below_rated, "That at least one outlet is.")
      .field("below_minimum", &TroubleAtCount::below_minimum, "Likewise.")
      .field("above_maximum", &TroubleAtCount::above_maximum, "Likewise.")
      .field("lowest_pressure",
             &TroubleAtCount::lowest_pressure,
             "At the device, of the outlets that are judged; None: none is.")
      .field("inflow", &TroubleAtCount::inflow, "Out of all supplies together.")
      .field("seed", &seed_of<TroubleAtCount>, &keep_seed<TroubleAtCount>, "Of the draws.")
      .field("quantiles", &TroubleAtCount::quantiles, "Shares that quantiles were asked for.")
      .result(module, [](const TroubleAtCount& self) {
        return py::str("<hydro.TroubleAtCount: more {}, below rated {}, below minimum {}>")
            .format(self.more, self.below_rated.share(), self.below_minimum.share());
      });
}

std::vector<Parameter> with_chance_options(std::vector<Parameter> parameters) {
  const ChanceOptions defaults;
  parameters.emplace_back("realisations", py::cast(defaults.realisations), Passing::by_name);
  parameters.emplace_back("seed", py::cast(defaults.seed), Passing::by_name);
  parameters.emplace_back("quantiles", py::tuple(py::cast(defaults.quantiles)), Passing::by_name);
  return parameters;
}

}  // namespace

void bind_chances(py::module_& module) {
  bind_spread<Pressure>(module, "PressureSpread");
  bind_spread<Flow>(module, "FlowSpread");
  bind_spread<double>(module, "NumberSpread");
  bind_series_spread<Pressure>(module, "PressureSeriesSpread");
  bind_series_spread<Flow>(module, "FlowSeriesSpread");
  bind_uncertainty(module);
  bind_results(module);
  const std::string words =
      "realisations: N, 2 to 1000000. seed: of the draws. quantiles: shares to give, each above 0 "
      "and below 1. ";
  auto parameters = with_chance_options({"layout", "uncertainty"});
  parameters.emplace_back("keep", py::bool_(false), Passing::by_name);
  def(
      module,
      "chances",
      [](const Layout& layout,
         const Uncertainty& uncertainty,
         int realisations,
         Long seed,
         const std::vector<double>& quantiles,
         bool keep,
         int threads,
         const Progress& progress) {
        const ChanceOptions options{
            .realisations = realisations, .seed = seed.value, .quantiles = quantiles, .keep = keep};
        return at_work(threads, progress, [&](const Work& work) {
          return chances(layout, uncertainty, options, work);
        });
      },
      with_work(std::move(parameters)),
      ("How likely outlets fall short when not all of a layout is known exactly: many realisations "
       "are solved and counted (Monte Carlo). InvalidInput for options or an uncertainty out of "
       "their intervals; NotSolved when one realisation cannot be solved.\n" +
       words + "keep: every pressure and flow, up to 100000000 of each. " + words_on_work +
       example_row +
       ">>> guess = Uncertainty(supply_pressure=4 * psi)\n"
       ">>> found = chances(farm, guess, realisations=200, keep=True)\n"
       ">>> found.kept.pressure.shape, found.any_below_rated.of\n"
       "((200, 24), 200)")
          .c_str());
  auto of_trouble = with_chance_options({"layout", "line", "most", "uncertainty"});
  of_trouble.emplace_back("more", py::cast(MoreOutlets{}), Passing::by_name);
  def(
      module,
      "chance_of_trouble",
      [](const Layout& layout,
         const std::string& line,
         int most,
         const Uncertainty& uncertainty,
         int realisations,
         Long seed,
         const std::vector<double>& quantiles,
         const MoreOutlets& more,
         int threads,
         const Progress& progress) {
        const ChanceOptions options{
            .realisations = realisations, .seed = seed.value, .quantiles = quantiles};
        return at_work(threads, progress, [&](const Work& work) {
          return chance_of_trouble(layout, line, most, uncertainty, more, options, work);
        });
      },
      with_work(std::move(of_trouble)),
      ("The chance that outlets fall short, for none more on a line, one more and so on up to "
       "most, "
       "0 to 1000. All outlets of the layout are judged.\n" +
       words + "more: which outlets, and where. " + words_on_work + example_row +
       ">>> guess = Uncertainty(supply_pressure=1 * psi)\n"
       ">>> found = chance_of_trouble(farm, \"row 1\", 20, guess, realisations=100)\n"
       ">>> found[0].below_rated.share(), found[20].below_rated.share()\n"
       "(0.0, 1.0)")
          .c_str());
}

}  // namespace hydro::bindings
