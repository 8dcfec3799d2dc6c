#include "kernel/mechanics/best_pull.hpp"

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
  const double enough = 1e-11 * (to - from);
  while (to - from > enough) {
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

}  // namespace

PullChoice pull_choice(const Profile& level, double axis, double at) {
  const Profile line = pull_upright(level, axis);
  const Seating seating = seat({line, at, chord(line), 1});
  return {axis, at, seating.least(), seating.mean(), seating.greatest()};
}

PullChoice best_position(const Profile& level, double axis) {
  const Profile upright = pull_upright(level, axis), line = pull_upright(level, 0);
  const AnyPull pulls(line);
  const auto linear = [&](double at) { return pulls.spread(axis, at); };
  if (const auto room = full_contact({upright, 0, 1, 1}); room && room->to > room->from)
    return pull_choice(level, axis, lowest_at(room->from, room->to, linear));
  // Something lifts wherever the pull goes, and a bed without tension may have several valleys: looked for
  // between the neighbours of the best of some places.
  constexpr int kPlaces = 64;
  const double step = chord(level) / kPlaces;
  const auto spread = [&](double at) { return pull_choice(level, axis, at).spread(); };
  double best = 0, least = INFINITY;
  for (int i = -kPlaces / 2; i <= kPlaces / 2; ++i)
    if (const double here = spread(i * step); here < least) {
      least = here;
      best = i * step;
    }
  return pull_choice(level, axis, lowest_at(best - step, best + step, spread));
}

std::optional<PullChoice> best_pull(const Profile& level, double from, double to) {
  const Profile line = pull_upright(level, 0);
  const AnyPull pulls(line);
  if (solve(pulls.all.second, {0, 1, 0}).rank < 3) return std::nullopt;
  return best_position(
      level, lowest_at(from, to, [&](double axis) { return pulls.spread(axis, pulls.best_at(axis)); }));
}

}  // namespace lamwright
