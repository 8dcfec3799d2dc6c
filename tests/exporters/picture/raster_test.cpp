#include "exporters/picture/raster.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace lamwright::picture;

namespace {

constexpr int kSize = 64;
constexpr Tone kTone = 5;

struct Triangle {
  Spot a, b, c;
};

long samples_of(const Raster& raster, Tone tone) {
  long count = 0;
  for (int y = 0; y < kSize; ++y)
    for (int x = 0; x < kSize; ++x) count += raster.row(y)[x] == tone;
  return count;
}

// The square from 2 to 62 in cells whose inner corners are moved about, each cut in two.
std::vector<Triangle> mosaic(unsigned seed) {
  constexpr int kCells = 12;
  std::mt19937 random(seed);
  const auto shift = [&](int i) {
    return i == 0 || i == kCells ? 0 : 2.0 * double(random()) / std::mt19937::max() - 1;
  };
  std::vector<std::vector<Spot>> corners;
  for (int i = 0; i <= kCells; ++i) {
    corners.emplace_back();
    for (int j = 0; j <= kCells; ++j)
      corners.back().push_back({2 + 5.0 * i + shift(i), 2 + 5.0 * j + shift(j), 0});
  }
  std::vector<Triangle> out;
  for (int i = 0; i < kCells; ++i)
    for (int j = 0; j < kCells; ++j) {
      out.push_back({corners[i][j], corners[i + 1][j], corners[i + 1][j + 1]});
      out.push_back({corners[i][j], corners[i + 1][j + 1], corners[i][j + 1]});
    }
  return out;
}

}  // namespace

TEST_CASE("triangles that share edges leave no sample out and share none") {
  int seen = 0;
  for (unsigned seed = 1; seed <= 20; ++seed, ++seen) {
    CAPTURE(seed);
    Raster all(kSize, 0, kSize - 1);
    long each = 0;
    for (const Triangle& t : mosaic(seed)) {
      all.add_triangle(t.a, t.b, t.c, kTone);
      Raster one(kSize, 0, kSize - 1);
      one.add_triangle(t.c, t.a, t.b, kTone);  // begun at another corner
      each += samples_of(one, kTone);
    }
    CHECK(samples_of(all, kTone) == 60L * 60);
    CHECK(each == 60L * 60);
  }
  CHECK(seen == 20);
}

TEST_CASE("the nearer sample stays, whichever comes first") {
  const Spot a{0, 0, 1}, b{0, 60, 1}, c{60, 0, 1}, d{0, 0, 2}, e{0, 60, 2}, f{60, 0, 2};
  for (const bool nearer_first : {false, true}) {
    Raster raster(kSize, 0, kSize - 1);
    if (nearer_first) raster.add_triangle(d, e, f, 9);
    raster.add_triangle(a, b, c, 7);
    if (!nearer_first) raster.add_triangle(d, e, f, 9);
    CHECK(raster.row(10)[10] == 9);
    CHECK(samples_of(raster, 7) == 0);
  }
}

TEST_CASE("where two triangles cross, each is seen on its own side") {
  Raster raster(kSize, 0, kSize - 1);
  raster.add_triangle({0, 0, 0}, {0, 64, 0}, {64, 32, 64}, 7);  // rises to the right
  raster.add_triangle({0, 0, 16}, {0, 64, 16}, {64, 32, 16}, 9);
  CHECK(raster.row(32)[8] == 9);
  CHECK(raster.row(32)[14] == 9);
  CHECK(raster.row(32)[17] == 7);
  CHECK(raster.row(32)[50] == 7);
}

TEST_CASE("rows are the same however they are cut into bands") {
  Raster whole(kSize, 0, kSize - 1), band(kSize, 0, 9);
  const auto draw = [](Raster& raster) {
    int tone = 2;
    for (const Triangle& t : mosaic(3)) raster.add_triangle(t.a, t.b, t.c, Tone(tone++));
    raster.add_edge({3, 3, 5}, {60, 50, 5});
    raster.add_edge({40, 2, 5}, {41, 61, -5});
  };
  draw(whole);
  int seen = 0;
  for (int first = -1; first + 8 < kSize; first += 8) {
    band.restart(first);
    draw(band);
    for (int y = first + 1; y < first + 9; ++y)
      for (int x = 0; x < kSize; ++x, ++seen)
        if (band.row(y)[x] != whole.row(y)[x]) FAIL("row " << y << ", sample " << x);
  }
  CHECK(seen == 64 * kSize);
}

TEST_CASE("an edge shows on the face that it bounds and not through a nearer one") {
  Raster raster(kSize, 0, kSize - 1);
  raster.add_triangle({0, 0, 0}, {0, 64, 0}, {64, 0, 0}, 7);
  raster.add_edge({5, 20.5, 0}, {30, 20.5, 0});
  CHECK(raster.row(20)[10] == kInk);
  raster.add_triangle({0, 0, 10}, {0, 64, 10}, {64, 0, 10}, 9);
  raster.add_edge({5, 20.5, 0}, {30, 20.5, 0});
  CHECK(samples_of(raster, kInk) == 0);
}
