// What lies between formers and pack: slats, sheathing or the bare mould with its liner.
#include <algorithm>

#include "exporters/html/steps/datum.hpp"
#include "exporters/html/steps/rooms.hpp"
#include "shared/text.hpp"

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
  out.say("Screw the datum slat to every former first: run ", bed, " on the drawing bed-caul",
          facts.halves() ? ", run " + top + " on the drawing top-caul." : ".");
}

bool recessed(const Facts& facts) { return facts.pins() && facts.plan().pins.front().recess; }

// "6 mm across the slat and 8 mm deep"
Markup recess_size(const Facts& facts, const char* width) {
  const Told& told = facts.told();
  return words(told.length("/press/pins/0/recess_size/0"), width, told.length("/press/pins/0/recess_size/1"),
               " deep");
}

// No length along the sheets tells this place: the other half comes straight down on pins that may lean.
constexpr const char* kChalked =
    "Chalked pin tips mark the places when the upper half is once lowered straight onto them.";

void add_recesses(const Facts& facts, Actions& out) {
  if (!recessed(facts)) return;
  const std::vector<std::string> runs = recessed_runs(facts.plan(), facts.plan().pins.front());
  if (runs.empty()) return;
  out.say("Recess ", runs.size() > 1 ? "runs " : "run ", listed(runs, "and"), " of the ",
          facts.pins_in_bed() ? "top" : "bed",
          " caul opposite the two locating pins, where no gap lets them in: ",
          recess_size(facts, " across the slat and "), ", ",
          facts.told().length("/press/pins/0/flat/from_edge"), " from each end of the slat. ", kChalked);
}

void add_pin_bores(const Facts& facts, Actions& out) {
  if (!facts.pins() || !facts.halves()) return;
  const char *own = facts.pins_in_bed() ? "lower" : "upper", *other = facts.pins_in_bed() ? "upper" : "lower";
  const char* sheet = facts.layer(Layer::Kind::sheathing) ? "sheathing" : "caul";
  out.say("Bore the ", own, " ", sheet, " for the two locating pins, a tight fit on them. ",
          "A sheet bored for the pins, laid on with its middle on the middle of the pack, shows where.");
  if (recessed(facts))
    out.say("Recess the ", other, " ", sheet, " opposite the pins, ", recess_size(facts, " wide and "), ". ",
            kChalked);
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
  out.say("Screw the outermost of the slats to be screwed, left and right, last.");
  out.say(
      "No other slat gets a screw: the caul must hinge freely. Tape or webbing along both ends holds the "
      "slats together, over the screwed ones too.");
  if (!halves) out.say("Join the slats of the top caul by tape or webbing alone: it stays a loose mat.");
  add_recesses(facts, out);
}

void add_sheets(const Facts& facts, Actions& out) {
  add_screws(facts, out);
  out.say("Lay the ", facts.layer(Layer::Kind::sheathing) ? "sheathing" : "caul", " on the contact edges of ",
          facts.halves() ? "each half" : "the mould", ", as far from their one end as from the other.");
  out.say(
      "Screw it to every former at the middle first, then outward, the ends last, so that it lies down "
      "without a bulge.");
  add_pin_bores(facts, out);
}

void add_bare(Actions& out) {
  out.say(
      "Feel over the bare mould with the flat hand and fair every step between boards with a long block.");
  out.say("Seal the contact faces, so that glue comes off and the boards stay dry.");
}

// Glue that bonds to everything wants tape everywhere; other glue only where it squeezes out.
void add_tape(const Facts& facts, Actions& out) {
  if (facts.job().layup.glue_row.waterproof)
    out.say("This glue does not wash off. Tape every face of the ", facts.lining(),
            " that looks at the pack.");
  else
    out.say("Tape or wax the edges of the ", facts.lining(), ", where glue squeezes out.");
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
    out.say("Turn the upper half over from back to front: ", facts.told().mass("/masses/upper"),
            ", so two people at least, or a hoist.");
  else
    out.when(facts.halves(), "Turn the upper half over from back to front.");
  return {title(facts), std::move(out).list()};
}

}  // namespace lamwright::html::bench
