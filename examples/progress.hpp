// progress.hpp: how far a long answer is, for programs: on standard error, and only where that is a
// terminal.
#pragma once

#include "hydro/what_ifs/work.hpp"

#include <cstddef>
#include <iostream>

#include <unistd.h>

inline hydro::Work with_progress() {
  if (isatty(STDERR_FILENO) == 0) return {};
  return {.progress = [](std::size_t done, std::size_t of) {
    constexpr std::size_t width = 40;
    const std::size_t filled = of > 0 ? width * done / of : width;
    std::cerr << "\r[";
    for (std::size_t i = 0; i < width; ++i) std::cerr << (i < filled ? '#' : ' ');
    std::cerr << "] " << done << " of " << of << (done == of ? "\n" : "") << std::flush;
    return true;
  }};
}
