// What a file may ask for at most, so that none takes endless time or memory.
#pragma once
#include <cstddef>
#include <string>

namespace lamwright::dxf_reading {

inline constexpr std::size_t kMostBytes = 256u << 20;
inline constexpr std::size_t kMostPieces = 200'000;  // lines, arcs, curve pieces; each block inserted is one
inline constexpr std::size_t kMostLevels = 32;       // of blocks within blocks
inline constexpr std::size_t kMostNames = 100'000;   // layers that are hidden; blocks
inline constexpr std::size_t kLongestName = 255;     // characters
inline constexpr double kFarthest = 1e7;             // coordinate, mm

// Throws Error (job) at the line when there are more pieces than allowed.
void ensure_pieces(std::size_t pieces, const std::string& file, int line);
// The same for names of one kind ("blocks").
void ensure_names(std::size_t names, const char* kind, const std::string& file, int line);

}  // namespace lamwright::dxf_reading
