// Sheets of formers of two moulds: the foot of an upper one is its top, and it may lean.
#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/former_foot.hpp"
#include "exporters/drawing/part_view.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

Foot foot_named(const PressPlan& plan, const std::string& name) {
  const Part& part = part_named(plan, name);
  return foot_of(plan, part, silhouette(part, {}));
}

}  // namespace

TEST_CASE("an upper former is measured from its foot, which is its top") {
  const std::string text = between_moulds(kDrawnS);
  const PressPlan plan = planned(text);
  const Foot foot = foot_named(plan, "former-upper");
  const Box2 box = box_of(silhouette(part_named(plan, "former-upper"), {}));
  CHECK(foot.above);
  CHECK(foot.left.y() == test::within(box.high.y(), kRounding));
  CHECK(foot.level());
  // Its sides run along the pull, so that the foot is as wide as the former.
  CHECK(foot.left.x() == test::within(box.low.x(), kRounding));
  CHECK(foot.right.x() == test::within(box.high.x(), kRounding));
  const auto set = sheets_of(text);
  const Drawing& sheet = sheet_named(set, "former-upper");
  const Profile& contact = *plan.sections.front().upper;
  for (const double wanted :
       {-foot.left.x(), foot.right.x(), box.size().x(), box.size().y(),
        foot.left.y() - contact.start().point.y(), foot.right.y() - contact.end().point.y()}) {
    CAPTURE(wanted);
    CHECK(count_of(sheet, size_text(wanted)) >= 1);
  }
  CHECK_FALSE(says(sheet, "inf"));
}

TEST_CASE("a leaning foot is measured along itself") {
  for (const double tilt : {20.0, -20.0}) {
    const std::string text = between_moulds(kDrawnUnequalL, "beam_tilt = " + std::to_string(tilt));
    const PressPlan plan = planned(text);
    const auto set = sheets_of(text);
    for (const char* name : {"former-lower", "former-upper"}) {
      const Foot foot = foot_named(plan, name);
      CAPTURE(tilt, name);
      CHECK(degrees(foot.lean()) == test::within(tilt, 1e-6));
      const Drawing& sheet = sheet_named(set, name);
      CHECK(says(sheet, "foot leans 20°"));
      CHECK(says(sheet, "foot " + size_text((foot.right - foot.left).norm())));
      // From X = 0 to its left end, along it.
      CHECK(says(sheet, size_text(-foot.left.x() / std::cos(radians(20)))));
    }
  }
}

TEST_CASE("a crowned former has a table of its crown instead of radii") {
  const auto set = sheets_of(drawn_jobs().back().text);
  int formers = 0;
  for (const char* name : {"former-lower", "former-upper"}) {
    const Drawing& sheet = sheet_named(set, name);
    ++formers;
    CHECK(says(sheet, "crowned by"));
    CHECK(says(sheet, "beside X = 0"));
    for (const Text& text : texts(sheet)) CHECK(text.text.find("R") != 0);
  }
  CHECK(formers == 2);
}

TEST_CASE("no sheet of a former shows a figure that is not one") {
  int sheets = 0;
  for (const DrawnJob& job : drawn_jobs())
    for (const NamedDrawing& sheet : sheets_of(job.text)) {
      ++sheets;
      CAPTURE(job.name, sheet.name);
      CHECK_FALSE(says(sheet.drawing, "inf"));
      CHECK_FALSE(says(sheet.drawing, "nan"));
    }
  CHECK(sheets > 70);
}
