"""Jobs that the black-box tests begin from."""
import copy
import math
import random

import oracle
from harness import Skip


def changed(job, **paths):
    """A copy with keys set: changed(job, panel__width=900); None takes a key away."""
    out = copy.deepcopy(job)
    for path, value in paths.items():
        *tables, key = path.split("__")
        table = out
        for name in tables:
            table = table.setdefault(name, {})
        if value is None:
            table.pop(key, None)
        else:
            table[key] = value
    return out


def small():
    """A job of four formers that builds quickly and passes its checks."""
    return {
        "title": "Reading-room desk front",
        "panel": {"width": 600, "profile": [{"bend": 90, "radius": 450}]},
        "layup": {"plies": [{"timber": "birch-yellow", "thickness": 1.5, "count": 7}]},
        "formers": {"spacing": {"count": 4}},
    }


def failing_check():
    """It can be built, but a check fails: the caul does not follow a radius below 500."""
    return changed(small(), caul={"kind": {"thickness": 28, "least_crown_radius": 500}})


def collapsing():
    """Caul and cover lie 38 inside a bend of 30."""
    return changed(small(), panel__profile=[{"line": 100}, {"bend": 60, "radius": 30}, {"line": 100}], press={"springback": "none"},
                   caul={"kind": {"thickness": 35}})


def random_job(seed):
    """A crown of one to five runs that a one-part press can hold: ends that fall, straps that go down."""
    rng = random.Random(seed)
    while True:
        runs, total = [], 0.0
        for _ in range(rng.randint(1, 5)):
            if runs and "bend" in runs[-1] and rng.random() < 0.5:
                runs.append({"line": round(rng.uniform(20, 300), 1)})
            else:
                runs.append({"bend": round(rng.uniform(8, 80), 1), "radius": round(rng.uniform(220, 1200), 1)})
                total += runs[-1]["bend"]
        plies = rng.randint(3, 10)
        job = {
            "title": "Random %d" % seed,
            "panel": {"width": round(rng.uniform(300, 1500), 1), "trim": rng.choice([0, 15, 30]),
                      "face": rng.choice(["inner", "outer", "centre"]), "profile": runs},
            "layup": {"glue_line": rng.choice([0, 0.1]), "cover": rng.choice([0, 3, 4.5]),
                      "plies": [{"timber": "birch-yellow", "thickness": rng.choice([0.9, 1.5, 2.0]), "count": plies}]},
            "press": {"method": "one-part",
                      "springback": rng.choice(["none", "computed", 0.03, -0.02, {"form_radius": 600, "part_radius": 640}])},
            "caul": {"kind": {"thickness": rng.choice([20, 28, 35.5])}, "liner": rng.choice([0, 2])},
            "formers": {"board": {"nominal": 18, "measured": rng.choice([17.6, 18, 18.3])},
                        "spacing": rng.choice([{"count": rng.randint(2, 5)}, 300, {"max_clear": 240}]),
                        "extend": rng.choice([15, 25, 40]), "min_depth": rng.choice([100, 120])},
            "straps": {"exit": rng.choice([20, 25, 30]), "tension": 2500},
        }
        if rng.random() < 0.3:
            job["beams"] = {"section": [60, 120]}
        if total < 20 or total > 150:
            continue
        try:
            got = oracle.solve(job)
        except ValueError:
            continue
        if got["heading"] < 80 and total - got["heading"] < 80 and max(s["run"] for s in got["straps"]) < 900 \
                and got["former"]["width"] > 200 and got["pitch"] > 70 and got["square"] is True:
            return job


def random_jobs(seed, count):
    return [(s, random_job(s)) for s in (seed * 1000 + i for i in range(count))]


def direction(angle):
    return math.cos(angle), math.sin(angle)
