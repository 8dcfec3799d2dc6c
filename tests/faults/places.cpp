#include "faults/places.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <filesystem>

namespace lamwright::faults {
namespace {

// Calls that are watched must see the errno that they began with.
class KeptErrno {
 public:
  ~KeptErrno() { errno = value_; }

 private:
  int value_ = errno;
};

std::string target_of(const std::string& link) {
  const KeptErrno kept;
  std::array<char, 4096> text{};
  const ssize_t size = ::readlinkat(AT_FDCWD, link.c_str(), text.data(), text.size());
  return size > 0 ? std::string(text.data(), std::size_t(size)) : "";
}

}  // namespace

std::string path_of(int file) { return target_of("/proc/self/fd/" + std::to_string(file)); }

std::string path_of(int folder, const char* name) {
  const std::filesystem::path path(name);
  if (path.is_absolute()) return path.lexically_normal().string();
  const std::string base = folder == AT_FDCWD ? target_of("/proc/self/cwd") : path_of(folder);
  std::string whole = (std::filesystem::path(base) / path).lexically_normal().string();
  if (whole.size() > 1 && whole.back() == '/') whole.pop_back();
  return whole;
}

}  // namespace lamwright::faults
