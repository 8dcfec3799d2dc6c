#include "kernel/part/outline.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

void join_exactly(std::vector<Segment>& loop, const std::string& name) {
  for (std::size_t i = 0; i < loop.size(); ++i) {
    Segment& next = loop[(i + 1) % loop.size()];
    const double gap = (next.from - loop[i].to).norm();
    if (!(gap <= kSamePoint))
      throw geometry_error(name,
                           "the outline is open between " + point_text(loop[i].to) + " and " +
                               point_text(next.from) + ", gap " + number(gap),
                           "close it");
    loop[i].to = next.from;
  }
}

void refuse_crossings(const std::vector<Segment>& loop, const std::string& name) {
  const auto refuse = [&](const Vec2& p) {
    throw geometry_error(name, "the outline crosses itself at " + point_text(p), "draw one simple loop");
  };
  std::vector<Box2> boxes;
  for (const Segment& s : loop) boxes.push_back(box(s));
  const auto apart = [](const Box2& a, const Box2& b) {
    return (a.low.array() > b.high.array() + kSamePoint).any() ||
           (b.low.array() > a.high.array() + kSamePoint).any();
  };
  for (std::size_t i = 0; i < loop.size(); ++i)
    for (std::size_t j = i + 1; j < loop.size(); ++j) {
      if (apart(boxes[i], boxes[j])) continue;
      for (const Vec2& p : crossings(loop[i], loop[j])) {
        const bool after = j == i + 1 && (p - loop[i].to).norm() < 10 * kSamePoint;
        const bool before = i == 0 && j + 1 == loop.size() && (p - loop[i].from).norm() < 10 * kSamePoint;
        if (!after && !before) refuse(p);
      }
    }
}

// Signed area and first moments of the region between a chord and its arc (Green's theorem over the arc).
struct Region {
  double area = 0;
  Vec2 moment{0, 0};
};

// x - sin(x), by its series where the difference would lose every digit (a crowned edge turns by 1e-4).
double less_sine(double x) {
  if (std::abs(x) > 0.1) return x - std::sin(x);
  const double xx = x * x;
  return x * xx / 6 * (1 - xx / 20 * (1 - xx / 42 * (1 - xx / 72)));
}

Region cap(const Segment& s) {
  if (s.straight()) return {};
  const double area = s.radius * s.radius * less_sine(s.turn) / 2;
  const double half = std::abs(s.turn) / 2;
  const double out = 4 * s.radius * std::pow(std::sin(half), 3) / (3 * less_sine(2 * half));
  const Vec2 middle = (s.point(0.5) - s.centre) / s.radius;
  return {area, area * (s.centre + out * middle)};
}

Region region(const std::vector<Segment>& loop) {
  const Vec2 base =
      loop.front().from;  // moments about a point of the loop: no cancellation for far-off parts
  Region sum;
  for (const Segment& s : loop) {
    const Vec2 a = s.from - base, b = s.to - base;
    const double twice = cross(a, b);
    sum.area += twice / 2;
    sum.moment += twice / 6 * (a + b);
    Segment moved = s;
    moved.from -= base;
    moved.to -= base;
    moved.centre -= base;
    const Region c = cap(moved);
    sum.area += c.area;
    sum.moment += c.moment;
  }
  return {sum.area, sum.moment + sum.area * base};
}

// Which side of its chord, and whether a point is level with its ends, are told for one a hair above and to
// the left: else a point on the chord could be counted on one side of it and on the other side of the cap.
double side_of_chord(const Segment& s, const Vec2& p) {
  const Vec2 along = s.to - s.from;
  const double side = cross(along, p - s.from);
  return side != 0 ? side : along.x() != 0 ? along.x() : along.y();
}

// What an edge adds to the winding about p: its chord, where a level line from p to the right crosses it, and
// the cap between arc and chord.
int wound(const Segment& s, const Vec2& p) {
  int winding = 0;
  const double side = side_of_chord(s, p);
  const bool up = s.to.y() > s.from.y();
  if ((s.from.y() > p.y()) != (s.to.y() > p.y()) && (side > 0) == up) winding += up ? 1 : -1;
  if (s.straight()) return winding;
  // Seen from between chord and arc, the arc goes round the other way than its chord.
  const int sense = s.turn > 0 ? 1 : -1;
  if (side * sense < 0 && (p - s.centre).norm() < s.radius) winding += sense;
  return winding;
}

// The chord of an arc is no edge, and near it rounding could tell its side wrongly.
bool near_chord(const Segment& s, const Vec2& p) {
  const Vec2 along = s.to - s.from;
  return !s.straight() && std::abs(cross(along, p - s.from)) <= kSamePoint * along.norm();
}

std::array<Segment, 2> halves(const Segment& arc) {
  std::array<Segment, 2> out{arc, arc};
  out[0].turn = out[1].turn = arc.turn / 2;
  out[0].to = out[1].from = arc.point(0.5);
  return out;
}

}  // namespace

Outline::Outline(std::vector<Segment> loop, const std::string& name) {
  if (loop.size() < 2)
    throw geometry_error(name, "the outline has fewer than two edges", "draw one closed loop");
  join_exactly(loop, name);
  refuse_crossings(loop, name);
  if (region(loop).area < 0) {
    std::reverse(loop.begin(), loop.end());
    for (Segment& s : loop) s = s.reversed();
  }
  const Region sum = region(loop);
  if (!(sum.area > kSamePoint))
    throw geometry_error(name, "the outline encloses no area", "draw one closed loop");
  segments_ = std::move(loop);
  area_ = sum.area;
  centroid_ = sum.moment / sum.area;
  for (const Segment& s : segments_) box_.add(lamwright::box(s));
}

// Near the chord of an arc its halves are asked, whose chords lie elsewhere.
bool Outline::contains(const Vec2& p) const {
  int winding = 0;
  for (const Segment& s : segments_) {
    if (!near_chord(s, p))
      winding += wound(s, p);
    else
      for (const Segment& half : halves(s)) winding += wound(half, p);
  }
  return winding > 0;
}

double Outline::distance(const Vec2& p) const {
  double least = INFINITY;
  for (const Segment& s : segments_) least = std::min(least, lamwright::distance(s, p));
  return least;
}

Outline polygon(const std::vector<Vec2>& corners, const std::string& name) {
  std::vector<Segment> loop;
  for (std::size_t i = 0; i < corners.size(); ++i)
    loop.push_back(line(corners[i], corners[(i + 1) % corners.size()]));
  return {std::move(loop), name};
}

Outline rectangle(const Vec2& low, const Vec2& high) {
  return polygon({low, {high.x(), low.y()}, high, {low.x(), high.y()}}, "rectangle");
}

}  // namespace lamwright
