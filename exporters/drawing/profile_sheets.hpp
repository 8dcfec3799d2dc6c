// Sheets that show a profile without a press: what was read, and how well runs follow measured points.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"
#include "kernel/job/profile_reading.hpp"

namespace lamwright::drawing {

struct ProfileSheetSpec {
  std::string title;         // of the sheet: the file or the job it came from
  std::string paper = "a4";  // the smallest to try, a4 or a3; a larger one where that shows too little
};

// The profile to scale, its chord level (where the ends meet: its start), with the length of every run, the
// radius and angle of every bend, girth, chord and rise, marks at changes of shape and at inflections, and a
// comb of its curvature: on the outer side of crowns, on the inner side of hollows. The rise of a hollow is
// negative. Runs too many or too short for that are numbered on the curve and listed in a table; where only
// some numbers have room the legend tells which. The notes of the reading below.
Drawing profile_sheet(const ProfileReading& reading, const ProfileSheetSpec& spec);

// The measured points, the runs through them, each point's distance from the runs drawn larger (by a factor
// that is told) along the girth with the tolerance and the points that look wrong, and a table of the runs
// with the accuracy of each. Of many points the envelope is drawn; of many that look wrong the 50 farthest
// off are circled and named, by their number from 1, and the others counted. Girth, chord and rise; greatest
// distance and root mean square of the points that do not look wrong. The notes of the fit below, each point
// that looks wrong told once.
// Precondition: the reading holds a fit, with a residual for every point and an accuracy for every run.
Drawing fit_sheet(const ProfileReading& reading, const ProfileSheetSpec& spec);

}  // namespace lamwright::drawing
