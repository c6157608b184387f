#include "hydro/text/outlet_table.hpp"

#include "hydro/text/words.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace hydro {
namespace {

class OutletTable {
 public:
  OutletTable(Page& page,
              const Solution* before,
              const Solution& after,
              const OutletKinds& kinds,
              const Figures& figures,
              std::size_t line_index)
      : page_(page),
        before_(before ? &before->lines()[line_index] : nullptr),
        after_(after),
        solved_(after.lines()[line_index]),
        kinds_(kinds),
        figures_(figures),
        shown_(figures.units()),
        index_(line_index) {}

  void write() {
    const std::vector<std::size_t>& of_outlet = kinds_.on_line(index_);
    const std::set<std::size_t> kinds(of_outlet.begin(), of_outlet.end());
    if (kinds.empty()) return;
    Flow largest{};
    std::size_t kind_width = 4;
    for (const std::size_t kind : kinds) {
      largest = std::max(largest, kinds_.all()[kind].rated_flow);
      kind_width = std::max(kind_width, kinds_.all()[kind].outlet->name.size());
    }
    const Unit<Flow>& unit = figures_.flow_unit(largest);
    const auto column_of_kind = [&](const std::string& name) {
      return kinds.size() > 1 ? fmt::format("   {:<{}}", name, kind_width) : std::string();
    };
    page_.line();
    title(kinds, unit);
    page_.line(fmt::format("  {:>6}  {:>8}  {:>7}{}  {:>8}  {:>8}  {:>9}{}   {}",
                           "outlet",
                           fmt::format("at {}", shown_.length.symbol),
                           shown_.pressure.symbol,
                           before_ ? fmt::format("  {:>7}", "before") : "",
                           "of rated",
                           unit.symbol,
                           fmt::format("{:g} {} in", shown_.bucket, shown_.volume.symbol),
                           column_of_kind("kind"),
                           "what it does"));
    const std::vector<std::size_t> rows = chosen_rows();
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const std::size_t i = rows[r];
      if (r > 0 && i > rows[r - 1] + 1) page_.line(fmt::format("  {:>6}", "..."));
      const OutletKind& kind = kinds_.at(index_, i);
      const std::string before =
          before_ ? fmt::format("  {:>7}", figures_.pressure(before_->pressure[i])) : "";
      page_.line(
          fmt::format("  {:>6}  {:>8.1f}  {:>7}{}  {:>8}  {:>8.1f}  {:>9}{}   {}",
                      i + 1,
                      solved_.distance[i] / shown_.length,
                      figures_.pressure(solved_.pressure[i]),
                      before,
                      solved_.state[i] == OutletState::broken
                          ? "-"
                          : fmt::format("{:.0f} %", 100 * (solved_.flow[i] / kind.rated_flow)),
                      solved_.flow[i] / unit,
                      figures_.bucket_time(solved_.flow[i]),
                      column_of_kind(kind.outlet->name),
                      told(i)));
    }
  }

 private:
  void title(const std::set<std::size_t>& kinds, const Unit<Flow>& unit) {
    const auto rating = [&](const OutletKind& kind) {
      return fmt::format("rated {:.3g} {} at {}",
                         kind.rated_flow / unit,
                         unit.symbol,
                         figures_.limit(kind.outlet->rated_pressure()));
    };
    const std::size_t count = solved_.pressure.size();
    const std::string all =
        fmt::format("{}: {} outlet{}", solved_.name, count, count == 1 ? "" : "s");
    if (kinds.size() == 1) {
      const OutletKind& kind = kinds_.at(index_, 0);
      page_.paragraph("",
                      fmt::format("{}{}{}, {}",
                                  all,
                                  kind.outlet->name.empty() ? "" : " of kind ",
                                  kind.outlet->name,
                                  rating(kind)));
      return;
    }
    page_.paragraph("", fmt::format("{} of {} kinds:", all, kinds.size()));
    for (const std::size_t number : kinds) {
      const OutletKind& kind = kinds_.all()[number];
      page_.paragraph("  ",
                      fmt::format("{} of kind {}, {}",
                                  std::ranges::count(kinds_.on_line(index_), number),
                                  kind.outlet->name,
                                  rating(kind)));
    }
  }

  /// All outlets of a short line; of a long one the ends and those where something changes, up to
  /// 120.
  std::vector<std::size_t> chosen_rows() const {
    constexpr std::size_t most = 60;
    const std::size_t count = solved_.state.size();
    const auto differ = [&](std::size_t one, std::size_t other) {
      return doing(after_, index_, one) != doing(after_, index_, other);
    };
    std::vector<std::size_t> rows;
    for (std::size_t i = 0; i < count; ++i) {
      const bool end = i < 3 || i + 3 >= count;
      const bool changes = (i > 0 && differ(i, i - 1)) || (i + 1 < count && differ(i, i + 1));
      const bool milestone = i % ((count + most - 1) / most * 5) == 0;
      if (count <= most || end || ((changes || milestone) && rows.size() < 2 * most))
        rows.push_back(i);
    }
    return rows;
  }

  /// What the outlet does, and what is known to be wrong with it.
  std::string told(std::size_t outlet_index) const {
    std::string words = in_words(doing(after_, index_, outlet_index));
    for (const Fault& fault : after_.layout().faults_on(index_)) {
      if (outlet_of(fault) != static_cast<int>(outlet_index) + 1) continue;
      const std::string word = in_a_word(fault);
      if (!word.empty()) words += ", " + word;
    }
    return words;
  }

  Page& page_;
  const LineSolution* before_;
  const Solution& after_;
  const LineSolution& solved_;
  const OutletKinds& kinds_;
  const Figures& figures_;
  const UnitSet& shown_;
  std::size_t index_;
};

}  // namespace

void write_outlet_table(Page& page,
                        const Solution* before,
                        const Solution& after,
                        const OutletKinds& kinds,
                        const Figures& figures,
                        std::size_t line_index) {
  OutletTable(page, before, after, kinds, figures, line_index).write();
}

}  // namespace hydro
