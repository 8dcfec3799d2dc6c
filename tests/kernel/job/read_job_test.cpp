#include "kernel/job/read_job.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "kernel/job/start.hpp"
#include "shared/units.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

JobResult read(const std::string& text) { return read_job(text, "job.toml", {}, MemorySources()); }

const std::string kPanel = "width = 600\nprofile = [{bend = 90, radius = 400}]";
const std::string kPly = "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 6}]";

// The only message for a job with one line changed.
std::string message(const std::string& text) {
  const JobResult result = read(text);
  if (result.errors.size() != 1) {
    std::string all = "(" + std::to_string(result.errors.size()) + " errors)";
    for (const Error& error : result.errors) all += std::string("\n") + error.what();
    return all;
  }
  return result.errors.front().what();
}

std::string with_ply(const std::string& ply) { return job_text(kPanel, "plies = [" + ply + "]"); }

}  // namespace

TEST_CASE("A job of two tables reads with the defaults of the key table") {
  const JobResult result = read(job_text(kPanel, kPly));
  REQUIRE(result.job);
  const Job& job = *result.job;
  CHECK(job.panel.trim == 15);
  CHECK(job.panel.count == 1);
  CHECK(job.panel.face == Face::inner);
  CHECK(job.layup.plies.size() == 6);
  CHECK(job.layup.cover == 3);
  CHECK(job.caul.thickness == 28);
  CHECK(job.formers.thickness == 18);
  CHECK(job.formers.extend == 25);
  CHECK(job.formers.min_depth == 100);
  CHECK(job.beams.width == 46);
  CHECK(job.beams.depth == 90);
  CHECK(job.straps.width == 50);
  CHECK(job.straps.ratchet == 230);
  CHECK(degrees(job.straps.exit) == Approx(25));
  CHECK(job.straps.holes == 5);
  CHECK(job.press.method == "auto");
}

TEST_CASE("Lengths may be numbers in the file's units or texts with their own") {
  const JobResult result =
      read("units = \"in\"\n" +
           job_text("width = 24\ntrim = \"12 mm\"\nprofile = [{bend = 90, radius = \"1 ft 4 in\"}]",
                    kPly + "\ncover = \"1/8 in\""));
  // plies of 1.5 in units of inches: 38.1 mm each
  REQUIRE(result.job);
  CHECK(result.job->panel.width == Approx(609.6));
  CHECK(result.job->panel.trim == 12);
  CHECK(1 / result.job->panel.profile.runs().front().curvature == Approx(406.4));
  CHECK(result.job->layup.cover == Approx(3.175));
  CHECK(result.job->layup.plies.front().thickness == Approx(38.1));
  const auto& notes = result.job->notes;
  CHECK(std::find(notes.begin(), notes.end(), "panel.profile[0].radius: 1 ft 4 in = 406.4 mm") !=
        notes.end());
}

TEST_CASE("Defaults stay in mm whatever the file's units are") {
  const JobResult result =
      read("units = \"in\"\n" +
           job_text("width = 24\nprofile = [{bend = 90, radius = 16}]",
                    "plies = [{timber = \"birch-yellow\", thickness = \"1.5 mm\", count = 6}]"));
  REQUIRE(result.job);
  CHECK(result.job->panel.trim == 15);
  CHECK(result.job->formers.extend == 25);
}

TEST_CASE("Whole numbers are lengths, fractions are no counts") {
  CHECK(read(with_ply("{timber = \"birch-yellow\", thickness = 2}")).job);
  CHECK(read(with_ply("{timber = \"birch-yellow\", thickness = 2.0}")).job);
  CHECK(message(with_ply("{timber = \"birch-yellow\", thickness = 2, count = 3.5}")) ==
        "job.toml:5:59: layup.plies[0].count: read 3.5; allowed: a whole number from 1 to 500");
}

TEST_CASE("Values out of range are refused with key, value and range") {
  const auto thickness = [](const std::string& value) {
    return message(with_ply("{timber = \"birch-yellow\", thickness = " + value + "}"));
  };
  const std::string where = "job.toml:5:48: layup.plies[0].thickness: read ";
  const std::string allowed = "; allowed 0.1 to 50 mm";
  CHECK(thickness("nan") == where + "nan" + allowed);
  CHECK(thickness("inf") == where + "inf" + allowed);
  CHECK(thickness("-18") == where + "-18" + allowed);
  CHECK(thickness("0") == where + "0" + allowed);
  CHECK(thickness("1e9") == where + "1000000000" + allowed);
  CHECK(thickness("\"-1/2 in\"") == where + "\"-1/2 in\"" + allowed);
  CHECK(thickness("true") == where + "true; give a length like 18 or \"3/4 in\"");
  CHECK(thickness("\"17,6\"") ==
        "job.toml:5:48: layup.plies[0].thickness: \"17,6\" has a decimal comma; write a dot");
  CHECK(thickness("\"3/0 in\"") ==
        "job.toml:5:48: layup.plies[0].thickness: \"3/0 in\" divides by zero; write 3/4 in");
  CHECK(thickness("0x1p10").find("job.toml:5:") == 0);
  CHECK(message(job_text(kPanel, kPly, "[formers]\nspacing = {count = 10000000}\n")) ==
        "job.toml:7:20: formers.spacing.count: read 10000000; allowed: a whole number from 2 to 2000");
  CHECK(message(job_text("width = 600\nprofile = [{bend = 90, radius = -400}]", kPly)) ==
        "job.toml:3:33: panel.profile[0].radius: read -400; allowed 5 to 100000 mm");
  CHECK(message(job_text("width = 600\nprofile = [{bend = 0, radius = 400}]", kPly)) ==
        "job.toml:3:20: panel.profile[0].bend: read 0; allowed 0.01 to 355 degrees either way; positive for "
        "a crown, negative for a hollow");
}

TEST_CASE("Unknown keys are errors with the nearest known key, misplaced ones with their table") {
  CHECK(message(with_ply("{timber = \"birch-yellow\", thicknes = 2, thickness = 2}")) ==
        "job.toml:5:47: layup.plies[0].thicknes: is not a known key; did you mean \"thickness\"?");
  CHECK(message(job_text(kPanel, kPly, "[beams]\nbrace_rows = 300\n")) ==
        "job.toml:7:14: beams.brace_rows: is not a known key; it belongs to [formers]");
  CHECK(message(job_text(kPanel + "\nspacing = 300", kPly)) ==
        "job.toml:4:11: panel.spacing: is not a known key; it belongs to [formers] or [outputs]");
  CHECK(message("[frame]\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:1: frame: is not a known key; known here: schema, title, units, date, report_units, "
        "data, panel, layup, press, caul, formers, beams, straps or outputs");
}

TEST_CASE("Unknown rows and choices name what is known") {
  CHECK(
      message(with_ply("{timber = \"birch-yelow\", thickness = 2}")) ==
      "job.toml:5:20: layup.plies[0].timber: read \"birch-yelow\", which is no row of the timbers table; did "
      "you mean \"birch-yellow\"? lamwright list timbers shows all 21");
  CHECK(message(job_text(kPanel + "\nface = \"inside\"", kPly)) ==
        "job.toml:4:8: panel.face: read \"inside\"; allowed inner, outer or centre");
}

TEST_CASE("A name where a length could stand is looked up as a name") {
  CHECK(message(job_text(kPanel, kPly + "\ncover = \"hardbord-3\"")) ==
        "job.toml:6:9: layup.cover: read \"hardbord-3\", which is no row of the boards table; did you mean "
        "\"hardboard-3\"? lamwright list boards shows all 16");
  CHECK(message(job_text(kPanel, kPly, "[formers]\nspacing = \"wide\"\n")) ==
        "job.toml:7:11: formers.spacing: read \"wide\"; allowed auto, a greatest pitch like 300, {max_clear "
        "= 75} or {count = 12}");
  CHECK(read(job_text(kPanel, kPly + "\ncover = \"hardboard-3\"")).job->layup.cover_stock == "hardboard-3");
}

TEST_CASE("One form of profile is given, with nothing that belongs to another") {
  CHECK(message(job_text(
            "width = 600\nprofile = {chord = 1200, rise = 150, three_points = [[0, 0], [1, 1], [2, 0]]}",
            kPly)) ==
        "job.toml:3:53: panel.profile.three_points: is given beside rise; give one form of profile");
  CHECK(message(job_text("width = 600\nprofile = {chord = 1200, rise = 150, ease = 30}", kPly)) ==
        "job.toml:3:45: panel.profile.ease: has no use with rise; take it out");
}

TEST_CASE("A missing key says what it is for") {
  CHECK(message("[layup]\n" + kPly + "\n[panel]\nprofile = [{line = 10}, {bend = 30, radius = 300}]\n") ==
        "job.toml:3:1: panel.width: is missing; finished width, the straight direction");
}

TEST_CASE("Byte-order marks and CRLF change nothing, other encodings are refused") {
  const std::string text = "title = \"Tür\"\n" + job_text(kPanel, kPly);
  std::string crlf;
  for (const char c : text) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const JobResult plain = read(text), marked = read("\xEF\xBB\xBF" + crlf);
  REQUIRE(plain.job);
  REQUIRE(marked.job);
  CHECK(plain.job->number == marked.job->number);
  CHECK(plain.job->title == marked.job->title);
  std::string cr = text;
  std::replace(cr.begin(), cr.end(), '\n', '\r');
  CHECK(message(cr) == "job.toml: lines end with CR alone; save it with LF or CRLF line ends");
  CHECK(message(std::string("\xFF\xFEt\0i\0", 6)) == "job.toml: the file is UTF-16; save it as UTF-8");
  CHECK(message(text + std::string(1, '\0')) == "job.toml: the file contains NUL bytes; save it as UTF-8");
  CHECK(message("title = \"T\xFCr\"\n" + job_text(kPanel, kPly)) ==
        "job.toml: byte 11 is not UTF-8; save it as UTF-8");
}

TEST_CASE("Up to twenty errors are told in one go") {
  std::string plies;
  for (int i = 0; i < 30; ++i) plies += "{timber = \"birch-yellow\", thickness = -1},";
  CHECK(read(with_ply(plies)).errors.size() == 20);
  CHECK(read(job_text("width = 1\ntrim = -4\nprofile = [{bend = 90, radius = 1}]", kPly)).errors.size() == 3);
}

TEST_CASE("A syntax error has its line and column") {
  const std::string text = message("[panel]\nwidth = = 3\n");
  CHECK(text.find("job.toml:2:") == 0);
}

TEST_CASE("Newer schemas and several panels are refused") {
  CHECK(message("schema = 2\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:10: schema: read 2, a newer form of job file; this program knows schema 1; use a newer "
        "program");
  CHECK(message("[[panel]]\n" + kPanel + "\n[layup]\n" + kPly) ==
        "job.toml:1:1: panel: several panels in one file are reserved for later; write one [panel] table");
}

TEST_CASE("Profiles come as runs, chord and rise, or three points") {
  const auto radius = [](const std::string& profile) {
    const JobResult result = read(job_text("width = 600\nprofile = " + profile, kPly));
    return result.job ? 1 / result.job->panel.profile.runs().front().curvature : 0;
  };
  CHECK(radius("{chord = 1200, rise = 150}") == Approx(1275));  // 1200^2 / (8 * 150) + 150 / 2
  CHECK(radius("{chord = 1200, rise = -150}") == Approx(-1275));
  CHECK(radius("{three_points = [[0, 0], [600, 150], [1200, 0]]}") == Approx(1275));
  CHECK(radius("{three_points = [[0, 0], [600, -150], [1200, 0]]}") == Approx(-1275));
  CHECK(message(job_text("width = 600\nprofile = {three_points = [[0, 0], [1, 0], [2, 0]]}", kPly)) ==
        "job.toml:3:27: panel.profile.three_points: lies on one straight line; give a point off the chord, "
        "or a line");
  CHECK(message(job_text("width = 600\nprofile = [{line = 5, bend = 3}]", kPly)) ==
        "job.toml:3:12: panel.profile[0]: is neither a line nor a bend; write {line = 120} or {bend = 70, "
        "radius = 380}");
  CHECK(message(job_text("width = 600\nprofile = {points = \"a.csv\"}", kPly)).find("a.csv") !=
        std::string::npos);
  CHECK(message(
            job_text("width = 600\nprofile = [{bend = 200, radius = 400}, {bend = 200, radius = 400}]", kPly))
            .find("turns through 400 degrees, a full circle or more") != std::string::npos);
}

TEST_CASE("Titles may hold anything that prints") {
  const JobResult result = read("title = \"</svg>\\\"'../ä板\"\n" + job_text(kPanel, kPly));
  REQUIRE(result.job);
  CHECK(result.job->title == "</svg>\"'../ä板");
  CHECK(message("title = \"a\\nb\"\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:9: title: holds a control character; use printable text in one line");
}

TEST_CASE("Dates are days of the calendar") {
  CHECK(read("date = \"2026-02-28\"\n" + job_text(kPanel, kPly)).job->date == "2026-02-28");
  CHECK(read("date = 2026-03-14\n" + job_text(kPanel, kPly)).job->date == "2026-03-14");
  CHECK(message("date = \"2026-02-30\"\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:8: date: read \"2026-02-30\"; write a day like 2026-03-14");
}

TEST_CASE("Forces take unit strings and stay under the strap's rating") {
  CHECK(read(job_text(kPanel, kPly, "[straps]\ntension = \"250 daN\"\n")).job->straps.tension == 2500);
  CHECK(message(job_text(kPanel, kPly, "[straps]\ntension = \"30 kN\"\n")) ==
        "job.toml:7:11: straps.tension: read 30000 N, above the strap's rating; allowed up to 25000 N");
}

TEST_CASE("Impossible hardware is refused where it is given") {
  CHECK(message(job_text(kPanel, kPly, "[beams]\nscrew = {length = 180}\n")) ==
        "job.toml:7:19: beams.screw.length: a screw of 180 is longer than the beam's depth and its reach, "
        "150; use a shorter screw or raise beams.screw.reach");
  CHECK(message(job_text(kPanel, kPly, "[straps]\nholes = 4\n")) ==
        "job.toml:7:9: straps.holes: read 4; give an odd number, so that one hole is in the middle");
  CHECK(message(job_text(kPanel, kPly, "[straps]\nhole_pitch = 14\n")) ==
        "job.toml:7:14: straps.hole_pitch: holes of 12 at a pitch of 14 leave less than 5 of wood; raise the "
        "pitch to 17");
}

TEST_CASE("Files to begin from read without error and hold every default") {
  int built = 0;
  for (const StartShape& shape : start_shapes()) {
    const Evaluation result = evaluated(start_text(shape.name));
    INFO(shape.name << ": " << only_error(result));
    CHECK(result.plan);
    ++built;
  }
  CHECK(built == 5);
}

TEST_CASE("Defaults in a file to begin from mean what leaving them out means") {
  // Uncommenting every default changes nothing.
  const std::string text = start_text("arch");
  std::string open;
  std::size_t begin = 0;
  int uncommented = 0;
  while (begin < text.size()) {
    const auto end = text.find('\n', begin);
    std::string line = text.substr(begin, end - begin);
    const bool default_line = line.starts_with("# ") && line.find(" = ") != std::string::npos &&
                              line.find(" = ...") == std::string::npos &&
                              line.find("   # ") != std::string::npos;
    if (default_line) {
      line = line.substr(2);
      ++uncommented;
    }
    open += line + "\n";
    begin = end + 1;
  }
  CHECK(uncommented > 30);
  const Evaluation plain = evaluated(text), full = evaluated(open);
  INFO(only_error(full));
  REQUIRE(plain.plan);
  REQUIRE(full.plan);
  CHECK(plain.plan->parts.size() == full.plan->parts.size());
  for (std::size_t i = 0; i < plain.plan->parts.size(); ++i) {  // marks differ: they carry the job's number
    const Part &a = plain.plan->parts[i], &b = full.plan->parts[i];
    CHECK(a.name() == b.name());
    CHECK(a.volume() == b.volume());
    CHECK((a.centre() - b.centre()).norm() == 0);
    CHECK(a.bores().size() == b.bores().size());
  }
}

TEST_CASE("Each key stands once in the key table") {
  std::set<std::string> paths;
  for (const KeyRow& row : job_keys()) {
    INFO(row.path);
    CHECK(paths.insert(row.path).second);
    CHECK_FALSE(row.meaning.empty());
  }
  CHECK(paths.size() > 80);
}
