#include "exporters/drawing/view.hpp"

namespace lamwright::drawing {

const std::vector<Scale>& scales() {
  static const std::vector<Scale> kScales{{2.0, "2:1"},       {1.0, "1:1"},        {1.0 / 2, "1:2"},
                                          {1.0 / 5, "1:5"},   {1.0 / 10, "1:10"},  {1.0 / 20, "1:20"},
                                          {1.0 / 50, "1:50"}, {1.0 / 100, "1:100"}};
  return kScales;
}

Scale reduced(const Scale& scale) {
  for (const Scale& next : scales())
    if (next.factor < scale.factor) return next;
  return scales().back();
}

Segment View::paper(const Segment& model) const {
  if (model.straight()) return line(paper(model.from), paper(model.to));
  return {paper(model.from), paper(model.to), model.turn, paper(model.centre), scale * model.radius};
}

std::vector<Segment> View::paper(const std::vector<Segment>& model) const {
  std::vector<Segment> out;
  for (const Segment& s : model) out.push_back(paper(s));
  return out;
}

Segment moved(const Segment& segment, const Vec2& by) { return View{1, by}.paper(segment); }

}  // namespace lamwright::drawing
