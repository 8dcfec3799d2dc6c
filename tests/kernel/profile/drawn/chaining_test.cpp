#include "kernel/profile/drawn/chaining.hpp"

#include <algorithm>
#include <cmath>

#include "tests/support/drawn.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Legs of an L with a corner R60; `gap` before the corner.
std::vector<Segment> l_shape(double gap) {
  return {line({0, 400}, {0, 60 + gap}), arc({0, 60}, {60, 0}, {60, 60}, 90), line({60, 0}, {400, 0})};
}

}  // namespace

TEST_CASE("Gaps up to the joining distance are closed and the largest is told") {
  int seen = 0;
  for (const double gap : {1e-7, 1e-4, 0.01}) {
    const Chained chain = chained(loose(l_shape(gap)), 0.01);
    CHECK(chain.pieces.size() == 3);
    CHECK(chain.largest_gap == within(gap, 1e-12));
    CHECK(same(chain.gap_at, {0, 60 + gap}));
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("A wider gap is refused with its ends and its size") {
  const std::string message = message_of([] { chained(loose(l_shape(0.2)), 0.01); });
  CAPTURE(message);
  CHECK(holds(message, "begins 0.2 away"));
  CHECK(holds(message, "from (0, 60.2) to (0, 60)"));
  CHECK(holds(message, "raise join"));
  CHECK(chained(loose(l_shape(0.2)), 0.2).pieces.size() == 3);
}

TEST_CASE("Pieces in any order and direction become the same chain") {
  const std::vector<Segment> pieces = l_shape(0);
  std::vector<int> order{0, 1, 2};
  int seen = 0;
  do {
    for (int turned = 0; turned < 8; ++turned) {
      std::vector<Segment> shuffled;
      for (const int i : order) shuffled.push_back(turned >> i & 1 ? pieces[i].reversed() : pieces[i]);
      const Chained chain = chained(loose(shuffled), 0.01);
      REQUIRE(chain.pieces.size() == 3);
      CHECK_FALSE(chain.closed);
      const Vec2 a = first_point(chain.pieces.front()), b = last_point(chain.pieces.back());
      CHECK(((same(a, {0, 400}) && same(b, {400, 0})) || (same(b, {0, 400}) && same(a, {400, 0}))));
      for (std::size_t i = 0; i + 1 < 3; ++i)
        CHECK(same(last_point(chain.pieces[i]), first_point(chain.pieces[i + 1])));
      ++seen;
    }
  } while (std::next_permutation(order.begin(), order.end()));
  CHECK(seen == 48);
}

TEST_CASE("The first curve keeps its direction") {
  const Chained chain = chained(loose({line({10, 0}, {20, 0}), line({10, 0}, {0, 0})}), 0.01);
  CHECK(same(first_point(chain.pieces.front()), {0, 0}));
  CHECK(same(last_point(chain.pieces.back()), {20, 0}));
}

TEST_CASE("A curve drawn twice counts once, whichever way it was drawn") {
  std::vector<DrawnCurve> curves = loose(l_shape(0));
  const std::vector<DrawnCurve> again = loose({l_shape(0)[1].reversed(), l_shape(0)[2]});
  curves.insert(curves.end(), again.begin(), again.end());
  const Chained chain = chained(curves, 0.01);
  CHECK(chain.pieces.size() == 3);
  CHECK(chain.doubled == 2);
}

TEST_CASE("A closed path drawn twice counts once") {
  const std::vector<DrawnPiece> ring{arc({100, 0}, {-100, 0}, {0, 0}, 180),
                                     arc({-100, 0}, {100, 0}, {0, 0}, 180)};
  const Chained chain = chained({drawn(ring), drawn(ring)}, 0.01);
  CHECK(chain.closed);
  CHECK(chain.doubled == 1);
}

TEST_CASE("Two arcs between the same points are a ring, not doubles") {
  const Chained chain =
      chained(loose({arc({100, 0}, {-100, 0}, {0, 0}, 180), arc({100, 0}, {-100, 0}, {0, 0}, -180)}), 0.01);
  CHECK(chain.closed);
  CHECK(chain.doubled == 0);
  CHECK(chain.pieces.size() == 2);
}

TEST_CASE("A branch is refused with its point") {
  const std::string message = message_of([] {
    chained(loose({line({0, 0}, {10, 0}), line({10, 0}, {20, 0}), line({10, 0}, {10, 9})}), 0.01);
  });
  CAPTURE(message);
  CHECK(holds(message, "more than two pieces meet at (10, 0)"));
}

TEST_CASE("Two curves that are far apart are refused, and choosing is offered") {
  const std::string message = message_of([] {
    chained(loose({line({0, 0}, {10, 0}), line({0, 50}, {10, 50})}), 0.01);
  });
  CAPTURE(message);
  CHECK(holds(message, "1 piece left over"));
  CHECK(holds(message, "50 away"));
  CHECK(holds(message, "path or layer"));
}

TEST_CASE("No curve, and points that are not finite, are refused") {
  REQUIRE_ERROR(ErrorKind::geometry, chained({}, 0.01));
  REQUIRE_ERROR(ErrorKind::geometry, chained(loose({line({0, 0}, {NAN, 0})}), 0.01));
}

TEST_CASE("A chain of twenty thousand shuffled pieces is put in order") {
  std::vector<Segment> pieces;
  for (int i = 0; i < 20000; ++i) {
    const Vec2 a{i * 0.5, std::sin(i * 0.01) * 100}, b{(i + 1) * 0.5, std::sin((i + 1) * 0.01) * 100};
    pieces.push_back(i * 7919 % 3 ? line(a, b) : line(b, a));
  }
  std::vector<Segment> shuffled;
  for (int i = 0; i < 20000; ++i) shuffled.push_back(pieces[std::size_t(i) * 7919 % 20000]);
  const Chained chain = chained(loose(shuffled), 0.01);
  CHECK(chain.pieces.size() == 20000);
  CHECK(std::abs(first_point(chain.pieces.front()).x() - last_point(chain.pieces.back()).x()) ==
        within(10000, 1e-6));
}

TEST_CASE("A piece shorter than the joining distance is no branch") {
  const Chained chain = chained(
      loose({line({0, 0}, {100, 0}), line({100, 0}, {100.009, 0}), line({100.009, 0}, {200, 0})}), 0.01);
  CHECK(chain.pieces.size() == 3);
  CHECK(chain.largest_gap == 0);
}

TEST_CASE("A wide joining distance takes no neighbour for a double") {
  std::vector<Segment> chords;
  for (int i = 0; i < 59; ++i)
    chords.push_back(line(100 * direction(radians(2 * i)), 100 * direction(radians(2 * i + 2))));
  const Chained chain = chained(loose(chords), 5);
  CHECK(chain.pieces.size() == 59);
  CHECK(chain.doubled == 0);
}
