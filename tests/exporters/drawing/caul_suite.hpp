// CaulSheets of the cauls of many presses: the demo jobs on two papers, and racks of slats that job files
// name.
#pragma once
#include <algorithm>
#include <string>
#include <vector>

#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"

namespace lamwright::test {

struct CaulSheets {
  std::string name;
  PressPlan plan;
  std::vector<drawing::Drawing> cauls;  // by index of plan.cauls
};

inline CaulSheets cauls_drawn(const std::string& name, const PressPlan& plan,
                              const std::string& paper = "a3") {
  CaulSheets out{name, plan, {}};
  for (std::size_t i = 0; i < plan.cauls.size(); ++i)
    out.cauls.push_back(drawing::caul_sheet({out.plan, paper, {}, 2}, 1, i));
  return out;
}

// An arc whose slats come from a rack that the job names.
inline PressPlan slat_rack(const std::string& width, const std::string& slats) {
  return planned(job_text(
      "width = " + width + "\nprofile = [{bend = 60, radius = 500}]", birch(6),
      "[press]\nspringback = \"none\"\n[caul]\nslats = " + slats + "\n[formers]\nspacing = {count = 5}\n"));
}

// 2.4 m wide and 3 m round the curve.
inline std::string hall_job(const std::string& slats) {
  return job_text(
      "width = 2370\nprofile = [{line = 700}, {bend = 75, radius = 760}, {line = 300}, "
      "{bend = 20, radius = 900}, {line = 650}]",
      birch(6), "[press]\nspringback = \"none\"\n[caul]\nslats = [" + slats + "]\n");
}

inline const std::vector<CaulSheets>& caul_suite() {
  static const std::vector<CaulSheets> all = [] {
    std::vector<CaulSheets> out;
    for (const Demo& demo : demo_jobs()) {
      out.push_back(cauls_drawn(demo.name, *demo.result.plan));
      out.push_back(cauls_drawn(demo.name + " on A4", *demo.result.plan, "a4"));
    }
    out.push_back(cauls_drawn("joints", slat_rack("1370", "[900, 600, {length = 1400, count = 8}]")));
    out.push_back(cauls_drawn("lacking", slat_rack("570", "[{length = 600, count = 15}]")));
    out.push_back(cauls_drawn("joints on formers", slat_rack("370", "[300, 200]")));
    out.push_back(cauls_drawn("S", planned(between_moulds(kDrawnS))));
    out.push_back(cauls_drawn(
        "hall", planned(hall_job("{length = 900}, {length = 1200}, {length = 2450, count = 90}"))));
    out.push_back(cauls_drawn("hall of short slats", planned(hall_job("{length = 1200}, {length = 500}"))));
    return out;
  }();
  return all;
}

inline const CaulSheets& cauls_called(const std::string& name) {
  return *std::find_if(caul_suite().begin(), caul_suite().end(),
                       [&](const CaulSheets& s) { return s.name == name; });
}

// Its lines of words as one text.
inline std::string sentences_of(const drawing::Drawing& sheet) {
  std::string out;
  for (const drawing::Text& text : texts(sheet)) out += (out.empty() ? "" : " ") + text.text;
  return out;
}

}  // namespace lamwright::test
