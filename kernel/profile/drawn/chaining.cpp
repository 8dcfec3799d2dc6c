#include "kernel/profile/drawn/chaining.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>
#include <optional>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr const char* kPlace = "profile";

struct End {
  Vec2 at{0, 0};
  std::size_t curve = 0;
  bool last = false;
};

Vec2 middle(const DrawnPiece& piece) {
  if (const auto* segment = std::get_if<Segment>(&piece)) return segment->point(0.5);
  return std::get<Bezier>(piece).point(0.5);
}

std::vector<DrawnPiece> turned_round(const std::vector<DrawnPiece>& pieces) {
  std::vector<DrawnPiece> out;
  for (auto piece = pieces.rbegin(); piece != pieces.rend(); ++piece) out.push_back(reversed(*piece));
  return out;
}

bool near(const Vec2& a, const Vec2& b, double join) { return (a - b).norm() <= join + kWholeNumber; }

bool same_way(const std::vector<DrawnPiece>& a, const std::vector<DrawnPiece>& b, double join) {
  for (std::size_t i = 0; i < a.size(); ++i)
    if (!near(first_point(a[i]), first_point(b[i]), join) || !near(middle(a[i]), middle(b[i]), join) ||
        !near(last_point(a[i]), last_point(b[i]), join))
      return false;
  return true;
}

bool lie_on_each_other(const DrawnCurve& a, const DrawnCurve& b, double join) {
  if (a.pieces.size() != b.pieces.size()) return false;
  return same_way(a.pieces, b.pieces, join) || same_way(a.pieces, turned_round(b.pieces), join);
}

// What is drawn twice comes from one source: its doubles differ by the rounding of the file alone.
constexpr double kDoubled = 0.01;

// Cells as wide as two ends may lie apart, so that such ends lie in neighbouring cells.
class EndMap {
 public:
  explicit EndMap(double join) : join_(join), cell_(std::max(join, kSamePoint) * 2) {}

  void add(const End& end) { cells_[cell(end.at)].push_back(end); }

  std::vector<End> beside(const Vec2& at) const {
    std::vector<End> out;
    const auto [column, row] = cell(at);
    for (const std::int64_t x : {column - 1, column, column + 1})
      for (const std::int64_t y : {row - 1, row, row + 1})
        if (const auto found = cells_.find({x, y}); found != cells_.end())
          for (const End& end : found->second)
            if (near(end.at, at, join_)) out.push_back(end);
    return out;
  }

 private:
  using Cell = std::pair<std::int64_t, std::int64_t>;
  Cell cell(const Vec2& at) const {
    return {std::int64_t(std::floor(at.x() / cell_)), std::int64_t(std::floor(at.y() / cell_))};
  }

  double join_, cell_;
  std::map<Cell, std::vector<End>> cells_;
};

std::vector<End> ends_of(const DrawnCurve& curve, std::size_t index) {
  return {{first_point(curve.pieces.front()), index, false}, {last_point(curve.pieces.back()), index, true}};
}

std::vector<DrawnCurve> without_doubles(const std::vector<DrawnCurve>& curves) {
  std::vector<DrawnCurve> kept;
  EndMap begins(kDoubled);
  for (const DrawnCurve& curve : curves) {
    if (curve.pieces.empty()) continue;
    bool doubled = false;
    for (const End& end : ends_of(curve, 0))
      for (const End& other : begins.beside(end.at))
        doubled = doubled || lie_on_each_other(curve, kept[other.curve], kDoubled);
    if (doubled) continue;
    begins.add(ends_of(curve, kept.size()).front());
    kept.push_back(curve);
  }
  return kept;
}

class Chainer {
 public:
  Chainer(const std::vector<DrawnCurve>& curves, double join)
      : join_(join), curves_(without_doubles(curves)), ends_(join), used_(curves_.size(), false) {
    for (std::size_t i = 0; i < curves_.size(); ++i)
      for (const End& end : ends_of(curves_[i], i)) ends_.add(end);
    out_.doubled = curves.size() - curves_.size();
  }

  Chained run() {
    if (curves_.empty()) throw geometry_error(kPlace, "holds no curve", "draw lines, arcs or a path");
    used_[0] = true;
    chain_.assign(curves_[0].pieces.begin(), curves_[0].pieces.end());
    out_.closed = curves_[0].closed;
    while (grown_at_end()) {
    }
    while (grown_at_start()) {
    }
    refuse_rest();
    out_.pieces.assign(chain_.begin(), chain_.end());
    return std::move(out_);
  }

 private:
  // The end of an unused curve nearest to a point, if any lies near enough.
  std::optional<End> next(const Vec2& at) {
    std::vector<End> free;
    for (const End& end : ends_.beside(at))
      if (!used_[end.curve]) free.push_back(end);
    if (free.empty()) return std::nullopt;
    const auto off = [&](const End& end) { return (end.at - at).norm(); };
    const End nearest = *std::min_element(free.begin(), free.end(),
                                          [&](const End& a, const End& b) { return off(a) < off(b); });
    for (const End& end : free)
      if (end.curve != nearest.curve && off(end) - off(nearest) < kSamePoint) refuse_branch(at);
    return nearest;
  }

  [[noreturn]] static void refuse_branch(const Vec2& at) {
    throw geometry_error(kPlace, "more than two pieces meet at " + point_text(at),
                         "take out the branch, or choose one curve by path or layer");
  }

  void note_gap(const Vec2& a, const Vec2& b) {
    if ((a - b).norm() <= out_.largest_gap) return;
    out_.largest_gap = (a - b).norm();
    out_.gap_at = a;
  }

  bool grown_at_end() {
    if (closed_now()) return false;
    const Vec2 at = last_point(chain_.back());
    const auto end = next(at);
    if (!end) return false;
    const std::vector<DrawnPiece> more = taken(*end, end->last);
    note_gap(at, first_point(more.front()));
    chain_.insert(chain_.end(), more.begin(), more.end());
    return true;
  }

  bool grown_at_start() {
    if (out_.closed) return false;
    const Vec2 at = first_point(chain_.front());
    const auto end = next(at);
    if (!end) return false;
    const std::vector<DrawnPiece> more = taken(*end, !end->last);
    note_gap(at, last_point(more.back()));
    chain_.insert(chain_.begin(), more.begin(), more.end());
    return true;
  }

  std::vector<DrawnPiece> taken(const End& end, bool turn) {
    used_[end.curve] = true;
    return turn ? turned_round(curves_[end.curve].pieces) : curves_[end.curve].pieces;
  }

  // A chain that has come back to its beginning, and been away from it.
  bool closed_now() {
    const Vec2 begin = first_point(chain_.front()), end = last_point(chain_.back());
    if (out_.closed || !near(begin, end, join_)) return out_.closed;
    out_.closed = std::any_of(chain_.begin(), chain_.end(), [&](const DrawnPiece& piece) {
      return !near(middle(piece), begin, 2 * join_) || !near(last_point(piece), begin, 2 * join_);
    });
    if (out_.closed) note_gap(end, begin);
    return out_.closed;
  }

  void refuse_rest() {
    struct {
      double gap = INFINITY;
      Vec2 from{0, 0}, to{0, 0};
    } least;
    std::size_t left = 0;
    for (std::size_t i = 0; i < curves_.size(); ++i) {
      if (used_[i]) continue;
      ++left;
      for (const End& end : ends_of(curves_[i], i))
        for (const Vec2& own : {last_point(chain_.back()), first_point(chain_.front())})
          if ((end.at - own).norm() < least.gap) least = {(end.at - own).norm(), own, end.at};
    }
    if (left == 0) return;
    throw geometry_error(kPlace,
                         "the pieces do not meet: " + counted(long(left), "piece") +
                             " left over, the nearest begins " + number(least.gap, 4) + " away, from " +
                             point_text(least.from) + " to " + point_text(least.to),
                         "close the gap, raise join, or choose one curve by path or layer");
  }

  double join_;
  std::vector<DrawnCurve> curves_;
  EndMap ends_;
  std::vector<bool> used_;
  std::deque<DrawnPiece> chain_;
  Chained out_;
};

}  // namespace

Chained chained(const std::vector<DrawnCurve>& curves, double join) {
  for (const DrawnCurve& curve : curves)
    for (const DrawnPiece& piece : curve.pieces)
      if (!first_point(piece).allFinite() || !middle(piece).allFinite() || !last_point(piece).allFinite())
        throw geometry_error(kPlace, "holds a point that is not finite", "check the drawing");
  return Chainer(curves, join).run();
}

}  // namespace lamwright
