#include "kernel/mechanics/screw.hpp"

#include <cmath>

#include "kernel/mechanics/timber.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A few products and powers: relative 1e-15, with room.
constexpr double kProducts = 1e-13;

}  // namespace

TEST_CASE("Screws hold in proportion to length and diameter and to the square of the gravity") {
  const double once = withdrawal_wood(0.5, 4, 30);
  CHECK(withdrawal_wood(0.5, 4, 60) == Approx(2 * once).epsilon(kProducts));
  CHECK(withdrawal_wood(0.5, 8, 30) == Approx(2 * once).epsilon(kProducts));
  CHECK(withdrawal_wood(1.0, 4, 30) == Approx(4 * once).epsilon(kProducts));
  CHECK(kEndGrain == 0.75);
}

TEST_CASE(
    "Boards hold screws better in the face than in the edge, and fibreboard better than particleboard") {
  int seen = 0;
  for (double length = 10; length <= 40; length += 5, ++seen) {
    const auto hold = [&](double factor) { return withdrawal_board(0.7, 4.17, length, factor); };
    CHECK(hold(kParticleboardFace) > hold(kParticleboardEdge));
    CHECK(hold(kFibreboardFace) > hold(kFibreboardEdge));
    CHECK(hold(kFibreboardEdge) > hold(kParticleboardFace));
    CHECK(withdrawal_board(1.4, 4.17, length, 1) == Approx(4 * hold(1)).epsilon(kProducts));
    CHECK(withdrawal_board(0.7, 4.17, length + 5, 1) > hold(1));
  }
  CHECK(seen == 7);
  // D 9, L 19 leaves 16 behind the tip: 3 * 16^(5/4) = 3 * 32, times 1 and 0.25.
  CHECK(withdrawal_board(0.5, 9, 19, 1) == Approx(24).epsilon(kProducts));
  CHECK(message_of([] { withdrawal_board(0.7, 6, 2, 1); }) ==
        "a rule of the program does not hold: a screw holds behind its tip; please report it with the job "
        "file");
}

TEST_CASE("Screws from 8 on need no reduction for slenderness") {
  // k_d = min(d / 8, 1); without it the strength goes with d^0.5.
  const auto full = [](double d) { return withdrawal_en1995(d, 80, 400) / std::sqrt(d); };
  CHECK(full(8) == Approx(full(12)).epsilon(kProducts));
  CHECK(full(6) == Approx(0.75 * full(8)).epsilon(kProducts));
}

TEST_CASE("A characteristic strength lies below the mean ultimate one") {
  // Softwood of the class with rho_k 350 and rho_mean 420 kg/m3: specific gravity 420 / 1120 = 0.375.
  int seen = 0;
  for (const double d : {6.0, 8.0, 10.0, 12.0})
    for (const double length : {72.0, 100.0, 140.0}) {
      CAPTURE(d, length);
      const double mean = withdrawal_wood(0.375, d, length);
      CHECK(withdrawal_en1995(d, length, 350) < mean);
      CHECK(withdrawal_en1995(d, length, 350) > 0.4 * mean);
      ++seen;
    }
  CHECK(seen == 12);
}

TEST_CASE("A beam splits less easily the farther its bore lies from the edge it is drawn to") {
  // b 46, h 90, bore in the middle: 14 * 46 * sqrt(45 / 0.5) = 644 * 9.486833.
  CHECK(splitting_en1995(46, 90, 45) == Approx(6109.520).margin(5e-4));
  // Two thirds: 644 * sqrt(60 / (1/3)) = 644 * 13.416408.
  CHECK(splitting_en1995(46, 90, 60) == Approx(8640.167).margin(5e-4));
  CHECK(splitting_en1995(92, 90, 60) == Approx(2 * splitting_en1995(46, 90, 60)).epsilon(kProducts));
  int seen = 0;
  for (double edge = 5; edge < 85; edge += 5, ++seen)
    CHECK(splitting_en1995(46, 90, edge + 5) > splitting_en1995(46, 90, edge));
  CHECK(seen == 16);
}

TEST_CASE("A bore outside its beam is refused") {
  int seen = 0;
  for (const double edge : {-1.0, 0.0, 90.0, 120.0}) {
    CHECK(message_of([&] { splitting_en1995(46, 90, edge); }) ==
          "a rule of the program does not hold: a bore lies in its beam; please report it with the job file");
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("Thick pins press into the wood more easily than thin ones") {
  int seen = 0;
  for (double d = 4; d < 30; ++d, ++seen) {
    CHECK(embedment_timber(d + 1, 550) < embedment_timber(d, 550));
    CHECK(embedment_plywood(d + 1, 600) < embedment_plywood(d, 600));
    CHECK(embedment_board(d + 1, 18) < embedment_board(d, 18));
  }
  CHECK(seen == 26);
  CHECK(embedment_timber(8, 700) == Approx(2 * embedment_timber(8, 350)).epsilon(kProducts));
  CHECK(embedment_board(8, 32 * 12) == Approx(2 * embedment_board(8, 12)).epsilon(kProducts));  // 32^0.2 = 2
}

TEST_CASE("Shallow timber is stronger, by no more than 1.3, and not where it is dense") {
  CHECK(size_factor(150, 350) == 1);
  CHECK(size_factor(200, 350) == 1);
  CHECK(size_factor(90, 720) == 1);
  CHECK(size_factor(1, 350) == 1.3);
  CHECK(size_factor(90, 700) > 1);
  int seen = 0;
  for (double h = 40; h < 150; h += 5, ++seen) {
    CHECK(size_factor(h + 5, 550) < size_factor(h, 550));
  }
  CHECK(seen == 22);
}
