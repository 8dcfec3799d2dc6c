// PNG files read again by a few lines of their own.
#include <zlib.h>

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "exporters/picture/picture.hpp"
#include "tests/exporters/picture/boxes.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::picture;
using namespace lamwright::test;

namespace {

struct Chunk {
  std::string type, data;
  std::uint32_t sum = 0;
};

std::uint32_t word(const std::string& text, std::size_t at) {
  std::uint32_t out = 0;
  for (std::size_t i = 0; i < 4; ++i) out = out << 8 | std::uint8_t(text[at + i]);
  return out;
}

// W3C PNG, third edition, annex D: polynomial edb88320, bit by bit.
std::uint32_t sum_of(const std::string& text) {
  std::uint32_t sum = 0xffffffff;
  for (const char c : text) {
    sum ^= std::uint8_t(c);
    for (int bit = 0; bit < 8; ++bit) sum = sum & 1 ? 0xedb88320 ^ (sum >> 1) : sum >> 1;
  }
  return ~sum;
}

std::vector<Chunk> chunks_of(const std::string& file) {
  if (file.substr(0, 8) != "\x89PNG\r\n\x1a\n") throw std::runtime_error("no PNG");
  std::vector<Chunk> out;
  for (std::size_t at = 8; at < file.size();) {
    const std::size_t length = word(file, at);
    out.push_back({file.substr(at + 4, 4), file.substr(at + 8, length), word(file, at + 8 + length)});
    at += length + 12;
  }
  return out;
}

std::string inflated(const std::string& data, std::size_t size) {
  std::string out(size, '\0');
  uLongf got = uLongf(size);
  if (uncompress(reinterpret_cast<Bytef*>(out.data()), &got, reinterpret_cast<const Bytef*>(data.data()),
                 uLong(data.size())) != Z_OK ||
      got != size)
    throw std::runtime_error("other length than the header tells");
  return out;
}

// Filters 0 and 2, eight bits, with or without a palette.
Image decoded(const std::string& file) {
  const auto chunks = chunks_of(file);
  const std::string head = chunks.front().data;
  Image image{int(word(head, 0)), int(word(head, 4)), {}};
  const bool palette = head[9] == 3;
  const std::size_t stride = std::size_t(image.width) * (palette ? 1 : 3);
  std::string colours, rows;
  for (const Chunk& chunk : chunks) {
    if (chunk.type == "PLTE") colours = chunk.data;
    if (chunk.type == "IDAT") rows = inflated(chunk.data, std::size_t(image.height) * (stride + 1));
  }
  std::vector<std::uint8_t> above(stride);
  for (std::size_t y = 0; y < std::size_t(image.height); ++y) {
    const char filter = rows[y * (stride + 1)];
    for (std::size_t x = 0; x < stride; ++x)
      above[x] = std::uint8_t(std::uint8_t(rows[y * (stride + 1) + 1 + x]) + (filter == 2 ? above[x] : 0));
    for (const std::uint8_t byte : above) {
      if (!palette) image.rgb.push_back(byte);
      for (std::size_t i = 0; palette && i < 3; ++i)
        image.rgb.push_back(std::uint8_t(colours.at(3u * byte + i)));
    }
  }
  return image;
}

Image gradient(int width, int height) {
  Image image{width, height, {}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (const int byte : {x * 5, y * 7, x * y}) image.rgb.push_back(std::uint8_t(byte));
  return image;
}

}  // namespace

TEST_CASE("a picture of few colours is written with a palette and reads back the same") {
  const Image image =
      render(box_scene({{{0, 0, 0}, {100, 40, 60}}, {{20, 40, 10}, {30, 30, 30}}}), {}, 123, 77);
  const std::string file = png(image);
  CHECK(chunks_of(file).front().data[9] == 3);
  const Image again = decoded(file);
  CHECK(again.width == 123);
  CHECK(again.height == 77);
  CHECK(again.rgb == image.rgb);
}

TEST_CASE("a picture of many colours is written without a palette and reads back the same") {
  const Image image = gradient(40, 30);
  const std::string file = png(image);
  CHECK(chunks_of(file).front().data[9] == 2);
  CHECK(decoded(file).rgb == image.rgb);
}

TEST_CASE("exactly 256 colours fit the palette, one more does not") {
  for (const int colours : {256, 257}) {
    Image image{colours, 1, {}};
    for (int i = 0; i < colours; ++i)
      for (const int byte : {i % 256, i / 256, 0}) image.rgb.push_back(std::uint8_t(byte));
    const std::string file = png(image);
    CHECK(chunks_of(file).front().data[9] == (colours == 256 ? 3 : 2));
    CHECK(decoded(file).rgb == image.rgb);
  }
}

TEST_CASE("chunks stand in the order of the specification with right check sums, without a time") {
  int seen = 0;
  for (const Image& image : {gradient(9, 5), render({}, {}, 16, 16)}) {
    const auto chunks = chunks_of(png(image));
    std::string order;
    for (const Chunk& chunk : chunks) {
      order += chunk.type + " ";
      CHECK(chunk.sum == sum_of(chunk.type + chunk.data));
      ++seen;
    }
    CHECK((order == "IHDR sRGB PLTE IDAT IEND " || order == "IHDR sRGB IDAT IEND "));
    CHECK(chunks.back().sum == 0xae426082);  // of every PNG file: nothing but the type is summed
    CHECK(png(image) == png(image));
  }
  CHECK(seen >= 9);
}

TEST_CASE("an image whose bytes do not fit its size is refused") {
  REQUIRE_ERROR(ErrorKind::internal, png({2, 2, {1, 2, 3}}));
  REQUIRE_ERROR(ErrorKind::internal, png({}));
}
