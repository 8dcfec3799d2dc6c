// What a file may ask for, so that none takes for ever.
#pragma once
#include <cstddef>

#include "shared/error.hpp"

namespace lamwright::svg_reading {

inline constexpr std::size_t kMostText = 64u << 20;  // bytes
inline constexpr int kMostLevels = 64;               // of elements, and of uses of elements
// Moves, pieces and closings: three to a piece, and some that draw nothing.
inline constexpr std::size_t kMostSteps = 1'000'000;
inline constexpr double kMostReach = 1e7;   // of coordinates from the origin, mm
inline constexpr double kMostRadius = 1e9;  // mm; rounding moves a point of such an arc by 1e-6

// Counts what is drawn. Each call throws Error (job) at the line of the file once its limit is passed.
class Limits {
 public:
  explicit Limits(std::string file) : file_(std::move(file)) {}

  void piece(int line);                     // 200 000
  void steps(std::size_t count, int line);  // kMostSteps
  // Twice the longest text, which only repetition can pass. What is shown by a use counts for 600 bytes
  // more, so some 200 000 elements at most.
  void read(std::size_t bytes, bool by_use, int line);

 private:
  std::string file_;
  long pieces_ = 0;
  std::size_t steps_ = 0, bytes_ = 0;
};

}  // namespace lamwright::svg_reading
