// The whole pressing once without glue.
#include "exporters/html/steps/rooms.hpp"

namespace lamwright::html::bench {
namespace {

// What two people do no faster is not told twice.
Markup by_two(const Facts& facts) {
  const GlueWork& work = *facts.input().figures.glue;
  if (work.setting_by_two() >= work.setting) return {};
  return words(", ", facts.told().minutes("/glue/minutes/setting_by_two"), " for two");
}

void add_hands(const Facts& facts, Actions& out) {
  if (!facts.slow()) return;
  const GlueWork& work = *facts.input().figures.glue;
  if (work.setting_by_two() <= work.closed)
    out.say("One person alone is too slow: two rehearse it together, one on each side.");
  else
    out.say("Two people are too slow as well: bring more hands, or take a slower glue.");
}

void add_times(const Facts& facts, Actions& out) {
  if (!facts.glued()) return;
  const Told& told = facts.told();
  out.say("Time it, from laying the sheets together to full pressure. Reckoned are ",
          told.minutes("/glue/minutes/setting"), " for one person", by_two(facts),
          "; the glue stays workable ", told.minutes("/glue/minutes/closed"), ".");
  add_hands(facts, out);
}

void add_gaps(const Facts& facts, Actions& out) {
  out.say(
      "Shine a lamp along the pack and look from the other side. Where light shows, or a strip of paper "
      "slides in, there is a gap.");
  const char* proud = facts.slatted()                       ? "a proud slat"
                      : facts.layer(Layer::Kind::sheathing) ? "a bulge of the sheathing"
                      : facts.layer(Layer::Kind::bed_caul)  ? "a bulge of the caul"
                                                            : "a proud board";
  out.say("Find the reason for every gap now: ", proud, ", a former out of line",
          facts.pins() ? ", a sheet caught on a pin" : "", ". Glue fills none of them.");
}

// A share from figures alone wants proof before good veneer goes in.
void add_test_piece(const Facts& facts, Actions& out) {
  if (!facts.springs() || facts.job().press.springback.kind != SpringbackSpec::Kind::computed) return;
  out.say(
      "The springback of this plan is worked out, not measured. Before the first panel glue a test strip: "
      "the same sheets, a hand wide, as long as the panel, pressed and cured the same way.");
  out.say(
      "Measure the strip as the step on checking the shape says. If it is too far out, put the measured "
      "share into the job and cut new formers.");
}

}  // namespace

Step run_dry(const Facts& facts) {
  Actions out;
  out.say("Do all of the steps on laying up, closing and tightening with every sheet in, but no glue.");
  out.say("Close the press fully, to the last turn.");
  add_times(facts, out);
  add_gaps(facts, out);
  out.say("With the press closed, sight across the ", facts.feet(),
          " again. Take out any twist before glue comes near.");
  out.when(!facts.halves() && facts.strapped(),
           "Draw pencil lines from the top caul down over the pack to the bed, at the middle of both edges "
           "and of both ends: they will show drift.");
  out.when(facts.halves(), "Draw pencil lines across both halves at all four corners: they will show drift.");
  out.say("Open it again in the order of the release, and keep every piece in its place.");
  add_test_piece(facts, out);
  return {"Press it dry", std::move(out).list()};
}

}  // namespace lamwright::html::bench
