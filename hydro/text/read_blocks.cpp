#include "hydro/text/read_blocks.hpp"

#include "hydro/text/toml_reader.hpp"

#include <chrono>
#include <map>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

using Date = std::chrono::year_month_day;

int day_of_year(const Date& date) {
  const std::chrono::sys_days new_year = date.year() / std::chrono::January / 1;
  return static_cast<int>((std::chrono::sys_days(date) - new_year).count()) + 1;
}

StageLengths read_stages(TableReader& block) {
  TableReader reader = *block.inside("stages");
  const auto days = [&](const char* key) {
    return reader.needed(key, reader.whole_number(key, 0, 1000));
  };
  StageLengths stages{.initial = days("initial"),
                      .development = days("development"),
                      .middle = days("middle"),
                      .late = days("late")};
  reader.finish();
  return stages;
}

/// "sandy loam", or a table.
Soil read_soil(TableReader& block) {
  if (!block.is_table("soil")) return {.kind = block.choice<SoilKind>("soil")};
  TableReader reader = *block.inside("soil");
  Soil soil{.kind = reader.choice<SoilKind>("kind"),
            .available_water = reader.number("available_water"),
            .intake_rate = reader.quantity<Velocity>("intake_rate"),
            .slope = reader.number("slope")};
  reader.finish();
  return soil;
}

/// Reads a whole file; what it does not know is left to read_layout.
class BlocksReader {
 public:
  BlocksReader(const toml::table& root, const std::string& file, const FileLimits& limits)
      : mistakes_(file, limits), root_(root, "", "", mistakes_) {
    for (const toml::table* line : root_.tables("line", limits.lines))
      if (const auto name = (*line)["name"].value<std::string>()) lines_.insert(*name);
  }

  Blocks read() {
    if (const toml::table* table = root_.table("weather")) read_weather(*table);
    const toml::table* all = root_.table("block");
    if (all && !root_.has_too_many(*all, "block", mistakes_.limits().definitions))
      for (const auto& [key, node] : *all) read_block(std::string(key.str()), node);
    mistakes_.throw_if_any();
    return std::move(blocks_);
  }

 private:
  void read_weather(const toml::table& table) {
    TableReader reader(table, "weather", "", mistakes_);
    Weather weather;
    weather.reference_evapotranspiration =
        reader.quantity<Velocity>("reference_evapotranspiration");
    today_ = reader.date("date");
    const auto day = reader.whole_number("day_of_year", 1, 366);
    if (reader.gives("date") && reader.gives("day_of_year"))
      reader.mistake("day_of_year", "is given, but so is the date; take one of the two ways");
    const auto latitude = reader.quantity<Angle>("latitude");
    const auto minimum = reader.quantity<Temperature>("minimum_temperature");
    const auto maximum = reader.quantity<Temperature>("maximum_temperature");
    weather.day_of_year = today_ ? day_of_year(*today_) : day.value_or(0);
    weather.latitude = latitude.value_or(Angle{});
    weather.minimum_temperature = minimum.value_or(Temperature{});
    weather.maximum_temperature = maximum.value_or(Temperature{});
    weather.altitude = reader.quantity<Length>("altitude");
    if (!reader.gives("altitude")) weather.altitude = altitude_of_site();
    weather.dew_point = reader.quantity<Temperature>("dew_point");
    weather.vapour_pressure = reader.quantity<Pressure>("vapour_pressure");
    weather.maximum_humidity = reader.number("maximum_humidity");
    weather.minimum_humidity = reader.number("minimum_humidity");
    weather.mean_humidity = reader.number("mean_humidity");
    weather.wind = reader.quantity<Velocity>("wind");
    weather.wind_height = reader.quantity<Length>("wind_height");
    weather.sunshine = reader.quantity<Time>("sunshine");
    weather.solar_radiation = reader.quantity<Irradiance>("solar_radiation");
    weather.heat_into_ground = reader.quantity<Irradiance>("heat_into_ground");
    weather.coastal = reader.truth("coastal").value_or(false);
    read_rain(reader);
    if (!reader.gives("reference_evapotranspiration")) {
      need(reader, "latitude", reader.gives("latitude"));
      need(reader, "date", reader.gives("date") || reader.gives("day_of_year"));
      need(reader, "minimum_temperature", reader.gives("minimum_temperature"));
      need(reader, "maximum_temperature", reader.gives("maximum_temperature"));
    }
    reader.finish();
    // Of what could not be read no further mistakes shall follow.
    Weather examined = weather;
    if (!latitude || weather.day_of_year == 0) {
      examined.day_of_year = 1;
      examined.sunshine.reset();
      examined.solar_radiation.reset();
    }
    if (!minimum) examined.minimum_temperature = -50 * degC;
    if (!maximum) examined.maximum_temperature = 60 * degC;
    if (!reader.gives("reference_evapotranspiration") || weather.reference_evapotranspiration)
      for (const Problem& problem : problems(examined))
        reader.mistake(problem.key, problem.message);
    blocks_.weather = weather;
  }

  static void need(TableReader& reader, const char* key, bool is_given) {
    if (!is_given)
      reader.mistake(key, "is not given; it is needed where reference_evapotranspiration is not");
  }

  void read_rain(TableReader& reader) {
    const auto days = reader.whole_number("days_since_rain", 0, 366);
    const auto rain = reader.quantity<Length>("rain");
    if (reader.gives("days_since_rain") != reader.gives("rain"))
      reader.mistake(reader.gives("rain") ? "rain" : "days_since_rain",
                     "is given alone; days_since_rain and rain go together");
    if (days && rain) blocks_.since_rain = {*days, *rain};
  }

  std::optional<Length> altitude_of_site() {
    const toml::table* site = root_.table("site");
    if (!site || !site->contains("altitude")) return std::nullopt;
    return TableReader(*site, "site", "", mistakes_).quantity<Length>("altitude");
  }

  void read_block(const std::string& name, const toml::node& node) {
    const std::string place = fmt::format("block {}", in_quotes(name));
    if (!node.is_table()) {
      mistakes_.add(node.source().begin,
                    place,
                    "",
                    fmt::format("{}; must be a table, [block.NAME]", what_it_is(node)));
      return;
    }
    TableReader reader(*node.as_table(), place, "", mistakes_);
    Block block{.name = name, .lines = read_lines(reader, name)};
    block.crop = reader.text("crop").value_or("");
    block.crop_coefficient = reader.number("crop_coefficient");
    if (reader.table("stages")) block.stages = read_stages(reader);
    block.region = reader.text("region").value_or("");
    block.season_day = read_season_day(reader);
    block.root_depth = reader.quantity<Length>("root_depth");
    block.allowed_depletion = reader.number("allowed_depletion");
    block.under_cover = reader.truth("under_cover").value_or(false);
    block.days_since_filled = reader.whole_number("days_since_filled", 0, 366);
    block.soil = read_soil(reader);
    block.share_wetted = reader.number("share_wetted");
    block.area = reader.quantity<Area>("area");
    block.row_spacing = reader.quantity<Length>("row_spacing");
    block.plant_spacing = reader.quantity<Length>("plant_spacing");
    block.area_per_plant = reader.quantity<Area>("area_per_plant");
    block.efficiency = reader.number("efficiency");
    reader.finish();
    for (const Problem& problem : problems(block)) reader.mistake(problem.key, problem.message);
    blocks_.blocks.push_back(std::move(block));
  }

  std::vector<std::string> read_lines(TableReader& reader, const std::string& block) {
    std::vector<std::string> lines = reader.texts("lines");
    if (!reader.gives("lines"))
      reader.mistake("lines", "is not given; name those along the block, [\"row 1\", \"row 2\"]");
    for (const std::string& line : lines) {
      if (!lines_.contains(line)) {
        std::vector<std::string> names;
        for (auto it = lines_.begin(); it != lines_.end() && names.size() < listed_at_most; ++it)
          names.push_back(*it);
        reader.mistake("lines",
                       fmt::format("name {}, but there is no such line; there are {}",
                                   in_quotes(line),
                                   list_in_quotes(names, lines_.size())));
      }
      const auto [other, is_first] = block_of_line_.emplace(line, block);
      if (!is_first)
        reader.mistake("lines",
                       fmt::format("name {}, which is named in block {} already",
                                   in_quotes(line),
                                   in_quotes(other->second)));
    }
    return lines;
  }

  /// Typed in, or counted from the day of planting.
  std::optional<int> read_season_day(TableReader& reader) {
    const auto day = reader.whole_number("season_day", 1, 2000);
    const auto planted = reader.date("planted");
    if (!planted) return day;
    if (reader.gives("season_day"))
      reader.mistake("season_day", "is given, but so is planted; take one of the two ways");
    if (!today_) {
      reader.mistake("planted", "is given, but [weather] has no date of today to count to");
      return day;
    }
    const auto days =
        (std::chrono::sys_days(*today_) - std::chrono::sys_days(*planted)).count() + 1;
    if (days >= 1) return static_cast<int>(days);
    reader.mistake("planted", "is after the date in [weather]; give crop_coefficient till then");
    return day;
  }

  Mistakes mistakes_;
  TableReader root_;
  std::set<std::string> lines_;
  std::map<std::string, std::string> block_of_line_;
  std::optional<Date> today_;
  Blocks blocks_;
};

}  // namespace

Blocks read_blocks(const std::filesystem::path& file, const FileLimits& limits) {
  return read_blocks_text(contents_of(file, limits), printable(file.string()), limits);
}

Blocks read_blocks_text(std::string_view text, const std::string& name, const FileLimits& limits) {
  const toml::table root = parse(text, name, limits);
  return BlocksReader(root, name, limits).read();
}

}  // namespace hydro
