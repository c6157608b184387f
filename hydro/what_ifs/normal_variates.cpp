#include "hydro/what_ifs/normal_variates.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
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
using Counters = hn::ScalableTag<std::uint64_t>;
using F = hn::ScalableTag<float>;
using Words = hn::ScalableTag<std::uint32_t>;
using Whole = hn::ScalableTag<std::int32_t>;
using V = hn::Vec<F>;

constexpr std::size_t width = HWY_MAX_BYTES / sizeof(double);
constexpr std::size_t counters_of_group = 8;
constexpr std::size_t group = 4 * counters_of_group;
static_assert(counters_of_group % width == 0);

constexpr std::uint32_t rounds = 7;
struct Keys {
  std::uint64_t of_round[rounds][2];
};

Keys keys_of(std::uint64_t seed) {
  constexpr std::uint32_t golden_ratio = 0x9E3779B9;
  constexpr std::uint32_t root_of_3_less_1 = 0xBB67AE85;
  Keys keys;
  for (std::uint32_t round = 0; round < rounds; ++round) {
    keys.of_round[round][0] = static_cast<std::uint32_t>(seed) + round * golden_ratio;
    keys.of_round[round][1] = static_cast<std::uint32_t>(seed >> 32) + round * root_of_3_less_1;
  }
  return keys;
}

HWY_INLINE HWY_ATTR std::uint32_t low_half(hn::Vec<Counters> word) {
  return static_cast<std::uint32_t>(hn::GetLane(word));
}

HWY_INLINE HWY_ATTR hn::Vec<Counters> product_of_low_halves(hn::Vec<Counters> words,
                                                            std::uint32_t multiplier) {
  const Counters d;
#if HWY_TARGET == HWY_SCALAR
  return hn::Set(d, std::uint64_t{low_half(words)} * multiplier);
#else
  const Words halves;
  return hn::MulEven(hn::BitCast(halves, words),
                     hn::BitCast(halves, hn::Set(d, std::uint64_t{multiplier})));
#endif
}

/// The words of a vector of counters, each in the low half: the high half is never looked at.
struct Mixed {
  hn::Vec<Counters> w0, w1, w2, w3;
};

HWY_INLINE HWY_ATTR Mixed mix(const Keys& keys, const Stream& stream, std::uint64_t first) {
  const Counters d;
  const auto counters = hn::Iota(d, first);
  Mixed w{counters,
          hn::ShiftRight<32>(counters),
          hn::Set(d, std::uint64_t{stream.low}),
          hn::Set(d, std::uint64_t{stream.high})};
  for (const auto& key : keys.of_round) {
    const auto product_0 = product_of_low_halves(w.w0, 0xD2511F53);
    const auto product_1 = product_of_low_halves(w.w2, 0xCD9E8D57);
    w = {hn::Xor(hn::Xor(hn::ShiftRight<32>(product_1), w.w1), hn::Set(d, key[0])),
         product_1,
         hn::Xor(hn::Xor(hn::ShiftRight<32>(product_0), w.w3), hn::Set(d, key[1])),
         product_0};
  }
  return w;
}

template <std::size_t terms>
HWY_INLINE HWY_ATTR V polynomial(const float (&coefficients)[terms], V x) {
  const F d;
  V sum = hn::Set(d, coefficients[terms - 1]);
  for (std::size_t k = 1; k < terms; ++k)
    sum = hn::Add(hn::Mul(sum, x), hn::Set(d, coefficients[terms - 1 - k]));
  return sum;
}

/// -ln(x / 2^62) of an x up to 2^62.
HWY_INLINE HWY_ATTR V logarithm_below_62nd_power(V x) {
  constexpr int fraction_bits = 23;
  constexpr float root_half = static_cast<float>(0x1p62 * std::numbers::sqrt2 / 2);
  // The first term left out is below 3e-8.
  constexpr float terms[] = {2.0F, 2.0F / 3, 2.0F / 5, 2.0F / 7};
  const F d;
  const Whole whole;
  const auto bits = hn::BitCast(whole, x);
  const auto power = hn::ShiftRight<fraction_bits>(
      hn::Sub(bits, hn::Set(whole, std::bit_cast<std::int32_t>(root_half))));
  const V m = hn::BitCast(d, hn::Sub(bits, hn::ShiftLeft<fraction_bits>(power)));
  const V one = hn::Set(d, 0x1p62F);
  const V s = hn::Div(hn::Sub(one, m), hn::Add(one, m));
  return hn::Sub(hn::Mul(s, polynomial(terms, hn::Mul(s, s))),
                 hn::Mul(hn::ConvertTo(d, power), hn::Set(d, std::numbers::ln2_v<float>)));
}

// Giles, single precision.
constexpr float below_5[] = {1.50140941F,
                             0.246640727F,
                             -0.00417768164F,
                             -0.00125372503F,
                             0.00021858087F,
                             -4.39150654e-06F,
                             -3.5233877e-06F,
                             3.43273939e-07F,
                             2.81022636e-08F};
// Wichura, PPND7: second branch.
constexpr float c[] = {1.4234372777F, 2.75681539F, 1.3067284816F, 0.17023821103F};
constexpr float d_[] = {1.0F, 0.7370016425F, 0.12021132975F};

/// |z| of the lesser of p and 1 - p, by 2^32.
HWY_INLINE HWY_ATTR V far_quantiles(V tail) {
  const F d;
  const V w = logarithm_below_62nd_power(hn::Mul(tail, hn::Set(d, 0x1p30F)));
  const V t = hn::Sub(hn::Sqrt(w), hn::Set(d, 1.6F));
  return hn::Div(polynomial(c, t), polynomial(d_, t));
}

HWY_INLINE HWY_ATTR V quantiles(hn::Vec<Words> words) {
  const F d;
  const Whole whole;
  const auto bits = hn::BitCast(whole, words);
  const auto is_above_half = hn::BroadcastSignBit(bits);
  // Lesser of p and 1 - p, by 2^32: what is near 0 or 1 keeps its digits, and z is odd.
  const V tail = hn::Add(hn::ConvertTo(d, hn::Xor(bits, is_above_half)), hn::Set(d, 0.5F));
  const V w = logarithm_below_62nd_power(hn::Mul(tail, hn::Sub(hn::Set(d, 0x1p32F), tail)));
  const V x = hn::Mul(hn::Sub(hn::Set(d, 0x1p31F), tail),
                      hn::Set(d, static_cast<float>(0x1p-31 * std::numbers::sqrt2)));
  V z = hn::Mul(polynomial(below_5, hn::Sub(w, hn::Set(d, 2.5F))), x);
  const auto is_far = hn::Ge(w, hn::Set(d, 5.0F));
  if (HWY_UNLIKELY(!hn::AllFalse(d, is_far))) z = hn::IfThenElse(is_far, far_quantiles(tail), z);
  return hn::Xor(z, hn::AndNot(hn::BitCast(d, is_above_half), hn::SignBit(d)));
}

/// What words become.
struct Scale {
  V farthest;
  hn::Vec<D> mean;
  hn::Vec<D> deviation;
};

HWY_INLINE HWY_ATTR V bounded_quantiles(hn::Vec<Words> words, const Scale& scale) {
  return hn::Max(hn::Min(quantiles(words), scale.farthest), hn::Neg(scale.farthest));
}

template <class Z>
HWY_INLINE HWY_ATTR void put(Z z, const Scale& scale, double* HWY_RESTRICT out) {
  const D d;
  hn::StoreU(hn::Add(scale.mean, hn::Mul(scale.deviation, hn::PromoteTo(d, z))), d, out);
}

/// The numbers of two words of a vector of counters.
HWY_INLINE HWY_ATTR void put_both(hn::Vec<Counters> one,
                                  hn::Vec<Counters> other,
                                  const Scale& scale,
                                  double* HWY_RESTRICT of_one,
                                  double* HWY_RESTRICT of_other) {
  const Words words;
#if HWY_TARGET == HWY_SCALAR
  put(bounded_quantiles(hn::Set(words, low_half(one)), scale), scale, of_one);
  put(bounded_quantiles(hn::Set(words, low_half(other)), scale), scale, of_other);
#else
  const hn::Half<F> half;
  const V z = bounded_quantiles(
      hn::ConcatEven(words, hn::BitCast(words, other), hn::BitCast(words, one)), scale);
  put(hn::LowerHalf(half, z), scale, of_one);
  put(hn::UpperHalf(half, z), scale, of_other);
#endif
}

/// The numbers of eight counters from this one on.
HWY_INLINE HWY_ATTR void make_group(const Keys& keys,
                                    const Stream& stream,
                                    std::uint64_t counter,
                                    const Scale& scale,
                                    double* HWY_RESTRICT out) {
  for (std::size_t i = 0; i < counters_of_group; i += width) {
    const Mixed w = mix(keys, stream, counter + i);
    double* const first = out + i;
    put_both(w.w0, w.w1, scale, first, first + counters_of_group);
    put_both(w.w2, w.w3, scale, first + 2 * counters_of_group, first + 3 * counters_of_group);
  }
}

HWY_ATTR void fill(std::uint64_t seed,
                   const Stream& stream,
                   std::uint64_t first,
                   const Normal& normal,
                   std::span<double> out) {
  const Keys keys = keys_of(seed);
  const Scale scale{hn::Set(F(), static_cast<float>(normal.farthest)),
                    hn::Set(D(), normal.mean),
                    hn::Set(D(), normal.deviation)};
  std::uint64_t counter = first / group * counters_of_group;
  auto skipped = static_cast<std::size_t>(first % group);
  for (; !out.empty(); counter += counters_of_group) {
    const std::size_t taken = std::min(out.size(), group - skipped);
    if (taken == group) {
      make_group(keys, stream, counter, scale, out.data());
    } else {
      double made[group];
      make_group(keys, stream, counter, scale, made);
      std::copy_n(made + skipped, taken, out.data());
    }
    skipped = 0;
    out = out.subspan(taken);
  }
}

HWY_ATTR void mix_one(std::uint64_t seed,
                      const Stream& stream,
                      std::uint64_t counter,
                      std::uint32_t* words) {
  const Mixed w = mix(keys_of(seed), stream, counter);
  words[0] = low_half(w.w0);
  words[1] = low_half(w.w1);
  words[2] = low_half(w.w2);
  words[3] = low_half(w.w3);
}

HWY_ATTR double quantile(std::uint32_t word) {
  return hn::GetLane(quantiles(hn::Set(Words(), word)));
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
                     const Normal& normal,
                     std::span<double> out) {
  HWY_DYNAMIC_DISPATCH(fill)(seed, stream, first, normal, out);
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
