// One file replaced whole.
#pragma once
#include <filesystem>
#include <string_view>

namespace lamwright::cli {

// Writes a temporary file beside the named one and renames it: readers see the old file or the new one, never
// half of either, and after a failure the old one. Two runs at a time wait for one another; what a killed one
// left beside the file is taken over by the next. Keeps the permissions of a file that is there. `path` must
// not be a link: the link itself would be replaced. Throws Error (file).
void replace_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace lamwright::cli
