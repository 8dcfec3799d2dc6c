#include "kernel/reading/dxf/polyline.hpp"

#include <cmath>

#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/placed.hpp"
#include "kernel/reading/dxf/plane.hpp"
#include "shared/number.hpp"

namespace lamwright::dxf_reading {
namespace {

enum PolylineFlag { kClosed = 1, kSpatial = 8, kMesh = 16, kSurfaces = 64 };
enum VertexFlag { kFrame = 16 };

// Below it the rounding of so far a centre is worse than the chord.
constexpr double kStraightBulge = 1e-8;
constexpr double kGreatestBulge = 1e6;

double bulge(const Tag& tag, const Record& entity) {
  const double found = real(tag, *entity.file);
  if (std::abs(found) > kGreatestBulge)
    throw fault(*entity.file, tag.line, "bulge " + number(found) + " is beyond 1e6",
                "it is the tangent of a quarter of the angle swept; save the drawing again");
  return found;
}

Corner corner(const Record& vertex, bool spatial) {
  const Tag* tag = vertex.find(42);
  return {vertex.point(10).head<2>(), tag && !spatial ? bulge(*tag, vertex) : 0};
}

void ensure_chain(const Record& entity, std::size_t corners) {
  if (corners < 2)
    throw entity.fault("has " + counted(long(corners), "corner"), "it needs two; delete it or draw it again");
}

}  // namespace

Segment bulged(const Corner& from, const Vec2& to) {
  const Vec2 chord = to - from.at;
  const double b = from.bulge, length = chord.norm();
  if (std::abs(b) < kStraightBulge || length == 0) return line(from.at, to);
  const Vec2 centre = from.at + chord / 2 + left_of(chord) * ((1 - b) * (1 + b) / (4 * b));
  return {from.at, to, 4 * std::atan(b), centre, length * (1 + b * b) / (4 * std::abs(b))};
}

Outline chain(const std::vector<Corner>& corners, bool closed) {
  Outline out{{}, closed};
  for (std::size_t i = 0; i + 1 < corners.size(); ++i)
    out.pieces.emplace_back(bulged(corners[i], corners[i + 1].at));
  if (closed) out.pieces.emplace_back(bulged(corners.back(), corners.front().at));
  return out;
}

Outline light_polyline_outline(const Record& entity) {
  std::vector<Corner> corners;
  const Tag* open = nullptr;  // an X still without its Y
  for (const Tag& tag : entity.tags) {
    if (open && tag.code != 20) break;
    if (tag.code == 10) {
      corners.push_back({{real(tag, *entity.file), 0}, 0});
      open = &tag;
    } else if (tag.code == 20 && open) {
      corners.back().at.y() = real(tag, *entity.file);
      open = nullptr;
    } else if (tag.code == 42 && !corners.empty()) {
      corners.back().bulge = bulge(tag, entity);
    }
  }
  if (open)
    throw fault(*entity.file, open->line, "a corner of a LWPOLYLINE has no Y (group 20)",
                "save the drawing again");
  ensure_chain(entity, corners.size());
  const Outline out = chain(corners, entity.whole(70, 0) & kClosed);
  return {placed(out.pieces, own_axes(entity)), out.closed};
}

bool is_mesh(const Record& polyline) { return polyline.whole(70, 0) & (kMesh | kSurfaces); }

Outline polyline_outline(const Record& polyline, Records& following) {
  const int flags = polyline.whole(70, 0);
  std::vector<Corner> corners;
  std::optional<double> level;
  while (following.type() == "VERTEX") {
    const Record vertex = following.next();
    if (vertex.whole(70, 0) & kFrame) continue;
    corners.push_back(corner(vertex, flags & kSpatial));
    const double z = vertex.point(10).z();
    ensure_level(vertex, level.value_or(z), z, corners.back().at.norm());
    level = z;
    ensure_pieces(corners.size(), *polyline.file, polyline.line);
  }
  if (following.type() == "SEQEND") following.skip();
  ensure_chain(polyline, corners.size());
  const Outline out = chain(corners, flags & kClosed);
  return {placed(out.pieces, flags & kSpatial ? Affine() : own_axes(polyline)), out.closed};
}

}  // namespace lamwright::dxf_reading
