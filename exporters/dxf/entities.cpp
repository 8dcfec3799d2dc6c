#include "exporters/dxf/entities.hpp"

#include <cmath>

#include "exporters/dxf/bulges.hpp"
#include "exporters/dxf/names.hpp"
#include "shared/units.hpp"

namespace lamwright::dxf {
namespace {

using drawing::Anchor;
using drawing::Area;
using drawing::Circle;
using drawing::Path;
using drawing::Text;

constexpr int kRatioDecimals = 9;

class EntityWriter {
 public:
  EntityWriter(Groups& groups, const std::string& layer) : groups_(groups), layer_(layer) {}

  void operator()(const Segment& s) const {
    if (without_length(s)) return;
    if (s.straight())
      begin("LINE").subclass("AcDbLine").spatial(10, s.from).spatial(11, s.to);
    else
      arc(s);
  }

  void operator()(const Circle& circle) const {
    if (circle.radius <= 0) return;
    begin("CIRCLE").subclass("AcDbCircle").spatial(10, circle.centre).real(40, circle.radius);
  }

  void operator()(const Path& path) const {
    const std::vector<Vertex> points = vertices(path);
    if (points.size() < 2) return;
    if (groups_.r2000())
      light_polyline(points, path.closed);
    else
      polyline(points, path.closed);
  }

  void operator()(const Area& area) const {
    for (const Path& loop : area.loops) (*this)(loop);
  }

  void operator()(const Text& text) const {
    const std::string line = encoded(text.text);
    if (line.find_first_not_of(' ') == std::string::npos) return;
    begin("TEXT").subclass("AcDbText").spatial(10, text.at).real(40, text.height).text(1, line);
    groups_.real(50, std::remainder(degrees(text.angle), 360), kRatioDecimals);
    if (text.anchor != Anchor::left)
      groups_.whole(72, text.anchor == Anchor::middle ? 1 : 2).spatial(11, text.at);
    groups_.subclass("AcDbText");
  }

 private:
  Groups& begin(std::string_view type) const {
    return groups_.record(type, kModelSpace).subclass("AcDbEntity").text(8, layer_);
  }

  // Always anticlockwise from its first angle to its second.
  void arc(const Segment& s) const {
    const Vec2 from = (s.turn > 0 ? s.from : s.to) - s.centre, to = (s.turn > 0 ? s.to : s.from) - s.centre;
    begin("ARC").subclass("AcDbCircle").spatial(10, s.centre).real(40, s.radius).subclass("AcDbArc");
    groups_.real(50, angle(from), kRatioDecimals).real(51, angle(to), kRatioDecimals);
  }

  static double angle(const Vec2& v) {
    const double found = degrees(std::atan2(v.y(), v.x()));
    return found < 0 ? found + 360 : found;
  }

  void bulge(const Vertex& vertex) const {
    if (vertex.bulge != 0) groups_.real(42, vertex.bulge, kRatioDecimals);
  }

  void light_polyline(const std::vector<Vertex>& points, bool closed) const {
    begin("LWPOLYLINE").subclass("AcDbPolyline").whole(90, long(points.size())).whole(70, closed ? 1 : 0);
    for (const Vertex& vertex : points) {
      groups_.point(10, vertex.at);
      bulge(vertex);
    }
  }

  void polyline(const std::vector<Vertex>& points, bool closed) const {
    begin("POLYLINE").whole(66, 1).spatial(10, {0, 0}).whole(70, closed ? 1 : 0);
    for (const Vertex& vertex : points) {
      begin("VERTEX").spatial(10, vertex.at);
      bulge(vertex);
    }
    begin("SEQEND");
  }

  Groups& groups_;
  const std::string& layer_;
};

}  // namespace

void write_entity(Groups& groups, const std::string& layer, const drawing::Shape& shape) {
  std::visit(EntityWriter(groups, layer), shape);
}

}  // namespace lamwright::dxf
