#include "kernel/mechanics/bend_limit.hpp"

#include <algorithm>

#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A few products: relative 1e-15, with room.
constexpr double kProducts = 1e-13;

// Rows 0.5 to 1.5 apart whose radii grow, in any order.
std::vector<PlywoodBend> random_table() {
  std::vector<PlywoodBend> out;
  double thickness = tenths(1, 3), radius = tenths(20, 300);
  const int count = *rc::gen::inRange(1, 8);
  for (int i = 0; i < count; ++i) {
    out.push_back({thickness, radius});
    thickness += tenths(5, 15) / 10;
    radius += tenths(1, 300);
  }
  const int shift = *rc::gen::inRange(0, count);
  std::rotate(out.begin(), out.begin() + shift, out.end());
  return out;
}

}  // namespace

TEST_CASE("A strip bent to its elastic limit is stressed to its strength") {
  property("random moduli, strengths and thicknesses", [] {
    const double modulus = tenths(500, 20000), strength = tenths(2, 150), thickness = tenths(1, 50) / 10;
    const double radius = elastic_ratio(modulus, strength) * thickness;
    RC_ASSERT(std::abs(forming_stress(modulus, thickness, radius) - strength) < kProducts * strength);
  });
}

TEST_CASE("Tighter bends keep less of the strength") {
  CHECK(curvature_factor(1, 1e9) == Approx(1).epsilon(kProducts));
  CHECK(bending_factor(1e9) == 1);
  // 1 - 2000 (t / R)^2 is used up at R / t = sqrt(2000) = 44.7.
  CHECK(curvature_factor(1, 45) > 0);
  CHECK(curvature_factor(1, 44) == 0);
  CHECK(curvature_factor(10, 400) == 0);
  int seen = 0;
  for (int ratio = 45; ratio < 400; ++ratio, ++seen) {
    CHECK(curvature_factor(1, ratio + 1) > curvature_factor(1, ratio));
    CHECK(bending_factor(ratio + 1) >= bending_factor(ratio));
    CHECK(curvature_factor(3, 3 * ratio) == Approx(curvature_factor(1, ratio)).epsilon(kProducts));
  }
  CHECK(seen == 355);
}

TEST_CASE("The bending factor meets 1 without a step") {
  CHECK(bending_factor(240 - 1e-9) == Approx(1).epsilon(1e-11));
  CHECK(bending_factor(240) == 1);
}

TEST_CASE("Plywood bends by its rows, straight between them and in proportion beyond") {
  const std::vector<PlywoodBend> table{{6, 600}, {9, 900}, {12, 1800}};
  CHECK(plywood_radius(table, 6) == 600);
  CHECK(plywood_radius(table, 9) == 900);
  CHECK(plywood_radius(table, 12) == 1800);
  CHECK(*plywood_radius(table, 10) == Approx(1200).epsilon(kProducts));  // a third of the way
  CHECK(*plywood_radius(table, 3) == Approx(300).epsilon(kProducts));    // R / t 100 of the first row
  CHECK(*plywood_radius(table, 24) == Approx(3600).epsilon(kProducts));  // R / t 150 of the last
}

TEST_CASE("A table without rows says nothing") { CHECK_FALSE(plywood_radius({}, 6).has_value()); }

TEST_CASE("One row gives its ratio to every thickness") {
  CHECK(*plywood_radius({{6, 600}}, 2) == Approx(200).epsilon(kProducts));
  CHECK(*plywood_radius({{6, 600}}, 6) == 600);
  CHECK(*plywood_radius({{6, 600}}, 20) == Approx(2000).epsilon(kProducts));
}

TEST_CASE("Plywood radii hit every row, grow with the thickness and do not ask for an order") {
  property("random tables", [] {
    const std::vector<PlywoodBend> table = random_table();
    for (const PlywoodBend& row : table)
      RC_ASSERT(std::abs(*plywood_radius(table, row.thickness) - row.radius) < kProducts * row.radius);
    std::vector<PlywoodBend> sorted = table;
    std::sort(sorted.begin(), sorted.end(),
              [](const PlywoodBend& a, const PlywoodBend& b) { return a.thickness < b.thickness; });
    double last = 0;
    int steps = 0;
    for (double t = 0.05; t < 20; t += 0.13, ++steps) {
      const double now = *plywood_radius(table, t);
      RC_ASSERT(now > last);
      RC_ASSERT(now == *plywood_radius(sorted, t));
      last = now;
    }
    RC_ASSERT(steps > 100);
  });
}
