#include "exporters/html/image.hpp"

#include <catch2/catch.hpp>

using namespace lamwright;
using namespace lamwright::html;

TEST_CASE("Base64 as in the test vectors of RFC 4648, section 10") {
  CHECK(base64("") == "");
  CHECK(base64("f") == "Zg==");
  CHECK(base64("fo") == "Zm8=");
  CHECK(base64("foo") == "Zm9v");
  CHECK(base64("foob") == "Zm9vYg==");
  CHECK(base64("fooba") == "Zm9vYmE=");
  CHECK(base64("foobar") == "Zm9vYmFy");
  CHECK(base64("\xff\xfe") == "//4=");
}

TEST_CASE("A drawing stands in the page at its true size, in CSS pixels, and says what it is") {
  const drawing::Drawing sheet("x", {180, 80}, {{"LINE", 0.25, {}, "#000000"}});
  const std::string text = image(sheet, "A \"map\"", "plot").text();
  // 180 mm at 96 to the inch are 680.3 pixels, 80 mm 302.4.
  CHECK(text.find("width=\"680\" height=\"302\"") != std::string::npos);
  CHECK(text.find("alt=\"A &quot;map&quot;\"") != std::string::npos);
  CHECK(text.find("src=\"data:image/svg+xml;base64,PD94bWw") != std::string::npos);  // "<?xml"
}
