// csv_test.cpp: the table is the solution bit for bit, and is CSV as RFC 4180 has it.
#include "hydro/text/csv.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/solver/solve.hpp"

#include <algorithm>
#include <charconv>
#include <limits>
#include <map>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

#include "random_layout.hpp"
#include "sample_layouts.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::Each;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;
using testing::StartsWith;

using Rows = std::vector<std::vector<std::string>>;

/// One field, taken off the front: RFC 4180, section 2, rules 5 to 7.
std::string next_field(std::string_view& rest) {
  std::string field;
  if (!rest.starts_with('"')) {
    const std::size_t end = std::min(rest.find_first_of(",\r\n\""), rest.size());
    field = rest.substr(0, end);
    rest.remove_prefix(end);
    return field;
  }
  rest.remove_prefix(1);
  while (!rest.empty() && (rest.front() != '"' || rest.starts_with("\"\""))) {
    field += rest.front();
    rest.remove_prefix(rest.front() == '"' ? 2 : 1);
  }
  EXPECT_TRUE(rest.starts_with('"')) << "quotes are closed";
  rest.remove_prefix(std::min<std::size_t>(1, rest.size()));
  return field;
}

/// Rules 1 to 4: each record ends in CR LF, also the last one; all have as many fields.
Rows rows_of(const std::string& text) {
  Rows rows;
  std::string_view rest = text;
  while (!rest.empty()) {
    rows.emplace_back();
    rows.back().push_back(next_field(rest));
    while (rest.starts_with(',')) {
      rest.remove_prefix(1);
      rows.back().push_back(next_field(rest));
    }
    EXPECT_TRUE(rest.starts_with("\r\n")) << rest.substr(0, 20);
    if (!rest.starts_with("\r\n")) break;
    rest.remove_prefix(2);
  }
  EXPECT_THAT(rows, Each(SizeIs(rows.at(0).size())));
  return rows;
}

double number_in(const std::string& cell) {
  double number = std::numeric_limits<double>::quiet_NaN();
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), number);
  EXPECT_TRUE(error == std::errc{} && end == cell.data() + cell.size()) << cell;
  return number;
}

/// How many digits a decimal has between the zeros before and behind.
std::size_t digits_in(std::string_view decimal) {
  std::string digits;
  for (const char c : decimal.substr(0, decimal.find('e')))
    if (c >= '0' && c <= '9') digits += c;
  const std::size_t first = digits.find_first_not_of('0');
  return first == std::string::npos ? 0 : digits.find_last_not_of('0') - first + 1;
}

/// std::to_chars gives the shortest decimal that reads back to the same double.
bool is_shortest(const std::string& cell) {
  char shortest[32];
  const auto end = std::to_chars(shortest, shortest + sizeof shortest, number_in(cell)).ptr;
  return digits_in(cell) == digits_in({shortest, end});
}

void expect_readings(const std::vector<std::string>& row,
                     std::size_t column,
                     const LineSolution& solved,
                     std::size_t i) {
  ASSERT_EQ(bits(number_in(row[column])), bits(si(solved.pressure[i])));
  ASSERT_EQ(bits(number_in(row[column + 1])), bits(si(solved.line_pressure[i])));
  ASSERT_EQ(bits(number_in(row[column + 2])), bits(si(solved.flow[i])));
  ASSERT_EQ(bits(number_in(row[column + 3])), bits(si(solved.velocity[i])));
  for (std::size_t c = column; c < column + 4; ++c) ASSERT_TRUE(is_shortest(row[c])) << row[c];
}

/// @param before null for a table of one solution
void expect_is_solution(const Rows& rows, const Solution* before, const Solution& solution) {
  std::size_t r = 1;
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    const LineSolution& solved = solution.lines()[l];
    for (std::size_t i = 0; i < solved.state.size(); ++i, ++r) {
      ASSERT_LT(r, rows.size());
      ASSERT_THAT(rows[r], SizeIs(before ? 16 : 11));
      const Outlet& kind = solution.layout().outlet_at(l, static_cast<int>(i) + 1);
      ASSERT_EQ(rows[r][0], solved.name);
      ASSERT_EQ(rows[r][1], std::to_string(i + 1));
      ASSERT_EQ(rows[r][2], kind.name);
      ASSERT_EQ(bits(number_in(rows[r][3])), bits(si(kind.rated_pressure())));
      ASSERT_EQ(bits(number_in(rows[r][4])),
                bits(si(discharge(kind, kind.rated_pressure(), solution.water().density))));
      ASSERT_EQ(bits(number_in(rows[r][5])), bits(si(solved.distance[i])));
      expect_readings(rows[r], 6, solved, i);
      if (before) expect_readings(rows[r], 11, before->lines()[l], i);
    }
  }
  EXPECT_EQ(r, rows.size()) << "no row but the outlets'";
}

TEST(Csv, NamesItsColumnsAndTheirUnits) {
  const Layout layout = with_all_states();
  const std::string columns =
      "line,outlet,kind,rated_pressure_pa,rated_flow_m3_per_s,distance_m,pressure_pa,"
      "line_pressure_pa,flow_m3_per_s,velocity_m_per_s,state";
  EXPECT_THAT(to_csv(solve(layout)), StartsWith(columns + "\r\nlevel,1,turning head,"));
  EXPECT_THAT(
      to_csv(solve(layout.without_faults()), solve(layout)),
      StartsWith(columns + ",before_pressure_pa,before_line_pressure_pa,before_flow_m3_per_s,"
                           "before_velocity_m_per_s,before_state\r\nlevel,1,"));
}

TEST(Csv, IsTheSolutionBitForBit) {
  const Solution after = solve(with_all_states());
  const Solution before = solve(with_all_states().without_faults());
  expect_is_solution(rows_of(to_csv(after)), nullptr, after);
  expect_is_solution(rows_of(to_csv(before, after)), &before, after);
}

TEST(Csv, IsAnySolutionBitForBit) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    SCOPED_TRACE(seed);
    const Solution solution = solve(random_layout(seed));
    expect_is_solution(rows_of(to_csv(solution)), nullptr, solution);
  }
}

TEST(Csv, TellsWhichOutletsAreShutWithTheirLine) {
  int shut = 0;
  for (const auto& row : rows_of(to_csv(solve(pumped_farm().watering({"low"}))))) {
    const bool is_of_the_other_set = row[0] == "row 3" || row[0] == "row 4";
    EXPECT_EQ(row[10] == "shut", is_of_the_other_set) << row[0];
    shut += is_of_the_other_set ? 1 : 0;
  }
  EXPECT_EQ(shut, 20);
}

TEST(Csv, TellsEveryState) {
  const Layout layout = with_all_states();
  std::map<std::string, int> after;
  std::map<std::string, int> before;
  for (const auto& row : rows_of(to_csv(solve(layout.without_faults()), solve(layout)))) {
    ++after[row[10]];
    ++before[row[15]];
  }
  for (const char* state :
       {"below_rated", "below_minimum", "above_maximum", "dry", "capped", "broken"})
    EXPECT_GT(after[state], 0) << state;
  EXPECT_GT(before["works"], 0);
  EXPECT_EQ(before["broken"] + before["capped"], 0);
}

TEST(Csv, KeepsNamesWhateverTheyContain) {
  const std::vector<std::string> names{"a, b",
                                       "the \"long\" row",
                                       "\"",
                                       "<&>'",
                                       "Reihe f\xC3\xBCnf \xE2\x80\x94 \xE6\xB0\xB4",
                                       "=1+1",
                                       "not \xFF UTF-8"};
  std::vector<Line> lines;
  for (const std::string& name : names) {
    lines.push_back(sample_row(name, 2));
    lines.back().outlet->name = name;
  }
  const Solution solution = solve(sample_layout(lines));
  expect_is_solution(rows_of(to_csv(solution)), nullptr, solution);
  EXPECT_THAT(to_csv(solution), HasSubstr("\r\n\"the \"\"long\"\" row\",1,\"the"));
}

TEST(Csv, TakesManyOutlets) {
  const Solution solution = solve(many_outlets(100'000));
  expect_is_solution(rows_of(to_csv(solution)), nullptr, solution);
}

TEST(Csv, OfALayoutWithoutOutletsIsTheHeader) {
  EXPECT_THAT(rows_of(to_csv(solve(sample_layout({sample_main()})))), SizeIs(1));
}

TEST(Csv, RefusesWhatIsNoNumber) {
  const Solution good = solve(sample_layout({sample_row("row 1", 2)}));
  for (const double wrong :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    const auto names_it =
        AllOf(HasSubstr("line \"row 1\": outlet 1: pressure: is "), HasSubstr("finite"));
    EXPECT_THAT(refusal([&] { to_csv(spoilt_solution(wrong)); }), names_it);
    EXPECT_THAT(refusal([&] { to_csv(good, spoilt_solution(wrong)); }), names_it);
    EXPECT_THAT(refusal([&] { to_csv(spoilt_solution(wrong), good); }), names_it);
  }
}

TEST(Csv, RefusesTwoThatDoNotMatch) {
  EXPECT_THROW(to_csv(solve(sample_layout({sample_row("a", 2)})),
                      solve(sample_layout({sample_row("a", 3)}))),
               InvalidInput);
}

TEST(Csv, DoesNotHangOnTheLocale) {
  const Solution solution = solve(with_all_states());
  const std::string csv = to_csv(solution);
  const UnderCommas commas;
  EXPECT_EQ(to_csv(solution), csv);
}

}  // namespace
}  // namespace hydro
