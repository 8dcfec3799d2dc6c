#include "kernel/profile/fit/step.hpp"

#include "kernel/profile/fit/samples.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::fitting;

namespace {

// A pose in the frame of another: along, across, turned.
Eigen::Vector3d in_frame(const Pose& frame, const Pose& pose) {
  const Seen seen = seen_from(frame, frame.tangent(), pose.point);
  return {seen.ahead, seen.left, pose.heading - frame.heading};
}

// A path changed by one of its unknowns: offset, heading, curvatures, lengths but the last.
Path changed(Path path, std::size_t unknown, double by) {
  const std::size_t n = path.runs.size();
  if (unknown == 0)
    path.start.point += by * path.start.normal();
  else if (unknown == 1)
    path.start.heading += by;
  else if (unknown < 2 + n)
    path.runs[unknown - 2].curvature += by;
  else
    path.runs[unknown - 2 - n].length += by;
  return path;
}

double step_of(std::size_t unknown, std::size_t runs) {
  return unknown == 0 ? 1e-4 : unknown == 1 ? 1e-6 : unknown < 2 + runs ? 1e-9 : 1e-4;
}

// Residuals and their derivatives by differences, dense. Points square to a joint may change runs: none is
// near one here.
Eigen::MatrixXd slopes(const Path& path, const std::vector<Vec2>& points) {
  const std::size_t n = path.runs.size(), unknowns = 2 * n + 1;
  Eigen::MatrixXd out(points.size(), unknowns);
  for (std::size_t u = 0; u < unknowns; ++u) {
    const double h = step_of(u, n);
    const auto more = distances(changed(path, u, h), points), less = distances(changed(path, u, -h), points);
    for (std::size_t i = 0; i < points.size(); ++i) out(i, u) = (more[i] - less[i]) / (2 * h);
  }
  return out;
}

struct Linear {
  Path path;
  std::vector<Vec2> points;
  Blocks blocks;
  Eigen::MatrixXd j;
  Eigen::VectorXd residual;
};

Linear linear() {
  const Profile profile =
      from_origin({straight(153), bend(40, 420), straight(127), bend(-35, 600), straight(204)});
  Linear out{{profile.start(), profile.runs()}, noisy(profile, 5), {}, {}, {}};
  out.blocks = blocks_of(out.path, singles(out.points));
  out.j = slopes(out.path, out.points);
  const auto off = distances(out.path, out.points);
  out.residual = Eigen::Map<const Eigen::VectorXd>(off.data(), Eigen::Index(off.size()));
  return out;
}

Eigen::VectorXd flat(const Step& step) {
  const std::size_t n = step.length.size();
  Eigen::VectorXd out(2 * n + 1);
  out[0] = step.offset;
  out[1] = step.heading;
  for (std::size_t i = 0; i < n; ++i) out[2 + i] = step.curvature[i];
  for (std::size_t i = 0; i + 1 < n; ++i) out[2 + n + i] = step.length[i];
  return out;
}

std::vector<Eigen::Vector4d> gradients(const Blocks& blocks) {
  std::vector<Eigen::Vector4d> out;
  for (const RunBlock& run : blocks.runs) out.push_back(run.g);
  return out;
}

}  // namespace

TEST_CASE("The end of a run moves with its start, curvature and length as differences say") {
  const Pose pose{{30, -20}, 0.4};
  int seen = 0;
  for (const Run& run : {straight(120), bend(40, 300), bend(-65, 250), bend(1, 9000), bend(200, 80)}) {
    const auto carried = carried_on(run);
    const Pose end = walked(pose, run.curvature, run.length);
    for (int u = 0; u < 5; ++u) {
      CAPTURE(run.length, run.curvature, u);
      const double h = u == 3 ? 1e-8 : u == 2 ? 1e-6 : 1e-4;
      const auto moved = [&](double by) {
        Pose start = pose;
        Run other = run;
        if (u == 0) start.point += by * pose.tangent();
        if (u == 1) start.point += by * pose.normal();
        if (u == 2) start.heading += by;
        if (u == 3) other.curvature += by;
        if (u == 4) other.length += by;
        return in_frame(end, walked(start, other.curvature, other.length));
      };
      const Eigen::Vector3d slope = (moved(h) - moved(-h)) / (2 * h);
      CHECK((carried.col(u) - slope).norm() <= 1e-5 * slope.norm() + 1e-6);
      ++seen;
    }
  }
  CHECK(seen == 25);
}

TEST_CASE("The step from run to run is that of the dense normal equations") {
  const Linear problem = linear();
  const ChainSolver solver(problem.path, problem.blocks, {}, 0);
  const Eigen::VectorXd dense = -problem.j.colPivHouseholderQr().solve(problem.residual);
  const Eigen::VectorXd chained = flat(solver.solve(gradients(problem.blocks)));
  // Differences leave 1e-6 of a slope.
  for (Eigen::Index i = 0; i < dense.size(); ++i) {
    CAPTURE(i);
    CHECK(chained[i] == within(dense[i], 1e-4 * std::abs(dense[i]) + 1e-9));
  }
}

TEST_CASE("Variances are the diagonal of the inverse normal matrix") {
  const Linear problem = linear();
  const std::size_t n = problem.path.runs.size();
  const Spread spread = ChainSolver(problem.path, problem.blocks, {}, 0).spread();
  const Eigen::MatrixXd inverse = (problem.j.transpose() * problem.j).inverse();
  for (std::size_t i = 0; i < n; ++i) {
    CAPTURE(i);
    const double curvature = inverse(2 + i, 2 + i);
    CHECK(spread.curvature[i] == within(curvature, 1e-3 * curvature));
    if (i + 1 == n) continue;
    const double length = inverse(2 + n + i, 2 + n + i);
    CHECK(spread.length[i] == within(length, 1e-3 * length));
  }
  CHECK(spread.length[n - 1] > 0);
}

TEST_CASE("What is held stays") {
  const Linear problem = linear();
  Freedom freedom{false, false, {true, false, true, false, false}};
  const Step step = ChainSolver(problem.path, problem.blocks, freedom, 0).solve(gradients(problem.blocks));
  CHECK(step.offset == 0);
  CHECK(step.heading == 0);
  CHECK(step.curvature[0] == 0);
  CHECK(step.curvature[2] == 0);
  CHECK(step.curvature[1] != 0);
  CHECK(step.length.back() == 0);
}
