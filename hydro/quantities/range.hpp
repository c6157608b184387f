// range.hpp: an accepted interval, and the examination of an input against many of them.
//
// What      Each public struct has one function problems(...) that examines all its fields; the
//           accepted intervals stand there. They are wide: they catch slips of unit and of sign,
//           not odd designs.
// Errors    Comparisons are written positively, so that NaN is outside every range.
// Threads   Plain values.
#pragma once

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/unit_text.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace hydro {

/// From `from` (or above it) to `to`, numbers of `unit`.
template <class Q>
struct Range {
  double from;
  double to;
  Unit<Q> unit;
  bool above_from = false;

  bool contains(const Q& value) const {
    const double number = value / unit;
    return (above_from ? number > from : number >= from) && number <= to;
  }
  std::string text() const {
    return (above_from ? "above " : "from ") + to_text(from) + " to " + to_text(to) +
           (*unit.symbol == '\0' ? "" : " ") + unit.symbol;
  }
};

/// The most bytes that a name of a line, a pipe, an outlet or a site may have.
inline constexpr std::size_t longest_name = 60;

/// Collects what is wrong with one thing.
class Examination {
 public:
  template <class Q>
  void within(const std::string& key, const Q& value, const Range<Q>& range) {
    if (!range.contains(value))
      add(key, "is " + to_message(value, range.unit) + ", must be " + range.text());
  }
  template <class Q>
  void within(const std::string& key, const std::optional<Q>& value, const Range<Q>& range) {
    if (value) within(key, *value, range);
  }
  void within(const std::string& key, int value, int from, int to) {
    if (!(value >= from && value <= to))
      add(key,
          "is " + std::to_string(value) + ", must be from " + std::to_string(from) + " to " +
              std::to_string(to));
  }
  /// A name may be empty or have up to `longest_name` bytes.
  void name(const std::string& key, const std::string& name) {
    if (name.size() > longest_name)
      add(key,
          "has " + std::to_string(name.size()) + " bytes, must have at most " +
              std::to_string(longest_name));
    if (std::any_of(name.begin(), name.end(), is_control))
      add(key, "is " + in_quotes(name) + ", must have no control characters");
  }
  void add(const std::string& key, std::string message) {
    problems_.push_back({{}, key, std::move(message)});
  }
  /// Takes over what was found in a part: its keys are read as `part.key`.
  void include(const std::string& part, const std::vector<Problem>& found) {
    for (const Problem& problem : found) add(part + "." + problem.key, problem.message);
  }
  std::vector<Problem> take() { return std::exchange(problems_, {}); }

 private:
  std::vector<Problem> problems_;
};

}  // namespace hydro
