// Drawings in SVG: whatever the bytes are, they are read or refused.
#include "kernel/reading/svg/svg.hpp"
#include "tests/fuzz/drawn_checks.hpp"
#include "tests/fuzz/target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace lamwright;
  // The last byte chooses between the sizes of the file and a scale.
  const bool scaled = size > 0 && data[size - 1] % 2 == 1;
  const auto text = fuzz::text_of(data, size);
  return fuzz::offer([&] {
    const auto file = read_svg(text, {"site.svg", 96, scaled ? std::optional(0.5) : std::nullopt});
    for (const DrawnCurve& curve : file.curves) fuzz::check(curve);
  });
}
