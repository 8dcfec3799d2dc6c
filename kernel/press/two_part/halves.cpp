#include "kernel/press/two_part/halves.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/former.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::two_part {
namespace {

// A former's end between its contact edge and a side along the pull is no thinner than this angle...
constexpr double kThinnest = radians(10);
// ...or it gets a land of this width. Both common practice, no source.
constexpr double kLand = 40;

Profile turned(const Profile& line, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  const Vec2 p = line.start().point;
  return line.posed({{c * p.x() - s * p.y(), s * p.x() + c * p.y()}, line.start().heading + angle});
}

// Height of a point over the foot's direction, in the foot's own axes.
double height_over(const Vec2& p, double tilt) { return std::cos(tilt) * p.y() - std::sin(tilt) * p.x(); }

// One end of a mould's contact edge in the frame of the press. side: -1 left, +1 right; wood: -1 under the
// edge, +1 over it.
struct Corner {
  Pose pose;
  int side, wood;

  // The angle of wood between the contact edge and a side along the pull.
  double angle() const { return kPi / 2 + wood * side * pose.heading; }
  bool thin() const { return angle() < kThinnest; }
};

// The contact edge's end, and its land's where it has one.
std::vector<Vec2> end_of(const Corner& corner) {
  if (!corner.thin()) return {corner.pose.point};
  return {corner.pose.point, corner.pose.point + Vec2(corner.side * kLand, 0)};
}

// How far a contact edge with its lands reaches toward its foot: wood -1 below it, +1 above.
double nearest_foot(const Profile& edge, double tilt, int wood) {
  const Box2 box = turned(edge, -tilt).box();
  double most = wood < 0 ? box.low.y() : box.high.y();
  for (const Corner& corner : {Corner{edge.start(), -1, wood}, Corner{edge.end(), 1, wood}})
    for (const Vec2& p : end_of(corner))
      most = wood < 0 ? std::min(most, height_over(p, tilt)) : std::max(most, height_over(p, tilt));
  return most;
}

// From the contact edge's end along the pull to the foot, in the frame of the press.
std::vector<Vec2> side_of(const Corner& corner, double foot, double tilt) {
  std::vector<Vec2> points = end_of(corner);
  const double x = points.back().x();
  points.push_back({x, foot + x * std::tan(tilt)});
  return points;
}

std::vector<Vec2> in(const Frame& place, const std::vector<Vec2>& points) {
  std::vector<Vec2> out;
  for (const Vec2& p : points) out.push_back(place.local_point({p.x(), p.y(), 0}).head<2>());
  return out;
}

Profile in(const Frame& place, const Profile& line) {
  const Pose& start = line.start();
  const Vec3 p = place.local_point({start.point.x(), start.point.y(), 0});
  const Vec2 x(place.x.x(), place.x.y());
  return line.posed({p.head<2>(), std::remainder(start.heading - std::atan2(x.y(), x.x()), 2 * kPi)});
}

void note_land(const Corner& corner, const std::string& half, std::vector<std::string>& lands) {
  if (corner.thin())
    lands.push_back("The " + half + " formers are carried " + number(kLand) + " past their " +
                    (corner.side < 0 ? "left" : "right") + " contact end: the edge there comes within " +
                    number(degrees(std::max(0.0, corner.angle())), 1) +
                    " degrees of the pull and would leave a feather of wood.");
}

}  // namespace

Box2 Halves::box() const {
  Box2 all;
  for (const auto& [mould, place] :
       {std::pair<const Mould&, const Frame&>{lower_mould, lower_place}, {upper_mould, upper_place}})
    for (const auto* side : {&mould.left, &mould.right})
      for (const Vec2& p : *side) all.add(Vec2(place.point({p.x(), p.y(), 0}).head<2>()));
  all.add(lower.box());
  all.add(upper.box());
  return all;
}

double Halves::area() const {
  return former_outline(lower_mould).area() + former_outline(upper_mould).area();
}

Halves halves(const HalvesSpec& spec) {
  const double extend = spec.formers.extend, depth = spec.formers.min_depth, tilt = spec.tilt;
  const Profile lower_edge = extended(spec.lower, extend, extend);
  const double base = (nearest_foot(lower_edge, tilt, -1) - depth) / std::cos(tilt);
  const Vec2 down{0, -base};
  Halves out{moved(spec.curves, down),
             lower_edge.moved(down),
             extended(spec.upper, extend, extend).moved(down),
             {Profile({}, {{1, 0}}), extend, extend, {}, {}},
             {Profile({}, {{1, 0}}), extend, extend, {}, {}},
             {},
             {},
             0,
             tilt,
             {}};
  out.height = (nearest_foot(out.upper, tilt, 1) + depth) / std::cos(tilt);
  const Vec3 along{std::cos(tilt), std::sin(tilt), 0}, up{-std::sin(tilt), std::cos(tilt), 0};
  out.lower_place = {{0, 0, 0}, along, up};
  out.upper_place = {{0, out.height, 0}, -along, -up};
  const Corner lower_left{out.lower.start(), -1, -1}, lower_right{out.lower.end(), 1, -1};
  const Corner upper_left{out.upper.start(), -1, 1}, upper_right{out.upper.end(), 1, 1};
  for (const Corner& c : {lower_left, lower_right}) note_land(c, "lower", out.lands);
  for (const Corner& c : {upper_left, upper_right}) note_land(c, "upper", out.lands);
  out.lower_mould.contact = in(out.lower_place, out.lower);
  out.lower_mould.left = in(out.lower_place, side_of(lower_left, 0, tilt));
  out.lower_mould.right = in(out.lower_place, side_of(lower_right, 0, tilt));
  // On its head, the upper half's right end comes left.
  out.upper_mould.contact = in(out.upper_place, out.upper.reversed());
  out.upper_mould.left = in(out.upper_place, side_of(upper_right, out.height, tilt));
  out.upper_mould.right = in(out.upper_place, side_of(upper_left, out.height, tilt));
  return out;
}

}  // namespace lamwright::two_part
