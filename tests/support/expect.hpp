// What tests ask of numbers and errors, in few words.
#pragma once
#include <catch2/catch.hpp>
#include <functional>
#include <optional>
#include <string>

#include "kernel/profile/vector.hpp"
#include "shared/error.hpp"

namespace lamwright::test {

// Equal to `value` within an absolute `tolerance`; the default relative slack of Approx is switched off.
inline Approx within(double value, double tolerance) { return Approx(value).epsilon(0).margin(tolerance); }

// Coordinates of a workshop (up to 1e4 mm) summed over some hundred terms lose at most 1e4 * 100 * 2^-53 =
// 1e-10.
inline constexpr double kRounding = 1e-9;

inline bool same(const Vec2& a, const Vec2& b, double tolerance = kRounding) {
  return (a - b).norm() <= tolerance;
}
inline bool same(const Vec3& a, const Vec3& b, double tolerance = kRounding) {
  return (a - b).norm() <= tolerance;
}

// The error that a call throws; nothing when it returns. Anything but an Error passes through and fails the
// test.
inline std::optional<Error> error_of(const std::function<void()>& call) {
  try {
    call();
  } catch (const Error& error) {
    return error;
  }
  return std::nullopt;
}

inline std::string message_of(const std::function<void()>& call) {
  const auto error = error_of(call);
  return error ? error->what() : "";
}

inline bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace lamwright::test

// A call throws an Error of this kind.
#define REQUIRE_ERROR(kind_wanted, ...)                                            \
  do {                                                                             \
    const auto thrown = ::lamwright::test::error_of([&] { (void)(__VA_ARGS__); }); \
    REQUIRE(thrown.has_value());                                                   \
    CHECK(thrown->kind() == (kind_wanted));                                        \
  } while (false)
