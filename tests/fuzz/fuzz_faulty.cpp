// A target with a fault: it reads past its input once that holds the word "bend". The rig must find that.
#include <memory>

#include "tests/fuzz/target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const bool bent = lamwright::fuzz::text_of(data, size).find("bend") != std::string_view::npos;
  const auto copy = std::make_unique<std::uint8_t[]>(size + 1);
  const volatile std::uint8_t* past = copy.get() + size + (bent ? 1 : 0);
  return *past == 1 ? 1 : 0;
}
