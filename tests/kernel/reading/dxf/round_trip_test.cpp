#include "exporters/dxf/dxf_writer.hpp"
#include "shared/units.hpp"
#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;
using drawing::Circle;
using drawing::Drawing;
using drawing::Path;

namespace {

Segment arc(const Vec2& from, const Vec2& centre, double turn) {
  const Vec2 out = from - centre;
  const double angle = std::atan2(out.y(), out.x()) + turn;
  return {from, centre + out.norm() * direction(angle), turn, centre, out.norm()};
}

// A former as one-part presses have them: a crown on top, flats beside it, square sides, a foot.
Path former() {
  const Segment crown = arc({700.25, 240.5}, {450, -210.125}, radians(58.1));
  const Segment hollow = arc(crown.to, crown.to + 400 * (crown.to - crown.centre).normalized(), radians(-20));
  const Vec2 end(0, hollow.to.y() - 30);
  return {{line({0, 0}, {900, 0}), line({900, 0}, {900, 180}), line({900, 180}, crown.from), crown, hollow,
           line(hollow.to, end), line(end, {0, 0})},
          true,
          {}};
}

DrawnFile read_back(const Drawing& drawing, DxfVersion version) { return read(dxf_text(drawing, version)); }

Drawing sample() {
  Drawing out("sample", {900, 400}, {{"OUTLINE", 0.25, {}, "#000000"}, {"DRILL_10", 0.25, {}, "#ff0000"}});
  out.add("OUTLINE", former());
  out.add("DRILL_10", Circle{{450, 100}, 5, {}});
  out.add("OUTLINE", line({10, 20}, {30, 40}));
  out.add("OUTLINE", arc({100, 50}, {80, 50}, radians(-270)));
  return out;
}

}  // namespace

// Coordinates are written to 1e-6 and bulges to 1e-9: half a step each, and half a step of bulge moves the
// middle of an arc over a chord of 600 by 300 * 0.5e-9.
TEST_CASE("our own cutting files read back as what was drawn") {
  constexpr double kStep = 0.5e-6 * 1.42 + 0.2e-6;
  int seen = 0;
  for (const DxfVersion version : {DxfVersion::r12, DxfVersion::r2000}) {
    const DrawnFile file = read_back(sample(), version);
    REQUIRE(file.curves.size() == 4);
    const DrawnCurve& outline = file.curves[0];
    const Path drawn = former();
    CHECK(outline.layers == std::vector<std::string>{"OUTLINE"});
    CHECK(outline.closed);
    REQUIRE(outline.pieces.size() == drawn.segments.size());
    for (std::size_t i = 0; i < drawn.segments.size(); ++i)
      for (int k = 0; k <= 4; ++k, ++seen)
        CHECK(same(segment_of(outline, i).point(k / 4.0), drawn.segments[i].point(k / 4.0), kStep));
    CHECK(same(segment_of(file.curves[1]).to, {30, 40}, 0));
    CHECK(same(segment_of(file.curves[2]).from, {80, 70}, kStep));
    CHECK(segment_of(file.curves[2]).turn == within(radians(270), 1e-8));
    CHECK(file.curves[3].layers == std::vector<std::string>{"DRILL_10"});
    CHECK(segment_of(file.curves[3]).radius == within(5, 0));
  }
  CHECK(seen == 2 * 7 * 5);
}
