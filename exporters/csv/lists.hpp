// The lists as tables of text: a head line, then a row each.
#pragma once
#include <string>
#include <vector>

#include "kernel/plugin/exporter.hpp"

namespace lamwright {

using CsvTable = std::vector<std::vector<std::string>>;

// Every unique part of the press and every aid: count, stock, measures, where it is cut.
CsvTable cut_list(const ExportInput& input);
// Plies, covers and sheathing: exact girth beside the one length that all are cut to.
CsvTable blanks_list(const Supply& supply);
// A row for each length of timber that is bought: what is cut from it, and its rest.
CsvTable timber_list(const Supply& supply);
// A row for each nested sheet: what lies on it, its yield.
CsvTable sheets_list(const Supply& supply);
// A row for each run of slats of each caul: pieces near to far.
CsvTable slats_list(const PressPlan& plan);
// Quantities for one panel and for the count.
CsvTable items_list(const std::vector<SupplyItem>& items);

// Length for lists, mm to a tenth, without grouping.
std::string csv_length(double value);
std::string csv_quantity(double value);

}  // namespace lamwright
