#include "kernel/reading/svg/walk.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;

namespace {

using Layers = std::vector<std::string>;

// Lengths of the lines of a drawing whose curves are single lines, in order.
std::vector<double> lengths(const std::string& body) {
  std::vector<double> out;
  for (const auto& curve : read_body(body).curves) out.push_back(segment_of(curve, 0).length());
  return out;
}

std::string line(int length, const std::string& attributes = "") {
  return "<path d=\"M0 0h" + std::to_string(length) + "\" " + attributes + "/>";
}

}  // namespace

TEST_CASE("Nested transforms are applied once each, in every form") {
  const std::string path = "<path d=\"M0 0L200 0\"/>";
  int seen = 0;
  const std::vector<std::string> forms{
      "<g transform=\"translate(100,0)\"><g transform=\"rotate(90)\">" + path + "</g></g>",
      "<g transform=\"translate(100,0) rotate(90)\">" + path + "</g>",
      "<path transform=\"matrix(0 1 -1 0 100 0)\" d=\"M0 0L200 0\"/>",
      "<defs><g id=\"a\" transform=\"rotate(90)\">" + path + "</g></defs><use href=\"#a\" x=\"100\"/>",
      "<defs><path id=\"a\" d=\"M0 0L200 0\"/></defs><use transform=\"translate(100)rotate(90)\" "
      "xmlns:l=\"urn:l\" "
      "l:href=\"#a\"><title>no child of it</title></use><path id=\"b\" d=\"\"/>",
      "<svg x=\"100\"><g transform=\"rotate(90)\">" + path + "</g></svg>",
      "<svg x=\"100\" width=\"50\" height=\"50\" viewBox=\"0 0 100 100\"><g transform=\"rotate(90)\"><path "
      "d=\"M0 "
      "0L400 0\"/></g></svg>",
      "<a transform=\"translate(100)\"><switch transform=\"rotate(90)\">" + path + "</switch></a>",
      "<symbol id=\"a\"><g transform=\"rotate(90)\">" + path + "</g></symbol><use href=\"#a\" x=\"100\"/>"};
  for (const std::string& body : forms) {
    CAPTURE(body);
    const auto file = read_body(body);
    REQUIRE(file.curves.size() == 1);
    const auto& drawn = segment_of(file.curves[0], 0);
    CHECK(same(drawn.from, {100, 0}));
    CHECK(same(drawn.to, {100, -200}));
    ++seen;
  }
  CHECK(seen == 9);
}

TEST_CASE("Curves know their id, the groups around them, and their line") {
  const auto file = read_body(
      "<g id=\"layer1\" xmlns:e=\"urn:e\" e:label=\"Line of the seat\">\n<a id=\"link\"><g><path "
      "id=\"inner\" d=\"M0 "
      "0h5\"/></g></a></g><circle r=\"5\"/><g id=\"x\" e:label=\"x\">" +
      line(3) + "</g>");
  REQUIRE(file.curves.size() == 3);
  CHECK(file.curves[0].id == "inner");
  CHECK(file.curves[0].layers == Layers{"layer1", "Line of the seat", "link"});
  CHECK(file.curves[0].what == "path \"inner\" (line 2)");
  CHECK(file.curves[1].id.empty());
  CHECK(file.curves[1].layers.empty());
  CHECK(file.curves[1].what == "circle (line 2)");
  CHECK(file.curves[2].layers == Layers{"x"});
}

TEST_CASE("A use counts as a group around what it shows") {
  const auto file = read_body(
      "<defs><g id=\"pair\"><path id=\"one\" d=\"M0 0h5\"/></g></defs><g id=\"left\"><use "
      "id=\"copy\" href=\"#pair\"/></g>");
  REQUIRE(file.curves.size() == 1);
  CHECK(file.curves[0].id == "one");
  CHECK(file.curves[0].layers == Layers{"left", "copy", "pair"});
}

TEST_CASE("What stands in definitions or is not displayed is not drawn") {
  int seen = 0;
  for (const char* name :
       {"defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata", "filter", "linearGradient"}) {
    CAPTURE(name);
    CHECK(lengths(std::string("<") + name + ">" + line(5) + "</" + name + ">" + line(7)) ==
          std::vector<double>{7});
    ++seen;
  }
  CHECK(seen == 9);
  CHECK(lengths(line(5, "display=\"none\"") + line(6, "style=\"fill:red; display : none\"") +
                line(7, "display=\"none\" style=\"display:inline\"") +
                line(8, "style=\"display:none !important\"")) == std::vector<double>{7});
  CHECK(lengths("<g display=\"none\">" + line(5, "display=\"inline\"") + "</g>").empty());
  CHECK(lengths("<g visibility=\"hidden\">" + line(5) + line(6, "visibility=\"visible\"") + "</g>" +
                line(7, "visibility=\"collapse\"")) == std::vector<double>{6});
  CHECK(lengths("<g style=\"visibility:hidden\"><circle r=\"wrong\"/></g>" + line(1)) ==
        std::vector<double>{1});
  CHECK(lengths("<svg width=\"0\" visibility=\"visible\">" + line(5) + "</svg>").empty());
}

TEST_CASE("A switch shows its first child that needs no extension") {
  CHECK(lengths("<switch><title>a</title><foreignObject requiredExtensions=\"urn:e\"/>" + line(5) + line(6) +
                "</switch>") == std::vector<double>{5});
  CHECK(lengths("<switch><g>" + line(5) + line(6) + "</g>" + line(7) + "</switch>") ==
        std::vector<double>{5, 6});
  CHECK(lengths("<switch/>").empty());
}

TEST_CASE("Uses show svg and symbol in the size they give") {
  const std::string defs = "<defs><symbol id=\"s\" viewBox=\"0 0 10 10\">" + line(10) +
                           "</symbol><svg id=\"v\" width=\"20\" height=\"20\" "
                           "viewBox=\"0 0 10 10\">" +
                           line(10) + "</svg></defs>";
  CHECK(lengths(defs + "<use href=\"#s\" width=\"30\" height=\"30\"/>") == std::vector<double>{30});
  CHECK(lengths(defs + "<use href=\"#s\"/>") == std::vector<double>{500});  // 100 % of 1000 x 500, even
  CHECK(lengths(defs + "<use href=\"#v\"/>") == std::vector<double>{20});
  CHECK(lengths(defs + "<use href=\"#v\" width=\"40\" height=\"40\"/>") == std::vector<double>{40});
  CHECK(lengths(defs + "<use href=\"#s\" width=\"0\"/>").empty());
}

TEST_CASE("Shares within a viewBox are shares of it") {
  CHECK(lengths("<svg width=\"100\" height=\"100\" viewBox=\"0 0 10 10\"><line x2=\"50%\"/></svg>") ==
        std::vector<double>{50});
  CHECK(lengths("<svg width=\"50%\" height=\"50%\"><line x2=\"50%\"/></svg>") == std::vector<double>{250});
}

TEST_CASE("A use that leads back to itself is refused") {
  CHECK(refusal_of_body("<g id=\"a\">\n<use id=\"u\" href=\"#a\"/></g>") ==
        "shop.svg:2: use \"u\": leads back to itself by way of g \"a\"; take one of the uses out");
  CHECK(holds(
      refusal_of_body("<defs><g id=\"a\"><use href=\"#b\"/></g><g id=\"b\"><use href=\"#a\"/></g></defs><use "
                      "href=\"#a\"/>"),
      "leads back to itself by way of g \"a\""));
  CHECK(holds(refusal_of_body("<use id=\"u\" href=\"#u\"/>"), "leads back to itself"));
  CHECK(holds(refusal("<svg id=\"s\" width=\"1mm\" height=\"1mm\"><use href=\"#s\"/></svg>"),
              "leads back to itself"));
}

TEST_CASE("A use of what is not there is left out with a note") {
  const auto file = read_body("<use id=\"u\" href=\"#gone\"/>\n<use href=\"other.svg#x\"/><use/>" + line(5));
  CHECK(file.curves.size() == 1);
  CHECK(file.notes ==
        Layers{"3 uses left out: what it points to is not in the file; the first: use \"u\" (line 1)"});
}

TEST_CASE("Texts and pictures are counted in a note") {
  const auto file = read_body("<text>a</text><text>b</text><image href=\"x.png\"/>" + line(5));
  CHECK(file.curves.size() == 1);
  CHECK(file.notes == Layers{"left out, being no lines: 1 image and 2 text"});
}

TEST_CASE("An element pressed flat is left out with a note") {
  const auto file = read_body("<g transform=\"scale(1 0)\"><circle id=\"c\" r=\"5\"/></g>" + line(5));
  CHECK(file.curves.size() == 1);
  CHECK(file.notes == Layers{"1 element left out: the transform presses it flat: circle \"c\" (line 1)"});
}

TEST_CASE("Geometry in styles is refused rather than left out") {
  CHECK(refusal_of_body("\n<g id=\"a\" style=\"fill:none;transform:rotate(30deg)\"/>") ==
        "shop.svg:2: g \"a\", style: transform in a style is not read, and what it moves would lie wrong; "
        "write it "
        "as an attribute of the element");
  CHECK(holds(refusal_of_body("<circle style=\"r:5px\"/>"), "r in a style is not read"));
  CHECK(holds(refusal_of_body("<rect style=\"width:5px\"/>"), "width in a style is not read"));
  CHECK(refusal_of_body("<g style=\"transform:none;stroke-width:2;rx:auto\"/>").empty());
  CHECK(refusal_of_body("<g transform=\"rotate(30)\" transform-origin=\"50 50\"/>") ==
        "shop.svg:1: g: transform-origin is not read, and what it moves would lie wrong; write the centre "
        "into the "
        "transform, as in rotate(30 100 50)");
  CHECK(refusal_of_body("<g transform=\"rotate(30)\" style=\"transform-origin:0px 0px\"/>").empty());
  const auto sheet = read_body("<defs><style>.tool { display: none }</style></defs>" + line(5));
  CHECK(sheet.notes == Layers{"style sheets within the drawing are not read: what they hide or move is taken "
                              "as if they did not"});
  CHECK(read_body("<style>.tool { fill: none }</style>" + line(5)).notes.empty());
}

TEST_CASE("Elements nest 64 deep and no deeper") {
  const auto nested = [](int levels) {
    std::string open, close;
    for (int i = 0; i < levels; ++i) {
      open += "<g>";
      close += "</g>";
    }
    return open + line(5) + close;
  };
  CHECK(lengths(nested(63)) == std::vector<double>{5});
  CHECK(refusal_of_body(nested(64)) == "shop.svg:1: path: nests deeper than 64 levels; ungroup the drawing");
}

TEST_CASE("Uses that multiply end in an error, not in a wait") {
  std::string body = "<defs><g id=\"a0\"><path d=\"M0 0h0\"/></g>";
  for (int i = 1; i < 60; ++i) {
    const std::string last = "<use href=\"#a" + std::to_string(i - 1) + "\"/>";
    body += "<g id=\"a" + std::to_string(i) + "\">" + last + last + "</g>";
  }
  body += "</defs>";
  CHECK(holds(refusal_of_body(body + "<use href=\"#a25\"/>"), "here the drawing repeats too much of itself"));
  // A tower of uses is deeper than 64 levels of elements.
  CHECK(holds(refusal_of_body(body + "<use href=\"#a59\"/>"), "nests deeper than 64 levels"));
  CHECK(refusal_of_body(body + "<use href=\"#a9\"/>").empty());
}
