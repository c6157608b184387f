// toml_reader.hpp: TOML read field by field, with the position of every mistake.
// Not installed; for the files that read TOML, since its library is slow to compile.
#pragma once

#define TOML_HEADER_ONLY 1
#include "hydro/physics/choices.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/text/file_limits.hpp"
#include "hydro/text/toml_outline.hpp"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <limits>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <system_error>
#include <type_traits>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <toml++/toml.h>

namespace hydro {

using Position = toml::source_position;

inline std::string at(const std::string& file, const Position& where) {
  return fmt::format("{}:{}:{}", file, where.line, where.column);
}

inline std::string printable(std::string_view text) {
  std::string clean(text);
  std::replace_if(clean.begin(), clean.end(), is_control, '?');
  return clean;
}

/// Collects mistakes with their positions, and remembers which fields have one already.
class Mistakes {
 public:
  /// @param left_of the text [columns], to be taken off its positions
  Mistakes(std::string file, const FileLimits& limits, std::uint32_t left_of = 0)
      : file_(std::move(file)), limits_(limits), left_of_(left_of) {}

  const FileLimits& limits() const { return limits_; }

  /// @throws InvalidInput when there are too many

  void add(Position where, const std::string& place, const std::string& key, std::string what) {
    if (!spoiled_.insert({place, key}).second) return;
    where.column -= std::min(left_of_, where.column - 1);
    const std::string whose = place + (place.empty() || key.empty() ? "" : ": ") + key;
    found_.push_back({where, {at(file_, where), whose, std::move(what)}});
    if (found_.size() < static_cast<std::size_t>(limits_.mistakes)) return;
    constexpr auto last = std::numeric_limits<toml::source_index>::max();
    found_.push_back(
        {{last, last},
         {file_,
          "",
          fmt::format("has {} mistakes at least; it was read no further", limits_.mistakes)}});
    throw_if_any();
  }
  bool has(const std::string& place, const std::string& key) const {
    return spoiled_.contains({place, key});
  }
  void throw_if_any() {
    if (found_.empty()) return;
    std::stable_sort(found_.begin(), found_.end(), [](const Placed& a, const Placed& b) {
      return std::pair(a.first.line, a.first.column) < std::pair(b.first.line, b.first.column);
    });
    std::vector<Problem> problems;
    for (Placed& placed : found_) problems.push_back(std::move(placed.second));
    throw InvalidInput(std::move(problems));
  }

 private:
  using Placed = std::pair<Position, Problem>;
  std::string file_;
  FileLimits limits_;
  std::uint32_t left_of_;
  std::vector<Placed> found_;
  std::set<std::pair<std::string, std::string>> spoiled_;
};

inline std::string what_it_is(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::string:
      return "is the text " + in_quotes(node.as_string()->get());
    case toml::node_type::integer:
      return fmt::format("is the bare number {}", node.as_integer()->get());
    case toml::node_type::floating_point:
      return fmt::format("is the bare number {}", node.as_floating_point()->get());
    case toml::node_type::boolean:
      return fmt::format("is {}", node.as_boolean()->get());
    case toml::node_type::array:
      return "is a list";
    case toml::node_type::table:
      return "is a table";
    default:
      return "is a date or time";
  }
}

/// An example of each quantity, for a person who forgot the unit.
template <class Q>
inline constexpr std::string_view example = "";
template <>
inline constexpr std::string_view example<Length> = "\"20 ft\"";
template <>
inline constexpr std::string_view example<Pressure> = "\"25 psi\"";
template <>
inline constexpr std::string_view example<Flow> = "\"3.5 gpm\"";
template <>
inline constexpr std::string_view example<Area> = "\"0.3 m2\"";
template <>
inline constexpr std::string_view example<RotationalSpeed> = "\"2600 rpm\"";
template <>
inline constexpr std::string_view example<Power> = "\"13 hp\"";
template <>
inline constexpr std::string_view example<Velocity> = "\"6 mm/day\"";
template <>
inline constexpr std::string_view example<Time> = "\"9.5 h\"";
template <>
inline constexpr std::string_view example<Volume> = "\"5 gal\"";
template <>
inline constexpr std::string_view example<Angle> = "\"45.7 deg\"";
template <>
inline constexpr std::string_view example<Irradiance> = "\"22 MJ/m2/day\"";
template <>
inline constexpr std::string_view example<Temperature> = "\"68 degF\"";
template <>
inline constexpr std::string_view example<Density> = "\"998 kg/m3\"";
template <>
inline constexpr std::string_view example<KinematicViscosity> = "\"1.0 mm2/s\"";
template <>
inline constexpr std::string_view example<double> = "0.6";

/// Reads one table field by field; what is never asked for is an unknown key.
class TableReader {
 public:
  /// @param place in errors: `line "row 1"`; @param prefix of the keys: "riser."
  TableReader(const toml::table& table, std::string place, std::string prefix, Mistakes& mistakes)
      : table_(table), place_(std::move(place)), prefix_(std::move(prefix)), mistakes_(mistakes) {}

  template <class Q>
  std::optional<Q> quantity(const char* key) {
    const toml::node* node = find(key);
    if (!node) return std::nullopt;
    if (!node->is_string()) {
      wrong(*node, key, fmt::format("write a text with the unit, like {}", example<Q>));
      return std::nullopt;
    }
    try {
      return from_text<Q>(node->as_string()->get());
    } catch (const InvalidInput& error) {
      mistakes_.add(node->source().begin, place_, prefix_ + key, error.what());
      return std::nullopt;
    }
  }

  std::optional<double> number(const char* key) {
    const toml::node* node = find(key);
    if (!node) return std::nullopt;
    const auto value = node->value<double>();
    if (!value || !node->is_number()) {
      wrong(*node, key, "write a plain number, without quotes");
      return std::nullopt;
    }
    return value;
  }

  std::optional<int> whole_number(const char* key, int from, int to) {
    const toml::node* node = find(key);
    if (!node) return std::nullopt;
    const auto value = node->is_integer() ? node->value<std::int64_t>() : std::nullopt;
    if (!value || *value < from || *value > to) {
      wrong(*node, key, fmt::format("must be a whole number from {} to {}", from, to));
      return std::nullopt;
    }
    return static_cast<int>(*value);
  }

  std::optional<std::string> text(const char* key) {
    const toml::node* node = find(key);
    if (!node) return std::nullopt;
    if (!node->is_string()) {
      wrong(*node, key, "write a text, in quotes");
      return std::nullopt;
    }
    return node->as_string()->get();
  }

  std::optional<bool> truth(const char* key) {
    const toml::node* node = find(key);
    if (!node) return std::nullopt;
    if (!node->is_boolean()) {
      wrong(*node, key, "write true or false, without quotes");
      return std::nullopt;
    }
    return node->as_boolean()->get();
  }

  /// 2026-05-02
  std::optional<std::chrono::year_month_day> date(const char* key) {
    const toml::node* node = find(key);
    if (!node) return std::nullopt;
    const auto value = node->value<toml::date>();
    if (!value || !node->is_date()) {
      wrong(*node, key, "write a date, 2026-05-02, without quotes");
      return std::nullopt;
    }
    return std::chrono::year(value->year) / value->month / value->day;
  }

  /// One of the words of choices.hpp.
  template <class E>
  std::optional<E> choice(const char* key) {
    const std::optional<std::string> word = text(key);
    if (!word) return std::nullopt;
    const std::optional<E> value = chosen<E>(*word);
    if (value) return value;
    std::vector<std::string> words;
    words.reserve(choices<E>.size());
    for (const Choice<E>& accepted : choices<E>) words.emplace_back(accepted.word);
    mistake(key,
            fmt::format(
                "is {}; accepted are {}", in_quotes(*word), list_in_quotes(words, words.size())));
    return std::nullopt;
  }

  /// A reader of a table inside this one; none if it is not given.
  std::optional<TableReader> inside(const char* key) {
    const toml::table* inner = table(key);
    if (!inner) return std::nullopt;
    return TableReader(*inner, place_, prefix_ + key + ".", mistakes_);
  }

  /// [["20 psi", "3.1 gpm"], ...], [["40 gpm", 0.52], ...]
  template <class P, class Q>
  std::vector<std::pair<P, Q>> pairs(const char* key) {
    std::vector<std::pair<P, Q>> found;
    const toml::node* node = find(key);
    const toml::array* list = node ? node->as_array() : nullptr;
    if (node && !list) wrong(*node, key, "must be a list of pairs");
    if (!list || has_too_many(*list, key, limits().points)) return found;
    for (const toml::node& element : *list) {
      const toml::array* pair = element.as_array();
      if (!pair || pair->size() != 2 || !can_be<P>((*pair)[0]) || !can_be<Q>((*pair)[1])) {
        wrong(element, key, fmt::format("must be a pair, [{}, {}]", example<P>, example<Q>));
        return {};
      }
      try {
        const P first = read<P>((*pair)[0]);
        found.emplace_back(first, read<Q>((*pair)[1]));
      } catch (const InvalidInput& error) {
        mistakes_.add(element.source().begin, place_, prefix_ + key, error.what());
        return {};
      }
    }
    return found;
  }

  /// A table inside this one.
  const toml::table* table(const char* key) {
    const toml::node* node = find(key);
    if (node && !node->is_table()) wrong(*node, key, "must be a table");
    return node ? node->as_table() : nullptr;
  }

  /// ["0 ft", "1 ft", ...]
  template <class Q>
  std::vector<Q> quantities(const char* key) {
    std::vector<Q> found;
    const toml::node* node = find(key);
    const toml::array* list = node ? node->as_array() : nullptr;
    if (node && (!list || list->empty()))
      wrong(*node, key, fmt::format("must be a list of texts, [{}, ...]", example<Q>));
    if (!list || has_too_many(*list, key, limits().outlets)) return found;
    for (const toml::node& element : *list) {
      if (!element.is_string()) {
        wrong(element, key, fmt::format("write a text with the unit, like {}", example<Q>));
        return {};
      }
      try {
        found.push_back(from_text<Q>(element.as_string()->get()));
      } catch (const InvalidInput& error) {
        mistakes_.add(element.source().begin, place_, prefix_ + key, error.what());
        return {};
      }
    }
    return found;
  }

  /// ["row 1", "row 2", ...]
  std::vector<std::string> texts(const char* key) {
    std::vector<std::string> found;
    const toml::node* node = find(key);
    const toml::array* list = node ? node->as_array() : nullptr;
    if (node && !list) wrong(*node, key, "must be a list of texts, [\"row 1\", ...]");
    if (!list || has_too_many(*list, key, limits().lines)) return found;
    for (const toml::node& element : *list) {
      if (!element.is_string()) {
        wrong(element, key, "write a text, in quotes");
        return {};
      }
      found.push_back(element.as_string()->get());
    }
    return found;
  }

  /// A list of tables, each under its own [[key]], or as in the example if there is one.
  std::vector<const toml::table*> tables(const char* key,
                                         int most,
                                         const char* example_of_list = nullptr) {
    std::vector<const toml::table*> found;
    const toml::node* node = find(key);
    if (!node) return found;
    const toml::array* array = node->as_array();
    if (!array || !array->is_homogeneous(toml::node_type::table)) {
      wrong(*node,
            key,
            example_of_list ? fmt::format("must be a list of tables, {}", example_of_list)
                            : fmt::format("must be tables, each under its own [[{}]]", key));
      return found;
    }
    if (has_too_many(*array, key, most)) return found;
    for (const toml::node& element : *array) found.push_back(element.as_table());
    return found;
  }

  template <class T>
  T needed(const char* key, std::optional<T> value, T placeholder = {}) {
    if (!value && !table_.contains(key)) mistake(key, "is not given");
    return value.value_or(placeholder);
  }

  /// Unless one of the fields, "a, b, c" or "points, 3", has a mistake already.
  void mistake(const std::string& key, std::string what) {
    for (std::size_t from = 0; from < key.size();) {
      const std::size_t comma = std::min(key.find(", ", from), key.size());
      if (mistakes_.has(place_, prefix_ + key.substr(from, comma - from))) return;
      from = comma + 2;
    }
    const toml::node* node = node_of(key);
    if (node && node->is_string() && what.starts_with("is ") && !what.starts_with("is \""))
      what = in_quotes(node->as_string()->get()) + " " +
             what;  // as it was written, before it was converted
    mistakes_.add(position_of(key), place_, prefix_ + key, std::move(what));
  }

  bool is_empty_list(const char* key) const {
    const toml::node* node = table_.get(key);
    return node && node->is_array() && node->as_array()->empty();
  }
  bool gives(const char* key) const { return table_.contains(key); }
  bool is_table(const char* key) const {
    const toml::node* node = table_.get(key);
    return node && node->is_table();
  }

  /// Takes a key without reading it.
  void accept(const char* key) { asked_.insert(key); }

  /// Keys that were never asked for are mistakes.
  void finish() {
    for (const auto& [key, node] : table_) {
      if (asked_.contains(std::string(key.str()))) continue;
      std::string accepted;
      for (const std::string& name : asked_) accepted += (accepted.empty() ? "" : ", ") + name;
      mistakes_.add(key.source().begin,
                    place_,
                    prefix_ + in_quotes(key.str()),
                    "is not a key known here; accepted are " + accepted);
    }
  }

  bool has_mistake(const std::string& key) const { return mistakes_.has(place_, prefix_ + key); }

  /// Where a field stands, or the table when it is not given.
  Position position_of(const std::string& key) const {
    const toml::node* node = node_of(key);
    return node ? node->source().begin : table_.source().begin;
  }
  Position position() const { return table_.source().begin; }
  const std::string& place() const { return place_; }
  const FileLimits& limits() const { return mistakes_.limits(); }

  /// Of a list, or of the definitions in a table: "there are 3, must be at most 2".
  bool has_too_many(const auto& values, const char* key, int most) {
    if (values.size() <= static_cast<std::size_t>(most)) return false;
    mistake(key, fmt::format("there are {}, must be at most {}", values.size(), most));
    return true;
  }

 private:
  const toml::node* find(const char* key) {
    asked_.insert(key);
    return table_.get(key);
  }
  /// What a key of a Problem speaks of: of "a, b, c" the first that is given, of "points, 3" the
  /// third in that list.
  const toml::node* node_of(const std::string& key) const {
    for (std::size_t from = 0; from < key.size();) {
      const std::size_t comma = std::min(key.find(", ", from), key.size());
      const std::string field = key.substr(from, comma - from);
      from = comma + 2;
      const toml::node* node = table_.get(field.substr(0, field.find('.')));
      if (!node) continue;
      const toml::array* list = node->as_array();
      std::size_t number = 0;
      if (list && from < key.size())
        std::from_chars(key.data() + from, key.data() + key.size(), number);
      return number >= 1 && number <= list->size() ? list->get(number - 1) : node;
    }
    return nullptr;
  }
  template <class Q>
  static bool can_be(const toml::node& node) {
    return std::is_same_v<Q, double> ? node.is_number() : node.is_string();
  }
  template <class Q>
  static Q read(const toml::node& node) {
    if constexpr (std::is_same_v<Q, double>)
      return node.value<double>().value();
    else
      return from_text<Q>(node.as_string()->get());
  }
  void wrong(const toml::node& node, const char* key, const std::string& hint) {
    mistakes_.add(node.source().begin, place_, prefix_ + key, what_it_is(node) + "; " + hint);
  }

  const toml::table& table_;
  std::string place_;
  std::string prefix_;
  Mistakes& mistakes_;
  std::set<std::string> asked_;
};

/// The text of a file, or the first of it, longer than is accepted.
inline std::string contents_of(const std::filesystem::path& file, const FileLimits& limits) {
  const std::string name = file.empty() ? "\"\"" : printable(file.string());
  std::error_code error;
  if (std::filesystem::is_directory(file, error))
    throw InvalidInput(name, "is a directory; a description file is wanted");
  std::ifstream stream(file, std::ios::binary);
  if (!stream)
    throw InvalidInput(
        name,
        std::filesystem::exists(file, error) ? "cannot be opened for reading" : "does not exist");
  std::string text;
  std::string piece(std::size_t{1} << 16, '\0');
  while (stream && text.size() <= static_cast<std::size_t>(limits.bytes)) {
    stream.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    text.append(piece, 0, static_cast<std::size_t>(stream.gcount()));
  }
  if (stream.bad()) throw InvalidInput(name, "cannot be read");
  return text;
}

/// @param left_of the text [columns], to be taken off in errors
inline toml::table parse(std::string_view text,
                         const std::string& name,
                         const FileLimits& limits,
                         std::uint32_t left_of = 0) {
  if (auto found = problems(limits); !found.empty()) throw InvalidInput(std::move(found));
  examine_outline(text, name, limits, left_of);
  try {
    return toml::parse(text, std::string_view(name));
  } catch (const toml::parse_error& error) {
    Position where = error.source().begin;
    where.column -= std::min(left_of, where.column - 1);
    throw InvalidInput(at(name, where),
                       fmt::format("is not TOML: {}", printable(error.description())));
  }
}

}  // namespace hydro
