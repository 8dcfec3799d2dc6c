#include "kernel/panel/trade.hpp"

#include <set>

#include "kernel/panel/trade_fields.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

TradeTables with_rows(const std::string& text) { return TradeTables().with(text, "rows.toml"); }

std::vector<std::string> faults_of(const std::string& text) {
  std::vector<Error> faults;
  (void)TradeTables().with(text, "rows.toml", faults);
  std::vector<std::string> messages;
  for (const Error& fault : faults) messages.push_back(fault.what());
  return messages;
}

// The only fault's message; a text that no fault has when there is not exactly one.
std::string fault_of(const std::string& text) {
  const auto faults = faults_of(text);
  return faults.size() == 1 ? faults.front() : "(" + std::to_string(faults.size()) + " faults)";
}

// A timber of the user with every field that one needs.
const std::string kPear =
    "[timbers.pear]\nE_along = 9000\nE_across = 700\nshear = 800\npoisson = 0.4\nstrength = 80\ndensity = "
    "690\n"
    "hardwood = true\nstructural_ratio = 100\n";

const std::string kJob =
    "[panel]\nwidth = 400\nprofile = [{bend = 60, radius = 500}]\n[layup]\nplies = [{timber = \"pear\", "
    "thickness = 1.5, count = 6}]\n";

using Files = std::map<std::string, std::string>;

std::string with_data(const std::string& data) { return "data = " + data + "\n" + kJob; }

}  // namespace

TEST_CASE("Every compiled-in row names its source and holds every field that its table needs, within range") {
  const TradeTables trade;
  CHECK(trade.table_names() == std::vector<std::string>{"bends", "boards", "cauls", "classes", "fasteners",
                                                        "glues", "prices", "straps", "timbers"});
  int rows = 0, figures = 0;
  for (const std::string& table : trade.table_names())
    for (const TradeRow& row : trade.table(table)) {
      CAPTURE(table, row.name);
      CHECK_FALSE(row.source.empty());
      CHECK_FALSE(row.label.empty());
      CHECK(row.label != row.name);
      CHECK(row.file.empty());
      for (const TradeField& field : trade_fields(table)) {
        CAPTURE(field.name);
        const auto value = row.find(field.name);
        const auto list = row.lists.find(field.name);
        const auto text = row.texts.find(field.name);
        const bool there = value || list != row.lists.end() || text != row.texts.end();
        CHECK((there || !field.required));
        if (value) {
          CHECK(*value >= field.least);
          CHECK(*value <= field.most);
        }
        if (list != row.lists.end()) {
          CHECK(list->second.size() >= field.fewest);
          CHECK(list->second.size() <= field.longest);
          for (const double item : list->second) {
            CHECK(item >= field.least);
            CHECK(item <= field.most);
          }
        }
        if (text != row.texts.end() && !field.choices.empty())
          CHECK(std::find(field.choices.begin(), field.choices.end(), text->second) != field.choices.end());
        figures += there;
      }
      CHECK(row.numbers.size() + row.texts.size() + row.lists.size() > 0);
      for (const auto& entry : row.numbers) CHECK(trade_field(table, entry.first) != nullptr);
      for (const auto& entry : row.texts) CHECK(trade_field(table, entry.first) != nullptr);
      for (const auto& entry : row.lists) CHECK(trade_field(table, entry.first) != nullptr);
      ++rows;
    }
  CHECK(rows == 21 + 18 + 16 + 7 + 7 + 5 + 4 + 4);
  CHECK(figures > 8 * rows);
}

TEST_CASE("Rows of one table have names of their own, and the order of their file") {
  const TradeTables trade;
  int rows = 0;
  for (const std::string& table : trade.table_names()) {
    const auto names = trade.row_names(table);
    CHECK(std::set<std::string>(names.begin(), names.end()).size() == names.size());
    rows += int(names.size());
  }
  CHECK(rows == 82);
  CHECK(trade.row_names("classes") ==
        std::vector<std::string>{"C24", "C30", "D30", "D40", "D50", "D60", "D70"});
  CHECK(trade.row_names("boards").front() == "plywood-4");
}

TEST_CASE("Veneers of a compiled-in board make up its thickness, and rows that it names exist") {
  const TradeTables trade;
  int veneered = 0, classed = 0;
  for (const TradeRow& board : trade.table("boards")) {
    const auto veneers = board.lists.find("veneers");
    if (veneers == board.lists.end()) continue;
    CAPTURE(board.name);
    double sum = 0;
    for (const double veneer : veneers->second) sum += veneer;
    CHECK(sum == within(board.number("thickness"), 1e-12));
    CHECK(veneers->second.size() % 2 == 1);  // both faces along
    CHECK(trade.find("timbers", board.texts.at("veneer_timber")) != nullptr);
    ++veneered;
  }
  for (const TradeRow& caul : trade.table("cauls"))
    if (const auto named = caul.texts.find("class"); named != caul.texts.end()) {
      CHECK(trade.find("classes", named->second) != nullptr);
      ++classed;
    }
  CHECK(veneered == 3);
  CHECK(classed == 5);
}

TEST_CASE("A caul follows a hollow until its slats touch") {
  // Slats of w at pitch p, t thick: on the closed side a gap shrinks from p - w to (p - w) - p t / R, which
  // is 0 at R = t p / (p - w).
  int cauls = 0;
  const TradeTables trade;
  for (const TradeRow& caul : trade.table("cauls")) {
    CAPTURE(caul.name);
    const double touching = caul.number("thickness") / (1 - caul.number("coverage"));
    // The coverage is written to 0.001.
    const double slack = touching * 0.0005 / (1 - caul.number("coverage"));
    CHECK(caul.number("least_hollow_radius") >= touching - slack);
    CHECK(caul.number("least_hollow_radius") <= 1.1 * touching);
    ++cauls;
  }
  CHECK(cauls == 5);
}

TEST_CASE("A new row stands after the program's, under its own name when it has no label") {
  const TradeTables own = with_rows(kPear);
  const TradeRow* pear = own.find("timbers", "pear");
  REQUIRE(pear != nullptr);
  CHECK(pear->number("E_along") == 9000);
  CHECK(pear->number("hardwood") == 1);
  CHECK(pear->label == "pear");
  CHECK(pear->source == "own data");
  CHECK(pear->file == "rows.toml");
  CHECK(own.row_names("timbers").back() == "pear");
  CHECK(TradeTables().find("timbers", "pear") == nullptr);
}

TEST_CASE("A row over one of the program's keeps the figures that it does not give") {
  const TradeTables own = with_rows("[straps.strap-50]\ntension = 3000\n");
  const TradeRow* strap = own.find("straps", "strap-50");
  REQUIRE(strap != nullptr);
  CHECK(strap->number("tension") == 3000);
  CHECK(strap->number("rating") == 25000);
  CHECK(strap->label == "Webbing strap 50 with ratchet");
  // The figures that it keeps are still from where they were.
  CHECK(strap->source == "own data; the rest: " + TradeTables().find("straps", "strap-50")->source);
  CHECK(own.row_names("straps") == TradeTables().row_names("straps"));

  const TradeTables twice = own.with(
      "[straps.strap-50]\nrating = \"2000 daN\"\nsource = \"label\"\nlabel = \"Yard strap\"\n", "more.toml");
  strap = twice.find("straps", "strap-50");
  CHECK(strap->number("tension") == 3000);
  CHECK(strap->number("rating") == 20000);
  CHECK(strap->label == "Yard strap");
  CHECK(strap->source ==
        "label; the rest: own data; the rest: " + TradeTables().find("straps", "strap-50")->source);
  CHECK(strap->file == "more.toml");
}

TEST_CASE("Figures may be texts with a unit") {
  // 3/8 in = 9.525 mm; a pound-force is 4.4482216152605 N.
  const TradeTables own = with_rows(
      "[boards.plywood-9]\nnominal = \"3/8 in\"\ncrush = \"6500 kPa\"\n[straps.strap-25]\ntension = \"200 "
      "lbf\"\n"
      "[glues.pvac-d3]\nspread = \"180 g/m2\"\n");
  CHECK(own.find("boards", "plywood-9")->number("nominal") == within(9.525, 1e-12));
  CHECK(own.find("boards", "plywood-9")->number("crush") == within(6.5, 1e-12));
  CHECK(own.find("straps", "strap-25")->number("tension") == within(889.6443230521, 1e-9));
  CHECK(own.find("glues", "pvac-d3")->number("spread") == 180);
}

TEST_CASE("A list of a row is read whole") {
  const TradeTables own = with_rows("[cauls.slatted-narrow-20]\nslats = [450, \"2 ft\"]\n");
  const std::vector<double>& slats = own.find("cauls", "slatted-narrow-20")->lists.at("slats");
  REQUIRE(slats.size() == 2);
  CHECK(slats[0] == 450);
  CHECK(slats[1] == within(609.6, 1e-9));
}

TEST_CASE("A field that no row of its table has is refused with the nearest one") {
  CHECK(fault_of("[timbers.birch-yellow]\nE_alnog = 14000\n") ==
        "rows.toml:2:11: timbers.birch-yellow.E_alnog: is not a field of the timbers table; did you mean "
        "\"E_along\"?");
  CHECK(fault_of("[fasteners.caul-screw]\ncolour = \"zinc\"\n") ==
        "rows.toml:2:10: fasteners.caul-screw.colour: is not a field of the fasteners table; known: label, "
        "diameter, "
        "length, yield and source");
}

TEST_CASE("A value of another kind is refused with what is allowed") {
  CHECK(fault_of("[timbers.birch-yellow]\nE_along = \"stiff\"\n") ==
        "rows.toml:2:11: timbers.birch-yellow.E_along: \"stiff\" is not a number with a unit; write it like "
        "\"0.7 MPa\", \"700 kPa\" or \"100 psi\"");
  CHECK(fault_of("[timbers.birch-yellow]\ndensity = \"heavy\"\n") ==
        "rows.toml:2:11: timbers.birch-yellow.density: read \"heavy\"; allowed 50 to 1500 kg/m3");
  CHECK(fault_of("[timbers.birch-yellow]\nhardwood = 1\n") ==
        "rows.toml:2:12: timbers.birch-yellow.hardwood: read 1; allowed true or false");
  CHECK(fault_of("[timbers.birch-yellow]\nsource = 5\n") ==
        "rows.toml:2:10: timbers.birch-yellow.source: read 5; allowed a text in quotes");
  CHECK(fault_of("[cauls.slatted-narrow-20]\nslats = 600\n") ==
        "rows.toml:2:9: cauls.slatted-narrow-20.slats: read 600; allowed a list of 1 to 12, each 50 to 20000 "
        "mm");
  CHECK(fault_of("[timbers.birch-yellow]\nE_along = true\n") ==
        "rows.toml:2:11: timbers.birch-yellow.E_along: read true; allowed 100 to 50000 MPa");
}

TEST_CASE("A figure out of range is refused with the range") {
  CHECK(fault_of("[timbers.birch-yellow]\nE_along = 15.29\n") ==
        "rows.toml:2:11: timbers.birch-yellow.E_along: read 15.29; allowed 100 to 50000 MPa");
  CHECK(fault_of("[timbers.birch-yellow]\npoisson = nan\n") ==
        "rows.toml:2:11: timbers.birch-yellow.poisson: read nan; allowed 0 to 0.9");
  CHECK(fault_of("[glues.epoxy]\nfaces = 1.5\n") ==
        "rows.toml:2:9: glues.epoxy.faces: read 1.5; allowed a whole number from 1 to 2");
  CHECK(fault_of("[boards.plywood-18]\nsheet = [2440]\n") ==
        "rows.toml:2:9: boards.plywood-18.sheet: has 1 items; allowed a list of 2, each 50 to 20000 mm");
  CHECK(fault_of("[boards.plywood-18]\nsheet = [2440, 5]\n") ==
        "rows.toml:2:16: boards.plywood-18.sheet[1]: read 5; allowed 50 to 20000 mm");
  CHECK(fault_of("[boards.plywood-18]\nkind = \"plywod\"\n") ==
        "rows.toml:2:8: boards.plywood-18.kind: read \"plywod\"; allowed plywood, bending-plywood, "
        "fibreboard or "
        "hardboard; did you mean \"plywood\"?");
}

TEST_CASE("A new row that lacks figures is refused with their names") {
  CHECK(fault_of("[straps.thin]\nwidth = 25\n") ==
        "rows.toml:1:1: straps.thin: lacks thickness, ratchet, rating, tension and roller; a new row of the "
        "straps "
        "table needs them");
  CHECK(fault_of("\n[fasteners.tack]\ndiameter = 2\n") ==
        "rows.toml:2:1: fasteners.tack: lacks length; a new row of the fasteners table needs it");
}

TEST_CASE("A new board that lacks a modulus is refused like any other row") {
  // The rule about its two moduli must not ask for one that is not there.
  CHECK(fault_of("[boards.cork]\nkind = \"fibreboard\"\nnominal = 6\nthickness = 6\nE_across = 30\nstrength "
                 "= 1\ncrush = 1\n"
                 "density = 200\nsheet = [900, 600]\nuses = 1\n") ==
        "rows.toml:1:1: boards.cork: lacks E_along; a new row of the boards table needs it");
}

TEST_CASE("Figures of one row that contradict each other are refused") {
  CHECK(fault_of("[glues.epoxy]\npressure_low = 0.5\n") ==
        "rows.toml:1:1: glues.epoxy: pressure_low 0.5 is more than pressure_high 0.35; mend one of them");
  CHECK(fault_of("[straps.strap-25]\ntension = 6000\n") ==
        "rows.toml:1:1: straps.strap-25: tension 6000 is more than rating 5000; mend one of them");
  CHECK(fault_of("[timbers.oak-white]\nE_along = 900\n") ==
        "rows.toml:1:1: timbers.oak-white: E_across 974.2 is more than E_along 900; mend one of them");
  CHECK(fault_of("[boards.bending-plywood-5]\nE_across = 5000\nE_along = 350\n") ==
        "rows.toml:1:1: boards.bending-plywood-5: E_across 5000 is more than ten times E_along 350; mend one "
        "of them");
  CHECK(fault_of("[boards.plywood-12]\nveneers = [4, 4, 4]\n") ==
        "rows.toml:1:1: boards.plywood-12: veneers are given without veneer_timber; mend one of them");
}

TEST_CASE("A row that names another is refused when there is none, wherever the other stands in the file") {
  CHECK(fault_of("[cauls.slatted-narrow-20]\nclass = \"D400\"\n") ==
        "rows.toml:1:1: cauls.slatted-narrow-20.class: read \"D400\", which is no row of the classes table; "
        "did you "
        "mean \"D40\"? known: C24, C30, D30, D40, D50, D60 and D70");
  CHECK(faults_of("[boards.plywood-4]\nveneer_timber = \"pear\"\n" + kPear).empty());
}

TEST_CASE("What is no trade table and no row is refused") {
  CHECK(fault_of("[timber.oak]\n") ==
        "rows.toml:1:1: timber: is not a trade table; did you mean \"timbers\"? tables are bends, boards, "
        "cauls, "
        "classes, fasteners, glues, prices, straps and timbers");
  CHECK(fault_of("timbers = 5\n") == "rows.toml:1:11: timbers: is not a table; write rows as [timbers.NAME]");
  CHECK(fault_of("[timbers]\npear = 5\n") ==
        "rows.toml:2:8: timbers.pear: is not a row; write [timbers.pear]");
  CHECK(fault_of("[timbers.\"a\\nb\"]\n") ==
        "rows.toml:1:1: timbers: has a row without a printable name; name it by printable text in one line");
  CHECK(fault_of("[straps.strap-50]\nsource = \"a\\tb\"\n") ==
        "rows.toml:2:10: straps.strap-50.source: holds a control character; use printable text in one line");
}

TEST_CASE("A row's name with a dot needs quotes, and the message says so") {
  CHECK(fault_of("[boards.plywood-6.5]\nthickness = 6.4\n") ==
        "rows.toml:1:1: boards.plywood-6.5: is a table within a row; a name with a dot is written in quotes: "
        "[boards.\"plywood-6.5\"]");
  CHECK(with_rows("[boards.\"plywood-6.5\"]\nthickness = 6.4\n")
            .find("boards", "plywood-6.5")
            ->number("thickness") == 6.4);
}

TEST_CASE("All faults of a file are told, in its order, and its sound rows are laid on top") {
  std::vector<Error> faults;
  const TradeTables own = TradeTables().with(
      "[timbers.oak-white]\nstrength = 0\ndensity = 0\n[straps.thin]\nwidth = 25\n[glues.epoxy]\nspread = "
      "280\n"
      "[shoes.brown]\n",
      "rows.toml", faults);
  REQUIRE(faults.size() == 4);
  CHECK(own.find("glues", "epoxy")->number("spread") == 280);
  CHECK(own.find("timbers", "oak-white")->number("density") == 762);
  CHECK(own.find("straps", "thin") == nullptr);
  CHECK_THROWS_WITH(TradeTables().with("[timbers.oak-white]\nstrength = 0\ndensity = 0\n", "rows.toml"),
                    "rows.toml:2:12: timbers.oak-white.strength: read 0; allowed 1 to 500 MPa");
}

TEST_CASE("A file that is no TOML is one error with its place, whatever editor wrote it") {
  CHECK(fault_of("[timbers.oak-white\n") ==
        "rows.toml:1:19: cannot be read: expected ']', saw '\\n'; correct this line");
  CHECK(fault_of(std::string("\xFF\xFE[\0", 4)) == "rows.toml: the file is UTF-16; save it as UTF-8");
  CHECK(fault_of("[timbers.oak-white]\nsource = \"\xC3\"\n") ==
        "rows.toml: byte 31 is not UTF-8; save it as UTF-8");
  CHECK(with_rows("\xEF\xBB\xBF[straps.strap-50]\r\ntension = 3000\r\n")
            .find("straps", "strap-50")
            ->number("tension") == 3000);
  CHECK(faults_of("").empty());
  CHECK(faults_of("# nothing yet\n[timbers]\n").empty());
}

TEST_CASE("A job names one file of trade rows, or several of which the last counts") {
  const MemorySources files(Files{{"a.toml", kPear}, {"b.toml", "[timbers.pear]\nE_along = 9500\n"}});
  const auto along = [&](const std::string& data) {
    const Evaluation result = evaluated(with_data(data), files);
    REQUIRE(result.job.has_value());
    return result.job->layup.plies.front().modulus;
  };
  CHECK(along("\"a.toml\"") == 9000);
  CHECK(along("[\"a.toml\", \"b.toml\"]") == 9500);
}

TEST_CASE("Rows given beside the job come on top of its own") {
  class Given : public MemorySources {
   public:
    using MemorySources::MemorySources;
    std::vector<DataText> data() const override {
      return {{"c.toml", "[timbers.pear]\nE_along = 9700\n"}, {"d.toml", "[timbers.pear]\nE_along = 9800\n"}};
    }
  };
  const JobResult read = read_job(with_data("\"a.toml\""), "job.toml", {}, Given(Files{{"a.toml", kPear}}));
  REQUIRE(read.job.has_value());
  CHECK(read.job->layup.plies.front().modulus == 9800);  // the last one given
}

TEST_CASE("Faults of a job's trade rows are told, and none that only follows from them") {
  const auto messages = [](const std::string& data, const MemorySources& files) {
    const JobResult read = read_job(with_data(data), "job.toml", {}, files);
    std::vector<std::string> out;
    for (const Error& error : read.errors) out.push_back(error.what());
    return out;
  };
  using Texts = std::vector<std::string>;
  CHECK(messages("\"a.toml\"", MemorySources(Files{{"a.toml", "[timbers.pear]\ndensity = 690\n"}})) ==
        Texts{"a.toml:1:1: timbers.pear: lacks E_along, E_across, shear, poisson, strength, hardwood and "
              "structural_ratio; a new row of the timbers table needs them"});
  CHECK(messages("\"gone.toml\"", MemorySources()) == Texts{"gone.toml: cannot be read: no such file"});
  const auto wrong = messages("[\"a.toml\", 5, \"\"]", MemorySources(Files{{"a.toml", kPear}}));
  CHECK(wrong == Texts{"job.toml:1:19: data[1]: read 5; give a file name in quotes, or a list of them",
                       "job.toml:1:22: data[2]: read \"\"; give a file name in quotes, or a list of them"});
}
