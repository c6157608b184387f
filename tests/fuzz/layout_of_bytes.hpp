// layout_of_bytes.hpp: layouts of every kind, out of a fuzzer's bytes.
//
// What      Unlike the random layouts beside it, which are drawn from what is met in fields, this one
//           goes to the ends of every accepted interval, and each byte decides one thing, so that a
//           fuzzer can change it by itself.
#pragma once

#include "hydro/layout/layout.hpp"

#include "bytes.hpp"

namespace hydro {

/// @throws InvalidInput where the parts do not fit one another
Layout layout_of_bytes(Bytes& bytes);

}  // namespace hydro
