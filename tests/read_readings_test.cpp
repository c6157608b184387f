// read_readings_test.cpp: what was read and seen, from the description file.
#include "hydro/text/read_readings.hpp"

#include "hydro/text/read_layout.hpp"

#include <ostream>
#include <string>

#include "sample_layouts.hpp"
#include <gmock/gmock.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

Layout farm() {
  return pumped_farm().watering({"low"});
}

TEST(ReadReadings, EveryKeyIsAField) {
  const Readings read = read_readings_text(R"(
[[reading]]
place = "supply gauge"
pressure = "36 psi"
pressure_error = "0.5 psi"
gauge = "new dial"
[[reading]]
place = "bucket"
line = "row 2"
outlet = 7
volume = "5 gal"
time = "90 s"
time_error = "1 s"
[[reading]]
place = "meter"
flow = "95 gpm"
flow_error = 0.03
[[reading]]
place = "engine"
speed = "2210 rpm"
speed_error = 0.02
[[sight]]
seen = "not turning"
line = "row 1"
outlet = 3
to_outlet = 6
width = "3 psi"
doubt = 0.1
)",
                                           farm());
  const Readings expected{
      {{.place = ReadingPlace::supply_gauge,
        .pressure = 36 * psi,
        .pressure_error = 0.5 * psi,
        .gauge = "new dial"},
       {.place = ReadingPlace::bucket,
        .line = "row 2",
        .outlet = 7,
        .volume = 5 * gallon,
        .time = 90 * units::s,
        .time_error = 1 * units::s},
       {.place = ReadingPlace::meter, .flow = 95 * gpm, .flow_error = 0.03},
       {.place = ReadingPlace::engine, .speed = 2210 * rpm, .speed_error = 0.02}},
      {{.seen = Seen::not_turning,
        .line = "row 1",
        .outlet = 3,
        .to_outlet = 6,
        .width = 3 * psi,
        .doubt = 0.1}}};
  EXPECT_EQ(read.readings, expected.readings);
  EXPECT_EQ(read.sights, expected.sights);
}

TEST(ReadReadings, EveryPlaceAndSightHasItsWord) {
  for (int i = 0; i <= static_cast<int>(ReadingPlace::engine); ++i) {
    const auto place = static_cast<ReadingPlace>(i);
    const std::string told = refusal([&] {
      read_readings_text("[[reading]]\nplace = \"" + std::string(words_of(place)) + "\"\n", farm());
    });
    EXPECT_THAT(told, Not(HasSubstr("accepted are"))) << words_of(place);
  }
  for (int i = 0; i <= static_cast<int>(Seen::wet_spot); ++i) {
    const auto seen = static_cast<Seen>(i);
    const Readings read = read_readings_text(
        "[[sight]]\nline = \"row 1\"\noutlet = 1\nseen = \"" + std::string(words_of(seen)) + "\"\n",
        farm());
    EXPECT_EQ(read.sights.at(0).seen, seen);
  }
}

TEST(ReadReadings, AFileOfALayoutMayHaveThem) {
  const std::string text =
      "[supply]\npressure = \"40 psi\"\n"
      "[pipe.lateral]\ninside_diameter = \"1.754 in\"\nhazen_williams = 150\n"
      "[outlet.head]\nflow = \"3.5 gpm\"\nat = \"25 psi\"\n"
      "[[line]]\nname = \"row 1\"\npipe = \"lateral\"\noutlet = \"head\"\ncount = 3\n"
      "spacing = \"30 ft\"\n"
      "[[reading]]\nplace = \"flush end\"\nline = \"row 1\"\npressure = \"30 psi\"\n"
      "[[sight]]\nseen = \"dry\"\nline = \"row 1\"\noutlet = 3\n";
  const Layout layout = read_layout_text(text);
  const Readings read = read_readings_text(text, layout);
  EXPECT_EQ(read.readings.size(), 1U);
  EXPECT_EQ(read.sights.size(), 1U);
  EXPECT_EQ(read_readings_text("", layout), Readings{});
}

struct BadReadings {
  const char* name;
  const char* text;
  const char* expected;
};

void PrintTo(const BadReadings& bad, std::ostream* out) {
  *out << bad.name;
}

class ReadReadingsBad : public testing::TestWithParam<BadReadings> {};

TEST_P(ReadReadingsBad, IsRefusedWithItsPlace) {
  const std::string told =
      refusal([] { read_readings_text(GetParam().text, farm(), "walk.toml"); });
  EXPECT_THAT(told, HasSubstr(GetParam().expected));
  EXPECT_THAT(told, Not(HasSubstr("\n"))) << "one mistake is told once";
}

INSTANTIATE_TEST_SUITE_P(
    All,
    ReadReadingsBad,
    testing::Values(
        BadReadings{"no_place",
                    "[[reading]]\npressure = \"3 psi\"\n",
                    "walk.toml:1:1: reading 1: place: is not given; accepted are \"supply gauge\", "
                    "\"after filter\""},
        BadReadings{"unknown_place",
                    "[[reading]]\nplace = \"pump\"\npressure = \"3 psi\"\n",
                    "walk.toml:2:9: reading 1: place: is \"pump\"; accepted are \"supply gauge\""},
        BadReadings{"bare_place",
                    "[[reading]]\nplace = 3\npressure = \"3 psi\"\n",
                    "walk.toml:2:9: reading 1: place: is the bare number 3"},
        BadReadings{"no_such_line",
                    "[[reading]]\nplace = \"flush end\"\nline = \"row 9\"\npressure = \"3 psi\"\n",
                    "walk.toml:3:8: reading 1: line: is \"row 9\", must be one of"},
        BadReadings{"no_such_outlet",
                    "[[reading]]\nplace = \"pipe\"\nline = \"row 1\"\noutlet = 11\n"
                    "pressure = \"3 psi\"\n",
                    "walk.toml:4:10: reading 1: outlet: is 11"},
        BadReadings{"wrong_dimension",
                    "[[reading]]\nplace = \"supply gauge\"\npressure = \"3 ft\"\n",
                    "walk.toml:3:12: reading 1: pressure: "},
        BadReadings{"zero_error",
                    "[[reading]]\nplace = \"supply gauge\"\npressure = \"3 psi\"\n"
                    "pressure_error = \"0 psi\"\n",
                    "walk.toml:4:18: reading 1: pressure_error: \"0 psi\" is "},
        BadReadings{"negative_time",
                    "[[reading]]\nplace = \"bucket\"\nline = \"row 1\"\noutlet = 1\n"
                    "volume = \"5 gal\"\ntime = \"-3 s\"\n",
                    "walk.toml:6:8: reading 1: time: \"-3 s\" is "},
        BadReadings{"unknown_key",
                    "[[reading]]\nplace = \"supply gauge\"\npresure = \"3 psi\"\n"
                    "pressure = \"3 psi\"\n",
                    "walk.toml:3:1: reading 1: \"presure\": is not a key known here"},
        BadReadings{"misspelt_table",
                    "[[readings]]\nplace = \"supply gauge\"\n",
                    "walk.toml:1:3: \"readings\": is not a key known here; accepted are reading, "
                    "sight"},
        BadReadings{"contradiction",
                    "[[reading]]\nplace = \"supply gauge\"\npressure = \"36 psi\"\n"
                    "[[reading]]\nplace = \"supply gauge\"\npressure = \"46 psi\"\n",
                    "walk.toml:4:1: reading 2: supply gauge: contradicts reading 1"},
        BadReadings{
            "unknown_sight",
            "[[sight]]\nseen = \"spinning\"\nline = \"row 1\"\noutlet = 1\n",
            "walk.toml:2:8: sight 1: seen: is \"spinning\"; accepted are \"turning\", \"not "
            "turning\", \"dry\", \"plume\", \"wet spot\""},
        BadReadings{"backward_sight",
                    "[[sight]]\nseen = \"turning\"\nline = \"row 1\"\noutlet = 5\nto_outlet = 3\n",
                    "walk.toml:5:13: sight 1: to_outlet: is 3"}),
    [](const auto& it) { return std::string(it.param.name); });

TEST(ReadReadings, AllMistakesAreToldAtOnce) {
  const std::string told = refusal([] {
    read_readings_text(
        "[[reading]]\nplace = \"pump\"\n[[sight]]\nseen = \"turning\"\nline = \"row 9\"\n"
        "outlet = 1\n",
        farm());
  });
  EXPECT_THAT(told, AllOf(HasSubstr("reading 1"), HasSubstr("sight 1"), HasSubstr("row 9")));
}

TEST(ReadReadings, AFileThatIsNotThereIsRefused) {
  EXPECT_THAT(refusal([] { read_readings("no_such_file.toml", farm()); }),
              HasSubstr("does not exist"));
  EXPECT_THAT(refusal([] { read_readings("", farm()); }), Not(IsEmpty()));
}

}  // namespace
}  // namespace hydro
