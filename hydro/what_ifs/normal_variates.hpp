// normal_variates.hpp: random numbers of which each can be had without those before it.
// Not installed.
//
// What      The number of a seed, a stream and a realisation is a pure function of the three, so that
//           it is the same whatever the threads, the blocks and the vector widths: bits by a keyed
//           mixing of a counter, and the normal quantile of their number.
// Formula   counter   (8 floor(realisation / 32) + realisation mod 8, low and high word; stream, low and
//                     high word), key: the seed; of its words w is the one numbered
//                     floor(realisation / 8) mod 4, so that vectors of up to 8 numbers lie side by side
//           p = (w + 1/2) / 2^32,  z = normal quantile of p = sqrt(2) erfinv(2 p - 1), |z| up to 6.34
// Source    Philox4x32-7: J. K. Salmon, M. A. Moraes, R. O. Dror and D. E. Shaw, Parallel random
//           numbers: as easy as 1, 2, 3, SC11 (2011): by their account the fewest rounds that pass all
//           of BigCrush (from memory; its published answers are tested).
//           Quantile: M. Giles, Approximating the erfinv function, GPU Computing Gems, Jade Edition
//           (2011), chapter 10, single precision (coefficients read in copies), with
//           4 p (1 - p) for 1 - x^2, which keeps the digits of p near 0 and 1. The logarithm is ours:
//           2 artanh((m - 1) / (m + 1)) as a series.
// Accuracy  z is off by less than ACCURACY (normal_variates_test.cpp). In single precision, as a
//           factor that varies by 5 % is moved by less than 1e-7 by it: far less than any maker knows
//           how his outlets vary, and no count of realisations that can be had shows it.
//           Only + - * / sqrt and integers, in a fixed order: the same bits on every machine with
//           IEEE 754 numbers and for every width of its vectors, as products and sums are not fused
//           (-ffp-contract=off: compilers fuse vectors too).
// Threads   Pure functions.
#pragma once

#include <array>
#include <cstdint>
#include <span>

namespace hydro {

/// One of 2^64 sequences of a seed.
struct Stream {
  std::uint32_t low;
  std::uint32_t high;
  bool operator==(const Stream&) const = default;
};

/// mean + deviation z, with z held within `farthest` on either side.
struct Normal {
  double mean = 0;
  double deviation = 1;
  double farthest = 7;  ///< at first beyond all z
};

/// One number for each of the realisations from `first` on.
void normal_variates(std::uint64_t seed,
                     const Stream& stream,
                     std::uint64_t first,
                     const Normal& normal,
                     std::span<double> out);

/// Philox4x32-7.
std::array<std::uint32_t, 4> mixed(std::array<std::uint32_t, 4> counter,
                                   std::array<std::uint32_t, 2> key);

/// Two numbers of two words.
std::array<double, 2> normal_pair(std::uint32_t word, std::uint32_t next);

}  // namespace hydro
