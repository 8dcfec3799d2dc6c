// Drawings in DXF: whatever the bytes are, they are read or refused.
#include "kernel/reading/dxf/dxf.hpp"
#include "tests/fuzz/drawn_checks.hpp"
#include "tests/fuzz/target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace lamwright;
  const auto text = fuzz::text_of(data, size);
  return fuzz::offer([&] {
    const auto file = read_dxf(text, {"site.dxf", LengthUnit::mm});
    for (const DrawnCurve& curve : file.curves) fuzz::check(curve);
  });
}
