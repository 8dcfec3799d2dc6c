#include "exporters/dxf/dxf_writer.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "shared/units.hpp"
#include "tests/exporters/dxf/dxf_pairs.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using test::dxf_records;
using test::DxfRecord;
using test::entity_types;
using test::of_type;
using Strings = std::vector<std::string>;

namespace {

std::vector<Pen> pens(const Strings& names) {
  std::vector<Pen> out;
  for (const std::string& name : names) out.push_back({name, 0.25, {}, "#000000"});
  return out;
}

Drawing drawn(const std::vector<Shape>& shapes, const std::string& pen = "OUTLINE") {
  Drawing drawing("sample", {100, 100}, pens({pen}));
  for (const Shape& shape : shapes) drawing.add(pen, shape);
  return drawing;
}

// Anticlockwise about the centre from an angle through a turn, both in degrees.
Segment arc(const Vec2& centre, double radius, double from, double turn) {
  const auto at = [&](double angle) { return Vec2(centre + radius * direction(radians(angle))); };
  return {at(from), at(from + turn), radians(turn), centre, radius};
}

DxfRecord only(const Shape& shape, const std::string& type, DxfVersion version = DxfVersion::r2000) {
  const auto found = of_type(dxf_records(dxf_text(drawn({shape}), version)), type);
  REQUIRE(found.size() == 1);
  return found.front();
}

std::string bulge(double turn) {
  return only(Path{{arc({0, 0}, 50, 10, turn)}, false, {}}, "LWPOLYLINE").first(42);
}

std::string section(const std::string& text, const std::string& name) {
  const std::size_t from = text.find("  2\n" + name + "\n");
  return text.substr(from, text.find("  0\nENDSEC\n", from) - from);
}

}  // namespace

// tan(turn / 4): 60 degrees 0.267949, 90 degrees 0.414214, 180 degrees 1; 1.5 is 4 atan(1.5) = 225.2397
// degrees.
TEST_CASE("a bulge is the tangent of a quarter of the angle swept, to the left positive") {
  CHECK(bulge(60) == "0.267949192");
  CHECK(bulge(-60) == "-0.267949192");
  CHECK(bulge(90) == "0.414213562");
  CHECK(bulge(180) == "1.0");
  CHECK(bulge(degrees(4 * std::atan(1.5))) == "1.5");
  CHECK(bulge(-270) == "-2.414213562");
}

TEST_CASE("an arc that is nearly a whole turn becomes two with a vertex between them") {
  const DxfRecord line = only(Path{{arc({0, 0}, 50, 0, 340)}, false, {}}, "LWPOLYLINE");
  // tan(170 / 4 degrees)
  CHECK(line.all(42) == Strings{"0.916331174", "0.916331174"});
  CHECK(line.first(90) == "3");
  // Half way, 170 degrees round: 50 cos 170, 50 sin 170.
  CHECK(line.all(10)[1] == "-49.240388");
  CHECK(line.all(20)[1] == "8.682409");
}

TEST_CASE("a closed path is one closed polyline without a vertex twice") {
  const Path half_disc{{line({-50, 0}, {50, 0}), arc({0, 0}, 50, 0, 180)}, true, {}};
  const std::string text = dxf_text(drawn({half_disc}), DxfVersion::r2000);
  CHECK(section(text, "ENTITIES") ==
        "  2\nENTITIES\n"
        "  0\nLWPOLYLINE\n  5\n2D\n330\nF\n100\nAcDbEntity\n  8\nOUTLINE\n100\nAcDbPolyline\n"
        " 90\n2\n 70\n1\n 10\n-50.0\n 20\n0.0\n 10\n50.0\n 20\n0.0\n 42\n1.0\n");
}

TEST_CASE("R12 writes the same path as a polyline of vertices, without handles, owners or markers") {
  const Path half_disc{{line({-50, 0}, {50, 0}), arc({0, 0}, 50, 0, 180)}, true, {}};
  const std::string text = dxf_text(drawn({half_disc}), DxfVersion::r12);
  CHECK(section(text, "ENTITIES") ==
        "  2\nENTITIES\n"
        "  0\nPOLYLINE\n  8\nOUTLINE\n 66\n1\n 10\n0.0\n 20\n0.0\n 30\n0.0\n 70\n1\n"
        "  0\nVERTEX\n  8\nOUTLINE\n 10\n-50.0\n 20\n0.0\n 30\n0.0\n"
        "  0\nVERTEX\n  8\nOUTLINE\n 10\n50.0\n 20\n0.0\n 30\n0.0\n 42\n1.0\n"
        "  0\nSEQEND\n  8\nOUTLINE\n");
  CHECK(text.find("LWPOLYLINE") == std::string::npos);
  CHECK(text.find("AcDb") == std::string::npos);
  CHECK(text.find("INSUNITS") == std::string::npos);
  for (const DxfRecord& record : dxf_records(text)) {
    CHECK(record.all(5).empty());
    CHECK(record.all(330).empty());
  }
}

TEST_CASE("an open path ends where its last segment ends and is not closed") {
  const DxfRecord open = only(Path{{line({0, 0}, {10, 0}), line({10, 0}, {10, 5})}, false, {}}, "LWPOLYLINE");
  CHECK(open.first(70) == "0");
  CHECK(open.all(10) == Strings{"0.0", "10.0", "10.0"});
  CHECK(open.all(20) == Strings{"0.0", "0.0", "5.0"});
  CHECK(open.all(42).empty());
}

TEST_CASE("bare segments are lines and arcs, and arcs run anticlockwise whichever way they are drawn") {
  CHECK(only(line({1, 2}, {3, 4}), "LINE").all(11) == Strings{"3.0"});
  for (const Segment& s : {arc({5, 6}, 20, 350, 30), arc({5, 6}, 20, 350, 30).reversed()}) {
    const DxfRecord found = only(s, "ARC");
    CHECK(found.first(10) == "5.0");
    CHECK(found.first(40) == "20.0");
    CHECK(found.first(50) == "350.0");
    CHECK(found.first(51) == "20.0");
  }
}

TEST_CASE("a circle is a circle and an area is its loops") {
  CHECK(only(Circle{{7, 8}, 17.5, {}}, "CIRCLE").first(40) == "17.5");
  const Area frame{{rectangle({{0, 0}, {9, 9}}), rectangle({{2, 2}, {5, 5}})}, "#ff0000"};
  CHECK(entity_types(dxf_records(dxf_text(drawn({frame}), DxfVersion::r2000))) ==
        Strings{"LWPOLYLINE", "LWPOLYLINE"});
}

TEST_CASE("what has no length is left out") {
  const std::vector<Shape> nothing{line({1, 1}, {1, 1}), Path{{line({2, 2}, {2, 2})}, false, {}},
                                   Path{{}, true, {}}, Circle{{0, 0}, 0, {}}, Text{{0, 0}, "  ", 3.5}};
  for (const DxfVersion version : {DxfVersion::r2000, DxfVersion::r12})
    CHECK(entity_types(dxf_records(dxf_text(drawn(nothing), version))).empty());
  const Path step{{line({0, 0}, {10, 0}), line({10, 0}, {10, 1e-7}), line({10, 1e-7}, {10, 5})}, false, {}};
  CHECK(only(step, "LWPOLYLINE").first(90) == "3");
}

TEST_CASE("coordinates have six places, no exponent and no minus zero") {
  const DxfRecord tiny = only(line({-1e-9, 1234567.0000004}, {1.0 / 3, -2e-6}), "LINE");
  CHECK(tiny.first(10) == "0.0");
  CHECK(tiny.first(20) == "1234567.0");
  CHECK(tiny.first(11) == "0.333333");
  CHECK(tiny.first(21) == "-0.000002");
}

TEST_CASE("text is written so that it reads back: beyond ASCII, control codes and line ends") {
  const auto written = [](const std::string& text) { return only(Text{{1, 2}, text, 3.5}, "TEXT").first(1); };
  CHECK(written("Rippe 7/12 ä") == "Rippe 7/12 \\U+00E4");
  CHECK(written("板") == "\\U+677F");
  CHECK(written("\U0001F600") == "\\U+FFFD");
  CHECK(written("two\nlines\tand\x7F") == "two lines and ");
  CHECK(written("100 %") == "100 %");
  CHECK(written("%%d") == "%%%%%%d");
  CHECK(written("a^J") == "a^ J");
  CHECK(written("\\U+00E4") == "\\U+005CU+00E4");
  CHECK(written("0\nSECTION") == "0 SECTION");
}

TEST_CASE("text keeps its height, angle and anchor") {
  const DxfRecord upright = only(Text{{1, 2}, "L", 10, Anchor::middle, kPi / 2}, "TEXT");
  CHECK(upright.first(40) == "10.0");
  CHECK(upright.first(50) == "90.0");
  CHECK(upright.first(72) == "1");
  CHECK(upright.first(11) == "1.0");
  CHECK(only(Text{{1, 2}, "L", 10}, "TEXT").all(72).empty());
}

TEST_CASE("the layer table holds 0 and every layer that is used, with its colour") {
  Drawing drawing("sample", {10, 10},
                  {{"DRILL_38.1", 0.25, {}, "#0000ff"},
                   {"UNUSED", 0.25, {}, "#00ff00"},
                   {"OUTLINE", 0.25, {}, "#000000"},
                   {"HIDDEN", 0.25, {3, 1}, "#ff0000"}});
  drawing.add("OUTLINE", line({0, 0}, {1, 0}));
  drawing.add("DRILL_38.1", Circle{{5, 5}, 19.05, {}});
  drawing.add("HIDDEN", line({0, 0}, {0, 1}));
  const auto layers_in = [&](DxfVersion version) {
    std::vector<Strings> out;
    for (const DxfRecord& layer : of_type(dxf_records(dxf_text(drawing, version)), "LAYER"))
      out.push_back({layer.first(2), layer.first(62), layer.first(6)});
    return out;
  };
  CHECK(layers_in(DxfVersion::r2000) == std::vector<Strings>{{"0", "7", "CONTINUOUS"},
                                                             {"DRILL_38.1", "5", "CONTINUOUS"},
                                                             {"OUTLINE", "7", "CONTINUOUS"},
                                                             {"HIDDEN", "1", "DASHES_1"}});
  CHECK(layers_in(DxfVersion::r12)[1] == Strings{"DRILL_38_1", "5", "CONTINUOUS"});
  const auto linetypes = of_type(dxf_records(dxf_text(drawing, DxfVersion::r2000)), "LTYPE");
  REQUIRE(linetypes.size() == 4);
  CHECK(linetypes[3].all(49) == Strings{"3.0", "-1.0"});
  CHECK(linetypes[3].first(40) == "4.0");
}

TEST_CASE("layer names hold only what the version allows and stay different") {
  Drawing drawing("sample", {10, 10}, pens({"a b*c", "A_B_C", std::string(40, 'x') + "ä", "", "0"}));
  for (const Pen& pen : drawing.pens()) drawing.add(pen.name, line({0, 0}, {1, 0}));
  const auto names = [&](DxfVersion version) {
    Strings out;
    for (const DxfRecord& layer : of_type(dxf_records(dxf_text(drawing, version)), "LAYER"))
      out.push_back(layer.first(2));
    return out;
  };
  CHECK(names(DxfVersion::r2000) == Strings{"0", "a_b_c", "A_B_C$2", std::string(40, 'x') + "__", "_"});
  CHECK(names(DxfVersion::r12) == Strings{"0", "A_B_C", "A_B_C$2", std::string(31, 'X'), "_"});
}

TEST_CASE("R2000 names millimetres, its handles are unique and the seed is beyond them") {
  const auto records =
      dxf_records(dxf_text(drawn({Circle{{5, 5}, 2, {}}, line({0, 0}, {9, 0})}), DxfVersion::r2000));
  const auto variable = [&](const std::string& name) {
    return of_type(records, name).at(0).groups.at(0).second;
  };
  CHECK(variable("$ACADVER") == "AC1015");
  CHECK(variable("$INSUNITS") == "4");
  CHECK(variable("$MEASUREMENT") == "1");
  std::set<long> handles;
  std::size_t seen = 0;
  for (const DxfRecord& record : records) {
    if (record.type == "$HANDSEED") continue;
    for (const int code : {5, 105})
      for (const std::string& handle : record.all(code)) {
        handles.insert(std::stol(handle, nullptr, 16));
        ++seen;
      }
  }
  CHECK(seen > 25);
  CHECK(handles.size() == seen);
  CHECK(std::stol(variable("$HANDSEED"), nullptr, 16) > *handles.rbegin());
}

TEST_CASE("every owner and pointer names a handle of the file") {
  const auto records = dxf_records(dxf_text(drawn({line({0, 0}, {9, 0})}), DxfVersion::r2000));
  std::set<std::string> handles{"0"};
  for (const DxfRecord& record : records)
    for (const int code : {5, 105})
      for (const std::string& handle : record.all(code)) handles.insert(handle);
  int pointers = 0;
  for (const DxfRecord& record : records)
    for (const int code : {330, 340, 350, 390})
      for (const std::string& handle : record.all(code)) {
        CHECK(handles.count(handle) == 1);
        ++pointers;
      }
  CHECK(pointers > 30);
}

TEST_CASE("entities come layer by layer in the order of pens, which is that of work") {
  Drawing drawing("sample", {10, 10}, pens({"DRILL_8", "OUTLINE"}));
  drawing.add("OUTLINE", line({0, 0}, {1, 0}));
  drawing.add("DRILL_8", Circle{{5, 5}, 4, {}});
  CHECK(entity_types(dxf_records(dxf_text(drawing, DxfVersion::r12))) == Strings{"CIRCLE", "LINE"});
}

TEST_CASE("the extents hold all that is drawn, arcs with their crowns") {
  const auto records =
      dxf_records(dxf_text(drawn({Path{{arc({0, 0}, 50, 0, 180)}, false, {}}}), DxfVersion::r2000));
  CHECK(of_type(records, "$EXTMIN").at(0).all(10) == Strings{"-50.0"});
  CHECK(of_type(records, "$EXTMAX").at(0).all(20) == Strings{"50.0"});
}

TEST_CASE("a version is named as in the job file") {
  CHECK(dxf_version("r2000") == DxfVersion::r2000);
  CHECK(dxf_version("r12") == DxfVersion::r12);
}
