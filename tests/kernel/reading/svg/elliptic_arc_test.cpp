#include "kernel/reading/svg/elliptic_arc.hpp"

#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;
using svg_reading::elliptic_arc;
using svg_reading::EndpointArc;

TEST_CASE("The four arcs between two points are told apart by their flags") {
  // Circles of radius 50 through (0, 0) and (60, 0): centres (30, 40) and (30, -40). A growing angle leads,
  // Y down, clockwise: from the left end over the top.
  const double least = 2 * std::asin(0.6);
  int seen = 0;
  for (const bool large : {false, true})
    for (const bool sweep : {false, true}) {
      const auto arc = elliptic_arc({{0, 0}, {60, 0}, 50, 50, 0, large, sweep});
      REQUIRE(arc);
      CHECK(same(arc->centre, {30, large == sweep ? -40.0 : 40.0}));
      CHECK(arc->turn == within((sweep ? 1 : -1) * (large ? 2 * kPi - least : least), 1e-12));
      CHECK(same(arc->at(arc->start), {0, 0}));
      CHECK(same(arc->at(arc->start + arc->turn), {60, 0}));
      ++seen;
    }
  CHECK(seen == 4);
}

TEST_CASE("Radii that do not reach grow until they do, in their proportion") {
  const auto circle = elliptic_arc({{0, 0}, {600, 0}, 10, 10, 0, false, true});
  REQUIRE(circle);
  CHECK(same(circle->centre, {300, 0}));
  CHECK(circle->u.norm() == within(300, kRounding));
  CHECK(circle->turn == within(kPi, 1e-12));
  const auto ellipse = elliptic_arc({{0, 0}, {600, 0}, 10, 5, 0, true, false});
  REQUIRE(ellipse);
  CHECK(ellipse->u.norm() == within(300, kRounding));
  CHECK(ellipse->v.norm() == within(150, kRounding));
  CHECK(ellipse->turn == within(-kPi, 1e-12));
}

TEST_CASE("Negative radii count without their sign, the axis without whole turns") {
  const auto plain = elliptic_arc({{0, 0}, {60, 10}, 80, 40, 30, false, true});
  const auto odd = elliptic_arc({{0, 0}, {60, 10}, -80, -40, 30 + 720, false, true});
  REQUIRE((plain && odd));
  CHECK(same(plain->centre, odd->centre));
  CHECK(same(plain->u, odd->u));
  CHECK(plain->turn == within(odd->turn, 1e-12));
}

TEST_CASE("No radius, or ends that are one, make no arc") {
  CHECK_FALSE(elliptic_arc({{0, 0}, {60, 0}, 0, 50, 0, false, true}));
  CHECK_FALSE(elliptic_arc({{0, 0}, {60, 0}, 50, 0, 0, false, true}));
  CHECK_FALSE(elliptic_arc({{5, 5}, {5, 5}, 50, 50, 0, true, true}));
}

TEST_CASE("An arc runs from one end to the other on its ellipse, by the way its flags name") {
  property("arc by its ends", [] {
    EndpointArc stated;
    stated.from = {tenths(-100, 100), tenths(-100, 100)};
    stated.to = stated.from + Vec2(tenths(1, 100), tenths(-100, 100));
    stated.rx = tenths(1, 300);
    stated.ry = tenths(1, 300);
    stated.axis_deg = tenths(-400, 400);
    stated.large = *rc::gen::inRange(0, 2) == 1;
    stated.sweep = *rc::gen::inRange(0, 2) == 1;
    const auto arc = elliptic_arc(stated);
    RC_ASSERT(arc.has_value());
    // Where radii just reach, the centre is the root of a difference: half of the digits of 300.
    RC_ASSERT(same(arc->at(arc->start), stated.from, 1e-5));
    RC_ASSERT(same(arc->at(arc->start + arc->turn), stated.to, 1e-5));
    RC_ASSERT((arc->turn > 0) == stated.sweep);
    RC_ASSERT(std::abs(arc->turn) <= kPi + 1e-12 || stated.large);
    RC_ASSERT(std::abs(arc->turn) >= kPi - 1e-12 || !stated.large);
    RC_ASSERT(arc->u.norm() / arc->v.norm() == within(stated.rx / stated.ry, 1e-9 * stated.rx / stated.ry));
  });
}
