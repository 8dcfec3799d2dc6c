#include "exporters/plots/heat.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "shared/error.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::plots;

namespace {

// CIE 1976 lightness of "#rrggbb": luminance by IEC 61966-2-1 weights.
double lightness(const std::string& colour) {
  double luminance = 0;
  const double weights[] = {0.2126, 0.7152, 0.0722};
  for (std::size_t i = 0; i < 3; ++i) {
    const double coded = std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16) / 255.0;
    luminance += weights[i] * (coded <= 0.04045 ? coded / 12.92 : std::pow((coded + 0.055) / 1.055, 2.4));
  }
  return 116 * std::cbrt(luminance) - 16;
}

}  // namespace

TEST_CASE("tints fall in lightness by even steps, from nearly white to where black still shows") {
  int seen = 0;
  for (int count = 2; count <= 8; ++count) {
    for (int i = 0; i < count; ++i, ++seen) {
      CAPTURE(count, i);
      // Eight bits a channel round by half a level, 0.2 of lightness; colours outside sRGB are brought in.
      CHECK(lightness(heat(i, count)) == test::within(90 - 46.0 * i / (count - 1), 1.5));
    }
  }
  CHECK(seen == 35);
  CHECK(heat(0, 1) == heat(0, 5));
  REQUIRE_ERROR(ErrorKind::internal, heat(3, 3));
}
