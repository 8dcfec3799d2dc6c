// A lock on a folder, held by one process at a time; it ends with the process, whatever ends it.
#pragma once
#include <filesystem>
#include <optional>

#include "cli/held.hpp"

namespace lamwright::cli {

// Advisory: it keeps runs of this program apart, nobody else. Where the file system knows no locks, none is
// held.
class FolderLock {
 public:
  // Waits while another process holds it. Throws Error (file) when the folder cannot be opened.
  static FolderLock waited_for(const std::filesystem::path& folder);
  // Nothing while another holds it. Throws Error (file) when the folder cannot be opened, or is a link.
  static std::optional<FolderLock> if_free(const std::filesystem::path& folder);

  // Whether the path still leads to the folder that is locked. Throws Error (file).
  bool is_at(const std::filesystem::path& folder) const { return folder_.is_at(folder, folder); }

 private:
  explicit FolderLock(Held folder) : folder_(std::move(folder)) {}
  Held folder_;
};

}  // namespace lamwright::cli
