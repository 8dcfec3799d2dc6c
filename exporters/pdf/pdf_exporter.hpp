// Exporter "pdf": drawings and full-size templates to print.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// Writes drawings.pdf, the dimensioned sheets one a page, and templates.pdf, formers and shop aids at true
// size divided among sheets of job.outputs.paper. Notes letters that the drawing font lacks.
class PdfExporter : public Exporter {
 public:
  std::string name() const override { return "pdf"; }  // as `outputs.only` names it
  std::string summary() const override { return "drawings and full-size templates to print (PDF)"; }
  // Sheets of the pack are made from the job where no supply has them.
  ExportNeeds needs() const override { return {.supply = false}; }
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
