#!/usr/bin/env python3
"""The yardstick: what an analyst's GDAL and numpy script does with the benchmark scene.

reference.py SCENE OUT. Reads the bathymetry, makes slope, three rasterised proximity grids, the
rasterised bottom, scores every cell and writes score.tif and reasons.tif, tiled and deflated.
Distances are those of a rasterised copy on the map, so the answers differ a little from Seacairn's.
Needs Debian's python3-gdal and python3-numpy.
"""
import math
import os
import sys
import time

import numpy as np
from osgeo import gdal, ogr, osr

gdal.UseExceptions()
scene, out = sys.argv[1], sys.argv[2]
os.makedirs(out, exist_ok=True)
started = time.time()


def stage(name):
    print(f"  {name:<12} {time.time() - started:6.1f} s", flush=True)


source = gdal.Open(os.path.join(scene, "bathymetry.tif"))
cols, rows = source.RasterXSize, source.RasterYSize
transform, projection = source.GetGeoTransform(), source.GetProjection()
cell = transform[1]
depth = -source.GetRasterBand(1).ReadAsArray()
stage("read")

slopes = gdal.DEMProcessing("", source, "slope", format="MEM", alg="Horn")
slope = slopes.ReadAsArray()
slope[slope == -9999] = np.nan
stage("slope")

target = osr.SpatialReference(wkt=projection)
target.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)


def grid(kind):
    raster = gdal.GetDriverByName("MEM").Create("", cols, rows, 1, kind)
    raster.SetGeoTransform(transform)
    raster.SetProjection(projection)
    return raster


def on_grid(name, kinds=None):
    """Rasterised copy of a layer: 1, or the number of its class."""
    options = ["X_POSSIBLE_NAMES=longitude", "Y_POSSIBLE_NAMES=latitude"] if name.endswith(".csv") else []
    data = gdal.OpenEx(os.path.join(scene, name), gdal.OF_VECTOR, open_options=options)
    wgs84 = osr.SpatialReference()
    wgs84.ImportFromEPSG(4326)
    wgs84.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    shift = osr.CoordinateTransformation(wgs84, target)
    memory = ogr.GetDriverByName("Memory").CreateDataSource("")
    layer = memory.CreateLayer("x", target)
    layer.CreateField(ogr.FieldDefn("v", ogr.OFTInteger))
    for feature in data.GetLayer(0):
        geometry = feature.GetGeometryRef().Clone()
        geometry.Transform(shift)
        copy = ogr.Feature(layer.GetLayerDefn())
        copy.SetGeometry(geometry)
        copy.SetField("v", kinds[feature.GetField("kind")] if kinds else 1)
        layer.CreateFeature(copy)
    raster = grid(gdal.GDT_Byte)
    gdal.RasterizeLayer(raster, [1], layer, options=["ATTRIBUTE=v"])
    return raster


def proximity(name, farthest):
    raster, distance = on_grid(name), grid(gdal.GDT_Float32)
    gdal.ComputeProximity(raster.GetRasterBand(1), distance.GetRasterBand(1),
                          ["DISTUNITS=GEO", f"MAXDIST={farthest}", f"NODATA={farthest}"])
    return distance.ReadAsArray()


lanes = proximity("lanes.geojson", 1852)
cables = proximity("cables.geojson", 1000)
reefs = proximity("reefs.csv", 1500)
stage("proximity")
bottom = on_grid("bottom.geojson", {"sand": 1, "shell hash": 2, "mud": 3, "hardbottom": 4})
kind = bottom.ReadAsArray()
stage("bottom")


def curve(x, a, b, c, d):
    """Suitability: 0 up to a, 1 from b to c, 0 from d."""
    rise = np.float32(1) if a == b else (x - np.float32(a)) / np.float32(b - a)
    return np.clip(np.minimum(rise, (np.float32(d) - x) / np.float32(d - c)), 0, 1)


landing = np.float32(25)
with np.errstate(invalid="ignore"):
    allowance = (5 + np.float32(0.05) * depth) ** 2 + landing ** 2
    lane_required = 500 + np.sqrt(allowance + np.float32(400))
    cable_required = 500 + np.sqrt(allowance)
    reef_required = cable_required - 440
    reasons = np.zeros((rows, cols), np.uint16)
    reasons[np.isnan(depth)] |= 1
    reasons[np.isnan(slope) & ~np.isnan(depth)] |= 2
    tvu = np.sqrt(np.float32(0.25) + (np.float32(0.013) * depth) ** 2)
    reasons[(depth < 40) | (depth - tvu - 8 < 85 * 0.3048)] |= 8
    reasons[depth < 16] |= 16
    reasons[depth > 180] |= 32
    reasons[slope > 8] |= 64
    reasons[kind == 4] |= 256
    reasons[reefs < reef_required] |= 1024
    reasons[lanes < lane_required] |= 2048
    reasons[cables < cable_required] |= 4096
    blocked = reasons != 0
    reach = int(landing // cell)
    edged = np.pad(blocked, reach, constant_values=True)
    room = np.zeros_like(blocked)
    for dy in range(-reach, reach + 1):
        for dx in range(-reach, reach + 1):
            if math.hypot(dx, dy) * cell <= landing:
                room |= edged[reach + dy:reach + dy + rows, reach + dx:reach + dx + cols]
    reasons[room] |= 8192
    worth = np.array([0.2, 1.0, 0.8, 0.45, 0], np.float32)[kind]
    clearance = np.minimum(np.clip((lanes - lane_required) / (1852 - lane_required), 0, 1),
                           np.clip((cables - cable_required) / (1000 - cable_required), 0, 1))
    score = (3 * curve(depth, 40, 80, 120, 180) + 2 * curve(slope, 0, 0, 2, 8) + 3 * worth
             + 2 * clearance + 3 * curve(reefs, 60, 150, 500, 1500)) / np.float32(13)
score[reasons != 0] = np.nan
stage("score")


def write(name, array, kind_of, nodata=None):
    raster = gdal.GetDriverByName("GTiff").Create(
        os.path.join(out, name), cols, rows, 1, kind_of, ["TILED=YES", "COMPRESS=DEFLATE", "NUM_THREADS=ALL_CPUS"])
    raster.SetGeoTransform(transform)
    raster.SetProjection(projection)
    if nodata is not None:
        raster.GetRasterBand(1).SetNoDataValue(nodata)
    raster.GetRasterBand(1).WriteArray(array)
    raster.FlushCache()


write("score.tif", score, gdal.GDT_Float32, float("nan"))
write("reasons.tif", reasons, gdal.GDT_UInt16)
stage("written")
