#include "exporters/drawing/one_two_five.hpp"

#include <cmath>
#include <initializer_list>

#include "shared/tolerance.hpp"

namespace lamwright::drawing {

double one_two_five_below(double most) {
  const double reached = most * (1 + kWholeNumber);  // 5 computed as 4.999... is still 5
  const double power = std::pow(10, std::floor(std::log10(reached)));
  for (const double first : {5, 2})
    if (first * power <= reached) return first * power;
  return power;
}

int every_one_two_five(double pitch, double apart) {
  constexpr int kMost = 100'000'000;  // no sheet of paper is that large
  for (int ten = 1; ten < kMost; ten *= 10)
    for (const int every : {ten, 2 * ten, 5 * ten})
      if (pitch * every >= apart) return every;
  return kMost;
}

}  // namespace lamwright::drawing
