// in_parallel.hpp: shares many like parts of a work among threads. Not installed.
#pragma once

#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <functional>
#include <span>

namespace hydro {

/// Does `part(i)` once for every i below `count`. Threads take the next i as they become free, so
/// what a part leaves must depend on its i alone; the thread that asked works too. No thread is
/// started for one part, nor where one is all there may be.
/// @throws what a part throws first, after the others have ended; Stopped; InvalidInput for
///   work.threads below 0 or above 1024
void in_parallel(std::size_t count, const Work& work, const std::function<void(std::size_t)>& part);

/// The same in stages of so many parts, of which one has ended before the next begins.
void in_stages(std::span<const std::size_t> counts,
               const Work& work,
               const std::function<void(std::size_t)>& part);

/// How many threads it would use, the one that asks included.
std::size_t threads_for(std::size_t count, const Work& work);

}  // namespace hydro
