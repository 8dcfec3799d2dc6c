#include "kernel/job/settings.hpp"

#include <catch2/catch.hpp>

#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

class SetSources : public MemorySources {
 public:
  explicit SetSources(std::vector<Setting> settings) : settings_(std::move(settings)) {}
  std::vector<Setting> settings() const override { return settings_; }

 private:
  std::vector<Setting> settings_;
};

const std::string kJob =
    job_text("width = 900\nprofile = [{line = 80}, {bend = 60, radius = 415}, {line = 80}]", birch(7));

Evaluation with(const std::vector<Setting>& settings) { return evaluated(kJob, SetSources(settings)); }
std::string refusal(const Setting& setting) { return only_error(with({setting})); }

}  // namespace

TEST_CASE("A value of the command line stands in place of the job's own") {
  const Evaluation result = with({{"panel.profile[1].radius", "500"},
                                  {"panel.width", "\"3 ft\""},
                                  {"press.method", "one-part"},
                                  {"formers.spacing", "{count = 5}"},
                                  {"beams.section", "[46, 90]"},
                                  {"press.guide_rollers", "false"}});
  REQUIRE(result.job);
  CHECK(1 / result.job->panel.profile.runs()[1].curvature == Approx(500).epsilon(1e-12));
  CHECK(result.job->panel.width == Approx(914.4).epsilon(1e-12));  // 3 x 304.8
  CHECK(result.plan->sections.size() == 5);
  CHECK(result.job->notes.back() == "press.guide_rollers=false stands in place of the job's own");
}

TEST_CASE("A text needs no quotes, a length keeps its unit") {
  CHECK(with({{"panel.width", "3 ft"}}).job->panel.width == Approx(914.4).epsilon(1e-12));
  CHECK(with({{"title", "a \"quoted\" \\ title"}}).job->title == "a \"quoted\" \\ title");
}

TEST_CASE("Later settings see what earlier ones made") {
  const Evaluation result = with({{"caul", "{liner = 1}"}, {"caul.liner", "2"}});
  REQUIRE(result.job);
  CHECK(result.job->caul.liner == 2);
}

TEST_CASE("Another value makes another job number, none the file's own") {
  const std::string own = evaluated(kJob).job->number;
  CHECK(with({}).job->number == own);
  CHECK(with({{"panel.width", "901"}}).job->number != own);
  CHECK(with({{"panel.width", "901"}}).job->number != with({{"panel.width", "902"}}).job->number);
}

TEST_CASE("A wrong value is told with the setting as its place") {
  CHECK(refusal({"panel.width", "5"}) ==
        "setting panel.width=5: panel.width: read 5; allowed 10 to 10000 mm");
  CHECK(refusal({"panel.profile[1].radius", "wide"}) ==
        "setting panel.profile[1].radius=wide: panel.profile[1].radius: \"wide\" is not a length; write it "
        "like "
        "\"18 mm\", \"3/4 in\" or \"5' 3/4\\\"\"");
  CHECK(refusal({"formers.extnd", "30"}) ==
        "setting formers.extnd=30: formers.extnd: is not a known key; did you mean \"extend\"?");
}

TEST_CASE("A path that leads nowhere is refused with the way out") {
  CHECK(refusal({"panel..width", "5"}) ==
        "setting panel..width=5: \"panel..width\" is no path to a key; write it as messages name keys: "
        "panel.width, or panel.profile[1].radius");
  CHECK(refusal({"panel.profile[x]", "5"}).find("is no path to a key") != std::string::npos);
  CHECK(refusal({"panel.profile[3].radius", "5"}) ==
        "setting panel.profile[3].radius=5: panel.profile has 3 entries, counted from 0; name one of them");
  CHECK(refusal({"panel.width[0]", "5"}) ==
        "setting panel.width[0]=5: panel.width is no list; leave out the number in brackets");
  CHECK(refusal({"panel.width.mm", "5"}) ==
        "setting panel.width.mm=5: panel.width holds no keys; set panel.width itself");
  CHECK(refusal({"title", "bell \x07"}) ==
        "setting title=bell \\x07: the value holds characters that no text may hold; use printable UTF-8 in "
        "one "
        "line");
}

TEST_CASE("A value that would be several keys is one text") {
  CHECK(refusal({"title", "1\nwidth = 5"}).find("characters that no text may hold") != std::string::npos);
}

TEST_CASE("A value that nests without end is a text too long, and ends nothing") {
  std::string deep = "{";
  for (int i = 0; i < 60000; ++i) deep += "a.";
  CHECK(refusal({"title", deep + "a = 1}"}).find("title: is a text of 120007 bytes; allowed up to 1000") !=
        std::string::npos);
  CHECK(refusal({"title", std::string(60000, '[')}).find("title: is a text of 60000 bytes") !=
        std::string::npos);
}
