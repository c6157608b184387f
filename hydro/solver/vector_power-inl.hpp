// vector_power-inl.hpp: x^e for vectors. Not installed. Included once for each target.
//
// Formula   x^e = 2^(e log2 x); log2 x = n + (2 / ln 2) (t + t^3/3 + t^5/5 + ...), with
//           x = 2^n m, sqrt(1/2) <= m < sqrt(2), t = (m - 1) / (m + 1); 2^f by its Taylor series
//           on |f| <= 1/2. Both series are cut where the next term is below 1e-17.
//           (1 + u)^e, |u| <= 1/8, by its binomial series, cut likewise: its terms fall at least
//           eightfold.
// Range     Normal x > 0; 0 gives less than 1e-200 for e > 0.7. |e log2 x| < 1000.
// Accuracy  A few units in the last place times |e log2 x|: 3e-15 for flows and heads.

#if defined(HYDRO_VECTOR_POWER_INL_HPP_) == defined(HWY_TARGET_TOGGLE)
#ifdef HYDRO_VECTOR_POWER_INL_HPP_
#undef HYDRO_VECTOR_POWER_INL_HPP_
#else
#define HYDRO_VECTOR_POWER_INL_HPP_
#endif

#include <cstddef>
#include <cstdint>
#include <iterator>

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

/// By pairs, pairs of pairs and so on (Estrin): a third of the waiting that one term after another
/// takes.
template <class D, class V, std::size_t terms>
HWY_INLINE V polynomial(D d, V x, const double (&coefficients)[terms]) {
  constexpr std::size_t pairs = (terms + 1) / 2;
  V sums[pairs];
  for (std::size_t k = 0; k < pairs; ++k)
    sums[k] =
        2 * k + 1 < terms
            ? hn::MulAdd(hn::Set(d, coefficients[2 * k + 1]), x, hn::Set(d, coefficients[2 * k]))
            : hn::Set(d, coefficients[2 * k]);
  V power = hn::Mul(x, x);
  for (std::size_t left = pairs; left > 1; left = (left + 1) / 2) {
    for (std::size_t k = 0; 2 * k < left; ++k)
      sums[k] = 2 * k + 1 < left ? hn::MulAdd(sums[2 * k + 1], power, sums[2 * k]) : sums[2 * k];
    power = hn::Mul(power, power);
  }
  return sums[0];
}

template <class D, class V>
HWY_INLINE V log2_of(D d, V x) {
  const hn::RebindToSigned<D> di;
  constexpr std::int64_t bits_of_sqrt_half = 0x3fe6a09e667f3bcd;
  constexpr double shifter = 6755399441055744.0;  // 1.5 * 2^52: adding it rounds to an integer
  constexpr double two_over_ln2 = 2.8853900817779268;
  static constexpr double series[] = {1.0 / 3,
                                      1.0 / 5,
                                      1.0 / 7,
                                      1.0 / 9,
                                      1.0 / 11,
                                      1.0 / 13,
                                      1.0 / 15,
                                      1.0 / 17,
                                      1.0 / 19,
                                      1.0 / 21};
  const auto bits = hn::BitCast(di, x);
  const auto n = hn::ShiftRight<52>(hn::Sub(bits, hn::Set(di, bits_of_sqrt_half)));
  const V m = hn::BitCast(d, hn::Sub(bits, hn::ShiftLeft<52>(n)));
  const V whole = hn::Sub(hn::BitCast(d, hn::Add(n, hn::BitCast(di, hn::Set(d, shifter)))),
                          hn::Set(d, shifter));
  const V one = hn::Set(d, 1.0);
  const V t = hn::Div(hn::Sub(m, one), hn::Add(m, one));
  const V square = hn::Mul(t, t);
  const V rest = hn::Mul(polynomial(d, square, series), hn::Mul(square, t));
  return hn::MulAdd(hn::Add(t, rest), hn::Set(d, two_over_ln2), whole);
}

template <class D, class V>
HWY_INLINE V exp2_of(D d, V y) {
  const hn::RebindToSigned<D> di;
  constexpr double shifter = 6755399441055744.0;
  // ln(2)^k / k!
  static constexpr double series[] = {1.0,
                                      0.69314718055994530942,
                                      0.24022650695910071233,
                                      0.05550410866482157995,
                                      0.0096181291076284771620,
                                      0.0013333558146428443423,
                                      0.00015403530393381609954,
                                      0.000015252733804059840280,
                                      0.0000013215486790144309488,
                                      1.0178086009239699727e-7,
                                      7.0549116208011233298e-9,
                                      4.4455382718708114975e-10,
                                      2.5678435993488205141e-11,
                                      1.3691488853904128880e-12};
  const V shifted = hn::Add(y, hn::Set(d, shifter));
  const V f = hn::Sub(y, hn::Sub(shifted, hn::Set(d, shifter)));
  const V power = polynomial(d, f, series);
  return hn::BitCast(d,
                     hn::Add(hn::BitCast(di, power), hn::ShiftLeft<52>(hn::BitCast(di, shifted))));
}

template <class D, class V>
HWY_INLINE V power_of(D d, V x, double exponent) {
  return exp2_of(d, hn::Mul(log2_of(d, x), hn::Set(d, exponent)));
}

/// Of (1 + u)^exponent. At exponent 0.852 what 15 terms leave out for |u| <= 1/8 is below 4e-17, and
/// what 10 leave out for |u| <= 1/32 below 2e-18.
template <std::size_t terms>
struct BinomialSeries {
  double of[terms] = {1};
  constexpr explicit BinomialSeries(double exponent) {
    for (std::size_t k = 1; k < terms; ++k)
      of[k] = of[k - 1] * (exponent - static_cast<double>(k - 1)) / static_cast<double>(k);
  }
};
constexpr double nearby = 1.0 / 8;
constexpr double close_by = 1.0 / 32;

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
