#include "kernel/reading/svg/frame.hpp"

#include "kernel/reading/svg/view_box.hpp"

namespace lamwright::svg_reading {
namespace {

double length(const Element& element, const char* name, Along along, const Viewport& around,
              const std::string& file) {
  const auto text = attribute(element, name, file);
  return text ? in_user_units(read_length(*text), along, around, *text) : 0;
}

// The whole of what is around it when nothing is said; nothing when that is not known.
std::optional<double> side(const std::optional<Attribute>& text, Along along, const Viewport& around) {
  if (!text || text->text == "auto")
    return around.size ? std::optional(along == Along::x ? around.size->x() : around.size->y())
                       : std::nullopt;
  const double out = in_user_units(read_length(*text), along, around, *text);
  if (out < 0) throw job_error(text->where, "is negative", "allowed 0 and more");
  return out;
}

}  // namespace

Vec2 corner_of(const Element& element, const Viewport& around, const std::string& file) {
  return {length(element, "x", Along::x, around, file), length(element, "y", Along::y, around, file)};
}

std::optional<Sheet> framed(const Element& element, const Sheet& around, const GivenSize& given,
                            const std::string& file) {
  const auto said = [&](const std::optional<Attribute>& by_use, const char* name) {
    return by_use ? by_use : attribute(element, name, file);
  };
  const auto width = side(said(given.width, "width"), Along::x, around.viewport);
  const auto height = side(said(given.height, "height"), Along::y, around.viewport);
  if (width.value_or(1) == 0 || height.value_or(1) == 0) return std::nullopt;

  Sheet out{around.to_mm * moved(corner_of(element, around.viewport, file)),
            {std::nullopt, around.viewport.dpi}};
  if (width && height) out.viewport.size = Vec2(*width, *height);
  const auto box = read_view_box(element, file);
  if (!box) return out;
  const Place where = place_of(element, file);
  if (!out.viewport.size) throw job_error(where, "has a viewBox but no size", "give it a width and a height");
  out.to_mm = out.to_mm * fitted(*box, *out.viewport.size, read_fitting(element, file), where);
  out.viewport.size = box->size;
  return out;
}

}  // namespace lamwright::svg_reading
