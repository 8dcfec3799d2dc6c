// The sheet of runs through measured points: what it tells of points, accuracy and shape.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/level_curve.hpp"
#include "exporters/drawing/profile_sheets.hpp"
#include "exporters/drawing/run_rows.hpp"
#include "tests/exporters/drawing/circles.hpp"
#include "tests/exporters/drawing/fitted.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

// Points that were kept within the rings of the others.
std::size_t sound_in_rings(const Drawing& sheet) {
  std::vector<Circle> points, rings;
  for (const Item& item : sheet.items())
    if (const auto* circle = std::get_if<Circle>(&item.shape)) {
      if (sheet.pens()[item.pen].name == pens::kMark && circle->radius == 0.6) points.push_back(*circle);
      if (sheet.pens()[item.pen].name == pens::kLoop) rings.push_back(*circle);
    }
  std::size_t count = 0;
  for (const Circle& point : points) {
    const auto distance = [&](const Circle& ring) { return (ring.centre - point.centre).norm(); };
    const bool suspect =
        std::any_of(rings.begin(), rings.end(), [&](const Circle& ring) { return distance(ring) < 1e-9; });
    count += !suspect && std::any_of(rings.begin(), rings.end(),
                                     [&](const Circle& ring) { return distance(ring) < ring.radius; });
  }
  return count;
}

// All texts in one, so that a sentence is whole that takes several lines.
std::string running(const Drawing& sheet) {
  std::string out;
  for (const Text& text : texts(sheet)) out += text.text + " ";
  return out;
}

}  // namespace

TEST_CASE("every point that looks wrong is circled in the view and in the graph, and named") {
  int sheets = 0;
  for (const std::size_t count : {41, 2000}) {
    FittedSpec spec{count, 0.2, 0.5};
    for (const std::size_t i : {3, 4, 11, 25, 40}) spec.suspects.push_back({i, i % 2 == 0 ? 1.5 : -0.4});
    const ProfileReading reading = fitted(named_profiles()[3].profile, spec);
    const Drawing sheet = fit_sheet(reading, {"Front", "a4"});
    CHECK(circles(sheet, pens::kLoop, 1.6) == 2 * 5 + 1);  // and in the legend
    for (const std::size_t i : reading.fit->suspects) {
      const std::string name = std::to_string(i + 1);
      CAPTURE(name);
      CHECK(count_of(sheet, name) + count_of(sheet, name + ": 1.5") >= 1);
      CHECK(holds(running(sheet), " " + name + " ("));
    }
    ++sheets;
  }
  CHECK(sheets == 2);
}

TEST_CASE("a point that looks wrong is told once, however the fit's own notes tell it") {
  ProfileReading reading = fitted(named_profiles()[3].profile, {41, 0.1, 0.5, {{20, 6}}});
  FitSpec measured;
  measured.points = reading.points;
  reading.fit = fit(measured);
  reading.profile = reading.fit->profile;
  REQUIRE(reading.fit->suspects == std::vector<std::size_t>{20});
  const auto& notes = reading.fit->notes;
  REQUIRE(std::any_of(notes.begin(), notes.end(), [](const auto& n) { return n.starts_with("point 21 "); }));
  const Drawing sheet = fit_sheet(reading, {"Front", "a4"});
  int told = 0, named = 0;
  for (const Text& text : texts(sheet)) {
    told += holds(text.text, "measure");
    named += holds(text.text, "point 21");
  }
  CHECK(told == 1 + 2);   // a sentence; besides the title and the legend, which have the word too
  CHECK(named == 1 + 1);  // the sentence, and at the ring
}

TEST_CASE("rings are explained, and none holds a point that was kept") {
  int seen = 0;
  for (const std::size_t count : {41, 300, 2000})
    for (const bool wrong : {false, true}) {
      FittedSpec spec{count, 0.2, 0.5};
      if (wrong) spec.suspects = {{3, 0.9}, {25, -1.5}, {26, 2}};
      // With inflections, the marks of which would be rings too.
      const ProfileReading reading = fitted(named_profiles()[8].profile, spec);
      REQUIRE(reading.profile.inflections().size() == 1);
      const Drawing sheet = fit_sheet(reading, {"Front", "a4"});
      CAPTURE(count, wrong);
      CHECK(count_of(sheet, "ringed: left out, looks wrong") == (wrong ? 1 : 0));
      CHECK(circles(sheet, pens::kMark, 1.3) == 0);
      CHECK(circles(sheet, pens::kLoop, 1.6) == (wrong ? 2 * 3 + 1 : 0));
      CHECK(sound_in_rings(sheet) == 0);
      ++seen;
    }
  CHECK(seen == 6);
}

TEST_CASE("where not every point that looks wrong is ringed the legend tells which are") {
  FittedSpec spec{2000, 0.2, 0.5};
  for (std::size_t i = 0; i < 60; ++i) spec.suspects.push_back({30 * i, 1 + 0.01 * double(i)});
  const Drawing sheet = fit_sheet(fitted(named_profiles()[3].profile, spec), {"Front", "a4"});
  CHECK(count_of(sheet, "ringed: left out, looks wrong (the 50 worst)") == 1);
}

TEST_CASE("a fit's sheet has girth, chord and rise, and tells how its view lies") {
  std::size_t seen = 0;
  auto profiles = named_profiles();
  profiles.push_back(
      {"ends that meet", from_origin({bend(180, 300), straight(90), bend(180, 300), straight(90)})});
  for (const NamedProfile& named : profiles) {
    CAPTURE(named.name);
    const LevelCurve curve(named.profile);
    const Drawing sheet = fit_sheet(fitted(named.profile, {}), {"", "a4"});
    CHECK(says(sheet, "outer side up, chord level"));
    for (const char* head : {"girth", "chord", "rise"}) CHECK(count_of(sheet, head) == 1);
    CHECK(count_of(sheet, size_text(curve.profile().girth())) >= 1);
    CHECK(count_of(sheet, curve.open() ? size_text(curve.chord()) : "-") >= 1);
    CHECK(count_of(sheet, curve.open() ? size_text(curve.rise()) : "-") >= 1);
    ++seen;
  }
  CHECK(seen == kNamedProfiles + 1);
}

TEST_CASE("greatest distance and root mean square on a fit's sheet leave out what looks wrong") {
  ProfileReading reading = fitted(named_profiles()[3].profile, {4, 0, 0.5});
  reading.fit->residuals = {0.3, -7.25, -0.4, 0};
  const Drawing all = fit_sheet(reading, {"", "a4"});
  CHECK(count_of(all, "greatest") == 1);
  CHECK(count_of(all, "7.25") == 1);
  CHECK(count_of(all, "3.634") == 1);  // sqrt((0.09 + 52.5625 + 0.16) / 4)
  reading.fit->suspects = {1};
  const Drawing kept = fit_sheet(reading, {"", "a4"});
  CHECK(count_of(kept, "greatest (of those kept)") == 1);
  CHECK(count_of(kept, "greatest") == 0);
  CHECK(count_of(kept, "0.4") == 1);
  CHECK(count_of(kept, "0.289") == 1);  // sqrt((0.09 + 0.16) / 3)
}

TEST_CASE("a deviation of which nothing is known is not given as a small one") {
  // One bend: where it begins, its heading and curvature are three unknowns; its length is where points end.
  const Profile arc = from_origin({bend(60, 300)});
  const auto cells = [&](std::size_t points, double noise, RunAccuracy accuracy) {
    ProfileReading reading = fitted(arc, {points, 0, 0.5});
    reading.fit->noise = noise;
    reading.fit->accuracy = {accuracy};
    const auto row = accuracy_table(*reading.fit).rows.at(0);
    return row[2] + "; " + row[3];
  };
  CHECK(cells(41, 0.1, {0.2, 0.4}) == "314.2 ± 0.2; 300 ± 0.4");
  CHECK(cells(41, 0.1, {INFINITY, 0.4}) == "314.2 ± not known; 300 ± 0.4");
  CHECK(cells(41, 0.1, {NAN, INFINITY}) == "314.2 ± not known; 300 ± not known");
  CHECK(cells(41, 0.1, {0, 0}) == "314.2 ± not known; 300 ± not known");
  CHECK(cells(41, 0, {0, 0}) == "314.2 ± 0.01; 300 ± 0.01");
  CHECK(cells(4, 0, {0, 0}) == "314.2 ± 0.01; 300 ± 0.01");
  CHECK(cells(3, 0, {0, 0}) == "314.2 ± not known; 300 ± not known");
  CHECK(cells(41, 0.1, {500, 400}) == "314.2, hardly known; 300, hardly known");
}

TEST_CASE("the table gives lengths and radii with their standard deviation") {
  ProfileReading reading = fitted(named_profiles()[3].profile, {});
  reading.fit->accuracy = {{0.31, INFINITY}, {0.042, 1.26}, {0.004, INFINITY}, {500, 2000}};
  const Table table = accuracy_table(*reading.fit);
  REQUIRE(table.rows.size() == 4);
  CHECK(table.rows[0] == std::vector<std::string>{"1", "line 1", "120 ± 0.3", "-", "-"});
  CHECK(table.rows[1] == std::vector<std::string>{"2", "bend 1", "464.3 ± 0.04", "380 ± 1.3", "70°"});
  CHECK(table.rows[2] == std::vector<std::string>{"3", "line 2", "60 ± 0.01", "-", "-"});
  CHECK(table.rows[3] ==
        std::vector<std::string>{"4", "bend 2", "392.7, hardly known", "900, hardly known", "25°"});
  const Drawing sheet = fit_sheet(reading, {"Front", "a4"});
  std::size_t seen = 0;
  for (const auto& row : table.rows)
    for (const std::string& cell : row) {
      CHECK(count_of(sheet, cell) >= 1);
      ++seen;
    }
  CHECK(seen == 20);
}

TEST_CASE("a fit's sheet needs a fit") {
  const ProfileReading reading{from_origin({straight(900)}), {}, {}, {}, {}};
  REQUIRE_ERROR(ErrorKind::internal, fit_sheet(reading, {"Front"}));
}
