// What noisy samples can tell of a profile at best: the Cramer-Rao bound of its radii, from the signed
// distances of the samples by numerical differentiation. Knows nothing of how a fit is found.
#pragma once
#include <Eigen/Dense>
#include <cmath>
#include <vector>

#include "kernel/profile/profile.hpp"

namespace lamwright::test {

// The first and the last run carried on, so that no sample lies beyond an end.
inline Profile carried_on(const Profile& profile, double by) {
  std::vector<Run> runs = profile.runs();
  const Pose start = walked(profile.start(), runs.front().curvature, -by);
  runs.front().length += by;
  runs.back().length += by;
  return {start, std::move(runs)};
}

// Positive on the left of travel; for points abreast of the profile.
inline double signed_distance(const Profile& profile, const Vec2& point) {
  const Pose foot = profile.at(profile.nearest(point).station);
  return (point - foot.point).dot(foot.normal());
}

// What a fit may change about a profile of given kinds of run: the shift square to its start, the heading
// there, the lengths of all runs but the last, the curvatures of the bends. Lines stay lines.
class Unknowns {
 public:
  explicit Unknowns(Profile about) : about_(std::move(about)) {
    for (std::size_t i = 0; i < about_.runs().size(); ++i)
      if (!about_.runs()[i].straight()) bends_.push_back(i);
  }

  const Profile& about() const { return about_; }
  const std::vector<std::size_t>& bends() const { return bends_; }  // runs whose curvature is unknown
  Eigen::Index first_curvature() const { return Eigen::Index(about_.runs().size()) + 1; }
  Eigen::Index count() const { return first_curvature() + Eigen::Index(bends_.size()); }

  Profile changed(const Eigen::VectorXd& by) const {
    std::vector<Run> runs = about_.runs();
    for (std::size_t i = 0; i + 1 < runs.size(); ++i) runs[i].length += by[Eigen::Index(i) + 2];
    for (std::size_t i = 0; i < bends_.size(); ++i)
      runs[bends_[i]].curvature += by[first_curvature() + Eigen::Index(i)];
    const Pose& start = about_.start();
    return {{start.point + by[0] * start.normal(), start.heading + by[1]}, std::move(runs)};
  }

  // A change of each unknown alone that moves no point by much more than `move`.
  Eigen::VectorXd steps(double move) const {
    Eigen::VectorXd out = Eigen::VectorXd::Constant(count(), move);
    out[1] = move / about_.girth();
    out.tail(Eigen::Index(bends_.size())).setConstant(move / (about_.girth() * about_.girth()));
    return out;
  }

 private:
  Profile about_;
  std::vector<std::size_t> bends_;
};

// How far the ends are carried on; farther than any sample lies beyond them.
inline constexpr double kCarriedOn = 40;

inline Eigen::VectorXd distances(const Profile& profile, const std::vector<Vec2>& points) {
  const Profile whole = carried_on(profile, kCarriedOn);
  Eigen::VectorXd out(Eigen::Index(points.size()));
  for (std::size_t i = 0; i < points.size(); ++i) out[Eigen::Index(i)] = signed_distance(whole, points[i]);
  return out;
}

// Of each signed distance by each unknown, by central differences. The foot of a point also moves along the
// profile, which changes the distance to second order only: the foot's station is held. Points of the profile
// are exact to 1e-12 and a step moves them by a thousandth, so a derivative is good to 1e-8.
inline Eigen::MatrixXd derivatives(const Unknowns& unknowns, const std::vector<Vec2>& points) {
  const Profile whole = carried_on(unknowns.about(), kCarriedOn);
  std::vector<double> stations;
  for (const Vec2& point : points) stations.push_back(whole.nearest(point).station);
  const Eigen::VectorXd steps = unknowns.steps(1e-3);
  Eigen::MatrixXd out(Eigen::Index(points.size()), unknowns.count());
  for (Eigen::Index j = 0; j < unknowns.count(); ++j) {
    const Eigen::VectorXd by = steps[j] * Eigen::VectorXd::Unit(unknowns.count(), j);
    const Profile more = carried_on(unknowns.changed(by), kCarriedOn);
    const Profile less = carried_on(unknowns.changed(-by), kCarriedOn);
    for (std::size_t i = 0; i < points.size(); ++i) {
      const Vec2 moved = more.point(stations[i]) - less.point(stations[i]);
      out(Eigen::Index(i), j) = -moved.dot(whole.at(stations[i]).normal()) / (2 * steps[j]);
    }
  }
  return out;
}

// The least standard deviation that an unbiased fit through these samples can have in the radius of each run;
// 0 for a line.
inline std::vector<double> radius_bounds(const Profile& truth, const std::vector<Vec2>& samples,
                                         double noise) {
  const Unknowns unknowns(truth);
  const Eigen::VectorXd steps = unknowns.steps(1);
  const Eigen::MatrixXd scaled = derivatives(unknowns, samples) * steps.asDiagonal();
  const Eigen::MatrixXd inverse = (scaled.transpose() * scaled)
                                      .ldlt()
                                      .solve(Eigen::MatrixXd::Identity(unknowns.count(), unknowns.count()));
  std::vector<double> out(truth.runs().size(), 0.0);
  for (std::size_t i = 0; i < unknowns.bends().size(); ++i) {
    const Eigen::Index at = unknowns.first_curvature() + Eigen::Index(i);
    const double k = truth.runs()[unknowns.bends()[i]].curvature;
    out[unknowns.bends()[i]] = noise * std::sqrt(inverse(at, at)) * steps[at] / (k * k);
  }
  return out;
}

}  // namespace lamwright::test
