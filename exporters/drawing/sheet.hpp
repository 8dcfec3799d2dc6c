// A drawing sheet: paper, frame (ISO 5457) and a compact title block (fields of ISO 7200).
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Landscape, mm (ISO 216).
struct Paper {
  std::string name;
  double width = 0;
  double height = 0;
};

// A4, A3, A2.
const std::vector<Paper>& papers();
// The paper of that name, upper or lower case, and the larger ones, smallest first; all from A3 when unknown.
std::vector<Paper> papers_from(const std::string& name);

struct TitleBlock {
  std::string title;    // of the job
  std::string drawing;  // what the sheet shows: "former-lower"
  std::string detail;   // stock, count
  std::string scale;    // "1:5"
  std::string date;
  std::string number;  // of the job
  int sheet = 1;
  int sheets = 1;
};

inline constexpr double kTitleWidth = 180;  // ISO 7200
inline constexpr double kTitleRow = 9;
inline constexpr double kTitleBlockHeight = 3 * kTitleRow;
inline constexpr double kWarningRow = 5.5;

// Inside of the frame: left border 20 for filing, the others 10. Without the rows that `warnings` take at the
// top.
Box2 drawing_field(const Paper& paper, std::size_t warnings = 0);
// Lower right corner of that field.
Box2 title_box(const Paper& paper);

// Empty sheet with frame, centring marks, title block and the warnings, one a row, along the top.
Drawing new_sheet(const Paper& paper, const TitleBlock& block, const std::vector<std::string>& warnings = {});

}  // namespace lamwright::drawing
