#include "kernel/reading/svg/true_size.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;

namespace {

std::string svg(const std::string& attributes, const std::string& body) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" " + attributes + ">" + body + "</svg>";
}

DrawnFile read_at(const std::string& text, double dpi, std::optional<double> scale = {}) {
  return read_svg(text, {"shop.svg", dpi, scale});
}

Segment only_line(const DrawnFile& file) {
  REQUIRE(file.curves.size() == 1);
  return segment_of(file.curves[0], 0);
}

constexpr const char* kPxNote = "px taken at 96 to the inch: 1 px is 0.264583 mm";

}  // namespace

TEST_CASE("Sizes in px follow dpi, and a note says so") {
  const std::string text = svg("width=\"2834.65px\" height=\"283.465px\" viewBox=\"0 0 2834.65 283.465\"",
                               "<path d=\"M0 0H2834.65\"/>");
  const auto at_96 = read_at(text, 96), at_72 = read_at(text, 72);
  // 2834.65 px are 2834.65 / 96 * 25.4 = 750.0011 mm and 2834.65 / 72 * 25.4 = 1000.0015 mm.
  CHECK(only_line(at_96).length() == within(2834.65 / 96 * 25.4, kRounding));
  CHECK(only_line(at_96).length() == within(750, 0.002));
  CHECK(only_line(at_72).length() == within(1000, 0.002));
  CHECK(at_96.notes == std::vector<std::string>{kPxNote});
  CHECK(at_72.notes == std::vector<std::string>{"px taken at 72 to the inch: 1 px is 0.352778 mm"});
}

TEST_CASE("A drawing of 1200 mm is that in every unit of width and height") {
  int seen = 0;
  for (const auto& [width, height] : {std::pair{"3401.575pt", "340.1575pt"},
                                      {"120cm", "12cm"},
                                      {"47.2441in", "4.72441in"},
                                      {"1200mm", "120mm"},
                                      {"4800Q", "480Q"},
                                      {"283.4646pc", "28.34646pc"},
                                      {"4535.433", "453.5433px"}}) {
    CAPTURE(width);
    const auto file =
        read(svg(std::string("width=\"") + width + "\" height=\"" + height + "\" viewBox=\"0 0 1200 120\"",
                 "<line x2=\"1200\"/>"));
    CHECK(only_line(file).length() == within(1200, 0.01));
    ++seen;
  }
  CHECK(seen == 7);
}

TEST_CASE("Sizes in true units need no note, units of the drawing in px do") {
  CHECK(read(svg("width=\"10cm\" height=\"10cm\" viewBox=\"0 0 1 1\"", "<line x2=\"1\"/>")).notes.empty());
  const auto file = read(svg("width=\"254mm\" height=\"254mm\"", "<line x2=\"96\" y2=\"0\"/>"));
  CHECK(only_line(file).length() == within(25.4, kRounding));
  CHECK(file.notes == std::vector<std::string>{kPxNote});
  CHECK(read(svg("width=\"100\" height=\"100mm\" viewBox=\"0 0 1 1\"", "")).notes ==
        std::vector<std::string>{kPxNote});
}

TEST_CASE("A drawing without a true size is refused, and scale is offered") {
  const std::string line = "<line x2=\"1200\"/>", box = "viewBox=\"0 0 1200 120\"";
  const std::string remedy =
      "; give scale (mm per unit of the drawing), or a width and height in mm in the drawing";
  const std::string no_size = "shop.svg:1: svg: has no true size: ";
  CHECK(refusal(svg(box + " width=\"100%\" height=\"100%\"", line)) ==
        no_size + "width \"100%\", height \"100%\"" + remedy);
  CHECK(refusal(svg(box, line)) == no_size + "no width, no height" + remedy);
  CHECK(refusal(svg("width=\"12mm\"", line)) == no_size + "width \"12mm\", no height" + remedy);
  CHECK(refusal(svg(box + " width=\"30em\" height=\"auto\"", line)) ==
        no_size + "width \"30em\", height \"auto\"" + remedy);
  CHECK(refusal(svg(box + " width=\"0mm\" height=\"1mm\"", line)) ==
        "shop.svg:1: svg, width: read \"0mm\"; allowed over 0");
}

TEST_CASE("One true length beside a viewBox gives the other by its proportions") {
  const std::string line = "<line x2=\"1200\"/>", box = "viewBox=\"0 0 1200 120\"";
  int seen = 0;
  for (const char* size : {" width=\"600mm\"", " height=\"60mm\"", " width=\"auto\" height=\"60mm\"",
                           " width=\"100%\" height=\"60mm\""}) {
    CHECK(only_line(read(svg(box + size, line))).length() == within(600, kRounding));
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("Scale overrules every size in the file") {
  int seen = 0;
  for (const char* size : {"", "width=\"100%\" height=\"100%\"", "width=\"7mm\" height=\"9in\"",
                           "width=\"7mm\" height=\"9in\" preserveAspectRatio=\"none\""}) {
    const auto file = read_at(
        svg(std::string(size) + " viewBox=\"50 20 1200 120\"", "<line x1=\"50\" x2=\"1250\"/>"), 96, 0.5);
    const auto line = only_line(file);
    CHECK(same(line.from, {0, 10}));
    CHECK(same(line.to, {600, 10}));
    CHECK(file.notes.empty());
    ++seen;
  }
  CHECK(seen == 4);
  CHECK(only_line(read_at(svg("", "<line x2=\"1200\"/>"), 96, 0.5)).length() == 600);
  CHECK(message_of([] { read_at(svg("", "<line x2=\"50%\"/>"), 96, 0.5); }) ==
        "shop.svg:1: line, x2: is a share of a drawing without a size; write it as a number");
  CHECK(only_line(read_at(svg("viewBox=\"0 0 80 10\"", "<line x2=\"50%\"/>"), 96, 0.5)).length() == 20);
}

TEST_CASE("A viewBox of other proportions scales evenly and lies in the middle") {
  const auto line = only_line(
      read(svg("width=\"600mm\" height=\"300mm\" viewBox=\"0 0 1000 1000\"", "<path d=\"M0 0H1000\"/>")));
  CHECK(line.length() == within(300, kRounding));
  CHECK(same(line.from, {150, 0}));
}

TEST_CASE("A viewBox stretched unevenly is refused") {
  CHECK(refusal(svg("width=\"600mm\" height=\"300mm\" viewBox=\"0 0 1000 1000\" preserveAspectRatio=\"none\"",
                    "<path d=\"M0 0H1000\"/>")) ==
        "shop.svg:1: svg: stretches its viewBox unevenly, by 0.6 along and 0.3 up: arcs would turn elliptic; "
        "give width and height the proportions of the viewBox, or take preserveAspectRatio out");
  const auto even =
      read(svg("width=\"600mm\" height=\"300mm\" viewBox=\"0 0 1000 500\" preserveAspectRatio=\"none\"",
               "<path d=\"M0 0H1000\"/>"));
  CHECK(only_line(even).length() == within(600, kRounding));
}

TEST_CASE("Y is up, with the origin at the top left of the drawing") {
  const auto line = only_line(
      read(svg("width=\"100mm\" height=\"50mm\" viewBox=\"-10 -20 100 50\"", "<path d=\"M-10-20l30 40\"/>")));
  CHECK(same(line.from, {0, 0}));
  CHECK(same(line.to, {30, -40}));
}

TEST_CASE("The outermost element may have a transform of its own") {
  const auto line =
      only_line(read(svg("width=\"25.4mm\" height=\"25.4mm\" viewBox=\"0 0 10 10\" "
                         "transform=\"translate(96 0) rotate(90)\"",
                         "<path d=\"M0 0h10\"/>")));
  CHECK(same(line.from, {25.4, 0}));
  CHECK(same(line.to, {25.4, -25.4}));
}

TEST_CASE("dpi and scale have limits") {
  const std::string text = svg("width=\"1in\" height=\"1in\"", "");
  int refused = 0;
  for (const double bad : {0.0, -1.0, double(NAN), double(INFINITY), 1e12}) {
    REQUIRE_ERROR(ErrorKind::job, read_at(text, bad));
    REQUIRE_ERROR(ErrorKind::job, read_at(text, 96, bad));
    ++refused;
  }
  CHECK(refused == 5);
  CHECK(message_of([&] { read_at(text, 0); }) == "shop.svg: dpi is 0; allowed 0.001 to 1000000");
}
