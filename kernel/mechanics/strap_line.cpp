#include "kernel/mechanics/strap_line.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

struct Sample {
  double station;
  Vec2 point;
};

// Close enough together that touching points are found within a hundredth of a radian, then made exact.
std::vector<Sample> samples(const Profile& curve) {
  constexpr double kTurn = 0.01;
  std::vector<Sample> out;
  for (std::size_t i = 0; i < curve.runs().size(); ++i) {
    const Run& run = curve.runs()[i];
    const int pieces = run.straight() ? 1 : std::max(2, int(std::ceil(std::abs(run.turn()) / kTurn)));
    for (int k = 0; k < pieces; ++k) {
      const double s = curve.station(i) + run.length * k / pieces;
      out.push_back({s, curve.point(s)});
    }
  }
  out.push_back({curve.girth(), curve.point(curve.girth())});
  return out;
}

// Indices of the samples that the strap touches: a string pulled tight, walked from the left.
std::vector<std::size_t> touched(const std::vector<Sample>& at) {
  std::vector<std::size_t> hull;
  for (std::size_t i = 0; i < at.size(); ++i) {
    while (hull.size() >= 2) {
      const Vec2 before = at[hull.back()].point - at[hull[hull.size() - 2]].point;
      const Vec2 next = at[i].point - at[hull.back()].point;
      if (cross(before, next) <= kTangent * before.norm() * next.norm()) break;
      hull.pop_back();
    }
    hull.push_back(i);
  }
  return hull;
}

// Takes one unknown out of the equations.
void hold(Eigen::Matrix2d& slope, Eigen::Vector2d& off, int unknown) {
  slope.row(unknown).setZero();
  slope(unknown, unknown) = 1;
  off[unknown] = 0;
}

// Both ends of a bridge lie tangent to the curve, unless the curve itself ends there. Newton's method from
// the samples; where it does not settle next to them they are kept.
void refine(const Profile& curve, double reach, Bridge& bridge) {
  const bool left_end = bridge.from <= kSamePoint, right_end = bridge.to >= curve.girth() - kSamePoint;
  double a = bridge.from, b = bridge.to;
  for (int step = 0; step < 30; ++step) {
    const Pose pa = curve.at(a), pb = curve.at(b);
    const Vec2 d = pb.point - pa.point;
    Eigen::Vector2d off(cross(pa.tangent(), d), cross(d, pb.tangent()));
    Eigen::Matrix2d slope;
    // d(tangent)/ds = -k normal.
    slope << -curve.curvature(a) * cross(pa.normal(), d), cross(pa.tangent(), pb.tangent()),
        -cross(pa.tangent(), pb.tangent()), -curve.curvature(b) * cross(d, pb.normal());
    if (left_end) hold(slope, off, 0);
    if (right_end) hold(slope, off, 1);
    const Eigen::Vector2d by = slope.fullPivLu().solve(off);
    if (!by.allFinite()) return;
    a -= by[0];
    b -= by[1];
    if (std::abs(a - bridge.from) > reach || std::abs(b - bridge.to) > reach) return;
    if (by.norm() < 1e-9) break;
  }
  bridge.from = std::clamp(a, 0.0, curve.girth());
  bridge.to = std::clamp(b, 0.0, curve.girth());
}

// The curve lies farthest below where it runs along the bridge, or at a joint.
void measure(const Profile& curve, Bridge& bridge) {
  const Vec2 from = curve.point(bridge.from), along = (curve.point(bridge.to) - from).normalized();
  // Headings of a curve run on past half a turn.
  const double heading = std::atan2(along.y(), along.x());
  bridge.heading = heading + 2 * kPi * std::round((curve.heading(bridge.from) - heading) / (2 * kPi));
  const auto take = [&](double station) {
    if (station <= bridge.from || station >= bridge.to) return;
    const double lift = cross(curve.point(station) - from, along);
    if (lift <= bridge.lift) return;
    bridge.lift = lift;
    bridge.lift_at = station;
  };
  for (std::size_t i = 0; i < curve.runs().size(); ++i) {
    take(curve.station(i));
    const double k = curve.runs()[i].curvature;
    const double level = k == 0 ? -1 : (curve.pose(i).heading - bridge.heading) / k;
    if (level > 0 && level < curve.runs()[i].length) take(curve.station(i) + level);
  }
}

}  // namespace

StrapLine::StrapLine(const Profile& curve) : curve_(curve) {
  if (!curve.hollow()) return;
  const std::vector<Sample> at = samples(curve);
  const std::vector<std::size_t> hull = touched(at);
  double reach = 0;
  for (std::size_t i = 0; i + 1 < at.size(); ++i) reach = std::max(reach, at[i + 1].station - at[i].station);
  for (std::size_t i = 0; i + 1 < hull.size(); ++i) {
    const double from = at[hull[i]].station, to = at[hull[i + 1]].station;
    if (hull[i + 1] == hull[i] + 1 && curve.curvature((from + to) / 2) >= 0) continue;
    Bridge bridge{from, to, 0, 0, 0};
    refine(curve, reach, bridge);
    measure(curve, bridge);
    // A hollow of one sample still is a bridge; next to another it is one with it.
    if (!bridges_.empty() && bridges_.back().to >= bridge.from - kSamePoint &&
        std::abs(bridges_.back().heading - bridge.heading) < kTangent) {
      bridges_.back().to = bridge.to;
      continue;
    }
    bridges_.push_back(bridge);
  }
}

const Bridge* StrapLine::bridge_at(double station) const {
  for (const Bridge& bridge : bridges_)
    if (station > bridge.from && station < bridge.to) return &bridge;
  return nullptr;
}

double StrapLine::heading(double station) const {
  // At a curve's end that the strap only passes over, it already runs along the bridge.
  for (const Bridge& bridge : bridges_) {
    const bool at_end = (bridge.from <= kSamePoint && station <= kSamePoint) ||
                        (bridge.to >= curve_.girth() - kSamePoint && station >= curve_.girth() - kSamePoint);
    if (at_end || (station > bridge.from && station < bridge.to)) return bridge.heading;
  }
  return curve_.heading(station);
}

double StrapLine::from_left(double station, double exit) const {
  return std::max(0.0, curve_.start().heading + exit - heading(station));
}

double StrapLine::from_right(double station, double exit) const {
  return std::max(0.0, heading(station) - (curve_.end().heading - exit));
}

}  // namespace lamwright
