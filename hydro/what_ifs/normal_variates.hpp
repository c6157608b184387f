// normal_variates.hpp: random numbers of which each can be had without those before it.
// Not installed.
//
// What      The number of a seed, a stream and a realisation is a pure function of the three, so that
//           it is the same whatever the threads, the blocks and the vector widths: bits by a keyed
//           mixing of a counter, and the normal quantile of their number.
// Formula   counter   (realisation / 4, low and high word; stream, low and high word), key: the seed;
//                     its word `realisation mod 4` is w
//           p = (w + 1/2) / 2^32,  z = normal quantile of p, |z| up to 6.34
// Source    Philox4x32-10: J. K. Salmon, M. A. Moraes, R. O. Dror and D. E. Shaw, Parallel random
//           numbers: as easy as 1, 2, 3, SC11 (2011) (from memory; its published answers are tested).
//           Quantile: M. J. Wichura, Algorithm AS 241, PPND16, Appl. Statist. 37 (1988) 477-484
//           (coefficients read in copies); its third branch, beyond |z| 6.66, is not needed for 32
//           bits. The logarithm is ours: 2 artanh((m - 1) / (m + 1)) as a series.
// Accuracy  z is off by less than 1e-15 of itself, or 1e-16 where that is more
//           (normal_variates_test.cpp).
//           Only + - * / sqrt and integers, in a fixed order: the same bits on every machine with
//           IEEE 754 doubles and for every width of its vectors, as products and sums are not fused
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

/// One number for each of the realisations from `first` on.
void normal_variates(std::uint64_t seed,
                     const Stream& stream,
                     std::uint64_t first,
                     std::span<double> out);

/// Philox4x32-10.
std::array<std::uint32_t, 4> mixed(std::array<std::uint32_t, 4> counter,
                                   std::array<std::uint32_t, 2> key);

/// The normal quantile of (word + 1/2) / 2^32.
double normal_quantile(std::uint32_t word);

}  // namespace hydro
