"""Options that choose what is written and on what; the quote; the lists as files."""
import csv
import io
import os
import re

import locales
from cases_supply import DEMOS, built, demo
from harness import test
from jobs import changed, small


@test
def only_the_exporters_named_write(bench):
    lists = built(bench, small(), "csv", "--only", "csv").files
    assert {os.path.dirname(name) for name in lists} == {"", "lists"}, sorted(lists)
    assert [name for name in lists if "/" not in name] == ["files.txt"], sorted(lists)
    assert {"lists/cut-list.csv", "lists/blanks.csv", "lists/timber.csv", "lists/sheets.csv", "lists/slats.csv",
            "lists/hardware.csv", "lists/buy.csv", "lists/quote.csv"} == set(lists) - {"files.txt"}
    flat = built(bench, small(), "flat", "--only", "dxf,svg").files
    assert {os.path.splitext(name)[1] for name in flat if name != "files.txt"} == {".dxf", ".svg"}, sorted(flat)
    for name in ("sheets/1.dxf", "sheets/1.svg", "parts/former-lower.dxf", "parts/former-lower.svg", "drawings/press.svg"):
        assert name in flat, (name, sorted(flat))
    for files in (lists, flat):
        assert set(files["files.txt"].decode().splitlines()) | {"files.txt"} >= set(files)
    asked = built(bench, changed(small(), outputs={"only": ["csv"]}), "asked").files
    assert set(asked) == set(lists)
    overruled = built(bench, changed(small(), outputs={"only": ["csv"]}), "overruled", "--only", "json").files
    assert set(overruled) == {"summary.json", "files.txt"}, sorted(overruled)


@test
def an_unknown_exporter_is_refused_with_those_that_there_are(bench):
    result = bench.build(small(), "out", "--only", "csv,cvs")
    assert result.status == 2 and not result.out, result
    assert "--only cvs is unknown: svg, dxf, csv, gltf, html, step, pdf or json" in result.errors, result
    empty = bench.build(small(), "out", "--only", ",")
    assert empty.status == 2 and "--only names nothing" in empty.errors, empty
    job = bench.build(changed(small(), outputs={"only": ["csv", "cvs"]}), "out")
    assert job.status == 3 and not job.out, job
    assert 'outputs.only: read "cvs"; known: svg, dxf, csv, gltf, html, step, pdf or json' in job.errors, job
    assert not os.path.exists(bench.path("out"))


@test
def wrong_values_of_options_are_refused_before_the_job_is_read(bench):
    seen = 0
    for option, value in (("--sheet", "100"), ("--sheet", "nonsense"), ("--sheet", "2440"), ("--sheet", "99x2440"), ("--sheet", "2440x99999"),
                          ("--sheet", "2440xx1220"), ("--cutter", "0"), ("--cutter", "31"), ("--cutter", "thin"), ("--paper", "a5"),
                          ("--dxf", "r13"), ("--step", "ap203"), ("--only", "tables")):
        result = bench.run("build", bench.path("absent.toml"), "-o", bench.path("out"), option, value)
        assert result.status == 2 and not result.out, (option, value, result)
        assert len(result.errors.strip().splitlines()) == 1 and option in result.errors, (option, value, result)
        seen += 1
    assert seen == 13
    assert not os.path.exists(bench.path("out"))


@test
def a_distance_that_a_cutter_cannot_keep_is_refused(bench):
    for spacing, accepted in ((4, False), (6, False), (6.4, False), (6.5, True)):
        result = bench.build(changed(small(), outputs={"spacing": spacing}), "out", "--despite-fails", "--only", "json")
        assert result.status == (0 if accepted else 3), (spacing, result)
        if not accepted:
            assert ("outputs.spacing: parts %s apart stay joined by less than a cutter of 6; give at least 6.5, the cutter and 0.5, "
                    "or a thinner outputs.cutter" % spacing) in result.errors, result


def paper(svg):
    width, height = (float(re.search(r'<svg[^>]* %s="([\d.]+)mm"' % side, svg).group(1)) for side in ("width", "height"))
    return tuple(sorted((width, height)))


@test
def drawings_go_on_a4_where_they_fit(bench):
    papers = {}
    for size in ("a3", "a4"):
        files = built(bench, small(), size, "--only", "svg", "--paper", size).files
        papers[size] = {name: paper(data.decode("utf-8")) for name, data in files.items() if name.startswith("drawings/")}
        assert len(papers[size]) >= 8, papers[size]
    # A contact edge whose figures would crowd a small sheet has one of its own.
    assert set(papers["a3"]) <= set(papers["a4"])
    assert set(papers["a3"].values()) <= {(297, 420), (420, 594), (594, 841)}, papers["a3"]
    for name in ("drawings/blanks.svg", "drawings/spacer-block.svg", "drawings/fixing-block-1.svg", "drawings/former-lower.svg"):
        assert papers["a4"][name] == (210, 297), papers["a4"]
    for name, found in papers["a4"].items():
        assert found == (210, 297) or found[0] >= 297, (name, found)


PRICES = """[prices.plywood-18]
price = 61.5
per = "sheet"
currency = "EUR"
[prices."D40 46 x 90"]
price = 7.25
per = "m"
currency = "EUR"
[prices.birch-yellow]
price = 4
per = "sheet"
currency = "EUR"
[prices.strap-50]
price = 19.9
per = "piece"
currency = "CHF"
"""


@test
def a_quote_is_made_with_the_workshops_own_prices(bench):
    data = bench.write("prices.toml", PRICES)
    job = built(bench, changed(small(), panel__count=3), "out", "--only", "csv", "--data", data)
    rows = job.table("quote")
    priced = {row["item"]: row for row in rows if row["unit_price"]}
    assert set(priced) == {"plywood-18", "D40 46 x 90", "strap-50"}, priced
    for name, price in (("plywood-18", 61.5), ("D40 46 x 90", 7.25), ("strap-50", 19.9)):
        row = priced[name]
        assert float(row["unit_price"]) == price, row
        for panels in ("one_panel", "all_panels"):
            assert abs(float(row["amount_" + panels]) - price * float(row[panels])) <= 0.005 + price * 0.0005, row
    veneer = [row for row in rows if row["item"] == "birch-yellow"]
    assert [row["remark"] for row in veneer] == ["priced by the sheet, counted by the m2"] and not veneer[0]["amount_all_panels"]
    sums = {row["currency"]: row for row in rows if row["item"] == "sum"}
    assert list(sums) == ["CHF", "EUR"], sums
    assert abs(float(sums["EUR"]["amount_all_panels"]) - sum(float(priced[n]["amount_all_panels"]) for n in ("plywood-18", "D40 46 x 90"))) <= 0.011
    assert sums["CHF"]["amount_all_panels"] == priced["strap-50"]["amount_all_panels"]
    without = sum(1 for row in rows if row["item"] != "sum" and not row["unit_price"])
    assert sums["EUR"]["remark"] == sums["CHF"]["remark"] == "%d without a price" % without
    assert {row["item"] for row in rows if row["item"] != "sum"} == {row["item"] for row in job.table("buy") + job.table("hardware")}
    plain = demo(bench, DEMOS[0]).table("quote")
    assert all(row["remark"] == "no price" for row in plain) and plain


@test
def lists_are_the_same_bytes_under_every_locale_and_time_zone(bench):
    data = bench.write("prices.toml", PRICES)
    worlds = [{}, locales.in_force("de_DE"), dict(locales.in_force("tr_TR"), TZ="Pacific/Kiritimati")]
    found = [built(bench, small(), "world-%d" % i, "--only", "csv,dxf,json", "--data", data, env=env).files for i, env in enumerate(worlds)]
    assert any(name.startswith("lists/") for name in found[0]) and "sheets/1.dxf" in found[0]
    for env, files in zip(worlds, found):
        assert files == found[0], (env, [name for name in files if files[name] != found[0].get(name)])


@test
def lists_are_csv_as_rfc_4180_has_it(bench):
    """Lines end with CR LF, every row has as many fields as the head line, no field is padded."""
    rows_seen = 0
    for name, data in demo(bench, DEMOS[0]).files.items():
        if not name.startswith("lists/"):
            continue
        text = data.decode("utf-8")
        assert text.endswith("\r\n") and text.count("\n") == text.count("\r\n"), name
        rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
        assert len(rows) > 1 and len({len(row) for row in rows}) == 1, name
        assert all(field == field.strip() for row in rows for field in row), name
        rows_seen += len(rows)
    assert rows_seen > 50, rows_seen
