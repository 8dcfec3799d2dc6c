// Lines that a bed lies along, and what the pressures on it add up to, found by quadrature, sampling and
// search: no closed form of a run is used to check one.
#pragma once
#include <algorithm>
#include <functional>

#include "kernel/mechanics/pull.hpp"
#include "kernel/mechanics/best_pull.hpp"
#include "kernel/profile/offset.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

namespace lamwright::test {

// --- lines -------------------------------------------------------------------------------------------------

struct NamedLine {
  std::string name;
  Profile line;  // posed, the pull axis vertical
};

inline bool pressable(const Profile& line) {
  const Headings h = headings(line);
  return h.greatest < radians(89) && h.least > radians(-89);
}

// Those of the suite that a vertical pull presses everywhere, chord level; not the half circle and the U
// (both have normals square to the pull) nor the spiral. Four of them are one run: any balanced pull presses
// alike.
inline std::vector<NamedLine> pressed_lines() {
  std::vector<NamedLine> out;
  for (const auto& named : named_profiles())
    if (const Profile level = levelled(named.profile); pressable(level)) out.push_back({named.name, level});
  return out;
}
inline constexpr int kPressedLines = 11;

// Those of more than one run, square to the chord and with the axis leaning either way.
inline std::vector<NamedLine> held_lines() {
  std::vector<NamedLine> out;
  for (const auto& [name, level] : pressed_lines()) {
    if (level.runs().size() == 1) continue;
    for (const double lean : {-12, 0, 12})
      out.push_back({name + " leaning " + std::to_string(lean), pull_upright(level, radians(lean))});
  }
  return out;
}
inline constexpr int kHeldLines = 3 * 7;

// A bend of 20 to 400 along and at least R60, turned the other way where its end would pass 70 degrees from
// the level (it turns through 60 at most, so that one way always fits).
inline Run random_bend(double heading_deg) {
  const double length = tenths(20, 400);
  const double most = std::min(60.0, degrees(length / 60));
  const double turn_deg = most * tenths(10, 100) / 100 * (*rc::gen::inRange(0, 2) == 0 ? 1 : -1);
  const double turn = radians(std::abs(heading_deg - turn_deg) > 70 ? -turn_deg : turn_deg);
  return {length, turn / length};
}

// One to four bends with or without lines of at least 20 before, between and after. Shorter runs beside long
// arcs come close to a single arc, which no position but one presses. Normals to both sides of the pull, none
// more than 80 degrees from it: without both, nothing balances it.
inline Profile random_line() {
  std::vector<Run> runs;
  const double first = tenths(-70, 70);
  double heading = first;
  const int bends = *rc::gen::inRange(1, 5);
  for (int i = 0; i < bends; ++i) {
    if (*rc::gen::inRange(0, 2) == 0) runs.push_back(straight(tenths(20, 400)));
    runs.push_back(random_bend(heading));
    heading -= degrees(runs.back().turn());
  }
  if (runs.size() == 1 || *rc::gen::inRange(0, 2) == 0) runs.push_back(straight(tenths(20, 400)));
  const Profile line = from_origin(runs, first);
  const Headings h = headings(line);
  const double half = (h.greatest - h.least) / 2;
  const double lean = std::min(0.6 * half, radians(80) - half) * tenths(-10, 10) / 10;
  const Profile upright = line.posed({{0, 0}, line.start().heading - (h.greatest + h.least) / 2 + lean});
  return upright.moved({tenths(-500, 500), tenths(-500, 500)});
}

inline Vec2 middle(const Profile& line) { return (line.start().point + line.end().point) / 2; }

// --- quadrature --------------------------------------------------------------------------------------------

struct Node {
  double at;  // on [-1, 1]
  double weight;
};

// Gauss-Legendre, 16 nodes, roots of the Legendre polynomial by Newton's iteration (Abramowitz and Stegun
// 25.4.29 for the weights). On a line the integrands are polynomials of degree 2 and it is exact; on an arc
// of half-angle a they are sinusoids of the angle doubled and its error is below 2^33 16!^4 (2a)^32 / (33
// 32!^3): 2e-29 of the value for a = 90 degrees. What is left is rounding.
inline std::vector<Node> legendre() {
  constexpr int n = 16;
  std::vector<Node> out;
  for (int i = 0; i < n; ++i) {
    double x = std::cos(kPi * (i + 0.75) / (n + 0.5)), slope = 1;
    for (int step = 0; step < 20; ++step) {
      double before = 1, value = x;
      for (int k = 2; k <= n; ++k) {
        const double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
        before = value;
        value = next;
      }
      slope = n * (x * value - before) / (x * x - 1);
      x -= value / slope;
    }
    out.push_back({x, 2 / ((1 - x * x) * slope * slope)});
  }
  return out;
}

// Visits nodes along the line with their weights; pieces end at joints and at `breaks`.
inline void along(const Profile& line, std::vector<double> breaks,
                  const std::function<void(double station, double weight)>& visit) {
  static const std::vector<Node> nodes = legendre();
  for (std::size_t i = 0; i <= line.runs().size(); ++i) breaks.push_back(line.station(i));
  std::sort(breaks.begin(), breaks.end());
  for (std::size_t i = 1; i < breaks.size(); ++i)
    for (const Node& node : nodes) {
      const double half = (breaks[i] - breaks[i - 1]) / 2;
      visit((breaks[i] + breaks[i - 1]) / 2 + node.at * half, node.weight * half);
    }
}

inline std::vector<double> ends_of(const std::vector<Stretch>& stretches) {
  std::vector<double> out;
  for (const Stretch& s : stretches) out.insert(out.end(), {s.from, s.to});
  return out;
}

// What the pressures add up to: along X, along Y, about the chord's middle, and their mean.
struct Sums {
  double side = 0, pull = 0, moment = 0, mean = 0;
};
inline Sums sums(const Seating& seating, const Profile& line) {
  Sums out;
  along(line, ends_of(seating.lifted()), [&](double s, double weight) {
    const Pose pose = line.at(s);
    const double force = weight * seating.pressure(s);
    out.side += force * pose.normal().x();
    out.pull += force * pose.normal().y();
    out.moment += force * cross(pose.point - middle(line), pose.normal());
    out.mean += force / line.girth();
  });
  return out;
}

// --- the positions that can be balanced --------------------------------------------------------------------

// A push along the normal at a station acts along a line that leans by its heading and meets the height of
// the chord's middle at some X. Pushes along such lines balance a pull along X = at when, and only when, (0,
// at) lies in the convex hull of the points (lean, X). Found over all pairs of samples: the hull of samples
// lies inside the true one by less than kHullSlack of its size.
inline constexpr int kHullSamples = 40;  // to a run, both ends included
inline constexpr double kHullSlack = 0.01;

inline std::vector<Vec2> push_lines(const Profile& line) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < line.runs().size(); ++i)
    for (int j = 0; j <= kHullSamples; ++j) {
      const Pose pose =
          walked(line.pose(i), line.runs()[i].curvature, line.runs()[i].length * j / kHullSamples);
      const Vec2 r = pose.point - middle(line), n = pose.normal();
      out.emplace_back(n.x() / n.y(), cross(r, n) / n.y());
    }
  return out;
}

inline Stretch balanced_positions(const Profile& line) {
  const std::vector<Vec2> points = push_lines(line);
  Stretch out{INFINITY, -INFINITY};
  for (const Vec2& a : points)
    for (const Vec2& b : points) {
      if (a.x() > 0 || b.x() < 0) continue;
      const double at = b.x() - a.x() > 0 ? (a.y() * b.x() - b.y() * a.x()) / (b.x() - a.x()) : a.y();
      out = {std::min(out.from, at), std::max(out.to, at)};
    }
  return out;
}

inline double between(const Stretch& s, double share) { return s.from + share * (s.to - s.from); }

// Well inside, near both ends, and where most presses are pulled.
inline constexpr double kShares[] = {0.03, 0.2, 0.35, 0.5, 0.62, 0.8, 0.97};

// --- figures found anew ------------------------------------------------------------------------------------

inline constexpr int kSamples = 1000;  // to a run, both ends included

struct Extremes {
  double least = INFINITY;
  double greatest = -INFINITY;
  double slack = kRounding;  // of the greatest, and of the least where nothing lifts
};

// On an arc the pressure is a sinusoid of the heading, of amplitude A = k |U + tilt (-Cy, Cx)| with U the
// slide and C the arc's centre from the chord's middle: between samples d apart it passes them by A d^2 / 8
// at most.
inline Extremes sampled(const Seating& seating, const Profile& line, double stiffness) {
  Extremes out;
  for (std::size_t i = 0; i < line.runs().size(); ++i) {
    const Run& run = line.runs()[i];
    for (int j = 0; j <= kSamples; ++j) {
      const double p = seating.pressure(line.station(i) + run.length * j / kSamples);
      out.least = std::min(out.least, p);
      out.greatest = std::max(out.greatest, p);
    }
    if (run.straight()) continue;
    const Vec2 centre = line.pose(i).point - line.pose(i).normal() / run.curvature - middle(line);
    const double amplitude = stiffness * (seating.slide() + seating.tilt() * left_of(centre)).norm();
    out.slack = std::max(out.slack, amplitude * std::pow(run.turn() / kSamples, 2) / 8);
  }
  return out;
}

inline bool inside(const std::vector<Stretch>& stretches, double s, double margin) {
  return std::any_of(stretches.begin(), stretches.end(),
                     [&](const Stretch& l) { return s > l.from - margin && s < l.to + margin; });
}

// The pressure that the half's own motion makes: it moves by slide + tilt x r, the bed is pressed by what of
// it goes against the normal, and does not pull.
inline double by_motion(const Seating& seating, const Pose& pose, const Vec2& mid, double stiffness) {
  const Vec2 moved = seating.slide() + seating.tilt() * left_of(pose.point - mid);
  return std::max(0.0, -stiffness * moved.dot(pose.normal()));
}

// A half held sideways by a guide: two motions, down and tilt, found from the 2 x 2 equations over what is in
// touch, again until nothing changes. Force of the guide per mm of width.
inline double guided_thrust(const Profile& line, double at, double pull) {
  const Vec2 mid = middle(line);
  const auto lever = [&](double s) -> Vec2 {  // of a push: along Y, about the chord's middle
    const Pose pose = line.at(s);
    return {pose.normal().y(), cross(pose.point - mid, pose.normal())};
  };
  Vec2 rate{1, 0};
  std::vector<double> breaks;
  for (int step = 0; step < 60; ++step) {
    double a = 0, b = 0, c = 0;
    along(line, breaks, [&](double s, double weight) {
      const Vec2 l = lever(s);
      if (rate.dot(l) <= 0) return;
      a += weight * l.x() * l.x(), b += weight * l.x() * l.y(), c += weight * l.y() * l.y();
    });
    const Vec2 next = Vec2(c * pull - b * pull * at, a * pull * at - b * pull) / (a * c - b * b);
    const bool settled = (next - rate).norm() < 1e-13 * next.norm();
    rate = next;
    breaks.clear();
    for (int i = 0; i < 400; ++i) {
      double from = line.girth() * i / 400, to = line.girth() * (i + 1) / 400;
      if ((rate.dot(lever(from)) > 0) == (rate.dot(lever(to)) > 0)) continue;
      for (int halving = 0; halving < 60; ++halving) {
        const double half = (from + to) / 2;
        ((rate.dot(lever(from)) > 0) == (rate.dot(lever(half)) > 0) ? from : to) = half;
      }
      breaks.push_back((from + to) / 2);
    }
    if (settled) break;
    REQUIRE(step < 59);
  }
  double side = 0;
  along(line, breaks, [&](double s, double weight) {
    side += weight * std::max(0.0, rate.dot(lever(s))) * line.at(s).normal().x();
  });
  return -side;
}

// Three equations of statics, 1e-9 of the pull and of the pull times the chord: sums of some hundred terms of
// 2^-53 and the solver's own rounding stay a hundred times below.
inline bool balances(const Seating& seating, const Profile& line, double at, double pull) {
  const Sums got = sums(seating, line);
  const double arm = chord(line);
  return std::abs(got.pull - pull) <= 1e-9 * pull && std::abs(got.side) <= 1e-9 * pull &&
         std::abs(got.moment - pull * at) <= 1e-9 * pull * std::max(arm, std::abs(at)) &&
         std::abs(got.mean - seating.mean()) <= 1e-9 * seating.mean();
}

inline bool pushes_where_it_touches(const Seating& seating, const Profile& line) {
  const double margin = 1e-6 * line.girth();
  for (int i = 0; i <= kSamples; ++i) {
    const double s = line.girth() * i / kSamples, p = seating.pressure(s);
    const bool lifted = inside(seating.lifted(), s, -margin), near = inside(seating.lifted(), s, margin);
    if (p < 0 || (lifted && p != 0) || (!near && p <= 0)) return false;
  }
  return true;
}

inline Profile levelled_of(std::vector<Run> runs) { return levelled(from_origin(std::move(runs))); }

// Lines of the table, pressures as multiples of pull / chord, worked by hand in closed form from the
// equations that the header gives; to five places.
struct Worked {
  std::string name;
  std::vector<Run> runs;
  double chord;
  double square[3];  // least, greatest, mean
  std::optional<Stretch> stray;
  double bisector_deg;
  double leaning[3];
};
inline const std::vector<Worked>& worked() {
  static const std::vector<Worked> table{{"L",
                                          {straight(300), bend(90, 69), straight(300)},
                                          521.8448,
                                          {0.94934, 1.34256, 0.98903},
                                          Stretch{-60.91, 60.91},
                                          0,
                                          {0.94934, 1.34256, 0.98903}},
                                         {"unequal L",
                                          {straight(500), bend(90, 69), straight(200)},
                                          629.3822,
                                          {0.91021, 1.32469, 0.99100},
                                          Stretch{-82.81, 79.07},
                                          19.6971,
                                          {0.48000, 1.82440, 1.04649}},
                                         {"shallow crown",
                                          {straight(180), bend(60, 309), straight(260)},
                                          691.2095,
                                          {0.93253, 1.10022, 0.99694},
                                          Stretch{-28.23, 40.84},
                                          -3.3175,
                                          {0.38157, 1.53124, 1.00055}},
                                         {"S",
                                          {bend(50, 400), straight(80), bend(-35, 500), straight(120)},
                                          828.5567,
                                          {0.91737, 1.03940, 0.99930},
                                          {},
                                          -3.6136,
                                          {0.58140, 1.41088, 0.99710}}};
  return table;
}
inline constexpr int kWorked = 4;
inline constexpr double kFivePlaces = 6e-6;

inline void same_choice(const PullChoice& got, const double (&wanted)[3]) {
  CHECK(got.least == within(wanted[0], kFivePlaces));
  CHECK(got.greatest == within(wanted[1], kFivePlaces));
  CHECK(got.mean == within(wanted[2], kFivePlaces));
  CHECK(got.spread() == within((wanted[1] - wanted[0]) / wanted[2], 4 * kFivePlaces));
}

}  // namespace lamwright::test
