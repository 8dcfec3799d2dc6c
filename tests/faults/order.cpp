#include "faults/order.hpp"

#include <fcntl.h>
#include <signal.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cstdlib>

namespace lamwright::faults {
namespace {

std::string text_of(const char* name) {
  const char* value = std::getenv(name);
  return value ? value : "";
}

// -1 where nothing is set.
long number_of(const char* name) {
  const std::string text = text_of(name);
  return text.empty() ? -1 : std::atol(text.c_str());
}

struct Plan {
  std::string below = text_of("LAMWRIGHT_FAULT_BELOW");
  std::string log = text_of("LAMWRIGHT_FAULT_LOG");
  std::string kind = text_of("LAMWRIGHT_FAULT_KIND");
  long first = number_of("LAMWRIGHT_FAULT_AT");
  long last = std::max(number_of("LAMWRIGHT_FAULT_UNTIL"), first);
  long error = std::max(number_of("LAMWRIGHT_FAULT_ERRNO"), 0L);
  long signal = std::max(number_of("LAMWRIGHT_FAULT_SIGNAL"), 0L);
  bool half = number_of("LAMWRIGHT_FAULT_SHORT") > 0;
  long room = number_of("LAMWRIGHT_FAULT_ROOM");
};

const Plan& plan() {
  static const Plan read;
  return read;
}

bool watched(const std::string& path) {
  const std::string& below = plan().below;
  return !below.empty() && path.starts_with(below) &&
         (path.size() == below.size() || path[below.size()] == '/');
}

bool of_kind(std::string_view kind) {
  return plan().kind == kind || (plan().kind == "any" && kind != "stage");
}

bool due(std::string_view kind) {
  static std::atomic<long> calls = 0;
  if (plan().first < 1 || !of_kind(kind)) return false;
  const long call = ++calls;
  return call >= plan().first && call <= plan().last;
}

// By system calls, which nobody stands in for.
void note(std::string_view kind, const std::string& path, bool fault) {
  if (plan().log.empty()) return;
  const std::string line = std::string(kind) + "\t" + path + (fault ? "\tfault\n" : "\t\n");
  const long log =
      ::syscall(SYS_openat, AT_FDCWD, plan().log.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0666);
  ::syscall(SYS_write, log, line.data(), line.size());
  ::syscall(SYS_close, log);
}

Order met(std::string_view kind, const std::string& path) {
  const bool fault = due(kind);
  note(kind, path, fault);
  if (!fault) return {};
  if (plan().signal != 0) ::kill(::getpid(), int(plan().signal));
  return {int(plan().error), plan().half};
}

}  // namespace

Order order_for(std::string_view kind, const std::string& path) {
  return watched(path) ? met(kind, path) : Order{};
}

Order order_for(std::string_view kind) { return met(kind, ""); }

std::size_t room_for(std::size_t bytes, const std::string& path) {
  static std::atomic<long> left = plan().room;
  if (plan().room < 0 || !watched(path)) return bytes;
  const long fits = std::clamp(left.load(), 0L, long(bytes));
  left -= fits;
  return std::size_t(fits);
}

}  // namespace lamwright::faults
