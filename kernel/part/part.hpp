// A part of the press: stock, outline, features, marks. The single source of drawings, lists and solids.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/part/frame.hpp"
#include "kernel/part/outline.hpp"

namespace lamwright {

// Kinds of piece; the summary and file names spell them as `to_text` does.
enum class PartKind {
  former_lower,
  former_upper,
  beam,
  bearer,
  spacer_block,
  fixing_block,
  pressing_beam,
  stop,
  slat,
  shape_template,
  cradle,
  panel
};
std::string to_text(PartKind kind);  // "former-lower" ...

// What a bore is for: layers, tables and checks tell bores apart by it.
enum class BoreUse { foot_screw, foot_pilot, strap, caul_pilot, caul_screw, clamp, stop_screw };
std::string to_text(BoreUse use);  // "foot screw" ...

// The wider mouth of a bore, for a screw's head.
struct Counterbore {
  double diameter = 0;  // above the bore's own
  double depth = 0;     // from the face it enters by
};

// A bore as asked for, in the part's own frame. `axis` is unit and points into the wood from `at`, the point
// where the tool enters; without a depth it goes through; the counterbore is at the entering side.
struct BoreSpec {
  BoreUse use;                             // decides its layer, table and pilot rules
  double diameter = 0;                     // mm
  std::optional<double> depth;             // along the axis from `at`, above 0
  std::optional<Counterbore> counterbore;  // above 0, leaving wood before the bore's end
  Vec3 at{0, 0, 0};                        // own frame, on a face or edge
  Vec3 axis{0, 0, 1};                      // square to the sheet or in its plane
};

// Faces of a part for bores: an edge of the outline (its index), or one of the two flat faces.
inline constexpr int kNearFace = -1;  // sheet coordinate 0
inline constexpr int kFarFace = -2;   // sheet coordinate thickness
inline constexpr int kNoFace = -3;    // a blind bore leaves through none

// A bore as resolved: `length` along its axis, the faces it enters and leaves by, and whether its mouth stays
// within one flat face (then a solid needs no Boolean). `removed` is the wood it takes out, mm3.
struct Bore : BoreSpec {
  double length = 0;       // from face to face, or the depth
  int enters = kNearFace;  // face or outline edge
  int leaves = kNoFace;    // the same; kNoFace for a blind bore
  bool flat_mouth = true;  // lies all within one flat face or straight edge
  double removed = 0;      // mm3, counterbore included

  // "through", "blind" or "counterbored"; what has a counterbore is called so whether or not it goes through.
  std::string kind() const { return counterbore ? "counterbored" : depth ? "blind" : "through"; }
};

// A pencil or engraving mark on the sheet, in sheet coordinates: lines, or a text with its lower left at
// `at`.
struct Mark {
  // What it tells the sawyer; decides its layer in cutting files.
  enum class Kind { centre_line, blank_end, trim_line, saw_line, label };
  Kind kind;                   // a label uses the text, the others the lines
  std::vector<Segment> lines;  // sheet coordinates; empty for a label
  std::string text;            // of a label, UTF-8
  Vec2 at{0, 0};               // of a label
  double angle = 0;            // radians
  double height = 0;           // of the capitals, mm
};

// A part as described, before it is checked.
struct PartSpec {
  std::string name;                        // for messages; a plan numbers the pieces of a kind
  PartKind kind = PartKind::former_lower;  // what it is in the press
  std::string stock;                       // "board 18 (17.6)", "D40 46 x 90"
  Outline outline;                         // in the sheet's plane
  double thickness = 0;                    // of the stock as measured, mm
  Frame sheet;  // from sheet coordinates (u, v, w) to the part's own frame; w from 0 to thickness
  std::vector<BoreSpec> bores;  // in the part's own frame
  std::vector<Mark> marks;      // in sheet coordinates
  bool board = false;           // sawn or routed flat from sheet board: gets a cutting file
};

// Immutable; made by make_part, which keeps bores apart, so that every later stage can rely on it.
class Part {
 public:
  const std::string& name() const { return spec_.name; }          // also the name of its files
  PartKind kind() const { return spec_.kind; }                    // what it is in the press
  const std::string& stock() const { return spec_.stock; }        // as lists name it
  const Outline& outline() const { return spec_.outline; }        // in sheet coordinates
  double thickness() const { return spec_.thickness; }            // mm, above 0
  const Frame& sheet() const { return spec_.sheet; }              // from sheet coordinates to the own frame
  const std::vector<Bore>& bores() const { return bores_; }       // as given, in their order
  const std::vector<Mark>& marks() const { return spec_.marks; }  // in sheet coordinates
  bool board() const { return spec_.board; }                      // gets a cutting file

  double volume() const { return volume_; }  // mm3, closed form, bores out
  Vec3 centre() const { return centre_; }    // of mass, own frame
  double face_area() const;                  // mm2 of one flat face with the bores that open in it taken out

  // The upright box round the outline and thickness, with lowest and highest corner.
  struct Box {
    Vec3 low;                                 // least X, Y, Z
    Vec3 high;                                // greatest X, Y, Z
    Vec3 size() const { return high - low; }  // mm
  };
  Box box() const;  // own frame

  Part renamed(std::string name) const;        // the same part under another name
  Part marked(std::vector<Mark> marks) const;  // the same part with other marks
  // What the same piece looks like turned over end for end: its outline mirrored within its own box. Nothing
  // for a part with bores or marks, which has a face side.
  std::optional<Part> turned_over() const;

 private:
  friend Part make_part(PartSpec spec);
  explicit Part(PartSpec spec) : spec_(std::move(spec)) {}
  PartSpec spec_;
  std::vector<Bore> bores_;
  double volume_ = 0;
  Vec3 centre_{0, 0, 0};
};

// Resolves and checks. Throws Error (geometry) naming part and bore when a bore does not begin on the
// surface, leaves less than 5 of wood to another bore or to an edge, or would split the part; and when the
// thickness is not positive or there are more than 5000 bores. Source of the 5: common practice, no source.
Part make_part(PartSpec spec);

// Least wood between two bores, and between a bore and an edge, mm. Common practice, no source.
inline constexpr double kLeastWood = 5;
// Least wood between a pilot in a board's edge and the board's faces, mm. Common practice, no source.
inline constexpr double kLeastBesidePilot = 2;

// Equal in everything but the name, lengths to 1e-6: such bodies share one part.
bool same_part(const Part& a, const Part& b);

}  // namespace lamwright
