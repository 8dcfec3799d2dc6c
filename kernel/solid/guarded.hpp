// The boundary to OpenCASCADE: nothing it throws leaves the library raw.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <type_traits>

namespace lamwright {

// Runs fn. What the modelling kernel or the standard library throws becomes Error (internal); `operation`
// says what was being done, with its figures. Error passes unchanged, and so does anything else (Cancelled).
void guarded_call(const std::string& operation, const std::function<void()>& fn);

template <class Fn>
auto guarded(const std::string& operation, Fn&& fn) {
  using Result = std::invoke_result_t<Fn>;
  if constexpr (std::is_void_v<Result>) {
    guarded_call(operation, fn);
  } else {
    std::optional<Result> result;
    guarded_call(operation, [&] { result.emplace(fn()); });
    return std::move(*result);
  }
}

}  // namespace lamwright
