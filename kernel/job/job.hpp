// A job, read and checked: plain values in mm, N, MPa, radians. What was not given holds its default.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "kernel/caul/schedule.hpp"
#include "kernel/caul/slats.hpp"
#include "kernel/panel/bend_rule.hpp"
#include "kernel/panel/materials.hpp"
#include "kernel/panel/notebook.hpp"
#include "kernel/panel/panel.hpp"
#include "shared/quantity.hpp"

namespace lamwright {

// One sheet of the lay-up.
struct PlySpec {
  std::string timber;               // trade row name, of the timbers or the boards table
  double thickness = 0;             // mm, 0.1 to 50
  double grain = 0;                 // radians; 0 along (round the curve), pi/2 across
  double modulus = 0;               // MPa round the curve in bending, from the row and the grain
  double across = 0;                // MPa through the thickness
  double density = 0;               // kg/m3
  std::vector<PlateLayer> veneers;  // heights from the ply's inner face
  BendRule bend;                    // how tight it may be bent, and by whose word
  std::optional<Board> board = {};  // the row, of a ply that is a board
};

// The sheets, what lies between them, and the sheets beside them.
struct LayupSpec {
  std::vector<PlySpec> plies;      // each sheet on its own, inner to outer
  std::string glue;                // trade row
  Glue glue_row;                   // its figures
  double glue_line = 0;            // thickness of one, 0 to 2 mm
  double spread_rate = 0;          // m2 that one person spreads a minute
  double cover = 0;                // of a cover sheet, which lies on each side, mm; 0: none
  std::string cover_stock;         // board row, or "cover sheet 3"
  Board cover_board;               // figures of the cover sheets
  BendRule cover_bend;             // of a cover sheet
  std::vector<std::string> notes;  // how plies were counted
};

// Where the share of curvature lost on release is to come from.
struct SpringbackSpec {
  // From the plies' stiffness; nothing is lost; `share`; the two radii; the pieces of the shop notebook.
  enum class Kind { computed, none, share, test_piece, notebook };
  Kind kind = Kind::computed;  // decides which of the members below count
  double share = 0;            // of the pressed curvature, -0.5 to 0.9; negative where panels close further
  double form_radius = 0;      // of the described face
  double part_radius = 0;      // of the same face after release, mm
  std::string notebook = {};   // file name, as the job gives it
  std::vector<NotebookEntry> pieces = {};  // of that file, of every lay-up
};

// The panel that is wanted. Lengths in mm.
struct PanelSpec {
  double width = 0;         // finished, 10 to 10000
  double trim = 0;          // on every edge, 0 to 500
  int count = 1;            // panels to make, at least 1
  Face face = Face::inner;  // that `profile` describes
  Profile profile{Pose{},
                  {Run{1, 0}}};  // the described face as released; starts at the origin with heading 0
};

// How a two-part mould is pulled shut.
struct PullSpec {
  // Along the chord's normal; midway between the extreme normals of the pressed line; by `angle`.
  enum class Kind { square_to_chord, bisector, angle };
  Kind kind = Kind::square_to_chord;  // decides whether `angle` counts
  double angle = 0;  // from the chord's normal, radians, positive: the axis' upper end leans right
  double at = 0;     // moves the pull line sideways, right positive
};

// How the panel is pressed.
struct PressSpec {
  std::string method;              // "auto" or a method's name
  PullSpec pull;                   // of two moulds
  SpringbackSpec springback;       // what is lost on release
  bool pressure_required = false;  // a pressure below the glue's range fails
  double beam_tilt = 0;            // of the beams of two moulds, radians, at most 60 degrees either way
  double draft = 0;            // angle to the pull below which a wall is too steep, radians, 0 to 45 degrees
  bool guide_rollers = false;  // asked for; without it they come only where they are needed
};

// The cauls, alike under and over the pack, or what a mould has in their place.
struct CaulSpec {
  // Slats; bending ply on the formers; nothing but the formers.
  enum class Kind { slatted, sheathed, bare };
  Kind kind = Kind::slatted;          // decides which of the members below count
  std::string name;                   // trade row or "own"
  double thickness = 0;               // of one slatted caul; of all sheathing together
  std::optional<double> pitch;        // none: continuous
  double coverage = 1;                // slat width over pitch
  std::string timber = {};            // strength class of the slats
  std::vector<SlatStock> stock = {};  // slats of this thickness in the rack
  double bridge = 100;                // least distance between joints of neighbouring runs
  std::vector<double> sheathing;  // thickness of each sheet, from the former outward; empty unless sheathed
  std::vector<Board> sheathing_boards = {};  // one a sheet
  std::vector<BendRule> sheathing_bends;     // one a sheet
  double liner = 0;                          // on each contact edge, 0 to 20 mm
  double bedding = 0;                        // compliance of the bed, mm/MPa
  Lagging lagging = Lagging::automatic;      // how the slats lie
  double stiffness = 0;                      // EI of the caul along its slats, N mm2 per mm of girth
  std::string stiffness_from;                // what it was worked out from
  double modulus_across = 0;                 // through its thickness, MPa
  double density = 0;                        // kg/m3
  double crush = 0;                          // strength across the grain, characteristic, MPa
  double bending = 0;  // bending strength of the slats, characteristic, MPa; 0: not known
  std::optional<double> least_crown_radius;   // that it follows over a crown, mm; not given: any
  std::optional<double> least_hollow_radius;  // that it follows in a hollow, mm; not given: any
};

// How far apart formers stand.
struct SpacingSpec {
  // By pressure and sag; a greatest pitch; a greatest clear distance; a number of formers.
  enum class Kind { automatic, pitch, max_clear, count };
  Kind kind = Kind::automatic;  // decides which of the members below count
  double length = 0;            // greatest pitch or greatest clear
  int count = 0;                // of formers, at least 2
  double even = 0.6;            // automatic: least over mean pressure along the width
  double sag = 0.2;             // and greatest sag of the slats between formers
};

// The formers and what holds and presses on them. Lengths in mm.
struct FormerSpec {
  std::string board;      // name for people: "ply-18"
  double nominal = 0;     // what the board is called
  double thickness = 0;   // as measured
  Board board_row;        // figures of its material
  SpacingSpec spacing;    // of their mid-planes
  double extend = 0;      // of the contact edge, straight on past each end of the pack
  double min_depth = 0;   // least depth under the contact edge
  double brace_rows = 0;  // greatest distance between rows of spacer blocks
  // By which feet are let into bearers; not given: bearers have no grooves.
  std::optional<double> groove_depth;
  double clamp_hole = 0;                          // diameter
  double clamp_force = 0;                         // of one clamp, N
  int uses = 0;                                   // pressings that they stand
  double block_width = 0, block_depth = 0;        // section of spacer blocks
  double pressing_width = 0, pressing_depth = 0;  // section of pressing beams
};

// The beams under and over the formers, with their foot screws. Lengths in mm.
struct BeamSpec {
  double width = 0;          // along the press
  double depth = 0;          // upright
  std::string timber_class;  // row of the classes table
  StrengthClass timber;      // its figures
  double modulus = 0;        // MPa, mean, along the grain
  double bending = 0;        // MPa, characteristic strength
  int every = 1;             // a beam and strap under every n-th former, and the last
  bool every_given = false;  // the job says it, so it is not raised without asking
  // `screw_reach` into the former, `screw_pitch` from screw to screw.
  double screw_diameter = 0, screw_length = 0, screw_reach = 0, screw_pitch = 0;
  double counterbore = 0;  // diameter, for the screw's head
};

// The straps with their ratchets, and the holes or pins that they hook to. Lengths in mm.
struct StrapSpec {
  // Whether there are straps at all.
  enum class Use { automatic, yes, no };
  Use use = Use::automatic;    // automatic: every press but a sheathed or bare one-part mould has straps
  std::string kind;            // row of the straps table, also where `use` is no
  bool pinned = false;         // two-part: hooked to pins through the beams, not looped round them
  double width = 0;            // of the strap
  double thickness = 0;        // of the strap
  double ratchet = 0;          // length it takes up along the strap
  double ratchet_width = 0;    // across the strap
  double rating = 0;           // N
  double hand = 0;             // tension that hands leave in it, N: the row's
  double tension = 0;          // N
  double pin_yield = 0;        // of the pin through a strap hole, MPa
  double exit = 0;             // radians
  bool both_ends = true;       // a ratchet pulls at both ends, else at the left one
  double friction = 0;         // between strap and caul, 0 to 1
  double hole = 0;             // diameter of a strap hole
  double hole_pitch = 0;       // from hole to hole
  int holes = 0;               // at each end, odd
  double roller_diameter = 0;  // of a guide roller
};

// Values of the keys that press methods and exporters declare for themselves, by full path
// ("press.crowned-flat.pressure"). A key without a value and without a default is absent.
struct OwnValues {
  std::map<std::string, double> numbers;     // lengths mm, forces N, pressures MPa, flags 0 or 1
  std::map<std::string, std::string> texts;  // by the same paths

  std::optional<double> number(const std::string& path) const {  // nothing where the key is absent
    const auto found = numbers.find(path);
    return found == numbers.end() ? std::nullopt : std::optional(found->second);
  }
};

// What is written, and onto which sheets and lengths. Lengths in mm.
struct OutputSpec {
  std::string step;                    // "ap214" or "ap242"
  std::string dxf;                     // "r2000" or "r12"
  std::string paper;                   // "a3" or "a4"
  std::vector<std::string> only = {};  // names of exporters; empty: all
  bool labels = true;                  // names and texts in cutting files
  bool aids = true;                    // check templates and trim cradle
  bool sheets = true;                  // flat parts laid out on whole sheets
  std::optional<Vec2> sheet = {};      // not given: the board row's own
  double cutter = 6;                   // diameter of the router cutter, 1 to 30
  double spacing = 8;                  // between parts on a sheet
  double margin = 15;                  // along a sheet's edges
  bool grain = false;                  // parts keep their way on the sheet, turned by half turns only
  double kerf = 4;                     // of the saw
  std::vector<double> lengths = {};    // in which timber is bought
};

// A whole job. `panel` to `outputs` are the tables of the file by the same names.
struct Job {
  std::string title;                  // may be empty
  LengthUnit units = LengthUnit::mm;  // of bare numbers in the file; the values here are mm all the same
  LengthUnit report_units = LengthUnit::mm;  // of figures for people
  std::string date;                          // ISO 8601 day or empty
  std::string number;                        // short hash of the file
  PanelSpec panel;                           // profile, width and number
  LayupSpec layup;                           // plies, glue and cover sheets
  PressSpec press;                           // method, pull and springback
  CaulSpec caul;                             // cauls and liners
  FormerSpec formers;                        // ribs, blocks and clamps
  BeamSpec beams;                            // beams and foot screws
  StrapSpec straps;                          // straps and ratchets
  OutputSpec outputs;                        // files, sheets and lengths
  std::vector<Price> prices;                 // from the user's data
  OwnValues own;                             // values that press methods and exporters asked for
  std::vector<std::string> notes;            // how texts were read: "panel.width: 35 1/2 in = 901.7 mm"
};

}  // namespace lamwright
