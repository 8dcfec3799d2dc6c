#include "kernel/reading/svg/walk.hpp"

#include <tinyxml2.h>

#include <algorithm>

#include "kernel/reading/svg/frame.hpp"
#include "kernel/reading/svg/limits.hpp"
#include "kernel/reading/svg/pen.hpp"
#include "kernel/reading/svg/shapes.hpp"
#include "kernel/reading/svg/transform.hpp"

namespace lamwright::svg_reading {
namespace {

using Names = std::vector<std::string_view>;

bool is_one_of(std::string_view name, std::initializer_list<std::string_view> names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// Of no line, or drawn only where something points to them.
bool is_silent(std::string_view name) {
  return is_one_of(name, {"defs",      "symbol", "clipPath",       "mask",           "marker",
                          "pattern",   "title",  "desc",           "metadata",       "style",
                          "script",    "filter", "linearGradient", "radialGradient", "meshgradient",
                          "view",      "cursor", "animate",        "animateMotion",  "animateTransform",
                          "set",       "font",   "font-face",      "color-profile",  "hatch",
                          "solidcolor"});
}

// How an element stands in those around it.
struct Setting {
  Sheet sheet;
  bool visible = true;
  bool by_use = false;
  Names layers;
  int level = 0;
};

class Walk {
 public:
  Walk(const Document& document, const std::string& file, Notes& notes)
      : document_(document), file_(file), notes_(notes), limits_(file) {}

  std::vector<DrawnCurve> run(const Sheet& sheet) {
    const Element& outermost = document_.outermost();
    Setting setting{sheet, true, false, {}, 0};
    refuse_unread_geometry(outermost, file_);
    note_style_sheets();
    set_visible(setting, outermost);
    shown_.push_back(&outermost);
    if (displayed(outermost)) children(outermost, setting);
    return std::move(curves_);
  }

 private:
  void children(const Element& parent, const Setting& setting) {
    for (const auto* child = parent.FirstChildElement(); child; child = child->NextSiblingElement())
      element(*child, setting);
  }

  void first_child(const Element& parent, const Setting& setting) {
    for (const auto* child = parent.FirstChildElement(); child; child = child->NextSiblingElement())
      if (document_.is_svg(*child) && !is_silent(local_name(*child)) &&
          text_of(*child, "requiredExtensions").empty())
        return element(*child, setting);
  }

  void element(const Element& element, const Setting& around) {
    limits_.read(bytes_of(element), around.by_use, element.GetLineNum());
    if (document_.is_svg(element) && displayed(element) && !is_silent(local_name(element)))
      show(element, around, {});
  }

  static bool displayed(const Element& element) { return property(element, "display") != "none"; }

  static void set_visible(Setting& setting, const Element& element) {
    const auto visibility = property(element, "visibility");
    if (visibility == "visible") setting.visible = true;
    if (visibility == "hidden" || visibility == "collapse") setting.visible = false;
  }

  void note_style_sheets() {
    for (const char* word : {"display", "visibility", "transform"})
      if (document_.style_sheets().find(word) != std::string::npos)
        notes_.say(
            "style sheets within the drawing are not read: what they hide or move is taken as if they did "
            "not");
  }

  Setting setting_of(const Element& element, const Setting& around) {
    refuse_unread_geometry(element, file_);
    Setting out = around;
    if (++out.level > kMostLevels)
      throw job_error(place_of(element, file_), "nests deeper than 64 levels", "ungroup the drawing");
    set_visible(out, element);
    if (const auto transform = attribute(element, "transform", file_)) {
      out.sheet.to_mm = out.sheet.to_mm * read_transform(*transform);
      if (!out.sheet.to_mm.finite())
        throw job_error(transform->where, "leads beyond all numbers", "check its figures");
    }
    return out;
  }

  void show(const Element& element, const Setting& around, const GivenSize& given) {
    const Setting setting = setting_of(element, around);
    const auto name = local_name(element);
    shown_.push_back(&element);
    if (is_shape(name))
      draw(element, setting);
    else if (is_one_of(name, {"g", "a", "switch"}))
      group(element, setting);
    else if (is_one_of(name, {"svg", "symbol"}))
      frame(element, setting, given);
    else if (name == "use")
      use(element, setting);
    else
      notes_.leave_out(svg_reading::shown(name));
    shown_.pop_back();
  }

  void group(const Element& element, const Setting& setting) {
    const Setting within = named(element, setting);
    if (local_name(element) == "switch")
      first_child(element, within);
    else
      children(element, within);
  }

  void frame(const Element& element, const Setting& setting, const GivenSize& given) {
    const auto sheet = framed(element, setting.sheet, given, file_);
    if (!sheet) return;
    Setting within = named(element, setting);
    within.sheet = *sheet;
    children(element, within);
  }

  static Setting named(const Element& element, Setting setting) {
    const auto id = text_of(element, "id"), label = label_of(element);
    if (!id.empty()) setting.layers.push_back(id);
    if (!label.empty() && label != id) setting.layers.push_back(label);
    return setting;
  }

  void draw(const Element& element, const Setting& setting) {
    if (!setting.visible) return;
    const auto steps = shape(element, setting.sheet.viewport, file_);
    if (steps.empty()) return;
    limits_.steps(steps.size(), element.GetLineNum());
    const Place where = place_of(element, file_);
    const std::string what = where.key + " (line " + std::to_string(where.line) + ")";
    if (setting.sheet.to_mm.flattens()) return notes_.count(Change::flattened, what);
    const Artist artist{
        std::string(text_of(element, "id")), {setting.layers.begin(), setting.layers.end()}, what, where};
    for (auto& curve : svg_reading::drawn(steps, setting.sheet.to_mm, artist, limits_, notes_))
      curves_.push_back(std::move(curve));
  }

  void use(const Element& element, const Setting& setting) {
    const Element* target = target_of(element);
    if (!target) {
      const Place where = place_of(element, file_);
      return notes_.count(Change::no_target, where.key + " (line " + std::to_string(where.line) + ")");
    }
    if (std::find(shown_.begin(), shown_.end(), target) != shown_.end())
      throw job_error(place_of(element, file_), "leads back to itself by way of " + described(*target),
                      "take one of the uses out");
    const auto name = local_name(*target);
    if (!displayed(*target) || (is_silent(name) && name != "symbol")) return;
    limits_.read(bytes_of(*target), true, element.GetLineNum());
    Setting within = named(element, setting);
    within.by_use = true;
    within.sheet.to_mm = within.sheet.to_mm * moved(corner_of(element, setting.sheet.viewport, file_));
    show(*target, within, {attribute(element, "width", file_), attribute(element, "height", file_)});
  }

  const Element* target_of(const Element& use) const {
    const auto href = href_of(use);
    const Element* target = href.substr(0, 1) == "#" ? document_.find(href.substr(1)) : nullptr;
    return target && document_.is_svg(*target) ? target : nullptr;
  }

  const Document& document_;
  const std::string& file_;
  Notes& notes_;
  Limits limits_;
  std::vector<const Element*> shown_;  // the one being shown and those it stands in or is used by
  std::vector<DrawnCurve> curves_;
};

}  // namespace

std::vector<DrawnCurve> walk(const Document& document, const Sheet& sheet, const std::string& file,
                             Notes& notes) {
  return Walk(document, file, notes).run(sheet);
}

}  // namespace lamwright::svg_reading
