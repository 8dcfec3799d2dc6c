// What it costs, by the workshop's own prices.
#pragma once
#include "exporters/csv/lists.hpp"

namespace lamwright {

// Every item that is bought with its price where the job's data give one for its name and unit: "unit_price",
// "currency", amounts for one panel and for the count. Items without a price have none; a last row sums up
// for each currency.
CsvTable quote(const ExportInput& input);

}  // namespace lamwright
