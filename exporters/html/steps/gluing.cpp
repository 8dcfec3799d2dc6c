// Glue: how much, how fast, which faces, in which order.
#include "exporters/html/steps/rooms.hpp"

namespace lamwright::html::bench {
namespace {

constexpr std::size_t kListedStages = 4;  // more are told by their greatest number of sheets

void add_amount(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  out.say("Weigh out ", told.quantity("/glue/line_grams", "g"), " of glue a line, ",
          told.count("/glue/lines"),
          told.at("/glue/lines") == 1 ? " line: " : " lines: ", told.mass("/glue/mass"), " a panel (",
          told.quantity("/glue/spread", "g/m2"), ").");
  out.say("Room, wood and glue must have ", told.quantity("/glue/least_temperature", "\u00b0C"),
          " or more, now and until the press is opened.");
}

// "4 sheets, then 3"
Markup stage_list(const Facts& facts) {
  const Told& told = facts.told();
  Markup out;
  for (std::size_t i = 0; i < told.size("/glue/stages"); ++i)
    out += words(i == 0 ? "" : ", then ", told.count("/glue/stages/" + std::to_string(i)),
                 i == 0 ? " sheets" : " more");
  return out;
}

void add_stages(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  if (told.size("/glue/stages") > kListedStages)
    out.say("Alone you must glue in stages of at most ", told.count("/glue/stages/0"),
            " sheets, each pressed before the next. More hands spreading at once need fewer.");
  else
    out.say("Alone you must glue in stages: ", stage_list(facts), ". A stage takes about ",
            told.minutes("/glue/minutes/stage"),
            " to spread. More hands spreading at once need fewer stages.");
  out.say("Begin at ply 1 and go outward. The joint between two stages is glued with the later one.");
  out.say(
      "In each stage lay the other sheets in dry, behind a sheet of film, so that the press closes as "
      "drawn.");
  out.say("Let a stage set for the full pressing time, then scrape off the beads of glue before the next.");
}

void add_open_time(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  out.say("Spreading all lines takes one person about ", told.minutes("/glue/minutes/spreading"),
          "; the glue stays open ", told.minutes("/glue/minutes/open"), ".");
  if (facts.staged()) add_stages(facts, out);
}

void add_within_reach(const Facts& facts, Actions& out) {
  out.when(facts.strapped(), "Lay straps and ratchets ready: unrolled, free of twists, ratchets opened.");
  out.when(facts.flats(),
           "Set the clamps for the pressing beams to their width and lay them by their holes.");
  out.say("Put spreader, damp rags, a clock and ", facts.hand_clamps() ? "the one-handed clamps" : "a mallet",
          " within reach. Say who does what.");
}

void add_pins(const Facts& facts, Actions& out) {
  if (!facts.pins()) return;
  if (facts.pins_in_bed())
    out.say("Drop every sheet over the two locating pins, which stand in the ",
            facts.slatted() ? "gap of the bed caul" : "lower half", ".");
  else if (facts.halves())
    out.say(
        "Keep the pin bores of all sheets in line: the pins stand in the upper half and come down into "
        "them.");
  else
    out.say(
        "Stand the two locating pins in their bores as the sheets go on: the gap of the top caul will drop "
        "over them.");
}

void add_faces(const Facts& facts, Actions& out) {
  out.say(facts.job().layup.glue_row.faces > 1
              ? "Spread both faces of every joint, thin and even, right into the corners."
              : "Spread one face of every joint, thin and even, right into the corners: the outer face of "
                "each ply before the next goes on.");
  out.say("Leave dry: the inner face of ply 1, the outer face of the last ply",
          facts.staged() ? " that this stage glues" : "", facts.covers() ? ", both cover sheets." : ".");
}

}  // namespace

Step get_ready(const Facts& facts) {
  Actions out;
  if (!facts.glued()) return {"Get ready to glue", {}};
  add_amount(facts, out);
  add_open_time(facts, out);
  add_within_reach(facts, out);
  if (facts.job().layup.glue_row.waterproof)
    out.say("Grease or tape ", facts.pins() ? "pins, " : "", facts.strapped() ? "straps, " : "",
            "clamps and whatever else glue may reach: it holds for good.");
  return {"Get ready to glue", std::move(out).list()};
}

Step lay_up(const Facts& facts) {
  Actions out;
  out.say("Start the clock with the first spread.");
  out.when(
      facts.covers(),
      facts.stepped()
          ? "Lay the inner cover sheet down, L on the left."
          : "Lay the inner cover sheet down, its centre line on the middle of the pack that is drawn there.");
  out.say(facts.covers() ? "Lay the plies in order, ply 1 first, from the inner face to the outer."
                         : "Lay the plies in order, ply 1 first with its centre line on the middle drawn "
                           "there, from the inner face to the outer.");
  add_pins(facts, out);
  if (facts.glued()) add_faces(facts, out);
  out.say(facts.stepped()
              ? "Let the pins alone line the sheets up, L on the left. The pack bends between them and its "
                "middle, so centre lines step apart a little: that is right."
              : "Bring every centre line onto the one below: look at both edges, L on the left.");
  out.when(facts.covers(), "Lay the outer cover sheet on.");
  return {facts.glued() ? "Spread and lay up" : "Lay up", std::move(out).list()};
}

}  // namespace lamwright::html::bench
