#include "hydro/what_ifs/priced_pipe.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

double cost(const Price& price, const Length& length) {
  return price.amount * (si(length) / si(price.per));
}

std::vector<Problem> problems(const PricedPipe& pipe) {
  Examination examination;
  examination.include("pipe", problems(pipe.pipe));
  if (pipe.price) {
    examination.within("price.amount", pipe.price->amount, Range<double>{0, 1e9, units::plain});
    examination.within("price.per", pipe.price->per, Range<Length>{0.001, 10000, units::m});
  }
  return examination.take();
}

}  // namespace hydro
