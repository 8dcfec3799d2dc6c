#include "kernel/profile/fit/answers.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::fitting {
namespace {

constexpr Effort kSketch{15, 1e-4};
constexpr Effort kPolish{40, 1e-9};
constexpr Effort kPolishAll{20, 1e-8};
constexpr double kSameSquares = 1e-3;  // share by which the squares of two different answers differ
constexpr std::size_t kPolished = 3;   // answers of one count that are worth fitting to all points
// A mean of points within the tolerance is within it too, but for the bow of the arc between them.
constexpr double kMeansWithin = 1.1;
constexpr double kCanBeLevelled = 2;  // greatest distance over tolerance from which weights may bring it down
constexpr int kLevellings = 10;
constexpr Effort kLevelling{6, 1e-6};
constexpr double kLeastWeight = 0.05;  // factor for a point on the path, lest it drop out

// The next weights after C. Lawson (1961): each times the distance of its point.
void reweigh(std::vector<Sample>& points, const Refined& fit) {
  Follower follower(fit.path);
  double sum = 0;
  for (Sample& point : points) {
    const std::size_t run = follower.run_of(point.at);
    const double distance = std::abs(distance_to(follower.seen(point.at), fit.path.runs[run].curvature));
    point.weight *= kLeastWeight + distance / fit.blocks.greatest;
    sum += point.weight;
  }
  for (Sample& point : points) point.weight *= static_cast<double>(points.size()) / sum;
}

// Least squares with weights that bring the greatest distance down to the tolerance, if they do.
std::optional<Found> levelled(const Problem& problem, Refined fit) {
  std::vector<Sample> points = problem.points;
  for (int round = 0; round < kLevellings; ++round) {
    reweigh(points, fit);
    fit = refined(fit.path, points, problem.ties, {}, kLevelling);
    if (fit.sound() && fit.blocks.greatest <= problem.tolerance)
      return Found{std::move(fit), std::move(points)};
  }
  return {};
}

}  // namespace

void Answers::try_from(const Path& start) {
  Refined fit = refined(start, problem_->means, problem_->ties, {}, kSketch);
  if (!fit.valid) return;
  const double squares = fit.blocks.squares;
  for (const Refined& other : found_)
    if (std::abs(other.blocks.squares - squares) <= kSameSquares * squares) return;
  const auto less = [](const Refined& a, const Refined& b) { return a.blocks.squares < b.blocks.squares; };
  found_.insert(std::upper_bound(found_.begin(), found_.end(), fit, less), std::move(fit));
}

std::optional<Found> Answers::within() const {
  const double tolerance = problem_->tolerance;
  const double reach = problem_->levelled ? kCanBeLevelled : 1;
  for (std::size_t i = 0; i < std::min(found_.size(), kPolished); ++i) {
    if (found_[i].blocks.greatest > kMeansWithin * reach * tolerance) continue;
    Refined fit = polished(*problem_, found_[i].path);
    if (!fit.sound() || fit.blocks.greatest > reach * tolerance) continue;
    if (fit.blocks.greatest <= tolerance) return Found{std::move(fit), problem_->points};
    if (i > 0) continue;
    if (auto level = levelled(*problem_, std::move(fit))) return level;
  }
  return {};
}

Refined polished(const Problem& problem, const Path& path) {
  const Refined near = refined(path, problem.means, problem.ties, {}, kPolish);
  return refined(near.path, problem.points, problem.ties, {}, kPolishAll);
}

}  // namespace lamwright::fitting
