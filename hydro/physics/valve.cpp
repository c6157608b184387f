#include "hydro/physics/valve.hpp"
namespace hydro {
double loss_coefficient(const Valve& valve) {
  return valve.kind ? 0.15 : 0;
}
std::vector<Problem> problems(const Valve&) {
  return {};
}
}  // namespace hydro
