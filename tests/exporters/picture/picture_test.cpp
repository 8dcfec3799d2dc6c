#include "exporters/picture/picture.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "shared/units.hpp"
#include "tests/exporters/picture/boxes.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::picture;
using namespace lamwright::test;
using scene::Kind;

namespace {

const Camera kFront{0, 0, 0};

}  // namespace

TEST_CASE("a box seen from the front fills the middle and leaves the same margin all round") {
  const Image image = render(box_scene({{{7, -3, 20}, {100, 100, 40}}}), kFront, 200, 200);
  REQUIRE(image.rgb.size() == 3u * 200 * 200);
  const Drawn drawn = drawn_part(image);
  // Three hundredths of 200 are 6 pixels; an edge's line may take one more.
  CHECK(std::abs(drawn.left - 6) <= 1);
  CHECK(std::abs(drawn.top - 6) <= 1);
  CHECK(std::abs(drawn.right - 193) <= 1);
  CHECK(std::abs(drawn.bottom - 193) <= 1);
  CHECK_FALSE(pixel(image, 100, 100).white());
  CHECK(pixel(image, 2, 2).white());
}

TEST_CASE("a picture that is longer than its scene has it in the middle, as large as fits") {
  const Image image = render(box_scene({{{0, 0, 0}, {100, 50, 10}}}), kFront, 100, 300);
  const Drawn drawn = drawn_part(image);
  CHECK(std::abs(drawn.left - 3) <= 1);
  CHECK(std::abs(drawn.right - 96) <= 1);
  CHECK(std::abs((drawn.bottom - drawn.top + 1) - 47) <= 1);  // half of 94
  CHECK(std::abs((drawn.top + drawn.bottom) - 299) <= 1);
}

TEST_CASE("right is the press's right and up is up") {
  // A small box at the upper right of a large one's face, nearer to the eye.
  const auto scene = box_scene({{{0, 0, 0}, {100, 100, 10}}, {{70, 70, 10}, {20, 20, 5}, Kind::strap}});
  const Image image = render(scene, kFront, 200, 200);
  const Pixel strap = pixel(image, 6 + 188 * 8 / 10, 6 + 188 * 2 / 10), former = pixel(image, 40, 160);
  CHECK(strap.b > strap.r);
  CHECK(former.r > former.b);
  CHECK(pixel(image, 40, 40) == former);
}

TEST_CASE("the nearer of two pieces hides the farther, from either side") {
  auto scene =
      box_scene({{{0, 0, 0}, {100, 100, 10}, Kind::strap}, {{0, 0, 50}, {100, 100, 10}, Kind::panel}});
  const Pixel front = pixel(render(scene, kFront, 64, 64), 32, 32);
  const Pixel back = pixel(render(scene, {kPi, 0, 0}, 64, 64), 32, 32);
  CHECK(front.r > front.b);  // the panel is red, straps are blue
  CHECK(back.b > back.r);
  std::swap(scene.pieces[0], scene.pieces[1]);
  CHECK(pixel(render(scene, kFront, 64, 64), 32, 32) == front);
}

TEST_CASE("edges are dark where they are seen and nothing where they are hidden") {
  const std::vector<BoxPiece> boxes{{{0, 0, 0}, {100, 200, 10}}, {{30, 10, -40}, {40, 180, 10}}};
  const Image image = render(box_scene(boxes), kFront, 200, 400);
  const Pixel face = pixel(image, 100, 200);
  long seen = 0;
  for (int y = 20; y < 380; ++y)
    for (int x = 20; x < 180; ++x, ++seen)
      if (!(pixel(image, x, y) == face)) FAIL("something shows through at " << x << ", " << y);
  CHECK(seen == 360L * 160);

  const Image behind = render(box_scene(boxes), {kPi, 0, 0}, 200, 400);
  // The same box in front: along a level line its two upright edges are met.
  int dark = 0;
  for (int x = 20; x < 180; ++x) dark += pixel(behind, x, 200).sum() < face.sum() - 60;
  CHECK(dark >= 2);
  CHECK(dark <= 4);
}

TEST_CASE("pieces that look narrower than their edges would be wide are drawn without them") {
  // Bars side by side from the left to the right of the picture, 194 pixels of it: 40 of five pixels, and 200
  // of one.
  const auto dark = [](int bars) {
    std::vector<BoxPiece> boxes;
    for (int i = 0; i < bars; ++i) boxes.push_back({{200.0 / bars * i, 0, 0}, {200.0 / bars, 200, 5}});
    const Image image = render(box_scene(boxes), kFront, 200, 200);
    int lightest = 0, count = 0;
    for (int x = 20; x < 180; ++x) lightest = std::max(lightest, pixel(image, x, 100).sum());
    for (int x = 20; x < 180; ++x) count += pixel(image, x, 100).sum() < lightest - 60;
    return count;
  };
  CHECK(dark(40) >= 32);  // an edge where bars meet
  CHECK(dark(40) <= 80);
  CHECK(dark(200) == 0);
}

TEST_CASE("a thin sheet's far edges stay hidden under it") {
  const Image image = render(box_scene({{{0, 0, 0}, {300, 3, 300}}}), {0.5, 0.9, 0}, 300, 300);
  const Pixel top = pixel(image, 150, 150);
  const Drawn drawn = drawn_part(image);
  int seen = 0;
  for (int x = drawn.left + 40; x < drawn.right - 40; ++x, ++seen) CHECK(pixel(image, x, 150) == top);
  CHECK(seen > 100);
}

TEST_CASE("top, front and right of a box differ enough to be told apart in greys") {
  const Camera camera{0.6, 0.4, 0};
  int seen = 0;
  for (std::size_t kind = 0; kind < scene::kKinds; ++kind, ++seen) {
    const Image image = render(box_scene({{{0, 0, 0}, {100, 100, 100}, Kind(kind)}}), camera, 300, 300);
    // The cube's middle is the picture's. A face's middle lies half an edge off along its normal, seen as
    // normal . right and normal . up; scale from the drawn width, edge (cos a + sin a).
    const double ca = std::cos(0.6), sa = std::sin(0.6), ce = std::cos(0.4), se = std::sin(0.4);
    const Drawn drawn = drawn_part(image);
    const double half = (drawn.right - drawn.left + 1) / (ca + sa) / 2;
    const auto at = [&](double right, double up) {
      return pixel(image, int(150 + half * right), int(150 - half * up)).sum();
    };
    const int top = at(0, ce), front = at(-sa, -ca * se), right = at(ca, -sa * se);
    CAPTURE(kind);
    CHECK(top > front);
    CHECK(front > right);
    // An eighth of the lightest at least. Common practice, no source.
    CHECK(8 * (front - right) >= front);
  }
  CHECK(seen == int(scene::kKinds));
}

TEST_CASE("opening moves pieces by their own way, half of it at half") {
  const auto scene = box_scene(
      {{{0, 0, 0}, {100, 20, 20}, Kind::former}, {{0, 20, 0}, {100, 20, 20}, Kind::strap, {0, 60, 0}}});
  // Heights 40, 70 and 100 over a width of 100; the picture is wide enough for all.
  for (const auto& [open, height] : {std::pair{0.0, 40}, {0.5, 70}, {1.0, 100}}) {
    const Drawn drawn = drawn_part(render(scene, {0, 0, open}, 212, 212));
    CAPTURE(open);
    CHECK(std::abs((drawn.bottom - drawn.top + 1) - 2 * height) <= 2);
  }
  const Image open = render(scene, {0, 0, 1}, 212, 212);
  CHECK(pixel(open, 106, 106).white());
}

TEST_CASE("a face lies where its frame puts it") {
  auto scene = box_scene({{{0, 0, 0}, {100, 10, 10}}});
  scene.pieces[0].placed = {{50, 0, 0}, {0, 1, 0}, {-1, 0, 0}};  // stood on end
  const Drawn drawn = drawn_part(render(scene, kFront, 200, 200));
  CHECK(drawn.bottom - drawn.top + 1 >= 187);
  CHECK(drawn.right - drawn.left + 1 <= 21);
}

TEST_CASE("a scene without pieces is a white picture, sizes out of range are refused") {
  const Image image = render({}, {}, 16, 20);
  CHECK(image.width == 16);
  CHECK(image.height == 20);
  CHECK(image.rgb == std::vector<std::uint8_t>(3 * 16 * 20, 255));
  CHECK_NOTHROW(render({}, {}, 4000, 16));
  REQUIRE_ERROR(ErrorKind::internal, render({}, {}, 15, 100));
  REQUIRE_ERROR(ErrorKind::internal, render({}, {}, 100, 4001));
}

TEST_CASE("the same scene gives the same picture, in no more colours than a palette holds") {
  std::vector<BoxPiece> boxes;
  for (int i = 0; i < 40; ++i) {
    boxes.push_back({{i * 13.7, i % 7 * 9.1, i % 5 * 31.0}, {25, 18, 60}, Kind(i % int(scene::kKinds))});
  }
  const auto scene = box_scene(boxes);
  const Image image = render(scene, {}, 301, 199);  // odd sizes as well
  CHECK(image.rgb == render(scene, {}, 301, 199).rgb);
  std::set<int> colours;
  for (std::size_t i = 0; i < image.rgb.size(); i += 3)
    colours.insert(image.rgb[i] << 16 | image.rgb[i + 1] << 8 | image.rgb[i + 2]);
  CHECK(colours.size() <= 256);
  CHECK(colours.size() > 30);
}
