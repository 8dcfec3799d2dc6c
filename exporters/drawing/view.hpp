// Scales and views: how the model's mm become mm on paper.
#pragma once
#include <string>
#include <vector>

#include "kernel/profile/segment.hpp"

namespace lamwright::drawing {

struct Scale {
  double factor = 1;
  std::string text = "1:1";
};

// One enlargement, full size and the reductions of ISO 5455, largest first.
const std::vector<Scale>& scales();
// The next smaller one; the smallest stays.
Scale reduced(const Scale& scale);

// Model to paper: `origin` is where the model's (0, 0) lies on paper.
struct View {
  double scale = 1;
  Vec2 origin{0, 0};

  Vec2 paper(const Vec2& model) const { return origin + scale * model; }
  double x(double model) const { return origin.x() + scale * model; }
  double y(double model) const { return origin.y() + scale * model; }
  Segment paper(const Segment& model) const;
  std::vector<Segment> paper(const std::vector<Segment>& model) const;
  Box2 paper(const Box2& model) const { return {paper(model.low), paper(model.high)}; }
};

// The segment shifted.
Segment moved(const Segment& segment, const Vec2& by);

}  // namespace lamwright::drawing
