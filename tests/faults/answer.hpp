// How a function of this library answers in place of the system's own.
#pragma once
#include <dlfcn.h>
#include <fcntl.h>

#include <cerrno>
#include <type_traits>

#include "faults/order.hpp"
#include "faults/places.hpp"

namespace lamwright::faults {

// The function of that name which the program would have called.
template <typename Function>
Function* real(Function* /*stand_in*/, const char* name) {
  return reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
}

// What a call returns that fails: -1, or null where it returns a pointer.
template <typename Value>
Value failed(int error) {
  errno = error;
  if constexpr (std::is_pointer_v<Value>)
    return nullptr;
  else
    return Value(-1);
}

template <typename Call>
auto answered(std::string_view kind, const std::string& path, const Call& call) {
  const Order order = order_for(kind, path);
  return order.error != 0 ? failed<decltype(call())>(order.error) : call();
}

template <typename Call>
int answered_here(std::string_view kind, const char* name, const Call& call) {
  return answered(kind, path_of(AT_FDCWD, name), call);
}

// What is closed is closed, whatever the answer.
template <typename Call>
int answered_after(std::string_view kind, const std::string& path, const Call& call) {
  const Order order = order_for(kind, path);
  const int done = call();
  return order.error != 0 ? failed<int>(order.error) : done;
}

}  // namespace lamwright::faults
