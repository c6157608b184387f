// friction_law.hpp: the friction laws as the inner loop uses them: plain doubles in SI, no checks.
// Not installed. Formulas, sources and ranges stand in friction.hpp.
#pragma once

#include "hydro/physics/pipe.hpp"
#include "hydro/physics/water.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace hydro {

/// A loss of head [m] and its slope with the flow [m / (m3/s)].
struct Loss {
  double head;
  double slope;
  bool operator==(const Loss&) const = default;
};

/// Colebrook-White in Clamond's variable v = (ln 10 / 2) / sqrt(f):  v + ln(v + s) = r, with
/// r = ln(Re / (2.51 * 2 / ln 10)) and s = (k / 3.7 D) * exp(r). No subtraction of large numbers,
/// no overflow.
struct ColebrookRoot {
  double v;
  double s;
  double factor() const {
    constexpr double half_ln10 = std::numbers::ln10 / 2;
    return half_ln10 * half_ln10 / (v * v);
  }
  /// d ln(h) / d ln(Q), by implicit differentiation: 2 - 2/(1 + t), t = v + s.
  double logarithmic_slope() const { return 2 - 2 / (1 + v + s); }
  /// d ln(f) / d ln(k), and what logarithmic_slope() rises by with ln(k).
  double roughness_power() const { return 2 * s / (v * (1 + v + s)); }
  double slope_by_roughness() const {
    const double t = v + s;
    return 2 * s * t / ((1 + t) * (1 + t) * (1 + t));
  }
};

inline ColebrookRoot solve_colebrook(double reynolds, double relative_roughness) {
  const double ratio = reynolds * (std::numbers::ln10 / (2 * 2.51));
  const double r = std::log(ratio);
  const double s = relative_roughness / 3.7 * ratio;
  double v = r - 0.2;
  for (int step = 0; step < 2;
       ++step) {  // quartic: 2e-4 after the first step, rounding after the second
    const double t = v + s;
    const double E = (v + std::log(t) - r) / (1 + t);
    v -= (1 + t + E / 2) * E * t / (1 + t + E * (1 + E / 3));
  }
  return {v, s};
}

/// With which powers of the bore and of the wall's coefficient (C, the roughness or f) a loss goes at
/// the same flow: d ln h / d ln x.
struct LossPowers {
  double bore;
  double wall;
};

/// Stands for a slope that must be evaluated anew.
inline constexpr double unknown_slope = -1;

/// Exponent of the flow in the slope of the Hazen-Williams loss: h ~ Q^1.852.
inline constexpr double slope_exponent = 0.852;

/// (1 + share)^slope_exponent by the first terms of its binomial series.
template <std::size_t terms>
double grown_by(double share) {
  constexpr auto coefficients = [] {
    std::array<double, terms> c{1};
    for (std::size_t k = 1; k < terms; ++k)
      c[k] = c[k - 1] * (slope_exponent - static_cast<double>(k - 1)) / static_cast<double>(k);
    return c;
  }();
  double sum = coefficients.back();
  for (std::size_t k = terms - 1; k-- > 0;) sum = sum * share + coefficients[k];
  return sum;
}

/// Head loss per metre of one kind of pipe as a function of the flow.
class FrictionLaw {
 public:
  FrictionLaw() = default;
  FrictionLaw(const Pipe& pipe, const WaterProperties& water);

  /// Loss over one metre. Odd in the flow; slope >= 0. @param slope of carry(), if there is one
  Loss per_metre(double flow_m3s, double slope = unknown_slope) const {
    const double Q = std::abs(flow_m3s);
    switch (kind_) {
      case Kind::hazen_williams:
        if (slope < 0) slope = (1 + slope_exponent) * coefficient_ * std::pow(Q, slope_exponent);
        return {slope * flow_m3s / (1 + slope_exponent), slope};
      case Kind::constant_factor:
        return {coefficient_ * Q * flow_m3s, 2 * coefficient_ * Q};
      case Kind::darcy_weisbach:
        break;
    }
    const Loss loss = darcy_weisbach(Q);
    return {std::copysign(loss.head, flow_m3s), loss.slope};
  }

  /// The slope after the flow has risen by this share of itself, from the slope before;
  /// unknown_slope where that is not cheap and exact. A power costs as much as all the rest of a
  /// step, and most steps change a flow by little: then a few terms of the binomial series do, the
  /// first one left out being below 1e-17.
  double carry(double slope, double share) const {
    if (kind_ != Kind::hazen_williams) return unknown_slope;
    if (std::abs(share) < 1e-4) return slope * grown_by<4>(share);
    if (std::abs(share) < 1.0 / 32) return slope * grown_by<10>(share);
    return unknown_slope;
  }

  enum class Kind { hazen_williams, constant_factor, darcy_weisbach };
  Kind kind() const { return kind_; }
  /// Of Q^1.852, of Q^2 with a constant factor, of f Q^2 otherwise; per metre.
  double coefficient() const { return coefficient_; }
  LossPowers powers(double flow_m3s) const;

  bool operator==(const FrictionLaw&) const = default;

 private:
  Loss darcy_weisbach(double flow) const;
  Loss turbulent(double flow) const;

  Kind kind_ = Kind::constant_factor;
  double coefficient_ = 0;
  double laminar_slope_ = 0;      ///< dh/dQ at Re <= 2000
  double reynolds_per_flow_ = 0;  ///< Re = this * Q
  double relative_roughness_ = 0;
  double blend_from_ = 0;  ///< flow at Re 2000
  double blend_to_ = 0;    ///< flow at Re 4000
  Loss at_blend_to_ = {};
};

/// K V^2 / (2 g) = this * Q |Q|.
inline double fitting_coefficient(double loss_coefficient, double diameter_m) {
  const double area = std::numbers::pi / 4 * diameter_m * diameter_m;
  return loss_coefficient / (2 * gravity * area * area);
}

}  // namespace hydro
