#include "exporters/picture/canvas.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace lamwright::picture;

namespace {

constexpr int kWidth = 70, kHeight = 150;  // several bands, the last one not full

struct Pieces {
  std::vector<Spot> spots;  // three a triangle
  std::vector<Spot> ends;   // two an edge
};

// Triangles at all depths, and level and other edges in every row, most of them behind something.
Pieces pieces() {
  std::mt19937 random(11);
  const auto upto = [&](double most) { return most * double(random()) / std::mt19937::max(); };
  const auto spot = [&] { return Spot{upto(kWidth), upto(kHeight), upto(100)}; };
  Pieces out;
  for (int i = 0; i < 3 * 60; ++i) out.spots.push_back(spot());
  for (int y = 0; y < kHeight; ++y) {
    const double depth = upto(100);
    out.ends.push_back({upto(30), y + 0.5, depth});
    out.ends.push_back({30 + upto(40), y + 0.5, depth});
    out.ends.push_back(spot());
    out.ends.push_back(spot());
  }
  return out;
}

template <typename Target>
void draw(Target& target) {
  const Pieces all = pieces();
  Tone tone = 2;
  for (std::size_t i = 0; i < all.spots.size(); i += 3)
    target.add_triangle(all.spots[i], all.spots[i + 1], all.spots[i + 2], tone++);
  for (std::size_t i = 0; i < all.ends.size(); i += 2) target.add_edge(all.ends[i], all.ends[i + 1]);
}

}  // namespace

TEST_CASE("a canvas drawn in bands has every row once, as if it were drawn in one piece") {
  Raster whole(kWidth, -1, kHeight);
  draw(whole);
  Canvas canvas(kWidth, kHeight);
  draw(canvas);
  int next = 0, ink = 0, faces = 0;
  canvas.draw([&](const Raster& band, int from, int to) {
    CHECK(from == next);
    CHECK(from % 2 == 0);
    for (int y = from; y < to; ++y)
      for (int x = 0; x < kWidth; ++x) {
        if (band.row(y)[x] != whole.row(y)[x]) FAIL("row " << y << ", sample " << x);
        ink += whole.row(y)[x] == kInk;
        faces += whole.row(y)[x] > kInk;
      }
    next = to;
  });
  CHECK(next == kHeight);
  CHECK(ink > 500);
  CHECK(faces > 3000);
}
