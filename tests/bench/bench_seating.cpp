// Seating of a two-part mould: closed form on each run beside the plain way, sums over samples of the girth.
#include <Eigen/Dense>

#include "kernel/mechanics/best_pull.hpp"
#include "kernel/mechanics/pull.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"

namespace lamwright::bench {
namespace {

// A wave of crowns and hollows.
Profile wave(int runs) {
  std::vector<Run> list;
  for (int i = 0; i < runs; ++i) list.push_back({150.0 + 10 * (i % 3), (i % 2 == 0 ? 1 : -1) / 300.0});
  return levelled(Profile({}, list));
}

// Greatest pressure from the midpoint rule with `count` samples, in full contact.
double sampled(const Profile& line, int count) {
  const double step = line.girth() / count;
  Eigen::Matrix3d stiffness = Eigen::Matrix3d::Zero();
  std::vector<Eigen::Vector3d> shapes;
  for (int i = 0; i < count; ++i) {
    const Pose pose = line.at((i + 0.5) * step);
    const Vec2 n = pose.normal();
    shapes.push_back({n.x(), n.y(), cross(pose.point, n)});
    stiffness += step * shapes.back() * shapes.back().transpose();
  }
  const Eigen::Vector3d rate = stiffness.ldlt().solve(Eigen::Vector3d(0, chord(line), 0));
  double greatest = 0;
  for (const Eigen::Vector3d& g : shapes) greatest = std::max(greatest, rate.dot(g));
  return greatest;
}

std::vector<std::string> row_of(int runs) {
  const Profile line = pull_upright(wave(runs), 0);
  const SeatingSpec spec{line, 0, chord(line), 1};
  const double exact = seat(spec).greatest();
  int count = 64;
  while (std::abs(sampled(line, count) / exact - 1) > 1e-6 && count < 1 << 22) count *= 2;
  const double closed = fastest(50, [&] { seat(spec); });
  const double samples = fastest(3, [&] { sampled(line, count); });
  const double best = fastest(3, [&] { best_pull(line, -0.3, 0.3); });
  return {std::to_string(runs),  number(closed, 4),           number(samples, 3),
          std::to_string(count), number(samples / closed, 0), number(best, 2)};
}

}  // namespace

void bench_seating() {
  std::vector<std::vector<std::string>> rows{
      {"runs", "closed form ms", "sampled to 1e-6 ms", "samples", "sampled / closed", "best pull ms"}};
  for (const int runs : {4, 16, 64, 256}) rows.push_back(row_of(runs));
  print_table(
      "Seating of an upper mould; closed form, samples for the same six digits, search of the best pull",
      rows);
}

}  // namespace lamwright::bench
