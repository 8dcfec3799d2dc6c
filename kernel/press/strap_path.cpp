#include "kernel/press/strap_path.hpp"

#include <cmath>

#include "kernel/mechanics/strap_line.hpp"
#include "kernel/press/layers.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr double kRatchetRoom = 20;  // kept free past the ratchet's own length
constexpr double kTouches = 1;       // mm: the strap leaves from a caul's line nearer than this

void append(std::vector<Segment>& to, const std::vector<Segment>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

// From the mark to where the strap touches what it is drawn over, round a roller where there is one.
std::vector<Segment> leg(const StrapEnd& end, const Vec2& touches) {
  if (!end.roller) return {line(end.mark, touches)};
  const Roller& roller = *end.roller;
  const Vec2 a = roller.off - roller.axis, b = roller.on - roller.axis;
  const double turn = std::atan2(cross(a, b), a.dot(b));
  std::vector<Segment> out{line(end.mark, roller.off)};
  if (std::abs(turn) > kTangent)
    out.push_back({roller.off, roller.on, turn, roller.axis, roller.diameter / 2});
  out.push_back(line(roller.on, touches));
  return out;
}

// Where it lies on the curve, and straight where it bridges a hollow.
std::vector<Segment> drawn_tight(const Profile& curve) {
  if (!curve.hollow()) return segments(curve);
  std::vector<Segment> out;
  double at = 0;
  const auto lie = [&](double to) {
    if (to - at > kSamePoint) append(out, segments(cut(curve, at, to)));
    at = to;
  };
  const StrapLine strap(curve);
  for (const Bridge& bridge : strap.bridges()) {
    lie(bridge.from);
    out.push_back(line(curve.point(bridge.from), curve.point(bridge.to)));
    at = bridge.to;
  }
  lie(curve.girth());
  return out;
}

std::vector<Segment> over_caul(const PressPlan& plan, const Vec2& left, const Vec2& right) {
  if (const Layer* caul = layer_of(plan, Layer::Kind::top_caul)) {
    const Profile outer = offset(caul->inner, caul->thickness);
    const auto from = outer.nearest(left), to = outer.nearest(right);
    if (from.distance < kTouches && to.distance < kTouches && to.station > from.station + kTouches)
      return drawn_tight(cut(outer, from.station, to.station));
  }
  return {line(left, right)};
}

}  // namespace

std::vector<Segment> strap_path(const PressPlan& plan, const Closure& closure) {
  const std::vector<Segment> over = over_caul(plan, closure.left.leaves, closure.right.leaves);
  std::vector<Segment> out = leg(closure.left, over.front().from);
  append(out, over);
  const std::vector<Segment> down = leg(closure.right, over.back().to);
  for (auto s = down.rbegin(); s != down.rend(); ++s) out.push_back(s->reversed());
  return out;
}

Vec2 run_start(const StrapEnd& end) { return end.roller ? end.roller->off : end.leaves; }

double ratchet_space(const PressPlan& plan, const Closure& closure) {
  if (plan.strap_free > 0) return plan.strap_free;
  return closure.ratchet > 0 ? closure.ratchet + kRatchetRoom : 0;
}

}  // namespace lamwright
