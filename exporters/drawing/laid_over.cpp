#include "exporters/drawing/laid_over.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

Profile without_trim(const Panel& panel) {
  return between(panel.pressed, panel.trim, panel.pressed.girth() - panel.trim);
}

// The profile moved so that the place at `station` takes the given pose.
Profile posed_at(const Profile& profile, double station, const Pose& pose) {
  const Pose own = profile.at(station);
  const double turn = pose.heading - own.heading;
  const Vec2 along = direction(turn), from = profile.start().point - own.point;
  return profile.posed(
      {pose.point + from.x() * along + from.y() * left_of(along), profile.start().heading + turn});
}

}  // namespace

LaidOver::LaidOver(const Panel& panel)
    : neutral_to_face_(panel.face_height() - panel.neutral_height),
      pressed_neutral_(without_trim(panel)),
      released_neutral_(offset(panel.released, -neutral_to_face_, "neutral line")),
      pressed_(offset(pressed_neutral_, neutral_to_face_, "face as pressed")),
      released_(panel.released) {
  constexpr int kParts = 400;
  const double girth = pressed_neutral_.girth(), middle = girth / 2;
  released_neutral_ = posed_at(released_neutral_, middle, pressed_neutral_.at(middle));
  released_ = offset(released_neutral_, neutral_to_face_, "face as released");
  datum_ = pressed_.at(offset_station(pressed_neutral_, middle, neutral_to_face_));
  left_ = at(0);
  right_ = at(girth);
  farthest_ = widest_end();
  for (int i = 1; i < kParts; ++i) {
    const Moved moved = at(girth * i / kParts);
    if (moved.distance() > farthest_.distance()) farthest_ = moved;
  }
}

bool LaidOver::left_moves_more() const { return left_.distance() >= right_.distance() - kSamePoint; }

Moved LaidOver::at(double station) const {
  const auto on = [&](const Profile& neutral) {
    const Pose pose = neutral.at(station);
    return Vec2(pose.point + neutral_to_face_ * pose.normal());
  };
  return {station, on(pressed_neutral_), on(released_neutral_)};
}

Box2 LaidOver::box() const {
  Box2 all = pressed_.box();
  all.add(released_.box());
  return all;
}

double rise(const Profile& profile) {
  const Box2 box = levelled(profile).box();
  return std::max(box.high.y(), -box.low.y());
}

}  // namespace lamwright::drawing
