// The parts of a job file that are about the shop's hardware: cauls, formers, beams, straps.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/job/reader.hpp"
#include "kernel/panel/trade.hpp"

namespace lamwright {

// The row of a trade table that a node names; null after an error, which lists the rows there are.
const TradeRow* trade_row(Reader& reader, const TradeTables& trade, const Node& node,
                          const std::string& table);

// Each reads its own table of the job; errors go to the reader.
CaulSpec read_caul(Reader& reader, const TradeTables& trade);
FormerSpec read_formers(Reader& reader, const TradeTables& trade);
BeamSpec read_beams(Reader& reader, const TradeTables& trade);
StrapSpec read_straps(Reader& reader, const TradeTables& trade);

}  // namespace lamwright
