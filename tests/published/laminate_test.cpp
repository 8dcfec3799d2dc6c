// Plates of bonded layers and wood at an angle against published and worked examples. The source stands
// beside each check.
#include "kernel/mechanics/laminate.hpp"

#include <cmath>

#include "kernel/mechanics/springback.hpp"
#include "kernel/panel/trade.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Layers of one material and one thickness, angles in degrees, about their middle.
Laminate stack(const Orthotropic& material, double thickness, const std::vector<double>& angles) {
  std::vector<PlateLayer> layers;
  for (const double angle : angles) {
    const double from = double(layers.size()) * thickness;
    layers.push_back({material, radians(angle), from, from + thickness});
  }
  return laminate(layers, double(angles.size()) * thickness / 2);
}

// Half a unit of the last of `digits` significant digits, and the rounding of the sums.
Approx printed(double value, int digits) {
  const double unit = std::pow(10.0, std::floor(std::log10(std::abs(value))) + 1 - digits);
  return within(value, 0.5 * unit * (1 + 1e-6));
}

}  // namespace

TEST_CASE("Wood at an angle to its fibres follows the handbook's rule") {
  // Wood Handbook FPL-GTR-282 (2021), eq. 5-2 with n = 2: N = P Q / (P sin^2 + Q cos^2), worked for P 1, Q
  // 0.1.
  CHECK(modulus_at_angle(1, 0.1, 0) == within(1, 1e-12));
  CHECK(modulus_at_angle(1, 0.1, radians(15)) == within(0.62387, 5e-6));
  CHECK(modulus_at_angle(1, 0.1, radians(30)) == within(0.30769, 5e-6));
  CHECK(modulus_at_angle(1, 0.1, radians(45)) == within(0.18182, 5e-6));
  CHECK(modulus_at_angle(1, 0.1, radians(90)) == within(0.1, 1e-12));
}

TEST_CASE("Moduli of the timber rows lie on the handbook's regression lines") {
  // Wood Handbook FPL-GTR-282 (2021), Table 5-11a: bending modulus at 12 % moisture 16 500 G^0.70 MPa for
  // hardwoods, 20 300 G^0.83 for softwoods; modulus of rupture 171 200 G^1.13 and 168 700 G^1.00 kPa. Single
  // species scatter about the lines: within 30 %. The imports' gravity is green and lower, European beech has
  // no row in the handbook.
  const TradeTables trade;
  int hard = 0, soft = 0;
  for (const TradeRow& row : trade.table("timbers")) {
    if (row.name.starts_with("mahogany") || row.name == "okoume" || row.name == "beech-european") continue;
    CAPTURE(row.name);
    const double gravity = row.number("density") / 1120, modulus = row.number("E_along") / 1.10;
    const bool hardwood = row.number("hardwood") == 1;
    const double line = hardwood ? 16500 * std::pow(gravity, 0.70) : 20300 * std::pow(gravity, 0.83);
    const double rupture = hardwood ? 171.2 * std::pow(gravity, 1.13) : 168.7 * gravity;
    CHECK(modulus == Approx(line).epsilon(0.30));
    CHECK(row.number("strength") == Approx(rupture).epsilon(0.30));
    ++(hardwood ? hard : soft);
  }
  CHECK(hard == 13);
  CHECK(soft == 4);
}

TEST_CASE("Poisson's ratios of yellow birch miss reciprocity by the source's own six per cent") {
  // Wood Handbook FPL-GTR-282 (2021), Tables 5-1 and 5-2: nu_LT 0.451, nu_TL 0.024, E_T/E_L 0.050; eq. 5-1
  // would have nu_TL = 0.451 * 0.050 = 0.02255. The plate takes it so, Q12 / Q11, from nu_LT alone.
  const TradeTables trade;
  const TradeRow* birch = trade.find("timbers", "birch-yellow");
  REQUIRE(birch);
  const Laminate plate = laminate({{{birch->number("E_along"), birch->number("E_across"),
                                     birch->number("shear"), birch->number("poisson")},
                                    0,
                                    0,
                                    1}},
                                  0.5);
  const double implied = plate.A(0, 1) / plate.A(0, 0);
  CHECK(implied == within(0.02255, 1e-12));
  CHECK(0.024 / implied == within(1.0643, 5e-5));  // the measured figure
}

TEST_CASE("A quasi-isotropic plate in inches and pounds has the published stiffnesses") {
  // Worked example in the tests of a public library for lamination theory (ClassicalLaminateTheory.jl,
  // test_clt1): E1 20e6, E2 1.5e6, G12 1e6 psi, nu12 0.34, plies of 0.0075 in, [0/45/90/-45]s. lb/in and lb
  // in.
  const Laminate out = stack({20e6, 1.5e6, 1e6, 0.34}, 0.0075, {0, 45, 90, -45, -45, 90, 45, 0});
  CHECK(out.A(0, 0) == within(525698, 0.5));
  CHECK(out.A(1, 1) == within(525698, 0.5));
  CHECK(out.A(0, 1) == within(155811, 0.5));
  CHECK(out.A(2, 2) == within(184943, 0.5));
  // Zero to the rounding of 5e5 * 0.06.
  CHECK(out.B.cwiseAbs().maxCoeff() < 1e-9);
  CHECK(out.A(0, 2) == within(0, 1e-9));
  CHECK(out.A(1, 2) == within(0, 1e-9));
  CHECK(out.D(0, 0) == within(250.495, 5e-4));
  CHECK(out.D(0, 1) == within(32.687, 5e-4));
  CHECK(out.D(1, 1) == within(93.036, 5e-4));
  CHECK(out.D(0, 2) == within(23.619, 5e-4));
  CHECK(out.D(1, 2) == within(23.619, 5e-4));
  CHECK(out.D(2, 2) == within(41.427, 5e-4));
}

TEST_CASE("An unsymmetric graphite and epoxy plate has the figures of the textbook") {
  // Kaw, Mechanics of Composite Materials, 2nd ed., Examples 4.2 and 4.3 (from memory): E1 181, E2 10.3,
  // G12 7.17 GPa, nu12 0.28, [0/30/-45], plies of 5 mm. In N/mm, N and N mm; the book's N/m and N m are times
  // 1e-3 and 1e3.
  const Orthotropic graphite{181000, 10300, 7170, 0.28};
  const Eigen::Matrix3d q = laminate({{graphite, 0, 0, 1}}, 0).A;
  CHECK(q(0, 0) == printed(181811, 6));
  CHECK(q(0, 1) == printed(2896.92, 6));
  CHECK(q(1, 1) == printed(10346.2, 6));
  CHECK(q(2, 2) == printed(7170, 3));
  const Laminate out = stack(graphite, 5, {0, 30, -45});
  CHECK(out.A(0, 0) == printed(1.739e6, 4));
  CHECK(out.A(0, 1) == printed(3.884e5, 4));
  CHECK(out.A(1, 1) == printed(4.533e5, 4));
  CHECK(out.A(0, 2) == printed(5.663e4, 4));
  CHECK(out.A(1, 2) == printed(-1.141e5, 4));
  CHECK(out.A(2, 2) == printed(4.525e5, 4));
  CHECK(out.B(0, 0) == printed(-3.129e6, 4));
  CHECK(out.B(0, 1) == printed(9.855e5, 4));
  CHECK(out.B(1, 1) == printed(1.158e6, 4));
  CHECK(out.B(0, 2) == printed(-1.072e6, 4));
  CHECK(out.B(1, 2) == printed(-1.072e6, 4));
  CHECK(out.B(2, 2) == printed(9.855e5, 4));
  CHECK(out.D(0, 0) == printed(3.343e7, 4));
  CHECK(out.D(0, 1) == printed(6.461e6, 4));
  CHECK(out.D(1, 1) == printed(9.320e6, 4));
  CHECK(out.D(0, 2) == printed(-5.240e6, 4));
  CHECK(out.D(1, 2) == printed(-5.596e6, 4));
  CHECK(out.D(2, 2) == printed(7.663e6, 4));
}

TEST_CASE("Cross-ply plates of the same ply have the worked stiffnesses") {
  // Ply of Kaw, Example 4.2 (from memory), 0.125 mm; worked from the formulas of Jones, section 4.2. In N/mm,
  // N and N mm: N/m times 1e-3, N m times 1e3.
  struct Row {
    std::vector<double> angles;
    double A11, A12, A22, A66, B11, D11, D12, D22, D66;
  };
  const std::vector<Row> rows{
      {{0, 90}, 24019.7, 724.231, 24019.7, 1792.50, -1339.57, 125.102, 3.77204, 125.102, 9.33594},
      {{0, 90, 90, 0}, 48039.3, 1448.46, 48039.3, 3585.00, 0, 1670.60, 30.1763, 331.034, 74.6875},
      {{0, 90, 0, 90, 0, 90, 0, 90, 90, 0, 90, 0, 90, 0, 90, 0},
       192157,
       5793.85,
       192157,
       14340.0,
       0,
       74769.0,
       1931.28,
       53335.9,
       4780.00}};
  int seen = 0;
  for (const Row& row : rows) {
    CAPTURE(row.angles.size());
    const Laminate out = stack({181000, 10300, 7170, 0.28}, 0.125, row.angles);
    CHECK(out.A(0, 0) == printed(row.A11, 6));
    CHECK(out.A(0, 1) == printed(row.A12, 6));
    CHECK(out.A(1, 1) == printed(row.A22, 6));
    CHECK(out.A(2, 2) == printed(row.A66, 6));
    // 0 to the rounding of A times the heights, 2e5 * 1.
    CHECK(out.B(0, 0) == (row.B11 == 0 ? within(0, 1e-9) : printed(row.B11, 6)));
    CHECK(out.B(1, 1) == (row.B11 == 0 ? within(0, 1e-9) : printed(-row.B11, 6)));
    CHECK(out.D(0, 0) == printed(row.D11, 6));
    CHECK(out.D(0, 1) == printed(row.D12, 6));
    CHECK(out.D(1, 1) == printed(row.D22, 6));
    CHECK(out.D(2, 2) == printed(row.D66, 6));
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("Three birch veneers laid crosswise have the worked stiffnesses") {
  // Worked from Wood Handbook FPL-GTR-282 (2021), Tables 5-1 to 5-3a: yellow birch, rotary veneer, E_L 15
  // 290, E_T 764.5, G_LT 1 039.72 MPa, nu_LT 0.451; 0/90/0 of 1.5 mm.
  const Laminate out = stack({15290, 764.5, 1039.72, 0.451}, 1.5, {0, 90, 0});
  CHECK(out.A(0, 0) == within(47499.8, 0.05));
  CHECK(out.A(0, 1) == within(1567.49, 0.005));
  CHECK(out.A(1, 1) == within(25487.7, 0.05));
  CHECK(out.A(2, 2) == within(4678.74, 0.005));
  CHECK(out.D(0, 0) == within(113174, 0.5));
  CHECK(out.D(0, 1) == within(2645.15, 0.005));
  CHECK(out.D(1, 1) == within(9992.34, 0.005));
  CHECK(out.D(2, 2) == within(7895.37, 0.005));
  // Modulus of a plain strip that bends as much, 12 / (h^3 d11).
  const Axes free = free_bending(out);
  const double cube = std::pow(4.5, 3);
  CHECK(12 * free.girth / cube == within(14811, 0.5));
  CHECK(12 * free.width / cube == within(1307.7, 0.05));
  // The sum over the plies without Poisson's ratio: 14 752 and 1 302, 0.4 per cent lower.
  const auto plies = [](double outer, double inner) {
    return std::vector<Lamina>{{outer, 0, 1.5}, {inner, 1.5, 3}, {outer, 3, 4.5}};
  };
  const double along = 12 * bonded_stiffness(plies(15290, 764.5)) / cube;
  const double across = 12 * bonded_stiffness(plies(764.5, 15290)) / cube;
  CHECK(along == within(14752, 0.5));
  CHECK(across == within(1302.5, 0.05));
  CHECK(1 - along * cube / 12 / free.girth == within(0.004, 5e-4));
  CHECK(1 - across * cube / 12 / free.width == within(0.004, 5e-4));
}
