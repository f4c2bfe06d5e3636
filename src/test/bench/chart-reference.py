#!/usr/bin/env python3
"""chart-reference.py CHART DUMP: compares what ChartDump wrote of an S-57 chart with what GDAL reads of it, and with the
GeoJSON files beside it that are named CHART_CLASS.geojson.

One line for each object class that has a geometry: features in both, the farthest vertex from its twin in degrees, the
differences of extent (degrees) and area (share), how many attributes were compared and how many differ. Ends with status 1
if anything does.

chart-reference.py --classes CHART: the object classes that GDAL finds.
"""
import glob
import os
import sys
from collections import defaultdict

os.environ["OGR_S57_OPTIONS"] = ("UPDATES=APPLY,SPLIT_MULTIPOINT=ON,ADD_SOUNDG_DEPTH=ON,RETURN_PRIMITIVES=OFF,"
                                 "LNAM_REFS=OFF,LIST_AS_STRING=ON,RECODE_BY_DSSI=ON")
from osgeo import gdal, ogr  # noqa: E402

gdal.UseExceptions()
OF_RECORD = {"RCID", "PRIM", "GRUP", "OBJL", "RVER", "AGEN", "FIDN", "FIDS", "LNAM", "LNAM_REFS", "FFPT_RIND"}
TOLERANCE_DEG = 5e-8
TOLERANCE_AREA = 1e-9
# GeoJSON has seven decimals, which shifts a vertex by half of the last.
TOLERANCE_AREA_ROUNDED = 1e-5


def vertices(geometry):
    """All different vertices, so that joined and unjoined lines compare equal."""
    found = set()

    def walk(g):
        for i in range(g.GetPointCount()):
            found.add((round(g.GetX(i), 7), round(g.GetY(i), 7)))
        for i in range(g.GetGeometryCount()):
            walk(g.GetGeometryRef(i))
    walk(geometry)
    return sorted(found)


def vertex_difference(a, b):
    va, vb = vertices(a), vertices(b)
    if len(va) != len(vb) or a.GetDimension() != b.GetDimension():
        return float("inf")
    return max((max(abs(p[0] - q[0]), abs(p[1] - q[1])) for p, q in zip(va, vb)), default=0)


def attributes(feature):
    values = {}
    for i in range(feature.GetFieldCount()):
        name = feature.GetFieldDefnRef(i).GetName()
        if name not in OF_RECORD and feature.IsFieldSetAndNotNull(i) and feature.GetFieldAsString(i) != "":
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
                pairs = dict(p.split("=", 1) for p in parts[3].split("\x1d") if p)
                classes[parts[0]].append((int(parts[1]), ogr.CreateGeometryFromWkb(bytes.fromhex(parts[2])),
                                          {k: v for k, v in pairs.items() if not k.endswith("_words")}))
    return classes, refused


def reference(layer):
    """(record number, geometry, attributes) of every feature; sets of soundings are taken apart."""
    found = []
    for feature in layer:
        geometry = feature.GetGeometryRef()
        if geometry is None:
            continue
        of_feature = attributes(feature)
        if geometry.GetGeometryName() != "MULTIPOINT":
            found.append((feature.GetField("RCID"), geometry.Clone(), of_feature))
            continue
        for i in range(geometry.GetGeometryCount()):
            point = geometry.GetGeometryRef(i).Clone()
            found.append((feature.GetField("RCID"), point, dict(of_feature, DEPTH=str(point.GetZ()))))
    return found


def compare(name, theirs, mine, area_tolerance, refusal):
    by_id = {feature[0]: feature for feature in mine}
    vertex, area, area_total, compared, examples = 0.0, 0.0, 0.0, 0, []
    extents = [[180, 180, -180, -180], [180, 180, -180, -180]]
    for place, (record, geometry, a) in enumerate(theirs):
        twin = (mine[place] if place < len(mine) else None) if name == "SOUNDG" else by_id.get(record)
        if twin is None:
            vertex = float("inf")
            continue
        vertex = max(vertex, vertex_difference(geometry, twin[1]))
        if geometry.GetDimension() == 2 and twin[1].GetDimension() == 2:
            area += abs(geometry.GetArea() - twin[1].GetArea())
            area_total += geometry.GetArea()
        for extent, g in zip(extents, (geometry, twin[1])):
            w, e, s, n = g.GetEnvelope()
            extent[:] = [min(extent[0], w), min(extent[1], s), max(extent[2], e), max(extent[3], n)]
        for key in sorted(set(a) | set(twin[2])):
            compared += 1
            if not same(a.get(key), twin[2].get(key)):
                examples.append(f"{key} {a.get(key)!r} {twin[2].get(key)!r}")
    extent = max(abs(p - q) for p, q in zip(*extents))
    share = area / area_total if area_total else area
    bad = (len(theirs) != len(mine) or vertex > TOLERANCE_DEG or extent > TOLERANCE_DEG or share > area_tolerance
           or bool(examples))
    print(f"{name:8}{len(theirs):10d}{len(mine):7d}{vertex:12.1e}{extent:12.1e}{share:12.1e}{compared:12d}{len(examples):9d}"
          + ("   DIFFERS " + (refusal or "; ".join(examples[:3])) if bad else ""))
    return bad


def main(chart, dump):
    ours, refused = read_dump(dump)
    print(f"{'class':8}{'reference':>10}{'ours':>7}{'vertex deg':>12}{'extent deg':>12}{'area share':>12}{'attributes':>12}{'differ':>9}")
    wrong = False
    source = ogr.Open(chart)
    for i in range(source.GetLayerCount()):
        layer = source.GetLayer(i)
        theirs = reference(layer)
        if theirs:
            wrong |= compare(layer.GetName(), theirs, ours[layer.GetName()], TOLERANCE_AREA, refused.get(layer.GetName()))
    for beside in sorted(glob.glob(chart[:-4] + "_*.geojson")):
        name = beside[len(chart) - 3:-len(".geojson")]
        print(os.path.basename(beside))
        opened = ogr.Open(beside)  # named, because a layer does not keep its source alive
        theirs = reference(opened.GetLayer(0))
        wrong |= compare(name, theirs, ours[name], TOLERANCE_AREA_ROUNDED, refused.get(name))
    return 1 if wrong else 0


def classes(chart):
    source = ogr.Open(chart)
    print(" ".join(source.GetLayer(i).GetName() for i in range(source.GetLayerCount()) if source.GetLayer(i).GetName() != "DSID"))
    return 0


if __name__ == "__main__":
    sys.exit(classes(sys.argv[2]) if sys.argv[1] == "--classes" else main(sys.argv[1], sys.argv[2]))
