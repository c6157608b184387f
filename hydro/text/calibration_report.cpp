#include "hydro/text/calibration_report.hpp"

#include "hydro/text/diagnosis_words.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include <fmt/format.h>

namespace hydro {
namespace {

/// Of the variance that was assumed: from here on an input is told by itself.
constexpr double worth_a_row = 0.1;
/// In standard errors: from here on a reading is marked.
constexpr double does_not_fit = 3;

std::string share(double change) {
  const double percent = std::round(100 * change);
  return percent == 0 ? "0 %" : fmt::format("{:+.0f} %", percent);
}
std::string deviation(double share) {
  return share < 0.005 ? "<1 %" : fmt::format("{:.0f} %", 100 * share);
}

std::string what(const Learnt& learnt) {
  const std::string number = learnt.pump > 1 ? fmt::format(", pump {}", learnt.pump) : "";
  return fmt::format("{}, {}{}", words_of(learnt.kind), learnt.of, number);
}

/// "C 150 to 138", "+4 %", "+0.8 psi".
std::string change(const Learnt& learnt, const Figures& figures) {
  if (learnt.more)
    return (*learnt.more < Pressure{} ? "" : "+") + figures.pressure_with_unit(*learnt.more);
  if (learnt.kind == LearntKind::hazen_williams && learnt.before && learnt.after)
    return fmt::format("{:.0f} to {:.0f}", *learnt.before, *learnt.after);
  return share(*learnt.factor - 1);
}
std::string plus_minus(const Learnt& learnt, const Figures& figures) {
  return learnt.more_deviation ? figures.pressure_with_unit(*learnt.more_deviation)
                               : deviation(*learnt.deviation);
}

std::string joined(const std::vector<std::string>& parts, const char* last) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i)
    text += (i == 0 ? "" : i + 1 == parts.size() ? last : ", ") + parts[i];
  return text;
}

class CalibrationPage {
 public:
  CalibrationPage(const std::vector<Reading>& readings,
                  const Calibration& calibration,
                  const Figures& figures)
      : readings_(readings), calibration_(calibration), figures_(figures) {
    for (const Learnt& it : calibration.learnt)
      if (it.learnt >= worth_a_row) told_.push_back(&it);
    std::ranges::stable_sort(
        told_, std::ranges::greater{}, [](const Learnt* it) { return it->learnt; });
  }

  std::string take() {
    page_.paragraph("", fit());
    page_.paragraph("", changes());
    std::vector<std::string> sentences;
    for (const NotToldApart& it : calibration_.not_told_apart)
      sentences.push_back(not_told_apart(it));
    page_.list("What these readings cannot tell apart", sentences);
    page_.list("Notes", calibration_.notes);
    learnt_table();
    reading_table();
    return page_.take();
  }

 private:
  std::string predicted(const ReadingFit& fit) const {
    return figure(fit.pressure_predicted, fit.flow_predicted, fit.speed_predicted, figures_);
  }
  std::string read(const ReadingFit& fit) const {
    return figure(fit.pressure_read, fit.flow_read, fit.speed_read, figures_);
  }

  std::string fit() const {
    const std::size_t count = readings_.size();
    if (count == 0) return "Nothing was read: the layout stays as it is described.";
    if (calibration_.fits_well)
      return fmt::format("The {}, once the layout is calibrated.",
                         count == 1 ? "reading fits" : fmt::format("{} readings fit", count));
    std::string text =
        "THE READINGS DO NOT FIT, however the layout is calibrated: one of them is wrong, or "
        "something was broken on that day. Do not use this calibration.";
    if (calibration_.worst) {
      const ReadingFit& worst = calibration_.fits[*calibration_.worst];
      text += fmt::format(
          " The worst: {} read {}, {:.1f} standard errors from what all the others "
          "say of it.",
          where(readings_[*calibration_.worst]),
          read(worst),
          std::abs(worst.misfit));
    }
    return text;
  }

  /// Those that moved by more than what is left of their error.
  std::string changes() const {
    std::vector<std::string> parts;
    for (const Learnt* it : told_)
      if (std::abs(it->moved) > std::sqrt(1 - it->learnt))
        parts.push_back(fmt::format("{} ({}, give or take {})",
                                    in_words(*it, it->moved > 0),
                                    change(*it, figures_),
                                    plus_minus(*it, figures_)));
    if (parts.empty()) return "They change nothing of note in what is described.";
    return "They say: " + joined(parts, " and ") + ".";
  }

  std::string not_told_apart(const NotToldApart& entangled) const {
    const auto& inputs = calibration_.learnt;
    const Entangled& first = entangled.inputs.front();
    // As things age: pipes get rougher.
    const bool turns =
        (inputs[first.which].kind == LearntKind::hazen_williams) == (first.weight > 0);
    std::vector<std::string> parts;
    bool has_outlets = false, has_gauge = false;
    for (const Entangled& it : entangled.inputs) {
      parts.push_back(in_words(inputs[it.which], (it.weight > 0) != turns));
      has_outlets = has_outlets || inputs[it.which].kind == LearntKind::outlet_flow;
      has_gauge = has_gauge || inputs[it.which].kind == LearntKind::gauge;
    }
    std::string text = joined(parts, " together with ") + " read nearly the same from these places";
    if (has_gauge)
      text += "; a second gauge at the same place would tell";
    else if (has_outlets)
      text += "; a bucket and a watch at one outlet would tell";
    return text;
  }

  void learnt_table() {
    if (told_.empty()) return;
    page_.line();
    row("what was learnt", "change", "+-", "was +-");
    for (const Learnt* it : told_)
      row(what(*it),
          change(*it, figures_),
          plus_minus(*it, figures_),
          it->more_deviation_before ? figures_.pressure_with_unit(*it->more_deviation_before)
                                    : deviation(*it->deviation_before));
    const std::size_t rest = calibration_.learnt.size() - told_.size();
    if (rest > 0)
      page_.line(fmt::format("and {} of which these readings tell next to nothing", rest));
  }

  void reading_table() {
    if (readings_.empty()) return;
    page_.line();
    row("reading", "read", "as described", "calibrated");
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      const ReadingFit& after = calibration_.fits[i];
      row(where(readings_[i]),
          read(after),
          predicted(calibration_.before[i]),
          predicted(after),
          std::abs(after.misfit) > does_not_fit ? "DOES NOT FIT" : "");
    }
  }

  void row(const std::string& name,
           const std::string& first,
           const std::string& second,
           const std::string& third,
           const char* remark = "") {
    constexpr std::size_t width = 34;
    page_.line(fmt::format(
        "{:<{}}{:>13}{:>14}{:>14}  {}", cut(name, width), width, first, second, third, remark));
  }

  const std::vector<Reading>& readings_;
  const Calibration& calibration_;
  const Figures& figures_;
  std::vector<const Learnt*> told_;
  Page page_;
};

std::string day_of(const std::vector<DayOfReadings>& log, std::size_t which) {
  return log[which].name.empty() ? fmt::format("day {}", which + 1) : log[which].name;
}

}  // namespace

std::string in_words(const Learnt& learnt, bool rises) {
  switch (learnt.kind) {
    case LearntKind::hazen_williams:
      return (rises ? "a smoother " : "a rougher ") + learnt.of;
    case LearntKind::roughness:
    case LearntKind::darcy_factor:
      return (rises ? "a rougher " : "a smoother ") + learnt.of;
    case LearntKind::inside_diameter:
      return (rises ? "a wider bore of " : "a narrower bore of ") + learnt.of;
    case LearntKind::outlet_flow:
      return (rises ? "more flow out of each " : "less flow out of each ") + learnt.of;
    case LearntKind::loss_coefficient:
      return (rises ? "more loss in the fittings of " : "less loss in the fittings of ") +
             learnt.of;
    case LearntKind::pump_head:
      return (rises ? "a stronger pump at the " : "a weaker pump at the ") + learnt.of;
    case LearntKind::supply_pressure:
      return (rises ? "more pressure of the " : "less pressure of the ") + learnt.of;
    case LearntKind::gauge:
      return fmt::format("a gauge ({}) that shows too {}", learnt.of, rises ? "much" : "little");
  }
  return "";
}

std::string calibration_report(const std::vector<Reading>& readings,
                               const Calibration& calibration,
                               std::optional<UnitSystem> units) {
  const Figures figures(units.value_or(calibration.layout.units()));
  return CalibrationPage(readings, calibration, figures).take();
}

std::string drift_report(const std::vector<DayOfReadings>& log,
                         const Drift& drift,
                         UnitSystem units) {
  const Figures figures(units);
  Page page;
  std::vector<std::string> sentences;
  for (const PlaceDrift& it : drift.places) {
    if (!it.alarm || !it.since) continue;
    sentences.push_back(
        fmt::format("{} has read {} since {}: last {}, normal {}, with {} from day to day; sure "
                    "since {}",
                    where(it.place),
                    it.rises ? "more" : "less",
                    day_of(log, *it.since),
                    figure(it.last_pressure, it.last_flow, it.last_speed, figures),
                    figure(it.normal_pressure, it.normal_flow, it.normal_speed, figures),
                    figure(it.pressure_scatter, it.flow_scatter, it.speed_scatter, figures),
                    day_of(log, *it.alarm)));
  }
  if (drift.places.empty())
    page.paragraph("", "No place was read on enough days.");
  else if (sentences.empty())
    page.paragraph("", "No reading has left what is normal for its place.");
  else
    page.paragraph("",
                   fmt::format("{} of {} places no longer read{} what {} used to.",
                               sentences.size(),
                               drift.places.size(),
                               sentences.size() == 1 ? "s" : "",
                               sentences.size() == 1 ? "it" : "they"));
  page.list("What changed", sentences);
  page.list("Notes", drift.notes);
  return page.take();
}

}  // namespace hydro
