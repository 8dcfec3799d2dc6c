// Writes solids as STEP files (ISO 10303-21): the press as an assembly, and each part alone.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// press.step holds the press: root product "press", each part of the plan once, placed as often as it has
// bodies. parts/<name>.step holds one part, its box's lowest corner at the origin. mm; schema from
// job.outputs.step; one MANIFOLD_SOLID_BREP per part. The bytes depend on job and plan alone: the same on
// every run, in every process, thread, locale and time zone. Nothing is handed to the sink before a file is
// complete and its solids are counted.
class StepExporter : public Exporter {
 public:
  // pcurves: add parameter curves to the edges; the files become more than twice as large.
  explicit StepExporter(bool pcurves = false) : pcurves_(pcurves) {}

  std::string name() const override { return "step"; }  // as `outputs.only` names it
  std::string summary() const override {
    return "solids of the press and of each part (STEP AP214 or AP242)";
  }
  // Solids alone, by the modelling kernel.
  ExportNeeds needs() const override { return {.supply = false, .alone = true}; }
  // Stages: "solids", "press.step", "parts". Throws Error: job for an unknown schema, before any solid is
  // built; internal when a solid or a file is not as it must be.
  void write(const ExportInput& input, Sink& sink) const override;

 private:
  bool pcurves_;
};

}  // namespace lamwright
