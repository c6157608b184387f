#include "hydro/text/outlet_kinds.hpp"

#include <functional>
#include <string>
#include <unordered_map>

namespace hydro {
namespace {

/// Takes equal kinds for one, wherever they lie.
struct ByValue {
  std::size_t operator()(const Outlet* kind) const { return std::hash<std::string>{}(kind->name); }
  bool operator()(const Outlet* one, const Outlet* other) const { return *one == *other; }
};

}  // namespace

OutletKinds::OutletKinds(const Solution& solution) {
  std::unordered_map<const Outlet*, std::size_t, ByValue, ByValue> known;
  for (std::size_t l = 0; l < solution.lines().size(); ++l) {
    std::vector<std::size_t>& on_line = by_line_.emplace_back();
    for (std::size_t i = 0; i < solution.lines()[l].state.size(); ++i) {
      const Outlet& kind = solution.layout().outlet_at(l, static_cast<int>(i) + 1);
      const auto [found, is_new] = known.emplace(&kind, all_.size());
      if (is_new)
        all_.push_back({&kind, discharge(kind, kind.rated_pressure(), solution.water().density)});
      on_line.push_back(found->second);
    }
  }
}

}  // namespace hydro
