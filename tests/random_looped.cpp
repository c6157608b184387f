#include "random_looped.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "random_parts.hpp"

namespace hydro {
namespace {

/// Lines and supplies as they are put together.
struct Parts {
  std::vector<Line> lines;
  Supply supply;
  std::vector<Supply> further;
};

class Builder {
 public:
  Builder(std::uint64_t seed, const LoopedMix& mix)
      : dice_(seed), seed_(seed), mix_(mix), alike_(dice_.chance(0.3)) {
    all_.supply = {.pressure = (dice_.chance(0.1) ? 0 : dice_.log_between(1, 800)) * kPa,
                   .elevation = dice_.between(-500, 500) * units::m};
    scale_ = dice_.log_between(0.1, 10);
    pattern_ = random_line(dice_, mix_.parts, scale_, true);
    pipe_ = random_line(dice_, mix_.parts, scale_, false);
  }

  Layout build() {
    switch (dice_.whole(0, 5)) {
      case 0:
        grow();
        break;
      case 1:
        rows_between_two_mains();
        break;
      case 2:
        ring_main();
        break;
      case 3:
        grid();
        break;
      case 4:
        ponds();
        break;
      default:
        fed_from_both_ends();
    }
    while (dice_.chance(0.4)) join_any();
    if (dice_.chance(0.2)) begin_at_another_supply();
    give_sources();
    give_one_way_elements();
    shut_some();
    const std::vector<WateringSet> sets =
        mix_.parts.farm ? random_sets(dice_, all_.lines) : std::vector<WateringSet>{};
    Layout layout = sound(sets);
    if (!sets.empty() && dice_.chance(0.8)) layout = layout.watering({layout.sets()[0].name});
    layout = layout.with_possible_faults(faults()).layout;
    return dice_.chance(0.3) ? with_a_step(layout) : layout;
  }

 private:
  Line& add(Line line, const std::string& name, const std::string& fed_by = {}) {
    line.name = name;
    line.fed_by = fed_by;
    all_.lines.push_back(std::move(line));
    return all_.lines.back();
  }
  Line row() { return alike_ ? flat(pattern_) : random_line(dice_, mix_.parts, scale_, true); }
  Line pipe() { return alike_ ? flat(pipe_) : random_line(dice_, mix_.parts, scale_, false); }
  Line row_or_pipe() { return dice_.chance(0.6) ? row() : pipe(); }
  static Line flat(Line line) {
    line.ground_rise.reset();
    return line;
  }

  Line& any_line() {
    return all_
        .lines[static_cast<std::size_t>(dice_.whole(0, static_cast<int>(all_.lines.size()) - 1))];
  }
  Line& line(const std::string& name) { return *std::ranges::find(all_.lines, name, &Line::name); }

  std::string another_supply() {
    Supply supply = all_.supply;
    supply.name = "supply " + std::to_string(all_.further.size() + 2);
    if (!alike_) {
      *supply.elevation += dice_.between(-1, 1) * dice_.log_between(0.01, 40) * units::m;
      supply.pressure = (dice_.chance(0.2) ? 0 : dice_.log_between(1, 800)) * kPa;
    }
    all_.further.push_back(supply);
    return supply.name;
  }

  /// At its far end, one of its outlets, or anywhere along it, even on itself.
  void join(Line& from, const std::string& to) {
    if (!from.joins.empty()) return;
    from.joins = to;
    const Line& joined = line(to);
    const double where = dice_.between(0, 1);
    if (where < 0.3 && joined.outlet_count() > 0)
      from.joins_outlet = dice_.whole(1, joined.outlet_count());
    else if (where < 0.7 || from.name == to)
      from.joins_at = some_place(dice_, joined);
    fit_the_ground(from);
  }
  void join_any() {
    Line& from = any_line();
    join(from, any_line().name);
  }
  void join_at(Line& from, const std::string& to, const Length& place) {
    from.joins = to;
    from.joins_at = place;
    fit_the_ground(from);
  }
  void fit_the_ground(Line& from) {
    from.ground_rise.reset();
    if (from.joins == from.name) {
      from.elevations.clear();
      from.ground_rise = Length{};
    }
    if (!from.elevations.empty())
      from.length = from.whole_length() + dice_.between(0.1, 5) * units::m;
  }

  void grow() {
    Mix tree = mix_.parts;
    tree.farm = false;
    all_.lines = random_layout(seed_, tree).lines();
    all_.supply.elevation = random_layout(seed_, tree).supply().elevation;
    const int joints = 1 + dice_.whole(0, static_cast<int>(all_.lines.size()) / 2);
    for (int i = 0; i < joints; ++i) join_any();
  }

  /// The farther main is fed by the first row, by a supply of its own, or only by the rows.
  void rows_between_two_mains() {
    const double rows = dice_.whole(2, 8);
    const Length gap = dice_.log_between(1, 20) * units::m;
    Line near = pipe(), far = pipe();
    near.length = rows * gap;
    far.length = (rows - 1) * gap;
    add(near, "near main");
    const double kind = dice_.between(0, 1);
    const std::string feeder = kind < 0.6 ? "row 1" : kind < 0.9 ? another_supply() : "near main";
    for (int i = 1; i <= rows; ++i)
      add(row_or_pipe(), "row " + std::to_string(i), "near main").tap =
          static_cast<double>(i) * gap;
    add(far, "far main", feeder);
    if (kind >= 0.9) line("far main").valve = Valve{.opening = ValveOpening::shut};
    for (int i = kind < 0.6 ? 2 : 1; i <= rows; ++i)
      join_at(line("row " + std::to_string(i)), "far main", static_cast<double>(i - 1) * gap);
  }

  void ring_main() {
    if (dice_.chance(0.5)) {
      Line& ring = add(pipe(), "ring");
      join_at(ring, "ring", (dice_.chance(0.3) ? 0 : dice_.between(0, 0.9)) * *ring.length);
    } else {
      add(pipe(), "stem");
      add(row_or_pipe(), "ring", "stem");
      add(alike_ ? all_.lines[1] : row_or_pipe(), "other way", "stem");
      join_at(line("other way"), "ring", line("ring").whole_length());
    }
    for (int i = dice_.whole(0, 4); i > 0; --i)
      add(row_or_pipe(), "row " + std::to_string(i), "ring").tap = some_place(dice_, line("ring"));
  }

  void grid() {
    const int mains = dice_.whole(2, 4), cross = dice_.whole(1, 4);
    for (int m = 1; m <= mains; ++m)
      add(dice_.chance(0.5) ? row() : pipe(), "main " + std::to_string(m));
    for (int m = 1; m < mains; ++m)
      for (int c = 1; c <= cross; ++c) {
        const std::string from = "main " + std::to_string(m), to = "main " + std::to_string(m + 1);
        const double share = static_cast<double>(c) / cross;
        add(pipe(), "cross " + std::to_string(m) + " " + std::to_string(c), from).tap =
            share * line(from).whole_length();
        join_at(all_.lines.back(), to, share * line(to).whole_length());
      }
  }

  void ponds() {
    const int others = dice_.whole(1, 4);
    all_.supply.pressure = dice_.chance(0.5) ? 0 * kPa : *all_.supply.pressure;
    add(pipe(), "pipe 1");
    for (int i = 2; i <= others + 1; ++i) {
      const std::string name = "pipe " + std::to_string(i);
      add(dice_.chance(0.8) ? pipe() : row(), name, another_supply());
      if (dice_.chance(0.8))
        join_at(line(name), "pipe 1", line("pipe 1").whole_length());
      else
        join(line(name), "pipe " + std::to_string(dice_.whole(1, i - 1)));
    }
    if (dice_.chance(0.5)) add(row(), "row", "pipe 1");
  }

  void fed_from_both_ends() {
    const int rows = dice_.whole(1, 5);
    for (int i = 1; i <= rows; ++i) {
      const std::string near = "row " + std::to_string(i), far = "back " + std::to_string(i);
      add(row(), near);
      const bool another = all_.further.empty() || dice_.chance(0.3);
      add(row_or_pipe(), far, another ? another_supply() : all_.further.front().name);
      join_at(line(far), near, line(near).whole_length());
    }
  }

  void begin_at_another_supply() {
    Line& begins = any_line();
    begins.tap.reset();
    begins.tap_outlet.reset();
    begins.fed_by = all_.further.empty() ? another_supply() : all_.further.back().name;
  }

  void give_sources() {
    if (!mix_.parts.farm) return;
    if (dice_.chance(0.5)) give_source(dice_, mix_.parts, all_.supply);
    for (Supply& further : all_.further) {
      if (alike_) {
        const std::string name = further.name;
        further = all_.supply;
        further.name = name;
      } else if (dice_.chance(0.6)) {
        give_source(dice_, mix_.parts, further);
      }
    }
  }

  void give_one_way_elements() {
    if (mix_.parts.farm && dice_.chance(0.4)) give_regulators_and_valves(dice_, all_.lines);
    const double share = dice_.chance(0.5) ? dice_.between(0, 0.6) : 0;
    for (Line& line : all_.lines) {
      if (mix_.check_valves && dice_.chance(share)) line.check_valve = dice_.chance(0.95);
      if (!mix_.regulators) line.regulator.reset();
    }
  }

  void shut_some() {
    if (!dice_.chance(0.3)) return;
    for (Line& line : all_.lines)
      if (!line.joins.empty() && dice_.chance(0.3))
        line.valve = Valve{.opening = ValveOpening::shut};
  }

  /// Joints that do not fit, such as to a line that hangs on the joining one for its height, are
  /// taken away.
  Layout sound(const std::vector<WateringSet>& sets) {
    for (;;) {
      const std::vector<Problem> found =
          problems(all_.supply, all_.lines, {}, {}, sets, {}, all_.further);
      if (found.empty()) break;
      const std::vector<std::string> places = places_of(all_.lines);
      bool is_mended = false;
      for (std::size_t i = 0; i < places.size() && !is_mended; ++i)
        if (places[i] == found.front().place) {
          Line& line = all_.lines[i];
          is_mended = !line.joins.empty() || !line.fed_by.empty();
          if (line.joins.empty()) line.fed_by.clear(), line.tap.reset(), line.tap_outlet.reset();
          line.joins.clear();
          line.joins_at.reset();
          line.joins_outlet.reset();
        }
      if (!is_mended) throw InvalidInput(found);
    }
    return Layout(all_.supply, all_.lines, {}, {}, sets, all_.further);
  }

  /// The far end of one line a little higher or lower than where it joins, as it may be measured.
  Layout with_a_step(const Layout& layout) {
    for (std::size_t i = 0; i < layout.lines().size(); ++i) {
      Line line = layout.lines()[i];
      const auto hangs_on_it = [&](const Line& other) {
        return other.fed_by == line.name || other.joins == line.name;
      };
      if (line.joins.empty() || !line.elevations.empty() ||
          std::ranges::any_of(layout.lines(), hangs_on_it))
        continue;
      line.ground_rise = layout.ground_rise(i) + dice_.between(-9, 9) * mm;
      return layout.with_line(line);
    }
    return layout;
  }

  std::vector<Fault> faults() {
    std::vector<Fault> all = random_faults(dice_, mix_.parts, all_.lines);
    for (const Fault& fault : broad_faults(dice_, mix_.parts, all_.lines)) all.push_back(fault);
    if (!mix_.parts.farm) return all;
    for (const Fault& fault : farm_faults(dice_, mix_.parts, all_.lines)) all.push_back(fault);
    for (const Supply& further : all_.further)
      if (dice_.chance(0.2)) all.emplace_back(pump_worn(dice_.between(0.01, 0.9), 1, further.name));
    return all;
  }

  Dice dice_;
  std::uint64_t seed_;
  const LoopedMix& mix_;
  bool alike_;
  double scale_;
  Line pattern_;
  Line pipe_;
  Parts all_;
};

}  // namespace

Layout random_looped(std::uint64_t seed, const LoopedMix& mix) {
  return Builder(seed, mix).build();
}

int loops_of(const Layout& layout) {
  int found = 0;
  std::vector<bool> runs(layout.further_supplies().size() + 1, false);
  for (std::size_t i = 0; i < layout.lines().size(); ++i) {
    const bool has_inlet = !layout.inlet_is_shut(i);
    if (!layout.feeder_of(i) && has_inlet) runs[layout.supply_of(i)] = true;
    const auto joined = layout.joined_by(i);
    if (!joined || layout.open_end_of(i)) continue;
    const Length place = ends_at(layout.lines()[i], layout.lines()[*joined]);
    found += has_inlet && layout.has_water(*joined, place);
  }
  return found + std::max(0, static_cast<int>(std::ranges::count(runs, true)) - 1);
}

}  // namespace hydro
