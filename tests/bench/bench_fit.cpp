// Fits at growing numbers of points and of runs, beside the plain way: one dense search over all points with
// numerical derivatives, begun at the true profile.
#include <optional>

#include "shared/number.hpp"
#include "tests/bench/bench.hpp"
#include "tests/support/fits.hpp"

namespace lamwright::bench {
namespace {

constexpr std::size_t kMostPlain = 10000;

std::vector<Vec2> points_on(const Profile& profile, std::size_t count) {
  test::Dice dice(count);
  return test::sampled(profile, profile.girth() / double(count - 1), test::kRunNoise, dice);
}

// Bends of either sense with lines between, so that the whole stays about level.
Profile wave(int runs) {
  std::vector<Run> list;
  for (int i = 0; i < runs; ++i)
    list.push_back(i % 2 == 0 ? test::straight(120 + 10 * (i % 3))
                              : test::bend(i % 4 == 1 ? 40 : -40, 350 + 20 * (i % 5)));
  return {{{0, 0}, 0.35}, std::move(list)};
}

std::string milliseconds(double ms) { return number(ms, ms < 10 ? 2 : 0); }

// A fit that finds other runs is no fit; it shows.
std::string found(const FitResult& result, const Profile& truth) {
  return std::to_string(result.profile.runs().size()) +
         (test::same_kinds(result.profile, truth) ? "" : " WRONG");
}

std::vector<std::string> row(const Profile& truth, std::size_t count, double& before) {
  const std::vector<Vec2> points = points_on(truth, count);
  const FitSpec spec = test::through(points, 1);
  std::optional<FitResult> result;
  const double ms = fastest(count > 20000 ? 1 : 3, [&] { result = fit(spec); });
  std::vector<std::string> cells{std::to_string(count),
                                 std::to_string(truth.runs().size()),
                                 found(*result, truth),
                                 milliseconds(ms),
                                 number(1000 * ms / double(count), 2),
                                 before > 0 ? number(ms / before, 1) : "-",
                                 "-",
                                 "-",
                                 "-"};
  before = ms;
  if (count > kMostPlain) return cells;
  test::PlainFit plain{truth, 0, 0};
  const double slow = fastest(1, [&] { plain = test::plain_fit(truth, points); });
  cells[6] = milliseconds(slow);
  cells[7] = number(slow / ms, 1);
  cells[8] = number(result->rms * result->rms * double(count) / plain.sum_of_squares, 6);
  return cells;
}

const std::vector<std::string> kHead{"points",   "runs",         "found",
                                     "fit ms",   "us per point", "growth",
                                     "plain ms", "plain / fit",  "squares, fit / plain"};

}  // namespace

void bench_fit() {
  std::vector<std::vector<std::string>> rows{kHead};
  double before = 0;
  for (const std::size_t count : {1000u, 10000u, 100000u, 400000u})
    rows.push_back(row(wave(7), count, before));
  print_table("Runs through growing numbers of noisy points; the plain way begins at the answer", rows);
  rows = {kHead};
  before = 0;
  for (const int runs : {5, 9, 17, 33}) rows.push_back(row(wave(runs), std::size_t(runs) * 200, before));
  print_table("Runs through points of growing numbers of runs", rows);
}

}  // namespace lamwright::bench
