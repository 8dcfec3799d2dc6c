#include "exporters/csv/csv_exporter.hpp"

#include "exporters/csv/lists.hpp"
#include "exporters/csv/quote.hpp"
#include "shared/csv.hpp"

namespace lamwright {
namespace {

// Lines end as RFC 4180 says. A table with no row under its head is no file.
void write_table(Sink& sink, const std::string& name, const CsvTable& table) {
  if (table.size() < 2) return;
  std::string text;
  for (const auto& row : table) text += csv_line(row) + "\r\n";
  sink.write("lists/" + name + ".csv", text);
}

}  // namespace

void CsvExporter::write(const ExportInput& input, Sink& sink) const {
  const Supply& supply = input.supply;
  write_table(sink, "cut-list", cut_list(input));
  write_table(sink, "blanks", blanks_list(supply));
  write_table(sink, "timber", timber_list(supply));
  write_table(sink, "sheets", sheets_list(supply));
  write_table(sink, "slats", slats_list(input.plan));
  write_table(sink, "hardware", items_list(supply.hardware));
  write_table(sink, "buy", items_list(supply.material));
  write_table(sink, "quote", quote(input));
}

}  // namespace lamwright
