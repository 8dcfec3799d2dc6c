// Limits that several readers share.
#pragma once
#include <cstddef>

namespace lamwright {

// Bytes of any text that a job, a trade row or a notebook holds: names, files, notes.
inline constexpr std::size_t kLongestText = 1000;

}  // namespace lamwright
