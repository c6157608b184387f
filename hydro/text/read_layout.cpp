#include "hydro/text/read_layout.hpp"

#define TOML_HEADER_ONLY 1
#include "hydro/quantities/range.hpp"

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <map>
#include <optional>
#include <set>
#include <system_error>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <toml++/toml.h>

namespace hydro {
namespace {

constexpr std::size_t most_bytes = 8 * 1024 * 1024;

using Position = toml::source_position;

/// Collects mistakes with their positions, and remembers which fields have one already.
class Mistakes {
 public:
  explicit Mistakes(std::string file) : file_(std::move(file)) {}

  void add(const Position& where,
           const std::string& place,
           const std::string& key,
           std::string what) {
    if (!spoiled_.insert({place, key}).second) return;
    found_.push_back(
        {where, {at(where), place + (place.empty() ? "" : ": ") + key, std::move(what)}});
  }
  std::string at(const Position& where) const {
    return fmt::format("{}:{}:{}", file_, where.line, where.column);
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
  std::vector<Placed> found_;
  std::set<std::pair<std::string, std::string>> spoiled_;
};

std::string what_it_is(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::string:
      return fmt::format("is the text \"{}\"", node.as_string()->get().substr(0, 60));
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
constexpr std::string_view example = "";
template <>
constexpr std::string_view example<Length> = "\"20 ft\"";
template <>
constexpr std::string_view example<Pressure> = "\"25 psi\"";
template <>
constexpr std::string_view example<Flow> = "\"3.5 gpm\"";
template <>
constexpr std::string_view example<Temperature> = "\"68 degF\"";
template <>
constexpr std::string_view example<Density> = "\"998 kg/m3\"";
template <>
constexpr std::string_view example<KinematicViscosity> = "\"1.0 mm2/s\"";

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

  /// A table inside this one.
  const toml::table* table(const char* key) {
    const toml::node* node = find(key);
    if (node && !node->is_table()) wrong(*node, key, "must be a table");
    return node ? node->as_table() : nullptr;
  }

  /// A list of tables, [[key]].
  std::vector<const toml::table*> tables(const char* key) {
    std::vector<const toml::table*> found;
    const toml::node* node = find(key);
    if (!node) return found;
    const toml::array* array = node->as_array();
    if (!array || !array->is_homogeneous(toml::node_type::table)) {
      wrong(*node, key, fmt::format("must be tables, each under its own [[{}]]", key));
      return found;
    }
    for (const toml::node& element : *array) found.push_back(element.as_table());
    return found;
  }

  template <class T>
  T needed(const char* key, std::optional<T> value, T placeholder = {}) {
    if (!value && !table_.contains(key)) mistake(key, "is not given");
    return value.value_or(placeholder);
  }

  void mistake(const std::string& key, std::string what) {
    mistakes_.add(position_of(key), place_, prefix_ + key, std::move(what));
  }

  /// Keys that were never asked for are mistakes.
  void finish() {
    for (const auto& [key, node] : table_) {
      if (asked_.contains(std::string(key.str()))) continue;
      std::string accepted;
      for (const std::string& name : asked_) accepted += (accepted.empty() ? "" : ", ") + name;
      mistakes_.add(key.source().begin,
                    place_,
                    prefix_ + std::string(key.str()).substr(0, 60),
                    "is not a key known here; accepted are " + accepted);
    }
  }

  /// Where a field stands, or the table when it is not given.
  Position position_of(const std::string& key) const {
    const toml::node* node = table_.get(key);
    return node ? node->source().begin : table_.source().begin;
  }
  Position position() const { return table_.source().begin; }
  const std::string& place() const { return place_; }

 private:
  const toml::node* find(const char* key) {
    asked_.insert(key);
    return table_.get(key);
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

std::string names_of(const auto& definitions) {
  std::string names;
  for (const auto& [name, definition] : definitions)
    names += (names.empty() ? "\"" : ", \"") + name + "\"";
  return names.empty() ? "none" : names;
}

Fault read_fault_table(TableReader& reader) {
  constexpr const char* kinds =
      "\"head off\", \"riser sheared\", \"clogged\", \"worn\", \"capped\"";
  const std::string line = reader.needed("line", reader.text("line"));
  const int outlet = reader.needed("outlet", reader.whole_number("outlet", 1, most_outlets), 1);
  const std::string kind = reader.needed("kind", reader.text("kind"));
  if (kind == "head off") return head_off(line, outlet, reader.number("loss_coefficient"));
  if (kind == "riser sheared")
    return riser_sheared(
        line, outlet, reader.quantity<Length>("stub"), reader.number("loss_coefficient"));
  if (kind == "clogged")
    return clogged(line, outlet, reader.needed("share", reader.number("share"), 0.5));
  if (kind == "worn")
    return worn(line, outlet, reader.needed("share", reader.number("share"), 0.5));
  if (kind != "capped")
    reader.mistake("kind", fmt::format("is \"{}\"; accepted are {}", kind.substr(0, 60), kinds));
  return capped(line, outlet);
}

/// Reads a whole file. Definitions are examined where they stand, all else by Layout's own rules.
class LayoutReader {
 public:
  LayoutReader(const toml::table& root, const std::string& file)
      : mistakes_(file), root_(root, "", "", mistakes_) {}

  Layout read() {
    site_.name = root_.text("name").value_or("");
    if (const toml::table* table = root_.table("site")) read_site(*table);
    if (const toml::table* table = root_.table("water")) read_water(*table);
    if (const toml::table* table = root_.table("supply"))
      read_supply(*table);
    else
      root_.mistake("supply", "is not given; write [supply] and under it pressure = \"34 psi\"");
    read_definitions("pipe", pipes_, [](TableReader& reader) { return read_pipe(reader); });
    read_definitions("outlet", outlets_, [](TableReader& reader) { return read_outlet(reader); });
    read_lines(root_.tables("line"));
    for (const toml::table* table : root_.tables("fault")) read_fault(*table);
    root_.finish();

    for (const Problem& problem : problems(supply_, lines_, water_, site_, faults_)) place(problem);
    mistakes_.throw_if_any();
    return Layout(supply_, std::move(lines_), water_, std::move(site_)).with_faults(faults_);
  }

 private:
  using Readers = std::map<std::string, TableReader, std::less<>>;

  /// Keeps the reader of a part, to find the positions of its fields later.
  TableReader& reader_of(const toml::table& table,
                         const std::string& place,
                         const std::string& prefix = "") {
    const std::string id = place + (prefix.empty() ? "" : "|" + prefix);
    return readers_.emplace(id, TableReader(table, place, prefix, mistakes_)).first->second;
  }

  void read_site(const toml::table& table) {
    TableReader& reader = reader_of(table, "site");
    site_.altitude = reader.quantity<Length>("altitude");
    reader.finish();
  }

  void read_water(const toml::table& table) {
    TableReader& reader = reader_of(table, "water");
    water_.temperature = reader.quantity<Temperature>("temperature");
    water_.density = reader.quantity<Density>("density");
    water_.kinematic_viscosity = reader.quantity<KinematicViscosity>("kinematic_viscosity");
    reader.finish();
  }

  void read_supply(const toml::table& table) {
    TableReader& reader = reader_of(table, "supply");
    supply_.pressure = reader.needed("pressure", reader.quantity<Pressure>("pressure"));
    supply_.elevation = reader.quantity<Length>("elevation");
    site_.units =
        reader.text("pressure").value_or("").ends_with("psi") ? UnitSystem::us : UnitSystem::si;
    reader.finish();
  }

  template <class T, class Read>
  void read_definitions(const char* kind, std::map<std::string, T>& definitions, Read read) {
    const toml::table* all = root_.table(kind);
    if (!all) return;
    for (const auto& [key, node] : *all) {
      const std::string name(key.str());
      const std::string place = fmt::format("{} \"{}\"", kind, name.substr(0, 60));
      if (!node.is_table()) {
        mistakes_.add(
            node.source().begin, place, "", fmt::format("must be a table, [{}.{}]", kind, name));
        continue;
      }
      TableReader& reader = reader_of(*node.as_table(), place);
      T definition = read(reader);
      definition.name = name;
      reader.finish();
      for (const Problem& problem : problems(definition))
        reader.mistake(problem.key, problem.message);
      definitions.emplace(name, definition);
    }
  }

  static Pipe read_pipe(TableReader& reader) {
    return {.inside_diameter =
                reader.needed("inside_diameter", reader.quantity<Length>("inside_diameter")),
            .hazen_williams = reader.number("hazen_williams"),
            .roughness = reader.quantity<Length>("roughness"),
            .darcy_factor = reader.number("darcy_factor")};
  }

  static Outlet read_outlet(TableReader& reader) {
    return {.flow = reader.needed("flow", reader.quantity<Flow>("flow")),
            .at = reader.needed("at", reader.quantity<Pressure>("at")),
            .exponent = reader.number("exponent"),
            .rated = reader.quantity<Pressure>("rated"),
            .minimum = reader.quantity<Pressure>("minimum"),
            .maximum = reader.quantity<Pressure>("maximum")};
  }

  Riser read_riser(const toml::table& table, const std::string& place) {
    TableReader& reader = reader_of(table, place, "riser.");
    Riser riser{.height = reader.needed("height", reader.quantity<Length>("height")),
                .inside_diameter = reader.quantity<Length>("inside_diameter"),
                .hazen_williams = reader.number("hazen_williams"),
                .roughness = reader.quantity<Length>("roughness"),
                .darcy_factor = reader.number("darcy_factor"),
                .loss_coefficient = reader.number("loss_coefficient")};
    reader.finish();
    return riser;
  }

  void read_lines(const std::vector<const toml::table*>& tables) {
    for (const toml::table* table : tables)
      lines_.push_back({.name = (*table)["name"].value_or(std::string())});
    const std::vector<std::string> places = places_of(lines_);
    for (std::size_t i = 0; i < lines_.size(); ++i) read_line(*tables[i], places[i], lines_[i]);
  }

  void read_line(const toml::table& table, const std::string& place, Line& line) {
    TableReader& reader = reader_of(table, place);
    reader.needed("name", reader.text("name"));
    line.fed_by = reader.text("fed_by").value_or("");
    if (line.fed_by.empty() && table.contains("fed_by"))
      reader.mistake("fed_by", "is empty; leave the key out where the supply feeds the line");
    const std::string pipe = reader.needed("pipe", reader.text("pipe"));
    if (!pipe.empty()) line.pipe = referred(reader, "pipe", pipe, pipes_);
    if (const auto outlet = reader.text("outlet"))
      line.outlet = referred(reader, "outlet", *outlet, outlets_);
    else if (table.contains("outlet"))
      line.outlet = Outlet{};  // its mistake is on the list; spares those that would follow from it
    line.count = reader.whole_number("count", 1, most_outlets);
    line.spacing = reader.quantity<Length>("spacing");
    line.first_at = reader.quantity<Length>("first_at");
    line.length = reader.quantity<Length>("length");
    line.ground_rise = reader.quantity<Length>("ground_rise");
    line.loss_coefficient = reader.number("loss_coefficient");
    line.outlet_loss_coefficient = reader.number("outlet_loss_coefficient");
    if (const toml::table* riser = reader.table("riser")) line.riser = read_riser(*riser, place);
    reader.finish();
  }

  template <class T>
  static T referred(TableReader& reader,
                    const char* key,
                    const std::string& name,
                    const std::map<std::string, T>& definitions) {
    const auto found = definitions.find(name);
    if (found != definitions.end()) return found->second;
    reader.mistake(key,
                   fmt::format("is \"{}\", but there is no [{}.{}]; there are {}",
                               name.substr(0, 60),
                               key,
                               name.substr(0, 60),
                               names_of(definitions)));
    return {};
  }

  void read_fault(const toml::table& table) {
    TableReader& reader = reader_of(table, fmt::format("fault {}", faults_.size() + 1));
    faults_.push_back(read_fault_table(reader));
    reader.finish();
  }

  /// Gives a Problem of the layout its position in the file.
  void place(const Problem& problem) {
    const bool defined_elsewhere =
        problem.place.starts_with("line") &&
        (problem.key.starts_with("pipe.") || problem.key.starts_with("outlet."));
    if (defined_elsewhere) return;  // said at the definition
    std::string key = problem.key;
    std::string prefix;
    if (key.starts_with("riser.") && problem.place.starts_with("line")) {
      prefix = "riser.";
      key = key.substr(prefix.size());
    }
    auto reader = readers_.find(problem.place + (prefix.empty() ? "" : "|" + prefix));
    if (reader == readers_.end())
      return root_.mistake(problem.key, problem.place + ": " + problem.message);
    reader->second.mistake(key, problem.message);
  }

  Mistakes mistakes_;
  TableReader root_;
  Readers readers_;
  std::map<std::string, Pipe> pipes_;
  std::map<std::string, Outlet> outlets_;
  Supply supply_;
  Water water_;
  Site site_;
  std::vector<Line> lines_;
  std::vector<Fault> faults_;
};

toml::table parse(std::string_view text, const std::string& name) {
  if (text.size() > most_bytes)
    throw InvalidInput(name, fmt::format("has more than {} MiB of text", most_bytes >> 20));
  try {
    return toml::parse(text, std::string_view(name));
  } catch (const toml::parse_error& error) {
    const Position& where = error.source().begin;
    throw InvalidInput(fmt::format("{}:{}:{}", name, where.line, where.column),
                       fmt::format("is not TOML: {}", error.description()));
  }
}

std::string contents_of(const std::filesystem::path& file) {
  const std::string name = file.string();
  std::error_code error;
  if (std::filesystem::is_directory(file, error))
    throw InvalidInput(name, "is a directory; a description file is wanted");
  std::ifstream stream(file, std::ios::binary);
  if (!stream)
    throw InvalidInput(
        name,
        std::filesystem::exists(file, error) ? "cannot be opened for reading" : "does not exist");
  std::string text(most_bytes + 1, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (stream.bad()) throw InvalidInput(name, "cannot be read");
  text.resize(static_cast<std::size_t>(stream.gcount()));
  return text;
}

}  // namespace

Layout read_layout(const std::filesystem::path& file) {
  return read_layout_text(contents_of(file), file.string());
}

Layout read_layout_text(std::string_view text, const std::string& name) {
  const toml::table root = parse(text, name);
  return LayoutReader(root, name).read();
}

Fault read_fault(std::string_view text) {
  const std::string name = "fault";
  const toml::table root = parse(fmt::format("fault={{{}}}", text), name);
  const toml::table* table = root["fault"].as_table();
  if (root.size() != 1 || !table)
    throw InvalidInput(
        name, "is more than the inside of one table; write line = \"row 2\", outlet = 7, ...");
  Mistakes mistakes(name);
  TableReader reader(*table, "", "", mistakes);
  Fault fault = read_fault_table(reader);
  reader.finish();
  mistakes.throw_if_any();
  return fault;
}

}  // namespace hydro
