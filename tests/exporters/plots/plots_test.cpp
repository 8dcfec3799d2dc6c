// Plots of the demo jobs and of others that are hard to draw.
#include <catch2/catch.hpp>

#include "exporters/drawing/laid_over.hpp"
#include "exporters/drawing/pressure_map_view.hpp"
#include "exporters/plots/extremes.hpp"
#include "exporters/plots/heat_scale.hpp"
#include "exporters/plots/springback_detail.hpp"
#include "exporters/svg/svg_writer.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/plots/plotted.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::plots;
using namespace lamwright::test;
using drawing::Drawing;

namespace {

constexpr Plot kPlots[] = {pressure_plot, curvature_plot, pressure_map_plot, springback_plot};

const std::string kS =
    "[{line = 60}, {bend = 45, radius = 420}, {line = 80}, {bend = -40, radius = 480}, "
    "{line = 90}]";

std::string many_runs() {
  std::string runs;
  for (int i = 0; i < 40; ++i)
    runs += (i ? ", " : "") + std::string("{bend = 3, radius = ") + (i % 2 ? "300}" : "340}");
  return job_text("width = 300\nprofile = [" + runs + "]", birch(6));
}

// Boards without a gap, nine metres of girth, many runs, a girth of a hand's breadth.
std::vector<Evaluation> hard_ones() {
  std::vector<Evaluation> out;
  out.push_back(
      evaluated(job_text("width = 900\ntrim = 15\nprofile = " + kS, birch(8),
                         "[press]\nmethod = \"two-part\"\nspringback = 0.06\n[caul]\nkind = \"bare\"\n"
                         "[formers]\nspacing = 18\n")));
  out.push_back(
      evaluated(job_text("width = 1200\ntrim = 15\nprofile = [{line = 1500}, {bend = 40, radius = 4000}, "
                         "{line = 400}, {bend = -30, radius = 5000}, {line = 1700}]",
                         birch(8), "[press]\nmethod = \"two-part\"\n")));
  out.push_back(evaluated(many_runs()));
  out.push_back(evaluated(job_text("width = 200\nprofile = [{bend = 60, radius = 110}]", birch(3))));
  return out;
}

std::vector<const Evaluation*> suite() {
  static const std::vector<Evaluation> kHard = hard_ones();
  std::vector<const Evaluation*> out;
  for (const Demo& demo : demo_jobs()) out.push_back(&demo.result);
  for (const Evaluation& one : kHard) out.push_back(&one);
  return out;
}

Evaluation desk() {
  return evaluated(job_text("width = 900\ntrim = 15\nprofile = [{line = 120}, {bend = 70, radius = 380}]",
                            birch(7), "[press]\nspringback = 0.1\n"));
}

int areas_in(const Drawing& plot) {
  return int(std::count_if(plot.items().begin(), plot.items().end(), [](const drawing::Item& item) {
    return std::holds_alternative<drawing::Area>(item.shape);
  }));
}

}  // namespace

TEST_CASE("plots are 180 wide, can be read, and keep within their sheet, in every unit") {
  long seen = 0;
  int drawn = 0;
  for (const Evaluation* result : suite()) {
    REQUIRE(result->plan);
    for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::cm, LengthUnit::inch, LengthUnit::foot})
      for (const Plot plot : kPlots) {
        const auto drawing = plotted(*result, plot, unit);
        if (!drawing) continue;
        ++drawn;
        CHECK(drawing->size().x() == 180);
        CHECK(drawing->size().y() >= 60);
        CHECK(drawing->size().y() <= 105);
        for (const std::string& fault : plot_faults(*drawing, seen))
          FAIL_CHECK(result->plan->title << ", " << drawing->title() << ", " << int(unit) << ": " << fault);
      }
  }
  CHECK(drawn >= 4 * 4 * int(kDemoJobs));
  CHECK(seen > 100000);
}

TEST_CASE("the mean curve is as high as the pressure map says, the band as wide") {
  int seen = 0;
  for (const Evaluation* result : suite()) {
    if (!result->figures.pressure) continue;
    const PressureMap& map = *result->figures.pressure;
    for (const auto& [unit, size] : {std::pair{LengthUnit::mm, 1.0}, {LengthUnit::inch, kMpaPerPsi}}) {
      const Drawing plot = *plotted(*result, pressure_plot, unit);
      CAPTURE(result->plan->title, int(unit));
      const UprightAxis axis = upright_axis(plot);
      const Box2 curve = box_of_strokes(curve_of(plot, pens::kFirst));
      const double most = *std::max_element(map.along.begin(), map.along.end());
      // Points nearer to a line than 0.005 are left out.
      const double slack = 0.011 / axis.one;
      CHECK(axis.value(curve.high.y()) == within(most / size, slack));
      const double least = *std::min_element(map.along.begin(), map.along.end());
      CHECK(axis.value(curve.low.y()) == within(least / size, slack));
      CHECK(axis.value(axis.zero + 46) >= map.greatest / size - slack);
      ++seen;
    }
  }
  CHECK(seen >= 2 * int(kDemoJobs));
}

TEST_CASE("the band reaches from the least to the greatest pressure of any station") {
  int seen = 0, narrow = 0;
  for (const Evaluation* result : suite()) {
    if (!result->figures.pressure) continue;
    const Drawing plot = *plotted(*result, pressure_plot);
    const UprightAxis axis = upright_axis(plot);
    CAPTURE(result->plan->title);
    Box2 band;  // the legend's sample lies below the axis
    for (const drawing::Item& item : plot.items())
      if (const auto* path = std::get_if<drawing::Path>(&item.shape))
        if (path->fill == tints::kSpread && box_of_strokes(path->segments).high.y() > axis.zero)
          band.add(box_of_strokes(path->segments));
    double least = INFINITY, greatest = 0;
    for (const auto& over_width : result->figures.pressure->value)
      for (const double pressure : over_width) {
        least = std::min(least, pressure);
        greatest = std::max(greatest, pressure);
      }
    ++seen;
    if (std::isinf(band.low.x()) && ++narrow) continue;  // no wider than a point that is left out
    CHECK(axis.value(band.low.y()) == within(least, 0.011 / axis.one));
    CHECK(axis.value(band.high.y()) == within(greatest, 0.011 / axis.one));
  }
  CHECK(seen >= int(kDemoJobs));
  CHECK(narrow <= 3);  // presses of boards without gaps, and a block
}

TEST_CASE("the glue's bounds stand at their pressures where the plot reaches them") {
  Evaluation result = desk();
  REQUIRE(result.figures.pressure);
  Glue& glue = result.job->layup.glue_row;
  const double greatest = result.figures.pressure->greatest;
  glue.pressure_low = greatest / 2;
  glue.pressure_high = greatest * 1.1;
  const Drawing both = *plotted(result, pressure_plot);
  const UprightAxis axis = upright_axis(both);
  // The legend has no line of this pen.
  const auto bounds = drawn_with(both, pens::kBound);
  REQUIRE(bounds.size() == 2);
  CHECK(axis.value(bounds[0].from.y()) == within(greatest / 2, 1e-9));
  CHECK(axis.value(bounds[1].from.y()) == within(greatest * 1.1, 1e-9));
  CHECK(says(both, "at least " + Reported(LengthUnit::mm).pressure(greatest / 2)));

  glue.pressure_high = 20 * greatest;
  CHECK(drawn_with(*plotted(result, pressure_plot), pens::kBound).size() == 1);
  glue.pressure_low = 10 * greatest;
  const Drawing none = *plotted(result, pressure_plot);
  CHECK(drawn_with(none, pens::kBound).empty());
  CHECK(says(none, "more than is reached here"));
  CHECK_FALSE(says(both, "more than is reached here"));
}

TEST_CASE("joints of runs and trim lines stand at their girth stations") {
  const Evaluation result = desk();
  const double girth = result.figures.pressure->girth.back();
  const auto joints = drawing::outer_joints(*result.plan);
  REQUIRE(joints.size() == 4);  // line, bend, trim
  int seen = 0;
  for (const Plot plot : {pressure_plot, pressure_map_plot}) {
    const Drawing drawing = *plotted(result, plot);
    const Box2 axis = box_of_strokes(drawn_with(drawing, pens::kAxis));
    std::vector<double> wanted, found;
    const double left = 15, right = plot == Plot(pressure_plot) ? 172 : axis.high.x();
    for (const double s : {15.0, girth - 15}) wanted.push_back(left + (right - left) * s / girth);
    for (const Segment& s : drawn_with(drawing, pens::kTrim))
      if (std::abs(s.from.x() - s.to.x()) < 1e-9) found.push_back(s.from.x());
    REQUIRE(found.size() == 2);
    for (std::size_t i = 0; i < 2; ++i, ++seen) CHECK(found[i] == within(wanted[i], 1e-9));
    std::vector<double> ends;
    for (const Segment& s : drawn_with(drawing, pens::kJoint))
      if (std::abs(s.from.x() - s.to.x()) < 1e-9) ends.push_back(s.from.x());
    REQUIRE(ends.size() == 2);
    for (std::size_t i = 0; i < 2; ++i, ++seen)
      CHECK(ends[i] == within(left + (right - left) * joints[i + 1] / girth, 1e-9));
  }
  CHECK(seen == 8);
}

TEST_CASE("the map has an area for every step reached, and tells least and greatest of the panel") {
  int seen = 0;
  for (const Evaluation* result : suite()) {
    if (!result->figures.pressure) continue;
    const PressureMap& map = *result->figures.pressure;
    for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
      const Reported reported(unit);
      const Drawing plot = *plotted(*result, pressure_map_plot, unit);
      const HeatScale scale(map.greatest, pressure_unit(reported));
      CAPTURE(result->plan->title);
      CHECK(areas_in(plot) == scale.count());
      CHECK(scale.count() >= 5);
      CHECK(scale.top() >= map.greatest * (1 - 1e-9));
      CHECK(count_of(plot, reported.pressure(map.sound_least)) >= 1);
      CHECK(count_of(plot, reported.pressure(map.sound_greatest)) >= 1);
      for (int i = 1; i <= scale.count(); ++i)
        CHECK(count_of(plot, number(scale.bound(i) / pressure_unit(reported).size, 6)) >= 1);
      ++seen;
    }
  }
  CHECK(seen >= 2 * int(kDemoJobs));
}

TEST_CASE("signs stand at the places of least and greatest, every former has its line") {
  const Evaluation result = desk();
  const PressureMap& map = *result.figures.pressure;
  const Drawing plot = *plotted(result, pressure_map_plot);
  std::vector<Vec2> signs;
  for (const drawing::Item& item : plot.items())
    if (const auto* circle = std::get_if<drawing::Circle>(&item.shape)) signs.push_back(circle->centre);
  REQUIRE(signs.size() == 2);
  // The field from the frame, the largest closed path of the axis pen.
  Box2 frame;
  for (const drawing::Item& item : plot.items())
    if (const auto* path = std::get_if<drawing::Path>(&item.shape))
      if (path->closed && plot.pens()[item.pen].name == pens::kAxis) frame = box_of_strokes(path->segments);
  const Vec2 whole{map.girth.back(), result.plan->panel.blank_width()};
  const auto at = [&](const Vec2& place) {
    return Vec2(frame.low + place.cwiseQuotient(whole).cwiseProduct(frame.size()));
  };
  CHECK(same(signs[0], at({map.least_girth, map.least_width}), 1e-9));
  CHECK(same(signs[1], at(drawing::greatest_place(*result.plan, map)), 1e-9));
  int formers = 0;
  for (const Section& section : result.plan->sections)
    for (const Segment& s : drawn_with(plot, pens::kFormer))
      formers += std::abs(s.from.y() - at({0, section.z}).y()) < 1e-9 &&
                 std::abs(s.length() - frame.size().x()) < 1e-9;
  CHECK(formers == int(result.plan->sections.size()));
}

TEST_CASE("curvature is told as pressed and as released, each radius at its line") {
  const Evaluation result = desk();
  const drawing::LaidOver lines(*result.panel);
  const Drawing plot = *plotted(result, curvature_plot);
  const UprightAxis axis = upright_axis(plot);
  // Released at 380; a tenth of the pressed curvature of the neutral line is lost: (380 + 5.25) 0.9 - 5.25 =
  // 341.475, the neutral line lying in the middle of 10.5.
  CHECK(says(plot, "R 380 mm released"));
  CHECK(says(plot, "R 341.5 mm pressed"));
  CHECK(axis.value(box_of_strokes(curve_of(plot, pens::kFirst)).high.y()) == within(1000 / 341.475, 1e-6));
  double released = 0;
  for (const Segment& s : curve_of(plot, pens::kSecond))
    released = std::max(released, axis.value(s.from.y()));
  CHECK(released == within(1000 / 380.0, 1e-6));
  CHECK(says(plot, "curvature, 1/m"));
  CHECK(says(plot, "girth of the inner face, mm"));
  CHECK(says(*plotted(result, curvature_plot, LengthUnit::inch), "curvature, 1/ft"));
}

TEST_CASE("hollows go below zero and inflections are marked") {
  const Evaluation result = evaluated(job_text("width = 500\nprofile = " + kS, birch(8)));
  REQUIRE(result.plan);
  const Drawing plot = *plotted(result, curvature_plot);
  const UprightAxis axis = upright_axis(plot);
  CHECK(axis.value(box_of_strokes(curve_of(plot, pens::kFirst)).low.y()) < -1 / 0.48);
  int rings = 0;
  for (const drawing::Item& item : plot.items())
    if (const auto* circle = std::get_if<drawing::Circle>(&item.shape))
      rings += std::abs(circle->centre.y() - axis.zero) < 1e-6;
  CHECK(rings == 1);
  CHECK(count_of(plot, "inflection") == 1);
  CHECK(count_of(*plotted(desk(), curvature_plot), "inflection") == 0);
}

TEST_CASE("springback is told at both ends in the unit asked for, the end enlarged where it would not show") {
  const Evaluation result = desk();
  const drawing::LaidOver lines(*result.panel);
  for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
    const Drawing plot = *plotted(result, springback_plot, unit);
    CHECK(says(plot, "left end " + Reported(unit).length(lines.left().distance())));
    CHECK(says(plot, "right end " + Reported(unit).length(lines.right().distance())));
    CHECK(says(plot, "lost on release: 10 %"));
    CHECK_FALSE(says(plot, "times"));  // 20 mm and more at about 1:5
  }
  int enlarged = 0;
  for (const Demo& demo : demo_jobs())
    if (const auto plot = plotted(demo.result, springback_plot)) enlarged += says(*plot, "the framed end, ");
  CHECK(enlarged >= 8);
}

TEST_CASE("both lines of the springback plot are true to one scale") {
  const Evaluation result = desk();
  const drawing::LaidOver lines(*result.panel);
  const Drawing plot = *plotted(result, springback_plot);
  const auto length = [&](const char* pen) {
    double sum = 0;
    for (const Segment& s : curve_of(plot, pen)) sum += s.length();
    return sum;
  };
  CHECK(length(pens::kFirst) / lines.pressed().girth() ==
        within(length(pens::kSecond) / lines.released().girth(), 1e-9));
}

TEST_CASE("an enlarged end shows both lines' ends as far apart as they are, so many times larger") {
  int seen = 0;
  for (const Demo& demo : demo_jobs()) {
    const auto plot = plotted(demo.result, springback_plot);
    if (!plot || !says(*plot, "the framed end, ")) continue;
    CAPTURE(demo.name);
    const drawing::LaidOver lines(*demo.result.panel);
    int times = 0;
    for (const int tried : {2, 5, 10, 20, 50, 100})
      if (says(*plot, "the framed end, " + std::to_string(tried) + " times")) times = tried;
    REQUIRE(times > 1);
    Box2 square;
    for (const drawing::Item& item : plot->items())
      if (const auto* path = std::get_if<drawing::Path>(&item.shape))
        if (path->closed && std::abs(box_of_strokes(path->segments).size().x() - kDetailSize) < 1e-9)
          square = box_of_strokes(path->segments);
    // The first point within the square, or the last one.
    const auto end_in = [&](const char* pen) {
      std::vector<Vec2> inside;
      for (const Segment& s : curve_of(*plot, pen))
        for (const Vec2& p : {s.from, s.to})
          if ((p - square.low).cwiseMin(square.high - p).minCoeff() > 1e-6) inside.push_back(p);
      REQUIRE_FALSE(inside.empty());
      return lines.left_moves_more() ? inside.front() : inside.back();
    };
    double paper = 0;
    for (const drawing::Item& item : plot->items())
      if (const auto* path = std::get_if<drawing::Path>(&item.shape))
        if (paper == 0 && plot->pens()[item.pen].name == pens::kFirst)
          for (const Segment& s : path->segments) paper += s.length();
    const double scale = paper / lines.pressed().girth();
    const double apart = (end_in(pens::kFirst) - end_in(pens::kSecond)).norm();
    CHECK(apart == within(lines.widest_end().distance() * scale * times, 1e-6));
    ++seen;
  }
  CHECK(seen >= 8);
}

TEST_CASE("where there is nothing to plot there is no plot") {
  const Evaluation flat =
      evaluated(job_text("width = 700\nprofile = [{line = 900}]", birch(12),
                         "[press]\nmethod = \"crowned-flat\"\n[caul]\nkind = \"sheathed\"\n"
                         "sheathing = [6]\n"));
  REQUIRE(flat.plan);
  CHECK_FALSE(plotted(flat, curvature_plot));
  CHECK_FALSE(plotted(flat, springback_plot));
  CHECK(plotted(flat, pressure_plot));
  Evaluation unknown = desk();
  unknown.figures.pressure.reset();
  CHECK_FALSE(plotted(unknown, pressure_plot));
  CHECK_FALSE(plotted(unknown, pressure_map_plot));
  const Evaluation stiff = evaluated(job_text("width = 500\nprofile = [{bend = 70, radius = 380}]", birch(7),
                                              "[press]\nspringback = \"none\"\n"));
  CHECK_FALSE(plotted(stiff, springback_plot));
  const auto one = plotted(stiff, curvature_plot);
  REQUIRE(one);
  CHECK(drawn_with(*one, pens::kSecond).empty());
  CHECK(says(*one, "R 380 mm"));
}

TEST_CASE("a plot is the same text every time and small") {
  int seen = 0;
  for (const Plot plot : kPlots) {
    const Evaluation result = desk();
    const std::string once = svg_text(*plotted(result, plot)), twice = svg_text(*plotted(result, plot));
    CHECK(once == twice);
    CHECK(once.size() < 60000);
    ++seen;
  }
  CHECK(seen == 4);
}
