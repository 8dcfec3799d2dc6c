// The sheet that `measure` and `fit` draw.
#pragma once
#include "cli/options.hpp"
#include "cli/profile_input.hpp"
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/profile_sheets.hpp"

namespace lamwright::cli {

// The options -o and --paper.
std::vector<OptionRow> sheet_options();

// Draws and writes the sheet where -o asks for it.
// Throws UsageError for a paper that is none, for a file that was read and a name that does not end in .svg,
// Error (file) where it cannot be written.
void write_sheet(const po::variables_map& values, const ProfileInput& read,
                 drawing::Drawing (*draw)(const ProfileReading&, const drawing::ProfileSheetSpec&));

}  // namespace lamwright::cli
