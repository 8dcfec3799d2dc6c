"""A press method and an exporter in a library that the installed program loads."""
import os

from harness import test, tree
from installed import installed, made

JOB = """schema = 1
[panel]
width = 150
profile = [ {bend = 90, radius = 200} ]
[layup]
plies = [ {timber = "birch-yellow", thickness = 1.5, count = 6} ]
[press]
method = "stacked"
springback = "none"
stacked = {most_boards = 12}
[caul]
kind = "bare"
[formers]
board = {nominal = 18, measured = 18}
[outputs.markdown]
heading = "To saw"
"""


def library(name):
    return made(name)[0].replace(name, "lib%s.so" % name)


@test
def a_library_of_ones_own_is_listed(bench):
    program, plugin = installed(bench), library("plugin")
    methods = program.run("list", "methods", "--plugin", plugin)
    assert methods.status == 0 and "one solid mould of boards glued face to face" in methods.text, methods
    exporters = program.run("list", "exporters", "--plugin", plugin)
    assert exporters.status == 0 and "parts.md: the parts as a table" in exporters.text, exporters
    without = program.run("list", "methods")
    assert without.status == 0 and "stacked" not in without.text, without


@test
def a_job_is_checked_and_built_with_a_press_method_and_an_exporter_of_ones_own(bench):
    program, plugin = installed(bench), library("plugin")
    job = bench.job(JOB)
    checked = program.run("check", job, "--plugin", plugin)
    assert checked.status in (0, 4) and "bend" in checked.text.lower(), checked
    result = program.run("build", job, "-o", bench.path("out"), "--plugin", plugin, "--despite-fails")
    assert result.status == 0 and "stacked press, 10 formers" in result.text, result
    files = tree(bench.path("out"))
    # The same table as in the program that has both linked in: own_parts.cpp derives its figures.
    assert files["parts.md"].decode() == """# To saw

| part | count | size |
| --- | --- | --- |
| former-lower | 10 | 335.2 x 186 x 18 |
| bearer | 4 | 335.2 x 90 x 46 |
| panel | 1 | 317.5 x 78.7 x 180 |
""", files["parts.md"]
    assert bench.summary()["press"]["method"] == "stacked"
    assert "press.step" in files and "parts.md" in files["files.txt"].decode().split()


@test
def a_library_that_is_named_without_a_folder_is_looked_for_where_one_stands(bench):
    plugin = library("plugin")
    result = installed(bench).run("list", "methods", "--plugin", os.path.basename(plugin), cwd=os.path.dirname(plugin))
    assert result.status == 0 and "stacked" in result.text, result


@test
def an_exporter_of_ones_own_can_be_asked_for_alone(bench):
    program, plugin = installed(bench), library("plugin")
    result = program.run("build", bench.job(JOB), "-o", bench.path("out"), "--plugin", plugin, "--despite-fails",
                         "--only", "markdown")
    assert result.status == 0 and sorted(tree(bench.path("out"))) == ["files.txt", "parts.md"], result


@test
def what_a_press_method_of_ones_own_refuses_is_told_like_any_error_of_a_job(bench):
    program, plugin = installed(bench), library("plugin")
    job = bench.job(JOB.replace("most_boards = 12", "most_boards = 9"))
    result = program.run("build", job, "-o", bench.path("out"), "--plugin", plugin)
    assert result.status == 3 and result.errors == (
        "lamwright: %s: press.stacked.most_boards: the stack takes 10 boards, at most 9; take a thicker board, or raise it\n" % job), result
    assert not os.path.exists(bench.path("out"))


@test
def without_the_library_its_method_and_its_keys_are_unknown(bench):
    job = bench.job(JOB)
    result = installed(bench).run("check", job)
    assert result.status == 3 and "press.stacked" in result.errors and "outputs.markdown" in result.errors, result


@test
def a_library_for_another_interface_is_refused(bench):
    stale = library("stale_plugin")
    for command in (("list", "methods"), ("check", bench.job(JOB)), ("build", bench.job(JOB), "-o", bench.path("out"))):
        result = installed(bench).run(*command, "--plugin", stale)
        assert result.status == 5 and result.out == b"" and result.errors == (
            "lamwright: %s: was made for another plug-in interface than 5; build it again with this version of lamwright\n" % stale), result
    assert not os.path.exists(bench.path("out"))


@test
def what_is_no_library_for_the_program_is_refused(bench):
    other = library("no_plugin")
    result = installed(bench).run("list", "methods", "--plugin", other)
    assert result.status == 5 and result.errors == (
        "lamwright: %s: has no function lamwright_register; give a library that was made for lamwright\n" % other), result
    text = bench.write("notes.so", "no library\n")
    for path in (text, bench.path("missing.so")):
        result = installed(bench).run("list", "methods", "--plugin", path)
        assert result.status == 5 and result.errors.startswith("lamwright: %s: cannot be loaded: " % path) and \
            result.errors.endswith("; give a library for this program\n") and result.errors.count("\n") == 1, result


@test
def a_library_given_twice_is_refused(bench):
    plugin = library("plugin")
    result = installed(bench).run("list", "methods", "--plugin", plugin, "--plugin", plugin)
    assert result.status == 5 and result.errors.startswith("lamwright: %s: failed to register: " % plugin), result
