// The panel as released over the panel as pressed, as drawn.
#include "exporters/drawing/springback_sheet.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/springback_view.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

std::string crown(const std::string& springback, const std::string& more = "trim = 15") {
  return job_text("width = 300\n" + more + "\nprofile = [{bend = 90, radius = 400}]", birch(8),
                  "[press]\nspringback = " + springback + "\n");
}

std::string unequal(bool mirrored, const std::string& springback) {
  const std::string profile = mirrored ? "{line = 300}, {bend = 60, radius = 250}, {line = 120}"
                                       : "{line = 120}, {bend = 60, radius = 250}, {line = 300}";
  return job_text("width = 300\nprofile = [" + profile + "]", birch(8),
                  "[press]\nspringback = " + springback + "\n");
}

Panel panel_of(const std::string& text) {
  const Evaluation result = evaluated(text);
  if (!result.panel) throw std::runtime_error("no panel: " + only_error(result));
  return *result.panel;
}

std::vector<NamedDrawing> sheets_with(const std::string& text) { return all_sheets_of(evaluated(text)); }

// Alone, without the rest of the set.
Drawing springback_of(const std::string& text) {
  const Evaluation result = evaluated(text);
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  return springback_sheet({*result.plan, "a3", {}, 1}, 1, result.job->press.springback.kind);
}

std::vector<Circle> circles(const Drawing& sheet, double radius) {
  std::vector<Circle> out;
  for (const Item& item : sheet.items())
    if (const auto* circle = std::get_if<Circle>(&item.shape); circle && circle->radius == radius)
      out.push_back(*circle);
  return out;
}

// The wide or the narrow line within the detail's circle.
Path line_in(const Drawing& sheet, const Circle& circle, const char* pen) {
  for (const Item& item : sheet.items()) {
    const auto* path = std::get_if<Path>(&item.shape);
    if (!path || path->closed || sheet.pens()[item.pen].name != pen) continue;
    const auto inside = [&](const Segment& s) {
      return (s.from - circle.centre).norm() < circle.radius + 1e-6 &&
             (s.to - circle.centre).norm() < circle.radius + 1e-6;
    };
    if (std::all_of(path->segments.begin(), path->segments.end(), inside)) return *path;
  }
  throw std::runtime_error("no such line in the detail");
}

}  // namespace

TEST_CASE("a crown opens about its middle by what geometry says") {
  // 8 plies of 1.5: neutral line 6 above the inner face, radius 406 released and 406 * 0.95 = 385.7 pressed,
  // so the inner face is pressed at 379.7; 90 degrees at the neutral line become 90 / 0.95.
  const LaidOver lines(panel_of(crown("0.05")));
  const double half = radians(45), pressed_half = half / 0.95;
  const Vec2 released{400 * std::sin(half), -400 * (1 - std::cos(half))};
  const Vec2 pressed{379.7 * std::sin(pressed_half), -379.7 * (1 - std::cos(pressed_half))};
  CHECK(lines.right().distance() == test::within((released - pressed).norm(), 1e-6));
  CHECK(lines.left().distance() == test::within(lines.right().distance(), 1e-6));
  CHECK(lines.farthest().distance() == test::within(lines.right().distance(), 1e-6));
  CHECK(same(lines.right().released - lines.datum().point, released, 1e-6));
  CHECK(same(lines.right().pressed - lines.datum().point, pressed, 1e-6));
  CHECK(rise(lines.released()) == test::within(400 * (1 - std::cos(half)), 1e-6));
  CHECK(chord(lines.pressed()) == test::within(2 * pressed.x(), 1e-6));
}

TEST_CASE("both lines share point and direction at the middle of the girth, whatever face is described") {
  int seen = 0;
  for (const char* face : {"inner", "outer", "centre"})
    for (const char* springback : {"0.08", "-0.04"}) {
      const Panel panel = panel_of(crown(springback, std::string("trim = 20\nface = \"") + face + "\""));
      const LaidOver lines(panel);
      CAPTURE(face, springback);
      const double middle = panel.pressed.girth() / 2 - panel.trim;
      const Moved datum = lines.at(middle);
      CHECK(datum.distance() == test::within(0, kRounding));
      CHECK(same(datum.pressed, lines.datum().point));
      CHECK(lines.released().nearest(lines.datum().point).distance == test::within(0, kRounding));
      CHECK(lines.released().heading(lines.released().nearest(lines.datum().point).station) ==
            test::within(lines.datum().heading, kRounding));
      CHECK(lines.released().girth() == test::within(panel.released.girth(), kRounding));
      CHECK(lines.left().distance() > 1);
      ++seen;
    }
  CHECK(seen == 6);
}

TEST_CASE("the sheet is left out where release changes nothing") {
  const auto none = sheets_with(crown("\"none\""));
  CHECK(find_sheet(none, "springback") == nullptr);
  const auto lost = sheets_with(crown("0.05"));
  CHECK(find_sheet(lost, "springback") != nullptr);
  int flat = 0, curved = 0;
  for (const Demo& demo : demo_jobs()) {
    const bool straight = demo.result.panel->released.straight();
    CAPTURE(demo.name);
    CHECK((find_sheet(demo.sheets, "springback") == nullptr) == straight);
    ++(straight ? flat : curved);
  }
  CHECK(flat >= 1);
  CHECK(curved >= 10);
}

TEST_CASE("no text of a springback sheet lies over another text, under a line or outside the frame") {
  long seen = 0;
  int drawn = 0;
  const auto look = [&](const std::string& name, const Drawing* sheet) {
    if (!sheet) return;
    ++drawn;
    for (const std::string& fault : faults(*sheet, seen)) FAIL_CHECK(name << ": " << fault);
  };
  for (const char* paper : {"a3", "a4"})
    for (const Demo& demo : demo_jobs(paper))
      look(demo.name + ", " + paper, find_sheet(demo.sheets, "springback"));
  for (const char* springback : {"0.01", "0.05", "0.15", "-0.05", "{form_radius = 400, part_radius = 430}"})
    for (const std::string& text :
         {crown(springback), unequal(false, springback), unequal(true, springback)}) {
      const Drawing sheet = springback_of(text);
      look(springback, &sheet);
    }
  CHECK(drawn >= 35);
  CHECK(seen > 10000);
}

TEST_CASE("a distance that shows is dimensioned on the lines themselves") {
  const Drawing sheet = springback_of(unequal(false, "0.08"));
  const LaidOver lines(panel_of(unequal(false, "0.08")));
  CHECK(circles(sheet, kDetailRadius).empty());
  // In the dimension and in the table.
  CHECK(count_of(sheet, number(lines.left().distance(), 2)) >= 2);
  CHECK(count_of(sheet, number(lines.right().distance(), 2)) >= 2);
}

TEST_CASE("a distance under 2 on paper is shown in a detail at its true enlarged size") {
  int details = 0;
  for (const Demo& demo : demo_jobs()) {
    const Drawing* sheet = find_sheet(demo.sheets, "springback");
    if (!sheet) continue;
    const LaidOver lines(*demo.result.panel);
    CAPTURE(demo.name);
    for (const Scale& scale : scales()) {
      if (count_of(*sheet, scale.text) == 0) continue;
      const auto detail = detail_for(lines, scale.factor);
      CHECK(detail.has_value() == (lines.widest_end().distance() * scale.factor < kLeastShown));
      if (!detail) continue;
      ++details;
      CHECK(says(*sheet, "A (" + detail->scale.text + ")"));
      CHECK(count_of(*sheet, "A") == 1);
      const auto drawn = circles(*sheet, kDetailRadius);
      REQUIRE(drawn.size() == 1);
      const Path wide = line_in(*sheet, drawn[0], pens::kPart),
                 narrow = line_in(*sheet, drawn[0], pens::kMark);
      const bool left = lines.left_moves_more();
      const Vec2 a = left ? wide.segments.front().from : wide.segments.back().to;
      const Vec2 b = left ? narrow.segments.front().from : narrow.segments.back().to;
      CHECK((a - b).norm() == test::within(lines.widest_end().distance() * detail->scale.factor, 1e-6));
      // Their other ends lie on the circle.
      const Vec2 far = left ? wide.segments.back().to : wide.segments.front().from;
      CHECK((far - drawn[0].centre).norm() == test::within(kDetailRadius, 1e-5));
      CHECK((far - a).norm() > kDetailRadius);  // more of the panel is shown than of what lies beyond its end
    }
  }
  CHECK(details >= 8);
}

TEST_CASE("a mirrored job moves its other end") {
  const LaidOver one(panel_of(unequal(false, "0.06"))), other(panel_of(unequal(true, "0.06")));
  CHECK(one.left().distance() == test::within(other.right().distance(), 1e-6));
  CHECK(one.right().distance() == test::within(other.left().distance(), 1e-6));
  CHECK(std::abs(one.left().distance() - one.right().distance()) > 0.1);
  CHECK(one.left_moves_more() != other.left_moves_more());
}

TEST_CASE("the share is called an estimate unless it was measured") {
  const std::string estimate = "The share is an estimate";
  CHECK(says(springback_of(crown("\"computed\"")), estimate));
  const Drawing measured = springback_of(crown("{form_radius = 400, part_radius = 430}"));
  CHECK_FALSE(says(measured, estimate));
  CHECK(says(measured, "The share was measured on a test piece."));
  CHECK(says(measured, "test piece pressed at 400, released at 430"));
  const Drawing given = springback_of(crown("0.05"));
  CHECK_FALSE(says(given, estimate));
  CHECK(says(given, "lost on release: 5 % (share given in the job)"));
  CHECK(says(springback_of(crown("-0.02")), "gained on release: 2 %"));
}

TEST_CASE("tables give radius and turn of every run, chord and rise, as released and as pressed") {
  // Inner face: 250 released; neutral line 6 further out, pressed at 256 * 0.9 - 6 = 224.4 with 60 / 0.9
  // degrees.
  const LaidOver lines(panel_of(unequal(false, "0.1")));
  const Table runs = released_runs_table(lines);
  REQUIRE(runs.rows.size() == 3);
  CHECK(runs.rows[0] == std::vector<std::string>{"line 1", "120 long", "120 long"});
  CHECK(runs.rows[1] == std::vector<std::string>{"bend 1", "250 / 60°", "224.4 / 66.67°"});
  CHECK(runs.rows[2] == std::vector<std::string>{"line 2", "300 long", "300 long"});
  const Table shape = shape_table(lines);
  REQUIRE(shape.rows.size() == 2);
  CHECK(shape.rows[0] == std::vector<std::string>{"released", number(chord(lines.released()), 2),
                                                  number(rise(lines.released()), 2), "60°"});
  CHECK(shape.rows[1].back() == "66.67°");
  CHECK(apart_table(lines).rows.size() == 1);
}

TEST_CASE("a hostile title stays one text of the springback sheet") {
  const std::string hostile = "</svg>\"'../ä板 & <script>";
  Evaluation result = evaluated(crown("0.05"));
  REQUIRE(result.plan);
  result.plan->title = hostile;
  const auto set = all_sheets_of(result);
  const Drawing* sheet = find_sheet(set, "springback");
  REQUIRE(sheet);
  CHECK(count_of(*sheet, hostile) == 1);
}
