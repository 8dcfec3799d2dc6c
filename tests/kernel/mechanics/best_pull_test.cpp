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
constexpr double kNearLifting = 1e-3;  // of an even pressure

void no_better(const Profile& level, const PullChoice& best, double axis, double at, int& seen) {
  const PullChoice other = pull_choice(level, axis, at);
  CAPTURE(axis, at, other.spread(), best.axis, best.at, best.spread());
  // A pull under which something lifts is no rival of one under which nothing does; nor one nearer to lifting
  // than the little that the best keeps clear of it.
  const bool lifts = best.least > 0 && other.least == 0;
  const bool nearer = best.least > 0 && best.least < kNearLifting && other.least < best.least;
  REQUIRE((lifts || nearer || other.spread() >= best.spread() - kNoticed));
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

namespace {

struct Lifting {
  std::string name;
  double from, to;  // axes, degrees
  std::vector<Run> runs;
};

// Lines that lift somewhere wherever and along whichever of those axes they are pulled, or nearly so.
std::vector<Lifting> lifting_lines() {
  return {
      {"three crowns and a line",
       -20,
       20,
       {bend(48.38, 351.78), bend(60.38, 721.01), bend(66.55, 205.67), straight(383.73)}},
      {"two crowns, steep", -30, 30, {{269.96, radians(38.43) / 269.96}, {167.15, radians(24.87) / 167.15}}},
      {"a crown and a short flat", -40, -20, {{500.67, radians(58.33) / 500.67}, {21.52, 0}}}};
}

}  // namespace

TEST_CASE(
    "Where a bed lifts wherever it is pulled, no other pull presses more evenly than the best by a tenth") {
  int seen = 0, lines = 0;
  for (const Lifting& line : lifting_lines()) {
    CAPTURE(line.name);
    const Profile level = levelled_of(line.runs);
    const auto best = best_pull(level, radians(line.from), radians(line.to));
    REQUIRE(best);
    CHECK(std::isfinite(best->spread()));
    const double wide = chord(level) / 2;
    for (int i = 0; i <= 40; ++i)
      for (int j = -40; j <= 40; ++j) {
        const double axis = radians(line.from + (line.to - line.from) * i / 40);
        const PullChoice other = pull_choice(level, axis, wide * j / 40);
        CAPTURE(axis, other.at, other.spread(), other.least, best->axis, best->at, best->spread(),
                best->least);
        // Several valleys are searched between places: one a little deeper may be missed, none that matters.
        if (other.presses() == best->presses()) REQUIRE(other.spread() >= 0.9 * best->spread());
        if (other.presses()) REQUIRE(best->presses());
        ++seen;
      }
    ++lines;
  }
  CHECK(lines == 3);
  CHECK(seen == 3 * 41 * 81);
}

TEST_CASE("Narrow ranges of balance far from the chord's middle are found") {
  // Found by trying 100 000 positions each: balanced from 159.50 to 160.19, and from -161.4 to -157.9.
  const Profile a = levelled_of({{269.96, radians(38.43) / 269.96}, {167.15, radians(24.87) / 167.15}});
  const Profile b = levelled_of({{500.67, radians(58.33) / 500.67}, {21.52, 0}});
  int seen = 0;
  for (const auto& [level, axis, from, to] :
       {std::tuple{a, 28.73, 159.4, 160.3}, std::tuple{b, -22.3, -161.5, -157.8}}) {
    const PullChoice best = best_position(level, radians(axis));
    CAPTURE(from, to, best.at);
    CHECK(std::isfinite(best.spread()));
    CHECK(best.at > from);
    CHECK(best.at < to);
    ++seen;
  }
  CHECK(seen == 2);
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
