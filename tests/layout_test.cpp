// layout_test.cpp: what a Layout refuses, and what it says; that it cannot be changed.
#include "hydro/layout/layout.hpp"

#include "hydro/quantities/unit_text.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr double infinity = std::numeric_limits<double>::infinity();
const double not_a_number = std::nan("");

/// What a Layout is made of.
struct Parts {
  Supply supply;
  std::vector<Line> lines;
  Water water;
  Site site;

  Line& line() { return lines.front(); }
  Outlet& outlet() { return *line().outlet; }
  Layout make() const { return Layout(supply, lines, water, site); }
};

Line main_line(const std::string& name, const std::string& fed_by = {}) {
  return {.name = name,
          .fed_by = fed_by,
          .pipe = {.inside_diameter = 3 * inch, .hazen_williams = 150},
          .length = 60 * ft};
}

Line row(const std::string& name, const std::string& fed_by = {}) {
  return {.name = name,
          .fed_by = fed_by,
          .pipe = {.inside_diameter = 50 * mm, .hazen_williams = 150},
          .outlet = Outlet{.flow = 2 * gpm, .at = 30 * psi},
          .count = 3,
          .spacing = 20 * ft,
          .riser = {.height = 1 * units::m, .inside_diameter = 20 * mm, .hazen_williams = 140}};
}

Parts sound() {
  return {.supply = {.pressure = 40 * psi}, .lines = {row("row 1")}, .water = {}, .site = {}};
}

std::vector<Problem> problems_of(const std::function<void()>& action) {
  try {
    action();
  } catch (const InvalidInput& error) {
    return error.problems();
  }
  return {};
}
std::vector<Problem> problems_of(const Parts& parts) {
  return problems_of([&] { parts.make(); });
}

std::vector<std::string> texts_of(const std::vector<Problem>& problems) {
  std::vector<std::string> texts;
  for (const Problem& problem : problems) texts.push_back(problem.text());
  return texts;
}

// ---- each field against its interval

/// One field: how to set it to a number of the interval's unit, and what belongs in it.
struct Field {
  std::string place;
  std::string key;
  std::function<void(Parts&, double)> set;
  std::string unit;      ///< with the blank before it
  std::string interval;  ///< as messages tell it, without the unit
  std::vector<double> accepted;
  std::vector<double> refused;  ///< beside NaN and both infinities
};

void PrintTo(const Field& field, std::ostream* out) {
  *out << field.place << ": " << field.key;
}

class EachField : public testing::TestWithParam<Field> {};

TEST_P(EachField, TakesWhatLiesInItsInterval) {
  for (const double number : GetParam().accepted) {
    Parts parts = sound();
    GetParam().set(parts, number);
    EXPECT_THAT(texts_of(problems_of(parts)), IsEmpty()) << number;
  }
}

TEST_P(EachField, RefusesAllElseAndNamesKeyValueAndInterval) {
  const Field& field = GetParam();
  std::vector<double> refused = field.refused;
  refused.insert(refused.end(), {not_a_number, infinity, -infinity});
  for (const double number : refused) {
    Parts parts = sound();
    field.set(parts, number);
    const std::string message =
        "is " + to_text(number) + field.unit + ", must be " + field.interval + field.unit;
    EXPECT_THAT(texts_of(problems_of(parts)),
                testing::Contains(field.place + ": " + field.key + ": " + message));
  }
}

const std::string in_row = "line \"row 1\"";

const Field fields_around_the_lines[] = {
    {"supply",
     "pressure",
     [](Parts& parts, double x) { parts.supply.pressure = x * kPa; },
     " kPa",
     "from 0 to 10000",
     {0, 300, 10000},
     {-1, 20000}},
    {"supply",
     "elevation",
     [](Parts& parts, double x) { parts.supply.elevation = x * units::m; },
     " m",
     "from -10000 to 10000",
     {-10000, 0, 10000},
     {-20000, 20000}},
    {"water",
     "temperature",
     [](Parts& parts, double x) { parts.water.temperature = x * degC; },
     " degC",
     "from 0 to 100",
     {0, 20, 100},
     {-1, 101}},
    {"water",
     "density",
     [](Parts& parts, double x) { parts.water.density = x * kg_per_m3; },
     " kg/m3",
     "from 900 to 1100",
     {900, 1000, 1100},
     {-1000, 0, 800, 1200}},
    {"water",
     "kinematic_viscosity",
     [](Parts& parts, double x) { parts.water.kinematic_viscosity = x * mm2_per_s; },
     " mm2/s",
     "from 0.01 to 100",
     {0.01, 1, 100},
     {-1, 0, 200}},
    {"site",
     "altitude",
     [](Parts& parts, double x) { parts.site.altitude = x * units::m; },
     " m",
     "from -500 to 6000",
     {-500, 0, 6000},
     {-600, 7000}},
};

const Field fields_of_pipes[] = {
    {in_row,
     "pipe.inside_diameter",
     [](Parts& parts, double x) { parts.line().pipe.inside_diameter = x * mm; },
     " mm",
     "from 0.1 to 10000",
     {0.1, 50, 10000},
     {-50, 0, 0.05, 20000}},
    {in_row,
     "pipe.hazen_williams",
     [](Parts& parts, double x) { parts.line().pipe.hazen_williams = x; },
     "",
     "from 10 to 200",
     {10, 150, 200},
     {-150, 0, 9, 201}},
    {in_row,
     "pipe.roughness",
     [](Parts& parts, double x) {
       parts.line().pipe = {.inside_diameter = 10 * units::m, .roughness = x * mm};
     },
     " mm",
     "from 0 to 100",
     {0, 0.5, 100},
     {-0.5, 200}},
    {in_row,
     "pipe.darcy_factor",
     [](Parts& parts, double x) {
       parts.line().pipe = {.inside_diameter = 50 * mm, .darcy_factor = x};
     },
     "",
     "from 0.001 to 1",
     {0.001, 0.02, 1},
     {-0.02, 0, 2}},
    {in_row,
     "riser.height",
     [](Parts& parts, double x) { parts.line().riser.height = x * units::m; },
     " m",
     "from 0 to 30",
     {0, 1, 30},
     {-1, 40}},
    {in_row,
     "riser.inside_diameter",
     [](Parts& parts, double x) { parts.line().riser.inside_diameter = x * mm; },
     " mm",
     "from 0.1 to 10000",
     {0.1, 20, 10000},
     {-20, 0, 0.05, 20000}},
    {in_row,
     "riser.hazen_williams",
     [](Parts& parts, double x) { parts.line().riser.hazen_williams = x; },
     "",
     "from 10 to 200",
     {10, 140, 200},
     {-140, 0, 9, 201}},
    {in_row,
     "riser.roughness",
     [](Parts& parts, double x) {
       parts.line().riser = {.inside_diameter = 10 * units::m, .roughness = x * mm};
     },
     " mm",
     "from 0 to 100",
     {0, 0.5, 100},
     {-0.5, 200}},
    {in_row,
     "riser.darcy_factor",
     [](Parts& parts, double x) {
       parts.line().riser = {.inside_diameter = 20 * mm, .darcy_factor = x};
     },
     "",
     "from 0.001 to 1",
     {0.001, 0.02, 1},
     {-0.02, 0, 2}},
    {in_row,
     "riser.loss_coefficient",
     [](Parts& parts, double x) { parts.line().riser.loss_coefficient = x; },
     "",
     "from 0 to 1000000",
     {0, 1, 1e6},
     {-1, 2e6}},
};

const Field fields_of_outlets[] = {
    {in_row,
     "outlet.flow",
     [](Parts& parts, double x) { parts.outlet().flow = x * lph; },
     " L/h",
     "from 0.001 to 3600000",
     {0.001, 500, 3600000},
     {-500, 0, 1e-300, 4000000}},
    {in_row,
     "outlet.at",
     [](Parts& parts, double x) { parts.outlet().at = x * kPa; },
     " kPa",
     "from 0.001 to 10000",
     {0.001, 200, 10000},
     {-200, 0, 1e-300, 20000}},
    {in_row,
     "outlet.exponent",
     [](Parts& parts, double x) { parts.outlet().exponent = x; },
     "",
     "from 0 to 1.5",
     {0.1, 0.5, 1.5},
     {-0.5, 1.6}},
    {in_row,
     "outlet.rated",
     [](Parts& parts, double x) { parts.outlet().rated = x * kPa; },
     " kPa",
     "from 0.001 to 10000",
     {0.001, 200, 10000},
     {-200, 0, 1e-300, 20000}},
    {in_row,
     "outlet.minimum",
     [](Parts& parts, double x) {
       parts.outlet().minimum = x * kPa;
       parts.outlet().rated = 10000 * kPa;
     },
     " kPa",
     "from 0.001 to 10000",
     {0.001, 200, 10000},
     {-200, 0, 1e-300, 20000}},
    {in_row,
     "outlet.maximum",
     [](Parts& parts, double x) {
       parts.outlet().maximum = x * kPa;
       parts.outlet().rated = 0.001 * kPa;
     },
     " kPa",
     "from 0.001 to 10000",
     {0.001, 200, 10000},
     {-200, 0, 1e-300, 20000}},
};

const Field fields_of_lines[] = {
    {in_row,
     "spacing",
     [](Parts& parts, double x) { parts.line().spacing = x * km; },
     " km",
     "from 1e-06 to 100",
     {0.001, 1, 100},
     {-1, 0, 200}},
    {in_row,
     "first_at",
     [](Parts& parts, double x) { parts.line().first_at = x * km; },
     " km",
     "from 0 to 100",
     {0, 1, 100},
     {-1, 200}},
    {in_row,
     "length",
     [](Parts& parts, double x) {
       parts.line() = main_line("row 1");
       parts.line().length = x * km;
     },
     " km",
     "from 1e-06 to 100",
     {0.001, 1, 100},
     {-1, 0, 200}},
    {in_row,
     "ground_rise",
     [](Parts& parts, double x) { parts.line().ground_rise = x * units::m; },
     " m",
     "from -10000 to 10000",
     {-10000, 0, 10000},
     {-20000, 20000}},
    {in_row,
     "loss_coefficient",
     [](Parts& parts, double x) { parts.line().loss_coefficient = x; },
     "",
     "from 0 to 1000000000",
     {0, 1, 1e9},
     {-1, 2e9}},
    {in_row,
     "outlet_loss_coefficient",
     [](Parts& parts, double x) { parts.line().outlet_loss_coefficient = x; },
     "",
     "from 0 to 1000000000",
     {0, 1, 1e9},
     {-1, 2e9}},
};

std::string name_of_case(const testing::TestParamInfo<Field>& info) {
  std::string name = (info.param.place == in_row ? "" : info.param.place + "_") + info.param.key;
  std::replace(name.begin(), name.end(), '.', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Around,
                         EachField,
                         testing::ValuesIn(fields_around_the_lines),
                         name_of_case);
INSTANTIATE_TEST_SUITE_P(Pipe, EachField, testing::ValuesIn(fields_of_pipes), name_of_case);
INSTANTIATE_TEST_SUITE_P(Outlet, EachField, testing::ValuesIn(fields_of_outlets), name_of_case);
INSTANTIATE_TEST_SUITE_P(Line, EachField, testing::ValuesIn(fields_of_lines), name_of_case);

TEST(Layout, CountIsAtLeastOneAndAtMostAMillion) {
  for (const int count : {1, 1000, most_outlets}) {
    Parts parts = sound();
    parts.line().count = count;
    EXPECT_THAT(texts_of(problems_of(parts)), IsEmpty()) << count;
  }
  for (const int count :
       {0, -1, most_outlets + 1, 2'000'000'000, std::numeric_limits<int>::min()}) {
    Parts parts = sound();
    parts.line().count = count;
    EXPECT_THAT(texts_of(problems_of(parts)),
                testing::Contains("line \"row 1\": count: is " + std::to_string(count) +
                                  ", must be from 1 to 1000000"));
  }
}

// ---- fields of one line against each other

struct Contradiction {
  std::string name;
  std::function<void(Parts&)> make;
  std::string key;
  std::string fragment;
};

void PrintTo(const Contradiction& contradiction, std::ostream* out) {
  *out << contradiction.name;
}

class Contradictions : public testing::TestWithParam<Contradiction> {};

TEST_P(Contradictions, AreRefusedAlone) {
  Parts parts = sound();
  GetParam().make(parts);
  const std::vector<Problem> found = problems_of(parts);
  ASSERT_EQ(found.size(), 1u) << testing::PrintToString(texts_of(found));
  EXPECT_EQ(found.front().key, GetParam().key);
  EXPECT_THAT(found.front().message, HasSubstr(GetParam().fragment));
}

const Contradiction contradictions[] = {
    {"no_wall",
     [](Parts& parts) { parts.line().pipe.hazen_williams = std::nullopt; },
     "pipe.hazen_williams, roughness, darcy_factor",
     "none is given"},
    {"two_walls",
     [](Parts& parts) { parts.line().pipe.darcy_factor = 0.02; },
     "pipe.hazen_williams, roughness, darcy_factor",
     "more than one is given"},
    {"riser_without_wall",
     [](Parts& parts) { parts.line().riser.hazen_williams = std::nullopt; },
     "riser.hazen_williams, roughness, darcy_factor",
     "none is given"},
    {"riser_loss_without_bore",
     [](Parts& parts) { parts.line().riser = {.height = 2 * ft, .loss_coefficient = 1}; },
     "riser.inside_diameter",
     "is not given"},
    {"very_rough",
     [](Parts& parts) { parts.line().pipe = {.inside_diameter = 50 * mm, .roughness = 2.6 * mm}; },
     "pipe.roughness",
     "is 2.6 mm, must be at most 0.05 of the inside diameter of 50 mm"},
    {"minimum_above_rated",
     [](Parts& parts) { parts.outlet().minimum = 31 * psi; },
     "outlet.minimum",
     "is 213.7374761 kPa, must be at most the rated 206.8427188 kPa"},
    {"maximum_below_rated",
     [](Parts& parts) { parts.outlet().maximum = 29 * psi; },
     "outlet.maximum",
     "is 199.9479615 kPa, must be at least the rated 206.8427188 kPa"},
    {"no_count", [](Parts& parts) { parts.line().count = std::nullopt; }, "count", "is not given"},
    {"no_spacing",
     [](Parts& parts) { parts.line().spacing = std::nullopt; },
     "spacing",
     "is not given"},
    {"shorter_than_its_outlets",
     [](Parts& parts) { parts.line().length = 15 * units::m; },
     "length",
     "is 15 m, shorter than the 18.288 m"},
    {"main_without_length",
     [](Parts& parts) {
       parts.line() = main_line("row 1");
       parts.line().length = std::nullopt;
     },
     "length",
     "is not given"},
    {"count_without_outlet",
     [](Parts& parts) { (parts.line() = main_line("row 1")).count = 2; },
     "count",
     "no outlet is"},
    {"spacing_without_outlet",
     [](Parts& parts) { (parts.line() = main_line("row 1")).spacing = 2 * ft; },
     "spacing",
     "no outlet is"},
    {"first_at_without_outlet",
     [](Parts& parts) { (parts.line() = main_line("row 1")).first_at = 2 * ft; },
     "first_at",
     "no outlet is"},
    {"riser_without_outlet",
     [](Parts& parts) { (parts.line() = main_line("row 1")).riser.height = 2 * ft; },
     "riser",
     "no outlet is"},
    {"outlet_loss_without_outlet",
     [](Parts& parts) { (parts.line() = main_line("row 1")).outlet_loss_coefficient = 1; },
     "outlet_loss_coefficient",
     "no outlet is"},
    {"no_name", [](Parts& parts) { parts.line().name = ""; }, "name", "is empty"},
    {"line_break_in_the_name",
     [](Parts& parts) { parts.line().name = "row\n1"; },
     "name",
     "control character"},
    {"delete_in_the_name",
     [](Parts& parts) { parts.line().name = "row \x7f"; },
     "name",
     "control character"},
    {"nul_in_the_name",
     [](Parts& parts) { parts.line().name = std::string("row\0", 4); },
     "name",
     "control character"},
    {"escape_in_the_name_of_the_site",
     [](Parts& parts) { parts.site.name = "\x1b[2J"; },
     "name",
     "control character"},
    {"escape_in_the_name_of_a_pipe",
     [](Parts& parts) { parts.line().pipe.name = "\x1b[2J"; },
     "pipe.name",
     "control character"},
    {"escape_in_the_name_of_an_outlet",
     [](Parts& parts) { parts.outlet().name = "\x1b[2J"; },
     "outlet.name",
     "control character"},
    {"very_long_name",
     [](Parts& parts) { parts.line().name = std::string(61, 'a'); },
     "name",
     "has 61 bytes, must have at most 60"},
    {"very_long_name_of_a_pipe",
     [](Parts& parts) { parts.line().pipe.name = std::string(61, 'a'); },
     "pipe.name",
     "has 61 bytes, must have at most 60"},
    {"no_lines", [](Parts& parts) { parts.lines.clear(); }, "", "at least one line"},
};

INSTANTIATE_TEST_SUITE_P(Layout,
                         Contradictions,
                         testing::ValuesIn(contradictions),
                         [](const auto& tested) { return tested.param.name; });

TEST(Layout, TakesOneOutletWithoutSpacingAndLettersOfAllLanguages) {
  Parts parts = sound();
  parts.line().name = "r\u00e4tt 1, \u7530";
  parts.line().count = 1;
  parts.line().spacing = std::nullopt;
  parts.line().first_at = 3 * ft;
  EXPECT_THAT(texts_of(problems_of(parts)), IsEmpty());
}

TEST(Layout, AnOutletAtTheInletOfALineWithoutLengthIsRefusedOrSolved) {
  Parts parts = sound();
  parts.line().count = 1;
  parts.line().spacing = std::nullopt;
  parts.line().first_at = 0 * ft;
  try {
    const Layout layout = parts.make();
    EXPECT_TRUE(std::isfinite(si(layout.outlet_elevation(0, 1))));
    EXPECT_GT(solve(layout).inflow(), Flow{});
  } catch (const InvalidInput& error) {
    EXPECT_THAT(error.what(), testing::AnyOf(HasSubstr("first_at"), HasSubstr("length")));
  }
}

// ---- lines against each other

TEST(Layout, TellsAllMistakesOfAllLinesAtOnce) {
  Parts parts{.supply = {.pressure = -1 * kPa},
              .lines = {row("row 1"), main_line("main"), row("row 1", "nowhere")},
              .water = {.temperature = 120 * degC},
              .site = {.altitude = 7000 * units::m}};
  parts.lines[0].count = 0;
  parts.lines[0].outlet->exponent = 3;
  parts.lines[1].pipe.inside_diameter = -1 * mm;
  const std::vector<Problem> found = problems_of(parts);
  EXPECT_THAT(
      texts_of(found),
      ElementsAre("supply: pressure: is -1 kPa, must be from 0 to 10000 kPa",
                  "water: temperature: is 120 degC, must be from 0 to 100 degC",
                  "site: altitude: is 7000 m, must be from -500 to 6000 m",
                  "line \"row 1\": outlet.exponent: is 3, must be from 0 to 1.5",
                  "line \"row 1\": count: is 0, must be from 1 to 1000000",
                  "line \"main\": pipe.inside_diameter: is -1 mm, must be from 0.1 to 10000 mm",
                  HasSubstr("line 3: name: is used by an earlier line"),
                  "line 3: fed_by: is \"nowhere\", but there is no such line; there are \"row 1\", "
                  "\"main\", \"row 1\""));
  try {
    parts.make();
  } catch (const std::invalid_argument& error) {  // what() holds one mistake a line
    const std::string what = error.what();
    EXPECT_EQ(static_cast<std::size_t>(std::count(what.begin(), what.end(), '\n')) + 1,
              found.size());
  }
}

TEST(Layout, RefusesToRunInACircle) {
  struct Circle {
    std::vector<Line> lines;
    std::vector<std::string> places;
  };
  const Circle circles[] = {
      {{main_line("a", "a")}, {"line \"a\""}},
      {{main_line("a", "b"), main_line("b", "a")}, {"line \"a\"", "line \"b\""}},
      {{main_line("a"),
        main_line("b", "c"),
        main_line("c", "d"),
        main_line("d", "b"),
        row("e", "d")},
       {"line \"b\"", "line \"c\"", "line \"d\"", "line \"e\""}},
  };
  for (const Circle& circle : circles) {
    const auto found = problems_of(
        Parts{.supply = {.pressure = 40 * psi}, .lines = circle.lines, .water = {}, .site = {}});
    std::vector<std::string> places;
    for (const Problem& problem : found) {
      places.push_back(problem.place);
      EXPECT_EQ(problem.key, "fed_by");
      EXPECT_THAT(problem.message, HasSubstr("round in a circle and never to a supply"));
    }
    EXPECT_EQ(places, circle.places);
  }
}

TEST(Layout, RefusesMoreThanAMillionOutletsInAll) {
  Parts parts = sound();
  parts.lines.push_back(row("row 2"));
  parts.lines[0].count = most_outlets;
  parts.lines[1].count = 1;
  EXPECT_THAT(texts_of(problems_of(parts)),
              ElementsAre("lines: count: adds up to 1000001 outlets, must be at most 1000000"));
  parts.lines[0].count = most_outlets - 1;
  EXPECT_THAT(texts_of(problems_of(parts)), IsEmpty());
}

TEST(Layout, RefusesABillionOutletsAtOnce) {
  Parts parts = sound();
  parts.lines[0].count = 1'000'000'000;
  EXPECT_THAT(texts_of(problems_of(parts)),
              testing::Contains(HasSubstr("count: is 1000000000, must be from 1 to 1000000")));
}

TEST(Layout, RefusesMoreThanAHundredThousandLines) {
  Parts parts{.supply = {.pressure = 40 * psi}, .lines = {}, .water = {}, .site = {}};
  for (std::size_t i = 0; i < most_lines; ++i)
    parts.lines.push_back(main_line("main " + std::to_string(i)));
  EXPECT_THAT(texts_of(problems_of(parts)), IsEmpty());
  parts.lines.push_back(main_line("one more"));
  EXPECT_THAT(texts_of(problems_of(parts)),
              ElementsAre("lines: there are 100001, must be at most 100000"));
}

TEST(Layout, ListsAFewOfManyNamesAndCutsLongOnes) {
  constexpr std::size_t a_screen = 1000;
  Parts many = sound();
  for (int i = 0; i < 500; ++i) many.lines.push_back(main_line("main " + std::to_string(i)));
  many.lines.push_back(main_line("last", "nowhere"));
  const std::vector<Problem> found = problems_of(many);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found.front().message, HasSubstr("and 490 more"));
  EXPECT_LT(found.front().message.size(), a_screen);

  Parts long_names = sound();
  long_names.lines = {main_line(std::string(5000, 'a'), std::string(5000, 'b'))};
  for (const std::string& text : texts_of(problems_of(long_names)))
    EXPECT_LT(text.size(), a_screen);
}

// ---- faults

struct FaultCase {
  std::string name;
  Fault fault;
  std::string key;
  std::string fragment;
};

void PrintTo(const FaultCase& wrong, std::ostream* out) {
  *out << wrong.name;
}

class WrongFaults : public testing::TestWithParam<FaultCase> {};

/// "row 1" has three outlets on risers of 1 m with a bore; "spray" has risers of unknown bore.
Layout with_two_rows() {
  Parts parts = sound();
  parts.lines.push_back(row("spray"));
  parts.lines.back().riser = {.height = 1 * units::m};
  parts.lines.push_back(main_line("main"));
  return parts.make();
}

TEST_P(WrongFaults, AreRefused) {
  const Layout layout = with_two_rows();
  const auto found = problems_of([&] { layout.with_fault(GetParam().fault); });
  ASSERT_EQ(found.size(), 1u) << testing::PrintToString(texts_of(found));
  EXPECT_EQ(found.front().place, "fault 1");
  EXPECT_EQ(found.front().key, GetParam().key);
  EXPECT_THAT(found.front().message, HasSubstr(GetParam().fragment));
  EXPECT_THAT(layout.faults(), IsEmpty());
}

const FaultCase wrong_faults[] = {
    {"unknown_line",
     capped("row 9", 1),
     "line",
     "is \"row 9\", but there is no such line; there are"},
    {"no_line", capped("", 1), "line", "is \"\""},
    {"line_without_outlets", capped("main", 1), "line", "is \"main\", which has no outlets"},
    {"outlet_0", capped("row 1", 0), "outlet", "is 0, must be from 1 to 3"},
    {"outlet_minus_1", worn("row 1", -1, 0.2), "outlet", "is -1, must be from 1 to 3"},
    {"outlet_beyond", head_off("row 1", 4), "outlet", "is 4, must be from 1 to 3"},
    {"head_off_without_bore", head_off("spray", 1), "riser.inside_diameter", "is not known"},
    {"sheared_without_bore", riser_sheared("spray", 1), "riser.inside_diameter", "is not known"},
    {"clogged_by_0", clogged("row 1", 1, 0), "share", "is 0, must be above 0 and below 1"},
    {"clogged_by_1", clogged("row 1", 1, 1), "share", "is 1, must be above 0 and below 1"},
    {"clogged_by_less", clogged("row 1", 1, -0.5), "share", "is -0.5, must be"},
    {"clogged_by_nan", clogged("row 1", 1, not_a_number), "share", "is nan, must be"},
    {"clogged_by_infinity", clogged("row 1", 1, infinity), "share", "is inf, must be"},
    {"worn_by_0", worn("row 1", 1, 0), "share", "is 0, must be above 0 to 10"},
    {"worn_by_less", worn("row 1", 1, -0.5), "share", "is -0.5, must be above 0 to 10"},
    {"worn_by_11", worn("row 1", 1, 11), "share", "is 11, must be above 0 to 10"},
    {"worn_by_nan", worn("row 1", 1, not_a_number), "share", "is nan, must be above 0 to 10"},
    {"stub_too_long",
     riser_sheared("row 1", 1, 1.5 * units::m),
     "stub",
     "is 1.5 m, must be from 0 to 1 m"},
    {"stub_negative",
     riser_sheared("row 1", 1, -1 * units::m),
     "stub",
     "is -1 m, must be from 0 to 1 m"},
    {"stub_nan", riser_sheared("row 1", 1, not_a_number* units::m), "stub", "is nan m, must be"},
    {"loss_negative",
     head_off("row 1", 1, -1),
     "loss_coefficient",
     "is -1, must be from 0 to 1000"},
    {"loss_nan", head_off("row 1", 1, not_a_number), "loss_coefficient", "is nan, must be"},
    {"loss_large",
     riser_sheared("row 1", 1, std::nullopt, 2000),
     "loss_coefficient",
     "is 2000, must be from 0 to 1000"},
};

INSTANTIATE_TEST_SUITE_P(Layout,
                         WrongFaults,
                         testing::ValuesIn(wrong_faults),
                         [](const auto& tested) { return tested.param.name; });

TEST(LayoutFaults, OfEveryKindAreTaken) {
  const Layout layout = with_two_rows();
  for (const Fault& fault : {Fault(head_off("row 1", 1)),
                             Fault(head_off("row 1", 1, 0)),
                             Fault(riser_sheared("row 1", 3)),
                             Fault(riser_sheared("row 1", 3, 0 * ft, 1000)),
                             Fault(riser_sheared("row 1", 3, 1 * units::m)),
                             Fault(clogged("spray", 2, 0.999)),
                             Fault(worn("spray", 2, 10)),
                             Fault(capped("spray", 2))})
    EXPECT_THAT(layout.with_fault(fault).faults(), ElementsAre(fault));
}

TEST(LayoutFaults, OneOutletTakesOneFault) {
  const Layout layout = with_two_rows();
  const Layout broken = layout.with_fault(capped("row 1", 2));
  for (const Fault& second : {Fault(capped("row 1", 2)), Fault(worn("row 1", 2, 0.2))})
    EXPECT_THAT(texts_of(problems_of([&] { broken.with_fault(second); })),
                ElementsAre("fault 2: outlet: 2 of line \"row 1\" already has fault 1; one outlet "
                            "takes one fault"));
  EXPECT_EQ(broken.with_fault(capped("spray", 2)).faults().size(), 2u);
}

TEST(LayoutFaults, AllMistakesAreToldAtOnceAndNoFaultIsTaken) {
  const Layout layout = with_two_rows();
  EXPECT_THAT(texts_of(problems_of([&] {
                layout.with_faults({capped("row 9", 1), capped("row 1", 1), worn("row 1", 7, -1)});
              })),
              ElementsAre(HasSubstr("fault 1: line: is \"row 9\""),
                          "fault 3: outlet: is 7, must be from 1 to 3",
                          "fault 3: share: is -1, must be above 0 to 10"));
  EXPECT_THAT(layout.faults(), IsEmpty());
}

TEST(LayoutFaults, AFaultMakesANewLayoutAndLeavesTheOldOne) {
  const Layout sound_layout = with_two_rows();
  const Layout copy = sound_layout;
  const Layout broken = sound_layout.with_fault(head_off("row 1", 2));
  const Layout worse = broken.with_fault(capped("row 1", 1));
  const Layout mended = worse.without_faults();

  EXPECT_THAT(sound_layout.faults(), IsEmpty());
  EXPECT_THAT(copy.faults(), IsEmpty());
  EXPECT_THAT(broken.faults(), ElementsAre(Fault(head_off("row 1", 2))));
  EXPECT_THAT(worse.faults(), ElementsAre(Fault(head_off("row 1", 2)), Fault(capped("row 1", 1))));
  EXPECT_THAT(worse.faults_on(0),
              ElementsAre(Fault(capped("row 1", 1)), Fault(head_off("row 1", 2))));
  EXPECT_THAT(mended.faults(), IsEmpty());
  EXPECT_THAT(mended.faults_on(0), IsEmpty());
  EXPECT_EQ(mended.lines(), sound_layout.lines());
  EXPECT_EQ(solve(mended).inflow(), solve(sound_layout).inflow());
  EXPECT_GT(solve(broken).inflow(), solve(sound_layout).inflow());
}

// ---- other lines

TEST(LayoutLines, ALineIsAddedOrTakesThePlaceOfItsNamesake) {
  const Layout layout = with_two_rows();
  const Line longer = [&] {
    Line line = layout.line("row 1");
    line.count = 5;
    return line;
  }();
  const Layout changed = layout.with_fault(capped("row 1", 3)).with_line(longer);
  EXPECT_EQ(changed.line("row 1").count, 5);
  EXPECT_EQ(changed.index_of("row 1"), layout.index_of("row 1"));
  EXPECT_EQ(changed.lines().size(), layout.lines().size());
  EXPECT_THAT(changed.faults(), ElementsAre(Fault(capped("row 1", 3))));
  EXPECT_EQ(layout.line("row 1").count, 3);

  const Layout grown = layout.with_line(row("row 9"));
  EXPECT_EQ(grown.lines().size(), layout.lines().size() + 1);
  EXPECT_EQ(grown.lines().back(), row("row 9"));
  EXPECT_EQ(grown.without("row 9"), layout);
}

TEST(LayoutLines, ALineThatAFaultNoLongerFitsIsRefused) {
  const Layout broken = with_two_rows().with_fault(capped("row 1", 3));
  Line shorter = broken.line("row 1");
  shorter.count = 2;
  EXPECT_THAT(texts_of(problems_of([&] { broken.with_line(shorter); })),
              ElementsAre("fault 1: outlet: is 3, must be from 1 to 2"));
}

TEST(LayoutLines, ALineGoesWithItsFaults) {
  const Layout broken =
      with_two_rows().with_faults({capped("row 1", 3), capped("spray", 1), worn("row 1", 1, 0.1)});
  EXPECT_THAT(broken.without("row 1").faults(), ElementsAre(Fault(capped("spray", 1))));
  EXPECT_EQ(broken.without("row 1").lines().size(), broken.lines().size() - 1);
  EXPECT_THAT(texts_of(problems_of([&] { broken.without("row 9"); })),
              ElementsAre(HasSubstr("line: \"row 9\" is not in this layout")));
}

TEST(LayoutLines, ALineThatFeedsAnotherOrIsTheOnlyOneStays) {
  Line fed = row("row 9");
  fed.fed_by = "main";
  const Layout layout = with_two_rows().with_line(fed);
  EXPECT_THAT(texts_of(problems_of([&] { layout.without("main"); })),
              ElementsAre(HasSubstr("line \"row 9\": fed_by: is \"main\", but there is no such")));
  const Layout single = sound().make();
  EXPECT_THAT(texts_of(problems_of([&] { single.without(single.lines().front().name); })),
              ElementsAre(HasSubstr("lines: there is none")));
}

TEST(Layout, IsTheSameWhenAllPartsAre) {
  const Layout layout = with_two_rows();
  EXPECT_EQ(layout, with_two_rows());
  EXPECT_NE(layout, layout.with_fault(capped("row 1", 1)));
  EXPECT_NE(layout, layout.without("spray"));
  const auto with = [&](Supply supply, Water water, Site site) {
    return Layout(std::move(supply), layout.lines(), std::move(water), std::move(site));
  };
  EXPECT_EQ(layout, with(layout.supply(), layout.water(), layout.site()));
  EXPECT_NE(layout, with({.pressure = 1 * bar}, layout.water(), layout.site()));
  EXPECT_NE(layout, with(layout.supply(), {.temperature = 4 * degC}, layout.site()));
  EXPECT_NE(layout, with(layout.supply(), layout.water(), {.name = "another"}));
}

// ---- what a Layout tells of itself

TEST(Layout, KeepsWhatItWasGivenAfterTheGiverIsGone) {
  const Parts given = sound();
  std::optional<Layout> first(given.make());
  const Layout copy = *first;
  first.reset();
  EXPECT_EQ(copy.lines(), given.lines);
  EXPECT_EQ(copy.supply(), given.supply);
  EXPECT_EQ(copy.water(), given.water);
  EXPECT_EQ(copy.site(), given.site);
  EXPECT_EQ(copy.units(), UnitSystem::si);
}

TEST(Layout, FindsLinesByNameAndFollowsTheGround) {
  Parts parts{.supply = {.pressure = 40 * psi, .elevation = 100 * units::m},
              .lines = {row("row 1", "main"), main_line("main")},
              .water = {},
              .site = {}};
  parts.lines[0].ground_rise = -3 * units::m;
  parts.lines[1].ground_rise = 2 * units::m;
  const Layout layout = parts.make();
  EXPECT_EQ(layout.index_of("main"), 1u);
  EXPECT_EQ(layout.line("row 1"), parts.lines[0]);
  EXPECT_EQ(layout.feeder_of(0), 1u);
  EXPECT_EQ(layout.feeder_of(1), std::nullopt);
  EXPECT_THAT(layout.outward_order(), ElementsAre(1, 0));
  EXPECT_EQ(layout.outlet_count(), 3);
  EXPECT_DOUBLE_EQ(layout.inlet_elevation(0) / units::m, 102);
  EXPECT_DOUBLE_EQ(layout.outlet_elevation(0, 1) / units::m, 101);
  EXPECT_DOUBLE_EQ(layout.outlet_elevation(0, 3) / units::m, 99);
  EXPECT_THAT(texts_of(problems_of([&] { layout.line("row 9"); })),
              ElementsAre(AllOf(HasSubstr("\"row 9\" is not in this layout"),
                                HasSubstr("\"row 1\", \"main\""))));
}

}  // namespace
}  // namespace hydro
