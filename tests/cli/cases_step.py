"""STEP files read by a few lines of our own, so that nothing of the writer's library is trusted.

Read: ISO 10303-21 exchange structure (clear text); ISO 10303-42 topology: a closed shell uses every edge twice."""
import math
import re

import oracle
from harness import test

ENTITY = re.compile(r"#(\d+)\s*=\s*([A-Z0-9_]*)\s*\((.*)\)$", re.S)


def entities(text):
    """{id: (type, arguments as text)} of a file's DATA section."""
    assert text.startswith("ISO-10303-21;") and text.rstrip().endswith("END-ISO-10303-21;")
    data = text[text.index("DATA;") + 5:text.rindex("ENDSEC;")]
    out = {}
    for statement in re.split(r";\s*(?=#|\s*$)", data):
        match = ENTITY.match(statement.strip())
        if match:
            assert int(match.group(1)) not in out, "two instances #" + match.group(1)
            out[int(match.group(1))] = (match.group(2), match.group(3))
    for _, arguments in out.values():
        missing = [ref for ref in references(re.sub(r"'(?:[^']|'')*'", "''", arguments)) if ref not in out]
        assert not missing, missing
    return out


def of_type(model, kind):
    return {key: arguments for key, (name, arguments) in model.items() if name == kind}


def references(arguments):
    return [int(ref) for ref in re.findall(r"#(\d+)", arguments)]


def point(model, key):
    numbers = re.findall(r"-?\d+\.?\d*(?:E[+-]?\d+)?", model[key][1].split("(", 1)[1])
    return tuple(float(n) for n in numbers)


def require_closed(model):
    """Every edge curve is used by exactly two faces, once each way round (a bound may turn its loop round)."""
    uses = {}
    bounds = list(of_type(model, "FACE_BOUND").values()) + list(of_type(model, "FACE_OUTER_BOUND").values())
    for bound in bounds:
        kept = bound.strip().endswith(".T.")
        for oriented in references(model[references(bound)[0]][1]):
            arguments = model[oriented][1]
            uses.setdefault(references(arguments)[-1], []).append(arguments.strip().endswith(".T.") == kept)
    assert uses, "no edges"
    assert set(uses) == set(of_type(model, "EDGE_CURVE"))
    for edge, senses in uses.items():
        assert sorted(senses) == [False, True], "edge %d is used %s" % (edge, senses)


def cylinders(model):
    """(point on the axis, direction, radius) of every cylindrical surface."""
    out = []
    for arguments in of_type(model, "CYLINDRICAL_SURFACE").values():
        placement = references(arguments)[0]
        origin, axis = references(model[placement][1])[:2]
        out.append((point(model, origin), point(model, axis), float(arguments.rsplit(",", 1)[1])))
    return out


def off_axis(at, axis, p):
    """Distance of p from the line through `at`: the cross product, since rounded axes are not quite unit."""
    x, y, z = (a - b for a, b in zip(p, at))
    u, v, w = axis
    return math.hypot(y * w - z * v, z * u - x * w, x * v - y * u)


@test
def parts_in_step_are_closed_and_bored_where_the_summary_says(bench):
    summary = bench.built(oracle.W2)
    bores = parts = 0
    for part in summary["parts"]:
        text = open(bench.path("out", "parts", part["name"] + ".step"), encoding="ascii").read()
        model = entities(text)
        assert len(of_type(model, "MANIFOLD_SOLID_BREP")) == 1, part["name"]
        require_closed(model)
        faces = len(of_type(model, "ADVANCED_FACE"))
        assert faces == len(of_type(model, "PLANE")) + len(of_type(model, "CYLINDRICAL_SURFACE")), part["name"]
        vertices = [point(model, references(a)[0]) for a in of_type(model, "VERTEX_POINT").values()]
        for axis in range(3):
            low = min(v[axis] for v in vertices)
            assert abs(low) < 1e-6 or part["kind"] in ("panel", "fixing-block"), (part["name"], axis, low)
        walls = cylinders(model)
        shift = part["origin"] + [0]
        for hole in part["holes"]:
            at = [a + s for a, s in zip(hole["at"], shift)]
            radii = [r for p, d, r in walls if abs(off_axis(at, hole["axis"], p)) < 1e-5 and abs(abs(sum(x * y for x, y in zip(d, hole["axis"]))) - 1) < 1e-6]
            wanted = [hole["diameter"] / 2] + ([hole["counterbore"]["diameter"] / 2] if "counterbore" in hole else [])
            for radius in wanted:
                assert any(abs(r - radius) < 1e-9 for r in radii), (part["name"], hole, radii)
            bores += 1
        parts += 1
    assert parts >= 6 and bores >= 20


@test
def the_assembly_holds_each_part_once_and_each_body_by_name(bench):
    summary = bench.built(oracle.W2)
    model = entities(open(bench.path("out", "press.step"), encoding="ascii").read())
    assert len(of_type(model, "MANIFOLD_SOLID_BREP")) == len(summary["parts"])
    require_closed(model)
    products = sorted(re.findall(r"'([^']*)'", a)[1] for a in of_type(model, "PRODUCT").values())
    assert products == sorted(["press"] + [p["name"] for p in summary["parts"]]), products
    names = [re.findall(r"'([^']*)'", a)[1] for a in of_type(model, "NEXT_ASSEMBLY_USAGE_OCCURRENCE").values()]
    assert len(names) == len(set(names)) == sum(p["count"] for p in summary["parts"])
    for part in summary["parts"]:
        assert sum(1 for n in names if re.fullmatch(re.escape(part["name"]) + r"-\d+", n)) == part["count"], part["name"]
    colours = of_type(model, "COLOUR_RGB")
    assert len(colours) >= 4


def relationship(model_text):
    """(representation, home, transformation) of every placement; those are complex instances."""
    pattern = (r"#(\d+) = \( REPRESENTATION_RELATIONSHIP\('','',#(\d+),#(\d+)\)\s*"
               r"REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION\(#(\d+)\)\s*SHAPE_REPRESENTATION_RELATIONSHIP\(\) \);")
    return {int(i): (int(a), int(b), int(t)) for i, a, b, t in re.findall(pattern, model_text)}


def one(values):
    assert len(values) == 1, values
    return values[0]


def require_placed_by_the_rules(text):
    """ISO 10303-43: the two representations of a placement stand in different contexts, and the items that the
    transformation joins are items of them. ISO 10303-44: each occurrence has one shape of its own, which one
    placement represents; products used and using are products of the file."""
    model = entities(text)
    placements = relationship(text)
    representations = {**of_type(model, "SHAPE_REPRESENTATION"), **of_type(model, "ADVANCED_BREP_SHAPE_REPRESENTATION")}
    items = {key: (set(references(a)[:-1]), references(a)[-1]) for key, a in representations.items()}
    shown = {references(a)[0]: references(a)[1] for a in of_type(model, "SHAPE_DEFINITION_REPRESENTATION").values()}
    shapes = {}
    for key, arguments in of_type(model, "PRODUCT_DEFINITION_SHAPE").items():
        shapes.setdefault(references(arguments)[0], []).append(key)
    shape_of = lambda definition: shown[one(shapes[definition])]
    dependent = {references(a)[1]: references(a)[0]
                 for a in of_type(model, "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION").values()}
    occurrences = of_type(model, "NEXT_ASSEMBLY_USAGE_OCCURRENCE")
    assert len(occurrences) == len(placements) == len(dependent) > 10
    ids = [arguments.split("'")[1] for arguments in occurrences.values()]
    assert ids == [str(i + 1) for i in range(len(ids))]
    for key, arguments in occurrences.items():
        using, used = references(arguments)
        representation, home, transformation = placements[dependent[one(shapes[key])]]
        assert (representation, home) == (shape_of(used), shape_of(using))
        assert items[representation][1] != items[home][1], "both in one context"
        origin, at = references(model[transformation][1])
        assert origin in items[representation][0] and at in items[home][0]
    return len(occurrences)


def require_products_told_apart(text):
    """ISO 10303-41: a product's id identifies it; its name need not."""
    ids = [arguments.split("'")[1] for arguments in of_type(entities(text), "PRODUCT").values()]
    assert len(ids) == len(set(ids)) > 5, ids


@test
def placements_in_step_keep_the_rules_of_the_standard(bench):
    summary = bench.built(oracle.W2)
    text = open(bench.path("out", "press.step"), encoding="ascii").read()
    assert require_placed_by_the_rules(text) == sum(part["count"] for part in summary["parts"])
    halves = {**oracle.W3, "press": {**oracle.W3["press"], "method": "two-part"}}
    summary = bench.built(halves, "halves", "--step", "ap242")
    require_products_told_apart(text)
    text = open(bench.path("halves", "press.step"), encoding="ascii").read()
    require_products_told_apart(text)
    assert require_placed_by_the_rules(text) == 3 + sum(part["count"] for part in summary["parts"])
