// Equilibrium, contact and optimum of a rigid half on a bed without tension, found anew by quadrature,
// sampling and search: no closed form of a run is used to check one.
#include "kernel/mechanics/seating.hpp"

#include <algorithm>
#include <functional>

#include "kernel/mechanics/pull.hpp"
#include "kernel/profile/offset.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// --- lines -------------------------------------------------------------------------------------------------

struct NamedLine {
  std::string name;
  Profile line;  // posed, the pull axis vertical
};

bool pressable(const Profile& line) {
  const Headings h = headings(line);
  return h.greatest < radians(89) && h.least > radians(-89);
}

// Those of the suite that a vertical pull presses everywhere, chord level; not the half circle and the U
// (both have normals square to the pull) nor the spiral. Four of them are one run: any balanced pull presses
// alike.
std::vector<NamedLine> pressed_lines() {
  std::vector<NamedLine> out;
  for (const auto& named : named_profiles())
    if (const Profile level = levelled(named.profile); pressable(level)) out.push_back({named.name, level});
  return out;
}
constexpr int kPressedLines = 11;

// Those of more than one run, square to the chord and with the axis leaning either way.
std::vector<NamedLine> held_lines() {
  std::vector<NamedLine> out;
  for (const auto& [name, level] : pressed_lines()) {
    if (level.runs().size() == 1) continue;
    for (const double lean : {-12, 0, 12})
      out.push_back({name + " leaning " + std::to_string(lean), pull_upright(level, radians(lean))});
  }
  return out;
}
constexpr int kHeldLines = 3 * 7;

// A bend of 20 to 400 along and at least R60, turned the other way where its end would pass 70 degrees from
// the level (it turns through 60 at most, so that one way always fits).
Run random_bend(double heading_deg) {
  const double length = tenths(20, 400);
  const double most = std::min(60.0, degrees(length / 60));
  const double turn_deg = most * tenths(10, 100) / 100 * (*rc::gen::inRange(0, 2) == 0 ? 1 : -1);
  const double turn = radians(std::abs(heading_deg - turn_deg) > 70 ? -turn_deg : turn_deg);
  return {length, turn / length};
}

// One to four bends with or without lines of at least 20 before, between and after. Shorter runs beside long
// arcs come close to a single arc, which no position but one presses. Normals to both sides of the pull, none
// more than 80 degrees from it: without both, nothing balances it.
Profile random_line() {
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

Vec2 middle(const Profile& line) { return (line.start().point + line.end().point) / 2; }

// --- quadrature --------------------------------------------------------------------------------------------

struct Node {
  double at;  // on [-1, 1]
  double weight;
};

// Gauss-Legendre, 16 nodes, roots of the Legendre polynomial by Newton's iteration (Abramowitz and Stegun
// 25.4.29 for the weights). On a line the integrands are polynomials of degree 2 and it is exact; on an arc
// of half-angle a they are sinusoids of the angle doubled and its error is below 2^33 16!^4 (2a)^32 / (33
// 32!^3): 2e-29 of the value for a = 90 degrees. What is left is rounding.
std::vector<Node> legendre() {
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
void along(const Profile& line, std::vector<double> breaks,
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

std::vector<double> ends_of(const std::vector<Stretch>& stretches) {
  std::vector<double> out;
  for (const Stretch& s : stretches) out.insert(out.end(), {s.from, s.to});
  return out;
}

// What the pressures add up to: along X, along Y, about the chord's middle, and their mean.
struct Sums {
  double side = 0, pull = 0, moment = 0, mean = 0;
};
Sums sums(const Seating& seating, const Profile& line) {
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
constexpr int kHullSamples = 40;  // to a run, both ends included
constexpr double kHullSlack = 0.01;

std::vector<Vec2> push_lines(const Profile& line) {
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

Stretch balanced_positions(const Profile& line) {
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

double between(const Stretch& s, double share) { return s.from + share * (s.to - s.from); }

// Well inside, near both ends, and where most presses are pulled.
constexpr double kShares[] = {0.03, 0.2, 0.35, 0.5, 0.62, 0.8, 0.97};

// --- figures found anew ------------------------------------------------------------------------------------

constexpr int kSamples = 1000;  // to a run, both ends included

struct Extremes {
  double least = INFINITY;
  double greatest = -INFINITY;
  double slack = kRounding;  // of the greatest, and of the least where nothing lifts
};

// On an arc the pressure is a sinusoid of the heading, of amplitude A = k |U + tilt (-Cy, Cx)| with U the
// slide and C the arc's centre from the chord's middle: between samples d apart it passes them by A d^2 / 8
// at most.
Extremes sampled(const Seating& seating, const Profile& line, double stiffness) {
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

bool inside(const std::vector<Stretch>& stretches, double s, double margin) {
  return std::any_of(stretches.begin(), stretches.end(),
                     [&](const Stretch& l) { return s > l.from - margin && s < l.to + margin; });
}

// The pressure that the half's own motion makes: it moves by slide + tilt x r, the bed is pressed by what of
// it goes against the normal, and does not pull.
double by_motion(const Seating& seating, const Pose& pose, const Vec2& mid, double stiffness) {
  const Vec2 moved = seating.slide() + seating.tilt() * left_of(pose.point - mid);
  return std::max(0.0, -stiffness * moved.dot(pose.normal()));
}

// A half held sideways by a guide: two motions, down and tilt, found from the 2 x 2 equations over what is in
// touch, again until nothing changes. Force of the guide per mm of width.
double guided_thrust(const Profile& line, double at, double pull) {
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
bool balances(const Seating& seating, const Profile& line, double at, double pull) {
  const Sums got = sums(seating, line);
  const double arm = chord(line);
  return std::abs(got.pull - pull) <= 1e-9 * pull && std::abs(got.side) <= 1e-9 * pull &&
         std::abs(got.moment - pull * at) <= 1e-9 * pull * std::max(arm, std::abs(at)) &&
         std::abs(got.mean - seating.mean()) <= 1e-9 * seating.mean();
}

bool pushes_where_it_touches(const Seating& seating, const Profile& line) {
  const double margin = 1e-6 * line.girth();
  for (int i = 0; i <= kSamples; ++i) {
    const double s = line.girth() * i / kSamples, p = seating.pressure(s);
    const bool lifted = inside(seating.lifted(), s, -margin), near = inside(seating.lifted(), s, margin);
    if (p < 0 || (lifted && p != 0) || (!near && p <= 0)) return false;
  }
  return true;
}

Profile levelled_of(std::vector<Run> runs) { return levelled(from_origin(std::move(runs))); }

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
const std::vector<Worked>& worked() {
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
constexpr int kWorked = 4;
constexpr double kFivePlaces = 6e-6;

void same_choice(const PullChoice& got, const double (&wanted)[3]) {
  CHECK(got.least == within(wanted[0], kFivePlaces));
  CHECK(got.greatest == within(wanted[1], kFivePlaces));
  CHECK(got.mean == within(wanted[2], kFivePlaces));
  CHECK(got.spread() == within((wanted[1] - wanted[0]) / wanted[2], 4 * kFivePlaces));
}

}  // namespace

TEST_CASE("Lines worked by hand are pressed as worked, square to the chord and along the bisector") {
  int seen = 0;
  for (const auto& w : worked()) {
    CAPTURE(w.name);
    const Profile level = levelled_of(w.runs);
    REQUIRE(chord(level) == within(w.chord, 1e-4));
    same_choice(pull_choice(level, 0, 0), w.square);
    const double axis = bisector(level);
    CHECK(degrees(axis) == within(w.bisector_deg, 1e-4));
    same_choice(pull_choice(level, axis, 0), w.leaning);
    ++seen;
  }
  CHECK(seen == kWorked);
}

TEST_CASE("The pull line of lines worked by hand may stray as far as worked") {
  int seen = 0;
  for (const auto& w : worked()) {
    if (!w.stray) continue;
    CAPTURE(w.name);
    const auto contact = full_contact({levelled_of(w.runs)});
    REQUIRE(contact);
    CHECK(contact->from == within(w.stray->from, 0.005 + 1e-6));  // given to two places
    CHECK(contact->to == within(w.stray->to, 0.005 + 1e-6));
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("Pressures scale with the pull, motions with the pull over the stiffness") {
  const Profile level = levelled_of(worked()[1].runs);
  const Seating one = seat({level, 20, 1, 1}), other = seat({level, 20, 7, 0.25});
  const double ratio = 7 / chord(level);
  const PullChoice choice = pull_choice(level, 0, 20);
  CHECK(other.least() == Approx(choice.least * ratio).epsilon(1e-12));
  CHECK(other.mean() == Approx(choice.mean * ratio).epsilon(1e-12));
  CHECK(other.greatest() == Approx(choice.greatest * ratio).epsilon(1e-12));
  CHECK(other.spread() == Approx(one.spread()).epsilon(1e-12));
  CHECK(other.tilt() == Approx(28 * one.tilt()).epsilon(1e-12));
  CHECK(same(other.slide(), Vec2(28 * one.slide()), 1e-12));
}

TEST_CASE("Pressures balance the pull wherever it can be balanced, with and without lift") {
  int seen = 0, lifts = 0;
  for (const auto& [name, line] : held_lines()) {
    const Stretch range = balanced_positions(line);
    for (const double share : kShares) {
      const double at = between(range, share);
      CAPTURE(name, at);
      const Seating seating = seat({line, at, 3, 0.5});
      REQUIRE(seating.hold() == Hold::held);
      CHECK(balances(seating, line, at, 3));
      CHECK(pushes_where_it_touches(seating, line));
      lifts += seating.lifted().empty() ? 0 : 1;
      ++seen;
    }
  }
  CHECK(seen == kHeldLines * 7);
  CHECK(lifts >= kHeldLines * 2);  // near both ends of the range every line lifts
  CHECK(lifts < seen);
}

TEST_CASE("Pressures on random lines balance a pull in any balanced position") {
  int lifts = 0, touching = 0;
  property("sums along X and Y and about the chord's middle", [&] {
    const Profile line = random_line();
    const double at = between(balanced_positions(line), tenths(3, 97) / 100);
    const Seating seating = seat({line, at, 2, 0.1});
    RC_ASSERT(seating.hold() == Hold::held);
    RC_ASSERT(balances(seating, line, at, 2));
    RC_ASSERT(pushes_where_it_touches(seating, line));
    (seating.lifted().empty() ? touching : lifts) += 1;
  });
  CHECK(lifts > 0);
  CHECK(touching > 0);
}

TEST_CASE("The pressure is what the half's slide and tilt make of the bed") {
  int seen = 0;
  for (const auto& [name, line] : held_lines())
    for (const double share : kShares) {
      const Seating seating = seat({line, between(balanced_positions(line), share), 3, 0.5});
      CAPTURE(name, share);
      for (int i = 0; i <= 97; ++i) {
        const double s = line.girth() * i / 97;
        REQUIRE(seating.pressure(s) ==
                within(by_motion(seating, line.at(s), middle(line), 0.5), 1e-9 * seating.greatest()));
        ++seen;
      }
    }
  CHECK(seen == kHeldLines * 7 * 98);
}

TEST_CASE("Least, mean and greatest are those of dense samples") {
  int seen = 0;
  for (const auto& [name, line] : held_lines())
    for (const double share : kShares) {
      const Seating seating = seat({line, between(balanced_positions(line), share), 3, 0.5});
      const Extremes got = sampled(seating, line, 0.5);
      CAPTURE(name, share, got.slack);
      CHECK(seating.greatest() >= got.greatest - 1e-12 * got.greatest);
      CHECK(seating.greatest() <= got.greatest + got.slack);
      if (seating.lifted().empty()) {
        CHECK(seating.least() <= got.least + 1e-12 * got.greatest);
        CHECK(seating.least() >= got.least - got.slack);
      } else {
        CHECK(seating.least() == 0);
      }
      CHECK(seating.mean() == Approx(sums(seating, line).mean).epsilon(1e-9));
      CHECK(seating.spread() ==
            Approx((seating.greatest() - seating.least()) / seating.mean()).epsilon(1e-12));
      ++seen;
    }
  CHECK(seen == kHeldLines * 7);
}

TEST_CASE("A mirrored line pulled at the mirrored position is pressed as the mirror image") {
  int seen = 0;
  for (const auto& [name, line] : held_lines())
    for (const double share : kShares) {
      const double at = between(balanced_positions(line), share);
      CAPTURE(name, at);
      const Seating here = seat({line, at, 3, 0.5}), there = seat({line.mirrored(), -at, 3, 0.5});
      const double slack = 1e-9 * here.greatest();
      REQUIRE(there.hold() == here.hold());
      CHECK(there.least() == within(here.least(), slack));
      CHECK(there.mean() == within(here.mean(), slack));
      CHECK(there.greatest() == within(here.greatest(), slack));
      // A line that is close to a single arc rolls far for little pressure.
      const double moved = here.slide().norm() + std::abs(here.tilt()) * chord(line);
      CHECK(there.tilt() * chord(line) == within(-here.tilt() * chord(line), 1e-9 * moved));
      CHECK(same(there.slide(), Vec2(-here.slide().x(), here.slide().y()), 1e-9 * moved));
      REQUIRE(there.lifted().size() == here.lifted().size());
      for (std::size_t i = 0; i < here.lifted().size(); ++i)
        CHECK(there.lifted().rbegin()[i].from == within(line.girth() - here.lifted()[i].to, 1e-6));
      for (int i = 0; i <= 97; ++i)
        REQUIRE(there.pressure(line.girth() * (97 - i) / 97) ==
                within(here.pressure(line.girth() * i / 97), slack));
      ++seen;
    }
  CHECK(seen == kHeldLines * 7);
}

TEST_CASE("A half is held between the outermost pushes that balance the pull, and tips beyond them") {
  int seen = 0;
  for (const auto& [name, line] : held_lines()) {
    const Stretch range = balanced_positions(line);
    CAPTURE(name, range.from, range.to);
    CHECK(seat({line, between(range, 0.01)}).hold() == Hold::held);
    CHECK(seat({line, between(range, 0.99)}).hold() == Hold::held);
    for (const double share : {-kHullSlack, -0.5, 1 + kHullSlack, 1.5}) {
      const Seating beyond = seat({line, between(range, share)});
      CHECK(beyond.hold() == Hold::tips);
      CHECK(beyond.greatest() == 0);
      CHECK(beyond.pressure(line.girth() / 2) == 0);
      CHECK(std::isinf(beyond.spread()));
    }
    ++seen;
  }
  CHECK(seen == kHeldLines);
}

TEST_CASE("A single arc is held when the pull goes through its centre and rolls otherwise") {
  // Balanced, the half only moves along the pull: p = c cos t over -a to a, and pull = c R (a + sin a cos a).
  int seen = 0;
  for (const double half_deg : {1.5, 28.07, 60.0, 90.0})
    for (const double sense : {1.0, -1.0}) {
      const double a = radians(half_deg), radius = 600;
      const Profile level = levelled_of({bend(sense * 2 * half_deg, radius)});
      const Seating held = seat({level, 0, 3, 0.5});
      CAPTURE(half_deg, sense);
      REQUIRE(held.hold() == Hold::held);
      const double top = 3 / (radius * (a + std::sin(a) * std::cos(a)));
      CHECK(held.greatest() == Approx(top).epsilon(1e-9));
      CHECK(held.least() == within(top * std::cos(a), 1e-9 * top));
      CHECK(held.mean() == Approx(top * std::sin(a) / a).epsilon(1e-9));
      for (int i = -10; i <= 10; ++i)
        CHECK(held.pressure((i + 10) * level.girth() / 20) == within(top * std::cos(a * i / 10), 1e-9 * top));
      for (const double off : {-5.0, 0.5}) {
        const Seating rolls = seat({level, off, 3, 0.5});
        CHECK(rolls.hold() == Hold::rolls);
        CHECK(rolls.greatest() == 0);
        CHECK(std::isinf(rolls.spread()));
      }
      ++seen;
    }
  CHECK(seen == 8);
}

TEST_CASE("A leaning single arc is held by a pull through its centre and by no other") {
  // Between headings 50 and -10: centre R sin 20 left of the chord's middle by (R cos 30) sin 20 (the chord's
  // middle stands R cos 30 from the centre, along the heading's middle normal, which leans right by -20).
  const double radius = 500;
  const Profile line = from_origin({bend(60, radius)}, 50);
  const double centre = radius * std::cos(radians(30)) * std::sin(radians(20));
  const Seating held = seat({line, centre, 2, 1});
  REQUIRE(held.hold() == Hold::held);
  CHECK(balances(held, line, centre, 2));
  CHECK(seat({line, 0, 2, 1}).hold() == Hold::rolls);
  CHECK(seat({line, -centre, 2, 1}).hold() == Hold::rolls);
}

TEST_CASE("A balanced flat is pressed evenly and one that leans slides") {
  const Profile flat = levelled_of({straight(900)});
  const Seating even = seat({flat, 0, 3, 0.5});
  REQUIRE(even.hold() == Hold::held);
  CHECK(even.least() == Approx(3.0 / 900).epsilon(1e-12));
  CHECK(even.mean() == Approx(3.0 / 900).epsilon(1e-12));
  CHECK(even.greatest() == Approx(3.0 / 900).epsilon(1e-12));
  CHECK(even.tilt() == within(0, 1e-15));
  CHECK(same(even.slide(), Vec2(0, -3.0 / 900 / 0.5), 1e-12));  // sideways the least motion, none
  for (const double lean : {1.0, -8.0}) {
    const Seating slides = seat({from_origin({straight(900)}, lean), 0, 3, 0.5});
    CHECK(slides.hold() == Hold::slides);
    CHECK(slides.greatest() == 0);
  }
}

TEST_CASE("A flat pulled within its middle third is pressed as a trapezoid") {
  // p = pull / L (1 + 12 x at / L^2): ends 1 +- 6 at / L; tilt -12 pull at / (k L^3), right end down.
  const Profile flat = levelled_of({straight(900)});
  int seen = 0;
  for (const double at : {-149.0, -30.0, 75.0, 149.0}) {
    CAPTURE(at);
    const Seating got = seat({flat, at, 3, 0.5});
    REQUIRE(got.hold() == Hold::held);
    CHECK(got.lifted().empty());
    CHECK(got.pressure(0) == Approx(3.0 / 900 * (1 - 6 * at / 900)).epsilon(1e-9));
    CHECK(got.pressure(900) == Approx(3.0 / 900 * (1 + 6 * at / 900)).epsilon(1e-9));
    CHECK(got.greatest() == Approx(3.0 / 900 * (1 + 6 * std::abs(at) / 900)).epsilon(1e-9));
    CHECK(got.mean() == Approx(3.0 / 900).epsilon(1e-12));
    CHECK(got.tilt() == Approx(-12 * 3 * at / (0.5 * std::pow(900, 3))).epsilon(1e-9));
    CHECK(got.slide().y() == Approx(-3.0 / 900 / 0.5).epsilon(1e-9));
    ++seen;
  }
  CHECK(seen == 4);
  const auto contact = full_contact({flat});
  REQUIRE(contact);
  CHECK(contact->from == within(-150, 1e-9));
  CHECK(contact->to == within(150, 1e-9));
}

TEST_CASE("A flat pulled outside its middle third is pressed as a triangle and lifts beside it") {
  // In touch over 3 (L / 2 - at), greatest 2 pull over that length, at the end.
  const Profile flat = levelled_of({straight(900)});
  int seen = 0;
  for (const double at : {160.0, 300.0, 430.0, 449.0}) {
    CAPTURE(at);
    const double touch = 3 * (450 - at);
    const Seating right = seat({flat, at, 3, 0.5}), left = seat({flat, -at, 3, 0.5});
    REQUIRE(right.hold() == Hold::held);
    REQUIRE(left.hold() == Hold::held);
    CHECK(right.greatest() == Approx(6 / touch).epsilon(1e-9));
    CHECK(left.pressure(0) == Approx(6 / touch).epsilon(1e-9));
    CHECK(right.pressure(900 - touch / 2) == Approx(3 / touch).epsilon(1e-9));
    CHECK(right.least() == 0);
    CHECK(right.mean() == Approx(3.0 / 900).epsilon(1e-9));
    REQUIRE(right.lifted().size() == 1);
    CHECK(right.lifted()[0].from == 0);
    CHECK(right.lifted()[0].to == within(900 - touch, 1e-6));
    REQUIRE(left.lifted().size() == 1);
    CHECK(left.lifted()[0].from == within(touch, 1e-6));
    CHECK(left.lifted()[0].to == 900);
    ++seen;
  }
  CHECK(seen == 4);
  CHECK(seat({flat, 451, 3, 0.5}).hold() == Hold::tips);
  CHECK(seat({flat, -900, 3, 0.5}).hold() == Hold::tips);
}

TEST_CASE("A U with upright walls is pressed on its floor and corners alone") {
  // The half moves straight down: p = c cos(heading), pull = c (200 + 2 * 80 * pi / 4).
  const Profile u = levelled_of({straight(300), bend(90, 80), straight(200), bend(90, 80), straight(300)});
  const Seating got = seat({u, 0, 3, 0.5});
  REQUIRE(got.hold() == Hold::held);
  const double top = 3 / (200 + 40 * kPi);
  CHECK(got.greatest() == Approx(top).epsilon(1e-9));
  CHECK(got.least() == within(0, 1e-9 * top));
  CHECK(got.pressure(150) == within(0, 1e-9 * top));
  CHECK(got.pressure(300 + 20 * kPi) == Approx(top * std::sqrt(0.5)).epsilon(1e-9));
}

TEST_CASE("The least pressure is 0 exactly at the ends of full contact, positive between and lifted beyond") {
  int seen = 0, never = 0;
  for (const auto& [name, line] : held_lines()) {
    CAPTURE(name);
    const auto contact = full_contact({line, 0, 3, 0.5});
    if (!contact) {
      const Stretch range = balanced_positions(line);
      for (int i = 1; i < 40; ++i) CHECK(!seat({line, between(range, i / 40.0), 3, 0.5}).lifted().empty());
      ++never;
      continue;
    }
    REQUIRE(contact->to > contact->from);
    for (const double end : {0.0, 1.0})
      CHECK(seat({line, between(*contact, end), 3, 0.5}).least() == within(0, 1e-9 * 3 / chord(line)));
    for (const double share : {1e-3, 0.25, 0.5, 0.75, 1 - 1e-3}) {
      const Seating in = seat({line, between(*contact, share), 3, 0.5});
      CHECK(in.least() > 0);
      CHECK(in.lifted().empty());
    }
    for (const double share : {-1e-3, 1 + 1e-3}) {
      const Seating out = seat({line, between(*contact, share), 3, 0.5});
      CHECK(out.least() == 0);
      CHECK(!out.lifted().empty());
    }
    ++seen;
  }
  CHECK(seen + never == kHeldLines);
  CHECK(seen >= 14);
}

TEST_CASE("Full contact does not depend on the pull, its position or the stiffness") {
  const Profile level = levelled_of(worked()[2].runs);
  const auto one = full_contact({level}), other = full_contact({level, 200, 9, 0.01});
  REQUIRE(one);
  REQUIRE(other);
  CHECK(other->from == within(one->from, 1e-9));
  CHECK(other->to == within(one->to, 1e-9));
}

TEST_CASE("The guide's force is that of a half that may only go down and tilt") {
  int seen = 0, pushed = 0;
  for (const auto& [name, line] : held_lines())
    for (const double share : {0.2, 0.35, 0.5, 0.62, 0.8}) {
      const double at = between(balanced_positions(line), share);
      CAPTURE(name, at);
      const auto got = side_thrust({line, at, 3, 0.5});
      REQUIRE(got);
      const double wanted = guided_thrust(line, at, 3);
      CHECK(*got == within(wanted, 3e-9));
      const auto mirrored = side_thrust({line.mirrored(), -at, 3, 0.5});
      REQUIRE(mirrored);
      CHECK(*mirrored == within(-wanted, 3e-9));
      pushed += std::abs(wanted) > 0.03 ? 1 : 0;
      ++seen;
    }
  CHECK(seen == kHeldLines * 5);
  CHECK(pushed > seen / 2);
}

TEST_CASE("A guide pushes back when a leaning flat would slide") {
  // Square to itself the flat carries pull / cos(lean); its sideways part pull * tan(lean) is the guide's. A
  // flat that rises to the right pushes the half to the left, the guide pushes it to the right.
  const auto rising = side_thrust({from_origin({straight(900)}, 10), 0, 3, 0.5});
  const auto falling = side_thrust({from_origin({straight(900)}, -10), 0, 3, 0.5});
  REQUIRE(rising);
  REQUIRE(falling);
  CHECK(*rising == within(3 * std::tan(radians(10)), 1e-9));
  CHECK(*falling == within(-3 * std::tan(radians(10)), 1e-9));
}

TEST_CASE("A guided half that the pull tips over has no thrust") {
  const Profile flat = levelled_of({straight(900)});
  REQUIRE(side_thrust({flat, 400, 3, 0.5}));
  CHECK(!side_thrust({flat, 451, 3, 0.5}));
}

TEST_CASE("A pull's figures are those of the half seated with that axis upright") {
  int seen = 0;
  for (const auto& [name, level] : pressed_lines()) {
    if (level.runs().size() == 1) continue;
    for (const double lean : {-10.0, 0.0, 7.0})
      for (const double at : {-15.0, 0.0, 4.0}) {
        CAPTURE(name, lean, at);
        const PullChoice got = pull_choice(level, radians(lean), at);
        const Profile line = pull_upright(level, radians(lean));
        const Seating seating = seat({line, at, chord(level), 1});
        CHECK(got.axis == radians(lean));
        CHECK(got.at == at);
        CHECK(got.least == within(seating.least(), 1e-9));
        CHECK(got.mean == within(seating.mean(), 1e-9));
        CHECK(got.greatest == within(seating.greatest(), 1e-9 * (1 + seating.greatest())));
        ++seen;
      }
  }
  CHECK(seen == 7 * 9);
}

namespace {

// A spread is shown to four places. Between axes and positions a search stops at, it changes by less than
// kNoticed: a slope of at most 100 (per radian, per chord) over steps of 1e-8.
constexpr double kNoticed = 1e-6;

void no_better(const Profile& level, const PullChoice& best, double axis, double at, int& seen) {
  const PullChoice other = pull_choice(level, axis, at);
  CAPTURE(axis, at, other.spread(), best.axis, best.at, best.spread());
  // A pull under which something lifts is no rival of one under which nothing does.
  REQUIRE((other.spread() >= best.spread() - kNoticed || (best.least > 0 && other.least == 0)));
  ++seen;
}

void same_figures(const Profile& level, const PullChoice& best) {
  const PullChoice again = pull_choice(level, best.axis, best.at);
  CHECK(again.least == within(best.least, 1e-9));
  CHECK(again.mean == within(best.mean, 1e-9));
  CHECK(again.greatest == within(best.greatest, 1e-9));
}

}  // namespace

TEST_CASE("No position of the pull line presses more evenly than the best one") {
  int seen = 0, lines = 0;
  for (const auto& [name, level] : pressed_lines()) {
    if (level.runs().size() == 1) continue;
    for (const double lean : {-9.0, 0.0, 5.0}) {
      CAPTURE(name, lean);
      const PullChoice best = best_position(level, radians(lean));
      CHECK(best.axis == radians(lean));
      same_figures(level, best);
      const double wide = chord(level) / 3;
      for (int i = -100; i <= 100; ++i) {
        no_better(level, best, radians(lean), wide * i / 100, seen);
        no_better(level, best, radians(lean), best.at + wide * i / 1e4, seen);
      }
      ++lines;
    }
  }
  CHECK(lines == 7 * 3);
  CHECK(seen == lines * 402);
}

TEST_CASE("No axis in the range and no position presses more evenly than the best pull") {
  int seen = 0, lines = 0;
  for (const auto& [name, level] : pressed_lines()) {
    if (level.runs().size() == 1) continue;
    for (const auto& [from, to] : {std::pair{-14.0, 14.0}, std::pair{3.0, 9.0}}) {
      CAPTURE(name, from, to);
      const auto best = best_pull(level, radians(from), radians(to));
      REQUIRE(best);
      REQUIRE(best->axis >= radians(from) - 1e-12);
      REQUIRE(best->axis <= radians(to) + 1e-12);
      same_figures(level, *best);
      const double wide = chord(level) / 4;
      for (int i = 0; i <= 40; ++i)
        for (int j = -20; j <= 20; ++j) {
          no_better(level, *best, radians(from + (to - from) * i / 40), wide * j / 20, seen);
          const double axis = std::clamp(best->axis + radians(i - 20) / 40, radians(from), radians(to));
          no_better(level, *best, axis, best->at + wide * j / 800, seen);
        }
      ++lines;
    }
  }
  CHECK(lines == 7 * 2);
  CHECK(seen == lines * 41 * 41 * 2);
}

TEST_CASE("The best pull of an L with equal legs is square to its chord, through its middle") {
  const Profile level = levelled_of(worked()[0].runs);
  const auto best = best_pull(level, radians(-30), radians(30));
  REQUIRE(best);
  CHECK(best->spread() <= pull_choice(level, 0, 0).spread() + kNoticed);
}

TEST_CASE("One arc or one flat has no best pull") {
  CHECK(!best_pull(levelled_of({bend(60, 500)}), radians(-20), radians(20)));
  CHECK(!best_pull(levelled_of({bend(-60, 500)}), radians(-20), radians(20)));
  CHECK(!best_pull(levelled_of({straight(500)}), radians(-20), radians(20)));
}

TEST_CASE("Seating refuses a pull or a bed of nothing and a line whose ends meet") {
  const Profile level = levelled_of(worked()[0].runs);
  REQUIRE_ERROR(ErrorKind::internal, seat({level, 0, 0, 1}));
  REQUIRE_ERROR(ErrorKind::internal, seat({level, 0, -2, 1}));
  REQUIRE_ERROR(ErrorKind::internal, seat({level, 0, 1, 0}));
  const Profile ring = from_origin({straight(100), bend(180, 50), straight(100), bend(180, 50)});
  REQUIRE_ERROR(ErrorKind::internal, seat({ring, 0, 1, 1}));
}

TEST_CASE("What becomes of a half has a name") {
  CHECK(to_text(Hold::held) == "held");
  CHECK(to_text(Hold::rolls) == "rolls");
  CHECK(to_text(Hold::slides) == "slides");
  CHECK(to_text(Hold::tips) == "tips");
}
