#include "cli/held.hpp"

#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>

#include "shared/error.hpp"

namespace lamwright::cli {

Held::Held(Held&& other) noexcept : number_(std::exchange(other.number_, -1)) {}

Held& Held::operator=(Held&& other) noexcept {
  std::swap(number_, other.number_);
  return *this;
}

Held::~Held() {
  if (number_ >= 0) ::close(number_);
}

bool Held::lock(bool wait) const {
  while (::flock(number_, LOCK_EX | (wait ? 0 : LOCK_NB)) != 0) {
    if (errno == EWOULDBLOCK) return false;
    if (errno != EINTR) return true;
  }
  return true;
}

bool Held::is_at(const std::filesystem::path& name, const std::filesystem::path& shown) const {
  struct stat here {
  }, there{};
  const bool found = ::fstat(number_, &here) == 0 && ::lstat(name.c_str(), &there) == 0;
  if (found) return here.st_dev == there.st_dev && here.st_ino == there.st_ino;
  if (errno == ENOENT) return false;
  throw file_error(shown.string(), std::string("cannot be written: ") + std::strerror(errno), "");
}

}  // namespace lamwright::cli
