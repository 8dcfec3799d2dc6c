// The d of a path in SVG: whatever the bytes are, they are drawn or refused.
#include "kernel/reading/svg/path_data.hpp"
#include "kernel/reading/svg/pen.hpp"
#include "tests/fuzz/drawn_checks.hpp"
#include "tests/fuzz/target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace lamwright;
  using namespace lamwright::svg_reading;
  const Place where{"site.svg", 1, 0, "path"};
  // An even map and one that makes ellipses of circles.
  const bool even = size > 0 && data[size - 1] % 2 == 0;
  const Affine to_mm = even ? scaled(0.25, -0.25) : affine({0.5, 0.1}, {0.3, -2}, {10, 20});
  return fuzz::offer([&] {
    const auto steps = read_path({fuzz::text_of(data, size), where});
    Limits limits("site.svg");
    Notes notes;
    for (const DrawnCurve& curve : drawn(steps, to_mm, {"", {}, "path", where}, limits, notes))
      fuzz::check(curve);
  });
}
