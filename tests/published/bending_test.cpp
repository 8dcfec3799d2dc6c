// Bending limits of strips, structural laminations and plywood. The source stands beside each check.
#include <cmath>

#include "kernel/mechanics/bend_limit.hpp"
#include "shared/quantity.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Values in closed form, printed to all digits.
constexpr double kExact = 1e-12;

}  // namespace

TEST_CASE("Curved glued laminated timber is weakened by the NDS factor") {
  // NDS 5.3.8, eq. 5.3-3 (formula read in a secondary source, limits from memory): 1 - 2000 (t / R)^2.
  CHECK(curvature_factor(1, 100) == within(0.800, kExact));
  CHECK(curvature_factor(1, 125) == within(0.872, kExact));
  CHECK(curvature_factor(1, 150) == within(0.911111111111, kExact));
  CHECK(curvature_factor(1, 200) == within(0.950, kExact));
  // Worked figures of a public calculator (calculatoratoz.com, 4476), in metres: 1 - 2000 (0.0009 / 0.09)^2 =
  // 0.8.
  CHECK(curvature_factor(0.9, 90) == within(0.8, kExact));
}

TEST_CASE("Bent laminations are weakened by the factor of the European standard") {
  // EN 1995-1-1:2004 6.4.3, eq. (6.49), read in secondary sources: 1 from r / t 240 on, else 0.76 + 0.001 r /
  // t.
  CHECK(bending_factor(100) == within(0.86, kExact));
  CHECK(bending_factor(150) == within(0.91, kExact));
  CHECK(bending_factor(200) == within(0.96, kExact));
  CHECK(bending_factor(240) == 1);
}

TEST_CASE("Laminations for a radius of 500 are as thick as the rules allow") {
  // NDS 5.3.8: t / R at most 1/100 (hardwoods and southern pine), 1/125 (other softwoods); from memory.
  // Former DIN 1052-1:1988: R = 200 t. EN 1995-1-1 6.4.3: no loss from R = 240 t.
  CHECK(curvature_factor(5.0, 500) == within(0.800, kExact));
  CHECK(curvature_factor(4.0, 500) == within(0.872, kExact));
  CHECK(curvature_factor(2.5, 500) == within(0.950, kExact));
  CHECK(bending_factor(500 / 2.083) == 1);
  CHECK(bending_factor(500 / 2.084) < 1);
}

TEST_CASE("Glued laminated timber of the trade stays within its rules") {
  // A glulam maker's own practice, read on its page: inside radius 3 ft with plies of 1/4 in, 7 ft with 3/4
  // in, 20 ft with 1 1/2 in: R / t 144, 112, 160. ANSI 117-2020 3.8, read in a secondary source: 18 ft with 1
  // 1/2 in, southern pine: 144. Former DIN 1052-1:1988: 6.60 m with 33 mm: 200. NDS asks for at least 100.
  struct Row {
    const char *radius, *thickness;
    double ratio;
  };
  int seen = 0;
  for (const Row& row :
       {Row{"3 ft", "1/4 in", 144}, Row{"7 ft", "3/4 in", 112}, Row{"20 ft", "1 1/2 in", 160},
        Row{"18 ft", "1 1/2 in", 144}, Row{"6.60 m", "33 mm", 200}}) {
    CAPTURE(row.radius, row.thickness);
    const double radius = parse_length(row.radius, LengthUnit::mm).value;
    const double thickness = parse_length(row.thickness, LengthUnit::mm).value;
    CHECK(radius / thickness == within(row.ratio, 1e-9));
    CHECK(curvature_factor(thickness, radius) >= 0.8);
    CHECK(bending_factor(radius / thickness) == within(0.76 + row.ratio / 1000, 1e-9));
    ++seen;
  }
  CHECK(seen == 5);
}

TEST_CASE("Bending a lamination stresses it as the Swedish handbook says") {
  // Design of timber structures (Sweden), section on curved beams, read in a secondary source: E t / (2
  // r) = 13 000 * 33 / 16 000 = 26.8 MPa.
  CHECK(forming_stress(13000, 33, 8000) == within(26.8125, kExact));
}

TEST_CASE("A sheet of wood reaches its strength at the radius over thickness worked from the handbook") {
  // R / t = E / (2 f_m) with moduli of elasticity and of rupture of Wood Handbook FPL-GTR-282 (2021), Tables
  // 5-3a and 5-5a, MPa at 12 % moisture.
  struct Wood {
    const char* name;
    double modulus, rupture, ratio;
  };
  int seen = 0;
  for (const Wood& wood : {Wood{"American beech", 11900, 103, 57.8}, Wood{"yellow birch", 13900, 114, 61.0},
                           Wood{"white oak", 12300, 105, 58.6}, Wood{"northern red oak", 12500, 99, 63.1},
                           Wood{"white ash", 12000, 106, 56.6}, Wood{"sugar maple", 12600, 109, 57.8},
                           Wood{"black walnut", 11600, 101, 57.4}, Wood{"true mahogany", 10300, 79.3, 64.9},
                           Wood{"African mahogany", 9700, 73.8, 65.7}, Wood{"yellow-poplar", 10900, 70, 77.9},
                           Wood{"coast Douglas-fir", 13400, 85, 78.8}}) {
    CAPTURE(wood.name);
    CHECK(elastic_ratio(wood.modulus, wood.rupture) == within(wood.ratio, 0.05 + 1e-9));
    ++seen;
  }
  CHECK(seen == 11);
}

TEST_CASE("Construction plywood bends to the association's radii") {
  // APA minimum bending radii, dry panels, read in secondary sources: thickness in, radii ft across and
  // parallel to the face grain, and R / t of both.
  struct Row {
    const char* thickness;
    double across, parallel, across_ratio, parallel_ratio;
  };
  const std::vector<Row> rows{{"1/4 in", 2, 5, 95, 238},   {"5/16 in", 2, 6, 77, 231},
                              {"3/8 in", 3, 8, 96, 257},   {"1/2 in", 6, 12, 144, 288},
                              {"5/8 in", 8, 16, 153, 307}, {"3/4 in", 12, 20, 191, 319}};
  const auto thickness = [](const Row& row) { return parse_length(row.thickness, LengthUnit::mm).value; };
  std::vector<PlywoodBend> across, parallel;
  for (const Row& row : rows) {
    across.push_back({thickness(row), row.across * kMmPerFoot});
    parallel.push_back({thickness(row), row.parallel * kMmPerFoot});
  }
  int seen = 0;
  for (const Row& row : rows) {
    CAPTURE(row.thickness);
    const double t = thickness(row);
    CHECK(*plywood_radius(across, t) == within(row.across * kMmPerFoot, 1e-9));
    CHECK(*plywood_radius(parallel, t) == within(row.parallel * kMmPerFoot, 1e-9));
    // Worked from the metric column, whose thickness is rounded to 0.1: up to 0.05 / 6.4 of 319, 1 in the
    // unit.
    CHECK(*plywood_radius(across, t) / t == within(row.across_ratio, 1.5));
    CHECK(*plywood_radius(parallel, t) / t == within(row.parallel_ratio, 2));
    ++seen;
  }
  CHECK(seen == 6);
  // Worked: 11 / 32 in lies halfway between 5/16 and 3/8 in, so 2 1/2 ft and 7 ft.
  const double between = 11.0 / 32 * kMmPerInch;
  CHECK(*plywood_radius(across, between) == within(2.5 * kMmPerFoot, 1e-9));
  CHECK(*plywood_radius(parallel, between) == within(7 * kMmPerFoot, 1e-9));
}

TEST_CASE("Aircraft plywood bends to the repair handbook's radii") {
  // FAA AC 43.13-1B, Table 1-2, 10 % moisture, cold mandrel, bend at 90 degrees to the face grain, inches,
  // read in a secondary source; and R / t as worked from it.
  struct Row {
    double thickness, radius, ratio;
  };
  const std::vector<Row> rows{{0.035, 2.0, 57}, {0.070, 5.2, 74}, {0.100, 8.6, 86}, {0.125, 12, 96},
                              {0.155, 16, 103}, {0.185, 20, 108}, {0.160, 17, 106}, {0.190, 21, 111},
                              {0.225, 27, 120}, {0.250, 31, 124}, {0.315, 43, 137}, {0.375, 54, 144}};
  std::vector<PlywoodBend> table;
  for (const Row& row : rows) table.push_back({row.thickness * kMmPerInch, row.radius * kMmPerInch});
  int seen = 0;
  for (const Row& row : rows) {
    CAPTURE(row.thickness);
    const double t = row.thickness * kMmPerInch;
    CHECK(*plywood_radius(table, t) == within(row.radius * kMmPerInch, 1e-9));
    CHECK(*plywood_radius(table, t) / t == within(row.ratio, 0.5 + 1e-9));
    ++seen;
  }
  CHECK(seen == 12);
}
