// Beams of presses of two halves: bending under a crown, thrust where they lean.
#include "kernel/check/beams.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "kernel/mechanics/sag.hpp"
#include "kernel/press/beam_section.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/two_part_jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Evaluation flat(double length, const std::string& more) {
  return evaluated(job_text("width = 700\nprofile = [{line = " + std::to_string(length) + "}]", birch(9),
                            "[caul]\nkind = \"bare\"\n" + more));
}

}  // namespace

TEST_CASE("Bending of a crowned press's beams is held against their class") {
  const Evaluation result = flat(900, "[straps]\ntension = 2000\n");
  REQUIRE(result.plan);
  const Finding& bending = finding(result, "beam-bending");
  // EN 338:2016 table 3: f_m,k of D40 is 40; EN 1995-1-1 table 3.1: k_mod 0.9; table 2.3: gamma_M 1.3.
  CHECK(bending.limit == within(40 * 0.9 / 1.3, 1e-12));
  // Beam and former side by side take the moment by their stiffness; q (a b - b^2 / 2) in the middle.
  const Crown& crown = *result.plan->crown;
  const double moment = crown.load * (crown.half_span * 465 - 465.0 * 465 / 2);
  CHECK(crown.load == within(4 * 2000 / 930.0, 1e-12));
  CHECK(bending.value == within(beam_stress(result.job->beams, moment / crown.stiffness), 1e-9));
  CHECK(bending.verdict == Verdict::pass);
}

TEST_CASE("Beams too weak for their span fail with the depth and the tension that would do") {
  const Evaluation weak = flat(1400, "[straps]\ntension = 7000\n");
  REQUIRE(weak.plan);
  const Finding& bending = finding(weak, "beam-bending");
  CHECK(bending.verdict == Verdict::fail);
  REQUIRE(holds(bending.advice, "Use beams at least "));
  const int depth = std::stoi(bending.advice.substr(19));
  const std::string screw =
      ", " + std::to_string(depth) + "]\nscrew = {length = " + std::to_string(depth + 10) + "}\n";
  const Evaluation deep = flat(1400, "[straps]\ntension = 7000\n[beams]\nsection = [46" + screw);
  REQUIRE(deep.plan);
  CHECK(finding(deep, "beam-bending").verdict == Verdict::pass);
  const auto at = bending.advice.find("at most ");
  REQUIRE(at != std::string::npos);
  INFO(bending.advice);
  const Evaluation slack = flat(1400, "[straps]\ntension = " + bending.advice.substr(at + 8, 4) + "\n");
  CHECK(finding(slack, "beam-bending").verdict == Verdict::pass);
}

TEST_CASE("A crown that is no longer a small bend is refused with the tension that would do") {
  CHECK(holds(only_error(flat(4000, "[straps]\ntension = 20000\n")),
              "beams.section: beams 46 x 90 would bend by"));
}

TEST_CASE("Straps push along leaning beams; stops and foot screws are told what they hold") {
  const auto leaning = [](double tilt, const std::string& more = "") {
    return evaluated(
        job_text(panel(kUnequalL), birch(8),
                 two_part("beam_tilt = " + std::to_string(tilt), "kind = {thickness = 16}") + more));
  };
  const Evaluation level = leaning(0);
  for (const Finding& f : level.findings) CHECK((f.id != "beam-thrust" && f.id != "stop-thrust"));
  const Evaluation loops = leaning(25);
  REQUIRE(loops.plan);
  const double pull = loops.plan->closures.front().pull(), s = std::sin(radians(25));
  CHECK(finding(loops, "beam-thrust").value == within(pull * s, 1e-6));
  CHECK(finding(loops, "stop-thrust").value == within(pull / 2 * s, 1e-6));
  // Two screws of 5 hold 500 N each, friction a fifth of the loop's pull across the beam.
  CHECK(finding(loops, "stop-thrust").limit == within(0.2 * pull / 2 * std::cos(radians(25)) + 1000, 1e-6));
  CHECK(finding(loops, "stop-thrust").verdict == Verdict::caution);
  CHECK(finding(leaning(10), "stop-thrust").verdict == Verdict::pass);
  const Evaluation pinned = leaning(25, "[straps]\nanchor = \"pin\"\n");
  for (const Finding& f : pinned.findings) CHECK(f.id != "stop-thrust");
  CHECK(finding(pinned, "beam-thrust").value == within(pull * s, 1e-6));
  int screws = 0;
  for (const Hardware& item : loops.plan->hardware)
    if (item.use == "stops to beams") screws = item.count;
  CHECK(screws == 8 * int(loops.plan->closures.size()));
  CHECK(bores_for(part_named(*loops.plan, "stop"), BoreUse::stop_screw).size() == 2);
}

TEST_CASE("A former on one foot screw is a caution with the pitch that gives it three") {
  const auto narrow = [](const std::string& more) {
    return evaluated(job_text(panel("[{bend = -40, radius = 260}, {bend = 40, radius = 260}]"), birch(6),
                              two_part("", "kind = {thickness = 12}") + more));
  };
  const Evaluation one = narrow("[beams]\nscrew = {pitch = 250}\n");
  REQUIRE(one.plan);
  const Finding& screws = finding(one, "foot-screws");
  CHECK(screws.value == 1);
  CHECK(screws.verdict == Verdict::caution);
  const auto at = screws.advice.find("beams.screw.pitch = ");
  REQUIRE(at != std::string::npos);
  const Evaluation more =
      narrow("[beams]\nscrew = {pitch = " + std::to_string(std::stoi(screws.advice.substr(at + 20))) + "}\n");
  CHECK(finding(more, "foot-screws").value == 3);
  CHECK(finding(more, "foot-screws").verdict == Verdict::pass);
}

TEST_CASE("Limits that are told are kept by whoever sets them") {
  const std::string press = "[press.crowned-flat]\npressure = ";
  const std::string first = only_error(flat(1200, press + "4\n"));
  const auto at = first.find("at most ");
  REQUIRE(at != std::string::npos);
  CHECK(flat(1200, press + std::to_string(std::stod(first.substr(at + 8))) + "\n").plan);
  const std::string slack = only_error(flat(4000, "[straps]\ntension = 20000\n"));
  const auto most = slack.find("straps with at most ");
  REQUIRE(most != std::string::npos);
  const Evaluation kept =
      flat(4000, "[straps]\ntension = " + std::to_string(std::stoi(slack.substr(most + 20))) + "\n");
  REQUIRE(kept.plan);
  CHECK(finding(kept, "beam-bending").verdict != Verdict::fail);
}

TEST_CASE("A flat between straight moulds is sent to the crowned press when its beams give") {
  const Evaluation straight =
      evaluated(job_text("width = 700\nprofile = [{line = 900}]", birch(9), two_part()));
  REQUIRE(straight.plan);
  const Finding& sag = finding(straight, "flat-sag");
  const Closure& closure = straight.plan->closures.front();
  const double half = (closure.right.mark.x() - closure.left.mark.x()) / 2;
  const EvenBeam beam{half, 465, 4 * closure.tension / 930, 13000 * second_moment(46, 90)};
  CHECK(sag.value == within(beam.sag(465), 1e-9));
  CHECK(sag.verdict == Verdict::fail);
  CHECK(holds(sag.advice, "crowned-flat"));
}

TEST_CASE("Beams that lean the wrong way are told by the size of the formers") {
  const auto leaning = [](double tilt) {
    return evaluated(job_text(panel(kUnequalL), birch(8),
                              two_part("pull = \"bisector\"\nbeam_tilt = " + std::to_string(tilt))));
  };
  const Evaluation right = leaning(20), wrong = leaning(-20), level = leaning(0);
  CHECK(finding(right, "beam-tilt").value < 1);
  CHECK(finding(right, "beam-tilt").verdict == Verdict::pass);
  CHECK(finding(wrong, "beam-tilt").verdict == Verdict::caution);
  const auto area = [](const Evaluation& e) {
    return part_named(*e.plan, "former-lower").face_area() + part_named(*e.plan, "former-upper").face_area();
  };
  CHECK(finding(wrong, "beam-tilt").value == within(area(wrong) / area(level), 1e-9));
}
