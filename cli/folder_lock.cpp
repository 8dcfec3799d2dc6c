#include "cli/folder_lock.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>

#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

int opened(const fs::path& folder, int more) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC | more);
  if (handle < 0)
    throw file_error(folder.string(), std::string("cannot be opened: ") + std::strerror(errno), "");
  return handle;
}

// False while another process holds the lock.
bool locked(int handle, int how) {
  while (::flock(handle, LOCK_EX | how) != 0) {
    if (errno == EWOULDBLOCK) return false;
    if (errno != EINTR) return true;  // a file system without locks
  }
  return true;
}

}  // namespace

FolderLock FolderLock::waited_for(const fs::path& folder) {
  FolderLock lock(opened(folder, 0));
  locked(lock.folder_, 0);
  return lock;
}

std::optional<FolderLock> FolderLock::if_free(const fs::path& folder) {
  FolderLock lock(opened(folder, O_NOFOLLOW));
  if (!locked(lock.folder_, LOCK_NB)) return std::nullopt;
  return lock;
}

FolderLock::FolderLock(FolderLock&& other) noexcept : folder_(std::exchange(other.folder_, -1)) {}

FolderLock& FolderLock::operator=(FolderLock&& other) noexcept {
  std::swap(folder_, other.folder_);
  return *this;
}

FolderLock::~FolderLock() {
  if (folder_ >= 0) ::close(folder_);
}

bool FolderLock::is_at(const fs::path& folder) const {
  struct stat here {
  }, there{};
  return ::fstat(folder_, &here) == 0 && ::lstat(folder.c_str(), &there) == 0 &&
         here.st_dev == there.st_dev && here.st_ino == there.st_ino;
}

}  // namespace lamwright::cli
