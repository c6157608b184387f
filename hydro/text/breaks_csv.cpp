#include "hydro/text/breaks_csv.hpp"

#include "hydro/text/csv_rows.hpp"
#include "hydro/text/finite.hpp"

#include <cstddef>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr auto figures_of_a_break = {"escaping_m3_per_s",
                                     "missing_m3_per_s",
                                     "inflow_m3_per_s",
                                     "supply_pressure_pa",
                                     "gauge_reading_pa",
                                     "more_below_rated",
                                     "more_out_of_work",
                                     "more_dry",
                                     "more_above_maximum",
                                     "weakest_line",
                                     "weakest_outlet",
                                     "weakest_pressure_pa",
                                     "weakest_share"};

class Table {
 public:
  explicit Table(const Breaks& breaks) : all_(breaks), has_profiles_(!breaks.pressure.empty()) {}

  std::string write() {
    header();
    std::size_t broken = 0;
    std::size_t not_solved = 0;
    std::size_t skipped = 0;
    const auto is_next = [](const OutletNumber& it, const auto& list, std::size_t at) {
      return at < list.size() && list[at].line == it.line && list[at].outlet == it.outlet;
    };
    for (const OutletNumber& it : all_.outlets) {
      rows_.cell(it.line);
      rows_.number(it.outlet);
      if (is_next(it, all_.breaks, broken))
        solved(broken++);
      else if (is_next(it, all_.not_solved, not_solved))
        left_out("not_solved", all_.not_solved[not_solved++]);
      else if (is_next(it, all_.skipped, skipped))
        left_out("skipped", all_.skipped[skipped++]);
      rows_.end();
    }
    return rows_.take();
  }

 private:
  void header() {
    for (const char* name : {"line", "outlet", "outcome", "why"}) rows_.cell(name);
    for (const char* name : figures_of_a_break) rows_.cell(name);
    if (has_profiles_)
      for (const OutletNumber& it : all_.outlets)
        rows_.cell(fmt::format("pressure_pa of {}, outlet {}", it.line, it.outlet));
    rows_.end();
  }

  void left_out(const char* outcome, const LeftOut& it) {
    rows_.cell(outcome);
    rows_.cell(it.why);
    empty_cells(figures_of_a_break.size() + (has_profiles_ ? all_.outlets.size() : 0));
  }

  void solved(std::size_t index) {
    const Break& it = all_.breaks[index];
    rows_.cell("solved");
    rows_.cell("");
    number(it, "escaping", si(it.escaping));
    number(it, "missing", si(it.missing));
    number(it, "inflow", si(it.inflow));
    number(it, "supply_pressure", si(it.supply_pressure));
    number(it, "gauge_reading", si(it.gauge_reading));
    rows_.number(it.more_below_rated);
    rows_.number(it.more_out_of_work);
    rows_.number(it.more_dry);
    rows_.number(it.more_above_maximum);
    if (it.weakest) {
      rows_.cell(it.weakest->line);
      rows_.number(it.weakest->outlet);
      number(it, "weakest.pressure", si(it.weakest->pressure));
      number(it, "weakest.rated", it.weakest->pressure / it.weakest->rated);
    } else {
      empty_cells(4);
    }
    if (!has_profiles_) return;
    const std::size_t row = index * all_.outlets.size();
    for (std::size_t j = 0; j < all_.outlets.size(); ++j)
      number(it, "pressure", all_.pressure.si()[row + j]);
  }

  void number(const Break& it, const char* name, double value) {
    require_finite(value, [&] {
      return fmt::format("break of line {}, outlet {}: {}", in_quotes(it.line), it.outlet, name);
    });
    rows_.number(value);
  }

  void empty_cells(std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) rows_.cell("");
  }

  const Breaks& all_;
  bool has_profiles_;
  CsvRows rows_;
};

}  // namespace

std::string to_csv(const Breaks& breaks) {
  return Table(breaks).write();
}

}  // namespace hydro
