#include "exporters/drawing/dimension.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

Drawing blank() { return Drawing("test", {200, 200}, sheet_pens()); }

std::vector<Text> texts(const Drawing& drawing) {
  std::vector<Text> out;
  for (const Item& item : drawing.items())
    if (const auto* text = std::get_if<Text>(&item.shape)) out.push_back(*text);
  return out;
}

// Tips of the filled arrows, in the order drawn, with the direction they point in.
struct Tip {
  Vec2 at, toward;
};
std::vector<Tip> arrows(const Drawing& drawing) {
  std::vector<Tip> out;
  for (const Item& item : drawing.items())
    if (const auto* path = std::get_if<Path>(&item.shape); path && !path->fill.empty()) {
      const Vec2 back = (path->segments[1].from + path->segments[1].to) / 2;
      out.push_back({path->segments[0].from, (path->segments[0].from - back).normalized()});
    }
  return out;
}

}  // namespace

TEST_CASE("a dimension with room has its arrows inside pointing outward") {
  Drawing drawing = blank();
  horizontal_dimension(drawing, {{120, 50}, {20, 50}, "100"}, 40);
  const auto tips = arrows(drawing);
  REQUIRE(tips.size() == 2);
  CHECK(tips[0].at == Vec2(20, 40));
  CHECK(tips[0].toward.x() == Approx(-1));
  CHECK(tips[1].at == Vec2(120, 40));
  CHECK(tips[1].toward.x() == Approx(1));
  CHECK(texts(drawing).front().at.x() == Approx(70));
}

TEST_CASE("a dimension without room has its arrows and text outside") {
  Drawing drawing = blank();
  horizontal_dimension(drawing, {{20, 50}, {24, 50}, "4"}, 40);
  const auto tips = arrows(drawing);
  REQUIRE(tips.size() == 2);
  CHECK(tips[0].toward.x() == Approx(1));
  CHECK(tips[1].toward.x() == Approx(-1));
  CHECK(text_box(texts(drawing).front()).low.x() > 24 + 3);
}

TEST_CASE("an upright dimension reads from the right") {
  Drawing drawing = blank();
  vertical_dimension(drawing, {{50, 120}, {50, 20}, "100"}, 40);
  const Text text = texts(drawing).front();
  CHECK(text.angle == Approx(1.5707963267948966));
  CHECK(text.at.x() < 40);
  CHECK(text.at.y() == Approx(70));
}

TEST_CASE("a dimension's text moves off a line that crosses it") {
  Drawing drawing = blank();
  drawing.add(pens::kCentre, line({70, 0}, {70, 100}));
  horizontal_dimension(drawing, {{20, 50}, {120, 50}, "100"}, 40);
  const Box2 box = text_box(texts(drawing).front());
  CHECK((box.high.x() < 70 || box.low.x() > 70));
}

TEST_CASE("an angle's arrows stand on the arc's ends and follow it") {
  Drawing drawing = blank();
  angle_dimension(drawing, {{100, 100}, 0, 1.0, 40, "57.3°"});
  const auto tips = arrows(drawing);
  REQUIRE(tips.size() == 2);
  CHECK((tips[0].at - Vec2(140, 100)).norm() < 1e-9);
  CHECK(tips[0].toward.y() < -0.99);
  CHECK((tips[1].at - Vec2(Vec2(100, 100) + 40 * direction(1.0))).norm() < 1e-9);
  CHECK(tips[1].toward.dot(left_of(direction(1.0))) > 0.99);
}

TEST_CASE(
    "a line close to a dimension line of its direction could be taken for it, one across or farther off "
    "not") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  aligned_dimension(drawing, {{20, 50}, {120, 50}, "100"}, 10);  // its line lies at y = 60
  CHECK(beside_parallel(drawing, line({30, 63}, {150, 63})));
  CHECK_FALSE(beside_parallel(drawing, line({30, 65}, {150, 65})));
  CHECK_FALSE(beside_parallel(drawing, line({70, 20}, {70, 100})));
  // Edges of the drawing itself do not count.
  drawing.add(pens::kPart, line({20, 80}, {120, 80}));
  CHECK_FALSE(beside_parallel(drawing, line({30, 81}, {150, 81})));
}

TEST_CASE("a size on a line that is there adds arrows and text, no second line") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  drawing.add(pens::kDimension, line({20, 50}, {120, 50}));
  size_on_line(drawing, {{20, 50}, {120, 50}, "chord 100"});
  int lines = 0, heads = 0, texts = 0;
  for (const Item& item : drawing.items()) {
    lines += std::holds_alternative<Segment>(item.shape);
    heads += std::holds_alternative<Path>(item.shape);
    texts += std::holds_alternative<Text>(item.shape);
  }
  CHECK(lines == 1);
  CHECK(heads == 2);
  CHECK(texts == 1);
}
