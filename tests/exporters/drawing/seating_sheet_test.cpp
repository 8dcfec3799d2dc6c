// The pressure along the curve as drawn.
#include <algorithm>
#include <catch2/catch.hpp>

#include "exporters/drawing/pressure_diagram.hpp"
#include "exporters/drawing/seating_tables.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

double highest_ordinate(const PressureDiagram& diagram) {
  double highest = 0;
  for (const double station : diagram.stations(0.5))
    highest = std::max(highest, (diagram.tip(station) - diagram.foot(station)).norm());
  return highest;
}

}  // namespace

TEST_CASE("the greatest ordinate stands for the plan's greatest pressure") {
  int held = 0;
  for (const DrawnJob& job : drawn_jobs()) {
    const PressPlan plan = planned(job.text);
    if (!plan.seated || plan.seated->seating.hold() != Hold::held) continue;
    ++held;
    const PressureDiagram diagram(plan, {0.2, {0, 0}});
    CAPTURE(job.name);
    // Between stations half a millimetre of paper (2.5 of girth) apart a pressure that turns on an arc of
    // radius R falls short by at most (2.5 / 2R)^2 / 2 of itself: 0.0003 for the least radius here, 60 less
    // half a blank.
    CHECK(highest_ordinate(diagram) / diagram.rise() ==
          Approx(plan.seated->seating.greatest()).epsilon(0.0005).margin(0));
    CHECK(highest_ordinate(diagram) <= kHighestOrdinate + kRounding);
    const Seating& seating = plan.seated->seating;
    CHECK(seating.pressure(seating.greatest_at()) == Approx(seating.greatest()).epsilon(1e-9).margin(0));
    if (seating.lifted().empty())
      CHECK(seating.pressure(seating.least_at()) == test::within(seating.least(), 1e-9 * seating.greatest()));
  }
  CHECK(held == 15);  // all but the one that tips; the flat press has no seating
}

TEST_CASE("ordinates are 60 high at most over a crown and do not meet in a hollow") {
  const PressPlan crown = planned(between_moulds(kDrawnL));
  CHECK(highest_ordinate({crown, {0.2, {0, 0}}}) == Approx(60).epsilon(0.0005).margin(0));
  const PressPlan hollow = planned(between_moulds("[{line = 300}, {bend = -90, radius = 60}, {line = 340}]"));
  const PressureDiagram diagram(hollow, {0.2, {0, 0}});
  int within_bend = 0;
  for (const double station : diagram.stations(0.5)) {
    const double curvature = hollow.neutral.curvature(station);
    if (curvature >= 0) continue;
    ++within_bend;
    CHECK((diagram.tip(station) - diagram.foot(station)).norm() <= 0.2 / -curvature);
  }
  CHECK(within_bend > 20);
}

TEST_CASE("a lifted stretch has no ordinates and is marked on the line") {
  const std::string text = between_moulds(kDrawnL, "pull_at = 120");
  const PressPlan plan = planned(text);
  const auto& lifted = plan.seated->seating.lifted();
  REQUIRE(lifted.size() == 2);
  const PressureDiagram diagram(plan, {1, {0, 0}});
  // Lifted at the left end and past the bend: what lies between and beyond is pressed.
  CHECK(diagram.outlines().size() == 2);
  const auto set = sheets_of(text);
  const Drawing& sheet = sheet_named(set, "seating");
  double marked = 0;
  for (const Segment& s : drawn_with(sheet, pens::kWarning)) marked += s.length();
  double length = 0;
  for (const Stretch& s : lifted) length += s.to - s.from;
  CHECK(says(sheet, "1:5"));
  CHECK(marked == test::within(length / 5, 1e-6));
  CHECK(says(sheet, "lifted: girth 0 to " + size_text(lifted.front().to)));
}

TEST_CASE("the seating sheet gives the figures, the stray of the pull line and the pulls compared") {
  const std::string text = between_moulds(kDrawnUnequalL, "pull = \"bisector\"");
  const PressPlan plan = planned(text);
  const auto set = sheets_of(text);
  CHECK(set[2].name == "seating");
  const Drawing& sheet = set[2].drawing;
  const Seating& seating = plan.seated->seating;
  for (const std::string& wanted :
       {"greatest " + number(seating.greatest(), 4) + " MPa at girth",
        "least " + number(seating.least(), 4) + " MPa at girth", "mean " + number(seating.mean(), 4) + " MPa",
        size_text(-plan.seated->full_contact->from), size_text(plan.seated->full_contact->to),
        "pull " + number(14000.0 * double(plan.closures.size()), 0) + " N",
        std::string("pressure along the curve"), std::string("square to chord"), std::string("bisector"),
        std::string("best"), std::string("pull line, axis 19.2°")}) {
    CAPTURE(wanted);
    CHECK(says(sheet, wanted));
  }
  CHECK(pull_table(plan).rows.size() == plan.pull->compared.size());
  CHECK(drawn_with(sheet, pens::kWarning).empty());
}

TEST_CASE("an upper half that tips is drawn without pressures") {
  const std::string text = between_moulds(kDrawnUnequalL, "pull_at = 500");
  REQUIRE(planned(text).seated->seating.hold() == Hold::tips);
  const auto set = sheets_of(text);
  const Drawing& sheet = sheet_named(set, "seating");
  CHECK(says(sheet, "no pressure shown: the upper half tips"));
  CHECK_FALSE(says(sheet, "greatest 0"));
  CHECK(drawn_with(sheet, pens::kBlock).empty());
}
