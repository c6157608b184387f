// ending.hpp: how a program ends, whatever was thrown in it.
#pragma once

#include "hydro/quantities/error.hpp"

#include <exception>
#include <iostream>

/// The exit status of `run`, or 2 for bad input and 3 for what was not solved, the reason on standard
/// error.
template <class Run>
int ending_of(Run run) {
  try {
    return run();
  } catch (const hydro::InvalidInput& error) {
    std::cerr << error.what() << '\n';
    return 2;
  } catch (const std::exception& error) {  // not solved, or no memory left
    std::cerr << error.what() << '\n';
    return 3;
  }
}
