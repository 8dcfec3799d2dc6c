// The press opened in an order that keeps everyone whole.
#include "exporters/html/steps/rooms.hpp"

namespace lamwright::html::bench {
namespace {

void add_slackening(const Facts& facts, Actions& out) {
  out.say("Send everyone out of the line of the straps.");
  out.when(facts.halves(),
           "Chock the upper half or hang it in the hoist before the first ratchet is let go: a panel under "
           "stress pushes it up, and then it can slide.");
  out.when(facts.flats(), "Leave the clamps of the pressing beams on until all straps are slack.");
  out.when(facts.hand_clamps(), "The one-handed clamps come off last.");
  out.say(
      "Let the ratchets off a few clicks at a time, one strap after the other, left and right by turns, from "
      "the outer straps to the middle, until all are slack.");
  out.say(
      "A common strap ratchet does not click back: opened, it lets go all at once. Clamp across beside it "
      "first, at each end of its strap, so that the clamps take the load; open the ratchet, then ease the "
      "clamps.");
  out.when(facts.flats(), "Then open the clamps, a little each, and lift the pressing beams off.");
}

void add_opening(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  if (!facts.halves()) {
    out.say("Take off what lies on the panel", facts.pins() ? " and draw the pins." : ".");
    return;
  }
  if (told.has("/press/opening"))
    out.say("Lift the upper half straight up by ", told.length("/press/opening/1"),
            " before it moves any other way: only then is it clear of the panel.");
  else
    out.say("Lift the upper half straight up until it is clear of the panel.");
  out.say("Then take it away to the side, or chock it where it hangs. Nobody reaches under it before.");
}

void add_panel(const Facts& facts, Actions& out) {
  const bool over_pins = facts.halves() && facts.pins_in_bed();
  const Told& told = facts.told();
  Markup text = over_pins ? "Lift the panel straight up off the pins" : "Lift the panel out";
  if (told.has("/masses/panel")) text += words(", ", told.mass("/masses/panel"));
  out.say(text, facts.heavy(&Masses::panel) ? ", with two people." : ".");
}

}  // namespace

Step release(const Facts& facts) {
  Actions out;
  const Told& told = facts.told();
  if (facts.strapped())
    add_slackening(facts, out);
  else
    out.say("Take the pressure off slowly, clamps by turns from the outside to the middle.");
  add_opening(facts, out);
  add_panel(facts, out);
  out.say("Write job, date and number on the ", facts.panel().trim > 0 ? "trim" : "edge",
          ", and which end is L.");
  if (facts.glued())
    out.say("Stand it so that air reaches both faces, and leave it ", told.hours("/glue/cure_hours"),
            " before any saw or plane comes near: the glue is not yet hard, and the panel still moves.");
  return {"Release", std::move(out).list()};
}

}  // namespace lamwright::html::bench
