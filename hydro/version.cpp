#include "hydro/version.hpp"

namespace hydro {

static_assert(HYDRO_VERSION_MINOR < 100 && HYDRO_VERSION_PATCH < 100, "HYDRO_VERSION is ambiguous");

std::string_view version() noexcept {
  return HYDRO_VERSION_TEXT;
}

}  // namespace hydro
