// A single value in place of a job's own, for trials and series.
#pragma once
#include <string>

namespace lamwright {

// `path` names a key as messages do, with places in lists from 0: "panel.profile[1].radius". `value` is TOML
// ("300", "[46, 90]", "true"), or else a text that needs no quotes ("two-part", "18 mm").
struct Setting {
  std::string path;   // dotted
  std::string value;  // as it would stand in a job file
};

std::string to_text(const Setting& setting);  // "panel.width=300"

}  // namespace lamwright
