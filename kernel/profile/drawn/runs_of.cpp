#include "kernel/profile/drawn/runs_of.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "kernel/profile/drawn/easing.hpp"
#include "kernel/profile/drawn/samples.hpp"
#include "kernel/profile/fit/fit.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr double kTiny = 0.05;               // mm; no saw or router makes such a piece
constexpr double kLeastRadius = 5;           // mm, as for bends that are written down
constexpr std::size_t kFitSamples = 1500;    // of one free stretch
constexpr std::size_t kCheckSamples = 6000;  // of the whole chain

using Chain = std::vector<DrawnPiece>;

// Neighbours that are all fitted, or all kept.
struct Stretches {
  Chain pieces;
  bool free = false;
};

bool tiny(const Chain& chain, std::size_t i) { return i < chain.size() && length(chain[i]) < kTiny; }

// Those that stand alone: in a row they are a curve.
Chain without_tiny(const Chain& chain) {
  Chain out;
  for (std::size_t i = 0; i < chain.size(); ++i)
    if (!tiny(chain, i) || (i > 0 && tiny(chain, i - 1)) || tiny(chain, i + 1)) out.push_back(chain[i]);
  if (out.empty())
    throw geometry_error("profile", "is no longer than " + number(kTiny), "check the scale of the drawing");
  return out;
}

// A curve all of whose poles go one way along its chord is a line.
bool straight(const Bezier& curve) {
  const Vec2 chord = curve.poles.back() - curve.poles.front();
  double before = 0;
  for (const Vec2& pole : curve.poles) {
    const Vec2 way = pole - curve.poles.front();
    if (std::abs(cross(chord, way)) > kSamePoint * chord.norm() || way.dot(chord) < before) return false;
    before = way.dot(chord);
  }
  return true;
}

Chain with_lines(Chain chain) {
  for (DrawnPiece& piece : chain)
    if (const auto* curve = std::get_if<Bezier>(&piece); curve && straight(*curve))
      piece = line(curve->poles.front(), curve->poles.back());
  return chain;
}

std::vector<Stretches> stretches(const Chain& chain, bool fit_all) {
  std::vector<Stretches> out;
  for (const DrawnPiece& piece : chain) {
    const bool free = fit_all || std::holds_alternative<Bezier>(piece);
    if (out.empty() || out.back().free != free) out.push_back({{}, free});
    out.back().pieces.push_back(piece);
  }
  return out;
}

Pose pose(const Vec2& point, const Vec2& tangent) { return {point, std::atan2(tangent.y(), tangent.x())}; }

Run run_of(const Segment& s) {
  return s.straight() ? Run{s.length(), 0} : Run{s.length(), (s.turn < 0 ? 1 : -1) / s.radius};
}

std::optional<std::size_t> tight_bend(const Profile& profile) {
  for (std::size_t i = 0; i < profile.runs().size(); ++i)
    if (std::abs(profile.runs()[i].curvature) * kLeastRadius > 1) return i;
  return std::nullopt;
}

[[noreturn]] void refuse_tight(const Profile& profile, double tolerance) {
  const auto i = tight_bend(profile);
  ensure(i.has_value(), "a refused profile has a tight bend");
  throw geometry_error(
      "profile",
      "has a corner at " + point_text(profile.pose(*i).point) + " that only a bend of radius " +
          number(1 / std::abs(profile.runs()[*i].curvature), 2) + " follows within " + number(tolerance),
      "draw it with a bend of at least 5, or give ease = R to round it");
}

std::size_t sample_count(const Chain& chain) {
  return std::clamp<std::size_t>(8 * chain.size(), kFitSamples, 20 * kFitSamples);
}

KnownEnd known(const Pose& pose) { return {pose.point, pose.heading}; }
Pose first_pose(const DrawnPiece& piece) { return pose(first_point(piece), first_tangent(piece)); }
Pose last_pose(const DrawnPiece& piece) { return pose(last_point(piece), last_tangent(piece)); }

// A stretch with its ends. Of chords only the points are known; a free curve has its directions as well.
struct Ended {
  const Chain& pieces;
  std::optional<KnownEnd> start, end;
};

Ended ended(const std::vector<Stretches>& all, std::size_t i, const std::optional<Pose>& before) {
  const Chain& pieces = all[i].pieces;
  const bool chords = std::holds_alternative<Segment>(pieces.front());
  Ended out{pieces, known(first_pose(pieces.front())), known(last_pose(pieces.back()))};
  if (chords) out.start->heading = out.end->heading = std::nullopt;
  if (before) out.start = known(*before);
  if (i + 1 < all.size()) out.end = known(first_pose(all[i + 1].pieces.front()));
  return out;
}

Profile fitted(const Ended& stretch, double tolerance) {
  const Vec2 from = first_point(stretch.pieces.front()), to = last_point(stretch.pieces.back());
  try {
    return fit({samples(stretch.pieces, sample_count(stretch.pieces)), tolerance, FitKind::runs, 1, 0.0,
                stretch.start, stretch.end})
        .profile;
  } catch (const Error&) {  // its message tells of points that nobody measured
    throw geometry_error("profile",
                         "no tangent lines and bends follow the curve from " + point_text(from) + " to " +
                             point_text(to) + " within " + number(tolerance),
                         "draw it smooth, without cusps and turns back, or raise the tolerance");
  }
}

// No runs at all may follow the curve so closely.
std::optional<Profile> fitted_if_any(const Ended& stretch, double tolerance) {
  try {
    return fitted(stretch, tolerance);
  } catch (const Error&) {
    return std::nullopt;
  }
}

// Fewer runs may ask for tighter bends: then the curve is followed more closely.
Profile wide_enough(const Ended& stretch, double tolerance) {
  const Profile first = fitted(stretch, tolerance);
  if (!tight_bend(first)) return first;
  for (const double share : {0.5, 0.2, 0.05})
    if (const auto closer = fitted_if_any(stretch, share * tolerance); closer && !tight_bend(*closer))
      return *closer;
  refuse_tight(first, tolerance);
}

// Lines and arcs one after another. Where files round them, the turn of each joint adds up: then all are
// moved a little, each staying what it is.
Profile walked_along(const Chain& pieces, const Pose& start, double tolerance, bool first) {
  std::vector<Run> runs;
  for (const DrawnPiece& piece : pieces) runs.push_back(run_of(std::get<Segment>(piece)));
  const Profile out(start, std::move(runs));
  if (deviation(pieces, out, kFitSamples).distance <= tolerance / 4) return out;
  const KnownEnd end{last_point(pieces.back()), {}};
  const std::optional<KnownEnd> begin = first ? KnownEnd{start.point, {}} : known(start);
  return settled(out, samples(pieces, sample_count(pieces)), begin, end).value_or(out);
}

Profile assembled(const std::vector<Stretches>& all, double tolerance) {
  std::optional<Pose> start, at;
  std::vector<Run> runs;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Profile stretch =
        all[i].free
            ? wide_enough(ended(all, i, at), tolerance)
            : walked_along(all[i].pieces, at.value_or(first_pose(all[i].pieces.front())), tolerance, i == 0);
    if (!start) start = stretch.start();
    at = stretch.end();
    runs.insert(runs.end(), stretch.runs().begin(), stretch.runs().end());
  }
  return {*start, std::move(runs)};
}

Profile chord_of(const Chain& chain) {
  const Vec2 from = first_point(chain.front()), way = last_point(chain.back()) - from;
  return {pose(from, way), {{std::max(way.norm(), kSamePoint), 0}}};
}

bool any_free(const std::vector<Stretches>& all) {
  return std::any_of(all.begin(), all.end(), [](const Stretches& s) { return s.free; });
}

// Samples do not see all: where the chain leaves the profile between them, the fit is held closer.
RunsResult held(const Chain& chain, bool fit_all, double tolerance) {
  const std::vector<Stretches> all = stretches(chain, fit_all);
  const bool free = any_free(all);
  if (const Profile flat = chord_of(chain);
      free && all.size() == 1 && deviation(chain, flat, kCheckSamples).distance <= tolerance / 2)
    return {flat, true, deviation(chain, flat, kCheckSamples).distance, 0, 0};
  Deviation found;
  for (const double share : {1.0, 0.95, 0.8}) {
    const Profile profile = assembled(all, share * tolerance);
    found = deviation(chain, profile, std::max(kCheckSamples, 4 * sample_count(chain)));
    if (const double end = (profile.end().point - last_point(chain.back())).norm(); end > found.distance)
      found = {end, last_point(chain.back())};
    if (found.distance <= tolerance) return {profile, free, found.distance, 0, 0};
    if (!free) break;
  }
  if (!fit_all) return held(chain, true, tolerance);
  throw geometry_error("profile",
                       "leaves the drawn curve by " + number(found.distance) + " at " + point_text(found.at) +
                           "; at most " + number(tolerance) + " is allowed",
                       "raise the tolerance or draw the curve with fewer pieces");
}

}  // namespace

RunsResult runs_of(const std::vector<DrawnPiece>& drawn, const RunsSpec& spec) {
  const Chain chain = with_lines(without_tiny(drawn));
  const bool fit_all = spec.fit_kinks && spec.ease <= 0 && std::abs(greatest_kink(chain)) > kSlightKink;
  const Chain smooth = fit_all ? chain : eased(chain, spec.ease);
  RunsResult out = held(smooth, fit_all, spec.tolerance);
  out.kink = fit_all ? 0 : std::abs(greatest_kink(smooth));
  out.tiny = drawn.size() - chain.size();
  return out;
}

}  // namespace lamwright
