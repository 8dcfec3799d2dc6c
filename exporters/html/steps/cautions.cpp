// What can hurt.
#include "exporters/html/steps.hpp"
#include "exporters/html/steps/facts.hpp"

namespace lamwright::html {
namespace {

using bench::Actions;
using bench::Facts;

void add_failed(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  for (std::size_t i = 0; i < told.size("/findings"); ++i) {
    const std::string at = "/findings/" + std::to_string(i);
    if (told.text(at + "/verdict") != to_text(Verdict::fail)) continue;
    const std::string unit = told.text(at + "/unit"), where = told.text(at + "/where");
    Markup text = words("FAILED: ", told.text(at + "/title"));
    if (!where.empty()) text += words(" (", where, ")");
    if (told.has(at + "/value")) text += words(": ", told.quantity(at + "/value", unit));
    if (told.has(at + "/limit"))
      text += words(", ", told.text(at + "/bound"), " ", told.quantity(at + "/limit", unit), " allowed");
    out.say(text, ". ", told.text(at + "/advice"));
  }
}

void add_ratings(const Facts& facts, Actions& out) {
  if (const std::string rating = facts.finding("strap-rating"); !rating.empty())
    out.say("The straps of this plan are rated for ", facts.told().force(rating + "/limit"), " and drawn to ",
            facts.told().force(rating + "/value"),
            ". Ratchets and hooks must be rated as high. Throw away what is frayed, cut or bent.");
  else
    out.say("Use straps, ratchets and hooks within their rating. Throw away what is frayed, cut or bent.");
}

void add_straps(const Facts& facts, Actions& out) {
  out.say(
      "A drawn strap holds enough to break bones. It can let go suddenly, and so can the bent pack under "
      "it.");
  out.say("Nobody stands or leans in line with a strap, while it is drawn or let go.");
  out.say("Never put a bar or a pipe on a ratchet.");
  out.say("Let go by turns on alternate sides",
          facts.hand_clamps() || facts.flats() ? ", and keep clamps on until the straps are slack." : ".");
  out.say(
      "Common strap ratchets let go all at once. Use ratchets that ease click by click, or let clamps take "
      "the load before a ratchet is opened.");
  out.when(facts.halves(), "The upper half is held by chocks or hoist before the last strap comes off.");
  add_ratings(facts, out);
}

// The mass of a lower half leaves out what the pack lies on.
const char* without_lining(const Facts& facts) {
  if (facts.slatted() || facts.layer(Layer::Kind::bed_caul)) return " without its caul";
  return facts.layer(Layer::Kind::sheathing) ? " without its sheathing" : "";
}

void add_lifting(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  if (!told.has("/masses")) return;
  out.say("The whole press weighs ", told.mass("/masses/press"),
          facts.heavy(&Masses::press) ? ": never lift it alone." : ".");
  if (facts.heavy(&Masses::lower))
    out.say(facts.halves() ? "Lower half" : "Mould", without_lining(facts), ": ", told.mass("/masses/lower"),
            ", two people or a hoist.");
  if (facts.heavy(&Masses::upper))
    out.say("Upper half: ", told.mass("/masses/upper"), ", two people or a hoist.");
  if (facts.heavy(&Masses::panel)) out.say("Panel: ", told.mass("/masses/panel"), ", two people.");
}

}  // namespace

std::vector<Markup> cautions(const ExportInput& input, const Told& told) {
  const Facts facts(input, told);
  Actions out;
  add_failed(facts, out);
  out.say("All figures here are estimates. Local rules and the judgement of a qualified person come first.");
  if (facts.strapped()) add_straps(facts, out);
  add_lifting(facts, out);
  out.say("Wear eye protection when ", facts.strapped() ? "straps are tight and when " : "", "tools run.");
  out.say("Keep glue off skin and out of eyes, and read the sheet that comes with it.");
  out.say("Sawing and sanding raise dust: extract it, and wear a mask.");
  return std::move(out).list();
}

}  // namespace lamwright::html
