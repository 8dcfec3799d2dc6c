// Placements as text. Rules: ISO 10303-21 for the text, -41, -43 and -44 for what it says.
#include "exporters/step/assembly.hpp"

#include "exporters/step/written.hpp"
#include "tests/exporters/step/sample_plans.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// One product as the writer leaves it after tidying.
std::string product(int first, const std::string& name) {
  const auto ref = [&](int i) { return "#" + std::to_string(first + i); };
  return ref(0) + " = SHAPE_DEFINITION_REPRESENTATION(" + ref(1) + "," + ref(7) + ");\n" +  //
         ref(1) + " = PRODUCT_DEFINITION_SHAPE('',''," + ref(2) + ");\n" +                  //
         ref(2) + " = PRODUCT_DEFINITION('design',''," + ref(3) + "," + ref(6) + ");\n" +   //
         ref(3) + " = PRODUCT_DEFINITION_FORMATION('',''," + ref(4) + ");\n" +              //
         ref(4) + " = PRODUCT('" + name + "','" + name + "','',(" + ref(5) + "));\n" +      //
         ref(5) + " = PRODUCT_CONTEXT('',#99,'mechanical');\n" +                            //
         ref(6) + " = PRODUCT_DEFINITION_CONTEXT('part definition',#99,'design');\n" +      //
         ref(7) + " = ADVANCED_BREP_SHAPE_REPRESENTATION('',(" + ref(9) + ",#98),\n" + ref(8) + ");\n" +
         ref(8) + " = ( CONTEXT('of # ; = " + name + "') );\n" +  //
         ref(9) + " = AXIS2_PLACEMENT_3D('',#95,#96,#97);\n";
}

ProductModel model_of(const std::vector<std::string>& names, std::vector<Instance> instances) {
  ProductModel model{"press", {}, std::move(instances), {}};
  const Solid solid = build_solid(spacer());
  for (const std::string& name : names) model.products.push_back({name, solid, {}});
  return model;
}

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("products are found under names with apostrophes, signs and letters beyond ASCII", "[step]") {
  const std::string data = product(10, "a'',''b") + product(20, "#3 = x") + product(30, "\\X2\\00E4\\X0\\");
  const Written written = written_products(data, {"ä", "a','b", "#3 = x"});
  REQUIRE(written.products.size() == 3);
  CHECK(written.products[0] == WrittenProduct{32, 37, 39});
  CHECK(written.products[1] == WrittenProduct{12, 17, 19});
  CHECK(written.products[2] == WrittenProduct{22, 27, 29});
  CHECK(written.product_context == 35);
  CHECK(written.definition_context == 36);
  CHECK(written.shape_context == "( CONTEXT('of # ; = \\X2\\00E4\\X0\\') )");
  CHECK(written.last == 39);
}

TEST_CASE("a product that is missing or written otherwise is a fault of ours", "[step]") {
  const std::string data = product(10, "block");
  REQUIRE_ERROR(ErrorKind::internal, written_products(data, {"bloc"}));
  REQUIRE_ERROR(ErrorKind::internal, written_products(data, {}));
  REQUIRE_ERROR(ErrorKind::internal, written_products("no statement", {"block"}));
  REQUIRE_ERROR(ErrorKind::internal,
                written_products("#1 = SHAPE_DEFINITION_REPRESENTATION(#2,#3);\n", {"block"}));
  std::string other = data;
  other.replace(other.find("PRODUCT_DEFINITION_FORMATION"), 7, "PRODUCE");
  REQUIRE_ERROR(ErrorKind::internal, written_products(other, {"block"}));
  for (const std::string bad :
       {"PRODUCT(block,block,'',(#15))", "PRODUCT(#15,block)", "PRODUCT('block,(#15))"}) {
    INFO(bad);
    other = data;
    const std::size_t at = other.find("PRODUCT('");
    other.replace(at, other.find(";\n", at) - at, bad);
    REQUIRE_ERROR(ErrorKind::internal, written_products(other, {"block"}));
  }
  other = data;
  other.replace(other.find("#18);"), 5, "#11);");  // a representation in what is no context
  CHECK(written_products(other, {"block"}).shape_context.substr(0, 7) == "PRODUCT");
  other.replace(other.find("#11);\n#18"), 5, "#97);");
  REQUIRE_ERROR(ErrorKind::internal, written_products(other, {"block"}));
}

TEST_CASE("a place that is no place is not written", "[step]") {
  const auto placed = [](const Frame& frame) {
    return assembly_data(model_of({"block"}, {{0, "block-01", frame}}), product(10, "block"));
  };
  CHECK_FALSE(placed({}).empty());
  REQUIRE_ERROR(ErrorKind::internal, placed({{std::nan(""), 0, 0}, {1, 0, 0}, {0, 1, 0}}));
  REQUIRE_ERROR(ErrorKind::internal, placed({{0, 0, 0}, {0, 0, 0}, {0, 1, 0}}));
}

TEST_CASE("each placement takes seven statements, and directions are written once", "[step]") {
  const Frame turned{{1, -2.5, 1e-12}, {0, 0, 1}, {0, 1, 0}};
  const std::string text = assembly_data(model_of({"block"}, {{0, "it's", turned}, {0, "block-02", turned}}),
                                         product(10, "block"));
  CHECK(text.substr(0, 32) == "#20 = PRODUCT('press','press',''");
  CHECK(times(text, "CARTESIAN_POINT('',(1.,-2.5,0.))") == 2);
  CHECK(times(text, "= DIRECTION(") == 3);  // of the root's own origin z and x; turned: -x, and z again
  CHECK(times(text, "DIRECTION('',(-1.,0.,0.))") == 1);
  CHECK(times(text, "NEXT_ASSEMBLY_USAGE_OCCURRENCE('1','it''s','',#23,#12,$)") == 1);
  CHECK(times(text, "NEXT_ASSEMBLY_USAGE_OCCURRENCE('2','block-02','',#23,#12,$)") == 1);
  CHECK(times(text, "REPRESENTATION_RELATIONSHIP('','',#17,") == 2);
  CHECK(times(text, "ITEM_DEFINED_TRANSFORMATION('','',#19,") == 2);
  CHECK(times(text, ";\n") == 11 + 1 + 2 * 7 + 1);  // the root and its shape, the placements, their direction
}

TEST_CASE("a part alone needs no assembly", "[step]") {
  CHECK(assembly_data(model_of({"block"}, {}), product(10, "block")).empty());
}
