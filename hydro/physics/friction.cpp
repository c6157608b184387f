#include "hydro/physics/friction.hpp"

#include "hydro/physics/friction_law.hpp"
#include "hydro/quantities/range.hpp"

namespace hydro {
namespace {

constexpr double laminar_to = 2000;      // Reynolds number
constexpr double turbulent_from = 4000;  // Reynolds number

void require_sound(const Pipe& pipe) {
  if (auto found = problems(pipe); !found.empty()) throw InvalidInput(std::move(found));
}

constexpr Range<Flow> some_flow{-1e6, 1e6, m3_per_s};

template <class Q>
void require_within(const char* name, const Q& value, const Range<Q>& range) {
  Examination examination;
  examination.within(name, value, range);
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
}

}  // namespace

Velocity velocity(const Pipe& pipe, const Flow& flow) {
  require_sound(pipe);
  require_within("flow", flow, some_flow);
  return flow / area(pipe);
}

double reynolds_number(const Pipe& pipe, const Flow& flow, const WaterProperties& water) {
  return std::abs(si(velocity(pipe, flow) * pipe.inside_diameter / water.kinematic_viscosity));
}

double colebrook_white(double reynolds, double relative_roughness) {
  Examination examination;
  examination.within("reynolds", reynolds, Range<double>{100, 1e12, units::plain});
  examination.within(
      "relative_roughness", relative_roughness, Range<double>{0, 0.05, units::plain});
  if (auto found = examination.take(); !found.empty()) throw InvalidInput(std::move(found));
  return solve_colebrook(reynolds, relative_roughness).factor();
}

Length friction_loss(const Pipe& pipe,
                     const Length& length,
                     const Flow& flow,
                     const WaterProperties& water) {
  require_sound(pipe);
  require_within("length", length, Range<Length>{0, 1e8, units::m});
  require_within("flow", flow, some_flow);
  require_within("kinematic_viscosity",
                 water.kinematic_viscosity,
                 Range<KinematicViscosity>{0.001, 10000, mm2_per_s});
  return length * FrictionLaw(pipe, water).per_metre(si(flow)).head;
}

Length fitting_loss(const Pipe& pipe, double loss_coefficient, const Flow& flow) {
  require_sound(pipe);
  require_within("loss_coefficient", loss_coefficient, Range<double>{0, 1e9, units::plain});
  require_within("flow", flow, some_flow);
  const double k = fitting_coefficient(loss_coefficient, si(pipe.inside_diameter));
  return k * si(flow) * std::abs(si(flow)) * units::m;
}

FrictionLaw::FrictionLaw(const Pipe& pipe, const WaterProperties& water) {
  const double D = si(pipe.inside_diameter);
  const double nu = si(water.kinematic_viscosity);
  if (pipe.hazen_williams) {
    kind_ = Kind::hazen_williams;
    coefficient_ = 10.67 / (std::pow(*pipe.hazen_williams, 1.852) * std::pow(D, 4.8704));
    return;
  }
  const double per_factor = fitting_coefficient(1, D) / D;  // h = f Q^2 * this, per metre
  if (pipe.darcy_factor) {
    kind_ = Kind::constant_factor;
    coefficient_ = *pipe.darcy_factor * per_factor;
    return;
  }
  kind_ = Kind::darcy_weisbach;
  coefficient_ = per_factor;
  relative_roughness_ = si(pipe.roughness.value_or(Length{})) / D;
  reynolds_per_flow_ = 4 / (std::numbers::pi * D * nu);
  laminar_slope_ = 64 / reynolds_per_flow_ * per_factor;
  blend_from_ = laminar_to / reynolds_per_flow_;
  blend_to_ = turbulent_from / reynolds_per_flow_;
  at_blend_to_ = turbulent(blend_to_);
}

Loss FrictionLaw::turbulent(double flow) const {
  const ColebrookRoot root = solve_colebrook(reynolds_per_flow_ * flow, relative_roughness_);
  const double head = coefficient_ * root.factor() * flow * flow;
  return {head, root.logarithmic_slope() * head / flow};
}

Loss FrictionLaw::darcy_weisbach(double flow) const {
  if (flow <= blend_from_) return {laminar_slope_ * flow, laminar_slope_};
  if (flow >= blend_to_) return turbulent(flow);
  // Hermite's cubic on x from 0 at Re 2000 to 1 at Re 4000, values and slopes of both ends.
  const double width = blend_to_ - blend_from_;
  const double x = (flow - blend_from_) / width;
  const double start = laminar_slope_ * blend_from_;
  const double start_slope = laminar_slope_ * width;
  const double end_slope = at_blend_to_.slope * width;
  const double square = 3 * (at_blend_to_.head - start) - 2 * start_slope - end_slope;
  const double cube = 2 * (start - at_blend_to_.head) + start_slope + end_slope;
  return {start + x * (start_slope + x * (square + x * cube)),
          (start_slope + x * (2 * square + x * 3 * cube)) / width};
}

LossPowers FrictionLaw::powers(double flow_m3s) const {
  if (kind_ == Kind::hazen_williams) return {-4.8704, -1.852};
  if (kind_ == Kind::constant_factor) return {-5, 1};
  const double Q = std::abs(flow_m3s);
  if (Q <= blend_from_) return {-4, 0};
  const Loss loss = darcy_weisbach(Q);
  double wall = 0;
  if (Q >= blend_to_) {
    wall = solve_colebrook(reynolds_per_flow_ * Q, relative_roughness_).roughness_power();
  } else {
    const ColebrookRoot end = solve_colebrook(turbulent_from, relative_roughness_);
    const double x = (Q - blend_from_) / (blend_to_ - blend_from_);
    const double head = at_blend_to_.head * end.roughness_power();
    const double slope =
        (blend_to_ - blend_from_) / blend_to_ *
        (at_blend_to_.head * end.slope_by_roughness() + head * end.logarithmic_slope());
    wall = x * x * (head * (3 - 2 * x) + slope * (x - 1)) / loss.head;
  }
  // By dimensions h D^3 / L is a function of Q / D and k / D alone, the viscosity being the same.
  return {-3 - loss.slope * Q / loss.head - wall, wall};
}

}  // namespace hydro
