// Whole presses as STEP files read back: the worked cases and the demo jobs.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "exporters/step/step_exporter.hpp"
#include "kernel/plugin/memory.hpp"
#include "kernel/solid/measure.hpp"
#include "tests/exporters/step/read_back.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/folder_sources.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/source_folder.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

ReadFile press_read_back(const Evaluation& result) {
  Progress progress;
  MemorySink sink;
  StepExporter().write({*result.job, *result.plan, result.findings, progress}, sink);
  return read_back(sink.files().at("press.step"));
}

// Where a body's name stands in the assembly: a press with an upper half has a sub-assembly for each group.
std::string path_of(const PressPlan& plan, const Body& body) {
  const bool halves = std::any_of(plan.bodies.begin(), plan.bodies.end(),
                                  [](const Body& b) { return b.group == Group::upper; });
  const std::string group = body.group == Group::upper   ? "upper/"
                            : body.group == Group::panel ? "panel/"
                                                         : "lower/";
  return "press/" + (halves ? group : std::string()) + body.name;
}

// Every instance of a plan, in the file: volume, place, names; bore walls as full cylinders on the part's own
// axes.
void require_press(const Evaluation& result) {
  const PressPlan& plan = *result.plan;
  const ReadFile file = press_read_back(result);
  REQUIRE(file.roots == std::vector<std::string>{"press"});
  REQUIRE(file.instances.size() == plan.bodies.size());
  std::size_t seen = 0;
  for (const ReadInstance& instance : file.instances) {
    const auto body = std::find_if(plan.bodies.begin(), plan.bodies.end(),
                                   [&](const Body& b) { return path_of(plan, b) == instance.path; });
    REQUIRE(body != plan.bodies.end());
    const Part& part = plan.parts[body->part];
    INFO(body->name);
    CHECK(instance.product == part.name());
    CHECK(solid_volume(instance.solid) == within(part.volume(), 1e-7 * part.volume()));
    CHECK(same(solid_centre(instance.solid), body->placed.point(part.centre()), 1e-5));
    const auto walls = cylinder_faces(instance.solid);
    for (const Bore& bore : part.bores()) {
      const Vec3 at = body->placed.point(bore.at), axis = body->placed.vector(bore.axis);
      const auto on_axis = [&](const CylinderFace& face) {
        const Vec3 off = face.point - at;
        return face.full && std::abs(face.radius - bore.diameter / 2) < 1e-7 &&
               (off - off.dot(axis) * axis).norm() < 1e-5;
      };
      CHECK(std::count_if(walls.begin(), walls.end(), on_axis) == 1);
    }
    ++seen;
  }
  CHECK(seen == plan.bodies.size());
}

struct WorkedFormer {
  double width, height, area;
};

void require_former(const Evaluation& result, const WorkedFormer& worked) {
  int formers = 0;
  for (const ReadInstance& instance : press_read_back(result).instances) {
    if (instance.product != "former-lower") continue;
    ++formers;
    const Part::Box box = solid_box(instance.solid);
    CHECK(box.size().x() == within(worked.width, 0.001));
    CHECK(box.size().y() == within(worked.height, 0.001));
    CHECK(box.low.y() == within(0, 1e-6));
  }
  CHECK(formers == int(result.plan->sections.size()));
  CHECK(part_named(*result.plan, "former-lower").outline().area() == within(worked.area, 0.01));
}

}  // namespace

TEST_CASE("the worked cases come back from their STEP files", "[step]") {
  const Evaluation first =
      evaluated(job_text("width = 900\ntrim = 0\nprofile = [{bend = 120, radius = 400}]", birch(8), kWorked));
  const Evaluation second =
      evaluated(job_text("width = 900\ntrim = 15\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line "
                         "= 60}, {bend = 25, radius = 900}]",
                         birch(7), kWorked));
  const Evaluation third =
      evaluated(job_text("width = 900\ntrim = 0\nprofile = [{bend = 30, radius = 1500}]", birch(6), kWorked));
  require_former(first, {652.0024, 326.0487, 174786.69});
  require_former(second, {881.5320, 364.0067, 244709.24});
  require_former(third, {805.0832, 156.2869, 110781.87});
  for (const Evaluation* result : {&first, &second, &third}) require_press(*result);
}

TEST_CASE("every demo job that can be pressed comes back from its STEP file", "[step]") {
  const std::filesystem::path jobs = test::demo_job_folder();
  const FolderSources sources(jobs);
  int pressed = 0, refused = 0;
  for (const auto& entry : std::filesystem::directory_iterator(jobs)) {
    if (entry.path().extension() != ".toml") continue;
    INFO(entry.path().filename().string());
    const Evaluation result = evaluated(file_text(entry.path()), sources);
    if (!result.plan) {
      CHECK(entry.path().filename().string().starts_with("refused"));
      ++refused;
      continue;
    }
    require_press(result);
    ++pressed;
  }
  CHECK(pressed >= 11);
  CHECK(refused >= 1);
}

TEST_CASE("the contact faces of both halves stay one gap apart in the file", "[step]") {
  const std::string s_shape =
      "width = 300\nprofile = [{line = 60}, {bend = 45, radius = 420}, {line = 80}, {bend "
      "= -40, radius = 480}, {line = 90}]";
  int faces = 0;
  for (const std::string& caul : {std::string("[caul]\nkind = \"bare\"\nliner = 2\n"),
                                  std::string("[caul]\nkind = {thickness = 22, pitch = 36}\n")}) {
    const Evaluation result = evaluated(job_text(s_shape, birch(7), caul));
    REQUIRE(result.plan);
    const CaulSpec& spec = result.job->caul;
    const double gap = result.plan->panel.thickness + 2 * (3 + spec.thickness + spec.liner);
    const ReadFile file = press_read_back(result);
    const auto solid = [&](const std::string& path) {
      return std::find_if(file.instances.begin(), file.instances.end(),
                          [&](const ReadInstance& i) { return i.path == path; })
          ->solid;
    };
    const Profile& lower = result.plan->sections.front().lower;
    for (std::size_t run = 0; run < lower.runs().size(); ++run) {
      const Pose pose = lower.at((lower.station(run) + lower.station(run + 1)) / 2);
      const double z = result.plan->sections.front().z + 6;  // beside the pilots
      CHECK(face_distance(solid("press/lower/former-lower-01"), {pose.point.x(), pose.point.y(), z},
                          solid("press/upper/former-upper-01")) == within(gap, 1e-6));
      ++faces;
    }
  }
  CHECK(faces == 10);
}

TEST_CASE("solids of a whole press are valid and do not meet themselves", "[step]") {
  const Evaluation result =
      evaluated(job_text("width = 300\nprofile = [{line = 120}, {bend = 70, radius = 380}, {line = 60}, "
                         "{bend = 25, radius = 900}]",
                         birch(7), kWorked));
  REQUIRE(result.plan);
  std::size_t seen = 0;
  for (const Part& part : result.plan->parts) {
    INFO(part.name());
    const Solid solid = build_solid(part);
    CHECK(is_valid(solid));
    CHECK_FALSE(meets_itself(solid));
    const ShapeCounts counts = shape_counts(solid);
    CHECK(counts.solids == 1);
    CHECK(counts.shells == 1);
    CHECK(counts.other_faces == 0);
    CHECK(counts.free_edges == 0);
    ++seen;
  }
  CHECK(seen == result.plan->parts.size());
}
