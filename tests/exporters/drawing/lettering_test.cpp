#include "exporters/drawing/lettering.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

// Sums of a few dozen figures of the order of 100, each rounded to 1e-16 of itself, turned and scaled.
constexpr double kRounding = 1e-11;

std::vector<Segment> pieces(const Lettering& lettering) {
  std::vector<Segment> out;
  for (const Path& path : lettering.strokes)
    out.insert(out.end(), path.segments.begin(), path.segments.end());
  return out;
}

Box2 box_of(const Lettering& lettering) {
  Box2 all;
  for (const Segment& s : pieces(lettering)) all.add(box(s));
  return all;
}

}  // namespace

TEST_CASE("a former's label is lettered with nothing missing") {
  const Lettering label = lettered({{0, 0}, "Rippe 7/12 ä", 5});
  CHECK(label.missing.empty());
  // R 2, i 2, p 2 and 2, e 1, 7 1, / 1, 1 1, 2 1, ä 2 and two dots.
  CHECK(label.strokes.size() == 17);
  CHECK(lettered({{0, 0}, "", 5}).strokes.empty());
  CHECK(lettered({{0, 0}, "  ", 5}).strokes.empty());
}

TEST_CASE("letters that the font does not have are drawn as boxes and named once, as they come") {
  const Lettering text = lettered({{0, 0}, "板a😀板", 10});
  CHECK(text.missing == std::vector<char32_t>{U'板', U'😀'});
  REQUIRE(text.strokes.size() == 5);  // three boxes and the two strokes of an a
  const Path& box = text.strokes.front();
  REQUIRE(box.segments.size() == 4);
  for (const Segment& side : box.segments) CHECK(side.straight());
  CHECK(box.segments.front().from == box.segments.back().to);
  CHECK(box_of(lettered({{0, 0}, "板", 10})).size().y() == Approx(10));
}

TEST_CASE("control characters and marks apart from a letter are boxes too") {
  CHECK(lettered({{0, 0}, "a\tb", 10}).missing == std::vector<char32_t>{U'\t'});
  CHECK(lettered({{0, 0}, "a\xCC\x88", 10}).missing == std::vector<char32_t>{U'\u0308'});
}

TEST_CASE("bytes that are not UTF-8 are one box for each fault") {
  // A lone lead byte; one that lacks its last byte; a letter of Latin-1.
  for (const std::string fault : {"\xC3", "\xE2\x82", "\xE4"}) {
    const Lettering text = lettered({{0, 0}, fault + "I", 10});
    CHECK(text.missing == std::vector<char32_t>{U'\uFFFD'});
    CHECK(text.strokes.size() == 2);
    CHECK(lettered_width(fault + "I", 10) <= text_width(fault + "I", 10));
  }
}

TEST_CASE("capitals are as high as the text says, small letters seven tenths, descenders three") {
  CHECK(box_of(lettered({{0, 20}, "H", 3.5})).low.y() == Approx(20));
  CHECK(box_of(lettered({{0, 20}, "H", 3.5})).high.y() == Approx(23.5));
  CHECK(box_of(lettered({{0, 0}, "x", 10})).high.y() == Approx(7));
  CHECK(box_of(lettered({{0, 0}, "p", 10})).low.y() == Approx(-3));
  CHECK(stroke_width(3.5) == Approx(0.35));
}

TEST_CASE("a text stands to the right of its anchor, about it or to its left") {
  const double width = lettered_width("Rib 4", 5);
  const Box2 left = box_of(lettered({{10, 20}, "Rib 4", 5, Anchor::left}));
  for (const auto& [anchor, share] : {std::pair{Anchor::middle, 0.5}, {Anchor::right, 1.0}}) {
    const Box2 moved = box_of(lettered({{10, 20}, "Rib 4", 5, anchor}));
    CHECK(moved.low.x() == Approx(left.low.x() - share * width));
    CHECK(moved.low.y() == Approx(left.low.y()));
  }
  CHECK(left.low.x() > 10);
  CHECK(left.high.x() < 10 + width);
}

TEST_CASE("a text turns about its anchor") {
  for (const Anchor anchor : {Anchor::left, Anchor::middle, Anchor::right}) {
    const auto level = pieces(lettered({{0, 0}, "Öse §3", 5, anchor, 0}));
    const auto upright = pieces(lettered({{30, 7}, "Öse §3", 5, anchor, kPi / 2}));
    REQUIRE(level.size() == upright.size());
    REQUIRE(level.size() > 30);
    for (std::size_t i = 0; i < level.size(); ++i) {
      CHECK((upright[i].to - Vec2(30, 7) - left_of(level[i].to)).norm() < kRounding);
      CHECK(upright[i].turn == level[i].turn);
    }
  }
}

TEST_CASE("each letter is placed where its own strokes begin") {
  const Text text{{20, 30}, "I板I", 8, Anchor::right, 0.4};
  const std::vector<PlacedLetter> placed = placed_letters(text);
  const Lettering whole = lettered(text);
  REQUIRE(placed.size() == 3);
  REQUIRE(whole.strokes.size() == 3);  // each letter is one stroke
  for (std::size_t i = 0; i < 3; ++i) {
    const Lettering alone = lettered({placed[i].at, i == 1 ? "板" : "I", 8, Anchor::left, 0.4});
    CHECK((alone.strokes[0].segments[0].from - whole.strokes[i].segments[0].from).norm() < kRounding);
    CHECK(placed[i].known == (i != 1));
  }
  CHECK(placed[1].letter == U'板');
}

TEST_CASE("pieces of a turned and scaled text share their ends to the last bit and arcs stay true") {
  const Lettering text = lettered({{123.4, -56.7}, "S§&@8 äßÅç {½}", 3.7, Anchor::middle, 0.83});
  int arcs = 0, joints = 0;
  for (const Path& path : text.strokes) {
    CHECK_FALSE(path.closed);
    for (std::size_t i = 1; i < path.segments.size(); ++i, ++joints)
      CHECK(path.segments[i - 1].to == path.segments[i].from);
    for (const Segment& s : path.segments) {
      if (s.straight()) continue;
      ++arcs;
      CHECK(std::abs((s.from - s.centre).norm() - s.radius) < kRounding);
      CHECK(std::abs((s.to - s.centre).norm() - s.radius) < kRounding);
      const Vec2 swept =
          s.centre +
          s.radius * direction(std::atan2(s.from.y() - s.centre.y(), s.from.x() - s.centre.x()) + s.turn);
      CHECK((swept - s.to).norm() < kRounding);
    }
  }
  CHECK(arcs > 60);
  CHECK(joints > 60);
}

TEST_CASE("figures are of one width, so that columns line up") {
  std::set<double> widths;
  for (char figure = '0'; figure <= '9'; ++figure) widths.insert(lettered_width(std::string(1, figure), 10));
  CHECK(widths.size() == 1);
}

TEST_CASE("letters that are easily taken for another differ") {
  const auto size = [](const char* letter) { return box_of(lettered({{0, 0}, letter, 10})).size(); };
  CHECK(size("I").x() == Approx(0).margin(kRounding));
  CHECK(size("l").x() > 1);  // a tail
  CHECK(size("1").x() > 2);  // a flag
  CHECK(size("|").y() > 12);
  CHECK(size("O").x() - size("0").x() > 1);
  // Corners against curves: the S and the 2 have arcs where the 5 and the Z are straight at the top.
  CHECK(pieces(lettered({{0, 0}, "5", 10})).front().straight());
  CHECK_FALSE(pieces(lettered({{0, 0}, "S", 10})).front().straight());
  CHECK(pieces(lettered({{0, 0}, "Z", 10})).front().straight());
  CHECK_FALSE(pieces(lettered({{0, 0}, "2", 10})).front().straight());
}

TEST_CASE("the width grows with the height and adds up over the letters") {
  CHECK(lettered_width("ab", 7) == Approx(lettered_width("a", 7) + lettered_width("b", 7)));
  CHECK(lettered_width("ab", 7) == Approx(2 * lettered_width("ab", 3.5)));
  CHECK(lettered_width("", 7) == 0);
}
