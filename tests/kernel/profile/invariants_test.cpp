// What holds for every profile, on the named ones and on random ones.
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "kernel/profile/segment.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

constexpr int kSamples = 97;  // a prime, so that samples miss joints as well as hit them

bool same_shape(const Profile& a, const Profile& b, double tolerance) {
  if (a.runs().size() != b.runs().size()) return false;
  for (int i = 0; i <= kSamples; ++i)
    if (!same(a.point(a.girth() * i / kSamples), b.point(b.girth() * i / kSamples), tolerance)) return false;
  return std::abs(a.girth() - b.girth()) <= tolerance &&
         std::abs(std::remainder(a.start().heading - b.start().heading, 2 * kPi)) < 1e-9;
}

// End of the curve by composite Simpson integration of (cos h, sin h) with dh/ds = -k: an independent walk.
Vec2 integrated_end(const Profile& p) {
  Vec2 at = p.start().point;
  double heading = p.start().heading;
  for (const Run& run : p.runs()) {
    constexpr int kSteps = 400;  // error (k s)^5 R / (2880 * 400^4): 150 degrees of R2000 give 3.5e-9
    const double h = run.length / kSteps;
    for (int i = 0; i < kSteps; ++i) {
      at += h / 6 *
            (direction(heading) + 4 * direction(heading - run.curvature * h / 2) +
             direction(heading - run.curvature * h));
      heading -= run.curvature * h;
    }
  }
  return at;
}

void holds_for_parallel(const Profile& p, double d) {
  const Profile q = offset(p, d);
  CHECK(q.girth() == within(p.girth() + d * p.turn(), kRounding));
  CHECK(q.turn() == within(p.turn(), 1e-10));
  CHECK(same_shape(offset(q, -d), p, 1e-8));
  for (int i = 0; i <= kSamples; ++i) {
    const double s = p.girth() * i / kSamples;
    const Pose there = p.at(s);
    REQUIRE(same(q.point(offset_station(p, s, d)), there.point + d * there.normal(), 1e-8));
  }
}

}  // namespace

TEST_CASE("Parallels of the named profiles keep their distance, turn and girth rule") {
  int seen = 0;
  for (const auto& named : named_profiles())
    for (const double share : {0.95, 0.5, 0.1, -0.1, -0.5, -0.95}) {
      const double d = share * named.clear;
      if (d >= named.room_out || -d >= named.room_in) continue;
      CAPTURE(named.name, d);
      holds_for_parallel(named.profile, d);
      const Profile q = offset(named.profile, d);
      for (int i = 0; i <= kSamples; ++i)
        REQUIRE(named.profile.nearest(q.point(q.girth() * i / kSamples)).distance ==
                within(std::abs(d), 1e-8));
      ++seen;
    }
  CHECK(seen == 6 * kNamedProfiles);
}

TEST_CASE("Parallels of the named profiles exist up to the least radius and no further") {
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    if (named.room_in < 1e6) {
      CHECK_NOTHROW(offset(named.profile, -0.999 * named.room_in));
      REQUIRE_ERROR(ErrorKind::geometry, offset(named.profile, -1.001 * named.room_in));
      ++seen;
    }
    if (named.room_out < 1e6) {
      CHECK_NOTHROW(offset(named.profile, 0.999 * named.room_out));
      REQUIRE_ERROR(ErrorKind::geometry, offset(named.profile, 1.001 * named.room_out));
      ++seen;
    }
  }
  CHECK(seen == 16);
}

TEST_CASE("Named profiles keep the rules of every profile") {
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    const Profile& p = named.profile;
    CHECK(same(p.end().point, integrated_end(p), 1e-6));
    CHECK(same_shape(p.mirrored().mirrored(), p, 1e-8));
    CHECK(same_shape(p.reversed().reversed(), p, 1e-8));
    const Profile level = levelled(p);
    CHECK(same(level.start().point, {-chord(p) / 2, 0}, 1e-8));
    CHECK(same(level.end().point, {chord(p) / 2, 0}, 1e-8));
    for (int i = 0; i <= kSamples; ++i)
      CHECK(p.nearest(p.point(p.girth() * i / kSamples)).distance < kRounding);
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("Random profiles keep the rules of every profile") {
  property("the end is where integration of the heading leads", [] {
    const Profile p = random_profile();
    RC_ASSERT(same(p.end().point, integrated_end(p), 1e-6));
  });
  property("the heading is continuous and falls along crowns", [] {
    const Profile p = random_profile();
    double heading = p.start().heading;
    for (std::size_t i = 0; i < p.runs().size(); ++i) {
      RC_ASSERT(std::abs(p.pose(i).heading - heading) < 1e-9);
      RC_ASSERT(std::abs(p.heading(p.station(i) + p.runs()[i].length / 2) -
                         (heading - p.runs()[i].turn() / 2)) < 1e-9);
      heading -= p.runs()[i].turn();
    }
  });
  property("a parallel there and back is the profile itself", [] {
    const Profile p = random_profile();
    const double d = tenths(-59, 59);
    RC_ASSERT(same_shape(offset(offset(p, d), -d), p, 1e-7));
  });
  property("a parallel of a parallel is the parallel at the sum", [] {
    const Profile p = random_profile();
    const double a = tenths(-29, 29), b = tenths(-29, 29);
    RC_ASSERT(same_shape(offset(offset(p, a), b), offset(p, a + b), 1e-7));
  });
  property("a parallel is longer by distance times turn", [] {
    const Profile p = random_profile();
    const double d = tenths(-59, 59);
    RC_ASSERT(std::abs(offset(p, d).girth() - (p.girth() + d * p.turn())) < 1e-8);
  });
  property("each point of a parallel lies on the normal of its station", [] {
    const Profile p = random_profile();
    const double d = tenths(-59, 59);
    const double s = p.girth() * tenths(0, 100) / 100;
    RC_ASSERT(same(offset(p, d).point(offset_station(p, s, d)), p.point(s) + d * p.at(s).normal(), 1e-7));
  });
  property("no point of a parallel is farther off than its distance", [] {
    const Profile p = random_profile();
    const double d = tenths(-59, 59);
    const Profile q = offset(p, d);
    RC_ASSERT(p.nearest(q.point(q.girth() * tenths(0, 100) / 100)).distance <= std::abs(d) + 1e-7);
  });
  property("mirrored twice and reversed twice it is itself", [] {
    const Profile p = random_profile();
    RC_ASSERT(same_shape(p.mirrored().mirrored(), p, 1e-7));
    RC_ASSERT(same_shape(p.reversed().reversed(), p, 1e-7));
  });
  property("mirrored it is the reflection in X = 0", [] {
    const Profile p = random_profile();
    const double s = p.girth() * tenths(0, 100) / 100;
    const Vec2 there = p.point(s);
    RC_ASSERT(same(p.mirrored().point(p.girth() - s), {-there.x(), there.y()}, 1e-7));
  });
  property("its chord lies level when levelled", [] {
    const Profile p = random_profile();
    RC_PRE(chord(p) > 1);
    const Profile level = levelled(p);
    RC_ASSERT(std::abs(chord(level) - chord(p)) < 1e-7);
    RC_ASSERT(same(level.start().point, {-chord(p) / 2, 0}, 1e-7));
    RC_ASSERT(same(level.end().point, {chord(p) / 2, 0}, 1e-7));
  });
  property("a point of the curve is its own nearest", [] {
    const Profile p = random_profile();
    RC_ASSERT(p.nearest(p.point(p.girth() * tenths(0, 100) / 100)).distance < 1e-8);
  });
  property("no sample of the curve is nearer than the nearest", [] {
    const Profile p = random_profile();
    const Vec2 to{tenths(-1500, 1500), tenths(-1500, 1500)};
    const auto nearest = p.nearest(to);
    RC_ASSERT(std::abs((p.point(nearest.station) - to).norm() - nearest.distance) < 1e-8);
    for (int i = 0; i <= kSamples; ++i)
      RC_ASSERT((p.point(p.girth() * i / kSamples) - to).norm() >= nearest.distance - 1e-8);
  });
  property("the box holds the curve and touches it on four sides", [] {
    const Profile p = random_profile();
    const Box2 box = p.box();
    constexpr int kMany = 4000;
    Box2 seen;
    for (int i = 0; i <= kMany; ++i) seen.add(p.point(p.girth() * i / kMany));
    RC_ASSERT(((seen.low - box.low).array() > -1e-8).all());
    RC_ASSERT(((box.high - seen.high).array() > -1e-8).all());
    const double step = p.girth() / kMany;  // a joint may lie between two samples
    RC_ASSERT(((seen.low - box.low).array() < step).all());
    RC_ASSERT(((box.high - seen.high).array() < step).all());
  });
  property("cut in two, the pieces meet and add up", [] {
    const Profile p = random_profile();
    const double s = p.girth() * tenths(1, 99) / 100;
    const Profile a = cut(p, 0, s), b = cut(p, s, p.girth());
    // A sliver next to a joint may be left out: 1e-6 each.
    RC_ASSERT(std::abs(a.girth() + b.girth() - p.girth()) < 3e-6);
    RC_ASSERT(same(a.end().point, b.start().point, 3e-6));
    RC_ASSERT(same(b.end().point, p.end().point, 1e-2));
  });
  property("carried on, it keeps its own stretch", [] {
    const Profile p = random_profile();
    const double left = tenths(0, 60), right = tenths(0, 60);
    const Profile longer = extended(p, left, right);
    RC_ASSERT(std::abs(longer.girth() - p.girth() - left - right) < 1e-8);
    const double s = p.girth() * tenths(0, 100) / 100;
    RC_ASSERT(same(longer.point(left + s), p.point(s), 1e-7));
  });
  property("springback acts on the turn and not on the girth", [] {
    const Profile p = random_profile();
    const double r = tenths(-3, 3) / 10;
    for (const Run& run : p.runs()) RC_PRE(std::abs(run.turn()) / (1 - r) < 6.2);
    const Profile pressed = compensated(p, r);
    RC_ASSERT(std::abs(pressed.girth() - p.girth()) < 1e-8);
    RC_ASSERT(std::abs(pressed.turn() * (1 - r) - p.turn()) < 1e-9);
  });
  property("shape changes rise, and inflections lie between bends of opposite sense", [] {
    const Profile p = random_profile();
    const auto changes = p.shape_changes();
    RC_ASSERT(changes.size() + 1 == p.runs().size());
    for (std::size_t i = 1; i < changes.size(); ++i) RC_ASSERT(changes[i] > changes[i - 1]);
    std::size_t expected = 0;
    double sense = 0;
    for (const Run& run : p.runs()) {
      if (run.straight()) continue;
      if (sense * run.curvature < 0) ++expected;
      sense = run.curvature;
    }
    RC_ASSERT(p.inflections().size() == expected);
  });
  property("a curve that samples show to cross itself is refused", [] {
    const Profile p = random_profile();
    // Chords of 200 steps: a clear crossing of two that are not neighbours. Chords may cross where the curve
    // only comes near, so only steps whose ends lie well to either side count.
    constexpr int kSteps = 200;
    bool crosses = false;
    for (int i = 0; i < kSteps && !crosses; ++i)
      for (int j = i + 2; j < kSteps && !crosses; ++j) {
        const Vec2 a = p.point(p.girth() * i / kSteps), b = p.point(p.girth() * (i + 1) / kSteps);
        const Vec2 c = p.point(p.girth() * j / kSteps), d = p.point(p.girth() * (j + 1) / kSteps);
        const double margin =
            std::pow(p.girth() / kSteps, 2) / (8 * kLeastRandomRadius) + 1e-3;  // sagitta of a step
        const double c_side = cross(b - a, c - a) / (b - a).norm(),
                     d_side = cross(b - a, d - a) / (b - a).norm();
        const double a_side = cross(d - c, a - c) / (d - c).norm(),
                     b_side = cross(d - c, b - c) / (d - c).norm();
        const auto apart = [&](double x, double y) {
          return x * y < 0 && std::min(std::abs(x), std::abs(y)) > margin;
        };
        crosses = apart(c_side, d_side) && apart(a_side, b_side);
      }
    const bool refused = error_of([&] { refuse_crossing(p, "curve"); }).has_value();
    RC_ASSERT(refused || !crosses);
  });
}
