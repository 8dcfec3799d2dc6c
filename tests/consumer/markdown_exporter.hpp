// An exporter that lamwright does not know: the parts of a press as a table in Markdown.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace consumer {

class MarkdownExporter : public lamwright::Exporter {
 public:
  std::string name() const override { return "markdown"; }
  std::string summary() const override { return "parts.md: the parts as a table"; }
  std::vector<lamwright::KeyRow> keys() const override;
  void write(const lamwright::ExportInput& input, lamwright::Sink& sink) const override;
};

}  // namespace consumer
