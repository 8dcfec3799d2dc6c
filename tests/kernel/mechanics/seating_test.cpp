// Equilibrium and contact of a rigid half on a bed without tension.
#include "tests/kernel/mechanics/bed_sums.hpp"

using namespace lamwright;
using namespace lamwright::test;

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

TEST_CASE("The positions that a bed balances are one stretch without holes") {
  // The loads that pressures on a bed balance are a cone, and the pulls of one axis a line through it.
  std::vector<NamedLine> lines{{"five runs, the last a line that may touch alone",
                                Profile({{0, 0}, radians(77.357)}, {{382.063, radians(58.56) / 382.063},
                                                                    {64.559, radians(6.07) / 64.559},
                                                                    {434.678, radians(83.70) / 434.678},
                                                                    {847.487, radians(-70.66) / 847.487},
                                                                    {493.295, 0}})}};
  for (const NamedLine& line : pressed_lines())
    if (line.line.runs().size() > 1) lines.push_back(line);
  int seen = 0;
  for (const auto& [name, line] : lines) {
    CAPTURE(name);
    const Stretch range = balanced_positions(line);
    for (int i = 1; i < 400; ++i, ++seen) {
      const double at = between(range, 0.02 + 0.96 * i / 400.0);
      CAPTURE(at);
      REQUIRE(seat({line, at, 1, 1}).hold() == Hold::held);
    }
  }
  CHECK(seen == int(lines.size()) * 399);
  CHECK(lines.size() == 8);
}

TEST_CASE("A single arc that leans is in full contact only when pulled through its centre") {
  // Radius 500, 60 degrees, leaning by 3: the centre lies 500 cos 30 below the chord's middle and, turned by
  // 3 degrees, 500 cos 30 sin 3 = 22.66 beside it.
  const Profile level = levelled_of({bend(60, 500)});
  int seen = 0;
  for (const double lean : {-3.0, 3.0}) {
    const auto room = full_contact({pull_upright(level, radians(lean)), 0, 1, 1});
    REQUIRE(room);
    CHECK(room->from == room->to);
    CHECK(std::abs(room->from) == within(500 * std::cos(kPi / 6) * std::sin(radians(3)), 1e-9));
    const Seating held = seat({pull_upright(level, radians(lean)), room->from, 1, 1});
    CHECK(held.hold() == Hold::held);
    CHECK(held.lifted().empty());
    ++seen;
  }
  CHECK(seen == 2);
}
