#include "kernel/nest/overlap.hpp"

#include <cmath>

namespace lamwright::nesting {

namespace {
// Of one edge, beside that of asking on which side of it a point lies.
constexpr std::int64_t kDepthWork = 6;
}  // namespace

double depth(const Zone& zone, GridPoint p) {
  if (!zone.forbids(p)) return 0;
  double least = INFINITY;
  for (const GridEdge& e : zone.edges()) {
    const double ax = static_cast<double>(p.x - e.from.x), ay = static_cast<double>(p.y - e.from.y);
    const double dx = static_cast<double>(e.to.x - e.from.x), dy = static_cast<double>(e.to.y - e.from.y);
    const double share = std::clamp((ax * dx + ay * dy) * e.per_square, 0.0, 1.0);
    const double x = ax - share * dx, y = ay - share * dy;
    least = std::min(least, x * x + y * y);
  }
  return std::sqrt(least);
}

namespace {

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
  weights_.assign(laid_.size() * laid_.size(), 1);
}

double Overlaps::cost(std::size_t i, int turn, GridPoint at, double enough, std::int64_t& work) {
  double sum = 0;
  work += 10 * static_cast<std::int64_t>(laid_.size());
  for (std::size_t j = 0; j < laid_.size() && sum <= enough; ++j) {
    if (j == i) continue;
    const Zone& zone = no_fit_.zone(laid_[j].piece, laid_[j].turn, laid_[i].piece, turn);
    const GridPoint p = at - laid_[j].at;
    if (!zone.box().inside(p)) continue;
    work += kDepthWork * static_cast<std::int64_t>(zone.edges().size());
    sum += weight(i, j) * depth(zone, p);
  }
  return sum;
}

double Overlaps::pair(std::size_t i, std::size_t j, std::int64_t& work) {
  const Zone& zone = no_fit_.zone(laid_[j].piece, laid_[j].turn, laid_[i].piece, laid_[i].turn);
  const GridPoint p = laid_[i].at - laid_[j].at;
  work += 10;
  if (!zone.box().inside(p)) return 0;
  work += kDepthWork * static_cast<std::int64_t>(zone.edges().size());
  return depth(zone, p);
}

double Overlaps::deepest(std::int64_t& work) {
  double most = 0;
  for (std::size_t i = 0; i < laid_.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) most = std::max(most, pair(i, j, work));
  return most;
}

void Overlaps::reweigh(std::int64_t& work) {
  constexpr double kGrow = 0.5, kFade = 0.97;
  const double most = deepest(work);
  if (most == 0) return;
  for (std::size_t i = 0; i < laid_.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const double now = pair(i, j, work);
      const double next =
          now > 0 ? weight(i, j) * (1.1 + kGrow * now / most) : 1 + (weight(i, j) - 1) * kFade;
      weight(i, j) = weight(j, i) = next;
    }
}

}  // namespace lamwright::nesting
