// analysis.hpp: all candidates of a layout, solved and weighed by what was read and seen: what
// finding the fault and choosing the next reading have in common. Not installed.
#pragma once

#include "hydro/diagnosis/evidence.hpp"
#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/input_errors.hpp"
#include "hydro/diagnosis/places.hpp"
#include "hydro/diagnosis/solve_candidates.hpp"

#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <Eigen/Core>

namespace hydro {

/// One outlet that was looked at, or could be.
struct Look {
  Sight sight;  ///< of this outlet alone
  std::size_t line;
  std::size_t outlet;  ///< of all, line by line
};

/// A candidate and what the evidence says of it.
struct WeighedCandidate {
  Eigen::MatrixXd predicted = {};  ///< by size as in Evidence::weigh
  Weighed weighed = {};
  double probability = 0;
  std::string not_solved = {};
};

class Analysis {
 public:
  /// @throws InvalidInput, NotSolved, Stopped
  Analysis(const Layout& layout,
           const std::vector<Reading>& readings,
           const std::vector<Sight>& sights,
           const FindFaultOptions& options,
           const Work& work);

  const Layout& layout() const { return layout_; }
  const FindFaultOptions& options() const { return options_; }
  const std::vector<Reading>& readings() const { return readings_; }
  const std::vector<Candidate>& candidates() const { return candidates_; }
  const std::vector<WeighedCandidate>& found() const { return found_; }
  const SolvedBreak& without_fault() const { return base_; }
  std::size_t solves() const { return solves_; }

  /// Standard deviation of one reading by itself, all errors taken together.
  double deviation_of_reading(std::size_t reading, const Candidate& candidate) const;
  /// How much the bias of a wrong gauge hangs with each reading.
  Eigen::VectorXd bias_with_readings(const Candidate& candidate) const;
  /// The evidence by which a candidate is weighed: where a gauge is wrong, its bias is larger.
  const Evidence& evidence_for(const Candidate& candidate) const;
  /// The size that is most probable, in deviations from the median; 0 where there is none.
  double most_probable_size(std::size_t candidate) const;
  /// Of so many cases in a whole it is smaller than this.
  double size_below(std::size_t candidate, double share) const;
  /// What is predicted at a size: readings, then sighted pressures.
  Eigen::VectorXd predicted_at(std::size_t candidate, double u) const;

  /// A figure that could be read, and how it hangs with the readings.
  struct Figure {
    Spot spot;
    std::string gauge;                   ///< empty: no pressure
    double own_variance = 0;             ///< of the reading by itself, and of the model
    double variance = 0;                 ///< all of it
    Eigen::VectorXd with_readings = {};  ///< covariances
  };
  /// @param size that it is about: its errors hang on it
  Figure figure(const Reading& reading, double size) const;
  /// Of the reading by itself, and of the model.
  double own_variance(const Reading& reading, double size) const;
  /// Once the readings are known.
  static double variance_left(const Figure& figure, const Evidence& evidence);
  /// With the larger bias if it is the candidate's gauge that is wrong.
  Figure figure_if(const Figure& figure, const Candidate& candidate) const;
  /// The pressure by which a look judges, likewise.
  Figure figure(const Look& look) const;

  Look look_at(std::size_t line, int outlet, Seen seen) const;
  /// The chance of what is seen there by a candidate, by the pressure at the device.
  SightChance chance(const Look& look, const Candidate& candidate) const;
  /// At the device; of a dry one, below 0, what it is short of.
  double device_pressure(const Look& look, const SolvedBreak& solved) const;

 private:
  void find_errors();
  void solve(const Work& work);
  void weigh();
  Eigen::VectorXd read_off(const SolvedBreak& solved) const;
  double bias_between(const std::string& one,
                      const std::string& other,
                      const Candidate* wrong) const;

  Layout layout_;
  FindFaultOptions options_;
  std::vector<Reading> readings_;
  int threads_;
  std::vector<Look> looks_;
  std::vector<Spot> spots_;
  std::vector<std::string> gauges_;  // by reading
  double weight_density_;            // rho g [N/m3]
  Solution solution_;
  SolvedBreak base_;
  std::unique_ptr<const InputErrors> errors_;
  Eigen::MatrixXd moved_;  // by inputs: readings, then sighted pressures, a row each
  std::vector<Candidate> candidates_;
  std::optional<Evidence> evidence_;
  std::map<std::string, Evidence> evidence_of_wrong_;  // by gauge
  std::vector<WeighedCandidate> found_;
  std::size_t solves_ = 0;
};

}  // namespace hydro
