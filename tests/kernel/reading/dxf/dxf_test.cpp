#include "kernel/reading/dxf/dxf.hpp"

#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;
using namespace std::string_literals;

namespace {

const std::string kLine = "0 LINE, 10 0, 20 0, 11 1, 21 0";

}  // namespace

TEST_CASE("files that are no text are refused with what they are") {
  const std::string way_out = "; save it as text DXF (ASCII), R2000 for choice";
  CHECK(refusal("XXXXXXX Binary DXF\r\n\x1a\0\0\0"s) == "part.dxf: the file is a binary DXF file" + way_out);
  CHECK(refusal("AC1015\0\0\0"s) == "part.dxf: the file is a DWG file, no DXF" + way_out);
  CHECK(refusal("\xFF\xFE"s + "0\0\n\0"s) == "part.dxf: the file is in UTF-16" + way_out);
  CHECK(refusal("0\0\n\0S\0"s) == "part.dxf: the file is a binary file" + way_out);
  CHECK(refusal("\x89PNG\r\n\x1a\n\0\0\0\rIHDR"s) == "part.dxf: the file is a binary file" + way_out);
  CHECK(refusal("") == "part.dxf: the file is empty; save the drawing again");
}

TEST_CASE("a text with a byte-order mark, and one that goes on after its end, are read") {
  CHECK(read("\xEF\xBB\xBF" + drawing("", kLine)).curves.size() == 1);
  CHECK(read(drawing("", kLine) + "\x1a rest").curves.size() == 1);
  CHECK(read(section("ENTITIES", kLine)).curves.size() == 1);
  CHECK(read(section("ENTITIES", kLine) + "\r\n \n\x1a").curves.size() == 1);
}

TEST_CASE("sections may be missing or stand in any order") {
  const std::string tables = section("TABLES", "0 LAYER, 2 OFF, 62 -1");
  const std::string text = section("ENTITIES", kLine + ", 0 LINE, 8 OFF, 10 0, 20 0, 11 1, 21 0") + tables +
                           section("OBJECTS", "0 DICTIONARY, 5 C") + header("9 $INSUNITS, 70 5");
  CHECK(segment_of(only_curve(read(text))).length() == within(10, 0));
  CHECK(refusal(tables) == "part.dxf: there is no section ENTITIES; save the drawing again as text DXF");
  CHECK(refusal(pairs(kLine)) ==
        "part.dxf:2: expected a SECTION, found \"LINE\"; save the drawing again as text DXF");
}

TEST_CASE("a text that is cut short is refused, wherever it breaks off") {
  const std::string text =
      drawing(header("9 $INSUNITS, 70 4") + section("BLOCKS", "0 BLOCK, 2 A, " + kLine + ", 0 ENDBLK"),
              kLine + ", 0 INSERT, 2 A, 10 0, 20 0");
  CHECK(read(text).curves.size() == 2);
  // From within the first pair to the last line of the last ENDSEC, which is whole without EOF.
  const std::size_t whole = text.size() - pairs("0 EOF").size();
  std::size_t refused = 0;
  for (std::size_t size = 0; size + 1 < whole; ++size) refused += !refusal(text.substr(0, size)).empty();
  CHECK(refused == whole - 1);
  CHECK(holds(refusal(text.substr(0, whole - pairs("0 ENDSEC").size())),
              "the file ends within section ENTITIES; it is cut short; save the drawing again"));
  CHECK(holds(refusal(drawing(section("BLOCKS", "0 BLOCK, 2 A, " + kLine), "0 INSERT, 2 A, 10 0, 20 0")),
              "the file ends before ENDBLK"));
}

TEST_CASE("data of other programs within an entity are passed over") {
  CHECK(segment_of(
            entity("0 LINE, 102 {OTHERS, 330 1F, 102 }, 100 AcDbLine, 10 0, 20 0, 11 1, 21 0, 1001 X, 1010 "
                   "9, 1040 nan"))
            .length() == within(1, 0));
  CHECK(segment_of(entity(kLine + ", 101 Embedded Object, 10 nan")).length() == within(1, 0));
}

TEST_CASE("a file that asks for very much is refused before it takes time or memory") {
  const auto inserts = [](const std::string& more) {
    return drawing(section("BLOCKS", "0 BLOCK, 2 E, 0 ENDBLK, 0 BLOCK, 2 L, " + kLine + ", 0 ENDBLK"),
                   "0 INSERT, 10 0, 20 0, " + more);
  };
  const std::string too_many =
      "more than 200 000 lines, arcs, curve pieces and inserted blocks; save only the curves of the profile";
  CHECK(holds(refusal(inserts("2 L, 70 1000000000, 71 1000000000")), too_many));
  CHECK(holds(refusal(inserts("2 E, 70 1000000000, 71 1000000000")), too_many));
  CHECK(entity("0 LWPOLYLINE, 90 1000000000, 10 0, 20 0, 10 1, 20 0").pieces.size() == 1);
  CHECK(holds(entity_refusal("0 SPLINE, 71 1000000000, 72 1000000000, 73 1000000000, 10 0, 20 0"), "degree"));
  // Thirty blocks that each insert the one before twice: 2^30 lines.
  std::string doubling = "0 BLOCK, 2 B0, " + kLine + ", 0 ENDBLK";
  for (int i = 1; i <= 30; ++i) {
    const std::string insert = ", 0 INSERT, 2 B" + std::to_string(i - 1) + ", 10 0, 20 0";
    doubling += ", 0 BLOCK, 2 B" + std::to_string(i) + insert + insert + ", 0 ENDBLK";
  }
  CHECK(holds(refusal(drawing(section("BLOCKS", doubling), "0 INSERT, 2 B30, 10 0, 20 0")), too_many));
}
