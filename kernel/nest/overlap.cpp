#include "kernel/nest/overlap.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

// Questions that take as long as making a table.
constexpr int kOften = 300;

// Just above the line, or just below: there no corner is met.
std::vector<std::pair<double, double>> beside(const Zone& zone, Grid y, bool above) {
  std::vector<double> cuts;
  for (const GridEdge& e : zone.edges()) {
    const Grid low = std::min(e.from.y, e.to.y), high = std::max(e.from.y, e.to.y);
    if (above ? low > y || high <= y : low >= y || high < y) continue;
    const double share = static_cast<double>(y - e.from.y) / static_cast<double>(e.to.y - e.from.y);
    cuts.push_back(static_cast<double>(e.from.x) + share * static_cast<double>(e.to.x - e.from.x));
  }
  std::sort(cuts.begin(), cuts.end());
  std::vector<std::pair<double, double>> out;
  for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) out.emplace_back(cuts[i], cuts[i + 1]);
  return out;
}

}  // namespace

std::vector<std::pair<double, double>> forbidden_along(const Zone& zone, Grid y) {
  std::vector<std::pair<double, double>> out;
  const auto below = beside(zone, y, false);
  for (const auto& [a, b] : beside(zone, y, true))
    for (const auto& [c, d] : below)
      if (std::max(a, c) < std::min(b, d)) out.emplace_back(std::max(a, c), std::min(b, d));
  return out;
}

void Overlaps::begin(std::vector<Laid> laid) {
  laid_ = std::move(laid);
  turned_.clear();
  for (const Laid& l : laid_) turned_.push_back(turned(l.piece, l.turn));
  weights_.assign(laid_.size() * laid_.size(), 1);
}

void Overlaps::move(std::size_t i, int turn, GridPoint at) {
  laid_[i].turn = turn;
  laid_[i].at = at;
  turned_[i] = turned(laid_[i].piece, turn);
}

// Of two pieces whose boxes overlap.
double Overlaps::deep(Asked& asked, const Laid& lying, const Laid& moving, std::int64_t& work) {
  const GridPoint p = moving.at - lying.at;
  if (!asked.zone) {
    asked.zone = &no_fit_.zone(lying.piece, lying.turn, moving.piece, moving.turn);
    asked.low = asked.zone->box().low;
    asked.high = asked.zone->box().high;
    if (!asked.near(p)) return 0;
  }
  if (!asked.table && ++asked.times > kOften) asked.table = std::make_unique<const Depths>(*asked.zone, work);
  if (asked.table) return asked.table->at(p, work);
  work += 6 * static_cast<std::int64_t>(asked.zone->edges().size());
  return depth(*asked.zone, p);
}

double Overlaps::cost(std::size_t i, int turn, GridPoint at, double enough, std::int64_t& work) {
  double sum = 0;
  const Laid moving{laid_[i].piece, turn, at};
  Asked* const asked = asked_of(moving.piece, turn);
  work += 10 * static_cast<std::int64_t>(laid_.size());
  for (std::size_t j = 0; j < laid_.size() && sum <= enough; ++j) {
    Asked& pair = asked[turned_[j]];
    if (pair.near(at - laid_[j].at) && j != i) sum += weight(i, j) * deep(pair, laid_[j], moving, work);
  }
  return sum;
}

Overlaps::Sum Overlaps::measured(std::int64_t& work) {
  Sum out;
  now_.assign(weights_.size(), 0);
  for (std::size_t i = 0; i < laid_.size(); ++i) {
    Asked* const asked = asked_of(laid_[i].piece, laid_[i].turn);
    for (std::size_t j = 0; j < i; ++j) {
      work += 10;
      Asked& pair = asked[turned_[j]];
      if (!pair.near(laid_[i].at - laid_[j].at)) continue;
      const double depth = deep(pair, laid_[j], laid_[i], work);
      now_[i * laid_.size() + j] = depth;
      out.deepest = std::max(out.deepest, depth);
      out.total += depth;
    }
  }
  most_ = out.deepest;
  return out;
}

void Overlaps::reweigh() {
  constexpr double kGrow = 0.5, kFade = 0.97;
  if (most_ == 0) return;
  for (std::size_t i = 0; i < laid_.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const double now = now_[i * laid_.size() + j];
      const double next =
          now > 0 ? weight(i, j) * (1.1 + kGrow * now / most_) : 1 + (weight(i, j) - 1) * kFade;
      weight(i, j) = weight(j, i) = next;
    }
}

}  // namespace lamwright::nesting
