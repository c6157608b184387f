#include "hydro/what_ifs/chance_of_trouble.hpp"

#include "hydro/quantities/range.hpp"

#include <cstddef>
#include <utility>

namespace hydro {

std::vector<TroubleAtCount> chance_of_trouble(const Layout& layout,
                                              std::string_view line,
                                              int most,
                                              const Uncertainty& uncertainty,
                                              const MoreOutlets& more,
                                              const ChanceOptions& options,
                                              const Work& work) {
  Examination examination;
  examination.within("most", most, 0, 1000);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));

  const auto counts = static_cast<std::size_t>(most) + 1;
  std::vector<TroubleAtCount> all;
  for (std::size_t i = 0; i < counts; ++i) {
    Work of_this_count = work;
    if (work.progress)
      of_this_count.progress = [&](std::size_t done, std::size_t of) {
        const std::size_t done_in_all = i * of + done;
        if (!work.progress(done_in_all, counts * of)) throw Stopped(done_in_all, counts * of);
        return true;
      };
    const auto count = static_cast<int>(i);
    Chances found =
        chances(with_more_outlets(layout, line, more, count), uncertainty, options, of_this_count);
    all.push_back({count,
                   found.any_below_rated,
                   found.any_below_minimum,
                   found.any_above_maximum,
                   std::move(found.lowest_pressure),
                   std::move(found.inflow),
                   found.seed,
                   std::move(found.quantiles)});
  }
  return all;
}

}  // namespace hydro
