#include "hydro/what_ifs/normal_variates.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace hydro {
namespace {

/// So many counters are mixed side by side.
constexpr std::size_t batch = 16;
constexpr std::size_t words_of_a_counter = 4;
using Words = std::array<std::array<std::uint32_t, batch>, words_of_a_counter>;

constexpr std::uint32_t low_word(std::uint64_t x) {
  return static_cast<std::uint32_t>(x);
}
constexpr std::uint32_t high_word(std::uint64_t x) {
  return static_cast<std::uint32_t>(x >> 32);
}

template <std::size_t width>
void mix(std::array<std::array<std::uint32_t, width>, words_of_a_counter>& words,
         std::uint32_t key_0,
         std::uint32_t key_1) {
  constexpr int rounds = 10;
  constexpr std::uint64_t multiplier_0 = 0xD2511F53;
  constexpr std::uint64_t multiplier_1 = 0xCD9E8D57;
  constexpr std::uint32_t golden_ratio = 0x9E3779B9;
  constexpr std::uint32_t root_of_3_less_1 = 0xBB67AE85;
  auto& [w0, w1, w2, w3] = words;
  for (int round = 0; round < rounds; ++round) {
    for (std::size_t i = 0; i < width; ++i) {
      const std::uint64_t product_0 = multiplier_0 * w0[i];
      const std::uint64_t product_1 = multiplier_1 * w2[i];
      w0[i] = high_word(product_1) ^ w1[i] ^ key_0;
      w1[i] = low_word(product_1);
      w2[i] = high_word(product_0) ^ w3[i] ^ key_1;
      w3[i] = low_word(product_0);
    }
    key_0 += golden_ratio;
    key_1 += root_of_3_less_1;
  }
}

template <std::size_t n>
double polynomial(const std::array<double, n>& coefficients, double x) {
  double sum = coefficients[n - 1];
  for (std::size_t k = n - 1; k-- > 0;) sum = sum * x + coefficients[k];
  return sum;
}

constexpr int fraction_bits = 52;

/// Of a number below 2^52: put behind the leading bit of 2^52, which is taken off again.
double as_double(std::uint64_t number) {
  constexpr double leading = 4503599627370496.0;  // 2^52
  return std::bit_cast<double>(std::bit_cast<std::uint64_t>(leading) | number) - leading;
}

/// Of a number from 2^-1000 to 2^1000: of 2^e m, with m from sqrt(1/2) to sqrt(2), so that the first
/// term left out is below 2e-19.
double natural_logarithm(double x) {
  constexpr auto terms = [] {
    std::array<double, 12> c{};
    for (std::size_t k = 0; k < c.size(); ++k) c[k] = 2.0 / static_cast<double>(2 * k + 1);
    return c;
  }();
  constexpr auto bits_of_root_half = std::bit_cast<std::uint64_t>(std::numbers::sqrt2 / 2);
  constexpr std::uint64_t bias = 1024;  // no sign: vectors shift without one faster
  const auto bits = std::bit_cast<std::uint64_t>(x);
  const std::uint64_t biased =
      (bits - bits_of_root_half + (bias << fraction_bits)) >> fraction_bits;
  const double m = std::bit_cast<double>(bits - ((biased - bias) << fraction_bits));
  const double s = (m - 1) / (m + 1);
  return (as_double(biased) - static_cast<double>(bias)) * std::numbers::ln2 +
         s * polynomial(terms, s * s);
}

constexpr std::array a{3.3871328727963666080e0,
                       1.3314166789178437745e2,
                       1.9715909503065514427e3,
                       1.3731693765509461125e4,
                       4.5921953931549871457e4,
                       6.7265770927008700853e4,
                       3.3430575583588128105e4,
                       2.5090809287301226727e3};
constexpr std::array b{1.0,
                       4.2313330701600911252e1,
                       6.8718700749205790830e2,
                       5.3941960214247511077e3,
                       2.1213794301586595867e4,
                       3.9307895800092710610e4,
                       2.8729085735721942674e4,
                       5.2264952788528545610e3};
constexpr std::array c{1.42343711074968357734e0,
                       4.63033784615654529590e0,
                       5.76949722146069140550e0,
                       3.64784832476320460504e0,
                       1.27045825245236838258e0,
                       2.41780725177450611770e-1,
                       2.27238449892691845833e-2,
                       7.74545014278341407640e-4};
constexpr std::array d{1.0,
                       2.05319162663775882187e0,
                       1.67638483018380384940e0,
                       6.89767334985100004550e-1,
                       1.48103976427480074590e-1,
                       1.51986665636164571966e-2,
                       5.47593808499534494600e-4,
                       1.05075007164441684324e-9};

}  // namespace

double normal_quantile(std::uint32_t word) {
  constexpr double half = 2147483648.0;  // 2^31
  const double q = (as_double(word) - half + 0.5) * (0.5 / half);
  const double r = 0.180625 - q * q;
  const double t = std::sqrt(-natural_logarithm(0.5 - std::abs(q))) - 1.6;
  const bool central = std::abs(q) <= 0.425;
  const double above = central ? std::abs(q) * polynomial(a, r) : polynomial(c, t);
  const double below = central ? polynomial(b, r) : polynomial(d, t);
  return std::copysign(above / below, q);
}

std::array<std::uint32_t, 4> mixed(std::array<std::uint32_t, 4> counter,
                                   std::array<std::uint32_t, 2> key) {
  std::array<std::array<std::uint32_t, 1>, words_of_a_counter> words{
      {{counter[0]}, {counter[1]}, {counter[2]}, {counter[3]}}};
  mix(words, key[0], key[1]);
  return {words[0][0], words[1][0], words[2][0], words[3][0]};
}

void normal_variates(std::uint64_t seed,
                     const Stream& stream,
                     std::uint64_t first,
                     std::span<double> out) {
  std::array<double, batch * words_of_a_counter> made{};
  std::uint64_t counter = first / words_of_a_counter;
  auto skipped = static_cast<std::size_t>(first % words_of_a_counter);
  while (!out.empty()) {
    Words words{};
    for (std::size_t i = 0; i < batch; ++i) {
      words[0][i] = low_word(counter + i);
      words[1][i] = high_word(counter + i);
      words[2][i] = stream.low;
      words[3][i] = stream.high;
    }
    mix(words, low_word(seed), high_word(seed));
    for (std::size_t k = 0; k < words_of_a_counter; ++k)
      for (std::size_t i = 0; i < batch; ++i)
        made[words_of_a_counter * i + k] = normal_quantile(words[k][i]);
    const std::size_t taken = std::min(out.size(), made.size() - skipped);
    std::copy_n(made.begin() + static_cast<std::ptrdiff_t>(skipped), taken, out.begin());
    out = out.subspan(taken);
    counter += batch;
    skipped = 0;
  }
}

}  // namespace hydro
