#include "exporters/html/sections/section.hpp"
#include "exporters/html/table.hpp"

namespace lamwright::html {
namespace {

// Things are counted, what is measured is told in the job's units.
Markup amount(const Told& told, const std::string& pointer, const std::string& unit) {
  if (unit != "piece" && unit != "sheet") return told.quantity(pointer, unit);
  return words(told.amount(pointer), " ", unit, told.at(pointer).get<double>() == 1 ? "" : "s");
}

Markup buy_table(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/buy"); ++i) {
    const std::string item = "/buy/" + std::to_string(i), unit = told.text(item + "/unit");
    rows.push_back({told.text(item + "/name"), told.text(item + "/use"),
                    amount(told, item + "/one_panel", unit), amount(told, item + "/all_panels", unit)});
  }
  return rows.empty() ? Markup()
                      : words(element("h3", "Material"),
                              table({{"what"}, {"for"}, {"one panel", true}, {"all", true}}, rows));
}

Markup hardware_table(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/hardware"); ++i) {
    const std::string item = "/hardware/" + std::to_string(i);
    rows.push_back({told.text(item + "/name"), told.text(item + "/use"),
                    amount(told, item + "/count", told.text(item + "/unit"))});
  }
  return rows.empty() ? Markup()
                      : words(element("h3", "Hardware"), table({{"what"}, {"for"}, {"count", true}}, rows));
}

}  // namespace

Section lists_section(const PageInput& page) {
  return {"lists", "To buy and to have at hand", words(buy_table(page.told), hardware_table(page.told))};
}

}  // namespace lamwright::html
