#include "kernel/reading/svg/true_size.hpp"

#include "kernel/reading/svg/transform.hpp"
#include "kernel/reading/svg/view_box.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::svg_reading {
namespace {

constexpr const char* kRemedy =
    "give scale (mm per unit of the drawing), or a width and height in mm in the drawing";

void check(const SvgSpec& spec) {
  if (!(spec.dpi >= 1e-3 && spec.dpi <= 1e6))
    throw job_error({spec.file, 0, 0, {}}, "dpi is " + number(spec.dpi, 6), "allowed 0.001 to 1000000");
  if (spec.scale && !(*spec.scale >= 1e-9 && *spec.scale <= 1e9))
    throw job_error({spec.file, 0, 0, {}}, "scale is " + number(*spec.scale, 12),
                    "allowed 1e-9 to 1e9 mm per unit");
}

std::string px_note(double dpi) {
  return "px taken at " + number(dpi) + " to the inch: 1 px is " + number(kMmPerInch / dpi, 6) + " mm";
}

// Nothing when it is missing, auto or a share of something unknown.
std::optional<double> true_length(const Element& outermost, const char* name, const SvgSpec& spec,
                                  Notes& notes) {
  const auto text = attribute(outermost, name, spec.file);
  if (!text || text->text == "auto") return std::nullopt;
  const auto length = read_length(*text);
  const auto mm = mm_per(length.unit, spec.dpi);
  if (!mm) return std::nullopt;
  if (!(length.value > 0))
    throw job_error(text->where, "read \"" + shown(text->text) + "\"", "allowed over 0");
  if (is_px(length.unit)) notes.say(px_note(spec.dpi));
  return length.value * *mm;
}

// "width "100%"" or "no height".
std::string given(const Element& outermost, const std::string& name, const SvgSpec& spec) {
  const auto text = attribute(outermost, name.c_str(), spec.file);
  return text ? name + " \"" + shown(text->text) + "\"" : "no " + name;
}

// One true length is enough beside a viewBox, which gives the other by its proportions.
Vec2 true_size(const Element& outermost, const SvgSpec& spec, const std::optional<ViewBox>& box,
               Notes& notes) {
  const auto width = true_length(outermost, "width", spec, notes);
  const auto height = true_length(outermost, "height", spec, notes);
  if (width && height) return {*width, *height};
  if (width && box) return box->size * (*width / box->size.x());
  if (height && box) return box->size * (*height / box->size.y());
  throw job_error(
      place_of(outermost, spec.file),
      "has no true size: " + given(outermost, "width", spec) + ", " + given(outermost, "height", spec),
      kRemedy);
}

// The transform of the element itself counts in px, or in units when those have a scale.
Affine own_transform(const Element& outermost, double mm_per_unit, const SvgSpec& spec) {
  const auto text = attribute(outermost, "transform", spec.file);
  if (!text) return {};
  Affine out = read_transform(*text);
  out.shift *= mm_per_unit;
  return out;
}

Sheet by_scale(const Element& outermost, const SvgSpec& spec, const std::optional<ViewBox>& box) {
  const double mm = *spec.scale;
  Sheet out{scaled(mm, mm), {std::nullopt, spec.dpi}};
  if (box) {
    out.to_mm = out.to_mm * moved(-box->corner);
    out.viewport.size = box->size;
  }
  out.to_mm = own_transform(outermost, mm, spec) * out.to_mm;
  return out;
}

Sheet by_size(const Element& outermost, const SvgSpec& spec, const std::optional<ViewBox>& box,
              Notes& notes) {
  const Vec2 size = true_size(outermost, spec, box, notes);
  const double px = kMmPerInch / spec.dpi;
  Sheet out{scaled(px, px), {Vec2(size / px), spec.dpi}};
  if (box) {
    out.to_mm = fitted(*box, size, read_fitting(outermost, spec.file), place_of(outermost, spec.file));
    out.viewport.size = box->size;
  } else {
    notes.say(px_note(spec.dpi));
  }
  out.to_mm = own_transform(outermost, px, spec) * out.to_mm;
  return out;
}

}  // namespace

Sheet sheet(const Element& outermost, const SvgSpec& spec, Notes& notes) {
  check(spec);
  const auto box = read_view_box(outermost, spec.file);
  Sheet out = spec.scale ? by_scale(outermost, spec, box) : by_size(outermost, spec, box, notes);
  out.to_mm = scaled(1, -1) * out.to_mm;
  return out;
}

}  // namespace lamwright::svg_reading
