#include "exporters/picture/few_colours.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

using namespace lamwright::picture;

namespace {

// Colour i stands `times(i)` times.
template <typename Times>
Image image_of(int colours, Times times) {
  Image image;
  for (int i = 0; i < colours; ++i)
    for (int k = 0; k < times(i); ++k) {
      for (const int byte : {i % 20 * 12, i / 20 * 12, 100}) image.rgb.push_back(std::uint8_t(byte));
      ++image.width;
    }
  image.height = 1;
  return image;
}

int packed(const std::uint8_t* pixel) { return pixel[0] << 16 | pixel[1] << 8 | pixel[2]; }

std::map<int, int> counts(const Image& image) {
  std::map<int, int> out;
  for (std::size_t i = 0; i < image.rgb.size(); i += 3) ++out[packed(&image.rgb[i])];
  return out;
}

int apart(int a, int b) {
  int sum = 0;
  for (const int shift : {16, 8, 0}) {
    const int difference = (a >> shift & 255) - (b >> shift & 255);
    sum += difference * difference;
  }
  return sum;
}

// To the nearest colour that stands more than once.
int least_apart(const Image& image, int from) {
  int least = 1 << 20;
  for (const auto& [colour, count] : counts(image))
    if (count > 1) least = std::min(least, apart(colour, from));
  return least;
}

}  // namespace

TEST_CASE("a picture of 256 colours stays as it is") {
  const Image before = image_of(256, [](int) { return 2; });
  Image image = before;
  keep_few_colours(image);
  CHECK(image.rgb == before.rgb);
}

TEST_CASE("beyond 256 colours the rarest become the nearest of the others") {
  // The last 44 stand once, all others three times.
  const Image before = image_of(300, [](int i) { return i < 256 ? 3 : 1; });
  Image image = before;
  keep_few_colours(image);
  CHECK(counts(image).size() == 256);
  int kept = 0, moved = 0;
  for (std::size_t i = 0; i < image.rgb.size(); i += 3) {
    const int is = packed(&image.rgb[i]), was = packed(&before.rgb[i]);
    (is == was ? kept : moved)++;
    if (is != was) CHECK(apart(is, was) == least_apart(before, was));
  }
  CHECK(kept == 3 * 256);
  CHECK(moved == 44);
}
