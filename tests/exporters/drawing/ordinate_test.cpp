#include "exporters/drawing/ordinate.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

TEST_CASE("positions far enough apart stay where they are") {
  const std::vector<double> at = spread({0, 10, 20}, 4);
  CHECK(at[0] == Approx(0).margin(1e-12));
  CHECK(at[1] == Approx(10));
  CHECK(at[2] == Approx(20));
}

TEST_CASE("crowded positions move apart about their own middle") {
  // Three at 10 with 4 between: 6, 10, 14 has the least sum of squares.
  const std::vector<double> at = spread({10, 10, 10, 40}, 4);
  CHECK(at[0] == Approx(6));
  CHECK(at[1] == Approx(10));
  CHECK(at[2] == Approx(14));
  CHECK(at[3] == Approx(40));
}

TEST_CASE("numbers of crowded ordinates do not touch and stay in order") {
  Drawing drawing("row", {200, 100}, sheet_pens());
  OrdinateRow row{{}, 54, 59, 0, 200};
  for (const double x : {50.0, 51.0, 52.5, 80.0, 50.5, 0.5})
    row.ordinates.push_back({{x, 50}, size_text(x), x == 0.5});
  ordinates(drawing, row);
  std::vector<Text> texts;
  for (const Item& item : drawing.items())
    if (const auto* text = std::get_if<Text>(&item.shape)) texts.push_back(*text);
  REQUIRE(texts.size() == 6);
  for (std::size_t i = 1; i < texts.size(); ++i) {
    CHECK(texts[i].at.x() > texts[i - 1].at.x());
    CHECK_FALSE(overlap(text_box(texts[i - 1]), text_box(texts[i])));
  }
  CHECK(texts.front().text == "0.5");
  CHECK(texts[1].text == "50");
  CHECK(texts.back().text == "80");
}
