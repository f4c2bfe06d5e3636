#!/usr/bin/env python3
"""chart-reference.py CHART DUMP [LABEL]: compares what GDAL reads of an S-57 chart with what ChartDump wrote of it.

One line for each object class that has a geometry: features in both, the farthest vertex from its twin in degrees, the
differences of extent (degrees) and area (share), attributes that differ. Ends with status 1 if anything does.
"""
import os
import sys
from collections import defaultdict

os.environ["OGR_S57_OPTIONS"] = ("UPDATES=APPLY,SPLIT_MULTIPOINT=ON,ADD_SOUNDG_DEPTH=ON,RETURN_PRIMITIVES=OFF,"
                                 "LNAM_REFS=OFF,LIST_AS_STRING=ON,RECODE_BY_DSSI=ON")
from osgeo import gdal, ogr  # noqa: E402

gdal.UseExceptions()
OWN_FIELDS = {"RCID", "PRIM", "GRUP", "OBJL", "RVER", "AGEN", "FIDN", "FIDS", "LNAM", "LNAM_REFS", "FFPT_RIND"}
TOLERANCE_DEG = 1e-7


def vertices(geometry):
    """All different vertices, so that joined and unjoined lines compare equal."""
    found = set()

    def walk(g):
        for i in range(g.GetPointCount()):
            found.add((g.GetX(i), g.GetY(i)))
        for i in range(g.GetGeometryCount()):
            walk(g.GetGeometryRef(i))
    walk(geometry)
    return sorted(found)


def vertex_difference(a, b):
    va, vb = vertices(a), vertices(b)
    if len(va) != len(vb):
        return float("inf")
    return max((max(abs(p[0] - q[0]), abs(p[1] - q[1])) for p, q in zip(va, vb)), default=0)


def attributes(feature):
    values = {}
    for i in range(feature.GetFieldCount()):
        name = feature.GetFieldDefnRef(i).GetName()
        if name not in OWN_FIELDS and feature.IsFieldSetAndNotNull(i) and feature.GetFieldAsString(i) != "":
            values[name] = feature.GetFieldAsString(i)
    return values


def same(a, b):
    if a == b:
        return True
    try:
        return float(a) == float(b)
    except (TypeError, ValueError):
        return False


def read_dump(path):
    classes, refused = defaultdict(list), {}
    with open(path, encoding="utf-8") as lines:
        for line in lines:
            parts = line.rstrip("\n").split("\t")
            if parts[0] == "refused":
                refused[parts[1]] = parts[2]
            elif parts[0] != "note":
                pairs = [p.split("=", 1) for p in parts[3].split("\x1d") if p]
                classes[parts[0]].append((int(parts[1]), ogr.CreateGeometryFromWkb(bytes.fromhex(parts[2])), dict(pairs)))
    return classes, refused


def main(chart, dump):
    ours, refused = read_dump(dump)
    source = ogr.Open(chart)
    wrong = 0
    print(f"{'class':8}{'GDAL':>7}{'ours':>7}{'vertex deg':>12}{'extent deg':>12}{'area share':>12}{'attributes':>11}")
    for i in range(source.GetLayerCount()):
        layer = source.GetLayer(i)
        theirs = [f for f in layer if f.GetGeometryRef() is not None]
        if not theirs:
            continue
        name = layer.GetName()
        mine = ours[name]
        by_id = {feature[0]: feature for feature in mine}
        soundings = name == "SOUNDG"
        vertex, area, area_total, differing, examples = 0.0, 0.0, 0.0, 0, []
        extents = [[180, 180, -180, -180], [180, 180, -180, -180]]
        for place, feature in enumerate(theirs):
            twin = (mine[place] if place < len(mine) else None) if soundings else by_id.get(feature.GetField("RCID"))
            if twin is None:
                vertex = float("inf")
                continue
            geometry = feature.GetGeometryRef()
            same_kind = geometry.GetDimension() == twin[1].GetDimension()
            vertex = max(vertex, vertex_difference(geometry, twin[1]) if same_kind else float("inf"))
            if geometry.GetDimension() == 2 and twin[1].GetDimension() == 2:
                area += abs(geometry.GetArea() - twin[1].GetArea())
                area_total += geometry.GetArea()
            for extent, g in zip(extents, (geometry, twin[1])):
                w, e, s, n = g.GetEnvelope()
                extent[:] = [min(extent[0], w), min(extent[1], s), max(extent[2], e), max(extent[3], n)]
            a, b = attributes(feature), {k: v for k, v in twin[2].items() if not k.endswith("_words")}
            for key in sorted(set(a) | set(b)):
                if not same(a.get(key), b.get(key)):
                    differing += 1
                    examples.append(f"{key} {a.get(key)!r} {b.get(key)!r}")
        extent = max(abs(p - q) for p, q in zip(*extents))
        share = area / area_total if area_total else area
        bad = len(theirs) != len(mine) or vertex > TOLERANCE_DEG or extent > TOLERANCE_DEG or share > 1e-9 or differing
        wrong += bool(bad)
        print(f"{name:8}{len(theirs):7d}{len(mine):7d}{vertex:12.1e}{extent:12.1e}{share:12.1e}{differing:11d}"
              + ("   DIFFERS " + (refused.get(name, "") or "; ".join(examples[:3])) if bad else ""))
    return 1 if wrong else 0


def classes(chart):
    source = ogr.Open(chart)
    print(" ".join(source.GetLayer(i).GetName() for i in range(source.GetLayerCount()) if source.GetLayer(i).GetName() != "DSID"))
    return 0


if __name__ == "__main__":
    sys.exit(classes(sys.argv[2]) if sys.argv[1] == "--classes" else main(sys.argv[1], sys.argv[2]))
