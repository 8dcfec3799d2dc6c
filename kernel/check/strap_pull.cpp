#include "kernel/check/strap_pull.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/mechanics/belt.hpp"
#include "kernel/profile/offset.hpp"

namespace lamwright {
namespace {

// The line the straps lie on: the outermost layer's outer side.
Profile strapped_line(const PressPlan& plan) {
  const Layer& last = plan.layers.back();
  return offset(last.inner, last.thickness);
}

double strap_height(const PressPlan& plan) {
  const Layer& last = plan.layers.back();
  double height = plan.panel.thickness - plan.panel.neutral_height + plan.panel.cover;
  if (last.kind == Layer::Kind::top_caul) height += last.thickness;
  return height;
}

double greatest_gap(const std::vector<Closure>& closures) {
  double most = 0;
  for (std::size_t i = 1; i < closures.size(); ++i) most = std::max(most, closures[i].z - closures[i - 1].z);
  return most;
}

}  // namespace

double StrapPull::tension(double station) const {
  return strap_tension(left, line.from_left(station, exit_left), right, line.from_right(station, exit_right),
                       friction);
}

double StrapPull::end_force(bool at_left) const {
  const double own = at_left ? left : right, exit = at_left ? exit_left : exit_right;
  // At an end without a ratchet what friction leaves of the other's pull.
  const double arrives = at_left
                             ? right * std::exp(-friction * line.from_right(0, exit_right))
                             : left * std::exp(-friction * line.from_left(line.curve().girth(), exit_left));
  // The strap leaves such an end with what the last turn takes off as well.
  return 2 * std::max(own, arrives * std::exp(-friction * exit)) * std::sin(exit / 2) / pitch;
}

std::optional<StrapPull> strap_pull(const Job& job, const PressPlan& plan) {
  if (plan.load != Load::belt || plan.closures.size() < 2) return std::nullopt;
  const Profile all = strapped_line(plan);
  const double height = strap_height(plan);
  const Profile over =
      offset(plan.neutral, plan.panel.thickness - plan.panel.neutral_height + plan.panel.cover);
  const double top = height - (plan.panel.thickness - plan.panel.neutral_height + plan.panel.cover);
  const double left = plan.uncovered_left, right = over.girth() - plan.uncovered_right;
  const auto to_neutral = [&](double station) {
    return offset_station(over, station,
                          -(plan.panel.thickness - plan.panel.neutral_height + plan.panel.cover));
  };
  const Closure& closure = plan.closures.front();
  return StrapPull{
      .line = StrapLine(between(all, offset_station(over, left, top), offset_station(over, right, top))),
      .from = to_neutral(left),
      .to = to_neutral(right),
      .left = closure.tension,
      .right = job.straps.both_ends ? closure.tension : 0,
      .exit_left = closure.left.exit,
      .exit_right = closure.right.exit,
      .friction = job.straps.friction,
      .pitch = greatest_gap(plan.closures)};
}

double on_strap(const PressPlan& plan, const StrapPull& pull, double station) {
  const double height = strap_height(plan);
  const double s =
      offset_station(plan.neutral, station, height) - offset_station(plan.neutral, pull.from, height);
  return std::clamp(s, 0.0, pull.line.curve().girth());
}

}  // namespace lamwright
