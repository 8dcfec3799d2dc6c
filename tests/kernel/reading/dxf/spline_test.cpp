#include "kernel/reading/dxf/spline.hpp"

#include <sstream>

#include "kernel/reading/dxf/bspline.hpp"
#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;
using dxf_reading::bezier_pieces;
using dxf_reading::Bspline;
using dxf_reading::cubic_through;

namespace {

std::string list(int code, const std::vector<double>& values) {
  std::string out;
  for (const double v : values) {
    std::ostringstream digits;
    digits.precision(17);
    digits << v;
    out += ", " + std::to_string(code) + " " + digits.str();
  }
  return out;
}

std::string spline(int degree, const std::vector<double>& knots, const std::vector<Vec2>& poles,
                   const std::vector<double>& weights = {}, int flags = 8) {
  std::string out = "0 SPLINE, 8 A, 70 " + std::to_string(flags) + ", 71 " + std::to_string(degree) +
                    list(40, knots) + list(41, weights);
  for (const Vec2& p : poles) out += list(10, {p.x()}) + list(20, {p.y()}) + ", 30 0";
  return out;
}

// De Boor's algorithm as it stands in the textbooks, on poles times weights.
Vec2 de_boor(const Bspline& s, double u) {
  std::size_t span = s.degree;
  while (span + 1 < s.poles.size() && s.knots[span + 1] <= u) ++span;
  std::vector<Vec3> d;
  for (int j = 0; j <= s.degree; ++j) {
    const std::size_t i = span - s.degree + j;
    const double w = s.weights.empty() ? 1 : s.weights[i];
    d.emplace_back(w * s.poles[i].x(), w * s.poles[i].y(), w);
  }
  for (int r = 1; r <= s.degree; ++r)
    for (int j = s.degree; j >= r; --j) {
      const double low = s.knots[span - s.degree + j], high = s.knots[span + 1 + j - r];
      const double a = (u - low) / (high - low);
      d[j] = (1 - a) * d[j - 1] + a * d[j];
    }
  return d[s.degree].head<2>() / d[s.degree].z();
}

std::vector<std::pair<double, double>> spans(const Bspline& s) {
  std::vector<std::pair<double, double>> out;
  for (std::size_t i = s.degree; i < s.poles.size(); ++i)
    if (s.knots[i + 1] > s.knots[i]) out.emplace_back(s.knots[i], s.knots[i + 1]);
  return out;
}

}  // namespace

TEST_CASE("the pieces of a spline are the spline, whatever its degree, knots and weights") {
  // Clamped and rational, with double and triple knots, and with free ends.
  const std::vector<Vec2> poles{{0, 0}, {20, 50}, {70, 60}, {90, 10}, {140, -20}, {180, 40}, {230, 30}};
  const std::vector<double> weights{1, 0.5, 3, 1, 2, 0.7, 1};
  const std::vector<Bspline> suite{{3, {0, 0, 0, 0, 1, 2.5, 3, 4, 4, 4, 4}, poles, {}},
                                   {3, {0, 0, 0, 0, 1, 2.5, 3, 4, 4, 4, 4}, poles, weights},
                                   {3, {0, 0, 0, 0, 2, 2, 2, 4, 4, 4, 4}, poles, weights},
                                   {3, {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, poles, weights},
                                   {2, {0, 0, 0, 1, 1, 2, 3, 4, 4, 4}, poles, {}},
                                   {5, {-3, -3, -3, -3, -3, -3, 1, 2, 2, 2, 2, 2, 2}, poles, weights},
                                   {1, {0, 0, 1, 2, 3, 4, 5, 6, 6}, poles, weights}};
  int seen = 0;
  for (const Bspline& s : suite) {
    const std::vector<Bezier> pieces = bezier_pieces(s);
    const auto stretches = spans(s);
    REQUIRE(pieces.size() == stretches.size());
    for (std::size_t i = 0; i < pieces.size(); ++i)
      for (int k = 0; k < 10; ++k, ++seen) {
        const auto [from, to] = stretches[i];
        CHECK(same(pieces[i].point(k / 10.0), de_boor(s, from + (to - from) * k / 10), 1e-11));
      }
  }
  CHECK(seen == 10 * (4 + 4 + 2 + 4 + 4 + 2 + 6));
}

TEST_CASE("an inner knot of full multiplicity leaves two pieces with their kink") {
  const DrawnCurve curve =
      entity(spline(3, {0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2},
                    {{0, 0}, {10, 10}, {40, 20}, {50, 0}, {60, 30}, {80, 40}, {100, 0}}));
  REQUIRE(curve.pieces.size() == 2);
  CHECK(bezier_of(curve, 0).poles == std::vector<Vec2>{{0, 0}, {10, 10}, {40, 20}, {50, 0}});
  CHECK(bezier_of(curve, 1).poles == std::vector<Vec2>{{50, 0}, {60, 30}, {80, 40}, {100, 0}});
  CHECK(cross(last_tangent(curve.pieces[0]), first_tangent(curve.pieces[1])) > 0.5);
}

TEST_CASE("knots that were written a little apart are one") {
  const DrawnCurve curve =
      entity(spline(3, {0, 0, 0, 0, 0.9999999999, 1, 1.0000000001, 2, 2, 2, 2},
                    {{0, 0}, {10, 10}, {40, 20}, {50, 0}, {60, 30}, {80, 40}, {100, 0}}));
  REQUIRE(curve.pieces.size() == 2);
  CHECK(last_point(curve.pieces[0]) == Vec2(50, 0));
}

TEST_CASE("a rational quarter circle of radius 100 is one") {
  const DrawnCurve curve =
      entity(spline(2, {0, 0, 0, 1, 1, 1}, {{100, 0}, {100, 100}, {0, 100}}, {1, std::sqrt(0.5), 1}, 12));
  REQUIRE(curve.pieces.size() == 1);
  int seen = 0;
  for (int k = 0; k <= 32; ++k, ++seen) CHECK(bezier_of(curve).point(k / 32.0).norm() == within(100, 1e-10));
  CHECK(seen == 33);
}

TEST_CASE("equal weights are no weights, and pieces of degree 1 are lines") {
  CHECK(
      bezier_of(entity(spline(2, {0, 0, 0, 1, 1, 1}, {{0, 0}, {5, 9}, {10, 0}}, {2, 2, 2}))).weights.empty());
  const DrawnCurve chain = entity(spline(1, {0, 0, 1, 2, 2}, {{0, 0}, {5, 9}, {10, 0}}));
  REQUIRE(chain.pieces.size() == 2);
  CHECK(segment_of(chain, 1).straight());
}

TEST_CASE("a closed spline with repeated poles closes to the last bit") {
  const DrawnCurve curve =
      entity(spline(3, {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10},
                    {{0, 0}, {10, 0.1}, {10.3, 10}, {0, 10}, {0, 0}, {10, 0.1}, {10.3, 10}}, {}, 11));
  CHECK(curve.closed);
  REQUIRE(curve.pieces.size() == 4);
  CHECK(last_point(curve.pieces.back()) == first_point(curve.pieces.front()));
}

TEST_CASE("faulty splines are refused with their line and the way out") {
  const std::string way_out = "; save it with control points and knots, or as a polyline with arcs";
  const std::vector<Vec2> poles{{0, 0}, {10, 10}, {40, 20}, {50, 0}};
  CHECK(entity_refusal(spline(3, {0, 0, 0, 0, 1, 1, 1}, poles)) ==
        "part.dxf:6: SPLINE: degree 3 with 4 control points and 7 knots is no curve" + way_out);
  CHECK(entity_refusal(spline(3, {0, 0, 0, 2, 1, 3, 3, 3}, poles)) ==
        "part.dxf:6: SPLINE: knot 5 falls below the one before" + way_out);
  CHECK(entity_refusal(spline(3, {0, 0, 0, 0, 1, 1, 1, 1}, poles, {1, 1, 0, 1})) ==
        "part.dxf:6: SPLINE: weight 0 is not from 1e-9 to 1e9" + way_out);
  CHECK(entity_refusal(spline(3, {0, 0, 0, 0, 1, 1, 1, 1}, poles, {1, 2})) ==
        "part.dxf:6: SPLINE: has 2 weights for 4 control points" + way_out);
  CHECK(entity_refusal(spline(16, {}, poles)) ==
        "part.dxf:6: SPLINE: degree 16 is not from 1 to 15" + way_out);
  CHECK(entity_refusal(spline(3, {1, 1, 1, 1, 1, 1, 1, 1}, poles)) ==
        "part.dxf:6: SPLINE: all its knots are equal" + way_out);
  CHECK(entity_refusal(spline(1, {0, 0, 1, 1, 2, 2}, poles)) ==
        "part.dxf:6: SPLINE: is torn: two pieces lie 31.622777 apart" + way_out);
  CHECK(entity_refusal(spline(3, {0, 0, 0, 0, 1, 1, 1, 1}, poles, {}, 9)) ==
        "part.dxf:6: SPLINE: is torn: two pieces lie 50 apart" + way_out);
}

// A natural cubic through 0, 1, 0 at parameters 0, 1, 2 has slope 3/2 at its ends: 2 m0 + m1 = 3, m1 = 0.
TEST_CASE("a cubic through points is natural at its ends, or leaves as told") {
  const std::vector<Vec2> points{{0, 0}, {100, 0}, {200, 0}};
  const std::vector<Bezier> straight = cubic_through(points, {}, {});
  REQUIRE(straight.size() == 2);
  CHECK(same(straight[0].poles[1], {100.0 / 3, 0}));
  // Chords are 5: y of the derivatives is 2 m0 + m1 = 3 * 4/5, m1 = 0 by symmetry: m0 = 6/5.
  const std::vector<Bezier> hump = cubic_through({{0, 0}, {3, 4}, {6, 0}}, {}, {});
  CHECK(same(hump[0].poles[1], {1, 2}));
  CHECK(same(hump[0].poles[2], {2, 4}));
  const std::vector<Bezier> told = cubic_through({{0, 0}, {3, 4}, {6, 0}}, Vec2(0, 1), Vec2(0, -1));
  CHECK(same(told[0].poles[1], {0, 5.0 / 3}));
  CHECK(same(told[1].poles[2], {6, 5.0 / 3}));
}

TEST_CASE("a SPLINE of fit points alone is drawn through them and told") {
  const std::string points = "0 SPLINE, 70 8, 71 3, 74 3, 11 0, 21 0, 11 3, 21 4, 11 3, 21 4, 11 6, 21 0";
  const DrawnFile file = entities(points);
  CHECK(only_curve(file).pieces.size() == 2);
  CHECK(noted(file,
              "drawn as cubics of continuous curvature through their fit points, since they have no control "
              "points (near their ends the program that made them may show another curve): 1 SPLINE"));
  // A tangent of no length says nothing.
  CHECK(bezier_of(entity(points + ", 12 0, 22 0, 32 0, 13 0, 23 -2, 33 0"), 1).poles[2] == Vec2(6, 5.0 / 3));
  CHECK(holds(entity_refusal("0 SPLINE, 70 1, 11 0, 21 0, 11 3, 21 4"), "is closed and gives only points"));
}
