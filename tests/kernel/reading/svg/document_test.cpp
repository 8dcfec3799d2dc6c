#include "kernel/reading/svg/document.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;

TEST_CASE("What is no SVG is refused with its line") {
  const std::string anew = "; save the drawing anew as plain SVG";
  CHECK(refusal("") == "shop.svg: is empty" + anew);
  CHECK(refusal("panel = 3") == "shop.svg:1: is no XML" + anew);
  CHECK(refusal("<svg>\n<g>\n</svg>") == "shop.svg:2: an element is not closed, or by another's end" + anew);
  CHECK(refusal("<svg\n width=3/>") ==
        "shop.svg:2: an attribute is not written as name=\"value\", or given twice" + anew);
  CHECK(refusal("<html><svg/></html>") ==
        "shop.svg:1: is no SVG: its outermost element is \"html\"; save the drawing as SVG");
  CHECK(refusal("<!-- nothing -->") == "shop.svg: is no SVG: it has no element; save the drawing as SVG");
  CHECK(refusal(drawing("") + "\n<svg/>") == "shop.svg:2: svg: stands beside the outermost element" + anew);
  std::string deep;
  for (int i = 0; i < 120; ++i) deep += "<g>";
  CHECK(refusal("<svg>" + deep) == "shop.svg:1: elements nest deeper than 64 levels" + anew);
}

TEST_CASE("Byte-order mark, prologue and any line ends are read") {
  const std::string body = "<path d=\"M0 0H10\"/>";
  CHECK(read("\xEF\xBB\xBF<?xml version=\"1.0\"?>\r\n<!DOCTYPE svg>\r\n" + drawing(body)).curves.size() == 1);
  CHECK(refusal_of_body("\r\n\r\n<path d=\"M0 0\r\nL5 Q\"/>") ==
        "shop.svg:4: path, d: byte 9: found \"Q\" where a number is due; write numbers as 12, -0.5 or 1e-3");
}

TEST_CASE("Names with a prefix of SVG's namespace are SVG's, others are not") {
  const auto prefixed = read(
      "<v:svg xmlns:v=\"http://www.w3.org/2000/svg\" width=\"10mm\" height=\"10mm\" viewBox=\"0 0 10 10\">"
      "<v:path d=\"M0 0h5\"/><path d=\"M0 0h6\"/></v:svg>");
  REQUIRE(prefixed.curves.size() == 1);
  CHECK(segment_of(prefixed.curves[0], 0).length() == 5);
  const auto foreign = read_body(
      "<x:path xmlns:x=\"urn:shop\" d=\"M0 0h5\"/><g xmlns=\"urn:shop\"><path d=\"M0 0h7\"/></g>"
      "<s:path xmlns:s=\"http://www.w3.org/2000/svg\" d=\"M0 0h9\"/>");
  REQUIRE(foreign.curves.size() == 1);
  CHECK(segment_of(foreign.curves[0], 0).length() == 9);
  CHECK(read("<svg width=\"10mm\" height=\"10mm\"><path d=\"M0 0h5\"/></svg>").curves.size() == 1);
}

TEST_CASE("Entities of the prologue are not expanded") {
  const std::string prologue = "<!DOCTYPE svg [<!ENTITY way \"M0 0H10\">]>";
  CHECK(holds(refusal(prologue + drawing("<path d=\"&way;\"/>")), "found \"&\" at the start of a path"));
  CHECK(read(prologue + drawing("<path d=\"M0&#32;0H&#x31;0\"/>")).curves.size() == 1);
  std::string laughs = "<!DOCTYPE svg [<!ENTITY a0 \"ha\">";
  for (int i = 1; i < 60; ++i) {
    const std::string last = "&a" + std::to_string(i - 1) + ";";
    laughs += "<!ENTITY a" + std::to_string(i) + " \"" + last + last + "\">";
  }
  CHECK(read(laughs + "]>" + drawing("<g id=\"&a59;\"/>")).curves.empty());
}
