// ways_to_lay.hpp: all ways to lay lines in pipes of a list. Not installed.
//
// What      Along each line the pipe may change at certain places, from wider to narrower. A group of
//           lines is laid alike, so a way is one for all of them.
// Formula   with P pipes, m places and at most s sizes there are
//           sum over k = 1 ... s of binomial(P, k) binomial(m, k - 1) ways
// Threads   Plain values and pure functions.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/what_ifs/priced_pipe.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace hydro {

/// One way: pipes from the inlet on, and the places, by index, at which each but the last ends.
struct WayToLay {
  std::vector<std::size_t> pipes;
  std::vector<std::size_t> changes;
  double cost;  ///< money, or without prices the volume inside [m3]
};

/// Where the pipe of a line may change, between its ends, from the inlet on.
std::vector<Length> places_of_change(const Layout& layout,
                                     std::size_t line,
                                     const std::optional<Length>& every);

/// A first length of one pipe and the rest of another; none where `to` is 0 or the far end.
Line laid_in(Line line, const Pipe& first, const Length& to, const Pipe& rest);

/// Lines that are laid alike, and the ways to do so.
class GroupToLay {
 public:
  /// @param pipes from the widest on
  GroupToLay(const Layout& layout,
             std::vector<std::size_t> lines,
             int sizes,
             const std::vector<PricedPipe>& pipes,
             const std::optional<Length>& every);

  const std::vector<std::size_t>& lines() const { return lines_; }
  bool all_change_alike() const { return all_change_alike_; }
  /// How many there are; a double, since they may be very many.
  double count_of_ways() const;
  /// From the cheapest on.
  std::vector<WayToLay> ways() const;
  /// A line of the group, laid so.
  Line laid(std::size_t line, const WayToLay& way) const;

 private:
  double cost_of(const WayToLay& way) const;
  std::size_t most_sizes() const;

  const Layout& layout_;
  const std::vector<PricedPipe>& pipes_;
  std::vector<std::size_t> lines_;
  std::size_t sizes_;
  std::vector<Length> places_;  ///< of the first line; of all, where there is more than one size
  bool all_change_alike_ = true;
};

/// What a way costs along one line: money, or without prices the volume inside.
double cost_of_line(const Line& laid, const std::vector<PricedPipe>& pipes);

}  // namespace hydro
