// Meshes against the closed forms of their parts.
#include "kernel/part/mesh.hpp"

#include <filesystem>

#include "shared/tolerance.hpp"
#include "tests/kernel/solid/sample_parts.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/folder_sources.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/meshes.hpp"
#include "tests/support/random.hpp"
#include "tests/support/source_folder.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A chord's normals at its ends differ from its own by half its turn.
const double kLeastFacing = std::cos(std::max(MeshSpec{}.turn, MeshSpec{}.bore_turn) / 2) - 1e-9;

bool is_closed(const Mesh& mesh, const Part& part) {
  const Topology t = topology(mesh);
  return t.sound && t.loose == 0 && t.euler == expected_euler(part);
}

bool faces_out(const Mesh& mesh) {
  const Facing f = facing(mesh);
  return f.unit < 1e-12 && f.least > kLeastFacing && f.seen > 0;
}

bool has_volume_of(const Mesh& mesh, const Part& part) {
  const VolumeBound bound = volume_bound(part);
  const double off = mesh.volume() - part.volume();
  return off >= -bound.less && off <= bound.more;
}

bool walls_are_round(const Mesh& mesh, const Part& part) {
  for (const Bore& bore : part.bores()) {
    const WallPoints narrow = wall_points(mesh, bore, bore.diameter / 2);
    // 2 pi / 0.53 = 11.9 chords, made even, at each end of the wall; points beside rails shift by kSnap.
    if (narrow.count < 2 * 12 || narrow.off > 1e-7 || narrow.intruding > 0) return false;
    if (!bore.counterbore) continue;
    const WallPoints wide = wall_points(mesh, bore, bore.counterbore->diameter / 2);
    if (wide.count < 2 * 12 || wide.off > 1e-7) return false;
  }
  return true;
}

void agrees_with(const Mesh& mesh, const Part& part) {
  CAPTURE(part.name());
  CHECK(is_closed(mesh, part));
  CHECK(faces_out(mesh));
  CHECK(has_volume_of(mesh, part));
  CHECK(walls_are_round(mesh, part));
}

// The same of a random part.
void assert_mesh_of(const Part& part) {
  const Mesh mesh = mesh_of(part);
  RC_ASSERT(is_closed(mesh, part));
  RC_ASSERT(faces_out(mesh));
  RC_ASSERT(has_volume_of(mesh, part));
  RC_ASSERT(walls_are_round(mesh, part));
}

Part block(Outline outline, double thickness, std::vector<BoreSpec> bores = {}, Frame sheet = {}) {
  PartSpec spec = spec_of("block", PartKind::spacer_block, std::move(outline), thickness, sheet);
  for (BoreSpec& bore : bores) {
    bore.at = sheet.point(bore.at);
    bore.axis = sheet.vector(bore.axis);
  }
  spec.bores = std::move(bores);
  return make_part(spec);
}

Frame askew() { return {{100, -200, 300}, Vec3(2, 3, 6) / 7, Vec3(3, -6, 2) / 7}; }

BoreSpec from_below(double diameter, double x, double w, std::optional<double> depth = 20) {
  return {BoreUse::foot_screw, diameter, depth, {}, {x, 0, w}, {0, 1, 0}};
}

// A quarter of a disc of radius 10 about the origin.
Outline quarter_disc() {
  return {{line({0, 0}, {10, 0}), {{10, 0}, {0, 10}, kPi / 2, {0, 0}, 10}, line({0, 10}, {0, 0})}, "sector"};
}

// A slab whose right end is a half circle that runs on from both long edges.
Outline rounded_slab() {
  return {{line({0, 0}, {100, 0}),
           {{100, 0}, {100, 80}, kPi, {100, 40}, 40},
           line({100, 80}, {0, 80}),
           line({0, 80}, {0, 0})},
          "slab"};
}

std::size_t upright_lines(const Mesh& mesh) {
  return std::size_t(std::count_if(mesh.edges.begin(), mesh.edges.end(), [&](const auto& e) {
    return (mesh.points[e[0]] - mesh.points[e[1]]).template head<2>().norm() < kSamePoint;
  }));
}

}  // namespace

TEST_CASE("a box has four points a face, two triangles a face and twelve sharp edges") {
  const Mesh mesh = extruded(rectangle({-1, 2}, {4, 9}), 3);
  CHECK(mesh.points.size() == 24);
  CHECK(mesh.triangles.size() == 12);
  CHECK(mesh.edges.size() == 12);
  CHECK(mesh.volume() == within(5 * 7 * 3, 1e-12));
  CHECK(topology(mesh).loose == 0);
  CHECK(topology(mesh).euler == 2);
  CHECK(facing(mesh).least > 1 - 1e-12);
}

TEST_CASE("a quarter disc has the volume of its seven chords") {
  // A quarter turn in steps of at most 0.26 (sag 0.1 would allow 0.28): seven triangles 10 x 10 x sin(pi /
  // 14) / 2.
  const Mesh mesh = extruded(quarter_disc(), 4);
  CHECK(mesh.volume() == within(7 * 50 * std::sin(kPi / 14) * 4, 1e-11));
  CHECK(faces_out(mesh));
  CHECK(upright_lines(mesh) == 3);
}

TEST_CASE("an arc is followed within the sag and the turn that are asked for") {
  const auto arcs_of = [](const MeshSpec& spec) {  // chords of one rim
    return (extruded(quarter_disc(), 4, spec).edges.size() - 3 - 4) / 2;
  };
  CHECK(arcs_of({0.1, 0.5}) == 6);    // sag governs: 4 asin(sqrt(0.1 / 20)) = 0.283; pi / 2 / 0.283 = 5.55
  CHECK(arcs_of({0.1, 0.2}) == 8);    // 7.85
  CHECK(arcs_of({0.01, 0.5}) == 18);  // 4 asin(sqrt(0.01 / 20)) = 0.0895: 17.6
  CHECK(arcs_of({50, 10}) == 2);      // at most 1 radian: 1.57
}

TEST_CASE("limits of a mesh that are not positive are refused") {
  REQUIRE_ERROR(ErrorKind::internal, extruded(quarter_disc(), 4, {0, 0.26}));
  REQUIRE_ERROR(ErrorKind::internal, extruded(quarter_disc(), 4, {0.1, 0}));
}

TEST_CASE("a joint that runs on smoothly has no line and one normal, a corner has both") {
  const Part slab = block(rounded_slab(), 20);
  const Mesh mesh = mesh_of(slab);
  agrees_with(mesh, slab);
  CHECK(upright_lines(mesh) == 2);  // at the square end only
  int at_joint = 0, at_corner = 0;
  for (const Vec3& p : mesh.points) {
    at_joint += same(p, {100, 0, 0});
    at_corner += same(p, {0, 0, 0});
  }
  CHECK(at_joint == 2);   // flat face and side
  CHECK(at_corner == 3);  // flat face and two sides
}

TEST_CASE("smooth joints of lines and arcs at any slope have one normal") {
  const Profile contact = waved_contact();
  const Mesh mesh = mesh_of(plain_former(contact));
  int seen = 0;
  for (std::size_t i = 1; i < contact.runs().size(); ++i, ++seen) {
    const Vec2 at = contact.pose(i).point;
    // Flat face and side.
    CHECK(std::count_if(mesh.points.begin(), mesh.points.end(), [&](const Vec3& p) {
            return same(p, {at.x(), at.y(), 0});
          }) == 2);
  }
  CHECK(seen == 4);
}

TEST_CASE("a strip thinner than the sag keeps its faces apart") {
  // With a sag of 0.1 the inner arc would get 10 chords (0.63244 / 0.063248 = 9.999) and the outer one 11
  // (0.63244 / 0.063240 = 10.0006), which would cross.
  const Part part = panel(from_origin({bend(degrees(0.63244), 200)}), 0.05, 100);
  const Mesh mesh = mesh_of(part);
  CHECK(is_closed(mesh, part));
  CHECK(facing(mesh).least > kLeastFacing);
  // Each face is off by two thirds of at most a quarter of the thickness.
  CHECK(mesh.volume() == within(part.volume(), part.volume() / 6));
}

TEST_CASE("a segment of a circle lower than the sag keeps its height") {
  // 100 wide and 0.08 high: radius (50^2 + 0.08^2) / 0.16 = 15625.04. The sag becomes 5.33 / (2 x 200) =
  // 0.0133, which takes sqrt(0.08 / 0.0133) = 2.4, so three chords; they leave out 1 / 3^2.
  const double radius = 15625.04, half = std::asin(50 / radius);
  const Outline segment({line({-50, 0}, {50, 0}), {{50, 0}, {-50, 0}, 2 * half, {0, 0.08 - radius}, radius}},
                        "segment");
  const Mesh mesh = extruded(segment, 10);
  CHECK(topology(mesh).loose == 0);
  // An arc of 6.4e-3 radians is a parabola within 1e-5 of its height.
  CHECK(mesh.volume() == within(segment.area() * 10 * 8 / 9, 1e-4 * segment.area() * 10));
}

TEST_CASE("a through bore leaves a ring of chords at each face and a handle") {
  const Part part =
      block(rectangle({0, 0}, {60, 40}), 18, {{BoreUse::clamp, 10, {}, {}, {30, 20, 0}, {0, 0, 1}}});
  const Mesh mesh = mesh_of(part);
  agrees_with(mesh, part);
  CHECK(topology(mesh).euler == 0);
  // A sag of 0.1 on a radius of 5 is a turn of 4 asin(sqrt(0.01)) = 0.40: 15.7 chords, made even.
  CHECK(mesh.edges.size() == 12 + 2 * 16);
  // 16 chords: 8 x 25 x sin(2 pi / 16) of area.
  CHECK(mesh.volume() == within(18 * (2400 - 8 * 25 * std::sin(kPi / 8)), 1e-9));
}

TEST_CASE("a bore of every kind is cut from every face") {
  const Outline plan = rectangle({0, 0}, {200, 120});
  const Part part = block(plan, 45,
                          {{BoreUse::clamp, 12, 20, {}, {30, 25, 45}, {0, 0, -1}},
                           {BoreUse::clamp, 8, {}, Counterbore{20, 6}, {70, 60, 0}, {0, 0, 1}},
                           {BoreUse::clamp, 8, {}, Counterbore{20, 6}, {110, 60, 45}, {0, 0, -1}},
                           {BoreUse::clamp, 8, 30, Counterbore{20, 6}, {150, 60, 0}, {0, 0, 1}},
                           {BoreUse::foot_screw, 6, {}, Counterbore{16, 50}, {180, 0, 22}, {0, 1, 0}},
                           {BoreUse::foot_screw, 6, 30, Counterbore{16, 20}, {0, 60, 22}, {1, 0, 0}},
                           {BoreUse::foot_screw, 6, 30, {}, {90, 120, 22}, {0, -1, 0}}},
                          askew());
  const Mesh mesh = mesh_of(part);
  agrees_with(mesh, part);
  CHECK(topology(mesh).euler == 2 - 2 * 3);
}

TEST_CASE("bores above each other in one edge are cut whether they overlap along it or not") {
  for (const double shift : {0.0, 1e-9, 3.0, 12.0, 25.0}) {
    const Part part =
        block(rectangle({0, 0}, {100, 60}), 60,
              {from_below(12, 40, 15), from_below(12, 40 + shift, 40), from_below(6, 75, 30, {})});
    CAPTURE(shift);
    agrees_with(mesh_of(part), part);
  }
}

TEST_CASE("a wide bore in a tight crown spans several chords") {
  const Part part = block(rounded_slab(), 60, {{BoreUse::clamp, 30, 60, {}, {140, 40, 30}, {-1, 0, 0}}});
  agrees_with(mesh_of(part), part);
}

TEST_CASE("a bore goes from a curved edge to a flat one") {
  const Part part = block(rounded_slab(), 40, {{BoreUse::clamp, 20, {}, {}, {140, 40, 20}, {-1, 0, 0}}});
  agrees_with(mesh_of(part), part);
  CHECK(topology(mesh_of(part)).euler == 0);
}

TEST_CASE("a bore in the corner of a valley has a mouth in both slopes") {
  const Part part = block(polygon({{0, 0}, {100, 0}, {100, 90}, {50, 60}, {0, 90}}, "valley"), 40,
                          {{BoreUse::foot_screw, 20, 40, {}, {50, 60, 20}, {0, -1, 0}}});
  const Mesh mesh = mesh_of(part);
  agrees_with(mesh, part);
  CHECK(upright_lines(mesh) == 4 + 2);  // the line up the corner is parted by the mouth
}

TEST_CASE("a bore leaves through a slanting edge by a long mouth") {
  const Part part = block(polygon({{0, 0}, {100, 0}, {100, 40}, {0, 20}}, "wedge"), 40,
                          {{BoreUse::foot_screw, 6, {}, {}, {14, 0, 20}, {0, 1, 0}}});
  const Mesh mesh = mesh_of(part);
  agrees_with(mesh, part);
  // Points 3 to the right of the axis lie 0.6 higher, those to the left 0.6 lower.
  CHECK(std::count_if(mesh.points.begin(), mesh.points.end(), [](const Vec3& p) {
          return same(p, {17, 23.4, 20});
        }) == 2);
  CHECK(std::count_if(mesh.points.begin(), mesh.points.end(), [](const Vec3& p) {
          return same(p, {11, 22.2, 20});
        }) == 2);
}

TEST_CASE("a mouth whose edge runs along the axis is refused") {
  // 1 deep, 2 from the corner, 10 wide: it would break out of the end.
  const Part part = block(rectangle({0, 0}, {200, 100}), 40, {from_below(10, 2, 20, 1)});
  CHECK(
      message_of([&] { mesh_of(part); }) ==
      "block: the edge within the mouth of the bore of 10 at (2, 0) lies along its axis or turns back; move "
      "the bore to where the edge is fair");
}

TEST_CASE("the mesh of a former with pilots on crown, hollow, flat and joints agrees with its part") {
  const Part part = former();
  REQUIRE(part.bores().size() == 9);
  agrees_with(mesh_of(part), part);
}

TEST_CASE("a beam and a plate of 400 holes agree with their parts") {
  agrees_with(mesh_of(beam()), beam());
  agrees_with(mesh_of(plate_of_400_holes()), plate_of_400_holes());
}

TEST_CASE("a part turned over has the same volume and its normals still point out") {
  const Part part = plain_former(waved_contact());
  const std::optional<Part> over = part.turned_over();
  REQUIRE(over.has_value());
  agrees_with(mesh_of(*over), *over);
  CHECK(mesh_of(*over).volume() == within(mesh_of(part).volume(), 1e-9 * part.volume()));
}

TEST_CASE("every part of every demo job agrees with its closed-form volume") {
  const std::filesystem::path jobs = test::demo_job_folder();
  const FolderSources sources(jobs);
  int plans = 0, parts = 0, of_lines = 0;
  for (const auto& entry : std::filesystem::directory_iterator(jobs)) {
    if (entry.path().extension() != ".toml") continue;
    const Evaluation result = evaluated(file_text(entry.path()), sources);
    if (!result.plan) continue;
    ++plans;
    CAPTURE(entry.path().stem().string());
    for (const Part& part : result.plan->parts) {
      const Mesh mesh = mesh_of(part);
      agrees_with(mesh, part);
      CHECK(mesh.volume() == within(part.volume(), 0.005 * part.volume()));
      ++parts;
      of_lines += std::all_of(part.outline().segments().begin(), part.outline().segments().end(),
                              [](const Segment& s) { return s.straight(); });
    }
  }
  CHECK(plans >= 11);
  CHECK(parts > 5 * plans);
  CHECK(of_lines > plans);
}

TEST_CASE("random formers with pilots at any station and joint have closed meshes") {
  const Profile contact = waved_contact();
  property("former", [&] {
    PartSpec spec = spec_of("former", PartKind::former_lower, former_outline(contact), 18);
    for (double station = tenths(10, 30); station < contact.girth() - 10; station += tenths(20, 80)) {
      double at = station;
      for (std::size_t i = 1; i < contact.runs().size(); ++i)
        if (std::abs(contact.station(i) - at) < 4) at = contact.station(i) + *rc::gen::inRange(-1, 2) * 1e-9;
      spec.bores.push_back(pilot(contact, at));
      spec.bores.back().diameter = tenths(2, 7);
    }
    std::optional<Part> part;
    try {
      part = make_part(spec);
    } catch (const Error&) {  // pilots in the hollow run toward each other
    }
    RC_PRE(part.has_value());
    assert_mesh_of(*part);
  });
}

TEST_CASE("random boards bored from both faces and an edge have closed meshes") {
  property("board", [] {
    constexpr double kCell = 60, kThickness = 45;
    const int columns = *rc::gen::inRange(1, 6), rows = *rc::gen::inRange(1, 4);
    std::vector<BoreSpec> bores;
    for (int i = 0; i < columns; ++i) {
      for (int j = 0; j < rows; ++j) {
        const bool near = *rc::gen::arbitrary<bool>(), blind = *rc::gen::arbitrary<bool>(),
                   wide = *rc::gen::arbitrary<bool>();
        bores.push_back(
            {BoreUse::clamp,
             tenths(4, 20),
             blind ? std::optional(tenths(12, 30)) : std::nullopt,
             wide ? std::optional(Counterbore{tenths(21, 30), tenths(2, 6)}) : std::nullopt,
             {kCell * (i + 0.5) + tenths(-8, 8), kCell * (j + 0.5) + tenths(-8, 8), near ? 0 : kThickness},
             {0, 0, near ? 1.0 : -1.0}});
      }
      bores.push_back(from_below(tenths(3, 10), kCell * (i + 0.5), kThickness / 2, tenths(2, 6)));
    }
    std::optional<Part> part;
    try {
      part = block(rectangle({0, 0}, {kCell * columns, kCell * rows}), kThickness, bores, askew());
    } catch (const Error&) {  // once in some hundred boards two bores come a hair too near
    }
    RC_PRE(part.has_value());
    assert_mesh_of(*part);
  });
}

TEST_CASE("random profiles make panels with closed meshes") {
  property("panel", [] {
    const Profile profile = random_profile();
    std::optional<Part> part;
    try {
      part = panel(profile, tenths(2, 40), tenths(50, 1500));
    } catch (const Error&) {  // the curve or its parallel meets itself
    }
    RC_PRE(part.has_value());
    assert_mesh_of(*part);
  });
}
