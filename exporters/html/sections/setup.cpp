#include "exporters/html/sections/section.hpp"
#include "exporters/html/steps.hpp"

namespace lamwright::html {
namespace {

Markup list(const char* kind, const std::vector<Markup>& items, const char* attributes = "") {
  Markup out;
  for (const Markup& item : items) out += element("li", item);
  return element(kind, out, attributes);
}

Markup step_item(const Step& step) {
  return element("li", words(element("h3", step.title), list("ul", step.actions)));
}

}  // namespace

Section setup_section(const PageInput& page) {
  Markup items;
  for (const Step& step : steps(page.input, page.told)) items += step_item(step);
  const Markup care = words(element("h3", "Take care"), list("ul", cautions(page.input, page.told)));
  return {"setup", "At the press",
          words(element("aside", care, "id=\"cautions\""), element("ol", items, "class=\"steps\""))};
}

}  // namespace lamwright::html
