#include "hydro/physics/tank.hpp"
namespace hydro {
std::vector<Problem> problems(const Tank&) {
  return {};
}
}  // namespace hydro
