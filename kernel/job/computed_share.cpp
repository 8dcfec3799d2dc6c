#include "kernel/job/computed_share.hpp"

#include "kernel/job/make_panel.hpp"
#include "kernel/panel/layup_key.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

TradeTables rows_of(const Sources& sources) {
  TradeTables trade;
  for (const DataText& data : sources.data()) trade = trade.with(data.text, data.name);
  return trade;
}

std::string in_toml_quotes(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' || c == '\\' ? std::string{'\\', c} : std::string{c};
  return out + "\"";
}

// Nothing when neither table has the row.
std::optional<std::string> ply_entry(const LayupRun& run, const TradeTables& trade) {
  const char* table = trade.find("timbers", run.name)  ? "timber"
                      : trade.find("boards", run.name) ? "board"
                                                       : nullptr;
  if (!table) return std::nullopt;
  return std::string("{") + table + " = " + in_toml_quotes(run.name) +
         ", thickness = " + number(run.thickness, 7) + ", count = " + std::to_string(run.count) +
         ", grain = " + number(degrees(run.grain), 3) + "}";
}

}  // namespace

std::optional<double> computed_share(const std::string& layup, const Sources& sources) {
  const auto words = words_of_key(layup);
  if (!words) return std::nullopt;
  const TradeTables trade = rows_of(sources);
  std::string plies;
  for (const LayupRun& run : words->runs) {
    const auto entry = ply_entry(run, trade);
    if (!entry) return std::nullopt;
    plies += (plies.empty() ? "" : ", ") + *entry;
  }
  const JobResult piece = read_test_piece(
      "layup = {glue_line = " + number(words->glue_line, 7) + ", plies = [" + plies + "]}", layup, sources);
  if (!piece.job) return std::nullopt;
  return springback_share(section_of(make_panel(*piece.job).plies));
}

}  // namespace lamwright
