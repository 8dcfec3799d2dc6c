// The lists: what to cut, what to buy, what it costs. RFC 4180, UTF-8.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// lists/cut-list.csv, blanks.csv, timber.csv, sheets.csv, slats.csv, hardware.csv, buy.csv and quote.csv;
// those that would hold no row are left out.
class CsvExporter : public Exporter {
 public:
  std::string name() const override { return "csv"; }
  std::string summary() const override {
    return "lists: parts, blanks, timber, sheets, slats, hardware, to buy, quote";
  }
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
