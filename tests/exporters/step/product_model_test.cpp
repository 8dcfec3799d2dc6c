#include "exporters/step/product_model.hpp"

#include <set>

#include "kernel/solid/measure.hpp"
#include "tests/exporters/step/sample_plans.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::vector<Solid> solids_of(const PressPlan& plan) {
  std::vector<Solid> solids;
  for (const Part& part : plan.parts) solids.push_back(build_solid(part));
  return solids;
}

ProductModel model_of(const PressPlan& plan) { return press_model(plan, solids_of(plan)); }

}  // namespace

TEST_CASE("a one-part press lies on one level below its root", "[step]") {
  const ProductModel model = model_of(one_part_press(4));
  CHECK(model.name == "press");
  CHECK(model.products.size() == 4);
  CHECK(model.groups.empty());
  CHECK(model.instances.size() == 4 + 4 + 3 + 1);
  CHECK(model.instances.front().name == "former-lower-01");
  CHECK(model.instances.back().name == "panel-01");
}

TEST_CASE("a two-part press has the sub-assemblies lower, upper and panel, each once", "[step]") {
  const ProductModel model = model_of(two_part_press());
  REQUIRE(model.groups.size() == 3);
  CHECK(model.groups[0].name == "lower");
  CHECK(model.groups[0].instances.size() == 6);
  CHECK(model.groups[1].name == "upper");
  CHECK(model.groups[1].instances.size() == 6);
  CHECK(model.groups[2].name == "panel");
  CHECK(model.groups[2].instances.size() == 1);
  CHECK(model.instances.empty());
}

TEST_CASE("reference bodies of a two-part press stay at the root, and a group without bodies is left out",
          "[step]") {
  PressPlan plan = two_part_press();
  plan.bodies.back().group = Group::reference;
  const ProductModel model = model_of(plan);
  REQUIRE(model.instances.size() == 1);
  CHECK(model.instances.front().name == "panel-01");
  CHECK(model.groups.size() == 2);
}

TEST_CASE("a part without a body is no product of the press", "[step]") {
  PressPlan plan = one_part_press(2);
  std::erase_if(plan.bodies, [](const Body& body) { return body.part == 1; });
  const ProductModel model = model_of(plan);
  REQUIRE(model.products.size() == 3);
  CHECK(model.products[1].name == "spacer-block");
  CHECK(model.instances.back().product == 2);
}

TEST_CASE("a press without bodies is refused instead of written empty", "[step]") {
  PressPlan plan = one_part_press(2);
  plan.bodies.clear();
  CHECK(
      message_of([&] { (void)model_of(plan); }) ==
      "a rule of the program does not hold: a press has bodies to write; please report it with the job file");
}

TEST_CASE("two parts of one name, which would overwrite each other's file, are refused", "[step]") {
  PressPlan plan = one_part_press(2);
  plan.parts[2] = spacer("beam");
  REQUIRE_ERROR(ErrorKind::internal, model_of(plan));
}

TEST_CASE("a part alone lies with the lowest corner of its box at the origin", "[step]") {
  const Part part = former();
  const ProductModel model = part_model(part, build_solid(part));
  REQUIRE(model.single());
  const Part::Box box = solid_box(model.products.front().solid);
  CHECK(same(box.low, {0, 0, 0}, 2e-7));
  CHECK(same(box.high, part.box().size(), 2e-7));
}

TEST_CASE("every kind of part has a colour of its own", "[step]") {
  std::set<std::tuple<double, double, double>> seen;
  for (int kind = 0; kind <= int(PartKind::panel); ++kind) {
    const Colour c = colour_of(PartKind(kind));
    seen.insert({c.red, c.green, c.blue});
  }
  CHECK(seen.size() == 11);  // template and cradle share one
}
