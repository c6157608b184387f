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
    Work share = work;
    if (work.progress)
      share.progress = [&](std::size_t done, std::size_t of) {
        return work.progress(i * of + done, counts * of);
      };
    const auto count = static_cast<int>(i);
    Chances found =
        chances(with_more_outlets(layout, line, more, count), uncertainty, options, share);
    all.push_back({count,
                   found.any_below_rated,
                   found.any_below_minimum,
                   found.any_above_maximum,
                   std::move(found.lowest_pressure),
                   std::move(found.inflow)});
  }
  return all;
}

}  // namespace hydro
