// CSV files and the shop notebook: whatever the bytes are, they are read or refused, and what was read is
// written so that it is read alike.
#include <cmath>

#include "kernel/panel/notebook.hpp"
#include "shared/csv.hpp"
#include "tests/fuzz/target.hpp"

namespace {

using namespace lamwright;

void check(const std::vector<CsvRecord>& records) {
  for (std::size_t i = 0; i < records.size(); ++i) {
    ensure(!records[i].fields.empty(), "a record has a field");
    ensure(i == 0 || records[i].line > records[i - 1].line, "records stand in the order of their lines");
    const auto again = read_csv("head\n" + csv_line(records[i].fields) + "\n", "again.csv");
    ensure(again.size() == 2 && again[1].fields == records[i].fields, "a record is written as it was read");
  }
}

void check(const NotebookEntry& entry) {
  ensure(!fault_of(entry), "an entry that was read has no fault");
  const auto again = read_notebook(notebook_header() + "\n" + notebook_line(entry) + "\n", "again.csv");
  ensure(again.size() == 1, "a line of the notebook is read again");
  ensure(again[0].layup == entry.layup && again[0].glue == entry.glue && again[0].note == entry.note,
         "its words are the same");
  ensure(std::abs(again[0].pressed - entry.pressed) <= 1e-6, "its figures are the same");
}

void check(const std::vector<NotebookEntry>& entries) {
  for (const NotebookEntry& entry : entries) check(entry);
  for (const NotebookFit& fit : fits(entries)) {
    ensure(std::isfinite(fit.share) && fit.share <= 1, "a share is finite and leaves a curve");
    ensure(!fit.spread || std::isfinite(*fit.spread), "a spread is finite");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto text = fuzz::text_of(data, size);
  const int as_csv = fuzz::offer([&] { check(read_csv(text, "rack.csv")); });
  const int as_notebook = fuzz::offer([&] { check(read_notebook(text, "springback.csv")); });
  ensure(as_csv == 0 || as_notebook != 0, "a notebook is a CSV file");
  return as_notebook;
}
