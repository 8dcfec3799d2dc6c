// A profile as its sheets show it: chord level.
#pragma once
#include "exporters/drawing/view.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright::drawing {

// Turned and moved so that the chord is level, left to right, with its middle at the origin. Where the ends
// meet (within 0.05) there is no chord: turned so that the start heads to the right, the start at the origin.
class LevelCurve {
 public:
  explicit LevelCurve(const Profile& profile);

  const Profile& profile() const { return level_; }
  // Where a point goes that lies beside the profile as given.
  Vec2 placed(const Vec2& point) const;
  bool open() const { return chord_ > 0; }
  double chord() const { return chord_; }  // 0 where the ends meet
  // Station of the point farthest from the chord, the middle of a stretch where a straight one is; of an open
  // curve.
  double summit() const { return summit_; }
  double rise() const;  // of that point over the chord; negative where it lies under it, as in a hollow

 private:
  Pose from_;
  double chord_;
  Profile level_;
  double summit_;
};

}  // namespace lamwright::drawing
