#include "hydro/quantities/unit_text.hpp"

#include "hydro/quantities/error.hpp"

#include <charconv>
#include <cmath>
#include <limits>
#include <optional>

#include <fmt/format.h>

namespace hydro {
namespace {

/// A unit and, beside its symbol, a second spelling that is accepted.
template <class Q>
struct Spelling {
  Unit<Q> unit;
  std::string_view alias = {};
};

/// What a quantity is called in a sentence, and the units in which a text may give it.
template <class Q>
struct Vocabulary;
template <>
struct Vocabulary<Length> {
  static constexpr std::string_view name = "a length";
  static constexpr Spelling<Length> units[] = {{units::m}, {km}, {cm}, {mm}, {ft}, {inch, "inch"}};
};
template <>
struct Vocabulary<Pressure> {
  static constexpr std::string_view name = "a pressure";
  static constexpr Spelling<Pressure> units[] = {
      {psi}, {kPa}, {bar}, {MPa}, {units::Pa}, {mH2O}, {ftH2O}, {inHg}};
};
template <>
struct Vocabulary<Flow> {
  static constexpr std::string_view name = "a flow";
  static constexpr Spelling<Flow> units[] = {{gpm, "gpm"},
                                             {gph, "gph"},
                                             {lps, "lps"},
                                             {lpm, "lpm"},
                                             {lph, "lph"},
                                             {m3_per_h},
                                             {m3_per_s},
                                             {ft3_per_s}};
};
template <>
struct Vocabulary<Area> {
  static constexpr std::string_view name = "an area";
  static constexpr Spelling<Area> units[] = {{m2}, {cm2}, {ft2}, {hectare}, {acre}};
};
template <>
struct Vocabulary<Volume> {
  static constexpr std::string_view name = "a volume";
  static constexpr Spelling<Volume> units[] = {{gallon, "gallon"}, {litre}, {m3}};
};
template <>
struct Vocabulary<RotationalSpeed> {
  static constexpr std::string_view name = "a rotational speed";
  static constexpr Spelling<RotationalSpeed> units[] = {{rpm, "r/min"}, {rps}};
};
template <>
struct Vocabulary<Power> {
  static constexpr std::string_view name = "a power";
  static constexpr Spelling<Power> units[] = {{kW}, {hp}, {units::W}};
};
template <>
struct Vocabulary<Velocity> {
  static constexpr std::string_view name = "a velocity";
  static constexpr Spelling<Velocity> units[] = {
      {m_per_s}, {ft_per_s}, {mm_per_h}, {mm_per_day}, {inch_per_h}, {inch_per_day}};
};
template <>
struct Vocabulary<Time> {
  static constexpr std::string_view name = "a time";
  static constexpr Spelling<Time> units[] = {
      {units::s}, {units::min}, {units::h}, {units::day, "days"}};
};
template <>
struct Vocabulary<Angle> {
  static constexpr std::string_view name = "an angle";
  static constexpr Spelling<Angle> units[] = {{degree}};
};
template <>
struct Vocabulary<Irradiance> {
  static constexpr std::string_view name = "an irradiance";
  static constexpr Spelling<Irradiance> units[] = {{W_per_m2}, {MJ_per_m2_day}};
};
template <>
struct Vocabulary<Temperature> {
  static constexpr std::string_view name = "a temperature";
  static constexpr Spelling<Temperature> units[] = {{degC}, {degF}, {units::K}};
};
template <>
struct Vocabulary<Density> {
  static constexpr std::string_view name = "a density";
  static constexpr Spelling<Density> units[] = {{kg_per_m3}, {lb_per_ft3}};
};
template <>
struct Vocabulary<DynamicViscosity> {
  static constexpr std::string_view name = "a dynamic viscosity";
  static constexpr Spelling<DynamicViscosity> units[] = {{mPa_s}, {Pa_s}};
};
template <>
struct Vocabulary<KinematicViscosity> {
  static constexpr std::string_view name = "a kinematic viscosity";
  static constexpr Spelling<KinematicViscosity> units[] = {{m2_per_s}, {mm2_per_s, "cSt"}};
};

template <class Q>
std::optional<Unit<Q>> find_unit(std::string_view spelling) {
  for (const Spelling<Q>& accepted : Vocabulary<Q>::units)
    if (spelling == accepted.unit.symbol || (!accepted.alias.empty() && spelling == accepted.alias))
      return accepted.unit;
  return std::nullopt;
}

/// What the spelling measures, empty if it is no unit at all.
template <class... Q>
std::string_view measured_by(std::string_view spelling) {
  std::string_view name;
  ((find_unit<Q>(spelling) ? void(name = Vocabulary<Q>::name) : void()), ...);
  return name;
}

template <class Q>
std::string accepted_units() {
  std::string list;
  for (const Spelling<Q>& accepted : Vocabulary<Q>::units)
    list += (list.empty() ? "" : ", ") + std::string(accepted.unit.symbol) +
            (accepted.alias.empty() ? "" : " (" + std::string(accepted.alias) + ")");
  return list;
}

template <class Q>
[[noreturn]] void refuse(std::string_view text, const std::string& why) {
  throw InvalidInput(
      in_quotes(text),
      fmt::format(
          "{}; {} is a number and one of: {}", why, Vocabulary<Q>::name, accepted_units<Q>()));
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

void skip_blanks(std::string_view& text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
}

/// Takes an unsigned decimal off the front of the text.
std::optional<double> take_decimal(std::string_view& text) {
  if (text.empty() || !(is_digit(text.front()) || text.front() == '.')) return std::nullopt;
  double number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error == std::errc::result_out_of_range)
    number = std::numeric_limits<double>::infinity();  // or 0: refused as beyond the range
  else if (error != std::errc{})
    return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return number;
}

/// Takes "n/d" off the front: digits, a stroke, digits. The stroke of a unit ("5 L/h") is not one.
std::optional<double> take_fraction(std::string_view& text) {
  std::string_view rest = text;
  const auto whole = [&rest]() -> std::optional<double> {
    if (rest.empty() || !is_digit(rest.front())) return std::nullopt;
    unsigned number = 0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), number);
    if (error != std::errc{}) return std::nullopt;
    rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
    return number;
  };
  const auto above = whole();
  if (!above || rest.empty() || rest.front() != '/') return std::nullopt;
  rest.remove_prefix(1);
  const auto below = whole();
  if (!below || *below == 0) return std::nullopt;
  text = rest;
  return *above / *below;
}

/// Takes "1.754", "5/32", "1-1/4" or "1 1/4" off the front.
std::optional<double> take_number(std::string_view& text) {
  if (const auto fraction = take_fraction(text)) return fraction;
  const auto whole = take_decimal(text);
  if (!whole || text.empty() || *whole != std::floor(*whole)) return whole;
  std::string_view rest = text;
  if (rest.front() == '-')
    rest.remove_prefix(1);
  else
    skip_blanks(rest);
  const auto fraction = take_fraction(rest);
  if (!fraction) return whole;
  text = rest;
  return *whole + *fraction;
}

}  // namespace

template <class Q>
Q from_text(std::string_view text) {
  std::string_view rest = text;
  skip_blanks(rest);
  const bool negative = !rest.empty() && rest.front() == '-';
  if (negative || (!rest.empty() && rest.front() == '+')) rest.remove_prefix(1);
  const auto magnitude = take_number(rest);
  if (!magnitude) refuse<Q>(text, "does not begin with a number");
  skip_blanks(rest);
  while (!rest.empty() && (rest.back() == ' ' || rest.back() == '\t')) rest.remove_suffix(1);
  if (rest.empty()) refuse<Q>(text, "has no unit");
  const auto unit = find_unit<Q>(rest);
  if (!unit) {
    const std::string_view measured = measured_by<Length,
                                                  Pressure,
                                                  Flow,
                                                  Area,
                                                  Volume,
                                                  Velocity,
                                                  Time,
                                                  RotationalSpeed,
                                                  Power,
                                                  Angle,
                                                  Irradiance,
                                                  Temperature,
                                                  Density,
                                                  DynamicViscosity,
                                                  KinematicViscosity>(rest);
    refuse<Q>(
        text,
        measured.empty() ? "does not end in a unit known here" : fmt::format("is {}", measured));
  }
  const Q quantity = (negative ? -*magnitude : *magnitude) * *unit;
  if (!std::isfinite(si(quantity))) refuse<Q>(text, "is beyond the range of numbers");
  return quantity;
}

template Length from_text(std::string_view);
template Pressure from_text(std::string_view);
template Flow from_text(std::string_view);
template Area from_text(std::string_view);
template Volume from_text(std::string_view);
template Velocity from_text(std::string_view);
template Time from_text(std::string_view);
template RotationalSpeed from_text(std::string_view);
template Power from_text(std::string_view);
template Angle from_text(std::string_view);
template Irradiance from_text(std::string_view);
template Temperature from_text(std::string_view);
template Density from_text(std::string_view);
template DynamicViscosity from_text(std::string_view);
template KinematicViscosity from_text(std::string_view);

std::string to_text(double number) {
  return fmt::format("{}", number);
}

std::string to_message(double number, const char* symbol) {
  return fmt::format("{:.10g}{}{}", number, *symbol == '\0' ? "" : " ", symbol);
}

}  // namespace hydro
