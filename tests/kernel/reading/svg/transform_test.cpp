#include "kernel/reading/svg/transform.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;
using svg_reading::read_transform;

namespace {

Vec2 sent(std::string_view list, const Vec2& p) { return read_transform(attribute(list))(p); }

std::string fault_in(std::string_view list) {
  return message_of([&] { read_transform(attribute(list)); });
}

}  // namespace

TEST_CASE("Each kind of transform sends points where its matrix says") {
  CHECK(same(sent("matrix(1 2 3 4 5 6)", {1, 10}), {1 + 30 + 5, 2 + 40 + 6}));
  CHECK(same(sent("translate(10)", {1, 2}), {11, 2}));
  CHECK(same(sent("translate(10,-20)", {1, 2}), {11, -18}));
  CHECK(same(sent("scale(3)", {1, 2}), {3, 6}));
  CHECK(same(sent("scale(3 -1)", {1, 2}), {3, -2}));
  CHECK(same(sent("rotate(30)", {2, 0}), {std::sqrt(3), 1}));
  CHECK(same(sent("rotate(90 10 10)", {20, 10}), {10, 20}));
  CHECK(same(sent("skewX(45)", {1, 2}), {3, 2}));
  CHECK(same(sent("skewY(45)", {1, 2}), {1, 3}));
}

TEST_CASE("The last transform of a list is applied first") {
  CHECK(same(sent("translate(100,0) rotate(90)", {10, 0}), {100, 10}));
  CHECK(same(sent("rotate(90) translate(100,0)", {10, 0}), {0, 110}));
  const Vec2 p{3, -7};
  CHECK(same(sent("translate(10 20)rotate(30)translate(-10-20)", p), sent("rotate(30,10,20)", p)));
  CHECK(same(sent(" scale( 2 , 2 ) ,\n rotate (30) ", p), sent("scale(2)rotate(30)", p)));
}

TEST_CASE("Quarter turns are exact") {
  CHECK(sent("rotate(90)", {200, 0}) == Vec2(0, 200));
  CHECK(sent("rotate(-270)", {200, 0}) == Vec2(0, 200));
  CHECK(sent("rotate(180)", {200, 0}) == Vec2(-200, 0));
  CHECK(sent("rotate(-90)", {200, 0}) == Vec2(0, -200));
  CHECK(sent("rotate(36000)", {200, 5}) == Vec2(200, 5));
}

TEST_CASE("No transform leaves all in place") {
  CHECK(sent("", {3, 4}) == Vec2(3, 4));
  CHECK(sent("none", {3, 4}) == Vec2(3, 4));
  CHECK(sent("  ", {3, 4}) == Vec2(3, 4));
}

TEST_CASE("A faulty list is refused with its byte") {
  CHECK(
      fault_in("rotate(30) turn(4)") ==
      "shop.svg:3: path, d: byte 12: unknown transform \"turn\"; allowed: matrix, translate, scale, rotate, "
      "skewX, skewY");
  CHECK(fault_in("rotate(30 4)") ==
        "shop.svg:3: path, d: byte 1: rotate with 2 numbers; write rotate(degrees) or rotate(degrees x y)");
  CHECK(fault_in("scale 2") ==
        "shop.svg:3: path, d: byte 7: found \"2\" where \"(\" is due; write scale(s) or scale(x y)");
  CHECK(fault_in("rotate(30deg)") ==
        "shop.svg:3: path, d: byte 10: found \"d\" where \")\" is due; write rotate(degrees) or "
        "rotate(degrees x y)");
  CHECK(fault_in("scale(1e30) scale(1e30) scale(1e30) scale(1e30) scale(1e30) scale(1e30) scale(1e30) "
                 "scale(1e30) scale(1e30) scale(1e30) scale(1e30)") ==
        "shop.svg:3: path, d: byte 121: this leads beyond all numbers; check its figures");
  CHECK(holds(fault_in("skewX(90)"), "beyond all numbers"));
  int refused = 0;
  for (const char* text : {"matrix(1 2 3 4 5)", "matrix(1 2 3 4 5 6 7)", "translate()", "Rotate(3)",
                           "rotate(3", "rotate(3,)", "(3)", "skewX(1 2)", "scale(1 2 3)", "rotate(3))"}) {
    CAPTURE(text);
    CHECK_FALSE(fault_in(text).empty());
    ++refused;
  }
  CHECK(refused == 10);
}

TEST_CASE("A map that presses the plane flat is told from one that only shrinks it") {
  CHECK(read_transform(attribute("scale(1 0)")).flattens());
  CHECK(read_transform(attribute("matrix(1 2 2 4 0 0)")).flattens());
  CHECK(read_transform(attribute("scale(0)")).flattens());
  CHECK_FALSE(read_transform(attribute("scale(1e-9 1e9)")).flattens());
  CHECK(read_transform(attribute("scale(2 -3)")).spread() == -6);
}
