#include "kernel/profile/fit/measured.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::fitting {
namespace {

constexpr double kRefused = 1.5;        // noises below which a tolerance is no tolerance
constexpr double kStrayNoises = 4.5;    // noises beyond which a single point is suspect
constexpr double kLikely = 0.99;        // probability that noise alone keeps a tolerance that stands
constexpr double kSure = 0.999;         // the same for one that is widened
constexpr std::size_t kToldNoise = 20;  // points from which on an estimated noise may move the tolerance

void check(const FitSpec& spec) {
  if (!std::isfinite(spec.tolerance) || spec.tolerance <= 0)
    throw geometry_error("tolerance", "is " + number(spec.tolerance) + "; it has to be more than 0",
                         "give the distance that points may lie off, 0.5 say");
  if (spec.noise && (!std::isfinite(*spec.noise) || *spec.noise < 0))
    throw geometry_error("noise", "is " + number(*spec.noise) + "; it has to be 0 or more",
                         "leave it out to have it estimated");
  if (spec.kind == FitKind::arcs && spec.arcs == 0)
    throw geometry_error("fit", "asks for 0 arcs", "ask for at least one");
}

std::size_t least_points(const FitSpec& spec) {
  if (spec.kind == FitKind::runs) return 2;
  return spec.kind == FitKind::arc ? 3 : 2 * spec.arcs + 1;
}

void check_count(const FitSpec& spec, const CleanPoints& points) {
  const std::size_t least = least_points(spec), count = points.at.size();
  if (count >= least) return;
  const std::string what = spec.kind == FitKind::runs ? "a line needs "
                           : least == 3               ? "an arc needs "
                                        : counted(static_cast<long>(spec.arcs), "arc") + " need ";
  throw geometry_error("points",
                       "only " + std::to_string(count) + (points.merged > 0 ? " that differ" : "") + "; " +
                           what + std::to_string(least),
                       "measure more points along the curve");
}

// What noise alone keeps, nearly surely.
double allowed_by(double sigma, const CleanPoints& points) {
  return sigma * greatest_of(points.at.size(), kSure);
}

// A known end belongs to the points.
void check_end(const char* name, const std::optional<KnownEnd>& end, const Vec2& measured, const Vec2& next,
               double tolerance) {
  if (!end) return;
  const double off = (end->point - measured).norm(),
               most = std::max(10 * tolerance, 2 * (next - measured).norm());
  if (off > most)
    throw geometry_error(name, "lies " + number(off) + " from the point measured there",
                         "give a point within " + number(most) + " of it, or leave it out");
}

void check_tolerance(const FitSpec& spec, const Measured& measured) {
  const double sigma = measured.noise.sigma;
  if (spec.kind != FitKind::arc && measured.told && spec.tolerance < kRefused * sigma)
    throw geometry_error("tolerance",
                         number(spec.tolerance) + " is less than " + number(kRefused) +
                             " times the noise of the points, " + number(sigma, 3),
                         "give at least " + number(tenth_above(allowed_by(sigma, measured.points))) +
                             ", which such points keep within, or measure more finely");
}

}  // namespace

double kept_tolerance(const FitSpec& spec, const Measured& measured, double sigma) {
  if (spec.kind == FitKind::arc || !measured.told) return spec.tolerance;
  if (spec.tolerance >= sigma * greatest_of(measured.points.at.size(), kLikely)) return spec.tolerance;
  return std::max(spec.tolerance, allowed_by(sigma, measured.points));
}

Measured measured(const FitSpec& spec) {
  check(spec);
  Measured out{cleaned(spec.points), {}, false, 0, {}};
  check_count(spec, out.points);
  out.noise = noise_of(out.points.at);
  if (spec.noise) out.noise.sigma = *spec.noise;
  out.told = spec.noise || out.points.at.size() >= kToldNoise;
  out.strays = strays(out.points.at, out.noise, spec.tolerance / 4);
  check_end("start", spec.start, out.points.at.front(), out.points.at[1], spec.tolerance);
  check_end("end", spec.end, out.points.at.back(), out.points.at[out.points.at.size() - 2], spec.tolerance);
  check_one_way(out.points, out.noise, out.strays);
  check_tolerance(spec, out);
  out.tolerance = kept_tolerance(spec, out, out.noise.sigma);
  return out;
}

double stray_limit(const Measured& measured) {
  const double noises = std::max(kStrayNoises, greatest_of(measured.points.at.size(), kSure));
  return std::max(noises * measured.noise.sigma, measured.tolerance / 2);
}

std::vector<Vec2> without(const std::vector<Vec2>& points, const std::vector<std::size_t>& left_out) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (!std::binary_search(left_out.begin(), left_out.end(), i)) out.push_back(points[i]);
  return out;
}

}  // namespace lamwright::fitting
