#include "cli/folder_lock.hpp"

#include <fcntl.h>

#include <cerrno>
#include <cstring>

#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

Held opened(const fs::path& folder, int more) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC | more);
  if (handle < 0)
    throw file_error(folder.string(), std::string("cannot be opened: ") + std::strerror(errno), "");
  return Held(handle);
}

}  // namespace

FolderLock FolderLock::waited_for(const fs::path& folder) {
  FolderLock lock(opened(folder, 0));
  lock.folder_.lock(true);
  return lock;
}

std::optional<FolderLock> FolderLock::if_free(const fs::path& folder) {
  FolderLock lock(opened(folder, O_NOFOLLOW));
  if (!lock.folder_.lock(false)) return std::nullopt;
  return lock;
}

}  // namespace lamwright::cli
