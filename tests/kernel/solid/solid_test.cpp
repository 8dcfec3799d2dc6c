// Solids against the closed forms of their parts.
#include <algorithm>

#include "kernel/solid/measure.hpp"
#include "shared/tolerance.hpp"
#include "tests/kernel/solid/sample_parts.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

double distance_to_line(const Vec3& p, const Vec3& on, const Vec3& along) {
  const Vec3 between = p - on;
  return (between - between.dot(along) * along).norm();
}

bool on_axis(const CylinderFace& face, const Bore& bore) {
  return std::abs(std::abs(face.direction.dot(bore.axis)) - 1) < 1e-12 &&
         distance_to_line(face.point, bore.at, bore.axis) < 1e-9;
}

// Full hollow cylinders of a radius on the axis of a bore.
int walls_of(const std::vector<CylinderFace>& faces, const Bore& bore, double radius) {
  return int(std::count_if(faces.begin(), faces.end(), [&](const CylinderFace& face) {
    return face.full && face.hollow && std::abs(face.radius - radius) < 1e-12 && on_axis(face, bore);
  }));
}

int full_cylinders(const std::vector<CylinderFace>& faces) {
  return int(std::count_if(faces.begin(), faces.end(), [](const CylinderFace& face) { return face.full; }));
}

int walls_expected(const Part& part) {
  int walls = 0;
  for (const Bore& bore : part.bores()) walls += bore.counterbore ? 2 : 1;
  return walls;
}

bool any_cut(const Part& part) {
  return std::any_of(part.bores().begin(), part.bores().end(), [](const Bore& b) { return !b.flat_mouth; });
}

// What holds for the solid of every part.
void agrees_with(const Part& part, const Solid& solid) {
  CAPTURE(part.name());
  // Summed rounding is below 1e-12 of the volume; where pilots were cut the closed form of a mouth is good to
  // 1e-12.
  CHECK(solid_volume(solid) == within(part.volume(), 4e-12 * part.volume()));
  // The closed-form centre takes a cut pilot's wood at half its length; its mouth's cap is 1e-8 of the part.
  CHECK(same(solid_centre(solid), part.centre(), any_cut(part) ? 1e-7 : kRounding));
  // Where a mouth's spline bounds a face the box is found by iteration, to the tolerance.
  CHECK(same(solid_box(solid).low, part.box().low, any_cut(part) ? 2 * kSolid : kRounding));
  CHECK(same(solid_box(solid).high, part.box().high, any_cut(part) ? 2 * kSolid : kRounding));

  const ShapeCounts counts = shape_counts(solid);
  CHECK(counts.solids == 1);
  CHECK(counts.shells == 1);
  CHECK(counts.other_faces == 0);
  CHECK(counts.free_edges == 0);
  const auto arcs = std::count_if(part.outline().segments().begin(), part.outline().segments().end(),
                                  [](const Segment& s) { return !s.straight(); });
  CHECK(counts.cylinders == arcs + walls_expected(part));

  const std::vector<CylinderFace> cylinders = cylinder_faces(solid);
  CHECK(full_cylinders(cylinders) == walls_expected(part));
  for (const Bore& bore : part.bores()) {
    CHECK(walls_of(cylinders, bore, bore.diameter / 2) == 1);
    if (bore.counterbore) CHECK(walls_of(cylinders, bore, bore.counterbore->diameter / 2) == 1);
  }
  // A Boolean may raise tolerances where curves meet; more than this would be a sign of trouble.
  CHECK(greatest_tolerance(solid) <= (any_cut(part) ? 1e-6 : kSolid));
  CHECK(is_valid(solid));
  CHECK_FALSE(meets_itself(solid));
}

// A frame with no axis parallel to another's.
Frame askew() {
  const Vec3 x = Vec3(2, 3, 6) / 7, y = Vec3(3, -6, 2) / 7;
  return {{100, -200, 300}, x, y};
}

}  // namespace

TEST_CASE("a counterbored board has the volume worked out by hand", "[solid]") {
  // 1200 x 120 x 18 less pi (5^2 * 12 + 10^2 * 6) = 2 592 000 - 900 pi.
  const Solid solid = build_solid(counterbored_board());
  CHECK(solid_volume(solid) == within(2589172.567, 5e-4));
  const ShapeCounts counts = shape_counts(solid);
  CHECK(counts.cylinders == 2);
  CHECK(counts.planes == 7);  // six of the board and the shelf
  agrees_with(counterbored_board(), solid);
}

TEST_CASE("a plate of 400 holes has the volume worked out by hand", "[solid]") {
  // 400 x 400 x 18 less 400 pi 4^2 * 18 = 2 880 000 - 115 200 pi.
  const Part plate = plate_of_400_holes();
  const Solid solid = build_solid(plate);
  CHECK(solid_volume(solid) == within(2518088.526, 5e-4));
  CHECK(shape_counts(solid).cylinders == 400);
  CHECK(full_cylinders(cylinder_faces(solid)) == 400);
}

TEST_CASE("a block without bores is a box of six planes", "[solid]") {
  const Solid solid = build_solid(spacer());
  CHECK(shape_counts(solid).planes == 6);
  CHECK(shape_counts(solid).edges == 12);
  CHECK(cylinder_faces(solid).empty());
  agrees_with(spacer(), solid);
}

TEST_CASE("a beam with counterbores from below and strap bores across it agrees with its part", "[solid]") {
  const Part part = beam();
  const Solid solid = build_solid(part);
  CHECK(shape_counts(solid).planes == 6 + 5);  // a shelf for each counterbore
  agrees_with(part, solid);
}

TEST_CASE("a former with pilots on crown, hollow, flat and joints agrees with its part", "[solid]") {
  const Part part = former();
  const int cut = int(
      std::count_if(part.bores().begin(), part.bores().end(), [](const Bore& b) { return !b.flat_mouth; }));
  REQUIRE(cut == 4);
  agrees_with(part, build_solid(part));
}

TEST_CASE("the mouth of a pilot in an edge of radius R takes out pi r^4 / 8R less than a flat one",
          "[solid]") {
  // r = 1.5; the series' next term is of the order r^6 / R^3: 1e-7 mm3 at R 300.
  const Profile contact = waved_contact();
  PartSpec spec = spec_of("former", PartKind::former_lower, former_outline(contact), 18);
  const double bare = solid_volume(build_solid(make_part(spec)));
  spec.bores = {pilot(contact, 200)};  // on the crown of R 300
  const double taken = bare - solid_volume(build_solid(make_part(spec)));
  const double r = 1.5;
  CHECK(taken == within(kPi * r * r * 30 - kPi * r * r * r * r / (8 * 300), 5e-6));
  spec.bores = {pilot(contact, 420)};  // in the hollow of R 260 the mouth begins higher
  const double deeper = bare - solid_volume(build_solid(make_part(spec)));
  CHECK(deeper == within(kPi * r * r * 30 + kPi * r * r * r * r / (8 * 260), 5e-6));
}

TEST_CASE("every profile makes a panel of planes and cylinders, one face to an edge", "[solid]") {
  std::size_t seen = 0;
  for (const NamedProfile& named : named_profiles()) {
    INFO(named.name);
    const Part part = panel(named.profile, 8, 400);
    const Solid solid = build_solid(part);
    agrees_with(part, solid);
    const ShapeCounts counts = shape_counts(solid);
    CHECK(counts.planes + counts.cylinders == int(part.outline().segments().size()) + 2);
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("crowns are solid inside their cylinder and hollows outside", "[solid]") {
  const Solid solid = build_solid(plain_former(waved_contact()));
  std::vector<std::pair<double, bool>> found;
  for (const CylinderFace& face : cylinder_faces(solid)) found.emplace_back(face.radius, face.hollow);
  std::sort(found.begin(), found.end());
  REQUIRE(found.size() == 3);
  CHECK(found[0].first == within(260, 1e-9));
  CHECK(found[0].second);
  CHECK_FALSE(found[1].second);
  CHECK_FALSE(found[2].second);
}

TEST_CASE("a part is built in its own frame however its sheet lies in it", "[solid]") {
  PartSpec spec = board();
  spec.sheet = askew();
  spec.bores = {
      {BoreUse::foot_screw, 10, {}, Counterbore{20, 6}, spec.sheet.point({600, 60, 18}), -spec.sheet.z()},
      {BoreUse::strap, 6, {}, {}, spec.sheet.point({200, 0, 9}), spec.sheet.y},
      {BoreUse::foot_pilot, 3, 40, {}, spec.sheet.point({1200, 30, 9}), -spec.sheet.x}};
  const Part part = make_part(spec);
  const Solid solid = build_solid(part);
  CHECK(solid_volume(solid) == within(part.volume(), 4e-12 * part.volume()));
  CHECK(same(solid_centre(solid), part.centre()));
  for (const Bore& bore : part.bores()) CHECK(walls_of(cylinder_faces(solid), bore, bore.diameter / 2) == 1);
  CHECK(is_valid(solid));
  CHECK_FALSE(meets_itself(solid));
}

TEST_CASE("an outline drawn either way round gives a solid with its outside out", "[solid]") {
  const Outline drawn = rectangle({0, 0}, {100, 50});
  std::vector<Segment> turned;
  for (auto s = drawn.segments().rbegin(); s != drawn.segments().rend(); ++s) turned.push_back(s->reversed());
  for (const Outline& outline : {drawn, Outline(turned, "turned")}) {
    for (const double way : {1.0, -1.0}) {  // the sheet's normal up or down
      const Frame sheet{{0, 0, 0}, {1, 0, 0}, {0, way, 0}};
      const Solid solid =
          build_solid(make_part(spec_of("block", PartKind::spacer_block, outline, 18, sheet)));
      CHECK(solid_volume(solid) == within(90000, 1e-7));
      CHECK(is_valid(solid));
    }
  }
}

TEST_CASE("a blind bore and a through bore may share a face with a counterbore", "[solid]") {
  PartSpec spec = spec_of("block", PartKind::spacer_block, rectangle({0, 0}, {200, 70}), 45);
  spec.bores = {{BoreUse::clamp, 12, {}, {}, {30, 35, 0}, {0, 0, 1}},
                {BoreUse::foot_pilot, 8, 20, {}, {70, 35, 0}, {0, 0, 1}},
                {BoreUse::foot_screw, 6, {}, Counterbore{16, 10}, {110, 35, 0}, {0, 0, 1}},
                {BoreUse::foot_screw, 6, 30, Counterbore{16, 10}, {150, 35, 45}, {0, 0, -1}}};
  const Part part = make_part(spec);
  const Solid solid = build_solid(part);
  // pi (36 * 45 + 16 * 20 + 9 * 35 + 64 * 10 + 9 * 20 + 64 * 10) = 3715 pi.
  CHECK(solid_volume(solid) == within(200 * 70 * 45 - 3715 * kPi, 1e-6));
  CHECK(shape_counts(solid).planes == 6 + 2 + 2);  // two flat ends, two shelves
  agrees_with(part, solid);
}

TEST_CASE("a bore through the board is the same from either side, and its ends lie exactly on the faces",
          "[solid]") {
  PartSpec through = board();
  through.bores = {{BoreUse::clamp, 20, {}, {}, {600, 60, 0}, {0, 0, 1}}};
  PartSpec back = board();
  back.bores = {{BoreUse::clamp, 20, {}, {}, {600, 60, 18}, {0, 0, -1}}};
  const double a = solid_volume(build_solid(make_part(through))),
               b = solid_volume(build_solid(make_part(back)));
  CHECK(a == within(2592000 - 1800 * kPi, 1e-6));
  CHECK(a == within(b, 1e-8));
}

TEST_CASE("a moved solid has no location, the same volume and a shifted box", "[solid]") {
  const Part part = former();
  const Solid solid = build_solid(part);
  const Vec3 by = -part.box().low;
  const Solid moved = solid.moved(by);
  CHECK(solid_volume(moved) == within(part.volume(), 4e-12 * part.volume()));
  CHECK(same(solid_box(moved).low, {0, 0, 0}, 2 * kSolid));
  CHECK(same(solid_box(solid).low, part.box().low, 2 * kSolid));
  CHECK(is_valid(moved));
}

TEST_CASE("a pilot wider than the run it sits on is cut through its neighbours too", "[solid]") {
  // A run of 2 between bends, a pilot of 3 in its middle: the run's face falls into two.
  const Profile contact{{{-150, 0}, radians(25)}, {bend(25, 300), straight(2), bend(25, 300)}};
  PartSpec spec = spec_of("former", PartKind::former_lower, former_outline(contact), 18);
  spec.bores = {pilot(contact, contact.girth() / 2)};
  const Part part = make_part(spec);
  const Solid solid = build_solid(part);
  CHECK(solid_volume(solid) == within(part.volume(), 4e-12 * part.volume()));
  CHECK(full_cylinders(cylinder_faces(solid)) == 1);
  CHECK(is_valid(solid));
}
