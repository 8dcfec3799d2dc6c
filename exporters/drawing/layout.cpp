#include "exporters/drawing/layout.hpp"

#include <algorithm>

namespace lamwright::drawing {

Vec2 room_of(const Box2& model, double scale, const Margins& margins) {
  return scale * model.size() + Vec2(margins.left + margins.right, margins.bottom + margins.top);
}

View view_in(const Box2& model, double scale, const Margins& margins, const Vec2& corner) {
  return {scale, corner + Vec2(margins.left, margins.bottom) - scale * model.low};
}

Box2 room_at(const Vec2& corner, const Vec2& size) { return {corner, corner + size}; }

Choice choose(const std::vector<Paper>& papers, int arrangements,
              const std::function<bool(const Choice&)>& fits, const ScaleRange& range) {
  std::vector<Choice> choices;
  const auto add = [&](const Paper& paper, const Scale& scale) {
    for (int i = 0; i < arrangements; ++i) choices.push_back({paper, scale, i});
  };
  for (const Paper& paper : papers)
    for (const Scale& scale : scales())
      if (scale.factor >= range.readable && scale.factor <= range.largest) add(paper, scale);
  for (const Scale& scale : scales())
    for (const Paper& paper : papers)
      if (scale.factor < range.readable) add(paper, scale);
  const auto first = std::find_if(choices.begin(), choices.end(), fits);
  return first == choices.end() ? choices.back() : *first;
}

}  // namespace lamwright::drawing
