#include "exporters/svg/svg_writer.hpp"

#include <tinyxml2.h>

#include <algorithm>
#include <cmath>

#include "exporters/drawing/lettering.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

using drawing::Area;
using drawing::Circle;
using drawing::Drawing;
using drawing::Item;
using drawing::Path;
using drawing::Pen;
using drawing::Text;

constexpr double kLargestArc = radians(179);

std::string coordinate(double value) { return number(value, 6); }

// XML 1.0 (section 2.2) has neither control characters nor U+FFFE and U+FFFF: not even escaped.
std::string printable(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
  for (const std::string_view no_character : {"\xEF\xBF\xBE", "\xEF\xBF\xBF"})
    for (std::size_t at; (at = text.find(no_character)) != std::string::npos;)
      text.replace(at, no_character.size(), " ");
  return text;
}

bool has_signs(const std::string& text) {
  return text.find("\u2334") != std::string::npos || text.find("\u21A7") != std::string::npos;
}

class SvgWriter {
 public:
  explicit SvgWriter(const Drawing& drawing) : drawing_(drawing) {}

  std::string text() {
    open_document();
    for (std::size_t pen = 0; pen < drawing_.pens().size(); ++pen) write_group(pen);
    xml_.CloseElement();
    return xml_.CStr();
  }

 private:
  void attribute(const char* name, const std::string& value) { xml_.PushAttribute(name, value.c_str()); }
  void attribute(const char* name, double value) { attribute(name, coordinate(value)); }

  double flipped(double y) const { return drawing_.size().y() - y; }
  std::string point(const Vec2& p) const { return coordinate(p.x()) + " " + coordinate(flipped(p.y())); }

  void open_document() {
    const std::string width = coordinate(drawing_.size().x()), height = coordinate(drawing_.size().y());
    xml_.PushHeader(false, true);
    xml_.OpenElement("svg");
    attribute("xmlns", std::string("http://www.w3.org/2000/svg"));
    attribute("version", std::string("1.1"));
    attribute("width", width + "mm");
    attribute("height", height + "mm");
    attribute("viewBox", "0 0 " + width + " " + height);
    attribute("overflow", std::string("visible"));  // half the outline's stroke lies outside
    xml_.OpenElement("title");
    xml_.PushText(printable(drawing_.title()).c_str());
    xml_.CloseElement();
  }

  void write_group(std::size_t pen) {
    const auto& items = drawing_.items();
    if (std::none_of(items.begin(), items.end(), [&](const Item& item) { return item.pen == pen; })) return;
    open_group(drawing_.pens()[pen]);
    for (const Item& item : items)
      if (item.pen == pen)
        std::visit([&](const auto& shape) { write(shape, drawing_.pens()[pen]); }, item.shape);
    xml_.CloseElement();
  }

  void open_group(const Pen& pen) {
    xml_.OpenElement("g");
    attribute("id", pen.name);
    attribute("fill", std::string("none"));
    attribute("stroke", pen.width > 0 ? pen.colour : "none");
    if (pen.width <= 0) return;
    attribute("stroke-width", pen.width);
    attribute("stroke-linecap", std::string(pen.dashes.empty() ? "round" : "butt"));
    attribute("stroke-linejoin", std::string("round"));
    if (pen.dashes.empty()) return;
    std::string dashes;
    for (const double dash : pen.dashes) dashes += (dashes.empty() ? "" : " ") + coordinate(dash);
    attribute("stroke-dasharray", dashes);
  }

  void write(const Segment& segment, const Pen& pen) {
    if (!segment.straight()) return write(Path{{segment}, false, {}}, pen);
    xml_.OpenElement("line");
    attribute("x1", segment.from.x());
    attribute("y1", flipped(segment.from.y()));
    attribute("x2", segment.to.x());
    attribute("y2", flipped(segment.to.y()));
    xml_.CloseElement();
  }

  void write(const Circle& circle, const Pen&) {
    xml_.OpenElement("circle");
    attribute("cx", circle.centre.x());
    attribute("cy", flipped(circle.centre.y()));
    attribute("r", circle.radius);
    if (!circle.fill.empty()) attribute("fill", circle.fill);
    xml_.CloseElement();
  }

  void write(const Path& path, const Pen&) {
    if (path.segments.empty()) return;
    xml_.OpenElement("path");
    attribute("d", path_data(path));
    if (!path.fill.empty()) attribute("fill", path.fill);
    xml_.CloseElement();
  }

  void write(const Area& area, const Pen&) {
    std::string data;
    for (const Path& loop : area.loops)
      if (!loop.segments.empty()) data += (data.empty() ? "" : " ") + path_data(loop);
    if (data.empty()) return;
    xml_.OpenElement("path");
    attribute("d", data);
    attribute("fill", area.fill);
    attribute("fill-rule", std::string("evenodd"));
    xml_.CloseElement();
  }

  std::string path_data(const Path& path) const {
    std::string data = "M" + point(path.segments.front().from);
    for (std::size_t i = 0; i < path.segments.size(); ++i) {
      const Segment& s = path.segments[i];
      // Closing draws the last straight edge; written out as well it would be an edge of no length.
      const bool closes = path.closed && i + 1 == path.segments.size();
      if (!s.straight())
        data += arc_data(s);
      else if (!closes)
        data += " L" + point(s.to);
    }
    return path.closed ? data + " Z" : data;
  }

  std::string arc_data(const Segment& arc) const {
    const std::string radius = coordinate(arc.radius);
    // y points down in SVG, so an anticlockwise arc has sweep flag 0.
    const std::string head = " A" + radius + " " + radius + " 0 0 " + (arc.turn > 0 ? "0 " : "1 ");
    const bool halved = std::abs(arc.turn) > kLargestArc;
    return (halved ? head + point(arc.point(0.5)) : "") + head + point(arc.to);
  }

  // Few fonts have the signs of hole notes: such a text is drawn.
  void write_strokes(const Text& text, const Pen& pen) {
    std::string data;
    for (const Path& stroke : drawing::lettered(text).strokes)
      data += (data.empty() ? "" : " ") + path_data(stroke);
    xml_.OpenElement("path");
    attribute("d", data);
    attribute("fill", std::string("none"));
    attribute("stroke", pen.colour);
    attribute("stroke-width", drawing::stroke_width(text.height));
    xml_.CloseElement();
  }

  void write(const Text& text, const Pen& pen) {
    if (has_signs(text.text)) return write_strokes(text, pen);
    xml_.OpenElement("text");
    attribute("x", text.at.x());
    attribute("y", flipped(text.at.y()));
    attribute("font-family", std::string("sans-serif"));
    attribute("font-size", drawing::font_size(text.height));
    if (text.anchor != drawing::Anchor::left)
      attribute("text-anchor", std::string(text.anchor == drawing::Anchor::middle ? "middle" : "end"));
    if (text.angle != 0)
      attribute("transform", "rotate(" + coordinate(-degrees(text.angle)) + " " + point(text.at) + ")");
    attribute("fill", pen.colour);
    attribute("stroke", std::string("none"));
    xml_.PushText(printable(text.text).c_str());
    xml_.CloseElement();
  }

  const Drawing& drawing_;
  tinyxml2::XMLPrinter xml_;
};

}  // namespace

std::string svg_text(const drawing::Drawing& drawing) { return SvgWriter(drawing).text(); }

}  // namespace lamwright
