// The path that a file call is about.
#pragma once
#include <string>

namespace lamwright::faults {

// Absolute, without "." and "..": of a name as a call gives it, relative to an open folder (AT_FDCWD: to the
// working folder).
std::string path_of(int folder, const char* name);

// Of what is open under this number; empty when nothing is.
std::string path_of(int file);

}  // namespace lamwright::faults
