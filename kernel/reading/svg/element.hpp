// Elements of the document: names, attributes, styles.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "kernel/reading/svg/attribute.hpp"

namespace tinyxml2 {
class XMLElement;
}

namespace lamwright::svg_reading {

using Element = tinyxml2::XMLElement;

std::string_view local_name(std::string_view name);  // behind the colon
std::string_view prefix(std::string_view name);      // before it, or nothing

std::string_view local_name(const Element& element);
// An attribute's text, empty when there is none.
std::string_view text_of(const Element& element, const char* name);
std::string described(const Element& element);  // "path \"inner\""
Place place_of(const Element& element, const std::string& file);
std::optional<Attribute> attribute(const Element& element, const char* name, const std::string& file);
std::size_t bytes_of(const Element& element);  // of its tag, about

// A presentation property: from the style attribute or, when that is silent, the attribute of its name.
std::string_view property(const Element& element, const char* name);

std::string_view label_of(const Element& element);  // of the first attribute called label in any namespace
std::string_view href_of(const Element& element);   // href, or else the one of another namespace

// Throws Error (job) when a style attribute moves or shapes what is drawn, as only attributes are read for
// that, and when a transform has an origin of its own.
void refuse_unread_geometry(const Element& element, const std::string& file);

}  // namespace lamwright::svg_reading
