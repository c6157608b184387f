// fault_study.hpp: how often the fault is found, over many simulated ones, by who has only the layout
// and by an observer who knows more: the world as it is built, each bore, outlet and height of it, and
// the errors of its gauges; or only how all of these errors are drawn. What the first finds and we do
// not hangs on what nobody can know; what the second finds and we do not we could.
//
// What      In each case a grower reads the gauge at the pump or supply, and then twice what
//           next_reading() advises, of pressures in the lines. Both are asked with the same readings,
//           and again with a look at which outlets turn.
#pragma once

#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace hydro {

/// One answer held against the truth.
struct Verdict {
  bool first = false;           ///< the very candidate is the most probable one
  bool place_in_three = false;  ///< kind to walk for and line are among the first three
  bool place = false;           ///< ... are the first
  bool right_line = false;      ///< the first is on the right line, or as truly on none
  bool within_two = false;      ///< and not more than two outlets off, where there is one
  bool in_range = false;        ///< the outlet is in the range of its place
  bool explained = false;
  double stated = 0;  ///< probability of the first place
  /// Stated probability of each place, and whether it was there.
  struct Place {
    double stated;
    bool right;
  };
  std::vector<Place> places = {};
};
Verdict judge(const FoundFaults& found, const Candidate& truth);

/// One fault: what was said of it without and with a look.
struct StudiedFault {
  CandidateKind kind = CandidateKind::no_fault;
  bool is_at_outlet = false;
  bool by_odds = false;  ///< it was drawn in proportion to the odds
  std::size_t layout = 0;
  Verdict found = {};
  Verdict found_with_look = {};
  Verdict observed = {};
  Verdict observed_with_look = {};
};

/// Who is asked too.
enum class Observer { none, who_knows_the_world, who_knows_the_errors };

/// What a study is of.
struct FaultStudy {
  std::size_t faults = 5000;
  std::uint64_t seed = 1;
  Observer observer = Observer::who_knows_the_world;
  bool look = true;    ///< whether both are asked with a look too
  int looked_at = 20;  ///< outlets, at most
};

/// Every second fault by the odds, the others every kind as often as the others.
std::vector<StudiedFault> study_faults(const std::vector<Layout>& layouts,
                                       const FaultStudy& study,
                                       const Work& work = {});

}  // namespace hydro
