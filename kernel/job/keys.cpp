#include "kernel/job/keys.hpp"

#include "kernel/job/read_outputs.hpp"

namespace lamwright {
namespace {

constexpr double kAny = 1e12;  // no limit of its own

KeyRow length(std::string path, std::string fallback, double least, double most, std::string meaning) {
  return {std::move(path), KeyType::length, std::move(fallback), least, most, {}, std::move(meaning)};
}
KeyRow number(std::string path, std::string fallback, double least, double most, std::string meaning) {
  return {std::move(path), KeyType::number, std::move(fallback), least, most, {}, std::move(meaning)};
}
KeyRow integer(std::string path, std::string fallback, double least, double most, std::string meaning) {
  return {std::move(path), KeyType::integer, std::move(fallback), least, most, {}, std::move(meaning)};
}
KeyRow text(std::string path, std::string fallback, std::string meaning) {
  return {std::move(path), KeyType::text, std::move(fallback), 0, 0, {}, std::move(meaning)};
}
KeyRow choice(std::string path, std::string fallback, std::vector<std::string> choices, std::string meaning) {
  return {std::move(path),    KeyType::choice,   std::move(fallback), 0, 0,
          std::move(choices), std::move(meaning)};
}
KeyRow shaped(std::string path, KeyType type, std::string fallback, std::string meaning) {
  return {std::move(path), type, std::move(fallback), 0, 0, {}, std::move(meaning)};
}

std::vector<KeyRow> panel_keys() {
  return {
      shaped("panel", KeyType::table, "", "the finished panel"),
      length("panel.width", "", 10, 10000, "finished width, the straight direction"),
      choice("panel.face", "\"inner\"", {"inner", "outer", "centre"}, "which face the profile describes"),
      integer("panel.count", "1", 1, 10000, "panels to make from this press"),
      length("panel.trim", "15", 0, 500, "added on every edge, cut off after pressing"),
      shaped("panel.profile", KeyType::mixed, "",
             "list of {line} and {bend, radius}; {chord, rise}; {three_points}; {points}; {offsets, every}; "
             "{svg}; {dxf}"),
      length("panel.profile[].line", "", 0.1, 20000, "a straight run"),
      number("panel.profile[].bend", "", -355, 355, "degrees turned, positive crown, negative hollow"),
      length("panel.profile[].radius", "", 5, 100000, "of the described face, always positive"),
      length("panel.profile.chord", "", 1, 40000, "straight distance between the ends of one arc"),
      length("panel.profile.rise", "", -20000, 20000,
             "height of that arc over its chord, negative for a hollow"),
      shaped("panel.profile.three_points", KeyType::list, "",
             "three points of one arc: [[x, y], [x, y], [x, y]]"),
      shaped("panel.profile.points", KeyType::mixed, "",
             "measured points: a table of X and Y in a CSV file, or a list of [x, y]"),
      length("panel.profile.points[][]", "", -1e6, 1e6, "X or Y of a point"),
      shaped("panel.profile.offsets", KeyType::list, "",
             "distances from a straight edge to the curve, at equal stations"),
      length("panel.profile.offsets[]", "", -20000, 20000, "one of them, up positive"),
      length("panel.profile.every", "", 0.1, 20000, "distance between those stations"),
      length("panel.profile.tolerance", "0.5", 0.001, 50,
             "greatest distance between curve and points; in drawings 0.05 unless given, and given it lets "
             "chords with kinks be fitted"),
      text("panel.profile.fit", "\"runs\"",
           "how points are fitted: runs (the fewest), arc, or arcs N (so many, tangent)"),
      {"panel.profile.noise",
       KeyType::mixed,
       "\"auto\"",
       0,
       50,
       {"auto"},
       "standard deviation of a measured point; auto estimates it"},
      shaped("panel.profile.start", KeyType::table, "", "the first point is exact: {at = [x, y], heading}"),
      shaped("panel.profile.start.at", KeyType::list, "", "where the curve begins; the first point"),
      length("panel.profile.start.at[]", "", -1e6, 1e6, "X or Y"),
      number("panel.profile.start.heading", "", -360, 360,
             "degrees from the X axis, in the order of the points"),
      shaped("panel.profile.end", KeyType::table, "", "the last point is exact: {at = [x, y], heading}"),
      shaped("panel.profile.end.at", KeyType::list, "", "where the curve ends; the last point"),
      length("panel.profile.end.at[]", "", -1e6, 1e6, "X or Y"),
      number("panel.profile.end.heading", "", -360, 360,
             "degrees from the X axis, in the order of the points"),
      text("panel.profile.svg", "", "SVG file"),
      text("panel.profile.dxf", "", "DXF file"),
      text("panel.profile.path", "", "which curve of the drawing: the id in SVG, the handle in DXF"),
      text("panel.profile.layer", "", "layer or group of the drawing that holds the curve"),
      length("panel.profile.join", "0.01", 0, 10, "largest gap that is closed"),
      length("panel.profile.ease", "", 5, 100000, "radius that rounds kinks"),
      choice("panel.profile.units", "", {"mm", "cm", "m", "in", "ft"},
             "units of a points file or DXF that does not state its own"),
      number("panel.profile.scale", "", 1e-6, 1e6, "mm to a unit of the SVG drawing"),
      number("panel.profile.dpi", "96", 1, 10000, "pixels to the inch, for SVG sizes in pixels"),
      choice("panel.profile.outer", "\"auto\"", {"auto", "up", "down", "left", "right"},
             "side of the drawn or measured curve on which the outer face lies"),
  };
}

std::vector<KeyRow> layup_keys() {
  return {
      shaped("layup", KeyType::table, "", "the sheets, inner to outer face"),
      shaped("layup.plies", KeyType::list, "", "list of {timber, thickness, count, grain}"),
      text("layup.plies[].timber", "", "row of the timbers table"),
      text("layup.plies[].board", "", "row of the boards table"),
      length("layup.plies[].thickness", "", 0.1, 50, "of one sheet"),
      integer("layup.plies[].count", "1", 1, 500, "sheets alike, one on another"),
      {"layup.plies[].grain",
       KeyType::mixed,
       "\"along\"",
       -90,
       90,
       {"along", "across"},
       "fibres round the curve (along), along the width (across), or degrees"},
      length("layup.plies[].maker_radius", "", 1, 100000, "least radius that the maker states"),
      length("layup.plies[].total", "", 0.1, 5000,
             "instead of count: thickness that these sheets together come nearest to"),
      number("layup.bend_ratio", "", 1, 2000,
             "the workshop's own least radius over thickness, in place of the structural rules"),
      number("layup.spread_rate", "0.5", 0.01, 100, "m2 of glue line that are spread in a minute"),
      text("layup.glue", "\"pvac-d3\"", "row of the glues table"),
      length("layup.glue_line", "", 0, 2, "thickness of one glue line; the glue's row gives it"),
      {"layup.cover",
       KeyType::mixed,
       "3",
       0,
       50,
       {},
       "cover sheet on each side: a thickness or a row of the boards table"},
  };
}

std::vector<KeyRow> press_keys() {
  return {
      shaped("press", KeyType::table, "", "how it is pressed"),
      text("press.method", "\"auto\"", "auto or a press method"),
      {"press.pull",
       KeyType::mixed,
       "\"square-to-chord\"",
       -90,
       90,
       {"square-to-chord", "bisector"},
       "two-part: direction of the pull"},
      length("press.pull_at", "0", -5000, 5000, "two-part: moves the pull line sideways, right positive"),
      {"press.springback",
       KeyType::mixed,
       "\"computed\"",
       -0.5,
       0.9,
       {"computed", "none"},
       "computed, none, the share lost, {form_radius, part_radius} of a test piece, or {notebook}"},
      length("press.springback.form_radius", "", 5, 100000, "test piece: radius pressed"),
      length("press.springback.part_radius", "", 5, 100000, "test piece: radius after release"),
      text("press.springback.notebook", "",
           "shop notebook: file of test pieces, fitted for this lay-up and glue"),
      choice("press.pressure", "\"advised\"", {"advised", "required"},
             "whether the glue's pressure range must be met"),
      number("press.beam_tilt", "0", -60, 60, "two-part: degrees that the beams lean"),
      number("press.draft", "5", 0, 45, "two-part: degrees below which a wall is too steep"),
      {"press.guide_rollers",
       KeyType::flag,
       "false",
       0,
       0,
       {},
       "turn straps over rollers to make formers smaller"},
  };
}

std::vector<KeyRow> caul_keys() {
  return {
      shaped("caul", KeyType::table, "", "flexible platen under and over the pack"),
      {"caul.kind",
       KeyType::mixed,
       "\"slatted-hardwood-28\"",
       0,
       0,
       {},
       "row of the cauls table, {thickness, ...}, \"sheathed\" or \"bare\""},
      length("caul.kind.thickness", "", 1, 150, "of the slats"),
      length("caul.kind.pitch", "", 5, 500, "from slat to slat; without it the caul is continuous"),
      number("caul.kind.coverage", "1", 0.2, 1, "slat width over pitch"),
      text("caul.kind.class", "\"D40\"", "strength class of the slats, a row of the classes table"),
      number("caul.kind.EI", "", 1, kAny, "bending stiffness along the slats, N mm2 per mm of girth"),
      length("caul.kind.least_crown_radius", "", 1, 100000, "least radius over a crown"),
      length("caul.kind.least_hollow_radius", "", 1, 100000, "least radius in a hollow"),
      shaped("caul.sheathing", KeyType::list, "", "sheathed: thicknesses of the sheets on the formers"),
      length("caul.sheathing[]", "", 0.5, 50, "of one sheet"),
      length("caul.liner", "0", 0, 20, "cork, rubber or tape on each contact edge"),
      shaped("caul.slats", KeyType::list, "", "slats in stock: lengths, or {length, count, width}"),
      {"caul.slats[]", KeyType::mixed, "", 50, 10000, {}, "length of a slat, as many as are needed"},
      length("caul.slats[].length", "", 50, 10000, "of one slat"),
      integer("caul.slats[].count", "", 0, 100000, "slats of it in stock; else as many as are needed"),
      length("caul.slats[].width", "", 5, 500, "of a narrower slat, for bends too tight for the caul's own"),
      length("caul.bridge", "100", 10, 2000, "least distance between joints of neighbouring slats"),
      choice("caul.lagging", "\"auto\"", {"auto", "close", "open"},
             "how the slats lie; auto: close beside changes of shape"),
      number("caul.bedding", "0", 0, 100, "compliance of the bed, mm/MPa"),
  };
}

std::vector<KeyRow> former_keys() {
  return {
      shaped("formers", KeyType::table, "", "ribs cut from board"),
      {"formers.board",
       KeyType::mixed,
       "\"plywood-18\"",
       0,
       0,
       {},
       "row of the boards table or {nominal, measured}"},
      length("formers.board.nominal", "", 3, 150, "what the board is called"),
      length("formers.board.measured", "", 3, 150, "what it measures; moves everything"),
      {"formers.spacing",
       KeyType::mixed,
       "\"auto\"",
       3,
       5000,
       {"auto"},
       "auto, the greatest pitch, {max_clear} or {count}"},
      length("formers.spacing.max_clear", "", 0, 5000, "greatest clear distance between formers"),
      integer("formers.spacing.count", "", 2, 2000, "number of formers"),
      number("formers.even", "0.6", 0.05, 0.99, "auto spacing: least over mean pressure along the width"),
      length("formers.sag", "0.2", 0.01, 10, "auto spacing: greatest sag of the slats between formers"),
      length("formers.extend", "25", 0, 500, "contact edge carried on past each end of the pack"),
      length("formers.min_depth", "100", 50, 1000, "least depth under the contact edge"),
      length("formers.brace_rows", "300", 50, 5000, "greatest distance between rows of spacer blocks"),
      length("formers.groove_depth", "", 2, 60, "foot let into grooved bearers by this much"),
      length("formers.clamp_hole", "35", 10, 100, "diameter of clamp holes"),
      {"formers.clamp_force", KeyType::force, "1500", 1, 100000, {}, "of one clamp"},
      integer("formers.uses", "", 1, 10000, "pressings that the formers stand; the board's row gives it"),
      shaped("formers.block", KeyType::list, "[45, 70]", "section of spacer blocks"),
      length("formers.block[]", "", 10, 300, "width, then depth"),
      shaped("formers.pressing_beam", KeyType::list, "[45, 70]", "section of pressing beams"),
      length("formers.pressing_beam[]", "", 10, 300, "width, then depth"),
  };
}

std::vector<KeyRow> beam_keys() {
  return {
      shaped("beams", KeyType::table, "", "timber along and under each former"),
      shaped("beams.section", KeyType::list, "[46, 90]", "width x depth"),
      length("beams.section[]", "", 20, 500, "width, then depth"),
      text("beams.class", "\"D40\"", "row of the classes table"),
      integer("beams.every", "1", 1, 2000, "a beam and strap under every former, or every n-th"),
      length("beams.screw.diameter", "5", 2, 30, "of the foot screws"),
      length("beams.screw.length", "100", 10, 1000, "of the foot screws"),
      length("beams.screw.reach", "60", 5, 500, "into the former"),
      length("beams.screw.pitch", "150", 20, 2000, "from screw to screw"),
      shaped("beams.screw", KeyType::table, "", "foot screws"),
      length("beams.counterbore", "16", 4, 60, "diameter for the screw's head"),
  };
}

std::vector<KeyRow> strap_keys() {
  return {
      shaped("straps", KeyType::table, "", "straps with ratchets"),
      text("straps.kind", "\"strap-50\"",
           "row of the straps table; \"none\" on a sheathed or bare one-part mould"),
      {"straps.tension",
       KeyType::force,
       "",
       1,
       200000,
       {},
       "at each ratchet; the row gives the hand-tightened figure"},
      choice("straps.anchor", "\"loop\"", {"loop", "pin"},
             "two-part: straps loop round both beams, or hook to pins through them"),
      number("straps.exit", "25", 20, 30, "degrees from the caul's tangent toward the former"),
      choice("straps.tighten", "\"both-ends\"", {"both-ends", "one-end"}, "where a ratchet pulls"),
      number("straps.friction", "0.2", 0, 1, "between strap and caul"),
      length("straps.hole", "12", 4, 60, "diameter of strap holes in the beam"),
      length("straps.hole_pitch", "25", 10, 200, "from hole to hole"),
      integer("straps.holes", "5", 1, 15, "strap holes at each end, odd so that one is in the middle"),
  };
}

std::vector<KeyRow> output_keys() {
  return {
      shaped("outputs", KeyType::table, "", "what is written"),
      choice("outputs.step", "\"ap214\"", {"ap214", "ap242"}, "schema of STEP files"),
      choice("outputs.dxf", "\"r2000\"", {"r2000", "r12"}, "version of DXF files"),
      choice("outputs.paper", "\"a3\"", {"a3", "a4"}, "paper of drawings"),
      shaped("outputs.only", KeyType::list, "", "write these alone: names of exporters"),
      text("outputs.only[]", "", "name of an exporter, as lamwright list exporters shows them"),
      {"outputs.labels", KeyType::flag, "true", 0, 0, {}, "names and texts in cutting files"},
      {"outputs.aids", KeyType::flag, "true", 0, 0, {}, "check templates and the trim cradle"},
      {"outputs.sheets", KeyType::flag, "true", 0, 0, {}, "flat parts laid out on whole sheets"},
      text("outputs.sheet", "", "size of the boards to nest on, as 2440x1220; else the board row's own"),
      length("outputs.cutter", "6", kLeastCutter, kMostCutter, "diameter of the router cutter"),
      length("outputs.spacing", "", 0, 200, "between parts on a sheet; the cutter and 2"),
      length("outputs.margin", "15", 0, 300, "kept free along the edges of a sheet"),
      choice("outputs.grain", "\"free\"", {"free", "kept"},
             "how formers lie on a sheet: any quarter turn, or head to tail only"),
      length("outputs.kerf", "4", 0, 20, "of the saw that cuts lengths and blanks"),
      shaped("outputs.lengths", KeyType::list, "[2400, 3000, 3600, 4200, 4800]",
             "lengths in which timber is bought"),
      length("outputs.lengths[]", "", 200, 20000, "of one piece"),
  };
}

std::vector<KeyRow> all_keys() {
  std::vector<KeyRow> rows{
      integer("schema", "1", 0, 1e9, "version of the job file"),
      text("title", "\"\"", "what the panel is for"),
      choice("units", "\"mm\"", {"mm", "cm", "m", "in", "ft"}, "of bare numbers in this file"),
      text("date", "", "day for drawings and headers, as 2026-03-14"),
      choice("report_units", "", {"mm", "cm", "m", "in", "ft"}, "of figures for people; as units"),
      shaped("data", KeyType::mixed, "", "file with your own trade rows, or a list of them"),
      text("data[]", "", "file with your own trade rows"),
  };
  for (const auto& group : {panel_keys(), layup_keys(), press_keys(), caul_keys(), former_keys(), beam_keys(),
                            strap_keys(), output_keys()})
    rows.insert(rows.end(), group.begin(), group.end());
  return rows;
}

}  // namespace

const std::vector<KeyRow>& job_keys() {
  static const std::vector<KeyRow> keys = all_keys();
  return keys;
}

}  // namespace lamwright
