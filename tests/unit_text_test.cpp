// unit_text_test.cpp: texts of quantities: every unit, every way of writing a number, every
// refusal.
#include "hydro/quantities/unit_text.hpp"

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <random>
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

template <class Q>
struct Reading {
  std::string_view text;
  Q expected;  ///< in SI units, so that no unit is tested against itself
};

/// The distance to the next double: the accuracy that units.hpp promises.
double one_step_from(double value) {
  return std::nextafter(std::abs(value), HUGE_VAL) - std::abs(value);
}

template <class Q>
void expect_read(std::initializer_list<Reading<Q>> readings) {
  for (const Reading<Q>& reading : readings) {
    SCOPED_TRACE(reading.text);
    const double expected = si(reading.expected);
    EXPECT_NEAR(si(from_text<Q>(reading.text)), expected, one_step_from(expected));
  }
}

constexpr const char* accepted = "(accepted)";

template <class Q>
std::string refusal(std::string_view text) {
  try {
    from_text<Q>(text);
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return accepted;
}

bool has_control_characters(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return static_cast<unsigned char>(c) < ' ' || c == '\x7f';
  });
}

std::string repeated(std::string_view part, int times) {
  std::string text;
  for (int i = 0; i < times; ++i) text += part;
  return text;
}

// ---- units: one of each, exactly

TEST(UnitText, ReadsEveryUnitOfLength) {
  expect_read<Length>({{"1 m", 1 * units::m},
                       {"1 km", 1000 * units::m},
                       {"1 cm", 0.01 * units::m},
                       {"1 mm", 0.001 * units::m},
                       {"1 ft", 0.3048 * units::m},
                       {"1 in", 0.0254 * units::m},
                       {"1 inch", 0.0254 * units::m}});
}

TEST(UnitText, ReadsEveryUnitOfPressure) {
  expect_read<Pressure>({{"1 Pa", 1 * units::Pa},
                         {"1 kPa", 1000 * units::Pa},
                         {"1 MPa", 1e6 * units::Pa},
                         {"1 bar", 1e5 * units::Pa},
                         {"1 psi", 6894.757293168362 * units::Pa},  // 0.45359237 g / 0.0254^2
                         {"1 mH2O", 9806.65 * units::Pa},
                         {"1 ftH2O", 2989.06692 * units::Pa},
                         {"1 inHg", 3386.389 * units::Pa}});
}

TEST(UnitText, ReadsEveryUnitOfFlow) {
  constexpr double us_gallon = 3.785411784e-3;  // 231 cubic inches [m3]
  const Flow gallon_a_minute = us_gallon / 60 * m3_per_s;
  const Flow gallon_an_hour = us_gallon / 3600 * m3_per_s;
  expect_read<Flow>({{"1 m3/s", 1 * m3_per_s},
                     {"1 L/s", 0.001 * m3_per_s},
                     {"1 lps", 0.001 * m3_per_s},
                     {"60 L/min", 0.001 * m3_per_s},
                     {"60 lpm", 0.001 * m3_per_s},
                     {"3600 L/h", 0.001 * m3_per_s},
                     {"3600 lph", 0.001 * m3_per_s},
                     {"3600 m3/h", 1 * m3_per_s},
                     {"1 ft3/s", 0.028316846592 * m3_per_s},
                     {"1 gal/min", gallon_a_minute},
                     {"1 gpm", gallon_a_minute},
                     {"1 gal/h", gallon_an_hour},
                     {"1 gph", gallon_an_hour}});
}

TEST(UnitText, ReadsEveryOtherUnit) {
  expect_read<Area>({{"1 m2", 1 * m2},
                     {"1 cm2", 1e-4 * m2},
                     {"1 ft2", 0.09290304 * m2},
                     {"1 ha", 10000 * m2},
                     {"1 acre", 4046.8564224 * m2}});
  expect_read<Volume>({{"1 gal", 3.785411784e-3 * m3},
                       {"1 gallon", 3.785411784e-3 * m3},
                       {"1 L", 0.001 * m3},
                       {"1 m3", 1 * m3}});
  expect_read<Velocity>({{"1 m/s", 1 * m_per_s},
                         {"1 ft/s", 0.3048 * m_per_s},
                         {"3.6 mm/h", 1e-6 * m_per_s},
                         {"86.4 mm/day", 1e-6 * m_per_s},
                         {"1 in/h", 0.0254 / 3600 * m_per_s},
                         {"1 in/day", 0.0254 / 86400 * m_per_s}});
  expect_read<Time>({{"1 s", 1 * units::s},
                     {"1 min", 60 * units::s},
                     {"1 h", 3600 * units::s},
                     {"1 day", 86400 * units::s},
                     {"2 days", 172800 * units::s}});
  expect_read<Angle>({{"-180 deg", Angle::from_value(-std::numbers::pi)}});
  expect_read<Irradiance>({{"1 W/m2", 1 * W_per_m2}, {"0.0864 MJ/m2/day", 1 * W_per_m2}});
  expect_read<Temperature>({{"20 degC", 293.15 * units::K},
                            {"0 degC", 273.15 * units::K},
                            {"68 degF", 293.15 * units::K},
                            {"32 degF", 273.15 * units::K},
                            {"-40 degF", 233.15 * units::K},
                            {"-40 degC", 233.15 * units::K},
                            {"293.15 K", 293.15 * units::K}});
  expect_read<Density>(
      {{"998 kg/m3", 998 * kg_per_m3}, {"1 lb/ft3", 16.018463373960138 * kg_per_m3}});
  expect_read<DynamicViscosity>({{"1 Pa.s", DynamicViscosity::from_value(1)},
                                 {"1 mPa.s", DynamicViscosity::from_value(1e-3)}});
  expect_read<KinematicViscosity>(
      {{"1 m2/s", 1 * m2_per_s}, {"1 mm2/s", 1e-6 * m2_per_s}, {"1 cSt", 1e-6 * m2_per_s}});
}

// ---- numbers

TEST(UnitText, ReadsNumbersAsPeopleWriteThem) {
  expect_read<Length>({{"0 m", 0 * units::m},
                       {"1.754 m", 1.754 * units::m},
                       {".5 m", 0.5 * units::m},
                       {"5. m", 5 * units::m},
                       {"2.5e3 m", 2500 * units::m},
                       {"2.5E-3 m", 0.0025 * units::m},
                       {"-3 m", -3 * units::m},
                       {"+3 m", 3 * units::m},
                       {"-3 ft", -0.9144 * units::m},
                       {"3m", 3 * units::m},
                       {"  3 \t m  ", 3 * units::m}});
}

TEST(UnitText, ReadsFractions) {
  expect_read<Length>({{"5/32 in", 0.00396875 * units::m},
                       {"3/4 in", 0.01905 * units::m},
                       {"11/4 in", 0.06985 * units::m},
                       {"1-1/4 in", 0.03175 * units::m},
                       {"1 1/4 in", 0.03175 * units::m},
                       {"1  1/4 in", 0.03175 * units::m},
                       {"1-1/4in", 0.03175 * units::m},
                       {"-1-1/4 in", -0.03175 * units::m},
                       {"-1 1/4 in", -0.03175 * units::m},
                       {"-3/4 in", -0.01905 * units::m}});
}

TEST(UnitText, TheStrokeOfAUnitIsNoFraction) {
  expect_read<Flow>({{"5 L/h", 5.0 / 3.6e6 * m3_per_s},
                     {"5L/s", 0.005 * m3_per_s},
                     {"1/2 L/s", 0.0005 * m3_per_s},
                     {"2 1/2 L/s", 0.0025 * m3_per_s},
                     {"3 m3/s", 3 * m3_per_s}});
}

// ---- there and back

/// Many values of either sign and of every size that a layout could need, and far beyond.
template <class Q>
void expect_round_trips(std::initializer_list<Unit<Q>> all) {
  constexpr int values = 3000;
  constexpr unsigned seed = 20240611;
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> mantissa(-10, 10);
  std::uniform_int_distribution<int> exponent(-12, 12);
  for (const Unit<Q>& unit : all)
    for (int i = 0; i < values; ++i) {
      const Q quantity = mantissa(random) * std::pow(10.0, exponent(random)) * unit;
      const std::string text = to_text(quantity, unit);
      ASSERT_DOUBLE_EQ(si(from_text<Q>(text)), si(quantity)) << text;  // within 4 ulp
    }
}

TEST(UnitText, WhatIsWrittenReadsBack) {
  expect_round_trips<Length>({units::m, km, cm, mm, ft, inch});
  expect_round_trips<Pressure>({units::Pa, kPa, MPa, bar, psi, mH2O, ftH2O, inHg});
  expect_round_trips<Flow>({gpm, gph, lps, lpm, lph, m3_per_s, m3_per_h, ft3_per_s});
  expect_round_trips<Volume>({gallon, litre, m3});
  expect_round_trips<Velocity>({m_per_s, ft_per_s});
  expect_round_trips<Time>({units::s, units::min, units::h});
  expect_round_trips<Temperature>({degC, degF, units::K});
  expect_round_trips<Density>({kg_per_m3, lb_per_ft3});
  expect_round_trips<KinematicViscosity>({m2_per_s, mm2_per_s});
}

TEST(UnitText, WritesTheShortestNumber) {
  EXPECT_EQ(to_text(25 * psi, psi), "25 psi");
  EXPECT_EQ(to_text(0.1 * units::m, units::m), "0.1 m");
  EXPECT_EQ(to_text(-3 * ft, ft), "-3 ft");
  EXPECT_EQ(to_text(68 * degF, degF), "68 degF");
  EXPECT_EQ(to_text(0.5, units::plain), "0.5");
}

// ---- refusals

TEST(UnitText, ARefusalQuotesTheTextAndListsWhatIsAccepted) {
  EXPECT_EQ(refusal<Pressure>("25"),
            "\"25\": has no unit; a pressure is a number and one of: psi, kPa, bar, MPa, Pa, mH2O, "
            "ftH2O, inHg");
  EXPECT_EQ(refusal<Length>("3 furlong"),
            "\"3 furlong\": does not end in a unit known here; a length is a number and one of: m, "
            "km, cm, mm, ft, in (inch)");
}

TEST(UnitText, RefusesWhatIsNoNumber) {
  for (const std::string_view text : {"",
                                      " ",
                                      "m",
                                      "ft 3",
                                      "inf m",
                                      "-inf m",
                                      "nan m",
                                      "NaN m",
                                      "infinity",
                                      "--3 m",
                                      "+-3 m",
                                      "-  3 m",
                                      ". m",
                                      "e3 m",
                                      "-m",
                                      "\"3\" m",
                                      "three m",
                                      "/4 in"}) {
    SCOPED_TRACE(text);
    EXPECT_THAT(refusal<Length>(text), HasSubstr("does not begin with a number"));
  }
}

TEST(UnitText, RefusesWhatFollowsTheNumber) {
  for (const std::string_view text :
       {"0x10 ft",  "2,5 ft",   "2,500 ft",  "1_000 ft",  "5/0 in",     "1-1/0 in",
        "1 1/0 in", "1/2/3 in", "5 / 32 in", "1--1/4 in", "1.5 1/4 in", "3 ft 2 in",
        "3 FT",     "3 ft.",    "3 m m",     "1 2 m",     "1.2.3 m",    "5/-32 in",
        "3\nm",     "3 \"",     "3 feets",   "1e m",      "3\u00a0m",   "5/4294967296 in"}) {
    SCOPED_TRACE(text);
    EXPECT_THAT(refusal<Length>(text), HasSubstr("does not end in a unit known here"));
  }
}

TEST(UnitText, RefusesABareNumber) {
  for (const std::string_view text : {"3", "3 ", "5/32", "1-1/4", "1 1/4", "-3", "2.5e3"}) {
    SCOPED_TRACE(text);
    EXPECT_THAT(refusal<Length>(text), HasSubstr("has no unit"));
  }
}

TEST(UnitText, SaysWhatAUnitOfAnotherQuantityMeasures) {
  EXPECT_THAT(refusal<Pressure>("3 ft"), HasSubstr("is a length; a pressure is"));
  EXPECT_THAT(refusal<Length>("3 psi"), HasSubstr("is a pressure; a length is"));
  EXPECT_THAT(refusal<Length>("3 gpm"), HasSubstr("is a flow; a length is"));
  EXPECT_THAT(refusal<Flow>("3 gal"), HasSubstr("is a volume; a flow is"));
  EXPECT_THAT(refusal<Flow>("3 ft2"), HasSubstr("is an area; a flow is"));
  EXPECT_THAT(refusal<Time>("3 mPa.s"), HasSubstr("is a dynamic viscosity; a time is"));
  EXPECT_THAT(refusal<Volume>("3 ft/s"), HasSubstr("is a velocity; a volume is"));
  EXPECT_THAT(refusal<Velocity>("3 min"), HasSubstr("is a time; a velocity is"));
  EXPECT_THAT(refusal<Time>("3 degF"), HasSubstr("is a temperature; a time is"));
  EXPECT_THAT(refusal<Temperature>("3 kg/m3"), HasSubstr("is a density; a temperature is"));
  EXPECT_THAT(refusal<Density>("3 cSt"), HasSubstr("is a kinematic viscosity; a density is"));
  EXPECT_THAT(refusal<KinematicViscosity>("3 m"),
              HasSubstr("is a length; a kinematic viscosity is"));
}

TEST(UnitText, RefusesNumbersTooLargeOrTooSmall) {
  for (const std::string_view text : {"1e308 km", "-1e308 km", "1e999 m", "-1e999 m", "1e-999 m"}) {
    SCOPED_TRACE(text);
    EXPECT_THAT(refusal<Length>(text), HasSubstr("is beyond the range of numbers"));
  }
}

TEST(UnitText, CutsAVeryLongTextInTheMessage) {
  constexpr std::size_t a_few_rows = 300;
  for (const std::string& text : {repeated("x", 100000),
                                  "3 " + repeated("x", 100000),
                                  repeated(" ", 100000),
                                  repeated("3", 100000)}) {
    const std::string message = refusal<Length>(text);
    EXPECT_LT(message.size(), a_few_rows);
    EXPECT_THAT(message, AllOf(StartsWith("\"" + text.substr(0, 20)), HasSubstr("...\": ")));
  }
}

TEST(UnitText, DoesNotCutALetterInTwo) {
  const std::string letter = "\u00e9";  // two bytes
  for (const std::string& before : {std::string("3 "), std::string("3  ")}) {
    std::string message = refusal<Length>(before + repeated(letter, 60));
    EXPECT_THAT(message, HasSubstr(letter));
    for (std::size_t at; (at = message.find(letter)) != std::string::npos;)
      message.erase(at, letter.size());
    EXPECT_TRUE(std::all_of(message.begin(), message.end(), [](char c) {
      return static_cast<unsigned char>(c) < 0x80;
    })) << message;
  }
}

TEST(UnitText, PassesNoControlCharactersOn) {
  for (const std::string_view text : {"3\x1b[2J", "3 m\n3 m", "\a3 m", "3 \x7f"}) {
    const std::string message = refusal<Length>(text);
    EXPECT_THAT(message, AllOf(Not(EndsWith(accepted)), HasSubstr("a length is a number")));
    EXPECT_FALSE(has_control_characters(message)) << testing::PrintToString(message);
  }
}

}  // namespace
}  // namespace hydro
