// Exporters: those inside the program, and those in libraries that are loaded when they are needed, for what
// they bring with them (OpenCASCADE, cairo).
#pragma once
#include <string>
#include <vector>

#include "kernel/plugin/registry.hpp"

namespace lamwright::cli {

// Exporters inside the program. The summary comes last, since it lists the others' files.
void add_exporters(Registry& registry);
void add_summary(Registry& registry);

// An exporter in a library of its own, "lamwright-<name>.so".
struct Module {
  std::string name;
  std::string summary;
};
const std::vector<Module>& modules();

// Loads the library of that module from beside the program. The loaded code stays for the life of the
// process. Throws Error (internal) when it is missing or was made for another interface.
void load(const Module& module, Registry& registry);

// Names of all exporters, in the order in which they write.
std::vector<std::string> exporter_names();

}  // namespace lamwright::cli
