#include "hydro/text/day_csv.hpp"

#include "hydro/text/csv_rows.hpp"
#include "hydro/text/finite.hpp"

#include <cstddef>
#include <optional>

#include <fmt/format.h>

namespace hydro {
namespace {

class Table {
 public:
  explicit Table(const DayPlan& plan) : plan_(plan) {}

  std::string write() {
    for (const char* name : {"turn",
                             "sets",
                             "fill_from_s",
                             "start_s",
                             "stop_s",
                             "speed_r_per_s",
                             "pressure_pa",
                             "gauge_reading_pa",
                             "flow_m3_per_s",
                             "fill_m3",
                             "let_out_m3",
                             "lost_m3",
                             "water_energy_j",
                             "shaft_energy_j"})
      rows_.cell(name);
    rows_.end();
    for (const Turn& turn : plan_.turns) row(turn);
    return rows_.take();
  }

 private:
  void row(const Turn& turn) {
    rows_.number(++turn_);
    std::string sets;
    for (const std::string& set : turn.sets) sets += (sets.empty() ? "" : "; ") + set;
    rows_.cell(sets);
    number("fill_from", turn.fill_from);
    number("start", turn.start);
    number("stop", turn.stop);
    number("speed", turn.speed);
    number("pressure", turn.pressure);
    number("gauge_reading", turn.gauge_reading);
    number("flow", turn.flow);
    number("fill", turn.fill);
    number("let_out", turn.let_out);
    number("lost", turn.lost);
    number("water_energy", turn.water_energy);
    number("shaft_energy", turn.shaft_energy);
    rows_.end();
  }

  template <class Q>
  void number(const char* name, const std::optional<Q>& value) {
    if (value)
      number(name, *value);
    else
      rows_.cell("");
  }
  template <class Q>
  void number(const char* name, const Q& value) {
    require_finite(si(value), [&] { return fmt::format("turn {}: {}", turn_, name); });
    rows_.number(si(value));
  }

  const DayPlan& plan_;
  std::size_t turn_ = 0;
  CsvRows rows_;
};

}  // namespace

std::string to_csv(const DayPlan& plan) {
  return Table(plan).write();
}

}  // namespace hydro
