// Which ways through the reader inputs have taken. The compiler puts a call at each of its branches
// (-fsanitize-coverage=trace-pc).
#pragma once
#include <cstddef>

namespace lamwright::fuzz {

// Forgets the way of the last input.
void begin_way();
// Whether the way since then went along a branch, or about twice as often along one, as none before.
bool is_new_way();

}  // namespace lamwright::fuzz
