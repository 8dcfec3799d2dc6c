#include "exporters/drawing/operations.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "exporters/drawing/lettering.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

struct Kind {
  std::string_view begins;
  const char* colour;
};

// In order of work.
constexpr std::array<Kind, 9> kKinds{{{"DRILL_", "#0050b0"},
                                      {"CBORE_", "#008a8a"},
                                      {layers::kOutline, "#000000"},
                                      {layers::kTrim, "#7a4a8c"},
                                      {layers::kSaw, "#c02020"},
                                      {layers::kMark, "#b0641e"},
                                      {layers::kLabel, "#2c7a2c"},
                                      {layers::kCheck, "#909090"},
                                      {layers::kBorder, "#505050"}}};

std::string deep(double depth) { return "_DEEP_" + number(depth); }

void add_bore(std::vector<Operation>& out, const Part& part, const Bore& bore, const Placing& placing) {
  const Vec3 axis = part.sheet().local_vector(bore.axis);
  if (std::abs(std::abs(axis.z()) - 1) > kTangent) return;
  const Vec2 at = placing.point(part.sheet().local_point(bore.at).head<2>());
  const std::string side = axis.z() > 0 ? "_UNDERSIDE" : "";
  const std::string depth = bore.depth ? deep(*bore.depth) + side : "";
  out.push_back({"DRILL_" + number(bore.diameter) + depth, Circle{at, bore.diameter / 2, {}}});
  if (!bore.counterbore) return;
  const auto [diameter, sunk] = *bore.counterbore;
  out.push_back({"CBORE_" + number(diameter) + deep(sunk) + side, Circle{at, diameter / 2, {}}});
}

const char* layer_of(Mark::Kind kind) {
  if (kind == Mark::Kind::trim_line) return layers::kTrim;
  return kind == Mark::Kind::saw_line ? layers::kSaw : layers::kMark;
}

void add_mark(std::vector<Operation>& out, const Mark& mark, const Placing& placing) {
  for (const Segment& s : mark.lines) out.push_back({layer_of(mark.kind), placing.segment(s)});
  if (mark.text.empty()) return;
  const double angle = mark.angle + placing.quarters * kPi / 2;
  out.push_back({layers::kLabel, Text{placing.point(mark.at), mark.text, mark.height, Anchor::left, angle}});
}

void add_missing(std::vector<char32_t>& out, const std::vector<char32_t>& more) {
  for (const char32_t c : more)
    if (std::find(out.begin(), out.end(), c) == out.end()) out.push_back(c);
}

}  // namespace

Vec2 own_point(const Placing& placing, const Vec2& on_sheet) {
  return Placing{(4 - placing.quarters) & 3, {0, 0}}.vector(on_sheet - placing.shift);
}

std::vector<Operation> operations(const Part& part, const Placing& placing) {
  std::vector<Operation> out;
  for (const Bore& bore : part.bores()) add_bore(out, part, bore, placing);
  Path outline{{}, true, {}};
  for (const Segment& s : part.outline().segments()) outline.segments.push_back(placing.segment(s));
  out.push_back({layers::kOutline, outline});
  for (const Mark& mark : part.marks()) add_mark(out, mark, placing);
  return out;
}

Drawing laid_out(std::string title, const Vec2& size, const std::vector<Operation>& operations) {
  std::vector<Pen> pens;
  const auto has = [&](const std::string& layer) {
    return std::any_of(pens.begin(), pens.end(), [&](const Pen& pen) { return pen.name == layer; });
  };
  for (const Kind& kind : kKinds)
    for (const Operation& operation : operations)
      if (operation.layer.starts_with(kind.begins) && !has(operation.layer))
        pens.push_back({operation.layer, 0.25, {}, kind.colour});
  Drawing drawing(std::move(title), size, std::move(pens));
  for (const Operation& operation : operations) drawing.add(operation.layer, operation.shape);
  return drawing;
}

CuttingDrawing stroked(const Drawing& drawing) {
  CuttingDrawing out{{drawing.title(), drawing.size(), drawing.pens()}, {}};
  for (const Item& item : drawing.items()) {
    const std::string& pen = drawing.pens()[item.pen].name;
    const auto* text = std::get_if<Text>(&item.shape);
    if (!text) {
      out.drawing.add(pen, item.shape);
      continue;
    }
    const Lettering letters = lettered(*text);
    for (const Path& stroke : letters.strokes) out.drawing.add(pen, stroke);
    add_missing(out.missing, letters.missing);
  }
  return out;
}

}  // namespace lamwright::drawing
