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

struct PlySpec {
  std::string timber;  // trade row name, of the timbers or the boards table
  double thickness = 0;
  double grain = 0;    // radians; 0 along (round the curve), pi/2 across
  double modulus = 0;  // MPa round the curve in bending, from the row and the grain
  double across = 0;   // MPa through the thickness
  double density = 0;
  std::vector<PlateLayer> veneers;  // heights from the ply's inner face
  BendRule bend;
  std::optional<Board> board = {};  // the row, of a ply that is a board
};

struct LayupSpec {
  std::vector<PlySpec> plies;  // each sheet on its own, inner to outer
  std::string glue;
  Glue glue_row;
  double glue_line = 0;
  double spread_rate = 0;  // m2 that one person spreads a minute
  double cover = 0;
  std::string cover_stock;
  Board cover_board;  // figures of the cover sheets
  BendRule cover_bend;
  std::vector<std::string> notes;  // how plies were counted
};

struct SpringbackSpec {
  enum class Kind { computed, none, share, test_piece, notebook };
  Kind kind = Kind::computed;
  double share = 0;
  double form_radius = 0;  // of the described face
  double part_radius = 0;
  std::string notebook = {};               // file name, as the job gives it
  std::vector<NotebookEntry> pieces = {};  // of that file, of every lay-up
};

struct PanelSpec {
  double width = 0;
  double trim = 0;
  int count = 1;
  Face face = Face::inner;
  Profile profile{Pose{},
                  {Run{1, 0}}};  // the described face as released; starts at the origin with heading 0
};

// How a two-part mould is pulled shut.
struct PullSpec {
  enum class Kind { square_to_chord, bisector, angle };
  Kind kind = Kind::square_to_chord;
  double angle = 0;  // from the chord's normal, radians, positive: the axis' upper end leans right
  double at = 0;     // moves the pull line sideways, right positive
};

struct PressSpec {
  std::string method;  // "auto" or a method's name
  PullSpec pull;
  SpringbackSpec springback;
  bool pressure_required = false;
  double beam_tilt = 0;
  double draft = 0;
  bool guide_rollers = false;
};

struct CaulSpec {
  enum class Kind { slatted, sheathed, bare };
  Kind kind = Kind::slatted;
  std::string name;                   // trade row or "own"
  double thickness = 0;               // of one slatted caul; of all sheathing together
  std::optional<double> pitch;        // none: continuous
  double coverage = 1;                // slat width over pitch
  std::string timber = {};            // strength class of the slats
  std::vector<SlatStock> stock = {};  // slats of this thickness in the rack
  double bridge = 100;                // least distance between joints of neighbouring runs
  std::vector<double> sheathing;
  std::vector<Board> sheathing_boards = {};  // one a sheet
  std::vector<BendRule> sheathing_bends;     // one a sheet
  double liner = 0;
  double bedding = 0;  // compliance of the bed, mm/MPa
  Lagging lagging = Lagging::automatic;
  double stiffness = 0;        // EI of the caul along its slats, N mm2 per mm of girth
  std::string stiffness_from;  // what it was worked out from
  double modulus_across = 0;   // through its thickness, MPa
  double density = 0;          // kg/m3
  double crush = 0;            // strength across the grain, characteristic, MPa
  double bending = 0;          // bending strength of the slats, characteristic, MPa; 0: not known
  std::optional<double> least_crown_radius;
  std::optional<double> least_hollow_radius;
};

struct SpacingSpec {
  enum class Kind { automatic, pitch, max_clear, count };
  Kind kind = Kind::automatic;
  double length = 0;  // greatest pitch or greatest clear
  int count = 0;
  double even = 0.6;  // automatic: least over mean pressure along the width
  double sag = 0.2;   // and greatest sag of the slats between formers
};

struct FormerSpec {
  std::string board;  // name for people: "ply-18"
  double nominal = 0;
  double thickness = 0;  // as measured
  Board board_row;       // figures of its material
  SpacingSpec spacing;
  double extend = 0;
  double min_depth = 0;
  double brace_rows = 0;
  std::optional<double> groove_depth;
  double clamp_hole = 0;
  double clamp_force = 0;
  int uses = 0;
  double block_width = 0, block_depth = 0;
  double pressing_width = 0, pressing_depth = 0;
};

struct BeamSpec {
  double width = 0;
  double depth = 0;
  std::string timber_class;
  StrengthClass timber;
  double modulus = 0;  // MPa, mean, along the grain
  double bending = 0;  // MPa, characteristic strength
  int every = 1;
  bool every_given = false;  // the job says it, so it is not raised without asking
  double screw_diameter = 0, screw_length = 0, screw_reach = 0, screw_pitch = 0;
  double counterbore = 0;
};

struct StrapSpec {
  enum class Use { automatic, yes, no };
  Use use = Use::automatic;  // automatic: every press but a sheathed or bare one-part mould has straps
  std::string kind;
  bool pinned = false;  // two-part: hooked to pins through the beams, not looped round them
  double width = 0;
  double thickness = 0;
  double ratchet = 0;  // length it takes up along the strap
  double ratchet_width = 0;
  double rating = 0;     // N
  double hand = 0;       // tension that hands leave in it, N: the row's
  double tension = 0;    // N
  double pin_yield = 0;  // of the pin through a strap hole, MPa
  double exit = 0;       // radians
  bool both_ends = true;
  double friction = 0;
  double hole = 0;
  double hole_pitch = 0;
  int holes = 0;
  double roller_diameter = 0;
};

// Values of the keys that press methods and exporters declare for themselves, by full path
// ("press.crowned-flat.pressure"). A key without a value and without a default is absent.
struct OwnValues {
  std::map<std::string, double> numbers;  // lengths mm, forces N, pressures MPa, flags 0 or 1
  std::map<std::string, std::string> texts;

  std::optional<double> number(const std::string& path) const {
    const auto found = numbers.find(path);
    return found == numbers.end() ? std::nullopt : std::optional(found->second);
  }
};

struct OutputSpec {
  std::string step;                    // "ap214" or "ap242"
  std::string dxf;                     // "r2000" or "r12"
  std::string paper;                   // "a3" or "a4"
  std::vector<std::string> only = {};  // names of exporters; empty: all
  bool labels = true;                  // names and texts in cutting files
  bool aids = true;                    // check templates and trim cradle
  bool sheets = true;                  // flat parts laid out on whole sheets
  std::optional<Vec2> sheet = {};      // not given: the board row's own
  double cutter = 6;
  double spacing = 8;                // between parts on a sheet
  double margin = 15;                // along a sheet's edges
  bool grain = false;                // parts keep their way on the sheet, turned by half turns only
  double kerf = 4;                   // of the saw
  std::vector<double> lengths = {};  // in which timber is bought
};

struct Job {
  std::string title;
  LengthUnit units = LengthUnit::mm;
  LengthUnit report_units = LengthUnit::mm;
  std::string date;    // ISO 8601 day or empty
  std::string number;  // short hash of the file
  PanelSpec panel;
  LayupSpec layup;
  PressSpec press;
  CaulSpec caul;
  FormerSpec formers;
  BeamSpec beams;
  StrapSpec straps;
  OutputSpec outputs;
  std::vector<Price> prices;  // from the user's data
  OwnValues own;
  std::vector<std::string> notes;  // how texts were read: "panel.width: 35 1/2 in = 901.7 mm"
};

}  // namespace lamwright
