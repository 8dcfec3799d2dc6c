#include "kernel/reading/dxf/curves.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;

namespace {

const std::string kLine = ", 0 LINE, 5 A1, 8 0, 10 0, 20 0, 11 10, 21 0";
const std::string kArc = ", 0 ARC, 5 A2, 8 B, 10 0, 20 0, 40 10, 50 0, 51 90";

std::string block(const std::string& name, const std::string& content,
                  const std::string& base = "10 0, 20 0") {
  return "0 BLOCK, 2 " + name + ", 70 0, " + base + ", 30 0" + content + ", 0 ENDBLK";
}

std::string file_of(const std::string& blocks, const std::string& list, const std::string& tables = "") {
  return drawing((tables.empty() ? "" : section("TABLES", tables)) + section("BLOCKS", blocks), list);
}

DrawnFile inserted(const std::string& content, const std::string& how,
                   const std::string& base = "10 0, 20 0") {
  return read(file_of(block("RIB", content, base), "0 INSERT, 5 F0, 8 SIDE, 2 rib, " + how));
}

}  // namespace

// (10, 0) - base (1, 2) = (9, -2); twice = (18, -4); a quarter turn = (4, 18); moved = (104, 68).
TEST_CASE("a block is moved by its base, scaled, turned and put in its place") {
  const DrawnCurve curve = only_curve(inserted(kLine, "10 100, 20 50, 41 2, 42 2, 50 90", "10 1, 20 2"));
  CHECK(same(segment_of(curve).to, {104, 68}));
  CHECK(same(segment_of(curve).from, {104, 48}));
}

TEST_CASE("curves of a block tell its name, the handles on the way, and take layer 0 from the insert") {
  const DrawnFile file = inserted(kLine + kArc, "10 0, 20 0");
  REQUIRE(file.curves.size() == 2);
  CHECK(file.curves[0].id == "F0/A1");
  CHECK(file.curves[0].layers == std::vector<std::string>{"SIDE"});
  CHECK(holds(file.curves[0].what, "LINE on layer SIDE (line "));
  CHECK(holds(file.curves[0].what, ", block RIB)"));
  CHECK(file.curves[1].layers == std::vector<std::string>{"B"});
}

TEST_CASE("a mirrored block turns its arcs the other way") {
  const Segment arc = segment_of(only_curve(inserted(kArc, "10 0, 20 0, 41 -3, 42 3")));
  CHECK(arc.turn == within(-kPi / 2, 1e-15));
  CHECK(arc.radius == within(30, kRounding));
  CHECK(same(arc.from, {-30, 0}));
  CHECK(same(arc.to, {0, 30}));
  // Twice mirrored: by its scale, and by an extrusion that points down.
  const Segment back = segment_of(only_curve(inserted(kArc, "10 5, 20 0, 41 -1, 210 0, 220 0, 230 -1")));
  CHECK(back.turn == within(kPi / 2, 1e-15));
  CHECK(same(back.from, {5, 0}));
}

// x = 20 cos t, y = 5 sin t.
TEST_CASE("uneven scale makes arcs elliptic, without loss") {
  const DrawnCurve curve = only_curve(inserted(kArc, "10 0, 20 0, 41 2, 42 0.5"));
  REQUIRE(curve.pieces.size() == 1);
  for (int k = 0; k <= 8; ++k) {
    const Vec2 p = bezier_of(curve).point(k / 8.0);
    CHECK(p.x() * p.x() / 400 + p.y() * p.y() / 25 == within(1, 1e-13));
  }
  CHECK(same(last_point(curve.pieces[0]), {0, 5}));
}

TEST_CASE("columns and rows of an insert are laid out turned and not scaled") {
  const DrawnFile file = inserted(kLine, "10 1, 20 1, 41 2, 42 2, 50 90, 70 3, 71 2, 44 100, 45 1000");
  REQUIRE(file.curves.size() == 6);
  CHECK(same(segment_of(file.curves[1]).from, {1, 101}));
  CHECK(same(segment_of(file.curves[3]).from, {-999, 1}));
  CHECK(same(segment_of(file.curves[5]).to, {-999, 221}));
}

TEST_CASE("blocks within blocks are placed one in the other") {
  const std::string text =
      file_of(block("IN", kLine) + ", " + block("OUT", ", 0 INSERT, 5 B1, 8 0, 2 IN, 10 7, 20 0, 50 90"),
              "0 INSERT, 5 F0, 8 SIDE, 2 OUT, 10 0, 20 100, 41 -1");
  const DrawnCurve curve = only_curve(read(text));
  CHECK(curve.id == "F0/B1/A1");
  CHECK(curve.layers == std::vector<std::string>{"SIDE"});
  CHECK(same(segment_of(curve).from, {-7, 100}));
  CHECK(same(segment_of(curve).to, {-7, 110}));
}

TEST_CASE("a block that holds itself is refused, and so is one too deep") {
  const std::string loop =
      file_of(block("A", ", 0 INSERT, 2 B, 10 0, 20 0") + ", " + block("B", ", 0 INSERT, 2 a, 10 0, 20 0"),
              "0 INSERT, 2 A, 10 0, 20 0");
  CHECK(refusal(loop) == "part.dxf:40: block \"A\" holds itself; take the INSERT out of it");
  std::string deep = block("L0", kLine);
  for (int i = 1; i <= 40; ++i)
    deep += ", " + block("L" + std::to_string(i), ", 0 INSERT, 2 L" + std::to_string(i - 1) + ", 10 0, 20 0");
  CHECK(read(file_of(deep, "0 INSERT, 2 L31, 10 0, 20 0")).curves.size() == 1);
  CHECK(holds(refusal(file_of(deep, "0 INSERT, 2 L32, 10 0, 20 0")),
              "block \"L0\" lies more than 32 blocks deep; explode the outer blocks"));
}

TEST_CASE("a block that the file does not hold is left out and told, one that nobody inserts is not judged") {
  const DrawnFile file = read(file_of(block("BAD", ", 0 LINE, 10 x"), "0 INSERT, 2 GONE, 10 0, 20 0"));
  CHECK(file.curves.empty());
  CHECK(noted(file, "left out, since the file does not hold the block: 1 GONE"));
}

TEST_CASE("an insert scaled to nothing or off the plane is refused") {
  CHECK(holds(refusal(file_of(block("RIB", kLine), "0 INSERT, 2 RIB, 10 0, 20 0, 41 0")),
              "INSERT: the block is scaled to nothing; give it a scale other than 0"));
  CHECK(holds(refusal(file_of(block("RIB", kLine), "0 INSERT, 2 RIB, 10 0, 20 0, 210 1, 220 0, 230 0")),
              "INSERT: lies off the XY plane"));
}

TEST_CASE("layers that are off or frozen do not show, nor do blocks on frozen ones") {
  const std::string tables =
      "0 TABLE, 2 LAYER, 0 LAYER, 2 Off, 70 0, 62 -7, 0 LAYER, 2 ICE, 70 1, 62 7, 0 LAYER, 2 B, 70 4, 62 7, "
      "0 ENDTAB";
  const auto on = [&](const std::string& layer, const std::string& content) {
    return read(file_of(block("RIB", content), "0 INSERT, 8 " + layer + ", 2 RIB, 10 0, 20 0", tables));
  };
  CHECK(on("B", kLine + kArc).curves.size() == 2);
  CHECK(on("OFF", kLine + kArc).curves.size() == 1);
  CHECK(on("ICE", kLine + kArc).curves.empty());
  const DrawnFile file = read(file_of(block("RIB", kLine),
                                      "0 LINE, 8 off, 10 0, 20 0, 11 1, 21 0, 0 LINE, 8 ICE, "
                                      "10 0, 20 0, 11 1, 21 0, 0 TEXT, 8 B, 1 note, 0 TEXT, 0 DIMENSION",
                                      tables));
  CHECK(file.curves.empty());
  CHECK(noted(file, "left out, since their layers are off or frozen: 2 entities (on layer: 1 ICE, 1 off)"));
  CHECK(noted(file, "left out, since they are no curves: 1 DIMENSION, 2 TEXT"));
}

TEST_CASE("what is not visible or stands on paper does not show") {
  const DrawnFile file =
      entities("0 LINE, 60 1, 10 0, 20 0, 11 1, 21 0, 0 LINE, 67 1, 10 0, 20 0, 11 1, 21 0");
  CHECK(file.curves.empty());
  CHECK(noted(file, "left out, since not visible: 1 entity"));
  CHECK(noted(file, "left out, since on paper space: 1 entity"));
}

TEST_CASE("what lies too far from the origin is refused, in mm") {
  CHECK(entity("0 LINE, 10 0, 20 0, 11 1e7, 21 0").pieces.size() == 1);
  CHECK(entity_refusal("0 LINE, 10 0, 20 0, 11 1.1e7, 21 0") ==
        "part.dxf:6: LINE: reaches beyond 1e7 mm from the origin; move the drawing to the origin, or check "
        "its unit");
  CHECK(holds(entity_refusal("0 CIRCLE, 10 9e6, 20 0, 40 2e6"), "reaches beyond 1e7 mm"));
  CHECK(holds(refusal(drawing(header("9 $INSUNITS, 70 6"), "0 LINE, 10 0, 20 0, 11 1.1e4, 21 0")),
              "reaches beyond 1e7 mm"));
}
