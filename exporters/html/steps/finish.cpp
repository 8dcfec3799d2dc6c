// The panel out of the press: trimmed, checked, written down; and the mould put by.
#include <algorithm>

#include "exporters/html/steps/rooms.hpp"
#include "shared/text.hpp"

namespace lamwright::html::bench {
namespace {

constexpr std::size_t kListedBends = 4;

// Bends of a list of runs: their places in it.
std::vector<std::size_t> bends(const Told& told, const std::string& runs) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < told.size(runs); ++i)
    if (told.has(runs + "/" + std::to_string(i) + "/radius")) out.push_back(i);
  return out;
}

std::string radius_of(const std::string& runs, std::size_t run) {
  return runs + "/" + std::to_string(run) + "/radius";
}

constexpr const char* kReleased = "/panel/released/runs";
constexpr const char* kPressed = "/panel/pressed/runs";
constexpr const char* kContact = "/press/contact/lower/runs";

std::string face_name(const Facts& facts) {
  const Face face = facts.panel().face;
  return face == Face::centre ? "middle of the thickness" : to_text(face) + " face";
}

// A bend, pressed and released, by its place in either list.
struct Bend {
  std::size_t pressed, released;
};

// Trim adds straight lines at the ends only, so bends of both lists go together in order.
std::vector<Bend> bends(const Facts& facts) {
  const std::vector<std::size_t> pressed = bends(facts.told(), kPressed),
                                 released = bends(facts.told(), kReleased);
  std::vector<Bend> out;
  for (std::size_t i = 0; i < pressed.size() && i < released.size(); ++i)
    out.push_back({pressed[i], released[i]});
  return out;
}

void add_radii(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  const std::vector<Bend> all = bends(facts);
  if (all.size() > kListedBends) return;
  for (std::size_t i = 0; i < all.size(); ++i)
    out.say("Bend ", std::to_string(i + 1), ", ", face_name(facts), ": pressed to ",
            told.length(radius_of(kPressed, all[i].pressed)), ", when released ",
            told.length(radius_of(kReleased, all[i].released)), ".");
}

// The tightest crown: the notebook takes bends of that sense, and springback shows most where it is tight.
std::optional<Bend> notebook_bend(const Facts& facts) {
  const Json& runs = facts.told().at(kPressed);
  std::optional<Bend> best;
  for (const Bend& bend : bends(facts)) {
    if (runs[bend.pressed]["turn"].get<double>() <= 0) continue;
    if (!best || runs[bend.pressed]["radius"] < runs[best->pressed]["radius"]) best = bend;
  }
  return best;
}

// The inner face of a crown is hollow: there a batten finds two points of the curve by itself.
void add_measuring(const Facts& facts, Actions& out) {
  out.say(
      "Measure the radius over one bend from inside: lay a straight batten across the hollow, c long between "
      "where it touches and h deep in the middle. The radius of the inner face is c x c / (8 x h) + h / 2.");
  const Markup thickness = facts.told().length("/panel/thickness");
  if (facts.panel().face == Face::outer) out.say("Add the thickness of ", thickness, " for the outer face.");
  if (facts.panel().face == Face::centre)
    out.say("Add half the thickness of ", thickness, " for the middle of it.");
}

// The planned radius of a bend in the press, if the formers are as drawn.
void add_form(const Facts& facts, const Bend& bend, Actions& out) {
  const Told& told = facts.told();
  const std::vector<std::size_t> edge = bends(told, kContact), pressed = bends(told, kPressed);
  if (edge.size() != pressed.size()) return;
  const auto place = std::find(pressed.begin(), pressed.end(), bend.pressed) - pressed.begin();
  out.say("Measure the contact edge of a lower former at the tightest crown too: drawn are ",
          told.length(radius_of(kContact, edge[static_cast<std::size_t>(place)])), ", which presses the ",
          face_name(facts), " to ", told.length(radius_of(kPressed, bend.pressed)),
          ". What the edge is larger or smaller, so is the pressed radius.");
}

void add_notebook(const Facts& facts, Actions& out) {
  const std::optional<Bend> bend = notebook_bend(facts);
  if (!bend || facts.panel().plies.size() < 2) return;
  add_measuring(facts, out);
  add_form(facts, *bend, out);
  out.say("Enter both radii in the shop notebook: ",
          element("code", words("lamwright notebook add JOB --pressed \"",
                                facts.told().length(radius_of(kPressed, bend->pressed)), "\" --released R")),
          ". JOB is the file of this job, R the radius that you measured at the same bend; write flat if it "
          "came out straight.");
  out.say("The next job of this lay-up can then take its springback from the notebook.");
}

void add_springback(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  out.say("Springback reckoned with: ", told.share("/springback/ratio"), " of the curvature is lost (",
          told.text("/springback/source"), ").");
  if (told.has("/springback/spread"))
    out.say("Single test pieces strayed from it by about ", told.share("/springback/spread"),
            " of the curvature.");
  add_radii(facts, out);
}

void add_templates(const Facts& facts, Actions& out) {
  const bool inner = facts.aid(ShopAid::Use::check_inner), outer = facts.aid(ShopAid::Use::check_outer);
  if (inner && outer)
    out.say(
        "Lay template-inner to the inner face and template-outer to the outer face, at both edges and in the "
        "middle. Look for light between.");
  else if (inner || outer)
    out.say("Lay ", inner ? "template-inner to the inner" : "template-outer to the outer",
            " face, at both edges and in the middle. Look for light between.");
  else if (facts.curved())
    out.say("Hold the panel to a full-size print of its curve, at both edges and in the middle.");
  else
    out.say("Lay a straightedge on the panel, along, across and corner to corner.");
}

// The cradles' centre line is that of the formers; the middle of the pack lies on it only where both sides
// are alike.
void add_cradles(const Facts& facts, Actions& out) {
  const Told& told = facts.told();
  out.say("Set the panel, inner face down, in the ",
          told.count(facts.entry("/aids", "name", "trim-cradle") + "/count"),
          " trim cradles, stood apart over the width.");
  if (facts.centred())
    out.say("Bring the panel's centre line onto the cradles' centre line.");
  else
    out.say(
        "Slide the panel until every bend lies in its bend of the cradles and nothing rocks. Their centre "
        "line is not the panel's.");
  out.say("Saw both ends of the curve along the cradles' saw lines, square to the face.");
}

void add_ends(const Facts& facts, Actions& out) {
  if (facts.aid(ShopAid::Use::trim_cradle))
    add_cradles(facts, out);
  else if (facts.curved())
    out.say(
        "Measure both trim lines from the panel's centre line along the inner face, and saw there, "
        "square to the face.");
  else
    out.say("Saw both ends square to the face: ", facts.told().length("/panel/trim"), " comes off each.");
  out.when(facts.curved(),
           "All sheets are cut alike, so the ends of the pack are ragged. Never measure from them.");
}

std::string kept_together(const Facts& facts) {
  std::vector<std::string> out{"formers"};
  if (facts.has(PartKind::beam)) out.push_back("beams");
  if (facts.has(PartKind::bearer)) out.push_back("bearers");
  if (facts.has(PartKind::spacer_block) || facts.has(PartKind::fixing_block)) out.push_back("blocks");
  if (facts.pins()) out.push_back("pins");
  return listed(out, "and");
}

}  // namespace

Step trim(const Facts& facts) {
  Actions out;
  const Told& told = facts.told();
  if (facts.panel().trim <= 0) return {"Trim", {}};
  add_ends(facts, out);
  out.say("Saw the two straight edges to the finished width of ", told.length("/panel/width"), ", ",
          facts.pins() ? "pin bores and all." : "half the waste on each.");
  out.say("Clamp the panel down and let no offcut swing: it is under stress until it is through.");
  return {"Trim", std::move(out).list()};
}

Step check_shape(const Facts& facts) {
  Actions out;
  add_templates(facts, out);
  if (facts.springs()) add_springback(facts, out);
  if (facts.curved()) add_notebook(facts, out);
  out.say("Tap over both faces with a knuckle: a hollow sound is a place without glue.");
  return {"Check the shape", std::move(out).list()};
}

Step store(const Facts& facts) {
  Actions out;
  const PressPlan& plan = facts.plan();
  const std::string lining = facts.lining();
  out.say("Clean glue off the ", lining == "mould" ? "contact edges" : "contact edges and the " + lining,
          ".");
  out.say("Write on the mould: ", plan.title.empty() ? Markup() : words(plan.title, ", "), "number ",
          plan.number, ", and on every former its station, L and R.");
  out.say("Keep ", kept_together(facts), " of this mould together, with this sheet.");
  out.say("Store it dry and flat, off the floor.",
          facts.strapped() ? " Coil the straps, dry, without knots." : "");
  return {"Store the mould", std::move(out).list()};
}

}  // namespace lamwright::html::bench
