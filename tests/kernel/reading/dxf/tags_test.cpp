#include "kernel/reading/dxf/tags.hpp"

#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;
using dxf_reading::Tags;

TEST_CASE("lines of a DXF text end with CR, LF or CRLF, the last one also with the text") {
  const std::string name = "a.dxf";
  int seen = 0;
  for (const std::string end : {"\n", "\r", "\r\n"}) {
    const std::string text =
        "  0" + end + "LINE" + end + " 10" + end + "\t1.5 " + end + "1" + end + end + "8" + end + "A";
    Tags tags(text, name);
    const auto first = tags.next(), second = tags.next(), third = tags.next(), fourth = tags.next();
    REQUIRE((first && second && third && fourth));
    CHECK(first->code == 0);
    CHECK(first->value == "LINE");
    CHECK(first->line == 2);
    CHECK(second->value == "1.5");
    CHECK(third->value.empty());
    CHECK(fourth->value == "A");
    CHECK(fourth->line == 8);
    CHECK_FALSE(tags.next().has_value());
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("comments between the pairs of a DXF text are passed over") {
  const std::string name = "a.dxf", text = "999\nmade by hand\n0\nEOF\n";
  Tags tags(text, name);
  const auto tag = tags.next();
  REQUIRE(tag.has_value());
  CHECK(tag->code == 0);
  CHECK(tag->line == 4);
}

TEST_CASE("a text that is no DXF is refused at its first line that does not fit") {
  CHECK(
      refusal("x,y\n1,2\n") ==
      "part.dxf:1: expected a group code (a whole number), found \"x,y\"; this is no DXF text, or a line is "
      "missing above; save the drawing again as text DXF");
  CHECK(refusal("0\nSECTION\n2\nENTITIES\n0\n") ==
        "part.dxf:5: the file ends after group code 0 without its value; it is cut short; save the drawing "
        "again");
  CHECK(holds(refusal("0\nSECTION\n2000\nX\n"), "part.dxf:3: expected a group code"));
  CHECK(refusal("9\n$ACADVER\n") ==
        "part.dxf:2: a DXF text begins with group code 0, this with 9; save the drawing as text DXF");
}
