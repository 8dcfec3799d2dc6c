#include <algorithm>
#include <cmath>

#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/section_notes.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

std::string pack_text(const PressPlan& plan) {
  const double cover = plan.panel.cover, blank = plan.panel.thickness;
  std::string text = "pack " + size_text(blank + 2 * cover);
  if (cover > 0) text += ": covers 2 x " + size_text(cover) + ", blank " + size_text(blank);
  return text;
}

std::string kind_name(Layer::Kind kind) {
  switch (kind) {
    case Layer::Kind::bed_caul:
      return "bed caul ";
    case Layer::Kind::top_caul:
      return "top caul ";
    case Layer::Kind::sheathing:
      return "sheathing ";
    case Layer::Kind::liner:
      return "liner ";
    default:
      return {};
  }
}

// "2 x 3" or "3 + 4"
std::string thicknesses(const std::vector<const Layer*>& layers) {
  const auto same = [&](const Layer* layer) {
    return std::abs(layer->thickness - layers.front()->thickness) < kSamePoint;
  };
  const std::string first = size_text(layers.front()->thickness);
  if (layers.size() > 1 && std::all_of(layers.begin(), layers.end(), same))
    return std::to_string(layers.size()) + " x " + first;
  std::string text;
  for (const Layer* layer : layers) text += (text.empty() ? "" : " + ") + size_text(layer->thickness);
  return text;
}

// Layers that one note names, and on which side of the panel they lie: 1 outside or the panel, -1 inside.
struct Named {
  std::vector<const Layer*> layers;
  int side = 1;

  std::string text(const PressPlan& plan) const {
    const Layer::Kind kind = layers.front()->kind;
    if (kind == Layer::Kind::panel) return pack_text(plan);
    const std::string name = kind_name(kind);
    return name.empty() ? name : name + thicknesses(layers);
  }
};

// From the outside in. Over one mould every sheet has its own note; between two moulds equal neighbours share
// one, since each of them comes twice.
std::vector<Named> named_layers(const PressPlan& plan) {
  const bool both = two_moulds(plan);
  std::vector<Named> out;
  bool inside = false;
  for (auto layer = plan.layers.rbegin(); layer != plan.layers.rend(); ++layer) {
    const bool shares = both && !out.empty() && out.back().layers.back()->kind == layer->kind;
    if (shares)
      out.back().layers.push_back(&*layer);
    else
      out.push_back({{&*layer}, both && inside ? -1 : 1});
    inside = inside || layer->kind == Layer::Kind::panel;
  }
  return out;
}

// In the middle of a layer's thickness, in a slat, not in a gap.
TipChoice tip_in(const SectionSheet& sheet, const Named& named, double share) {
  const Layer& layer = *named.layers.front();
  double station = share * layer.inner.girth();
  for (const Slat& slat : layer.slats)
    if (slat.to > station) {
      station = slat.middle();
      break;
    }
  const Pose pose = layer.inner.at(station);
  const Vec2 tip = pose.point + layer.thickness / 2 * pose.normal();
  return {sheet.view.paper(tip), pose.heading + named.side * kPi / 2};
}

void add_layer_note(const SectionSheet& sheet, const Named& named, const std::string& text, double share) {
  constexpr double kAcross = radians(70);  // a leader along the pack would be lost in it
  const TipChoice at = tip_in(sheet, named, share);
  Note note{at.tip, {text}, at.way, 10, 70};
  if (!two_moulds(sheet.plan)) return add_note(sheet.drawing, note, sheet.field);
  note.last = kLongLeader;
  note.turn = kAcross;
  std::vector<TipChoice> tips{at};
  for (const double other : {share - 0.15, share + 0.15, share - 0.3, share - 0.45, share - 0.6})
    if (other > 0 && other < 1) tips.push_back(tip_in(sheet, named, other));
  add_note(sheet.drawing, note, tips, sheet.field);
}

}  // namespace

void add_layer_notes(const SectionSheet& sheet) {
  double share = 0.7;
  for (const Named& named : named_layers(sheet.plan)) {
    const std::string text = named.text(sheet.plan);
    if (text.empty()) continue;
    add_layer_note(sheet, named, text, share);
    share -= 0.07;
  }
}

}  // namespace lamwright::drawing
