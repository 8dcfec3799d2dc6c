// The pressure map as drawn.
#include "exporters/drawing/pressure_sheet.hpp"

#include <tinyxml2.h>

#include <algorithm>
#include <catch2/catch.hpp>

#include "exporters/drawing/pressure_graphs.hpp"
#include "exporters/drawing/pressure_key.hpp"
#include "exporters/drawing/view.hpp"
#include "exporters/svg/svg_writer.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

// Points of an area's edge nearer than this to their neighbours' line are left out.
constexpr double kSeen = 0.005;

const std::string kSingleCrown =
    job_text("width = 300\ntrim = 15\nprofile = [{bend = 90, radius = 400}]", birch(7));

std::string unlike_bends(bool mirrored, const std::string& press) {
  const std::string one = "{line = 120}, {bend = 60, radius = 380}", between = "{line = 60}",
                    other = "{bend = 25, radius = 900}";
  const std::string forward = one + ", " + between + ", " + other;
  const std::string back = other + ", " + between + ", {bend = 60, radius = 380}, {line = 120}";
  return job_text("width = 400\nprofile = [" + (mirrored ? back : forward) + "]", birch(7), press);
}

Evaluation mapped(const std::string& text) {
  Evaluation result = evaluated(text);
  if (!result.plan || !result.figures.pressure) throw std::runtime_error("no map: " + only_error(result));
  return result;
}

// Full size, its near left corner at the origin.
PressureView full_size(const Evaluation& result) {
  return {
      *result.plan, *result.figures.pressure, {1, {0, 0}}, PressureSteps(result.figures.pressure->greatest)};
}

std::vector<Area> areas_of(const Drawing& drawing) {
  std::vector<Area> out;
  for (const Item& item : drawing.items())
    if (const auto* area = std::get_if<Area>(&item.shape)) out.push_back(*area);
  return out;
}

std::vector<Area> bands_of(const Evaluation& result) {
  Drawing drawing("bands", {2000, 2000}, sheet_pens());
  add_pressure_bands(drawing, full_size(result));
  return areas_of(drawing);
}

double size_of(const Area& area) {
  double sum = 0;
  for (const Path& loop : area.loops)
    for (const Segment& s : loop.segments) sum += cross(s.from, s.to) / 2;
  return sum;
}

double edge_of(const Area& area) {
  double sum = 0;
  for (const Path& loop : area.loops)
    for (const Segment& s : loop.segments) sum += s.length();
  return sum;
}

Area turned_over(Area area, double girth) {
  for (Path& loop : area.loops)
    for (Segment& s : loop.segments) s = line({girth - s.to.x(), s.to.y()}, {girth - s.from.x(), s.from.y()});
  return area;
}

// Crossings of a ray to the right are odd.
bool covers(const Area& area, const Vec2& p) {
  bool odd = false;
  for (const Path& loop : area.loops)
    for (const Segment& s : loop.segments) {
      if ((s.from.y() > p.y()) == (s.to.y() > p.y())) continue;
      if (s.from.x() + (p.y() - s.from.y()) / (s.to.y() - s.from.y()) * (s.to.x() - s.from.x()) > p.x())
        odd = !odd;
    }
  return odd;
}

double distance_to(const Area& area, const Vec2& p) {
  double least = INFINITY;
  for (const Path& loop : area.loops)
    for (const Segment& s : loop.segments) least = std::min(least, distance(s, p));
  return least;
}

struct MapOnSheet {
  Box2 box;
  double scale = 0;
};

// The outline of the whole face in wide lines, at the scale that the title block gives.
MapOnSheet map_on(const Drawing& sheet, const Evaluation& result) {
  const Vec2 face{result.figures.pressure->girth.back(), result.plan->panel.blank_width()};
  for (const Scale& scale : scales()) {
    if (count_of(sheet, scale.text) == 0) continue;
    for (const Item& item : sheet.items()) {
      const auto* path = std::get_if<Path>(&item.shape);
      if (!path || !path->closed || sheet.pens()[item.pen].name != pens::kPart) continue;
      const Box2 box = box_of_strokes(path->segments);
      if ((box.size() - scale.factor * face).norm() < 1e-6) return {box, scale.factor};
    }
  }
  throw std::runtime_error("no map on the sheet");
}

// A circle at the place, and an upright bar in it for the greatest alone.
bool has_sign(const Drawing& sheet, const Vec2& at, Extreme extreme) {
  const bool circled = std::any_of(sheet.items().begin(), sheet.items().end(), [&](const Item& item) {
    const auto* circle = std::get_if<Circle>(&item.shape);
    return circle && circle->radius == kSignRadius && (circle->centre - at).norm() < 1e-6;
  });
  const auto strokes = drawn_with(sheet, pens::kMark);
  const bool upright = std::any_of(strokes.begin(), strokes.end(), [&](const Segment& s) {
    return s.straight() && s.length() < 2 * kSignRadius && std::abs(s.from.x() - s.to.x()) < 1e-9 &&
           (s.point(0.5) - at).norm() < 1e-6;
  });
  return circled && upright == (extreme == Extreme::greatest);
}

int lines_at(const Drawing& sheet, const std::string& pen, double y, double length) {
  int count = 0;
  for (const Segment& s : drawn_with(sheet, pen))
    count += std::abs(s.from.y() - y) < 1e-6 && std::abs(s.to.y() - y) < 1e-6 &&
             std::abs(s.length() - length) < 1e-6;
  return count;
}

}  // namespace

TEST_CASE("a crown is grey from trim line to trim line and white beyond") {
  const Evaluation result = mapped(kSingleCrown);
  const auto bands = bands_of(result);
  REQUIRE(bands.size() >= 5);
  // Straps press from where they leave the top caul at one end to where they do at the other, over all of the
  // width; trim that is straight is not pressed.
  const PressPlan& plan = *result.plan;
  const StrapPull pull = *strap_pull(*result.job, plan);
  const double girth = plan.neutral.girth(), over = plan.panel.thickness - plan.panel.neutral_height;
  const double from = offset_station(plan.neutral, std::max(pull.from, 15.0), over);
  const double to = offset_station(plan.neutral, std::min(pull.to, girth - 15), over);
  CHECK(to - from > 600);
  CHECK(size_of(bands.front()) == test::within((to - from) * 330, edge_of(bands.front()) * kSeen));
  CHECK_FALSE(covers(bands.front(), {10, 165}));
  CHECK(covers(bands.front(), {from + 1, 165}));
}

TEST_CASE("every station of a map lies in the greys that its pressure has passed") {
  long seen = 0;
  for (const Demo& demo : demo_jobs()) {
    if (!demo.result.figures.pressure) continue;
    const PressureMap& map = *demo.result.figures.pressure;
    const PressureSteps steps(map.greatest);
    const auto bands = bands_of(demo.result);
    REQUIRE(bands.size() == static_cast<std::size_t>(steps.count()));
    CAPTURE(demo.name);
    for (std::size_t i = 0; i < map.girth.size(); ++i)
      for (std::size_t j = 0; j < map.width.size(); ++j)
        for (std::size_t step = 0; step < bands.size(); ++step) {
          const Vec2 at{map.girth[i], map.width[j]};
          if (distance_to(bands[step], at) < 2 * kSeen) continue;  // on an edge: either
          ++seen;
          if (covers(bands[step], at) != (map.value[i][j] > steps.bound(int(step))))
            FAIL_CHECK("girth " << at.x() << ", width " << at.y() << ", step " << step);
        }
  }
  CHECK(seen > 20000);
}

TEST_CASE("no text of a pressure sheet lies over another text, under a line or outside the frame") {
  long seen = 0;
  std::size_t drawn = 0;
  for (const char* paper : {"a3", "a4"})
    for (const Demo& demo : demo_jobs(paper)) {
      const Drawing* sheet = find_sheet(demo.sheets, "pressure");
      CHECK(bool(sheet) == demo.result.figures.pressure.has_value());
      if (!sheet) continue;
      ++drawn;
      for (const std::string& fault : faults(*sheet, seen))
        FAIL_CHECK(demo.name << ", " << paper << ": " << fault);
    }
  CHECK(drawn >= 2 * kDemoJobs);
  CHECK(seen > 100000);
}

TEST_CASE(
    "pressure sheets of presses of two moulds can be read, those of stacked boards and of many runs too") {
  std::string runs;
  for (int i = 0; i < 40; ++i)
    runs += (i ? ", " : "") + std::string("{bend = 3, radius = ") + (i % 2 ? "300}" : "340}");
  std::vector<DrawnJob> jobs = drawn_jobs();
  jobs.push_back({"many runs", job_text("width = 300\nprofile = [" + runs + "]", birch(6))});
  long seen = 0;
  int drawn = 0;
  for (const DrawnJob& job : jobs) {
    const Evaluation result = evaluated(job.text);
    REQUIRE(result.plan);
    if (!result.figures.pressure) continue;
    const SheetSet set{*result.plan, result.job->outputs.paper, {}, 1};
    const Drawing sheet = pressure_sheet(set, 1, *result.figures.pressure, result.job->layup.glue_row);
    ++drawn;
    for (const std::string& fault : faults(sheet, seen)) FAIL_CHECK(job.name << ": " << fault);
  }
  CHECK(drawn == static_cast<int>(jobs.size()) - 1);  // all but the one that tips
  CHECK(seen > 100000);
}

TEST_CASE("the map is drawn to scale both ways, with signs, formers and straps at their places") {
  std::size_t drawn = 0, formers = 0, straps = 0;
  for (const Demo& demo : demo_jobs()) {
    if (!demo.result.figures.pressure) continue;
    const PressPlan& plan = *demo.result.plan;
    const PressureMap& map = *demo.result.figures.pressure;
    const Drawing& sheet = *find_sheet(demo.sheets, "pressure");
    CAPTURE(demo.name);
    const MapOnSheet place = map_on(sheet, demo.result);
    const auto on_paper = [&](const Vec2& at) { return Vec2(place.box.low + place.scale * at); };
    const Vec2 least{map.least_girth, map.least_width}, greatest = greatest_place(plan, map);
    if (place.scale * (greatest - least).norm() > 3 * kSignRadius) {
      CHECK(has_sign(sheet, on_paper(least), Extreme::least));
      CHECK(has_sign(sheet, on_paper(greatest), Extreme::greatest));
      ++drawn;
    }
    for (const Section& section : plan.sections) {
      CHECK(lines_at(sheet, pens::kCentre, on_paper({0, section.z}).y(), place.box.size().x()) == 1);
      ++formers;
    }
    for (const Closure& closure : plan.closures) {
      CHECK(lines_at(sheet, pens::kStrap, on_paper({0, closure.z}).y(), 4) == 1);
      ++straps;
    }
  }
  CHECK(drawn >= kDemoJobs - 1);
  CHECK(formers > 50);
  CHECK(straps > 40);
}

TEST_CASE("the greatest of the finished panel is found where the map says that much") {
  int seen = 0;
  for (const Demo& demo : demo_jobs()) {
    if (!demo.result.figures.pressure) continue;
    const PressureMap& map = *demo.result.figures.pressure;
    const Vec2 place = greatest_place(*demo.result.plan, map);
    CAPTURE(demo.name);
    double there = 0;
    for (std::size_t i = 0; i < map.girth.size(); ++i)
      for (std::size_t j = 0; j < map.width.size(); ++j)
        if (map.girth[i] == place.x() && map.width[j] == place.y()) there = std::max(there, map.value[i][j]);
    CHECK(there == Approx(map.sound_greatest).epsilon(1e-9).margin(0));
    ++seen;
  }
  CHECK(seen >= static_cast<int>(kDemoJobs));
}

TEST_CASE("two signs that would cover one another stand apart, each tied to its place") {
  Evaluation result = mapped(kSingleCrown);
  PressureMap map = *result.figures.pressure;
  const Vec2 greatest = greatest_place(*result.plan, map);
  map.least_girth = greatest.x() + 1;
  map.least_width = greatest.y();
  Drawing drawing("signs", {2000, 2000}, sheet_pens());
  const PressureView view{*result.plan, map, {1, {100, 100}}, PressureSteps(map.greatest)};
  add_extremes(drawing, view);
  std::vector<Circle> signs, dots;
  for (const Item& item : drawing.items())
    if (const auto* circle = std::get_if<Circle>(&item.shape))
      (circle->radius == kSignRadius ? signs : dots).push_back(*circle);
  REQUIRE(signs.size() == 2);
  REQUIRE(dots.size() == 2);
  CHECK((signs[0].centre - signs[1].centre).norm() > 2 * kSignRadius);
  CHECK(same(dots[0].centre, greatest + Vec2(101, 100)));
  CHECK(same(dots[1].centre, greatest + Vec2(100, 100)));
}

TEST_CASE("the key gives every bound and where the glue's range lies among them") {
  const Evaluation result = mapped(kSingleCrown);
  const PressureSteps steps(0.34);  // 0.05 to 0.35
  Glue glue;
  const auto keyed = [&] {
    Drawing drawing("key", {300, 300}, sheet_pens());
    PressureKey(*result.plan, glue, steps).add(drawing, {100, 200});
    return drawing;
  };
  // The darkest grey's upper edge is at 0.35; a bracket of wide lines stands for the glue.
  const auto bracket = [&](const Drawing& drawing) {
    std::vector<Segment> upright;
    for (const Segment& s : drawn_with(drawing, pens::kPart))
      if (std::abs(s.from.x() - s.to.x()) < 1e-9) upright.push_back(s);
    return upright;
  };
  glue.pressure_low = 0.1;
  glue.pressure_high = 0.3;
  const Drawing within_key = keyed();
  int bounds = 0;
  for (const char* bound : {"0.05", "0.1", "0.15", "0.2", "0.25", "0.3", "0.35"}) {
    CHECK(count_of(within_key, bound) == 1);
    ++bounds;
  }
  CHECK(bounds == steps.count());
  CHECK(says(within_key, "glue wants 0.1 to 0.3 MPa"));
  CHECK_FALSE(says(within_key, "more than is reached here"));
  const PressureKey key(*result.plan, glue, steps);
  REQUIRE(bracket(within_key).size() == 1);
  CHECK(bracket(within_key)[0].length() == test::within(key.height(0.3) - key.height(0.1), kRounding));

  glue.pressure_high = 1;  // goes on above the darkest grey: an arrow
  const Drawing past_key = keyed();
  REQUIRE(bracket(past_key).size() == 1);
  CHECK(bracket(past_key)[0].length() > key.height(0.35) - key.height(0.1));
  CHECK(drawn_with(past_key, pens::kDimension).size() == 3);  // its head

  glue.pressure_low = 0.4;
  const Drawing beyond = keyed();
  CHECK(bracket(beyond).empty());
  CHECK(says(beyond, "more than is reached here"));
}

TEST_CASE("the table gives least, greatest, mean and what the glue wants") {
  const Evaluation result = mapped(kSingleCrown);
  const PressureMap& map = *result.figures.pressure;
  const Glue& glue = result.job->layup.glue_row;
  const Table table = map_table(*result.plan, map, glue);
  REQUIRE(table.rows.size() == 4);
  CHECK(table.rows[0] == std::vector<std::string>{"least", number(map.sound_least, 4),
                                                  number(map.least_girth, 1), number(map.least_width, 1)});
  CHECK(table.rows[1][1] == number(map.sound_greatest, 4));
  CHECK(table.rows[2][1] == number(map.mean, 4));
  CHECK(table.rows[3][1] == number(glue.pressure_low, 3) + " to " + number(glue.pressure_high, 3));
}

TEST_CASE("the upper curve is the mean over the width on its own axis") {
  const Evaluation result = mapped(unlike_bends(false, ""));
  const PressureView view = full_size(result);
  Drawing drawing("curve", {2000, 2000}, sheet_pens());
  add_mean_curve(drawing, view);
  const PressureMap& map = *result.figures.pressure;
  CHECK(mean_axis_top(map) >= *std::max_element(map.along.begin(), map.along.end()));
  const auto curve = drawn_with(drawing, pens::kPart);
  int seen = 0;
  for (const Segment& s : curve) {
    const auto at = std::find_if(map.girth.begin(), map.girth.end(),
                                 [&](double girth) { return std::abs(girth - s.from.x()) < 1e-9; });
    REQUIRE(at != map.girth.end());
    // Of two entries at a joint either may be the point's.
    const std::size_t i = static_cast<std::size_t>(at - map.girth.begin()),
                      next = std::min(i + 1, map.girth.size() - 1);
    const double foot = mean_point(view, 0, 0).y();
    const double pressure = (s.from.y() - foot) / kMeanHeight * mean_axis_top(map);
    const double off = std::min(std::abs(pressure - map.along[i]), std::abs(pressure - map.along[next]));
    CHECK(off < 1e-9);
    ++seen;
  }
  CHECK(seen > 20);
}

TEST_CASE("a mirrored job gives the mirrored map") {
  int bands = 0;
  for (const std::string& press : {std::string(), std::string("[press]\nmethod = \"two-part\"\n")}) {
    const Evaluation forward = mapped(unlike_bends(false, press)), back = mapped(unlike_bends(true, press));
    const double girth = forward.figures.pressure->girth.back();
    REQUIRE(back.figures.pressure->girth.back() == test::within(girth, 1e-6));
    const auto one = bands_of(forward), other = bands_of(back);
    REQUIRE(one.size() == other.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
      const Area over = turned_over(other[i], girth);
      CHECK(size_of(over) == test::within(size_of(one[i]), 2 * kSeen * edge_of(one[i])));
      int points = 0;
      for (double s = 20; s < girth; s += 31)
        for (double z = 20; z < 430; z += 37, ++points)
          if (distance_to(one[i], {s, z}) > 4 * kSeen) CHECK(covers(one[i], {s, z}) == covers(over, {s, z}));
      CHECK(points > 100);
      ++bands;
    }
    CHECK(back.figures.pressure->sound_greatest ==
          Approx(forward.figures.pressure->sound_greatest).epsilon(1e-9).margin(0));
    CHECK(back.figures.pressure->sound_least == test::within(forward.figures.pressure->sound_least, 1e-9));
  }
  CHECK(bands >= 10);
}

TEST_CASE("names of runs, stations of joints and trim lines stand along the girth") {
  const Evaluation result = mapped(unlike_bends(false, ""));
  const auto set = all_sheets_of(result);
  const Drawing& sheet = *find_sheet(set, "pressure");
  const auto joints = outer_joints(*result.plan);
  int seen = 0;
  for (const double s : joints) {
    CHECK(says(sheet, number(s, 1)));
    ++seen;
  }
  CHECK(seen == static_cast<int>(result.plan->neutral.runs().size()) + 1);
  for (const char* name : {"bend 1", "line 1", "line 2", "bend 2"}) CHECK(says(sheet, name));
  // What is trim alone is not named: the last run is 15 of trim.
  CHECK(run_name(result.plan->neutral, result.plan->neutral.runs().size() - 1) == "line 3");
  CHECK_FALSE(says(sheet, "line 3"));
}

TEST_CASE("a plan that was not checked has no pressure sheet") {
  const Evaluation result = mapped(kSingleCrown);
  Progress quiet;
  const auto without = values(sheets({*result.job, *result.plan, result.findings, quiet}));
  const auto with = all_sheets_of(result);
  CHECK(find_sheet(without, "pressure") == nullptr);
  CHECK(find_sheet(with, "pressure") != nullptr);
  CHECK(with.size() == without.size() + 1);
}

TEST_CASE("each sheet of a set is counted once in its title block") {
  int seen = 0;
  for (const Demo& demo : demo_jobs()) {
    const auto& set = demo.sheets;
    for (std::size_t i = 0; i < set.size(); ++i, ++seen) {
      CAPTURE(demo.name, set[i].name);
      CHECK(count_of(set[i].drawing, std::to_string(i + 1) + " / " + std::to_string(set.size())) == 1);
    }
  }
  CHECK(seen > 50);
}

TEST_CASE("areas are written to SVG with their holes, and a hostile title stays text") {
  const std::string hostile = "</svg>\"'../ä板 & <script>";
  Evaluation result = mapped(kSingleCrown);
  result.plan->title = hostile;
  const auto set = all_sheets_of(result);
  const Drawing& sheet = *find_sheet(set, "pressure");
  tinyxml2::XMLDocument document;
  REQUIRE(document.Parse(svg_text(sheet).c_str()) == tinyxml2::XML_SUCCESS);
  int filled = 0;
  bool titled = false;
  for (const auto* group = document.RootElement()->FirstChildElement("g"); group;
       group = group->NextSiblingElement("g")) {
    for (const auto* path = group->FirstChildElement("path"); path; path = path->NextSiblingElement("path"))
      if (path->Attribute("fill-rule", "evenodd")) {
        ++filled;
        CHECK(std::string(path->Attribute("fill")).size() == 7);
      }
    for (const auto* text = group->FirstChildElement("text"); text; text = text->NextSiblingElement("text"))
      titled = titled || (text->GetText() && hostile == text->GetText());
  }
  CHECK(filled == PressureSteps(result.figures.pressure->greatest).count());
  CHECK(titled);
  CHECK(document.RootElement()->FirstChildElement("script") == nullptr);

  Drawing holed("t", {100, 100}, sheet_pens());
  holed.add(pens::kFill, Area{{rectangle({{0, 0}, {30, 30}}), rectangle({{10, 10}, {20, 20}})}, "#cccccc"});
  CHECK(holds(svg_text(holed),
              R"(<path d="M0 100 L30 100 L30 70 L0 70 Z M10 90 L20 90 L20 80 L10 80 Z" fill="#cccccc" )"
              R"(fill-rule="evenodd"/>)"));
}
