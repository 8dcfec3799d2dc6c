#include "exporters/drawing/residual_graph.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/one_two_five.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/pressure_steps.hpp"
#include "exporters/drawing/suspects.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/wrapped.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kHalf = 12;              // of the graph's height
constexpr double kShare = 0.85;           // of that for the greatest distance
constexpr double kLeft = 14, kRight = 5;  // beside the axis, for numbers
constexpr double kTitleRow = 4.5;         // of its title
constexpr double kBand = 5;               // under the graph, with the names of the runs
constexpr double kGirths = 6;             // under that, with the numbers of the girth
constexpr double kLead = 5;               // from a suspect's ring to its number
constexpr double kTick = 1.2, kToTick = 0.8;
constexpr double kDot = 0.45;
constexpr double kEdge = kHalf - kRing;  // where a suspect too far off stands

double greatest_shown(const FitResult& fit, const std::vector<Residual>& residuals) {
  double most = fit.tolerance;
  for (const Residual& r : residuals)
    if (!r.suspect) most = std::max(most, std::abs(r.distance));
  return most > 0 ? most : 1;
}

}  // namespace

std::vector<Residual> residuals_of(const FitResult& fit, const std::vector<Vec2>& points) {
  ensure(fit.residuals.size() == points.size(), "every point has its residual");
  std::vector<Residual> out;
  for (std::size_t i = 0; i < points.size(); ++i)
    out.push_back({fit.profile.nearest(points[i]).station, fit.residuals[i], false});
  for (const std::size_t i : fit.suspects) ensure(i < points.size(), "every suspect is a point");
  for (const std::size_t i : farthest_suspects(fit, kMostApart)) out[i].suspect = true;
  return out;
}

std::vector<ResidualColumn> residual_columns(const std::vector<Residual>& residuals, double girth) {
  std::vector<ResidualColumn> out;
  const bool single = residuals.size() <= kMostSingle;
  std::vector<std::vector<double>> columns(single ? 0 : kMostSingle);
  for (const Residual& r : residuals) {
    if (r.suspect) continue;
    if (single) {
      out.push_back({r.station, r.distance, r.distance});
    } else {
      const double share = std::clamp(r.station / girth, 0.0, 1.0);
      columns[std::min(kMostSingle - 1, std::size_t(share * kMostSingle))].push_back(r.distance);
    }
  }
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i].empty()) continue;
    const auto [least, greatest] = std::minmax_element(columns[i].begin(), columns[i].end());
    out.push_back({girth * (double(i) + 0.5) / kMostSingle, *least, *greatest});
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const auto& a, const auto& b) { return a.station < b.station; });
  return out;
}

ResidualGraph::ResidualGraph(const FitResult& fit, const std::vector<Residual>& residuals, double width)
    : fit_(fit),
      residuals_(residuals),
      width_(width),
      factor_(one_two_five_below(kShare * kHalf / greatest_shown(fit, residuals_))) {}

double ResidualGraph::length() const { return width_ - kLeft - kRight; }

double ResidualGraph::x(double station, const Vec2& axis) const {
  return axis.x() + length() * station / fit_.profile.girth();
}

Vec2 ResidualGraph::at(const Residual& residual, const Vec2& axis) const {
  return {x(residual.station, axis),
          std::clamp(y(residual.distance, axis), axis.y() - kEdge, axis.y() + kEdge)};
}

std::vector<std::string> ResidualGraph::title() const {
  const std::string drawn = residuals_.size() <= kMostSingle
                                ? "Distance of each point from the runs"
                                : "Least and greatest distance of the points from the runs, column by column";
  return wrapped(drawn + ", drawn " + number(factor_, 9) + " x; upward: outer side; dashed: tolerance " +
                     number(fit_.tolerance, 3) + " mm; below: runs and girth",
                 width_, kSmallHeight);
}

double ResidualGraph::above() const {
  const double widest = widest_label(), row = widest > 0 ? kRing + kLead + 1 + widest : 0;
  return kTitleRow * double(title().size()) + 1.5 + row + kHalf;
}

double ResidualGraph::height() const { return above() + kHalf + kBand + kGirths; }

void ResidualGraph::draw(Drawing& drawing, const Vec2& corner) const {
  double row = corner.y();
  for (const std::string& text : title())
    drawing.add(pens::kText, Text{{corner.x(), (row -= kTitleRow) + 1}, text, kSmallHeight});
  const Vec2 axis{corner.x() + kLeft, corner.y() - above()};
  add_axes(drawing, axis);
  add_runs(drawing, axis);
  add_points(drawing, axis);
  add_suspects(drawing, axis);
}

void ResidualGraph::add_axes(Drawing& drawing, const Vec2& axis) const {
  const double right = axis.x() + length(), bottom = axis.y() - kHalf;
  drawing.add(pens::kMark, rectangle({{axis.x(), bottom - kBand}, {right, axis.y() + kHalf}}));
  drawing.add(pens::kMark, line({axis.x(), bottom}, {right, bottom}));
  drawing.add(pens::kMark, line(axis, {right, axis.y()}));
  for (const double limit : {-fit_.tolerance, fit_.tolerance})
    if (limit != 0) drawing.add(pens::kHidden, line({axis.x(), y(limit, axis)}, {right, y(limit, axis)}));
  const double step = axis_step(kHalf / factor_, 2);
  for (int i = -2; i <= 2; ++i) {
    const double level = y(step * i, axis);
    if (std::abs(level - axis.y()) > kHalf) continue;
    const Vec2 end{axis.x() - kTick, level};
    drawing.add(pens::kMark, line({axis.x(), level}, end));
    drawing.add(pens::kText, Text{end - Vec2(kToTick, kSmallHeight / 2), number(step * i, 6), kSmallHeight,
                                  Anchor::right});
  }
  const double girth_step = axis_step(fit_.profile.girth(), 10);
  for (int i = 0; girth_step * i <= fit_.profile.girth(); ++i) {
    const Vec2 from{x(girth_step * i, axis), bottom - kBand}, end = from - Vec2(0, kTick);
    drawing.add(pens::kMark, line(from, end));
    drawing.add(pens::kText, Text{end - Vec2(0, kToTick + kSmallHeight), number(girth_step * i, 3),
                                  kSmallHeight, Anchor::middle});
  }
}

// By name where there is room for all, else by number where there is.
void ResidualGraph::add_runs(Drawing& drawing, const Vec2& axis) const {
  constexpr double kBeside = 2;
  const Profile& profile = fit_.profile;
  const double bottom = axis.y() - kHalf - kBand;
  const auto room = [&](std::size_t i, const std::string& text) {
    return x(profile.station(i + 1), axis) - x(profile.station(i), axis) >=
           text_width(text, kSmallHeight) + kBeside;
  };
  bool names = true;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) names = names && room(i, run_name(profile, i));
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const double left = x(profile.station(i), axis), right = x(profile.station(i + 1), axis);
    if (i > 0) drawing.add(pens::kMark, line({left, bottom}, {left, axis.y() + kHalf}));
    const std::string text = names ? run_name(profile, i) : std::to_string(i + 1);
    if (!room(i, text)) continue;
    drawing.add(
        pens::kText,
        Text{{(left + right) / 2, bottom + (kBand - kSmallHeight) / 2}, text, kSmallHeight, Anchor::middle});
  }
}

void ResidualGraph::add_points(Drawing& drawing, const Vec2& axis) const {
  const bool single = residuals_.size() <= kMostSingle;
  for (const ResidualColumn& column : residual_columns(residuals_, fit_.profile.girth())) {
    const Vec2 low{x(column.station, axis), y(column.least, axis)}, high{low.x(), y(column.greatest, axis)};
    const Vec2 from = single ? Vec2(low.x(), axis.y()) : low;
    if ((high - from).norm() > 1e-3) drawing.add(pens::kBlock, line(from, high));
    if (single || (high - low).norm() < kDot) drawing.add(pens::kMark, Circle{high, kDot, tints::kBlack});
  }
}

// A suspect too far off for the graph has its distance told.
std::string ResidualGraph::label(std::size_t index) const {
  const double distance = std::abs(residuals_[index].distance);
  const bool shown = factor_ * distance <= kEdge;
  return point_number(index) + (shown ? "" : ": " + number(distance, 2));
}

double ResidualGraph::widest_label() const {
  double widest = 0;
  for (std::size_t i = 0; i < residuals_.size(); ++i)
    if (residuals_[i].suspect) widest = std::max(widest, text_width(label(i), kSmallHeight));
  return widest;
}

void ResidualGraph::add_suspects(Drawing& drawing, const Vec2& axis) const {
  const double knee = axis.y() + kHalf + kRing;
  OrdinateRow row{{}, knee, knee + kLead, axis.x(), axis.x() + length()};
  for (std::size_t i = 0; i < residuals_.size(); ++i) {
    if (!residuals_[i].suspect) continue;
    const Vec2 middle = at(residuals_[i], axis);
    add_ring(drawing, middle);
    row.ordinates.push_back({middle + Vec2(0, kRing), label(i)});
  }
  ordinates(drawing, row);
}

}  // namespace lamwright::drawing
