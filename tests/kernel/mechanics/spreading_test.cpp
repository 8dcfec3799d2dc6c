#include "kernel/mechanics/spreading.hpp"

#include <algorithm>
#include <cmath>

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Formers and straps at the same stations, `count` of them `pitch` apart, half a pitch from the edges.
SpreadingSpec periodic(double pitch, int count) {
  SpreadingSpec spec;
  spec.width = pitch * count;
  spec.lower = spec.upper = 1e9;
  spec.bed = 20;
  for (int i = 0; i < count; ++i) {
    spec.supports.push_back((i + 0.5) * pitch);
    spec.loads.push_back({(i + 0.5) * pitch, 0.1, 500});
  }
  return spec;
}

SpreadingSpec press() {
  SpreadingSpec spec{.width = 930, .lower = 2.1e7, .upper = 2.1e7, .bed = 12, .supports = {}, .loads = {}};
  for (const double z : {25.0, 201.0, 377.0, 553.0, 729.0, 905.0}) {
    spec.supports.push_back(z);
    spec.loads.push_back({z, 50, 1});
  }
  return spec;
}

double bed_force(const Spreading& out) {
  double sum = 0;
  for (std::size_t i = 1; i < out.z.size(); ++i)
    sum += (out.z[i] - out.z[i - 1]) * (out.pressure[i] + out.pressure[i - 1]) / 2;
  return sum;
}

}  // namespace

TEST_CASE("The bed carries all of the straps' pull") {
  const Spreading out = spread(press());
  // Trapezoids over half elements: the rest is their error.
  CHECK(bed_force(out) == Approx(6).epsilon(2e-3));
  CHECK(out.mean == Approx(6.0 / 930).epsilon(1e-12));
  CHECK(out.least > 0);
  CHECK(out.least < out.mean);
  CHECK(out.greatest > out.mean);
}

TEST_CASE("Everything scales with the loads") {
  SpreadingSpec spec = press();
  const Spreading once = spread(spec);
  for (Patch& load : spec.loads) load.force *= 37;
  const Spreading more = spread(spec);
  CHECK(more.least == Approx(37 * once.least).epsilon(1e-9));
  CHECK(more.greatest == Approx(37 * once.greatest).epsilon(1e-9));
  CHECK(more.greatest_sag == Approx(37 * once.greatest_sag).epsilon(1e-9));
  CHECK(more.even() == Approx(once.even()).epsilon(1e-9));
}

TEST_CASE("A press seen from its other side spreads the same way round") {
  SpreadingSpec spec = press();
  spec.loads[1].force = 3;
  spec.supports.erase(spec.supports.begin() + 3);
  SpreadingSpec mirrored = spec;
  std::reverse(mirrored.supports.begin(), mirrored.supports.end());
  for (double& z : mirrored.supports) z = spec.width - z;
  for (Patch& load : mirrored.loads) load.at = spec.width - load.at;
  const Spreading a = spread(spec), b = spread(mirrored);
  int seen = 0;
  for (double z = 0; z <= spec.width; z += 31, ++seen)
    CHECK(a.at(z) == Approx(b.at(spec.width - z)).margin(1e-9 * a.greatest));
  CHECK(seen == 31);
}

TEST_CASE("Stiffer slats and a softer bed never spread less") {
  SpreadingSpec spec = press();
  double last = 0;
  int seen = 0;
  for (const double stiffness : {1e6, 3e6, 1e7, 3e7, 1e8, 1e9, 1e11}) {
    spec.lower = spec.upper = stiffness;
    const double even = spread(spec).even();
    CHECK(even >= last);
    last = even;
    ++seen;
  }
  CHECK(seen == 7);
  CHECK(last > 0.95);
}

TEST_CASE("A bed that would have to pull lets go") {
  // One strap in the middle of a wide pack on soft slats: its ends lift.
  SpreadingSpec spec{
      .width = 2000, .lower = 1e9, .upper = 1e7, .bed = 20, .supports = {}, .loads = {{1000, 10, 100}}};
  for (double z = 0; z <= 2000; z += 100) spec.supports.push_back(z);
  const Spreading out = spread(spec);
  CHECK(out.least == 0);
  CHECK(out.at(1000) > 0);
  CHECK(bed_force(out) == Approx(100).epsilon(5e-3));
}

TEST_CASE("Pressures converge with the fourth power of the element") {
  // Every strap over the whole of an element pattern, so that nodes stay where they are when halved.
  SpreadingSpec spec = periodic(160, 5);
  spec.lower = spec.upper = 2e7;  // characteristic length 41: elements of 40 down to 5 are coarse to fine
  for (Patch& load : spec.loads) load.width = 80;
  const auto middle = [&](double longest) {
    spec.longest = longest;
    return spread(spec).at(400);  // under the middle strap, a node of every mesh
  };
  const double exact = middle(1.25);
  const double coarse = std::abs(middle(40) - exact), fine = std::abs(middle(20) - exact),
               finer = std::abs(middle(10) - exact);
  CAPTURE(coarse, fine, finer);
  CHECK(coarse / fine > 10);  // 2^4, from below while elements are as long as the bed's own length
  CHECK(fine / finer > 12);
  CHECK(finer < 1e-4 * exact);
}

TEST_CASE("Loads over the pack's edge press on what lies on the pack") {
  SpreadingSpec spec = press();
  spec.loads.front() = {10, 50, 1};  // reaches 15 past the edge
  CHECK(bed_force(spread(spec)) == Approx(6).epsilon(5e-3));
}
