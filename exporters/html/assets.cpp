#include "exporters/html/assets.hpp"

// Set by embedded.S, which takes the files in as they are.
extern "C" {
extern const char lamwright_page_style[];
extern const char lamwright_page_style_end[];
extern const char lamwright_page_script[];
extern const char lamwright_page_script_end[];
}

namespace lamwright::html::assets {

std::string_view style() {
  return {lamwright_page_style, std::size_t(lamwright_page_style_end - lamwright_page_style)};
}
std::string_view script() {
  return {lamwright_page_script, std::size_t(lamwright_page_script_end - lamwright_page_script)};
}

}  // namespace lamwright::html::assets
