#include "cli/replace_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <string>

#include "cli/held.hpp"
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
  if (errno != ENOENT) refuse(path);
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

// Opened and locked. Whoever holds the lock of what lies at the name owns it; others wait.
Held owned(const fs::path& name, const fs::path& wanted) {
  while (true) {
    Held file(::open(name.c_str(), O_WRONLY | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0600));
    if (file.number() < 0) refuse(wanted);
    file.lock(true);
    if (file.is_at(name, wanted)) return file;
  }
}

// A file beside the wanted one, taken away again unless it was renamed. Always of the same name, so that what
// a killed run left there is taken over.
class Temporary {
 public:
  explicit Temporary(const fs::path& wanted)
      : wanted_(wanted),
        name_(wanted.parent_path() / ("." + wanted.filename().string() + ".lamwright-file")),
        file_(owned(name_, wanted_)) {}
  ~Temporary() {
    if (!renamed_) ::unlink(name_.c_str());
  }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;

  void write(std::string_view bytes) {
    if (::ftruncate(file_.number(), 0) != 0) refuse(wanted_);
    while (!bytes.empty()) {
      const ssize_t done = ::write(file_.number(), bytes.data(), bytes.size());
      if (done < 0 && errno == EINTR) continue;
      if (done <= 0) refuse(wanted_);
      bytes.remove_prefix(static_cast<std::size_t>(done));
    }
  }

  // What is synchronised needs no look at how closing went, and the lock must outlast the renaming.
  void put_in_place(mode_t mode) {
    if (::fchmod(file_.number(), mode) != 0 || ::fsync(file_.number()) != 0) refuse(wanted_);
    if (::rename(name_.c_str(), wanted_.c_str()) != 0) refuse(wanted_);
    renamed_ = true;
  }

 private:
  fs::path wanted_;
  fs::path name_;
  Held file_;
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
