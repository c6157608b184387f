#include "hydro/text/read_layout.hpp"

#include "hydro/text/read_parts.hpp"
#include "hydro/text/read_supply.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Reads a whole file. Definitions are examined where they stand, all else by Layout's own rules.
class LayoutReader {
 public:
  LayoutReader(const toml::table& root, const std::string& file, const FileLimits& limits)
      : mistakes_(file, limits), root_(root, "", "", mistakes_) {}

  const OutletsByName& outlets() const { return outlets_; }

  Layout read() {
    site_.name = root_.text("name").value_or("");
    if (const toml::table* table = root_.table("site")) read_site(*table);
    if (const toml::table* table = root_.table("water")) read_water(*table);
    read_definitions("pipe", pipes_, [](TableReader& reader) { return read_pipe(reader); });
    read_definitions("outlet", outlets_, [](TableReader& reader) { return read_outlet(reader); });
    if (const toml::table* table = root_.table("supply")) {
      supply_ = read_supply(*table, "supply");
      site_.units = units_of_supply(*table);
    } else {
      root_.mistake(
          "supply",
          fmt::format("is not given; write [supply] and under it {}", ways_to_supply("supply")));
    }
    for (const toml::table* table : root_.tables("further_supply", limits().supplies))
      further_supplies_.push_back(
          read_supply(*table, fmt::format("further supply {}", further_supplies_.size() + 1)));
    read_lines(root_.tables("line", limits().lines));
    for (const toml::table* table : root_.tables("set", limits().sets)) read_set(*table);
    for (const toml::table* table : root_.tables("fault", limits().faults)) read_fault(*table);
    for (const char* reserved : {"block", "weather"}) root_.accept(reserved);  // read_blocks.hpp
    for (const char* reserved : {"reading", "sight"}) root_.accept(reserved);  // read_readings.hpp
    root_.finish();

    place_all(problems(supply_, lines_, water_, site_, sets_, faults_, further_supplies_));
    const Layout sound(supply_,
                       std::move(lines_),
                       water_,
                       std::move(site_),
                       std::move(sets_),
                       std::move(further_supplies_));
    try {
      return sound.with_faults(faults_);
    } catch (const InvalidInput& error) {  // one lies where another lets no water come
      place_all(error.problems());
      throw;
    }
  }

 private:
  using Readers = std::map<std::string, TableReader, std::less<>>;

  const FileLimits& limits() const { return mistakes_.limits(); }

  /// Keeps the reader of a part under its id, to find the positions of its fields later.
  TableReader& reader_of(const toml::table& table,
                         const std::string& id,
                         const std::string& place,
                         const std::string& prefix = "") {
    return readers_.emplace(id, TableReader(table, place, prefix, mistakes_)).first->second;
  }

  void read_site(const toml::table& table) {
    TableReader& reader = reader_of(table, "site", "site");
    site_.altitude = reader.quantity<Length>("altitude");
    reader.finish();
  }

  void read_water(const toml::table& table) {
    TableReader& reader = reader_of(table, "water", "water");
    water_.temperature = reader.quantity<Temperature>("temperature");
    water_.density = reader.quantity<Density>("density");
    water_.kinematic_viscosity = reader.quantity<KinematicViscosity>("kinematic_viscosity");
    reader.finish();
  }

  /// @param place in errors
  Supply read_supply(const toml::table& table, const std::string& place) {
    TableReader& reader = reader_of(table, place, place);
    Supply supply;
    if (place != "supply")
      supply.name = reader.needed("name", reader.text("name"));
    else if (reader.gives("name"))  // the layout tells why it has none
      supply.name = reader.text("name").value_or("");
    supply.pressure = reader.quantity<Pressure>("pressure");
    read_part(reader, "pump", supply.pump, read_pump);
    read_part(reader, "tank", supply.tank, read_tank);
    read_part(reader, "hydrant", supply.hydrant, read_hydrant);
    read_part(reader, "second_pump", supply.second_pump, read_pump);
    supply.arrangement = reader.choice<PumpArrangement>("arrangement");
    read_part(reader, "suction", supply.suction, [&](TableReader& part) {
      return read_suction(part, pipes_);
    });
    read_part(reader, "filter", supply.filter, read_filter);
    read_part(reader, "gauge", supply.gauge, read_gauge);
    supply.elevation = reader.quantity<Length>("elevation");
    if (!reader.gives("pressure") && !supply.pump && !supply.tank && !supply.hydrant)
      reader.mistake("pressure",
                     fmt::format("is not given; write {}",
                                 ways_to_supply(place == "supply" ? "supply" : "further_supply")));
    reader.finish();
    return supply;
  }

  /// One of a supply's tables; a stand-in, which is not examined, where it is none.
  template <class T, class Read>
  void read_part(TableReader& supply, const char* key, std::optional<T>& part, Read read_fields) {
    if (const toml::table* table = supply.table(key)) {
      TableReader& reader = reader_of(*table,
                                      fmt::format("{} {}", supply.place(), key),
                                      supply.place(),
                                      fmt::format("{}.", key));
      part = read_fields(reader);
      reader.finish();
    } else if (supply.gives(key)) {
      part.emplace();
    }
  }

  template <class T, class Read>
  void read_definitions(const char* kind, std::map<std::string, T>& definitions, Read read) {
    const toml::table* all = root_.table(kind);
    if (!all || root_.has_too_many(*all, kind, limits().definitions)) return;
    for (const auto& [key, node] : *all) {
      const std::string name(key.str());
      const std::string place = fmt::format("{} {}", kind, in_quotes(name));
      if (!node.is_table()) {
        mistakes_.add(node.source().begin,
                      place,
                      "",
                      fmt::format("{}; must be a table, [{}.NAME]", what_it_is(node), kind));
        continue;
      }
      TableReader& reader = reader_of(*node.as_table(), fmt::format("{} {}", kind, name), place);
      T definition = read(reader);
      definition.name = name;
      reader.finish();
      for (const Problem& problem : problems(definition))
        reader.mistake(problem.key, problem.message);
      definitions.emplace(name, definition);
    }
  }

  Riser read_riser(const toml::table& table, const std::string& place) {
    TableReader& reader = reader_of(table, place + " riser", place, "riser.");
    Riser riser{.height = reader.needed("height", reader.quantity<Length>("height"))};
    const auto nominal = read_nominal_pipe(reader);
    const auto bore = reader.quantity<Length>("inside_diameter");
    riser.inside_diameter = nominal ? nominal->inside_diameter : bore;
    riser.hazen_williams = reader.number("hazen_williams");
    riser.roughness = reader.quantity<Length>("roughness");
    riser.darcy_factor = reader.number("darcy_factor");
    if (nominal && !riser.hazen_williams && !riser.roughness && !riser.darcy_factor)
      riser.hazen_williams = nominal->hazen_williams;
    riser.loss_coefficient = reader.number("loss_coefficient");
    reader.finish();
    return riser;
  }

  void read_lines(const std::vector<const toml::table*>& tables) {
    lines_were_read_ = !mistakes_.has("", "line");
    for (const toml::table* table : tables)
      lines_.push_back({.name = (*table)["name"].value_or(std::string())});
    const std::vector<std::string> places = places_of(lines_);
    for (std::size_t i = 0; i < lines_.size(); ++i) read_line(*tables[i], places[i], lines_[i]);
    std::int64_t outlets = 0;
    for (const Line& line : lines_) outlets += line.outlet_count();
    if (outlets > limits().outlets)
      mistakes_.add(
          root_.position_of("line"),
          "lines",
          "count",
          fmt::format("adds up to {} outlets, must be at most {}", outlets, limits().outlets));
  }

  void read_line(const toml::table& table, const std::string& place, Line& line) {
    TableReader& reader = reader_of(table, place, place);
    reader.needed("name", reader.text("name"));
    line.fed_by = read_name_of_other(reader, "fed_by", "where the supply feeds the line");
    line.tap = reader.quantity<Length>("tap");
    line.tap_outlet = reader.whole_number("tap_outlet", 1, most_outlets);
    line.joins = read_name_of_other(reader, "joins", "where the line's far end is closed");
    line.joins_at = reader.quantity<Length>("joins_at");
    line.joins_outlet = reader.whole_number("joins_outlet", 1, most_outlets);
    const auto pipe = reader.text("pipe");
    reader.needed("pipe", pipe);
    if (pipe) line.pipe = referred(reader, "pipe", *pipe, pipes_);
    for (TableReader* part :
         parts_of(reader, "reaches", limits().reaches, "[{ pipe = \"wide\", to = \"126 ft\" }]")) {
      const auto wide = part->needed("pipe", part->text("pipe"));
      line.reaches.push_back({wide.empty() ? Pipe{} : referred(*part, "pipe", wide, pipes_),
                              part->needed("to", part->quantity<Length>("to"))});
      part->finish();
    }
    if (const auto outlet = reader.text("outlet"))
      line.outlet = referred(reader, "outlet", *outlet, outlets_);
    else if (table.contains("outlet"))
      line.outlet = Outlet{};  // its mistake is on the list; spares those that would follow from it
    for (TableReader* part : parts_of(
             reader, "outlets", limits().outlets, "[{ place = \"18 ft\", outlet = \"spray\" }]")) {
      const auto distance = part->needed("place", part->quantity<Length>("place"));
      const auto kind = part->needed("outlet", part->text("outlet"));
      line.outlets.push_back(
          {distance, kind.empty() ? Outlet{} : referred(*part, "outlet", kind, outlets_)});
      part->finish();
    }
    line.count = reader.whole_number("count", 1, most_outlets);
    line.spacing = reader.quantity<Length>("spacing");
    line.first_at = reader.quantity<Length>("first_at");
    line.length = reader.quantity<Length>("length");
    line.ground_rise = reader.quantity<Length>("ground_rise");
    line.valve = read_line_valve(reader);
    line.check_valve = reader.truth("check_valve");
    line.regulator = reader.quantity<Pressure>("regulator");
    line.elevations = reader.quantities<Length>("elevations");
    line.loss_coefficient = reader.number("loss_coefficient");
    line.outlet_loss_coefficient = reader.number("outlet_loss_coefficient");
    line.connection_length = reader.quantity<Length>("connection_length");
    if (const toml::table* riser = reader.table("riser")) line.riser = read_riser(*riser, place);
    reader.finish();
  }

  /// "shut", or a table.
  std::optional<Valve> read_line_valve(TableReader& line) {
    if (line.is_table("valve")) {
      TableReader& reader =
          reader_of(*line.table("valve"), line.place() + " valve", line.place(), "valve.");
      const Valve valve = read_valve(reader);
      reader.finish();
      return valve;
    }
    const auto word = line.text("valve");
    if (!line.gives("valve")) return std::nullopt;
    if (word && *word != word_of(ValveOpening::shut))
      line.mistake("valve",
                   fmt::format("is {}; write \"{}\", or {{ kind = \"{}\", opening = \"{}\" }}",
                               in_quotes(*word),
                               word_of(ValveOpening::shut),
                               word_of(ValveKind::gate),
                               word_of(ValveOpening::half_closed)));
    return Valve{.opening = ValveOpening::shut};
  }

  /// Readers of the tables of a list inside a line.
  std::vector<TableReader*> parts_of(TableReader& line,
                                     const char* key,
                                     int most,
                                     const char* example) {
    std::vector<TableReader*> readers;
    for (const toml::table* table : line.tables(key, most, example)) {
      const std::string part = fmt::format("{}, {}", key, readers.size() + 1);
      readers.push_back(&reader_of(*table, line.place() + " " + part, line.place(), part + "."));
    }
    return readers;
  }

  void read_set(const toml::table& table) {
    const std::string place = fmt::format("set {}", sets_.size() + 1);
    TableReader& reader = reader_of(table, place, place);
    sets_.push_back({.name = reader.needed("name", reader.text("name")), .lines = {}});
    sets_.back().lines = reader.texts("lines");
    if (!reader.gives("lines"))
      reader.mistake("lines", "is not given; name those that are opened, [\"row 1\", \"row 2\"]");
    reader.finish();
  }

  void read_fault(const toml::table& table) {
    const std::string place = fmt::format("fault {}", faults_.size() + 1);
    TableReader& reader = reader_of(table, place, place);
    faults_.push_back(read_fault_table(reader, outlets_));
    if (reader.has_mistake("kind")) unread_.insert(place);
    reader.finish();
  }

  /// Throws when there are any.
  void place_all(const std::vector<Problem>& problems) {
    for (const Problem& problem : problems) place(problem);
    mistakes_.throw_if_any();
  }

  /// Gives a Problem of the layout its position in the file.
  void place(const Problem& problem) {
    const bool defined_elsewhere =
        (problem.place.starts_with("line") || problem.place == "supply" ||
         problem.place.starts_with("further supply")) &&
        (problem.key.starts_with("pipe.") || problem.key.starts_with("outlet.") ||
         problem.key.find(".pipe.") != std::string::npos ||
         problem.key.find(".outlet.") != std::string::npos);
    if (defined_elsewhere) return;  // said at the definition
    if (unread_.contains(problem.place)) return;
    if (problem.place == "supply" && mistakes_.has("", "supply")) return;
    const bool names_a_supply = problem.key == "fed_by" || problem.key == "supply";
    if (names_a_supply && mistakes_.has("", "further_supply")) return;
    if (problem.place.starts_with("set") && !lines_were_read_) return;
    if (problem.place == "further supplies") {
      mistakes_.add(
          root_.position_of("further_supply"), problem.place, problem.key, problem.message);
      return;
    }
    if (problem.place == "lines") {
      if (!problem.key.empty() || lines_were_read_)
        mistakes_.add(root_.position_of("line"), problem.place, problem.key, problem.message);
      return;
    }
    // A key like `riser.height` belongs to a table inside.
    const std::size_t dot = problem.key.find('.');
    if (dot != std::string::npos) {
      if (mistakes_.has(problem.place, problem.key.substr(0, dot))) return;
      const auto part = readers_.find(problem.place + " " + problem.key.substr(0, dot));
      if (part != readers_.end())
        return part->second.mistake(problem.key.substr(dot + 1), problem.message);
    }
    const auto reader = readers_.find(problem.place);
    if (reader != readers_.end()) return reader->second.mistake(problem.key, problem.message);
    mistakes_.add(root_.position(), problem.place, problem.key, problem.message);
  }

  Mistakes mistakes_;
  TableReader root_;
  Readers readers_;
  std::map<std::string, Pipe> pipes_;
  OutletsByName outlets_;
  Supply supply_;
  std::vector<Supply> further_supplies_;
  Water water_;
  Site site_;
  std::vector<Line> lines_;
  bool lines_were_read_ = false;
  std::vector<WateringSet> sets_;
  std::vector<Fault> faults_;
  std::set<std::string>
      unread_;  // places of faults of no known kind, which something else stands for
};

}  // namespace

Layout read_layout(const std::filesystem::path& file, const FileLimits& limits) {
  return read_layout_text(contents_of(file, limits), printable(file.string()), limits);
}

Layout read_layout_text(std::string_view text, const std::string& name, const FileLimits& limits) {
  const toml::table root = parse(text, name, limits);
  return LayoutReader(root, name, limits).read();
}

std::vector<Outlet> read_outlets(const std::filesystem::path& file, const FileLimits& limits) {
  const std::string name = printable(file.string());
  const toml::table root = parse(contents_of(file, limits), name, limits);
  LayoutReader reader(root, name, limits);
  reader.read();
  std::vector<Outlet> outlets;
  for (const auto& [key, outlet] : reader.outlets()) outlets.push_back(outlet);
  return outlets;
}

Fault read_fault(std::string_view text,
                 const std::vector<Outlet>& outlets,
                 const FileLimits& limits) {
  constexpr std::string_view before = "fault={";
  const std::string name = "fault";
  const std::string whole = fmt::format("{}{}}}", before, text);
  const toml::table root = parse(whole, name, limits, before.size());
  const toml::table* table = root["fault"].as_table();
  // The table must be the whole of it: nothing may close it early, not even before a comment.
  const auto characters = std::count_if(whole.begin(), whole.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  });
  if (root.size() != 1 || !table || table->source().end.column != characters + 1)
    throw InvalidInput(
        name, "is more than the inside of one table; write line = \"row 2\", outlet = 7, ...");
  OutletsByName by_name;
  for (const Outlet& outlet : outlets) by_name.emplace(outlet.name, outlet);
  Mistakes mistakes(name, limits, before.size());
  TableReader reader(*table, "", "", mistakes);
  Fault fault = read_fault_table(reader, by_name);
  reader.finish();
  mistakes.throw_if_any();
  return fault;
}

}  // namespace hydro
