#include "kernel/nest/squeeze.hpp"

#include <cmath>

#include "kernel/nest/overlap.hpp"

namespace lamwright::nesting {
namespace {

struct Place {
  int turn = 0;
  GridPoint at;
  double cost = INFINITY;
};

class Squeezer {
 public:
  Squeezer(const std::vector<Laid>& start, const SqueezeSpec& spec, NoFit& no_fit)
      : spec_(spec), no_fit_(no_fit), best_(start), overlaps_(no_fit) {}

  std::vector<Laid> run() {
    constexpr double kFirst = 0.02, kLast = 5e-4;
    constexpr int kPatience = 120;
    double share = kFirst;
    double length = reach(best_, spec_.shapes);
    for (int failed = 0; work_ < spec_.effort && failed < kPatience;) {
      end_ = length * (1 - share);
      overlaps_.begin(best_);
      if (parted()) {
        std::vector<Laid> next = repaired(overlaps_.laid());
        const double got = reach(next, spec_.shapes);
        if (got < length) {
          best_ = std::move(next);
          length = got;
          failed = 0;
          continue;
        }
      }
      ++failed;
      share = share > kLast ? share / 2 : kFirst;
    }
    return best_;
  }

 private:
  Room room(std::size_t piece, int turn) const {
    const Vec2& size = spec_.shapes[piece].size[turn];
    return {static_cast<Grid>(std::floor(end_ - size.x())),
            static_cast<Grid>(std::floor(spec_.board.y() - size.y() + 0.01))};
  }

  Place clamped(std::size_t piece, int turn, GridPoint at) const {
    const Room r = room(piece, turn);
    return {turn,
            {std::clamp<Grid>(at.x, 0, std::max<Grid>(r.right, 0)),
             std::clamp<Grid>(at.y, 0, std::max<Grid>(r.top, 0))},
            INFINITY};
  }

  // Rounds of moves until nothing overlaps by more than a hair.
  bool parted() {
    constexpr int kRounds = 80;
    const double hair = end_ * 2e-6;
    for (std::size_t i = 0; i < overlaps_.laid().size(); ++i) {
      const Laid& l = overlaps_.laid()[i];
      if (room(l.piece, l.turn).empty()) return false;
      overlaps_.move(i, l.turn, clamped(l.piece, l.turn, l.at).at);
    }
    for (int round = 0; round < kRounds && work_ < spec_.effort; ++round) {
      if (spec_.step) spec_.step();
      if (overlaps_.deepest(work_) <= hair) return true;
      move_all();
      overlaps_.reweigh(work_);
    }
    return false;
  }

  void move_all() {
    std::vector<std::size_t> order(overlaps_.laid().size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[dice_.below(i)]);
    for (const std::size_t i : order) {
      const Laid& l = overlaps_.laid()[i];
      Place now{l.turn, l.at, overlaps_.cost(i, l.turn, l.at, INFINITY, work_)};
      if (now.cost == 0) continue;
      const Place next = least(i, now);
      if (next.cost < now.cost) overlaps_.move(i, next.turn, next.at);
    }
  }

  Place least(std::size_t i, const Place& now) {
    std::array<Place, 3> good{now, Place{}, Place{}};
    const auto offer = [&](Place p) {
      p.cost = overlaps_.cost(i, p.turn, p.at, good[2].cost, work_);
      if (p.cost >= good[2].cost) return;
      good[2] = p;
      if (good[2].cost < good[1].cost) std::swap(good[1], good[2]);
    };
    const std::size_t piece = overlaps_.laid()[i].piece;
    for (int turn = 0; turn < 4; ++turn) {
      if (!spec_.shapes[piece].distinct[turn] || room(piece, turn).empty()) continue;
      for (int n = 0; n < 4; ++n) offer(anywhere(piece, turn));
      for (int n = 0; n < 8; ++n) offer(touching(i, turn));
    }
    Place best = now;
    for (const Place& p : good) {
      if (!(p.cost < INFINITY)) continue;
      const Place settled = descended(i, p);
      if (settled.cost < best.cost) best = settled;
      if (best.cost == 0) break;
    }
    return best;
  }

  Place anywhere(std::size_t piece, int turn) {
    const Room r = room(piece, turn);
    return {turn,
            {static_cast<Grid>(dice_.below(static_cast<std::size_t>(r.right) + 1)),
             static_cast<Grid>(dice_.below(static_cast<std::size_t>(r.top) + 1))},
            INFINITY};
  }

  // At a corner of the zone of some other piece.
  Place touching(std::size_t i, int turn) {
    const std::vector<Laid>& laid = overlaps_.laid();
    const Laid& other = laid[dice_.below(laid.size())];
    const Zone& zone = no_fit_.zone(other.piece, other.turn, laid[i].piece, turn);
    const GridPoint corner = zone.edges()[dice_.below(zone.edges().size())].from;
    return clamped(laid[i].piece, turn, other.at + corner);
  }

  // Downhill by shorter and shorter steps; their number is bounded, for along an edge they may be many and
  // tiny.
  Place descended(std::size_t i, Place from) {
    constexpr int kSteps = 80;
    const std::size_t piece = overlaps_.laid()[i].piece;
    Grid step = static_cast<Grid>(end_ / 40);
    for (int n = 0; n < kSteps && step >= 1 && from.cost > 0; ++n) {
      const Place before = from;
      for (const GridPoint way :
           {GridPoint{1, 0}, {0, 1}, {-1, 0}, {0, -1}, {1, 1}, {-1, 1}, {-1, -1}, {1, -1}}) {
        Place next = clamped(piece, from.turn, before.at + GridPoint{step * way.x, step * way.y});
        next.cost = overlaps_.cost(i, next.turn, next.at, from.cost, work_);
        if (next.cost < from.cost) from = next;
      }
      if (!(from.cost < before.cost)) step /= 3;
    }
    return from;
  }

  // From left to right each piece goes no farther right than it must to clear those before it; then each
  // slides left until it meets another.
  std::vector<Laid> repaired(std::vector<Laid> laid) {
    std::stable_sort(laid.begin(), laid.end(), [](const Laid& a, const Laid& b) { return a.at.x < b.at.x; });
    for (std::size_t i = 0; i < laid.size(); ++i) laid[i].at.x = cleared(laid, i);
    for (std::size_t i = 0; i < laid.size(); ++i) laid[i].at.x = slid(laid, i);
    return laid;
  }

  using Stretches = std::vector<std::pair<double, double>>;

  const Zone& zone(const std::vector<Laid>& laid, std::size_t of, std::size_t moving) {
    return no_fit_.zone(laid[of].piece, laid[of].turn, laid[moving].piece, laid[moving].turn);
  }

  // Forbidden to piece i at its height by the first `count` others.
  Stretches forbidden(const std::vector<Laid>& laid, std::size_t i, std::size_t count) {
    Stretches out;
    for (std::size_t j = 0; j < count; ++j) {
      if (j == i) continue;
      const double by = static_cast<double>(laid[j].at.x);
      for (const auto& [from, to] : forbidden_along(zone(laid, j, i), laid[i].at.y - laid[j].at.y))
        out.emplace_back(from + by, to + by);
    }
    std::sort(out.begin(), out.end());
    return out;
  }

  bool clear(const std::vector<Laid>& laid, std::size_t i, Grid x, std::size_t count) {
    for (std::size_t j = 0; j < count; ++j)
      if (j != i && zone(laid, j, i).forbids(GridPoint{x, laid[i].at.y} - laid[j].at)) return false;
    return true;
  }

  Grid cleared(const std::vector<Laid>& laid, std::size_t i) {
    Grid x = laid[i].at.x;
    if (clear(laid, i, x, i)) return x;
    for (const auto& [from, to] : forbidden(laid, i, i))
      if (static_cast<double>(x) > from && static_cast<double>(x) < to) x = static_cast<Grid>(std::ceil(to));
    while (!clear(laid, i, x, i)) ++x;  // ends of stretches are rounded: whole numbers decide
    return x;
  }

  Grid slid(const std::vector<Laid>& laid, std::size_t i) {
    double least = 0;
    for (const auto& [from, to] : forbidden(laid, i, laid.size()))
      if (to <= static_cast<double>(laid[i].at.x) + 1) least = std::max(least, to);
    const Grid x = static_cast<Grid>(std::ceil(least)) + 1;  // ends of stretches are rounded
    return x < laid[i].at.x && clear(laid, i, x, laid.size()) ? x : laid[i].at.x;
  }

  const SqueezeSpec& spec_;
  NoFit& no_fit_;
  std::vector<Laid> best_;
  Overlaps overlaps_;
  Dice dice_;
  double end_ = 0;  // right end that pieces must keep to
  std::int64_t work_ = 0;
};

}  // namespace

double reach(const std::vector<Laid>& laid, const std::vector<Shape>& shapes) {
  double out = 0;
  for (const Laid& l : laid)
    out = std::max(out, static_cast<double>(l.at.x) + shapes[l.piece].size[l.turn].x());
  return out;
}

std::vector<Laid> squeezed(const std::vector<Laid>& start, const SqueezeSpec& spec, NoFit& no_fit) {
  return Squeezer(start, spec, no_fit).run();
}

}  // namespace lamwright::nesting
