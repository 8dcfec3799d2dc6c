"""What is installed, and how it is used from outside."""
import os

from harness import Bench, differences, test, tree
from installed import PROJECT, SETTINGS, built, consumer, counts, installed, made, output_of, prefix


@test
def the_program_its_modules_libraries_and_headers_are_installed_and_nothing_else(bench):
    found = sorted(tree(prefix()))
    for wanted in ("bin/lamwright", "lib/lamwright/lamwright-step.so", "lib/lamwright/lamwright-pdf.so",
                   "lib/liblamwright_kernel.a", "lib/cmake/lamwright/lamwrightConfig.cmake",
                   "include/lamwright/kernel/plugin/registry.hpp", "share/doc/lamwright/copyright",
                   "share/doc/liblamwright-dev/copyright"):
        assert wanted in found, (wanted, found)
    headers = [name for name in found if name.startswith("include/")]
    assert headers and all(name.startswith(("include/lamwright/shared/", "include/lamwright/kernel/",
                                            "include/lamwright/exporters/")) and name.endswith(".hpp")
                           for name in headers), headers
    others = [name for name in found if not name.startswith(("bin/lamwright", "lib/lamwright/", "lib/liblamwright_",
                                                             "lib/cmake/lamwright/", "include/lamwright/", "share/doc/",
                                                             "share/man/", "share/bash-completion/"))]
    assert not others, others


@test
def package_files_know_neither_where_they_were_made_nor_where_they_were_installed(bench):
    files = {name: text for name, text in tree(prefix()).items() if name.startswith("lib/cmake/")}
    assert len(files) >= 5, sorted(files)
    for name, text in files.items():
        for place in (PROJECT, SETTINGS["build"], SETTINGS["folder"]):
            assert place.encode() not in text, (name, place)


@test
def the_installed_program_writes_what_the_one_in_the_build_folder_writes(bench):
    inside, outside = built(bench, "inside"), built(installed(bench), "outside")
    assert "press.step" in inside and "drawings.pdf" in inside and "job-sheet.html" in inside
    assert not differences(inside, outside), differences(inside, outside)


@test
def a_link_to_the_installed_program_finds_the_modules_too(bench):
    link = bench.path("lamwright")
    os.symlink(os.path.join(prefix(), "bin", "lamwright"), link)
    assert "press.step" in built(Bench(link, bench.folder), "out")


@test
def a_press_method_and_an_exporter_of_ones_own_work_in_another_program(bench):
    assert counts(output_of(*made("own_parts"))) == 9


@test
def all_exporters_work_in_another_program(bench):
    assert counts(output_of(*made("all_exporters"))) == 9


@test
def every_public_header_compiles_alone(bench):
    made("headers_alone")
    with open(os.path.join(consumer(), "alone", "all.cpp"), encoding="utf-8") as file:
        assert len(file.readlines()) > 70
    assert len(os.listdir(os.path.join(consumer(), "alone"))) > 10
