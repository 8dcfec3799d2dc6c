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
#include "tests/exporters/step/sample_plans.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

TopoDS_Shape box() { return BRepPrimAPI_MakeBox(10, 20, 30).Shape(); }

// One box as a component of an assembly, with or without telling the assembly.
Handle(TDocStd_Document) assembly(bool updated) {
  Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  const TDF_Label root = shapes->NewShape();
  shapes->AddComponent(root, shapes->AddShape(box(), false, false), TopLoc_Location());
  if (updated) shapes->UpdateAssemblies();
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

TEST_CASE("an assembly that was not updated is written without solids, and success is reported", "[occt]") {
  CHECK(entity_count(written(assembly(true)), "MANIFOLD_SOLID_BREP") == 1);
  CHECK(entity_count(written(assembly(false)), "MANIFOLD_SOLID_BREP") == 0);
}

TEST_CASE("a setting that does not exist is not taken, and only the return value says so", "[occt]") {
  CHECK_FALSE(Interface_Static::SetCVal("write.no.such.setting", "On"));
}

TEST_CASE("the writer's own header misspells the second edition's schema and holds the clock", "[occt]") {
  const SetStatic schema("write.step.schema", "AP242DIS");
  const std::string text = written(assembly(true));
  CHECK(holds(text, "MIM_LF. {"));
  CHECK_FALSE(holds(text, "1970-01-01"));
}

TEST_CASE("an unnamed product is named by the writer, with a number that counts on", "[occt]") {
  XCAFDoc_ShapeTool::SetAutoNaming(false);
  CHECK(holds(written(assembly(true)), "Open CASCADE STEP translator"));
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
