// Tables of points as tests write and read them.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "kernel/reading/points/points.hpp"
#include "tests/support/expect.hpp"

namespace lamwright::test {

using Points = std::vector<Vec2>;

inline MeasuredPoints read_table(std::string_view text, LengthUnit units = LengthUnit::mm) {
  return read_points(text, {"site.csv", units});
}

inline std::string first_note(std::string_view text, LengthUnit units = LengthUnit::mm) {
  return read_table(text, units).notes.at(0);
}

inline std::string refusal(std::string_view text, LengthUnit units = LengthUnit::mm) {
  return message_of([&] { read_table(text, units); });
}

}  // namespace lamwright::test
