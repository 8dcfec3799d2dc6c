// Marks and names along a profile.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright::drawing {

inline constexpr double kChangeMark = 1.8;      // reach to both sides of the curve, on paper
inline constexpr double kInflectionMark = 1.3;  // radius

// A stroke across the curve wherever its curvature changes.
void add_change_marks(Drawing& drawing, const Profile& profile, const View& view);
// A ring at every inflection.
void add_inflection_marks(Drawing& drawing, const Profile& profile, const View& view);

// Lines of text for run i.
using RunWords = std::function<std::vector<std::string>(std::size_t)>;
// At the middle of every run, on the side where no comb stands. False, with the drawing unchanged, where one
// of them finds no free place within the field.
bool add_run_words(Drawing& drawing, const Profile& profile, const View& view, const RunWords& words,
                   const Box2& field);
// The numbers of the runs from the left; the first and every second, fifth ... only where there is no room
// for all. How many from one number to the next: 1 for all of them, 0 where there was no room for any.
std::size_t add_run_numbers(Drawing& drawing, const Profile& profile, const View& view, const Box2& field);
// "every 2nd run is numbered"; empty where all of them are.
std::string numbering_text(std::size_t every, std::size_t runs);

}  // namespace lamwright::drawing
