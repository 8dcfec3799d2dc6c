// Stands in for the system's calls that open, read, write and close. Loaded before a program (LD_PRELOAD);
// order.hpp tells how it is set.
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/sendfile.h>
#include <sys/uio.h>
#include <unistd.h>

#include <string_view>

#include "faults/answer.hpp"

using namespace lamwright::faults;

namespace {

std::string_view kind_of(int flags) {
  if ((flags & O_DIRECTORY) != 0) return "open-folder";
  return (flags & (O_WRONLY | O_RDWR | O_CREAT)) != 0 ? "open-write" : "open-read";
}

std::string_view kind_of(std::string_view mode) {
  return mode.starts_with('r') && mode.find('+') == mode.npos ? "open-read" : "open-write";
}

// The argument that only calls that may make a file have.
mode_t mode_of(int flags, va_list arguments) {
  return (flags & O_CREAT) != 0 ? va_arg(arguments, mode_t) : 0;
}

template <typename Open>
int opened(Open* open, const char* name, int flags, mode_t mode) {
  return answered_here(kind_of(flags), name, [&] { return open(name, flags, mode); });
}

template <typename Open>
int opened_at(Open* open, int folder, const char* name, int flags, mode_t mode) {
  return answered(kind_of(flags), path_of(folder, name), [&] { return open(folder, name, flags, mode); });
}

// As many of the bytes as the fault and the disk leave.
template <typename Write>
ssize_t written(int file, std::size_t size, const Write& write) {
  const std::string path = path_of(file);
  const Order order = order_for("write", path);
  if (order.error != 0) return failed<ssize_t>(order.error);
  const std::size_t fits = room_for(order.half ? (size + 1) / 2 : size, path);
  return fits == 0 && size > 0 ? failed<ssize_t>(ENOSPC) : write(fits);
}

}  // namespace

extern "C" {

int open(const char* name, int flags, ...) {
  va_list arguments;
  va_start(arguments, flags);
  const mode_t mode = mode_of(flags, arguments);
  va_end(arguments);
  return opened(real(&::open, "open"), name, flags, mode);
}

int open64(const char* name, int flags, ...) {
  va_list arguments;
  va_start(arguments, flags);
  const mode_t mode = mode_of(flags, arguments);
  va_end(arguments);
  return opened(real(&::open64, "open64"), name, flags, mode);
}

int openat(int folder, const char* name, int flags, ...) {
  va_list arguments;
  va_start(arguments, flags);
  const mode_t mode = mode_of(flags, arguments);
  va_end(arguments);
  return opened_at(real(&::openat, "openat"), folder, name, flags, mode);
}

int openat64(int folder, const char* name, int flags, ...) {
  va_list arguments;
  va_start(arguments, flags);
  const mode_t mode = mode_of(flags, arguments);
  va_end(arguments);
  return opened_at(real(&::openat64, "openat64"), folder, name, flags, mode);
}

int creat(const char* name, mode_t mode) {
  return answered_here("open-write", name, [&] { return real(&::creat, "creat")(name, mode); });
}

FILE* fopen(const char* name, const char* mode) {
  return answered(kind_of(std::string_view(mode)), path_of(AT_FDCWD, name),
                  [&] { return real(&::fopen, "fopen")(name, mode); });
}

FILE* fopen64(const char* name, const char* mode) {
  return answered(kind_of(std::string_view(mode)), path_of(AT_FDCWD, name),
                  [&] { return real(&::fopen64, "fopen64")(name, mode); });
}

int mkostemp(char* name, int flags) {
  return answered_here("open-write", name, [&] { return real(&::mkostemp, "mkostemp")(name, flags); });
}

int mkstemp(char* name) {
  return answered_here("open-write", name, [&] { return real(&::mkstemp, "mkstemp")(name); });
}

ssize_t read(int file, void* bytes, size_t size) {
  return answered("read", path_of(file), [&] { return real(&::read, "read")(file, bytes, size); });
}

ssize_t pread(int file, void* bytes, size_t size, off_t from) {
  return answered("read", path_of(file), [&] { return real(&::pread, "pread")(file, bytes, size, from); });
}

ssize_t write(int file, const void* bytes, size_t size) {
  return written(file, size, [&](size_t fits) { return real(&::write, "write")(file, bytes, fits); });
}

ssize_t pwrite(int file, const void* bytes, size_t size, off_t at) {
  return written(file, size, [&](size_t fits) { return real(&::pwrite, "pwrite")(file, bytes, fits, at); });
}

// All of it or nothing: a short one would have to be cut somewhere in the pieces.
ssize_t writev(int file, const iovec* pieces, int count) {
  std::size_t size = 0;
  for (int i = 0; i < count; ++i) size += pieces[i].iov_len;
  return written(file, size, [&](size_t fits) {
    return fits < size ? failed<ssize_t>(ENOSPC) : real(&::writev, "writev")(file, pieces, count);
  });
}

ssize_t sendfile(int to, int from, off_t* at, size_t size) {
  return written(to, size, [&](size_t fits) { return real(&::sendfile, "sendfile")(to, from, at, fits); });
}

int close(int file) {
  return answered_after("close", path_of(file), [&] { return real(&::close, "close")(file); });
}

int fclose(FILE* stream) {
  return answered_after("close", path_of(::fileno(stream)),
                        [&] { return real(&::fclose, "fclose")(stream); });
}

int fsync(int file) {
  return answered("sync", path_of(file), [&] { return real(&::fsync, "fsync")(file); });
}

int fdatasync(int file) {
  return answered("sync", path_of(file), [&] { return real(&::fdatasync, "fdatasync")(file); });
}

}  // extern "C"
