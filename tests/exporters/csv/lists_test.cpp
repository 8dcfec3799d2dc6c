#include "exporters/csv/lists.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "exporters/csv/csv_exporter.hpp"
#include "exporters/csv/quote.hpp"
#include "kernel/plugin/memory.hpp"
#include "kernel/supply/gather.hpp"
#include "shared/csv.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Three plies on an inner face of 600 over 60 degrees, trim 15, three formers, slats of 300 and 200 on a caul
// of 400: every figure below follows from these by hand.
std::string counter(const std::string& more = "", const std::string& layup = birch(3)) {
  return "title = \"Counter\"\n" + more +
         test::job_text(
             "width = 370\ncount = 4\nprofile = [{bend = 60, radius = 600}]", layup,
             "[press]\nspringback = \"none\"\n[caul]\nslats = [300, 200]\n[formers]\nspacing = {count "
             "= 3}\n");
}

struct Listed {
  Evaluation result;
  Supply supply;
  Progress quiet;

  explicit Listed(const std::string& text, const MemorySources& sources = MemorySources())
      : result(evaluated(text, sources)) {
    if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
    supply = gather(*result.job, *result.plan, result.figures);
  }
  ExportInput input() { return {*result.job, *result.plan, result.findings, quiet, result.figures, supply}; }
  std::map<std::string, std::string> files() {
    MemorySink sink;
    CsvExporter().write(input(), sink);
    return sink.files();
  }
};

using Row = std::vector<std::string>;

Listed& listed() {
  static Listed one(counter());
  return one;
}

// The row that begins with these fields; empty when there is none.
Row row(const CsvTable& table, const Row& first) {
  for (const Row& row : table)
    if (row.size() >= first.size() && std::equal(first.begin(), first.end(), row.begin())) return row;
  return {};
}

const std::string kPrices =
    "[prices.plywood-18]\nprice = 48.5\nper = \"sheet\"\ncurrency = \"EUR\"\n"
    "[prices.\"D40 46 x 90\"]\nprice = 6.2\nper = \"m\"\ncurrency = \"EUR\"\n"
    "[prices.birch-yellow]\nprice = 9\nper = \"sheet\"\ncurrency = \"EUR\"\n"
    "[prices.pvac-d3]\nprice = 12.4\nper = \"kg\"\ncurrency = \"EUR\"\n"
    "[prices.strap-50]\nprice = 15.25\nper = \"piece\"\ncurrency = \"CHF\"\n";

}  // namespace

TEST_CASE("blanks: exact girths beside the one length that all are cut to") {
  // (600 + 0.75) x 60 degrees + 30 = 659.10; covers 3 thick at 598.5 and 606: 656.75 and 664.60, cut to 665.
  CHECK(blanks_list(listed().supply) ==
        CsvTable{{"sheet", "stock", "thickness_mm", "face_grain", "exact_girth_mm", "cut_girth_mm",
                  "cut_width_mm", "one_panel", "all_panels"},
                 {"ply 1", "birch-yellow", "1.5", "along the girth", "659.1", "665", "400", "1", "4"},
                 {"ply 2", "birch-yellow", "1.5", "along the girth", "660.67", "665", "400", "1", "4"},
                 {"ply 3", "birch-yellow", "1.5", "along the girth", "662.25", "665", "400", "1", "4"},
                 {"cover", "cover sheet 3", "3", "-", "656.75", "665", "400", "1", "1"},
                 {"cover", "cover sheet 3", "3", "-", "664.6", "665", "400", "1", "1"}});
}

TEST_CASE("grain is told in words: along the girth, along the width, or its angle") {
  Listed one(counter("",
                     "plies = [{timber = \"birch-yellow\", thickness = 1}, {timber = \"birch-yellow\", "
                     "thickness = 1, grain = \"across\"}, {timber = \"birch-yellow\", thickness = 1, grain "
                     "= 45}, {timber = \"birch-yellow\", thickness = 1, grain = -90}]"));
  const CsvTable table = blanks_list(one.supply);
  CHECK(row(table, {"ply 1"}).at(3) == "along the girth");
  CHECK(row(table, {"ply 2"}).at(3) == "along the width");
  CHECK(row(table, {"ply 3"}).at(3) == "45 degrees from the girth");
  CHECK(row(table, {"ply 4"}).at(3) == "along the width");
}

TEST_CASE("timber: what is cut from each length, and its rest") {
  // Spacer blocks: (400 - 50) / 2 - 18 = 157; 6 x 157 + 6 kerfs of 4 = 966 of 2400. Beams 1188.3 long:
  // 3 x (1188.26 + 4) = 3576.8 of 3600.
  CHECK(timber_list(listed().supply) ==
        CsvTable{{"stock", "length_bought_mm", "pieces", "cut_to_mm", "rest_mm"},
                 {"D40 46 x 90", "3600", "3 beam", "3 x 1188.3", "23.2"},
                 {"D40 45 x 70", "2400", "6 spacer-block", "6 x 157", "1434"}});
}

TEST_CASE("sheets: what lies on each, by part") {
  const CsvTable table = sheets_list(listed().supply);
  REQUIRE(table.size() == 2);
  CHECK(table[0] == Row{"sheet", "board", "length_mm", "width_mm", "thickness_mm", "parts", "used_length_mm",
                        "yield_percent"});
  CHECK(Row(table[1].begin(), table[1].begin() + 6) ==
        Row{"1", "plywood-18", "2440", "1220", "18",
            "12 fixing-block-1, 6 fixing-block-2, 3 former-lower, 1 template-inner, 1 template-outer, 2 "
            "trim-cradle"});
  CHECK(table[1][6] == csv_length(listed().supply.sheets.at(0).used));
  CHECK(table[1][7] == csv_quantity(std::round(1000 * listed().supply.sheets.at(0).yield) / 10));
}

TEST_CASE("the cut list gives every unique part its count, stock, measures and bores, then the aids") {
  const CsvTable table = cut_list(listed().input());
  CHECK(table[0] == Row{"part", "kind", "count", "stock", "length_mm", "width_mm", "thickness_mm", "bores"});
  const PressPlan& plan = *listed().result.plan;
  std::size_t parts = 0;
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    const bool panel = plan.parts[i].kind() == PartKind::panel;
    const Row found = row(table, {plan.parts[i].name()});
    CHECK(found.empty() == panel);
    if (panel) continue;
    CHECK(found.at(2) == std::to_string(instances(plan, i)));
    ++parts;
  }
  CHECK(table.size() == 1 + parts + plan.aids.size());
  // Contact radius 600 - 3 - 28 = 569, carried on 40 past the bend: 569 + 80 cos 30 = 638.3 wide;
  // 569 - 569 cos 30 + 40 sin 30 + 100 = 196.2 high.
  CHECK(row(table, {"former-lower"}) ==
        Row{"former-lower", "former-lower", "3", "plywood-18 (18 thick)", "638.3", "196.2", "18", "8"});
  CHECK(row(table, {"beam"}) == Row{"beam", "beam", "3", "D40 46 x 90", "1188.3", "90", "46", "13"});
  CHECK(row(table, {"spacer-block"}) ==
        Row{"spacer-block", "spacer-block", "6", "D40 45 x 70", "157", "70", "45", "0"});
  // Chord 600, 600 - 520 cos 30 = 149.7; outside 604.5 + 80 and 684.5 - 604.5 cos 30 = 161.
  CHECK(row(table, {"template-inner"}) ==
        Row{"template-inner", "template", "1", "plywood-18 (18 thick)", "600", "149.7", "18", "0"});
  CHECK(row(table, {"template-outer"}) ==
        Row{"template-outer", "template", "1", "plywood-18 (18 thick)", "684.5", "161", "18", "0"});
  // 600 + 30 cos 30 = 626; 600 - 600 cos 30 + 15 sin 30 + 60 = 147.9.
  CHECK(row(table, {"trim-cradle"}) ==
        Row{"trim-cradle", "cradle", "2", "plywood-18 (18 thick)", "626", "147.9", "18", "0"});
}

TEST_CASE("slats: pieces of each run near to far, what is cut from what, joints, and what the stock lacks") {
  const CsvTable table = slats_list(*listed().result.plan);
  CHECK(table[0] ==
        Row{"caul", "run", "girth_from_mm", "girth_to_mm", "width_mm", "use", "pieces_mm", "joints_at_mm"});
  // Contact girth 569 x 60 degrees + 80 = 675.9; the datum slat lies about 337.9.
  CHECK(row(table, {"bed-caul", "8"}) ==
        Row{"bed-caul", "8", "315.4", "360.4", "45", "fixing", "200 + 200", "200"});
  CHECK(row(table, {"bed-caul", "7"}) ==
        Row{"bed-caul", "7", "265.4", "310.4", "45", "", "100 of 200 + 300", "100"});
  CHECK(row(table, {"bed-caul", "1"}) ==
        Row{"bed-caul", "1", "0", "25.4", "25.4", "through, fixing", "not in stock: one of 400", ""});
  CHECK(row(table, {"bed-caul", "15"}) ==
        Row{"bed-caul", "15", "650.4", "675.9", "25.4", "through, fixing", "not in stock: one of 400", ""});
  CHECK(row(table, {"top-caul", "1"}).at(5) == "through");
  const PressPlan& plan = *listed().result.plan;
  CHECK(table.size() == 1 + plan.cauls.at(0).schedule.runs.size() + plan.cauls.at(1).schedule.runs.size());
}

TEST_CASE("what is bought: boards, timber, slats, veneer and glue, for one panel and for four") {
  // Veneer: 3 x 0.665 x 0.4 = 0.798 m2. Glue: two lines of 150 g/m2 on about 0.4 x 0.66.
  CHECK(
      items_list(listed().supply.material) ==
      CsvTable{{"item", "use", "one_panel", "all_panels", "unit"},
               {"plywood-18", "sheets 2440 x 1220 for formers, blocks and templates", "1", "1", "sheet"},
               {"D40 46 x 90", "1 of 3600", "3.6", "3.6", "m"},
               {"D40 45 x 70", "1 of 2400", "2.4", "2.4", "m"},
               {"slat 45 x 28", "slats of the cauls, 300 long", "10", "10", "piece"},
               {"slat 45 x 28", "slats of the cauls, 200 long", "30", "30", "piece"},
               {"slat 45 x 28", "slats of the cauls, 400 long, not in the rack", "8", "8", "piece"},
               {"cover sheet 3", "plies, covers or sheathing 3 thick, boards 2440 x 1220", "1", "1", "sheet"},
               {"birch-yellow", "veneer 1.5, as cut; add for joints and flaws", "0.798", "3.192", "m2"},
               {"pvac-d3", "glue", "0.079", "0.317", "kg"}});
}

TEST_CASE("hardware: straps, screws, pins and clamps with what they are for") {
  const CsvTable table = items_list(listed().supply.hardware);
  CHECK(row(table, {"strap-50"}) == Row{"strap-50", "strap", "3", "3", "piece"});
  CHECK(row(table, {"ratchet for strap-50"}) ==
        Row{"ratchet for strap-50", "tightening, one at each end", "6", "6", "piece"});
  CHECK(row(table, {"screw 5 x 100"}) == Row{"screw 5 x 100", "beams to formers", "9", "9", "piece"});
  CHECK(row(table, {"steel pin of 4"}) == Row{"steel pin of 4", "locating pins", "2", "2", "piece"});
}

TEST_CASE("as many caul screws are listed as slats are bored for") {
  std::size_t bores = 0;
  const PressPlan& plan = *listed().result.plan;
  for (const Body& body : plan.bodies) bores += bores_for(plan.parts[body.part], BoreUse::caul_screw).size();
  int screws = 0;
  for (const Row& item : items_list(listed().supply.hardware))
    if (item[0] == "screw 4 x 58") screws += std::stoi(item[2]);
  CHECK(screws == int(bores));
  CHECK(row(items_list(listed().supply.hardware),
            {"screw 4 x 58", "second screw where two slats meet on a former, into the blocks beside it"})
            .size() == 5);
}

TEST_CASE("lengths are told to a tenth, quantities to a thousandth, without grouping or trailing zeros") {
  CHECK(csv_length(12345.678) == "12345.7");
  CHECK(csv_length(900) == "900");
  CHECK(csv_length(-0.01) == "0");
  CHECK(csv_quantity(0.0794) == "0.079");
  CHECK(csv_quantity(3.60000001) == "3.6");
}

TEST_CASE("each list is a file whose lines end with CR and LF and read back as the table") {
  const auto files = listed().files();
  const std::vector<std::pair<std::string, CsvTable>> wanted{
      {"cut-list", cut_list(listed().input())},      {"blanks", blanks_list(listed().supply)},
      {"timber", timber_list(listed().supply)},      {"sheets", sheets_list(listed().supply)},
      {"slats", slats_list(*listed().result.plan)},  {"hardware", items_list(listed().supply.hardware)},
      {"buy", items_list(listed().supply.material)}, {"quote", quote(listed().input())}};
  CHECK(files.size() == wanted.size());
  for (const auto& [name, table] : wanted) {
    CAPTURE(name);
    REQUIRE(files.count("lists/" + name + ".csv") == 1);
    const std::string& text = files.at("lists/" + name + ".csv");
    CHECK(text.ends_with("\r\n"));
    CHECK(std::count(text.begin(), text.end(), '\n') == std::ptrdiff_t(table.size()));
    CHECK(std::count(text.begin(), text.end(), '\r') == std::ptrdiff_t(table.size()));
    CsvTable back;
    for (const CsvRecord& record : read_csv(text, name)) back.push_back(record.fields);
    CHECK(back == table);
    for (const Row& fields : table) CHECK(fields.size() == table[0].size());
  }
}

TEST_CASE("a field with a comma or a quote is put in quotes, its quotes doubled") {
  Listed one(counter("data = \"own.toml\"\n",
                     "plies = [{timber = 'plain \"A\", fine', thickness = 1.5, count = 3}]"),
             MemorySources({{"own.toml", "[timbers.'plain \"A\", fine']\n" +
                                             kPlainTimber.substr(kPlainTimber.find('\n') + 1)}}));
  const auto files = one.files();
  CHECK(holds(files.at("lists/blanks.csv"), "\r\nply 1,\"plain \"\"A\"\", fine\",1.5,along the girth,"));
  CHECK(holds(files.at("lists/hardware.csv"),
              "\r\nratchet for strap-50,\"tightening, one at each end\",6,6,piece\r\n"));
}

TEST_CASE("a list without a row is no file") {
  Listed one(test::job_text("width = 370\nprofile = [{bend = 60, radius = 600}]", birch(3),
                            "[press]\nspringback = \"none\"\n[caul]\nkind = \"bare\"\n"));
  CHECK(one.files().count("lists/slats.csv") == 0);
  CHECK(one.files().count("lists/cut-list.csv") == 1);
}

TEST_CASE("the quote has a row for each thing that is bought, without prices no sum") {
  const CsvTable table = quote(listed().input());
  CHECK(table[0] == Row{"item", "use", "one_panel", "all_panels", "unit", "unit_price", "currency",
                        "amount_one_panel", "amount_all_panels", "remark"});
  CHECK(table.size() == 1 + listed().supply.material.size() + listed().supply.hardware.size());
  for (std::size_t i = 1; i < table.size(); ++i)
    CHECK(Row(table[i].begin() + 5, table[i].end()) == Row{"", "", "", "", "no price"});
}

TEST_CASE("prices of the workshop's data make amounts for one panel and for all, a sum for each currency") {
  Listed one(counter("data = \"own.toml\"\n"), MemorySources({{"own.toml", kPrices}}));
  const CsvTable table = quote(one.input());
  CHECK(row(table, {"plywood-18"}) == Row{"plywood-18",
                                          "sheets 2440 x 1220 for formers, blocks and templates", "1", "1",
                                          "sheet", "48.5", "EUR", "48.5", "48.5", ""});
  CHECK(row(table, {"D40 46 x 90"}) ==
        Row{"D40 46 x 90", "1 of 3600", "3.6", "3.6", "m", "6.2", "EUR", "22.32", "22.32", ""});
  CHECK(row(table, {"strap-50"}) ==
        Row{"strap-50", "strap", "3", "3", "piece", "15.25", "CHF", "45.75", "45.75", ""});
  // A price by the sheet says nothing about m2.
  const Row veneer = row(table, {"birch-yellow"});
  CHECK(Row(veneer.begin() + 5, veneer.end()) ==
        Row{"", "", "", "", "priced by the sheet, counted by the m2"});
  const Row pins = row(table, {"steel pin of 4"});
  CHECK(Row(pins.begin() + 5, pins.end()) == Row{"", "", "", "", "no price"});
  // Glue: 0.0792 kg x 12.4 = 0.98 for one panel, four times as much for all.
  REQUIRE(one.result.figures.glue);
  const double glue = 12.4 * one.result.figures.glue->mass, all = 12.4 * one.result.figures.glue->total_mass;
  const Row glued = row(table, {"pvac-d3"});
  CHECK(glued.at(7) == csv_quantity(std::round(100 * glue) / 100));
  CHECK(glued.at(8) == csv_quantity(std::round(100 * all) / 100));
  // Four have a price that fits. Sums by currency, in its order.
  const std::size_t things = one.supply.material.size() + one.supply.hardware.size();
  const std::string others = std::to_string(things - 4) + " without a price";
  REQUIRE(table.size() == 1 + things + 2);
  CHECK(table[1 + things] ==
        Row{"sum", "of the items with a price", "", "", "", "", "CHF", "45.75", "45.75", others});
  CHECK(table[2 + things] == Row{"sum", "of the items with a price", "", "", "", "", "EUR",
                                 csv_quantity(std::round(100 * (48.5 + 22.32 + glue)) / 100),
                                 csv_quantity(std::round(100 * (48.5 + 22.32 + all)) / 100), others});
}

TEST_CASE("where every thing has a price the sum says nothing of others") {
  std::map<std::string, std::string> units;  // one name may stand for several uses
  for (const auto* items : {&listed().supply.material, &listed().supply.hardware})
    for (const SupplyItem& item : *items) units[item.name] = item.unit;
  std::string prices;
  for (const auto& [name, unit] : units)
    prices += "[prices.\"" + name + "\"]\nprice = 1\nper = \"" + unit + "\"\n";
  Listed one(counter("data = \"own.toml\"\n"), MemorySources({{"own.toml", prices}}));
  const CsvTable table = quote(one.input());
  double all = 0;
  for (const auto* items : {&one.supply.material, &one.supply.hardware})
    for (const SupplyItem& item : *items) all += item.all;
  CHECK(table.back().at(0) == "sum");
  CHECK(table.back().at(1) == "");
  CHECK(table.back().at(8) == csv_quantity(std::round(100 * all) / 100));
  CHECK(table.back().at(9) == "");
}
