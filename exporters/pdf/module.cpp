// The plug-in library: registers the PDF exporter with a program that was made for the same interface.
#include <memory>

#include "exporters/pdf/pdf_exporter.hpp"
#include "kernel/plugin/registry.hpp"

extern "C" bool lamwright_register(int interface_number, lamwright::Registry* registry) {
  if (interface_number != lamwright::kPluginInterface || registry == nullptr) return false;
  registry->add(std::make_unique<lamwright::PdfExporter>());
  return true;
}
