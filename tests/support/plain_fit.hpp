// The plain way to the least-squares profile near a given one: Levenberg-Marquardt on all points at once,
// with a dense numerical Jacobian. Slow and simple; tests and the bench hold the fit against it.
#pragma once
#include <algorithm>
#include <optional>

#include "shared/error.hpp"
#include "tests/support/fit_bound.hpp"

namespace lamwright::test {

struct PlainFit {
  Profile profile;
  double sum_of_squares = 0;
  double greatest = 0;  // greatest distance of a point
};

// Nothing where a change leaves no profile to take derivatives of: a length that falls to 0, a full circle.
inline std::optional<Profile> tried(const Unknowns& unknowns, const Eigen::VectorXd& by) {
  try {
    const Profile changed = unknowns.changed(by);
    carried_on(changed, kCarriedOn);
    const auto vanishes = [](const Run& run) { return run.length < 0.01; };
    const std::vector<Run>& runs = changed.runs();
    if (runs.size() == unknowns.about().runs().size() && std::none_of(runs.begin(), runs.end(), vanishes))
      return changed;
  } catch (const Error&) {
    return std::nullopt;
  }
  return std::nullopt;
}

// Keeps the number and the kinds of the runs. Points lie abreast of the start's profile.
inline PlainFit plain_fit(const Profile& start, const std::vector<Vec2>& points, int most_steps = 40) {
  Profile best = start;
  Eigen::VectorXd off = distances(best, points);
  double damping = 1e-4;
  for (int step = 0; step < most_steps && damping < 1e6; ++step) {
    const Unknowns unknowns(best);
    const Eigen::VectorXd scale = unknowns.steps(1);
    const Eigen::MatrixXd slope = derivatives(unknowns, points) * scale.asDiagonal();
    Eigen::MatrixXd normal = slope.transpose() * slope;
    normal.diagonal() *= 1 + damping;
    const Eigen::VectorXd by = scale.cwiseProduct(normal.ldlt().solve(-slope.transpose() * off));
    const auto next = tried(unknowns, by);
    const Eigen::VectorXd left = next ? distances(*next, points) : off;
    const double gain = off.squaredNorm() - left.squaredNorm();
    damping *= gain > 0 ? 0.1 : 10;
    if (gain <= 0) continue;
    best = *next;
    off = left;
    if (gain < 1e-12 * off.squaredNorm()) break;
  }
  return {best, off.squaredNorm(), off.cwiseAbs().maxCoeff()};
}

// Two neighbours made one run of the same turn. Every run is left free to bend.
inline Profile with_one_less(const Profile& profile, std::size_t i) {
  std::vector<Run> runs = profile.runs();
  const double length = runs[i].length + runs[i + 1].length;
  runs[i] = {length, (runs[i].turn() + runs[i + 1].turn()) / length};
  runs.erase(runs.begin() + std::ptrdiff_t(i) + 1);
  for (Run& run : runs)
    if (run.straight()) run.curvature = 1e-9;
  return {profile.start(), std::move(runs)};
}

// Of the best profile found with one run fewer: the greatest distance of a point.
inline double departure_with_one_less(const Profile& profile, const std::vector<Vec2>& points) {
  double least = INFINITY;
  for (std::size_t i = 0; i + 1 < profile.runs().size(); ++i)
    least = std::min(least, plain_fit(with_one_less(profile, i), points, 8).greatest);
  return least;
}

}  // namespace lamwright::test
