// Compiled once as it is, which must work, and once with each mistake, which must not
// (CMakeLists.txt).
#include "hydro/hydro.hpp"

using namespace hydro;

const Supply supply {
#if defined(MISTAKE_LENGTH_FOR_PRESSURE)
  .pressure = 25 * ft,
#elif defined(MISTAKE_BARE_NUMBER)
  .pressure = 25,
#else
  .pressure = 25 * psi,
#endif
};

#if defined(MISTAKE_SUM_OF_TEMPERATURES)
const auto warm = 20 * degC + 20 * degC;
#endif
