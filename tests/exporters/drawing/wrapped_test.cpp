#include "exporters/drawing/wrapped.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/text.hpp"

using namespace lamwright::drawing;

TEST_CASE("a sentence is broken at spaces into lines no longer than asked for, its words all kept") {
  const std::string sentence = "Developed, seen from above, left end of the curve below.";
  int cases = 0;
  for (const double width : {25.0, 35.0, 60.0, 200.0}) {
    std::string joined;
    for (const std::string& line : wrapped(sentence, width, kSmallHeight)) {
      CHECK(text_width(line, kSmallHeight) <= width);
      joined += (joined.empty() ? "" : " ") + line;
    }
    CHECK(joined == sentence);
    ++cases;
  }
  CHECK(cases == 4);
  CHECK(wrapped(sentence, 200, kSmallHeight).size() == 1);
}

TEST_CASE("a word longer than a line has one of its own, an empty text has no line") {
  CHECK(wrapped("a counterbore b", 5, kSmallHeight) == std::vector<std::string>{"a", "counterbore", "b"});
  CHECK(wrapped("", 50, kSmallHeight).empty());
}
