// Both in a library that the program loads.
#include <memory>

#include "kernel/plugin/registry.hpp"
#include "markdown_exporter.hpp"
#include "stacked_press.hpp"

extern "C" bool lamwright_register(int interface_number, lamwright::Registry* registry) {
  if (interface_number != lamwright::kPluginInterface || registry == nullptr) return false;
  registry->add(std::make_unique<consumer::StackedPress>());
  registry->add(std::make_unique<consumer::MarkdownExporter>());
  return true;
}
