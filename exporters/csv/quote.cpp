#include "exporters/csv/quote.hpp"

#include <algorithm>
#include <map>

#include "shared/number.hpp"

namespace lamwright {
namespace {

struct Amounts {
  double one = 0, all = 0;
};

const Price* price_of(const std::vector<Price>& prices, const SupplyItem& item) {
  const auto found = std::find_if(prices.begin(), prices.end(), [&](const Price& price) {
    return price.name == item.name && price.per == item.unit;
  });
  return found == prices.end() ? nullptr : &*found;
}

std::string money(double value) { return number(value, 2); }

std::string remark(const std::vector<Price>& prices, const SupplyItem& item) {
  for (const Price& price : prices)
    if (price.name == item.name) return "priced by the " + price.per + ", counted by the " + item.unit;
  return "no price";
}

}  // namespace

CsvTable quote(const ExportInput& input) {
  CsvTable table{{"item", "use", "one_panel", "all_panels", "unit", "unit_price", "currency",
                  "amount_one_panel", "amount_all_panels", "remark"}};
  std::map<std::string, Amounts> sums;
  int without = 0;
  for (const auto* items : {&input.supply.material, &input.supply.hardware})
    for (const SupplyItem& item : *items) {
      const std::vector<std::string> row{item.name, item.use, csv_quantity(item.one), csv_quantity(item.all),
                                         item.unit};
      table.push_back(row);
      if (const Price* price = price_of(input.job.prices, item)) {
        const Amounts amounts{item.one * price->price, item.all * price->price};
        sums[price->currency].one += amounts.one;
        sums[price->currency].all += amounts.all;
        for (const std::string& field :
             {money(price->price), price->currency, money(amounts.one), money(amounts.all), std::string()})
          table.back().push_back(field);
      } else {
        ++without;
        for (const std::string& field :
             {std::string(), std::string(), std::string(), std::string(), remark(input.job.prices, item)})
          table.back().push_back(field);
      }
    }
  for (const auto& [currency, sum] : sums)
    table.push_back({"sum", without > 0 ? "of the items with a price" : "", "", "", "", "", currency,
                     money(sum.one), money(sum.all),
                     without > 0 ? std::to_string(without) + " without a price" : std::string()});
  return table;
}

}  // namespace lamwright
