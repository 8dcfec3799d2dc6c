// Steps of pressure with round bounds, each with its grey.
#pragma once
#include <string>

namespace lamwright::drawing {

// The smallest round number (1, 1.5, 2, 2.5, 3, 4, 5, 6 or 8 times a power of ten) of which at most `most`
// steps reach `greatest` > 0.
double round_step(double greatest, int most);
// The same from 1, 2 and 5 alone, for the numbers of an axis.
double axis_step(double greatest, int most);

class PressureSteps {
 public:
  // MPa; nothing is pressed where it is not above 0.
  explicit PressureSteps(double greatest);

  int count() const { return count_; }  // 5 to 7, or 0
  double bound(int i) const { return step_ * i; }
  double top() const { return bound(count_); }
  // Of what is pressed harder than bound(i), up to bound(i + 1); from nearly white to a grey on which black
  // still shows.
  std::string tint(int i) const;

 private:
  double step_ = 0;
  int count_ = 0;
};

// "0.0125": four places, as pressures stand in tables.
std::string pressure_text(double pressure);

}  // namespace lamwright::drawing
