// STEP files read back, and what they promise as text.
#include "exporters/step/step_exporter.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <locale>
#include <set>
#include <thread>

#include "exporters/step/part21.hpp"
#include "exporters/step/step_data.hpp"
#include "kernel/solid/measure.hpp"
#include "tests/exporters/step/read_back.hpp"
#include "tests/exporters/step/sample_plans.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

int solids_in(const std::string& text) { return entity_count(text, "MANIFOLD_SOLID_BREP"); }

std::string press_of(const PressPlan& plan) { return exported(plan).files().at("press.step"); }

PressPlan plan_of(Part part) {
  PressPlan plan = empty_plan();
  const std::string instance = part.name() + "-01";
  plan.parts = {std::move(part)};
  plan.bodies = {{0, at_station(0), Group::lower, instance}};
  return plan;
}

// Calls with the standard output turned into a file, and returns what was printed.
template <class Fn>
std::string printed_by(Fn&& fn) {
  std::fflush(stdout);
  std::FILE* file = std::tmpfile();
  const int before = ::dup(1);
  ::dup2(::fileno(file), 1);
  fn();
  std::fflush(stdout);
  ::dup2(before, 1);
  ::close(before);
  std::string text(std::size_t(std::max(0L, (std::fseek(file, 0, SEEK_END), std::ftell(file)))), '\0');
  std::rewind(file);
  text.resize(std::fread(text.data(), 1, text.size(), file));
  std::fclose(file);
  return text;
}

struct CommaDecimals : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

}  // namespace

TEST_CASE("the exporter writes the press and each part", "[step]") {
  const MemorySink sink = exported(one_part_press(2));
  CHECK(sink.written() == std::vector<std::string>{"press.step", "parts/former-lower.step", "parts/beam.step",
                                                   "parts/spacer-block.step", "parts/panel.step"});
  for (const auto& [path, text] : sink.files()) {
    INFO(path);
    CHECK(solids_in(text) == (path == "press.step" ? 4 : 1));
  }
}

TEST_CASE(
    "a one-part press reads back with its instances by name, in place, closed and with the right volume",
    "[step]") {
  const PressPlan plan = one_part_press(3);
  const ReadFile file = read_back(press_of(plan));
  REQUIRE(file.roots == std::vector<std::string>{"press"});
  REQUIRE(file.instances.size() == plan.bodies.size());
  for (std::size_t i = 0; i < plan.bodies.size(); ++i) {
    const Body& body = plan.bodies[i];
    const Part& part = plan.parts[body.part];
    const ReadInstance& read = file.instances[i];
    INFO(body.name);
    CHECK(read.path == "press/" + body.name);
    CHECK(read.product == part.name());
    CHECK(shape_counts(read.solid).solids == 1);
    CHECK(shape_counts(read.solid).free_edges == 0);
    CHECK(shape_counts(read.solid).other_faces == 0);
    // Coordinates are written with 12 to 15 digits; a former's mouths are spline curves.
    CHECK(solid_volume(read.solid) == within(part.volume(), 1e-9 * part.volume()));
    CHECK(same(solid_centre(read.solid), body.placed.point(part.centre()), 1e-6));
    CHECK(greatest_tolerance(read.solid) <= 1e-4);
  }
}

TEST_CASE("a two-part press reads back with each sub-assembly used once", "[step]") {
  const PressPlan plan = two_part_press();
  const ReadFile file = read_back(press_of(plan));
  REQUIRE(file.roots == std::vector<std::string>{"press"});
  std::set<std::string> paths;
  for (const ReadInstance& read : file.instances) paths.insert(read.path);
  std::set<std::string> wanted;
  for (const Body& body : plan.bodies)
    wanted.insert(std::string("press/") +
                  (body.group == Group::lower   ? "lower/"
                   : body.group == Group::upper ? "upper/"
                                                : "panel/") +
                  body.name);
  CHECK(paths == wanted);
  CHECK(file.instances.size() == plan.bodies.size());
}

TEST_CASE("colours come back as they were chosen, one to a kind of part", "[step]") {
  const PressPlan plan = one_part_press(2);
  int seen = 0;
  for (const ReadInstance& read : read_back(press_of(plan)).instances) {
    const auto part = std::find_if(plan.parts.begin(), plan.parts.end(),
                                   [&](const Part& p) { return p.name() == read.product; });
    REQUIRE(part != plan.parts.end());
    const Colour wanted = colour_of(part->kind());
    // The reader keeps them in single precision.
    CHECK(read.colour.red == within(wanted.red, 1e-6));
    CHECK(read.colour.green == within(wanted.green, 1e-6));
    CHECK(read.colour.blue == within(wanted.blue, 1e-6));
    ++seen;
  }
  CHECK(seen == 6);
  CHECK(entity_count(press_of(plan), "COLOUR_RGB") == 4);
  CHECK(holds(press_of(plan), "= COLOUR_RGB('',0.8,0.68,0.5);"));
}

TEST_CASE("a press of 40 formers holds as many solids as one of 4", "[step]") {
  const std::string few = press_of(one_part_press(4)), many = press_of(one_part_press(40));
  CHECK(solids_in(few) == 4);
  CHECK(solids_in(many) == 4);
  CHECK(entity_count(few, "NEXT_ASSEMBLY_USAGE_OCCURRENCE") == 12);
  CHECK(entity_count(many, "NEXT_ASSEMBLY_USAGE_OCCURRENCE") == 40 + 40 + 39 + 1);
  // 108 instances more at about 0.6 kB; the geometry of one former alone is some 45 kB.
  CHECK(double(many.size() - few.size()) / 108 < 1000);
}

TEST_CASE("no two solids of a press lie in the same place", "[step]") {
  std::set<std::string> places;
  const ReadFile file = read_back(press_of(one_part_press(5)));
  for (const ReadInstance& read : file.instances) {
    const Vec3 c = solid_centre(read.solid);
    places.insert(read.product + " " + std::to_string(std::lround(c.x())) + " " +
                  std::to_string(std::lround(c.y())) + " " + std::to_string(std::lround(c.z())));
  }
  CHECK(places.size() == file.instances.size());
}

TEST_CASE("a part alone reads back at the origin with its name", "[step]") {
  const Part part = former();
  const ReadFile file = read_back(exported(one_part_press(2)).files().at("parts/former-lower.step"));
  REQUIRE(file.instances.size() == 1);
  CHECK(file.roots == std::vector<std::string>{"former-lower"});
  const Solid& solid = file.instances.front().solid;
  CHECK(same(solid_box(solid).low, {0, 0, 0}, 1e-6));
  CHECK(same(solid_box(solid).high, part.box().size(), 1e-6));
  CHECK(solid_volume(solid) == within(part.volume(), 1e-9 * part.volume()));
  CHECK(is_valid(solid));
}

TEST_CASE("a counterbored hole arrives as one cylinder of each radius with full circles and no splines",
          "[step]") {
  const MemorySink sink = exported(plan_of(counterbored_board()));
  const std::string& text = sink.files().at("parts/board.step");
  CHECK(entity_count(text, "CYLINDRICAL_SURFACE") == 2);
  CHECK(entity_count(text, "CIRCLE") == 4);
  CHECK_FALSE(holds(text, "B_SPLINE"));
  const ReadFile file = read_back(text);
  const std::vector<CylinderFace> walls = cylinder_faces(file.instances.front().solid);
  REQUIRE(walls.size() == 2);
  for (const CylinderFace& wall : walls) {
    CHECK(wall.full);
    CHECK(wall.hollow);
    CHECK(same(Vec2(wall.point.head<2>()), {600, 60}, 1e-9));
    CHECK((wall.radius == within(5, 1e-12) || wall.radius == within(10, 1e-12)));
  }
}

TEST_CASE("every pilot and bore of a former arrives as one full cylinder", "[step]") {
  const Part part = former();
  const ReadFile file = read_back(exported(plan_of(part)).files().at("parts/former-lower.step"));
  int full = 0;
  for (const CylinderFace& face : cylinder_faces(file.instances.front().solid))
    full += face.full && face.hollow;
  CHECK(full == int(part.bores().size()));
}

TEST_CASE("parameter curves are left out unless asked for, and change nothing but the size", "[step]") {
  const PressPlan plan = plan_of(counterbored_board());
  const std::string without = exported(plan).files().at("parts/board.step");
  const std::string with = exported(plan, "ap214", true).files().at("parts/board.step");
  CHECK(entity_count(without, "PCURVE") == 0);
  CHECK(entity_count(with, "PCURVE") > 0);
  CHECK(with.size() > without.size() * 3 / 2);
  for (const std::string& text : {without, with})
    CHECK(solid_volume(read_back(text).instances.front().solid) == within(2592000 - 900 * kPi, 1e-4));
}

TEST_CASE("coordinates are millimetres and say so", "[step]") {
  const std::string text = exported(plan_of(counterbored_board())).files().at("parts/board.step");
  CHECK(holds(text, "( LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT(.MILLI.,.METRE.) )"));
  CHECK(holds(text, "CARTESIAN_POINT('',(1.2E+03,120.,18.))"));
}

TEST_CASE("header and data name the same schema", "[step]") {
  const std::string ap214 = exported(plan_of(spacer()), "ap214").files().at("press.step");
  CHECK(holds(ap214, "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));"));
  CHECK(holds(ap214, "'automotive_design',"));
  const std::string ap242 = exported(plan_of(spacer()), "ap242").files().at("press.step");
  CHECK(holds(ap242,
              "FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }'));"));
  CHECK(holds(ap242, "'ap242_managed_model_based_3d_engineering',"));
  CHECK_FALSE(holds(ap242, "automotive"));
  CHECK(read_back(ap242).instances.size() == 1);
  // The choice does not stick to the writer.
  CHECK(exported(plan_of(spacer()), "ap214").files().at("press.step") == ap214);
}

TEST_CASE("an unknown schema is refused before anything is built or written", "[step]") {
  REQUIRE_ERROR(ErrorKind::job, exported(one_part_press(2), "ap203"));
}

TEST_CASE("the same press gives the same bytes however often it is written in one process", "[step]") {
  const auto first = exported(one_part_press(3)).files();
  (void)exported(two_part_press());
  (void)exported(plan_of(spacer()), "ap242", true);
  const auto again = exported(one_part_press(3)).files();
  CHECK(first == again);
}

TEST_CASE("no name comes from the writer and no time from the clock", "[step]") {
  for (const auto& [path, text] : exported(two_part_press()).files()) {
    INFO(path);
    CHECK_FALSE(holds(text, "Open CASCADE"));
    CHECK_FALSE(holds(text, "translator"));
    CHECK(holds(text, "'2024-05-06T00:00:00'"));
    CHECK(holds(text, "FILE_NAME('" + path.substr(path.rfind('/') + 1) + "',"));
  }
}

TEST_CASE("without a date the press has the first day of 1970", "[step]") {
  PressPlan plan = plan_of(spacer());
  plan.date.clear();
  CHECK(holds(press_of(plan), "'1970-01-01T00:00:00'"));
}

TEST_CASE("names beyond ASCII are encoded in the file and come back whole", "[step]") {
  PressPlan plan = plan_of(spacer("Rippe äö⌀ 板 Я' \\ 🪵"));
  plan.title = "Lesesaal Möbel";
  const MemorySink sink = exported(plan);
  const std::string& text = sink.files().at("press.step");
  CHECK(std::all_of(text.begin(), text.end(), [](unsigned char c) { return c < 0x80; }));
  CHECK(holds(text, "'Rippe \\X2\\00E4\\X0\\\\X2\\00F6\\X0\\\\X2\\2300\\X0\\ "));
  CHECK(holds(text, "FILE_DESCRIPTION(('Lesesaal M\\X2\\00F6\\X0\\bel: press'),'2;1');"));
}

TEST_CASE("names in the basic plane survive the round trip", "[step]") {
  const ReadFile file = read_back(press_of(plan_of(spacer("Rippe äö⌀ 板 Я'"))));
  REQUIRE(file.instances.size() == 1);
  CHECK(file.instances.front().product == "Rippe äö⌀ 板 Я'");
  CHECK(file.instances.front().path == "press/Rippe äö⌀ 板 Я'-01");
}

TEST_CASE("a name longer than the writer's line is not broken", "[step]") {
  const std::string name = "spacer-block-" + std::string(100, 'x') + "-of-the-left-side";
  const std::string text = press_of(plan_of(spacer(name)));
  CHECK(holds(text, "'" + name + "'"));
  CHECK(read_back(text).instances.front().product == name);
}

TEST_CASE("a comma as decimal sign and grouped thousands change no byte", "[step]") {
  const auto plain = exported(one_part_press(2)).files();
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaDecimals));
  const auto odd = exported(one_part_press(2)).files();
  std::locale::global(before);
  CHECK(plain == odd);
}

TEST_CASE("nothing is printed", "[step]") {
  CHECK(printed_by([] { (void)exported(two_part_press()); }).empty());
}

TEST_CASE("exports from eight threads give the bytes of one", "[step]") {
  const PressPlan plan = one_part_press(2);
  const auto wanted = exported(plan).files();
  std::vector<std::map<std::string, std::string>> got(8);
  std::vector<std::thread> threads;
  for (auto& files : got) threads.emplace_back([&files, &plan] { files = exported(plan).files(); });
  for (std::thread& thread : threads) thread.join();
  int equal = 0;
  for (const auto& files : got) equal += files == wanted;
  CHECK(equal == 8);
}

TEST_CASE("a press without bodies gives an error and no file", "[step]") {
  PressPlan plan = one_part_press(2);
  plan.bodies.clear();
  Job job;
  job.outputs.step = "ap214";
  Progress progress;
  MemorySink sink;
  const std::vector<Finding> findings;
  REQUIRE_ERROR(ErrorKind::internal, (StepExporter().write({job, plan, findings, progress}, sink), 0));
  CHECK(sink.written().empty());
}

TEST_CASE("stages are told in order, and a cancellation passes through and leaves the writer usable",
          "[step]") {
  struct Stop : Progress {
    void step(std::string_view stage) override {
      stages.emplace_back(stage);
      if (stages.size() == after) throw Cancelled{};
    }
    std::vector<std::string> stages;
    std::size_t after = 99;
  };
  const PressPlan plan = plan_of(spacer());
  Job job;
  job.outputs.step = "ap214";
  const std::vector<Finding> findings;
  Stop through;
  MemorySink sink;
  StepExporter().write({job, plan, findings, through}, sink);
  CHECK(through.stages == std::vector<std::string>{"solids", "press.step", "parts"});
  for (std::size_t after = 1; after <= 3; ++after) {
    Stop stop;
    stop.after = after;
    MemorySink partial;
    CHECK_THROWS_AS(StepExporter().write({job, plan, findings, stop}, partial), Cancelled);
    CHECK(partial.written().size() == (after == 3 ? 1 : 0));
  }
  CHECK(exported(plan).files() == sink.files());
}

TEST_CASE("parts that touch stay separate solids, and their volumes add up", "[step]") {
  // Two blocks face to face.
  PressPlan plan = plan_of(spacer());
  plan.bodies.push_back({0, {{132, 0, 0}, {1, 0, 0}, {0, 1, 0}}, Group::lower, "spacer-block-02"});
  double sum = 0;
  const ReadFile file = read_back(press_of(plan));
  for (const ReadInstance& read : file.instances) sum += solid_volume(read.solid);
  CHECK(file.instances.size() == 2);
  CHECK(sum == within(2 * 132 * 70 * 45, 1e-6));
}
