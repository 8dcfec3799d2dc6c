"""Folders and files: all or nothing, nothing foreign touched, the same bytes everywhere."""
import fcntl
import html
import json
import os
import re
import shutil
import signal
import subprocess
import xml.etree.ElementTree as ET

import oracle
from harness import Skip, differences, entries, limit_file_size, test, to_toml, tree
from jobs import changed, collapsing, failing_check, small

HOSTILE = "</svg>\"'../ä板"


@test
def byte_order_mark_and_line_ends_change_nothing(bench):
    text = to_toml(changed(small(), title="Türblatt"))
    outputs = []
    for name, content in (("lf", text.encode()), ("crlf", text.replace("\n", "\r\n").encode()), ("bom", b"\xef\xbb\xbf" + text.encode()),
                          ("both", b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())):
        result = bench.build(content, name, "--despite-fails", "--no-sheets")
        assert result.status == 0, (name, result)
        outputs.append(tree(bench.path(name)))
    assert "summary.json" in outputs[0]
    for other in outputs[1:]:
        assert not differences(outputs[0], other), differences(outputs[0], other)


@test
def a_hostile_title_harms_no_output(bench):
    for i, title in enumerate((HOSTILE, "]]><script>alert(1)</script>", "&amp; <b> %s %n {}", "a" * 200, "'; DROP", "=1+1", "😀")):
        out = "out%d" % i
        summary = bench.built(changed(small(), title=title), out)
        assert summary["title"] == title, (summary["title"], title)
        for name, content in tree(bench.path(out)).items():
            if name.endswith(".svg"):
                ET.fromstring(content)
            if name.endswith(".html") and "<" in title:
                assert title not in content.decode("utf-8"), "%s holds the title unescaped" % name
            if name.endswith((".step", ".dxf")):
                content.decode("ascii")
            if name.endswith(".dxf"):
                assert b"\x07" not in content
        assert all(re.fullmatch(r"[A-Za-z0-9._/-]+", name) for name in tree(bench.path(out)))
    assert not [e for e in entries(bench.folder) if "svg>" in e or "script" in e]


@test
def control_characters_in_a_title_are_refused(bench):
    # Neither XML nor a title block can hold them.
    for title in ("bell \x07", "escape \x1b[31m", "line\nbreak", "\x7f"):
        result = bench.build(changed(small(), title=title))
        assert result.status == 3 and "title" in result.errors and b"\x1b" not in result.err, result


@test
def a_title_is_read_back_from_drawings(bench):
    bench.built(changed(small(), title=HOSTILE))
    drawing = tree(bench.path("out"))["drawings/press.svg"]
    texts = "".join(ET.fromstring(drawing).itertext())
    assert HOSTILE in texts or HOSTILE.split("/")[0] in html.unescape(texts), "the title stands in the drawing"


@test
def folders_that_cannot_be_written_exit_5(bench):
    bench.write("plain", b"a file")
    for out in ("plain", "plain/out", "/proc/lamwright-test", "/proc/self/out", "/dev/null", "/dev/null/x"):
        result = bench.build(small(), out, "--despite-fails")
        assert result.status == 5, (out, result)
        assert len(result.errors.strip().splitlines()) == 1, (out, result)
    assert open(bench.path("plain"), "rb").read() == b"a file"
    long_name = bench.build(small(), "x" * 300, "--despite-fails")
    assert long_name.status == 5, long_name


@test
def an_unwritable_folder_is_found_before_the_work(bench):
    bench.write("plain", b"a file")
    result = bench.build(changed(small(), panel__width=6000, formers__spacing={"count": 80}), "plain/out", "--despite-fails")
    assert result.status == 5 and result.seconds < 5, result


@test
def missing_folders_are_created(bench):
    assert bench.build(small(), "a/b/c", "--despite-fails").status == 0
    assert os.path.isfile(bench.path("a/b/c/summary.json"))


@test
def a_trailing_slash_and_a_relative_folder_do(bench):
    job = bench.job(small())
    assert bench.run("build", job, "-o", "rel/out/", "--despite-fails").status == 0
    assert os.path.isfile(bench.path("rel/out/summary.json"))
    os.makedirs(bench.path("here"))
    assert bench.run("build", job, "-o", ".", "--despite-fails", cwd=bench.path("here")).status == 0
    assert os.path.isfile(bench.path("here/summary.json"))


@test
def an_empty_folder_is_used(bench):
    os.makedirs(bench.path("out"))
    bench.built(small())


@test
def failures_leave_old_results_and_nothing_new(bench):
    bench.built(small())
    old = tree(bench.path("out"))
    jobs = [("wrong", changed(small(), panel__widht=3), 3), ("collapse", collapsing(), 3), ("fails", failing_check(), 4)]
    for name, job, status in jobs:
        bench.job(job, name + ".toml")
        before = entries(bench.folder)
        for out in ("out", "fresh"):
            result = bench.run("build", bench.path(name + ".toml"), "-o", bench.path(out))
            assert result.status == status, (name, result)
            assert entries(bench.folder) == before, (name, entries(bench.folder))
        assert tree(bench.path("out")) == old


@test
def a_full_disk_exits_5_and_leaves_everything_as_it_was(bench):
    bench.built(small())
    old = tree(bench.path("out"))
    job = bench.job(changed(small(), title="Another"))
    before = entries(bench.folder)
    for size in (0, 300, 2000, 20000):
        for out in ("out", "fresh"):
            result = bench.run("build", job, "-o", bench.path(out), "--despite-fails", "--no-sheets",
                               prepare=limit_file_size(size), restore=False)
            assert result.status == 5, (size, out, result)
            assert entries(bench.folder) == before, (size, out, entries(bench.folder))
    assert tree(bench.path("out")) == old


@test
def killed_by_the_file_size_limit_the_old_results_stay(bench):
    bench.built(small())
    old = tree(bench.path("out"))
    job = bench.job(changed(small(), title="Another"))
    result = bench.run("build", job, "-o", bench.path("out"), "--despite-fails", prepare=limit_file_size(2000))
    assert result.status in (5, -signal.SIGXFSZ), result
    assert tree(bench.path("out")) == old


@test
def a_small_disk_exits_5(bench):
    mount = bench.path("disk")
    os.makedirs(mount)
    if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", mount], capture_output=True).returncode != 0:
        raise Skip("no tmpfs can be mounted here")
    try:
        result = bench.build(small(), "disk/out", "--despite-fails")
        assert result.status == 5, result
        assert entries(mount) == [], entries(mount)
    finally:
        subprocess.run(["umount", mount], check=False)


@test
def fewer_formers_leave_nothing_stale(bench):
    job = changed(small(), panel__width=1200)
    twelve, eight = changed(job, formers__spacing={"count": 12}), changed(job, formers__spacing={"count": 8})
    bench.built(twelve, "out")
    bench.built(eight, "out")
    bench.built(eight, "fresh")
    assert not differences(tree(bench.path("out")), tree(bench.path("fresh")))
    # A press with flats has more parts than one without.
    bench.built(oracle.W2, "mixed")
    bench.built(eight, "mixed")
    assert not differences(tree(bench.path("mixed")), tree(bench.path("fresh")))
    assert entries(bench.path("mixed")) == entries(bench.path("fresh")), "empty folders stay"


@test
def a_foreign_folder_is_refused_and_not_touched(bench):
    for name in ("photos/summer.jpg", "photos2/.hidden", "photos3/files.txt", "photos4/summary.json", "photos5/sub/deep.txt"):
        folder = name.split("/")[0]
        bench.write(name, b"mine")
        before = tree(bench.path(folder))
        result = bench.build(small(), folder, "--despite-fails")
        assert result.status == 5, (name, result)
        assert folder in result.errors, result
        assert tree(bench.path(folder)) == before, name


@test
def foreign_files_beside_our_own_are_kept(bench):
    bench.built(small())
    bench.write("out/notes.txt", b"mine")
    bench.write("out/parts/photo.jpg", b"mine too")
    bench.built(changed(small(), title="Second"))
    now = tree(bench.path("out"))
    assert now.get("notes.txt") == b"mine" and now.get("parts/photo.jpg") == b"mine too"
    assert json.loads(now["summary.json"])["title"] == "Second"


@test
def a_foreign_file_where_ours_would_go_is_not_overwritten_unseen(bench):
    bench.built(small())
    bench.write("out/parts/pressing-beam-1.step", b"mine")  # the next job would write this name
    result = bench.build(oracle.W2, "out", "--despite-fails")
    if result.status == 0:
        raise AssertionError("a foreign file was overwritten")
    assert result.status == 5 and tree(bench.path("out"))["parts/pressing-beam-1.step"] == b"mine", result


@test
def foreign_folders_and_links_are_kept(bench):
    bench.built(small())
    os.makedirs(bench.path("out", "mine", "empty"))
    os.makedirs(bench.path("out", "parts", "trials"))
    os.symlink("nowhere", bench.path("out", "mine", "link"))
    bench.write("out/mine/photo.jpg", b"mine")
    inode = os.stat(bench.path("out", "mine", "photo.jpg")).st_ino
    bench.built(changed(small(), title="Second"))
    assert os.path.isdir(bench.path("out", "mine", "empty")) and os.path.isdir(bench.path("out", "parts", "trials"))
    assert os.readlink(bench.path("out", "mine", "link")) == "nowhere"
    assert os.stat(bench.path("out", "mine", "photo.jpg")).st_ino == inode, "an open file would go on into nothing"


@test
def a_foreign_file_in_the_place_of_a_folder_of_ours_is_refused(bench):
    bench.built(small(), "out", "--only", "json", "--no-sheets")
    bench.write("out/parts", b"mine")
    before = tree(bench.path("out"))
    result = bench.build(small(), "out", "--despite-fails")
    assert result.status == 5 and "out/parts is not from an earlier build" in result.errors.replace(": is", " is"), result
    assert tree(bench.path("out")) == before


@test
def what_a_killed_build_left_is_cleared_by_the_next(bench):
    for place in ("out", "fresh"):
        if place == "out":
            bench.built(small())
        bench.write("." + place + ".lamwright-build/parts/half.step", b"half")
        bench.built(changed(small(), title="Next"), place)
        assert not os.path.exists(bench.path("." + place + ".lamwright-build"))
        assert "parts/half.step" not in tree(bench.path(place))


@test
def a_folder_that_another_build_writes_into_is_refused(bench):
    bench.built(small())
    os.makedirs(bench.path(".fresh.lamwright-build"))
    # Whoever holds the lock of the folder, or of the one beside it, is taken for another build.
    for place, locked in (("out", "out"), ("fresh", ".fresh.lamwright-build")):
        before = entries(bench.folder)
        handle = os.open(bench.path(locked), os.O_RDONLY)
        fcntl.flock(handle, fcntl.LOCK_EX)
        result = bench.build(small(), place, "--despite-fails")
        os.close(handle)
        assert result.status == 5, result
        assert result.errors == ("lamwright: %s: another build is writing there; wait until it is done, or name another "
                                 "folder with -o\n" % bench.path(place)), result
        assert entries(bench.folder) == before
        bench.built(small(), place)


@test
def of_many_builds_into_one_folder_one_at_a_time_succeeds(bench):
    jobs = [bench.job(changed(small(), title="Number %d" % i), "job%d.toml" % i) for i in range(8)]
    running = [bench.start("build", job, "-o", bench.path("out"), "--despite-fails", "--no-sheets") for job in jobs]
    statuses = [process.wait() for process in running]
    assert set(statuses) <= {0, 5} and 0 in statuses, statuses
    title = bench.summary()["title"]
    assert statuses[int(title.split()[1])] == 0, (title, statuses)
    bench.built(changed(small(), title=title), "alone", "--no-sheets")
    assert not differences(tree(bench.path("alone")), tree(bench.path("out")))
    assert not [name for name in os.listdir(bench.folder) if name.endswith(".lamwright-build")]


@test
def a_forged_list_of_files_deletes_nothing_outside(bench):
    bench.built(small())
    victim, inner = bench.write("victim.txt", b"mine"), bench.write("elsewhere/deep.txt", b"mine")
    with open(bench.path("out", "files.txt"), "a", encoding="utf-8") as file:
        file.write("../victim.txt\n%s\nparts/../../victim.txt\n../elsewhere/deep.txt\n..\n.\n/\n" % victim)
    result = bench.build(changed(small(), title="Second"), "out", "--despite-fails")
    assert result.status in (0, 5), result
    assert open(victim, "rb").read() == b"mine" and open(inner, "rb").read() == b"mine"


@test
def links_are_not_followed_out_of_the_folder(bench):
    bench.built(small())
    bench.write("elsewhere/former-lower.step", b"mine")
    shutil.rmtree(bench.path("out", "parts"))
    os.symlink(bench.path("elsewhere"), bench.path("out", "parts"))
    bench.build(changed(small(), title="Second"), "out", "--despite-fails")
    assert open(bench.path("elsewhere/former-lower.step"), "rb").read() == b"mine"


@test
def spaces_and_umlauts_in_paths_are_written_as_given(bench):
    job = bench.job(small(), "a dir ä/Auftrag 1 – Größe.toml")
    out = bench.path("a dir ä", "Ordner 1 板")
    for env in ({}, {"LANG": "C", "LC_ALL": "C"}, {"LC_ALL": "POSIX"}):
        result = bench.run("build", job, "-o", out, "--despite-fails", env=env)
        assert result.status == 0, (env, result)
        assert os.path.isfile(os.path.join(out, "summary.json"))
    assert sorted(os.listdir(bench.path("a dir ä"))) == sorted(["Auftrag 1 – Größe.toml", "Ordner 1 板"])
    missing = bench.run("check", bench.path("a dir ä", "fehlt.toml"))
    assert missing.status == 5 and "a dir ä" in missing.errors, missing


@test
def a_second_build_writes_the_same_bytes(bench):
    bench.built(oracle.W2, "a")
    before = tree(bench.path("a"))
    bench.built(oracle.W2, "a")
    assert not differences(before, tree(bench.path("a")))


@test
def files_do_not_depend_on_the_order_of_keys(bench):
    job = oracle.W2
    turned = {k: (dict(reversed(list(v.items()))) if isinstance(v, dict) else v) for k, v in reversed(list(job.items()))}
    a, b = bench.built(job, "a"), bench.built(turned, "b")
    for s in (a, b):
        s.pop("number", None)  # a short hash of the file
    assert a == b
