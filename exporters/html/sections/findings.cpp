#include <algorithm>

#include "exporters/html/sections/finding_rows.hpp"
#include "exporters/html/sections/section.hpp"

namespace lamwright::html {

Section findings_section(const PageInput& page) {
  const Told& told = page.told;
  const std::size_t count = told.size("/findings");
  std::vector<std::size_t> order = worst_first(told, count);
  for (std::size_t i = 0; i < count; ++i)
    if (std::find(order.begin(), order.end(), i) == order.end()) order.push_back(i);
  Markup body;
  for (const std::size_t i : order) body += finding_folded(told, i);
  return {"findings", "Checks", body};
}

}  // namespace lamwright::html
