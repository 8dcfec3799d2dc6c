#include "kernel/press/plan.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {

std::string to_text(Layer::Kind kind) {
  switch (kind) {
    case Layer::Kind::panel:
      return "panel";
    case Layer::Kind::cover:
      return "cover";
    case Layer::Kind::liner:
      return "liner";
    case Layer::Kind::sheathing:
      return "sheathing";
    case Layer::Kind::bed_caul:
      return "bed-caul";
    case Layer::Kind::top_caul:
      return "top-caul";
  }
  return {};
}

std::string pull_keys(const PullChoice& choice) {
  std::string text = "press.pull = " + number(degrees(choice.axis), 7);
  const std::string at = number(choice.at, 3);
  if (at != "0") text += " with press.pull_at = " + at;
  return text;
}

std::size_t instances(const PressPlan& plan, std::size_t part) {
  return std::size_t(std::count_if(plan.bodies.begin(), plan.bodies.end(),
                                   [&](const Body& body) { return body.part == part; }));
}

double pack_middle(const PressPlan& plan) {
  const Profile &edge = plan.sections.front().lower, &pack = plan.neutral;
  return edge.nearest(pack.point(pack.girth() / 2)).station - edge.nearest(pack.start().point).station;
}

double girth_from_middle(const PressPlan& plan, const Pin& pin) {
  return plan.neutral.nearest(pin.at.head<2>()).station - plan.neutral.girth() / 2;
}

double inside_strap(const Vec2& p, const Vec2& from, const Vec2& down, int side) {
  const Vec2 inward = side > 0 ? Vec2(down.y(), -down.x()) : Vec2(-down.y(), down.x());
  return (p - from).dot(inward);
}

}  // namespace lamwright
