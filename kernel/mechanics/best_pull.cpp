#include "kernel/mechanics/best_pull.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "kernel/mechanics/curved_bed.hpp"
#include "kernel/mechanics/pull.hpp"

namespace lamwright {
namespace {

using namespace curved_bed;

// Golden-section search for the least value of a function that falls, then rises.
template <typename Function>
double lowest_at(double from, double to, Function value) {
  constexpr double kGolden = 0.6180339887498949;
  double a = to - kGolden * (to - from), b = from + kGolden * (to - from);
  double at_a = value(a), at_b = value(b);
  // Each step keeps 0.618 of the range: 48 leave 1e-10 of it, and end however narrow it is.
  constexpr int kSteps = 48;
  for (int step = 0; step < kSteps; ++step) {
    if (at_a < at_b) {
      to = b;
      b = a;
      at_b = at_a;
      a = to - kGolden * (to - from);
      at_a = value(a);
    } else {
      from = a;
      a = b;
      at_a = at_b;
      b = from + kGolden * (to - from);
      at_b = value(b);
    }
  }
  return at_a < at_b ? a : b;
}

// Pressures of a bed that could pull too, over pulls of any axis and position: linear in the load, so that
// their spread has one valley along each. Worked out once for the line as it lies, the pull turned instead.
struct AnyPull {
  Bed bed;
  Moments all;
  Matrix3d compliance;  // load to rate

  explicit AnyPull(Profile&&) = delete;  // the bed keeps a reference
  explicit AnyPull(const Profile& level) : bed(level), all(whole(bed)) {
    for (int i = 0; i < 3; ++i) compliance.col(i) = solve(all.second, Vector3d::Unit(i)).x;
  }

  double spread(double axis, double at) const {
    const Vector3d rate = compliance * Vector3d(std::sin(axis), std::cos(axis), at / bed.chord);
    const Extremes found = extremes(bed, rate);
    const double mean = rate.dot(all.first) / bed.line.girth();
    // Without a positive mean there is no pressure to compare: a slope that leads back to the middle.
    return mean > 0 ? (found.greatest - found.least) / mean : 1e12 * (1 + std::abs(at) / bed.chord);
  }
  double best_at(double axis) const {
    return lowest_at(-bed.chord / 2, bed.chord / 2, [&](double at) { return spread(axis, at); });
  }
};

constexpr int kPlaces = 100, kAxes = 40;
constexpr double kInside = 1e-4;  // of the range in which nothing lifts

// The positions of an upright pull that pressures on the bed balance: every pair of pushes that lean to
// different sides has its resultant upright somewhere, and these places span the range. Pushes are taken at
// places along each run, so that the range is short of the true one by what lies between two of them.
std::optional<Stretch> balanced_positions(const Bed& bed) {
  constexpr int kPushes = 32;  // to a run
  std::vector<Vector3d> pushes;
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run)
    for (int i = 0; i <= kPushes; ++i)
      pushes.push_back(
          bed.shape(pose_on(bed, run, bed.line.station(run) + bed.line.runs()[run].length * i / kPushes)));
  Stretch range{INFINITY, -INFINITY};
  for (const Vector3d& a : pushes)
    for (const Vector3d& b : pushes) {
      if (a.x() < 0 || b.x() > 0) continue;
      const Vector3d sum = a.x() == b.x() ? a : Vector3d(a.x() * b - b.x() * a);
      if (sum.y() <= 0) continue;
      range.from = std::min(range.from, bed.chord * sum.z() / sum.y());
      range.to = std::max(range.to, bed.chord * sum.z() / sum.y());
    }
  if (range.from > range.to) return std::nullopt;
  return range;
}

// The most even of some choices between two places, looked for further between the neighbours of the best.
template <typename Choice>
PullChoice best_between(double from, double to, int places, Choice choice) {
  const double step = (to - from) / places;
  double place = from;
  PullChoice best = choice(from);
  for (int i = 1; i <= places; ++i)
    if (const PullChoice here = choice(from + i * step); more_even(here, best)) {
      best = here;
      place = from + i * step;
    }
  // One that lifts is far worse than any that does not.
  constexpr double kLifts = 1e9;
  const auto value = [&](double at) {
    const PullChoice here = choice(at);
    return here.spread() + (here.presses() ? 0 : kLifts);
  };
  const PullChoice found = choice(lowest_at(std::max(from, place - step), std::min(to, place + step), value));
  return more_even(found, best) ? found : best;
}

}  // namespace

PullChoice pull_choice(const Profile& level, double axis, double at) {
  const Profile line = pull_upright(level, axis);
  const Seating seating = seat({line, at, chord(line), 1});
  return {axis, at, seating.least(), seating.mean(), seating.greatest()};
}

PullChoice best_position(const Profile& level, double axis) {
  const Profile upright = pull_upright(level, axis), line = pull_upright(level, 0);
  if (const auto room = full_contact({upright, 0, 1, 1})) {
    const AnyPull pulls(line);
    const double inside = kInside * (room->to - room->from);
    const auto linear = [&](double at) { return pulls.spread(axis, at); };
    const double at = lowest_at(room->from + inside, room->to - inside, linear);
    return pull_choice(level, axis, room->to > room->from ? at : room->from);
  }
  // Something lifts wherever the pull goes, and a bed without tension may have several valleys.
  const auto range = balanced_positions(Bed(upright));
  if (!range) return pull_choice(level, axis, 0);
  const auto at = [&](double position) { return pull_choice(level, axis, position); };
  return best_between(range->from, range->to, kPlaces, at);
}

bool more_even(const PullChoice& a, const PullChoice& b) {
  return a.presses() != b.presses() ? a.presses() : a.spread() < b.spread();
}

std::optional<PullChoice> best_pull(const Profile& level, double from, double to) {
  const Profile line = pull_upright(level, 0);
  const AnyPull pulls(line);
  if (solve(pulls.all.second, {0, 1, 0}).rank < 3) return std::nullopt;
  const PullChoice best = best_position(
      level, lowest_at(from, to, [&](double axis) { return pulls.spread(axis, pulls.best_at(axis)); }));
  if (best.presses()) return best;
  // A bed that could pull leads to an axis under which the real one lifts: other axes are tried without.
  const auto on = [&](double axis) { return best_position(level, axis); };
  const PullChoice other = best_between(from, to, kAxes, on);
  return more_even(other, best) ? other : best;
}

}  // namespace lamwright
