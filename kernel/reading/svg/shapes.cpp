#include "kernel/reading/svg/shapes.hpp"

#include <algorithm>
#include <array>

#include "kernel/reading/svg/number_scanner.hpp"
#include "kernel/reading/svg/path_data.hpp"
#include "shared/units.hpp"

namespace lamwright::svg_reading {
namespace {

// Reads the lengths of one element.
class Lengths {
 public:
  Lengths(const Element& element, const Viewport& viewport, const std::string& file)
      : element_(element), viewport_(viewport), file_(file) {}

  // 0 when the element has none.
  double place(const char* name, Along along) const { return read(name, along).value_or(0); }

  // Nothing when the element has none or it is auto; not negative.
  std::optional<double> size(const char* name, Along along) const {
    const auto out = read(name, along);
    if (out && *out < 0)
      throw job_error(attribute(element_, name, file_)->where, "is negative", "allowed 0 and more");
    return out;
  }

 private:
  std::optional<double> read(const char* name, Along along) const {
    const auto text = attribute(element_, name, file_);
    if (!text || text->text == "auto") return std::nullopt;
    return in_user_units(read_length(*text), along, viewport_, *text);
  }

  const Element& element_;
  const Viewport& viewport_;
  const std::string& file_;
};

// A radius that is not given equals the other one.
Vec2 radii(const Lengths& read) {
  const auto rx = read.size("rx", Along::x), ry = read.size("ry", Along::y);
  return {rx.value_or(ry.value_or(0)), ry.value_or(rx.value_or(0))};
}

EllipticArc quarter(const Vec2& centre, const Vec2& radii, double start) {
  return {centre, {radii.x(), 0}, {0, radii.y()}, start, kPi / 2};
}

PathSteps full_ellipse(const Vec2& centre, const Vec2& radii) {
  if (radii.x() == 0 || radii.y() == 0) return {};
  const Vec2 start = centre + Vec2(radii.x(), 0);
  const EllipticArc arc{centre, {radii.x(), 0}, {0, radii.y()}, 0, 2 * kPi};
  return {MoveTo{start}, ArcTo{arc, start}, Close{}};
}

PathSteps circle(const Lengths& read) {
  const Vec2 centre{read.place("cx", Along::x), read.place("cy", Along::y)};
  const double radius = read.size("r", Along::both).value_or(0);
  return full_ellipse(centre, {radius, radius});
}

PathSteps ellipse(const Lengths& read) {
  return full_ellipse({read.place("cx", Along::x), read.place("cy", Along::y)}, radii(read));
}

PathSteps straight_line(const Lengths& read) {
  return {MoveTo{{read.place("x1", Along::x), read.place("y1", Along::y)}},
          LineTo{{read.place("x2", Along::x), read.place("y2", Along::y)}}};
}

PathSteps sharp_rect(const Vec2& a, const Vec2& b) {
  return {MoveTo{a}, LineTo{{b.x(), a.y()}}, LineTo{b}, LineTo{{a.x(), b.y()}}, Close{}};
}

PathSteps round_rect(const Vec2& a, const Vec2& b, const Vec2& r) {
  const Vec2 low = a + r, high = b - r;  // the rectangle of the centres
  return {MoveTo{{low.x(), a.y()}},
          LineTo{{high.x(), a.y()}},
          ArcTo{quarter({high.x(), low.y()}, r, -kPi / 2), {b.x(), low.y()}},
          LineTo{{b.x(), high.y()}},
          ArcTo{quarter(high, r, 0), {high.x(), b.y()}},
          LineTo{{low.x(), b.y()}},
          ArcTo{quarter({low.x(), high.y()}, r, kPi / 2), {a.x(), high.y()}},
          LineTo{{a.x(), low.y()}},
          ArcTo{quarter(low, r, kPi), {low.x(), a.y()}},
          Close{}};
}

PathSteps rect(const Lengths& read) {
  const Vec2 corner{read.place("x", Along::x), read.place("y", Along::y)};
  const Vec2 size{read.size("width", Along::x).value_or(0), read.size("height", Along::y).value_or(0)};
  if (size.x() == 0 || size.y() == 0) return {};
  const Vec2 r = radii(read).cwiseMin(size / 2);
  if (r.x() == 0 || r.y() == 0) return sharp_rect(corner, corner + size);
  return round_rect(corner, corner + size, r);
}

PathSteps poly(const Attribute& points, bool closed) {
  const auto numbers = read_numbers(points);
  if (numbers.size() % 2 != 0)
    throw fault(points, points.text.size(), "the number of coordinates is odd",
                "write x and y of each point");
  PathSteps out;
  for (std::size_t i = 0; i < numbers.size(); i += 2) {
    const Vec2 to{numbers[i], numbers[i + 1]};
    if (i == 0)
      out.push_back(MoveTo{to});
    else
      out.push_back(LineTo{to});
  }
  if (closed && !out.empty()) out.push_back(Close{});
  return out;
}

}  // namespace

bool is_shape(std::string_view name) {
  constexpr std::array<std::string_view, 7> kShapes{"path",   "line",    "polyline", "polygon",
                                                    "circle", "ellipse", "rect"};
  return std::find(kShapes.begin(), kShapes.end(), name) != kShapes.end();
}

PathSteps shape(const Element& element, const Viewport& viewport, const std::string& file) {
  const auto name = local_name(element);
  const Lengths read(element, viewport, file);
  if (name == "line") return straight_line(read);
  if (name == "circle") return circle(read);
  if (name == "ellipse") return ellipse(read);
  if (name == "rect") return rect(read);
  const auto text = attribute(element, name == "path" ? "d" : "points", file);
  if (!text) return {};
  return name == "path" ? read_path(*text) : poly(*text, name == "polygon");
}

}  // namespace lamwright::svg_reading
