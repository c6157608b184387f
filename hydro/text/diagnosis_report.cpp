#include "hydro/text/diagnosis_report.hpp"

#include "hydro/answers/assumptions.hpp"
#include "hydro/text/cautions.hpp"
#include "hydro/text/diagnosis_words.hpp"
#include "hydro/text/figures.hpp"
#include "hydro/text/page.hpp"
#include "hydro/text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

constexpr std::size_t most_walks = 6;
constexpr std::size_t most_look_alikes = 3;
constexpr double worth_a_row = 0.01;

/// "row 1, outlets 3 to 10; row 2, outlet 2".
std::string places_in_words(const std::vector<OutletNumber>& outlets) {
  std::string text;
  for (std::size_t i = 0; i < outlets.size();) {
    const std::string& line = outlets[i].line;
    std::vector<int> numbers;
    for (; i < outlets.size() && outlets[i].line == line; ++i) numbers.push_back(outlets[i].outlet);
    text += fmt::format("{}{}, outlet{} {}",
                        text.empty() ? "" : "; ",
                        line,
                        numbers.size() > 1 ? "s" : "",
                        stretches(numbers));
  }
  return text;
}

std::string minutes(const Time& time) {
  return fmt::format("{:.0f} min", time / units::min);
}

class DiagnosisReport {
 public:
  DiagnosisReport(const Layout& layout,
                  const std::vector<Reading>& readings,
                  const std::vector<Sight>& sights,
                  const FoundFaults& found,
                  const DiagnosisReportOptions& options)
      : layout_(layout),
        readings_(readings),
        sights_(sights),
        found_(found),
        options_(options),
        figures_(options.units.value_or(layout.units())) {}

  std::string write() {
    title();
    page_.paragraph("* ", headline(found_));
    if (!found_.explained) why_not_explained();
    likeliest();
    if (found_.explained) {
      look_alikes();
      read_next();
    }
    where_to_walk();
    predicted_and_read();
    if (options_.make_right) make_it_right(*options_.make_right);
    for (const SeenBy& gauge : options_.seen_by) what_is_seen_by(gauge);
    page_.list("To keep in mind", kept_in_mind());
    page_.list("Assumed of faults and readings", assumed());
    page_.list("Assumed, because it was not given", assumptions(layout_, figures_.system()));
    write_cautions(page_);
    return page_.take();
  }

 private:
  void title() {
    if (!layout_.site().name.empty()) page_.paragraph("", layout_.site().name);
    if (!layout_.running_sets().empty())
      page_.paragraph("",
                      fmt::format("Set{} that run{}: {}",
                                  layout_.running_sets().size() > 1 ? "s" : "",
                                  layout_.running_sets().size() > 1 ? "" : "s",
                                  fmt::join(layout_.running_sets(), ", ")));
    page_.line();
  }

  void why_not_explained() {
    page_.paragraph(
        "* ",
        fmt::format("Even what fits best misses them by {:.1f} standard errors, all taken "
                    "together. Read the odd one again before you walk far.",
                    found_.least_misfit));
  }

  /// The first one alone, with the size that it would have.
  void likeliest() {
    if (found_.faults.empty()) return;
    const FoundFault& first = found_.faults.front();
    if (first.candidate.kind == CandidateKind::no_fault || is_as_it_should_be(found_)) return;
    std::string text = in_words(first.candidate);
    if (first.fault) text = describe(*first.fault, layout_, figures_.system());
    if (first.gauge_shows_too_much) {
      const bool too_much = *first.gauge_shows_too_much > Pressure{};
      text += fmt::format(", {} {} too {}",
                          "it shows",
                          figures_.pressure_with_unit(too_much ? *first.gauge_shows_too_much
                                                               : -*first.gauge_shows_too_much),
                          too_much ? "much" : "little");
    }
    page_.paragraph(
        "* ", fmt::format("The likeliest single cause ({}): {}.", chance(first.probability), text));
  }

  void look_alikes() {
    const std::size_t told = std::min(most_look_alikes, found_.look_alikes.size());
    for (std::size_t i = 0; i < told; ++i) {
      const LookAlike& pair = found_.look_alikes[i];
      const std::string both = fmt::format("To tell {} from {}, which reads the same so far",
                                           in_words(found_.faults.at(pair.one).candidate),
                                           in_words(found_.faults.at(pair.other).candidate));
      page_.paragraph("* ",
                      both + (pair.tells_apart ? fmt::format(": {} {}.",
                                                             how_to_take(*pair.tells_apart),
                                                             how_well(pair.then_apart))
                                               : std::string(": no reading does; go and look.")));
    }
  }

  static std::string how_to_take(const Reading& reading) {
    if (reading.place == ReadingPlace::bucket)
      return fmt::format("time a bucket at {}, outlet {};", reading.line, reading.outlet);
    return "read " + where(reading) + ";";
  }
  static std::string how_well(double standard_errors) {
    return standard_errors >= 4   ? "it tells them apart"
           : standard_errors >= 2 ? "it most likely tells them apart"
                                  : "it helps a little";
  }

  void read_next() {
    if (!options_.next) return;
    const NextReadings& next = *options_.next;
    if (next.stop == WhyStop::sure_enough)
      return page_.paragraph("* ", "That is sure enough: read no more, walk there.");
    if (next.stop == WhyStop::nothing_to_learn || next.readings.empty())
      return page_.paragraph("* ", "No further reading is worth its way: walk there.");
    if (next.use_the_bucket) {
      std::string text = "Pressure cannot see this, use the bucket";
      const auto bucket = std::ranges::find_if(next.readings, [](const PossibleReading& it) {
        return it.reading && it.reading->place == ReadingPlace::bucket;
      });
      if (bucket != next.readings.end())
        text +=
            fmt::format(", first at {}, outlet {}", bucket->reading->line, bucket->reading->outlet);
      return page_.paragraph("* ", text + ".");
    }
    const auto reading = std::ranges::find_if(
        next.readings, [](const PossibleReading& it) { return it.reading.has_value(); });
    const auto look = std::ranges::find_if(
        next.readings, [](const PossibleReading& it) { return it.look.has_value(); });
    std::string text;
    if (reading != next.readings.end()) {
      text = reading->reading->place == ReadingPlace::bucket
                 ? fmt::format("Next, time a bucket at {}, outlet {}",
                               reading->reading->line,
                               reading->reading->outlet)
                 : fmt::format("Next, read {}", where(*reading->reading));
      text += of_the_doubt(reading->information) + ".";
    }
    if (look != next.readings.end() && look->worth > 0)
      text += fmt::format("{}Or look at {}, outlet {}{}.",
                          text.empty() ? "" : " ",
                          look->look->line,
                          look->look->outlet,
                          of_the_doubt(look->information));
    if (!text.empty()) page_.paragraph("* ", text);
  }

  /// Information as people speak of it: a share of what is open.
  std::string of_the_doubt(double information) const {
    const double left = options_.next->uncertainty_left;
    if (!(left > 0)) return "";
    return fmt::format(": it should settle some {:.0f} % of what is open",
                       100 * std::clamp(information / left, 0.0, 1.0));
  }

  void where_to_walk() {
    page_.line();
    page_.line(found_.explained ? "Where to walk" : "If it is one fault all the same");
    std::size_t shown = 0;
    double told = 0;
    for (const WalkTo& walk : found_.walk) {
      if (shown == most_walks || (shown > 0 && walk.probability < worth_a_row)) break;
      std::string row =
          fmt::format("{:>6}  {:<26}  ", chance_in_percent(walk.probability), cut(where(walk), 26));
      std::string find = what(walk, found_);
      if (walk.most_likely && walk.first != walk.last)
        find += fmt::format(", first at {}", *walk.most_likely);
      page_.paragraph(row, find);
      told += walk.probability;
      ++shown;
    }
    if (shown < found_.walk.size())
      page_.paragraph(fmt::format("{:>6}  ", chance_in_percent(1 - told)), "all else together");
  }

  const FoundFault* without_a_fault() const {
    const auto found = std::ranges::find(found_.faults,
                                         CandidateKind::no_fault,
                                         [](const FoundFault& it) { return it.candidate.kind; });
    return found == found_.faults.end() ? nullptr : &*found;
  }

  static std::string cells(const std::string& place,
                           const std::string& read,
                           const std::string& sound,
                           const std::string& faulty) {
    return fmt::format("  {:<32}  {:>14}  {:>14}  {:>14}", cut(place, 32), read, sound, faulty);
  }

  void predicted_and_read() {
    if (readings_.empty() && sights_.empty()) return;
    page_.line();
    page_.line("What was read and seen");
    const FoundFault* sound = without_a_fault();
    const FoundFault* first = found_.faults.empty() ? nullptr : &found_.faults.front();
    if (first == sound) first = nullptr;
    if (!readings_.empty())
      page_.line(cells("", "read", "when sound", first ? "by likeliest" : ""));
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      const auto predicted = [&](const FoundFault* by) {
        if (!by || i >= by->fits.size()) return std::string();
        const ReadingFit& fit = by->fits[i];
        return figure(fit.pressure_predicted, fit.flow_predicted, fit.speed_predicted, figures_);
      };
      const Reading& it = readings_[i];
      const auto flow = is_flow(it.place) ? std::optional(flow_read(it)) : std::nullopt;
      page_.line(cells(where(it),
                       figure(it.pressure, flow, it.speed, figures_),
                       predicted(sound),
                       predicted(first)));
    }
    for (const Sight& sight : sights_) page_.paragraph("  ", in_words(sight));
    if (first) page_.paragraph("  ", "The likeliest: " + in_words(first->candidate) + ".");
  }

  void make_it_right(const MakeRight& it) {
    if (it.ways.size() < 2) return;
    page_.line();
    page_.paragraph("", fmt::format("What to do about {}", in_words(it.found.candidate)));
    const WayOn& best = it.ways.at(it.best);
    page_.paragraph("* ", recommended(best));
    page_.line();
    page_.line(fmt::format("  {:<28}  {:>6}  {:>6}  {:>9}  {}",
                           "for " + minutes(it.run_time),
                           "do not",
                           "below",
                           "lost",
                           "run on afterwards"));
    page_.line(fmt::format(
        "  {:<28}  {:>6}  {:>6}  {:>9}", "", "work", "rated", figures_.units().volume.symbol));
    for (const WayOn& way : it.ways) {
      const bool stands_still = way.deed == Deed::stop;
      const std::string row =
          fmt::format("  {:<28}  {:>6}  {:>6}  {:>9}  ",
                      std::string(words_of(way.deed)),
                      stands_still ? "-" : std::to_string(way.out_of_work.size()),
                      stands_still ? "-" : std::to_string(way.below_rated.size()),
                      stands_still ? "-" : lost(way, it.run_time));
      page_.paragraph(row, extra_in_words(way));
    }
  }

  static std::string recommended(const WayOn& best) {
    const char* what = "";
    switch (best.deed) {
      case Deed::go_on:
        what = "Water on and mend it afterwards";
        break;
      case Deed::cap:
        what = "Stop, cap the outlet, and water on without it";
        break;
      case Deed::stop:
        what = "Stop, and water again when it is mended";
        break;
      case Deed::mend:
        what = "Put it right now, which takes minutes, and water on";
        break;
    }
    if (best.deed == Deed::stop || best.deed == Deed::mend) return std::string(what) + ".";
    if (best.out_of_work.empty())
      return fmt::format("{}: every outlet goes on working{}.",
                         what,
                         best.below_rated.empty() ? ""
                                                  : "; short of its rated pressure is " +
                                                        places_in_words(best.below_rated));
    return fmt::format("{}; meanwhile short: {}.", what, places_in_words(best.out_of_work));
  }

  std::string lost(const WayOn& way, const Time& run_time) const {
    const double volume = si(way.escaping) * si(run_time) / si(1.0 * figures_.units().volume);
    return fmt::format("{:.0f}", std::max(0.0, volume));
  }

  static std::string extra_in_words(const WayOn& way) {
    std::string text;
    for (const ExtraTime& extra : way.extra) {
      if (extra.time < 0.5 * units::min) continue;
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", extra.line, minutes(extra.time));
    }
    return text.empty() ? "no line" : text;
  }

  void what_is_seen_by(const SeenBy& gauge) {
    std::vector<std::pair<CandidateKind, std::pair<int, int>>> kinds;  // seen, all
    for (const Detectable& it : gauge.candidates) {
      if (it.candidate.kind == CandidateKind::no_fault) continue;
      auto known =
          std::ranges::find(kinds, it.candidate.kind, [](const auto& kind) { return kind.first; });
      if (known == kinds.end()) known = kinds.insert(kinds.end(), {it.candidate.kind, {0, 0}});
      known->second.first += it.seen ? 1 : 0;
      ++known->second.second;
    }
    std::string seen;
    std::string not_seen;
    for (const auto& [kind, counts] : kinds) {
      const auto& [some, all] = counts;
      std::string& list = some > 0 ? seen : not_seen;
      list += (list.empty() ? "" : ", ") + std::string(words_of(kind));
      if (some > 0 && some < all) list += fmt::format(" (at {} of {} places)", some, all);
    }
    page_.line();
    page_.paragraph(
        "", fmt::format("What {} can see of a fault of middling size", where(gauge.reading)));
    page_.paragraph("  sees: ", seen.empty() ? "nothing" : seen);
    if (!not_seen.empty())
      page_.paragraph("  does not: ", not_seen + "; there, use the bucket and your eyes");
  }

  std::vector<std::string> kept_in_mind() const {
    std::vector<std::string> sentences;
    for (std::string note : found_.notes) {
      if (!note.empty() && note[0] >= 'a' && note[0] <= 'z')
        note[0] = static_cast<char>(note[0] - 'a' + 'A');
      sentences.push_back(note + ".");
    }
    for (const NotSolvedCandidate& it : found_.not_solved)
      sentences.push_back(fmt::format(
          "Left out, since it cannot be solved: {}: {}.", describe(it.candidate), it.why));
    sentences.emplace_back("One fault at a time is looked for. Two at once may look like a third.");
    return sentences;
  }

  std::vector<std::string> assumed() const {
    const FindFaultOptions& by = options_.find_fault;
    std::vector<std::string> sentences;
    std::map<double, std::vector<std::string>, std::greater<>> odds;
    for (int i = 0; i <= static_cast<int>(CandidateKind::gauge_wrong); ++i) {
      const auto kind = static_cast<CandidateKind>(i);
      if (std::ranges::any_of(found_.faults,
                              [&](const FoundFault& it) { return it.candidate.kind == kind; }))
        odds[by.candidates.odds.of(kind)].emplace_back(words_of(kind));
    }
    std::string list;
    for (const auto& [odd, kinds] : odds)
      list += fmt::format("{}{:g} {}", list.empty() ? "" : "; ", odd, fmt::join(kinds, ", "));
    sentences.push_back(
        "Odds of each fault at each of its places before anything was read: " + list + ".");
    sentences.push_back(fmt::format(
        "A gauge shows {} too much or too little, and one reading in {:.0f} is a blunder; what is "
        "computed is off by {:.1f} %.",
        figures_.pressure_with_unit(by.gauge_bias),
        1 / std::max(by.blunder, 1e-6),
        100 * by.model_error));
    sentences.push_back(input_errors());
    return sentences;
  }

  std::string input_errors() const {
    const Uncertainty by = options_.find_fault.uncertainty.value_or(assumed_uncertainty(layout_));
    std::string text;
    const auto add = [&](const char* what, const std::string& error) {
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", what, error);
    };
    const auto share = [&](const char* what, const auto& error) {
      if (error && *error > 0) add(what, fmt::format("{:.0f} %", 100 * *error));
    };
    share("outlets", std::optional(by.manufacturing_variation));
    share("ratings of a kind", std::optional(by.rating));
    share("bores", std::optional(by.inside_diameter));
    share("walls", std::optional(by.wall));
    share("loss coefficients", std::optional(by.loss_coefficient));
    share("the pump's head", std::optional(by.pump_head));
    return "The description is off by, as standard errors: " + text + ".";
  }

  const Layout& layout_;
  const std::vector<Reading>& readings_;
  const std::vector<Sight>& sights_;
  const FoundFaults& found_;
  const DiagnosisReportOptions& options_;
  Figures figures_;
  Page page_;
};

}  // namespace

std::string diagnosis_report(const Layout& layout,
                             const std::vector<Reading>& readings,
                             const std::vector<Sight>& sights,
                             const FoundFaults& found,
                             const DiagnosisReportOptions& options) {
  return DiagnosisReport(layout, readings, sights, found, options).write();
}

}  // namespace hydro
