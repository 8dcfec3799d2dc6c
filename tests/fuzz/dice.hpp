// Random numbers that are the same on every machine; the distributions of the standard library are not.
#pragma once
#include <cstdint>
#include <random>
#include <vector>

namespace lamwright::fuzz {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}

  // 0 to n - 1; 0 when n is 0.
  std::size_t below(std::size_t n) { return n == 0 ? 0 : std::size_t(engine_() % n); }

  template <typename T>
  const T& one_of(const std::vector<T>& choices) {
    return choices[below(choices.size())];
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace lamwright::fuzz
