// find_fault.hpp: which fault explains what was read, and how sure that is.
//
// What      Every candidate (candidate.hpp) is solved at a few of its sizes, and what each gauge
//           would then show is held against what it showed. The answer is a probability for every
//           candidate, summed up as a person would walk: which line, which outlets. What pressure
//           cannot tell apart stays apart in words only: look-alikes are named, with the reading
//           that tells them apart. Where nothing explains the readings, it says so.
// Formula   P(c | y) ~ odds(c) x integral over sizes of p(y | c, size) P(sights | y, c, size) p(size)
//           p(y | c, size): normal about what is predicted, with the covariance
//             C = D + B + J S J^T + M
//           D the readings' own errors; B a variance between all readings of one gauge, its bias,
//           which so is integrated exactly; J the derivatives of each reading by each uncertain input
//           (sensitivity.hpp) of the layout without the fault, S their variances, each outlet's own
//           among them; M the model's own error, a share of each figure by itself. One reading, any
//           one, may be a blunder with probability `blunder`: then its error is ten times as large.
//           Between the sizes that are solved (5 or 7) predictions follow monotone cubics; the
//           integral is exact for straight pieces between 32 steps.
//           Sights: one after another each changes the normal distribution of the pressures it
//           hangs on to the normal one with the same mean and covariance (assumed density
//           filtering), which is exact for one.
//           misfit^2 = (y - f)^T C^-1 (y - f) at the candidate's best size. No single fault explains
//           the readings when even the smallest over all candidates is beyond what chi squared, with
//           one degree of freedom a reading, is beyond in 0.27 % of cases: 3 standard errors.
// Source    Linear Gaussian inverse theory, A. Tarantola, Inverse Problem Theory (SIAM 2005), sections
//           1.3 and 3.2; Bayes factors, R. E. Kass and A. E. Raftery, J. Am. Stat. Assoc. 90 (1995)
//           773-795; assumed density filtering, T. P. Minka, Expectation propagation, UAI (2001);
//           errors of which one may be a blunder, G. E. P. Box and G. C. Tiao, Biometrika 55 (1968)
//           119-129 (all from memory).
// Range     One fault at a time. Probabilities are as good as the odds, which are assumed. Input
//           errors are small: straight lines. Places at the supply are the first supply's.
// Accuracy  Against integration by brute force (evidence_test.cpp) and against layouts that are drawn
//           and solved (find_fault_test.cpp): a tenth of the odds.
// Errors    InvalidInput with all problems of the readings, sights and options; NotSolved when the
//           layout is not solved as it is; Stopped. A candidate that is not solved is listed.
// Threads   Pure function; shares candidates among work.threads, whose number changes nothing.
#pragma once

#include "hydro/diagnosis/candidate.hpp"
#include "hydro/diagnosis/reading.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/quantities/units.hpp"
#include "hydro/what_ifs/uncertainty.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace hydro {

/// What is believed beside the readings. All defaults are assumed.
struct FindFaultOptions {
  CandidateOptions candidates = {};
  std::optional<Uncertainty> uncertainty = {};  ///< of the layout, default assumed_uncertainty()
  Pressure gauge_bias = 1 * psi;  ///< standard deviation of what each gauge shows too much
  double blunder = 0.02;          ///< probability that one reading is a blunder, 0 to 0.5
  double model_error = 0.01;      ///< standard deviation, share of each figure predicted, 0 to 0.2
  double walk_share = 0.8;        ///< of a place's probability that its outlets hold together
  bool operator==(const FindFaultOptions&) const = default;
};

/// What a layout's inputs may be off by when nobody says: outlets 4 % each and 2 % of their kind,
/// bores 1 %, walls 5 %, K 30 %, a held pressure 1 psi, a pump's head 2 %, and elevations 0.5 ft where
/// no line joins another. Common practice, no source.
Uncertainty assumed_uncertainty(const Layout& layout);

/// What a reading is by a candidate, and what it was. Of each, one is given.
struct ReadingFit {
  std::optional<Pressure> pressure_predicted = {};
  std::optional<Pressure> pressure_read = {};
  std::optional<Flow> flow_predicted = {};
  std::optional<Flow> flow_read = {};
  std::optional<RotationalSpeed> speed_predicted = {};
  std::optional<RotationalSpeed> speed_read = {};
  double misfit = 0;  ///< read less predicted, in standard errors of this reading by itself
};

/// One candidate after the readings.
struct FoundFault {
  Candidate candidate = {};
  double probability = 0;
  double log_evidence = 0;  ///< natural logarithm; its differences are those of Bayes factors
  double size = 0;          ///< most probable, in deviations from the median; 0 where there is none
  std::optional<Fault> fault = {};    ///< of that size; none: no fault, supply low or gauge wrong
  std::optional<Fault> smaller = {};  ///< it is larger than this in 9 of 10 cases
  std::optional<Fault> larger = {};   ///< it is smaller than this in 9 of 10 cases
  std::optional<Supply> supply = {};  ///< of a supply that is low: as it then is
  std::optional<Pressure> gauge_shows_too_much = {};  ///< of a wrong gauge
  double misfit = 0;  ///< of all readings together, in standard errors (as 3 in Formula)
  std::vector<ReadingFit> fits = {};  ///< one for each reading
};

/// What one goes to look at.
enum class WalkKind {
  nothing,        ///< no fault
  broken_outlet,  ///< head off, riser sheared, nozzle missing
  odd_outlet,     ///< worn, clogged, or another one fitted
  leak,
  end_open,
  valve,  ///< left open, part closed
  regulator,
  supply,  ///< filter, engine, pump, water low
  gauge
};
std::string_view words_of(WalkKind kind);
/// What one looks for when this is the fault.
WalkKind walk_kind_of(CandidateKind kind);

/// All that one would look for at one place on one way.
struct WalkTo {
  WalkKind kind = WalkKind::nothing;
  std::string line = {};  ///< empty: at the supply
  double probability = 0;
  std::optional<int> first = {};  ///< of the fewest outlets in a row that hold walk_share of it
  std::optional<int> last = {};
  std::optional<int> most_likely = {};
};

/// Two candidates that the readings cannot tell apart, and what could.
struct LookAlike {
  std::size_t one = 0;    ///< of FoundFaults::faults
  std::size_t other = 0;  ///< likewise
  double apart = 0;       ///< what was read, between them, in standard errors: below 1
  std::optional<Reading> tells_apart = {};  ///< without a figure; none: no reading does
  double then_apart = 0;                    ///< that reading, between them, in its standard errors
};

/// A candidate that could not be solved, and why.
struct NotSolvedCandidate {
  Candidate candidate = {};
  std::string why = {};
};

/// All candidates after the readings.
struct FoundFaults {
  std::vector<FoundFault> faults = {};      ///< most probable first
  std::vector<WalkTo> walk = {};            ///< most probable first
  std::vector<LookAlike> look_alikes = {};  ///< of the most probable ones
  bool explained = true;                    ///< false: no single fault explains these readings
  double least_misfit = 0;  ///< of all readings, by the candidate that fits best [standard errors]
  std::vector<NotSolvedCandidate> not_solved = {};
  std::vector<std::string> notes = {};  ///< what follows from readings that are few, and the like
  std::size_t solves = 0;               ///< layouts that were solved
};

/// @throws InvalidInput, NotSolved, Stopped
FoundFaults find_fault(const Layout& layout,
                       const std::vector<Reading>& readings,
                       const std::vector<Sight>& sights = {},
                       const FindFaultOptions& options = {},
                       const Work& work = {});

/// What is wrong with the fields; empty when nothing is.
std::vector<Problem> problems(const FindFaultOptions& options, const Layout& layout);

}  // namespace hydro
