// Distances of measured points from the runs, drawn larger.
#include "exporters/drawing/residual_graph.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/suspects.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/fitted.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

Profile front() { return named_profiles()[3].profile; }  // crown with flats

struct Drawn {
  Drawing drawing{"", {297, 210}, sheet_pens()};
  double factor = 0;
};

Drawn drawn(const ProfileReading& reading) {
  const auto residuals = residuals_of(*reading.fit, reading.points);
  const ResidualGraph graph(*reading.fit, residuals, 250);
  Drawn out;
  out.factor = graph.factor();
  graph.draw(out.drawing, {25, 190});
  return out;
}

std::vector<Circle> circles(const Drawing& drawing, const std::string& pen) {
  std::vector<Circle> out;
  for (const Item& item : drawing.items())
    if (const auto* circle = std::get_if<Circle>(&item.shape); circle && drawing.pens()[item.pen].name == pen)
      out.push_back(*circle);
  return out;
}

// Heights of the dashed lines, lowest first.
std::vector<double> dashed(const Drawing& drawing) {
  std::vector<double> out;
  for (const Segment& s : drawn_with(drawing, pens::kHidden)) out.push_back(s.from.y());
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace

TEST_CASE("every point stands abreast of its station, its distance times the factor from the zero line") {
  const ProfileReading reading = fitted(front(), {});
  const Drawn graph = drawn(reading);
  const auto limits = dashed(graph.drawing);
  REQUIRE(limits.size() == 2);
  const double zero = (limits[0] + limits[1]) / 2;
  CHECK(limits[1] - zero == test::within(graph.factor * 0.5, kRounding));
  const auto points = circles(graph.drawing, pens::kMark);
  REQUIRE(points.size() == reading.points.size());
  const double left = points.front().centre.x(), length = points.back().centre.x() - left;
  for (std::size_t i = 0; i < points.size(); ++i) {
    CHECK(points[i].centre.x() == test::within(left + length * double(i) / 40, 1e-6));
    CHECK(points[i].centre.y() == test::within(zero + graph.factor * reading.fit->residuals[i], kRounding));
  }
}

TEST_CASE("the factor is a round number that fills the graph and is told") {
  int seen = 0;
  for (const double wave : {0.0, 0.003, 0.2, 7.0, 600.0})
    for (const double tolerance : {0.0, 0.01, 0.5, 20.0}) {
      const Drawn graph = drawn(fitted(front(), {41, wave, tolerance}));
      CAPTURE(wave, tolerance);
      const double most = std::max(wave, tolerance);
      if (most > 0) {
        CHECK(graph.factor * most <= 12);
        CHECK(graph.factor * most > 3.5);  // the next round number is at most 2.5 times as large
      }
      CHECK(says(graph.drawing, "drawn " + number(graph.factor, 9) + " x"));
      CHECK(dashed(graph.drawing).size() == (tolerance > 0 ? 2 : 0));
      ++seen;
    }
  CHECK(seen == 20);
}

TEST_CASE("of many points the envelope is drawn, which holds every one of them") {
  const ProfileReading reading = fitted(front(), {20000, 0.4, 0.5});
  const auto residuals = residuals_of(*reading.fit, reading.points);
  const double girth = reading.profile.girth();
  const auto columns = residual_columns(residuals, girth);
  REQUIRE(columns.size() == kMostSingle);
  std::vector<std::pair<double, double>> touched(columns.size(), {1, -1});
  std::size_t outside = 0;
  for (const Residual& r : residuals) {
    const auto i = std::min(kMostSingle - 1, std::size_t(r.station / girth * kMostSingle));
    if (r.distance < columns[i].least || r.distance > columns[i].greatest) ++outside;
    touched[i].first = std::min(touched[i].first, r.distance);
    touched[i].second = std::max(touched[i].second, r.distance);
  }
  CHECK(outside == 0);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    CHECK(columns[i].least == touched[i].first);
    CHECK(columns[i].greatest == touched[i].second);
  }
  const Drawn graph = drawn(reading);
  CHECK(drawn_with(graph.drawing, pens::kBlock).size() <= kMostSingle);
  CHECK(says(graph.drawing, "Least and greatest distance"));
}

TEST_CASE("few points are drawn one by one") {
  int seen = 0;
  for (const std::size_t count : {3, 4, 50, 300}) {
    const ProfileReading reading = fitted(front(), {count, 0.2, 0.5});
    CHECK(circles(drawn(reading).drawing, pens::kMark).size() == count);
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("suspects are circled and numbered from 1, and one too far off has its distance told") {
  const Drawn graph = drawn(fitted(front(), {41, 0.2, 0.5, {{4, 0.45}, {20, -2.437}, {40, 31}}}));
  CHECK(circles(graph.drawing, pens::kLoop).size() == 3);
  CHECK(circles(graph.drawing, pens::kMark).size() == 38);
  CHECK(count_of(graph.drawing, "5") == 1);
  CHECK(count_of(graph.drawing, "21: 2.44") == 1);
  CHECK(count_of(graph.drawing, "41: 31") == 1);
  CHECK(graph.factor == test::within(20, kRounding));  // set by the tolerance: they do not flatten the others
}

TEST_CASE("of very many suspects those farthest off are named and the others counted") {
  FittedSpec spec{2000, 0.2, 0.5};
  for (std::size_t i = 0; i < 300; ++i) spec.suspects.push_back({6 * i, 1 + 0.01 * double(i)});
  const ProfileReading reading = fitted(front(), spec);
  const auto named = farthest_suspects(*reading.fit, kMostApart);
  REQUIRE(named.size() == kMostApart);
  CHECK(named.front() == 6 * 250);
  CHECK(named.back() == 6 * 299);
  CHECK(circles(drawn(reading).drawing, pens::kLoop).size() == kMostApart);
  CHECK(holds(suspects_text(*reading.fit), "1795 (3.99 outside) and 250 nearer ones."));
}

TEST_CASE("the text names every suspect with its distance and side") {
  CHECK(suspects_text(*fitted(front(), {41, 0.2, 0.5, {{4, 0.45}, {20, -2.437}}}).fit) ==
        "Look wrong, left out; measure again: points 5 (0.45 outside), 21 (2.44 inside).");
  CHECK(suspects_text(*fitted(front(), {41, 0.2, 0.5, {{4, 0.45}}}).fit) ==
        "Looks wrong, left out; measure again: point 5 (0.45 outside).");
}

TEST_CASE("notes of single suspects are left out, and no others") {
  FitResult fit = *fitted(front(), {41, 0.2, 0.5, {{4, 0.45}, {20, -2.437}}}).fit;
  fit.notes = {"3 points left out",
               "point 5 at (1, 2) lies 0.45 off",
               "point 50 and others",
               "point 21 at (3, 4) lies 2.437 off",
               "point 2 again",
               "points 5 to 21",
               "point",
               ""};
  CHECK(other_notes(fit) == std::vector<std::string>{"3 points left out", "point 50 and others",
                                                     "point 2 again", "points 5 to 21", "point", ""});
  fit.suspects.clear();
  CHECK(other_notes(fit) == fit.notes);
}

TEST_CASE("greatest distance and root mean square are those of the points kept") {
  FitResult fit = *fitted(front(), {4, 0, 0.5}).fit;
  fit.residuals = {0.3, -7, -0.4, 5};
  fit.suspects = {1, 3};
  CHECK(kept_figures(fit).greatest == 0.4);
  CHECK(kept_figures(fit).rms == test::within(std::sqrt((0.09 + 0.16) / 2), kRounding));
  fit.suspects.clear();
  CHECK(kept_figures(fit).greatest == 7);
  CHECK(kept_figures(fit).rms == test::within(std::sqrt((0.09 + 49 + 0.16 + 25) / 4), kRounding));
  fit.suspects = {0, 1, 2, 3};
  CHECK(kept_figures(fit).greatest == 0);
  CHECK(kept_figures(fit).rms == 0);
}
