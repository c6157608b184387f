// reading.hpp: what was read off gauges, meters and buckets, and what anyone sees on a walk.
//
// What      A Reading is one figure at one place, in the units it was read in, with the error that it
//           may have by itself. Two readings of one gauge that is carried round share what that gauge
//           shows too much, its bias. A Sight costs nothing but the walk: whether outlets turn.
// Formula   flow by bucket = volume / time
//           sight: turning   P = Phi((p - minimum) / width), p at the device
//                  dry       P = Phi(-p / width), p what is left at the device, below 0 too
//           each held within `doubt` of 0 and 1, since people misjudge
// Source    Standard errors where none are given are assumed (common practice, no source): a dial is
//           read to half of its usual 2 psi division, 1 psi; a stopwatch by hand to 0.5 s, a bucket's
//           mark to 2 %, a meter to 2 %, an engine's counter to 1 %. One-sided evidence with a probit:
//           any textbook of ordered or binary response, e.g. C. E. Rasmussen and C. K. I. Williams,
//           Gaussian Processes for Machine Learning (2006), section 3.3 (from memory).
// Range     Places at the supply are the first supply's. The inlet of a line can be read while that is
//           open, and not where a regulator is stuck shut. A gauge shows nothing below 0.
// Errors    problems() names each field that is out of its accepted interval, a place that is not in
//           the layout, and readings of one place that no error explains.
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// Where a figure is read.
enum class ReadingPlace {
  supply_gauge,  ///< pressure at the supply's gauge; without one, before the filter
  after_filter,  ///< pressure at the start of the lines
  line_inlet,    ///< pressure in the pipe that feeds the line, where it begins, before its valve
  pipe,          ///< pressure in the line at an outlet
  riser,         ///< pressure at an outlet's device
  jet,           ///< pressure in the jet of a bored nozzle, by a pitot tube
  flush_end,     ///< pressure at the far end of the line
  meter,         ///< flow out of the supply
  bucket,        ///< flow out of an outlet: flow, or volume and time
  engine         ///< speed of the pump's engine
};

/// "line inlet", as it is spelt in a file.
std::string_view words_of(ReadingPlace place);
bool is_pressure(ReadingPlace place);
bool is_flow(ReadingPlace place);
/// Whether it takes the name of a line.
bool is_on_line(ReadingPlace place);
/// Whether it takes the number of an outlet.
bool is_at_outlet(ReadingPlace place);

/// One figure that was read, or could be.
struct Reading {
  ReadingPlace place = ReadingPlace::supply_gauge;
  std::string line = {};                  ///< where place is_on_line
  int outlet = 0;                         ///< from 1 on, where place is_at_outlet
  std::optional<Pressure> pressure = {};  ///< -100 kPa to 10 MPa
  std::optional<Flow> flow = {};          ///< above 0
  std::optional<RotationalSpeed> speed = {};
  std::optional<Volume> volume = {};            ///< of a bucket: instead of flow ...
  std::optional<Time> time = {};                ///< ... that was filled in this time
  std::optional<Pressure> pressure_error = {};  ///< standard error, default 1 psi
  std::optional<double> flow_error = {};        ///< standard error, share of the flow, default 2 %
  std::optional<Time> time_error = {};     ///< standard error of a bucket's time, default 0.5 s
  std::optional<double> speed_error = {};  ///< standard error, share, default 1 %
  /// Readings of one gauge share its bias. Default: a gauge of its own at the supply and after the
  /// filter each; all other pressures by one gauge carried round.
  std::string gauge = {};
  bool operator==(const Reading&) const = default;

  static constexpr Pressure default_pressure_error = 1 * psi;
  static constexpr double default_flow_error = 0.02;
  static constexpr Time default_time_error = 0.5 * units::s;
  static constexpr double default_speed_error = 0.01;
};

/// What is seen of an outlet or beside a line.
enum class Seen {
  turning,      ///< works as it should
  not_turning,  ///< water comes, and it does not turn or form its pattern
  dry,          ///< no water comes out
  plume,        ///< a column of water out of a broken riser, or out of a body without its nozzle
  wet_spot      ///< water at the ground by the outlet, where none should be
};
/// "not turning", as it is spelt in a file.
std::string_view words_of(Seen seen);

/// What is seen of one outlet, or of some next to each other.
struct Sight {
  Seen seen = Seen::turning;
  std::string line = {};
  int outlet = 0;                     ///< from 1 on
  std::optional<int> to_outlet = {};  ///< the last one; default the same
  /// Over which outlets of one kind cease to turn, default 2 psi.
  std::optional<Pressure> width = {};
  std::optional<double> doubt = {};  ///< chance that it was misjudged, default 0.02
  bool operator==(const Sight&) const = default;

  static constexpr Pressure default_width = 2 * psi;  ///< assumed, no source
  static constexpr double default_doubt = 0.02;       ///< assumed, no source
};

/// The flow that a bucket says, or that is given. @throws InvalidInput when neither is.
Flow flow_read(const Reading& reading);

/// Name of the gauge whose bias a pressure has; empty for what is no pressure.
std::string gauge_of(const Reading& reading);

/// What is wrong with a place alone: as problems(), without a figure.
std::vector<Problem> problems_of_place(const Reading& reading, const Layout& layout);

/// What is wrong with them; empty when nothing is. The place of a Problem is `reading 2` or `sight 1`.
/// Two readings of one place contradict each other when they differ by more than 4 standard errors
/// of the difference.
std::vector<Problem> problems(const std::vector<Reading>& readings,
                              const std::vector<Sight>& sights,
                              const Layout& layout);

/// What follows from readings that are few or all in one place, in sentences; empty when nothing does.
std::vector<std::string> notes_on(const std::vector<Reading>& readings,
                                  const std::vector<Sight>& sights);

}  // namespace hydro
