#include "kernel/reading/svg/markup.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;

namespace {

std::string fault_in(const std::string& text) {
  return message_of([&] { svg_reading::check_markup(text, "shop.svg"); });
}

}  // namespace

TEST_CASE("Bytes that are no text are refused") {
  CHECK(fault_in("<svg>\xFF</svg>") ==
        "shop.svg: is no text in UTF-8 (byte 6); save it as plain, unpacked SVG in UTF-8");
  CHECK(fault_in(std::string("<svg>\0</svg>", 12)) ==
        "shop.svg: holds a zero byte (byte 6); save it as plain SVG in UTF-8");
  CHECK(holds(fault_in("\x1F\x8B\x08"), "unpacked SVG"));
  CHECK(fault_in(std::string((64u << 20) + 1, ' ')) ==
        "shop.svg: is longer than 64 MB; save a drawing that holds the panel's line only");
}

TEST_CASE("What would keep a parser busy is refused with its line") {
  std::string many = "<svg>\n<g";
  for (int i = 0; i < 201; ++i) many += " a" + std::to_string(i) + "='<>&amp;'";
  CHECK(fault_in(many + "/></svg>") ==
        "shop.svg:2: a tag of more than 200 attributes; save the drawing as plain SVG");
  CHECK(fault_in("<svg>\n\n<g id=\"&#x123456789012;\"/></svg>") ==
        "shop.svg:3: a reference to a character has no end; write it as &#10; or &#xA;");
  CHECK(holds(fault_in("<svg>&#"), "has no end"));
  std::string elements;
  for (int i = 0; i < 2'000'001; ++i) elements += "<a>";
  CHECK(fault_in(elements) ==
        "shop.svg:1: here the drawing passes 2000000 elements and attributes; save a drawing that holds the "
        "panel's "
        "line only");
}

TEST_CASE("Comments, data and the prologue are no markup") {
  int seen = 0;
  for (const char* text :
       {"<svg><!-- &# ' \" < --></svg>", "<svg><![CDATA[ &# ' < > ]]></svg>",
        "<?xml version=\"1.0\" a='&#'?><svg/>", "<!DOCTYPE svg><svg a='&#65;' b=\"'&#x41;'\"/>", "<svg",
        "<svg a='", "<!--", "<", "", "&"}) {
    CAPTURE(text);
    CHECK(fault_in(text).empty());
    ++seen;
  }
  CHECK(seen == 10);
}
