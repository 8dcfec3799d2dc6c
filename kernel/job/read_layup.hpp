// The [layup] table: plies, glue, cover sheets.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/job/reader.hpp"
#include "kernel/panel/trade.hpp"

namespace lamwright {

LayupSpec read_layup(Reader& reader, const TradeTables& trade);

// Figures of a plain sheet of which only the thickness is known: those of hardboard, of bending plywood.
Board plain_board(const TradeTables& trade, const std::string& row, double thickness,
                  const std::string& label);

}  // namespace lamwright
