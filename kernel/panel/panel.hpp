// The panel: profile and lay-up, as released and as pressed.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/mechanics/laminate.hpp"
#include "kernel/mechanics/springback.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright {

// Faces of a panel: the hollow side of a crown, the other one, and half-way between. A job describes one.
enum class Face { inner, outer, centre };
std::string to_text(Face face);  // "inner", "outer", "centre"

// One sheet of the blank, as it is bought: a veneer, or a plywood with veneers of its own. `modulus` is that
// of its bending round the curve, MPa. from/to: heights above the inner face, mm.
struct Ply {
  std::string timber;               // trade row of the timber or of the board
  double thickness = 0;             // mm
  double grain = 0;                 // radians from the girth direction; 0 = fibres run round the curve
  double modulus = 0;               // MPa
  double across = 0;                // modulus through the thickness, MPa
  double from = 0;                  // mm, glue lines below it counted
  double to = 0;                    // from + thickness
  double density = 0;               // kg/m3
  std::vector<PlateLayer> veneers;  // one for a veneer; heights in the blank
  double middle() const { return (from + to) / 2; }  // height of its own middle
};
// Round the curve, for bending; veneers of one ply are joined.
std::vector<Lamina> section_of(const std::vector<Ply>& plies);

// What is lost on release, and by whose word.
struct Springback {
  double share = 0;    // of the pressed curvature that is lost on release
  std::string source;  // in words for people
  std::optional<double> spread =
      {};          // standard deviation of single pieces about the share, where pieces were measured
  int pieces = 0;  // of the shop notebook
};

// Immutable. The blank is the bonded plies with trim on all edges. Lines of the blank are parallels of its
// neutral line; heights count from the inner face outward.
struct Panel {
  double width = 0;           // finished
  double trim = 0;            // added on every edge and cut off after pressing
  int count = 1;              // panels to be made
  Face face = Face::inner;    // that `released` describes
  double thickness = 0;       // of the blank, glue lines included
  double glue_line = 0;       // thickness of one
  double cover = 0;           // thickness of a cover sheet, which lies on both sides of the blank; 0: none
  std::string cover_stock;    // as lists name it
  std::string glue;           // trade row
  double neutral_height = 0;  // of the neutral line above the inner face
  std::vector<Ply> plies;     // inner to outer
  Springback springback;      // by which `pressed` is bent tighter
  Profile released;           // the described face, without trim
  Profile
      pressed;  // neutral line of the blank as pressed, trim merged in, chord level, its middle at the origin
  double loose = 0;          // bending stiffness round the curve of the sheets before gluing, N mm per mm
  double bonded = 0;         // and glued
  double mass_per_area = 0;  // kg/m2 of the blank, glue left out

  double blank_width() const { return width + 2 * trim; }  // across the width, trim on both sides
  double face_height() const {                             // height of the described face
    return face == Face::inner ? 0 : face == Face::outer ? thickness : thickness / 2;
  }
};

// The line of the blank at a height above its inner face, as pressed, in the pose of `neutral` (a posed copy
// of panel.pressed). Negative heights lie inside: cover, caul. `what` names it in a message.
Profile line_at(const Panel& panel, const Profile& neutral, double height, const std::string& what);

// One sheet to cut: developed girth at its own middle, width with trim.
struct Blank {
  std::string ply;       // "3 birch-yellow": its number from the inner face, its row
  double thickness = 0;  // mm
  double girth = 0;      // mm
  double width = 0;      // mm
  int count = 0;         // of all panels
};
// Plies of one panel, inner to outer, each multiplied by the number of panels.
std::vector<Blank> blanks(const Panel& panel);

}  // namespace lamwright
