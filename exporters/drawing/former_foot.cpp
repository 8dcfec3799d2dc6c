#include "exporters/drawing/former_foot.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

// Ends of what lies on a line.
Foot ends_on(const Segment& base, const std::vector<Segment>& outline, bool above) {
  const Vec2 along = base.tangent(0);
  Foot foot{base.from, base.from, above};
  for (const Segment& s : outline)
    for (const Vec2& p : {s.from, s.to}) {
      if (std::abs(cross(along, p - base.from)) > kSamePoint) continue;
      if (p.x() < foot.left.x()) foot.left = p;
      if (p.x() > foot.right.x()) foot.right = p;
    }
  return foot;
}

Foot level_foot(const std::vector<Segment>& outline, bool above) {
  const Box2 box = box_of(outline);
  const double y = above ? box.high.y() : box.low.y();
  Foot foot{{INFINITY, y}, {-INFINITY, y}, above};
  for (const Segment& s : outline)
    for (const Vec2& p : {s.from, s.to})
      if (std::abs(p.y() - y) < kSamePoint) {
        foot.left.x() = std::min(foot.left.x(), p.x());
        foot.right.x() = std::max(foot.right.x(), p.x());
      }
  return foot;
}

}  // namespace

double Foot::lean() const { return std::atan2(right.y() - left.y(), right.x() - left.x()); }
bool Foot::level() const { return std::abs(lean()) < kTangent; }

const Profile* contact_of(const PressPlan& plan, std::size_t part) {
  for (const Body& body : plan.bodies) {
    if (body.part != part || plan.sections.empty()) continue;
    const double z = depth_of(plan, body).middle();
    const auto nearest = std::min_element(
        plan.sections.begin(), plan.sections.end(),
        [&](const Section& a, const Section& b) { return std::abs(a.z - z) < std::abs(b.z - z); });
    const bool upper = plan.parts[part].kind() == PartKind::former_upper && nearest->upper;
    return upper ? &*nearest->upper : &nearest->lower;
  }
  return nullptr;
}

Foot foot_of(const PressPlan& plan, const Part& part, const std::vector<Segment>& outline) {
  const bool above = part.kind() == PartKind::former_upper;
  if (!two_moulds(plan)) return level_foot(outline, above);
  const std::vector<Span> cut = cut_at(outline, 0);
  if (cut.empty()) return level_foot(outline, above);
  const Vec2 at{0, above ? cut.back().high : cut.front().low};
  constexpr double kBesideMiddle = 0.01;  // cuts are taken a hair beside X = 0
  for (const Segment& s : outline)
    if (s.straight() && s.length() > kBesideMiddle && distance(s, at) < kBesideMiddle)
      return ends_on(s, outline, above);
  return level_foot(outline, above);
}

}  // namespace lamwright::drawing
