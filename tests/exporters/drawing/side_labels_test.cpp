#include "exporters/drawing/side_labels.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/pens.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/touched_labels.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

std::vector<double> rows(int count, double apart) {
  std::vector<double> out;
  for (int i = 0; i < count; ++i) out.push_back(40 + i * apart);
  return out;
}

SideLabels numbered(const std::vector<double>& at, bool left) {
  SideLabels out{at, {}, 150, left};
  for (std::size_t i = 0; i < at.size(); ++i) out.texts.push_back(std::to_string(1000 + i));
  return out;
}

Drawing drawn(const SideLabels& labels) {
  Drawing sheet("labels", {300, 720}, sheet_pens());
  add_labels(sheet, labels);
  return sheet;
}

}  // namespace

TEST_CASE("labels farther apart than texts are high stand in one column, each beside its thing") {
  const auto wanted = rows(20, 4.5);
  const LabelColumns labels = label_columns(wanted);
  CHECK(labels.columns == 1);
  CHECK(labels.every == 1);
  CHECK(labels.at == wanted);
}

TEST_CASE("labels closer than that stand in two columns by turns, none left out") {
  const LabelColumns labels = label_columns(rows(60, 2.1));
  CHECK(labels.columns == 2);
  CHECK(labels.every == 1);
  CHECK(labels.at.size() == 60);
}

TEST_CASE("labels that would have to move too far are left out evenly") {
  // 300 at 0.5: every fourth is 2.0 from the next, 75 texts 2.1 apart need 155.4, their things take 148: they
  // move 3.7, less than 4. Every third would move (99 x 2.1 - 99 x 1.5) / 2 = 29.7.
  const LabelColumns labels = label_columns(rows(300, 0.5));
  CHECK(labels.every == 4);
  CHECK(labels.at.size() == 75);
}

TEST_CASE("labels lie on no line and on no other label, on both sides and at any distance") {
  long seen = 0;
  int sheets = 0;
  for (const double apart : {9.0, 4.5, 3.3, 2.6, 2.0, 1.65, 1.2, 0.4})
    for (const bool left : {false, true}) {
      CAPTURE(apart, left);
      CHECK(faults(drawn(numbered(rows(70, apart), left)), seen).empty());
      ++sheets;
    }
  CHECK(sheets == 16);
  CHECK(seen > 10000);
}

TEST_CASE("no line of a label comes near another label, or its own one") {
  std::size_t seen = 0;
  for (const double apart : {9.0, 4.5, 3.3, 2.6, 2.1, 1.65, 0.4})
    for (const bool left : {false, true}) {
      CAPTURE(apart, left);
      CHECK(touched_labels(drawn(numbered(rows(70, apart), left)), seen).empty());
    }
  CHECK(seen > 10000);
}

TEST_CASE("labels reach as far as is said, to their own side") {
  for (const double apart : {4.5, 2.1}) {
    const auto wanted = rows(30, apart);
    const SideLabels right = numbered(wanted, false), left = numbered(wanted, true);
    const double reach = labels_reach(label_columns(wanted), longest_text(right.texts));
    double last = 0, first = 300;
    for (const Text& text : texts(drawn(right))) last = std::max(last, text_box(text).high.x());
    for (const Text& text : texts(drawn(left))) first = std::min(first, text_box(text).low.x());
    CHECK(last == Approx(150 + reach).margin(1e-9));
    CHECK(first == Approx(150 - reach).margin(1e-9));
  }
}
