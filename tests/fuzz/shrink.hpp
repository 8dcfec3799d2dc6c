// Makes an input smaller while the reader still ends the same way.
#pragma once
#include <functional>
#include <string>

namespace lamwright::fuzz {

// Takes out ever smaller pieces, as long as `fails` holds; at most 400 tries.
std::string shrunk(std::string input, const std::function<bool(const std::string&)>& fails);

}  // namespace lamwright::fuzz
