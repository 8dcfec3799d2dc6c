#include "exporters/html/told.hpp"

#include <catch2/catch.hpp>

#include "shared/error.hpp"

using namespace lamwright;
using namespace lamwright::html;

namespace {

const Json& figures() {
  static const Json json{{"width", 373.067309998},
                         {"nothing", nullptr},
                         {"share", 0.017981299},
                         {"minutes", {{"open", 8}, {"pressing", 240}, {"short", 12.009}}},
                         {"name", "<x>"},
                         {"grain", {0, 90, 30}},
                         {"findings", {{{"verdict", "pass"}}, {{"verdict", "fail"}}, {{"verdict", "pass"}}}}};
  return json;
}

const Told kTold(figures(), LengthUnit::mm);

std::string shown(const Markup& markup) {
  const std::string& text = markup.text();
  const std::size_t from = text.find('>') + 1;
  return text.substr(from, text.find("</data>") - from);
}

}  // namespace

TEST_CASE("A figure carries the summary's number and where it stands there") {
  CHECK(kTold.length("/width").text() ==
        "<data value=\"373.067309998\" data-of=\"/width\" data-as=\"length\">373.1 mm</data>");
}

TEST_CASE("Each kind of figure has its own words") {
  CHECK(shown(kTold.share("/share")) == "1.8 %");
  CHECK(shown(kTold.minutes("/minutes/open")) == "8 min");
  CHECK(shown(kTold.minutes("/minutes/short")) == "12 min");
  CHECK(shown(kTold.minutes("/minutes/pressing")) == "4 h");
  CHECK(shown(kTold.grain("/grain/0")) == "along");
  CHECK(shown(kTold.grain("/grain/1")) == "across");
  CHECK(shown(kTold.grain("/grain/2")) == "30°");
  CHECK(shown(kTold.entries("/findings")) == "3");
  CHECK(shown(kTold.verdicts("pass")) == "2");
  CHECK(shown(kTold.verdicts("caution")) == "0");
  CHECK(shown(kTold.quantity("/share", "kg")) == "0.018 kg");
}

TEST_CASE("What is not known is a dash, what does not exist is the program's own fault") {
  CHECK(kTold.length("/nothing").text() == "–");
  CHECK_FALSE(kTold.has("/nothing"));
  CHECK_FALSE(kTold.has("/nowhere"));
  CHECK_THROWS_WITH(kTold.length("/nowhere"), Catch::Contains("the summary has no /nowhere"));
}

TEST_CASE("Inches reach the figures but not the number behind them") {
  const Told inches(figures(), LengthUnit::inch);
  CHECK(shown(inches.length("/width")) == "14 11/16 in");
  CHECK(inches.length("/width").text().find("value=\"373.067309998\"") != std::string::npos);
}
