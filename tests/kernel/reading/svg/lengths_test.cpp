#include "kernel/reading/svg/lengths.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;
using namespace lamwright::svg_reading;

namespace {

const Viewport kPage{Vec2(300, 400), 96};

double units(std::string_view text, Along along = Along::x, const Viewport& viewport = kPage) {
  const auto read = svg_texts::attribute(text);
  return in_user_units(read_length(read), along, viewport, read);
}

std::string fault_in(std::string_view text, const Viewport& viewport = kPage) {
  return message_of([&] { units(text, Along::x, viewport); });
}

}  // namespace

TEST_CASE("Lengths with units are px of 96 to the inch") {
  CHECK(units("12") == 12);
  CHECK(units("-1.5px") == -1.5);
  CHECK(units("25.4mm") == within(96, kRounding));
  CHECK(units("2.54cm") == within(96, kRounding));
  CHECK(units("1in") == within(96, kRounding));
  CHECK(units("72pt") == within(96, kRounding));
  CHECK(units("6pc") == within(96, kRounding));
  CHECK(units("101.6Q") == within(96, kRounding));
  CHECK(units(" 1IN ") == within(96, kRounding));
  CHECK(units("1e2") == 100);
  CHECK(units("25.4mm", Along::x, {Vec2(1, 1), 72}) == within(72, kRounding));
}

TEST_CASE("A share is one of the width, the height, or the diagonal over the root of two") {
  CHECK(units("50%", Along::x) == 150);
  CHECK(units("50%", Along::y) == 200);
  CHECK(units("50%", Along::both) == within(0.5 * 500 / std::sqrt(2), kRounding));
}

TEST_CASE("Lengths without a meaning here are refused") {
  CHECK(fault_in("2em") ==
        "shop.svg:3: path, d: read \"2em\"; allowed units: px, mm, cm, in, pt, pc, Q, % or none");
  CHECK(fault_in("5%", {std::nullopt, 96}) ==
        "shop.svg:3: path, d: is a share of a drawing without a size; write it as a number");
  CHECK(fault_in("5 mm") ==
        "shop.svg:3: path, d: byte 3: found \"m\" where the text should end; take it out");
  int refused = 0;
  for (const char* text : {"", "mm", "1vw", "1rem", "1e", "calc(1px)", "1mm2", "auto", "12,5mm", "1ft"}) {
    CAPTURE(text);
    CHECK_FALSE(fault_in(text).empty());
    ++refused;
  }
  CHECK(refused == 10);
}
