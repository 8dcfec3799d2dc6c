// job-sheet.html: the job to look at, to print and to take to the bench.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// One page that needs no network and no other file: pictures, style and the 3D view are in it.
class HtmlExporter : public Exporter {
 public:
  std::string name() const override { return "html"; }
  std::string summary() const override {
    return "job-sheet.html: the whole job on one page, with a press to turn and open";
  }
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
