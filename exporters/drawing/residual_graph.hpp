// How far measured points lie from the runs through them, along the girth and drawn larger.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/profile/fit/fit.hpp"

namespace lamwright::drawing {

// One point as the graph shows it.
struct Residual {
  double station = 0;    // of the profile, abreast of the point
  double distance = 0;   // positive on the outer side
  bool suspect = false;  // circled and named
};
// Of every point, in their order. Precondition: as many residuals as points.
std::vector<Residual> residuals_of(const FitResult& fit, const std::vector<Vec2>& points);

// Least and greatest distance of the points in one column of the graph.
struct ResidualColumn {
  double station = 0;
  double least = 0;
  double greatest = 0;
};
inline constexpr std::size_t kMostSingle = 300;  // points that are drawn one by one
// From left to right: one for every point where there are few, else the envelope in at most kMostSingle equal
// columns. Suspects are left out: they are drawn by themselves.
std::vector<ResidualColumn> residual_columns(const std::vector<Residual>& residuals, double girth);

class ResidualGraph {
 public:
  // Refers to the fit and its residuals_of(). `width` on paper, mm, with the room for the numbers of its
  // axes.
  ResidualGraph(const FitResult& fit, const std::vector<Residual>& residuals, double width);

  double factor() const { return factor_; }  // distances on paper over true ones: 1, 2, 5, 10 ... or less
  double height() const;                     // on paper, with all its texts
  // `corner` is the upper left one.
  void draw(Drawing& drawing, const Vec2& corner) const;
  // Where a point stands, `axis` being the left end of the zero line. A suspect far off stands at the edge.
  Vec2 at(const Residual& residual, const Vec2& axis) const;

 private:
  double length() const;  // of the axis
  double x(double station, const Vec2& axis) const;
  double y(double distance, const Vec2& axis) const { return axis.y() + factor_ * distance; }
  std::vector<std::string> title() const;
  double above() const;  // from the upper edge to the zero line
  void add_axes(Drawing& drawing, const Vec2& axis) const;
  void add_runs(Drawing& drawing, const Vec2& axis) const;
  void add_points(Drawing& drawing, const Vec2& axis) const;
  std::string label(std::size_t index) const;
  double widest_label() const;
  void add_suspects(Drawing& drawing, const Vec2& axis) const;

  const FitResult& fit_;
  const std::vector<Residual>& residuals_;
  double width_;
  double factor_;
};

}  // namespace lamwright::drawing
