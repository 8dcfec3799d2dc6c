// The desktop that a person sits at, where there is one.
#pragma once
#include <filesystem>
#include <string>

namespace lamwright::cli {

// Shows a file with whatever the desktop opens it with. Returns nothing when that was started, else one
// sentence that says why not and what to do by hand. The program started is not waited for.
std::string show_file(const std::filesystem::path& file);

}  // namespace lamwright::cli
