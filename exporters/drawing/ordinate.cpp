#include "exporters/drawing/ordinate.hpp"

#include <algorithm>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kApart = 4;  // between lines of neighbouring numbers 2.5 high
constexpr double kTextStart = 0.8;
constexpr double kOrigin = 1;  // radius of the datum's circle

std::vector<double> kept_within(std::vector<double> at, double left, double right) {
  if (at.empty() || right <= left) return at;
  const double over = std::max(0.0, at.back() - right), under = std::max(0.0, left - at.front());
  if (over > 0 && under > 0) return at;
  for (double& x : at) x += under - over;
  return at;
}

}  // namespace

// Least squares with gaps is isotonic regression of wanted[i] - i apart: pool neighbours that are out of
// order.
std::vector<double> spread(const std::vector<double>& wanted, double apart) {
  struct Pool {
    double sum;
    std::size_t count;
    double mean() const { return sum / static_cast<double>(count); }
  };
  std::vector<Pool> pools;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    pools.push_back({wanted[i] - static_cast<double>(i) * apart, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
      const Pool last = pools.back();
      pools.pop_back();
      pools.back().sum += last.sum;
      pools.back().count += last.count;
    }
  }
  std::vector<double> out;
  for (const Pool& pool : pools)
    for (std::size_t i = 0; i < pool.count; ++i)
      out.push_back(pool.mean() + static_cast<double>(out.size()) * apart);
  return out;
}

double ordinate_end(const OrdinateRow& row) {
  double longest = 0;
  for (const Ordinate& o : row.ordinates) longest = std::max(longest, text_width(o.text, kSmallHeight));
  return row.level > row.knee ? row.level + kTextStart + longest : row.level - kTextStart - longest;
}

void ordinates(Drawing& drawing, const OrdinateRow& row) {
  std::vector<Ordinate> sorted = row.ordinates;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Ordinate& a, const Ordinate& b) { return a.feature.x() < b.feature.x(); });
  std::vector<double> wanted;
  for (const Ordinate& o : sorted) wanted.push_back(o.feature.x());
  const std::vector<double> at = kept_within(spread(wanted, kApart), row.left, row.right);
  const bool upward = row.level > row.knee;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const Ordinate& o = sorted[i];
    const Vec2 knee{o.feature.x(), row.knee}, end{at[i], row.level};
    drawing.add(pens::kDimension, Path{{line(o.feature, knee), line(knee, end)}, false, {}});
    if (o.datum) drawing.add(pens::kDimension, Circle{knee, kOrigin, {}});
    const Vec2 text{at[i] + kSmallHeight / 2, row.level + (upward ? kTextStart : -kTextStart)};
    drawing.add(pens::kDimension,
                Text{text, o.text, kSmallHeight, upward ? Anchor::left : Anchor::right, kPi / 2});
  }
}

}  // namespace lamwright::drawing
