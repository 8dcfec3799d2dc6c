// Runs a fuzz target without help of the compiler's own fuzzer:
//   fuzz_points SEEDS ROUNDS DICE   tries the seeds and inputs made from them, the same ones for the same dice
//   fuzz_points FILE...             tries these files
// An input that ends the program, takes more than 5 s (or what its target allows) or 512 MB, or leaks is
// written to crash-<hash>, made smaller, in the working folder; the exit status is then 1.
#include <filesystem>
#include <fstream>
#include <iostream>

#include "shared/text.hpp"
#include "tests/fuzz/seeds.hpp"
#include "tests/fuzz/shrink.hpp"
#include "tests/fuzz/worker.hpp"

extern "C" const char* __asan_default_options() {
  return "hard_rss_limit_mb=512:max_allocation_size_mb=256:quarantine_size_mb=16:detect_leaks=1:"
         "allocator_may_return_null=0";
}
extern "C" const char* __ubsan_default_options() { return "print_stacktrace=1"; }

namespace {

using namespace lamwright;
using namespace lamwright::fuzz;

int work(const std::vector<std::string>& arguments) {
  const SharedBoard board(std::stoi(arguments.at(0)));
  if (arguments.size() == 1)
    try_input(*board);
  else
    try_many(*board, arguments.at(1), std::stol(arguments.at(2)), std::stoul(arguments.at(3)));
  return 0;
}

std::string end_of(const SharedBoard& board, const std::string& input, bool quiet) {
  put(*board, input);
  return run_worker(board, {}, quiet);
}

void keep(const SharedBoard& board, const std::string& name, const std::string& how) {
  const std::string input(board->input, board->size);
  const auto ends_so = [&](const std::string& less) { return end_of(board, less, true) == how; };
  // A leak shows at the end of the whole run only; slow inputs take too long to be tried again and again.
  const bool again = !how.ends_with(" s") && ends_so(input);
  const std::string small = again ? shrunk(input, ends_so) : input;
  const std::string file = "crash-" + name + "-" + short_hash(small);
  std::ofstream(file, std::ios::binary) << small;
  std::cout << name << ": " << how << "; " << small.size() << " bytes kept in "
            << std::filesystem::absolute(file).string() << "\n";
}

int fuzz_from(const std::string& name, const std::vector<std::string>& arguments) {
  const SharedBoard board;
  const std::string how = run_worker(board, arguments, false);
  std::cout << name << ": " << board->tried << " inputs tried, " << board->refused << " refused, "
            << board->tried - board->refused << " accepted, " << board->kept << " kept for their new ways\n";
  if (how.empty()) return 0;
  keep(board, name, how);
  return 1;
}

int try_files(const std::string& name, const std::vector<std::string>& files) {
  int failed = 0;
  for (const std::string& file : files) {
    const SharedBoard board;
    const std::string how = end_of(board, contents(file), false);
    std::cout << name << ": " << file << " "
              << (how.empty() ? board->refused ? "is refused" : "is read" : how) << "\n";
    failed += !how.empty();
  }
  return failed > 0;
}

int run(const std::string& name, const std::vector<std::string>& arguments) {
  if (name == "worker") return work(arguments);
  if (arguments.size() == 3 && std::filesystem::is_directory(arguments[0])) return fuzz_from(name, arguments);
  if (!arguments.empty()) return try_files(name, arguments);
  std::cout << "usage: " << name << " SEEDS ROUNDS DICE, or " << name << " FILE...\n";
  return 2;
}

}  // namespace

int main(int count, char** values) {
  try {
    return run(std::filesystem::path(values[0]).filename(), {values + 1, values + count});
  } catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    // The board still holds the input; an exception that is no Error is a finding like any other.
    std::abort();
  }
}
