#include "exporters/scene/scene.hpp"

#include "exporters/scene/gathering.hpp"
#include "exporters/scene/opening.hpp"
#include "exporters/scene/straps.hpp"
#include "kernel/press/layers.hpp"

namespace lamwright::scene {
namespace {

Kind kind_of(PartKind kind) {
  switch (kind) {
    case PartKind::beam:
    case PartKind::bearer:
      return Kind::beam;
    case PartKind::spacer_block:
    case PartKind::fixing_block:
    case PartKind::stop:
      return Kind::block;
    case PartKind::pressing_beam:
      return Kind::pressing_beam;
    case PartKind::slat:
      return Kind::bed_caul;
    case PartKind::panel:
      return Kind::panel;
    case PartKind::former_lower:
    case PartKind::former_upper:
    case PartKind::shape_template:
    case PartKind::cradle:
      break;
  }
  return Kind::former;
}

Kind kind_of(const PressPlan& plan, const Body& body) {
  const Kind kind = kind_of(plan.parts[body.part].kind());
  return kind == Kind::bed_caul && body.group != Group::lower ? Kind::top_caul : kind;
}

Kind kind_of(Layer::Kind kind) {
  switch (kind) {
    case Layer::Kind::panel:
      return Kind::panel;
    case Layer::Kind::bed_caul:
      return Kind::bed_caul;
    case Layer::Kind::top_caul:
      return Kind::top_caul;
    case Layer::Kind::cover:
    case Layer::Kind::liner:
    case Layer::Kind::sheathing:
      break;
  }
  return Kind::cover;
}

void add_bodies(const PressPlan& plan, const Opening& opening, Gathering& to) {
  for (const Body& body : plan.bodies)
    to.add({body.name, body.part, body.placed, kind_of(plan, body), opening.of_body(body)});
}

// Slatted layers and the panel are bodies.
bool laid_in(const Layer& layer) {
  return layer.kind != Layer::Kind::panel && layer.slats.empty() && layer.thickness > 0;
}

std::string name_of(Layer::Kind kind, bool over_panel) {
  const bool caul = kind == Layer::Kind::bed_caul || kind == Layer::Kind::top_caul;
  return to_text(kind) + (caul ? "" : over_panel ? "-upper" : "-lower");
}

// As wide as the pack, like all that lies in it.
void add_sheets(const PressPlan& plan, const Opening& opening, Gathering& to) {
  bool over = false;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    const Layer& layer = plan.layers[i];
    over = over || layer.kind == Layer::Kind::panel;
    if (!laid_in(layer)) continue;
    const std::string name = name_of(layer.kind, over);
    to.add_counted({name, {}, extruded(Outline(layer_loop(layer), name), plan.panel.blank_width())}, {},
                   kind_of(layer.kind), opening.of_layer(i));
  }
}

}  // namespace

Scene scene_of(const PressPlan& plan) {
  const Opening opening(plan);
  Gathering all(plan.parts);
  add_bodies(plan, opening, all);
  add_sheets(plan, opening, all);
  add_straps(plan, opening, all);
  add_pins(plan, opening, all);
  return all.finished();
}

Scene scene_of(const Part& part) {
  return {{{part.name(), part.stock(), mesh_of(part)}},
          {{part.name() + "-01", 0, {}, kind_of(part.kind()), {0, 0, 0}}}};
}

}  // namespace lamwright::scene
