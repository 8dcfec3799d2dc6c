// The described face as released laid on the same face as pressed.
#pragma once
#include <vector>

#include "kernel/panel/panel.hpp"

namespace lamwright::drawing {

// One place of the panel before and after release.
struct Moved {
  double station = 0;  // on the neutral line, from the finished panel's left end
  Vec2 pressed{0, 0};
  Vec2 released{0, 0};
  double distance() const { return (released - pressed).norm(); }
};

// Both without trim. The middle of the neutral line's girth stays where it is, with its direction; the chord
// of the blank as pressed is level.
class LaidOver {
 public:
  explicit LaidOver(const Panel& panel);

  const Profile& pressed() const { return pressed_; }
  const Profile& released() const { return released_; }
  const Pose& datum() const { return datum_; }
  Moved at(double station) const;
  const Moved& left() const { return left_; }
  const Moved& right() const { return right_; }
  const Moved& farthest() const { return farthest_; }  // to within the step in which it is looked for
  // The end that moves farther; the left one where both move as far.
  bool left_moves_more() const;
  const Moved& widest_end() const { return left_moves_more() ? left_ : right_; }
  Box2 box() const;

 private:
  double neutral_to_face_;                      // up from the neutral line
  Profile pressed_neutral_, released_neutral_;  // without trim
  Profile pressed_, released_;
  Pose datum_;
  Moved left_, right_, farthest_;
};

// Greatest distance of the curve from the chord.
double rise(const Profile& profile);

}  // namespace lamwright::drawing
