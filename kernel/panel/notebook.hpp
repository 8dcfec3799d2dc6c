// The shop notebook: what test pieces of known lay-ups did when they were released, and the share of
// curvature lost that fits them. A CSV file that people also open in a spreadsheet; this knows its text only.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kernel/panel/panel.hpp"

namespace lamwright {

// One piece, of one bend, crown to its outer face. Lengths in mm. What was measured is kept as measured, so
// that a slip can be seen later; the radius of the neutral line is that of the measured face + to_neutral.
struct NotebookEntry {
  std::string date;   // as written: spreadsheets turn days into their own spelling, and nothing depends on it
  std::string layup;  // in the words of layup_key
  std::string glue;   // trade row
  double thickness = 0;            // of the piece
  Face face = Face::inner;         // that was measured
  double to_neutral = 0;           // outward from that face to the neutral line: negative from the outer face
  double pressed = 0;              // radius of that face in the press
  std::optional<double> released;  // and after release; nothing where the piece came out flat
  std::string note;                // any text, may be empty
};

double pressed_curvature(const NotebookEntry& entry);   // of the neutral line, 1/mm
double released_curvature(const NotebookEntry& entry);  // 0 where flat
// Of the pressed curvature; negative where the piece closed further, 1 where it came out flat.
double share_lost(const NotebookEntry& entry);

// What is wrong with an entry: the column, what it holds, what is allowed.
struct NotebookFault {
  std::string column;   // of the file's head
  std::string problem;  // what it holds
  std::string remedy;   // what it may hold
};
// The first fault; nothing for a sound entry.
std::optional<NotebookFault> fault_of(const NotebookEntry& entry);

std::string notebook_header();  // the first line, without its end
// One line of the file without its end. The entry must have no fault. Lengths to 1e-6 mm.
std::string notebook_line(const NotebookEntry& entry);

// Whole text of a notebook, as RFC 4180 has it. Rows with nothing in them are passed over, empty fields
// beyond the last column and a missing note too, since spreadsheets write such. `file` is the name for
// messages. Throws Error: file for a text that does not begin with the header, job for a row that is wrong,
// with its line.
std::vector<NotebookEntry> read_notebook(std::string_view text, const std::string& file);

// All pieces of one lay-up and glue. `share` by least squares through the origin: curvature lost = share x
// curvature pressed, so r = sum(dk k) / sum(k^2). `spread` is the standard deviation of the single pieces'
// shares about it, over n - 1; nothing for one piece. (Any text on regression, the line through the origin.)
struct NotebookFit {
  std::string layup;             // words of layup_key
  std::string glue;              // trade row
  int pieces = 0;                // at least 1
  double share = 0;              // of the pressed curvature that is lost
  std::optional<double> spread;  // of one piece
};

// In the order in which the lay-ups first come.
std::vector<NotebookFit> fits(const std::vector<NotebookEntry>& entries);
// Nothing when there is no piece of it.
std::optional<NotebookFit> fit(const std::vector<NotebookEntry>& entries, const std::string& layup,
                               const std::string& glue);

// "4 pieces, share 0.0213 +- 0.0031"
std::string fit_text(const NotebookFit& fit);

}  // namespace lamwright
