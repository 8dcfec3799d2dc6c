// A strap drawn tight over a curve: it lies on crowns and bridges hollows.
#pragma once
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright {

// A stretch of the curve that the strap spans without touching it.
struct Bridge {
  double from = 0, to = 0;  // stations on the curve
  double heading = 0;       // of the strap there
  double lift = 0;          // greatest distance of the curve under the strap, mm
  double lift_at = 0;       // station
};

// The shortest line over a curve from end to end on its outer side (its convex hull, for curves that do not
// turn back on themselves). Immutable.
class StrapLine {
 public:
  // Drawn left to right; that it does not turn back on itself is not checked.
  explicit StrapLine(const Profile& curve);

  const Profile& curve() const { return curve_; }                  // as it was given
  const std::vector<Bridge>& bridges() const { return bridges_; }  // left to right
  const Bridge* bridge_at(double station) const;                   // null where the strap touches
  bool touches(double station) const { return bridge_at(station) == nullptr; }  // a bridge's ends touch
  double heading(double station) const;                                         // of the strap, radians
  // Turn toward the former, radians >= 0: from the strap's direction before the left end, where it comes up
  // at `exit` to the curve's own tangent, to a station; and from there to the direction past the right end.
  double from_left(double station, double exit) const;
  double from_right(double station, double exit) const;  // the same seen from the right

 private:
  Profile curve_;
  std::vector<Bridge> bridges_;
};

}  // namespace lamwright
