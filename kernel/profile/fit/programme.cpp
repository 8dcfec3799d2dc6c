#include "kernel/profile/fit/programme.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/sinc.hpp"
#include "shared/units.hpp"

namespace lamwright::fitting {
namespace {

using Eigen::Matrix2d;
using Eigen::Matrix3d;
using Eigen::Vector2d;
using Eigen::Vector3d;

// At a joint the state of a chain is how far it lies to the left of the frame and its slope against it. The
// value of a chain is q . h q - 2 g . q + squares.
struct Chain {
  Matrix2d h = Matrix2d::Zero();
  Vector2d g = Vector2d::Zero();
  double squares = 0;
  double least = 0;
  std::size_t joint = 0;     // where its last run begins
  std::size_t position = 0;  // of the chain up to there, among those kept

  Vector2d best() const;
};

Vector2d Chain::best() const {
  const double det = h(0, 0) * h(1, 1) - h(0, 1) * h(0, 1);
  if (det <= 1e-12 * h(0, 0) * h(1, 1)) return {0, 0};
  return Vector2d{h(1, 1) * g[0] - h(0, 1) * g[1], h(0, 0) * g[1] - h(0, 1) * g[0]} / det;
}

// A run x = (a, b, c) between two joints, in the frame of the far one, where its state is (a, b); that at the
// near joint is m x - d.
struct Link {
  Stretch3 stretch;
  Eigen::Matrix<double, 2, 3> m;
  Vector2d d;
};

Link link(const Moments& moments, const Grid& grid, std::size_t near, std::size_t far) {
  const Frame &frame = grid.frames[far], &joint = grid.frames[near];
  const Vec2 r = joint.at - frame.at;
  Link out{moments.stretch(grid.at[near], grid.at[far], frame), {}, {}};
  out.m << 1, r.dot(frame.along), r.squaredNorm() / 2, 0, joint.along.dot(frame.along), joint.along.dot(r);
  out.d = {r.dot(frame.across()), joint.along.dot(frame.across())};
  return out;
}

// The run and the chain before it as one quadratic form in x.
Stretch3 joined(const Chain& chain, const Link& link) {
  const Vector2d pushed = chain.h * link.d;
  return {link.stretch.h + link.m.transpose() * chain.h * link.m,
          link.stretch.g + link.m.transpose() * (pushed + chain.g),
          link.stretch.squares + chain.squares + link.d.dot(pushed + 2 * chain.g)};
}

// The chain carried on over one more run, whose curvature c is chosen for the best.
Chain extended(const Chain& chain, const Link& link) {
  const Stretch3 all = joined(chain, link);
  const Vector2d mixed = all.h.topRightCorner<2, 1>();
  const double own = std::max(all.h(2, 2), 1e-30);
  Chain out;
  out.h = all.h.topLeftCorner<2, 2>() - mixed * mixed.transpose() / own;
  out.g = all.g.head<2>() - mixed * all.g[2] / own;
  out.squares = all.squares - all.g[2] * all.g[2] / own;
  out.least = std::max(0.0, out.squares - out.g.dot(out.best()));
  return out;
}

// Keeps the best chains in order.
void keep_best(std::vector<Chain>& kept, const Chain& chain, std::size_t keep) {
  if (kept.size() == keep && chain.least >= kept.back().least) return;
  const auto less = [](const Chain& a, const Chain& b) { return a.least < b.least; };
  if (kept.size() == keep) kept.pop_back();
  kept.insert(std::upper_bound(kept.begin(), kept.end(), chain, less), chain);
}

// table[joint][n]: the best chains of n runs that end at the joint.
using Table = std::vector<std::vector<std::vector<Chain>>>;

// Counts of runs worth following at a joint: up to the least by two thirds and a few more.
std::size_t most_at(const std::vector<std::vector<Chain>>& row) {
  std::size_t least = 0;
  while (least < row.size() && row[least].empty()) ++least;
  return std::min(row.size() - 1, least + 2 * least / 3 + 9);
}

// Carries every chain that ends at a joint on over all runs from there.
void carry_on(Table& table, const Moments& moments, const Grid& grid, double bound, std::size_t near,
              std::size_t keep) {
  const std::size_t most = std::min(table[near].size() - 1, most_at(table[near]) + 1);
  for (std::size_t far = near + 1; far < grid.at.size(); ++far) {
    const Link run = link(moments, grid, near, far);
    const double weight = moments.weight(grid.at[near], grid.at[far]);
    if (grid.at[far] - grid.at[near] > 3 && run.stretch.least() > bound * bound * weight) break;
    const double allowed = bound * bound * moments.weight(0, grid.at[far]);
    for (std::size_t n = 1; n <= most; ++n) {
      for (std::size_t p = 0; p < table[near][n - 1].size(); ++p) {
        Chain next = extended(table[near][n - 1][p], run);
        next.joint = near;
        next.position = p;
        if (next.least <= allowed) keep_best(table[far][n], next, keep);
      }
    }
  }
}

Pose pose_of(const Frame& frame, const Vector2d& state) {
  const double heading = std::atan2(frame.along.y(), frame.along.x());
  return {frame.at + state[0] * frame.across(), heading + std::atan(state[1])};
}

// The run between two poses that nearly are on one arc of about the given turn.
Run run_between(const Pose& from, const Pose& to, double about) {
  double turn = std::remainder(from.heading - to.heading, 2 * kPi);
  turn += 2 * kPi * std::round((about - turn) / (2 * kPi));
  const double length = std::max((to.point - from.point).norm() / sinc(turn / 2), 1e-6);
  return {length, turn / length};
}

double way(const Grid& grid, std::size_t near, std::size_t far) {
  double sum = 0;
  for (std::size_t j = near; j < far; ++j) sum += (grid.frames[j + 1].at - grid.frames[j].at).norm();
  return sum;
}

Path traced(const Table& table, const Moments& moments, const Grid& grid, std::size_t n,
            std::size_t position) {
  std::size_t joint = grid.at.size() - 1;
  Vector2d state = table[joint][n][position].best();
  Path path{pose_of(grid.frames[joint], state), {}};
  for (; n > 0; --n) {
    const Chain& chain = table[joint][n][position];
    const Link run = link(moments, grid, chain.joint, joint);
    const Stretch3 all = joined(table[chain.joint][n - 1][chain.position], run);
    const double c = (all.g[2] - all.h.row(2).head<2>().dot(state)) / std::max(all.h(2, 2), 1e-30);
    state = run.m * Vector3d{state[0], state[1], c} - run.d;
    const double about = -c * way(grid, chain.joint, joint);
    joint = chain.joint;
    position = chain.position;
    const Pose before = pose_of(grid.frames[joint], state);
    path.runs.push_back(run_between(before, path.start, about));
    path.start = before;
  }
  std::reverse(path.runs.begin(), path.runs.end());
  return path;
}

}  // namespace

std::vector<std::vector<Start>> programme(const Moments& moments, const Grid& grid, double bound,
                                          std::size_t most_runs, std::size_t keep) {
  Table table(grid.at.size(), std::vector<std::vector<Chain>>(most_runs + 1));
  table[0][0].push_back({});
  for (std::size_t i = 0; i + 1 < grid.at.size(); ++i) carry_on(table, moments, grid, bound, i, keep);
  std::vector<std::vector<Start>> starts(most_runs + 1);
  for (std::size_t n = 1; n <= most_runs; ++n)
    for (std::size_t p = 0; p < table.back()[n].size(); ++p)
      starts[n].push_back({traced(table, moments, grid, n, p), table.back()[n][p].least});
  return starts;
}

}  // namespace lamwright::fitting
