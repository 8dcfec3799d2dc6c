"""The press as binary glTF: its structure by a few lines of our own, its volumes against the summary, and an independent
reader, assimp (Debian: assimp-utils).

Read: Khronos glTF 2.0 specification, sections 3 (structure, geometry, materials, animations) and 4 (GLB)."""
import json
import os
import struct
import subprocess

import numpy

import locales
from harness import Skip, test, tree
from jobs import changed, small

FIXTURES = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "fixtures", "jobs")
# One mould, one with flats, one sheathed and flat, two moulds with loops, with pins, bare with liners.
DEMOS = ["reading-desk", "bench-end", "table-leaf", "seat-end", "lectern-side", "book-tray"]
TYPES = {5123: numpy.uint16, 5125: numpy.uint32, 5126: numpy.float32}
WIDTHS = {"SCALAR": 1, "VEC3": 3}
# A bore's wall in chords of at most 15 degrees: its cylinder less 1.1 per cent; bores are a small share of any part.
CLOSE = 0.005


def built(bench, job):
    result = bench.run("build", job, "-o", bench.path("out"), "--only", "json,gltf", "--no-sheets", "--despite-fails")
    assert result.status == 0, result
    return Glb(bench.path("out", "press.glb")), bench.summary()


def demo(bench, name):
    return built(bench, os.path.join(FIXTURES, name + ".toml"))


class Glb:
    """A file taken apart; whatever breaks the format's rules is an assertion."""

    def __init__(self, path):
        with open(path, "rb") as file:
            data = file.read()
        magic, version, length = struct.unpack_from("<4sII", data)
        assert (magic, version, length) == (b"glTF", 2, len(data))
        size, kind = struct.unpack_from("<I4s", data, 12)
        assert kind == b"JSON" and size % 4 == 0
        text = data[20:20 + size]
        assert text[:1] == b"{" and text.rstrip(b" ")[-1:] == b"}"
        self.json = json.loads(text.decode("utf-8"))
        size, kind = struct.unpack_from("<I4s", data, 20 + size)
        assert kind == b"BIN\0" and size % 4 == 0
        self.binary = data[-size:]
        assert 28 + len(text) + size == len(data)
        self.size = len(data)
        for name in ("scenes", "nodes", "meshes", "materials", "accessors", "bufferViews", "buffers"):
            assert self.json[name], "the format knows no empty lists"

    def array(self, index):
        accessor = self.json["accessors"][index]
        view = self.json["bufferViews"][accessor["bufferView"]]
        kind, width = TYPES[accessor["componentType"]], WIDTHS[accessor["type"]]
        start = view["byteOffset"] + accessor.get("byteOffset", 0)
        out = numpy.frombuffer(self.binary, kind, accessor["count"] * width, start)
        return out.reshape(-1, width) if width > 1 else out

    def target(self, index):
        return self.json["bufferViews"][self.json["accessors"][index]["bufferView"]].get("target")

    def pieces(self):
        """(kind's title, node's index, node) of every piece."""
        root = self.json["nodes"][self.json["scenes"][0]["nodes"][0]]
        for kind in root["children"]:
            for child in self.json["nodes"][kind]["children"]:
                yield self.json["nodes"][kind]["name"], child, self.json["nodes"][child]

    def faces(self, mesh):
        """(points, triangles) of a mesh."""
        primitive = self.json["meshes"][mesh]["primitives"][0]
        return (self.array(primitive["attributes"]["POSITION"]).astype(float),
                self.array(primitive["indices"]).reshape(-1, 3).astype(int))

    def volume(self, mesh):
        points, triangles = self.faces(mesh)
        return enclosed(points, triangles)

    def ways(self):
        """{node: how far it goes, mm}"""
        out = {}
        for animation in self.json.get("animations", []):
            for channel in animation["channels"]:
                track = self.array(animation["samplers"][channel["sampler"]]["output"])
                out[channel["target"]["node"]] = track[1] - track[0]
        return out


def enclosed(points, triangles):
    a, b, c = (points[triangles[:, i]] for i in range(3))
    return float(numpy.einsum("ij,ij->i", a, numpy.cross(b, c)).sum() / 6)


def transform(node):
    """4 x 4, from the node's matrix or its translation and rotation."""
    if "matrix" in node:
        assert not {"translation", "rotation", "scale"} & set(node)
        return numpy.array(node["matrix"], float).reshape(4, 4).T
    out = numpy.eye(4)
    if "rotation" in node:
        x, y, z, w = node["rotation"]
        assert abs(x * x + y * y + z * z + w * w - 1) < 1e-6
        out[:3, :3] = [[1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
                       [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
                       [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)]]
    out[:3, 3] = node.get("translation", [0, 0, 0])
    return out


def require_views(glb):
    assert [b["byteLength"] for b in glb.json["buffers"]] == [len(glb.binary)] and "uri" not in glb.json["buffers"][0]
    end = 0
    for view in glb.json["bufferViews"]:
        assert view["buffer"] == 0 and view["byteOffset"] % 4 == 0 and view["byteLength"] > 0
        assert end <= view["byteOffset"] < end + 4, "views overlap or leave a gap"
        end = view["byteOffset"] + view["byteLength"]
        assert view.get("target") in (None, 34962, 34963)
    assert len(glb.binary) - 4 < end <= len(glb.binary)


def require_accessors(glb):
    for index, accessor in enumerate(glb.json["accessors"]):
        view = glb.json["bufferViews"][accessor["bufferView"]]
        size = TYPES[accessor["componentType"]]().itemsize * WIDTHS[accessor["type"]] * accessor["count"]
        assert accessor.get("byteOffset", 0) + size <= view["byteLength"]
        values = glb.array(index)
        assert numpy.isfinite(values).all()
        if "min" in accessor:
            flat = values.reshape(len(values), -1)
            assert (numpy.float32(accessor["min"]) == flat.min(axis=0)).all(), "min is not what is stored"
            assert (numpy.float32(accessor["max"]) == flat.max(axis=0)).all(), "max is not what is stored"


def require_primitive(glb, primitive):
    accessors, positions = glb.json["accessors"], primitive["attributes"]["POSITION"]
    assert (accessors[positions]["type"], accessors[positions]["componentType"]) == ("VEC3", 5126)
    assert "min" in accessors[positions] and "max" in accessors[positions] and glb.target(positions) == 34962
    indices, points = glb.array(primitive["indices"]), glb.array(positions)
    assert glb.target(primitive["indices"]) == 34963 and indices.max() < len(points)
    assert indices.max() < numpy.iinfo(indices.dtype).max, "the greatest value is the format's own mark"
    assert primitive["mode"] in (1, 4) and len(indices) % {1: 2, 4: 3}[primitive["mode"]] == 0
    if primitive["mode"] == 1:
        return indices, points
    normals = glb.array(primitive["attributes"]["NORMAL"])
    assert glb.target(primitive["attributes"]["NORMAL"]) == 34962 and len(normals) == len(points)
    assert abs(numpy.linalg.norm(normals, axis=1) - 1).max() < 5e-4
    return indices, points


def require_closed(points, triangles):
    """Every edge is run along both ways equally often; places, not points, since sharp edges part the points."""
    places, of_point = numpy.unique(points, axis=0, return_inverse=True)
    corners = of_point.reshape(-1)[triangles].astype(numpy.int64)
    corners = corners[(corners[:, 0] != corners[:, 1]) & (corners[:, 1] != corners[:, 2]) & (corners[:, 2] != corners[:, 0])]
    edges = numpy.vstack((corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]))
    there = numpy.sort(edges[:, 0] * len(places) + edges[:, 1])
    back = numpy.sort(edges[:, 1] * len(places) + edges[:, 0])
    assert (there == back).all(), "the surface is open"


def require_outward(glb, mesh):
    """Normals lie on the side from which triangles run anticlockwise."""
    points, triangles = glb.faces(mesh)
    normals = glb.array(glb.json["meshes"][mesh]["primitives"][0]["attributes"]["NORMAL"]).astype(float)
    across = numpy.cross(points[triangles[:, 1]] - points[triangles[:, 0]], points[triangles[:, 2]] - points[triangles[:, 0]])
    area = numpy.linalg.norm(across, axis=1)
    big = area > 0.01  # mm2: slivers between stored points have no direction to speak of
    for corner in range(3):
        facing = numpy.einsum("ij,ij->i", across[big], normals[triangles[big, corner]]) / area[big]
        assert (facing > 0.5).all(), "a normal is turned by %.2f" % facing.min()


def require_meshes(glb):
    for index, mesh in enumerate(glb.json["meshes"]):
        faces, *lines = mesh["primitives"]
        assert faces["mode"] == 4 and [p["mode"] for p in lines] in ([], [1])
        for primitive in mesh["primitives"]:
            require_primitive(glb, primitive)
        edge_material = {p["material"] for p in lines}
        assert faces["material"] not in edge_material
        points, triangles = glb.faces(index)
        require_closed(points, triangles)
        require_outward(glb, index)


def require_materials(glb):
    for material in glb.json["materials"]:
        metal = material["pbrMetallicRoughness"]
        assert metal["metallicFactor"] == 0 and abs(metal["roughnessFactor"] - 0.9) < 0.05
        assert len(metal["baseColorFactor"]) == 4 and all(0 <= c <= 1 for c in metal["baseColorFactor"])
        assert material["doubleSided"] is False
    edges = [m for m in glb.json["materials"] if m["name"] == "Edges"]
    assert len(edges) == 1 and max(edges[0]["pbrMetallicRoughness"]["baseColorFactor"][:3]) < 0.05


def require_nodes(glb):
    """A tree below one root; what an animation moves has no matrix, and nothing else is animated."""
    seen = []

    def walk(index):
        assert index not in seen, "node %d has two parents" % index
        seen.append(index)
        for child in glb.json["nodes"][index].get("children", []):
            walk(child)

    (root,) = glb.json["scenes"][glb.json["scene"]]["nodes"]
    walk(root)
    assert sorted(seen) == list(range(len(glb.json["nodes"])))
    assert glb.json["nodes"][root]["name"] == "press"
    animated = set(glb.ways())
    for _, index, node in glb.pieces():
        assert ("matrix" in node) == (index not in animated)
        turn = transform(node)[:3, :3]
        assert abs(turn @ turn.T - numpy.eye(3)).max() < 1e-6 and numpy.linalg.det(turn) > 0
        assert set(node["extras"]) == {"part", "stock"}


def require_animation(glb):
    (animation,) = glb.json["animations"]
    assert animation["name"] == "opening"
    targets = [c["target"]["node"] for c in animation["channels"]]
    assert len(set(targets)) == len(targets) and {c["target"]["path"] for c in animation["channels"]} == {"translation"}
    for channel in animation["channels"]:
        sampler = animation["samplers"][channel["sampler"]]
        times, way = glb.array(sampler["input"]), glb.array(sampler["output"])
        assert list(times) == [0, 1] and way.shape == (2, 3) and sampler["interpolation"] == "LINEAR"
        assert "min" in glb.json["accessors"][sampler["input"]] and glb.target(sampler["input"]) is None
        shut = glb.json["nodes"][channel["target"]["node"]]["translation"]
        assert abs(way[0] - numpy.array(shut)).max() < 1e-3, "shut is where the node lies without an animation"


def box_of(glb):
    """Lowest and highest corner of the whole, metres, shut."""
    root = transform(glb.json["nodes"][glb.json["scenes"][0]["nodes"][0]])
    corners = []
    for _, _, node in glb.pieces():
        points, _ = glb.faces(node["mesh"])
        at = root @ transform(node)
        placed = points @ at[:3, :3].T + at[:3, 3]
        corners += [placed.min(axis=0), placed.max(axis=0)]
    return numpy.min(corners, axis=0), numpy.max(corners, axis=0)


def assimp(*args):
    try:
        done = subprocess.run(("assimp",) + args, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=300)
    except FileNotFoundError:
        raise Skip("assimp is not installed")
    text = done.stdout.decode("utf-8", "replace")
    assert done.returncode == 0 and "ERROR" not in text and "Failed" not in text, text
    return text


def obj_volume(path):
    points, triangles = [], []
    with open(path, encoding="utf-8") as file:
        for line in file:
            words = line.split()
            if words[:1] == ["v"]:
                points.append([float(w) for w in words[1:4]])
            elif words[:1] == ["f"] and len(words) == 4:
                triangles.append([int(w.split("/")[0]) - 1 for w in words[1:]])
    return enclosed(numpy.array(points), numpy.array(triangles))


@test
def a_glb_file_keeps_every_rule_of_the_format(bench):
    for name in DEMOS:
        glb, summary = demo(bench, name)
        assert glb.json["asset"]["version"] == "2.0" and "extensionsRequired" not in glb.json
        assert glb.json["scenes"][0]["name"] == summary["title"]
        for require in (require_views, require_accessors, require_meshes, require_materials, require_nodes, require_animation):
            try:
                require(glb)
            except AssertionError as fault:
                raise AssertionError("%s: %s: %s" % (name, require.__name__, fault))
        assert glb.size < 1_500_000, (name, glb.size)


@test
def a_glb_file_holds_each_part_as_often_and_as_large_as_the_summary_says(bench):
    seen = 0
    for name in DEMOS:
        glb, summary = demo(bench, name)
        count = {}
        for _, _, node in glb.pieces():
            count[node["extras"]["part"]] = count.get(node["extras"]["part"], 0) + 1
        mesh = {node["extras"]["part"]: node["mesh"] for _, _, node in glb.pieces()}
        for part in summary["parts"]:
            assert count.get(part["name"]) == part["count"], (name, part["name"], count.get(part["name"]))
            volume = glb.volume(mesh[part["name"]])
            assert abs(volume - part["volume"]) < CLOSE * part["volume"], (name, part["name"], volume, part["volume"])
            points, _ = glb.faces(mesh[part["name"]])
            size = points.max(axis=0) - points.min(axis=0)
            assert abs(size - numpy.array(part["size"])).max() < 0.2, (name, part["name"], size, part["size"])
            seen += 1
    assert seen > 60, seen


@test
def a_glb_file_stands_upright_in_metres_and_the_width_lies_along_z(bench):
    for name in DEMOS:
        glb, summary = demo(bench, name)
        low, high = box_of(glb)
        blank = max(summary["pressure"]["map"]["width"]) / 1000 if summary["pressure"]["map"] else summary["panel"]["width"] / 1000
        assert blank * 0.9 < (high - low)[2] < blank + 0.25, (name, low, high)
        assert 0.3 < (high - low)[0] < 3 and 0.2 < (high - low)[1] < 2, (name, low, high)
        assert low[1] < 0 < high[1], "beams lie under the base line"


@test
def a_press_of_two_moulds_opens_by_its_upper_half_and_one_mould_layer_by_layer(bench):
    glb, _ = demo(bench, "seat-end")
    ways = glb.ways()
    upper = {round(float(ways[index][1]), 3) for kind, index, node in glb.pieces() if node["name"].startswith("former-upper")}
    (stroke,) = upper
    moved = {kind: {round(float(ways.get(index, [0, 0, 0])[1]) / stroke, 3) for k, index, _ in glb.pieces() if k == kind}
             for kind, _, _ in glb.pieces()}
    assert stroke > 10 and moved["Panel"] == {0.5} and moved["Top caul"] == {1} and moved["Bed caul"] == {0}, moved
    assert moved["Beams"] == {0, 1} and moved["Straps"] == {0}, moved

    glb, _ = demo(bench, "reading-desk")
    ways = glb.ways()
    steps = {}
    for kind, index, node in glb.pieces():
        steps.setdefault(kind, set()).add(round(float(ways.get(index, [0, 0, 0])[1]), 2))
    (step,) = steps["Panel"]
    assert step >= 60, step
    lifted = {kind: sorted({round(y / step, 2) for y in found}) for kind, found in steps.items()}
    assert lifted == {"Beams": [0], "Formers": [0], "Blocks": [0], "Bed caul": [0], "Covers and sheathing": [0, 2], "Panel": [1],
                      "Top caul": [3], "Straps": [4], "Pressing beams": [5], "Pins": [3]}, lifted


@test
def a_glb_file_is_read_by_an_independent_reader_with_the_same_volume(bench):
    for name in DEMOS:
        glb, _ = demo(bench, name)
        path = bench.path("out", "press.glb")
        told = assimp("info", path)
        assert "Animations:         1" in told, told
        assimp("export", path, bench.path("press.obj"))
        ours = sum(glb.volume(node["mesh"]) for _, _, node in glb.pieces()) * 1e-9
        theirs = obj_volume(bench.path("press.obj"))
        assert abs(theirs - ours) < CLOSE * ours, (name, theirs, ours)


@test
def a_glb_file_is_the_same_in_every_run_and_locale(bench):
    job = changed(small(), title='Ständer "A" </b> 椅')
    for out, env in (("one", {}), ("two", dict(locales.in_force("de_DE"), TZ="Asia/Kolkata"))):
        result = bench.build(job, out, "--only", "gltf", "--despite-fails", env=env)
        assert result.status == 0, result
    one, two = tree(bench.path("one")), tree(bench.path("two"))
    assert one["press.glb"] == two["press.glb"]
    assert Glb(bench.path("one", "press.glb")).json["scenes"][0]["name"] == job["title"]
