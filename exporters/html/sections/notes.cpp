#include "exporters/html/sections/section.hpp"

namespace lamwright::html {

Section notes_section(const PageInput& page) {
  const Told& told = page.told;
  Markup items;
  for (const char* list : {"/notes", "/read"})
    for (std::size_t i = 0; i < told.size(list); ++i)
      items += element("li", told.text(list + ("/" + std::to_string(i))));
  return {"notes", "Notes", items.empty() ? Markup() : element("ul", items)};
}

}  // namespace lamwright::html
