#include "exporters/drawing/text.hpp"

#include <catch2/catch.hpp>

using namespace lamwright;
using namespace lamwright::drawing;

TEST_CASE("a text's box follows its anchor and angle") {
  // 4 characters of 0.64 x 3.6 / 0.72 = 3.2 each
  const Text level{{10, 20}, "abcd", 3.6, Anchor::middle, 0};
  CHECK(text_box(level).low.x() == Approx(3.6));
  CHECK(text_box(level).high.x() == Approx(16.4));
  CHECK(text_box(level).high.y() == Approx(23.6));
  const Text upright{{10, 20}, "abcd", 3.6, Anchor::left, 1.5707963267948966};
  CHECK(text_box(upright).low.x() == Approx(6.4));
  CHECK(text_box(upright).high.y() == Approx(32.8));
}

TEST_CASE("letters beyond ASCII count as one, East Asian ones as wider") {
  CHECK(text_width("ä", 3.6) == Approx(text_width("a", 3.6)));
  CHECK(text_width("板", 3.6) == Approx(5));
}

TEST_CASE("a text too long is written smaller, then shortened without cutting a letter") {
  CHECK(fitted({0, 0}, "ab", 100, {5, 3.5}).height == 5);
  CHECK(fitted({0, 0}, "abcdeghknp", 32, {5, 3.5}).height == 3.5);
  const Text cut = fitted({0, 0}, "ääääääääääääääää", 25, {5, 3.5});
  CHECK(cut.text == "ääääää...");
  CHECK(text_width(cut.text, cut.height) <= 25);
}
