#include "exporters/step/step_data.hpp"

#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <STEPCAFControl_Controller.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPConstruct.hxx>
#include <STEPConstruct_Styles.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepVisual_Colour.hxx>
#include <StepVisual_ColourRgb.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <StepVisual_StyledItem.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopoDS_Shape.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XSControl_TransferWriter.hxx>
#include <XSControl_WorkSession.hxx>
#include <mutex>
#include <sstream>

#include "kernel/solid/guarded.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

// One lock for the writer, whose protocol, settings and counters are static; 8 threads with a writer each
// crash.
std::mutex& writer_lock() {
  static std::mutex lock;
  return lock;
}

// Every transfer prints to the standard output through these.
void silence_printers() {
  static std::once_flag once;
  std::call_once(once, [] { Message::DefaultMessenger()->ChangePrinters().Clear(); });
}

// Sets the writer's static settings and puts them back. Settings exist only once a controller was made, and
// setting one that does not exist does nothing but return false.
class Settings {
 public:
  explicit Settings(const StepOptions& options) {
    STEPCAFControl_Controller::Init();
    set("write.step.schema", options.schema == StepSchema::ap242 ? "AP242DIS" : "AP214IS");
    set("write.surfacecurve.mode", options.pcurves ? "On" : "Off");
    set("write.step.unit", "MM");
    set("write.step.assembly", "On");
    set("write.step.nonmanifold", "Off");
    set("write.stepcaf.subshapes.name", "Off");
    set("write.precision.mode", "Average");
  }
  ~Settings() {
    for (const auto& [name, value] : before_) Interface_Static::SetCVal(name, value.c_str());
  }
  Settings(const Settings&) = delete;
  Settings& operator=(const Settings&) = delete;

 private:
  void set(const char* name, const char* value) {
    const std::string before = Interface_Static::CVal(name);
    if (!Interface_Static::SetCVal(name, value))
      throw Error(ErrorKind::internal, Place{{}, 0, 0, "STEP writer"},
                  std::string("the setting ") + name + " = " + value + " is not taken", "please report it");
    before_.emplace_back(name, before);
  }
  std::vector<std::pair<const char*, std::string>> before_;
};

void name(const TDF_Label& label, const std::string& text) {
  TDataStd_Name::Set(label, TCollection_ExtendedString(text.c_str(), true));
}

// The document that the writer reads: each product on its own, without location.
Handle(TDocStd_Document) document_of(const std::vector<Product>& products) {
  const Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  XCAFDoc_ShapeTool::SetAutoNaming(false);
  for (const Product& product : products)
    name(shapes->AddShape(product.solid.shape(), false, false), product.name);
  return document;
}

// Styles each solid, in the order of the products. The writer's own way of writing colours walks a map whose
// order differs from run to run, and passes them through linear single precision.
void add_colours(const Handle(XSControl_WorkSession) & session, const std::vector<Product>& products) {
  STEPConstruct_Styles styles(session);
  for (const Product& product : products) {
    const TopoDS_Shape& shape = product.solid.shape();
    const Handle(StepRepr_RepresentationItem) item =
        STEPConstruct::FindEntity(session->TransferWriter()->FinderProcess(), shape);
    ensure(!item.IsNull(), "each product's solid is in the STEP model");
    const Handle(StepVisual_ColourRgb) colour = new StepVisual_ColourRgb;
    colour->Init(new TCollection_HAsciiString, product.colour.red, product.colour.green, product.colour.blue);
    styles.ClearStyles();
    styles.AddStyle(item, styles.MakeColorPSA(item, colour, nullptr, nullptr, 0), nullptr);
    Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) presentation;
    ensure(styles.CreateMDGPR(styles.FindContext(shape), presentation), "a style has its context");
    session->Model()->AddWithRefs(presentation);
  }
}

std::string text_of(const Handle(StepData_StepModel) & model) {
  StepData_StepWriter writer(model);
  writer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream text;
  text.imbue(std::locale::classic());
  ensure(writer.Print(text) && text.good(), "the STEP writer prints its model");
  return text.str();
}

std::string data_of(const std::string& file) {
  const std::string opening = "DATA;\n", closing = "ENDSEC;";
  const std::size_t from = file.find(opening), to = file.rfind(closing);
  ensure(from != std::string::npos && to != std::string::npos && from < to, "a STEP file has a DATA section");
  return file.substr(from + opening.size(), to - from - opening.size());
}

}  // namespace

std::string raw_step_data(const std::string& file, const std::vector<Product>& products,
                          const StepOptions& options) {
  const std::lock_guard<std::mutex> turn(writer_lock());
  return guarded("STEP file of " + file + " (" + counted(long(products.size()), "product") + ")", [&] {
    silence_printers();
    const Settings settings(options);
    STEPCAFControl_Writer writer;
    writer.SetColorMode(false);  // see add_colours
    writer.SetNameMode(true);
    writer.SetLayerMode(false);
    writer.SetPropsMode(false);
    ensure(writer.Transfer(document_of(products), STEPControl_AsIs), "the STEP writer takes the document");
    add_colours(writer.ChangeWriter().WS(), products);
    return data_of(text_of(writer.ChangeWriter().Model()));
  });
}

}  // namespace lamwright
