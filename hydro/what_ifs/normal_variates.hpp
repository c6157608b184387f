// normal_variates.hpp: random numbers of which each can be had without those before it.
// Not installed.
//
// What      The number of a seed, a stream and a realisation is a pure function of the three, so that
//           it is the same whatever the threads, the blocks and the vector widths: bits by a keyed
//           mixing of a counter, and two normal numbers of two of its words.
// Formula   counter   (8 floor(realisation / 32) + realisation mod 8, low and high word; stream, low and
//                     high word), key: the seed; it has two words for this realisation and the one
//                     8 before or after, so that vectors of up to 8 numbers lie side by side: the
//                     first two for the first 16 of 32 realisations, the last two for the others
//           u = (floor(w / 2) + 1/2) / 2^31,  r = sqrt(-2 ln u),  a = pi / 2 (floor(w' / 2^30) + v)
//           v: the last 30 bits of w' as a signed number, by 2^30
//           z = r cos a,  z' = r sin a,  |z| up to 6.67
// Source    Philox4x32-7: J. K. Salmon, M. A. Moraes, R. O. Dror and D. E. Shaw, Parallel random
//           numbers: as easy as 1, 2, 3, SC11 (2011): by their account it passes all of BigCrush (from
//           memory; its published answers are tested).
//           G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29 (1958) 610-611 (from memory). The
//           logarithm is the series of 2 artanh((m - 1) / (m + 1)), sine and cosine are their own.
// Accuracy  Single precision: z is off by at most 1e-6 r, or by 1e-7 / r, up to 4e-4, where r is below
//           0.3, as u has 24 bits there (normal_variates_test.cpp): a factor that varies by 5 % is
//           moved by 1e-7, and no number of realisations that can be had shows it.
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
  double farthest = 7;  ///< beyond all z
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
