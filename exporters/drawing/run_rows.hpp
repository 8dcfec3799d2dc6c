// Tables of the runs of a profile.
#pragma once
#include "exporters/drawing/table.hpp"
#include "kernel/profile/fit/fit.hpp"

namespace lamwright::drawing {

// "bend 2", "bend 3, hollow", "line 1".
std::string run_title(const Profile& profile, std::size_t i);
// Of a bend, to a tenth: "380".
std::string radius_text(const Run& run);
// To a hundredth of a degree: "-40°" for a hollow.
std::string turn_text(double radians);

// Number from the left, name, length, radius, turn of each run.
Table run_table(const Profile& profile);
// The same with standard deviations: "464.2 ± 0.3", "464.2 ± not known".
Table accuracy_table(const FitResult& fit);

// Every column as wide as its texts need to be 2.5 high.
Table as_wide_as_needed(Table table);
// How many copies of the table stand side by side within a width, at least one.
std::size_t folds_within(const Table& table, double width);

}  // namespace lamwright::drawing
