#include "kernel/reading/svg/element.hpp"

#include <tinyxml2.h>

#include <algorithm>
#include <array>

namespace lamwright::svg_reading {
namespace {

constexpr std::string_view kSpace = " \t\n\r\f";

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(kSpace);
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(kSpace) - first + 1);
}

struct Declaration {
  std::string_view name, value;
};

// Cuts the first declaration off a style.
Declaration next(std::string_view& style) {
  const auto end = std::min(style.find(';'), style.size());
  const auto text = style.substr(0, end);
  style.remove_prefix(std::min(end + 1, style.size()));
  const auto colon = text.find(':');
  if (colon == text.npos) return {};
  const auto value = text.substr(colon + 1);
  return {trimmed(text.substr(0, colon)), trimmed(value.substr(0, value.find('!')))};
}

// CSS Transforms 1 and 2; geometry properties of SVG 2, chapter 7. Sizes in a style of an svg element only
// fit the drawing into a page.
constexpr std::array<std::string_view, 14> kGeometry{
    "transform", "translate", "rotate", "scale", "offset-path", "zoom", "d",
    "x",         "y",         "cx",     "cy",    "r",           "rx",   "ry"};

bool shapes(const Declaration& declared, std::string_view element) {
  if (declared.value == "none" || declared.value == "auto") return false;
  if (element == "rect" && (declared.name == "width" || declared.name == "height")) return true;
  return std::find(kGeometry.begin(), kGeometry.end(), declared.name) != kGeometry.end();
}

}  // namespace

std::string_view local_name(std::string_view name) { return name.substr(name.find(':') + 1); }

std::string_view prefix(std::string_view name) {
  const auto colon = name.find(':');
  return colon == name.npos ? std::string_view{} : name.substr(0, colon);
}

std::string_view local_name(const Element& element) { return local_name(std::string_view(element.Name())); }

std::string_view text_of(const Element& element, const char* name) {
  const char* value = element.Attribute(name);
  return value ? value : std::string_view{};
}

std::string described(const Element& element) {
  const auto id = text_of(element, "id");
  return shown(local_name(element)) + (id.empty() ? "" : " \"" + shown(id) + "\"");
}

Place place_of(const Element& element, const std::string& file) {
  return {file, element.GetLineNum(), 0, described(element)};
}

std::optional<Attribute> attribute(const Element& element, const char* name, const std::string& file) {
  const auto* found = element.FindAttribute(name);
  if (!found) return std::nullopt;
  return Attribute{found->Value(), {file, found->GetLineNum(), 0, described(element) + ", " + name}};
}

std::size_t bytes_of(const Element& element) {
  std::size_t out = 4;
  for (const auto* a = element.FirstAttribute(); a; a = a->Next())
    out += std::string_view(a->Name()).size() + std::string_view(a->Value()).size() + 4;
  return out;
}

std::string_view property(const Element& element, const char* name) {
  std::string_view found = trimmed(text_of(element, name));
  for (std::string_view style = text_of(element, "style"); !style.empty();)
    if (const auto declared = next(style); declared.name == name) found = declared.value;
  return found;
}

std::string_view label_of(const Element& element) {
  for (const auto* a = element.FirstAttribute(); a; a = a->Next())
    if (local_name(a->Name()) == "label") return trimmed(a->Value());
  return {};
}

std::string_view href_of(const Element& element) {
  if (const auto own = text_of(element, "href"); !own.empty()) return trimmed(own);
  for (const auto* a = element.FirstAttribute(); a; a = a->Next())
    if (local_name(a->Name()) == "href") return trimmed(a->Value());
  return {};
}

void refuse_unread_geometry(const Element& element, const std::string& file) {
  for (std::string_view style = text_of(element, "style"); !style.empty();)
    if (const auto declared = next(style); shapes(declared, local_name(element)))
      throw job_error(attribute(element, "style", file)->where,
                      shown(declared.name) + " in a style is not read, and what it moves would lie wrong",
                      "write it as an attribute of the element");
  const auto origin = property(element, "transform-origin");
  if (!text_of(element, "transform").empty() && origin.find_first_not_of("0px ,") != origin.npos)
    throw job_error(place_of(element, file),
                    "transform-origin is not read, and what it moves would lie wrong",
                    "write the centre into the transform, as in rotate(30 100 50)");
}

}  // namespace lamwright::svg_reading
