#include "kernel/part/part.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/part/bores.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

bool near(double a, double b) { return std::abs(a - b) <= kSamePoint; }
bool near(const Vec3& a, const Vec3& b) { return (a - b).norm() <= kSamePoint; }
bool near(const Vec2& a, const Vec2& b) { return (a - b).norm() <= kSamePoint; }

// The same loop, whichever segment it begins with.
bool same_outline(const Outline& a, const Outline& b) {
  const auto &p = a.segments(), &q = b.segments();
  if (p.size() != q.size() || std::abs(a.area() - b.area()) > kSamePoint * (1 + a.area())) return false;
  const auto begins_at = [&](std::size_t shift) {
    for (std::size_t i = 0; i < p.size(); ++i) {
      const Segment& t = q[(i + shift) % q.size()];
      if (!near(p[i].from, t.from) || !near(p[i].turn, t.turn) || !near(p[i].point(0.5), t.point(0.5)))
        return false;
    }
    return true;
  };
  for (std::size_t shift = 0; shift < q.size(); ++shift)
    if (begins_at(shift)) return true;
  return false;
}

bool same_bores(const Part& a, const Part& b) {
  if (a.bores().size() != b.bores().size()) return false;
  for (std::size_t i = 0; i < a.bores().size(); ++i) {
    const Bore &p = a.bores()[i], &q = b.bores()[i];
    if (p.use != q.use || p.kind() != q.kind() || !near(p.diameter, q.diameter) || !near(p.length, q.length))
      return false;
    if (p.counterbore && (!near(p.counterbore->diameter, q.counterbore->diameter) ||
                          !near(p.counterbore->depth, q.counterbore->depth)))
      return false;
    if (!near(p.at, q.at) || !near(p.axis, q.axis)) return false;
  }
  return true;
}

bool same_lines(const std::vector<Segment>& a, const std::vector<Segment>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Segment& s, const Segment& t) {
    return near(s.from, t.from) && near(s.to, t.to) && near(s.turn, t.turn);
  });
}

bool same_marks(const std::vector<Mark>& a, const std::vector<Mark>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Mark& m, const Mark& n) {
    return m.kind == n.kind && m.text == n.text && near(m.at, n.at) && near(m.angle, n.angle) &&
           near(m.height, n.height) && same_lines(m.lines, n.lines);
  });
}

// Distances are looked at between all pairs, and a part of so many is a slip in a pitch.
void refuse_many_bores(const PartSpec& spec) {
  constexpr std::size_t kMostBores = 5000;
  if (spec.bores.size() > kMostBores)
    throw geometry_error(
        spec.name,
        "has " + std::to_string(spec.bores.size()) + " bores, allowed up to " + std::to_string(kMostBores),
        "set screws further apart, or press the panel in pieces");
}

}  // namespace

std::string to_text(PartKind kind) {
  switch (kind) {
    case PartKind::former_lower:
      return "former-lower";
    case PartKind::former_upper:
      return "former-upper";
    case PartKind::beam:
      return "beam";
    case PartKind::bearer:
      return "bearer";
    case PartKind::spacer_block:
      return "spacer-block";
    case PartKind::fixing_block:
      return "fixing-block";
    case PartKind::pressing_beam:
      return "pressing-beam";
    case PartKind::stop:
      return "stop";
    case PartKind::slat:
      return "slat";
    case PartKind::shape_template:
      return "template";
    case PartKind::cradle:
      return "cradle";
    case PartKind::panel:
      return "panel";
  }
  return {};
}

std::string to_text(BoreUse use) {
  switch (use) {
    case BoreUse::foot_screw:
      return "foot screw";
    case BoreUse::foot_pilot:
      return "foot pilot";
    case BoreUse::strap:
      return "strap";
    case BoreUse::caul_pilot:
      return "caul pilot";
    case BoreUse::caul_screw:
      return "caul screw";
    case BoreUse::stop_screw:
      return "stop screw";
    case BoreUse::clamp:
      return "clamp";
  }
  return {};
}

double Part::face_area() const {
  double area = outline().area();
  for (const Bore& bore : bores_)
    if (bore.leaves == kNearFace || bore.leaves == kFarFace) area -= kPi * bore.diameter * bore.diameter / 4;
  return area;
}

Part::Box Part::box() const {
  const Box2 flat = outline().box();
  Box box{Vec3::Constant(INFINITY), Vec3::Constant(-INFINITY)};
  for (const double u : {flat.low.x(), flat.high.x()})
    for (const double v : {flat.low.y(), flat.high.y()})
      for (const double w : {0.0, thickness()}) {
        const Vec3 p = sheet().point({u, v, w});
        box.low = box.low.cwiseMin(p);
        box.high = box.high.cwiseMax(p);
      }
  return box;
}

Part Part::renamed(std::string name) const {
  Part copy = *this;
  copy.spec_.name = std::move(name);
  return copy;
}

Part Part::marked(std::vector<Mark> marks) const {
  Part copy = *this;
  copy.spec_.marks = std::move(marks);
  return copy;
}

std::optional<Part> Part::turned_over() const {
  if (!bores_.empty() || !marks().empty()) return std::nullopt;
  const Box2 box = outline().box();
  const double across = box.low.x() + box.high.x();
  const auto mirrored = [&](const Vec2& p) { return Vec2(across - p.x(), p.y()); };
  PartSpec spec = spec_;
  std::vector<Segment> loop;
  for (const Segment& s : outline().segments())
    loop.push_back({mirrored(s.from), mirrored(s.to), -s.turn, mirrored(s.centre), s.radius});
  spec.outline = Outline(std::move(loop), spec.name);
  return make_part(std::move(spec));
}

Part make_part(PartSpec spec) {
  if (!(spec.thickness > 0) || !std::isfinite(spec.thickness))
    throw geometry_error(spec.name, "thickness " + number(spec.thickness) + " is not positive",
                         "give a thickness above 0");
  refuse_many_bores(spec);
  Part part(std::move(spec));
  const PartSpec& s = part.spec_;
  for (const BoreSpec& bore : s.bores) part.bores_.push_back(resolve_bore(s, bore));
  refuse_near_bores(s.name, part.bores_);
  part.volume_ = s.outline.area() * s.thickness;
  const Vec2 middle = s.outline.centroid();
  Vec3 moment = part.volume_ * s.sheet.point({middle.x(), middle.y(), s.thickness / 2});
  for (const Bore& bore : part.bores_) {
    part.volume_ -= bore.removed;
    double wide = 0;
    if (bore.counterbore) {
      wide = kPi / 4 * (std::pow(bore.counterbore->diameter, 2) - std::pow(bore.diameter, 2)) *
             bore.counterbore->depth;
      moment -= wide * (bore.at + bore.counterbore->depth / 2 * bore.axis);
    }
    moment -= (bore.removed - wide) * (bore.at + bore.length / 2 * bore.axis);
  }
  part.centre_ = moment / part.volume_;
  return part;
}

bool same_part(const Part& a, const Part& b) {
  return a.kind() == b.kind() && a.stock() == b.stock() && a.board() == b.board() &&
         near(a.thickness(), b.thickness()) && near(a.sheet().origin, b.sheet().origin) &&
         near(a.sheet().x, b.sheet().x) && near(a.sheet().y, b.sheet().y) &&
         same_outline(a.outline(), b.outline()) && same_bores(a, b) && same_marks(a.marks(), b.marks());
}

}  // namespace lamwright
