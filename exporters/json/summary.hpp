// summary.json: every figure of a build, for machines.
#pragma once
#include "exporters/json/numbers.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// Lengths in mm, angles in degrees, all rounded to 1e-9. `written` are the files of the build, of which each
// part names its own.
Json summary_json(const ExportInput& input, const std::vector<std::string>& written);

// Written last, since it lists the files of each part.
class SummaryExporter : public Exporter {
 public:
  std::string name() const override { return "json"; }  // as `outputs.only` names it
  std::string summary() const override { return "summary.json: every figure, for machines"; }
  ExportNeeds needs() const override { return {.others = true}; }  // it lists their files
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
