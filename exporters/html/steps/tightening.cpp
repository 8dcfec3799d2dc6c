// Drawn tight by turns, watched, and left to set.
#include "exporters/html/steps/rooms.hpp"
#include "shared/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::html::bench {
namespace {

constexpr double kFirmHand = 2000;  // N of a clamp turned by one hand; common practice, no source

void add_final_pull(const Facts& facts, Actions& out) {
  const StrapSpec& straps = facts.job().straps;
  const Markup pull = facts.told().force("/press/closures/0/tension");
  if (facts.plan().crown)
    out.say("The last round brings every ratchet to ", pull,
            ", no more: the crown of the contact edges is made for this pull.");
  else if (straps.tension <= straps.hand)
    out.say("The last round brings every ratchet to ", pull,
            ": as much as one arm gives on the ratchet's own handle.");
  else
    out.say("The last round brings every ratchet to ", pull,
            ": more than one arm gives, so use ratchets with a long handle of their own and a gauge.");
}

void add_rounds(const Facts& facts, Actions& out) {
  out.say("Take the slack out of all straps by hand.");
  out.say("Start with the ",
          facts.plan().closures.size() % 2 == 0 ? "two straps in the middle" : "middle strap",
          ", then go outward, one on each side by turns.");
  out.when(facts.loops() || facts.job().straps.both_ends,
           "Two people draw left and right at the same time, one on each side. One alone goes from left to "
           "right and back at every strap.");
  out.say("One or two clicks a strap, then the next one. No strap is finished before the others.");
  out.say("After the first round stop and sight across the ", facts.feet(),
          ": if they have twisted, slacken and start again.");
}

// "from the bend to the free end on the flats at the ends": where a beam has several clamps.
std::string along_flats(const Facts& facts) {
  const PressPlan& plan = facts.plan();
  bool ends = false, between = false;
  for (const FlatPressed& flat : plan.flats) {
    if (flat.clamps.size() < 2) continue;
    const bool end = flat.from < kSamePoint || flat.to > plan.neutral.girth() - kSamePoint;
    (end ? ends : between) = true;
  }
  std::string out = ends ? ", on a flat at the end from the bend to the free end" : "";
  if (between) out += ", on a flat between bends from its middle outward";
  return out;
}

void add_clamps(const Facts& facts, Actions& out) {
  if (!facts.flats()) return;
  out.say(facts.strapped() ? "After each round of the straps give" : "Give",
          " the clamps of the pressing beams a little too: the middle formers first", along_flats(facts),
          ".");
  out.say("At the end every clamp gives ", facts.told().force("/press/flats/0/force"),
          facts.plan().flats.front().force <= kFirmHand ? ": turned firmly by one hand."
                                                        : ": more than one hand gives.");
}

void add_drift(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  if (facts.halves())
    out.say(
        "Look at the pencil lines on both halves after every round. If the upper half drifts, slacken the "
        "side it goes to and draw the other.");
  else
    out.say("Look at the pencil lines and the ", facts.hand_clamps() ? "one-handed clamps" : "pins",
            " after every round. If the top caul drifts, slacken the side it goes to and draw the other.");
  if (told.has("/press/side_drag") && facts.job().straps.both_ends)
    out.say("A ratchet a tenth tighter than its fellow drags the caul sideways by ",
            told.force("/press/side_drag"), " a strap.");
}

// What glue ought not to dry on.
std::vector<std::string> wiped(const Facts& facts) {
  std::vector<std::string> out;
  if (facts.strapped()) out.push_back("straps");
  out.push_back(facts.feet());
  if (facts.slatted()) out.push_back("slats");
  return out;
}

}  // namespace

Step tighten(const Facts& facts) {
  Actions out;
  if (facts.strapped()) {
    add_rounds(facts, out);
    add_drift(facts, out);
  }
  out.when(!facts.strapped(), "Draw the bag down, or the clamps, evenly from the middle outward.");
  add_clamps(facts, out);
  if (facts.strapped()) add_final_pull(facts, out);
  if (facts.glued())
    out.say("Be done within ", facts.told().minutes("/glue/minutes/closed"),
            " from laying the sheets together.");
  return {"Tighten by turns", std::move(out).list()};
}

Step wait(const Facts& facts) {
  Actions out;
  const Told& told = facts.told();
  if (facts.glued()) {
    out.say(
        "Look for beads of glue along all edges. A dry stretch has too little glue or too little pressure: "
        "note where, and tap there when the panel is out.");
    out.say("Wipe off what runs toward ", listed(wiped(facts), "and"), ".");
  }
  out.when(facts.strapped(),
           "Draw once more to the same pull after a few minutes, while the glue is wet: straps stretch and "
           "the pack settles.");
  out.say("Check for twist", facts.strapped() ? " and drift" : "", " a last time.");
  if (facts.glued())
    out.say("Write the time on the press. Leave it closed for ", told.minutes("/glue/minutes/pressing"),
            " in a room that is warm enough to sit in. In a cooler one it takes longer: ask the glue's own "
            "sheet.");
  if (facts.glued() && facts.input().figures.glue->pressings > 1)
    out.say(facts.staged() ? "Glued in stages by one person, the job takes " : "The job takes ",
            told.count("/glue/pressings"), " pressings, ", told.count("/glue/days"),
            told.at("/glue/days") == 1 ? " day" : " days", " in the press.");
  if (facts.glued() && facts.input().figures.glue->sets() > 1)
    out.say("One set of formers stands about ", told.count("/glue/former_uses"),
            " pressings: look at the contact edges each time, and cut new ones when they round over.");
  return {"Check and leave it to set", std::move(out).list()};
}

}  // namespace lamwright::html::bench
