// told.hpp: trees of ours as the peers know them; refuses what they do not.
#pragma once

#include "hydro/hydro.hpp"
#include "hydro/solver/tree.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <vector>

#include "cases.hpp"
#include "looped_peers.hpp"
#include "peers.hpp"

namespace peers {

using namespace hydro;

inline Tree lateral_tree(int count, bool with_riser = false) {
  const Layout layout = cases::lateral_layout(count, with_riser);
  return make_tree(layout, properties(layout.water()));
}

/// The same lateral for the peers, with the coefficients of the tree.
inline Lateral lateral_of(const Tree& tree) {
  const Reach& reach = tree.reaches.back();
  const Mouth& mouth = tree.mouths.at(0);
  double wall_slope = unknown_slope;
  const double unit_loss = reach.loss(1, wall_slope).head;
  for (const Reach& other : tree.reaches)
    if (other.length != reach.length || other.fitting != 0 || other.ground_rise != 0)
      throw std::logic_error("the reaches differ");
  if (tree.runs.size() != 1 || tree.mouths.size() != 1 || mouth.has_riser || mouth.height != 0 ||
      mouth.law.exponent != 0.5 || mouth.law.bent)
    throw std::logic_error("not the case that the peers know");
  return {tree.places.size(), tree.supply().head_at_rest(), unit_loss, mouth.law.coefficient};
}

/// A tree as the peers know it, and where its places are there.
struct Told {
  Looped problem;
  std::vector<std::size_t> place_of;  ///< by place of the tree
  std::vector<std::size_t> pipe_of;   ///< by place of the tree: of the reach that arrives
};

inline double loss_coefficient(const Reach& reach) {
  double slope = unknown_slope;
  const double k = reach.loss(1, slope).head;
  slope = unknown_slope;
  const double at_double = reach.loss(2, slope).head;
  if (reach.ground_rise != 0 || reach.held < no_limit ||
      std::abs(at_double - k * std::pow(2, 1.852)) > 1e-12 * at_double)
    throw std::logic_error("not a reach that the peers know");
  return k;
}

inline double by_square_root(const Tree& tree, const Place& place) {
  if (place.mouth == none) return 0;
  const Mouth& mouth = tree.mouths[static_cast<std::size_t>(place.mouth)];
  if (mouth.has_riser || mouth.height != 0 || mouth.law.exponent != 0.5 || mouth.law.bent)
    throw std::logic_error("not an outlet that the peers know");
  return mouth.law.coefficient;
}

inline Told told(const Tree& tree) {
  const auto far_end = [&](std::int32_t run) {
    return tree.runs[static_cast<std::size_t>(run)].end - 1;
  };
  std::vector<bool> closes(tree.places.size());
  for (const Joint& joint : tree.joints) closes[far_end(joint.from)] = true;
  Told result{.problem = {.supply_head = tree.supply().head_at_rest()},
              .place_of = std::vector<std::size_t>(tree.places.size()),
              .pipe_of = std::vector<std::size_t>(tree.places.size())};
  Looped& problem = result.problem;
  for (std::size_t i = 0; i < tree.places.size(); ++i) {
    if (closes[i]) continue;
    result.place_of[i] = problem.by_square_roots.size();
    problem.by_square_roots.push_back(by_square_root(tree, tree.places[i]));
  }
  for (const Joint& joint : tree.joints) {
    if (joint.rise != 0 || tree.places[far_end(joint.from)].mouth != none)
      throw std::logic_error("not a joint that the peers know");
    result.place_of[far_end(joint.from)] = result.place_of[far_end(joint.to)];
  }
  problem.pipes.resize(tree.places.size());
  std::size_t closing = problem.places();
  for (const Run& run : tree.runs) {
    int from = run.fed_by == none ? peers::the_supply
                                  : static_cast<int>(result.place_of[far_end(run.fed_by)]);
    for (std::size_t i = run.first; i < run.end; ++i) {
      const int to = static_cast<int>(result.place_of[i]);
      result.pipe_of[i] = closes[i] ? closing++ : result.place_of[i];
      problem.pipes[result.pipe_of[i]] = {
          from, to, loss_coefficient(tree.reaches[static_cast<std::size_t>(tree.places[i].reach)])};
      from = to;
    }
  }
  return result;
}

}  // namespace peers
