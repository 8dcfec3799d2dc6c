#include "cli/replace_file.hpp"

#include <fcntl.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <string>

#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& path) {
  throw file_error(path.string(), std::string("cannot be written: ") + std::strerror(errno), "");
}

// Of the file that is there, else of any file that the user makes.
mode_t mode_for(const fs::path& path) {
  struct stat found {};
  if (::stat(path.c_str(), &found) == 0) {
    if (::access(path.c_str(), W_OK) != 0) refuse(path);
    return found.st_mode & 07777;
  }
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

// A file under a name of its own, taken away again unless it was renamed.
class Temporary {
 public:
  explicit Temporary(const fs::path& beside)
      : wanted_(beside),
        name_((beside.parent_path() / ("." + beside.filename().string() + ".lamwright-XXXXXX")).string()),
        file_(::mkostemp(name_.data(), O_CLOEXEC)) {
    if (file_ < 0) refuse(wanted_);
  }
  ~Temporary() {
    if (file_ >= 0) ::close(file_);
    if (!renamed_) ::unlink(name_.c_str());
  }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;

  void write(std::string_view bytes) {
    while (!bytes.empty()) {
      const ssize_t done = ::write(file_, bytes.data(), bytes.size());
      if (done < 0 && errno == EINTR) continue;
      if (done <= 0) refuse(wanted_);
      bytes.remove_prefix(static_cast<std::size_t>(done));
    }
  }

  void put_in_place(mode_t mode) {
    if (::fchmod(file_, mode) != 0 || ::fsync(file_) != 0) refuse(wanted_);
    const int closed = ::close(file_);
    file_ = -1;
    if (closed != 0 || ::rename(name_.c_str(), wanted_.c_str()) != 0) refuse(wanted_);
    renamed_ = true;
  }

 private:
  fs::path wanted_;
  std::string name_;
  int file_;
  bool renamed_ = false;
};

}  // namespace

void replace_file(const fs::path& path, std::string_view bytes) {
  const mode_t mode = mode_for(path);
  Temporary file(path);
  file.write(bytes);
  file.put_in_place(mode);
}

}  // namespace lamwright::cli
