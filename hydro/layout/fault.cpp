#include "hydro/layout/fault.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// One function from several lambdas, one for each kind of fault.
template <class... Cases>
struct ByKind : Cases... {
  using Cases::operator()...;
};
template <class... Cases>
ByKind(Cases...) -> ByKind<Cases...>;

constexpr Length default_stub = 0.5 * ft;
constexpr double default_loss_coefficient = 1.0;

double loss_coefficient_of(const std::optional<double>& given, const Line& line) {
  return given.value_or(line.riser.loss_coefficient.value_or(default_loss_coefficient));
}

}  // namespace

HeadOff head_off(std::string line, int outlet, std::optional<double> loss_coefficient) {
  return {std::move(line), outlet, loss_coefficient};
}
RiserSheared riser_sheared(std::string line,
                           int outlet,
                           std::optional<Length> stub,
                           std::optional<double> loss_coefficient) {
  return {std::move(line), outlet, std::move(stub), loss_coefficient};
}
Clogged clogged(std::string line, int outlet, double share) {
  return {std::move(line), outlet, share};
}
Worn worn(std::string line, int outlet, double share) {
  return {std::move(line), outlet, share};
}
Capped capped(std::string line, int outlet) {
  return {std::move(line), outlet};
}

const std::string& line_of(const Fault& fault) {
  return std::visit([](const auto& kind) -> const std::string& { return kind.line; }, fault);
}

int outlet_of(const Fault& fault) {
  return std::visit([](const auto& kind) { return kind.outlet; }, fault);
}

std::optional<OpenRiser> open_riser(const Fault& fault, const Line& line) {
  if (const auto* off = std::get_if<HeadOff>(&fault))
    return OpenRiser{line.riser.height, loss_coefficient_of(off->loss_coefficient, line)};
  if (const auto* sheared = std::get_if<RiserSheared>(&fault))
    return OpenRiser{sheared->stub.value_or(std::min(default_stub, line.riser.height)),
                     loss_coefficient_of(sheared->loss_coefficient, line)};
  return std::nullopt;
}

std::string describe(const Fault& fault, const Line& line, UnitSystem units) {
  const UnitSet shown = unit_set(units);
  const auto opening = [&] {
    const OpenRiser open = open_riser(fault, line).value();
    const double bore = line.riser.inside_diameter.value_or(Length{}) / shown.bore;
    return fmt::format("({:.1f} {} high, bore {:.3g} {}, loss coefficient {:.2g})",
                       open.height / shown.length,
                       shown.length.symbol,
                       bore,
                       shown.bore.symbol,
                       open.loss_coefficient);
  };
  const std::string what = std::visit(
      ByKind{[&](const HeadOff&) { return "head off, riser open at its top " + opening(); },
             [&](const RiserSheared&) { return "riser sheared, stub open " + opening(); },
             [](const Clogged& it) {
               return fmt::format("clogged, {:.3g} % of its flow lost", 100 * it.share);
             },
             [](const Worn& it) { return fmt::format("worn, {:.3g} % more flow", 100 * it.share); },
             [](const Capped&) { return std::string("capped"); }},
      fault);
  return fmt::format("{}, outlet {}: {}", line_of(fault), outlet_of(fault), what);
}

std::vector<Problem> problems(const Fault& fault, const Line& line) {
  constexpr Range<double> some_loss{0, 1000, units::plain};
  Examination examination;
  if (line.outlet_count() == 0)
    examination.add("line", "is " + in_quotes(line.name) + ", which has no outlets");
  else
    examination.within("outlet", outlet_of(fault), 1, line.outlet_count());

  if (open_riser(fault, line) && !line.riser.inside_diameter)
    examination.add(
        "riser.inside_diameter",
        "of line " + in_quotes(line.name) +
            " is not known, and the flow of a break hangs on it; give the line's riser its bore");
  std::visit(
      ByKind{[&](const HeadOff& it) {
               examination.within("loss_coefficient", it.loss_coefficient, some_loss);
             },
             [&](const RiserSheared& it) {
               examination.within("loss_coefficient", it.loss_coefficient, some_loss);
               const double height = line.riser.height / units::m;
               examination.within("stub", it.stub, Range<Length>{0, height, units::m});
             },
             [&](const Clogged& it) {
               if (!(it.share > 0 && it.share < 1))
                 examination.add("share",
                                 "is " + to_message(it.share, "") +
                                     ", must be above 0 and below 1; \"capped\" lets out none");
             },
             [&](const Worn& it) {
               examination.within("share", it.share, Range<double>{0, 10, units::plain, true});
             },
             [](const Capped&) {}},
      fault);
  return examination.take();
}

}  // namespace hydro
