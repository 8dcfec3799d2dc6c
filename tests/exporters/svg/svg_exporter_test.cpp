#include "exporters/svg/svg_exporter.hpp"

#include <tinyxml2.h>

#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;

namespace {

MemorySink exported(const PressPlan& plan) {
  MemorySink sink;
  const Job job = sample::job();
  Progress quiet;
  const std::vector<Finding> none;
  SvgExporter().write({job, plan, none, quiet}, sink);
  return sink;
}

using Document = tinyxml2::XMLDocument;

void parse(Document& document, const std::string& text) {
  REQUIRE(document.Parse(text.c_str()) == tinyxml2::XML_SUCCESS);
}

const tinyxml2::XMLElement* group(const Document& document, const std::string& id) {
  for (auto* g = document.RootElement()->FirstChildElement("g"); g; g = g->NextSiblingElement("g"))
    if (g->Attribute("id") == id) return g;
  return nullptr;
}

// Each drawn element as text: name and all attributes.
std::vector<std::string> elements(const Document& document) {
  std::vector<std::string> out;
  for (auto* g = document.RootElement()->FirstChildElement("g"); g; g = g->NextSiblingElement("g"))
    for (auto* e = g->FirstChildElement(); e; e = e->NextSiblingElement()) {
      std::string text = e->Name();
      for (auto* a = e->FirstAttribute(); a; a = a->Next())
        text += std::string(" ") + a->Name() + "=" + a->Value();
      out.push_back(text);
    }
  return out;
}

}  // namespace

TEST_CASE("boards get cutting files, beams and formers sheets, blocks of timber no cutting file") {
  const MemorySink sink = exported(sample::plan());
  std::set<std::string> cutting, sheets;
  for (const std::string& path : sink.written()) (path.starts_with("parts/") ? cutting : sheets).insert(path);
  CHECK(cutting == std::set<std::string>{"parts/former-lower.svg"});
  for (const char* sheet : {"drawings/press.svg", "drawings/former-lower.svg", "drawings/beam.svg"})
    CHECK(sheets.count(sheet) == 1);
}

TEST_CASE("shop aids get cutting files as parts do, and nested sheets are numbered from one") {
  PressPlan plan = sample::plan();
  plan.aids.push_back({ShopAid::Use::check_inner, sample::former().renamed("template-inner")});
  Supply supply;
  supply.sheets = {
      {"plywood-18", 18, {1250, 800}, 15, {{sample::former(), "former-lower-01", {0, {400, 100}}}}}};
  MemorySink sink;
  Progress quiet;
  const Job job = sample::job();
  const std::vector<Finding> none;
  SvgExporter().write({job, plan, none, quiet, kNoFigures, supply}, sink);
  CHECK(sink.files().count("parts/template-inner.svg") == 1);
  REQUIRE(sink.files().count("sheets/1.svg") == 1);
  Document document;
  parse(document, sink.files().at("sheets/1.svg"));
  CHECK(std::string(document.RootElement()->Attribute("width")) == "1250mm");
}

TEST_CASE("a cutting file has its true size and its lower left at the origin") {
  Document document;
  parse(document, exported(sample::plan()).files().at("parts/former-lower.svg"));
  const auto* root = document.RootElement();
  // Wide: 2 (362 sin 60 + 25 cos 60). High: the contact edge's left end 123.3980142 + 25 sin 60 + 362 (1 -
  // cos 60).
  CHECK(std::string(root->Attribute("width")) == "652.002392mm");
  CHECK(std::string(root->Attribute("height")) == "326.048649mm");
  CHECK(std::string(root->Attribute("viewBox")) == "0 0 652.002392 326.048649");
  const std::string path = group(document, "OUTLINE")->FirstChildElement("path")->Attribute("d");
  CHECK(path.find("L0 326.048649") != std::string::npos);
}

TEST_CASE("the outline is one closed path with its arc as an arc") {
  Document document;
  parse(document, exported(sample::plan()).files().at("parts/former-lower.svg"));
  const auto* outline = group(document, "OUTLINE");
  REQUIRE(outline);
  const auto* path = outline->FirstChildElement();
  CHECK(std::string(path->Name()) == "path");
  CHECK(path->NextSiblingElement() == nullptr);
  const std::string data = path->Attribute("d");
  CHECK(std::count(data.begin(), data.end(), 'A') == 1);
  CHECK(std::count(data.begin(), data.end(), 'M') == 1);
  CHECK(data.find(" A362 362 0 0 ") != std::string::npos);
  CHECK(data.back() == 'Z');
}

TEST_CASE("bores across the board are circles on the layer of their drill; bores into edges are absent") {
  Document document;
  parse(document, exported(sample::plan()).files().at("parts/former-lower.svg"));
  std::map<std::string, int> circles;
  for (auto* g = document.RootElement()->FirstChildElement("g"); g; g = g->NextSiblingElement("g"))
    for (auto* c = g->FirstChildElement("circle"); c; c = c->NextSiblingElement("circle"))
      ++circles[g->Attribute("id")];
  CHECK(circles ==
        std::map<std::string, int>{{"CBORE_16_DEEP_4", 1}, {"DRILL_35", 2}, {"DRILL_8_DEEP_12", 1}});
  CHECK(std::string(group(document, "DRILL_35")->FirstChildElement("circle")->Attribute("r")) == "17.5");
}

TEST_CASE("marks are on a layer of their own and their texts single strokes on that of labels") {
  Document document;
  parse(document, exported(sample::plan()).files().at("parts/former-lower.svg"));
  const auto* marks = group(document, "MARK");
  REQUIRE(marks);
  CHECK(marks->FirstChildElement("line"));
  const auto* labels = group(document, "LABEL");
  REQUIRE(labels);
  std::size_t strokes = 0;
  for (auto* e = labels->FirstChildElement(); e; e = e->NextSiblingElement(), ++strokes) {
    CHECK(std::string(e->Name()) == "path");
    CHECK(std::string(e->Attribute("d")).back() != 'Z');
  }
  CHECK(strokes >= std::string("station__of4").size());
  CHECK(document.RootElement()->FirstChildElement("text") == nullptr);
}

TEST_CASE("a cutting file draws nothing twice") {
  Document document;
  parse(document, exported(sample::plan()).files().at("parts/former-lower.svg"));
  const auto all = elements(document);
  // outline, 2 clamps, bore and counterbore, mark, 2 bars; letters and figures besides
  CHECK(all.size() > 8 + std::string("station__of4100").size());
  CHECK(std::set<std::string>(all.begin(), all.end()).size() == all.size());
}

TEST_CASE("a hostile title stays text on every sheet and every file parses") {
  const std::string hostile = "</svg>\"'../ä板";
  const auto sink = exported(sample::plan(hostile));
  int sheets = 0;
  for (const std::string& path : sink.written()) {
    Document document;
    parse(document, sink.files().at(path));
    CHECK(std::string(document.RootElement()->Name()) == "svg");
    CHECK(document.RootElement()->NextSibling() == nullptr);
    if (!path.starts_with("drawings/")) continue;
    bool found = false;
    for (auto* t = group(document, "TEXT")->FirstChildElement("text"); t; t = t->NextSiblingElement("text"))
      found = found || std::string(t->GetText()) == hostile;
    CHECK(found);
    ++sheets;
  }
  CHECK(sheets >= 3);
}

TEST_CASE("the same plan gives the same bytes") {
  const auto first = exported(sample::plan()), second = exported(sample::plan());
  for (const std::string& path : first.written()) CHECK(first.files().at(path) == second.files().at(path));
}
