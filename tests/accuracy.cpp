#include "accuracy.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace hydro {
namespace {

constexpr auto count = static_cast<std::size_t>(Accuracy::count);

struct Words {
  const char* quantity;
  const char* reference;
  const char* range;
};

constexpr std::array<Words, count> words{{
    {"density, viscosity, vapour pressure of water", "formulations of IAPWS", "0 to 100 degC"},
    {"head lost by Hazen-Williams",
     "a state code (off a chart, 4 %), EPA, a textbook",
     "1 to 3 in, 2 to 90 gal/min, C 140 and 150"},
    {"head lost by Darcy-Weisbach and in fittings",
     "6 textbooks, 4 university courses",
     "laminar, smooth, rough, factor given; 2 L/min to 0.5 m3/s"},
    {"friction factor of Colebrook-White",
     "2 textbooks, a package's documentation",
     "Re 80,000 to 400,000"},
    {"friction factor of smooth pipe",
     "measured by McKeon and others, scatter 5 %",
     "Re 110 to 790 and 4,800 to 1,050,000"},
    {"flow of outlets, nozzles, holes",
     "2 state codes, a university, an extension service, FAO, pump and fire institutes",
     "1/8 to 2-1/2 in, 1 ft to 85 psi, exponents 0.42 and 0.5"},
    {"flow through pipes under a head",
     "6 textbooks, a board review",
     "6 to 280 L/s, up to 3 pipes in series"},
    {"flows and heads of lines that part", "6 textbooks", "2 to 4 lines, up to 3 levels"},
    {"flows and heads of lines that join",
     "7 textbooks, 2 courses",
     "side by side, in series, rings; 2 or 3 levels"},
    {"head, power and pairs of pumps",
     "2 textbooks, 2 courses",
     "1,700 to 3,500 rpm; in series, in parallel"},
    {"NPSH available, pressure of the air",
     "a pump handbook, 2 trade papers, the US Standard Atmosphere",
     "0 to 3,000 m, 10 to 29 degC"},
    {"time in which a tank runs empty", "2 textbooks, 4 courses and exercises", "4 s to 25 h"},
    {"reference evapotranspiration, radiation, daylight",
     "examples of FAO-56",
     "5 climates, from all readings to two temperatures"},
    {"crop coefficient, water of the soil",
     "examples of FAO-56",
     "a season of beans; ten days of a tomato under stress"},
    {"application rate", "2 universities, a utility, a worksheet", "0.19 to 0.96 in/h"},
    {"surge", "3 textbooks, a lecture, pipe handbooks", "stopped at once, slowly and in part"},
    {"heads in random trees and pumped farms",
     "KINSOL, equations written anew",
     "share of the head there is"},
    {"flows in them", "the same", "share of the largest flow"},
    {"heads in random layouts with loops", "the same", "share of the head there is"},
    {"flows in them that a head feels", "the same", "share of the largest flow"},
}};

struct Seen {
  int figures = 0;
  double worst = 0;   // share of what was printed
  double beyond = 0;  // that of it which the rounding of the print does not explain
};

std::array<Seen, count> seen;

void note(Accuracy row, int figures, double worst, double beyond) {
  Seen& it = seen.at(static_cast<std::size_t>(row));
  it.figures += figures;
  if (!(worst <= it.worst)) it.worst = worst;
  if (!(beyond <= it.beyond)) it.beyond = beyond;
}

constexpr double rounding = 1e-14;       // of doubles, a few steps together
constexpr double of_the_machine = 1e-6;  // below it a difference is what arithmetic leaves

/// Rounded up: to two digits, or to a power of ten where another machine leaves another rest.
std::string rounded_up(double share) {
  if (share <= rounding) return "none";
  std::array<char, 32> text{};
  if (share < of_the_machine) {
    std::snprintf(text.data(), text.size(), "%.0e", std::pow(10, std::ceil(std::log10(share))));
    return text.data();
  }
  const double percent = 100 * share;
  const double unit = std::pow(10, std::floor(std::log10(percent)) - 1);
  const double up = std::ceil(percent / unit - 1e-9) * unit;
  std::snprintf(text.data(), text.size(), up < 10 ? "%#.2g %%" : "%.0f %%", up);
  return text.data();
}

/// How many, in hundreds where another machine may have a few more or less.
std::string counted(int figures) {
  return std::to_string(figures < 1000 ? figures : figures / 100 * 100);
}

double read(const std::string& figure) {
  if (figure == "none") return 0;
  const double value = std::strtod(figure.c_str(), nullptr);
  return figure.ends_with('%') ? value / 100 : value;
}

std::vector<std::string> cells_of(const Words& row, const Seen& it) {
  return {row.quantity,
          row.reference,
          row.range,
          counted(it.figures),
          rounded_up(it.worst),
          rounded_up(it.beyond)};
}

std::string line_of(const std::vector<std::string>& cells) {
  std::string line = "|";
  for (const std::string& cell : cells) line += ' ' + cell + " |";
  return line;
}

/// The rows of README under this heading of the table.
std::vector<std::vector<std::string>> stated(const std::string& readme,
                                             const std::string& heading) {
  std::ifstream file(readme);
  std::vector<std::vector<std::string>> rows;
  std::string line;
  while (std::getline(file, line) && line != heading) {
  }
  std::getline(file, line);  // |---|
  while (std::getline(file, line) && line.starts_with("| ") && line.ends_with(" |")) {
    std::vector<std::string> cells;
    for (std::size_t at = 2, end = 0; at < line.size(); at = end + 3) {
      end = line.find(" |", at);
      cells.push_back(line.substr(at, end - at));
    }
    rows.push_back(cells);
  }
  return rows;
}

/// Where README is named, its table is held to what the tests have found.
class Table : public testing::Environment {
 public:
  void TearDown() override {
    const char* readme = std::getenv("HYDRO_README");
    if (readme == nullptr) return;
    const std::string heading =
        line_of({"quantity", "against", "over", "figures", "worst difference", "beyond rounding"});
    std::string table = heading + "\n|---|---|---|---|---|---|\n";
    for (std::size_t i = 0; i < count; ++i) table += line_of(cells_of(words[i], seen[i])) + '\n';
    std::printf("%s", table.c_str());

    const std::vector<std::vector<std::string>> rows = stated(readme, heading);
    EXPECT_EQ(rows.size(), count) << "rows of README's table of accuracy, which should be as above";
    for (std::size_t i = 0; i < std::min(count, rows.size()); ++i)
      expect_stated(rows[i], seen[i], cells_of(words[i], seen[i]));
  }

 private:
  static void expect_stated(const std::vector<std::string>& row,
                            const Seen& it,
                            const std::vector<std::string>& found) {
    SCOPED_TRACE(found.front());
    EXPECT_GT(it.figures, 0) << "no check of this row has run";
    ASSERT_EQ(row.size(), found.size());
    for (const std::size_t word : {0U, 1U, 2U, 3U}) EXPECT_EQ(row[word], found[word]);
    for (const std::size_t figure : {4U, 5U}) {
      const double share = figure == 4 ? it.worst : it.beyond;
      if (share >= of_the_machine) {
        EXPECT_EQ(row[figure], found[figure]);
      }
      EXPECT_TRUE(share * (1 - 1e-9) <= read(row[figure]) + rounding)
          << row[figure] << " for " << share;
    }
  }
};

const auto* const table = testing::AddGlobalTestEnvironment(new Table);

}  // namespace

double record(Accuracy row, double got, double printed, double half_digit) {
  const double apart = std::abs(got - printed);
  if (!(apart == 0)) {
    note(row, 1, apart / std::abs(printed), std::max(0., apart - half_digit) / std::abs(printed));
  } else {
    note(row, 1, 0, 0);
  }
  return got;
}

void record_differences(Accuracy row, int compared, double worst) {
  note(row, compared, worst, worst);
}

}  // namespace hydro
