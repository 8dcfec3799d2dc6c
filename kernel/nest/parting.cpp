#include "kernel/nest/parting.hpp"

#include <cmath>

namespace lamwright::nesting {

Parting::Parting(const std::vector<Shape>& shapes, NoFit& no_fit, const std::function<void()>& step)
    : shapes_(shapes), no_fit_(no_fit), step_(step), overlaps_(shapes.size(), no_fit) {}

Laid Parting::pushed_in(Laid laid, const SheetRow& row) {
  if (!row.room(size(laid.piece, laid.turn), row.sheet(laid.at)).empty()) {
    laid.at = row.clamped(size(laid.piece, laid.turn), laid.at);
    return laid;
  }
  for (int n = 0; n < 4; ++n) {
    const int turn = (laid.turn + n) & 3;
    if (!shapes_[laid.piece].allowed[turn]) continue;
    if (const auto at = anywhere(laid.piece, turn, row)) return {laid.piece, turn, *at};
  }
  return laid;
}

Parting::Result Parting::part(std::vector<Laid> laid, const SheetRow& row, std::int64_t most) {
  constexpr int kRounds = 80;
  const double hair = row.length() * 2e-6;
  for (Laid& l : laid) {
    l = pushed_in(l, row);
    if (row.room(size(l.piece, l.turn), row.sheet(l.at)).empty()) return {false, INFINITY, laid};
  }
  Result out{false, INFINITY, laid};
  overlaps_.begin(std::move(laid));
  for (int round = 0, gained = 0; round < gained + kRounds && work_ < most; ++round) {
    if (step_) step_();
    const Overlaps::Sum sum = overlaps_.measured(work_);
    if (sum.total < out.total) {
      if (sum.total < 0.98 * out.total) gained = round;
      out.total = sum.total;
      out.laid = overlaps_.laid();
    }
    if (sum.deepest <= hair) return {true, sum.total, overlaps_.laid()};
    move_all(row);
    overlaps_.reweigh();
  }
  return out;
}

std::vector<Laid> Parting::disturbed(std::vector<Laid> laid, const SheetRow& row) {
  Laid& a = laid[dice_.below(laid.size())];
  Laid& b = laid[dice_.below(laid.size())];
  const bool alike = a.piece == b.piece && a.turn == b.turn && row.sheet(a.at) == row.sheet(b.at);
  if (!alike && dice_.below(2) == 0) {
    const Vec2 middle = this->middle(a);
    a.at = centred(a, this->middle(b));
    b.at = centred(b, middle);
    return laid;
  }
  const int turn = static_cast<int>(dice_.below(4));
  if (!shapes_[a.piece].distinct[turn]) return laid;
  if (const auto at = anywhere(a.piece, turn, row)) a = {a.piece, turn, *at};
  return laid;
}

Vec2 Parting::middle(const Laid& l) const {
  return Vec2(static_cast<double>(l.at.x), static_cast<double>(l.at.y)) + size(l.piece, l.turn) / 2;
}

GridPoint Parting::centred(const Laid& l, const Vec2& middle) const {
  const Vec2 low = middle - size(l.piece, l.turn) / 2;
  return {static_cast<Grid>(low.x()), static_cast<Grid>(low.y())};
}

void Parting::move_all(const SheetRow& row) {
  std::vector<std::size_t> order(overlaps_.laid().size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[dice_.below(i)]);
  for (const std::size_t i : order) {
    const Laid& l = overlaps_.laid()[i];
    const Place now{l.turn, l.at, overlaps_.cost(i, l.turn, l.at, INFINITY, work_)};
    if (now.cost == 0) continue;
    const Place next = least(i, now, row);
    if (next.cost < now.cost) overlaps_.move(i, next.turn, next.at);
  }
}

Parting::Place Parting::least(std::size_t i, const Place& now, const SheetRow& row) {
  std::array<Place, 3> good{now, Place{}, Place{}};
  const auto offer = [&](int turn, const std::optional<GridPoint>& at) {
    if (!at) return;
    const Place p{turn, *at, overlaps_.cost(i, turn, *at, good[2].cost, work_)};
    if (p.cost >= good[2].cost) return;
    good[2] = p;
    if (good[2].cost < good[1].cost) std::swap(good[1], good[2]);
  };
  const std::size_t piece = overlaps_.laid()[i].piece;
  for (int turn = 0; turn < 4; ++turn) {
    if (!shapes_[piece].distinct[turn]) continue;
    for (int n = 0; n < 4; ++n) offer(turn, anywhere(piece, turn, row));
    for (int n = 0; n < 8; ++n) offer(turn, touching(i, turn, row));
  }
  Place best = now;
  for (const Place& p : good) {
    if (!(p.cost < INFINITY)) continue;
    const Place settled = descended(i, p, row);
    if (settled.cost < best.cost) best = settled;
    if (best.cost == 0) break;
  }
  return best;
}

std::optional<GridPoint> Parting::anywhere(std::size_t piece, int turn, const SheetRow& row) {
  int sheet = static_cast<int>(dice_.below(static_cast<std::size_t>(row.count())));
  if (row.room(size(piece, turn), sheet).empty()) sheet = 0;
  const Room r = row.room(size(piece, turn), sheet);
  if (r.empty()) return std::nullopt;
  return GridPoint{row.left(sheet) + static_cast<Grid>(dice_.below(static_cast<std::size_t>(r.right) + 1)),
                   static_cast<Grid>(dice_.below(static_cast<std::size_t>(r.top) + 1))};
}

// At a corner of the zone of some other piece.
std::optional<GridPoint> Parting::touching(std::size_t i, int turn, const SheetRow& row) {
  const std::vector<Laid>& laid = overlaps_.laid();
  const Laid& other = laid[dice_.below(laid.size())];
  const std::size_t piece = laid[i].piece;
  if (row.room(size(piece, turn), row.sheet(other.at)).empty()) return std::nullopt;
  const Zone& zone = no_fit_.zone(other.piece, other.turn, piece, turn);
  const GridPoint corner = zone.edges()[dice_.below(zone.edges().size())].from;
  return row.clamped(size(piece, turn), other.at + corner);
}

// Downhill by shorter and shorter steps; their number is bounded, for along an edge they may be many and
// tiny.
Parting::Place Parting::descended(std::size_t i, Place from, const SheetRow& row) {
  constexpr int kSteps = 80;
  const Vec2& of = size(overlaps_.laid()[i].piece, from.turn);
  Grid step = static_cast<Grid>(row.length() / 40);
  for (int n = 0; n < kSteps && step >= 1 && from.cost > 0; ++n) {
    const Place before = from;
    for (const GridPoint way :
         {GridPoint{1, 0}, {0, 1}, {-1, 0}, {0, -1}, {1, 1}, {-1, 1}, {-1, -1}, {1, -1}}) {
      Place next{from.turn, row.clamped(of, before.at + GridPoint{step * way.x, step * way.y}), INFINITY};
      next.cost = overlaps_.cost(i, next.turn, next.at, from.cost, work_);
      if (next.cost < from.cost) from = next;
    }
    if (!(from.cost < before.cost)) step /= 3;
  }
  return from;
}

}  // namespace lamwright::nesting
