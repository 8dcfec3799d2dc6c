#include "kernel/part/part.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A board lying flat: 1200 x 120, 18 thick, own frame and sheet the same.
PartSpec board_spec(std::vector<BoreSpec> bores = {}) {
  return {"board",
          PartKind::former_lower,
          "board 18",
          rectangle({0, 0}, {1200, 120}),
          18,
          {},
          std::move(bores),
          {},
          true};
}
BoreSpec hole(double diameter, double x, double y) {
  return {BoreUse::clamp, diameter, std::nullopt, std::nullopt, {x, y, 0}, {0, 0, 1}};
}
BoreSpec blind(double diameter, double depth, double x, double y) {
  return {BoreUse::caul_pilot, diameter, depth, std::nullopt, {x, y, 0}, {0, 0, 1}};
}
Part board(std::vector<BoreSpec> bores) { return make_part(board_spec(std::move(bores))); }

constexpr double kBoard = 2592000;  // 1200 * 120 * 18

// Seven figures of volume and rounding of 1e6 mm3: 1e6 * 2^-52 * 100 terms.
constexpr double kVolume = 1e-6;

// A beam 46 x 90 lying along X, X = 0 in its middle: sheet X-Y, thickness along Z.
PartSpec beam_spec(double length, std::vector<BoreSpec> bores) {
  return {"beam",
          PartKind::beam,
          "D40 46 x 90",
          rectangle({-length / 2, 0}, {length / 2, 90}),
          46,
          {},
          std::move(bores),
          {},
          false};
}
BoreSpec foot_screw(double x) {
  return {BoreUse::foot_screw, 6, std::nullopt, Counterbore{16, 50}, {x, 0, 23}, {0, 1, 0}};
}
BoreSpec strap_hole(double x) {
  return {BoreUse::strap, 12, std::nullopt, std::nullopt, {x, 30, 0}, {0, 0, 1}};
}

}  // namespace

TEST_CASE("A board without bores is a box") {
  const Part p = board({});
  CHECK(p.volume() == within(kBoard, kVolume));
  CHECK(same(p.centre(), {600, 60, 9}));
  CHECK(same(p.box().low, {0, 0, 0}));
  CHECK(same(p.box().high, {1200, 120, 18}));
  CHECK(p.face_area() == within(144000, kVolume));
  CHECK(p.name() == "board");
  CHECK(p.board());
}

TEST_CASE("A through bore takes out its cylinder") {
  const Part p = board({hole(10, 300, 60)});
  const double removed = kPi * 25 * 18;
  CHECK(p.volume() == within(kBoard - removed, kVolume));
  CHECK(same(p.centre(), {(kBoard * 600 - removed * 300) / (kBoard - removed), 60, 9}));
  CHECK(p.face_area() == within(144000 - 25 * kPi, kVolume));
  REQUIRE(p.bores().size() == 1);
  CHECK(p.bores()[0].length == within(18, kRounding));
  CHECK(p.bores()[0].kind() == "through");
  CHECK(p.bores()[0].removed == within(removed, kVolume));
  CHECK(p.bores()[0].enters == kNearFace);
  CHECK(p.bores()[0].leaves == kFarFace);
  CHECK(p.bores()[0].flat_mouth);
}

TEST_CASE("A counterbored hole takes out both cylinders once") {
  // 1200 x 120 x 18 less pi (25 * 12 + 100 * 6).
  const Part p = board({{BoreUse::clamp, 10, std::nullopt, Counterbore{20, 6}, {600, 60, 0}, {0, 0, 1}}});
  CHECK(p.volume() == within(2589172.567, 5e-4));
  CHECK(p.bores()[0].kind() == "counterbored");
  // Centre: the counterbore is 6 deep from Z = 0, the bore 12 above it.
  const double wide = kPi * 100 * 6, narrow = kPi * 25 * 12;
  CHECK(p.centre().z() ==
        within((kBoard * 9 - wide * 3 - narrow * 12) / (kBoard - wide - narrow), kRounding));
}

TEST_CASE("A blind bore takes out its depth and opens in one face") {
  const Part p = board({blind(8, 13, 300, 60)});
  const double removed = kPi * 16 * 13;
  CHECK(p.volume() == within(kBoard - removed, kVolume));
  CHECK(p.bores()[0].kind() == "blind");
  CHECK(p.bores()[0].leaves == kNoFace);
  CHECK(p.centre().z() == within((kBoard * 9 - removed * 6.5) / (kBoard - removed), kRounding));
}

TEST_CASE("A bore from the far face goes the other way") {
  const Part p = board({{BoreUse::caul_pilot, 8, 13.0, std::nullopt, {300, 60, 18}, {0, 0, -1}}});
  const double removed = kPi * 16 * 13;
  CHECK(p.bores()[0].enters == kFarFace);
  CHECK(p.centre().z() == within((kBoard * 9 - removed * (18 - 6.5)) / (kBoard - removed), kRounding));
}

TEST_CASE("A beam has its screw bores counterbored from below and strap holes across") {
  const Part p = make_part(
      beam_spec(800, {foot_screw(-150), foot_screw(0), foot_screw(150), strap_hole(-350), strap_hole(350)}));
  const double screw = kPi * (9 * 40 + 64 * 50);  // 6 through the last 40, 16 through the first 50
  const double strap = kPi * 36 * 46;
  CHECK(p.bores()[0].length == within(90, kRounding));
  CHECK(p.bores()[0].removed == within(screw, kVolume));
  CHECK(p.bores()[3].length == within(46, kRounding));
  const double whole = 800 * 90 * 46;
  CHECK(p.volume() == within(whole - 3 * screw - 2 * strap, kVolume));
  const double height = (whole * 45.0 - 3 * kPi * (64 * 50 * 25 + 9 * 40 * 70) - 2 * strap * 30) /
                        (whole - 3 * screw - 2 * strap);
  CHECK(same(p.centre(), {0, height, 23}, 1e-8));
  CHECK(same(p.box().size(), {800, 90, 46}));
}

TEST_CASE("A part placed in its own frame carries its bores and centre along") {
  // The sheet stands upright: sheet x = Z, sheet y = X, so the thickness runs along Y.
  PartSpec spec = board_spec();
  spec.sheet = {{10, 20, 30}, {0, 0, 1}, {1, 0, 0}};
  spec.bores = {{BoreUse::clamp, 10, std::nullopt, std::nullopt, {10 + 60, 20, 30 + 300}, {0, 1, 0}}};
  const Part p = make_part(spec);
  const double removed = kPi * 25 * 18;
  CHECK(p.volume() == within(kBoard - removed, kVolume));
  CHECK(same(p.centre(), {70, 29, 30 + (kBoard * 600 - removed * 300) / (kBoard - removed)}));
  CHECK(same(p.box().low, {10, 20, 30}));
  CHECK(same(p.box().high, {130, 38, 1230}));
}

TEST_CASE("A hole outside the part is refused and named") {
  const auto error = error_of([] { board({hole(10, 600, 300)}); });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(holds(error->what(), "board"));
  CHECK(holds(error->what(), "(600, 300, 0)"));
  CHECK(holds(error->what(), "outside"));
}

TEST_CASE("Touching and overlapping holes are refused, at five apart they are bored") {
  const auto pair = [](double pitch) {
    return [pitch] { board({hole(20, 500, 60), hole(20, 500 + pitch, 60)}); };
  };
  CHECK(holds(message_of(pair(15)), "overlap"));
  CHECK(holds(message_of(pair(20)), "touch"));
  REQUIRE_ERROR(ErrorKind::geometry, pair(20.000001)());
  CHECK(holds(message_of(pair(24)), "4"));
  CHECK(error_of(pair(24)).has_value());
  CHECK(board({hole(20, 500, 60), hole(20, 525, 60)}).volume() ==
        within(2580690.266, 5e-4));  // less 2 * pi 100 * 18
}

TEST_CASE("The same hole twice is refused") {
  REQUIRE_ERROR(ErrorKind::geometry, board({hole(20, 500, 60), hole(20, 500, 60)}));
}

TEST_CASE("Counterbores are kept apart like bores") {
  const BoreSpec first{BoreUse::clamp, 10, std::nullopt, Counterbore{20, 6}, {600, 60, 0}, {0, 0, 1}};
  BoreSpec second = first;
  second.at.x() = 622;  // 2 between counterbores, 12 between bores
  REQUIRE_ERROR(ErrorKind::geometry, board({first, second}));
  second.at.x() = 625;
  CHECK_NOTHROW(board({first, second}));
}

TEST_CASE("A hole of 140 would split a board of 120") {
  const auto error = error_of([] { board({hole(140, 600, 60)}); });
  REQUIRE(error);
  CHECK(holds(error->what(), "140"));
  CHECK(holds(error->what(), "split"));
}

TEST_CASE("A hole keeps five of wood to the edge") {
  CHECK_NOTHROW(board({hole(10, 600, 10)}));
  const std::string message = message_of([] { board({hole(10, 600, 9)}); });
  CHECK(holds(message, "4 of wood"));
  REQUIRE_ERROR(ErrorKind::geometry, board({hole(10, 600, 120)}));  // half over the edge
  REQUIRE_ERROR(ErrorKind::geometry,
                board({{BoreUse::clamp, 10, std::nullopt, Counterbore{20, 6}, {600, 14, 0}, {0, 0, 1}}}));
}

TEST_CASE("A blind bore keeps five of wood below it") {
  CHECK_NOTHROW(board({blind(8, 13, 300, 60)}));
  REQUIRE_ERROR(ErrorKind::geometry, board({blind(8, 14, 300, 60)}));
  REQUIRE_ERROR(ErrorKind::geometry, board({blind(8, 18, 300, 60)}));
  REQUIRE_ERROR(ErrorKind::geometry, board({blind(8, 40, 300, 60)}));
}

TEST_CASE("A counterbore is shallower than its part") {
  const auto with = [](double depth) {
    return board({{BoreUse::clamp, 10, std::nullopt, Counterbore{20, depth}, {600, 60, 0}, {0, 0, 1}}});
  };
  CHECK_NOTHROW(with(13));
  REQUIRE_ERROR(ErrorKind::geometry, with(18));
  REQUIRE_ERROR(ErrorKind::geometry, with(30));
}

TEST_CASE("Bores without size or direction, and bores that begin off the surface, are refused") {
  const BoreSpec good = hole(10, 600, 60);
  const auto with = [&](auto change) {
    BoreSpec bore = good;
    change(bore);
    return board({bore});
  };
  CHECK_NOTHROW(with([](BoreSpec&) {}));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.diameter = 0; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.diameter = -10; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.diameter = NAN; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.depth = 0; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.depth = NAN; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.axis = {0, 0, 0}; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.axis = {0, 0, 2}; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.axis = {0, 0, -1}; }));  // out of the wood
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.at.z() = 5; }));         // inside the wood
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.at.x() = NAN; }));
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) {
                  b.counterbore = Counterbore{8, 6};
                }));  // narrower than the bore
  REQUIRE_ERROR(ErrorKind::geometry, with([](BoreSpec& b) { b.counterbore = Counterbore{20, 0}; }));
  REQUIRE_ERROR(ErrorKind::geometry,
                with([](BoreSpec& b) { b.axis = Vec3(0, 0.6, 0.8); }));  // neither across nor along
}

TEST_CASE("A part needs a thickness") {
  for (const double thickness : {0.0, -18.0, double(NAN), double(INFINITY)}) {
    PartSpec spec = board_spec();
    spec.thickness = thickness;
    REQUIRE_ERROR(ErrorKind::geometry, make_part(spec));
  }
}

TEST_CASE("Bores that would cross inside the wood are refused") {
  // A strap hole across a beam straight over a screw bore along its depth.
  REQUIRE_ERROR(ErrorKind::geometry, make_part(beam_spec(800, {foot_screw(0), strap_hole(0)})));
  // 16 / 2 + 12 / 2 + 5 = 19 between the axes at the height of the counterbore (30 is within its 50).
  REQUIRE_ERROR(ErrorKind::geometry, make_part(beam_spec(800, {foot_screw(0), strap_hole(18.9)})));
  CHECK_NOTHROW(make_part(beam_spec(800, {foot_screw(0), strap_hole(19)})));
}

TEST_CASE("Six hundred and forty bores are handled") {
  // 32 x 20 bores of 8, 20 apart, in 640 x 400 x 18.
  std::vector<BoreSpec> bores;
  for (int i = 0; i < 32; ++i)
    for (int j = 0; j < 20; ++j) bores.push_back(hole(8, 10 + 20 * i, 10 + 20 * j));
  REQUIRE(bores.size() == 640);
  PartSpec spec = board_spec(bores);
  spec.outline = rectangle({0, 0}, {640, 400});
  const Part p = make_part(spec);
  CHECK(p.volume() == within(640 * 400 * 18 - 640 * kPi * 16 * 18, kVolume));
  CHECK(same(p.centre(), {320, 200, 9}));
  // The last one moved onto its neighbour is found.
  spec.bores.back().at.y() -= 12;
  REQUIRE_ERROR(ErrorKind::geometry, make_part(spec));
}

TEST_CASE("Four hundred bores take out their wood") {
  // 20 x 20 bores of 8 in 400 x 400 x 18.
  std::vector<BoreSpec> bores;
  for (int i = 0; i < 400; ++i) bores.push_back(hole(8, 10 + 20 * (i % 20), 10 + 20 * (i / 20)));
  PartSpec spec = board_spec(bores);
  spec.outline = rectangle({0, 0}, {400, 400});
  CHECK(make_part(spec).volume() == within(2518088.526, 5e-4));
}

TEST_CASE("Equal parts are the same but for their name") {
  const Part a = board({hole(10, 300, 60), blind(8, 10, 500, 60)});
  CHECK(same_part(a, a.renamed("other")));
  CHECK(a.renamed("other").name() == "other");
  CHECK(a.name() == "board");
  CHECK(same_part(a, board({hole(10, 300 + 1e-8, 60), blind(8, 10, 500, 60)})));
}

TEST_CASE("Lengths that differ by less than a millionth are the same") {
  const Part a = board({hole(10, 300, 60), blind(8, 10, 500, 60)});
  CHECK(same_part(a, board({hole(10 + 1e-9, 300, 60), blind(8, 10, 500, 60)})));
  CHECK(same_part(a, board({hole(10, 300, 60), blind(8, 10 + 1e-9, 500, 60)})));
  PartSpec wider = board_spec({hole(10, 300, 60), blind(8, 10, 500, 60)});
  wider.outline = rectangle({0, 0}, {1200 + 1e-8, 120});
  CHECK(same_part(a, make_part(wider)));
}

TEST_CASE("Parts that differ in anything that is made are not the same") {
  const PartSpec base = board_spec({hole(10, 300, 60), blind(8, 10, 500, 60)});
  const Part a = make_part(base);
  const auto differs = [&](auto change) {
    PartSpec spec = base;
    change(spec);
    return !same_part(a, make_part(spec));
  };
  CHECK_FALSE(differs([](PartSpec&) {}));
  CHECK(differs([](PartSpec& s) { s.kind = PartKind::beam; }));
  CHECK(differs([](PartSpec& s) { s.stock = "board 18 (17.6)"; }));
  CHECK(differs([](PartSpec& s) { s.thickness = 17.6; }));
  CHECK(differs([](PartSpec& s) { s.outline = rectangle({0, 0}, {1200.001, 120}); }));
  CHECK(differs([](PartSpec& s) { s.bores.pop_back(); }));
  CHECK(differs([](PartSpec& s) { s.bores[0].at.x() += 0.001; }));
  CHECK(differs([](PartSpec& s) { s.bores[0].diameter = 11; }));
  CHECK(differs([](PartSpec& s) { s.bores[0].use = BoreUse::strap; }));
  CHECK(differs([](PartSpec& s) { s.bores[1].depth = 11; }));
  CHECK(differs([](PartSpec& s) { s.bores[0].counterbore = Counterbore{20, 6}; }));
  CHECK(differs([](PartSpec& s) { s.board = false; }));
}

TEST_CASE("Parts with other marks on them are not the same") {
  PartSpec marked = board_spec();
  marked.marks = {{Mark::Kind::label, {}, "left", {10, 10}, 0, 7}};
  CHECK_FALSE(same_part(board({}), make_part(marked)));
}

TEST_CASE("Random boards keep volume and centre of what is left") {
  property("volume and moment are those of the board less those of the bores", [] {
    std::vector<BoreSpec> bores;
    double volume = kBoard;
    Vec3 moment = kBoard * Vec3(600, 60, 9);
    const int count = *rc::gen::inRange(0, 12);
    for (int i = 0; i < count; ++i) {
      const double d = tenths(2, 40), x = 50 + 100 * i, y = tenths(45, 75);
      const bool from_below = *rc::gen::arbitrary<bool>();
      const double depth = *rc::gen::arbitrary<bool>() ? tenths(1, 13) : 18;
      BoreSpec bore = hole(d, x, y);
      if (depth < 18) bore.depth = depth;
      bore.at.z() = from_below ? 0 : 18;
      bore.axis = {0, 0, from_below ? 1.0 : -1.0};
      bores.push_back(bore);
      const double out = kPi * d * d / 4 * depth;
      volume -= out;
      moment -= out * Vec3(x, y, from_below ? depth / 2 : 18 - depth / 2);
    }
    const Part p = board(bores);
    RC_ASSERT(std::abs(p.volume() - volume) < kVolume);
    RC_ASSERT(same(p.centre(), moment / volume, 1e-8));
  });
}

TEST_CASE("A part of more bores than any press needs is refused") {
  CHECK_THROWS_WITH(
      board(std::vector<BoreSpec>(5001, hole(6, 600, 60))),
      "board: has 5001 bores, allowed up to 5000; set screws further apart, or press the panel in pieces");
}
