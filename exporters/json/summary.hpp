// summary.json: every figure of a build, for machines.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// Written last, since it lists the files of each part. Lengths in mm, angles in degrees, all rounded to 1e-9.
class SummaryExporter : public Exporter {
 public:
  std::string name() const override { return "json"; }
  std::string summary() const override { return "summary.json: every figure, for machines"; }
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
