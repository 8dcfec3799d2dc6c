// Random numbers that are the same everywhere, which those of the standard's distributions are not.
#pragma once
#include <cstddef>
#include <cstdint>

namespace lamwright::nesting {

// xorshift (Marsaglia 2003).
class Dice {
 public:
  std::uint64_t next() {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 7;
    state_ ^= state_ << 17;
    return state_ >> 11;
  }
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(next() % n); }

 private:
  std::uint64_t state_ = 0x9E3779B97F4A7C15ull;
};

}  // namespace lamwright::nesting
