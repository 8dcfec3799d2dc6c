// The sheets of the pack: cut, marked and bored before any glue.
#include <cmath>

#include "exporters/html/steps/rooms.hpp"
#include "shared/text.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::html::bench {
namespace {

bool in_pack(const std::string& use) { return use.starts_with("ply ") || use == "cover"; }

// The entry whose sizes are those of every ply and cover; nothing where they differ or none is listed.
std::string one_size(const Facts& facts) {
  const Told& told = facts.told();
  std::string first;
  for (std::size_t i = 0; i < told.size("/pack"); ++i) {
    const std::string at = "/pack/" + std::to_string(i);
    if (!in_pack(told.text(at + "/use"))) continue;
    if (first.empty()) first = at;
    for (const char* key : {"/cut", "/width"})
      if (told.at(at + key) != told.at(first + key)) return {};
  }
  return first;
}

const char* run(const Facts& facts) { return facts.curved() ? "round the curve" : "from left to right"; }

void add_sizes(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  const char* sheets = facts.covers() ? "Cut all plies and cover sheets " : "Cut all plies ";
  if (const std::string size = one_size(facts); !size.empty())
    out.say(sheets, told.length(size + "/cut"), " ", run(facts), " by ", told.length(size + "/width"),
            " across, corners square.");
  else
    out.say(sheets, "as the list of blanks says, corners square.");
}

enum class Grain { along, across, askew };

Grain grain_of(const Ply& ply) {
  const double angle = std::abs(ply.grain);
  if (angle < kTangent) return Grain::along;
  return std::abs(angle - kPi / 2) < kTangent ? Grain::across : Grain::askew;
}

// "1, 3 and 5"
std::string plies_with(const Panel& panel, Grain grain) {
  std::vector<std::string> numbers;
  for (std::size_t i = 0; i < panel.plies.size(); ++i)
    if (grain_of(panel.plies[i]) == grain) numbers.push_back(std::to_string(i + 1));
  return listed(numbers, "and");
}

void add_grain(const Facts& facts, Actions& out) {
  const std::string along = plies_with(facts.panel(), Grain::along),
                    across = plies_with(facts.panel(), Grain::across),
                    askew = plies_with(facts.panel(), Grain::askew);
  if (across.empty() && askew.empty()) {
    out.say("The grain of every ply runs ", run(facts), ".");
    return;
  }
  if (!along.empty()) out.say("Grain ", run(facts), ", numbered from the inner face: ply ", along, ".");
  if (!across.empty()) out.say("Grain across, from edge to edge: ply ", across, ".");
  if (!askew.empty()) out.say("Grain at an angle, as the list of blanks says: ply ", askew, ".");
}

void add_pin_bores(const Facts& facts, Actions& out) {
  if (!facts.pins()) return;
  const Told& told = facts.told();
  out.say("Lay all sheets on one another, centre lines and one long edge together, and clamp them.");
  const Markup beside = told.at("/press/pins/0/flat/from_middle") == 0
                            ? Markup("on the centre line")
                            : words(told.length("/press/pins/0/flat/from_middle"), " to the ",
                                    told.text("/press/pins/0/flat/side"), " of the centre line");
  out.say("Bore them through for the two locating pins, ", told.length("/press/pins/0/diameter"), ": ",
          beside, ", ", told.length("/press/pins/0/flat/from_edge"), " from each edge of the width.");
}

}  // namespace

Step cut_sheets(const Facts& facts) {
  Actions out;
  out.say(
      "Let sheets and formers lie in a room as dry as the one where the panel will stand: damp sheets shrink "
      "after pressing and take the panel along.");
  add_sizes(facts, out);
  add_grain(facts, out);
  out.say("Number the plies from the inner face outward: ply 1 is the inner face of the panel.");
  out.say("Draw the centre line over every sheet at half its length",
          facts.curved() ? " round the curve" : "", ", on both faces. On show faces mark the ",
          facts.panel().trim > 0 ? "trim" : "edges", " alone.");
  out.say("Write L at the left end of every sheet and R at the right.");
  out.when(facts.panel().trim > 0, "Keep flaws in the trim: it is cut off.");
  add_pin_bores(facts, out);
  out.when(facts.covers(), "Wax the cover sheets, or tape the face that looks at the plies.");
  return {"Cut and mark the sheets", std::move(out).list()};
}

}  // namespace lamwright::html::bench
