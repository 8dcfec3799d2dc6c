#include "exporters/html/markup.hpp"

#include <catch2/catch.hpp>

using namespace lamwright::html;

TEST_CASE("Plain text cannot become tags, attributes or entities") {
  CHECK(Markup("<b> & \"x\" 'y'").text() == "&lt;b&gt; &amp; &quot;x&quot; &#39;y&#39;");
  CHECK(Markup("&lt;").text() == "&amp;lt;");
  CHECK(Markup(std::string("a\nb\0c\x7f", 6)).text() == "a b c ");
  CHECK(Markup("Ärmel, 木").text() == "Ärmel, 木");
}

TEST_CASE("Words are escaped one by one and markup among them stays") {
  const Markup bold = element("b", "2 < 3");
  CHECK(words("<", bold, std::string(">")).text() == "&lt;<b>2 &lt; 3</b>&gt;");
  CHECK(words().empty());
}

TEST_CASE("An element carries its attributes as given") {
  CHECK(element("p", "x", "class=\"wide\"").text() == "<p class=\"wide\">x</p>");
  CHECK(element("p", {}).text() == "<p></p>");
}
