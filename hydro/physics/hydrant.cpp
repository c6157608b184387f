#include "hydro/physics/hydrant.hpp"
namespace hydro {
std::vector<Problem> problems(const Hydrant&) {
  return {};
}
}  // namespace hydro
