#include "tests/exporters/step/read_back.hpp"

#include <unistd.h>

#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS_Shape.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

namespace lamwright::test {
namespace {

class TemporaryFile {
 public:
  explicit TemporaryFile(const std::string& text)
      : path_(std::filesystem::temp_directory_path() /
              ("lamwright-read-back-" + std::to_string(::getpid()) + ".step")) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~TemporaryFile() { std::filesystem::remove(path_); }
  std::string path() const { return path_.string(); }

 private:
  std::filesystem::path path_;
};

std::string name_of(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return {};
  std::string text(std::size_t(name->Get().LengthOfCString()), '\0');
  Standard_PCharacter to = text.data();
  name->Get().ToUTF8CString(to);
  return text;
}

class Walk {
 public:
  explicit Walk(const Handle(TDocStd_Document) & document)
      : shapes_(XCAFDoc_DocumentTool::ShapeTool(document->Main())),
        colours_(XCAFDoc_DocumentTool::ColorTool(document->Main())) {
    TDF_LabelSequence roots;
    shapes_->GetFreeShapes(roots);
    for (const TDF_Label& root : roots) {
      file_.roots.push_back(name_of(root));
      visit(root, name_of(root), TopLoc_Location());
    }
  }
  ReadFile file() const { return file_; }

 private:
  void visit(const TDF_Label& product, const std::string& path, const TopLoc_Location& placed) {
    if (!XCAFDoc_ShapeTool::IsAssembly(product)) {
      file_.instances.push_back({path, name_of(product), colour_of(product), in_place(product, placed)});
      return;
    }
    TDF_LabelSequence components;
    XCAFDoc_ShapeTool::GetComponents(product, components);
    for (const TDF_Label& component : components) {
      TDF_Label referred;
      XCAFDoc_ShapeTool::GetReferredShape(component, referred);
      visit(referred, path + "/" + name_of(component), placed * XCAFDoc_ShapeTool::GetLocation(component));
    }
  }

  Colour colour_of(const TDF_Label& product) const {
    Quantity_Color colour;
    REQUIRE(colours_->GetColor(product, XCAFDoc_ColorSurf, colour));
    Colour out;
    colour.Values(out.red, out.green, out.blue, Quantity_TOC_sRGB);
    return out;
  }

  static Solid in_place(const TDF_Label& product, const TopLoc_Location& placed) {
    return Solid(BRepBuilderAPI_Transform(XCAFDoc_ShapeTool::GetShape(product), placed.Transformation(), true)
                     .Shape());
  }

  Handle(XCAFDoc_ShapeTool) shapes_;
  Handle(XCAFDoc_ColorTool) colours_;
  ReadFile file_;
};

}  // namespace

ReadFile read_back(const std::string& text) {
  Message::DefaultMessenger()->ChangePrinters().Clear();
  const TemporaryFile file(text);
  STEPCAFControl_Reader reader;
  reader.SetColorMode(true);
  reader.SetNameMode(true);
  REQUIRE(reader.ReadFile(file.path().c_str()) == IFSelect_RetDone);
  Handle(TDocStd_Document) document = new TDocStd_Document("BinXCAF");
  REQUIRE(reader.Transfer(document));
  return Walk(document).file();
}

double face_distance(const Solid& from, const Vec3& on, const Solid& to) {
  const auto vertex = BRepBuilderAPI_MakeVertex(gp_Pnt(on.x(), on.y(), on.z())).Vertex();
  for (TopExp_Explorer faces(from.shape(), TopAbs_FACE); faces.More(); faces.Next()) {
    const BRepExtrema_DistShapeShape held(faces.Current(), vertex);
    if (!held.IsDone() || held.Value() > 1e-5) continue;
    const BRepExtrema_DistShapeShape apart(faces.Current(), to.shape());
    REQUIRE(apart.IsDone());
    return apart.Value();
  }
  FAIL("no face holds the point");
  return 0;
}

}  // namespace lamwright::test
