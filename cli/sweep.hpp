// Values of the command line in place of a job's own, single ones and series of them.
#pragma once
#include <string>
#include <vector>

#include "cli/command.hpp"
#include "kernel/job/setting.hpp"

namespace lamwright::cli {

// --set KEY=VALUE, which may be given several times.
OptionRow set_option();

// Every combination of what was given, the last key changing fastest; one empty combination when nothing was.
// A value is one value ("panel.width=900"), several between commas ("layup.glue=pvac-d3,urea"; commas in
// quotes or brackets do not count), or a range with its ends ("panel.trim=10:20:5" is 10, 15 and 20). Throws
// UsageError for what is none of these, a key given twice, a range that does not end, over 10 000
// combinations.
std::vector<std::vector<Setting>> combinations(const std::vector<std::string>& given);

}  // namespace lamwright::cli
