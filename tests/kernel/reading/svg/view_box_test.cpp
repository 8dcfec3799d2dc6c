#include "kernel/reading/svg/view_box.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;
using namespace lamwright::svg_reading;

namespace {

const ViewBox kBox{{10, 20}, {100, 100}};

// Where the corner and a unit of the box end up in a frame of 600 x 300.
std::pair<Vec2, double> lies(const std::string& fitting) {
  const auto curve = curve_of(
      "<svg x=\"100\" y=\"50\" width=\"600\" height=\"300\" viewBox=\"10 20 100 100\"" +
      (fitting.empty() ? "" : " preserveAspectRatio=\"" + fitting + "\"") + "><path d=\"M10 20h1\"/></svg>");
  const auto& line = segment_of(curve, 0);
  return {Vec2(line.from.x() - 100, -line.from.y() - 50), line.length()};
}

}  // namespace

TEST_CASE("Each alignment puts the room left where it says") {
  int seen = 0;
  const char* words[] = {"Min", "Mid", "Max"};
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) {
      const std::string align = std::string("x") + words[i] + "Y" + words[j];
      CAPTURE(align);
      // Scale 3 leaves 300 along; scale 6 juts out by 300 up.
      const auto meet = lies(align + " meet"), slice = lies(align + " slice"), plain = lies(align);
      CHECK(same(meet.first, {150.0 * i, 0}));
      CHECK(meet.second == within(3, kRounding));
      CHECK(same(slice.first, {0, -150.0 * j}));
      CHECK(slice.second == within(6, kRounding));
      CHECK(same(plain.first, meet.first));
      ++seen;
    }
  CHECK(seen == 9);
  CHECK(same(lies("").first, {150, 0}));
  CHECK(same(lies("defer xMaxYMin").first, {300, 0}));
}

TEST_CASE("A box stretched by less than the digits of its figures takes the smaller scale") {
  const Fitting none{Fitting::Scale::none, {0.5, 0.5}};
  const auto map = fitted(kBox, {300, 300.02}, none, {});
  CHECK(map.linear(0, 0) == within(3, kRounding));
  CHECK(map.linear(1, 1) == within(3, kRounding));
  REQUIRE_ERROR(ErrorKind::job, fitted(kBox, {300, 300.04}, none, {}));
}

TEST_CASE("Faulty boxes and alignments are refused") {
  const auto with = [](const std::string& attributes) {
    return refusal_of_body("<svg id=\"inset\" width=\"10\" height=\"10\" " + attributes + "/>");
  };
  CHECK(
      with("viewBox=\"0 0 10\"") ==
      "shop.svg:1: svg \"inset\", viewBox: read \"0 0 10\"; allowed: left, top, width and height, both sizes "
      "over 0");
  CHECK(with("viewBox=\"0 0 10 0\"") ==
        "shop.svg:1: svg \"inset\", viewBox: read \"0 0 10 0\"; allowed: left, top, width and height, both "
        "sizes "
        "over 0");
  CHECK(with("viewBox=\"0 0 1 1\" preserveAspectRatio=\"xMidyMid\"") ==
        "shop.svg:1: svg \"inset\", preserveAspectRatio: byte 1: \"xMidyMid\" is no alignment; allowed: "
        "none, or "
        "xMidYMid and the like, with meet or slice");
  CHECK(holds(with("viewBox=\"0 0 1 1\" preserveAspectRatio=\"xMidYMid cover\""),
              "\"cover\" is neither meet nor slice"));
  CHECK(holds(with("viewBox=\"0 0 -1 1\""), "both sizes over 0"));
  CHECK(holds(with("viewBox=\"0 0 1 1 1\""), "both sizes over 0"));
  CHECK(holds(with("viewBox=\"0 0 1 x\""), "byte 7: found \"x\""));
}
