// What lies between formers and pack: slats, sheathing or the bare mould with its liner.
#include <algorithm>

#include "exporters/html/steps/datum.hpp"
#include "exporters/html/steps/rooms.hpp"

namespace lamwright::html::bench {
namespace {

bool jointed(const PlannedCaul& caul) {
  return std::any_of(caul.schedule.runs.begin(), caul.schedule.runs.end(),
                     [](const ScheduledRun& run) { return run.pieces.size() > 1; });
}

void add_screws(const Facts& facts, Actions& out) {
  const std::string use = facts.halves() ? "cauls to formers" : "bed caul to formers";
  if (const std::string screw = facts.entry("/hardware", "use", use); !screw.empty())
    out.say(facts.halves() ? "Screws for both: " : "Screws for it: ", facts.told().count(screw + "/count"),
            " of ", facts.told().text(screw + "/name"), ", heads sunk below the face.");
}

void add_datum(const Facts& facts, Actions& out) {
  const std::string bed = datum_run(facts.plan(), Layer::Kind::bed_caul);
  const std::string top = datum_run(facts.plan(), Layer::Kind::top_caul);
  out.say("Screw the datum slat to every former first: run ", bed, " of the bed caul",
          facts.halves() ? ", run " + top + " of the top caul." : ".");
}

void add_slats(const Facts& facts, Actions& out) {
  const bool halves = facts.halves();
  out.say("Lay out the slats of ", halves ? "each caul" : "the bed caul", " as its drawing numbers them.");
  if (std::any_of(facts.plan().cauls.begin(), facts.plan().cauls.end(), jointed))
    out.say(
        "Put runs of several pieces together with their joints where the drawing shows them: joints of "
        "neighbours never lie side by side.");
  add_screws(facts, out);
  add_datum(facts, out);
  out.when(facts.has(PartKind::fixing_block), "Then screw the slats that lie over the fixing blocks.");
  out.say("Screw the slats at both ends of the curve last.");
  out.say(
      "No other slat gets a screw: the caul must hinge freely. Tape or webbing along both ends holds the "
      "slats together, over the screwed ones too.");
  if (!halves) out.say("Join the slats of the top caul by tape or webbing alone: it stays a loose mat.");
  if (const std::string note = facts.entry("/notes", "", "Recess the slats"); !note.empty())
    out.say(facts.told().text(note));
}

void add_sheets(const Facts& facts, Actions& out) {
  add_screws(facts, out);
  out.say("Lay the ", facts.layer(Layer::Kind::sheathing) ? "sheathing" : "caul", " on the contact edges of ",
          facts.halves() ? "each half" : "the mould", ", as far from their one end as from the other.");
  out.say(
      "Screw it to every former at the middle first, then outward, the ends last, so that it lies down "
      "without a bulge.");
}

void add_bare(Actions& out) {
  out.say(
      "Feel over the bare mould with the flat hand and fair every step between boards with a long block.");
  out.say("Seal the contact faces, so that glue comes off and the boards stay dry.");
}

// Glue that bonds to everything wants tape everywhere; other glue only where it squeezes out.
void add_tape(const Facts& facts, Actions& out) {
  if (facts.job().layup.glue_row.waterproof)
    out.say("This glue does not wash off. Tape every face of ", facts.slatted() ? "the cauls" : "the mould",
            " that looks at the pack.");
  else
    out.say("Tape or wax the edges of ", facts.slatted() ? "the cauls" : "the mould",
            ", where glue squeezes out.");
}

const char* title(const Facts& facts) {
  if (facts.slatted() || facts.layer(Layer::Kind::bed_caul)) return "Put the cauls on";
  return facts.layer(Layer::Kind::sheathing) ? "Put the sheathing on" : "Make the mould ready";
}

}  // namespace

Step put_on_cauls(const Facts& facts) {
  Actions out;
  out.when(facts.layer(Layer::Kind::liner), "Lay the liner on the contact edges, without folds or gaps.");
  if (facts.slatted())
    add_slats(facts, out);
  else if (facts.layer(Layer::Kind::sheathing) || facts.layer(Layer::Kind::bed_caul))
    add_sheets(facts, out);
  else
    add_bare(out);
  add_tape(facts, out);
  out.say("Draw the middle of the pack over the ",
          facts.slatted()  ? "bed caul"
          : facts.halves() ? "lower half"
                           : "mould",
          ", from the mark on the first former to that on the last.");
  if (facts.heavy(&Masses::upper))
    out.say("Turn the upper half over: ", facts.told().mass("/masses/upper"),
            ", so two people at least, or a hoist.");
  else
    out.when(facts.halves(), "Turn the upper half over.");
  return {title(facts), std::move(out).list()};
}

}  // namespace lamwright::html::bench
