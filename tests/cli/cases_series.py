"""Several jobs and series of values: results side by side, all or nothing."""
import csv
import io
import json
import os

from harness import differences, entries, test, tree
from jobs import changed, collapsing, failing_check, small


def table(text):
    return list(csv.DictReader(io.StringIO(text)))


@test
def a_series_has_a_folder_and_a_row_for_each_run(bench):
    job = bench.job(small(), "front.toml")
    result = bench.run("build", job, "-o", bench.path("out"), "--despite-fails", "--no-sheets", "--only", "json,svg",
                       "--set", "panel.profile[0].radius=400:500:50", "--set", "layup.plies[0].count=5,7")
    assert result.status == 0, result
    with open(bench.path("out", "results.csv"), encoding="utf-8") as file:
        rows = table(file.read())
    assert [row["run"] for row in rows] == ["front-%d" % i for i in range(1, 7)]
    assert [row["panel.profile[0].radius"] for row in rows] == ["400", "400", "450", "450", "500", "500"]
    assert [row["layup.plies[0].count"] for row in rows] == ["5", "7"] * 3
    numbers = set()
    for row in rows:
        summary = bench.summary("out/" + row["run"])
        # The job describes the inner face: girth = 90 degrees of it; the share lost is 1/n^2 of the plies.
        assert float(row["thickness mm"]) == summary["panel"]["thickness"]
        assert float(row["girth neutral mm"]) == summary["panel"]["girth"]["neutral"]
        assert float(row["pressure least MPa"]) == summary["pressure"]["finished"]["least"]
        assert row["number"] == summary["number"] and row["exit status"] == "0"
        released = [run for run in summary["panel"]["released"]["runs"] if run["radius"]]
        assert abs(released[0]["radius"] - float(row["panel.profile[0].radius"])) < 1e-6
        assert all(os.path.isfile(bench.path("out", row["run"], name)) for part in summary["parts"] for name in part["files"])
        numbers.add(row["number"])
    assert len(numbers) == 6
    assert len([line for line in result.text.splitlines() if line.startswith("front-")]) == 6


@test
def a_run_of_a_series_is_the_job_with_its_value_built_alone(bench):
    job = bench.job(small(), "front.toml")
    bench.run("build", job, "-o", bench.path("series"), "--despite-fails", "--no-sheets", "--set", "panel.width=600,640")
    alone = bench.run("build", job, "-o", bench.path("alone"), "--despite-fails", "--no-sheets", "--set", "panel.width=640")
    assert alone.status == 0, alone
    assert not [name for name in differences(tree(bench.path("series", "front-2")), tree(bench.path("alone"))) if name != "files.txt"]
    assert bench.summary("alone")["panel"]["width"] == 640
    bench.run("build", bench.job(changed(small(), panel__width=640), "other.toml"), "-o", bench.path("written"), "--despite-fails",
              "--no-sheets", "--only", "step")
    assert len(tree(bench.path("written"))) > 3
    for name, content in tree(bench.path("written")).items():
        if name.startswith("parts/"):
            assert content == tree(bench.path("alone"))[name], name


@test
def several_jobs_go_on_past_those_that_fail(bench):
    jobs = [bench.job(small(), "good.toml"), bench.job(collapsing(), "collapse.toml"), bench.path("missing.toml"),
            bench.job(failing_check(), "fails.toml"), bench.job(changed(small(), title="Other"), "deep/good.toml")]
    result = bench.run("build", *jobs, "-o", bench.path("out"), "--no-sheets", "--only", "json")
    assert result.status == 3, result
    with open(bench.path("out", "results.csv"), encoding="utf-8") as file:
        rows = table(file.read())
    assert [(row["run"], row["exit status"], row["verdict"]) for row in rows][1:4] == [
        ("collapse", "3", "refused"), ("missing", "5", "refused"), ("fails", "4", "fail")], rows
    assert [row["run"] for row in rows if row["exit status"] == "0"] == ["good", "good-2"]
    assert sorted(os.listdir(bench.path("out"))) == ["files.txt", "good", "good-2", "results.csv"]
    assert bench.summary("out/good-2")["title"] == "Other"
    lines = result.errors.strip().splitlines()
    assert len(lines) == 2 and "collapse.toml: bend 1" in lines[0] and "missing.toml" in lines[1], result


@test
def a_series_that_is_stopped_or_refused_leaves_the_folder_as_it_was(bench):
    job = bench.job(small(), "front.toml")
    options = ("-o", bench.path("out"), "--despite-fails", "--no-sheets", "--only", "json")
    assert bench.run("build", job, *options, "--set", "panel.width=600:900:100").status == 0
    assert len(os.listdir(bench.path("out"))) == 6
    assert bench.run("build", job, *options, "--set", "panel.width=600,700").status == 0
    assert sorted(os.listdir(bench.path("out"))) == ["files.txt", "front-1", "front-2", "results.csv"], "no run of an earlier series stays"
    before = tree(bench.path("out"))
    bench.write("plain", b"")
    for wrong in (("--set", "panel.width"), ("--set", "=3"), ("--set", "panel.width="), ("--set", "panel.width=1,,2"),
                  ("--set", "panel.width=900:600:50"), ("--set", "panel.width=1:9:0"), ("--set", "panel.width=0:1e9:1"),
                  ("--set", "panel.width=600", "--set", "panel.width=700"), ("--figure", "panel"), ("--figure", "/panel/chord")):
        result = bench.run("build", job, *options, *wrong)
        assert result.status == 2 and len(result.errors.strip().splitlines()) == 1, (wrong, result)
        assert tree(bench.path("out")) == before
    many = bench.run("check", job, "--set", "panel.width=600:699:1", "--set", "panel.trim=0:101:1")
    assert many.status == 2 and "makes more than 10000 runs" in many.errors, many


@test
def check_tells_a_series_as_text_csv_and_json(bench):
    job = bench.job(small(), "front.toml")
    more = ("--set", "panel.trim=10:20:5", "--figure", "/press/stations", "--figure", "/panel/face", "--figure", "/no/such")
    text = bench.run("check", job, *more)
    assert text.status == 0 and [line.split()[:2] for line in text.text.splitlines()[1:]] == [
        ["front-1", "10"], ["front-2", "15"], ["front-3", "20"]], text
    rows = table(bench.run("check", job, *more, "--csv").text)
    assert [(row["panel.trim"], row["/press/stations"], row["/panel/face"], row["/no/such"]) for row in rows] == [
        (trim, "4", "inner", "") for trim in ("10", "15", "20")]
    assert "sheets" not in rows[0], "check nests nothing"
    runs = json.loads(bench.run("check", job, *more, "--json").text)["runs"]
    assert [run["set"]["panel.trim"] for run in runs] == ["10", "15", "20"] and all(run["findings"] for run in runs)
    one = table(bench.run("check", job, "--csv").text)
    assert len(one) == 1 and one[0]["run"] == "front"
    assert not [name for name in entries(bench.folder) if name != "front.toml"]


@test
def values_with_commas_and_quotes_are_one_value(bench):
    job = bench.job(small(), "front.toml")
    for value, title in (('"a, b"', "a, b"), ("'a, b'", "a, b"), ("plain words", "plain words"), ('"a \\" , b"', 'a " , b')):
        bench.run("build", job, "-o", bench.path("out"), "--despite-fails", "--only", "json", "--no-sheets", "--set", "title=" + value)
        assert bench.summary()["title"] == title, (value, bench.summary()["title"])
    result = bench.run("check", job, "--set", "beams.section=[46, 90],[60, 120]", "--csv")
    assert [row["beams.section"] for row in table(result.text)] == ["[46, 90]", "[60, 120]"], result


@test
def hostile_job_names_make_safe_folders(bench):
    jobs = [bench.job(small(), name) for name in ("..x.toml", "a\nb.toml", "a..b.toml", "Größe 板.toml", "-x.toml")]
    result = bench.run("build", "-o", bench.path("out"), "--despite-fails", "--only", "json", "--no-sheets", "--", *jobs)
    assert result.status == 0, result
    assert sorted(os.listdir(bench.path("out"))) == sorted(
        ["files.txt", "results.csv", "_.x", "a_b", "a._b", "Größe 板", "-x"]), os.listdir(bench.path("out"))


@test
def the_manual_page_and_the_completion_name_every_command_and_option(bench):
    page, script = bench.run("--manual").text, bench.run("--completion").text
    seen = 0
    for command in ("build", "check", "measure", "fit", "list", "start", "notebook add", "notebook show"):
        assert ".SS " + command + "\n" in page and '"%s")' % command in script, command
        words = bench.run(*command.split(), "--help").text.split()
        for option in [word for word in words if word.startswith("--")]:
            assert option.replace("-", "\\-") in page or option == "--help", (command, option)
            assert option in script, (command, option)
            seen += 1
    assert seen > 35, seen
    assert page == bench.run("--manual", env={"LC_ALL": "C", "COLUMNS": "40"}).text


@test
def bash_completes_commands_options_and_values(bench):
    import subprocess
    script = bench.write("completion", bench.run("--completion").text)
    bench.write("job one.toml", "")
    for words, expected in ((["lamwright", "not"], ["notebook"]), (["lamwright", "notebook", ""], ["add", "show"]),
                            (["lamwright", "build", "--paper", "a"], ["a3", "a4"]), (["lamwright", "build", "--desp"], ["--despite-fails"]),
                            (["lamwright", "check", "job"], ["job one.toml"]), (["lamwright", "start", "a"], ["arch"]),
                            (["lamwright", "list", "glu"], ["glues"]), (["lamwright", "notebook", "add", "--pre"], ["--pressed"])):
        shell = "compopt() { :; }; source %s; COMP_WORDS=(%s); COMP_CWORD=%d; _lamwright; printf '%%s\\n' \"${COMPREPLY[@]}\"" % (
            script, " ".join("'%s'" % word for word in words), len(words) - 1)
        got = subprocess.run(["bash", "-c", shell], capture_output=True, text=True, cwd=bench.folder, check=True)
        assert got.stdout.splitlines() == expected and not got.stderr, (words, got)
