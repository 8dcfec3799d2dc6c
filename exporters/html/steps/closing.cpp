// The press closed on the pack, straps laid and hooked, not yet drawn.
#include <algorithm>
#include <cmath>

#include "exporters/html/steps/datum.hpp"
#include "exporters/html/steps/rooms.hpp"
#include "shared/units.hpp"

namespace lamwright::html::bench {
namespace {

// Strap holes of the beam at one side, from its end inward: X of each.
std::vector<double> hole_row(const Facts& facts, int side) {
  std::vector<double> out;
  for (const Part& part : facts.plan().parts) {
    if (part.kind() != PartKind::beam) continue;
    for (const Bore& bore : part.bores())
      if (bore.use == BoreUse::strap && bore.at.x() * side > 0) out.push_back(bore.at.x());
    break;
  }
  std::sort(out.begin(), out.end(), [&](double a, double b) { return a * side > b * side; });
  return out;
}

// "the middle one of the row", "the second from the beam's end".
std::string hole_name(const Facts& facts, int side) {
  constexpr const char* kFromEnd[] = {"outermost of the row",        "second from the beam's end",
                                      "third from the beam's end",   "fourth from the beam's end",
                                      "fifth from the beam's end",   "sixth from the beam's end",
                                      "seventh from the beam's end", "eighth from the beam's end"};
  const std::vector<double> row = hole_row(facts, side);
  if (row.empty()) return {};
  const Closure& closure = facts.plan().closures.front();
  const double mark = (side < 0 ? closure.left : closure.right).mark.x();
  const auto nearest = std::min_element(
      row.begin(), row.end(), [&](double a, double b) { return std::abs(a - mark) < std::abs(b - mark); });
  const auto place = static_cast<std::size_t>(nearest - row.begin());
  if (2 * place + 1 == row.size()) return "middle one of the row";
  return place < std::size(kFromEnd) ? kFromEnd[place] : "one that the drawing of the beam marks";
}

void add_hooks(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  const std::string left = hole_name(facts, -1), right = hole_name(facts, 1);
  if (left.empty() || right.empty()) return;
  if (left == right)
    out.say("Pin each strap by its fittings to the marked strap hole at both ends of its beam: the ", left,
            ".");
  else
    out.say("Pin each strap by its fittings to the marked strap holes: on the left the ", left,
            ", on the right the ", right, ".");
  out.say("From ", facts.rollers() ? "the roller" : "the end of the top caul",
          " to the hole it then runs free for ", told.length("/press/straps/0/run"), " on the left and ",
          told.length("/press/straps/1/run"), " on the right: room for the ratchet.");
}

void add_top_caul(const Facts& facts, Actions& out) {
  const std::string datum = datum_run(facts.plan(), Layer::Kind::top_caul);
  if (datum.empty())
    out.say("Lay the top sheets on from the middle outward.");
  else
    out.say("Lay the top caul on from the middle outward: run ", datum, ", its datum slat, first.");
  if (facts.pins() && !datum.empty())
    out.say("See that both pins stand in the gap of the top caul, beside the datum slat.");
  else if (facts.pins())
    out.say("See that both pins find their way into it.");
  else
    out.say(
        "Its ends lie as far from the ends of the pack as the drawing shows. Hold all of it by hand until "
        "the first straps are tight.");
  if (const std::string clamps = facts.hardware("one-handed clamp"); !clamps.empty())
    out.say("Set the ", facts.told().count(clamps + "/count"),
            " one-handed clamps, two at each edge of the width, from top caul to bed caul, hand tight. They "
            "hold the caul while straps are laid; one that leans later tells that the caul drifts.");
}

void add_straps(const Facts& facts, Actions& out) {
  out.say(
      "Lay a strap over every former that stands on a strapped beam, flat and without a twist, in the plane "
      "of the former.");
  out.when(facts.rollers(), "Lead each strap over its guide rollers.");
  add_hooks(facts, out);
  if (!facts.job().straps.both_ends)
    out.say("Each strap has one ratchet: put them left and right by turns.");
  else
    out.when(facts.staggered(),
             "The ratchets are wider than the straps stand apart: set them higher and lower by turns along "
             "the strap, so that neighbours clear one another.");
}

// Where a piece laid on slides off. Common practice, no source.
constexpr double kSlides = radians(15);

bool steep(const Facts& facts) {
  const std::vector<FlatPressed>& flats = facts.plan().flats;
  return std::any_of(flats.begin(), flats.end(), [&](const FlatPressed& flat) {
    return std::abs(facts.plan().neutral.at((flat.from + flat.to) / 2).heading) > kSlides;
  });
}

void add_pressing_beams(const Facts& facts, Actions& out) {
  if (!facts.flats()) return;
  const std::string clamps = facts.entry("/hardware", "use", "pressing beams to formers");
  const bool everywhere = facts.plan().flats.front().planes.size() == facts.plan().sections.size();
  out.say("Lay the pressing beams on the flats, over ",
          facts.strapped() ? "straps and top caul" : "the top caul",
          everywhere ? ", one to a former." : ", at the formers that the drawing shows.");
  out.say("Set their clamps in the clamp holes",
          clamps.empty() ? Markup() : words(", ", facts.told().count(clamps + "/count"), " in all"),
          steep(facts) ? ". On steep flats the beams would fall: tighten there just enough to hold them."
                       : ", and do not tighten them yet.");
}

void add_loops(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  if (facts.hand_clamps())
    out.say(
        "Set the one-handed clamps across both halves, two at each edge of the width, hand tight. They hold "
        "the upper half while straps are laid; one that leans later tells that it drifts.");
  const char* name = facts.pinned_loops() ? "strap" : "loop";
  out.say(facts.pinned_loops()
              ? "Hook a strap to the pins of lower and upper beam at each end of every pair of beams."
              : "Put a strap loop round lower and upper beam at each end of every pair of beams.");
  out.say("The pack still holds the halves apart, so let every ", name, " out first. It measures ",
          told.length("/press/loops/open_length"), " round with the upper half lifted clear, ",
          told.length("/press/loops/length"), " with the press shut.");
  out.say("Let the ", name, "s hang plumb, flat on the wood, their ratchets where hands reach them.");
  out.when(facts.staggered(),
           "Set neighbouring ratchets higher and lower by turns, so that they clear one another.");
}

void add_upper_half(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  if (told.has("/masses/upper"))
    out.say("Lift the upper half over the pack, ", told.mass("/masses/upper"),
            facts.heavy(&Masses::upper) ? ", with hoist or helpers, and lower it straight down."
                                        : ", and lower it straight down.");
  else
    out.say("Lower the upper half straight down onto the pack.");
  out.say("Check that station stands over station and centre line over centre line.");
  if (facts.pins())
    out.say("See that both pins find their way: never force them.");
  else
    out.say("There are no locating pins: hold the pack by hand until the press has closed on it.");
  out.when(facts.warned("side-thrust"),
           "Leave the upper half free to slide sideways: no uprights beside it. The check on side thrust "
           "tells why.");
}

void add_without_straps(const Facts& facts, Actions& out) {
  out.say("This mould has no straps. Put the bag or the clamps of your own over it; the glue wants ",
          facts.told().pressure("/pressure/required"), " everywhere.");
}

}  // namespace

Step close_press(const Facts& facts) {
  Actions out;
  if (facts.halves())
    add_upper_half(facts, out);
  else if (facts.layer(Layer::Kind::top_caul))
    add_top_caul(facts, out);
  if (facts.loops())
    add_loops(facts, out);
  else if (facts.strapped())
    add_straps(facts, out);
  else
    add_without_straps(facts, out);
  add_pressing_beams(facts, out);
  return {facts.strapped() ? "Close the press and lay the straps" : "Close the mould", std::move(out).list()};
}

}  // namespace lamwright::html::bench
