#include "exporters/html/steps.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "exporters/html/steps/datum.hpp"
#include "exporters/json/summary.hpp"
#include "kernel/supply/gather.hpp"
#include "tests/support/folder_sources.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/source_folder.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Told {
  Json summary;
  std::vector<html::Step> steps;
  std::vector<html::Markup> cautions;

  std::vector<std::string> sentences() const {
    std::vector<std::string> out;
    for (const html::Step& step : steps)
      for (const html::Markup& action : step.actions) out.push_back(action.text());
    for (const html::Markup& caution : cautions) out.push_back(caution.text());
    return out;
  }
  std::string text() const {
    std::string out;
    for (const html::Step& step : steps) out += step.title.text() + "\n";
    for (const std::string& sentence : sentences()) out += sentence + "\n";
    return out;
  }
  bool says(const std::string& words) const { return text().find(words) != std::string::npos; }
  // The number of the step that says so first, from 0; their count where none does.
  std::size_t step_of(const std::string& words) const {
    for (std::size_t i = 0; i < steps.size(); ++i)
      for (const html::Markup& action : steps[i].actions)
        if (action.text().find(words) != std::string::npos) return i;
    return steps.size();
  }
};

// Without nested sheets, which no step speaks of and which take most of the time.
Told told(Evaluation result) {
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  result.job->outputs.sheets = false;
  const Supply supply = gather(*result.job, *result.plan, result.figures, [] {});
  Progress progress;
  const ExportInput input{*result.job, *result.plan, result.findings, progress, result.figures, supply};
  Told out{summary_json(input, {}), {}, {}};
  const html::Told figures(out.summary, result.job->report_units);
  out.steps = html::steps(input, figures);
  out.cautions = html::cautions(input, figures);
  return out;
}

Told told(const std::string& text) { return told(evaluated(text)); }

Evaluation demo(const std::string& name) {
  const std::filesystem::path folder = test::demo_job_folder();
  return evaluated(file_text(folder / (name + ".toml")), FolderSources(folder));
}

const std::vector<std::string> kDemos{"alcove-lining", "archive-door",  "back-rest",  "bench-end",
                                      "book-tray",     "column-casing", "desk-front", "gallery-bench",
                                      "lectern-side",  "reading-desk",  "seat-end",   "shelf-nosing",
                                      "table-leaf"};

std::map<std::string, Told> all_told() {
  std::map<std::string, Told> out;
  for (const std::string& name : kDemos) out.emplace(name, told(demo(name)));
  return out;
}

const std::map<std::string, Told>& demos() {
  static const std::map<std::string, Told> all = all_told();
  return all;
}

// The text without its figures, and without marks of any kind.
std::string without_figures(const std::string& markup) {
  return std::regex_replace(std::regex_replace(markup, std::regex("<data[^>]*>[^<]*</data>"), "#"),
                            std::regex("<[^>]*>"), "");
}

const std::string kOneCrown = job_text("width = 600\nprofile = [{bend = 90, radius = 400}]", birch(6));

}  // namespace

TEST_CASE("Every demo job that can be pressed has its steps") {
  REQUIRE(demos().size() == 13);
  std::size_t built = 0;
  for (const auto& entry : std::filesystem::directory_iterator(test::demo_job_folder())) {
    const std::string name = entry.path().stem().string();
    CAPTURE(name);
    CHECK(demos().contains(name) != (name == "refused-niche"));
    built += name != "refused-niche";
  }
  CHECK(built == 13);
  for (const auto& [name, page] : demos()) {
    CAPTURE(name);
    CHECK(page.steps.size() >= 12);
    CHECK(page.steps.size() <= 15);
    for (const html::Step& step : page.steps) CHECK((!step.title.empty() && !step.actions.empty()));
    CHECK(page.cautions.size() >= 8);
  }
}

TEST_CASE("No sentence comes twice, and every sentence ends as one") {
  std::size_t seen = 0;
  for (const auto& [name, page] : demos()) {
    std::set<std::string> before;
    for (const std::string& sentence : page.sentences()) {
      CAPTURE(name, sentence);
      CHECK(before.insert(sentence).second);
      CHECK(sentence.back() == '.');
      CHECK(sentence.find("  ") == std::string::npos);
      CHECK(sentence.find("..") == std::string::npos);
      ++seen;
    }
  }
  CHECK(seen > 13 * 70);
}

TEST_CASE("No figure is missing") {
  for (const auto& [name, page] : demos()) {
    CAPTURE(name);
    for (const char* fault : {"null", "\u2013", "nan", "inf ", ">-", "undefined"}) {
      CAPTURE(fault);
      CHECK_FALSE(page.says(fault));
    }
  }
}

TEST_CASE("Figures of the steps are those of the summary") {
  const std::regex figure("<data value=\"([^\"]*)\" data-of=\"([^\"]*)\" data-as=\"[^\"]*\">");
  std::size_t seen = 0;
  for (const auto& [name, page] : demos()) {
    const std::string text = page.text();
    for (std::sregex_iterator it(text.begin(), text.end(), figure), end; it != end; ++it, ++seen) {
      CAPTURE(name, it->str());
      const Json::json_pointer pointer(it->str(2));
      REQUIRE(page.summary.contains(pointer));
      CHECK(page.summary.at(pointer).dump() == it->str(1));
    }
  }
  CHECK(seen > 13 * 25);
}

TEST_CASE("No measure stands in a step that is not a figure of the summary") {
  const std::regex measure("[0-9](\\.[0-9]+)? ?(mm|cm|m|in|ft|N|kN|lbf|MPa|psi|kg|g|lb|min|h|%|\u00B0)\\b");
  CHECK(std::regex_search("12.5 mm", measure));
  std::size_t seen = 0;
  for (const auto& [name, page] : demos())
    for (const std::string& sentence : page.sentences()) {
      CAPTURE(name, sentence);
      CHECK_FALSE(std::regex_search(without_figures(sentence), measure));
      ++seen;
    }
  CHECK(seen > 13 * 70);
}

TEST_CASE("Each way of pressing has its own sentences and none of the others'") {
  struct Topic {
    std::string words;
    std::set<std::string> in;  // the demo jobs that speak of it
  };
  const std::set<std::string> halves{"back-rest", "book-tray", "lectern-side", "seat-end", "table-leaf"};
  std::set<std::string> one_part(kDemos.begin(), kDemos.end());
  for (const std::string& name : halves) one_part.erase(name);
  std::set<std::string> slatted(kDemos.begin(), kDemos.end()), all = slatted;
  slatted.erase("book-tray"), slatted.erase("table-leaf");
  std::set<std::string> curved = all;
  curved.erase("table-leaf");
  std::set<std::string> pinned = all;
  pinned.erase("book-tray");
  // Worked out from the job files: even numbers of straps, and profiles that are not alike on both sides.
  const std::set<std::string> even{"desk-front", "gallery-bench", "lectern-side", "reading-desk"};
  std::set<std::string> odd = all;
  for (const std::string& name : even) odd.erase(name);
  const std::set<std::string> leaning{"alcove-lining", "back-rest", "gallery-bench", "lectern-side",
                                      "reading-desk"};
  std::set<std::string> centred = all, centred_curved = curved, staged, heavy_moulds = one_part;
  for (const std::string& name : leaning) centred.erase(name), centred_curved.erase(name);
  for (const auto& [name, page] : demos())
    if (page.summary["glue"]["stages"].size() > 1) staged.insert(name);
  heavy_moulds.erase("shelf-nosing");
  const std::vector<Topic> topics{
      {"Build the upper half", halves},
      {"Chock the upper half", halves},
      {"upper half is held by chocks or hoist before the last strap", halves},
      {"Build the mould", one_part},
      {"Lay the top caul on", one_part},
      {"drags the caul sideways", one_part},
      {"Put a strap loop round", {"back-rest", "book-tray", "seat-end", "table-leaf"}},
      {"Hook a strap to the pins", {"lectern-side"}},
      {"to the marked strap hole", one_part},
      {"the caul must hinge freely", slatted},
      {"one-handed clamps", slatted},
      {"Lay the sheathing on", {"table-leaf"}},
      {"Feel over the bare mould", {"book-tray"}},
      {"Lay the liner", {"book-tray"}},
      {"Stack the boards face to face", {"book-tray"}},
      {"no more: the crown of the contact edges", {"table-leaf"}},
      {"pressing beams", {"alcove-lining", "bench-end", "gallery-bench", "reading-desk"}},
      {"on the plain bearers", {"archive-door"}},
      {"stand under stations", {"archive-door", "book-tray"}},
      {"locating pins, <data", pinned},
      {"There are no locating pins", {"book-tray"}},
      {"Recess run", {"back-rest", "lectern-side", "seat-end"}},
      {"Recess the upper sheathing", {"table-leaf"}},
      {"Bore the lower sheathing for the two locating pins", {"table-leaf"}},
      {"centre lines step apart", {"back-rest", "lectern-side", "seat-end"}},
      {"free to slide sideways", {"lectern-side"}},
      {"let every loop out first", {"back-rest", "book-tray", "seat-end", "table-leaf"}},
      {"let every strap out first", {"lectern-side"}},
      {"straight up off the pins", {"back-rest", "lectern-side", "seat-end", "table-leaf"}},
      {"steep flats", {"alcove-lining", "bench-end", "gallery-bench", "reading-desk"}},
      {"from the bend to the free end", {"bench-end"}},
      {"from its middle outward", {"alcove-lining", "bench-end"}},
      {"Start with the middle strap", odd},
      {"Start with the two straps in the middle", even},
      {"at the centre line.", centred},
      {"It is not the centre line.", leaning},
      {"centre line onto the cradles", centred_curved},
      {"Their centre line is not the panel", leaning},
      {"the ends of the pack are ragged", curved},
      {"it lets go all at once", all},
      {"Glued in stages by one person", staged},
      {"Mould without its caul", heavy_moulds},
      {"joints of neighbours", {"gallery-bench"}},
      {"Grain across", {"archive-door", "gallery-bench"}},
      {"template-inner", curved},
      {"trim cradles", curved},
      {"test strip", curved},
      {"Lay a straightedge on the panel", {"table-leaf"}},
      {"guide rollers", {}},
      {"does not wash off", {}},
      {"Nobody stands or leans in line with a strap", all},
      {"Never put a bar or a pipe on a ratchet", all},
      {"Local rules and the judgement of a qualified person come first", all},
  };
  std::size_t seen = 0;
  for (const Topic& topic : topics)
    for (const auto& [name, page] : demos()) {
      CAPTURE(topic.words, name);
      CHECK(page.says(topic.words) == topic.in.contains(name));
      ++seen;
    }
  CHECK(seen == topics.size() * 13);
}

TEST_CASE("Things are done in the order in which they have to be") {
  for (const auto& [name, page] : demos()) {
    CAPTURE(name);
    const std::vector<std::string> in_order{"Count the pieces",
                                            "straightedge along the width",
                                            "Draw the middle of the pack over",
                                            "Number the plies",
                                            "there is a gap",
                                            "Weigh out",
                                            "Start the clock",
                                            "loop round|to the marked|to the pins",
                                            "No strap is finished",
                                            "Write the time on the press",
                                            "Let the ratchets off",
                                            "finished width",
                                            "Tap over both faces",
                                            "Store it dry"};
    std::size_t before = 0;
    for (std::size_t i = 0; i < in_order.size(); ++i) {
      CAPTURE(in_order[i]);
      std::size_t at = page.steps.size();
      const std::regex words(in_order[i]);
      for (std::size_t step = 0; step < page.steps.size() && at == page.steps.size(); ++step)
        for (const html::Markup& action : page.steps[step].actions)
          if (std::regex_search(action.text(), words)) at = std::min(at, step);
      REQUIRE(at < page.steps.size());
      if (i > 0) CHECK(at > before);
      before = at;
    }
  }
}

TEST_CASE("Stages are told where one person does not spread in time") {
  std::size_t staged = 0;
  for (const auto& [name, page] : demos()) {
    CAPTURE(name);
    const bool stages = page.summary["glue"]["stages"].size() > 1;
    CHECK(page.says("glue in stages") == stages);
    const Json& minutes = page.summary["glue"]["minutes"];
    CHECK((minutes["spreading"] > minutes["open"]) == stages);
    CHECK(minutes["stage"] <= minutes["open"]);
    staged += stages;
  }
  CHECK(staged == 9);
}

TEST_CASE("More hands are asked for where one person does not close the press in time") {
  CHECK(demos().at("back-rest").says("One person alone is too slow"));
  CHECK_FALSE(demos().at("bench-end").says("One person alone is too slow"));
}

// The slat that is screwed first has to be one that is bored for screws.
TEST_CASE("The datum slat of a screwed caul is a fixing slat") {
  std::size_t seen = 0;
  for (const std::string& name : kDemos) {
    const Evaluation result = demo(name);
    REQUIRE(result.plan);
    for (const PlannedCaul& caul : result.plan->cauls) {
      if (caul.kind == Layer::Kind::top_caul && !result.plan->sections.front().upper) continue;
      CAPTURE(name, to_text(caul.kind));
      const std::string run = html::bench::datum_run(*result.plan, caul.kind);
      REQUIRE_FALSE(run.empty());
      CHECK(caul.schedule.runs.at(std::stoul(run) - 1).run.fixing);
      ++seen;
    }
  }
  CHECK(seen == 8 + 2 * 3);
}

// The middle of an even arc's girth lies at the middle of its contact edge, which is carried on alike at both
// ends; an L of unequal legs has it on the long leg: 515 of line and half of the bend are more than half.
TEST_CASE("The middle of the pack is told along the contact edge") {
  const auto middle = [](const Json& summary) {
    return summary["press"]["contact"]["lower"]["middle"].get<double>();
  };
  double length = 0;
  const Json& even = demos().at("desk-front").summary;
  for (const Json& run : even["press"]["contact"]["lower"]["runs"]) length += run["length"].get<double>();
  const double extend = even["press"]["contact"]["lower"]["runs"][0]["length"].get<double>() - 15;
  CHECK(middle(even) == Approx(length / 2 - extend).margin(1e-6));
  // On the long leg lengths are the same on every line: half of the neutral girth.
  const Json& unequal = demos().at("lectern-side").summary;
  CHECK(middle(unequal) == Approx(unequal["panel"]["girth"]["neutral"].get<double>() / 2).margin(1e-6));
}

TEST_CASE("The notebook's command takes the pressed radius of the tightest crown") {
  const Told& page = demos().at("reading-desk");
  const std::string command =
      "<code>lamwright notebook add JOB --pressed &quot;<data value=\"373.067309998\" "
      "data-of=\"/panel/pressed/runs/1/radius\" data-as=\"length\">373.1 mm</data>&quot; --released R</code>";
  CHECK(page.says(command));
  CHECK(demos().at("alcove-lining").says("for the outer face"));
  CHECK_FALSE(demos().at("table-leaf").says("notebook add"));
}

TEST_CASE("A panel without a crown has no entry for the notebook, which takes crowns") {
  const Told page =
      told(job_text("width = 400\nprofile = [{line = 200}, {bend = -60, radius = 300}, {line = 200}]",
                    birch(8), "[press]\nmethod = \"two-part\"\n"));
  CHECK(page.says("when released"));
  CHECK_FALSE(page.says("notebook add"));
}

TEST_CASE("A hostile title stays text") {
  const Told page = told("title = \"</li><script>alert('x')</script>&\"\n" + kOneCrown);
  CHECK_FALSE(page.says("<script"));
  CHECK_FALSE(page.says("</li>"));
  CHECK(page.says("&lt;/li&gt;&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&amp;, number "));
}

TEST_CASE("A mould without straps speaks of none") {
  const Told page = told(kOneCrown + "[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\n");
  CHECK(page.says("This mould has no straps"));
  CHECK(page.says("Lay the formers on their sides and put them on the plain bearers"));
  CHECK(page.says("Sight across the bearers"));
  CHECK(page.says("This mould has no straps. Put"));
  for (const char* words : {"ratchet", "Lay a strap", "drawn strap", "top caul", "cauls", "slat",
                            "the straps", "straps are", "Coil", "beams"}) {
    CAPTURE(words);
    CHECK_FALSE(page.says(words));
  }
}

TEST_CASE("Without trim nothing is trimmed and no pins stand in it") {
  const Told page = told(job_text("width = 600\ntrim = 0\nprofile = [{bend = 90, radius = 400}]", birch(6)));
  CHECK(page.step_of("finished width") == page.steps.size());
  CHECK_FALSE(page.says("locating pins,"));
  CHECK_FALSE(page.says("trim lines"));
  CHECK(page.says("Hold all of it by hand"));
  CHECK(page.says("on the edge, and which end is L"));
}

TEST_CASE("Glue that does not wash off wants everything taped, and glue for two faces says so") {
  const Told page =
      told(job_text("width = 600\nprofile = [{bend = 90, radius = 400}]", "glue = \"epoxy\"\n" + birch(6)));
  CHECK(page.says("This glue does not wash off. Tape every face of the cauls"));
  CHECK(page.says("Grease or tape pins"));
  CHECK(page.says("Spread both faces of every joint"));
  CHECK_FALSE(page.says("Spread one face"));
}

TEST_CASE("Rollers, grooves and one-sided ratchets are told where the job has them") {
  const Told page = told(job_text(
      "width = 900\nprofile = [{bend = 100, radius = 400}]", birch(7),
      "[press]\nguide_rollers = true\n[beams]\nevery = 2\n[formers]\ngroove_depth = 12\nspacing = {count "
      "= 7}\n[straps]\ntighten = \"one-end\"\n"));
  CHECK(page.says("over its guide rollers"));
  CHECK(page.says("into the grooves of the bearers, without screws"));
  CHECK(page.says("stand under stations 1, 3, 5 and 7."));
  CHECK(page.says("Each strap has one ratchet"));
  CHECK_FALSE(page.says("draw left and right at the same time"));
  CHECK_FALSE(page.says("A ratchet a tenth tighter"));
}

TEST_CASE("Leaning beams are wedged up first") {
  const Told page =
      told(job_text("width = 400\nprofile = [{line = 500}, {bend = 90, radius = 60}, {line = 200}]", birch(8),
                    "[press]\nmethod = \"two-part\"\nspringback = \"none\"\nbeam_tilt = 15\n[caul]\nkind = "
                    "{thickness = 16, pitch = "
                    "24}\n"));
  CHECK(page.says("Beams lean by 15 degrees"));
  CHECK(page.says("Screw the stops"));
  CHECK_FALSE(page.says("Springback reckoned with"));
}

TEST_CASE("A flat panel has no curve, and sheathing is not called a caul") {
  const Told& page = demos().at("table-leaf");
  CHECK(page.says("on the centre line, "));
  CHECK(page.says("from left to right by "));
  for (const char* words : {"curve", "caul", " of the centre line", "pringback", "slat", "ragged"}) {
    CAPTURE(words);
    CHECK_FALSE(page.says(words));
  }
}

// Run 24 of the unequal L spans the point where the pin, straight on, meets the upper caul.
TEST_CASE("A recess is told by the run that the pin meets, and a caul without slats has none") {
  const Evaluation result = demo("lectern-side");
  REQUIRE(result.plan);
  const Pin& pin = result.plan->pins.front();
  const std::vector<std::string> runs = html::bench::recessed_runs(*result.plan, pin);
  REQUIRE(runs == std::vector<std::string>{"24"});
  std::size_t found = 0;
  for (const Layer& layer : result.plan->layers) {
    if (layer.kind != Layer::Kind::top_caul || layer.slats.empty()) continue;
    const double at = layer.inner.nearest(pin.at.head<2>()).station;
    CHECK(layer.slats.at(23).from < at);
    CHECK(layer.slats.at(23).to > at);
    ++found;
  }
  CHECK(found == 1);
  const Evaluation sheathed = demo("table-leaf");
  REQUIRE(sheathed.plan);
  CHECK(html::bench::recessed_runs(*sheathed.plan, sheathed.plan->pins.front()).empty());
}

TEST_CASE("A failed check heads the cautions") {
  const Told page = told(job_text("width = 600\nprofile = [{bend = 90, radius = 150}]", birch(6)));
  std::size_t failed = 0;
  for (const Json& finding : page.summary["findings"]) failed += finding["verdict"] == "fail";
  REQUIRE(failed > 0);
  for (std::size_t i = 0; i < failed; ++i) CHECK(page.cautions.at(i).text().starts_with("FAILED: "));
  CHECK_FALSE(page.cautions.at(failed).text().starts_with("FAILED: "));
}

TEST_CASE("Measures are told in the units that the job asks for") {
  const Told page = told("report_units = \"in\"\n" + kOneCrown);
  CHECK(page.says(" lbf</data>"));
  CHECK(page.says(" in</data>"));
  CHECK_FALSE(page.says(" mm</data>"));
  CHECK_FALSE(page.says(" in</data> in "));
}
