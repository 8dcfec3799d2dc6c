// What becomes of the file calls of a program that this library is loaded into.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace lamwright::faults {

// Set by environment variables, read once:
//   LAMWRIGHT_FAULT_BELOW   folder, absolute and free of links; calls on it and below it are counted, no
//   others LAMWRIGHT_FAULT_LOG     file that gets a line for each counted call: kind, path and "fault" where
//   one was due LAMWRIGHT_FAULT_KIND    which calls the fault meets: the kind of a call, or "any" for all but
//   "stage" LAMWRIGHT_FAULT_AT      the first of these calls that it meets, from 1; without it calls are
//   counted only LAMWRIGHT_FAULT_UNTIL   the last one; else the first alone LAMWRIGHT_FAULT_ERRNO   the call
//   fails with this number LAMWRIGHT_FAULT_SIGNAL  the process gets this signal before the call
//   LAMWRIGHT_FAULT_SHORT   "1": a write takes half of its bytes
//   LAMWRIGHT_FAULT_ROOM    bytes that may be written in all; then the disk is full

// The fault that a call meets; none when all is zero.
struct Order {
  int error = 0;  // the call fails with this errno
  bool half = false;
};

// Counts a call on a path and tells its fault; raises the signal that is due. Calls elsewhere are not
// counted.
Order order_for(std::string_view kind, const std::string& path);

// The same for what has no path.
Order order_for(std::string_view kind);

// How many of so many bytes still fit on the disk; they are taken as written.
std::size_t room_for(std::size_t bytes, const std::string& path);

}  // namespace lamwright::faults
