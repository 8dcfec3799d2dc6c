#include "kernel/part/bores.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

std::string bore_text(const BoreSpec& bore) {
  return to_text(bore.use) + " bore of " + number(bore.diameter) + " at (" + number(bore.at.x()) + ", " +
         number(bore.at.y()) + ", " + number(bore.at.z()) + ")";
}

[[noreturn]] void refuse(const PartSpec& part, const BoreSpec& bore, const std::string& problem,
                         const std::string& remedy) {
  throw geometry_error(part.name, bore_text(bore) + " " + problem, remedy);
}

struct InSheet {
  Vec3 at;
  Vec3 axis;
  Vec2 at2() const { return at.head<2>(); }
  Vec2 axis2() const { return axis.head<2>(); }
};

double widest_radius(const BoreSpec& bore) {
  return std::max(bore.diameter, bore.counterbore ? bore.counterbore->diameter : 0) / 2;
}

void check_sizes(const PartSpec& part, const BoreSpec& bore) {
  const bool sound =
      bore.diameter > 0 && std::isfinite(bore.diameter) && (!bore.depth || *bore.depth > 0) &&
      (!bore.counterbore || (bore.counterbore->diameter > bore.diameter && bore.counterbore->depth > 0)) &&
      std::abs(bore.axis.norm() - 1) < kTangent;
  if (!sound) refuse(part, bore, "has no size or no direction", "give positive sizes");
}

// Across the sheet: from one flat face toward the other.
void resolve_across(const PartSpec& part, const InSheet& in, Bore& bore) {
  const bool from_near = in.axis.z() > 0;
  const double entry = from_near ? in.at.z() : part.thickness - in.at.z();
  if (std::abs(entry) > kSamePoint)
    refuse(part, bore, "does not begin on a face", "let it begin on the board's face");
  bore.enters = from_near ? kNearFace : kFarFace;
  bore.leaves = bore.depth ? kNoFace : from_near ? kFarFace : kNearFace;
  bore.length = bore.depth.value_or(part.thickness);
  if (bore.depth && *bore.depth > part.thickness - kLeastWood + kAtLeast)
    refuse(part, bore,
           "is " + number(*bore.depth) + " deep in " + number(part.thickness) +
               " and leaves less than 5 of wood",
           "make it shallower or let it go through");
  const double room = part.outline.distance(in.at2());
  if (!part.outline.contains(in.at2())) refuse(part, bore, "lies outside the part", "move it inside");
  if (room < widest_radius(bore))
    refuse(part, bore, "reaches past the edge, which is " + number(room) + " away, and would split the part",
           "move it inside");
  if (room - widest_radius(bore) < kLeastWood - kAtLeast)
    refuse(part, bore, "leaves " + number(room - widest_radius(bore)) + " of wood to the edge; at least 5",
           "move it inside");
}

int edge_at(const Outline& outline, const Vec2& p) {
  int best = 0;
  for (std::size_t i = 1; i < outline.segments().size(); ++i)
    if (distance(outline.segments()[i], p) < distance(outline.segments()[best], p) - kSamePoint)
      best = int(i);
  return best;
}

// First edge that the axis meets after entering.
struct Exit {
  int edge = kNoFace;
  double length = INFINITY;
};
Exit exit_of(const Outline& outline, const InSheet& in) {
  const Box2 box = outline.box();
  const Segment ray = line(in.at2(), in.at2() + (box.size().norm() + 1) * in.axis2());
  Exit exit;
  for (std::size_t i = 0; i < outline.segments().size(); ++i)
    for (const Vec2& p : crossings(ray, outline.segments()[i])) {
      const double along = (p - in.at2()).dot(in.axis2());
      if (along > 10 * kSamePoint && along < exit.length) exit = {int(i), along};
    }
  return exit;
}

// The mouth of a bore in a curved edge begins deeper (crown) or higher (hollow) than its middle: the integral
// of that height over the mouth's disc, mm3. x = r sin(t) makes the integrand smooth, so the trapezoid rule
// converges fast. For a radial bore in a cylinder of radius R it tends to pi r^4 / (8 R).
double mouth_volume(const Outline& outline, const InSheet& in, double r) {
  constexpr int kSteps = 64;
  const Vec2 across = left_of(in.axis2());
  double sum = 0;
  for (int i = 1; i < kSteps; ++i) {
    const double t = kPi * (double(i) / kSteps - 0.5);
    const Vec2 p = in.at2() + r * std::sin(t) * across;
    const Segment probe = line(p - 2 * r * in.axis2(), p + 2 * r * in.axis2());
    double height = INFINITY;
    for (const Segment& s : outline.segments())
      for (const Vec2& q : crossings(probe, s)) {
        const double h = (q - p).dot(in.axis2());
        if (std::abs(h) < std::abs(height)) height = h;
      }
    if (std::isfinite(height)) sum += height * 2 * r * r * std::cos(t) * std::cos(t);
  }
  return sum * kPi / kSteps;
}

// A mouth is flat when its whole width lies on one straight edge.
bool mouth_is_flat(const Segment& edge, const InSheet& in, double r) {
  if (!edge.straight()) return false;
  const double along = (in.at2() - edge.from).dot(edge.tangent(0));
  return along > r + kSamePoint && along < edge.length() - r - kSamePoint;
}

// Distance of a straight piece of axis from the whole outline.
double axis_distance(const Outline& outline, const Segment& axis) {
  double least = std::min(outline.distance(axis.from), outline.distance(axis.to));
  for (const Segment& edge : outline.segments()) {
    if (!crossings(axis, edge).empty()) return 0;
    least = std::min({least, distance(axis, edge.from), distance(axis, edge.to)});
    if (edge.straight()) continue;
    const Vec2 u = (axis.to - axis.from).normalized();
    const double foot = std::clamp((edge.centre - axis.from).dot(u), 0.0, axis.length());
    least = std::min(least, distance(edge, axis.from + foot * u));
  }
  return least;
}

// At least 5 of wood round a cylinder between two depths. Within that of its mouth (or exit) the edge it
// passes through is close by, so the check begins and ends there.
void check_rod(const PartSpec& part, const InSheet& in, const Bore& bore, double radius, double to) {
  const double wanted = radius + kLeastWood;
  const double end = bore.depth || to < bore.length ? to : to - wanted;
  const double begin = std::min(wanted, end / 2);
  if (end - begin < kSamePoint) return;
  const Segment axis = line(in.at2() + begin * in.axis2(), in.at2() + end * in.axis2());
  if (!part.outline.contains(axis.from) || !part.outline.contains(axis.to))
    refuse(part, bore, "leaves the part", "move it inside or make it shallower");
  const double room = axis_distance(part.outline, axis);
  if (room < std::min(wanted, begin) - kAtLeast)
    refuse(part, bore,
           "comes within " + number(std::max(0.0, room - radius)) + " of an edge; at least 5 of wood",
           "move it inside");
}

void check_wood_along(const PartSpec& part, const InSheet& in, const Bore& bore) {
  check_rod(part, in, bore, bore.diameter / 2, bore.length);
  if (bore.counterbore) check_rod(part, in, bore, bore.counterbore->diameter / 2, bore.counterbore->depth);
  const double side = std::min(in.at.z(), part.thickness - in.at.z()) - widest_radius(bore);
  // A pilot in a board's edge may come nearer to the board's faces: fixing blocks stiffen it there.
  const bool pilot = bore.use == BoreUse::caul_pilot || bore.use == BoreUse::foot_pilot;
  const double least = pilot ? kLeastBesidePilot : kLeastWood;
  if (side < least - kAtLeast)
    refuse(part, bore, "leaves " + number(side) + " of wood to the face; at least " + number(least),
           "use thicker stock or a thinner screw");
}

// In the sheet's plane: from an edge inward.
void resolve_along(const PartSpec& part, const InSheet& in, Bore& bore) {
  if (part.outline.distance(in.at2()) > kSamePoint)
    refuse(part, bore, "does not begin on an edge", "let it begin on the edge");
  bore.enters = edge_at(part.outline, in.at2());
  const Exit exit = exit_of(part.outline, in);
  bore.leaves = bore.depth ? kNoFace : exit.edge;
  bore.length = bore.depth.value_or(exit.length);
  if (!std::isfinite(bore.length)) refuse(part, bore, "does not point into the part", "turn it inward");
  const Segment& entered = part.outline.segments()[bore.enters];
  bore.flat_mouth = mouth_is_flat(entered, in, widest_radius(bore)) &&
                    std::abs(entered.tangent(0).dot(in.axis2())) < kTangent;
  if (!bore.depth) {
    const Segment& left = part.outline.segments()[bore.leaves];
    const InSheet out{in.at + bore.length * in.axis, in.axis};
    if (!mouth_is_flat(left, out, bore.diameter / 2))
      refuse(part, bore, "does not leave through a flat edge", "move it");
  }
  check_wood_along(part, in, bore);
}

struct Rod {  // a cylinder for distances
  Vec3 a, b;
  double radius;
};

std::vector<Rod> rods(const Bore& bore) {
  std::vector<Rod> out{{bore.at, bore.at + bore.length * bore.axis, bore.diameter / 2}};
  if (bore.counterbore)
    out.push_back({bore.at, bore.at + bore.counterbore->depth * bore.axis, bore.counterbore->diameter / 2});
  return out;
}

double point_segment(const Vec3& p, const Vec3& a, const Vec3& b) {
  const Vec3 u = b - a;
  return (a + std::clamp((p - a).dot(u) / u.squaredNorm(), 0.0, 1.0) * u - p).norm();
}

// Least distance between two segments in space: at inner points when they are not parallel, else at an end.
double segment_distance(const Rod& s, const Rod& t) {
  const Vec3 u = s.b - s.a, v = t.b - t.a, w = s.a - t.a;
  const double uu = u.dot(u), uv = u.dot(v), vv = v.dot(v), denominator = uu * vv - uv * uv;
  double least = std::min({point_segment(s.a, t.a, t.b), point_segment(s.b, t.a, t.b),
                           point_segment(t.a, s.a, s.b), point_segment(t.b, s.a, s.b)});
  if (denominator > kTangent * uu * vv) {
    const double x = (uv * v.dot(w) - vv * u.dot(w)) / denominator;
    const double y = (uu * v.dot(w) - uv * u.dot(w)) / denominator;
    if (x >= 0 && x <= 1 && y >= 0 && y <= 1) least = std::min(least, (w + x * u - y * v).norm());
  }
  return least;
}

}  // namespace

Bore resolve_bore(const PartSpec& part, const BoreSpec& spec) {
  check_sizes(part, spec);
  Bore bore{spec};
  const InSheet in{part.sheet.local_point(spec.at), part.sheet.local_vector(spec.axis)};
  if (std::abs(std::abs(in.axis.z()) - 1) < kTangent)
    resolve_across(part, in, bore);
  else if (std::abs(in.axis.z()) < kTangent)
    resolve_along(part, in, bore);
  else
    refuse(part, bore, "is neither square to the sheet nor in its plane", "turn it");
  const double r = spec.diameter / 2;
  bore.removed = kPi * r * r * bore.length;
  if (spec.counterbore) {
    const double c = spec.counterbore->diameter / 2;
    bore.removed += kPi * (c * c - r * r) * spec.counterbore->depth;
    if (spec.counterbore->depth > bore.length - kLeastWood + kAtLeast)
      refuse(part, bore, "has a counterbore that leaves less than 5 of wood", "use a shorter counterbore");
  }
  if (!bore.flat_mouth && spec.counterbore)
    refuse(part, bore, "has a counterbore in an edge that is not flat and square to it",
           "bore it without one");
  if (!bore.flat_mouth) bore.removed -= mouth_volume(part.outline, in, r);
  return bore;
}

double wood_between(const Bore& a, const Bore& b) {
  double least = INFINITY;
  for (const Rod& s : rods(a))
    for (const Rod& t : rods(b)) least = std::min(least, segment_distance(s, t) - s.radius - t.radius);
  return least;
}

void refuse_near_bores(const std::string& part, const std::vector<Bore>& bores) {
  struct Span {
    double low, high;
    std::size_t bore;
  };
  std::vector<Span> spans;  // along X, so that only neighbours are compared
  for (std::size_t i = 0; i < bores.size(); ++i) {
    const auto [low, high] =
        std::minmax({bores[i].at.x(), bores[i].at.x() + bores[i].length * bores[i].axis.x()});
    const double reach = widest_radius(bores[i]) + kLeastWood / 2;
    spans.push_back({low - reach, high + reach, i});
  }
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.low < b.low; });
  for (std::size_t i = 0; i < spans.size(); ++i)
    for (std::size_t j = i + 1; j < spans.size() && spans[j].low < spans[i].high; ++j) {
      const Bore &a = bores[spans[i].bore], &b = bores[spans[j].bore];
      const double wood = wood_between(a, b);
      if (wood < kLeastWood - kAtLeast)
        throw geometry_error(part,
                             bore_text(a) + " and " + bore_text(b) +
                                 (wood < -kAtLeast  ? " overlap"
                                  : wood < kAtLeast ? " touch"
                                                    : " leave " + number(wood) + " of wood between them") +
                                 "; at least 5",
                             "move one of them");
    }
}

}  // namespace lamwright
