// Stands in for the system's calls on names, folders and what is known of files. Of two paths
// the one that is made or replaced counts.
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "faults/answer.hpp"

using namespace lamwright::faults;

extern "C" {

int ftruncate(int file, off_t size) noexcept {
  return answered("truncate", path_of(file), [&] { return real(&::ftruncate, "ftruncate")(file, size); });
}

int truncate(const char* name, off_t size) noexcept {
  return answered_here("truncate", name, [&] { return real(&::truncate, "truncate")(name, size); });
}

int rename(const char* from, const char* to) noexcept {
  return answered_here("rename", to, [&] { return real(&::rename, "rename")(from, to); });
}

int renameat(int folder, const char* from, int target, const char* to) noexcept {
  return answered("rename", path_of(target, to),
                  [&] { return real(&::renameat, "renameat")(folder, from, target, to); });
}

int renameat2(int folder, const char* from, int target, const char* to, unsigned flags) noexcept {
  return answered("rename", path_of(target, to),
                  [&] { return real(&::renameat2, "renameat2")(folder, from, target, to, flags); });
}

int link(const char* from, const char* to) noexcept {
  return answered_here("link", to, [&] { return real(&::link, "link")(from, to); });
}

int linkat(int folder, const char* from, int target, const char* to, int flags) noexcept {
  return answered("link", path_of(target, to),
                  [&] { return real(&::linkat, "linkat")(folder, from, target, to, flags); });
}

int symlink(const char* text, const char* to) noexcept {
  return answered_here("symlink", to, [&] { return real(&::symlink, "symlink")(text, to); });
}

int symlinkat(const char* text, int target, const char* to) noexcept {
  return answered("symlink", path_of(target, to),
                  [&] { return real(&::symlinkat, "symlinkat")(text, target, to); });
}

int unlink(const char* name) noexcept {
  return answered_here("unlink", name, [&] { return real(&::unlink, "unlink")(name); });
}

int unlinkat(int folder, const char* name, int flags) noexcept {
  return answered((flags & AT_REMOVEDIR) != 0 ? "rmdir" : "unlink", path_of(folder, name),
                  [&] { return real(&::unlinkat, "unlinkat")(folder, name, flags); });
}

int remove(const char* name) noexcept {
  return answered_here("unlink", name, [&] { return real(&::remove, "remove")(name); });
}

int mkdir(const char* name, mode_t mode) noexcept {
  return answered_here("mkdir", name, [&] { return real(&::mkdir, "mkdir")(name, mode); });
}

int mkdirat(int folder, const char* name, mode_t mode) noexcept {
  return answered("mkdir", path_of(folder, name),
                  [&] { return real(&::mkdirat, "mkdirat")(folder, name, mode); });
}

char* mkdtemp(char* name) noexcept {
  return answered("mkdir", path_of(AT_FDCWD, name), [&] { return real(&::mkdtemp, "mkdtemp")(name); });
}

int rmdir(const char* name) noexcept {
  return answered_here("rmdir", name, [&] { return real(&::rmdir, "rmdir")(name); });
}

DIR* opendir(const char* name) {
  return answered("open-folder", path_of(AT_FDCWD, name), [&] { return real(&::opendir, "opendir")(name); });
}

DIR* fdopendir(int file) {
  return answered("open-folder", path_of(file), [&] { return real(&::fdopendir, "fdopendir")(file); });
}

dirent* readdir(DIR* folder) {
  return answered("readdir", path_of(::dirfd(folder)), [&] { return real(&::readdir, "readdir")(folder); });
}

int flock(int file, int operation) noexcept {
  return answered("flock", path_of(file), [&] { return real(&::flock, "flock")(file, operation); });
}

int chmod(const char* name, mode_t mode) noexcept {
  return answered_here("chmod", name, [&] { return real(&::chmod, "chmod")(name, mode); });
}

int fchmod(int file, mode_t mode) noexcept {
  return answered("chmod", path_of(file), [&] { return real(&::fchmod, "fchmod")(file, mode); });
}

int fchmodat(int folder, const char* name, mode_t mode, int flags) noexcept {
  return answered("chmod", path_of(folder, name),
                  [&] { return real(&::fchmodat, "fchmodat")(folder, name, mode, flags); });
}

int stat(const char* name, struct stat* found) noexcept {
  return answered_here("stat", name, [&] { return real(&::stat, "stat")(name, found); });
}

int lstat(const char* name, struct stat* found) noexcept {
  return answered_here("stat", name, [&] { return real(&::lstat, "lstat")(name, found); });
}

int fstat(int file, struct stat* found) noexcept {
  return answered("stat", path_of(file), [&] { return real(&::fstat, "fstat")(file, found); });
}

int fstat64(int file, struct stat64* found) noexcept {
  return answered("stat", path_of(file), [&] { return real(&::fstat64, "fstat64")(file, found); });
}

int fstatat(int folder, const char* name, struct stat* found, int flags) noexcept {
  return answered("stat", path_of(folder, name),
                  [&] { return real(&::fstatat, "fstatat")(folder, name, found, flags); });
}

int access(const char* name, int wanted) noexcept {
  return answered_here("stat", name, [&] { return real(&::access, "access")(name, wanted); });
}

char* realpath(const char* name, char* found) noexcept {
  return answered("stat", path_of(AT_FDCWD, name),
                  [&] { return real(&::realpath, "realpath")(name, found); });
}

ssize_t readlink(const char* name, char* text, size_t size) noexcept {
  const std::string path = path_of(AT_FDCWD, name);
  return answered("stat", path, [&] { return real(&::readlink, "readlink")(name, text, size); });
}

// The program asks before each stage whether somebody looks on: the place where a signal meets a stage.
int isatty(int file) noexcept {
  order_for("stage");
  return real(&::isatty, "isatty")(file);
}

}  // extern "C"
