"""Jobs that are wrong: refused with status 3, the place, the key, what was read, what is allowed."""
import re

from harness import test, to_toml
from jobs import changed, small

# An error is found before any work: seconds, kB. A program with sanitizers takes many times of both.
LIMITS = {"seconds": 5.0, "memory": 400e3}


def refused(bench, job, *words):
    """The job exits 3 from check and build, quickly, with these words on stderr and nothing written."""
    result = bench.run("check", bench.job(job))
    assert result.status == 3, "%s\n%r" % (job if isinstance(job, str) else to_toml(job), result)
    assert not result.out, result
    assert result.seconds < LIMITS["seconds"] and result.rss < LIMITS["memory"], (result.seconds, result.rss)
    for word in words:
        assert word in result.errors, "%r is missing: %r" % (word, result)
    return result


def refused_value(bench, value, key, *words, **paths):
    """A raw TOML value put in place of the marker 12321."""
    text = to_toml(changed(small(), **paths))
    assert "12321" in text
    result = refused(bench, text.replace("12321", value), *words)
    line = next(i for i, row in enumerate(text.splitlines(), 1) if "12321" in row)
    assert re.search(r"job\.toml:%d(:|\b)" % line, result.errors), "line %d is not named: %r" % (line, result)
    if key:
        assert key in result.errors, "key %s is not named: %r" % (key, result)


def ply(**more):
    return [dict({"timber": "birch-yellow", "thickness": 1.5, "count": 7}, **more)]


@test
def an_unknown_key_is_refused_with_the_nearest(bench):
    text = to_toml(changed(small(), layup__plies=[{"timber": "birch-yellow", "thicknes": 1.5, "count": 7}]))
    line = next(i for i, row in enumerate(text.splitlines(), 1) if "thicknes" in row)
    result = refused(bench, text, "thicknes", "thickness")
    assert "job.toml:%d:" % line in result.errors, result
    refused(bench, changed(small(), panel__widht=600), "widht", "width")
    refused(bench, changed(small(), former={"spacing": 100}), "former", "formers")
    refused(bench, changed(small(), titel="x"), "titel", "title")
    refused(bench, changed(small(), press={"springbak": "none"}), "springbak", "springback")


@test
def a_misplaced_key_is_refused_with_its_line(bench):
    text = to_toml(changed(small(), panel__spacing=100))
    line = next(i for i, row in enumerate(text.splitlines(), 1) if row.startswith("spacing = 100"))
    refused(bench, text, "spacing", "job.toml:%d:" % line, "formers")


@test
def thicknesses_that_are_none_are_refused(bench):
    for value in ("nan", "inf", "-inf", "-18", "0", "0.05", "50.1", "1e9", "-0.0"):
        refused_value(bench, value, "thickness", "0.1", "50", layup__plies=ply(thickness=12321))
    refused_value(bench, "0x1p10", None, layup__plies=ply(thickness=12321))
    refused_value(bench, "\"nan\"", "thickness", layup__plies=ply(thickness=12321))
    refused_value(bench, "true", "thickness", layup__plies=ply(thickness=12321))
    refused_value(bench, "[1.5]", "thickness", layup__plies=ply(thickness=12321))


@test
def counts_without_end_are_refused_at_once(bench):
    for value in ("1e7", "10000000", "9223372036854775807", "-1", "0", "1", "2001", "3.5", "nan", "\"4\""):
        refused_value(bench, value, "count", formers__spacing={"count": 12321})
    for value in ("1e7", "10000000", "501", "0", "-1", "3.5", "inf"):
        refused_value(bench, value, "count", layup__plies=ply(count=12321))
    for value in ("0", "-3", "3.5", "1e300"):
        refused_value(bench, value, "count", panel__count=12321)


@test
def values_out_of_range_are_refused_with_what_is_allowed(bench):
    cases = [
        ("width", {"panel__width": 12321}, ("9.9", "10001", "-600", "nan", "1e300"), ("10", "10000")),
        ("radius", {"panel__profile": [{"bend": 60, "radius": 12321}]}, ("4.9", "100001", "-450", "0", "inf"), ("5", "100000")),
        ("line", {"panel__profile": [{"bend": 60, "radius": 450}, {"line": 12321}]}, ("0", "0.05", "20001", "-5"), ("0.1", "20000")),
        ("bend", {"panel__profile": [{"bend": 12321, "radius": 450}]}, ("0", "0.001", "356", "-400", "nan"), ("0.01", "355")),
        ("exit", {"straps": {"exit": 12321}}, ("19.9", "30.1", "-25", "nan"), ("20", "30")),
        ("trim", {"panel__trim": 12321}, ("-1", "nan"), ()),
        ("tension", {"straps": {"tension": 12321}}, ("-2500", "0", "nan", "\"2500 kg\""), ()),
        ("extend", {"formers__extend": 12321}, ("-1", "inf"), ()),
    ]
    seen = 0
    for key, paths, values, words in cases:
        for value in values:
            refused_value(bench, value, key, **paths)
            result = bench.run("check", bench.path("job.toml"))
            digits = re.sub(r"(?<=\d)[, '\u202f\u00a0](?=\d{3})", "", result.errors)
            for word in words:
                assert word in digits, "%s = %s: the allowed range is not given: %r" % (key, value, result)
            seen += 1
    assert seen == 31


@test
def a_decimal_comma_is_refused_with_advice(bench):
    refused_value(bench, "\"17,6\"", "measured", "dot", formers__board={"nominal": 18, "measured": 12321})
    refused_value(bench, "\"1,5 mm\"", "thickness", "dot", layup__plies=ply(thickness=12321))
    refused_value(bench, "17,6", None, formers__min_depth=12321)


@test
def a_negative_radius_is_refused(bench):
    refused_value(bench, "-380", "radius", "-380", panel__profile=[{"bend": 70, "radius": 12321}])


@test
def missing_keys_are_named(bench):
    refused(bench, changed(small(), panel__width=None), "width")
    refused(bench, changed(small(), panel__profile=None), "profile")
    refused(bench, changed(small(), layup=None), "plies")
    refused(bench, changed(small(), panel__profile=[{"bend": 60}]), "radius")
    refused(bench, changed(small(), panel__profile=[{"radius": 60}]), "bend")
    refused(bench, changed(small(), panel__profile=[]), "profile")
    refused(bench, changed(small(), layup__plies=[]), "plies")
    refused(bench, changed(small(), layup__plies=[{"timber": "birch-yellow"}]), "thickness")
    refused(bench, "", "panel")


@test
def unknown_rows_and_choices_are_refused_with_the_nearest(bench):
    refused(bench, changed(small(), layup__plies=ply(timber="birch-yelow")), "birch-yelow", "birch-yellow")
    refused(bench, changed(small(), layup__glue="pvac-d33"), "pvac-d33", "pvac-d3")
    refused(bench, changed(small(), caul={"kind": "slated-hardwood-28"}), "slatted-hardwood-28")
    refused(bench, changed(small(), panel__face="iner"), "iner", "inner")
    refused(bench, changed(small(), press={"method": "onepart"}), "onepart", "one-part")
    refused(bench, changed(small(), units="inches of water"), "units")


@test
def a_newer_schema_is_refused_with_its_number(bench):
    refused(bench, changed(small(), schema=2), "schema", "2")
    refused(bench, changed(small(), schema="1"), "schema")


@test
def several_panels_are_reserved(bench):
    text = to_toml(small()).replace("[panel]", "[[panel]]")
    refused(bench, text, "panel")


@test
def what_is_no_toml_is_refused_with_its_line(bench):
    good = to_toml(small())
    for broken in (good + "width = = 3\n", good + "[panel\n", good + "title = \"open\n", good + "title = \"twice\"\n[panel]\nwidth = 3\n"):
        result = refused(bench, broken)
        assert re.search(r"job\.toml:\d+:\d+", result.errors), result
    deep = refused(bench, "a = " + "[" * 100000)
    assert len(deep.err) < 10000, "the message repeats the file"
    refused(bench, "a = " + "{b=" * 100000)
    refused(bench, bytes(range(1, 256)) * 20)


@test
def encodings_other_than_utf8_are_refused_with_advice(bench):
    text = to_toml(changed(small(), title="Trennwand für Süd"))
    for encoding in ("utf-16-le", "utf-16-be", "utf-16", "utf-32"):
        refused(bench, text.encode(encoding), "UTF-8")
    refused(bench, text.encode("latin-1"), "UTF-8")
    refused(bench, text.replace("Trennwand", "Trenn\0wand").encode("utf-8"), "NUL")
    refused(bench, (text + "\0").encode("utf-8"), "NUL")
    refused(bench, text.replace("\n", "\r").encode("utf-8"))


@test
def several_errors_are_reported_in_one_go_up_to_twenty(bench):
    result = refused(bench, changed(small(), panel__widht=1, layup__plies=ply(thickness=-1), straps={"exit": 50}),
                     "widht", "thickness", "exit")
    assert len(result.errors.strip().splitlines()) >= 3, result
    many = refused(bench, changed(small(), panel=dict(small()["panel"], **{"odd%d" % i: i for i in range(60)})))
    assert 20 <= len(many.errors.strip().splitlines()) <= 22, many


@test
def hostile_keys_and_values_stay_on_one_line_of_the_message(bench):
    result = refused(bench, to_toml(small()) + "\"bad\\nkey\\u001b[31m\" = 1\n")
    assert len(result.errors.strip().splitlines()) == 1 and b"\x1b" not in result.err, result
    result = refused(bench, changed(small(), panel__face="in\nner\x1b[31m"))
    assert all(row.startswith("lamwright: ") for row in result.errors.splitlines()) and b"\x1b" not in result.err, result


@test
def errors_never_come_with_a_stack_trace_or_library_jargon(bench):
    for job in ("[", "a", changed(small(), panel__width="wide"), changed(small(), panel="flat")):
        result = refused(bench, job)
        for word in ("what()", "terminate", "std::", "Standard_", "toml::", "exception"):
            assert word not in result.errors, result


@test
def one_unbonded_ply_is_refused(bench):
    refused(bench, changed(small(), layup__plies=ply(count=1)), "ply")


@test
def a_curve_that_crosses_itself_is_refused(bench):
    result = refused(bench, changed(small(), panel__profile=[{"line": 900}, {"bend": 300, "radius": 150}, {"line": 900}]))
    assert result.errors.strip()
