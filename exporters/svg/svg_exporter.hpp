// Exporter "svg": cutting files and dimensioned sheets.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// Writes parts/<part>.svg for every board part and shop aid, sheets/<n>.svg for every nested sheet,
// drawings/press.svg and drawings/<part>.svg for the parts that get a sheet of their own.
class SvgExporter : public Exporter {
 public:
  std::string name() const override { return "svg"; }  // as `outputs.only` names it
  std::string summary() const override { return "cutting files at true size and dimensioned drawings (SVG)"; }
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
