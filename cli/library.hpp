// Shared libraries that register press methods and exporters.
#pragma once
#include <filesystem>

#include "kernel/plugin/registry.hpp"

namespace lamwright::cli {

// Loads a library and lets it register. The loaded code stays for the life of the process. Throws Error
// (file) naming the library: it cannot be loaded, has no function lamwright_register, was made for another
// interface than kPluginInterface, or failed.
void load_library(const std::filesystem::path& path, Registry& registry);

}  // namespace lamwright::cli
