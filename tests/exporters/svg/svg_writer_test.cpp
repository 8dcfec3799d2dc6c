#include "exporters/svg/svg_writer.hpp"

#include <tinyxml2.h>

#include <catch2/catch.hpp>

#include "shared/units.hpp"

using namespace lamwright;
using drawing::Circle;
using drawing::Drawing;
using drawing::Path;
using drawing::Text;

namespace {

Drawing sheet(const std::string& title = "t") {
  return Drawing(title, {200, 100}, {{"CUT", 0.25, {}, "#000000"}, {"FILL", 0, {}, "#ffffff"}});
}

std::string path_of(const Path& path) {
  Drawing d = sheet();
  d.add("CUT", path);
  tinyxml2::XMLDocument document;
  document.Parse(svg_text(d).c_str());
  return document.RootElement()->FirstChildElement("g")->FirstChildElement("path")->Attribute("d");
}

Segment arc(const Vec2& centre, double radius, double from, double turn) {
  return {centre + radius * direction(from), centre + radius * direction(from + turn), turn, centre, radius};
}

}  // namespace

TEST_CASE("width, height and viewBox are in mm, one unit to the mm") {
  const std::string text = svg_text(sheet());
  CHECK(text.find(R"(width="200mm" height="100mm" viewBox="0 0 200 100")") != std::string::npos);
}

TEST_CASE("y points down in the file and an anticlockwise arc has sweep flag 0") {
  CHECK(path_of({{arc({50, 40}, 10, 0, kPi / 2)}, false, {}}) == "M60 60 A10 10 0 0 0 50 50");
  CHECK(path_of({{arc({50, 40}, 10, kPi / 2, -kPi / 2)}, false, {}}) == "M50 50 A10 10 0 0 1 60 60");
}

TEST_CASE("an arc beyond a half circle is written as two") {
  CHECK(path_of({{arc({50, 40}, 10, 0, 3 * kPi / 2)}, false, {}}) ==
        "M60 60 A10 10 0 0 0 42.928932 52.928932 A10 10 0 0 0 50 70");
}

TEST_CASE("a closed path is closed by Z and its last straight edge drawn once") {
  const Path square = drawing::rectangle({{0, 0}, {10, 20}});
  CHECK(path_of(square) == "M0 100 L10 100 L10 80 L0 80 Z");
}

TEST_CASE("numbers have six places and no negative zero") {
  CHECK(path_of({{line({-1e-9, 1.23456789}, {1.0 / 3, 100})}, false, {}}) == "M0 98.765432 L0.333333 0");
}

TEST_CASE("hostile texts stay texts") {
  const std::string hostile = "</svg>\"'../ä板 & <script>\x01";
  Drawing d = sheet(hostile);
  d.add("CUT", Text{{10, 10}, hostile, 3.5});
  tinyxml2::XMLDocument document;
  REQUIRE(document.Parse(svg_text(d).c_str()) == tinyxml2::XML_SUCCESS);
  const std::string kept = "</svg>\"'../ä板 & <script> ";
  CHECK(std::string(document.RootElement()->FirstChildElement("title")->GetText()) == kept);
  CHECK(std::string(document.RootElement()->FirstChildElement("g")->FirstChildElement("text")->GetText()) ==
        kept);
}

TEST_CASE("circles are circles, in the group of their pen, and empty pens leave no group") {
  Drawing d = sheet();
  d.add("CUT", Circle{{20, 30}, 5, {}});
  tinyxml2::XMLDocument document;
  document.Parse(svg_text(d).c_str());
  const auto* group = document.RootElement()->FirstChildElement("g");
  CHECK(std::string(group->Attribute("id")) == "CUT");
  CHECK(std::string(group->FirstChildElement("circle")->Attribute("cy")) == "70");
  CHECK(group->NextSiblingElement("g") == nullptr);
}

TEST_CASE(
    "a hole note with the signs of counterbore and depth is drawn as strokes, for few fonts have them") {
  Drawing d = sheet();
  d.add("CUT", Text{{10, 10}, "Ø6, counterbore ⌴Ø16 ↧50", 2.5});
  d.add("CUT", Text{{10, 20}, "Ø6", 2.5});
  tinyxml2::XMLDocument document;
  document.Parse(svg_text(d).c_str());
  const auto* group = document.RootElement()->FirstChildElement("g");
  const auto* note = group->FirstChildElement("path");
  REQUIRE(note != nullptr);
  CHECK(note->DoubleAttribute("stroke-width") == 0.25);  // a tenth of the height (ISO 3098)
  CHECK(std::string(note->Attribute("stroke")) == "#000000");
  CHECK(note->NextSiblingElement("path") == nullptr);
  const auto* text = group->FirstChildElement("text");
  REQUIRE(text != nullptr);
  CHECK(std::string(text->GetText()) == "Ø6");
  CHECK(text->NextSiblingElement("text") == nullptr);
}
