// The press plan: what a press method lays out. It belongs to no method; checks and exporters read only this.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/caul/schedule.hpp"
#include "kernel/caul/slats.hpp"
#include "kernel/mechanics/best_pull.hpp"
#include "kernel/mechanics/pull.hpp"
#include "kernel/panel/panel.hpp"
#include "kernel/part/part.hpp"

namespace lamwright {

// Frame of the built press: origin on the base line under the middle of the chord, X across the curve to the
// right, Y up, Z along the width from the pack's near edge. mm, N, radians.

// A width station: the mid-plane of a former and the contact curves there. One per former, nearest first.
struct Section {
  double z = 0;                  // mm from the pack's near edge
  Profile lower;                 // carried on past the pack, left to right
  std::optional<Profile> upper;  // of an upper mould
  bool strapped = true;          // stands on a strapped beam; otherwise on a plain or grooved bearer
};

// Half of the press that a piece belongs to; `panel` is the pack, `reference` what lies loose between
// them: the top caul of a single mould.
enum class Group { lower, upper, panel, reference };

// One placed piece. `part` indexes PressPlan::parts; equal bodies share a part.
struct Body {
  std::size_t part = 0;        // of PressPlan::parts
  Frame placed;                // from the part's own frame to the press
  Group group = Group::lower;  // moves with that half when the press opens
  std::string name;            // "former-lower-01"
};

// A roller at a former's lower corner: the strap turns over it toward the mark.
struct Roller {
  Vec2 axis{0, 0};      // in the plane of the former
  double diameter = 0;  // mm
  Vec2 on{0, 0};        // where the strap from the caul meets it
  Vec2 off{0, 0};       // where the strap to the mark leaves it
};

// One end of a strap, in the plane of its former.
struct StrapEnd {
  Vec2 leaves{0, 0};             // end of the top caul's outer line
  Vec2 mark{0, 0};               // the strap hole that it hooks to
  double run = 0;                // free length between the last touch (caul or roller) and the mark
  double exit = 0;               // turn from the caul's tangent toward the former, radians
  std::optional<Roller> roller;  // not given: the strap runs straight to its mark
};

// A two-part press is drawn shut by closed loops, two legs each, one at each side of the formers.
struct Loop {
  double length = 0;       // once round with the press shut
  double open_length = 0;  // and with the upper half lifted by the opening stroke
  bool pinned = false;     // hooked to pins through the beams instead of passing round them
};

// The straps in the plane of one former: one over the pack from end to end, or a loop at each end.
struct Closure {
  double z = 0;            // of its former's mid-plane
  StrapEnd left;           // of a loop: on the outer faces of upper and lower beam
  StrapEnd right;          // the same on the other side
  double tension = 0;      // N at each ratchet
  std::string hardware;    // trade row
  double width = 0;        // of the strap
  double ratchet = 0;      // length that a ratchet takes up
  bool staggered = false;  // its ratchets are moved along the strap so that neighbours do not touch
  std::optional<Loop> loop = std::nullopt;  // of a two-part press, alike at both sides

  // Force that draws the press shut at this station, N.
  double pull() const { return loop ? 4 * tension : 2 * tension; }
};

// A layer of the press in cross-section: between its inner line and that line's parallel at `thickness`.
// Without slats it is one continuous sheet.
struct Layer {
  enum class Kind { panel, cover, liner, sheathing, bed_caul, top_caul };  // upper ones as well
  Kind kind;                                                               // what it is made of
  Profile inner;         // in the press frame, left to right
  double thickness = 0;  // square to the curve, above 0
  std::vector<Slat>
      slats;  // stations on the line the slats touch: bed caul its inner line, top caul its inner line
};
std::string to_text(Layer::Kind kind);  // "panel", "cover", "liner", "sheathing", "bed-caul", "top-caul"

// A straight piece clamped over a flat of the panel, one to a former.
struct FlatPressed {
  double from = 0, to = 0;          // girth stations on the neutral line
  std::vector<Vec2> clamps;         // centres of the clamp holes, press frame, left to right
  std::vector<double> planes = {};  // width stations of its pressing beams
  double width = 0;                 // of a pressing beam along the press
  double force = 0;                 // of one clamp, N

  // Of one pressing beam, N per mm of girth.
  double load() const { return double(clamps.size()) * force / (to - from); }
};

// A pin through the pack's trim that keeps pack and caul from sliding on one another.
struct Pin {
  Vec3 at{0, 0, 0};     // where its axis, square to the pack, crosses the pack's outer side, press frame
  double diameter = 0;  // mm
  Layer::Kind caul = Layer::Kind::top_caul;  // in whose gap it stands
  bool recess = false;  // no gap lies opposite in the other caul: it wants a recess there
  double recess_width = 0, recess_depth = 0;  // round the curve and square to it; 0 without a recess
};

// Diameter of a locating pin, and the gap it stands in.
inline constexpr double kPin = 4;
// Trim that a pin stands in without coming near the finished panel. Common practice, no source.
inline constexpr double kPinTrim = kPin + 2;
inline constexpr double kPinGap = 5;  // gap that a pin stands in
// How far a pin stands out of the pack. Common practice, no source.
inline constexpr double kPinProud = 5;

// What presses the pack: straps over one mould (nothing, where there are no closures), an upper mould that
// seats on it, or two crowned moulds, alike all over.
enum class Load { belt, seated, even };

// One of the pulls that a two-part press was compared with: "square-to-chord", "bisector", "12 degrees",
// "best".
struct NamedPull {
  std::string name;   // unique among those compared
  PullChoice choice;  // with the pressures it makes
};

// "press.pull = 12.5 with press.pull_at = 3": what a job says to be pulled so.
std::string pull_keys(const PullChoice& choice);

// Of the loops at each side, N a leg.
struct LoopTensions {
  double left = 0, right = 0;  // of one leg
};

// How a two-part press is pulled shut. It stands with the pull axis vertical.
struct Pull {
  std::string name;                 // "square-to-chord", "bisector" or "12 degrees"
  double axis = 0;                  // from the chord's normal, radians, positive: its upper end leans right
  Vec2 through{0, 0};               // a point of the pull line, at the height of the chord's middle
  double draft = 0;                 // walls nearer to the axis than this do not come off, radians
  std::vector<RunPull> runs;        // of the neutral line
  std::vector<NamedPull> compared;  // the chosen one first, none twice
  std::optional<PullChoice> best;   // least spread of pressure over axis and position
  std::optional<PullChoice> best_position;  // least spread with this axis
  // Tensions that put the resultant at the best position: their sum as rigged, less where one would go beyond
  // the straps' rating. Nothing when that position lies outside the loops.
  std::optional<LoopTensions> tensions;

  const NamedPull& chosen() const { return compared.front(); }  // that of the job
};

// What the bed carries when the straps draw a two-part press shut.
struct Seated {
  double pull = 0;                      // N, all straps
  double width = 0;                     // of the blank
  Seating seating;                      // under that pull
  std::optional<Stretch> full_contact;  // of the pull line, X from the chord's middle
  std::optional<double> side_thrust;    // N
  double unit = 0;                      // pull / (chord x width), MPa
};

// Contact edges of a flat press: bent back at the pack's ends by `height`, what a straight beam would give.
struct Crown {
  double height = 0;     // at the pack's ends
  double half_span = 0;  // from the middle to each strap
  double load = 0;       // N/mm on one beam
  double stiffness = 0;  // EI of a beam with its former, N mm2
  double pressure = 0;   // even, MPa
  double stress = 0;     // of the beam at a screw in the middle, MPa
};

// How former stations came about.
struct Spacing {
  double pitch = 0;   // from mid-plane to mid-plane
  double clear = 0;   // from face to face
  double widest = 0;  // what is flush with the pack's edge
  int every = 1;      // a beam and strap under every n-th former
  std::string note;   // reason, when a default stands in for a calculation
};

// Purchased pieces, for lists.
struct Hardware {
  std::string name;  // as it is bought
  std::string use;   // for people
  int count = 0;     // for the whole press
};

// Cut with the press but no piece of it: templates that check the released panel, and the cradle in which its
// ends are sawn off. The part's frame: X and Y of the profile as released, chord level.
struct ShopAid {
  // Template of the inner face, of the outer face, or the cradle.
  enum class Use { check_inner, check_outer, trim_cradle };
  Use use;        // what it is held against or sawn in
  Part part;      // board part with a cutting file
  int count = 1;  // cut alike
};

// A slatted caul as it is made: its runs of slats are the layer's, in order.
struct PlannedCaul {
  Layer::Kind kind = Layer::Kind::bed_caul;  // bed caul or top caul
  double length = 0;                         // of every run, along the width
  double thickness = 0;                      // of a slat
  std::vector<SlatStock> stock;              // that it is laid from
  CaulSchedule schedule;                     // which pieces make which run
};

// Everything that is known of a press, in mm, N, MPa, radians, in the frame of the built press.
struct PressPlan {
  std::string title;                    // job's title, may be empty
  std::string date;                     // job's date or empty
  std::string number;                   // short hash of the job
  std::string method;                   // "one-part"
  std::string reason;                   // why this method
  Panel panel;                          // as validated
  Profile neutral;                      // neutral line of the blank in the press frame
  std::vector<Section> sections;        // nearest first
  std::vector<Part> parts;              // alike pieces share one; names are unique
  std::vector<Body> bodies;             // by Z, then X
  std::vector<Closure> closures;        // nearest first; empty without straps
  Load load = Load::belt;               // decides which of the members below are given
  std::optional<Pull> pull;             // of a two-part press
  std::optional<Seated> seated;         // of a two-part press
  std::optional<Crown> crown;           // of a crowned flat press
  std::optional<double> leaning;        // area of formers on leaning beams over that on level ones
  Vec2 opening{0, 0};                   // by which the upper half lifts to let the panel out
  std::vector<Layer> layers;            // from the former outward
  std::vector<FlatPressed> flats;       // left to right
  std::vector<Pin> pins;                // of pack and cauls
  std::vector<Hardware> hardware;       // screws, straps, pins and the like
  std::vector<ShopAid> aids = {};       // templates and cradle
  std::vector<PlannedCaul> cauls = {};  // in the order of `layers`; empty without slats
  Spacing spacing;                      // of the formers
  double beam_depth = 0;                // upright
  double min_depth = 0;                 // that the job asks of formers
  double strap_free = 0;                // length kept free for a ratchet before the mark
  double uncovered_left = 0;            // strip of the pack's outer side past the top caul, mm
  double uncovered_right = 0;           // the same at the other end
  std::optional<double> fitting_pitch;  // of a caul that would leave no such strip wider than the trim
  double foot_width = 0;                // of a former, the narrower of a lower and an upper one
  double foot_half = 0;                 // from X = 0 to the nearest end of a foot
  double former_height = 0;             // greatest height of the lower contact edge over the base line
  double former_depth = 0;              // least depth of a former under its contact edge, square to its foot
  bool foot_sloped = false;             // its sides lean with the straps
  std::vector<std::string> notes;       // plain sentences for people, in order
};

std::size_t instances(const PressPlan& plan, std::size_t part);  // of `part`, how many bodies there are

// Where the middle of the pack's girth lies, to which the centre lines of its sheets go: along the lower
// contact edge of the first section, from the mark of the blank's left end. No half of it: curves of unlike
// radius shorten unlike.
double pack_middle(const PressPlan& plan);
// Where a pin goes through the sheets laid flat: from their centre lines, left negative.
double girth_from_middle(const PressPlan& plan, const Pin& pin);

// Distance of a point inside a strap's line, which starts at `from` and runs along the unit vector `down`:
// positive on the former's side. side = -1 for the left end, +1 for the right.
double inside_strap(const Vec2& p, const Vec2& from, const Vec2& down, int side);

}  // namespace lamwright
