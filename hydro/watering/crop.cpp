#include "hydro/watering/crop.hpp"

#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <iterator>
#include <numeric>
#include <span>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

struct Stages {
  int initial;
  int development;
  int middle;
  int late;
  const char* planted;
  const char* region;
};

// Table 11. Of two printed lengths ("25/30") the one in the printed total, or both where both are.
constexpr Stages broccoli[] = {{35, 45, 40, 15, "September", "California desert"}};
constexpr Stages cabbage[] = {{40, 60, 50, 15, "September", "California desert"}};
constexpr Stages carrots[] = {{20, 30, 30, 20, "October to January", "arid climate"},
                              {30, 40, 60, 20, "February to March", "Mediterranean"},
                              {30, 50, 90, 30, "October", "California desert"}};
constexpr Stages cauliflower[] = {{35, 50, 40, 15, "September", "California desert"}};
constexpr Stages celery[] = {{25, 40, 95, 20, "October", "semi-arid"},
                             {25, 40, 45, 15, "April", "Mediterranean"},
                             {30, 55, 105, 20, "January", "semi-arid, January"}};
constexpr Stages lettuce[] = {{20, 30, 15, 10, "April", "Mediterranean, April"},
                              {30, 40, 25, 10, "November to January", "Mediterranean, winter"},
                              {25, 35, 30, 10, "October to November", "arid region"},
                              {35, 50, 45, 10, "February", "Mediterranean, February"}};
constexpr Stages dry_onions[] = {{15, 25, 70, 40, "April", "Mediterranean"},
                                 {20, 35, 110, 45, "October; January", "arid region; California"}};
constexpr Stages green_onions[] = {{25, 30, 10, 5, "April to May", "Mediterranean"},
                                   {20, 45, 20, 10, "October", "arid region"},
                                   {30, 55, 55, 40, "March", "California"}};
constexpr Stages spinach[] = {
    {20, 20, 15, 5, "April; September to October", "Mediterranean, short"},
    {20, 20, 25, 5, "April; September to October", "Mediterranean, long"},
    {20, 30, 40, 10, "November", "arid region"}};
constexpr Stages radishes[] = {{5, 10, 15, 5, "March to April", "Mediterranean; Europe"},
                               {10, 10, 15, 5, "winter", "arid region"}};
constexpr Stages egg_plants[] = {{30, 40, 40, 20, "October", "arid region"},
                                 {30, 45, 40, 25, "May to June", "Mediterranean"}};
constexpr Stages sweet_peppers[] = {{30, 35, 40, 20, "April to June", "Europe and Mediterranean"},
                                    {30, 40, 110, 30, "October", "arid region"}};
constexpr Stages tomatoes[] = {{30, 40, 40, 25, "January", "arid region, January"},
                               {35, 40, 50, 30, "April to May", "California, USA"},
                               {25, 40, 60, 30, "January", "California desert"},
                               {35, 45, 70, 30, "October to November", "arid region, autumn"},
                               {30, 40, 45, 30, "April to May", "Mediterranean"}};
constexpr Stages cantaloupes[] = {{30, 45, 35, 10, "January", "California, January"},
                                  {10, 60, 25, 25, "August", "California, August"}};
constexpr Stages cucumbers[] = {{20, 30, 40, 15, "June to August", "arid region, summer"},
                                {25, 35, 50, 20, "November; February", "arid region, winter"}};
constexpr Stages pumpkins[] = {{20, 30, 30, 20, "March; August", "Mediterranean"},
                               {25, 35, 35, 25, "June", "Europe"}};
constexpr Stages squash[] = {{25, 35, 25, 15, "April; December", "Mediterranean; arid region"},
                             {20, 30, 25, 15, "May to June", "Europe; Mediterranean, May to June"}};
constexpr Stages sweet_melons[] = {{25, 35, 40, 20, "May", "Mediterranean"},
                                   {30, 30, 50, 30, "March", "California, USA"},
                                   {15, 40, 65, 15, "August", "California desert"},
                                   {30, 45, 65, 20, "December to January", "arid region"}};
constexpr Stages watermelons[] = {{20, 30, 30, 30, "April", "Italy"},
                                  {10, 20, 20, 30, "May to August", "Near East desert"}};
constexpr Stages beets[] = {{15, 25, 20, 10, "April to May", "Mediterranean"},
                            {25, 30, 25, 10, "February to March", "Mediterranean and arid"}};
constexpr Stages potatoes[] = {{25, 30, 30, 30, "January to November", "semi-arid climate, short"},
                               {25, 30, 45, 30, "January to November", "semi-arid climate, long"},
                               {25, 30, 45, 30, "May", "continental climate"},
                               {30, 35, 50, 30, "April", "Europe"},
                               {45, 30, 70, 20, "April to May", "Idaho"},
                               {30, 35, 50, 25, "December", "California desert"}};
constexpr Stages sweet_potatoes[] = {{20, 30, 60, 40, "April", "Mediterranean"},
                                     {15, 30, 50, 30, "rainy season", "tropical regions"}};
constexpr Stages green_beans[] = {
    {20, 30, 30, 10, "February to March", "California, Mediterranean"},
    {15, 25, 25, 10, "August to September", "Egypt, Lebanon"}};
constexpr Stages dry_beans[] = {{20, 30, 40, 20, "May to June", "continental climate"},
                                {15, 25, 35, 20, "June", "Pakistan, California"},
                                {25, 25, 30, 20, "June", "Idaho"}};
constexpr Stages peas[] = {{15, 25, 35, 15, "May", "Europe"},
                           {20, 30, 35, 15, "March to April", "Mediterranean"},
                           {35, 25, 30, 20, "April", "Idaho"}};
constexpr Stages artichokes[] = {{40, 40, 250, 30, "April", "California, first year"},
                                 {20, 25, 250, 30, "May", "California, second year"}};
constexpr Stages asparagus[] = {{50, 30, 100, 50, "February", "warm winter"},
                                {90, 30, 200, 45, "February", "Mediterranean"}};
constexpr Stages sweet_maize[] = {{20, 20, 30, 10, "March", "Philippines"},
                                  {20, 25, 25, 10, "May to June", "Mediterranean"},
                                  {20, 30, 30, 10, "October to December", "arid climate"},
                                  {30, 30, 30, 10, "April", "Idaho"},
                                  {20, 40, 70, 10, "January", "California desert"}};
constexpr Stages grain_maize[] = {{30, 50, 60, 40, "April", "East Africa, high"},
                                  {25, 40, 45, 30, "December to January", "arid climate"},
                                  {20, 35, 40, 30, "June", "Nigeria, humid"},
                                  {20, 35, 40, 30, "October", "India, dry and cool"},
                                  {30, 40, 50, 30, "April", "Spain; California"},
                                  {30, 40, 50, 50, "April", "Idaho"}};
constexpr Stages bananas_of_first_year[] = {{120, 90, 120, 60, "March", "Mediterranean"}};
constexpr Stages bananas_of_second_year[] = {{120, 60, 180, 5, "February", "Mediterranean"}};
constexpr Stages grapes[] = {{20, 40, 120, 60, "April", "low latitudes"},
                             {20, 50, 75, 60, "March", "California"},
                             {20, 50, 90, 20, "May", "high latitudes"},
                             {30, 60, 40, 80, "April", "middle latitudes, wine"}};
constexpr Stages hops[] = {{25, 40, 80, 10, "April", "Idaho"}};
constexpr Stages citrus[] = {{60, 90, 120, 95, "January", "Mediterranean"}};
constexpr Stages orchards[] = {{20, 70, 90, 30, "March", "high latitudes"},
                               {20, 70, 120, 60, "March", "low latitudes"},
                               {30, 50, 130, 30, "March", "California"}};
constexpr Stages olives[] = {{30, 90, 60, 90, "March", "Mediterranean"}};
constexpr Stages pistachios[] = {{20, 60, 30, 40, "February", "Mediterranean"}};
constexpr Stages walnuts[] = {{20, 10, 130, 30, "April", "Utah"}};
constexpr std::span<const Stages> no_stages{};

/// Coefficients and height of table 12, root depths and depletion of table 22. Lengths in metres.
struct Row {
  const char* name;
  double initial;
  double middle;
  double at_end;
  double height;
  double root_from;
  double root_to;
  double depletion;
  std::span<const Stages> stages;
};

constexpr Row rows[] = {
    // small vegetables
    {"broccoli", 0.7, 1.05, 0.95, 0.3, 0.4, 0.6, 0.45, broccoli},
    {"cabbage", 0.7, 1.05, 0.95, 0.4, 0.5, 0.8, 0.45, cabbage},
    {"carrots", 0.7, 1.05, 0.95, 0.3, 0.5, 1.0, 0.35, carrots},
    {"cauliflower", 0.7, 1.05, 0.95, 0.4, 0.4, 0.7, 0.45, cauliflower},
    {"celery", 0.7, 1.05, 1.00, 0.6, 0.3, 0.5, 0.20, celery},
    {"garlic", 0.7, 1.00, 0.70, 0.3, 0.3, 0.5, 0.30, no_stages},
    {"lettuce", 0.7, 1.00, 0.95, 0.3, 0.3, 0.5, 0.30, lettuce},
    {"onions, dry", 0.7, 1.05, 0.75, 0.4, 0.3, 0.6, 0.30, dry_onions},
    {"onions, green", 0.7, 1.00, 1.00, 0.3, 0.3, 0.6, 0.30, green_onions},
    {"spinach", 0.7, 1.00, 0.95, 0.3, 0.3, 0.5, 0.20, spinach},
    {"radish", 0.7, 0.90, 0.85, 0.3, 0.3, 0.5, 0.30, radishes},
    // nightshades
    {"egg plant", 0.6, 1.05, 0.90, 0.8, 0.7, 1.2, 0.45, egg_plants},
    {"sweet peppers", 0.6, 1.05, 0.90, 0.7, 0.5, 1.0, 0.30, sweet_peppers},
    {"tomato", 0.6, 1.15, 0.80, 0.6, 0.7, 1.5, 0.40, tomatoes},
    // cucurbits
    {"cantaloupe", 0.5, 0.85, 0.60, 0.3, 0.9, 1.5, 0.45, cantaloupes},
    {"cucumber", 0.6, 1.00, 0.75, 0.3, 0.7, 1.2, 0.50, cucumbers},
    {"pumpkin, winter squash", 0.5, 1.00, 0.80, 0.4, 1.0, 1.5, 0.35, pumpkins},
    {"squash, zucchini", 0.5, 0.95, 0.75, 0.3, 0.6, 1.0, 0.50, squash},
    {"sweet melons", 0.5, 1.05, 0.75, 0.4, 0.8, 1.5, 0.40, sweet_melons},
    {"watermelon", 0.4, 1.00, 0.75, 0.4, 0.8, 1.5, 0.40, watermelons},
    // roots and tubers
    {"beets, table", 0.5, 1.05, 0.95, 0.4, 0.6, 1.0, 0.50, beets},
    {"parsnip", 0.5, 1.05, 0.95, 0.4, 0.5, 1.0, 0.40, no_stages},
    {"potato", 0.5, 1.15, 0.75, 0.6, 0.4, 0.6, 0.35, potatoes},
    {"sweet potato", 0.5, 1.15, 0.65, 0.4, 1.0, 1.5, 0.65, sweet_potatoes},
    {"turnip", 0.5, 1.10, 0.95, 0.6, 0.5, 1.0, 0.50, no_stages},
    // legumes
    {"beans, green", 0.5, 1.05, 0.90, 0.4, 0.5, 0.7, 0.45, green_beans},
    {"beans, dry", 0.4, 1.15, 0.35, 0.4, 0.6, 0.9, 0.45, dry_beans},
    {"peas, fresh", 0.5, 1.15, 1.10, 0.5, 0.6, 1.0, 0.35, peas},
    // vegetables that stay for years
    {"artichokes", 0.5, 1.00, 0.95, 0.7, 0.6, 0.9, 0.45, artichokes},
    {"asparagus", 0.5, 0.95, 0.30, 0.5, 1.2, 1.8, 0.45, asparagus},
    {"mint", 0.60, 1.15, 1.10, 0.7, 0.4, 0.8, 0.40, no_stages},
    {"strawberries", 0.40, 0.85, 0.75, 0.2, 0.2, 0.3, 0.20, no_stages},
    // maize and grass
    {"maize, sweet", 0.3, 1.15, 1.05, 1.5, 0.8, 1.2, 0.50, sweet_maize},
    {"maize, grain, harvested moist", 0.3, 1.20, 0.60, 2, 1.0, 1.7, 0.55, grain_maize},
    {"maize, grain, dried in the field", 0.3, 1.20, 0.35, 2, 1.0, 1.7, 0.55, grain_maize},
    {"turf, cool season", 0.90, 0.95, 0.95, 0.10, 0.5, 1.0, 0.40, no_stages},
    {"turf, warm season", 0.80, 0.85, 0.85, 0.10, 0.5, 1.0, 0.50, no_stages},
    // tropical fruits and trees
    {"banana, first year", 0.50, 1.10, 1.00, 3, 0.5, 0.9, 0.35, bananas_of_first_year},
    {"banana, second year", 1.00, 1.20, 1.10, 4, 0.5, 0.9, 0.35, bananas_of_second_year},
    {"coffee, bare ground", 0.90, 0.95, 0.95, 2.5, 0.9, 1.5, 0.40, no_stages},
    {"coffee, with weeds", 1.05, 1.10, 1.10, 2.5, 0.9, 1.5, 0.40, no_stages},
    {"tea, without shade", 0.95, 1.00, 1.00, 1.5, 0.9, 1.5, 0.40, no_stages},
    // grapes, berries, hops
    {"berry bushes", 0.30, 1.05, 0.50, 1.5, 0.6, 1.2, 0.50, no_stages},
    {"grapes, table or raisin", 0.30, 0.85, 0.45, 2, 1.0, 2.0, 0.35, grapes},
    {"grapes, wine", 0.30, 0.70, 0.45, 1.75, 1.0, 2.0, 0.45, grapes},
    {"hops", 0.3, 1.05, 0.85, 5, 1.0, 1.2, 0.50, hops},
    // fruit trees
    {"almonds, bare ground", 0.40, 0.90, 0.65, 5, 1.0, 2.0, 0.40, orchards},
    {"apples, cherries, pears, bare ground, frost", 0.45, 0.95, 0.70, 4, 1.0, 2.0, 0.50, orchards},
    {"apples, cherries, pears, bare ground, no frost",
     0.60,
     0.95,
     0.75,
     4,
     1.0,
     2.0,
     0.50,
     orchards},
    {"apples, cherries, pears, ground cover, frost", 0.50, 1.20, 0.95, 4, 1.0, 2.0, 0.50, orchards},
    {"apples, cherries, pears, ground cover, no frost",
     0.80,
     1.20,
     0.85,
     4,
     1.0,
     2.0,
     0.50,
     orchards},
    {"stone fruit, bare ground, frost", 0.45, 0.90, 0.65, 3, 1.0, 2.0, 0.50, orchards},
    {"stone fruit, bare ground, no frost", 0.55, 0.90, 0.65, 3, 1.0, 2.0, 0.50, orchards},
    {"stone fruit, ground cover, frost", 0.50, 1.15, 0.90, 3, 1.0, 2.0, 0.50, orchards},
    {"stone fruit, ground cover, no frost", 0.80, 1.15, 0.85, 3, 1.0, 2.0, 0.50, orchards},
    {"avocado, bare ground", 0.60, 0.85, 0.75, 3, 0.5, 1.0, 0.70, no_stages},
    {"citrus, bare ground, 70 % canopy", 0.70, 0.65, 0.70, 4, 1.2, 1.5, 0.50, citrus},
    {"citrus, bare ground, 50 % canopy", 0.65, 0.60, 0.65, 3, 1.1, 1.5, 0.50, citrus},
    {"citrus, bare ground, 20 % canopy", 0.50, 0.45, 0.55, 2, 0.8, 1.1, 0.50, citrus},
    {"citrus, ground cover, 70 % canopy", 0.75, 0.70, 0.75, 4, 1.2, 1.5, 0.50, citrus},
    {"citrus, ground cover, 50 % canopy", 0.80, 0.80, 0.80, 3, 1.1, 1.5, 0.50, citrus},
    {"citrus, ground cover, 20 % canopy", 0.85, 0.85, 0.85, 2, 0.8, 1.1, 0.50, citrus},
    {"kiwi", 0.40, 1.05, 1.05, 3, 0.7, 1.3, 0.35, no_stages},
    {"olives", 0.65, 0.70, 0.70, 4, 1.2, 1.7, 0.65, olives},
    {"pistachios, bare ground", 0.40, 1.10, 0.45, 4, 1.0, 1.5, 0.40, pistachios},
    {"walnuts", 0.50, 1.10, 0.65, 4.5, 1.7, 2.4, 0.50, walnuts}};

Crop crop_of(const Row& row) {
  Crop crop{.name = row.name,
            .initial_coefficient = row.initial,
            .middle_coefficient = row.middle,
            .final_coefficient = row.at_end,
            .height = row.height * units::m,
            .root_depth_from = row.root_from * units::m,
            .root_depth_to = row.root_to * units::m,
            .allowed_depletion = row.depletion};
  for (const Stages& stages : row.stages)
    crop.stages.push_back({stages.initial,
                           stages.development,
                           stages.middle,
                           stages.late,
                           stages.planted,
                           stages.region});
  return crop;
}

std::string in_small_letters(std::string_view text) {
  std::string small(text);
  std::ranges::transform(small, small.begin(), [](unsigned char c) { return std::tolower(c); });
  return small;
}

/// How many letters must be added, dropped or changed (Levenshtein's distance).
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> previous(b.size() + 1);
  std::iota(previous.begin(), previous.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::vector<std::size_t> current{i + 1};
    for (std::size_t j = 0; j < b.size(); ++j)
      current.push_back(
          std::min({previous[j + 1] + 1, current[j] + 1, previous[j] + (a[i] == b[j] ? 0U : 1U)}));
    previous = std::move(current);
  }
  return previous.back();
}

/// A slip of the pen away, or one within the other: "potato", "onion".
bool is_near(std::string_view asked, std::string_view name) {
  const std::string_view first_word = name.substr(0, name.find(','));
  return name.find(asked) != std::string_view::npos ||
         asked.find(first_word) != std::string_view::npos ||
         distance(asked, first_word) <= std::min<std::size_t>(2, asked.size() / 3);
}

std::string unknown_crop(std::string_view name) {
  const std::string asked = in_small_letters(name);
  std::vector<std::string> near;
  if (!asked.empty())
    for (const Row& row : rows)
      if (is_near(asked, row.name)) near.emplace_back(row.name);
  const std::vector<std::string>& named = near.empty() ? crop_names() : near;
  return fmt::format(
      "is {}, which is not in the table; {} {}. For any other crop give crop_coefficient, "
      "root_depth and allowed_depletion",
      in_quotes(name),
      near.empty() ? "there are" : "near it are",
      list_in_quotes(named, named.size()));
}

}  // namespace

Crop crop(std::string_view name) {
  const std::string asked = in_small_letters(name);
  const auto found = std::ranges::find_if(rows, [&](const Row& row) { return asked == row.name; });
  if (found == std::end(rows)) throw InvalidInput("crop", unknown_crop(name));
  return crop_of(*found);
}

std::vector<std::string> crop_names() {
  std::vector<std::string> names;
  for (const Row& row : rows) names.emplace_back(row.name);
  return names;
}

StageLengths stage_lengths(const Crop& crop, std::string_view region) {
  if (crop.stages.empty())
    throw InvalidInput("stages",
                       fmt::format("are not in the table for {}; give them, or crop_coefficient",
                                   in_quotes(crop.name)));
  const std::string asked = in_small_letters(region);
  std::vector<StageLengths> fitting;
  std::vector<std::string> regions;
  for (const StageLengths& stages : crop.stages) {
    regions.push_back(stages.region);
    const std::string name = in_small_letters(stages.region);
    if (!asked.empty() && name == asked) return stages;
    if (name.starts_with(asked)) fitting.push_back(stages);
  }
  if (fitting.size() == 1) return fitting.front();
  throw InvalidInput(
      "region",
      fmt::format("{}; the table has {} in {}; or give stages, four numbers of days",
                  region.empty() ? "is not given"
                                 : fmt::format("is {}, which {}",
                                               in_quotes(region),
                                               fitting.empty() ? "is not there" : "fits several"),
                  in_quotes(crop.name),
                  list_in_quotes(regions, regions.size())));
}

std::vector<Problem> problems(const StageLengths& stages) {
  Examination examination;
  examination.within("initial", stages.initial, 0, 1000);
  examination.within("development", stages.development, 0, 1000);
  examination.within("middle", stages.middle, 0, 1000);
  examination.within("late", stages.late, 0, 1000);
  if (stages.initial == 0 && stages.development == 0 && stages.middle == 0 && stages.late == 0)
    examination.add("initial, development, middle, late", "are all 0, must be days of a season");
  return examination.take();
}

}  // namespace hydro
