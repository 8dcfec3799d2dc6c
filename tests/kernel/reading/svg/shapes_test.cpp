#include "kernel/reading/svg/shapes.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;

namespace {

struct Map {
  std::string text;
  double spread;  // of areas
};

// Similar and uneven ones.
const std::vector<Map> kMaps{{"", 1},
                             {"rotate(33)", 1},
                             {"translate(5 6) scale(2)", 4},
                             {"scale(-1 1)", 1},
                             {"matrix(.6 .8 .8 -.6 1 2)", 1},
                             {"scale(2 1)", 2},
                             {"skewX(40)", 1},
                             {"rotate(20) scale(1 -3) skewY(10)", 3}};

std::string under(const Map& map, const std::string& shape) {
  return "<g transform=\"" + map.text + "\">" + shape + "</g>";
}

// Gauss and Kummer's series of the perimeter of an ellipse, from memory: pi (a + b) sum of (binomial(1/2, n)
// h^n)^2 with h = (a - b) / (a + b).
double perimeter(double a, double b) {
  const double h = (a - b) / (a + b);
  double sum = 0, term = 1;
  for (int n = 0; n < 200; ++n) {
    sum += term * term;
    term *= (0.5 - n) / (n + 1) * h;
  }
  return kPi * (a + b) * sum;
}

}  // namespace

TEST_CASE("A circle has its circumference and area, and stays a circle under even maps") {
  int even = 0;
  for (const Map& map : kMaps) {
    CAPTURE(map.text);
    const auto curve = curve_of(under(map, "<circle cx=\"30\" cy=\"-20\" r=\"50\"/>"));
    const auto measures = measured(curve);
    CHECK(curve.closed);
    CHECK(std::abs(measures.area) == within(map.spread * kPi * 2500, 1e-5));
    if (!std::holds_alternative<Segment>(curve.pieces[0])) continue;
    CHECK(curve.pieces.size() == 2);
    CHECK(segment_of(curve, 0).centre == segment_of(curve, 1).centre);
    CHECK(measures.length == within(std::sqrt(map.spread) * 2 * kPi * 50, 1e-6));
    ++even;
  }
  CHECK(even == 5);
}

TEST_CASE("An ellipse has its perimeter and area") {
  const auto curve = curve_of("<ellipse cx=\"30\" cy=\"20\" rx=\"80\" ry=\"30\"/>");
  CHECK(curve.pieces.size() == 4);
  const auto measures = measured(curve);
  CHECK(measures.length == within(perimeter(80, 30), 1e-6));
  CHECK(perimeter(50, 50) == within(2 * kPi * 50, 1e-12));
  // Clockwise as seen: the angle grows from X towards Y, which is down.
  CHECK(measures.area == within(-kPi * 80 * 30, 1e-5));
  CHECK(same(first_point(curve.pieces[0]), {110, -20}));
  int seen = 0;
  for (const Map& map : kMaps) {
    const auto drawn = curve_of(under(map, "<ellipse cx=\"30\" cy=\"20\" rx=\"80\" ry=\"30\"/>"));
    CHECK(std::abs(measured(drawn).area) == within(map.spread * kPi * 80 * 30, 1e-5));
    ++seen;
  }
  CHECK(seen == 8);
}

TEST_CASE("A radius of an ellipse that is not given equals the other") {
  for (const char* radii : {"rx=\"40\"", "ry=\"40\"", "rx=\"40\" ry=\"auto\"", "rx=\"40\" ry=\"40\""}) {
    const auto curve = curve_of(std::string("<ellipse cx=\"50\" cy=\"60\" ") + radii + "/>");
    REQUIRE(curve.pieces.size() == 2);
    CHECK(segment_of(curve, 0).radius == within(40, kRounding));
  }
}

TEST_CASE("A rectangle has its sides, area and corners") {
  int seen = 0;
  for (const Map& map : kMaps) {
    CAPTURE(map.text);
    const auto sharp = curve_of(under(map, "<rect x=\"10\" y=\"20\" width=\"200\" height=\"100\"/>"));
    CHECK(sharp.pieces.size() == 4);
    CHECK(std::abs(measured(sharp).area) == within(map.spread * 20000, 1e-6));
    const auto round =
        curve_of(under(map, "<rect x=\"10\" y=\"20\" width=\"200\" height=\"100\" rx=\"30\"/>"));
    CHECK(round.pieces.size() == 8);
    CHECK(std::abs(measured(round).area) == within(map.spread * (20000 - (4 - kPi) * 900), 1e-5));
    ++seen;
  }
  CHECK(seen == 8);
  const auto plain = curve_of("<rect x=\"10\" y=\"20\" width=\"200\" height=\"100\"/>");
  CHECK(measured(plain).length == within(600, kRounding));
  CHECK(same(segment_of(plain, 0).from, {10, -20}));
  CHECK(same(segment_of(plain, 0).to, {210, -20}));
}

TEST_CASE("Corner radii are no more than half of the sides") {
  const auto stadium = curve_of("<rect width=\"200\" height=\"100\" rx=\"50\"/>");
  CHECK(stadium.pieces.size() == 6);  // no straight ends are left
  CHECK(measured(stadium).length == within(200 + 100 * kPi, 1e-6));
  const auto oval = curve_of("<rect width=\"200\" height=\"100\" rx=\"500\" ry=\"500\"/>");
  CHECK(oval.pieces.size() == 4);
  CHECK(std::abs(measured(oval).area) == within(kPi * 100 * 50, 1e-5));
  CHECK(curve_of("<rect width=\"200\" height=\"100\" rx=\"0\" ry=\"20\"/>").pieces.size() == 4);
  CHECK(curve_of("<rect width=\"200\" height=\"100\" rx=\"20\" ry=\"10\"/>").pieces.size() == 8);
}

TEST_CASE("Lines and chains of points are drawn as they stand") {
  const auto line = curve_of("<line x1=\"1cm\" y1=\"10%\" x2=\"30\"/>");
  // 1 cm is 96 / 2.54 units, here of 1 mm each; 10 % of 500 is 50.
  CHECK(same(segment_of(line, 0).from, {96 / 2.54, -50}));
  CHECK(same(segment_of(line, 0).to, {30, 0}));
  const auto open = curve_of("<polyline points=\"0,0 100,0 100-50\"/>");
  CHECK(open.pieces.size() == 2);
  CHECK_FALSE(open.closed);
  const auto closed = curve_of("<polygon points=\"0,0 100,0 100-50\"/>");
  CHECK(closed.pieces.size() == 3);
  CHECK(closed.closed);
}

TEST_CASE("Shapes without a size are not drawn") {
  CHECK(read_body("<circle cx=\"5\"/><circle r=\"0\"/><ellipse rx=\"0\" ry=\"9\"/><rect width=\"5\"/>"
                  "<rect width=\"5\" height=\"0\"/><path/><polyline/><polygon points=\"\"/><path d=\"\"/>")
            .curves.empty());
}

TEST_CASE("Faulty shapes are refused") {
  CHECK(refusal_of_body("\n<circle id=\"a\" r=\"-5\"/>") ==
        "shop.svg:2: circle \"a\", r: is negative; allowed 0 and more");
  CHECK(refusal_of_body("<rect width=\"-5\" height=\"2\"/>") ==
        "shop.svg:1: rect, width: is negative; allowed 0 and more");
  CHECK(
      refusal_of_body("<polyline points=\"0,0 5\"/>") ==
      "shop.svg:1: polyline, points: byte 6: the number of coordinates is odd; write x and y of each point");
  CHECK(refusal_of_body("<polygon points=\"0,0 5,x\"/>") ==
        "shop.svg:1: polygon, points: byte 7: found \"x\" after a comma; a number must follow a comma");
  CHECK(holds(refusal_of_body("<line x1=\"here\"/>"), "line, x1: byte 1: found \"h\" where a number is due"));
  CHECK(holds(refusal_of_body("<ellipse rx=\"1\" ry=\"-1\"/>"), "is negative"));
}
