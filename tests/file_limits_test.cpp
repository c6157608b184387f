// file_limits_test.cpp: what a description file may hold at most, each bound at it and one beyond.
#include "hydro/text/file_limits.hpp"

#include "hydro/text/read_blocks.hpp"
#include "hydro/text/read_layout.hpp"
#include "hydro/text/read_readings.hpp"

#include <functional>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

std::string repeated(const std::string& text, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

/// N things, each with its number in the place of the #.
std::string numbered(const std::string& text, int times) {
  std::string all;
  for (int i = 1; i <= times; ++i) {
    all += text;
    for (std::size_t at; (at = all.find('#')) != std::string::npos;)
      all.replace(at, 1, std::to_string(i));
  }
  return all;
}

std::vector<std::string> mistakes_of(const std::function<void()>& read) {
  try {
    read();
  } catch (const InvalidInput& error) {
    std::vector<std::string> texts;
    for (const Problem& problem : error.problems()) texts.push_back(problem.text());
    return texts;
  }
  return {};
}

std::vector<std::string> mistakes_in(const std::string& text, const FileLimits& limits = {}) {
  return mistakes_of([&] { read_layout_text(text, "f", limits); });
}

/// A sound description, whose first line has three outlets.
const std::string farm = R"([supply]
pressure = "40 psi"
[pipe.wide]
inside_diameter = "2 in"
hazen_williams = 150
[outlet.spray]
flow = "2 gpm"
at = "30 psi"
[[line]]
name = "first"
pipe = "wide"
outlet = "spray"
count = 3
spacing = "6 ft"
)";

const std::string more_outlets_of =
    "[[line]]\nname = \"b\"\npipe = \"wide\"\noutlet = \"spray\"\nspacing = \"6 ft\"\n";

struct Bound {
  const char* name;
  int FileLimits::*bound;
  std::function<std::string(int)> with;  ///< a sound file that holds so many
  int at_least;                          ///< that the file holds anyway
  const char* told;                      ///< by the mistake when there are 4 and 3 are accepted
};

void PrintTo(const Bound& bound, std::ostream* stream) {
  *stream << bound.name;
}

class FileLimitsOf : public testing::TestWithParam<Bound> {};

TEST_P(FileLimitsOf, AcceptTheMostAndRefuseOneMore) {
  const auto& [name, bound, with, at_least, told] = GetParam();
  FileLimits limits;
  limits.*bound = at_least + 3;
  EXPECT_THAT(mistakes_in(with(at_least + 3), limits), IsEmpty());
  EXPECT_THAT(mistakes_in(with(at_least + 4), limits), testing::Contains(HasSubstr(told)));
  limits.*bound = at_least + 4;
  EXPECT_THAT(mistakes_in(with(at_least + 4), limits), IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(
    All,
    FileLimitsOf,
    testing::Values(
        Bound{"Bytes",
              &FileLimits::bytes,
              [](int n) { return farm + std::string(std::size_t(n) - farm.size(), '\n'); },
              static_cast<int>(farm.size()),
              "f: has more than "},
        Bound{"Texts",
              &FileLimits::text,
              [](int n) { return "name = \"" + std::string(std::size_t(n), 'n') + "\"\n" + farm; },
              20,
              "f:1:32: has a text or a word of more than 23 bytes"},
        Bound{"LongTexts",
              &FileLimits::text,
              [](int n) {
                return "name = \"\"\"\n" + std::string(std::size_t(n) - 1, 'n') + "\"\"\"\n" + farm;
              },
              20,
              "has a text or a word of more than 23 bytes"},
        Bound{"Kinds of pipe",
              &FileLimits::definitions,
              [](int n) {
                return farm +
                       numbered("[pipe.p#]\ninside_diameter = \"2 in\"\nhazen_williams = 150\n",
                                n - 1);
              },
              1,
              "f:3:1: pipe: there are 5, must be at most 4"},
        Bound{"Kinds of outlet",
              &FileLimits::definitions,
              [](int n) {
                return farm + numbered("[outlet.o#]\nflow = \"2 gpm\"\nat = \"30 psi\"\n", n - 1);
              },
              1,
              "outlet: there are 5, must be at most 4"},
        Bound{"Further supplies",
              &FileLimits::supplies,
              [](int n) {
                return farm +
                       numbered("[[further_supply]]\nname = \"s#\"\npressure = \"9 psi\"\n", n);
              },
              0,
              "further_supply: there are 4, must be at most 3"},
        Bound{"Lines",
              &FileLimits::lines,
              [](int n) {
                return farm + numbered(
                                  "[[line]]\nname = \"l#\"\npipe = \"wide\"\nlength = \"9 "
                                  "ft\"\n",
                                  n - 1);
              },
              1,
              "line: there are 5, must be at most 4"},
        Bound{"Outlets of all lines",
              &FileLimits::outlets,
              [](int n) { return farm + more_outlets_of + "count = " + std::to_string(n - 3); },
              3,
              "lines: count: adds up to 7 outlets, must be at most 6"},
        Bound{"Outlets of one line",
              &FileLimits::outlets,
              [](int n) {
                return farm.substr(0, farm.find("outlet = ")) + "outlets = [" +
                       numbered("{ place = \"# m\", outlet = \"spray\" }, ", n) + "]\n";
              },
              0,
              "line \"first\": outlets: there are 4, must be at most 3"},
        Bound{"Elevations",
              &FileLimits::outlets,
              [](int n) {
                return farm + more_outlets_of + "count = " + std::to_string(n - 3) +
                       "\nelevations = [" + repeated("\"1 m\", ", n - 3) + "]\n";
              },
              3,
              "must be at most 6"},
        Bound{"Reaches",
              &FileLimits::reaches,
              [](int n) {
                return farm + "reaches = [" + numbered("{ pipe = \"wide\", to = \"# ft\" }, ", n) +
                       "]\n";
              },
              0,
              "line \"first\": reaches: there are 4, must be at most 3"},
        Bound{"Points of an outlet",
              &FileLimits::points,
              [](int n) {
                return farm + "[outlet.by_points]\nrated = \"3 psi\"\npoints = [" +
                       numbered("[\"# psi\", \"# gpm\"], ", n) + "]\n";
              },
              0,
              "outlet \"by_points\": points: there are 4, must be at most 3"},
        Bound{"Points of a pump",
              &FileLimits::points,
              [](int n) {
                std::string points;
                for (int i = 0; i < n; ++i)
                  points += "[\"" + std::to_string(10 * i) + " gpm\", \"" +
                            std::to_string(90 - 10 * i) + " ft\"], ";
                return "[supply.pump]\npoints = [" + points + "]\n" +
                       farm.substr(farm.find("[pipe"));
              },
              0,
              "supply: pump.points: there are 4, must be at most 3"},
        Bound{"Sets",
              &FileLimits::sets,
              [](int n) {
                return farm + numbered("[[set]]\nname = \"s#\"\nlines = [\"first\"]\n", n);
              },
              0,
              "set: there are 4, must be at most 3"},
        Bound{"Faults",
              &FileLimits::faults,
              [](int n) {
                std::string text = farm;
                text.replace(text.find("count = 3"), 9, "count = 9");
                return text +
                       numbered("[[fault]]\nline = \"first\"\noutlet = #\nkind = \"capped\"\n", n);
              },
              0,
              "fault: there are 4, must be at most 3"}),
    [](const auto& instance) {
      std::string name = instance.param.name;
      for (char& c : name)
        if (c == ' ') c = '_';
      return name;
    });

TEST(FileLimits, CountValuesBeforeTheyAreMade) {
  // name, =, [, and a comma for each element, the last one too
  EXPECT_THAT(mistakes_in("a = [" + repeated("1,", 8) + "]\n", {.values = 9}),
              ElementsAre("f:1:21: has more than 9 values, keys and tables in all"));
  EXPECT_THAT(mistakes_in("a = [" + repeated("1,", 8) + "]\n", {.values = 10}),
              testing::Contains(HasSubstr("is not a key known here")));
}

TEST(FileLimits, CountWhatIsNested) {
  const FileLimits three{.nesting = 3};
  for (const char* fits : {"a = [[[1]]]", "a.b.c.d = 1", "[[a.b]]", "a = { b = [{ c = 1 }] }"})
    EXPECT_THAT(mistakes_in(fits, three), Not(testing::Contains(HasSubstr("in one another"))))
        << fits;
  for (const char* deep :
       {"a = [[[[1]]]]", "a.b.c.d.e = 1", "[[a.b.c]]", "a = { b = [{ c = { d = 1 } }] }"})
    EXPECT_THAT(mistakes_in(deep, three),
                ElementsAre(EndsWith("has more than 3 lists, tables and parts of a dotted key in "
                                     "one another")))
        << deep;
}

TEST(FileLimits, DoNotTakeNumbersInALineForNesting) {
  const std::string points =
      "efficiencies = [" + repeated("[\"1.5 gpm\", 0.5], ", 50) + "]";  // 50 dots beside texts
  EXPECT_THAT(mistakes_in(points, {.nesting = 3}),
              Not(testing::Contains(HasSubstr("in one another"))));
}

TEST(FileLimits, EndReadingAtSoManyMistakes) {
  const std::vector<std::string> found =
      mistakes_in(farm + numbered("k# = 1\n", 9), {.mistakes = 5});
  ASSERT_THAT(found, SizeIs(6));
  EXPECT_EQ(found.back(), "f: has 5 mistakes at least; it was read no further");
  EXPECT_THAT(mistakes_in(farm + numbered("k# = 1\n", 4), {.mistakes = 5}), SizeIs(4));
}

TEST(FileLimits, ApplyToReadingsAndSights) {
  const Layout layout = read_layout_text(farm);
  const std::string reading = "[[reading]]\nplace = \"supply gauge\"\npressure = \"9 psi\"\n";
  const std::string sight = "[[sight]]\nseen = \"dry\"\nline = \"first\"\noutlet = #\n";
  const auto found = [&](const std::string& text) {
    return mistakes_of([&] { read_readings_text(text, layout, "f", {.readings = 2}); });
  };
  EXPECT_THAT(found(reading + numbered(sight, 2)), IsEmpty());
  EXPECT_THAT(found(repeated(reading, 3)),
              ElementsAre(HasSubstr("reading: there are 3, must be at most 2")));
  EXPECT_THAT(found(numbered(sight, 3)),
              ElementsAre(HasSubstr("sight: there are 3, must be at most 2")));
}

TEST(FileLimits, ApplyToBlocks) {
  const std::string block =
      "[block.b#]\nlines = []\ncrop_coefficient = 1\nroot_depth = \"1 m\"\nallowed_depletion = "
      "0.5\nsoil = \"loam\"\narea = \"9 m2\"\n";
  const auto found = [&](int blocks, const FileLimits& limits) {
    return mistakes_of([&] { read_blocks_text(numbered(block, blocks), "f", limits); });
  };
  EXPECT_THAT(found(3, {.definitions = 2}),
              ElementsAre(HasSubstr("block: there are 3, must be at most 2")));
  EXPECT_THAT(found(3, {.definitions = 3}), Not(testing::Contains(HasSubstr("must be at most"))));
}

TEST(FileLimits, ApplyToAFaultInALine) {
  EXPECT_THAT(
      mistakes_of([] { read_fault("line = \"" + std::string(30, 'a') + "\"", {}, {.text = 29}); }),
      ElementsAre(
          testing::AllOf(testing::StartsWith("fault:1:38: "), HasSubstr("more than 29 bytes"))));
}

TEST(FileLimits, AreExaminedThemselves) {
  EXPECT_THAT(problems(FileLimits{}), IsEmpty());
  EXPECT_THAT(mistakes_in(farm,
                          {.bytes = 0,
                           .values = 0,
                           .nesting = 201,
                           .text = -1,
                           .mistakes = 0,
                           .definitions = -1,
                           .supplies = -1,
                           .lines = -1,
                           .outlets = -1,
                           .reaches = -1,
                           .points = -1,
                           .sets = -1,
                           .faults = -1,
                           .readings = -1}),
              ElementsAre("bytes: is 0, must be from 1 to 1073741824",
                          "values: is 0, must be from 1 to 100000000",
                          "nesting: is 201, must be from 1 to 200",
                          "text: is -1, must be from 1 to 1073741824",
                          "mistakes: is 0, must be from 1 to 100000000",
                          "definitions: is -1, must be from 0 to 100000000",
                          "supplies: is -1, must be from 0 to 100000000",
                          "lines: is -1, must be from 0 to 100000000",
                          "outlets: is -1, must be from 0 to 100000000",
                          "reaches: is -1, must be from 0 to 100000000",
                          "points: is -1, must be from 0 to 100000000",
                          "sets: is -1, must be from 0 to 100000000",
                          "faults: is -1, must be from 0 to 100000000",
                          "readings: is -1, must be from 0 to 100000000"));
}

TEST(FileLimits, OfALayoutStand) {
  EXPECT_THAT(mistakes_in(farm + more_outlets_of + "count = 1000000", {.outlets = 2'000'000}),
              ElementsAre(HasSubstr("adds up to 1000003 outlets, must be at most 1000000")));
}

}  // namespace
}  // namespace hydro
