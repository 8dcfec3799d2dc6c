// Press methods and exporters: those inside the program, those of its own libraries that are loaded when they
// are needed, for what they bring with them (OpenCASCADE, cairo), and those of libraries that the user names.
#pragma once
#include <string>
#include <vector>

#include "cli/command.hpp"
#include "kernel/plugin/registry.hpp"

namespace lamwright::cli {

// --plugin FILE, which may be given several times.
OptionRow plugin_option();

// The program's press methods and exporters without its own libraries, and whatever the libraries of --plugin
// register. Throws UsageError, Error (file) for a library that cannot be loaded, has no lamwright_register,
// or was made for another interface.
Registry registry_for(const po::variables_map& values);

// An exporter in a library of its own, "lamwright-<name>.so".
struct Module {
  std::string name;
  std::string summary;
};
const std::vector<Module>& modules();

// Loads the libraries of those modules that are wanted and not there yet, from beside the program. The loaded
// code stays for the life of the process. Throws Error (internal) when one is missing or was made for another
// interface.
void load_wanted(const OutputSpec& outputs, Registry& registry);

// Names of all exporters of a registry and of all modules, in the order in which they write.
std::vector<std::string> exporter_names(const Registry& registry);
// Those that the program has of its own.
std::vector<std::string> own_exporter_names();

}  // namespace lamwright::cli
