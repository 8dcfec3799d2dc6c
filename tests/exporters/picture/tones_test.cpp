#include "exporters/picture/tones.hpp"

#include <catch2/catch.hpp>

using namespace lamwright;
using namespace lamwright::picture;

TEST_CASE("a kind in full light has its own colour, and is darker in every shade") {
  const Tones tones;
  int seen = 0;
  for (std::size_t kind = 0; kind < scene::kKinds; ++kind, ++seen) {
    const std::string wanted = scene::colour(scene::Kind(kind));
    const Rgb full = tones.colour(Tones::of(scene::Kind(kind), 1));
    for (std::size_t i = 0; i < 3; ++i) CHECK(full[i] == std::stoi(wanted.substr(1 + 2 * i, 2), nullptr, 16));
    int last = 3 * 255 + 1;
    for (const double light : {2.0, 0.8, 0.5, 0.2, 0.0, -1.0}) {
      const Rgb shade = tones.colour(Tones::of(scene::Kind(kind), light));
      const int sum = shade[0] + shade[1] + shade[2];
      CHECK(sum <= last);
      last = sum;
    }
    CHECK(last == 0);
  }
  CHECK(seen == int(scene::kKinds));
  CHECK(tones.colour(kPaper) == Rgb{255, 255, 255});
}

TEST_CASE("samples are averaged as light, not as sRGB numbers") {
  const Tones tones;
  const Tone black = Tones::of(scene::Kind::former, 0);
  // Half the light of white is 0.5 linear: 1.055 * 0.5^(1/2.4) - 0.055 = 0.7354 of 255 = 187.5; levels are 4
  // apart.
  const Rgb half = tones.mixed(kPaper, black, kPaper, black);
  for (const std::uint8_t channel : half) CHECK(std::abs(channel - 187.5) <= 2.5);
  CHECK(tones.mixed(kPaper, kPaper, kPaper, kPaper) == tones.colour(kPaper));
  CHECK(tones.mixed(black, black, black, black) == Rgb{0, 0, 0});
}
