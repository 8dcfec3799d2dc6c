#include "kernel/nest/shape.hpp"

#include <cmath>

#include "shared/error.hpp"

namespace lamwright::nesting {
namespace {

// Parts into which an arc is cut so that its tangents meet, or its chords lie, no farther off than the
// excess.
int parts(const Segment& arc, double excess) {
  const double half = std::acos(1 / (1 + excess / arc.radius));
  return std::max(1, static_cast<int>(std::ceil(std::abs(arc.turn) / (2 * half))));
}

void add_crown(std::vector<Vec2>& corners, const Segment& arc, double excess) {
  // Tangents of half a turn or more never meet.
  const int n = std::max(parts(arc, excess), static_cast<int>(std::ceil(std::abs(arc.turn))));
  const double reach = 1 / std::cos(arc.turn / n / 2);
  corners.push_back(arc.from);
  for (int i = 0; i < n; ++i) corners.push_back(arc.centre + reach * (arc.point((i + 0.5) / n) - arc.centre));
}

void add_hollow(std::vector<Vec2>& corners, const Segment& arc, double excess) {
  const int n = parts(arc, excess);
  for (int i = 0; i < n; ++i) corners.push_back(arc.point(static_cast<double>(i) / n));
}

std::vector<Vec2> around(const Outline& outline, double excess) {
  std::vector<Vec2> corners;
  for (const Segment& s : outline.segments())
    if (s.straight())
      corners.push_back(s.from);
    else if (s.turn > 0)
      add_crown(corners, s, excess);
    else
      add_hollow(corners, s, excess);
  return corners;
}

GridPoint nearest(const Vec2& p) { return {std::llround(p.x()), std::llround(p.y())}; }

// What rounding to the grid moved, whole units up; noise of the arithmetic is not counted.
Grid moved(double distance) { return distance < 1e-5 ? 0 : static_cast<Grid>(std::ceil(distance)); }

bool straight_on(GridPoint a, GridPoint b, GridPoint c) {
  return cross(b - a, c - b) == 0 && dot(b - a, c - b) >= 0;
}

GridLoop without_idle(const GridLoop& loop) {
  GridLoop out;
  for (const GridPoint& p : loop)
    if (out.empty() || !(out.back() == p)) out.push_back(p);
  for (std::size_t i = 0; i < out.size() && out.size() > 3;) {
    const std::size_t n = out.size();
    if (straight_on(out[(i + n - 1) % n], out[i], out[(i + 1) % n]))
      out.erase(out.begin() + static_cast<std::ptrdiff_t>(i));
    else
      ++i;
  }
  return out;
}

Vec2 turned_real(const Vec2& p, int quarters) { return Placing{quarters, {0, 0}}.vector(p); }

Box2 turned_box(const Box2& box, int quarters) {
  Box2 out;
  out.add(turned_real(box.low, quarters));
  out.add(turned_real(box.high, quarters));
  return out;
}

bool allows(Turns turns, int quarters) {
  return quarters == 0 || turns == Turns::any_quarter || (turns == Turns::half_turn && quarters == 2);
}

GridLoop from_least(GridLoop loop) {
  const auto least = std::min_element(
      loop.begin(), loop.end(), [](GridPoint a, GridPoint b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  std::rotate(loop.begin(), least, loop.end());
  return loop;
}

void choose_turns(Shape& out, Turns turns) {
  std::vector<GridLoop> seen;
  for (int q = 0; q < 4; ++q) {
    out.allowed[q] = allows(turns, q);
    if (!out.allowed[q]) continue;
    GridLoop loop = from_least(out.lying(q));
    out.distinct[q] = std::find(seen.begin(), seen.end(), loop) == seen.end();
    seen.push_back(std::move(loop));
  }
}

}  // namespace

GridLoop Shape::lying(int quarters) const {
  GridLoop out = turned(polygon, quarters);
  for (GridPoint& p : out) p = p - low[quarters];
  return out;
}

Shape shape(const Outline& outline, Turns turns, double per_mm, double arc_excess) {
  Shape out;
  const Box2 box = outline.box();
  double error = 0;
  for (const Vec2& corner : around(outline, arc_excess)) {
    const Vec2 exact = (corner - box.low) * per_mm;
    out.polygon.push_back(nearest(exact));
    error = std::max(error, (Vec2(out.polygon.back().x, out.polygon.back().y) - exact).norm());
  }
  out.polygon = without_idle(out.polygon);
  ensure(out.polygon.size() >= 3, "a nested outline is larger than the grid");
  double shift = 0;
  for (int q = 0; q < 4; ++q) {
    const Box2 true_box = turned_box({Vec2(0, 0), box.size() * per_mm}, q);
    out.low[q] = nearest(true_box.low);
    out.size[q] = true_box.size();
    shift = std::max(shift, (true_box.low - Vec2(out.low[q].x, out.low[q].y)).norm());
  }
  out.slack = moved(error + shift);
  out.area = outline.area() * per_mm * per_mm;
  choose_turns(out, turns);
  return out;
}

}  // namespace lamwright::nesting
