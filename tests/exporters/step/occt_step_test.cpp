// What the STEP writer of the modelling kernel does where the exporter relies on it or guards against it. A
// new release that changes one of these shows here first.
#include <BRepPrimAPI_MakeBox.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <STEPCAFControl_Controller.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopLoc_Location.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <sstream>

#include "exporters/step/part21.hpp"
#include "exporters/step/written.hpp"
#include "tests/exporters/step/sample_plans.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

TopoDS_Shape box() { return BRepPrimAPI_MakeBox(10, 20, 30).Shape(); }

// One box as a component of an assembly.
Handle(TDocStd_Document) assembly() {
  Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  const TDF_Label root = shapes->NewShape();
  shapes->AddComponent(root, shapes->AddShape(box(), false, false), TopLoc_Location());
  shapes->UpdateAssemblies();  // without it there are no solids in the file
  return document;
}

// The writer's whole text, header included.
std::string written(const Handle(TDocStd_Document) & document) {
  Message::DefaultMessenger()->ChangePrinters().Clear();
  STEPCAFControl_Writer writer;
  REQUIRE(writer.Transfer(document, STEPControl_AsIs));
  const Handle(StepData_StepModel) model = writer.ChangeWriter().Model();
  StepData_StepWriter printer(model);
  printer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream text;
  REQUIRE(printer.Print(text));
  return text.str();
}

class SetStatic {
 public:
  SetStatic(const char* name, const char* value) : name_(name) {
    STEPCAFControl_Controller::Init();
    before_ = Interface_Static::CVal(name);
    REQUIRE(Interface_Static::SetCVal(name, value));
  }
  ~SetStatic() { Interface_Static::SetCVal(name_, before_.c_str()); }

 private:
  const char* name_;
  std::string before_;
};

}  // namespace

TEST_CASE("free shapes of one document are products of their own, in order, each in its own context",
          "[occt]") {
  const Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  for (const char* name : {"one", "two"}) TDataStd_Name::Set(shapes->AddShape(box(), false, false), name);
  const std::string text = written(document);
  CHECK(entity_count(text, "MANIFOLD_SOLID_BREP") == 2);
  CHECK(entity_count(text, "NEXT_ASSEMBLY_USAGE_OCCURRENCE") == 0);
  const std::string data =
      text.substr(text.find("DATA;\n") + 6, text.rfind("ENDSEC;") - text.find("DATA;\n") - 6);
  const Written both = written_products(tidied_data(data), {"one", "two"});
  CHECK(both.products[0].definition < both.products[1].definition);
  CHECK(both.products[0].representation != both.products[1].representation);
}

TEST_CASE("a setting that does not exist is not taken, and only the return value says so", "[occt]") {
  CHECK_FALSE(Interface_Static::SetCVal("write.no.such.setting", "On"));
}

TEST_CASE("the writer's own header misspells the second edition's schema and holds the clock", "[occt]") {
  const SetStatic schema("write.step.schema", "AP242DIS");
  const std::string text = written(assembly());
  CHECK(holds(text, "MIM_LF. {"));
  CHECK_FALSE(holds(text, "1970-01-01"));
}

TEST_CASE("an unnamed product is named by the writer, with a number that counts on", "[occt]") {
  XCAFDoc_ShapeTool::SetAutoNaming(false);
  CHECK(holds(written(assembly()), "Open CASCADE STEP translator"));
}

TEST_CASE("an export leaves the writer's settings as they were", "[step]") {
  const SetStatic curves("write.surfacecurve.mode", "On");
  const SetStatic unit("write.step.unit", "INCH");
  const SetStatic schema("write.step.schema", "AP203");
  const std::string text = exported(one_part_press(2), "ap242").files().at("parts/beam.step");
  CHECK(holds(text, "SI_UNIT(.MILLI.,.METRE.)"));
  CHECK(entity_count(text, "PCURVE") == 0);
  CHECK(std::string(Interface_Static::CVal("write.surfacecurve.mode")) == "On");
  CHECK(std::string(Interface_Static::CVal("write.step.unit")) == "INCH");
  CHECK(std::string(Interface_Static::CVal("write.step.schema")) == "AP203");
}
