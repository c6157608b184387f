#include "hydro/text/supply_table.hpp"

#include "hydro/answers/pressure_budget.hpp"
#include "hydro/text/supply_words.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <functional>
#include <string>

#include <fmt/format.h>

namespace hydro {
namespace {

class SupplyTable {
 public:
  SupplyTable(Page& page,
              const OperatingPoint* before,
              const OperatingPoint& now,
              const Supply& supply,
              const Figures& figures)
      : page_(page),
        before_(before),
        now_(now),
        supply_(supply),
        figures_(figures),
        shown_(figures.units()) {}

  void write() {
    page_.line();
    page_.paragraph(
        "",
        fmt::format("Supply{}: {}", (supply_.name.empty() ? "" : " ") + supply_.name, sentence()));
    if (before_ && (supply_.pump || supply_.gauge || supply_.filter))
      page_.line(fmt::format("  {:<44}  {:>9}  {:>9}", "", "now", "before"));
    for (std::size_t i = 0; i < now_.pumps.size(); ++i) pump(i);
    if (now_.npsh_available)
      row(fmt::format("net positive suction head, {}", shown_.length.symbol),
          [&](const OperatingPoint& point) { return length(*point.npsh_available); });
    for (std::size_t i = 0; i < now_.pumps.size(); ++i) suction_margin(i);
    if (supply_.pump)
      row(pressure_label("before the filter, at the pump"),
          [&](const OperatingPoint& point) { return figures_.pressure(point.source_pressure); });
    if (supply_.gauge)
      row(pressure_label(supply_.filter && supply_.gauge->after_filter.value_or(false)
                             ? "at the gauge, after the filter"
                             : "at the gauge"),
          [&](const OperatingPoint& point) { return figures_.pressure(*point.gauge_reading); });
    if (supply_.filter)
      row(pressure_label("lost in the filter"),
          [&](const OperatingPoint& point) { return figures_.pressure(point.filter_loss); });
    if (supply_.pump || supply_.filter)
      row(pressure_label("at the start of the lines"),
          [&](const OperatingPoint& point) { return figures_.pressure(point.pressure); });
  }

 private:
  std::string sentence() const {
    const Giving found = giving(now_.flow, figures_);
    const std::string gives = now_.held_shut     ? held_shut_in_words(now_, figures_)
                              : found.is_nothing ? "gives nothing"
                                                 : found.in_words();
    const std::string at =
        now_.held_shut ? "" : " at " + figures_.pressure_with_unit(now_.source_pressure);
    if (supply_.pressure)
      return fmt::format("held at {}, {}.", figures_.pressure_with_unit(*supply_.pressure), gives);
    if (supply_.tank)
      return fmt::format("a tank, its water {} above its outlet, {}.",
                         figures_.height(supply_.tank->level),
                         gives);
    if (supply_.hydrant)
      return fmt::format(
          "a hydrant ({} at rest, {} while {} run), {}{}.",
          figures_.limit(supply_.hydrant->pressure_at_rest),
          figures_.limit(supply_.hydrant->residual_pressure),
          fmt::format("{:.4g} {}", supply_.hydrant->flow / shown_.flow, shown_.flow.symbol),
          gives,
          at);
    const auto& speed = now_.pumps.front().speed;
    return fmt::format("{}{}, {}{}.",
                       in_words(supply_),
                       speed && now_.pumps.size() == 1 ? " at " + figures_.speed(*speed) : "",
                       gives,
                       at);
  }

  std::string length(const Length& value) const {
    return fmt::format("{:.1f}", value / shown_.length);
  }
  std::string pressure_label(const char* where) const {
    return fmt::format("pressure {}, {}", where, shown_.pressure.symbol);
  }

  using Cell = std::function<std::string(const OperatingPoint&)>;
  void row(const std::string& label, const Cell& cell, const std::string& remark = "") {
    std::string text = fmt::format("  {:<44}  {:>9}", label, cell(now_));
    if (before_) text += fmt::format("  {:>9}", cell(*before_));
    page_.line(text + (remark.empty() ? "" : "   " + remark));
  }

  std::string name_of_pump(std::size_t i) const {
    return now_.pumps.size() == 1 ? "pump's" : i == 0 ? "first pump's" : "second pump's";
  }

  void pump(std::size_t i) {
    const std::string whose = name_of_pump(i);
    const PumpDuty& duty = now_.pumps[i];
    row(
        fmt::format("{} flow, {}", whose, shown_.flow.symbol),
        [&](const OperatingPoint& at) {
          return fmt::format("{:.1f}", at.pumps[i].flow / shown_.flow);
        },
        usable(duty));
    row(fmt::format("{} head, {}", whose, shown_.length.symbol),
        [&](const OperatingPoint& at) { return length(at.pumps[i].head); });
    if (duty.speed)
      row(fmt::format("{} speed, rpm", whose), [&](const OperatingPoint& at) {
        const auto& speed = at.pumps[i].speed;
        return speed ? fmt::format("{:.0f}", *speed / rpm) : std::string("-");
      });
    const auto known = [&](const auto& of) {
      return of(now_.pumps[i]).has_value() || (before_ && of(before_->pumps[i]).has_value());
    };
    const auto power = [](const PumpDuty& it) { return it.shaft_power; };
    if (!known(power)) return;
    row(fmt::format("{} power at the shaft, {}", whose, shown_.power.symbol),
        [&](const OperatingPoint& at) {
          const auto& taken = at.pumps[i].shaft_power;
          return taken ? fmt::format("{:.1f}", *taken / shown_.power) : std::string("-");
        });
    row(fmt::format("{} efficiency, %", whose), [&](const OperatingPoint& at) {
      const auto& share = at.pumps[i].efficiency;
      return share ? fmt::format("{:.0f}", 100 * *share) : std::string("-");
    });
  }

  /// "usable: 17.0 to 110.5".
  std::string usable(const PumpDuty& duty) const {
    if (duty.range == PumpRange::unknown) return {};
    const auto flow = [&](const Flow& it) { return fmt::format("{:.1f}", it / shown_.flow); };
    const std::string range = duty.least_flow && duty.most_flow
                                  ? flow(*duty.least_flow) + " to " + flow(*duty.most_flow)
                              : duty.least_flow ? "from " + flow(*duty.least_flow) + " on"
                                                : "to " + flow(*duty.most_flow);
    const char* where = duty.range == PumpRange::below_least_flow  ? "BELOW "
                        : duty.range == PumpRange::above_most_flow ? "ABOVE "
                                                                   : "";
    return fmt::format("{}usable {}", where, range);
  }

  void suction_margin(std::size_t i) {
    const PumpDuty& duty = now_.pumps[i];
    if (!duty.npsh_required) return;
    const auto required = [i](const OperatingPoint& at) {
      return at.pumps[i].npsh_required.value_or(Length{});
    };
    row(fmt::format("  that the {} needs, {}",
                    now_.pumps.size() == 1 ? "pump" : (i == 0 ? "first pump" : "second pump"),
                    shown_.length.symbol),
        [&](const OperatingPoint& at) { return length(required(at)); });
    row(
        fmt::format("  margin, {}", shown_.length.symbol),
        [&](const OperatingPoint& at) {
          return length(figures_.as_printed(*at.npsh_available) -
                        figures_.as_printed(required(at)));
        },
        *now_.npsh_available < *duty.npsh_required ? "TOO LITTLE" : "");
  }

  Page& page_;
  const OperatingPoint* before_;
  const OperatingPoint& now_;
  const Supply& supply_;
  const Figures& figures_;
  const UnitSet& shown_;
};

}  // namespace

void write_supply(Page& page,
                  const Solution* before,
                  const Solution& after,
                  const Figures& figures) {
  const Layout& layout = after.layout();
  SupplyTable(
      page, before ? &before->supply() : nullptr, after.supply(), layout.supply_as_it_is(), figures)
      .write();
  for (std::size_t i = 0; i < after.further_supplies().size(); ++i) {
    const bool was_there = before && i < before->further_supplies().size();
    SupplyTable(page,
                was_there ? &before->further_supplies()[i] : nullptr,
                after.further_supplies()[i],
                layout.further_supplies_as_they_are()[i],
                figures)
        .write();
  }
}

void write_regulators(Page& page, const Solution& solution, const Figures& figures) {
  std::size_t width = 0;
  for (const LineSolution& line : solution.lines())
    if (line.regulator) width = std::max(width, line.name.size());
  if (width == 0) return;
  page.line();
  page.line("Regulators");
  for (std::size_t i = 0; i < solution.lines().size(); ++i) {
    const LineSolution& line = solution.lines()[i];
    if (!line.regulator) continue;
    const std::string set = figures.limit(*solution.layout().lines()[i].regulator);
    const std::string takes = figures.pressure_with_unit(line.regulator->drop);
    std::string state;
    switch (line.regulator->state) {
      case RegulatorState::holding:
        state = fmt::format("holds {}, takes {}", set, takes);
        break;
      case RegulatorState::open:
        state = fmt::format("open: less comes than the {} it is set to ({})",
                            set,
                            figures.pressure_with_unit(line.regulator->pressure));
        break;
      case RegulatorState::shut:
        state = fmt::format("SHUT by the pressure beyond it, {}; it is set to {}",
                            figures.pressure_with_unit(line.regulator->pressure),
                            set);
        break;
      case RegulatorState::stuck_open:
        state = fmt::format("STUCK OPEN, does not hold its {}", set);
        break;
    }
    page.line(fmt::format("  {:<{}}  {}", line.name, width, state));
  }
}

void write_check_valves(Page& page, const Solution& solution) {
  std::size_t width = 0;
  for (const LineSolution& line : solution.lines())
    if (line.check_valve) width = std::max(width, line.name.size());
  if (width == 0) return;
  page.line();
  page.line("Check valves");
  for (const LineSolution& line : solution.lines())
    if (line.check_valve)
      page.line(fmt::format(
          "  {:<{}}  {}",
          line.name,
          width,
          *line.check_valve == CheckValveState::open ? "open" : "SHUT by the pressure beyond it"));
}

namespace {

/// "row 2", "pump"; of a further supply "hill, pump".
std::string label_of(const PressureBudgetEntry& entry) {
  if (entry.line.empty()) return entry.part;
  return entry.part == "line" ? entry.line : entry.line + ", " + entry.part;
}

}  // namespace

void write_pressure_budget(Page& page, const Solution& solution, const Figures& figures) {
  // Where the equations are not met, no way of the water need lead to it.
  if (!solution.residuals().are_met()) return;
  const auto weakest = weakest_outlet(solution);
  if (!weakest) return;
  const std::size_t index = solution.layout().index_of(weakest->line);
  const Doing does = doing(solution, index, static_cast<std::size_t>(weakest->outlet - 1));
  if (does == Doing::without_water) return;
  const PressureBudget budget = pressure_budget(solution, weakest->line, weakest->outlet);
  std::size_t width = 16;
  for (const PressureBudgetEntry& entry : budget.entries)
    width = std::max(width, label_of(entry).size());
  page.line();
  page.paragraph("",
                 fmt::format("Where the pressure goes on its way to the weakest outlet, {} of {}, "
                             "in {} (rated {})",
                             budget.outlet,
                             budget.line,
                             figures.units().pressure.symbol,
                             figures.limit(budget.rated)));
  page.line(fmt::format("  {:<{}}  {:>9}  {:>9}  {:>9}  {:>9}  {:>9}",
                        "",
                        width,
                        "given",
                        "lift",
                        "friction",
                        "regulator",
                        "left"));
  for (const PressureBudgetEntry& entry : budget.entries) {
    // In a dry riser no water stands: its figures would not be the riser's.
    if (entry.part == "riser" && does == Doing::dry) continue;
    const auto or_blank = [&](const Pressure& value) {
      return value == Pressure{} ? std::string() : figures.pressure(value);
    };
    page.line(fmt::format("  {:<{}}  {:>9}  {:>9}  {:>9}  {:>9}  {:>9}",
                          label_of(entry),
                          width,
                          or_blank(entry.gain),
                          or_blank(entry.rise),
                          or_blank(entry.loss),
                          or_blank(entry.regulator),
                          figures.pressure(entry.left)));
  }
  if (does == Doing::dry)
    page.paragraph("  ", "What is left in the line does not lift the water out of the outlet.");
}

}  // namespace hydro
