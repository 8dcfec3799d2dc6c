// The panel: profile and lay-up, as released and as pressed.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/mechanics/laminate.hpp"
#include "kernel/mechanics/springback.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright {

enum class Face { inner, outer, centre };
std::string to_text(Face face);

// One sheet of the blank, as it is bought: a veneer, or a plywood with veneers of its own. `modulus` is that
// of its bending round the curve, MPa. from/to: heights above the inner face, mm.
struct Ply {
  std::string timber;  // trade row of the timber or of the board
  double thickness = 0;
  double grain = 0;  // radians from the girth direction; 0 = fibres run round the curve
  double modulus = 0;
  double across = 0;  // modulus through the thickness, MPa
  double from = 0;
  double to = 0;
  double density = 0;               // kg/m3
  std::vector<PlateLayer> veneers;  // one for a veneer; heights in the blank
  double middle() const { return (from + to) / 2; }
};
// Round the curve, for bending; veneers of one ply are joined.
std::vector<Lamina> section_of(const std::vector<Ply>& plies);

struct Springback {
  double share = 0;  // of the pressed curvature that is lost on release
  std::string source;
  std::optional<double> spread =
      {};          // standard deviation of single pieces about the share, where pieces were measured
  int pieces = 0;  // of the shop notebook
};

// Immutable. The blank is the bonded plies with trim on all edges. Lines of the blank are parallels of its
// neutral line; heights count from the inner face outward.
struct Panel {
  double width = 0;  // finished
  double trim = 0;
  int count = 1;
  Face face = Face::inner;
  double thickness = 0;  // of the blank, glue lines included
  double glue_line = 0;
  double cover = 0;
  std::string cover_stock;
  std::string glue;
  double neutral_height = 0;  // of the neutral line above the inner face
  std::vector<Ply> plies;     // inner to outer
  Springback springback;
  Profile released;  // the described face, without trim
  Profile
      pressed;  // neutral line of the blank as pressed, trim merged in, chord level, its middle at the origin
  double loose = 0;          // bending stiffness round the curve of the sheets before gluing, N mm per mm
  double bonded = 0;         // and glued
  double mass_per_area = 0;  // kg/m2 of the blank, glue left out

  double blank_width() const { return width + 2 * trim; }
  double face_height() const {
    return face == Face::inner ? 0 : face == Face::outer ? thickness : thickness / 2;
  }
};

// The line of the blank at a height above its inner face, as pressed, in the pose of `neutral` (a posed copy
// of panel.pressed). Negative heights lie inside: cover, caul. `what` names it in a message.
Profile line_at(const Panel& panel, const Profile& neutral, double height, const std::string& what);

// One sheet to cut: developed girth at its own middle, width with trim.
struct Blank {
  std::string ply;
  double thickness = 0;
  double girth = 0;
  double width = 0;
  int count = 0;
};
// Plies of one panel, inner to outer, each multiplied by the number of panels.
std::vector<Blank> blanks(const Panel& panel);

}  // namespace lamwright
