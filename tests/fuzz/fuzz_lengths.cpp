// Quantities as people write them: whatever the bytes are, they are read or refused.
#include <cmath>

#include "shared/number.hpp"
#include "shared/quantity.hpp"
#include "tests/fuzz/target.hpp"

namespace {

using namespace lamwright;

// Written in full and read again, a quantity is the same to the places that are written.
void check(const Reading& reading, Reading (*parse)(std::string_view)) {
  ensure(std::isfinite(reading.value), "a quantity is finite");
  ensure(reading.note.find_first_of("\r\n") == std::string::npos, "a note is one line");
  const double again = parse(number(reading.value, 12)).value;
  ensure(std::abs(again - reading.value) <= 1e-12 + 1e-15 * std::abs(reading.value), "it is read as written");
}

Reading parse_mm(std::string_view text) { return parse_length(text, LengthUnit::mm); }

int offer_length(std::string_view text) {
  return fuzz::offer([&] {
    for (const LengthUnit bare :
         {LengthUnit::inch, LengthUnit::foot, LengthUnit::m, LengthUnit::cm, LengthUnit::mm})
      check(parse_length(text, bare), parse_mm);
  });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto text = fuzz::text_of(data, size);
  int refused = offer_length(text) != 0;
  for (const auto parse : {parse_force, parse_pressure, parse_mass_per_area})
    refused += fuzz::offer([&] { check(parse(text), parse); }) != 0;
  return refused == 4 ? fuzz::kRefused : 0;
}
