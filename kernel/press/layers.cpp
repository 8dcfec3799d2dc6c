#include "kernel/press/layers.hpp"

#include "kernel/profile/offset.hpp"

namespace lamwright {
namespace {

double thickness_of(const std::vector<Layer>& layers) {
  double sum = 0;
  for (const Layer& layer : layers) sum += layer.thickness;
  return sum;
}

// Sheets and slats between the lower former and the pack.
double under_pack(const PressPlan& plan) {
  double sum = 0;
  for (const Layer& layer : plan.layers) {
    if (layer.kind == Layer::Kind::cover || layer.kind == Layer::Kind::panel) break;
    sum += layer.thickness;
  }
  return sum;
}

}  // namespace

const Layer* layer_of(const PressPlan& plan, Layer::Kind kind) {
  for (const Layer& layer : plan.layers)
    if (layer.kind == kind) return &layer;
  return nullptr;
}

std::vector<Segment> layer_loop(const Layer& layer) {
  const Profile outer = offset(layer.inner, layer.thickness);
  std::vector<Segment> loop = segments(layer.inner);
  loop.push_back(line(layer.inner.end().point, outer.end().point));
  for (const Segment& s : segments(outer.reversed())) loop.push_back(s);
  loop.push_back(line(outer.start().point, layer.inner.start().point));
  return loop;
}

std::vector<Layer> lifted_layers(const PressPlan& plan) {
  std::vector<Layer> out;
  bool past_panel = false;
  for (const Layer& layer : plan.layers) {
    past_panel = past_panel || layer.kind == Layer::Kind::panel;
    if (past_panel && layer.kind != Layer::Kind::panel && layer.kind != Layer::Kind::cover)
      out.push_back(layer);
  }
  return out;
}

Segment pin_line(const PressPlan& plan, const Pin& pin) {
  const Vec2 foot = pin.at.head<2>();
  const Vec2 out = plan.neutral.at(plan.neutral.nearest(foot).station).normal();
  const double inner = -(plan.panel.thickness + 2 * plan.panel.cover);
  if (pin.caul == Layer::Kind::bed_caul)
    return line(foot + (inner - under_pack(plan)) * out, foot + kPinProud * out);
  const double proud = plan.sections.front().upper ? kPinProud : 0;
  return line(foot + (inner - proud) * out, foot + thickness_of(lifted_layers(plan)) * out);
}

}  // namespace lamwright
