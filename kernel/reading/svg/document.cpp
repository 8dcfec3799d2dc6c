#include "kernel/reading/svg/document.hpp"

#include <tinyxml2.h>

#include <algorithm>

#include "kernel/reading/svg/markup.hpp"

namespace lamwright::svg_reading {
namespace {

constexpr std::string_view kNamespace = "http://www.w3.org/2000/svg";

// Some files name the namespace by an entity of their DOCTYPE, which is not expanded.
bool names_svg(std::string_view uri) { return uri == kNamespace || (!uri.empty() && uri.front() == '&'); }

std::string problem(tinyxml2::XMLError error) {
  switch (error) {
    case tinyxml2::XML_ERROR_MISMATCHED_ELEMENT:
      return "an element is not closed, or by another's end";
    case tinyxml2::XML_ERROR_PARSING_ATTRIBUTE:
      return "an attribute is not written as name=\"value\", or given twice";
    case tinyxml2::XML_ERROR_EMPTY_DOCUMENT:
      return "is empty";
    case tinyxml2::XML_ELEMENT_DEPTH_EXCEEDED:
      return "elements nest deeper than 64 levels";
    default:
      return "is no XML";
  }
}

}  // namespace

Document::Document(std::string_view text, const std::string& file)
    : xml_(std::make_unique<tinyxml2::XMLDocument>()) {
  check_markup(text, file);
  parse(text, file);
  learn_prefixes();
  learn(*outermost_);
}

Document::~Document() = default;

void Document::parse(std::string_view text, const std::string& file) {
  const auto status = xml_->Parse(text.data(), text.size());
  if (status != tinyxml2::XML_SUCCESS)
    throw job_error({file, xml_->ErrorLineNum(), 0, {}}, problem(status),
                    "save the drawing anew as plain SVG");
  outermost_ = xml_->RootElement();
  if (!outermost_ || local_name(*outermost_) != "svg")
    throw job_error(
        {file, outermost_ ? outermost_->GetLineNum() : 0, 0, {}},
        "is no SVG: " + (outermost_ ? "its outermost element is \"" + shown(outermost_->Name()) + "\""
                                    : std::string("it has no element")),
        "save the drawing as SVG");
  if (const auto* second = outermost_->NextSiblingElement())
    throw job_error(place_of(*second, file), "stands beside the outermost element",
                    "save the drawing anew as plain SVG");
}

void Document::learn_prefixes() {
  prefixes_.push_back(prefix(outermost_->Name()));
  for (const auto* a = outermost_->FirstAttribute(); a; a = a->Next())
    if (prefix(a->Name()) == "xmlns" && names_svg(a->Value())) prefixes_.push_back(local_name(a->Name()));
}

// The parser bounds the depth.
void Document::learn(const Element& element) {
  if (const auto id = text_of(element, "id"); !id.empty()) ids_.try_emplace(id, &element);
  if (const char* text = local_name(element) == "style" ? element.GetText() : nullptr) style_sheets_ += text;
  for (const auto* child = element.FirstChildElement(); child; child = child->NextSiblingElement())
    learn(*child);
}

bool Document::is_svg(const Element& element) const {
  const auto own = prefix(element.Name());
  const std::string declaration = own.empty() ? "xmlns" : "xmlns:" + std::string(own);
  if (const auto uri = text_of(element, declaration.c_str()); !uri.empty()) return names_svg(uri);
  return std::find(prefixes_.begin(), prefixes_.end(), own) != prefixes_.end();
}

const Element* Document::find(std::string_view id) const {
  const auto found = ids_.find(id);
  return found == ids_.end() ? nullptr : found->second;
}

}  // namespace lamwright::svg_reading
