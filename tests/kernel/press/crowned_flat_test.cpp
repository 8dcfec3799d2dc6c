// The crowned flat press: the crown is what the beams give.
#include <algorithm>
#include <catch2/catch.hpp>

#include "kernel/mechanics/sag.hpp"
#include "kernel/press/crowned_flat/crown.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const std::string kFlat = "width = 700\nprofile = [{line = 900}]";

// A simply supported beam 60 x 100, span 1000, 10 N/mm, E 10 000: 5 q L^4 / (384 EI) = 2.6042 (beam table,
// worked by hand).
const EvenBeam kBeam{500, 500, 10, 10000 * second_moment(60, 100)};

}  // namespace

TEST_CASE("A beam under an even load gives as the beam table says") {
  CHECK(second_moment(60, 100) == 5e6);
  CHECK(kBeam.sag(500) == within(2.6042, 5e-5));
  CHECK(kBeam.sag(500) == within(5 * 10 * 1e12 / (384 * 5e10), 1e-12));
  CHECK(kBeam.sag(0) == 0);
  CHECK(kBeam.sag(-200) == kBeam.sag(200));
  CHECK(kBeam.curvature(0) == within(10 * 1e6 / 8 / 5e10, 1e-15));  // q L^2 / 8
  CHECK(kBeam.curvature(500) == 0);
}

TEST_CASE("A load short of the supports bends the beam by its moments' double integral") {
  const EvenBeam beam{600, 450, 12, 4e10};
  // Trapezoid rule on the moment in steps of 0.05: its error is h^2 / 12 of the slope, below 1e-8.
  double slope = 0, sag = 0;
  int steps = 0;
  for (double x = 0; x < 600 - 1e-9; x += 0.05, ++steps) {
    const double k = (beam.curvature(x) + beam.curvature(std::min(600.0, x + 0.05))) / 2;
    sag += slope * 0.05 + k * 0.05 * 0.05 / 2;
    slope += k * 0.05;
  }
  CHECK(steps == 12000);
  CHECK(beam.sag(600) == within(sag, 1e-7));
}

TEST_CASE("A beam's slope is the change of its sag") {
  int seen = 0;
  for (const EvenBeam& beam : {kBeam, EvenBeam{600, 450, 12, 4e10}})
    for (double x = -590; x <= 590; x += 20, ++seen) {
      if (std::abs(x) > beam.half_span - 1) continue;
      // Central difference over 0.1: its error is h^2 / 6 of the third derivative, below 1e-9.
      CHECK(beam.slope(x) == within((beam.sag(x + 0.05) - beam.sag(x - 0.05)) / 0.1, 1e-8));
    }
  CHECK(seen == 2 * 60);
}

TEST_CASE("A crowned edge follows the beam's curve turned over, to lines and arcs, however much it bends") {
  int seen = 0, edges = 0;
  for (const double half : {300.0, 450.0, 600.0})
    for (const double sag : {0.3, 2.6, 10.0, 20.0, 29.0}) {
      const Profile straight({{-half, 30}, 0}, {{2 * half, 0}});
      const EvenBeam unit{half + 50, half, 10, 1e10};
      const EvenBeam beam{half + 50, half, 10, 1e10 * unit.sag(half) / sag};
      for (const int sense : {1, -1}) {
        CAPTURE(half, sag, sense);
        const Profile edge = crowned_flat::crowned(straight, beam, sense);
        CHECK(edge.girth() == within(2 * half, 1e-9));
        CHECK(same(edge.point(half), {0, 30}));
        CHECK(edge.heading(half) == within(0, 1e-12));
        for (double s = 0; s <= 2 * half; s += 3, ++seen) {
          const Vec2 p = edge.point(s);
          CHECK(p.y() == within(30 - sense * beam.sag(p.x()), crowned_flat::kCrownTolerance));
        }
        ++edges;
      }
    }
  CHECK(edges == 30);
  CHECK(seen == 10 * (201 + 301 + 401));
}

TEST_CASE("Straps give a flat panel the pressure of their pull over its area, and the halves their crown") {
  const Evaluation result =
      evaluated(job_text(kFlat, birch(9), "[caul]\nkind = \"bare\"\n[straps]\ntension = 2000\n"));
  REQUIRE(result.plan);
  const PressPlan& plan = *result.plan;
  CHECK(plan.method == "crowned-flat");
  CHECK(plan.load == Load::even);
  const double area = 930.0 * 730.0, pull = 4 * 2000.0 * double(plan.closures.size());
  REQUIRE(plan.crown);
  CHECK(plan.crown->pressure == within(pull / area, 1e-12));
  // Beam D40 46 x 90 (E 13 000, EN 338) and former 18 x 100 (7500), side by side.
  const double stiffness = 13000 * 46 * std::pow(90, 3) / 12 + 7500 * 18 * 1e6 / 12;
  CHECK(plan.crown->stiffness == within(stiffness, 1));
  const EvenBeam beam{plan.crown->half_span, 465, 8000 / 930.0, stiffness};
  CHECK(plan.crown->height == within(beam.sag(465), 1e-9));
  for (const Profile* edge : {&plan.sections.front().lower, &*plan.sections.front().upper}) {
    const Vec2 end = edge->point(25), middle = edge->point(edge->girth() / 2);
    // The edge is as long as the pack, so that its ends come a little nearer to the middle than a straight
    // one's.
    CHECK(std::abs(middle.y() - end.y()) == within(beam.sag(end.x()), crowned_flat::kCrownTolerance));
    CHECK(std::abs(middle.y() - end.y()) == within(plan.crown->height, 0.02));
  }
  // The crests are as far apart as the pack is thick.
  const Section& section = plan.sections.front();
  CHECK(section.upper->box().low.y() - section.lower.box().high.y() == within(9 * 1.5 + 6, 1e-9));
}

TEST_CASE("A pressure asked for sets the straps, and is refused beyond their rating") {
  const std::string bare = "[caul]\nkind = \"bare\"\n";
  const Evaluation result =
      evaluated(job_text(kFlat, birch(9), bare + "[press.crowned-flat]\npressure = \"0.08 MPa\"\n"));
  REQUIRE(result.plan);
  CHECK(result.plan->crown->pressure == within(0.08, 1e-12));
  const double straps = 4.0 * double(result.plan->closures.size());
  CHECK(result.plan->closures.front().tension == within(0.08 * 930 * 730 / straps, 1e-9));
  CHECK(only_error(evaluated(job_text(kFlat, birch(9),
                                      bare + "[formers]\nspacing = {count = 4}\n"
                                             "[press.crowned-flat]\npressure = 2\n"))) ==
        "job.toml: press.crowned-flat.pressure: 2 MPa takes 84862 N in each strap, rated 25000; ask for at "
        "most "
        "0.589 MPa, use stronger straps or more formers");
}

TEST_CASE("A crowned flat press is for panels without a bend") {
  CHECK(only_error(evaluated(job_text("width = 600\nprofile = [{bend = 60, radius = 500}]", birch(6),
                                      "[press]\nmethod = \"crowned-flat\"\n"))) ==
        "job.toml: press.method: a crowned flat press is for panels without a bend; set press.method = "
        "\"auto\"");
}

TEST_CASE("The crown belongs to the loops as they stand beside it") {
  int spans = 0;
  for (const double length : {600., 900., 1200.}) {
    const PressPlan plan =
        planned(job_text("width = 700\nprofile = [{line = " + std::to_string(length) + "}]", birch(9),
                         "[caul]\nkind = \"bare\"\n[straps]\ntension = 3000\n"));
    const Closure& closure = plan.closures.front();
    CHECK(plan.crown->half_span == within((closure.right.mark.x() - closure.left.mark.x()) / 2, 1e-6));
    ++spans;
  }
  CHECK(spans == 3);
}

TEST_CASE("What a flat press has no use for is told") {
  const PressPlan plan =
      planned(job_text(kFlat, birch(9),
                       "[press]\npull = 10\npull_at = 5\n[caul]\nkind = \"bare\"\n[beams]\nevery = 2\n"
                       "[formers]\nspacing = {count = 5}\n"));
  const auto told = [&](const std::string& words) {
    return std::any_of(plan.notes.begin(), plan.notes.end(),
                       [&](const std::string& note) { return holds(note, words); });
  };
  CHECK(told("press.pull, pull_at and beam_tilt have no meaning here"));
  CHECK(told("Formers between straps are held by their neighbours"));
}
