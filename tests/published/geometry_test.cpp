// Lengths, areas and volumes of the formulary and of published worked figures. The source stands beside each
// check.
#include <cmath>

#include "kernel/part/part.hpp"
#include "kernel/profile/offset.hpp"
#include "kernel/profile/segment.hpp"
#include "shared/quantity.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("An inch is 25.4 mm exactly") {
  // International yard and pound agreement, 1959.
  CHECK(kMmPerInch == 25.4);
  CHECK(parse_length("1 in", LengthUnit::mm).value == 25.4);
  CHECK(parse_length("36 in", LengthUnit::mm).value == within(914.4, 1e-12));  // the yard, 0.9144 m
}

TEST_CASE("Arcs develop as radius times angle") {
  // Elementary geometry: R 500 over 60 degrees is 500 pi / 3; 18 farther out it is longer by 18 pi / 3.
  const Profile arc = from_origin({bend(60, 500)});
  CHECK(arc.girth() == within(523.59878, 5e-6));
  CHECK(offset(arc, 18).girth() == within(542.44833, 5e-6));
}

TEST_CASE("A parallel is longer by distance times total turn") {
  // Differential geometry of parallel curves (do Carmo, section 1-5, exercise on parallel curves; from
  // memory).
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    for (const double d : {9.0, -9.0})
      CHECK(offset(named.profile, d).girth() - named.profile.girth() ==
            within(d * named.profile.turn(), kRounding));
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("A bend of 90 degrees develops along its mid-plane") {
  // Bend development L = angle (R + K T) with K = 0.5, a thin pack bent to its middle (formula as in the help
  // pages of sheet-metal CAD): inside R 500, T 18 gives pi / 2 * 509.
  CHECK(offset(from_origin({bend(90, 500)}), 9).girth() == within(799.53533, 5e-6));
}

TEST_CASE("Plies of a pack develop from the inside to the outside face") {
  // Inside R100, ten plies of 1.2, 90 degrees: inside 50 pi = 157.080, outside 56 pi = 175.929.
  const Profile inner = from_origin({bend(90, 100)});
  CHECK(inner.girth() == within(157.080, 5e-4));
  CHECK(offset(inner, 12).girth() == within(175.929, 5e-4));
}

TEST_CASE("An L of thickness 18 has faces that differ by thickness times turn") {
  // 18 pi / 2 = 28.274.
  const Profile inner = from_origin({straight(340), bend(90, 60), straight(340)});
  CHECK(offset(inner, 18).girth() - inner.girth() == within(28.274, 5e-4));
}

TEST_CASE("Chord and rise give the radius") {
  // Circle geometry: R = (c^2 / 4 + h^2) / 2h. 1000 and 100: 1300; 1200 and 150: 1275.
  for (const auto& [c, h, r] : {std::array{1000.0, 100.0, 1300.0}, std::array{1200.0, 150.0, 1275.0}}) {
    const double half = degrees(std::asin(c / 2 / r));
    const Profile arc = from_origin({bend(2 * half, r)}, half);
    CHECK(chord(arc) == within(c, kRounding));
    CHECK(arc.box().high.y() == within(h, kRounding));
  }
}

TEST_CASE("An arc's sagitta is bulge times half its chord") {
  // DXF reference: bulge = tan(included angle / 4). Chord 100, bulge 0.414214 (90 degrees): R 70.7107,
  // sagitta 20.7107.
  const Profile arc = from_origin({bend(90, 100 / std::sqrt(2.0))}, 45);
  CHECK(chord(arc) == within(100, kRounding));
  CHECK(1 / arc.runs()[0].curvature == within(70.7107, 5e-5));
  CHECK(arc.box().high.y() == within(20.7107, 5e-5));
  CHECK(std::tan(segments(arc)[0].turn / 4) * -50 == within(20.7107, 5e-5));
}

TEST_CASE("Springback of six plies on chord 1200 and rise 150") {
  // Rule of the trade, lost share 1 / n^2 (common practice, no source), applied to the curvature: 1275 * 35
  // / 36.
  CHECK(1 / compensated(from_origin({bend(56, 1275)}), 1 / 36.0).runs()[0].curvature ==
        within(1239.583, 5e-4));
  // Chord 900, rise 60, four plies: R = (450^2 + 60^2) / 120 = 1717.5; times 15 / 16 = 1610.156.
  CHECK(1 / compensated(from_origin({bend(30, 1717.5)}), 1 / 16.0).runs()[0].curvature ==
        within(1610.156, 5e-4));
}

TEST_CASE("A drilled board has the volume of the elementary formula") {
  // 1200 x 120 x 18, bore 10 counterbored 20 x 6: 2 592 000 - pi (25 * 12 + 100 * 6).
  const Part board =
      make_part({"board",
                 PartKind::former_lower,
                 "board 18",
                 rectangle({0, 0}, {1200, 120}),
                 18,
                 {},
                 {{BoreUse::clamp, 10, std::nullopt, Counterbore{20, 6}, {600, 60, 0}, {0, 0, 1}}},
                 {},
                 true});
  CHECK(board.volume() == within(2589172.567, 5e-4));
}

TEST_CASE("Circle segments and half discs have the figures of the formulary") {
  // Dubbel, Taschenbuch fuer den Maschinenbau, plane figures (from memory): half disc area pi R^2 / 2,
  // centroid 4 R / 3 pi = 0.42441 R.
  const Outline half({Segment{{300, 0}, {-300, 0}, kPi, {0, 0}, 300}, line({-300, 0}, {300, 0})},
                     "half disc");
  CHECK(half.area() == within(141371.669, 5e-4));
  CHECK(half.centroid().y() == within(127.324, 5e-4));
}
