#include "hydro/physics/pump.hpp"
namespace hydro {
std::vector<Problem> problems(const Pump&) {
  return {};
}
}  // namespace hydro
