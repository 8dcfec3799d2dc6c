#include "tests/fuzz/served_files.hpp"

namespace lamwright::fuzz {
namespace {

const std::map<std::string, std::string>& files() {
  static const std::map<std::string, std::string> all{
      {"rows.toml",
       "[cauls.own-caul]\nthickness = 20\npitch = 30\ncoverage = 0.8\n[straps.wide-strap]\nwidth = 75\n"
       "thickness = 4\nratchet = 300\nrating = 50000\ntension = 4000\nroller = 60\n"
       "[timbers.own-ash]\nE_along = 12000\nE_across = 800\nshear = 900\npoisson = 0.4\nstrength = 90\n"
       "density = 650\nhardwood = true\nstructural_ratio = 100\n"},
      {"faulty.toml", "[timbers.own]\nE_along = \"stiff\"\n[cauls]\nx = 1\n"},
      {"site.csv", "x;y\n0;0\n100;40,5\n200;65\n300;73,2\n400;65,1\n500;40\n600;0\n"},
      {"front.svg",
       "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"600mm\" height=\"200mm\" viewBox=\"0 0 600 200\">"
       "<path id=\"inner\" d=\"M 0 150 L 200 60 L 400 60 L 600 150\"/>"
       "<path id=\"free\" d=\"M 0 150 C 200 0 400 0 600 150\"/></svg>"},
      {"front.dxf",
       "0\nSECTION\n2\nHEADER\n9\n$"
       "INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nARC\n8\nFACE\n10\n0\n"
       "20\n0\n40\n400\n50\n50\n51\n130\n0\nENDSEC\n0\nEOF\n"},
      {"springback.csv",
       "date,layup,glue,thickness,face,to_neutral,pressed,released,note\n"
       "2026-03-14,7 x birch-yellow 1.5 along,pvac-d3,10.5,inner,5.25,600,612.5,dry\n2026-03-14,7 x "
       "birch-yellow 1.5 along + glue line 0.1,pvac-d3,11.1,inner,5.55,600,612.5,\n"}};
  return all;
}

}  // namespace

std::string ServedFiles::read(const std::string& name) const {
  const auto found = files().find(name);
  if (found == files().end()) throw file_error(name, "cannot be read: no such file");
  return found->second;
}

}  // namespace lamwright::fuzz
