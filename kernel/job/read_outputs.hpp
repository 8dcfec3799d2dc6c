// What is to be written, and onto which sheets and lengths.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/job/reader.hpp"

namespace lamwright {

OutputSpec read_outputs(Reader& reader);

// Sides of a sheet, and the cutter's diameter, mm.
inline constexpr double kLeastSheet = 100, kMostSheet = 10000;
inline constexpr double kLeastCutter = 1, kMostCutter = 30;

// "2440x1220", in mm or with units ("96 in x 48 in"): length and width of a sheet. Nothing when it is no such
// text.
std::optional<Vec2> sheet_size(const std::string& text);

// Least and usual distance between parts on a sheet over the cutter's diameter, mm: less leaves a wall that
// breaks off and spoils the edge. Common practice, no source.
inline constexpr double kLeastOverCutter = 0.5, kOverCutter = 2;

}  // namespace lamwright
