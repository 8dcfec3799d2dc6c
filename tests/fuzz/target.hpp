// What every fuzz target does with a reader.
#pragma once
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "shared/error.hpp"
#include "shared/text.hpp"

// A target is this function; our own driver and libFuzzer both call it. It returns 0 for an input that was
// read and kRefused for one that the reader refused.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace lamwright::fuzz {

// Seconds of processor time that an input may take: 5 (usual_seconds.cpp), or what the target itself says.
int most_seconds();

// libFuzzer takes any other value for an input that is not worth keeping, so there it is 0 too.
inline constexpr int kRefused = LAMWRIGHT_FUZZ_REFUSED;

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

// What holds for every refusal of an input.
inline void check_refusal(const Error& error) {
  const std::string_view message = error.what();
  ensure(error.kind() != ErrorKind::internal, error.what());
  ensure(!message.empty() && message.find_first_of("\r\n") == std::string_view::npos,
         "messages are one line");
  ensure(message.size() < 4096, "messages are short");
}

// Calls `read`, out of which nothing may come but an Error with a message of one line.
template <typename Read>
int offer(Read read) {
  try {
    read();
    return 0;
  } catch (const Error& error) {
    check_refusal(error);
    return kRefused;
  }
}

}  // namespace lamwright::fuzz
