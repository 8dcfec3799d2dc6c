// Sheets, lengths and slats in the summary.
#pragma once
#include "exporters/json/numbers.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright {

// Each nested sheet: board, size, used length, yield, its pieces by name with `at` (where the part's lower
// left lies) and `turn_deg`.
Json sheets_json(const Supply& supply);
// Each section of timber: lengths bought, what is cut from each, rests.
Json timber_json(const Supply& supply);
// Each sheet of the pack: exact girth and the length that all are cut to.
Json pack_json(const Supply& supply);
// Each caul: runs with pieces and joints, slats taken from stock, what is missing, girth covered (null:
// without end).
Json cauls_json(const PressPlan& plan);
Json items_json(const std::vector<SupplyItem>& items);

}  // namespace lamwright
