// One file replaced whole, and a folder kept to oneself meanwhile.
#pragma once
#include <filesystem>
#include <string_view>

namespace lamwright::cli {

// Keeps other runs of the program from replacing files in a folder until it goes. Leaves nothing behind.
// Folders that know no locks (some network shares) are left unlocked. Throws Error (file) when the folder is
// not there.
class FolderLock {
 public:
  explicit FolderLock(const std::filesystem::path& folder);
  ~FolderLock();
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;

 private:
  int folder_;
};

// Writes a temporary file beside the named one and renames it: readers see the old file or the new one, never
// half of either, and after a failure the old one. Keeps the permissions of a file that is there. `path` must
// not be a link: the link itself would be replaced. Throws Error (file).
void replace_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace lamwright::cli
