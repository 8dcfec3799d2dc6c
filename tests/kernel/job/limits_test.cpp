// What a job and the files beside it may ask for at most; each refusal tells value, limit and way out.
#include <algorithm>
#include <catch2/catch.hpp>

#include "kernel/panel/notebook.hpp"
#include "shared/text.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const std::string kPanel = "width = 600\nprofile = [{bend = 90, radius = 400}]";
const std::string kPly = "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 6}]";

// "a, a, a"
std::string times(std::size_t count, const std::string& item) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text += (i > 0 ? ", " : "") + item;
  return text;
}

std::string message(const std::string& text, const Sources& sources = MemorySources()) {
  const JobResult result = read_job(text, "job.toml", {}, sources);
  if (result.errors.size() != 1) return "(" + std::to_string(result.errors.size()) + " errors)";
  return result.errors.front().what();
}

std::string with_more(const std::string& more) { return job_text(kPanel, kPly, more); }
std::string with_profile(const std::string& profile) {
  return job_text("width = 600\nprofile = " + profile, kPly);
}

}  // namespace

TEST_CASE("A job file of over 4 MB is refused before it is parsed") {
  const std::string remark = "# " + std::string(4 << 20, 'x') + "\n";
  CHECK(message(remark + job_text(kPanel, kPly)) ==
        "job.toml: the file is larger than 4 MB; a job file is a few lines");
}

TEST_CASE("Lists and tables lie at most 32 deep in one another") {
  const auto nested = [](int levels) {
    return "title = " + std::string(levels, '[') + std::string(levels, ']') + "\n" + job_text(kPanel, kPly);
  };
  CHECK(message(nested(32)) == "job.toml:1:9: title: read a list; give a text in quotes");
  CHECK(message(nested(33)) ==
        "job.toml:1: lists and tables lie more than 32 deep in one another; write it flatter: nothing here "
        "needs more than 6");
}

TEST_CASE("A key has at most 32 parts, however many dots there are elsewhere") {
  const std::string dots = "title = \"" + std::string(60, '.') + "\"  # " + std::string(60, '.') + "\n";
  CHECK(message(dots + job_text(kPanel, kPly)) == "(0 errors)");
  std::string key = "a";
  for (int i = 0; i < 300'000; ++i) key += ".a";
  const std::string refusal =
      "a key has more than 32 parts; write it flatter: nothing here needs more than 6";
  CHECK(message("\n" + key + " = 1\n") == "job.toml:2: " + refusal);
  CHECK(message("\n\n[" + key + "]\n") == "job.toml:3: " + refusal);
  CHECK(message("[[" + key + "]]\n") == "job.toml:1: " + refusal);
}

TEST_CASE("Texts over several lines are passed over whole when depth is counted") {
  const std::string brackets(40, '[');
  const std::string text = "title = '''\n" + brackets + "'''\n";  // a first line break does not count
  CHECK(message(text + job_text(kPanel, kPly)) == "(0 errors)");
  const std::string escaped = "title = \"\"\"\\\"\"\" " + brackets + "\"\"\"\n";
  CHECK(message(escaped + job_text(kPanel, kPly)) == "(0 errors)");
}

TEST_CASE("Whole numbers beyond 2^53 are out of range like others") {
  CHECK(message(job_text("width = 9007199254740993\nprofile = [{bend = 90, radius = 400}]", kPly)) ==
        "job.toml:2:9: panel.width: read 9007199254740993; allowed 10 to 10000 mm");
  CHECK(message(with_profile("{three_points = [[0, 0], [1, 9223372036854775807], [2, 0]]}"))
            .starts_with("job.toml:3:27: panel.profile.three_points: is an arc of radius "));
}

TEST_CASE("Lists are refused by their length before their items are read") {
  const std::string many_runs = "[" + times(2001, "{line = 1}") + "]";
  CHECK(message(with_profile(many_runs)) == "job.toml:3:11: panel.profile: has 2001 runs; allowed 1 to 2000");
  CHECK(message(with_profile("{points = [" + times(10'001, "[0, 0]") + "]}")) ==
        "job.toml:3:21: panel.profile.points: has 10001 points; allowed at most 10000; write them into a CSV "
        "file and name it");
  CHECK(
      message(with_profile("{offsets = [" + times(10'001, "0") + "], every = 1}")) ==
      "job.toml:3:22: panel.profile.offsets: has 10001 offsets; allowed at most 10000; write them into a CSV "
      "file and name it");
  CHECK(message(job_text(kPanel, "plies = [" + times(501, "{}") + "]")) ==
        "job.toml:5:9: layup.plies: has 501 entries; allowed at most 500; sheets alike are one entry with a "
        "count");
  CHECK(message(with_more("[caul]\nkind = \"sheathed\"\nsheathing = [" + times(21, "1") + "]")) ==
        "job.toml:8:13: caul.sheathing: has 21 sheets; allowed at most 20; give fewer, thicker ones");
  CHECK(message(with_more("[caul]\nslats = [" + times(13, "900") + "]")) ==
        "job.toml:7:9: caul.slats: names 13 kinds of slat; at most 12: leave out the shortest");
  CHECK(message(with_more("[outputs]\nonly = [" + times(21, "\"svg\"") + "]")) ==
        "job.toml:7:8: outputs.only: has 21 names; allowed at most 20; leave it out to have everything "
        "written");
  CHECK(
      message(with_more("[outputs]\nlengths = [" + times(21, "3000") + "]")) ==
      "job.toml:7:11: outputs.lengths: has 21 lengths; allowed at most 20; name those that are bought most");
  CHECK(message("data = [" + times(21, "\"rows.toml\"") + "]\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:8: data: has 21 files; allowed at most 20; put their rows into one");
}

TEST_CASE("A panel is at most 25 m long round the curve") {
  CHECK(message(with_profile("[{line = 13000}, {line = 12000}]")) == "(0 errors)");
  CHECK(message(with_profile("[{line = 13000}, {line = 12001}]")) ==
        "job.toml:3:11: panel.profile: is 25001 long round the curve; allowed up to 25000 mm; make the panel "
        "in pieces");
}

TEST_CASE("A data file that cannot be read is told beside what else is wrong") {
  const JobResult result = read_job("data = \"none.toml\"\nschema = 2\n" + job_text(kPanel, kPly), "job.toml",
                                    {}, MemorySources());
  REQUIRE(result.errors.size() == 2);
  CHECK(std::string(result.errors[0].what()) ==
        "job.toml:2:10: schema: read 2, a newer form of job file; this program knows schema 1; use a newer "
        "program");
  CHECK(std::string(result.errors[1].what()) == "none.toml: cannot be read: no such file");
}

TEST_CASE("The sheets of all entries together are at most 500") {
  const std::string ply = "{timber = \"birch-yellow\", thickness = 1.5, count = 300}";
  CHECK(message(job_text(kPanel, "plies = [" + ply + ", " + ply + "]")) ==
        "job.toml:5:67: layup.plies[1]: makes more than 500 plies; allowed 1 to 500 in all");
}

TEST_CASE("Texts of a job are short") {
  CHECK(message("title = \"" + std::string(201, 'x') + "\"\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:9: title: is longer than 200 characters; shorten it");
  CHECK(message("data = \"" + std::string(1001, 'x') + "\"\n" + job_text(kPanel, kPly)) ==
        "job.toml:1:8: data: is a text of 1001 bytes; allowed up to 1000");
  CHECK(message(job_text("width = \"" + std::string(61, '1') + "\"\nprofile = [{line = 90}]", kPly)) ==
        "job.toml:2:9: panel.width: a text of 61 bytes is no quantity, at most 60 are read; write it like "
        "\"18 mm\", \"3/4 in\" or \"5' 3/4\\\"\"");
}

TEST_CASE("What a job holds never breaks the line of a message, nor fills it") {
  const std::vector<std::string> hostile{
      "\"a\\nb\" = 1\n",
      "\"" + std::string(1 << 20, 'k') + "\" = 1\n",
      "units = \"m\\u001Bm\"\n",
      "data = \"rows\\r.toml\"\n",
      "schema = \"" + std::string(1 << 20, 'v') + "\"\n",
      "units = \"" + std::string(1 << 20, 'v') + "\"\n",
  };
  std::size_t told = 0;
  for (const std::string& line : hostile)
    for (const Error& error :
         read_job(line + job_text(kPanel, kPly), "job.toml", {}, MemorySources()).errors) {
      const std::string text = error.what();
      CHECK(text.size() < 4096);
      CHECK(std::none_of(text.begin(), text.end(),
                         [](char c) { return static_cast<unsigned char>(c) < 0x20; }));
      ++told;
    }
  CHECK(told >= hostile.size());
  CHECK(message("\"a\\nb\" = 1\n" + job_text(kPanel, kPly))
            .starts_with("job.toml:1:10: a\\nb: is not a known key; "));
}

TEST_CASE("A file of trade rows holds at most 2000, with names of at most 100 bytes and texts of 1000") {
  const auto with_rows = [](const std::string& rows) {
    return message("data = \"rows.toml\"\n" + job_text(kPanel, kPly), MemorySources({{"rows.toml", rows}}));
  };
  std::string rows;
  for (int i = 0; i < 2001; ++i) rows += "[prices.p" + std::to_string(i) + "]\nprice = 1\nper = \"m\"\n";
  CHECK(with_rows(rows) == "rows.toml: holds 2001 rows; allowed at most 2000; keep those that are used");
  CHECK(with_rows("[prices." + std::string(101, 'p') + "]\nprice = 1\nper = \"m\"\n") ==
        "rows.toml:1:1: prices." + std::string(101, 'p') + ": has a name of 101 bytes; allowed up to 100");
  CHECK(with_rows("[prices.p]\nprice = 1\nper = \"m\"\ncurrency = \"" + std::string(1001, 'E') + "\"\n") ==
        "rows.toml:4:12: prices.p.currency: is a text of 1001 bytes; allowed up to 1000");
  CHECK(with_rows("[cauls.slatted-hardwood-28]\nslats = [" + times(13, "900") + "]\n") ==
        "rows.toml:2:9: cauls.slatted-hardwood-28.slats: has 13 items; allowed a list of 1 to 12, each 50 to "
        "20000 mm");
  CHECK(with_rows("# " + std::string(4 << 20, 'x')) ==
        "rows.toml: the file is larger than 4 MB; a file of trade rows is a few lines");
}

TEST_CASE("Of a file of many faulty rows twenty faults are told") {
  std::string rows;
  for (int i = 0; i < 1000; ++i) rows += "[prices.p" + std::to_string(i) + "]\nprise = 1\n";
  std::vector<Error> faults;
  TradeTables().with(rows, "rows.toml", faults);
  CHECK(faults.size() == 20);
}

TEST_CASE("A notebook holds at most 10000 pieces, 4 MB, and texts of 1000 bytes") {
  const std::string line = "2026-03-14,2 x ash 2 along,pvac-d3,4,inner,2,300,310,";
  const auto refusal = [](const std::string& lines) {
    return message_of([&] { read_notebook(notebook_header() + "\n" + lines, "springback.csv"); });
  };
  std::string pieces;
  for (int i = 0; i < 10'001; ++i) pieces += line + "\n";
  CHECK(refusal(pieces) ==
        "springback.csv: holds 10001 lines of pieces; allowed at most 10000; begin a new notebook, with the "
        "pieces that still count");
  CHECK(refusal(std::string(4 << 20, ',')) ==
        "springback.csv: is larger than 4 MB; begin a new notebook, with the pieces that still count");
  CHECK(refusal(line + std::string(1001, 'x') + "\n") ==
        "springback.csv:2: note: is a text of 1001 bytes; allowed up to 1000");
}
