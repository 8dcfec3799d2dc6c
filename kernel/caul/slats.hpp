// How the slats of a caul lie along the line they touch.
#pragma once
#include <optional>
#include <vector>

namespace lamwright {

// Slats as stations along that line, left to right.
struct Slat {
  double from = 0;                                   // mm
  double to = 0;                                     // mm, above `from`
  double middle() const { return (from + to) / 2; }  // station
  double width() const { return to - from; }         // mm
};

// Joints of a caul. Automatic: close near changes of shape, open elsewhere.
enum class Lagging { automatic, close, open };

// A stretch of the line that is too tight for the caul's own slats: narrower ones lie there.
struct SlatZone {
  double from = 0, to = 0;  // stations
  double width = 0;         // of a slat, above 0
  double gap = 0;           // between open slats
};

// The line and what lies along it. Lengths in mm, stations from the line's left end.
struct SlatSpec {
  double girth = 0;                      // length of the line, mm
  double datum = 0;                      // station of the middle of the datum slat
  double width = 0;                      // of one slat
  double gap = 0;                        // between open slats
  double pin = 0;                        // diameter of a locating pin
  double pin_gap = 0;                    // the gap left for it when the joint's own would be too narrow
  Lagging lagging = Lagging::automatic;  // whether joints are close or open
  std::vector<double> changes;           // stations where the shape changes
  // The pin stands in the joint nearest to here, not given: right beside the datum slat.
  std::optional<double> pin_at = std::nullopt;
  // Where a slat would lie wholly or partly inside a zone, the zone's slats are laid until it is passed;
  // where zones overlap, the narrowest. The gap before a slat, seen from the datum slat, is that of its own
  // kind.
  std::vector<SlatZone> zones = {};
};

// As many whole slats as fit each side of the datum slat, never past the ends. Empty when not even the datum
// slat fits. Automatic lagging is close for two slats each side of a change: a joint nearer to it than two
// widths of the next slat.
std::vector<Slat> whole_slats(const SlatSpec& spec);

// The same, carried on to both ends; the last slat each side is cut flush, or moved out to the end where only
// a gap is left beyond it. A lone datum slat stays where it is.
std::vector<Slat> covering_slats(const SlatSpec& spec);

}  // namespace lamwright
