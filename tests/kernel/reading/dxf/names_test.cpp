#include "kernel/reading/dxf/names.hpp"

#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;
using dxf_reading::decoded;
using dxf_reading::shown;

TEST_CASE("names in a DXF file are UTF-8 where they can be, else Latin-1") {
  CHECK(decoded("T\xC3\xBCr") == "Tür");
  CHECK(decoded("T\xFCr") == "Tür");
  CHECK(decoded("\xE6\x9D\xBF") == "板");
  CHECK(decoded("a\tb\x7F") == "a?b?");
}

// U+1F6E0 is D83D DEE0 in UTF-16 (Unicode standard, table 3-5).
TEST_CASE("an escape in a DXF name stands for its code point") {
  CHECK(decoded("T\\U+00FCr") == "Tür");
  CHECK(decoded("\\U+677F\\U+677f") == "板板");
  CHECK(decoded("\\U+D83D\\U+DEE0") == "\xF0\x9F\x9B\xA0");
  CHECK(decoded("\\U+D83D!") == "\xEF\xBF\xBD!");
  CHECK(decoded("\\U+00F") == "\\U+00F");
  CHECK(decoded("\\U+00GH") == "\\U+00GH");
}

TEST_CASE("messages show forty characters of a name") {
  CHECK(shown(std::string(40, 'a')) == std::string(40, 'a'));
  CHECK(shown(std::string(41, 'a')) == std::string(40, 'a') + "...");
}

TEST_CASE("curves tell the name of their layer as people read it") {
  CHECK(entity("0 LINE, 8 T\xFCr, 10 0, 20 0, 11 1, 21 0").layers == std::vector<std::string>{"Tür"});
  CHECK(entity("0 LINE, 10 0, 20 0, 11 1, 21 0").layers == std::vector<std::string>{"0"});
}

TEST_CASE("a name longer than the format allows is refused") {
  const std::string line = ", 10 0, 20 0, 11 1, 21 0";
  CHECK(entity("0 LINE, 8 " + std::string(255, 'a') + line).layers.front().size() == 255);
  CHECK(holds(entity_refusal("0 LINE, 8 " + std::string(256, 'a') + line),
              "part.dxf:8: a name of more than 255 characters"));
}
