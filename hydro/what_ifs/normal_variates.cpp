#include "hydro/what_ifs/normal_variates.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <span>
#include <utility>

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

/// Vectors of counters, as each step waits for the one before.
constexpr std::size_t at_once = 4;

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

/// The words of some vectors of counters, each in the low half: the high half is never looked at.
template <std::size_t some>
struct Mixed {
  hn::Vec<Counters> w0[some], w1[some], w2[some], w3[some];
};

template <std::size_t some>
HWY_INLINE HWY_ATTR void mix_once(const std::uint64_t (&key)[2], Mixed<some>& w) {
  const Counters d;
  for (std::size_t k = 0; k < some; ++k) {
    const auto product_0 = product_of_low_halves(w.w0[k], 0xD2511F53);
    const auto product_1 = product_of_low_halves(w.w2[k], 0xCD9E8D57);
    w.w0[k] = hn::Xor(hn::Xor(hn::ShiftRight<32>(product_1), w.w1[k]), hn::Set(d, key[0]));
    w.w1[k] = product_1;
    w.w2[k] = hn::Xor(hn::Xor(hn::ShiftRight<32>(product_0), w.w3[k]), hn::Set(d, key[1]));
    w.w3[k] = product_0;
  }
}

/// Not a loop: through it compilers would keep all words in memory.
template <std::size_t some, std::size_t... each_round>
HWY_INLINE HWY_ATTR void mix_by_all(const Keys& keys,
                                    std::index_sequence<each_round...>,
                                    Mixed<some>& w) {
  (mix_once(keys.of_round[each_round], w), ...);
}

template <std::size_t some>
HWY_INLINE HWY_ATTR Mixed<some> mix(const Keys& keys, const Stream& stream, std::uint64_t first) {
  const Counters d;
  Mixed<some> w;
  for (std::size_t k = 0; k < some; ++k) {
    w.w0[k] = hn::Iota(d, first + k * width);
    w.w1[k] = hn::ShiftRight<32>(w.w0[k]);
    w.w2[k] = hn::Set(d, std::uint64_t{stream.low});
    w.w3[k] = hn::Set(d, std::uint64_t{stream.high});
  }
  mix_by_all(keys, std::make_index_sequence<rounds>(), w);
  return w;
}

template <std::size_t some>
struct Several {
  V of[some];
};

template <std::size_t some>
struct SeveralWords {
  hn::Vec<Words> of[some];
};

template <std::size_t some, std::size_t terms>
HWY_INLINE HWY_ATTR Several<some> polynomial(const float (&coefficients)[terms],
                                             const Several<some>& x) {
  const F d;
  Several<some> sum;
  for (V& it : sum.of) it = hn::Set(d, coefficients[terms - 1]);
  for (std::size_t i = 1; i < terms; ++i)
    for (std::size_t k = 0; k < some; ++k)
      sum.of[k] = hn::Add(hn::Mul(sum.of[k], x.of[k]), hn::Set(d, coefficients[terms - 1 - i]));
  return sum;
}

/// sqrt(-2 ln((floor(w / 2) + 1/2) / 2^31)).
template <std::size_t some>
HWY_INLINE HWY_ATTR Several<some> radii(const SeveralWords<some>& words) {
  constexpr int fraction_bits = 23;
  constexpr float root_half = static_cast<float>(0x1p31 * std::numbers::sqrt2 / 2);
  constexpr float twice_ln2 = 2 * std::numbers::ln2_v<float>;
  // 4 artanh(s) / s: the first term left out moves -2 ln by less than 1e-7.
  constexpr float terms[] = {4.0F, 4.0F / 3, 4.0F / 5, 4.0F / 7};
  const F d;
  const Whole whole;
  const V one = hn::Set(d, 0x1p31F);
  Several<some> power, s, squared;
  for (std::size_t k = 0; k < some; ++k) {
    const V u = hn::Add(hn::ConvertTo(d, hn::BitCast(whole, hn::ShiftRight<1>(words.of[k]))),
                        hn::Set(d, 0.5F));
    const auto bits = hn::BitCast(whole, u);
    const auto exponent = hn::ShiftRight<fraction_bits>(
        hn::Sub(bits, hn::Set(whole, std::bit_cast<std::int32_t>(root_half))));
    const V m = hn::BitCast(d, hn::Sub(bits, hn::ShiftLeft<fraction_bits>(exponent)));
    power.of[k] = hn::Mul(hn::ConvertTo(d, exponent), hn::Set(d, twice_ln2));
    s.of[k] = hn::Div(hn::Sub(one, m), hn::Add(one, m));
    squared.of[k] = hn::Mul(s.of[k], s.of[k]);
  }
  Several<some> result = polynomial(terms, squared);
  for (std::size_t k = 0; k < some; ++k)
    result.of[k] = hn::Sqrt(hn::Sub(hn::Mul(s.of[k], result.of[k]), power.of[k]));
  return result;
}

template <std::size_t some>
struct Points {
  Several<some> cosine, sine;
};

/// Of the angle in quarters: the first two bits of w, more the others as a signed part of one.
template <std::size_t some>
HWY_INLINE HWY_ATTR Points<some> points(const SeveralWords<some>& words) {
  // Series up to pi/4: the first terms left out are below 4e-7.
  constexpr float sine_terms[] = {1.0F, -1.0F / 6, 1.0F / 120, -1.0F / 5040};
  constexpr float cosine_terms[] = {1.0F, -1.0F / 2, 1.0F / 24, -1.0F / 720, 1.0F / 40320};
  const F d;
  const Words integers;
  const Whole whole;
  Several<some> angle, squared;
  for (std::size_t k = 0; k < some; ++k) {
    // In its quarter: 30 bits, as a signed number.
    const auto rest = hn::BitCast(whole, hn::ShiftLeft<2>(words.of[k]));
    angle.of[k] = hn::Mul(hn::ConvertTo(d, rest),
                          hn::Set(d, static_cast<float>(0x1p-31 * std::numbers::pi / 4)));
    squared.of[k] = hn::Mul(angle.of[k], angle.of[k]);
  }
  const Several<some> sine = polynomial(sine_terms, squared);
  const Several<some> cosine = polynomial(cosine_terms, squared);
  Points<some> result;
  for (std::size_t k = 0; k < some; ++k) {
    const V s = hn::Mul(sine.of[k], angle.of[k]);
    const auto sign = hn::Set(integers, std::uint32_t{1} << 31);
    const auto sine_sign = hn::And(words.of[k], sign);
    const auto cosine_sign = hn::And(hn::Xor(words.of[k], hn::ShiftLeft<1>(words.of[k])), sign);
    const auto is_odd_quarter =
        hn::RebindMask(d, hn::TestBit(words.of[k], hn::Set(integers, std::uint32_t{1} << 30)));
    result.cosine.of[k] =
        hn::Xor(hn::IfThenElse(is_odd_quarter, s, cosine.of[k]), hn::BitCast(d, cosine_sign));
    result.sine.of[k] =
        hn::Xor(hn::IfThenElse(is_odd_quarter, cosine.of[k], s), hn::BitCast(d, sine_sign));
  }
  return result;
}

/// What z becomes.
struct Scale {
  V farthest;
  hn::Vec<D> mean;
  hn::Vec<D> deviation;
};

template <class Z>
HWY_INLINE HWY_ATTR void put(Z z, const Scale& scale, double* HWY_RESTRICT out) {
  const D d;
  hn::StoreU(hn::Add(scale.mean, hn::Mul(scale.deviation, hn::PromoteTo(d, z))), d, out);
}

constexpr std::size_t last_words = 2 * counters_of_group;  ///< from the first two on

#if HWY_TARGET == HWY_SCALAR

/// Two words of a vector of counters have a vector each.
constexpr std::size_t vectors_of_two_words = 2;

template <std::size_t some>
HWY_INLINE HWY_ATTR SeveralWords<2 * some> low_halves(const hn::Vec<Counters> (&one)[some],
                                                      const hn::Vec<Counters> (&other)[some]) {
  SeveralWords<2 * some> result;
  for (std::size_t k = 0; k < some; ++k) {
    result.of[2 * k] = hn::Set(Words(), low_half(one[k]));
    result.of[2 * k + 1] = hn::Set(Words(), low_half(other[k]));
  }
  return result;
}

HWY_INLINE HWY_ATTR void put_both(const V* z, const Scale& scale, double* HWY_RESTRICT out) {
  put(z[0], scale, out);
  put(z[1], scale, out + last_words);
}

#else

/// Two words of a vector of counters have the halves of one vector.
constexpr std::size_t vectors_of_two_words = 1;

template <std::size_t some>
HWY_INLINE HWY_ATTR SeveralWords<some> low_halves(const hn::Vec<Counters> (&one)[some],
                                                  const hn::Vec<Counters> (&other)[some]) {
  const Words d;
  SeveralWords<some> result;
  for (std::size_t k = 0; k < some; ++k)
    result.of[k] = hn::ConcatEven(d, hn::BitCast(d, other[k]), hn::BitCast(d, one[k]));
  return result;
}

HWY_INLINE HWY_ATTR void put_both(const V* z, const Scale& scale, double* HWY_RESTRICT out) {
  const hn::Half<F> half;
  put(hn::LowerHalf(half, *z), scale, out);
  put(hn::UpperHalf(half, *z), scale, out + last_words);
}

#endif

/// The numbers of some vectors of counters from this one on, the first of its group or in it.
template <std::size_t some>
HWY_INLINE HWY_ATTR void make_some(const Keys& keys,
                                   const Stream& stream,
                                   std::uint64_t first,
                                   std::size_t from,
                                   const Scale& scale,
                                   double* HWY_RESTRICT out) {
  const Mixed<some> w = mix<some>(keys, stream, first + from);
  const auto radius = radii(low_halves(w.w0, w.w2));
  auto point = points(low_halves(w.w1, w.w3));
  const auto held = [&](V z) HWY_ATTR {
    return hn::Max(hn::Min(z, scale.farthest), hn::Neg(scale.farthest));
  };
  for (std::size_t k = 0; k < vectors_of_two_words * some; ++k) {
    point.cosine.of[k] = held(hn::Mul(radius.of[k], point.cosine.of[k]));
    point.sine.of[k] = held(hn::Mul(radius.of[k], point.sine.of[k]));
  }
  for (std::size_t k = 0; k < some; ++k) {
    const std::size_t counter = from + k * width;
    double* const to = out + counter / counters_of_group * group + counter % counters_of_group;
    put_both(point.cosine.of + k * vectors_of_two_words, scale, to);
    put_both(point.sine.of + k * vectors_of_two_words, scale, to + counters_of_group);
  }
}

/// The numbers of counters of whole groups.
HWY_INLINE HWY_ATTR void make_groups(const Keys& keys,
                                     const Stream& stream,
                                     std::uint64_t first,
                                     std::size_t count,
                                     const Scale& scale,
                                     double* HWY_RESTRICT out) {
  std::size_t i = 0;
  for (; i + at_once * width <= count; i += at_once * width)
    make_some<at_once>(keys, stream, first, i, scale, out);
  for (; i + 2 * width <= count; i += 2 * width) make_some<2>(keys, stream, first, i, scale, out);
  for (; i < count; i += width) make_some<1>(keys, stream, first, i, scale, out);
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
  if (const auto skipped = static_cast<std::size_t>(first % group); skipped > 0) {
    double made[group];
    make_groups(keys, stream, counter, counters_of_group, scale, made);
    const std::size_t taken = std::min(out.size(), group - skipped);
    std::copy_n(made + skipped, taken, out.data());
    out = out.subspan(taken);
    counter += counters_of_group;
  }
  const std::size_t whole = out.size() / group;
  make_groups(keys, stream, counter, whole * counters_of_group, scale, out.data());
  if (out.size() > whole * group) {
    double made[group];
    make_groups(keys, stream, counter + whole * counters_of_group, counters_of_group, scale, made);
    std::copy_n(made, out.size() - whole * group, out.data() + whole * group);
  }
}

HWY_ATTR void mix_one(std::uint64_t seed,
                      const Stream& stream,
                      std::uint64_t counter,
                      std::uint32_t* words) {
  const Mixed<1> w = mix<1>(keys_of(seed), stream, counter);
  words[0] = low_half(w.w0[0]);
  words[1] = low_half(w.w1[0]);
  words[2] = low_half(w.w2[0]);
  words[3] = low_half(w.w3[0]);
}

HWY_ATTR void pair(std::uint32_t word, std::uint32_t next, double* z) {
  const Words d;
  const V radius = radii(SeveralWords<1>{{hn::Set(d, word)}}).of[0];
  const Points<1> point = points(SeveralWords<1>{{hn::Set(d, next)}});
  z[0] = hn::GetLane(hn::Mul(radius, point.cosine.of[0]));
  z[1] = hn::GetLane(hn::Mul(radius, point.sine.of[0]));
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace hydro {

HWY_EXPORT(fill);
HWY_EXPORT(mix_one);
HWY_EXPORT(pair);

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

std::array<double, 2> normal_pair(std::uint32_t word, std::uint32_t next) {
  std::array<double, 2> z{};
  HWY_DYNAMIC_DISPATCH(pair)(word, next, z.data());
  return z;
}

}  // namespace hydro
#endif
