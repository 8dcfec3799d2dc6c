#include "exporters/dxf/dxf_writer.hpp"

#include <algorithm>

#include "exporters/drawing/text.hpp"
#include "exporters/dxf/entities.hpp"
#include "exporters/dxf/groups.hpp"
#include "exporters/dxf/names.hpp"
#include "exporters/dxf/spaces.hpp"
#include "exporters/dxf/tables.hpp"
#include "shared/error.hpp"

namespace lamwright {
namespace {

using drawing::Drawing;
using drawing::Item;
using drawing::Text;
using dxf::Groups;

// By pen; empty where nothing is drawn with it.
std::vector<std::string> used_layers(const Drawing& drawing, DxfVersion version) {
  std::vector<std::string> names;
  for (const drawing::Pen& pen : drawing.pens()) names.push_back(pen.name);
  std::vector<std::string> layers = dxf::layer_names(names, version);
  for (std::size_t pen = 0; pen < layers.size(); ++pen)
    if (std::none_of(drawing.items().begin(), drawing.items().end(),
                     [&](const Item& item) { return item.pen == pen; }))
      layers[pen].clear();
  return layers;
}

Box2 extent(const Drawing& drawing) {
  Box2 box;
  for (const Item& item : drawing.items()) {
    for (const Segment& s : strokes(item.shape)) box.add(lamwright::box(s));
    if (const auto* text = std::get_if<Text>(&item.shape)) box.add(text_box(*text));
  }
  return box.low.x() <= box.high.x() ? box : Box2{{0, 0}, drawing.size()};
}

void write_extent(Groups& groups, const Box2& shown) {
  groups.text(9, "$EXTMIN").spatial(10, shown.low).text(9, "$EXTMAX").spatial(10, shown.high);
  groups.text(9, "$LIMMIN").point(10, shown.low).text(9, "$LIMMAX").point(10, shown.high);
}

void write_header(Groups& groups, const Box2& shown, unsigned free_handle) {
  groups.begin_section("HEADER");
  groups.text(9, "$ACADVER").text(1, groups.r2000() ? "AC1015" : "AC1009");
  if (groups.r2000()) groups.text(9, "$DWGCODEPAGE").text(3, "ANSI_1252");
  groups.text(9, "$INSBASE").spatial(10, {0, 0});
  write_extent(groups, shown);
  groups.text(9, "$LTSCALE").real(40, 1).text(9, "$LUNITS").whole(70, 2).text(9, "$LUPREC").whole(70, 3);
  if (groups.r2000()) {
    groups.text(9, "$HANDSEED").handle(5, free_handle);
    groups.text(9, "$MEASUREMENT").whole(70, 1).text(9, "$INSUNITS").whole(70, 4);
  }
  groups.end_section();
}

// Layer by layer in the order of pens, which is that of work.
void write_entities(Groups& groups, const Drawing& drawing, const std::vector<std::string>& layers) {
  groups.begin_section("ENTITIES");
  for (std::size_t pen = 0; pen < layers.size(); ++pen)
    for (const Item& item : drawing.items())
      if (item.pen == pen) write_entity(groups, layers[pen], item.shape);
  groups.end_section();
}

}  // namespace

std::string dxf_text(const Drawing& drawing, DxfVersion version) {
  const Box2 shown = extent(drawing);
  const std::vector<std::string> layers = used_layers(drawing, version);
  Groups body(version);
  if (body.r2000()) {
    body.begin_section("CLASSES");
    body.end_section();
  }
  write_tables(body, drawing, layers, shown);
  dxf::write_blocks(body);
  write_entities(body, drawing, layers);
  if (body.r2000()) write_objects(body, shown);
  body.text(0, "EOF");
  // Last, because it names the first handle that is free.
  Groups head(version);
  write_header(head, shown, body.next_handle());
  return head.bytes() + body.bytes();
}

DxfVersion dxf_version(const std::string& name) {
  ensure(name == "r2000" || name == "r12", "a DXF version is r2000 or r12");
  return name == "r12" ? DxfVersion::r12 : DxfVersion::r2000;
}

}  // namespace lamwright
