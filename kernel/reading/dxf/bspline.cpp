#include "kernel/reading/dxf/bspline.hpp"

#include <algorithm>

namespace lamwright::dxf_reading {
namespace {

Vec3 homogeneous(const Bspline& s, std::size_t i) {
  const double w = s.weights.empty() ? 1 : s.weights[i];
  return {w * s.poles[i].x(), w * s.poles[i].y(), w};
}

// The polar form of the span from knot[span] to the next, at `degree` arguments within it: the first `late`
// of them the span's end, the others its start.
Vec3 polar(const Bspline& s, std::size_t span, int late) {
  const int p = s.degree;
  const double start = s.knots[span], end = s.knots[span + 1];
  std::vector<Vec3> row;
  for (int j = 0; j <= p; ++j) row.push_back(homogeneous(s, span - p + j));
  for (int r = 1; r <= p; ++r) {
    const double u = r <= late ? end : start;
    for (int j = p; j >= r; --j) {
      const double low = s.knots[span - p + j], high = s.knots[span + 1 + j - r];
      row[j] = row[j - 1] + (u - low) / (high - low) * (row[j] - row[j - 1]);
    }
  }
  return row[p];
}

Bezier piece(const Bspline& s, std::size_t span) {
  Bezier out;
  for (int late = 0; late <= s.degree; ++late) {
    const Vec3 h = polar(s, span, late);
    out.poles.emplace_back(h.x() / h.z(), h.y() / h.z());
    if (!s.weights.empty()) out.weights.push_back(h.z());
  }
  return out;
}

// Derivatives at the points: the tridiagonal system low[i] m[i-1] + middle[i] m[i] + high[i] m[i+1] =
// right[i].
struct Tridiagonal {
  std::vector<double> low, middle, high;
  std::vector<Vec2> right;

  void row(double l, double m, double h, const Vec2& r) {
    low.push_back(l);
    middle.push_back(m);
    high.push_back(h);
    right.push_back(r);
  }

  std::vector<Vec2> solved() && {
    const std::size_t n = middle.size();
    for (std::size_t i = 1; i < n; ++i) {
      const double share = low[i] / middle[i - 1];
      middle[i] -= share * high[i - 1];
      right[i] -= share * right[i - 1];
    }
    right[n - 1] /= middle[n - 1];
    for (std::size_t i = n - 1; i-- > 0;) right[i] = (right[i] - high[i] * right[i + 1]) / middle[i];
    return std::move(right);
  }
};

std::vector<Vec2> derivatives(const std::vector<Vec2>& points, const std::vector<double>& chords,
                              const std::optional<Vec2>& start, const std::optional<Vec2>& end) {
  const auto slope = [&](std::size_t i) { return Vec2((points[i + 1] - points[i]) / chords[i]); };
  const std::size_t last = chords.size() - 1;
  Tridiagonal system;
  if (start)
    system.row(0, 1, 0, *start);
  else
    system.row(0, 2, 1, 3 * slope(0));
  for (std::size_t i = 1; i <= last; ++i)
    system.row(chords[i], 2 * (chords[i - 1] + chords[i]), chords[i - 1],
               3 * (chords[i] * slope(i - 1) + chords[i - 1] * slope(i)));
  if (end)
    system.row(0, 1, 0, *end);
  else
    system.row(1, 2, 0, 3 * slope(last));
  return std::move(system).solved();
}

}  // namespace

std::vector<Bezier> bezier_pieces(const Bspline& spline) {
  std::vector<Bezier> out;
  for (std::size_t span = spline.degree; span < spline.poles.size(); ++span)
    if (spline.knots[span + 1] > spline.knots[span]) out.push_back(piece(spline, span));
  return out;
}

std::vector<Bezier> cubic_through(const std::vector<Vec2>& points, const std::optional<Vec2>& start,
                                  const std::optional<Vec2>& end) {
  std::vector<double> chords;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) chords.push_back((points[i + 1] - points[i]).norm());
  const std::vector<Vec2> m = derivatives(points, chords, start, end);
  std::vector<Bezier> out;
  for (std::size_t i = 0; i < chords.size(); ++i)
    out.push_back({{points[i], points[i] + chords[i] / 3 * m[i], points[i + 1] - chords[i] / 3 * m[i + 1],
                    points[i + 1]},
                   {}});
  return out;
}

}  // namespace lamwright::dxf_reading
