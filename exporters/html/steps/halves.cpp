// The press as it is built: parts counted, formers on beams, the upper half like the lower.
#include "exporters/html/steps/rooms.hpp"
#include "shared/text.hpp"

namespace lamwright::html::bench {
namespace {

// "8 lower formers"; parts of one kind that differ as "8 + 4".
Markup counted(const Facts& facts, PartKind kind, const char* name) {
  Markup out;
  for (const std::string& part : facts.parts(kind))
    out += words(out.empty() ? "" : " + ", facts.told().count(part + "/count"));
  return words(out, " ", name);
}

struct Named {
  PartKind kind;
  const char* name;
};

Markup all_counted(const Facts& facts) {
  constexpr Named kNamed[] = {{PartKind::former_lower, "lower formers"},
                              {PartKind::former_upper, "upper formers"},
                              {PartKind::beam, "beams"},
                              {PartKind::bearer, "bearers"},
                              {PartKind::spacer_block, "spacer blocks"},
                              {PartKind::stop, "stops"}};
  Markup out;
  for (const Named& named : kNamed)
    if (facts.has(named.kind)) out += words(out.empty() ? "" : ", ", counted(facts, named.kind, named.name));
  return out;
}

// "1, 3 and 5" where not every former has a strap.
std::string strapped_stations(const Facts& facts) {
  const std::vector<Section>& sections = facts.plan().sections;
  std::vector<std::string> out;
  for (std::size_t i = 0; i < sections.size(); ++i)
    if (sections[i].strapped) out.push_back(std::to_string(i + 1));
  return out.size() == sections.size() ? std::string() : listed(out, "and");
}

void add_spacers(const Facts& facts, Actions& out) {
  if (!facts.has(PartKind::spacer_block)) return;
  out.say("Screw the spacer blocks between neighbours, where the drawings press and stations show them: ",
          "their length of ", facts.told().length("/press/spacing/clear"),
          " sets the distance, with no measuring.");
}

void add_bearers(const Facts& facts, Actions& out) {
  if (!facts.has(PartKind::bearer)) return;
  const char* which = facts.strapped() ? "the formers that have no strap" : "the formers";
  if (facts.job().formers.groove_depth)
    out.say("Set ", which, " into the grooves of the bearers, without screws.");
  else
    out.say("Lay ", which, " on their sides and put them on the plain bearers.");
}

// Once it stands, nobody gets at its underside.
void add_feet(const Facts& facts, Actions& out) {
  const std::string screw = facts.entry("/hardware", "use", "beams to formers");
  if (facts.stacked())
    out.when(!screw.empty(), "Turn the stack on its side and lay the beams against its foot.");
  else if (facts.has(PartKind::beam))
    out.say("Lay a former on its side, its beam against its foot, both centre lines together.");
  if (const std::string stations = strapped_stations(facts); facts.strapped() && !stations.empty())
    out.say("Beams with straps stand under stations ", stations, ".");
  add_bearers(facts, out);
  if (!screw.empty())
    out.say("Drive the foot screws before anything is stood up, from the underside, the middle one first: ",
            facts.told().count(screw + "/count"), " of ", facts.told().text(screw + "/name"),
            facts.halves() ? " for both halves." : ".");
}

// Beams that lean stand on wedges: the pull is plumb.
void add_lean(const Facts& facts, Actions& out) {
  if (const std::string note = facts.entry("/notes", "", "Beams lean"); !note.empty())
    out.say(facts.told().text(note),
            " Wedge the beams up to that lean, all alike, before anything is laid on.");
}

void add_order(const Facts& facts, Actions& out) {
  if (facts.stacked())
    out.say(
        "Stack the boards face to face in order of station, number 1 at the back, L on the left, and screw "
        "each to the one before.");
  else
    out.say("Stand the formers in order of station, number 1 at the back, L on the left, ",
            facts.told().length("/press/spacing/pitch"), " from middle to middle.");
}

// The frame of the press: X to the right, Y up, Z toward whoever looks at it so. Station 1 has the least Z.
void add_sides(Actions& out) {
  out.say(
      "Left and right are told for someone who stands before the last station and looks toward station 1, "
      "which is at the back. L is then on the left, R on the right.");
  out.say(
      "Drawings call the edge of the width at station 1 the near edge: from there they count the stations "
      "and measure along the width.");
}

void add_middle(const Facts& facts, Actions& out) {
  out.say("On every lower former draw the middle of the pack across the contact edge: ",
          facts.told().length("/press/contact/lower/middle"),
          " along the edge from the left mark of the blank",
          facts.centred() ? ", at the centre line." : ". It is not the centre line.");
}

void add_straightness(const Facts& facts, Actions& out) {
  out.say(
      "Lay a straightedge along the width over all contact edges, at three places: plane off what stands "
      "proud, shim what stands low.");
  out.say("Sight across the ", facts.feet(),
          ", from the last to the first: their tops are parallel, or the press is twisted. Pack under them "
          "until they are.");
}

}  // namespace

Step check_parts(const Facts& facts) {
  Actions out;
  add_sides(out);
  out.say("Count the pieces against the parts on this sheet, first of all ", all_counted(facts), ".");
  out.say("Count everything else against the hardware list.");
  out.say("Stack all ", facts.halves() ? "lower formers, then all upper ones," : "formers",
          " on a flat bench and feel along the stack: no contact edge stands out.");
  out.say("Find the marks on every former: centre line, ends of the blank",
          facts.panel().trim > 0 ? ", trim lines" : "", ", L and R.");
  out.say("Write its station on every former.");
  add_middle(facts, out);
  return {"Check the parts", std::move(out).list()};
}

Step rig_lower(const Facts& facts) {
  Actions out;
  out.say("Choose a flat and level place: wind in the floor goes into the panel.");
  if (facts.stacked()) add_order(facts, out);
  add_feet(facts, out);
  if (!facts.stacked()) add_order(facts, out);
  add_spacers(facts, out);
  out.when(facts.has(PartKind::fixing_block),
           "Screw the fixing blocks to both sides of the formers, flush with the contact edge, where the "
           "drawings press and stations show them.");
  out.when(facts.rollers(), "Fit the guide rollers at the lower corners and see that they turn.");
  add_lean(facts, out);
  out.when(facts.has(PartKind::stop), "Screw the stops to the beams where the drawing shows them.");
  add_straightness(facts, out);
  return {facts.halves() ? "Build the lower half" : "Build the mould", std::move(out).list()};
}

Step rig_upper(const Facts& facts) {
  Actions out;
  if (!facts.halves()) return {"Build the upper half", {}};
  out.say("Build the upper half like the lower one, beams down on the floor, contact edges up.");
  out.say(
      "It will be turned over from back to front: build it with L on the left but station 1 nearest to you, "
      "so that station 1 then lies over station 1, and L over L.");
  out.say("Check it with the straightedge and sight across its beams too.");
  return {"Build the upper half", std::move(out).list()};
}

}  // namespace lamwright::html::bench
