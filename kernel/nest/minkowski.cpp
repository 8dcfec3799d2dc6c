#include "kernel/nest/minkowski.hpp"

#include <cmath>
#include <map>
#include <polyclipping/clipper.hpp>

#include "shared/units.hpp"

namespace lamwright::nesting {
namespace {

ClipperLib::Path to_clipper(const GridLoop& loop) {
  ClipperLib::Path out;
  out.reserve(loop.size());
  for (const GridPoint& p : loop) out.emplace_back(p.x, p.y);
  return out;
}

GridLoop from_clipper(const ClipperLib::Path& path) {
  GridLoop out;
  out.reserve(path.size());
  for (const ClipperLib::IntPoint& p : path) out.push_back({p.X, p.Y});
  return out;
}

// Upper half plane first: directions compare by half, then by cross product.
bool lower_half(GridPoint d) { return d.y < 0 || (d.y == 0 && d.x < 0); }

bool before(GridPoint a, GridPoint b) {
  if (lower_half(a) != lower_half(b)) return lower_half(b);
  return cross(a, b) > 0;
}

// Whether d lies in the anticlockwise turn from `from` (counted when `with_from`) to `to` (counted when not).
bool in_turn(GridPoint d, GridPoint from, GridPoint to, bool with_from) {
  const auto same = [](GridPoint a, GridPoint b) { return cross(a, b) == 0 && dot(a, b) > 0; };
  if (same(from, to)) return false;
  if (same(d, from)) return with_from;
  if (same(d, to)) return !with_from;
  if (before(from, to)) return before(from, d) && before(d, to);
  return before(from, d) || before(d, to);
}

struct Corner {
  GridPoint at, in, out;  // directions of the edges that end and begin here
  bool reflex = false;
};

std::vector<Corner> corners(const GridLoop& loop) {
  std::vector<Corner> out;
  const std::size_t n = loop.size();
  for (std::size_t i = 0; i < n; ++i) {
    Corner c{loop[i], loop[i] - loop[(i + n - 1) % n], loop[(i + 1) % n] - loop[i], false};
    c.reflex = cross(c.in, c.out) < 0;
    out.push_back(c);
  }
  return out;
}

// Directed edges between pairs of corners (index i of a, j of b as i * size of b + j); every pair has as many
// edges in as out.
class Convolution {
 public:
  Convolution(const GridLoop& a, const GridLoop& b) : a_(corners(a)), b_(corners(b)) {
    for (std::size_t i = 0; i < a_.size(); ++i)
      for (std::size_t j = 0; j < b_.size(); ++j) {
        join(a_[i].out, b_[j], true, {i, j}, {(i + 1) % a_.size(), j});
        join(b_[j].out, a_[i], false, {i, j}, {i, (j + 1) % b_.size()});
      }
  }

  std::vector<GridLoop> loops() {
    std::vector<GridLoop> out;
    for (auto& [start, next] : edges_)
      while (!next.empty()) out.push_back(walk(start));
    return out;
  }

 private:
  struct Pair {
    std::size_t i, j;
  };

  // Where directions are equal, those of a count as turned a hair to the left: no edge is lost or met twice.
  void join(GridPoint direction, const Corner& corner, bool of_a, Pair from, Pair to) {
    const GridPoint first = corner.reflex ? corner.out : corner.in;
    const GridPoint last = corner.reflex ? corner.in : corner.out;
    if (!in_turn(direction, first, last, of_a)) return;
    if (corner.reflex) std::swap(from, to);
    edges_[key(from)].push_back(key(to));
  }

  std::size_t key(Pair p) const { return p.i * b_.size() + p.j; }
  GridPoint at(std::size_t key) const { return a_[key / b_.size()].at + b_[key % b_.size()].at; }

  GridLoop walk(std::size_t start) {
    GridLoop loop;
    std::size_t here = start;
    do {
      loop.push_back(at(here));
      std::vector<std::size_t>& next = edges_[here];
      here = next.back();
      next.pop_back();
    } while (here != start);
    return loop;
  }

  std::vector<Corner> a_, b_;
  std::map<std::size_t, std::vector<std::size_t>> edges_;
};

bool on_edge(GridPoint p, GridPoint a, GridPoint b) {
  return cross(b - a, p - a) == 0 && dot(p - a, p - b) <= 0;
}

// A corner made by the union is exact when it is a corner of the loops or lies on two of their edges that
// cross.
bool exact_corner(GridPoint p, const std::vector<GridLoop>& loops) {
  GridPoint first{0, 0};
  bool found = false;
  for (const GridLoop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const GridPoint a = loop[i], b = loop[(i + 1) % loop.size()];
      if (p == a) return true;
      if (!on_edge(p, a, b)) continue;
      if (found && cross(first, b - a) != 0) return true;
      first = b - a;
      found = true;
    }
  return false;
}

std::vector<GridLoop> united(const std::vector<GridLoop>& loops) {
  ClipperLib::Clipper clipper;
  for (const GridLoop& loop : loops) clipper.AddPath(to_clipper(loop), ClipperLib::ptSubject, true);
  ClipperLib::Paths paths;
  clipper.Execute(ClipperLib::ctUnion, paths, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  std::vector<GridLoop> out;
  for (const ClipperLib::Path& path : paths) out.push_back(from_clipper(path));
  return out;
}

// Erosion with sharp corners takes more than the disc would: holes come out too small, never too large.
std::vector<GridLoop> shrunk_hole(const GridLoop& hole, Grid radius) {
  ClipperLib::Path path = to_clipper(hole);
  ClipperLib::ReversePath(path);
  ClipperLib::ClipperOffset offset;
  offset.AddPath(path, ClipperLib::jtMiter, ClipperLib::etClosedPolygon);
  ClipperLib::Paths left;
  offset.Execute(left, -static_cast<double>(radius + 2));
  std::vector<GridLoop> out;
  for (ClipperLib::Path& p : left) {
    ClipperLib::ReversePath(p);
    out.push_back(from_clipper(p));
  }
  return out;
}

}  // namespace

bool convex(const GridLoop& loop) {
  for (const Corner& c : corners(loop))
    if (c.reflex) return false;
  return true;
}

PolygonSum sum(const GridLoop& a, const GridLoop& b) {
  std::vector<GridLoop> loops = Convolution(a, b).loops();
  if (convex(a) && convex(b)) return {std::move(loops), true};
  PolygonSum out{united(loops), true};
  for (const GridLoop& loop : out.loops)
    for (const GridPoint& p : loop) out.exact = out.exact && exact_corner(p, loops);
  return out;
}

GridLoop disc(Grid radius) {
  constexpr int kEighth = 2;  // tangents in each eighth of a turn, the axes not counted
  const double step = kPi / 4 / kEighth;
  const double reach = (static_cast<double>(radius) + 2) / std::cos(step / 2);
  GridLoop quarter;
  for (int i = 0; i < 2 * kEighth; ++i) {
    const double angle = (i + 0.5) * step;
    quarter.push_back({std::min<Grid>(radius, std::llround(reach * std::cos(angle))),
                       std::min<Grid>(radius, std::llround(reach * std::sin(angle)))});
  }
  GridLoop out;
  for (int quarters = 0; quarters < 4; ++quarters)
    for (const GridPoint& p : quarter)
      if (out.empty() || !(out.back() == turned(p, quarters))) out.push_back(turned(p, quarters));
  return out;
}

PolygonSum grown(const PolygonSum& shape, Grid radius) {
  if (radius == 0) return shape;
  PolygonSum out;
  for (const GridLoop& loop : shape.loops) {
    const bool hole = ClipperLib::Area(to_clipper(loop)) < 0;
    if (hole) {
      for (GridLoop& left : shrunk_hole(loop, radius)) out.loops.push_back(std::move(left));
      continue;
    }
    PolygonSum outer = sum(loop, disc(radius));
    out.exact = out.exact && outer.exact;
    for (GridLoop& l : outer.loops) out.loops.push_back(std::move(l));
  }
  return out;
}

}  // namespace lamwright::nesting
