#include "kernel/reading/dxf/spline.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/reading/dxf/bspline.hpp"
#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/plane.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr int kClosed = 1, kGreatestDegree = 15;
constexpr double kLeastWeight = 1e-9, kGreatestWeight = 1e9;
// Of the range of the knots: knots that were meant to be equal, written with 10 digits or more.
constexpr double kSameKnot = 1e-9;
constexpr const char* kControlPoints = "save it with control points and knots, or as a polyline with arcs";

bool near(const Vec2& a, const Vec2& b) { return (a - b).norm() <= kSamePoint * std::max(1.0, a.norm()); }

std::vector<double> numbers(const Record& entity, int code) {
  std::vector<double> out;
  for (const Tag& tag : entity.tags)
    if (tag.code == code) out.push_back(real(tag, *entity.file));
  return out;
}

std::vector<Vec2> points(const Record& entity, int code) {
  const std::vector<double> x = numbers(entity, code), y = numbers(entity, code + 10),
                            z = numbers(entity, code + 20);
  if (x.size() != y.size() || (!z.empty() && z.size() != x.size()))
    throw entity.fault("its points have " + std::to_string(x.size()) + " X, " + std::to_string(y.size()) +
                           " Y and " + std::to_string(z.size()) + " Z",
                       "save the drawing again");
  ensure_pieces(x.size(), *entity.file, entity.line);
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < x.size(); ++i) out.emplace_back(x[i], y[i]);
  for (std::size_t i = 0; i < z.size(); ++i) ensure_level(entity, z.front(), z[i], out[i].norm());
  return out;
}

// Knots nearer than kSameKnot fall together, so that a kink stays one.
std::vector<double> knots(const Record& entity) {
  std::vector<double> out = numbers(entity, 40);
  if (out.empty()) return out;
  const double same = kSameKnot * std::abs(out.back() - out.front());
  for (std::size_t i = 1; i < out.size(); ++i) {
    if (out[i] < out[i - 1] - same)
      throw entity.fault("knot " + std::to_string(i + 1) + " falls below the one before", kControlPoints);
    if (out[i] - out[i - 1] <= same) out[i] = out[i - 1];
  }
  return out;
}

void ensure_sound(const Bspline& s, const Record& entity) {
  if (s.degree < 1 || s.degree > kGreatestDegree)
    throw entity.fault("degree " + std::to_string(s.degree) + " is not from 1 to 15", kControlPoints);
  const std::size_t needed = s.poles.size() + std::size_t(s.degree) + 1;
  if (s.poles.size() <= std::size_t(s.degree) || s.knots.size() != needed)
    throw entity.fault("degree " + std::to_string(s.degree) + " with " +
                           counted(long(s.poles.size()), "control point") + " and " +
                           counted(long(s.knots.size()), "knot") + " is no curve",
                       kControlPoints);
  if (!s.weights.empty() && s.weights.size() != s.poles.size())
    throw entity.fault("has " + counted(long(s.weights.size()), "weight") + " for " +
                           counted(long(s.poles.size()), "control point"),
                       kControlPoints);
  for (const double w : s.weights)
    if (w < kLeastWeight || w > kGreatestWeight)
      throw entity.fault("weight " + number(w, 12) + " is not from 1e-9 to 1e9", kControlPoints);
}

Bspline bspline(const Record& entity) {
  Bspline out{entity.whole(71, 3), knots(entity), points(entity, 10), numbers(entity, 41)};
  ensure_sound(out, entity);
  if (out.weights.empty()) return out;
  // Only their ratios matter: the greatest is 1, and equal ones are none.
  const auto [least, greatest] = std::minmax_element(out.weights.begin(), out.weights.end());
  const double unit = *greatest;
  if (*least == unit) out.weights.clear();
  for (double& w : out.weights) w /= unit;
  return out;
}

std::optional<Vec2> way(const Record& entity, int code) {
  const Vec2 found(entity.number(code, 0), entity.number(code + 10, 0));
  return found.norm() > kSamePoint ? std::optional<Vec2>(found.normalized()) : std::nullopt;
}

std::vector<Bezier> through_fit_points(const Record& entity) {
  if (entity.whole(70, 0) & kClosed)
    throw entity.fault("is closed and gives only points to pass through", kControlPoints);
  std::vector<Vec2> apart;
  for (const Vec2& p : points(entity, 11))
    if (apart.empty() || !near(apart.back(), p)) apart.push_back(p);
  if (apart.size() < 2) throw entity.fault("has no two points that lie apart", "delete it or draw it again");
  return cubic_through(apart, way(entity, 12), way(entity, 13));
}

DrawnPiece drawn(const Bezier& piece) {
  if (piece.poles.size() == 2) return line(piece.poles.front(), piece.poles.back());
  return piece;
}

void join(Vec2& start, const Vec2& end, const Record& entity) {
  if (!near(start, end))
    throw entity.fault("is torn: two pieces lie " + number((start - end).norm(), 6) + " apart",
                       kControlPoints);
  start = end;
}

}  // namespace

bool has_only_fit_points(const Record& spline) { return !spline.find(10) && spline.find(11); }

Outline spline_outline(const Record& entity) {
  std::vector<Bezier> pieces =
      has_only_fit_points(entity) ? through_fit_points(entity) : bezier_pieces(bspline(entity));
  if (pieces.empty()) throw entity.fault("all its knots are equal", kControlPoints);
  for (std::size_t i = 1; i < pieces.size(); ++i)
    join(pieces[i].poles.front(), pieces[i - 1].poles.back(), entity);
  Outline out{{}, bool(entity.whole(70, 0) & kClosed)};
  if (out.closed) join(pieces.back().poles.back(), pieces.front().poles.front(), entity);
  for (const Bezier& piece : pieces) out.pieces.push_back(drawn(piece));
  return out;
}

}  // namespace lamwright::dxf_reading
