#include "tests/fuzz/worker.hpp"

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstring>
#include <stdexcept>

#include "tests/fuzz/coverage.hpp"
#include "tests/fuzz/seeds.hpp"
#include "tests/fuzz/target.hpp"

namespace lamwright::fuzz {
namespace {

constexpr long kMostMegabytes = 512;
constexpr int kTooMuchMemory = 77;  // exit status

Board* mapped(int handle) {
  void* memory = mmap(nullptr, sizeof(Board), PROT_READ | PROT_WRITE, MAP_SHARED, handle, 0);
  if (memory == MAP_FAILED) throw std::runtime_error("no shared memory");
  return static_cast<Board*>(memory);
}

// Processor time, so that other programs on the machine do not count.
void wind_watch() {
  const itimerval watch{{0, 0}, {most_seconds(), 0}};
  setitimer(ITIMER_PROF, &watch, nullptr);
}

// Nothing is undone on the way out: what a reader left behind may be broken.
void check_memory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  if (usage.ru_maxrss / 1024 > kMostMegabytes) _exit(kTooMuchMemory);
}

[[noreturn]] void become_worker(const SharedBoard& board, const std::vector<std::string>& arguments,
                                bool quiet) {
  prctl(PR_SET_PDEATHSIG, SIGKILL);  // who stops the driver means the worker too
  if (quiet) {
    const int nowhere = open("/dev/null", O_WRONLY);
    dup2(nowhere, STDERR_FILENO);
  }
  std::vector<std::string> all{"worker", std::to_string(board.handle())};
  all.insert(all.end(), arguments.begin(), arguments.end());
  std::vector<char*> pointers;
  for (std::string& argument : all) pointers.push_back(argument.data());
  pointers.push_back(nullptr);
  // A program of its own, since the sanitizer's watch over memory is lost in a mere fork.
  execv("/proc/self/exe", pointers.data());
  _exit(127);
}

std::string told(int status) {
  if (WIFEXITED(status) && WEXITSTATUS(status) == 0) return {};
  if (WIFEXITED(status) && WEXITSTATUS(status) == kTooMuchMemory)
    return "took more than " + std::to_string(kMostMegabytes) + " MB";
  if (WIFEXITED(status)) return "ended with status " + std::to_string(WEXITSTATUS(status));
  if (WTERMSIG(status) == SIGPROF) return "took more than " + std::to_string(most_seconds()) + " s";
  return "ended by " + std::string(sigabbrev_np(WTERMSIG(status)));
}

}  // namespace

SharedBoard::SharedBoard() : SharedBoard(memfd_create("board", 0)) {}

SharedBoard::SharedBoard(int handle) : handle_(handle), board_(nullptr) {
  if (ftruncate(handle_, sizeof(Board)) != 0) throw std::runtime_error("no shared memory");
  board_ = mapped(handle_);
}

SharedBoard::~SharedBoard() {
  munmap(board_, sizeof(Board));
  close(handle_);
}

std::string run_worker(const SharedBoard& board, const std::vector<std::string>& arguments, bool quiet) {
  const pid_t worker = fork();
  if (worker == 0) become_worker(board, arguments, quiet);
  int status = 0;
  if (worker < 0 || waitpid(worker, &status, 0) != worker) throw std::runtime_error("no worker");
  return told(status);
}

void put(Board& board, const std::string& input) {
  board.size = std::min(input.size(), kLongestInput);
  std::memcpy(board.input, input.data(), board.size);
}

bool try_input(Board& board) {
  // A block of exactly this size, so that reading past its end is seen.
  const std::vector<std::uint8_t> input(board.input, board.input + board.size);
  begin_way();
  wind_watch();
  const int result = LLVMFuzzerTestOneInput(input.data(), input.size());
  check_memory();
  ++board.tried;
  board.refused += result == kRefused;
  return result == 0;
}

void try_many(Board& board, const std::string& folder, long rounds, unsigned long dice_seed) {
  Material material = seeds(folder);
  Dice dice(dice_seed);
  std::size_t longest = 4096;
  for (const std::string& seed : material.inputs) {
    longest = std::max(longest, 2 * seed.size());
    put(board, seed);
    try_input(board);
    is_new_way();
  }
  longest = std::min(longest, kLongestInput);
  while (board.tried < rounds) {
    const std::string input = mutated(material, longest, dice);
    put(board, input);
    const bool taken = try_input(board);
    if (!is_new_way()) continue;
    material.inputs.push_back(input);
    if (taken) material.sound.push_back(input);
    ++board.kept;
  }
}

}  // namespace lamwright::fuzz
