// How often the fault is found, by kind, and whether stated probabilities are what they say: on
// simulated faults in worlds that are not as their layouts say (tests/simulated_fault.hpp).

#include "hydro/hydro.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <ctime>
#include <functional>
#include <iterator>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "fault_study.hpp"
#include "growers_layouts.hpp"
#include "progress.hpp"
#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace {

using namespace hydro;

using Answer = Verdict StudiedFault::*;
constexpr int last_kind = static_cast<int>(CandidateKind::gauge_wrong);

/// The sets of the example farm but its drip tube, whose 360 emitters take as long as all others; and
/// others from seeds.
std::vector<Layout> layouts(std::size_t count, std::uint64_t seed) {
  const Layout farm = read_layout(std::string(HYDRO_EXAMPLES_DIR) + "/ouzel_bench.toml");
  std::vector<Layout> all;
  for (const WateringSet& set : farm.sets())
    if (set.name != "hop rows") all.push_back(farm.watering({set.name}));
  for (std::uint64_t i = 0; all.size() < count; ++i) all.push_back(growers_layout(1000 * seed + i));
  all.erase(all.begin() + static_cast<std::ptrdiff_t>(count), all.end());
  return all;
}

class Share {
 public:
  void add(bool is) {
    ++all_;
    if (is) ++of_them_;
  }
  double share() const { return all_ == 0 ? 0 : static_cast<double>(of_them_) / all_; }
  int all() const { return all_; }

 private:
  int of_them_ = 0;
  int all_ = 0;
};

struct Rates {
  Share first, place, in_three, right_line, within_two, in_range;

  void add(const Verdict& it, bool is_at_outlet) {
    first.add(it.first);
    place.add(it.place);
    in_three.add(it.place_in_three);
    right_line.add(it.right_line);
    within_two.add(it.within_two);
    if (is_at_outlet) in_range.add(it.in_range);
  }
};

double ratio(const Share& one, const Share& other) {
  return other.share() > 0 ? one.share() / other.share() : 1;
}

void print_rates(const std::vector<StudiedFault>& studied, Answer ours, Answer observers) {
  fmt::print("  {:<22}{:>6} {:>6}{:>7}{:>7}{:>7}{:>7}{:>7}   {:>6}{:>7}{:>7}{:>7}   {:>6}{:>7}\n",
             "share [%] of",
             "cases",
             "fault",
             "place",
             "three",
             "line",
             "+-2",
             "range",
             "place",
             "three",
             "line",
             "+-2",
             "line",
             "+-2");
  const auto print = [&](std::string_view words,
                         const std::function<bool(const StudiedFault&)>& is) {
    Rates our, his;
    for (const StudiedFault& it : studied) {
      if (!is(it)) continue;
      our.add(it.*ours, it.is_at_outlet);
      his.add(it.*observers, it.is_at_outlet);
    }
    if (our.first.all() == 0) return;
    const auto percent = [](const Share& share) { return 100 * share.share(); };
    fmt::print(
        "  {:<22}{:>6} {:>6.0f}{:>7.0f}{:>7.0f}{:>7.0f}{:>7.0f}{:>7.0f}   "
        "{:>6.0f}{:>7.0f}{:>7.0f}{:>7.0f}   "
        "{:>6.2f}{:>7.2f}\n",
        words,
        our.first.all(),
        percent(our.first),
        percent(our.place),
        percent(our.in_three),
        percent(our.right_line),
        percent(our.within_two),
        percent(our.in_range),
        percent(his.place),
        percent(his.in_three),
        percent(his.right_line),
        percent(his.within_two),
        ratio(our.right_line, his.right_line),
        ratio(our.within_two, his.within_two));
  };
  for (int kind = 0; kind <= last_kind; ++kind) {
    const auto wanted = static_cast<CandidateKind>(kind);
    print(words_of(wanted), [&](const StudiedFault& it) { return it.kind == wanted; });
  }
  print("all by the odds", [](const StudiedFault& it) { return it.by_odds; });
  print("all evenly by kind", [](const StudiedFault& it) { return !it.by_odds; });
}

/// Of the cases by the odds: only for these do the stated probabilities hold.
void print_reliability(const std::vector<StudiedFault>& studied, Answer answer) {
  constexpr std::size_t tenths = 10;
  struct Row {
    double stated = 0;
    int right = 0;
    int all = 0;
    void add(double probability, bool is_right) {
      stated += probability;
      right += is_right ? 1 : 0;
      ++all;
    }
  };
  std::array<Row, tenths> first, places;
  constexpr double about_from = 0.75, about_to = 0.85;
  Row about_80;
  const auto row = [](double probability) {
    return std::min(tenths - 1, static_cast<std::size_t>(probability * tenths));
  };
  for (const StudiedFault& it : studied) {
    if (!it.by_odds) continue;
    const Verdict& said = it.*answer;
    first[row(said.stated)].add(said.stated, said.place);
    if (said.stated >= about_from && said.stated <= about_to) about_80.add(said.stated, said.place);
    for (const Verdict::Place& place : said.places)
      places[row(place.stated)].add(place.stated, place.right);
  }
  fmt::print("  {:<10}  {:^32}  {:^32}\n", "", "first place", "every place");
  fmt::print("  {:<10}  {:>8}{:>8}{:>8}{:>8}  {:>8}{:>8}{:>8}{:>8}\n",
             "stated",
             "mean",
             "right",
             "+-",
             "cases",
             "mean",
             "right",
             "+-",
             "places");
  for (std::size_t i = 0; i < tenths; ++i) {
    fmt::print("  {:>3}-{:>3} % ", 10 * i, 10 * i + 10);
    for (const Row& it : {first[i], places[i]}) {
      const double all = std::max(1, it.all);
      const double mean = it.stated / all;
      fmt::print("  {:>8.1f}{:>8.1f}{:>8.1f}{:>8}",
                 100 * mean,
                 100 * it.right / all,
                 100 * std::sqrt(mean * (1 - mean) / all),
                 it.all);
    }
    fmt::print("\n");
  }
  fmt::print("  of {} first places called 75 to 85 %, {:.1f} % were right\n",
             about_80.all,
             100.0 * about_80.right / std::max(1, about_80.all));
}

void print_confidence(const std::vector<StudiedFault>& studied, Answer answer) {
  const auto print = [&](std::string_view words, bool by_odds) {
    constexpr double sure = 0.9;
    Share wrong, unexplained;
    int confident = 0;
    for (const StudiedFault& it : studied) {
      if (it.by_odds != by_odds) continue;
      const Verdict& said = it.*answer;
      if (said.stated > sure) ++confident;
      wrong.add(said.stated > sure && !said.place);
      unexplained.add(!said.explained);
    }
    fmt::print(
        "  {}: above 90 % in {} of {} cases, and wrong in {:.2f} % of all; \"no single fault\" in "
        "{:.2f} %\n",
        words,
        confident,
        wrong.all(),
        100 * wrong.share(),
        100 * unexplained.share());
  };
  print("by the odds", true);
  print("evenly by kind", false);
}

/// Level rows of one kind of outlet on a wide main, all open.
Layout level_rows(int rows, int count) {
  const Outlet head{.name = "head",
                    .flow = 3.5 * gpm,
                    .at = 25 * psi,
                    .minimum = 18 * psi,
                    .body_bore = 0.30 * inch};
  std::vector<Line> lines{{.name = "main",
                           .pipe = {.inside_diameter = 12 * inch, .hazen_williams = 150},
                           .length = rows * 30 * ft}};
  for (int i = 1; i <= rows; ++i)
    lines.push_back(
        {.name = fmt::format("row {}", i),
         .fed_by = "main",
         .tap = i * 30 * ft,
         .pipe = {.inside_diameter = 4 * inch, .hazen_williams = 150},
         .outlet = head,
         .count = count,
         .spacing = 20 * ft,
         .riser = {.height = 3 * ft, .inside_diameter = 0.81 * inch, .hazen_williams = 150}});
  return Layout(Supply{.pressure = 45 * psi}, lines);
}

/// What an answer costs, by one thread.
void print_cost(int rows, int count, int other_kinds) {
  const Layout layout = level_rows(rows, count);
  FindFaultOptions options;
  for (int i = 1; i <= other_kinds; ++i) {
    Outlet other = layout.lines()[1].kind_of(1);
    other.flow *= 1 + 0.1 * i;
    options.candidates.other_outlets.push_back(other);
  }
  const Solution broken = solve(layout.with_fault(head_off("row 2", count / 2)));
  const std::vector<Reading> readings{
      {.place = ReadingPlace::supply_gauge, .pressure = broken.supply_pressure()},
      {.place = ReadingPlace::flush_end,
       .line = "row 2",
       .pressure = broken.line("row 2").end_pressure},
      {.place = ReadingPlace::line_inlet,
       .line = "row 2",
       .pressure = broken.line("row 2").inlet_pressure}};
  const auto seconds = [](const auto& what) {
    const std::clock_t begun = std::clock();
    what();
    return static_cast<double>(std::clock() - begun) / CLOCKS_PER_SEC;
  };
  FoundFaults found;
  const double alone = seconds([&] { solve(layout.with_fault(head_off("row 1", 1))); });
  const double finding =
      seconds([&] { found = find_fault(layout, readings, {}, options, {.threads = 1}); });
  const double advising =
      seconds([&] { next_reading(layout, readings, {}, {.find_fault = options}, {.threads = 1}); });
  const auto candidates = static_cast<double>(found.faults.size());
  fmt::print(
      "{} candidates on {} outlets: {:.1f} solves a candidate; {:.3f} s, {:.1f} plain solves a "
      "candidate; the next reading {:.3f} s\n",
      found.faults.size(),
      layout.outlet_count(),
      static_cast<double>(found.solves) / candidates,
      finding,
      finding / alone / candidates,
      advising);
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app("How often the fault is found, over many simulated ones.");
  FaultStudy study;
  std::size_t layout_count = 24;
  int threads = 0;
  bool no_look = false, cost = false;
  app.add_option("--faults", study.faults, "how many")->capture_default_str();
  app.add_option("--layouts", layout_count, "how many")->capture_default_str();
  app.add_option("--seed", study.seed, "another gives other layouts, worlds and faults")
      ->capture_default_str();
  app.add_option("--threads", threads, "0: as many as the machine runs at once")
      ->capture_default_str();
  app.add_flag("--no-look", no_look, "readings only");
  const std::map<std::string, Observer> others{{"none", Observer::none},
                                               {"world", Observer::who_knows_the_world},
                                               {"errors", Observer::who_knows_the_errors}};
  app.add_option("--observer", study.observer, "who is asked too: who knows the world, the errors")
      ->transform(CLI::CheckedTransformer(others));
  app.add_flag("--cost", cost, "only what an answer costs");
  CLI11_PARSE(app, argc, argv);
  if (cost) {
    print_cost(4, 10, 6);
    print_cost(20, 100, 0);
    return 0;
  }
  study.look = !no_look;

  Work work = with_progress();
  work.threads = threads;
  const auto begun = std::chrono::steady_clock::now();
  const std::vector<Layout> all = layouts(layout_count, study.seed);
  const std::vector<StudiedFault> studied = study_faults(all, study, work);
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begun;

  fmt::print("{} faults on {} layouts, seed {}, in {:.0f} s\n",
             study.faults,
             all.size(),
             study.seed,
             taken.count());
  fmt::print(
      "fault: the very one is most probable; place: kind to walk for and line; three: among "
      "the first three;\nline, +-2: the first place's line, and at most two outlets off; "
      "range: the outlet is in its place's range (80 %)\n"
      "then the observer {}; then ours over his\n",
      study.observer == Observer::who_knows_the_errors ? "who knows how errors are drawn"
                                                       : "who knows the world as it is built");
  const auto print = [&](std::string_view words, Answer ours, Answer observers) {
    fmt::print("\n{}\n", words);
    print_rates(studied, ours, observers);
    fmt::print("\n");
    print_reliability(studied, ours);
    fmt::print("\n");
    print_confidence(studied, ours);
    if (study.observer == Observer::none) return;
    fmt::print("  the observer:\n");
    print_confidence(studied, observers);
  };
  print("Three readings", &StudiedFault::found, &StudiedFault::observed);
  if (study.look)
    print("Three readings, and a look at which outlets turn",
          &StudiedFault::found_with_look,
          &StudiedFault::observed_with_look);
}
