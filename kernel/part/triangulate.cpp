#include "kernel/part/triangulate.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

#include "shared/error.hpp"

namespace lamwright {
namespace {

using Index = std::uint32_t;

// A corner that stands out by less lies in line, mm: a thousand times the rounding of a coordinate of 1e4.
constexpr double kInLine = 1e-9;

// Points stand on a grid of 2^-33 mm, about 1e-10: those above each other up to rounding then are so to the
// last bit and are taken from below, where rounding would shuffle them and lay flat triangles along their
// line.
constexpr double kGrid = 1 / 8589934592.0;
Vec2 on_grid(const Vec2& p) { return {std::round(p.x() / kGrid) * kGrid, std::round(p.y() / kGrid) * kGrid}; }

enum class Side { lower, upper };

// A stretch of the inside that one line up cuts once. Of what the sweep has passed, `open` still waits for
// triangles: its points after the first lie on `side`, and none of them stands out inward.
struct Piece {
  std::vector<Index> open;
  Side side = Side::lower;
};

// A stretch of the sweep line inside the polygon. Past a point where two regions came together there are two
// pieces, both ending at that point, until the next point divides them.
struct Region {
  Piece piece;
  std::optional<Piece> above;
  Index high_from = 0, high_to = 0;  // the edge that bounds it from above
};

// From left to right, upward where points lie above each other.
class Sweep {
 public:
  explicit Sweep(const std::vector<std::vector<Vec2>>& loops);
  std::vector<Triangle> run();

 private:
  bool earlier(Index a, Index b) const;
  bool turns_left(Index v) const;
  bool below(const Region& region, Index v) const;
  std::size_t region_at(Index v) const;
  Region& ending_above(std::size_t region, Index v);

  void pass(Index v);
  void start(Index v);
  void split(Index v);
  void merge(Index v);
  void end(Index v);

  bool stands_out(const Piece& piece, Index v) const;
  void emit(Side side, Index a, Index b, Index c);
  void fan(const Piece& piece, Index v);
  void feed(Piece& piece, Index v, Side side);
  void feed_lower(Region& region, Index v);
  void feed_upper(Region& region, Index v);

  std::vector<Vec2> at_;
  std::vector<Index> before_, after_;
  std::vector<Region> regions_;  // from below
  std::vector<Triangle> triangles_;
};

Sweep::Sweep(const std::vector<std::vector<Vec2>>& loops) {
  for (const auto& loop : loops) {
    ensure(loop.size() >= 3, "a loop has three points");
    const Index first = Index(at_.size()), count = Index(loop.size());
    for (Index i = 0; i < count; ++i) {
      before_.push_back(first + (i + count - 1) % count);
      after_.push_back(first + (i + 1) % count);
    }
    for (const Vec2& p : loop) at_.push_back(on_grid(p));
  }
}

std::vector<Triangle> Sweep::run() {
  std::vector<Index> order(at_.size());
  std::iota(order.begin(), order.end(), Index(0));
  std::sort(order.begin(), order.end(), [&](Index a, Index b) { return earlier(a, b); });
  for (const Index v : order) pass(v);
  ensure(regions_.empty(), "loops neither cross nor touch");
  return std::move(triangles_);
}

bool Sweep::earlier(Index a, Index b) const {
  if (at_[a].x() != at_[b].x()) return at_[a].x() < at_[b].x();
  return at_[a].y() != at_[b].y() ? at_[a].y() < at_[b].y() : a < b;
}

bool Sweep::turns_left(Index v) const { return cross(at_[v] - at_[before_[v]], at_[after_[v]] - at_[v]) > 0; }

bool Sweep::below(const Region& region, Index v) const {
  if (region.high_to == v) return false;
  const Vec2& from = at_[region.high_from];
  return cross(at_[region.high_to] - from, at_[v] - from) > 0;
}

// The region that holds v or ends at it; before the next one above where v lies in none.
std::size_t Sweep::region_at(Index v) const {
  const auto found = std::partition_point(regions_.begin(), regions_.end(),
                                          [&](const Region& region) { return below(region, v); });
  return std::size_t(found - regions_.begin());
}

Region& Sweep::ending_above(std::size_t region, Index v) {
  ensure(region < regions_.size() && regions_[region].high_to == v, "loops neither cross nor touch");
  return regions_[region];
}

void Sweep::pass(Index v) {
  const bool from_left = earlier(before_[v], v), to_left = earlier(after_[v], v);
  if (from_left != to_left) {
    const std::size_t i = region_at(v);
    ensure(i < regions_.size(), "loops neither cross nor touch");
    if (from_left) return feed_lower(regions_[i], v);
    Region& region = ending_above(i, v);
    feed_upper(region, v);
    region.high_from = v;
    region.high_to = before_[v];
  } else if (turns_left(v)) {
    from_left ? end(v) : start(v);
  } else {
    from_left ? merge(v) : split(v);
  }
}

void Sweep::start(Index v) {
  regions_.insert(regions_.begin() + long(region_at(v)),
                  Region{Piece{{v}, Side::lower}, std::nullopt, v, before_[v]});
}

// v stands inside a region and divides it: it is joined to the last point passed there.
void Sweep::split(Index v) {
  const std::size_t i = region_at(v);
  ensure(i < regions_.size(), "loops neither cross nor touch");
  Region& region = regions_[i];
  Region upper{{}, std::nullopt, region.high_from, region.high_to};
  if (region.above) {
    upper.piece = std::move(*region.above);
    region.above.reset();
    feed(region.piece, v, Side::upper);
    feed(upper.piece, v, Side::lower);
  } else {
    const Index last = region.piece.open.back();
    const bool on_lower = region.piece.side == Side::lower;
    Piece fresh{{last, v}, on_lower ? Side::upper : Side::lower};
    feed(region.piece, v, region.piece.side);
    upper.piece = std::move(on_lower ? region.piece : fresh);
    if (on_lower) region.piece = std::move(fresh);
  }
  region.high_from = v;
  region.high_to = before_[v];
  regions_.insert(regions_.begin() + long(i) + 1, std::move(upper));
}

void Sweep::merge(Index v) {
  const std::size_t i = region_at(v);
  Region& lower = ending_above(i, v);
  ensure(i + 1 < regions_.size(), "loops neither cross nor touch");
  Region& upper = regions_[i + 1];
  feed_upper(lower, v);
  feed_lower(upper, v);
  lower.above = std::move(upper.piece);
  lower.high_from = upper.high_from;
  lower.high_to = upper.high_to;
  regions_.erase(regions_.begin() + long(i) + 1);
}

void Sweep::end(Index v) {
  const std::size_t i = region_at(v);
  const Region& region = ending_above(i, v);
  fan(region.piece, v);
  if (region.above) fan(*region.above, v);
  regions_.erase(regions_.begin() + long(i));
}

// Whether the last open point makes a triangle with the one before it and with v on the same side.
bool Sweep::stands_out(const Piece& piece, Index v) const {
  const Vec2 &a = at_[*(piece.open.end() - 2)], &b = at_[piece.open.back()], &c = at_[v];
  const double turn = cross(b - a, c - b) * (piece.side == Side::lower ? 1 : -1);
  return turn > kInLine * (c - a).norm();
}

void Sweep::emit(Side side, Index a, Index b, Index c) {
  triangles_.push_back(side == Side::lower ? Triangle{a, b, c} : Triangle{a, c, b});
}

void Sweep::fan(const Piece& piece, Index v) {
  for (std::size_t i = 0; i + 1 < piece.open.size(); ++i)
    emit(piece.side, piece.open[i], piece.open[i + 1], v);
}

void Sweep::feed(Piece& piece, Index v, Side side) {
  if (piece.open.size() > 1 && side != piece.side) {
    fan(piece, v);
    piece.open = {piece.open.back()};
  }
  piece.side = side;
  while (piece.open.size() > 1 && stands_out(piece, v)) {
    emit(side, *(piece.open.end() - 2), piece.open.back(), v);
    piece.open.pop_back();
  }
  piece.open.push_back(v);
}

void Sweep::feed_lower(Region& region, Index v) {
  if (region.above) {
    fan(region.piece, v);
    region.piece = std::move(*region.above);
    region.above.reset();
  }
  feed(region.piece, v, Side::lower);
}

void Sweep::feed_upper(Region& region, Index v) {
  if (region.above) {
    fan(*region.above, v);
    region.above.reset();
  }
  feed(region.piece, v, Side::upper);
}

}  // namespace

std::vector<Triangle> triangulate(const std::vector<std::vector<Vec2>>& loops) { return Sweep(loops).run(); }

}  // namespace lamwright
