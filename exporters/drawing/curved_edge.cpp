#include "exporters/drawing/curved_edge.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kKink = 1e-4;  // radians; joints of an outline are computed, corners are far larger

bool corner(const Segment& before, const Segment& after) {
  const Vec2 a = before.tangent(1), b = after.tangent(0);
  return std::abs(std::atan2(cross(a, b), a.dot(b))) > kKink;
}

// The outline cut at its corners.
std::vector<std::vector<Segment>> chains(const std::vector<Segment>& loop) {
  std::vector<std::vector<Segment>> out;
  const std::size_t n = loop.size();
  std::size_t first = 0;
  while (first < n && !corner(loop[(first + n - 1) % n], loop[first])) ++first;
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t at = (first + i) % n;
    if (i == 0 || corner(loop[(at + n - 1) % n], loop[at])) out.emplace_back();
    out.back().push_back(loop[at]);
  }
  return out;
}

double length_of(const std::vector<Segment>& chain) {
  double length = 0;
  for (const Segment& s : chain) length += s.length();
  return length;
}

std::vector<Segment> reversed(const std::vector<Segment>& chain) {
  std::vector<Segment> out;
  for (auto s = chain.rbegin(); s != chain.rend(); ++s) out.push_back(s->reversed());
  return out;
}

// How far along a segment one of its points lies, 0 to 1.
double share_at(const Segment& s, const Vec2& p) {
  if (s.straight()) return (p - s.from).norm() / (s.to - s.from).norm();
  const Vec2 a = s.from - s.centre, b = p - s.centre;
  double angle = std::atan2(cross(a, b), a.dot(b)) * (s.turn > 0 ? 1 : -1);
  if (angle < -kTangent) angle += 2 * std::acos(-1.0);
  return std::clamp(angle / std::abs(s.turn), 0.0, 1.0);
}

// Shares of a segment at which one coordinate is a multiple of the step.
void add_multiples(std::vector<double>& shares, const Segment& s, int axis, double step) {
  const Box2 box = lamwright::box(s);
  const double low = box.low[axis], high = box.high[axis];
  if (high - low < kSamePoint) return;
  for (double k = std::ceil((low - kSamePoint) / step); k * step <= high + kSamePoint; ++k) {
    Vec2 a = box.low - Vec2(1, 1), b = box.high + Vec2(1, 1);
    a[axis] = b[axis] = std::clamp(k * step, low, high);
    for (const Vec2& p : crossings(line(a, b), s)) {
      const double share = share_at(s, p);
      const Vec2 along = s.tangent(share);
      if (axis == 0 || std::abs(along.y()) > std::abs(along.x())) shares.push_back(share);
    }
  }
}

void add_point(std::vector<Vec2>& points, const Vec2& p) {
  constexpr double kSame = 1e-3;  // a crossing at a joint is found from both sides, far less exactly
  if (points.empty() || (p - points.back()).norm() > kSame) points.push_back(p);
}

std::string place(double value) { return number(value, 2); }

std::string kind_and_number(const Segment& s, int& lines, int& bends) {
  return s.straight() ? "line " + std::to_string(++lines) : "bend " + std::to_string(++bends);
}

}  // namespace

std::vector<Segment> curved_edge(const Outline& outline, EdgeSide side) {
  std::vector<Segment> best;
  for (std::vector<Segment>& chain : chains(outline.segments())) {
    // Outlines run anticlockwise: a chain to the right has its wood above.
    const double run = chain.back().to.x() - chain.front().from.x();
    if (side == EdgeSide::lower ? run < kSamePoint : run > -kSamePoint) continue;
    if (length_of(chain) > length_of(best)) best = std::move(chain);
  }
  return side == EdgeSide::lower ? best : reversed(best);
}

std::vector<Vec2> edge_points(const std::vector<Segment>& edge, double step) {
  std::vector<Vec2> points;
  for (const Segment& s : edge) {
    std::vector<double> shares;
    add_multiples(shares, s, 0, step);
    add_multiples(shares, s, 1, step);
    std::sort(shares.begin(), shares.end());
    if (points.empty()) add_point(points, s.from);
    for (const double share : shares) add_point(points, s.point(share));
  }
  if (!edge.empty()) add_point(points, edge.back().to);
  return points;
}

bool mirror_alike(const std::vector<Segment>& edge) {
  const std::size_t n = edge.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Segment &a = edge[i], &b = edge[n - 1 - i];
    const Vec2 off = Vec2(-b.to.x(), b.to.y()) - a.from;
    if (off.norm() > kSamePoint || std::abs(a.turn - b.turn) > kTangent) return false;
  }
  return n > 0;
}

double point_step(const std::vector<Segment>& edge) {
  Box2 box;
  for (const Segment& s : edge) box.add(lamwright::box(s));
  const double size = box.size().maxCoeff();
  return size >= 250 ? 50 : size >= 100 ? 20 : 10;
}

Table arc_table(const std::vector<Segment>& edge) {
  Table table{{{"edge", 18, Anchor::left},
               {"radius", 20},
               {"centre X", 22},
               {"centre Y", 22},
               {"begins X", 21},
               {"begins Y", 21},
               {"length", 21},
               {"turn", 17}},
              {},
              5};
  int lines = 0, bends = 0;
  for (const Segment& s : edge) {
    const auto arc = [&](const std::string& text) { return s.straight() ? "-" : text; };
    table.rows.push_back({kind_and_number(s, lines, bends), arc(place(s.radius)), arc(place(s.centre.x())),
                          arc(place(s.centre.y())), place(s.from.x()), place(s.from.y()), place(s.length()),
                          arc(angle_text(std::abs(s.turn)))});
  }
  if (!edge.empty())
    table.rows.push_back(
        {"end", "-", "-", "-", place(edge.back().to.x()), place(edge.back().to.y()), "-", "-"});
  return table;
}

Table point_table(const std::vector<Segment>& edge, double step, const std::optional<HeightsFrom>& from) {
  const bool alike = mirror_alike(edge);
  Table table{{{alike ? "± X" : "X", 18}, {"Y", 18}}, {}, 5};
  if (from) table.columns.push_back({from->head, 26});
  for (const Vec2& p : edge_points(edge, step)) {
    if (alike && p.x() < -kSamePoint) continue;
    table.rows.push_back({size_text(p.x()), size_text(p.y())});
    if (from)
      table.rows.back().push_back(size_text(from->downward ? from->level - p.y() : p.y() - from->level));
  }
  return table;
}

}  // namespace lamwright::drawing
