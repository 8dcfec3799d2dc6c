#include "exporters/drawing/curved_edge.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "shared/units.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

// Half a circle of radius 130 over a box 40 high, crown up, middle at X = 0.
Outline half_round() {
  const Vec2 left{-130, 0}, right{130, 0};
  return {{{left, right, -kPi, {0, 0}, 130},
           line(right, {130, -40}),
           line({130, -40}, {-130, -40}),
           line({-130, -40}, left)},
          "half round"};
}

// A bow of radius 250: 3-4-5 triangles give its ends at X = -150 and 150, Y = 200.
Outline bow() {
  const double turn = 2 * std::asin(0.6);
  return {{{{-150, 200}, {150, 200}, -turn, {0, 0}, 250},
           line({150, 200}, {150, 100}),
           line({150, 100}, {-150, 100}),
           line({-150, 100}, {-150, 200})},
          "bow"};
}

const std::vector<std::string>* row_of(const Table& table, const std::string& first) {
  for (const auto& row : table.rows)
    if (row.front() == first) return &row;
  return nullptr;
}

}  // namespace

TEST_CASE("the curved edge runs from left to right over the wood, the straight one under it") {
  const auto above = curved_edge(bow());
  REQUIRE(above.size() == 1);
  CHECK(above[0].radius == 250);
  CHECK(above[0].from.x() == Approx(-150));
  const auto below = curved_edge(bow(), EdgeSide::lower);
  REQUIRE(below.size() == 1);
  CHECK(below[0].straight());
  CHECK(below[0].from.x() == Approx(-150));
}

TEST_CASE("sides that are tangent to an arc belong to its edge") {
  // At its ends the half circle runs into both sides, each 40 long.
  const auto edge = curved_edge(half_round());
  REQUIRE(edge.size() == 3);
  CHECK(edge[0].length() == Approx(40));
  CHECK(edge[1].radius == 130);
}

TEST_CASE("points stand at both ends and at every step along X") {
  const auto points = edge_points(curved_edge(bow()), 50);
  // -150 to 150; nowhere steeper than 45 degrees (sin 45 x 250 = 176.8).
  REQUIRE(points.size() == 7);
  for (int i = 0; i < 7; ++i) {
    const double x = -150 + 50 * i;
    CHECK(points[static_cast<std::size_t>(i)].x() == Approx(x).margin(1e-9));
    CHECK(points[static_cast<std::size_t>(i)].y() == Approx(std::sqrt(250 * 250 - x * x)));
  }
}

TEST_CASE("where the edge is steep it has points at every step of height as well") {
  const auto points = edge_points(curved_edge(half_round()), 50);
  // Along X -100 to 100 in five, ends and joints on X = +-130 (Y -40 and 0), Y = 50 on both steep shoulders.
  int at_height = 0;
  for (const Vec2& p : points)
    if (std::abs(p.y() - 50) < 1e-9) ++at_height;
  CHECK(at_height == 2);
  CHECK(points.size() == 11);
}

TEST_CASE("an edge that is alike on both sides is listed for one") {
  const auto edge = curved_edge(bow());
  CHECK(mirror_alike(edge));
  const Table one = point_table(edge, 50, std::nullopt);
  CHECK(one.columns.front().head == "± X");
  CHECK(one.rows.size() == 4);
  const std::vector<Segment> half{{{0, 250}, {150, 200}, -std::asin(0.6), {0, 0}, 250}};
  CHECK_FALSE(mirror_alike(half));
  CHECK(point_table(half, 50, std::nullopt).columns.front().head == "X");
}

TEST_CASE("heights are measured from the foot, down from one above") {
  const auto edge = curved_edge(bow());
  const Table up = point_table(edge, 50, HeightsFrom{100, false, "above foot"}),
              down = point_table(edge, 50, HeightsFrom{300, true, "below foot"});
  // At X = 150 the edge is at 200.
  REQUIRE(row_of(up, "150"));
  CHECK(row_of(up, "150")->at(2) == "100");
  REQUIRE(row_of(down, "150"));
  CHECK(row_of(down, "150")->at(2) == "100");
  // At X = 50, sqrt(250^2 - 50^2) = 244.949.
  REQUIRE(row_of(up, "50"));
  CHECK(row_of(up, "50")->at(1) == "244.9");
  CHECK(row_of(up, "50")->at(2) == "144.9");
}

TEST_CASE("every arc has its radius, centre and turn, and the last row the edge's end") {
  const Table table = arc_table(curved_edge(bow()));
  REQUIRE(table.rows.size() == 2);
  // 2 asin 0.6 = 73.74 degrees; length 250 x 1.287002 = 321.75.
  CHECK(table.rows[0] ==
        std::vector<std::string>{"bend 1", "250", "0", "0", "-150", "200", "321.75", "73.7°"});
  CHECK(table.rows[1][4] == "150");
  CHECK(table.rows[1][5] == "200");
}

TEST_CASE("a short edge is stepped more finely") {
  CHECK(point_step({line({0, 0}, {400, 0})}) == 50);
  CHECK(point_step({line({0, 0}, {200, 0})}) == 20);
  CHECK(point_step({line({0, 0}, {60, 0})}) == 10);
}
