// read_layout_test.cpp: description files, good and bad. In the texts below an @ marks the place at
// which a mistake must be reported; it is taken out before the text is read.
#include "hydro/text/read_layout.hpp"

#include "hydro/physics/choices.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "temporary_folder.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::AnyOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

constexpr std::size_t a_screen = 1000;  // characters

std::string repeated(std::string_view part, int times) {
  std::string text;
  for (int i = 0; i < times; ++i) text += part;
  return text;
}

/// A sound description in parts, so that a test need only write the part it spoils.
struct Description {
  std::string top = "name = \"Plover Flat\"\n";
  std::string supply = "[supply]\npressure = \"40 psi\"\n";
  std::string pipe = "[pipe.wide]\ninside_diameter = \"2 in\"\nhazen_williams = 150\n";
  std::string outlet = "[outlet.spray]\nflow = \"2 gpm\"\nat = \"30 psi\"\n";
  std::string line =
      "[[line]]\nname = \"row 1\"\npipe = \"wide\"\noutlet = \"spray\"\ncount = 3\n"
      "spacing = \"20 ft\"\n";
  std::string more = {};

  std::string text() const { return top + supply + pipe + outlet + line + more; }
};

/// A text without its marks, and the places of the marks as "line:column".
struct Marked {
  std::string text;
  std::vector<std::string> places;
};

Marked unmark(std::string_view marked) {
  Marked result;
  int line = 1;
  int column = 1;
  for (const char c : marked) {
    if (c == '@') {
      result.places.push_back(std::to_string(line) + ":" + std::to_string(column));
      continue;
    }
    result.text += c;
    column = c == '\n' ? 1 : column + 1;
    line += c == '\n';
  }
  return result;
}

template <class Action>
std::vector<std::string> mistakes_of(Action action) {
  std::vector<std::string> texts;
  try {
    action();
  } catch (const InvalidInput& error) {
    for (const Problem& problem : error.problems()) texts.push_back(problem.text());
  }
  return texts;
}
std::vector<std::string> mistakes_in(const std::string& text) {
  return mistakes_of([&] { read_layout_text(text, "f"); });
}

bool has_control_characters(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return static_cast<unsigned char>(c) < ' ' || c == '\x7f';
  });
}

std::string supply_with(const std::string& rest) {
  return "[supply]\npressure = \"40 psi\"\n" + rest;
}
std::string pipe_with(const std::string& rest) {
  return "[pipe.wide]\ninside_diameter = \"2 in\"\n" + rest;
}
std::string outlet_with(const std::string& rest) {
  return "[outlet.spray]\nflow = \"2 gpm\"\nat = \"30 psi\"\n" + rest;
}
std::string row_with(const std::string& rest) {
  return "[[line]]\nname = \"row 1\"\npipe = \"wide\"\noutlet = \"spray\"\n" + rest;
}
const std::string a_pump =
    "[supply.pump]\npoints = [[\"0 gpm\", \"150 ft\"], [\"130 gpm\", \"107.75 ft\"]]\n"
    "curve_speed = \"2600 rpm\"\n";
const std::string three = "count = 3\nspacing = \"20 ft\"\n";

// ---- good files

TEST(ReadLayout, AFileMakesTheSameLayoutAsCode) {
  const Layout read = read_layout_text(R"(
name = "Plover Flat"
site.altitude = "400 ft"
water = { temperature = "62 degF", density = "999 kg/m3", kinematic_viscosity = "1.1 mm2/s" }
supply = { pressure = "43 psi", elevation = "-2 ft" }
[pipe.main]
inside_diameter = "3 in"
roughness = "0.0015 mm"
[pipe.lateral]
inside_diameter = "1-3/4 in"
hazen_williams = 150
[pipe.tube]
inside_diameter = "20 mm"
darcy_factor = 0.02
[outlet.spray]
flow = "2 gpm"
at = "30 psi"
exponent = 0.55
rated = "25 psi"
minimum = "18 psi"
maximum = "50 psi"
[[line]]
name = "main"
pipe = "main"
length = "180 ft"
ground_rise = "3 ft"
loss_coefficient = 2
[[line]]
name = "row 1"
fed_by = "main"
pipe = "lateral"
outlet = "spray"
count = 10
spacing = "36 ft"
first_at = "18 ft"
length = "350 ft"
outlet_loss_coefficient = 0.3
riser = { height = "4 ft", inside_diameter = "0.81 in", hazen_williams = 150, loss_coefficient = 1 }
[[line]]
name = "row 2"
pipe = "tube"
outlet = "spray"
count = 2
spacing = "2 m"
riser = { height = "1 ft", inside_diameter = "20 mm", darcy_factor = 0.03 }
[[fault]]
line = "row 1"
outlet = 7
kind = "riser sheared"
stub = "0.5 ft"
[[fault]]
line = "row 2"
outlet = 1
kind = "clogged"
share = 0.25
)");

  const Outlet spray{.name = "spray",
                     .flow = 2 * gpm,
                     .at = 30 * psi,
                     .exponent = 0.55,
                     .rated = 25 * psi,
                     .minimum = 18 * psi,
                     .maximum = 50 * psi};
  const Pipe main{.name = "main", .inside_diameter = 3 * inch, .roughness = 0.0015 * mm};
  const Pipe lateral{.name = "lateral", .inside_diameter = 1.75 * inch, .hazen_williams = 150};
  const Pipe tube{.name = "tube", .inside_diameter = 20 * mm, .darcy_factor = 0.02};
  const Layout built =
      Layout(Supply{.pressure = 43 * psi, .elevation = -2 * ft},
             {Line{.name = "main",
                   .pipe = main,
                   .length = 180 * ft,
                   .ground_rise = 3 * ft,
                   .loss_coefficient = 2},
              Line{.name = "row 1",
                   .fed_by = "main",
                   .pipe = lateral,
                   .outlet = spray,
                   .count = 10,
                   .spacing = 36 * ft,
                   .first_at = 18 * ft,
                   .length = 350 * ft,
                   .riser = {.height = 4 * ft,
                             .inside_diameter = 0.81 * inch,
                             .hazen_williams = 150,
                             .loss_coefficient = 1},
                   .outlet_loss_coefficient = 0.3},
              Line{.name = "row 2",
                   .pipe = tube,
                   .outlet = spray,
                   .count = 2,
                   .spacing = 2 * units::m,
                   .riser = {.height = 1 * ft, .inside_diameter = 20 * mm, .darcy_factor = 0.03}}},
             Water{.temperature = 62 * degF,
                   .density = 999 * kg_per_m3,
                   .kinematic_viscosity = 1.1 * mm2_per_s},
             Site{.name = "Plover Flat", .altitude = 400 * ft, .units = UnitSystem::us})
          .with_faults({riser_sheared("row 1", 7, 0.5 * ft), clogged("row 2", 1, 0.25)});

  EXPECT_EQ(read.supply(), built.supply());
  EXPECT_EQ(read.water(), built.water());
  EXPECT_EQ(read.site(), built.site());
  EXPECT_EQ(read.lines(), built.lines());
  EXPECT_EQ(read.faults(), built.faults());
  const Solution from_file = solve(read);
  const Solution from_code = solve(built);
  for (std::size_t i = 0; i < built.lines().size(); ++i) {  // bit for bit
    EXPECT_TRUE(
        std::ranges::equal(from_file.lines()[i].pressure.si(), from_code.lines()[i].pressure.si()));
    EXPECT_TRUE(std::ranges::equal(from_file.lines()[i].flow.si(), from_code.lines()[i].flow.si()));
  }
}

TEST(ReadLayout, WhatIsLeftOutStaysOut) {
  const Layout read = read_layout_text(Description().text());
  EXPECT_EQ(read.line("row 1"),
            (Line{.name = "row 1",
                  .pipe = {.name = "wide", .inside_diameter = 2 * inch, .hazen_williams = 150},
                  .outlet = Outlet{.name = "spray", .flow = 2 * gpm, .at = 30 * psi},
                  .count = 3,
                  .spacing = 20 * ft}));
  EXPECT_EQ(read.supply(), Supply{.pressure = 40 * psi});
  EXPECT_EQ(read.water(), Water{});
  EXPECT_THAT(read.faults(), IsEmpty());
}

TEST(ReadLayout, ReadsASupplyOfTwoPumpsWithAllThatBelongsToThem) {
  const Layout layout = read_layout_text(Description{.supply = R"(
[supply]
elevation = "3 ft"
arrangement = "series"
suction = { lift = "6 ft", pipe = "wide", length = "25 ft", loss_coefficient = 3 }
filter = { loss = "1.5 psi", at = "80 gpm" }
gauge = { height = "2 ft", range = "100 psi", after_filter = true }
[supply.pump]
points = [["0 gpm", "150 ft"], ["60 gpm", "141 ft"], ["130 gpm", "107.75 ft"]]
shape = "quadratic"
curve_speed = "2600 rpm"
speed = "2210 r/min"
top_speed = "2800 rpm"
least_flow = "20 gpm"
most_flow = "130 gpm"
npsh_required = [["20 gpm", "6.36 ft"], ["130 gpm", "21.21 ft"]]
efficiency = 0.6
power = "13 hp"
droop = 0.05
[supply.second_pump]
points = [["0 L/s", "20 m"], ["10 L/s", "9 m"]]
shape = "through points"
efficiencies = [["40 gpm", 0.52], ["100 gpm", 0.61]]
)"}
                                             .text());
  EXPECT_EQ(
      layout.supply(),
      (Supply{
          .pump =
              Pump{.points = {{0 * gpm, 150 * ft}, {60 * gpm, 141 * ft}, {130 * gpm, 107.75 * ft}},
                   .shape = CurveShape::quadratic,
                   .curve_speed = 2600 * rpm,
                   .speed = 2210 * rpm,
                   .top_speed = 2800 * rpm,
                   .least_flow = 20 * gpm,
                   .most_flow = 130 * gpm,
                   .npsh_required = {{20 * gpm, 6.36 * ft}, {130 * gpm, 21.21 * ft}},
                   .efficiency = 0.6,
                   .power = 13 * hp,
                   .droop = 0.05},
          .second_pump = Pump{.points = {{0 * lps, 20 * units::m}, {10 * lps, 9 * units::m}},
                              .shape = CurveShape::through_points,
                              .efficiencies = {{40 * gpm, 0.52}, {100 * gpm, 0.61}}},
          .arrangement = PumpArrangement::series,
          .suction =
              Suction{
                  .lift = 6 * ft,
                  .pipe = Pipe{.name = "wide", .inside_diameter = 2 * inch, .hazen_williams = 150},
                  .length = 25 * ft,
                  .loss_coefficient = 3},
          .filter = Filter{.loss = 1.5 * psi, .at = 80 * gpm},
          .gauge = Gauge{.height = 2 * ft, .range = 100 * psi, .after_filter = true},
          .elevation = 3 * ft}));
}

TEST(ReadLayout, ReadsTanksAndHydrants) {
  const auto supply = [](const std::string& text) {
    return read_layout_text(Description{.supply = text}.text()).supply();
  };
  EXPECT_EQ(supply("[supply.tank]\nlevel = \"0.6 m\"\ndiameter = \"40 cm\"\n"),
            (Supply{.tank = Tank{.level = 0.6 * units::m, .diameter = 40 * cm}}));
  EXPECT_EQ(supply("supply = { tank = { level = \"2 m\", area = \"30 m2\" } }\n"),
            (Supply{.tank = Tank{.level = 2 * units::m, .area = 30 * m2}}));
  EXPECT_EQ(
      supply("[supply.hydrant]\npressure_at_rest = \"60 psi\"\nresidual_pressure = \"50 psi\"\n"
             "flow = \"90 gpm\"\n"),
      (Supply{.hydrant = Hydrant{
                  .pressure_at_rest = 60 * psi, .residual_pressure = 50 * psi, .flow = 90 * gpm}}));
}

TEST(ReadLayout, ReadsValvesRegulatorsSetsAndTheirFaults) {
  const Layout layout = read_layout_text(Description{
      .supply = "[supply]\nfilter = { loss = \"1 psi\", at = \"80 gpm\" }\n" + a_pump,
      .outlet = outlet_with("regulator = \"25 psi\"\n"),
      .line =
          row_with(three + "valve = { kind = \"gate\", opening = \"three quarters closed\" }\n"),
      .more = R"(
[[line]]
name = "row 2"
pipe = "wide"
length = "9 ft"
valve = "shut"
regulator = "30 psi"
[[line]]
name = "row 3"
pipe = "wide"
length = "9 ft"
valve = { kind = "globe" }
[[set]]
name = "rows 1+2"
lines = ["row 1", "row 2"]
[[set]]
name = "row 3"
lines = ["row 3"]
[[fault]]
kind = "valve left open"
line = "row 2"
[[fault]]
kind = "regulator stuck open"
line = "row 2"
[[fault]]
kind = "regulator stuck shut"
line = "row 1"
outlet = 2
[[fault]]
kind = "pump worn"
share = 0.1
[[fault]]
kind = "engine slow"
speed = "2000 rpm"
pump = 1
[[fault]]
kind = "filter dirty"
loss = "4 psi"
)"}
                                             .text());
  EXPECT_EQ(layout.line("row 1").valve,
            (Valve{ValveKind::gate, ValveOpening::three_quarters_closed}));
  EXPECT_EQ(layout.line("row 1").regulator, std::nullopt);
  EXPECT_EQ(layout.line("row 1").outlet.value().regulator, 25 * psi);
  EXPECT_EQ(layout.line("row 2").valve, (Valve{.opening = ValveOpening::shut}));
  EXPECT_EQ(layout.line("row 2").regulator, 30 * psi);
  EXPECT_EQ(layout.line("row 3").valve, (Valve{ValveKind::globe, ValveOpening::open}));
  EXPECT_THAT(layout.sets(),
              ElementsAre(WateringSet{.name = "rows 1+2", .lines = {"row 1", "row 2"}},
                          WateringSet{.name = "row 3", .lines = {"row 3"}}));
  EXPECT_EQ(layout.faults(),
            (std::vector<Fault>{valve_left_open("row 2"),
                                regulator_stuck_open("row 2"),
                                regulator_stuck_shut("row 1", 2),
                                pump_worn(0.1),
                                engine_slow(2000 * rpm, 1),
                                filter_dirty(4 * psi)}));
}

/// Reads the word of each choice where a file has it.
template <class E, class Read>
void expect_words(const std::vector<std::pair<E, std::string>>& words, Read read_word) {
  EXPECT_EQ(words.size(), choices<E>.size());
  for (const auto& [value, word] : words) {
    EXPECT_EQ(word_of(value), word);
    EXPECT_EQ(read_word(word), value) << word;
  }
}

TEST(ReadLayout, ReadsLinesThatJoinOthersAndFurtherSupplies) {
  const Description description{.supply = "[supply]\n" + a_pump, .more = R"(
[[further_supply]]
name = "hill tank"
elevation = "70 ft"
tank = { level = "4 ft", diameter = "9 ft" }
[[further_supply]]
name = "creek"
[further_supply.pump]
points = [["0 gpm", "90 ft"], ["60 gpm", "70 ft"]]
[further_supply.suction]
lift = "5 ft"
pipe = "wide"
length = "12 ft"
[further_supply.filter]
loss = "2 psi"
at = "40 gpm"
[[line]]
name = "row 2"
fed_by = "hill tank"
joins = "row 1"
joins_at = "30 ft"
check_valve = true
pipe = "wide"
length = "90 ft"
[[line]]
name = "row 3"
fed_by = "creek"
joins = "row 1"
joins_outlet = 2
check_valve = false
ground_rise = "0 ft"
pipe = "wide"
length = "90 ft"
[[line]]
name = "ring"
fed_by = "row 1"
joins = "ring"
joins_at = "0 ft"
ground_rise = "0 ft"
valve = "shut"
pipe = "wide"
length = "200 ft"
[[fault]]
kind = "pump worn"
share = 0.1
supply = "creek"
[[fault]]
kind = "filter dirty"
loss = "9 psi"
supply = "creek"
[[fault]]
kind = "engine slow"
speed = "2000 rpm"
)"};
  const Layout layout = read_layout_text(description.text());
  const Pipe wide{.name = "wide", .inside_diameter = 2 * inch, .hazen_williams = 150};
  EXPECT_EQ(
      layout.further_supplies(),
      (std::vector<Supply>{{.tank = Tank{.level = 4 * ft, .diameter = 9 * ft},
                            .elevation = 70 * ft,
                            .name = "hill tank"},
                           {.pump = Pump{.points = {{0 * gpm, 90 * ft}, {60 * gpm, 70 * ft}}},
                            .suction = Suction{.lift = 5 * ft, .pipe = wide, .length = 12 * ft},
                            .filter = Filter{.loss = 2 * psi, .at = 40 * gpm},
                            .name = "creek"}}));
  EXPECT_EQ(layout.supply().name, "");
  EXPECT_EQ(layout.line("row 2"),
            (Line{.name = "row 2",
                  .fed_by = "hill tank",
                  .joins = "row 1",
                  .joins_at = 30 * ft,
                  .pipe = wide,
                  .length = 90 * ft,
                  .check_valve = true}));
  EXPECT_EQ(layout.line("row 3"),
            (Line{.name = "row 3",
                  .fed_by = "creek",
                  .joins = "row 1",
                  .joins_outlet = 2,
                  .pipe = wide,
                  .length = 90 * ft,
                  .ground_rise = 0 * ft,
                  .check_valve = false}));
  EXPECT_EQ(layout.line("ring").joins, "ring");
  EXPECT_EQ(
      layout.faults(),
      (std::vector<Fault>{
          pump_worn(0.1, {}, "creek"), filter_dirty(9 * psi, "creek"), engine_slow(2000 * rpm)}));
}

TEST(ReadLayout, ReadsEveryWord) {
  const auto supply = [](const std::string& text) {
    return read_layout_text(Description{.supply = text}.text()).supply();
  };
  expect_words<CurveShape>(
      {{CurveShape::through_points, "through points"}, {CurveShape::quadratic, "quadratic"}},
      [&](const std::string& word) {
        return supply("[supply]\n" + a_pump + "shape = \"" + word + "\"\n").pump.value().shape;
      });
  expect_words<PumpArrangement>(
      {{PumpArrangement::parallel, "parallel"}, {PumpArrangement::series, "series"}},
      [&](const std::string& word) {
        return supply("[supply]\narrangement = \"" + word +
                      "\"\nsecond_pump = { points = [[\"0 gpm\", \"9 ft\"], [\"9 gpm\", \"1 ft\"]] "
                      "}\n" +
                      a_pump)
            .arrangement;
      });
  const auto valve = [](const std::string& kind, const std::string& opening) {
    return read_layout_text(Description{.line = row_with(three + "valve = { kind = \"" + kind +
                                                         "\", opening = \"" + opening + "\" }\n")}
                                .text())
        .line("row 1")
        .valve.value();
  };
  expect_words<ValveKind>({{ValveKind::gate, "gate"},
                           {ValveKind::ball, "ball"},
                           {ValveKind::globe, "globe"},
                           {ValveKind::angle, "angle"}},
                          [&](const std::string& word) { return valve(word, "open").kind; });
  expect_words<ValveOpening>(
      {{ValveOpening::open, "open"},
       {ValveOpening::quarter_closed, "quarter closed"},
       {ValveOpening::third_closed, "third closed"},
       {ValveOpening::half_closed, "half closed"},
       {ValveOpening::two_thirds_closed, "two thirds closed"},
       {ValveOpening::three_quarters_closed, "three quarters closed"},
       {ValveOpening::shut, "shut"}},
      [&](const std::string& word) {
        return valve(word.find("third") == std::string::npos ? "gate" : "ball", word).opening;
      });
}

TEST(ReadLayout, ReportsAreInTheUnitsOfTheSupply) {
  const auto units_of = [](const std::string& supply) {
    return read_layout_text(Description{.supply = "[supply]\n" + supply}.text()).units();
  };
  const auto units = [&](const std::string& pressure) {
    return units_of("pressure = \"" + pressure + "\"\n");
  };
  EXPECT_EQ(units("100 ftH2O"), UnitSystem::si);
  EXPECT_EQ(units_of(a_pump), UnitSystem::us);
  EXPECT_EQ(units_of("[supply.pump]\npoints = [[\"0 gpm\", \"50 m\"], [\"90 gpm\", \"40 m\"]]\n"),
            UnitSystem::si);
  EXPECT_EQ(units_of("tank = { level = \"24 in\" }\n"), UnitSystem::us);
  EXPECT_EQ(units_of("tank = { level = \"60 cm\" }\n"), UnitSystem::si);
  for (const bool us : {true, false}) {
    const std::string unit = us ? "psi" : "kPa";
    EXPECT_EQ(units_of("[supply.hydrant]\npressure_at_rest = \"60 " + unit +
                       "\"\nresidual_pressure = \"5 kPa\"\nflow = \"90 gpm\"\n"),
              us ? UnitSystem::us : UnitSystem::si);
  }
  EXPECT_EQ(units("40 psi"), UnitSystem::us);
  EXPECT_EQ(units("40psi"), UnitSystem::us);
  EXPECT_EQ(units("40 psi "), UnitSystem::us);  // the blank is accepted, so it must not matter
  EXPECT_EQ(units("280 kPa"), UnitSystem::si);
  EXPECT_EQ(units("2.8 bar"), UnitSystem::si);
}

TEST(ReadLayout, TheOrderOfTablesCommentsAndLineEndsDoNotMatter) {
  const Description sound;
  const Layout expected = read_layout_text(sound.text());
  std::string crlf;
  for (const char c : sound.text()) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const std::string texts[] = {
      crlf,
      "\xef\xbb\xbf" + sound.text(),  // a byte order mark
      "# a comment\n\n" + sound.top + sound.line + sound.outlet + sound.pipe + sound.supply,
      sound.text().substr(0, sound.text().size() - 1),  // no line end at the end
  };
  for (const std::string& text : texts) EXPECT_EQ(read_layout_text(text).lines(), expected.lines());
}

TEST(ReadLayout, LongNamesStayApartAndVeryLongOnesAreRefused) {
  const auto with_pipes = [](const std::string& name) {
    return Description{
        .pipe = "[pipe." + name + "1]\ninside_diameter = \"3 in\"\nhazen_williams = 150\n" +
                "[pipe." + name + "2]\ninside_diameter = \"1 in\"\nroughness = \"0 mm\"\n",
        .line = "[[line]]\nname = \"a\"\nlength = \"9 ft\"\npipe = \"" + name + "2\"\n"}
        .text();
  };
  const std::string name(59, 'n');
  EXPECT_EQ(read_layout_text(with_pipes(name)).line("a").pipe,
            (Pipe{.name = name + "2", .inside_diameter = 1 * inch, .roughness = 0 * mm}));
  EXPECT_THAT(mistakes_in(with_pipes(name + "n")), testing::Contains(HasSubstr("at most 60")));
}

// ---- mistakes of meaning: each place, each message, and nothing else

struct BadFile {
  std::string name;
  Description marked;
  std::vector<std::string> messages;  ///< begins after the place; " ... " is a gap
};

void PrintTo(const BadFile& file, std::ostream* out) {
  *out << file.name;
}

class BadFiles : public testing::TestWithParam<BadFile> {};

TEST_P(BadFiles, AreRefusedWithEveryMistakeAtItsPlace) {
  const Marked marked = unmark(GetParam().marked.text());
  ASSERT_EQ(marked.places.size(), GetParam().messages.size());
  std::vector<testing::Matcher<std::string>> expected;
  for (std::size_t i = 0; i < marked.places.size(); ++i) {
    const std::string& message = GetParam().messages[i];
    const std::size_t gap = std::min(message.find(" ... "), message.size());
    const std::string rest = gap < message.size() ? message.substr(gap + 5) : "";
    expected.push_back(AllOf(StartsWith("f:" + marked.places[i] + ": " + message.substr(0, gap)),
                             HasSubstr(rest)));
  }
  EXPECT_THAT(mistakes_in(marked.text), testing::ElementsAreArray(expected));
}

const BadFile wrong_values[] = {
    {"bare_number",
     {.supply = "[supply]\npressure = @40\n"},
     {"supply: pressure: is the bare number 40; write a text with the unit, like \"25 psi\""}},
    {"bare_fraction",
     {.supply = supply_with("elevation = @2.5\n")},
     {"supply: elevation: is the bare number 2.5; write a text with the unit, like \"20 ft\""}},
    {"no_unit",
     {.supply = "[supply]\npressure = @\"40\"\n"},
     {"supply: pressure: \"40\": has no unit; a pressure is a number and one of: psi, kPa"}},
    {"other_quantity",
     {.supply = "[supply]\n  pressure   =   @\"40 ft\"\n"},
     {"supply: pressure: \"40 ft\": is a length; a pressure is a number and one of: psi, kPa"}},
    {"list_for_a_quantity",
     {.supply = "[supply]\npressure = @[\"40 psi\"]\n"},
     {"supply: pressure: is a list; write a text with the unit"}},
    {"table_for_a_quantity",
     {.supply = "[supply]\npressure = @{ value = 40 }\n"},
     {"supply: pressure: is a table; write a text with the unit"}},
    {"truth_for_a_quantity",
     {.supply = "[supply]\npressure = @true\n"},
     {"supply: pressure: is true; write a text with the unit"}},
    {"date_for_a_quantity",
     {.supply = "[supply]\npressure = @2024-05-01\n"},
     {"supply: pressure: is a date or time; write a text with the unit"}},
    {"out_of_range",
     {.supply = "[supply]\npressure = @\"-40 kPa\"\n"},
     {"supply: pressure: \"-40 kPa\" is -40 kPa, must be from 0 to 10000 kPa"}},
    {"water",
     {.more = "[water]\ntemperature = @\"120 degC\"\n"},
     {"water: temperature: \"120 degC\" is 120 degC, must be from 0 to 100 degC"}},
    {"site",
     {.more = "[site]\naltitude = @\"7 km\"\n"},
     {"site: altitude: \"7 km\" is 7000 m, must be from -500 to 6000 m"}},
    {"text_for_a_number",
     {.pipe = pipe_with("hazen_williams = @\"150\"\n")},
     {"pipe \"wide\": hazen_williams: is the text \"150\"; write a plain number, without quotes"}},
    {"nan",
     {.pipe = pipe_with("hazen_williams = @nan\n")},
     {"pipe \"wide\": hazen_williams: is nan, must be from 10 to 200"}},
    {"inf",
     {.pipe = pipe_with("darcy_factor = @-inf\n")},
     {"pipe \"wide\": darcy_factor: is -inf, must be from 0.001 to 1"}},
    {"pipe_out_of_range",
     {.pipe = "[pipe.wide]\nhazen_williams = 150\ninside_diameter = @\"0.05 mm\"\n"},
     {"pipe \"wide\": inside_diameter: \"0.05 mm\" is 0.05 mm, must be from 0.1 to 10000 mm"}},
    {"outlet_out_of_range",
     {.outlet = outlet_with("exponent = @2\n")},
     {"outlet \"spray\": exponent: is 2, must be from 0 to 1.5"}},
    {"minimum_above_rated",
     {.outlet = outlet_with("minimum = @\"31 psi\"\n")},
     {"outlet \"spray\": minimum: \"31 psi\" is 213.7374761 kPa, must be at most the rated"}},
    {"number_for_a_name",
     {.line = "[[line]]\nname = @1\npipe = \"wide\"\noutlet = \"spray\"\n" + three},
     {"line 1: name: is the bare number 1; write a text, in quotes"}},
    {"empty_name",
     {.line = "[[line]]\nname = @\"\"\npipe = \"wide\"\noutlet = \"spray\"\n" + three},
     {"line 1: name: \"\" is empty"}},
    {"count_with_decimals",
     {.line = row_with("count = @2.5\nspacing = \"20 ft\"\n")},
     {"line \"row 1\": count: is the bare number 2.5; must be a whole number from 1 to 1000000"}},
    {"count_as_text",
     {.line = row_with("count = @\"3\"\nspacing = \"20 ft\"\n")},
     {"line \"row 1\": count: is the text \"3\"; must be a whole number from 1 to 1000000"}},
    {"count_0",
     {.line = row_with("count = @0\nspacing = \"20 ft\"\n")},
     {"line \"row 1\": count: is the bare number 0; must be a whole number from 1 to 1000000"}},
    {"count_of_a_million_millions",
     {.line = row_with("count = @1000000000000\nspacing = \"20 ft\"\n")},
     {"line \"row 1\": count: is the bare number 1000000000000; must be a whole number from 1 to "
      "1000000"}},
    {"riser_is_a_number",
     {.line = row_with(three + "riser = @2\n")},
     {"line \"row 1\": riser: is the bare number 2; must be a table"}},
    {"riser_height_is_a_number",
     {.line = row_with(three + "riser = { height = @2 }\n")},
     {"line \"row 1\": riser.height: is the bare number 2; write a text with the unit"}},
    {"riser_too_high",
     {.line = row_with(three + "riser = { height = @\"31 m\" }\n")},
     {"line \"row 1\": riser.height: \"31 m\" is 31 m, must be from 0 to 30 m"}},
    {"riser_in_a_table_of_its_own",
     {.line = row_with(three), .more = "[line.riser]\nheight = @\"31 m\"\n"},
     {"line \"row 1\": riser.height: \"31 m\" is 31 m, must be from 0 to 30 m"}},
    {"spacing_negative",
     {.line = row_with("count = 3\nspacing = @\"-20 m\"\n")},
     {"line \"row 1\": spacing: \"-20 m\" is -0.02 km, must be from 1e-06 to 100 km"}},
    {"shorter_than_its_outlets",
     {.line = row_with(three + "length = @\"50 ft\"\n")},
     {"line \"row 1\": length: \"50 ft\" is 15.24 m, shorter than the 18.288 m"}},
};

const BadFile wrong_keys_and_tables[] = {
    {"misspelt_key",
     {.supply = supply_with("@presure = \"40 psi\"\n")},
     {"supply: \"presure\": is not a key known here; accepted are arrangement, elevation, filter, "
      "gauge, hydrant, pressure, pump, second_pump, suction, tank"}},
    {"misspelt_key_of_a_line",
     {.line = row_with(three + "@lenght = \"60 ft\"\n")},
     {"line \"row 1\": \"lenght\": is not a key known here; accepted are check_valve, "
      "connection_length, count, elevations, fed_by, first_at, ground_rise, joins, joins_at, "
      "joins_outlet, length, loss_coefficient, name, outlet, outlet_loss_coefficient, outlets, "
      "pipe, reaches, regulator, riser, spacing, tap, tap_outlet, valve"}},
    {"misspelt_key_of_a_riser",
     {.line = row_with(three + "riser = { height = \"2 ft\", @bore = \"1 in\" }\n")},
     {"line \"row 1\": riser.\"bore\": is not a key known here; accepted are darcy_factor, "
      "hazen_williams, height, inside_diameter, kind, loss_coefficient, roughness, size"}},
    {"misspelt_table",
     {.more = "[@syte]\naltitude = \"400 ft\"\n"},
     {"\"syte\": is not a key known here; accepted are block, fault, further_supply, line, name, "
      "outlet, pipe, reading, set, sight, site, supply, water, weather"}},
    {"capital_letters",
     {.top = "@Name = \"Plover Flat\"\n"},
     {"\"Name\": is not a key known here"}},
    {"no_supply",
     {.top = "@", .supply = ""},
     {"supply: is not given; write [supply] and under it pressure = \"34 psi\", or a table "
      "[supply.pump], [supply.tank] or [supply.hydrant]"}},
    {"no_source",
     {.supply = "@[supply]\nelevation = \"3 ft\"\n"},
     {"supply: pressure: is not given; write pressure = \"34 psi\", or a table [supply.pump], "
      "[supply.tank] or [supply.hydrant]"}},
    {"no_further_source",
     {.more = "@[[further_supply]]\nname = \"creek\"\n"},
     {"further supply 1: pressure: is not given; write pressure = \"34 psi\", or a table "
      "[further_supply.pump], [further_supply.tank] or [further_supply.hydrant]"}},
    {"no_lines", {.top = "@", .line = ""}, {"lines: there is none"}},
    {"no_bore",
     {.pipe = "@[pipe.wide]\nhazen_williams = 150\n"},
     {"pipe \"wide\": inside_diameter: is not given"}},
    {"no_wall",
     {.pipe = "@" + pipe_with("")},
     {"pipe \"wide\": hazen_williams, roughness, darcy_factor: none is given"}},
    {"no_flow",
     {.outlet = "@[outlet.spray]\nat = \"30 psi\"\n"},
     {"outlet \"spray\": flow: is not given"}},
    {"no_pressure_of_the_flow",
     {.outlet = "@[outlet.spray]\nflow = \"2 gpm\"\n"},
     {"outlet \"spray\": at: is not given"}},
    {"no_name_of_a_line",
     {.line = "@[[line]]\npipe = \"wide\"\noutlet = \"spray\"\n" + three},
     {"line 1: name: is not given"}},
    {"no_pipe",
     {.line = "@[[line]]\nname = \"row 1\"\noutlet = \"spray\"\n" + three},
     {"line \"row 1\": pipe: is not given"}},
    {"no_count",
     {.line = "@" + row_with("spacing = \"20 ft\"\n")},
     {"line \"row 1\": count: is not given"}},
    {"no_spacing",
     {.line = "@" + row_with("count = 3\n")},
     {"line \"row 1\": spacing: is not given"}},
    {"no_height",
     {.line = row_with(three + "riser = @{ inside_diameter = \"1 in\", hazen_williams = 150 }\n")},
     {"line \"row 1\": riser.height: is not given"}},
    {"site_is_a_text",
     {.top = "site = @\"Plover Flat\"\n"},
     {"site: is the text \"Plover Flat\"; must be a table"}},
    {"line_is_a_number",
     {.top = "line = @3\n", .line = ""},
     {"line: is the bare number 3; must be tables, each under its own [[line]]"}},
    {"line_in_single_brackets",
     {.line = "@[line]\nname = \"row 1\"\npipe = \"wide\"\noutlet = \"spray\"\n" + three},
     {"line: is a table; must be tables, each under its own [[line]]"}},
    {"fault_in_single_brackets",
     {.more = "@[fault]\nline = \"row 1\"\noutlet = 1\nkind = \"capped\"\n"},
     {"fault: is a table; must be tables, each under its own [[fault]]"}},
    {"lines_among_numbers",
     {.top = "line = @[1, { name = \"row 1\" }]\n", .line = ""},
     {"line: is a list; must be tables"}},
    {"pipe_of_no_name",
     {.pipe = "[pipe]\nroughness = @\"0.1 mm\"\n" + pipe_with("hazen_williams = 150\n")},
     {"pipe \"roughness\": is the text \"0.1 mm\"; must be a table, [pipe."}},
};

const BadFile dangling_names[] = {
    {"pipe",
     {.line = "[[line]]\nname = \"row 1\"\npipe = @\"narrow\"\noutlet = \"spray\"\n" + three},
     {"line \"row 1\": pipe: is \"narrow\", but there is no ... there are \"wide\""}},
    {"pipe_empty",
     {.line = "[[line]]\nname = \"row 1\"\npipe = @\"\"\noutlet = \"spray\"\n" + three},
     {"line \"row 1\": pipe: is "}},
    {"outlet",
     {.line = "[[line]]\nname = \"row 1\"\npipe = \"wide\"\noutlet = @\"sprya\"\n" + three},
     {"line \"row 1\": outlet: is \"sprya\", but there is no ... there are \"spray\""}},
    {"outlet_is_a_number",
     {.line = "[[line]]\nname = \"row 1\"\npipe = \"wide\"\noutlet = @1\n" + three},
     {"line \"row 1\": outlet: is the bare number 1; write a text, in quotes"}},
    {"fed_by",
     {.line = row_with(three + "fed_by = @\"main\"\n")},
     {"line \"row 1\": fed_by: is \"main\", but there is no such line; there are \"row 1\""}},
    {"fed_by_nothing",
     {.line = row_with(three + "fed_by = @\"\"\n")},
     {"line \"row 1\": fed_by: \"\" is empty"}},
    {"fed_by_itself",
     {.line = row_with(three + "fed_by = @\"row 1\"\n")},
     {"line \"row 1\": fed_by: is \"row 1\", but that leads round in a circle"}},
    {"circle",
     {.line = row_with(three + "fed_by = @\"row 2\"\n"),
      .more =
          "[[line]]\nname = \"row 2\"\nfed_by = @\"row 1\"\npipe = \"wide\"\nlength = \"9 ft\"\n"},
     {"line \"row 1\": fed_by: is \"row 2\", but that leads round in a circle",
      "line \"row 2\": fed_by: is \"row 1\", but that leads round in a circle"}},
    {"name_used_twice",
     {.more = "[[line]]\nname = @\"row 1\"\npipe = \"wide\"\nlength = \"9 ft\"\n"},
     {"line 2: name: \"row 1\" is used by an earlier line"}},
    {"too_many_outlets",
     {.line = "@" + row_with("count = 600000\nspacing = \"0.1 ft\"\n"),
      .more = "[[line]]\nname = \"row 2\"\npipe = \"wide\"\noutlet = \"spray\"\ncount = 600000\n"
              "spacing = \"0.1 ft\"\n"},
     {"lines: count: adds up to 1200000 outlets, must be at most 1000000"}},
};

std::string fault_with(const std::string& rest) {
  return "[[fault]]\nline = \"row 1\"\n" + rest;
}

const BadFile wrong_faults[] = {
    {"unknown_line",
     {.more = "[[fault]]\nline = @\"row 9\"\noutlet = 1\nkind = \"capped\"\n"},
     {"fault 1: line: is \"row 9\", but there is no such line; there are \"row 1\""}},
    {"outlet_beyond",
     {.more = fault_with("outlet = @4\nkind = \"capped\"\n")},
     {"fault 1: outlet: is 4, must be from 1 to 3"}},
    {"outlet_0",
     {.more = fault_with("outlet = @0\nkind = \"capped\"\n")},
     {"fault 1: outlet: is the bare number 0; must be a whole number from 1 to"}},
    {"unknown_kind",
     {.more = fault_with("outlet = 1\nkind = @\"cloged\"\nshare = 0.5\n")},
     {"fault 1: kind: is \"cloged\"; accepted are \"head off\", \"riser sheared\", \"nozzle "
      "missing\", \"clogged\", \"worn\", \"wrong outlet\", \"capped\", \"leak\", \"line cut\", "
      "\"end "
      "open\", \"valve part closed\", \"valve left open\", \"regulator stuck open\", \"regulator "
      "stuck shut\", \"pump worn\", \"engine slow\", \"filter dirty\""}},
    {"key_of_another_kind",
     {.more = fault_with("outlet = 1\nkind = \"capped\"\n@share = 0.5\n")},
     {"fault 1: \"share\": is not a key known here; accepted are kind, line, outlet"}},
    {"no_share",
     {.more = "@" + fault_with("outlet = 1\nkind = \"clogged\"\n")},
     {"fault 1: share: is not given"}},
    {"share_1",
     {.more = fault_with("outlet = 1\nkind = \"clogged\"\nshare = @1\n")},
     {"fault 1: share: is 1, must be above 0 and below 1"}},
    {"bore_unknown",
     {.more = "@" + fault_with("outlet = 1\nkind = \"head off\"\n")},
     {"fault 1: riser.inside_diameter: of line \"row 1\" is not known"}},
    {"two_on_one_outlet",
     {.more = fault_with("outlet = 1\nkind = \"capped\"\n") +
              fault_with("outlet = @1\nkind = \"worn\"\nshare = 0.2\n")},
     {"fault 2: outlet: 1 of line \"row 1\" already has fault 1"}},
    {"empty",
     {.more = "@[[fault]]\n"},
     {"fault 1: kind: is not given; accepted are \"head off\", "}},
    {"no_line",
     {.more = "@[[fault]]\nkind = \"capped\"\noutlet = 1\n"},
     {"fault 1: line: is not given"}},
    {"a_line_that_no_kind_asks_for",
     {.more = fault_with("kind = @\"pump warn\"\nshare = 0.1\n")},
     {"fault 1: kind: is \"pump warn\"; accepted are ... \"pump worn\""}},
    {"line_of_a_fault_of_the_supply",
     {.supply = "[supply]\n" + a_pump,
      .more = "[[fault]]\nkind = \"pump worn\"\nshare = 0.1\nline = @\"row 1\"\n"},
     {"fault 1: line: \"row 1\" is given, but \"pump worn\" is a fault of the supply; leave the "
      "key "
      "out"}},
    {"outlet_of_a_fault_of_the_supply",
     {.supply = "[supply]\n" + a_pump,
      .more = "[[fault]]\nkind = \"pump worn\"\nshare = 0.1\n@outlet = 1\n"},
     {"fault 1: \"outlet\": is not a key known here; accepted are kind, pump, share"}},
    {"no_pump_to_be_worn",
     {.more = "[[fault]]\nkind = @\"pump worn\"\nshare = @2\n"},
     {"fault 1: kind: \"pump worn\" is of a pump, but the supply has none",
      "fault 1: share: is 2, must be above 0 and below 1"}},
    {"no_second_pump_to_be_slow",
     {.supply = "[supply]\n" + a_pump,
      .more = "[[fault]]\nkind = \"engine slow\"\nspeed = \"2000 rpm\"\npump = @2\n"},
     {"fault 1: pump: is 2, but the supply has no such pump"}},
    {"third_pump",
     {.supply = "[supply]\n" + a_pump,
      .more = "[[fault]]\nkind = \"pump worn\"\nshare = 0.1\npump = @3\n"},
     {"fault 1: pump: is the bare number 3; must be a whole number from 1 to 2"}},
    {"speed_of_another_quantity",
     {.supply = "[supply]\n" + a_pump,
      .more = "[[fault]]\nkind = \"engine slow\"\nspeed = @\"2000 gpm\"\n"},
     {"fault 1: speed: \"2000 gpm\": is a flow; a rotational speed is a number and one of: rpm"}},
    {"no_loss_of_a_dirty_filter",
     {.supply = supply_with("filter = { loss = \"1.5 psi\", at = \"80 gpm\" }\n"),
      .more = "@[[fault]]\nkind = \"filter dirty\"\n"},
     {"fault 1: loss: is not given"}},
    {"no_regulator_to_be_stuck",
     {.more = "[[fault]]\nline = @\"row 1\"\nkind = \"regulator stuck open\"\n"},
     {"fault 1: line: is \"row 1\", which has no regulator"}},
    {"no_regulator_of_an_outlet_to_be_stuck",
     {.more = fault_with("kind = \"regulator stuck shut\"\noutlet = @2\n")},
     {"fault 1: outlet: 2 of line \"row 1\" has no regulator of its own"}},
};

const BadFile wrong_supplies[] = {
    {"two_sources",
     {.supply = "[supply]\npressure = @\"40 psi\"\ntank = { level = \"3 ft\" }\n"},
     {"supply: pressure, pump, tank, hydrant: are given more than one at once"}},
    {"two_other_sources",
     {.supply = "[supply]\n[supply.hydrant]\npressure_at_rest = \"60 psi\"\n"
                "residual_pressure = \"50 psi\"\nflow = \"90 gpm\"\n"
                "@[supply.tank]\nlevel = \"3 ft\"\n"},
     {"supply: pressure, pump, tank, hydrant: are given more than one at once"}},
    {"pump_is_a_text",
     {.supply = "[supply]\npump = @\"old\"\n"},
     {"supply: pump: is the text \"old\"; must be a table"}},
    {"suction_is_a_number",
     {.supply = "[supply]\nsuction = @6\n" + a_pump},
     {"supply: suction: is the bare number 6; must be a table"}},
    {"no_points",
     {.supply = "@[supply.pump]\nspeed = \"2000 rpm\"\ncurve_speed = \"2600 rpm\"\n"},
     {"supply: pump.points: is not given; write two or more of the catalogue"}},
    {"points_empty",
     {.supply = "[supply.pump]\npoints = @[]\nnpsh_required = @[]\nefficiencies = @[]\n"},
     {"supply: pump.points: is empty, must be two or more",
      "supply: pump.npsh_required: is empty, must be two or more",
      "supply: pump.efficiencies: is empty, must be two or more"}},
    {"points_are_numbers",
     {.supply = "[supply.pump]\npoints = [[\"0 gpm\", \"150 ft\"], @[130, 107]]\n"},
     {"supply: pump.points: is a list; must be a pair, [\"3.5 gpm\", \"20 ft\"]"}},
    {"points_that_rise",
     {.supply =
          "[supply]\npump = { points = [[\"0 gpm\", \"150 ft\"], [\"60 gpm\", \"120 ft\"],\n"
          "  @[\"90 gpm\", \"121 ft\"]], npsh_required = [[\"0 gpm\", \"6 ft\"], @[\"-9 gpm\", \"9 "
          "ft\"]] }\n"},
     {"supply: pump.points, 3: ", "supply: pump.npsh_required, 2: "}},
    {"hydrant_that_rises",
     {.supply = "[supply.hydrant]\npressure_at_rest = \"40 psi\"\nflow = \"90 gpm\"\n"
                "residual_pressure = @\"50 psi\"\n"},
     {"supply: hydrant.residual_pressure: \"50 psi\" is "}},
    {"tank_of_two_widths",
     {.supply = "[supply.tank]\nlevel = \"3 ft\"\ndiameter = @\"2 ft\"\narea = \"3 ft2\"\n"},
     {"supply: tank.diameter, area: are both given"}},
    {"suction_pipe_that_is_wrong",
     {.supply = "[supply]\nsuction = { lift = @\"60 ft\", length = \"9 ft\", pipe = \"wide\" }\n" +
                a_pump,
      .pipe = "[pipe.wide]\nhazen_williams = 150\ninside_diameter = @\"0.05 mm\"\n"},
     {"supply: suction.lift: \"60 ft\" is ",
      "pipe \"wide\": inside_diameter: \"0.05 mm\" is 0.05 mm, must be"}},
    {"points_the_wrong_way_round",
     {.supply = "[supply.pump]\npoints = [@[\"150 ft\", \"0 gpm\"], [\"107 ft\", \"130 gpm\"]]\n"},
     {"supply: pump.points: \"150 ft\": is a length; a flow is a number and one of"}},
    {"efficiencies_are_texts",
     {.supply = "[supply]\n" + a_pump + "efficiencies = [@[\"40 gpm\", \"0.52\"]]\n"},
     {"supply: pump.efficiencies: is a list; must be a pair, [\"3.5 gpm\", 0.6]"}},
    {"unknown_shape",
     {.supply = "[supply]\n" + a_pump + "shape = @\"straight\"\n"},
     {"supply: pump.shape: is \"straight\"; accepted are \"through points\", \"quadratic\""}},
    {"shape_is_a_number",
     {.supply = "[supply]\n" + a_pump + "shape = @2\n"},
     {"supply: pump.shape: is the bare number 2; write a text, in quotes"}},
    {"unknown_arrangement",
     {.supply = "[supply]\narrangement = @\"beside\"\nsecond_pump = { points = [[\"0 gpm\", \"9 "
                "ft\"], [\"9 gpm\", \"1 ft\"]] }\n" +
                a_pump},
     {"supply: arrangement: is \"beside\"; accepted are \"parallel\", \"series\""}},
    {"arrangement_of_one_pump",
     {.supply = "[supply]\narrangement = @\"series\"\n" + a_pump},
     {"supply: arrangement: \"series\" is given, but there is no second_pump"}},
    {"misspelt_key_of_a_pump",
     {.supply = "[supply]\n" + a_pump + "@rpm = \"2000 rpm\"\n"},
     {"supply: pump.\"rpm\": is not a key known here; accepted are curve_speed, droop, "
      "efficiencies, "
      "efficiency, least_flow, most_flow, npsh_required, points, power, shape, speed, top_speed"}},
    {"units_of_a_pump",
     {.supply = "[supply]\n" + a_pump +
                "speed = @2000\npower = @\"13\"\nleast_flow = @\"20 ft\"\nefficiency = @\"0.6\"\n"
                "droop = 0.05\n"},
     {"supply: pump.speed: is the bare number 2000; write a text with the unit, like \"2600 rpm\"",
      "supply: pump.power: \"13\": has no unit; a power is a number and one of: kW, hp, W",
      "supply: pump.least_flow: \"20 ft\": is a length",
      "supply: pump.efficiency: is the text \"0.6\"; write a plain number, without quotes"}},
    {"suction_without_a_pump",
     {.supply = supply_with("suction = @{ lift = \"6 ft\" }\n")},
     {"supply: suction: is given, but there is no pump"}},
    {"suction_of_no_lift",
     {.supply =
          "[supply]\nsuction = @{ loss_coefficient = 3, pipe = \"wide\", length = \"9 ft\" }\n" +
          a_pump},
     {"supply: suction.lift: is not given"}},
    {"suction_of_no_such_pipe",
     {.supply = "[supply]\nsuction = { lift = \"6 ft\", length = \"9 ft\", pipe = @\"hose\" }\n" +
                a_pump},
     {"supply: suction.pipe: is \"hose\", but there is no such [pipe.NAME]; there are \"wide\""}},
    {"filter",
     {.supply = supply_with("filter = @{ at = @80, @size = 1 }\n")},
     {"supply: filter.loss: is not given",
      "supply: filter.at: is the bare number 80; write a text with the unit, like \"3.5 gpm\"",
      "supply: filter.\"size\": is not a key known here; accepted are at, loss"}},
    {"gauge",
     {.supply = supply_with("gauge = { height = @3, after_filter = @\"yes\", @reach = 1 }\n")},
     {"supply: gauge.height: is the bare number 3; write a text with the unit",
      "supply: gauge.after_filter: is the text \"yes\"; write true or false, without quotes",
      "supply: gauge.\"reach\": is not a key known here; accepted are after_filter, height, "
      "range"}},
    {"gauge_after_no_filter",
     {.supply = supply_with("gauge = { after_filter = @true }\n")},
     {"supply: gauge.after_filter: is true, but there is no filter"}},
    {"tank",
     {.supply = "[supply]\ntank = @{ area = @\"3 ft\", diameter = @1, @depth = 1 }\n"},
     {"supply: tank.level: is not given",
      "supply: tank.area: \"3 ft\": is a length; an area is a number and one of: m2",
      "supply: tank.diameter: is the bare number 1; write a text with the unit",
      "supply: tank.\"depth\": is not a key known here; accepted are area, diameter, level"}},
    {"hydrant",
     {.supply = "@@[supply.hydrant]\nresidual_pressure = @\"50 ft\"\n@static = \"60 psi\"\n"},
     {"supply: hydrant.pressure_at_rest: is not given",
      "supply: hydrant.flow: is not given",
      "supply: hydrant.residual_pressure: \"50 ft\": is a length",
      "supply: hydrant.\"static\": is not a key known here; accepted are flow, pressure_at_rest, "
      "residual_pressure"}},
};

const BadFile wrong_valves_and_regulators[] = {
    {"valve_in_a_word",
     {.line = row_with(three + "valve = @\"half closed\"\n")},
     {"line \"row 1\": valve: is \"half closed\"; write \"shut\", or { kind = \"gate\", opening = "
      "\"half closed\" }"}},
    {"valve_is_truth",
     {.line = row_with(three + "valve = @true\n")},
     {"line \"row 1\": valve: is true; write a text, in quotes"}},
    {"valve_of_unknown_kind_and_opening",
     {.line = row_with(three + "valve = { kind = @\"gade\", opening = @\"half\", @turns = 2 }\n")},
     {"line \"row 1\": valve.kind: is \"gade\"; accepted are \"gate\", \"ball\", \"globe\", "
      "\"angle\"",
      "line \"row 1\": valve.opening: is \"half\"; accepted are \"open\", \"quarter closed\", "
      "\"third "
      "closed\", \"half closed\", \"two thirds closed\", \"three quarters closed\", \"shut\"",
      "line \"row 1\": valve.\"turns\": is not a key known here; accepted are kind, opening"}},
    {"valve_of_an_opening_unknown_for_its_kind",
     {.line = row_with(three + "valve = { kind = \"gate\", opening = @\"third closed\" }\n")},
     {"line \"row 1\": valve.opening: is \"third closed\""}},
    {"valve_of_no_kind",
     {.line = row_with(three + "valve = @{ opening = \"half closed\" }\n")},
     {"line \"row 1\": valve.kind: is not given"}},
    {"regulator_of_a_line",
     {.line = row_with(three + "regulator = @25\n")},
     {"line \"row 1\": regulator: is the bare number 25; write a text with the unit"}},
    {"regulator_of_a_line_out_of_range",
     {.line = row_with(three + "regulator = @\"0 psi\"\n")},
     {"line \"row 1\": regulator: \"0 psi\" is 0 kPa, must be from 1 to 10000 kPa"}},
    {"regulator_of_an_outlet",
     {.outlet = outlet_with("regulator = @\"30 gpm\"\n")},
     {"outlet \"spray\": regulator: \"30 gpm\": is a flow"}},
};

const BadFile wrong_sets[] = {
    {"in_single_brackets",
     {.more = "@[set]\nname = \"a\"\nlines = [\"row 1\"]\n"},
     {"set: is a table; must be tables, each under its own [[set]]"}},
    {"empty",
     {.more = "@@[[set]]\n"},
     {"set 1: name: is not given", "set 1: lines: is not given; name those that are opened"}},
    {"of_no_lines", {.more = "[[set]]\nname = \"a\"\nlines = @[]\n"}, {"set 1: lines: is empty"}},
    {"lines_in_a_text",
     {.more = "[[set]]\nname = \"a\"\nlines = @\"row 1\"\n"},
     {"set 1: lines: is the text \"row 1\"; must be a list of texts, [\"row 1\", ...]"}},
    {"lines_by_number",
     {.more = "[[set]]\nname = \"a\"\nlines = [\"row 1\", @2]\n"},
     {"set 1: lines: is the bare number 2; write a text, in quotes"}},
    {"unknown_lines",
     {.more = "[[set]]\nname = \"a\"\nlines = [\"row 1\"]\n"
              "[[set]]\nname = \"b\"\nlines = [@\"row 2\",\n  \"row 1\", @\"row 3\"]\n"},
     {"set 2: lines, 1: is \"row 2\", but there is no such line; there are \"row 1\"",
      "set 2: lines, 3: is \"row 3\", but there is no such line; there are \"row 1\""}},
    {"line_named_twice",
     {.more = "[[set]]\nname = \"a\"\nlines = [\"row 1\", @\"row 1\"]\n"},
     {"set 1: lines, 2: is \"row 1\", which is named already"}},
    {"name_used_twice",
     {.more = "[[set]]\nname = \"a\"\nlines = [\"row 1\"]\n"
              "[[set]]\nname = @\"a\"\nlines = [\"row 1\"]\n"},
     {"set 2: name: is \"a\", which is the name of set 1 already"}},
    {"misspelt_key",
     {.more = "[[set]]\nname = \"a\"\nlines = [\"row 1\"]\n@line = \"row 1\"\n"},
     {"set 1: \"line\": is not a key known here; accepted are lines, name"}},
    {"of_lines_that_cannot_be_read",
     {.top = "line = @3\n", .line = "", .more = "[[set]]\nname = \"a\"\nlines = [\"row 1\"]\n"},
     {"line: is the bare number 3; must be tables"}},
};

/// A row whose far end meets the far end of row 1, unless the rest says otherwise.
std::string second_row_with(const std::string& rest) {
  return "[[line]]\nname = \"row 2\"\npipe = \"wide\"\nlength = \"90 ft\"\n" + rest;
}

const BadFile wrong_joins[] = {
    {"nowhere",
     {.more = second_row_with("joins = @\"row 3\"\n")},
     {"line \"row 2\": joins: is \"row 3\", but there is no such line; there are \"row 1\", "
      "\"row 2\""}},
    {"nothing",
     {.more = second_row_with("joins = @\"\"\n")},
     {"line \"row 2\": joins: \"\" is empty; leave the key out where the line's far end is "
      "closed"}},
    {"a_supply",
     {.more = second_row_with("joins = @\"hill\"\n") +
              "[[further_supply]]\nname = \"hill\"\npressure = \"40 psi\"\n"},
     {"line \"row 2\": joins: is \"hill\", but there is no such line"}},
    {"is_a_number",
     {.more = second_row_with("joins = @1\n")},
     {"line \"row 2\": joins: is the bare number 1; write a text, in quotes"}},
    {"its_own_end",
     {.more = second_row_with("ground_rise = \"0 ft\"\njoins = @\"row 2\"\n")},
     {"line \"row 2\": joins: \"row 2\" is its own far end; say where along it, with joins_at"}},
    {"beyond_the_end",
     {.more = second_row_with("joins = \"row 1\"\njoins_at = @\"70 ft\"\n")},
     {"line \"row 2\": joins_at: \"70 ft\" is 21.336 m, beyond"}},
    {"no_unit",
     {.more = second_row_with("joins = \"row 1\"\njoins_at = @40\n")},
     {"line \"row 2\": joins_at: is the bare number 40; write a text with the unit"}},
    {"no_such_outlet",
     {.more = second_row_with("joins = \"row 1\"\njoins_outlet = @4\n")},
     {"line \"row 2\": joins_outlet: is 4, "}},
    {"in_two_ways",
     {.more = second_row_with("joins = \"row 1\"\njoins_at = @\"20 ft\"\njoins_outlet = 1\n")},
     {"line \"row 2\": joins_at, joins_outlet: are both given"}},
    {"at_a_place_of_no_line",
     {.more = second_row_with("joins_outlet = @1\n")},
     {"line \"row 2\": joins_outlet: is given, but joins is not"}},
    {"at_another_height",
     {.more = second_row_with("joins = \"row 1\"\nground_rise = @\"1 ft\"\n")},
     {"line \"row 2\": ground_rise: brings its far end to an elevation of 0.3048 m, but "
      "line "
      "\"row 1\", which it joins, lies at 0 m there; leave it out to have it so"}},
    {"check_valve_in_a_word",
     {.more = second_row_with("check_valve = @\"yes\"\n")},
     {"line \"row 2\": check_valve: is the text \"yes\"; write true or false, without quotes"}},
};

std::string further_with(const std::string& rest) {
  return "[[further_supply]]\nname = \"hill\"\n" + rest;
}

const BadFile wrong_further_supplies[] = {
    {"in_single_brackets",
     {.more = "@[further_supply]\nname = \"hill\"\npressure = \"40 psi\"\n" +
              second_row_with("fed_by = \"hill\"\n")},
     {"further_supply: is a table; must be tables, each under its own [[further_supply]]"}},
    {"empty",
     {.more = "@@[[further_supply]]\n"},
     {"further supply 1: name: is not given",
      "further supply 1: pressure: is not given; write pressure = \"34 psi\", or a table"}},
    {"name_used_twice",
     {.more = further_with("pressure = \"40 psi\"\n") +
              "[[further_supply]]\nname = @\"hill\"\npressure = \"40 psi\"\n"},
     {"further supply 2: name: is \"hill\", which is the name of further supply 1 already"}},
    {"name_of_a_line",
     {.more = "[[further_supply]]\nname = @\"row 1\"\npressure = \"40 psi\"\n"},
     {"further supply 1: name: is \"row 1\", which is the name of a line already"}},
    {"the_first_with_a_name",
     {.supply = supply_with("name = @\"creek\"\n")},
     {"supply: name: is \"creek\"; only further supplies have one, lines without fed_by begin at "
      "the first"}},
    {"tap_on_it",
     {.more = further_with("pressure = \"40 psi\"\n") +
              second_row_with("fed_by = \"hill\"\ntap = @\"3 ft\"\n")},
     {"line \"row 2\": tap: \"3 ft\" is given, but \"hill\" is a supply, not a line"}},
    {"misspelt_key",
     {.more = further_with("pressure = \"40 psi\"\n@height = \"9 ft\"\n")},
     {"further supply 1: \"height\": is not a key known here; accepted are arrangement, elevation, "
      "filter, gauge, hydrant, name, pressure, pump, second_pump, suction, tank"}},
    {"of_a_part",
     {.more = further_with("[further_supply.tank]\nlevel = @\"-9 ft\"\n")},
     {"further supply 1: tank.level: \"-9 ft\" is "}},
    {"of_the_second",
     {.more = further_with("pressure = \"40 psi\"\n") +
              "[[further_supply]]\nname = \"creek\"\npressure = @\"-1 kPa\"\n"},
     {"further supply 2: pressure: \"-1 kPa\" is -1 kPa, must be from 0 to 10000 kPa"}},
    {"suction_pipe_that_is_wrong",
     {.pipe = "[pipe.wide]\nhazen_williams = 150\ninside_diameter = @\"0.05 mm\"\n",
      .more =
          further_with("[further_supply.pump]\npoints = [[\"0 gpm\", \"150 ft\"], [\"130 gpm\", "
                       "\"107 ft\"]]\n[further_supply.suction]\nlift = \"6 ft\"\nlength = \"9 "
                       "ft\"\npipe = \"wide\"\n")},
     {"pipe \"wide\": inside_diameter: \"0.05 mm\" is 0.05 mm, must be"}},
    {"fault_of_no_such_supply",
     {.more = "[[fault]]\nkind = \"filter dirty\"\nloss = \"9 psi\"\nsupply = @\"hill\"\n"},
     {"fault 1: supply: is \"hill\", but there is no such further supply"}},
    {"fault_of_what_it_has_not",
     {.supply = "[supply]\n" + a_pump,
      .more = further_with("pressure = \"40 psi\"\n") +
              "[[fault]]\nkind = @\"pump worn\"\nshare = 0.1\nsupply = \"hill\"\n"},
     {"fault 1: kind: \"pump worn\" is of a pump, but the supply has none"}},
    {"fault_of_an_empty_name",
     {.supply = "[supply]\n" + a_pump,
      .more = "[[fault]]\nkind = \"pump worn\"\nshare = 0.1\nsupply = @\"\"\n"},
     {"fault 1: supply: \"\" is empty; leave the key out for a fault of the first supply"}},
    {"fault_of_a_line_with_a_supply",
     {.more = fault_with("outlet = 1\nkind = \"capped\"\n@supply = \"hill\"\n")},
     {"fault 1: \"supply\": is not a key known here; accepted are kind, line, outlet"}},
};

const BadFile several[] = {
    {"sorted_by_position",
     {.supply = "[supply]\npressure = @40\n@presure = 1\n",
      .pipe = "[pipe.wide]\nhazen_williams = @1000\ninside_diameter = @\"2\"\n",
      .outlet = "@[outlet.spray]\nat = @\"30 gpm\"\n",
      .line = row_with(
          "spacing = \"20 ft\"\ncount = @2.5\nriser = { @wide = 1, height = @\"2 psi\" }\n"),
      .more = "[[line]]\nname = @\"row 1\"\npipe = @\"none\"\nlength = @3\n"},
     {"supply: pressure: is the bare number 40",
      "supply: \"presure\": is not a key known here",
      "pipe \"wide\": hazen_williams: is 1000, must be from 10 to 200",
      "pipe \"wide\": inside_diameter: \"2\": has no unit",
      "outlet \"spray\": flow: is not given",
      "outlet \"spray\": at: \"30 gpm\": is a flow",
      "line \"row 1\": count: is the bare number 2.5",
      "line \"row 1\": riser.\"wide\": is not a key known here",
      "line \"row 1\": riser.height: \"2 psi\": is a pressure",
      "line 2: name: \"row 1\" is used by an earlier line",
      "line 2: pipe: is \"none\", but there is no",
      "line 2: length: is the bare number 3"}},
};

constexpr auto name_of_case = [](const testing::TestParamInfo<BadFile>& tested) {
  return tested.param.name;
};
INSTANTIATE_TEST_SUITE_P(Value, BadFiles, testing::ValuesIn(wrong_values), name_of_case);
INSTANTIATE_TEST_SUITE_P(Key, BadFiles, testing::ValuesIn(wrong_keys_and_tables), name_of_case);
INSTANTIATE_TEST_SUITE_P(Dangling, BadFiles, testing::ValuesIn(dangling_names), name_of_case);
INSTANTIATE_TEST_SUITE_P(Fault, BadFiles, testing::ValuesIn(wrong_faults), name_of_case);
INSTANTIATE_TEST_SUITE_P(Supply, BadFiles, testing::ValuesIn(wrong_supplies), name_of_case);
INSTANTIATE_TEST_SUITE_P(Valve,
                         BadFiles,
                         testing::ValuesIn(wrong_valves_and_regulators),
                         name_of_case);
INSTANTIATE_TEST_SUITE_P(Set, BadFiles, testing::ValuesIn(wrong_sets), name_of_case);
INSTANTIATE_TEST_SUITE_P(Joins, BadFiles, testing::ValuesIn(wrong_joins), name_of_case);
INSTANTIATE_TEST_SUITE_P(FurtherSupply,
                         BadFiles,
                         testing::ValuesIn(wrong_further_supplies),
                         name_of_case);
INSTANTIATE_TEST_SUITE_P(Several, BadFiles, testing::ValuesIn(several), name_of_case);

/// What the faults together leave without water is known when all is read, and told at its place.
TEST(ReadLayout, TellsAtItsPlaceOfAFaultWhereNoWaterComes) {
  const Description description{
      .more = second_row_with("fed_by = \"row 1\"\ntap = \"50 ft\"\njoins = \"row 1\"\n") +
              fault_with("kind = \"line cut\"\nplace = \"10 ft\"\n") +
              fault_with("outlet = @2\nkind = \"capped\"\n")};
  const Marked marked = unmark(description.text());
  EXPECT_THAT(mistakes_in(marked.text),
              ElementsAre(AllOf(StartsWith("f:" + marked.places.front() + ": fault 2: outlet: "),
                                HasSubstr("cannot act: line \"row 1\" has no water there"))));
}

// ---- mistakes of syntax: the first one

TEST(ReadLayoutSyntax, TheFirstMistakeIsToldAtItsPlace) {
  struct Case {
    std::string marked;
    std::string fragment;
  };
  const std::string sound = Description().text();
  const Case cases[] = {
      {sound + "@[supply]\npressure = \"4 psi\"\n", "cannot redefine existing table 'supply'"},
      {sound + "@[pipe.wide]\n", "cannot redefine existing table 'pipe.wide'"},
      {"[supply]\npressure = \"40 psi\"\npressure@ = \"4 psi\"\n",
       "cannot redefine existing string"},
      {"[supply]\npressure = \"40 psi@\n", "string"},
      {"[supply]\npressure = @40 psi\n", ""},
      {"[supply@\n", ""},
      {"[supply]\npressure@\n", ""},
  };
  for (const Case& test : cases) {
    const Marked marked = unmark(test.marked);
    EXPECT_THAT(mistakes_in(marked.text),
                ElementsAre(AllOf(StartsWith("f:" + marked.places.front().substr(
                                                        0, marked.places.front().find(':') + 1)),
                                  HasSubstr("is not TOML: "),
                                  HasSubstr(test.fragment))))
        << test.marked;
  }
  const Marked twice = unmark(cases[0].marked);
  EXPECT_THAT(mistakes_in(twice.text),
              ElementsAre(StartsWith("f:" + twice.places.front() + ": is not TOML: ")));
}

TEST(ReadLayoutSyntax, AnEmptyFileIsToldWhatItNeeds) {
  for (const std::string& text :
       {std::string(), std::string("# nothing\n# at all"), std::string("\n\n")})
    EXPECT_THAT(mistakes_in(text),
                ElementsAre(StartsWith("f:1:1: supply: is not given"),
                            StartsWith("f:1:1: lines: there is none")));
}

TEST(ReadLayoutSyntax, RefusesWhatIsNoText) {
  std::string all_bytes;
  for (int i = 0; i < 256 * 100; ++i) all_bytes += static_cast<char>(i % 256);
  const std::string bad[] = {all_bytes,
                             std::string(1000, '\0'),
                             std::string("\xff\xfe[\0s\0", 6),  // UTF-16
                             "name = \"\xc3\"\n",               // half a letter
                             "name = \"a\x1b[2J\"\n",           // a raw control character
                             Description().text() + '\0' + "\n"};
  for (const std::string& text : bad)
    EXPECT_THAT(mistakes_in(text), ElementsAre(AllOf(StartsWith("f:"), HasSubstr("is not TOML"))));
}

TEST(ReadLayoutSyntax, RefusesATableWithoutAName) {
  for (const char* text : {"[=", "\n [ ,a]\n", "[[\x01]]", "[[[a]]]", "\xef\xbb\xbf[.a]", "[\n]"})
    EXPECT_THAT(mistakes_in(text),
                ElementsAre(AllOf(StartsWith("f:"), HasSubstr("is not TOML: after ["))))
        << text;
  for (const char* text : {"[",
                           "[ ",
                           "[[",
                           "[]",
                           "[[]]",
                           "[ [a]]",
                           "a = [[,",
                           "a = [}",
                           "a = [1}",
                           "a = {]",
                           "]",
                           "}",
                           "\u00e4 = 1",
                           "a = \u0391",
                           "a = 1 \u00a0"})
    EXPECT_THAT(mistakes_in(text), ElementsAre(AllOf(StartsWith("f:"), HasSubstr("is not TOML"))))
        << text;
}

// TOML's library goes on over all of these as one value, and meets the letter unprepared.
TEST(ReadLayoutSyntax, RefusesQuotesAndBracketsWithinAWord) {
  for (const char* text : {"a = 1\"\u00e4\"",
                           "a = 1.\"\u00e4\"",
                           "a = [0.'\u00e4']",
                           "a = [1, 2=\"\u00e4\"]",
                           "a = 1[\"\u00e4\"]",
                           "a = 1{\"\u00e4\"}",
                           "a = {b = 1, c = 2\"\u00e4\"}",
                           "a = [{b = 1}, 2\"\u00e4\"]",
                           "a = -1pum\"\"\"\"\"\"\"%\"\u00e4\"",
                           "a\"\u00e4\" = 1",
                           "a = [ # of two\n 1'\u00e4']"})
    EXPECT_THAT(mistakes_in(text), ElementsAre(HasSubstr("in the middle of a word"))) << text;
  for (const char* text :
       {"a.\"\u00e4\".'\u00e4' = [\"\u00e4\", '\u00e4', [\"\u00e4\"], {b.\"\u00e4\" = \"\u00e4\"}]",
        "[a.\"\u00e4\"]\n\"\u00e4\" = {a = 1, \"\u00e4\" = [1, \"\u00e4\"], 'b' = 0.5}",
        "a = [1, # one\n  \"\u00e4\"\n]\n\"b\" = \"\"\"\n\u00e4 = 1\"\"\"",
        "a=1\n\"\u00e4\"=2"})
    EXPECT_THAT(mistakes_in(text), Not(Contains(HasSubstr("is not TOML")))) << text;
}

TEST(ReadLayoutSyntax, RefusesADateBeforeHalfAnHour) {
  for (const char* text :
       {"a = 2026-05-02 4", "a = 2026-05-02 4\n", "a = [2_026-05-02 4]", "a = 2026-05-02 4#"})
    EXPECT_THAT(mistakes_in(text), ElementsAre(HasSubstr("is not TOML: after a date"))) << text;
  for (const char* text : {"a = 2026-05-02", "a = 2026-05-02 # 4", "a = 2026-05-02 07:32:00"})
    EXPECT_THAT(mistakes_in(text), Not(Contains(HasSubstr("is not TOML")))) << text;
}

TEST(ReadLayoutSyntax, RefusesDeepNestingOfBrackets) {
  for (const std::string& text : {"a = " + std::string(100000, '['),
                                  "a = " + std::string(100000, '[') + std::string(100000, ']'),
                                  "a = " + repeated("{b=", 100000)})
    EXPECT_THAT(mistakes_in(text), ElementsAre(HasSubstr("more than 64 lists, tables")));
}

TEST(ReadLayoutSyntaxDeathTest, RefusesDeepNestingOfKeys) {
  const auto refused = [](const std::string& text) {
    std::exit(mistakes_in(text).empty() ? 1 : 0);
  };
  const std::string keys = repeated(".a", 1000000);
  for (const std::string& text : {"a" + keys + " = 1\n",
                                  "[a" + keys + "]\n",
                                  "x = { a" + keys + " = 1 }\n",
                                  "\"\\\"\"" + keys + " = 1\n",
                                  "x = { k = \"\"\"\nit's\"\"\", a" + keys + " = 1 }\n",
                                  "x = { k = \"\"\"\n# \"\"\", a" + keys + " = 1 }\n"})
    EXPECT_EXIT(refused(text), testing::ExitedWithCode(0), "") << text.substr(0, 30);
}

TEST(ReadLayoutSyntax, DotsInTextsAndCommentsAreNoNesting) {
  const std::string dots(300, '.');
  EXPECT_THAT(mistakes_in("# " + dots + "\n" + Description().text()), IsEmpty());
  EXPECT_THAT(
      mistakes_in(Description{.pipe = pipe_with("hazen_williams = \"" + dots + "\"\n")}.text()),
      ElementsAre(HasSubstr("hazen_williams: is the text")));
}

// ---- what messages may hold

TEST(ReadLayoutMessages, CutLongNamesKeysAndValues) {
  const std::string very_long(100000, 'x');
  const Description descriptions[] = {
      {.top = very_long + " = 1\n"},
      {.top = very_long + "\n"},
      {.top = very_long + " = 1\n" + very_long + " = 2\n"},
      {.supply = "[supply]\npressure = \"" + very_long + "\"\n"},
      {.supply = "[supply]\npressure = \"3" + very_long + "\"\n"},
      {.pipe = pipe_with("hazen_williams = \"" + very_long + "\"\n")},
      {.pipe = "[pipe." + very_long + "]\ninside_diameter = \"2\"\nhazen_williams = 150\n"},
      {.pipe = "[pipe]\n" + very_long + " = 2\n"},
      {.line = "[[line]]\nname = \"" + very_long + "\"\npipe = \"wide\"\nlength = 0\n"},
      {.line = "[[line]]\nname = \"a\"\nlength = \"9 ft\"\npipe = \"" + very_long + "\"\n"},
      {.line = row_with(three + "fed_by = \"" + very_long + "\"\n")},
      {.line = row_with(three + very_long + " = 1\n")},
      {.more = "[[fault]]\nline = \"" + very_long + "\"\noutlet = 1\nkind = \"capped\"\n"},
      {.more = fault_with("outlet = 1\nkind = \"" + very_long + "\"\n")},
      {.more = fault_with("outlet = 1\nkind = \"capped\"\n" + very_long + " = 1\n")},
  };
  for (std::size_t i = 0; i < std::size(descriptions); ++i) {
    const std::vector<std::string> found = mistakes_in(descriptions[i].text());
    EXPECT_THAT(found, Not(IsEmpty())) << "description " << i;
    for (const std::string& text : found)
      EXPECT_LT(text.size(), a_screen) << "description " << i << ": " << text.substr(0, 100);
  }
}

TEST(ReadLayoutMessages, QuoteWhatIsWrongAsItWasWritten) {
  const Description descriptions[] = {
      {.supply = "[supply]\npressure = \"2000 psi\"\n"},
      {.pipe = "[pipe.wide]\ninside_diameter = \"2000 psi\"\nhazen_williams = 150\n"},
      {.outlet = "[outlet.spray]\nflow = \"2 gpm\"\nat = \"30 psi\"\nmaximum = \"2000 psi\"\n"},
  };
  for (const Description& description : descriptions)
    EXPECT_THAT(mistakes_in(description.text()), ElementsAre(HasSubstr("2000 psi")));
}

TEST(ReadLayoutMessages, ListAFewOfManyMistakesAndCountTheRest) {
  constexpr int lines = 10000;
  try {
    read_layout_text(Description{.more = repeated("[[line]]\n", lines)}.text());
    FAIL();
  } catch (const InvalidInput& error) {
    EXPECT_EQ(error.problems().size(), 3u * lines);
    EXPECT_LT(std::string_view(error.what()).size(), 10 * a_screen);
    EXPECT_THAT(error.what(), HasSubstr("more"));
  }
}

TEST(ReadLayoutMessages, FarTooManyLinesAreOneMistake) {
  EXPECT_THAT(mistakes_in(Description{.more = repeated("[[line]]\n", 400000)}.text()),
              ElementsAre(HasSubstr("must be at most 100000")));
}

TEST(ReadLayoutMessages, ListAFewOfManyDefinitions) {
  Description many;
  for (int i = 0; i < 1000; ++i)
    many.pipe +=
        "[pipe.p" + std::to_string(i) + "]\ninside_diameter = \"2 in\"\nhazen_williams = 150\n";
  many.line = "[[line]]\nname = \"a\"\nlength = \"9 ft\"\npipe = \"none\"\n";
  const std::vector<std::string> found = mistakes_in(many.text());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_LT(found.front().size(), a_screen);
}

TEST(ReadLayoutMessages, PassNoControlCharactersOn) {
  const std::string evil = "a\\u001b[2J\\n";  // clears a screen
  const Description descriptions[] = {
      {.supply = "[supply]\npressure = \"3" + evil + "\"\n"},
      {.supply = supply_with("\"" + evil + "\" = 1\n")},
      {.pipe = pipe_with("hazen_williams = \"" + evil + "\"\n")},
      {.pipe = "[pipe.\"" + evil + "\"]\nhazen_williams = 150\n"},
      {.line = "[[line]]\nname = \"" + evil + "\"\npipe = \"wide\"\nlength = \"9 ft\"\n"},
      {.line = row_with(three + "fed_by = \"" + evil + "\"\n")},
      {.more = "[[fault]]\nline = \"" + evil + "\"\noutlet = 1\nkind = \"capped\"\n"},
      {.more = fault_with("outlet = 1\nkind = \"" + evil + "\"\n")},
  };
  for (std::size_t i = 0; i < std::size(descriptions); ++i) {
    const std::vector<std::string> found = mistakes_in(descriptions[i].text());
    EXPECT_THAT(found, Not(IsEmpty())) << "description " << i;
    for (const std::string& text : found)
      EXPECT_FALSE(has_control_characters(text)) << testing::PrintToString(text);
  }
}

TEST(ReadLayoutMessages, DoNotCutALetterInTwo) {
  const std::string letter = "\u00e9";  // two bytes
  for (const std::string before : {"", "x"}) {
    const std::string text = before + repeated(letter, 100);
    for (const Description& description :
         {Description{.pipe = pipe_with("hazen_williams = \"" + text + "\"\n")},
          Description{.pipe = pipe_with("hazen_williams = 150\n\"" + text + "\" = 1\n")},
          Description{.more = fault_with("outlet = 1\nkind = \"" + text + "\"\n")}}) {
      for (std::string message : mistakes_in(description.text())) {
        for (std::size_t at; (at = message.find(letter)) != std::string::npos;)
          message.erase(at, letter.size());
        EXPECT_TRUE(std::all_of(message.begin(), message.end(), [](char c) {
          return static_cast<unsigned char>(c) < 0x80;
        })) << testing::PrintToString(message);
      }
    }
  }
}

TEST(ReadLayoutMessages, NamesWithControlCharactersAreRefused) {
  const std::string evil = "a\\u001b[2J";
  const std::string body = "\"]\ninside_diameter = \"2 in\"\nhazen_williams = 150\n";
  for (const Description& description :
       {Description{.top = "name = \"" + evil + "\"\n"},
        Description{.pipe = Description().pipe + "[pipe.\"" + evil + body},
        Description{.more = "[outlet.\"" + evil + "\"]\nflow = \"2 gpm\"\nat = \"30 psi\"\n"}})
    EXPECT_THAT(mistakes_in(description.text()), ElementsAre(HasSubstr("control character")));
}

// ---- files

class ReadLayoutFiles : public testing::Test {
 protected:
  std::filesystem::path written(const std::string& name,
                                const std::string& text,
                                int times = 1) const {
    const std::filesystem::path file = folder_ / name;
    std::ofstream stream(file, std::ios::binary);
    for (int i = 0; i < times; ++i) stream << text;
    return file;
  }
  static std::vector<std::string> mistakes(const std::filesystem::path& file) {
    return mistakes_of([&] { read_layout(file); });
  }

  const TemporaryFolder folder_;
};

TEST_F(ReadLayoutFiles, AreReadAndNamedInMistakes) {
  const auto good = written("good.toml", Description().text());
  EXPECT_EQ(read_layout(good).outlet_count(), 3);
  const auto bad = written("bad.toml", "[supply]\npressure = 3\n");
  EXPECT_THAT(mistakes(bad),
              testing::Contains(StartsWith(bad.string() + ":2:12: supply: pressure:")));
}

TEST_F(ReadLayoutFiles, WhatIsNoFileIsRefused) {
  EXPECT_THAT(
      mistakes(folder_.path()),
      ElementsAre(folder_.path().string() + ": is a directory; a description file is wanted"));
  EXPECT_THAT(mistakes(folder_ / "none.toml"),
              ElementsAre((folder_ / "none.toml").string() + ": does not exist"));
  EXPECT_THAT(mistakes(written("good.toml", Description().text()) / "below"),
              ElementsAre(HasSubstr("does not exist")));
  EXPECT_THAT(mistakes(""),
              ElementsAre(AllOf(HasSubstr("does not exist"),
                                Not(StartsWith(" ")),
                                Not(StartsWith(":")),
                                Not(StartsWith("does")))));
}

TEST_F(ReadLayoutFiles, OfUpToEightMebibytesAreRead) {
  const std::string row_of_comment = "#" + std::string(1022, '-') + "\n";
  const auto good = written("good.toml", row_of_comment, 8 * 1024 - 1);
  std::ofstream(good, std::ios::app) << Description().text();
  EXPECT_EQ(read_layout(good).outlet_count(), 3);
}

TEST_F(ReadLayoutFiles, OfMoreAreRefusedWithoutBeingReadWhole) {
  const auto file = written("large.toml", "#" + std::string(1022, '-') + "\n", 9 * 1024);
  EXPECT_THAT(mistakes(file), ElementsAre(file.string() + ": has more than 8 MiB of text"));
  // More than any memory holds; on the disk it takes as much as before.
  std::filesystem::resize_file(file, std::uintmax_t{1} << 42);
  EXPECT_THAT(mistakes(file), ElementsAre(file.string() + ": has more than 8 MiB of text"));
}

// ---- one fault as a text

TEST(ReadFault, ReadsEveryKind) {
  EXPECT_EQ(read_fault("line=\"row 1\", outlet=7, kind=\"head off\""), Fault(head_off("row 1", 7)));
  EXPECT_EQ(read_fault("kind=\"head off\", outlet=7, line='row 1', loss_coefficient=1.5"),
            Fault(head_off("row 1", 7, 1.5)));
  EXPECT_EQ(read_fault("line = \"row 1\", outlet = 7, kind = \"riser sheared\""),
            Fault(riser_sheared("row 1", 7)));
  EXPECT_EQ(read_fault("line=\"a\", outlet=1, kind=\"riser sheared\", stub=\"0.5 ft\", "
                       "loss_coefficient=2"),
            Fault(riser_sheared("a", 1, 0.5 * ft, 2)));
  EXPECT_EQ(read_fault("line=\"a\", outlet=1, kind=\"clogged\", share=0.6"),
            Fault(clogged("a", 1, 0.6)));
  EXPECT_EQ(read_fault("line=\"a\", outlet=1, kind=\"worn\", share=1"), Fault(worn("a", 1, 1)));
  EXPECT_EQ(read_fault("  line=\"}] x={\", outlet=1, kind=\"capped\"  "),
            Fault(capped("}] x={", 1)));
}

TEST(ReadFault, RefusesWhatIsMoreThanOneTable) {
  for (const std::string text : {"line=\"a\"} x={",
                                 "line=\"a\", outlet=1, kind=\"capped\"} x={",
                                 "line=\"a\", outlet=1, kind=\"capped\"}\nx={",
                                 "line=\"a\", outlet=1, kind=\"capped\"}\n[x]\n#",
                                 "line=\"a\", outlet=1, kind=\"capped\"} #",
                                 "line=\"a\", outlet=1, kind=\"capped\"}\n#",
                                 "line=\"a\", outlet=1, kind=\"capped\", \"\"=1} #",
                                 "}\nfault={line=\"a\", outlet=1, kind=\"capped\"",
                                 "line=\"a\",\noutlet=1, kind=\"capped\"",
                                 "line=\"a\", outlet=1, kind=\"capped\" # why",
                                 "{line=\"a\", outlet=1, kind=\"capped\"}",
                                 "line=\"a\", outlet=1, kind=\"capped\", outlet=2",
                                 "row 1, 7, head off"})
    EXPECT_THAT(mistakes_of([&] { read_fault(text); }), ElementsAre(StartsWith("fault:"))) << text;
}

TEST(ReadFault, TellsEveryMistakeAtItsPlaceInTheText) {
  struct Case {
    std::string marked;
    std::string message;
  };
  const Case cases[] = {
      {"line=\"a\", outlet=@0, kind=\"capped\"", "outlet: is the bare number 0"},
      {"line=\"a\", outlet=@\"1\", kind=\"capped\"", "outlet: is the text \"1\""},
      {"line=@7, outlet=1, kind=\"capped\"", "line: is the bare number 7"},
      {"line=\"a\", outlet=1, kind=@\"gone\"", "kind: is \"gone\"; accepted are \"head off\""},
      {"line=\"a\", outlet=1, kind=@\"Capped\"", "kind: is \"Capped\"; accepted are"},
      {"line=\"a\", outlet=1, kind=\"capped\", @share=0.5",
       "\"share\": is not a key known here; accepted are kind"},
      {"line=\"a\", outlet=1, kind=\"clogged\", share=@\"0.5\"", "share: is the text \"0.5\""},
      {"line=\"a\", outlet=1, kind=\"riser sheared\", stub=@0.5", "stub: is the bare number 0.5"},
  };
  for (const Case& test : cases) {
    const Marked marked = unmark(test.marked);
    EXPECT_THAT(mistakes_of([&] { read_fault(marked.text); }),
                ElementsAre(StartsWith("fault:" + marked.places.front() + ": " + test.message)));
  }
}

constexpr const char* broad_file = R"(
[supply]
pressure = "43 psi"
[pipe.wide]
size = "2 in"
kind = "PVC Class 160"
[pipe.lateral]
size = "1-1/2 in"
kind = "PVC SDR 26"
roughness = "0.0015 mm"
pressure_rating = "100 psi"
[outlet.head]
flow = "3.5 gpm"
at = "25 psi"
body_bore = "0.30 in"
[outlet.spray]
nozzle = "3/32 in"
discharge_coefficient = 0.97
rated = "30 psi"
[[line]]
name = "main"
pipe = "wide"
length = "200 ft"
[[line]]
name = "even"
fed_by = "main"
tap = "120 ft"
pipe = "lateral"
reaches = [{ pipe = "wide", to = "40 ft" }]
outlet = "head"
count = 3
spacing = "30 ft"
elevations = ["0 ft", "1.5 ft", "-2 ft"]
connection_length = "0.25 ft"
riser = { height = "2 ft", size = "1/2 in", kind = "PVC Sch 40" }
[[line]]
name = "uneven"
fed_by = "even"
tap_outlet = 2
pipe = "lateral"
outlets = [{ place = "10 ft", outlet = "head" }, { place = "25 ft", outlet = "spray" }]
[[fault]]
kind = "nozzle missing"
line = "even"
outlet = 1
[[fault]]
kind = "wrong outlet"
line = "even"
outlet = 3
fitted = "spray"
[[fault]]
kind = "leak"
line = "main"
place = "100 ft"
flow = "5 gpm"
at = "40 psi"
[[fault]]
kind = "line cut"
line = "uneven"
place = "20 ft"
[[fault]]
kind = "valve part closed"
line = "even"
loss_coefficient = 30
)";

TEST(ReadLayout, ReadsLinesAsTheyAre) {
  Pipe wide = nominal_pipe("2 in", "PVC SDR 26");
  Pipe lateral = nominal_pipe("1-1/2 in", "PVC Class 160");
  wide.name = "wide";
  lateral.name = "lateral";
  lateral.hazen_williams.reset();
  lateral.roughness = 0.0015 * mm;
  lateral.pressure_rating = 100 * psi;
  const Outlet head{.name = "head", .flow = 3.5 * gpm, .at = 25 * psi, .body_bore = 0.30 * inch};
  const Outlet spray{
      .name = "spray", .rated = 30 * psi, .nozzle = 3.0 / 32 * inch, .discharge_coefficient = 0.97};
  const Layout layout = read_layout_text(broad_file);
  EXPECT_EQ(layout.line("even"),
            (Line{.name = "even",
                  .fed_by = "main",
                  .tap = 120 * ft,
                  .pipe = lateral,
                  .reaches = {{wide, 40 * ft}},
                  .outlet = head,
                  .count = 3,
                  .spacing = 30 * ft,
                  .elevations = {0 * ft, 1.5 * ft, -2 * ft},
                  .riser = {.height = 2 * ft,
                            .inside_diameter = nominal_pipe("1/2 in", "PVC Sch 40").inside_diameter,
                            .hazen_williams = 150},
                  .connection_length = 0.25 * ft}));
  EXPECT_EQ(layout.line("uneven"),
            (Line{.name = "uneven",
                  .fed_by = "even",
                  .tap_outlet = 2,
                  .pipe = lateral,
                  .outlets = {{10 * ft, head}, {25 * ft, spray}}}));
  EXPECT_EQ(layout.faults(),
            (std::vector<Fault>{nozzle_missing("even", 1),
                                wrong_outlet("even", 3, spray),
                                leak("main", 100 * ft, 5 * gpm, 40 * psi),
                                line_cut("uneven", 20 * ft),
                                valve_part_closed("even", 30)}));
}

TEST(ReadLayout, TellsWhatIsWrongWithLinesAsTheyAre) {
  const auto mistakes = [](const std::string& before, const std::string& after) {
    std::string text = broad_file;
    const std::size_t at = text.find(before);
    EXPECT_NE(at, std::string::npos) << before;
    text.replace(at, before.size(), after);
    return mistakes_of([&] { read_layout_text(text, "f"); });
  };
  EXPECT_THAT(mistakes("\"2 in\"", "\"7 in\""),
              ElementsAre(HasSubstr(
                  "f:5:8: pipe \"wide\": size: is \"7 in\", PVC SDR 26 is made in: 1 in, ")));
  EXPECT_THAT(mistakes("PVC Class 160", "PVC Class 170"),
              ElementsAre(HasSubstr("f:6:8: pipe \"wide\": kind: is \"PVC Class 170\", must be")));
  EXPECT_THAT(mistakes("size = \"2 in\"\n", ""),
              ElementsAre(HasSubstr("pipe \"wide\": size: is not given")));
  EXPECT_THAT(mistakes("size = \"2 in\"", "size = \"2 in\"\ninside_diameter = \"2 in\""),
              ElementsAre(HasSubstr("inside_diameter: \"2 in\" is given, but so is the size")));
  EXPECT_THAT(mistakes("\"120 ft\"", "\"220 ft\""),
              ElementsAre(HasSubstr("f:27:7: line \"even\": tap: \"220 ft\" is 67.056 m, beyond")));
  EXPECT_THAT(mistakes("to = \"40 ft\"", "to = \"140 ft\""),
              ElementsAre(HasSubstr("f:29:34: line \"even\": reaches, 1.to: \"140 ft\" is")));
  EXPECT_THAT(mistakes("pipe = \"wide\", to", "pipe = \"none\", to"),
              ElementsAre(HasSubstr("f:29:21: line \"even\": reaches, 1.pipe: is \"none\"")));
  EXPECT_THAT(mistakes("reaches = [{", "reaches = [{ from = 1, "),
              ElementsAre(HasSubstr("reaches, 1.\"from\": is not a key known here")));
  EXPECT_THAT(mistakes("[{ pipe = \"wide\", to = \"40 ft\" }]", "\"wide\""),
              ElementsAre(HasSubstr("reaches: is the text \"wide\"; must be a list of tables")));
  EXPECT_THAT(mistakes(", \"-2 ft\"]", "]"),
              ElementsAre(HasSubstr("f:33:14: line \"even\": elevations: are 2, must be one for")));
  EXPECT_THAT(mistakes("\"1.5 ft\"", "1.5"),
              ElementsAre(HasSubstr("f:33:23: line \"even\": elevations: is the bare number 1.5")));
  EXPECT_THAT(
      mistakes("place = \"25 ft\"", "place = \"5 ft\""),
      Contains(HasSubstr("line \"uneven\": outlets, 2.place: \"5 ft\" is 1.524 m, nearer")));
  EXPECT_THAT(mistakes("fitted = \"spray\"", "fitted = \"none\""),
              ElementsAre(HasSubstr("fault 2: fitted: is \"none\", but there is no such")));
  EXPECT_THAT(mistakes("place = \"20 ft\"", "place = \"30 ft\""),
              ElementsAre(HasSubstr("fault 4: place: \"30 ft\" is 9.144 m, must be from 0 to")));
}

TEST(ReadFault, ReadsFaultsOfLinesAndFittings) {
  const Outlet spray{.name = "spray", .flow = 1 * gpm, .at = 30 * psi};
  EXPECT_EQ(read_fault("line=\"a\", outlet=2, kind=\"nozzle missing\", bore=\"7 mm\""),
            Fault(nozzle_missing("a", 2, 7 * mm)));
  EXPECT_EQ(read_fault("line=\"a\", outlet=2, kind=\"wrong outlet\", fitted=\"spray\"", {spray}),
            Fault(wrong_outlet("a", 2, spray)));
  EXPECT_EQ(read_fault("line=\"a\", outlet=2, kind=\"wrong outlet\", "
                       "fitted={flow=\"1 gpm\", at=\"30 psi\"}"),
            Fault(wrong_outlet("a", 2, Outlet{.flow = 1 * gpm, .at = 30 * psi})));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"leak\", place=\"3 m\", flow=\"1 gpm\", at=\"30 psi\", "
                       "exponent=1.1"),
            Fault(leak("a", 3 * units::m, 1 * gpm, 30 * psi, 1.1)));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"line cut\", place=\"3 m\""),
            Fault(line_cut("a", 3 * units::m)));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"end open\""), Fault(end_open("a")));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"valve part closed\", loss_coefficient=9"),
            Fault(valve_part_closed("a", 9)));
}

TEST(ReadFault, ReadsFaultsOfValvesRegulatorsAndTheSupply) {
  EXPECT_EQ(read_fault("line=\"a\", kind=\"valve left open\""), Fault(valve_left_open("a")));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"regulator stuck open\""),
            Fault(regulator_stuck_open("a")));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"regulator stuck open\", outlet=3"),
            Fault(regulator_stuck_open("a", 3)));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"regulator stuck shut\""),
            Fault(regulator_stuck_shut("a")));
  EXPECT_EQ(read_fault("line=\"a\", kind=\"regulator stuck shut\", outlet=3"),
            Fault(regulator_stuck_shut("a", 3)));
  EXPECT_EQ(read_fault("kind=\"pump worn\", share=0.1"), Fault(pump_worn(0.1)));
  EXPECT_EQ(read_fault("kind=\"pump worn\", share=0.1, pump=2"), Fault(pump_worn(0.1, 2)));
  EXPECT_EQ(read_fault("kind=\"engine slow\", speed=\"2100 rpm\""), Fault(engine_slow(2100 * rpm)));
  EXPECT_EQ(read_fault("kind=\"engine slow\", speed=\"2100 rpm\", pump=1"),
            Fault(engine_slow(2100 * rpm, 1)));
  EXPECT_EQ(read_fault("kind=\"filter dirty\", loss=\"9 psi\""), Fault(filter_dirty(9 * psi)));
  EXPECT_EQ(read_fault("kind=\"pump worn\", share=0.1, supply=\"creek\""),
            Fault(pump_worn(0.1, {}, "creek")));
  EXPECT_EQ(read_fault("kind=\"engine slow\", speed=\"2100 rpm\", supply=\"creek\""),
            Fault(engine_slow(2100 * rpm, {}, "creek")));
  EXPECT_EQ(read_fault("kind=\"filter dirty\", loss=\"9 psi\", supply=\"creek\""),
            Fault(filter_dirty(9 * psi, "creek")));
}

TEST(ReadFault, TellsWhatIsMissing) {
  const auto found = [](const std::string& text) { return mistakes_of([&] { read_fault(text); }); };
  EXPECT_THAT(found("line=\"a\", outlet=1, kind=\"clogged\""),
              ElementsAre(HasSubstr(": share: is not given")));
  EXPECT_THAT(found("line=\"a\", outlet=1, kind=\"worn\""),
              ElementsAre(HasSubstr(": share: is not given")));
  EXPECT_THAT(found(""), ElementsAre(HasSubstr(": kind: is not given; accepted are")));
  EXPECT_THAT(found("kind=\"valve left open\""), ElementsAre(HasSubstr(": line: is not given")));
  EXPECT_THAT(found("kind=\"pump worn\""), ElementsAre(HasSubstr(": share: is not given")));
  EXPECT_THAT(found("kind=\"engine slow\""), ElementsAre(HasSubstr(": speed: is not given")));
  EXPECT_THAT(found("kind=\"filter dirty\""), ElementsAre(HasSubstr(": loss: is not given")));
  EXPECT_THAT(found("kind=\"filter dirty\", loss=\"3 psi\", line=\"a\""),
              ElementsAre(HasSubstr("line: \"a\" is given, but \"filter dirty\" is a fault of the "
                                    "supply; leave the key out")));
}

}  // namespace
}  // namespace hydro
