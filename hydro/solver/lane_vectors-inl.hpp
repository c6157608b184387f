// lane_vectors-inl.hpp: the lanes of a block as vectors. Not installed. Included once for each target.
//
// Source    Highway's guide to per-target headers for the guard.
#if defined(HYDRO_SOLVER_LANE_VECTORS_INL_HPP) == defined(HWY_TARGET_TOGGLE)
#ifdef HYDRO_SOLVER_LANE_VECTORS_INL_HPP
#undef HYDRO_SOLVER_LANE_VECTORS_INL_HPP
#else
#define HYDRO_SOLVER_LANE_VECTORS_INL_HPP
#endif

#include "hydro/solver/lanes.hpp"
#include "hydro/solver/stand_in.hpp"

#include <cstddef>

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace hydro::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using D = hn::ScalableTag<double>;
using V = hn::Vec<D>;
using Mask = hn::Mask<D>;

constexpr std::size_t width = HWY_MAX_BYTES / sizeof(double);
/// One vector waits for each result of its own; several together keep the machine busy.
constexpr std::size_t side_by_side = lanes / width < 4 ? lanes / width : 4;
constexpr std::size_t group = side_by_side * width;
static_assert(lanes % group == 0);

/// A group of lanes that are worked out side by side.
struct Vectors {
  V of[side_by_side];

  HWY_INLINE V& operator[](std::size_t n) { return of[n]; }
  HWY_INLINE const V& operator[](std::size_t n) const { return of[n]; }
};

HWY_INLINE Vectors load(const Lane& lane, std::size_t from) {
  const D d;
  Vectors it;
  for (std::size_t n = 0; n < side_by_side; ++n)
    it[n] = hn::Load(d, lane.at.data() + from + n * width);
  return it;
}

HWY_INLINE void store(const Vectors& it, Lane& lane, std::size_t from) {
  const D d;
  for (std::size_t n = 0; n < side_by_side; ++n)
    hn::Store(it[n], d, lane.at.data() + from + n * width);
}

HWY_INLINE Vectors all(double value) {
  const D d;
  Vectors it;
  for (std::size_t n = 0; n < side_by_side; ++n) it[n] = hn::Set(d, value);
  return it;
}

/// -1 at the least of the range, 1 at the most.
HWY_INLINE Vectors place_in(const Interval& range, const Vectors& at) {
  const D d;
  Vectors place;
  for (std::size_t n = 0; n < side_by_side; ++n)
    place[n] = hn::Mul(hn::Sub(at[n], hn::Set(d, range.middle())), hn::Set(d, 1 / range.half()));
  return place;
}

/// Clenshaw's recurrence.
HWY_INLINE Vectors value_at(const Chebyshev& polynomial, const Vectors& place) {
  const D d;
  Vectors value = all(0), before = all(0);
  for (std::size_t k = polynomial.size(); k-- > 1;) {
    const V term = hn::Set(d, polynomial[k]);
    HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) {
      const V next = hn::MulAdd(hn::Add(place[n], place[n]), value[n], hn::Sub(term, before[n]));
      before[n] = value[n];
      value[n] = next;
    }
  }
  const V term = hn::Set(d, polynomial.front());
  HWY_DEFAULT_UNROLL for (std::size_t n = 0; n < side_by_side; ++n) value[n] =
      hn::MulAdd(place[n], value[n], hn::Sub(term, before[n]));
  return value;
}

}  // namespace hydro::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
