#include <algorithm>

#include "exporters/html/sections/finding_rows.hpp"
#include "exporters/html/sections/section.hpp"

namespace lamwright::html {

Section findings_section(const PageInput& page) {
  const Told& told = page.told;
  const std::vector<std::size_t> first = worst_first(told);
  Markup open, passed;
  for (const std::size_t i : first) open += finding_folded(told, i);
  for (std::size_t i = 0; i < told.size("/findings"); ++i)
    if (std::find(first.begin(), first.end(), i) == first.end()) passed += finding_folded(told, i);
  return {"findings", "Checks",
          words(open, passed.empty() ? Markup() : element("div", passed, "class=\"passed\""))};
}

}  // namespace lamwright::html
