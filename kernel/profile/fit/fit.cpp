#include "kernel/profile/fit/fit.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/fit/circle.hpp"
#include "kernel/profile/fit/costly.hpp"
#include "kernel/profile/fit/outcome.hpp"
#include "kernel/profile/fit/samples.hpp"
#include "kernel/profile/fit/search.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

using namespace fitting;

constexpr double kMostNoises = 4;  // a tolerance of more stands, whatever the residuals tell
constexpr double kFreedom = 5;     // points beyond the unknowns from which residuals tell a noise

// One arc about the geometric circle, walked the way of the points.
Path arc_path(const std::vector<Vec2>& points) {
  const auto circle = geometric_circle(points);
  if (!circle) throw geometry_error("points", "lie on one line, which is no arc", "leave fit = \"arc\" out");
  double turn = 0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const Vec2 a = points[i] - circle->centre, b = points[i + 1] - circle->centre;
    turn += std::atan2(cross(a, b), a.dot(b));
  }
  const double k = (turn > 0 ? -1 : 1) / circle->radius;
  const Vec2 outward = (points.front() - circle->centre).normalized();
  const Vec2 along = turn > 0 ? left_of(outward) : Vec2(-left_of(outward));
  return {{circle->centre + circle->radius * outward, std::atan2(along.y(), along.x())},
          {{std::max(std::abs(turn), 1e-9) * circle->radius, k}}};
}

std::optional<Found> path_through(const FitSpec& spec, const Problem& problem,
                                  const std::vector<Vec2>& points) {
  if (spec.kind == FitKind::arc) return from_start(problem, arc_path(points));
  if (spec.kind == FitKind::arcs) return exactly(problem, spec.arcs);
  return fewest(problem);
}

[[noreturn]] void refuse(const FitSpec& spec, const Measured& measured) {
  const std::string points = std::to_string(measured.points.at.size()) + " points";
  if (spec.kind != FitKind::runs)
    throw geometry_error(
        "points", "no " + counted(static_cast<long>(spec.arcs), "arc") + " can be told from these " + points,
        "ask for fewer arcs, or let fit = \"runs\" find how many");
  throw geometry_error("points",
                       "no tangent lines and arcs that " + points + " can tell come within " +
                           number(measured.tolerance) + " of all",
                       "raise the tolerance, or measure more points where the curve bends");
}

std::optional<Found> tried(const FitSpec& spec, const Measured& measured,
                           const std::vector<std::size_t>& left_out) {
  std::vector<Vec2> points = without(measured.points.at, left_out);
  if (spec.kind == FitKind::runs) points = with_chords(points);
  Problem whole = problem(points, {spec.start, spec.end}, measured.tolerance, measured.noise.sigma);
  whole.levelled = spec.noise && *spec.noise == 0;
  return path_through(spec, whole, points);
}

// The fit and the points left out, as positions in the clean points.
struct Answer {
  Found found;
  std::vector<std::size_t> left_out;
};

Straightened with_straight_runs(const FitSpec& spec, const Measured& measured, const Found& found) {
  const Problem whole{found.points,         {},   {spec.start, spec.end}, measured.tolerance,
                      measured.noise.sigma, false};
  return straightened(whole, found.fit);
}

// Figures that the path takes: two a run and one, less the curvature of each line.
long unknowns(const FitSpec& spec, const Measured& measured, const Found& found) {
  const Straightened lines = with_straight_runs(spec, measured, found);
  return 2 * long(lines.straight.size()) + 1 - std::count(lines.straight.begin(), lines.straight.end(), true);
}

// An end point lies off a path that is carried on past its neighbour, which tells little: it is wrong only
// when it costs a run of its own.
bool wrong_end(const FitSpec& spec, const Measured& measured, const Found& found, std::size_t i) {
  if (i != 0 && i + 1 != measured.points.at.size()) return true;
  std::vector<std::size_t> others = measured.strays;
  others.erase(std::find(others.begin(), others.end(), i));
  const auto with = tried(spec, measured, others);
  return !with || unknowns(spec, measured, *with) >= unknowns(spec, measured, found) + 2;
}

// Those of some points that lie off a path as strays do.
std::vector<std::size_t> beyond(const Path& path, const Measured& measured,
                                const std::vector<std::size_t>& some) {
  const std::vector<double> off = distances(path, measured.points.at);
  std::vector<std::size_t> out;
  for (const std::size_t i : some)
    if (std::abs(off[i]) > stray_limit(measured)) out.push_back(i);
  return out;
}

// Fitted without the strays first; those that lie well after all are taken back in.
std::optional<Answer> without_strays(const FitSpec& spec, const Measured& measured) {
  auto found = tried(spec, measured, measured.strays);
  if (!found) return {};
  const std::vector<double> off = distances(found->fit.path, measured.points.at);
  std::vector<std::size_t> left_out;
  for (const std::size_t i : measured.strays)
    if (std::abs(off[i]) > stray_limit(measured) && wrong_end(spec, measured, *found, i))
      left_out.push_back(i);
  if (left_out.size() == measured.strays.size()) return Answer{std::move(*found), left_out};
  auto again = tried(spec, measured, left_out);
  if (!again) return {};
  return Answer{std::move(*again), left_out};
}

// Strays that no neighbourhood shows, since several lie near one another, cost runs: those are looked for by
// leaving points out.
Answer answered(const FitSpec& spec, Measured& measured) {
  auto answer = without_strays(spec, measured);
  const auto path_without = [&](const std::vector<std::size_t>& left_out) {
    const auto found = tried(spec, measured, left_out);
    return found ? std::optional(found->fit.path) : std::nullopt;
  };
  if (spec.kind == FitKind::runs && !(spec.noise && *spec.noise == 0)) {
    const std::vector<std::size_t> found =
        costly_points(measured, answer ? std::optional(answer->found.fit.path) : std::nullopt, path_without);
    if (found.size() > measured.strays.size()) {
      measured.strays = found;
      answer = without_strays(spec, measured);
    }
  }
  if (!answer) refuse(spec, measured);
  return std::move(*answer);
}

double freedom(const Refined& fit) {
  return fit.blocks.weight - 2 * static_cast<double>(fit.path.runs.size()) - 1;
}

// Standard deviation that the residuals tell; none when they are too few.
std::optional<double> told_by(const Refined& fit) {
  if (freedom(fit) < kFreedom) return {};
  return std::sqrt(fit.blocks.squares / freedom(fit));
}

// The same from few points or none to spare: a figure to be taken with care.
double scatter(const Refined& fit) { return std::sqrt(fit.blocks.squares / std::max(1.0, freedom(fit))); }

// How much more than estimated before the noise may be, by the chance of few points.
double estimate_reach(std::size_t count) { return 1 + 5 / std::sqrt(static_cast<double>(count)); }

// Noise as the residuals tell it; where they hold more than noise, as estimated before.
double noise_after(const FitSpec& spec, const Measured& measured, const Refined& fit) {
  if (spec.noise) return *spec.noise;
  const double told = told_by(fit).value_or(measured.told ? measured.noise.sigma : scatter(fit));
  const double before = measured.noise.sigma;
  return !measured.told || before == 0 || told < 1.25 * before ? told : before;
}

// When the residuals tell more noise than was estimated, the tolerance may have been too narrow for it: fewer
// runs then are the answer.
Answer with_noise_told(const FitSpec& spec, Measured& measured, Answer answer) {
  const auto told = told_by(answer.found.fit);
  if (spec.noise || spec.kind != FitKind::runs || !measured.told || !told) return answer;
  const double sigma = measured.noise.sigma;
  const double more = std::min(*told, sigma * estimate_reach(measured.points.at.size()));
  Measured again = measured;
  again.noise.sigma = std::max(sigma, more);
  again.tolerance = kept_tolerance(spec, again, again.noise.sigma);
  if (again.tolerance <= measured.tolerance || spec.tolerance > kMostNoises * again.noise.sigma ||
      answer.found.fit.path.runs.size() < 2)
    return answer;
  auto fewer = without_strays(spec, again);
  if (!fewer || fewer->found.fit.path.runs.size() >= answer.found.fit.path.runs.size()) return answer;
  measured = std::move(again);
  return std::move(*fewer);
}

Fitted fitted(const FitSpec& spec, Measured& measured) {
  Answer answer = with_noise_told(spec, measured, answered(spec, measured));
  Found& found = answer.found;
  measured.noise.sigma = noise_after(spec, measured, found.fit);
  if (spec.kind != FitKind::runs) {
    const std::vector<bool> bent(found.fit.path.runs.size(), false);
    return {refined(found.fit.path, found.points, {spec.start, spec.end}, bent, {}), bent,
            std::move(answer.left_out)};
  }
  Straightened lines = with_straight_runs(spec, measured, found);
  // A line may pass through points that the arc in its place left aside.
  std::vector<std::size_t> still = beyond(lines.fit.path, measured, answer.left_out);
  if (still.size() < answer.left_out.size())
    if (const auto again = tried(spec, measured, still)) {
      lines = with_straight_runs(spec, measured, *again);
      answer.left_out = std::move(still);
    }
  return {std::move(lines.fit), std::move(lines.straight), std::move(answer.left_out)};
}

}  // namespace

FitResult fit(const FitSpec& spec) {
  Measured input = measured(spec);
  const Fitted answer = fitted(spec, input);
  return outcome(spec, input, answer, noise_after(spec, input, answer.fit));
}

std::optional<Profile> settled(const Profile& profile, const std::vector<Vec2>& points,
                               const std::optional<KnownEnd>& start, const std::optional<KnownEnd>& end) {
  std::vector<bool> straight;
  for (const Run& run : profile.runs()) straight.push_back(run.straight());
  Path path{profile.start(), profile.runs()};
  if (start) path.start = {start->point, start->heading.value_or(path.start.heading)};
  const Refined out = refined(path, singles(points), {start, end}, straight, {});
  if (!out.sound()) return {};
  return Profile(out.path.start, out.path.runs);
}

}  // namespace lamwright
