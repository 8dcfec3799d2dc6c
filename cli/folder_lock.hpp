// A lock on a folder, held by one process at a time; it ends with the process, whatever ends it.
#pragma once
#include <filesystem>
#include <optional>

namespace lamwright::cli {

// Advisory: it keeps runs of this program apart, nobody else. Where the file system knows no locks, none is
// held.
class FolderLock {
 public:
  // Waits while another process holds it. Throws Error (file) when the folder cannot be opened.
  static FolderLock waited_for(const std::filesystem::path& folder);
  // Nothing while another holds it. Throws Error (file) when the folder cannot be opened, or is a link.
  static std::optional<FolderLock> if_free(const std::filesystem::path& folder);

  FolderLock(FolderLock&& other) noexcept;
  FolderLock& operator=(FolderLock&& other) noexcept;  // the lock held so far goes to `other`
  ~FolderLock();

  // Whether the path still leads to the folder that is locked.
  bool is_at(const std::filesystem::path& folder) const;

 private:
  explicit FolderLock(int folder) : folder_(folder) {}
  int folder_;
};

}  // namespace lamwright::cli
