#include "exporters/drawing/moulds.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

bool carries(PartKind kind) { return kind == PartKind::beam || kind == PartKind::bearer; }

template <typename Wanted>
const Body* first_at(const PressPlan& plan, double z, Group half, Wanted wanted) {
  for (const Body* body : half_at(plan, z, half))
    if (wanted(plan.parts[body->part].kind())) return body;
  return nullptr;
}

}  // namespace

bool two_moulds(const PressPlan& plan) {
  return std::any_of(plan.sections.begin(), plan.sections.end(),
                     [](const Section& section) { return section.upper.has_value(); });
}

std::vector<const Body*> half_at(const PressPlan& plan, double z, Group half) {
  std::vector<const Body*> out = bodies_at(plan, z);
  std::erase_if(out, [&](const Body* body) { return body->group != half; });
  std::stable_partition(out.begin(), out.end(),
                        [&](const Body* body) { return carries(plan.parts[body->part].kind()); });
  return out;
}

const Body* former_at(const PressPlan& plan, double z, Group half) { return first_at(plan, z, half, former); }

const Body* beam_at(const PressPlan& plan, double z, Group half) { return first_at(plan, z, half, carries); }

double lean(const PressPlan& plan, double z) {
  const Body* beam = beam_at(plan, z, Group::lower);
  return beam ? std::atan2(beam->placed.x.y(), beam->placed.x.x()) : 0;
}

Vec2 foot_at(const PressPlan& plan, double z, Group half) {
  const Body* beam = beam_at(plan, z, half);
  if (!beam) return {0, 0};
  const std::vector<Span> cut = cut_at(outline_of(plan, *beam), 0);
  if (cut.empty()) return {0, 0};
  return {0, half == Group::lower ? cut.back().high : cut.front().low};
}

Sides sides_of(const std::vector<Segment>& outline, Group half) {
  const Box2 box = box_of(outline);
  const double away = half == Group::lower ? INFINITY : -INFINITY;
  Sides out{{box.low.x(), away}, {box.high.x(), away}};
  const auto take = [&](const Vec2& p, Vec2& end) {
    if (std::abs(p.x() - end.x()) > kSamePoint) return;
    end.y() = half == Group::lower ? std::min(end.y(), p.y()) : std::max(end.y(), p.y());
  };
  for (const Segment& s : outline)
    for (const Vec2& p : {s.from, s.to}) {
      take(p, out.left);
      take(p, out.right);
    }
  return out;
}

Vec2 lowest(const std::vector<Segment>& outline) {
  Vec2 low = outline.front().from;
  for (const Segment& s : outline) {
    const bool level = std::abs(s.from.y() - low.y()) < kSamePoint;
    if (level ? s.from.x() < low.x() : s.from.y() < low.y()) low = s.from;
    const Vec2 trough = s.centre - Vec2(0, s.radius);
    if (!s.straight() && trough.y() < low.y() - kSamePoint && distance(s, trough) < kSamePoint) low = trough;
  }
  return low;
}

}  // namespace lamwright::drawing
