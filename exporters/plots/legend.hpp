// What the lines and tints of a plot mean, in rows below it.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::plots {

// A line of `pen`, a tint where `fill` is not empty, or a ring.
struct Sample {
  std::string text;
  const char* pen;
  std::string fill = {};
  bool ring = false;
};

inline constexpr double kRing = 1.1;  // radius, mm

class Legend {
 public:
  explicit Legend(const std::vector<Sample>& samples);

  double height() const;  // mm on paper
  // `top` is the upper edge of the first row.
  void add(drawing::Drawing& drawing, double top) const;

 private:
  struct Placed {
    Sample sample;
    double x = 0;
    int row = 0;
  };
  std::vector<Placed> placed_;
};

}  // namespace lamwright::plots
