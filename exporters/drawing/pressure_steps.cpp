#include "exporters/drawing/pressure_steps.hpp"

#include <cmath>
#include <initializer_list>

#include "exporters/drawing/pens.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

int steps_to(double greatest, double step) {
  return static_cast<int>(std::ceil(greatest / step - kWholeNumber));
}

double step_of(double greatest, int most, std::initializer_list<double> digits) {
  ensure(greatest > 0 && most > 0, "a round step divides something");
  const double power = std::floor(std::log10(greatest / most));
  for (const double digit : digits) {
    // Through a power of ten that is whole, so that 0.03 is the nearest double to it.
    const double step = power < 0 ? digit / std::pow(10, -power) : digit * std::pow(10, power);
    if (steps_to(greatest, step) <= most) return step;
  }
  return std::pow(10, power + 1);
}

}  // namespace

double round_step(double greatest, int most) {
  return step_of(greatest, most, {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8});
}

double axis_step(double greatest, int most) { return step_of(greatest, most, {1, 2, 5}); }

PressureSteps::PressureSteps(double greatest) {
  constexpr int kMost = 7;
  if (greatest <= 0) return;
  step_ = round_step(greatest, kMost);
  count_ = steps_to(greatest, step_);
}

std::string PressureSteps::tint(int i) const {
  constexpr double kLightest = 0.94, kDarkest = 0.54;
  return tints::grey(kLightest - (kLightest - kDarkest) * i / (count_ - 1));
}

std::string pressure_text(double pressure) { return number(pressure, 4); }

}  // namespace lamwright::drawing
