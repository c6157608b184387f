#include "hydro/text/read_readings.hpp"

#include "hydro/text/toml_reader.hpp"

#include <map>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// The value whose word stands there. @param last of the enumeration
template <class E>
std::optional<E> read_word(TableReader& reader, const char* key, E last) {
  const auto word = reader.text(key);
  std::vector<std::string> words;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const auto value = static_cast<E>(i);
    if (word && *word == words_of(value)) return value;
    words.emplace_back(words_of(value));
  }
  if (word || !reader.gives(key))
    reader.mistake(key,
                   fmt::format("{}; accepted are {}",
                               word ? "is " + in_quotes(*word) : "is not given",
                               list_in_quotes(words, words.size())));
  return std::nullopt;
}

class ReadingsReader {
 public:
  ReadingsReader(const toml::table& root,
                 const std::string& file,
                 const Layout& layout,
                 const FileLimits& limits)
      : mistakes_(file, limits), root_(root, "", "", mistakes_), layout_(layout) {}

  Readings read() {
    for (const toml::table* table : root_.tables("reading", mistakes_.limits().readings))
      read_reading(*table);
    for (const toml::table* table : root_.tables("sight", mistakes_.limits().readings))
      read_sight(*table);
    const bool is_a_layout = root_.gives("line");
    if (!is_a_layout) root_.finish();
    for (const Problem& problem : problems(found_.readings, found_.sights, layout_)) {
      const auto reader = readers_.find(problem.place);
      if (reader != readers_.end()) reader->second.mistake(problem.key, problem.message);
    }
    mistakes_.throw_if_any();
    return std::move(found_);
  }

 private:
  void read_reading(const toml::table& table) {
    const std::string place = fmt::format("reading {}", found_.readings.size() + 1);
    TableReader reader(table, place, "", mistakes_);
    const auto where = read_word(reader, "place", ReadingPlace::engine);
    found_.readings.push_back({.place = where.value_or(ReadingPlace::supply_gauge),
                               .line = reader.text("line").value_or(""),
                               .outlet = reader.whole_number("outlet", 1, most_outlets).value_or(0),
                               .pressure = reader.quantity<Pressure>("pressure"),
                               .flow = reader.quantity<Flow>("flow"),
                               .speed = reader.quantity<RotationalSpeed>("speed"),
                               .volume = reader.quantity<Volume>("volume"),
                               .time = reader.quantity<Time>("time"),
                               .pressure_error = reader.quantity<Pressure>("pressure_error"),
                               .flow_error = reader.number("flow_error"),
                               .time_error = reader.quantity<Time>("time_error"),
                               .speed_error = reader.number("speed_error"),
                               .gauge = reader.text("gauge").value_or("")});
    finish(std::move(reader), where.has_value());
  }

  void read_sight(const toml::table& table) {
    const std::string place = fmt::format("sight {}", found_.sights.size() + 1);
    TableReader reader(table, place, "", mistakes_);
    const auto seen = read_word(reader, "seen", Seen::wet_spot);
    found_.sights.push_back({.seen = seen.value_or(Seen::turning),
                             .line = reader.text("line").value_or(""),
                             .outlet = reader.whole_number("outlet", 1, most_outlets).value_or(0),
                             .to_outlet = reader.whole_number("to_outlet", 1, most_outlets),
                             .width = reader.quantity<Pressure>("width"),
                             .doubt = reader.number("doubt")});
    finish(std::move(reader), seen.has_value());
  }

  /// Of what nothing is known, no further mistakes shall follow.
  void finish(TableReader reader, bool is_known) {
    reader.finish();
    if (is_known) readers_.emplace(reader.place(), std::move(reader));
  }

  Mistakes mistakes_;
  TableReader root_;
  const Layout& layout_;
  std::map<std::string, TableReader> readers_;
  Readings found_;
};

}  // namespace

Readings read_readings(const std::filesystem::path& file,
                       const Layout& layout,
                       const FileLimits& limits) {
  return read_readings_text(contents_of(file, limits), layout, printable(file.string()), limits);
}

Readings read_readings_text(std::string_view text,
                            const Layout& layout,
                            const std::string& name,
                            const FileLimits& limits) {
  const toml::table root = parse(text, name, limits);
  return ReadingsReader(root, name, layout, limits).read();
}

}  // namespace hydro
