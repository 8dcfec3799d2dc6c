#include "exporters/step/part21.hpp"

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("a STEP header names the schema exactly as the standards register it", "[step]") {
  CHECK(schema_name(StepSchema::ap214) == "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }");
  CHECK(schema_name(StepSchema::ap242) ==
        "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }");
}

TEST_CASE("a schema that is not known is an error of the job", "[step]") {
  const auto error = error_of([] { (void)step_schema("ap203"); });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::job);
  CHECK(std::string(error->what()) ==
        "outputs.step: \"ap203\" is not a known schema; allowed are ap214 and ap242; write ap214 when in "
        "doubt: more programs read it");
}

TEST_CASE("the header holds file name, description and day, and no clock", "[step]") {
  CHECK(step_file({"press.step", "Desk front", "2024-05-06", StepSchema::ap214}, "#1 = X();\n") ==
        "ISO-10303-21;\nHEADER;\n"
        "FILE_DESCRIPTION(('Desk front'),'2;1');\n"
        "FILE_NAME('press.step','2024-05-06T00:00:00',(''),(''),'lamwright','lamwright','');\n"
        "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\n"
        "ENDSEC;\nDATA;\n#1 = X();\nENDSEC;\nEND-ISO-10303-21;\n");
}

TEST_CASE("without a date the header has the first day of 1970", "[step]") {
  CHECK(holds(step_file({"a.step", "", "", StepSchema::ap242}, ""),
              "FILE_NAME('a.step','1970-01-01T00:00:00',"));
}

TEST_CASE("a title with letters beyond ASCII, apostrophes and backslashes is encoded in the header",
          "[step]") {
  CHECK(holds(step_file({"a.step", "O'Neill ä\\板", "", StepSchema::ap214}, ""),
              "FILE_DESCRIPTION(('O''Neill \\X2\\00E4\\X0\\\\\\\\X2\\677F\\X0\\'),'2;1');"));
}

TEST_CASE("lines break where the text itself is long, not where the writer broke them", "[step]") {
  const std::string wanted = "#10 = NEXT_ASSEMBLY_USAGE_OCCURRENCE('1','spacer-block-01','',#5,#302,$);\n";
  CHECK(tidied_data("#10 = NEXT_ASSEMBLY_USAGE_OCCURRENCE('1','spacer-block-01','',#5,#302,$\n  );\n") ==
        wanted);
  CHECK(tidied_data("#10 = NEXT_ASSEMBLY_USAGE_OCCURRENCE(\n'1','spacer-block-01','',#5,#302,\n  $);\n") ==
        wanted);
  CHECK(tidied_data("#31 = ( GEOMETRIC_REPRESENTATION_CONTEXT(3) \nGLOBAL_UNIT_ASSIGNED_CONTEXT(\n(#32,#33)) "
                    "A\nB() );\n") ==
        "#31 = ( GEOMETRIC_REPRESENTATION_CONTEXT(3) GLOBAL_UNIT_ASSIGNED_CONTEXT((#32,\n#33)) A B() );\n");
}

TEST_CASE("strings are joined to one line, encoded, and keep their doubled apostrophes", "[step]") {
  CHECK(tidied_data("#7 = PRODUCT('Rippe \nä','it''s \\\\ it',(#8));\n") ==
        "#7 = PRODUCT('Rippe \\X2\\00E4\\X0\\','it''s \\\\ it',(#8));\n");
}

TEST_CASE("numbers lose a negative zero and strings keep it", "[step]") {
  CHECK(tidied_data("#1 = DIRECTION('-0.,',(1.,-0.,-0.));\n#2 = DIRECTION('',(-0.5,-0.E-3,0.));\n") ==
        "#1 = DIRECTION('-0.,',(1.,0.,0.));\n#2 = DIRECTION('',(-0.5,-0.E-3,0.));\n");
}

TEST_CASE("entities are counted where they begin a line, not inside names", "[step]") {
  CHECK(entity_count("#1 = MANIFOLD_SOLID_BREP('',#2);\n#3 = PRODUCT('= MANIFOLD_SOLID_BREP(');\n#12 = "
                     "MANIFOLD_SOLID_BREP('',#2);\n",
                     "MANIFOLD_SOLID_BREP") == 2);
  CHECK(entity_count("", "MANIFOLD_SOLID_BREP") == 0);
}
