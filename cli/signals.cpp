#include "cli/signals.hpp"

#include <csignal>

namespace lamwright::cli {
namespace {

// A signal handler can reach nothing but an object of static life; this is the only one in the program.
volatile std::sig_atomic_t noted = 0;

void note(int signal) { noted = signal; }

}  // namespace

void watch_signals() {
  std::signal(SIGINT, note);
  std::signal(SIGTERM, note);
  std::signal(SIGPIPE, SIG_IGN);
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN);
#endif
}

int caught_signal() { return noted; }

}  // namespace lamwright::cli
