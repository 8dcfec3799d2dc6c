// Circles and arcs through measured points. The source stands beside each check.
#include <algorithm>

#include "kernel/profile/fit/circle.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct FittedCircle {
  Vec2 centre{0, 0};
  double radius = 0;
  double sum_of_squares = INFINITY;
};

FittedCircle fitted_arc(const std::vector<Vec2>& points) {
  const FitResult result = fit(arcs_through(points));
  REQUIRE(result.profile.runs().size() == 1);
  const double k = result.profile.runs()[0].curvature;
  const Pose& start = result.profile.start();
  return {start.point - start.normal() / k, 1 / std::abs(k), result.rms * result.rms * double(points.size())};
}

// For a given centre the best radius is the mean distance.
FittedCircle about(const Vec2& centre, const std::vector<Vec2>& points) {
  FittedCircle out{centre, 0, 0};
  for (const Vec2& p : points) out.radius += (p - centre).norm() / double(points.size());
  for (const Vec2& p : points) out.sum_of_squares += std::pow((p - centre).norm() - out.radius, 2);
  return out;
}

// One damped step of Newton's method on the sum of squares over the two coordinates of the centre, the radius
// being the mean distance. First derivatives -2 e u, second ones 2 (u u' + e (I - u u') / d) with the unit
// vectors u taken from their mean, d the distance and e what it exceeds the mean by.
Vec2 newton_step(const FittedCircle& at, const std::vector<Vec2>& points, double damping) {
  Vec2 mean{0, 0}, slope{0, 0};
  for (const Vec2& p : points) mean += (p - at.centre).normalized() / double(points.size());
  Eigen::Matrix2d bend = Eigen::Matrix2d::Zero();
  for (const Vec2& p : points) {
    const double d = (p - at.centre).norm(), e = d - at.radius;
    const Vec2 u = (p - at.centre) / d;
    slope += e * u;
    bend += (u - mean) * (u - mean).transpose() + e / d * (Eigen::Matrix2d::Identity() - u * u.transpose());
  }
  bend += damping * bend.norm() * Eigen::Matrix2d::Identity();
  return bend.ldlt().solve(slope);
}

// Downhill until no step gains.
FittedCircle walked_to_least(FittedCircle at, const std::vector<Vec2>& points) {
  double damping = 1;
  for (int i = 0; i < 500 && damping < 1e12; ++i) {
    const FittedCircle next = about(at.centre + newton_step(at, points, damping), points);
    damping *= next.sum_of_squares < at.sum_of_squares ? 0.1 : 10;
    if (next.sum_of_squares < at.sum_of_squares) at = next;
  }
  return at;
}

// From starts on both sides of the chord, near and far. Walks that leave for the straight line, a circle
// without end, are dropped.
FittedCircle slow_circle(const std::vector<Vec2>& points) {
  const Vec2 chord = points.back() - points.front();
  FittedCircle best;
  for (const double far : {-10.0, -3.0, -1.0, -0.2, 0.2, 1.0, 3.0, 10.0}) {
    const Vec2 start = (points.front() + points.back()) / 2 + far * left_of(chord);
    const FittedCircle found = walked_to_least(about(start, points), points);
    if (found.radius < 1e4 * chord.norm() && found.sum_of_squares < best.sum_of_squares) best = found;
  }
  return best;
}

// In order of travel; the sixth row of the table lies third.
const std::vector<Vec2> kSix{{1, 7}, {2, 6}, {3, 7}, {5, 8}, {7, 7}, {9, 5}};

// A site measurement of an arc of R1275 (chord 1200, rise 150), each point up to 0.7 off.
const std::vector<Vec2> kThirteen{{-600.1, 0.3},   {-506.1, 44.8},  {-409.2, 83.0}, {-309.2, 111.7},
                                  {-207.4, 133.4}, {-104.0, 145.4}, {0.0, 150.1},   {104.0, 146.1},
                                  {207.3, 132.7},  {309.3, 112.3},  {409.0, 82.2},  {506.3, 45.4},
                                  {599.9, -0.3}};

}  // namespace

TEST_CASE("Six published points have the circle of the paper on geometric fits") {
  // Gander, Golub, Strebel, BIT 34 (1994) 558: centre (4.73978, 2.98353), radius 4.71423, sum of
  // squares 1.2276; data from memory, further digits by the slow way below.
  const FittedCircle circle = fitted_arc(kSix);
  CHECK(circle.centre.x() == within(4.7397824, 1e-6));
  CHECK(circle.centre.y() == within(2.9835327, 1e-6));
  CHECK(circle.radius == within(4.7142260, 1e-6));
  CHECK(circle.sum_of_squares == within(1.2275991, 1e-7));
}

TEST_CASE("The slow way finds the circle of the six published points as well") {
  const FittedCircle slow = slow_circle(kSix);
  CHECK(slow.centre.x() == within(4.7397824, 1e-6));
  CHECK(slow.centre.y() == within(2.9835327, 1e-6));
  CHECK(slow.radius == within(4.7142260, 1e-6));
  CHECK(slow.sum_of_squares == within(1.2275991, 1e-7));
}

TEST_CASE("Six published points have the known algebraic and geometric circles in any order") {
  // Taubin's fit (IEEE Trans. PAMI 13 (1991) 1115): figures worked apart from this code.
  for (int turn = 0; turn < 6; ++turn) {
    std::vector<Vec2> points = kSix;
    std::rotate(points.begin(), points.begin() + turn, points.end());
    const auto algebraic = algebraic_circle(points), geometric = geometric_circle(points);
    REQUIRE(algebraic);
    CHECK(same(algebraic->centre, {4.6139327, 2.7952093}, 1e-6));
    CHECK(algebraic->radius == within(4.8792128, 1e-6));
    REQUIRE(geometric);
    CHECK(same(geometric->centre, {4.7397824, 2.9835327}, 1e-6));
    CHECK(geometric->radius == within(4.7142260, 1e-6));
  }
  CHECK(!algebraic_circle({{0, 0}, {1, 1}}));
  CHECK(!algebraic_circle({{0, 0}, {1, 1}, {5, 5}}));
  CHECK(!geometric_circle({{0, 0}, {1, 1}, {5, 5}}));
}

TEST_CASE("A noisy table of thirteen points gives its arc") {
  // Worked by the slow way: R 1274.328, centre (-0.190, -1124.287), greatest 0.472, rms 0.328.
  const FitResult result = fit(arcs_through(kThirteen));
  const FittedCircle circle = fitted_arc(kThirteen);
  CHECK(circle.radius == within(1274.328, 0.01));
  CHECK(circle.centre.x() == within(-0.190, 0.001));
  CHECK(circle.centre.y() == within(-1124.287, 0.01));
  CHECK(result.greatest == within(0.472, 0.001));
  CHECK(result.rms == within(0.328, 0.001));
  CHECK(result.residuals.size() == 13);
  CHECK(result.profile.runs()[0].curvature > 0);  // travelled left to right, the arc bulges to the left
}

TEST_CASE("Runs through the thirteen points do not wave") {
  // An interpolating spline through them dips to R867; three neighbouring points alone give R1479.5.
  const FitResult result = fit(through(kThirteen, 0.5));
  for (const Run& run : result.profile.runs()) {
    CHECK(run.curvature > 0);
    CHECK(1 / run.curvature > 1150);
  }
  CHECK(result.greatest <= 0.5);
}

TEST_CASE("Reference circles have the least-squares answers of a slow method") {
  // In the manner of the algorithm tests of Shakarji, J. Res. NIST 103 (1998) 633 (from memory): data about a
  // circle, the least-squares answer found by another method. Both stop where the sum no longer falls in
  // doubles; over 20 degrees that leaves 1e-8 of the noise times 220, far below the share of 1e-7 of the
  // radius asked.
  int seen = 0;
  for (const double sweep_deg : {20.0, 45.0, 90.0, 180.0, 270.0})
    for (const double radius : {60.0, 400.0, 2500.0})
      for (const int count : {5, 12, 60}) {
        CAPTURE(sweep_deg, radius, count);
        Dice dice(seed_of(seen));
        const Profile truth({{30, -70}, 1.1}, {bend(seen % 2 == 0 ? sweep_deg : -sweep_deg, radius)});
        const double noise = truth.girth() / 2000;
        const auto points = sampled(truth, truth.girth() / (count - 1), noise, dice);
        REQUIRE(int(points.size()) == count);
        const FittedCircle found = fitted_arc(points);
        const FittedCircle slow = slow_circle(points);
        CHECK(found.radius == within(slow.radius, 1e-7 * slow.radius));
        CHECK(same(found.centre, slow.centre, 1e-7 * slow.radius));
        CHECK(found.sum_of_squares <= slow.sum_of_squares * (1 + 1e-9));
        ++seen;
      }
  CHECK(seen == 45);
}

TEST_CASE("Three points give the circle through them") {
  // (0, 0), (500, 100), (1000, 0): R = (500^2 + 100^2) / 200 = 1300.
  const FittedCircle circle = fitted_arc({{0, 0}, {500, 100}, {1000, 0}});
  CHECK(circle.radius == within(1300, 1e-6));
  CHECK(same(circle.centre, {500, -1200}, 1e-6));
  CHECK(circle.sum_of_squares < 1e-12);
}
