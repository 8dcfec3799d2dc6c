// The pull that presses most evenly, against every other on a grid.
#include "tests/kernel/mechanics/bed_sums.hpp"

using namespace lamwright;
using namespace lamwright::test;

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
  CHECK(best->axis == within(0, 1e-9));
  CHECK(best->at == within(0, 1e-6));
  CHECK(best->spread() <= pull_choice(level, 0, 0).spread() + kNoticed);
}

TEST_CASE("One arc or one flat has no best pull") {
  CHECK(!best_pull(levelled_of({bend(60, 500)}), radians(-20), radians(20)));
  CHECK(!best_pull(levelled_of({bend(-60, 500)}), radians(-20), radians(20)));
  CHECK(!best_pull(levelled_of({straight(500)}), radians(-20), radians(20)));
}
