#include "kernel/reading/svg/pen.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;

namespace {

constexpr const char* kShortened =
    "1 curve drawn as lines or points, being shorter than 0.0001 mm or arcs of a radius below 0.001 mm or "
    "beyond "
    "1000 km: path (line 1)";

DrawnFile file_of(const std::string& d) { return read_body("<path d=\"" + d + "\"/>"); }

}  // namespace

TEST_CASE("An arc of a path is one circular segment, over the chord when it sweeps") {
  const auto curve = path_of("M0 0A300 300 0 01600 0");
  REQUIRE(curve.pieces.size() == 1);
  const auto& arc = segment_of(curve, 0);
  CHECK(arc.radius == 300);
  CHECK(arc.to == Vec2(600, 0));
  CHECK(same(arc.point(0.5), {300, 300}));
  CHECK(arc.turn == within(-kPi, 1e-12));
  CHECK(same(segment_of(path_of("M0 0A300 300 0 00600 0"), 0).point(0.5), {300, -300}));
  CHECK_FALSE(curve.closed);
}

TEST_CASE("A circle of two arcs of a path is closed, with or without z") {
  for (const char* end : {"", "z", "A50 50 0 1 1 0 0"}) {
    const auto curve = path_of(std::string("M0 0a50 50 0 1 1 100 0a50 50 0 1 1-100 0") + end);
    CHECK(curve.closed);
    CHECK(curve.pieces.size() == 2);
    CHECK(std::abs(measured(curve).area) == within(kPi * 2500, 1e-5));
    CHECK(segment_of(curve, 0).centre == segment_of(curve, 1).centre);
  }
}

TEST_CASE("An arc that is all but a circle is two segments") {
  const auto curve = path_of("M0 0A50 50 0 1 1 0.001 0");
  REQUIRE(curve.pieces.size() == 2);
  CHECK(measured(curve).length == within(100 * kPi - 0.001, 1e-5));
  CHECK_FALSE(curve.closed);
}

TEST_CASE("Elliptic arcs and uneven maps give rational curves, exact at their ends") {
  const auto curve = path_of("M0 0A80 30 25 1 0 60 40");
  CHECK(curve.pieces.size() >= 3);
  CHECK(first_point(curve.pieces.front()) == Vec2(0, 0));
  CHECK(last_point(curve.pieces.back()) == Vec2(60, -40));
  for (std::size_t i = 1; i < curve.pieces.size(); ++i)
    CHECK(first_point(curve.pieces[i]) == last_point(curve.pieces[i - 1]));
  const auto quarter = curve_of("<path transform=\"scale(2 1)\" d=\"M0 0A100 100 0 0 1 100 100\"/>");
  REQUIRE(quarter.pieces.size() == 1);
  const auto& bezier = bezier_of(quarter, 0);
  CHECK(same(bezier.poles[1], {200, 0}, 1e-9));
  CHECK(bezier.weights[1] == within(std::sqrt(0.5), 1e-12));
}

TEST_CASE("Free curves are Bezier curves on the mapped poles") {
  const auto cubic =
      curve_of("<path transform=\"translate(5 0)scale(2)\" d=\"M0 0C10 20 30 40 50 0Q60 9 70 0\"/>");
  REQUIRE(cubic.pieces.size() == 2);
  CHECK(bezier_of(cubic, 0).poles == std::vector<Vec2>{{5, 0}, {25, -40}, {65, -80}, {105, 0}});
  CHECK(bezier_of(cubic, 0).weights.empty());
  CHECK(bezier_of(cubic, 1).poles == std::vector<Vec2>{{105, 0}, {125, -18}, {145, 0}});
}

TEST_CASE("A free curve that is straight is a line, and one that turns back is lines") {
  const auto straight = path_of("M0 0C10 10 20 20 30 30");
  CHECK(same(segment_of(straight, 0).to, {30, -30}));
  CHECK(segment_of(straight, 0).straight());
  const auto back = path_of("M0 0Q20 0 0 0");
  REQUIRE(back.pieces.size() == 2);
  CHECK(same(segment_of(back, 0).to, {10, 0}));
  CHECK(back.closed);
  CHECK(std::holds_alternative<Bezier>(path_of("M0 0C10 10 20 20.001 30 30").pieces[0]));
}

TEST_CASE("Tiny arcs and curves become lines or points, and a note counts them") {
  // Of radius 0.02 mm an arc is drawn, of 0.0005 it is its chord.
  CHECK_FALSE(segment_of(path_of("M0 0A.02 .02 0 0 1 .04 0"), 0).straight());
  const auto chord = file_of("M0 0H10A.0005 .0005 0 0 1 10 .001H0");
  REQUIRE(chord.curves.size() == 1);
  REQUIRE(chord.curves[0].pieces.size() == 3);
  CHECK(segment_of(chord.curves[0], 1).straight());
  CHECK(segment_of(chord.curves[0], 1).length() == within(0.001, kRounding));
  CHECK(chord.notes == std::vector<std::string>{kShortened});
  const auto point = file_of("M0 0H10A50 50 0 0 1 10 1e-7H0");
  REQUIRE(point.curves.size() == 1);
  CHECK(point.curves[0].pieces.size() == 2);
  CHECK(point.curves[0].closed);
  CHECK(point.notes == std::vector<std::string>{kShortened});
  CHECK(file_of("M0 0H10c1e-5 1e-5 2e-5 0 3e-5 0").notes == std::vector<std::string>{kShortened});
  const auto dot = read_body("<circle id=\"dot\" r=\".0004\"/>");
  CHECK(dot.curves.empty());
  REQUIRE(dot.notes.size() == 2);
  CHECK(holds(dot.notes[0], "1 curve drawn as lines or points"));
  CHECK(dot.notes[1] == "1 curve left out: all in one point: circle \"dot\" (line 1)");
}

TEST_CASE("Curves all in one point are left out with a note") {
  const auto file = file_of("M5 5L5 5M6 6C6 6 6 6 6 6M7 7z M0 0h10");
  CHECK(file.curves.size() == 1);
  CHECK(file.notes ==
        std::vector<std::string>{"2 curves left out: all in one point; the first: path (line 1)"});
  CHECK(file.curves[0].what == "path (line 1)");
}

TEST_CASE("Points nearer than a millionth of a millimetre are one, and pieces share their ends") {
  const auto curve = path_of(
      "M0 0L100 0L100 0L100.0000005 0L200 50L200 50.0000001C220 60 230 70 240 70A50 50 0 0 "
      "1 290 120L0 .0000002z");
  CHECK(curve.closed);
  REQUIRE(curve.pieces.size() == 5);
  for (std::size_t i = 0; i < 5; ++i)
    CHECK(first_point(curve.pieces[(i + 1) % 5]) == last_point(curve.pieces[i]));
  // Steps too small to be seen add up.
  std::string crawl = "M0 0";
  for (int i = 0; i < 100; ++i) crawl += "h1e-7";
  const auto slow = path_of(crawl);
  CHECK(last_point(slow.pieces.back()).x() == within(1e-5, 1.1e-6));
}

TEST_CASE("Neighbouring lines of one direction stay as drawn, and so does a spike") {
  CHECK(path_of("M0 0H100H200H300V150").pieces.size() == 4);
  const auto spike = path_of("M0 0H150V40V0H300");
  REQUIRE(spike.pieces.size() == 4);
  CHECK(same(segment_of(spike, 1).to, {150, -40}));
  CHECK(same(segment_of(spike, 2).to, {150, 0}));
}

TEST_CASE("Each subpath is a curve of its own") {
  const auto file = read_body("<path id=\"two\" d=\"M0 0h10v10zM50 50h20\"/>");
  REQUIRE(file.curves.size() == 2);
  CHECK(file.curves[0].closed);
  CHECK_FALSE(file.curves[1].closed);
  CHECK(file.curves[0].id == "two");
  CHECK(file.curves[1].id == "two");
  CHECK(file.curves[0].what == "path \"two\" (line 1), subpath 1");
  CHECK(file.curves[1].what == "path \"two\" (line 1), subpath 2");
}

TEST_CASE("What reaches too far is refused, an arc too flat to see is a line") {
  CHECK(refusal_of_body("<path d=\"M0 0H1e8\"/>") ==
        "shop.svg:1: path: reaches 100000000 mm from the origin; allowed 10000000 mm; look for a wrong unit, "
        "scale "
        "or transform");
  CHECK(holds(refusal_of_body("<path d=\"M0 0L1e30 1e30\"/>"), "reaches 1000"));
  CHECK(holds(refusal_of_body(
                  "<g transform=\"scale(1e30)\"><g transform=\"scale(1e30)\"><circle r=\"1e30\"/></g></g>"),
              "from the origin"));
  CHECK(holds(refusal_of_body("<path d=\"M0 0A6e6 6e6 0 1 1 1 0\"/>"), "from the origin"));
  CHECK(refusal_of_body("<path d=\"M0 0A1e10 1e10 0 0 1 1e6 0\"/>") ==
        "shop.svg:1: path: has an arc of radius 10000000000 mm; allowed 1000000000 mm; look for a wrong "
        "unit, scale "
        "or transform");
  // A chord of 1000 over a radius of 1e10 rises 1000^2 / 8e10 = 1.25e-5 mm; one over 1e9 is an arc still.
  const auto flat = file_of("M0 0A1e10 1e10 0 0 1 1000 0");
  CHECK(segment_of(flat.curves.at(0), 0).straight());
  CHECK(flat.notes == std::vector<std::string>{kShortened});
  CHECK_FALSE(segment_of(path_of("M0 0A1e9 1e9 0 0 1 1000 0"), 0).straight());
}

TEST_CASE("More pieces than 200 000 are refused") {
  std::string d = "M0 0";
  for (int i = 0; i < 100'000; ++i) d += "h1v1";
  CHECK(path_of(d).pieces.size() == 200'000);
  CHECK(refusal_of_body("\n<path d=\"" + d + "h1\"/>") ==
        "shop.svg:2: here the drawing passes 200000 lines, arcs and curves; save a drawing that holds the "
        "panel's "
        "line only");
}
