#include "hydro/physics/suction.hpp"
namespace hydro {
std::vector<Problem> problems(const Suction&) {
  return {};
}
}  // namespace hydro
