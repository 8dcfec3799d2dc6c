#include "cli/desktop.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <unistd.h>

#include <array>
#include <cstdlib>

namespace lamwright::cli {
namespace {

constexpr const char* kOpener = "xdg-open";  // freedesktop.org xdg-utils

bool given(const char* name) {
  const char* value = std::getenv(name);
  return value && *value;
}

// What it prints is not for the one who builds.
class Silence {
 public:
  Silence() {
    posix_spawn_file_actions_init(&actions_);
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
      posix_spawn_file_actions_addopen(&actions_, stream, "/dev/null", O_RDWR, 0);
  }
  ~Silence() { posix_spawn_file_actions_destroy(&actions_); }
  Silence(const Silence&) = delete;
  Silence& operator=(const Silence&) = delete;
  const posix_spawn_file_actions_t* actions() const { return &actions_; }

 private:
  posix_spawn_file_actions_t actions_;
};

}  // namespace

std::string show_file(const std::filesystem::path& file) {
  const std::string by_hand = "open " + file.string() + " in a browser";
  if (!given("DISPLAY") && !given("WAYLAND_DISPLAY")) return "there is no desktop here; " + by_hand;
  // An absolute path is never taken for an option.
  std::string opener = kOpener, path = std::filesystem::absolute(file).lexically_normal().string();
  const std::array<char*, 3> arguments{opener.data(), path.data(), nullptr};
  const Silence silence;
  pid_t started = 0;
  const int fault =
      ::posix_spawnp(&started, kOpener, silence.actions(), nullptr, arguments.data(), ::environ);
  return fault == 0 ? std::string() : std::string(kOpener) + " does not start; " + by_hand;
}

}  // namespace lamwright::cli
