// Runs inputs in a process of its own, so that whatever becomes of it the input is known.
#pragma once
#include <string>
#include <vector>

namespace lamwright::fuzz {

inline constexpr std::size_t kLongestInput = 1u << 20;

// What worker and driver both see.
struct Board {
  long tried = 0, refused = 0, kept = 0;
  std::size_t size = 0;  // of the input that is being tried
  char input[kLongestInput] = {};
};

// The board, in memory that a worker shares.
class SharedBoard {
 public:
  SharedBoard();
  explicit SharedBoard(int handle);
  SharedBoard(const SharedBoard&) = delete;
  SharedBoard& operator=(const SharedBoard&) = delete;
  ~SharedBoard();

  int handle() const { return handle_; }
  Board& operator*() const { return *board_; }
  Board* operator->() const { return board_; }

 private:
  int handle_;
  Board* board_;
};

// How a worker ended: empty when all went well, else a sentence such as "took more than 5 s".
std::string run_worker(const SharedBoard& board, const std::vector<std::string>& arguments, bool quiet);

// What the worker does: tries the input on the board (true when the reader took it), or `rounds` inputs, the
// seeds and what is made from them.
bool try_input(Board& board);
void try_many(Board& board, const std::string& folder, long rounds, unsigned long dice_seed);

// Writes an input onto the board.
void put(Board& board, const std::string& input);

}  // namespace lamwright::fuzz
