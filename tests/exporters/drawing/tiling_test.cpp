#include "exporters/drawing/tiling.hpp"

#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/clip.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/tile_notes.hpp"
#include "exporters/drawing/view.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

const std::vector<Pen> kPens{
    {"OUTLINE", 0.25, {}, "#000000"}, {"MARK", 0.25, {}, "#b0641e"}, {kCheckPen, 0.25, {}, "#909090"}};

Drawing drawn(const std::string& name, const std::vector<Segment>& outline, const Vec2& size) {
  Drawing drawing(name, size, kPens);
  drawing.add("OUTLINE", Path{outline, true, {}});
  return drawing;
}

Drawing board(const Vec2& size) {
  Drawing drawing = drawn("board", drawing::rectangle(Box2{{0, 0}, size}).segments, size);
  drawing.add(kCheckPen, line({5, 5}, {105, 5}));
  return drawing;
}

// A crown over a base line: rises by (1 - cos 40) 900 = 210.6 over 2 * 900 sin 40 = 1157.
Drawing crown() {
  const double radius = 900, half = radians(40);
  const Vec2 centre{radius * std::sin(half), 100 - radius * std::cos(half)};
  const Vec2 right = centre + radius * direction(kPi / 2 - half),
             left = centre + radius * direction(kPi / 2 + half);
  Drawing drawing = drawn("former-lower",
                          {line({0, 0}, {right.x(), 0}),
                           line({right.x(), 0}, right),
                           {right, left, 2 * half, centre, radius},
                           line(left, {0, 0})},
                          {right.x(), centre.y() + radius});
  drawing.add("MARK", line({centre.x(), 0}, {centre.x(), centre.y() + radius}));
  drawing.add("MARK", Circle{{300, 100}, 17.5, {}});
  drawing.add(
      "MARK",
      Text{{100, 60}, "former-lower, station __ of 4, and words enough to straddle a joint of sheets", 7});
  return drawing;
}

struct Page {
  Drawing drawing;
  Tile tile;
  Box2 cell;
  Vec2 back;  // from the page to the drawing
};

std::vector<Page> pages_of(const Drawing& full_size, const std::string& paper) {
  const TileGrid grid = tile_grid(full_size, paper);
  std::vector<Drawing> sheets = tiled(full_size, {paper, "Reading desk, 1a2b3c"});
  const std::vector<Tile> tiles = grid.tiles();
  REQUIRE(sheets.size() == tiles.size());
  std::vector<Page> out;
  for (std::size_t i = 0; i < tiles.size(); ++i)
    out.push_back({std::move(sheets[i]), tiles[i], grid.cell_of(tiles[i]),
                   grid.window_of(tiles[i]).low - window_on_page(grid.page).low});
  return out;
}

struct Case {
  std::string name;
  Drawing drawing;
  std::string paper;
};

std::vector<Case> cases() {
  std::vector<Case> out;
  for (const std::string paper : {"a3", "a4"}) {
    out.push_back({"crown", crown(), paper});
    out.push_back({"large board", board({2000, 1500}), paper});
    out.push_back({"small board", board({120, 80}), paper});
  }
  return out;
}

std::vector<Segment> in_drawing(const Page& page, const std::string& pen) {
  std::vector<Segment> out;
  for (const Segment& s : drawn_with(page.drawing, pen)) out.push_back(moved(s, page.back));
  return out;
}

// Middles of the crosses, in the drawing's coordinates.
std::vector<Vec2> targets(const Page& page) {
  std::vector<Vec2> out;
  for (const Item& item : page.drawing.items())
    if (page.drawing.pens()[item.pen].name == kRegisterPen)
      if (const auto* ring = std::get_if<Circle>(&item.shape)) out.push_back(ring->centre + page.back);
  return out;
}

std::vector<Segment> bars(const Drawing& page) {
  std::vector<Segment> out;
  for (const Segment& s : drawn_with(page, kCheckPen))
    if (s.length() > 50) out.push_back(s);
  return out;
}

}  // namespace

TEST_CASE("every point of the outline is on a page") {
  int points = 0;
  for (const Case& c : cases()) {
    const auto pages = pages_of(c.drawing, c.paper);
    std::vector<Segment> all;
    for (const Page& page : pages)
      for (const Segment& s : in_drawing(page, "OUTLINE")) all.push_back(s);
    for (const Segment& edge : drawn_with(c.drawing, "OUTLINE"))
      for (int i = 0; i <= 300; ++i, ++points) {
        double nearest = INFINITY;
        for (const Segment& s : all) nearest = std::min(nearest, distance(s, edge.point(i / 300.0)));
        INFO(c.name << " " << c.paper);
        REQUIRE(nearest < 1e-6);
      }
  }
  CHECK(points == 6 * 4 * 301);
}

TEST_CASE("pieces of the pages' cells add up to the whole, each point once") {
  int seen = 0;
  for (const Case& c : cases()) {
    double whole = 0, sum = 0;
    for (const Segment& s : drawn_with(c.drawing, "OUTLINE")) whole += s.length();
    for (const Page& page : pages_of(c.drawing, c.paper))
      for (const Segment& s : in_drawing(page, "OUTLINE"))
        for (const Segment& piece : clipped(s, page.cell)) sum += piece.length();
    INFO(c.name << " " << c.paper);
    // At each of some hundred cuts a piece shorter than 1e-6 may be dropped.
    CHECK(sum == within(whole, 1e-4));
    ++seen;
  }
  CHECK(seen == 6);
}

TEST_CASE("arcs stay arcs of the same circle") {
  int arcs = 0;
  for (const Page& page : pages_of(crown(), "a4"))
    for (const Segment& s : in_drawing(page, "OUTLINE"))
      if (!s.straight()) {
        ++arcs;
        CHECK(s.radius == 900);
        CHECK(same(s.centre, {900 * std::sin(radians(40)), 100 - 900 * std::cos(radians(40))}));
        CHECK((s.from - s.centre).norm() == within(900, kRounding));
      }
  CHECK(arcs >= 5);
}

TEST_CASE("crosses of neighbouring sheets lie at the same places of the drawing, three on a joint") {
  int joints = 0;
  for (const Case& c : cases()) {
    const auto pages = pages_of(c.drawing, c.paper);
    for (const Page& a : pages)
      for (const Page& b : pages) {
        const int down = b.tile.row - a.tile.row, right = b.tile.column - a.tile.column;
        if (!((down == 1 && right == 0) || (down == 0 && right == 1))) continue;
        int shared = 0;
        for (const Vec2& p : targets(a))
          for (const Vec2& q : targets(b)) shared += same(p, q) ? 1 : 0;
        INFO(c.name << " " << c.paper << " " << tile_code(a.tile) << " " << tile_code(b.tile));
        CHECK(shared == 3);
        ++joints;
      }
  }
  CHECK(joints > 60);
}

TEST_CASE("every page has one bar of exactly 100 across and one up") {
  int pages = 0;
  for (const Case& c : cases())
    for (const Page& page : pages_of(c.drawing, c.paper)) {
      const auto found = bars(page.drawing);
      INFO(c.name << " " << c.paper << " " << tile_code(page.tile));
      REQUIRE(found.size() == 2);
      // Coordinates of a page are below 512: 2^-44 each.
      CHECK((found[0].to - found[0].from - Vec2(100, 0)).norm() < 1e-12);
      CHECK((found[1].to - found[1].from - Vec2(0, 100)).norm() < 1e-12);
      CHECK(says(page.drawing, "100 mm"));
      CHECK(says(page.drawing, "scale 1:1, print at 100 %, do not fit to page"));
      ++pages;
    }
  CHECK(pages > 60);
}

TEST_CASE("check bars keep clear of the drawing's lines where there is room") {
  int pages = 0;
  for (const Page& page : pages_of(crown(), "a3")) {
    for (const Segment& bar : bars(page.drawing))
      for (const std::string pen : {"OUTLINE", "MARK", kRegisterPen, kSheetTrimPen})
        for (const Segment& s : drawn_with(page.drawing, pen)) CHECK(crossings(bar, s).empty());
    ++pages;
  }
  CHECK(pages > 2);
}

TEST_CASE("nothing is drawn outside the page's frame") {
  int shapes = 0;
  for (const Case& c : cases())
    for (const Page& page : pages_of(c.drawing, c.paper)) {
      const Box2 frame{{10, 10}, page.drawing.size() - Vec2(10, 10)};
      for (const Item& item : page.drawing.items()) {
        Box2 box;
        for (const Segment& s : strokes(item.shape)) box.add(lamwright::box(s));
        if (const auto* text = std::get_if<Text>(&item.shape)) box = text_box(*text);
        INFO(c.name << " " << c.paper << " " << tile_code(page.tile) << " "
                    << page.drawing.pens()[item.pen].name);
        CHECK(drawing::within(box, grown(frame, 1e-6)));
        ++shapes;
      }
    }
  CHECK(shapes > 2000);
}

TEST_CASE("the paper is turned the way that needs fewer sheets") {
  // A lying A4 shows 277 x 181, of which 267 x 171 are its own: 500 x 250 takes 2 x 2; upright 190 x 268, 180
  // x 258: 3.
  const TileGrid upright = tile_grid(board({500, 250}), "a4");
  CHECK(upright.page == Vec2(210, 297));
  CHECK((upright.rows == 1 && upright.columns == 3));
  // 530 x 170: 2 lying, 3 upright.
  const TileGrid lying = tile_grid(board({530, 170}), "a4");
  CHECK(lying.page == Vec2(297, 210));
  CHECK((lying.rows == 1 && lying.columns == 2));
  // A lying A3's own share is 390 x 258; both ways one sheet: lying.
  CHECK(tile_grid(board({200, 100}), "a3").page == Vec2(420, 297));
  CHECK(tile_grid(board({390, 258}), "a3").tiles().size() == 1);
}

TEST_CASE("sheets without a line of the part are left out, and the others say so") {
  // 5 x 5 cells of 390 x 258 would hold 1900 x 1250; the middle nine are bare.
  const Drawing bare = board({1900, 1250});
  const TileGrid grid = tile_grid(bare, "a3");
  REQUIRE(grid.used.size() == 25);
  CHECK(grid.tiles().size() == 16);
  CHECK_FALSE(grid.holds({2, 2}));
  int said = 0;
  for (const Drawing& page : tiled(bare, {"a3", "job"})) said += says(page, "crossed: no sheet") ? 1 : 0;
  CHECK(said == 16);
}

TEST_CASE("the overview of many sheets has lines that stand apart, and says how many sheets lie between") {
  const Drawing bare = board({16000, 600});  // 42 sheets side by side
  const TileGrid grid = tile_grid(bare, "a3");
  REQUIRE(grid.columns > 40);
  int overviews = 0;
  for (const Drawing& page : tiled(bare, {"a3", "job"})) {
    std::vector<double> upright;
    for (const Segment& s : drawn_with(page, kOverviewPen))
      if (std::abs(s.from.x() - s.to.x()) < 1e-9) upright.push_back(s.from.x());
    std::sort(upright.begin(), upright.end());
    upright.erase(
        std::unique(upright.begin(), upright.end(), [](double a, double b) { return b - a < 1e-6; }),
        upright.end());
    // The last one is the edge, which may follow sooner.
    for (std::size_t i = 1; i + 1 < upright.size(); ++i) CHECK(upright[i] - upright[i - 1] >= 1.2);
    CHECK(upright.size() > 5);
    overviews += says(page, "a line every 2 sheets") ? 1 : 0;
    CHECK_FALSE(says(page, "crossed"));
  }
  CHECK(overviews > 40);
}

TEST_CASE("sheets that link others are kept") {
  Drawing bored = board({1900, 1250});
  bored.add("MARK", Circle{{950, 625}, 17.5, {}});  // on the middle sheet alone
  const TileGrid grid = tile_grid(bored, "a3");
  // The ring of 16, and the column through the middle.
  CHECK(grid.tiles().size() == 19);
  for (const int row : {1, 2, 3}) CHECK(grid.holds({row, 2}));
}

TEST_CASE("rows have letters and columns numbers") {
  CHECK(tile_code({0, 0}) == "A1");
  CHECK(tile_code({1, 11}) == "B12");
  CHECK(tile_code({25, 0}) == "Z1");
  CHECK(tile_code({26, 0}) == "AA1");
  CHECK(tile_code({53, 2}) == "BB3");
}

TEST_CASE("each sheet names itself and its neighbours") {
  const auto pages = pages_of(board({700, 480}), "a3");  // 2 x 2
  REQUIRE(pages.size() == 4);
  const std::map<std::string, std::set<std::string>> wanted{{"A1", {"A2 right", "B1 below"}},
                                                            {"A2", {"A1 left", "B2 below"}},
                                                            {"B1", {"A1 above", "B2 right"}},
                                                            {"B2", {"A2 above", "B1 left"}}};
  for (const Page& page : pages) {
    const std::string code = tile_code(page.tile);
    CHECK(page.drawing.title() == "board " + code);
    CHECK(count_of(page.drawing, code) == 1);
    std::set<std::string> neighbours;
    for (const Text& text : texts(page.drawing))
      if (const auto end = text.text.find(": c"); end != std::string::npos && text.text != "board")
        neighbours.insert(text.text.substr(0, end));
    CHECK(neighbours == wanted.at(code));
  }
  CHECK(says(pages[2].drawing, "board, page 3 of 4"));
}

TEST_CASE("a single sheet has no marks to join it") {
  const auto pages = pages_of(board({120, 80}), "a4");
  REQUIRE(pages.size() == 1);
  CHECK(targets(pages[0]).empty());
  CHECK(drawn_with(pages[0].drawing, kSheetTrimPen).empty());
}

TEST_CASE("a text stays a text on a sheet that holds all of it and is lettered and cut where it straddles") {
  Drawing drawing = board({700, 200});  // two lying A3 sheets; the joint lies at x = 350
  drawing.add("MARK", Text{{20, 100}, "whole", 5});
  drawing.add("MARK", Text{{320, 50}, "straddling", 10});
  const auto pages = pages_of(drawing, "a3");
  REQUIRE(pages.size() == 2);
  CHECK(count_of(pages[0].drawing, "whole") == 1);
  CHECK(count_of(pages[1].drawing, "whole") == 0);
  for (const Page& page : pages) {
    CHECK_FALSE(says(page.drawing, "straddling"));
    CHECK(drawn_with(page.drawing, "MARK_TEXT_10").size() > 3);
  }
}

TEST_CASE("the drawing's own check bars are not cut up on pages") {
  const auto pages = pages_of(board({120, 80}), "a4");
  CHECK(drawn_with(pages[0].drawing, kCheckPen).size() == 6);  // two bars with two ends each
}

TEST_CASE("words on a page stand clear of each other and of the part's lines") {
  std::vector<std::string> bad;
  long seen = 0;
  for (const Page& page : pages_of(crown(), "a4"))
    for (const Text& text : texts(page.drawing)) {
      if (text.height == 7) continue;  // the part's own
      for (const std::string pen : {"OUTLINE", "MARK"})
        for (const Segment& s : drawn_with(page.drawing, pen)) {
          ++seen;
          const auto corners = text_corners(text);
          if (touches(s, std::vector<Vec2>{corners.begin(), corners.end()}))
            bad.push_back(tile_code(page.tile) + ": " + text.text);
        }
    }
  CHECK(bad == std::vector<std::string>{});
  CHECK(seen > 100);
}

TEST_CASE("the centre line of a symmetrical part is on no joint") {
  for (const double width : {300.0, 500.0, 700.0, 1100.0}) {
    const TileGrid grid = tile_grid(board({width, 200}), "a3");
    for (int column = 0; column <= grid.columns; ++column)
      CHECK(std::abs(grid.low.x() + column * grid.cell.x() - width / 2) > 5);
  }
}
