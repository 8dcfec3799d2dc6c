// Libraries that are loaded when they are needed. STEP is one: it brings OpenCASCADE.
#pragma once
#include "kernel/plugin/registry.hpp"

namespace lamwright::cli {

// Methods and exporters inside the program. The summary comes last, since it lists the others' files.
void add_exporters(Registry& registry);
void add_summary(Registry& registry);

// Loads the STEP library from beside the program. The loaded code stays for the life of the process. Throws
// Error (internal) when it is missing or was made for another interface.
void load_step(Registry& registry);

}  // namespace lamwright::cli
