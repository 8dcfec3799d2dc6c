#include "kernel/check/structure.hpp"

#include <cmath>

#include "kernel/mechanics/timber.hpp"
#include "kernel/press/beam_section.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Evaluation one_mould(const std::string& more = "") {
  return evaluated(job_text("width = 900\nprofile = [{bend = 120, radius = 400}]", birch(8), kWorked + more));
}

Evaluation two_moulds(const std::string& more = "") {
  return evaluated(job_text("width = 600\nprofile = [{bend = 60, radius = 400}, {bend = -40, radius = 500}]",
                            birch(8), "[caul]\nkind = {thickness = 20}\n" + more));
}

}  // namespace

TEST_CASE("The section through a foot screw is that of two rectangles") {
  BeamSpec beams;
  beams.width = 46;
  beams.depth = 90;
  beams.screw_diameter = 5;
  beams.screw_length = 100;
  beams.screw_reach = 60;
  beams.counterbore = 16;
  // Below: (46 - 16) x 50 about 25; above: (46 - 6) x 40 about 70. Area 1500 + 1600; first moment 37500 +
  // 112000; middle 48.2258. Second moments: 30 x 50^3 / 12 + 1500 x 23.2258^2 + 40 x 40^3 / 12 + 1600
  // x 21.7742^2.
  const NetSection net = net_section(beams);
  CHECK(net.inertia == within(2093575.27, 0.5));
  CHECK(net.modulus == within(2093575.27 / 48.2258, 0.5));
}

TEST_CASE("A beam's end is drawn up by the strap over its lever beyond the foot") {
  const Evaluation result = one_mould("[straps]\ntension = 2500\n");
  REQUIRE(result.plan);
  const PressPlan& plan = *result.plan;
  const StrapEnd& end = plan.closures.front().left;
  const Vec2 along = (end.leaves - end.mark).normalized();
  const double moment = 2500 * along.y() * (-end.mark.x() - plan.foot_half);
  const Finding& bending = finding(result, "beam-bending");
  CHECK(bending.value == within(moment / net_section(result.job->beams).modulus, 1e-9));
  CHECK(bending.limit == within(40 * 0.9 / 1.3, 1e-9));
  CHECK(bending.verdict == Verdict::pass);
  // EN 1995-1-1 8.1.4: 14 x 46 sqrt(60 / (1 - 60 / 90)) = 8640.2; x 0.9 / 1.3 = 5981.7.
  CHECK(finding(result, "beam-splitting").limit == within(5981.7, 0.1));
  CHECK(finding(result, "beam-splitting").value == within(2500 * along.y(), 1e-9));
}

TEST_CASE("Straps that split the beam or bend its pin are refused") {
  const Evaluation result = one_mould("[straps]\ntension = 12000\n");
  REQUIRE(result.plan);
  CHECK(finding(result, "beam-splitting").verdict == Verdict::fail);
  // 12000 x 46 / 8 over pi 12^3 / 32: 406.7 MPa, 1.73 of the yield.
  CHECK(finding(result, "strap-pin").value == within(406.73, 0.05));
  CHECK(finding(result, "strap-pin").verdict == Verdict::fail);
  CHECK(holds(finding(result, "strap-pin").advice, "pins of at least 15"));
}

TEST_CASE("Stresses grow with the tension") {
  const Evaluation once = one_mould("[straps]\ntension = 2000\n"),
                   twice = one_mould("[straps]\ntension = 4000\n");
  REQUIRE(once.plan);
  REQUIRE(twice.plan);
  int seen = 0;
  for (const char* id :
       {"beam-bending", "beam-end", "beam-splitting", "strap-pin", "foot-bearing", "slat-bearing"}) {
    CAPTURE(id);
    CHECK(finding(twice, id).value == Approx(2 * finding(once, id).value).epsilon(1e-9));
    ++seen;
  }
  CHECK(seen == 6);
}

TEST_CASE("Two moulds bend beam and former between the loops") {
  const Evaluation result = two_moulds();
  INFO(only_error(result));
  REQUIRE(result.plan);
  CHECK(finding(result, "beam-sag").value > 0);
  CHECK(finding(result, "beam-sag").limit == 0.5);
  // A loop of 50 on a beam of 46 bears 2 x 3500.
  CHECK(finding(result, "loop-bearing").value == within(7000.0 / (50 * 46), 1e-9));
  CHECK(finding(result, "upper-screws").verdict == Verdict::pass);
}

TEST_CASE("Masses are those of the parts and the pack") {
  const Evaluation result = two_moulds();
  REQUIRE(result.plan);
  const PressPlan& plan = *result.plan;
  double upper = 0, heaviest = 0;
  for (const Body& body : plan.bodies) {
    const Part& part = plan.parts[body.part];
    const double mass = part.volume() * 1e-9 * density_of(*result.job, part);
    if (body.group == Group::upper) upper += mass;
    if (body.group != Group::panel) heaviest = std::max(heaviest, mass);
  }
  const Masses& masses = *result.figures.masses;
  CHECK(masses.heaviest == within(heaviest, 1e-9));
  CHECK(masses.upper > upper);  // its caul and cover come on top
  // 8 plies of 1.5 at 694 kg/m3 and 7 lines of the glue's spread.
  const double area = plan.neutral.girth() * plan.panel.blank_width() * 1e-6;
  const double glue = 7 * result.job->layup.glue_row.spread / 1000;
  CHECK(masses.panel == within(area * (8 * 1.5 * 0.694 + glue), 1e-9));
  CHECK(masses.press > masses.lower + masses.upper);
}
