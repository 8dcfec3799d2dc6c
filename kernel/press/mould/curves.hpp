// The lines of a press in cross-section, from the blank outward and inward.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/press/slat_bed.hpp"

namespace lamwright {

// All in one frame; it begins as the neutral line's own.
struct PressCurves {
  Profile neutral;
  Profile inner;                 // inner face of the blank
  Profile outer;                 // outer face
  Profile contact;               // lower contact edge between the pack's ends
  Profile over;                  // outer face of the upper cover: the top caul lies on it
  std::optional<Profile> upper;  // contact edge of an upper mould between the pack's ends
  double bed = 0;                // distance from the inner face to the contact edge: cover, bed caul, liner
  double top = 0;                // thickness of the top caul
  double above = 0;  // distance from the outer face to the upper contact edge: cover, top caul, liner
  std::vector<Slat> top_slats;      // stations on `over`; empty: continuous
  double top_from = 0, top_to = 0;  // the top caul's ends, stations on `over`
  double datum = 0;                 // station on the neutral line
  double pin = 0;                   // the same: where locating pins are wanted
  bool pin_above = false;           // in the top caul instead of the bed caul
};

// Throws Error (geometry) when a line collapses or crosses itself, or not one slat of the top caul fits.
PressCurves press_curves(const Job& job, const Panel& panel, const Profile& neutral, Moulds moulds);
PressCurves moved(const PressCurves& curves, const Vec2& by);

// Station of the datum slat on the neutral line: the middle of the girth for bends of one sense; the
// inflection nearest to it otherwise; the middle of the bend of an L (one bend between flats). Ties to the
// left.
double datum_station(const Profile& neutral);

// By how much two slats draw together on the far side of a joint at a station of the line they touch: the
// caul's thickness times the turn from slat to slat in a hollow, 0 elsewhere.
double closing_up(const CaulSpec& caul, const Profile& line, double station);

// How slats of the job's caul lie on a line of that girth; stations of datum, pin and changes are on that
// line.
SlatSpec slat_spec(const CaulSpec& caul, const Profile& line, double datum, double pin,
                   std::vector<double> changes);

// Where two closing moulds first hold the pack, a station on a line between them: the crest of the lower
// mould, or, where the pack lies on the lower mould's ends, the lowest point of the upper one. Of several the
// one nearest to the girth's middle, ties to the left; of a level stretch its middle. Nothing on a line that
// only climbs or only falls.
struct FirstContact {
  double station = 0;
  bool upper = false;  // the upper mould touches first
};
std::optional<FirstContact> first_contact(const Profile& line);

// The pitch nearest to the job's own, within a tenth of it, with which the top caul leaves no strip wider
// than the trim at either end; nothing when there is none, or when the job's own pitch does.
std::optional<double> fitting_pitch(const Job& job, const Panel& panel, const PressCurves& curves);

// A straight stretch counts as a flat from this length on. Common practice, no source.
inline constexpr double kLeastFlat = 60;

}  // namespace lamwright
