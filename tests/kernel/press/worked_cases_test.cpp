// Figures worked out by hand from the geometry rules of the press, independently of the code, to 0.001 mm.
#include <catch2/catch.hpp>

#include "kernel/mechanics/belt.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/units.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

constexpr double kWorkedTolerance = 0.001;

void require_near(const Vec2& p, double x, double y) {
  CHECK(p.x() == Approx(x).margin(kWorkedTolerance));
  CHECK(p.y() == Approx(y).margin(kWorkedTolerance));
}

void require_near(double value, double wanted) { CHECK(value == Approx(wanted).margin(kWorkedTolerance)); }

double girth_at(const PressPlan& plan, double height) {
  return line_at(plan.panel, plan.panel.pressed, height, "face").girth();
}

double radius(const Run& run) { return 1 / run.curvature; }

PressPlan first_case() {
  return planned(
      job_text("width = 900\ntrim = 0\nprofile = [{bend = 120, radius = 400}]", birch(8), kWorked));
}

PressPlan second_case() {
  return planned(
      job_text("width = 900\ntrim = 15\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = 60}, "
               "{bend = 25, radius = 900}]",
               birch(7), kWorked));
}

PressPlan third_case() {
  return planned(
      job_text("width = 900\ntrim = 0\nprofile = [{bend = 30, radius = 1500}]", birch(6), kWorked));
}

}  // namespace

TEST_CASE("A symmetric crown of 120 degrees comes out as worked by hand") {
  const PressPlan plan = first_case();
  require_near(girth_at(plan, 0), 837.7580);
  require_near(girth_at(plan, plan.panel.thickness), 862.8908);
  const Profile& contact = plan.sections.front().lower;
  REQUIRE(contact.runs().size() == 3);
  require_near(radius(contact.runs()[1]), 362);
  require_near(contact.end().point, 326.0012, 123.3980);
  require_near(contact.start().point, -326.0012, 123.3980);
  REQUIRE_FALSE(plan.closures.empty());
  const Closure& strap = plan.closures.front();
  require_near(strap.right.leaves, 389.7114, 189.0487);
  require_near(strap.left.leaves, -389.7114, 189.0487);
  require_near(strap.right.mark, 411.5004, -60);
  require_near(strap.left.mark, -411.5004, -60);
  require_near(strap.right.run, 250);
  const Part& former = part_named(plan, "former-lower");
  require_near(former.box().size().x(), 652.0024);
  require_near(former.box().size().y(), 326.0487);
  CHECK(former.outline().area() == Approx(174786.69).margin(0.01));
}

TEST_CASE("An unequal crown with flats and trim comes out as worked by hand") {
  const PressPlan plan = second_case();
  CHECK(degrees(plan.neutral.start().heading) == Approx(51.5012).margin(1e-4));
  require_near(girth_at(plan, 0), 1066.9567);
  require_near(girth_at(plan, plan.panel.thickness), 1084.3663);
  REQUIRE(plan.neutral.runs().size() == 5);
  require_near(plan.neutral.runs().front().length, 135);
  require_near(plan.neutral.runs().back().length, 15);
  const Profile& contact = plan.sections.front().lower;
  require_near(radius(contact.runs()[1]), 342);
  require_near(radius(contact.runs()[3]), 862);
  require_near(contact.start().point, -437.4411, 109.6820);
  require_near(contact.end().point, 444.0909, 107.5890);
  const Closure& strap = plan.closures.front();
  require_near(strap.left.leaves, -489.5753, 183.0937);
  require_near(strap.left.mark, -547.9317, -60);
  require_near(strap.left.run, 250);
  require_near(strap.right.leaves, 485.4976, 187.5436);
  require_near(strap.right.mark, 583.0134, -60);
  require_near(strap.right.run, 266.0586);
  const Part& former = part_named(plan, "former-lower");
  require_near(former.box().size().x(), 881.5320);
  require_near(former.box().size().y(), 364.0067);
  CHECK(former.outline().area() == Approx(244709.24).margin(0.01));
  REQUIRE(plan.flats.size() == 2);
  require_near(plan.flats[0].to - plan.flats[0].from, 135);
  require_near(plan.flats[1].to - plan.flats[1].from, 60);
  CHECK(bores_for(former, BoreUse::clamp).size() == 2);
}

TEST_CASE("On a shallow crown the least depth governs, as worked by hand") {
  const PressPlan plan = third_case();
  const Profile& contact = plan.sections.front().lower;
  require_near(contact.end().point, 402.5416, 100);
  require_near(contact.start().point, -402.5416, 100);
  const Closure& strap = plan.closures.front();
  require_near(strap.right.leaves, 400.3931, 188.5742);
  require_near(strap.left.mark, -696.6322, -60);
  require_near(strap.right.mark, 696.6322, -60);
  require_near(strap.right.run, 386.7128);
  const Part& former = part_named(plan, "former-lower");
  require_near(former.box().size().x(), 805.0832);
  require_near(former.box().size().y(), 156.2869);
  CHECK(former.outline().area() == Approx(110781.87).margin(0.01));
}

TEST_CASE("Strap tension falls along the symmetric crown as worked by hand") {
  // 2500 N at both ends, friction 0.2: after the exit bend of 25 degrees, and after 25 + 60 at the middle.
  const double at_end = strap_tension(2500, radians(25), 2500, radians(25 + 120), 0.2);
  const double at_middle = strap_tension(2500, radians(85), 2500, radians(85), 0.2);
  CHECK(at_end == Approx(2291.08).margin(0.005));
  CHECK(at_middle == Approx(1858.16).margin(0.005));
  CHECK(strap_pressure(at_end, 1.0 / 412, 150) == Approx(0.037073).margin(5e-7));
  CHECK(strap_pressure(at_middle, 1.0 / 412, 150) == Approx(0.030067).margin(5e-7));
  CHECK(strap_pressure(2500, 0, 150) == 0);
}

TEST_CASE("Four strapped formers stand as worked by hand on a pack of 930") {
  const PressPlan plan = planned(job_text("width = 900\nprofile = [{line = 120}, {bend = 70, radius = 380}]",
                                          birch(7), kWorked + "[formers]\nspacing = {count = 4}\n"));
  REQUIRE(plan.sections.size() == 4);
  const double stations[] = {25, 318.3333, 611.6667, 905};
  for (std::size_t i = 0; i < 4; ++i) CHECK(plan.sections[i].z == Approx(stations[i]).margin(1e-4));
  CHECK(plan.spacing.pitch == Approx(293.3333).margin(1e-4));
}
