#include "exporters/html/table.hpp"

#include <catch2/catch.hpp>

using namespace lamwright::html;

TEST_CASE("A table has a head and a cell for every column, figures flush right") {
  CHECK(table({{"part"}, {"count", true}}, {{"former", "8"}}).text() ==
        "<div class=\"wide\"><table><thead><tr><th>part</th><th class=\"figures\">count</th></tr></thead>"
        "<tbody><tr><td>former</td><td class=\"figures\">8</td></tr></tbody></table></div>");
}

TEST_CASE("Without rows there is no table; a short row is the program's own fault") {
  CHECK(table({{"part"}}, {}).empty());
  CHECK_THROWS_WITH(table({{"part"}, {"count"}}, {{"former"}}), Catch::Contains("as many cells"));
}
