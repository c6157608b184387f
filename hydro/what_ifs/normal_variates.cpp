#include "hydro/what_ifs/normal_variates.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <numbers>
#include <span>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "hydro/what_ifs/normal_variates.cpp"
#ifndef HWY_DISABLED_TARGETS
#define HWY_DISABLED_TARGETS (HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128 | HWY_RVV)
#endif
#include <hwy/foreach_target.h>
// After foreach_target.h.
#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using D = hn::ScalableTag<double>;
using V = hn::Vec<D>;
using Words = hn::ScalableTag<std::uint64_t>;

constexpr std::size_t width = HWY_MAX_BYTES / sizeof(double);
/// So many numbers are made at once: tails, which are few, are gathered from them.
constexpr std::size_t batch = 256;
static_assert(batch % (4 * width) == 0 && batch % 64 == 0);

HWY_INLINE HWY_ATTR hn::Vec<Words> product_of_low_halves(hn::Vec<Words> words,
                                                         std::uint32_t multiplier) {
  const Words d;
#if HWY_TARGET == HWY_SCALAR
  const std::uint64_t low = hn::GetLane(words) & 0xFFFFFFFF;
  return hn::Set(d, low * multiplier);
#else
  const hn::Repartition<std::uint32_t, Words> halves;
  return hn::MulEven(hn::BitCast(halves, words),
                     hn::BitCast(halves, hn::Set(d, std::uint64_t{multiplier})));
#endif
}

/// The words of counters from `counter` on, one counter's four after another's; as many whole
/// vectors as hold `count` counters.
HWY_ATTR void mix_counters(std::uint64_t seed,
                           const Stream& stream,
                           std::uint64_t counter,
                           std::size_t count,
                           std::uint32_t* HWY_RESTRICT words) {
  constexpr std::uint32_t rounds = 10;
  constexpr std::uint32_t golden_ratio = 0x9E3779B9;
  constexpr std::uint32_t root_of_3_less_1 = 0xBB67AE85;
  const Words d;
  const auto low_half = hn::Set(d, std::uint64_t{0xFFFFFFFF});
  std::uint64_t keys[rounds][2];
  for (std::uint32_t round = 0; round < rounds; ++round) {
    keys[round][0] = static_cast<std::uint32_t>(seed) + round * golden_ratio;
    keys[round][1] = static_cast<std::uint32_t>(seed >> 32) + round * root_of_3_less_1;
  }
  for (std::size_t i = 0; i < count; i += width) {
    const auto counters = hn::Iota(d, counter + i);
    // Each in the low half; what is left in the high half is not looked at until the end.
    auto w0 = counters;
    auto w1 = hn::ShiftRight<32>(counters);
    auto w2 = hn::Set(d, std::uint64_t{stream.low});
    auto w3 = hn::Set(d, std::uint64_t{stream.high});
    for (const auto& key : keys) {
      const auto product_0 = product_of_low_halves(w0, 0xD2511F53);
      const auto product_1 = product_of_low_halves(w2, 0xCD9E8D57);
      w0 = hn::Xor(hn::Xor(hn::ShiftRight<32>(product_1), w1), hn::Set(d, key[0]));
      w1 = product_1;
      w2 = hn::Xor(hn::Xor(hn::ShiftRight<32>(product_0), w3), hn::Set(d, key[1]));
      w3 = product_0;
    }
    const auto first_two = hn::Or(hn::And(w0, low_half), hn::ShiftLeft<32>(w1));
    const auto last_two = hn::Or(hn::And(w2, low_half), hn::ShiftLeft<32>(w3));
    // The low word of a pair first, as on all machines that Highway knows.
    alignas(64) std::uint64_t pairs[2 * width];
    hn::StoreInterleaved2(first_two, last_two, d, pairs);
    std::memcpy(words + 4 * i, pairs, sizeof pairs);
  }
}

template <std::size_t terms>
HWY_INLINE HWY_ATTR V polynomial(const double (&coefficients)[terms], V x) {
  const D d;
  V sum = hn::Set(d, coefficients[terms - 1]);
  for (std::size_t k = 1; k < terms; ++k)
    sum = hn::Add(hn::Mul(sum, x), hn::Set(d, coefficients[terms - 1 - k]));
  return sum;
}

constexpr double logarithm_terms[] = {2.0,
                                      2.0 / 3,
                                      2.0 / 5,
                                      2.0 / 7,
                                      2.0 / 9,
                                      2.0 / 11,
                                      2.0 / 13,
                                      2.0 / 15,
                                      2.0 / 17,
                                      2.0 / 19,
                                      2.0 / 21,
                                      2.0 / 23};

/// Of a normal double: m from sqrt(1/2) to sqrt(2), so that the first term left out is below 2e-19.
HWY_INLINE HWY_ATTR V natural_logarithm(V x) {
  constexpr int fraction_bits = 52;
  const D d;
  const hn::RebindToSigned<D> whole;
  const auto bits = hn::BitCast(whole, x);
  const auto root_half = hn::BitCast(whole, hn::Set(d, std::numbers::sqrt2 / 2));
  const auto exponent = hn::ShiftRight<fraction_bits>(hn::Sub(bits, root_half));
  const V m = hn::BitCast(d, hn::Sub(bits, hn::ShiftLeft<fraction_bits>(exponent)));
  const V one = hn::Set(d, 1.0);
  const V s = hn::Div(hn::Sub(m, one), hn::Add(m, one));
  // As the last digits of a number whose last digit is 1.
  const V large = hn::Set(d, 0x1.8p52);
  const V power = hn::Sub(hn::BitCast(d, hn::Add(hn::BitCast(whole, large), exponent)), large);
  return hn::Add(hn::Mul(power, hn::Set(d, std::numbers::ln2)),
                 hn::Mul(s, polynomial(logarithm_terms, hn::Mul(s, s))));
}

constexpr double a[] = {3.3871328727963666080e0,
                        1.3314166789178437745e2,
                        1.9715909503065514427e3,
                        1.3731693765509461125e4,
                        4.5921953931549871457e4,
                        6.7265770927008700853e4,
                        3.3430575583588128105e4,
                        2.5090809287301226727e3};
constexpr double b[] = {1.0,
                        4.2313330701600911252e1,
                        6.8718700749205790830e2,
                        5.3941960214247511077e3,
                        2.1213794301586595867e4,
                        3.9307895800092710610e4,
                        2.8729085735721942674e4,
                        5.2264952788528545610e3};
constexpr double c[] = {1.42343711074968357734e0,
                        4.63033784615654529590e0,
                        5.76949722146069140550e0,
                        3.64784832476320460504e0,
                        1.27045825245236838258e0,
                        2.41780725177450611770e-1,
                        2.27238449892691845833e-2,
                        7.74545014278341407640e-4};
constexpr double d_[] = {1.0,
                         2.05319162663775882187e0,
                         1.67638483018380384940e0,
                         6.89767334985100004550e-1,
                         1.48103976427480074590e-1,
                         1.51986665636164571966e-2,
                         5.47593808499534494600e-4,
                         1.05075007164441684324e-9};

/// p - 1/2: exact.
HWY_INLINE double away_from_half(std::uint32_t word) {
  return (static_cast<double>(word) - 0x1p31 + 0.5) * 0x1p-32;
}

/// Of whole vectors, `batch` words at most.
HWY_ATTR void quantiles(const std::uint32_t* HWY_RESTRICT words,
                        std::size_t count,
                        double* HWY_RESTRICT out) {
  const D d;
  const hn::Rebind<std::int32_t, D> narrow;
  const hn::RebindToUnsigned<decltype(narrow)> narrow_words;
  alignas(64) double tails[batch + width];
  std::size_t places[batch];
  std::size_t found = 0;
  constexpr std::size_t bits = 64;
  for (std::size_t from = 0; from < count; from += bits) {
    std::uint64_t are_tails = 0;
    for (std::size_t i = from; i < std::min(from + bits, count); i += width) {
      // As signed numbers, half of their range lower.
      const auto centred = hn::Xor(hn::LoadU(narrow_words, words + i),
                                   hn::Set(narrow_words, std::uint32_t{0x80000000}));
      const V q = hn::Mul(hn::Add(hn::PromoteTo(d, hn::BitCast(narrow, centred)), hn::Set(d, 0.5)),
                          hn::Set(d, 0x1p-32));
      const V away = hn::Abs(q);
      const V r = hn::Sub(hn::Set(d, 0.180625), hn::Mul(q, q));
      const V z = hn::Div(hn::Mul(away, polynomial(a, r)), polynomial(b, r));
      hn::Store(hn::CopySign(z, q), d, out + i);
      std::uint8_t of_these[8] = {};
      hn::StoreMaskBits(d, hn::Gt(away, hn::Set(d, 0.425)), of_these);
      are_tails |= std::uint64_t{of_these[0]} << (i - from);
    }
    if (count - from < bits) are_tails &= (std::uint64_t{1} << (count - from)) - 1;
    for (; are_tails != 0; are_tails &= are_tails - 1)
      places[found++] = from + static_cast<std::size_t>(std::countr_zero(are_tails));
  }
  for (std::size_t i = 0; i < found; ++i) tails[i] = away_from_half(words[places[i]]);
  std::fill_n(tails + found, width - 1, away_from_half(0));
  for (std::size_t i = 0; i < found; i += width) {
    const V q = hn::Load(d, tails + i);
    const V logarithm = natural_logarithm(hn::Sub(hn::Set(d, 0.5), hn::Abs(q)));
    const V t = hn::Sub(hn::Sqrt(hn::Neg(logarithm)), hn::Set(d, 1.6));
    hn::StoreU(hn::CopySign(hn::Div(polynomial(c, t), polynomial(d_, t)), q), d, tails + i);
  }
  for (std::size_t i = 0; i < found; ++i) out[places[i]] = tails[i];
}

HWY_ATTR void fill(std::uint64_t seed,
                   const Stream& stream,
                   std::uint64_t first,
                   std::span<double> out) {
  constexpr std::size_t words_of_a_counter = 4;
  alignas(64) std::uint32_t words[batch + 2 * width];
  alignas(64) double made[batch];
  auto skipped = static_cast<std::size_t>(first % words_of_a_counter);
  std::uint64_t counter = first / words_of_a_counter;
  while (!out.empty()) {
    const std::size_t taken = std::min(out.size(), batch - skipped);
    const std::size_t needed = skipped + taken;
    mix_counters(
        seed, stream, counter, (needed + words_of_a_counter - 1) / words_of_a_counter, words);
    quantiles(words, needed, made);
    std::copy_n(made + skipped, taken, out.data());
    out = out.subspan(taken);
    counter += batch / words_of_a_counter;
    skipped = 0;
  }
}

HWY_ATTR void mix_one(std::uint64_t seed,
                      const Stream& stream,
                      std::uint64_t counter,
                      std::uint32_t* words) {
  alignas(64) std::uint32_t made[4 * width];
  mix_counters(seed, stream, counter, 1, made);
  std::copy_n(made, 4, words);
}

HWY_ATTR double quantile(std::uint32_t word) {
  alignas(64) std::uint32_t words[2 * width] = {word};
  alignas(64) double made[width];
  quantiles(words, 1, made);
  return made[0];
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(fill);
HWY_EXPORT(mix_one);
HWY_EXPORT(quantile);

void normal_variates(std::uint64_t seed,
                     const Stream& stream,
                     std::uint64_t first,
                     std::span<double> out) {
  HWY_DYNAMIC_DISPATCH(fill)(seed, stream, first, out);
}

std::array<std::uint32_t, 4> mixed(std::array<std::uint32_t, 4> counter,
                                   std::array<std::uint32_t, 2> key) {
  const auto both = [](std::uint32_t low, std::uint32_t high) {
    return std::uint64_t{high} << 32 | low;
  };
  std::array<std::uint32_t, 4> words{};
  HWY_DYNAMIC_DISPATCH(mix_one)
  (both(key[0], key[1]), {counter[2], counter[3]}, both(counter[0], counter[1]), words.data());
  return words;
}

double normal_quantile(std::uint32_t word) {
  return HWY_DYNAMIC_DISPATCH(quantile)(word);
}

}  // namespace hydro
#endif
