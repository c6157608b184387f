// counted.hpp: what stepping up the outlets of a line has in common. Not installed.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/room_on_line.hpp"
#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <string_view>
#include <type_traits>
#include <vector>

namespace hydro {

/// Solves a layout and judges it.
RoomAtCount at_count(const Layout& layout, int added, const Limits& limits);

/// @throws InvalidInput for a `most` out of its range, no limits, or a line without water
void require_room(const Layout& layout, std::string_view line, int most, const Limits& limits);

/// What is found with each pipe, one after the other: each is shared among the threads, and told of
/// as one part of the whole.
template <class Find>
auto by_pipe(const std::vector<Pipe>& pipes, const Work& work, const Find& find) {
  std::vector<std::invoke_result_t<const Find&, const Pipe&, const Work&>> all;
  const auto tell = [&] {
    if (work.progress && !work.progress(all.size(), pipes.size()))
      throw Stopped(all.size(), pipes.size());
    return true;
  };
  const Work of_one{.threads = work.threads,
                    .progress = [&](std::size_t, std::size_t) { return tell(); }};
  for (const Pipe& pipe : pipes) {
    all.push_back(find(pipe, of_one));
    tell();
  }
  return all;
}

}  // namespace hydro
