#!/usr/bin/env python3
"""Tests of the library from outside: the list of its public headers, their pages, and the README's example.

library.py BUILD [WORD...]
"""
import glob
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as xml

sys.dont_write_bytecode = True
ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
sys.path.insert(0, os.path.join(ROOT, "tests", "cli"))

import harness  # noqa: E402
from harness import test  # noqa: E402

# What the words of a page look like in the header that they come from.
HEADER = r'''// Things to measure. Of the file:
// both lines.
#pragma once

namespace lamwright {

// Stands alone.

// A thing; `b < c` and "a.b", 5 % of a#b, x@y, \alpha & <em>, --flag, ::global, sheets/<n>.svg.
struct Thing {
  double low = 0, high{1};  // mm, the
                            // ends
  int count = 0;            // of things
  // Above it.
  double across =
      0;  // and behind it
  // Of both.
  int left = 0, right = 0;
  enum class Kind { plain, odd };  // how it looks
  Kind kind;                       // as seen
  // A list.
  const char* list() const { return "one, two (three"; }
};

// One word an item.
enum class Size {
  small,  // below 1
  large   // from 1 on
};

}  // namespace lamwright
'''


def text_of(*names):
    with open(os.path.join(ROOT, *names), encoding="utf-8") as file:
        return file.read()


def public_headers():
    return text_of("shared", "public_headers.txt").split()


def doxygen(bench, **settings):
    """Runs doxygen as the build does, with other settings on top. Pages go to the test's folder."""
    with open(os.path.join(bench.program, "shared", "doxygen", "Doxyfile"), encoding="utf-8") as file:
        lines = file.read()
    settings.setdefault("OUTPUT_DIRECTORY", bench.path())
    lines += "".join('%s = "%s"\n' % item for item in settings.items())
    return subprocess.run(["doxygen", "-"], input=lines.encode(), stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                          cwd=bench.path(), timeout=60)


def words(node):
    return re.sub(r"\s+", " ", " ".join("".join(part.itertext()) for name in ("briefdescription", "detaileddescription")
                                        for part in node.findall(name))).strip()


def told(bench):
    """What the sample header tells, as {name: words}."""
    result = doxygen(bench, INPUT=bench.write("thing.hpp", HEADER), GENERATE_HTML="NO", GENERATE_XML="YES")
    assert result.returncode == 0, result.stdout.decode()
    found = {}
    for path in glob.glob(bench.path("xml", "*.xml")):
        for compound in xml.parse(path).getroot().findall("compounddef"):
            found[compound.findtext("compoundname")] = words(compound)
            for member in list(compound.iter("memberdef")) + list(compound.iter("enumvalue")):
                found[member.findtext("name")] = words(member)
    return found


@test
def pages_of_the_public_headers_come_without_a_warning(bench):
    result = doxygen(bench)
    assert result.returncode == 0 and not result.stdout, result.stdout.decode()
    headers = public_headers()
    types = 0
    for header in headers:
        page = os.path.basename(header).replace("_", "__").replace(".", "_8") + ".html"
        assert os.path.exists(bench.path(page)), "no page for " + header
        for kind, name in re.findall(r"^(struct|class) (\w+)[^;{]*\{", text_of(header), re.M):
            types += 1
            page = "%slamwright_1_1%s.html" % (kind, name)
            assert os.path.exists(bench.path(page)), "no page for %s of %s" % (name, header)
    assert len(headers) > 70 and types > 120, "%d headers, %d types" % (len(headers), types)


@test
def pages_name_no_folder_of_this_machine_and_no_day(bench):
    assert doxygen(bench).returncode == 0
    pages = glob.glob(bench.path("*.html"))
    for page in pages:
        with open(page, encoding="utf-8") as file:
            text = file.read()
        assert ROOT not in text and bench.folder not in text, page
        assert not re.search(r"Generated on |20\d\d-\d\d-\d\d \d\d:", text), page
    assert len(pages) > 200, len(pages)


@test
def a_member_without_words_is_a_warning_that_names_its_line(bench):
    bare = HEADER.replace("  Kind kind;                       // as seen\n", "  Kind kind;\n")
    line = bare[:bare.index("  Kind kind;")].count("\n") + 1
    result = doxygen(bench, INPUT=bench.write("thing.hpp", bare))
    said = result.stdout.decode()
    assert result.returncode != 0 and "thing.hpp:%d: " % line in said and "kind" in said, said
    assert said.count("not documented") == 1, said


@test
def plain_comments_reach_the_pages_as_they_are_written(bench):
    found = told(bench)
    assert found["lamwright::Thing"] == ('A thing; b < c and "a.b", 5 % of a#b, x@y, \\alpha & <em>, --flag, ::global, '
                                         'sheets/<n>.svg.'), found["lamwright::Thing"]
    assert found["thing.hpp"] == "Things to measure. Stands alone. Of the file: both lines.", found["thing.hpp"]


@test
def words_beside_several_names_and_on_several_lines_go_to_each_name(bench):
    wanted = {"low": "mm, the ends", "high": "mm, the ends", "count": "of things", "across": "Above it. and behind it",
              "left": "Of both.", "right": "Of both.", "Kind": "how it looks", "kind": "as seen", "list": "A list.",
              "Size": "One word an item.", "small": "below 1", "large": "from 1 on"}
    found = told(bench)
    assert {name: found.get(name) for name in wanted} == wanted, found


@test
def public_headers_are_there_once_and_include_nothing_but_one_another(bench):
    headers = public_headers()
    assert len(set(headers)) == len(headers) > 70
    includes = 0
    for header in headers:
        for mark, name in re.findall(r'^#include ([<"])([^>"]+)', text_of(header), re.M):
            includes += 1
            if mark == '"':
                assert name in headers, "%s includes %s, which is not public" % (header, name)
            else:
                assert re.fullmatch(r"[a-z_]+|Eigen/Core|nlohmann/json\.hpp", name), "%s includes %s" % (header, name)
    assert includes > 200, includes
    exporters = glob.glob(os.path.join(ROOT, "exporters", "*", "*_exporter.hpp"))
    missing = {os.path.relpath(path, ROOT) for path in exporters} - set(headers)
    assert exporters and not missing, missing


@test
def the_example_of_the_readme_is_the_one_that_is_compiled(bench):
    blocks = re.findall(r"^```cpp\n(.*?)^```$", text_of("README.md"), re.M | re.S)
    assert len(blocks) == 1, "%d blocks of C++" % len(blocks)
    shown, compiled = blocks[0].splitlines(), text_of("tests", "api", "readme_example.cpp").splitlines()
    for line, (a, b) in enumerate(zip(shown, compiled), 1):
        assert a == b, "line %d: the README says %r, compiled is %r" % (line, a, b)
    assert 10 < len(shown) == len(compiled) <= 20, "%d lines in the README, %d compiled" % (len(shown), len(compiled))


def example(bench, job):
    return subprocess.run([os.path.join(bench.program, "tests", "api", "readme_example")], input=job.encode(),
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=60)


@test
def the_example_of_the_readme_finds_and_writes_what_the_program_does(bench):
    job = text_of("fixtures", "jobs", "back-rest.toml")
    result = example(bench, job)
    assert result.returncode == 0, result.stderr.decode()
    lines = [line.split(" ") for line in result.stdout.decode().splitlines()]
    program = harness.Bench(os.path.join(bench.program, "cli", "lamwright"), bench.folder)
    built = program.build(job, "out", "--only", "svg", "--no-sheets", "--despite-fails")
    assert built.status == 0, built
    files = {name: data for name, data in harness.tree(program.path("out")).items() if name.endswith(".svg")}
    assert sorted(line for line in lines if line[0] in files) == sorted([n, str(len(d))] for n, d in files.items())
    checks = program.run("check", program.job(job), "--json")
    wanted = [[f["verdict"], f["id"]] for f in harness.json.loads(checks.text)["findings"]]
    found = [line for line in lines if line[0] not in files]
    assert sorted(found) == sorted(wanted) and len(found) > 20 and len(files) > 5, "%s\n%s" % (found, wanted)


@test
def the_example_of_the_readme_tells_what_is_wrong_with_a_job(bench):
    result = example(bench, "[panel]\nwidth = 1\n")
    assert result.returncode == 1 and not result.stdout
    assert result.stderr.decode().splitlines()[0] == (
        "job.toml:2:9: panel.width: read 1; allowed 10 to 10000 mm"), result.stderr.decode()


if __name__ == "__main__":
    sys.exit(harness.run_all(os.path.abspath(sys.argv[1]), sys.argv[2:], False))
