#include "kernel/panel/notebook.hpp"

#include "kernel/job/computed_share.hpp"
#include "kernel/panel/layup_key.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const std::string kSix = "6 x birch-yellow 1.5 along";
const std::string kHeader = "date,layup,glue,thickness,face,to_neutral,pressed,released,note\n";

// Radii of the neutral line itself; nothing for a piece that came out flat.
NotebookEntry piece(double pressed, std::optional<double> released, const std::string& layup = kSix,
                    const std::string& glue = "pvac-d3") {
  return {"", layup, glue, 9, Face::centre, 0, pressed, released, ""};
}

std::string refusal(const std::string& text) {
  return message_of([&] { read_notebook(text, "shop.csv"); });
}

Ply ply(const std::string& timber, double thickness, double grain_deg = 0) {
  Ply out;
  out.timber = timber;
  out.thickness = thickness;
  out.grain = radians(grain_deg);
  return out;
}

// A job of six plies of 1.5 whose springback is read from shop.csv.
std::string job_of(const std::string& layup = birch(6),
                   const std::string& springback = "{notebook = \"shop.csv\"}") {
  return job_text("width = 600\nprofile = [{bend = 40, radius = 600}]", layup,
                  "[press]\nspringback = " + springback + "\n");
}

Evaluation with_notebook(const std::string& rows, const std::string& job = job_of()) {
  return evaluated(job, MemorySources({{"shop.csv", kHeader + rows}}));
}

const std::string kRow = kSix + ",pvac-d3,9,centre,0,";

}  // namespace

TEST_CASE("Plies alike that lie on one another are one run of the lay-up's words") {
  CHECK(layup_key({ply("birch-yellow", 1.5), ply("birch-yellow", 1.5), ply("birch-yellow", 1.5)}, 0) ==
        "3 x birch-yellow 1.5 along");
  CHECK(layup_key({ply("oak", 0.6), ply("oak", 2), ply("oak", 2), ply("oak", 0.6)}, 0.1) ==
        "1 x oak 0.6 along + 2 x oak 2 along + 1 x oak 0.6 along + glue line 0.1");
  CHECK(layup_key({ply("oak", 2, 90), ply("oak", 2, -90), ply("oak", 2, 30), ply("oak", 2, -30)}, 0) ==
        "2 x oak 2 across + 1 x oak 2 30 degrees + 1 x oak 2 -30 degrees");
  CHECK(layup_key({ply("oak", 25.4 / 32), ply("oak", 0.79375), ply("ash", 25.4 * 3 / 32)}, 0) ==
        "2 x oak 0.79375 along + 1 x ash 2.38125 along");
}

TEST_CASE("Words of a lay-up are read back, other words are not") {
  int seen = 0;
  for (const std::string key :
       {"7 x birch-yellow 1.5 along", "1 x oak 0.6 along + 12 x my own ply x 2 1.25 across + glue line 0.1",
        "2 x oak 2 -30.5 degrees + 1 x oak 2 45 degrees"}) {
    const auto words = words_of_key(key);
    REQUIRE(words);
    CHECK(layup_key(*words) == key);
    ++seen;
  }
  CHECK(seen == 3);
  for (const std::string other :
       {"", "seven plies", "7 x birch-yellow along", "0 x oak 2 along", "7 x oak 2", "7 x 2 along",
        "oak 2 along", "glue line 0.1", "7 x oak 2 degrees", "7 x oak 2 along + more"}) {
    CAPTURE(other);
    CHECK(!words_of_key(other));
    ++seen;
  }
  CHECK(seen == 13);
}

TEST_CASE("Curvature is lost by the neutral line, whichever face was measured") {
  // Inner face 600 to 640, neutral line 4.5 further out: 1 - 604.5 / 644.5.
  const NotebookEntry inner{"", kSix, "pvac-d3", 9, Face::inner, 4.5, 600, 640, ""};
  CHECK(share_lost(inner) == within(0.062063615, 5e-10));
  const NotebookEntry outer{"", kSix, "pvac-d3", 9, Face::outer, -4.5, 609, 649, ""};
  CHECK(share_lost(outer) == within(share_lost(inner), 1e-15));
  CHECK(pressed_curvature(outer) == within(1 / 604.5, 1e-18));
  CHECK(released_curvature(outer) == within(1 / 644.5, 1e-18));
  CHECK(share_lost(piece(600, std::nullopt)) == 1);
  CHECK(released_curvature(piece(600, std::nullopt)) == 0);
  CHECK(share_lost(piece(640, 600)) == within(-40.0 / 600, 1e-15));
}

TEST_CASE("The share fits by least squares through the origin, the spread is of single pieces about it") {
  // Curvatures pressed 0.0025 and 0.00125, lost 0.0005 and 0.000625: single shares 0.2 and 0.5,
  // r = (0.0005 * 0.0025 + 0.000625 * 0.00125) / (0.0025^2 + 0.00125^2) = 2.03125 / 7.8125 = 0.26;
  // spread = sqrt((0.06^2 + 0.24^2) / 1) = sqrt(0.0612).
  const std::vector<NotebookEntry> pieces{piece(400, 500), piece(800, 1600)};
  const auto both = fit(pieces, kSix, "pvac-d3");
  REQUIRE(both);
  CHECK(both->pieces == 2);
  CHECK(both->share == within(0.26, 1e-15));
  REQUIRE(both->spread);
  CHECK(*both->spread == within(std::sqrt(0.0612), 1e-15));
  CHECK(fit_text(*both) == "2 pieces, share 0.26 +- 0.2474");
}

TEST_CASE("One piece is its own fit and has no spread") {
  const auto one = fit({piece(400, 500)}, kSix, "pvac-d3");
  REQUIRE(one);
  CHECK(one->share == within(0.2, 1e-15));
  CHECK(!one->spread);
  CHECK(fit_text(*one) == "1 piece, share 0.2");
}

TEST_CASE("Only pieces of one lay-up and glue are fitted together") {
  const std::vector<NotebookEntry> pieces{piece(400, 500), piece(400, 450, "5 x oak 2 along"),
                                          piece(400, 800, kSix, "urea"), piece(400, 500)};
  const auto all = fits(pieces);
  REQUIRE(all.size() == 3);
  CHECK(all[0].layup == kSix);
  CHECK(all[0].pieces == 2);
  CHECK(all[0].share == within(0.2, 1e-15));
  CHECK(all[1].layup == "5 x oak 2 along");
  CHECK(all[1].share == within(50.0 / 450, 1e-15));
  CHECK(all[2].glue == "urea");
  CHECK(all[2].share == within(0.5, 1e-15));
  CHECK(!fit(pieces, "5 x oak 2 along", "urea"));
  CHECK(fits({}).empty());
}

TEST_CASE("Pieces that all lose one share are fitted by it whatever their radii and faces") {
  property("the fit finds the share", [] {
    const double share = tenths(-30, 90) / 100;
    const int count = *rc::gen::inRange(1, 9);
    std::vector<NotebookEntry> pieces;
    for (int i = 0; i < count; ++i) {
      const double thickness = tenths(2, 40), height = thickness * tenths(0, 10) / 10,
                   neutral = tenths(100, 3000);
      const Face face = *rc::gen::element(Face::inner, Face::outer, Face::centre);
      const double depth = face == Face::inner ? 0 : face == Face::outer ? thickness : thickness / 2;
      const double to_neutral = height - depth;
      pieces.push_back({"", kSix, "pvac-d3", thickness, face, to_neutral, neutral - to_neutral,
                        neutral / (1 - share) - to_neutral, ""});
    }
    const auto found = fit(pieces, kSix, "pvac-d3");
    // In brackets of their own: the assertion looks at both sides of an operator, the left one first or not.
    RC_ASSERT((found && found->pieces == count));
    // Shares are differences of numbers near 1, from radii that carry 1e-16 of 4e4: below 1e-12.
    RC_ASSERT(std::abs(found->share - share) < 1e-12);
    RC_ASSERT(found->spread.has_value() == (count > 1));
    RC_ASSERT((!found->spread || *found->spread < 1e-12));
  });
}

TEST_CASE("A line that was written is read again, whatever the note holds") {
  property("entries survive", [] {
    const auto note = rc::gen::container<std::string>(rc::gen::elementOf(std::string("ab ,\"\r\n;'=\t")));
    const double thickness = tenths(1, 40);
    NotebookEntry entry{"2026-03-14", "2 x my \"own\", ply 1.5 along", "glue, brown",    thickness,
                        Face::outer,  -thickness * tenths(0, 10) / 10, tenths(50, 3000), std::nullopt,
                        *note};
    if (*rc::gen::arbitrary<bool>()) entry.released = tenths(50, 3000);
    const auto read = read_notebook(notebook_header() + "\n" + notebook_line(entry) + "\n", "shop.csv");
    RC_ASSERT(read.size() == 1u);
    const NotebookEntry& again = read.front();
    RC_ASSERT(again.date == entry.date && again.layup == entry.layup && again.glue == entry.glue);
    RC_ASSERT(again.face == entry.face && again.note == entry.note);
    RC_ASSERT(again.released.has_value() == entry.released.has_value());
    // Lengths are written to 1e-6.
    RC_ASSERT(std::abs(again.thickness - entry.thickness) < 1e-9);
    RC_ASSERT(std::abs(again.to_neutral - entry.to_neutral) < 5.1e-7);
    RC_ASSERT(std::abs(again.pressed - entry.pressed) < 1e-9);
    RC_ASSERT((!entry.released || std::abs(*again.released - *entry.released) < 1e-9));
  });
}

TEST_CASE("A notebook reads alike however a spreadsheet saved it") {
  const std::string row = "14/03/2026," + kRow + "600,640";
  int seen = 0;
  for (const std::string& text : {
           kHeader + row + ",\n",
           kHeader + row + ",",
           kHeader + row,                             // the empty note left out
           kHeader + "\n" + row + ",\n,,,,,,,,\n\n",  // empty rows
           "\xEF\xBB\xBF" + kHeader + row + ",\n",    // byte-order mark
           "date,layup,glue,thickness,face,to_neutral,pressed,released,note,,\r\n" + row + ",,,\r\n",
           "\"date\",\"layup\",\"glue\",\"thickness\",\"face\",\"to_neutral\",\"pressed\",\"released\","
           "\"note\"\n"
           "\"14/03/2026\",\"" +
               kSix + "\",\"pvac-d3\",\"9.000\",\"Centre\",\" 0\",\"600 \",640.00,\"\"\n",
       }) {
    CAPTURE(text);
    const auto entries = read_notebook(text, "shop.csv");
    REQUIRE(entries.size() == 1);
    const NotebookEntry& e = entries.front();
    CHECK(e.date == "14/03/2026");
    CHECK(e.layup == kSix);
    CHECK(e.glue == "pvac-d3");
    CHECK(e.thickness == 9);
    CHECK(e.face == Face::centre);
    CHECK(e.to_neutral == 0);
    CHECK(e.pressed == 600);
    CHECK(e.released == std::optional(640.0));
    CHECK(e.note.empty());
    ++seen;
  }
  CHECK(seen == 7);
  CHECK(read_notebook(kHeader, "shop.csv").empty());
  CHECK(!read_notebook(kHeader + "," + kRow + "600,Flat,\n", "shop.csv").front().released);
}

TEST_CASE("A wrong row is refused with its line, what was read and what is allowed") {
  struct Case {
    std::string row, message;
  };
  const std::string good = "," + kRow + "600,640,\"two\nlines\"\n";  // lines 2 and 3
  const std::vector<Case> cases{
      {"," + kRow + "\"600,5\",640,", "pressed: read \"600,5\"; write mm as a number with a decimal dot"},
      {"," + kRow + ",640,", "pressed: is empty; write mm as a number with a decimal dot"},
      {"," + kRow + "nan,640,", "pressed: read \"nan\"; write mm as a number with a decimal dot"},
      {"," + kRow + "4,640,", "pressed: read 4; allowed 5 to 100000 mm"},
      {"," + kRow + "600,straight,",
       "released: read \"straight\"; write mm as a number with a decimal dot, or flat"},
      {"," + kRow + "600,1e9,", "released: read 1000000000; allowed 5 to 100000 mm, or flat"},
      {"," + kRow + "600,-640,", "released: read -640; allowed 5 to 100000 mm, or flat"},
      {"," + kSix + ",pvac-d3,9,back,0,600,640,", "face: read \"back\"; allowed inner, outer or centre"},
      {"," + kSix + ",pvac-d3,0,centre,0,600,640,", "thickness: read 0; allowed 0.1 to 26000 mm"},
      {"," + kSix + ",pvac-d3,9,inner,-4.5,600,640,",
       "to_neutral: read -4.5; from the inner face of a piece of 9 allowed 0 to 9 mm"},
      {"," + kSix + ",pvac-d3,9,outer,4.5,600,640,",
       "to_neutral: read 4.5; from the outer face of a piece of 9 allowed -9 to 0 mm"},
      {"," + kSix + ",pvac-d3,9,centre,5,600,640,",
       "to_neutral: read 5; from the centre of a piece of 9 allowed -4.5 to 4.5 mm"},
      {"," + kSix + ",pvac-d3,9,outer,-4.5,8,640,", "pressed: read 8; allowed 9.1 to 100000 mm"},
      {",,pvac-d3,9,centre,0,600,640,", "layup: is empty; write it like 7 x birch-yellow 1.5 along"},
      {"," + kSix + ",,9,centre,0,600,640,", "glue: is empty; name the glue's row, as pvac-d3"},
      {"," + kSix + "\x1b[31m,pvac-d3,9,centre,0,600,640,",
       "layup: holds a control character; write it like 7 x birch-yellow 1.5 along"},
      {"," + kRow + "600,640,\x07", "note: holds a control character; use printable text"},
      {"," + kRow + "600,640,dry, cold",
       "goes on after the note with \" cold\"; put a note that holds commas in quotes"},
      {"600,640", "holds 2 fields; a row is date,layup,glue,thickness,face,to_neutral,pressed,released,note"},
  };
  std::size_t seen = 0;
  for (const Case& c : cases) {
    CAPTURE(c.row);
    const auto error = error_of([&] { read_notebook(kHeader + good + c.row + "\n", "shop.csv"); });
    REQUIRE(error);
    CHECK(error->kind() == ErrorKind::job);
    CHECK(std::string(error->what()) == "shop.csv:4: " + c.message);
    ++seen;
  }
  CHECK(seen == 19);
}

TEST_CASE("A file that does not begin with the header is no notebook") {
  const std::string begins =
      "; a notebook begins with the line date,layup,glue,thickness,face,to_neutral,pressed,released,note; "
      "name "
      "another file";
  CHECK(refusal("") == "shop.csv: is not a shop notebook: its first line is empty" + begins);
  CHECK(refusal("[panel]\nwidth = \"600\"\n") ==
        "shop.csv: is not a shop notebook: its first line reads \"[panel]\"" + begins);
  CHECK(refusal("DATE;LAYUP;GLUE\n") ==
        "shop.csv: is not a shop notebook: its first line reads \"DATE;LAYUP;GLUE\"; save it as CSV with "
        "commas "
        "between the fields");
  CHECK(refusal(std::string(59, 'x') + "ä and more\n") ==
        "shop.csv: is not a shop notebook: its first line reads \"" + std::string(59, 'x') + "...\"" +
            begins);
  int seen = 0;
  for (const std::string& text :
       {std::string(), std::string("a,b\n"), std::string("\0\0\n", 3), std::string("\"open"),
        std::string("\xFF\xFE"
                    "d\0a\0",
                    6),
        "layup," + kHeader}) {
    REQUIRE_ERROR(ErrorKind::file, read_notebook(text, "shop.csv"));
    ++seen;
  }
  CHECK(seen == 6);
}

TEST_CASE("Columns are computed for lay-ups whose rows are known") {
  const MemorySources none;
  CHECK(computed_share(kSix, none) == std::optional(within(1.0 / 36, 1e-15)));
  // Glue lines of 0.1 thicken six plies of 1.5 to 9.5: EI = E sum((to - z)^3 - (from - z)^3) / 3. Upper half,
  // about the middle: plies from 0.05, 1.65 and 3.25: (1.55^3 - 0.05^3 + 3.15^3 - 1.65^3 + 4.75^3 - 3.25^3) /
  // 3 = (3.72375 + 26.76375 + 72.84375) / 3; loose 3 * 1.5^3 / 12 of the same half: 0.84375 / 34.44375.
  const auto thick = computed_share(kSix + " + glue line 0.1", none);
  REQUIRE(thick);
  CHECK(*thick == within(0.84375 / 34.44375, 1e-12));
  CHECK(computed_share("1 x birch-yellow 1.5 along", none) == std::optional(within(1, 1e-15)));
  const auto plywood = computed_share("3 x plywood-4 4 along", none);
  REQUIRE(plywood);
  CHECK(*plywood > 0);
  CHECK(*plywood < 1);
  CHECK(!computed_share("6 x my-pear 1.5 along", none));
  CHECK(!computed_share("six plies of birch", none));
  CHECK(!computed_share("6 x birch-yellow 900 along", none));
}

TEST_CASE("The elastic rule tells the same of a lay-up's words as of the job that they come from") {
  int seen = 0;
  for (const std::string& layup :
       {birch(7),
        std::string("plies = [{timber = \"birch-yellow\", thickness = 0.6, grain = \"across\"}, {board = "
                    "\"plywood-4\", count = 2}, {timber = \"birch-yellow\", thickness = 0.6, grain = 30}]"),
        std::string(
            "glue_line = 0.25\nplies = [{timber = \"birch-yellow\", thickness = \"1/8 in\", count = 3}]")}) {
    const Evaluation result = evaluated(job_of(layup, "\"computed\""));
    CAPTURE(only_error(result));
    REQUIRE(result.panel);
    const std::string key = layup_key(result.panel->plies, result.panel->glue_line);
    CAPTURE(key);
    const auto share = computed_share(key, MemorySources());
    REQUIRE(share);
    CHECK(*share == within(result.panel->springback.share, 1e-15));
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("A job that names a notebook is pressed by the fit of its own lay-up and glue") {
  const Evaluation result =
      with_notebook("," + kRow + "400,500,\n,5 x oak 2 along,pvac-d3,9,centre,0,400,450,\n," + kRow +
                    "800,1600,\n," + kSix + ",urea,9,centre,0,400,410,\n");
  REQUIRE(result.panel);
  const Springback& springback = result.panel->springback;
  CHECK(springback.share == within(0.26, 1e-15));
  CHECK(springback.pieces == 2);
  REQUIRE(springback.spread);
  CHECK(*springback.spread == within(std::sqrt(0.0612), 1e-15));
  CHECK(springback.source == "shop notebook, 2 pieces, share 0.26 +- 0.2474");
  // The neutral line lies 4.5 outside the described face: released 604.5, pressed 604.5 * 0.74.
  CHECK(1 / result.panel->pressed.runs()[1].curvature == within(447.33, 1e-9));
}

TEST_CASE("Shares that no pieces stand behind have neither spread nor pieces") {
  int seen = 0;
  for (const std::string given :
       {"\"none\"", "\"computed\"", "0.03", "{form_radius = 600, part_radius = 640}"}) {
    const Evaluation result = evaluated(job_of(birch(6), given));
    REQUIRE(result.panel);
    CHECK(!result.panel->springback.spread);
    CHECK(result.panel->springback.pieces == 0);
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("A notebook without a job's lay-up is refused with the lay-ups that it has") {
  CHECK(only_error(with_notebook("")) ==
        "job.toml: press.springback: shop.csv has no piece of this lay-up (6 x birch-yellow 1.5 along, "
        "pvac-d3); it "
        "holds no piece; press a test piece and add it with lamwright notebook add");
  CHECK(only_error(with_notebook("," + kRow + "400,500,\n,5 x oak 2 along,urea,9,centre,0,400,450,\n",
                                 job_of(birch(7)))) ==
        "job.toml: press.springback: shop.csv has no piece of this lay-up (7 x birch-yellow 1.5 along, "
        "pvac-d3); it "
        "holds 6 x birch-yellow 1.5 along, pvac-d3; 5 x oak 2 along, urea; press a test piece and add it "
        "with lamwright "
        "notebook add");
  std::string many;
  for (int i = 1; i <= 14; ++i) many += "," + std::to_string(i) + " x oak 2 along,urea,9,centre,0,400,450,\n";
  const std::string message = only_error(with_notebook(many));
  CHECK(holds(message, "12 x oak 2 along, urea; and 2 more; press"));
}

TEST_CASE("What is wrong with a notebook is told as an error of the job that names it") {
  CHECK(only_error(evaluated(job_of())) == "shop.csv: cannot be read: no such file");
  CHECK(only_error(with_notebook("," + kRow + "4,640,\n")) ==
        "shop.csv:2: pressed: read 4; allowed 5 to 100000 mm");
  CHECK(only_error(
            evaluated(job_of(), MemorySources(std::map<std::string, std::string>{{"shop.csv", "a,b\n"}}))) ==
        "shop.csv: is not a shop notebook: its first line reads \"a,b\"; a notebook begins with the line "
        "date,layup,glue,thickness,face,to_neutral,pressed,released,note; name another file");
  CHECK(only_error(with_notebook("," + kRow + "400,flat,\n")) ==
        "job.toml: press.springback: a share of 1 leaves no curve; give a share below 1");
  CHECK(holds(only_error(with_notebook("", job_of(birch(6), "{notebook = \"\"}"))),
              "press.springback.notebook: names no file; give a file name in quotes, as \"springback.csv\""));
  CHECK(holds(only_error(with_notebook("", job_of(birch(6), "{notebook = \"shop.csv\", form_radius = 600}"))),
              "press.springback.notebook: is given beside a test piece; give notebook, or form_radius and "
              "part_radius"));
  // Other errors of the job are told beside it.
  CHECK(evaluated(job_of() + "[straps]\nexit = 90\n").errors.size() == 2);
}

TEST_CASE("A test piece asks nothing of a job but its lay-up, face and units") {
  const JobResult read = read_test_piece(
      "units = \"in\"\n[panel]\nface = \"outer\"\n[layup]\nplies = [{timber = \"birch-yellow\", thickness = "
      "\"1.5 mm\", count "
      "= 6}]\n[press]\nspringback = {notebook = \"absent.csv\"}\n[straps]\nexit = 90\n",
      "job.toml", MemorySources());
  REQUIRE(read.job);
  CHECK(read.job->units == LengthUnit::inch);
  CHECK(read.job->panel.face == Face::outer);
  CHECK(read.job->layup.plies.size() == 6);
  CHECK(read.job->press.springback.notebook == "absent.csv");
  CHECK(read.job->press.springback.kind == SpringbackSpec::Kind::none);
  const JobResult without = read_test_piece("[panel]\nwidth = 600\n", "job.toml", MemorySources());
  REQUIRE(without.errors.size() == 1);
  CHECK(holds(without.errors.front().what(), "layup.plies: is missing"));
}
