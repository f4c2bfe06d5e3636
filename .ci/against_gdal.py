"""How what Seacairn reads of a file is held against what GDAL reads of it; for the scripts beside this one.

Needs a built target/seacairn.jar, and GDAL's Python with numpy (Debian: python3-gdal).
"""
import json, os, re, subprocess, tempfile
import numpy as np
from osgeo import gdal, ogr, osr

gdal.UseExceptions()
ogr.UseExceptions()
osr.UseExceptions()
gdal.PushErrorHandler('CPLQuietErrorHandler')
gdal.SetConfigOption('GDAL_PAM_ENABLED', 'NO')  # no .aux.xml beside what is read
gdal.SetConfigOption('OSR_USE_NON_DEPRECATED', 'NO')  # EPSG:4267 stays what the file says

house = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
DEGREE, METRE = 1e-7, 1e-3


class Readers:
    """Our readers, in a Java program of src/test/bench that answers question by question."""

    def __init__(self, program):
        self.java = subprocess.Popen(['java', '-Xmx1g', '-cp', f'{house}/target/seacairn.jar', f'{house}/src/test/bench/{program}.java'],
                                     stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding='utf-8')

    def ask(self, *question):
        self.java.stdin.write('\t'.join(question) + '\n')
        self.java.stdin.flush()

    def line(self):
        line = self.java.stdout.readline()
        if not line:
            raise SystemExit('our reader ended in the midst of it; see above')
        return line.rstrip('\n')


def told(message):
    """A refusal on one line, without the label of its layer."""
    return re.sub(r'\s+', ' ', message.removeprefix('refused: ').replace(', layer "layer"', ''))


def system_difference(stated, wkt, x, y):
    """Where two CRSs put a place, each on its own datum, and whether their ellipsoids are the same; names may be written differently."""
    mine = osr.SpatialReference(wkt)
    there = []
    for system in (stated.Clone(), mine):
        system.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
        geographic = system.CloneGeogCS()
        geographic.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
        there.append(osr.CoordinateTransformation(system, geographic).TransformPoint(x, y)[:2] if system.IsProjected() else (x, y))
    if max(abs(np.array(there[0]) - there[1])) > 1e-9:
        return f'its CRS puts ({x}, {y}) at {there[1]}, GDAL at {there[0]}'
    if abs(stated.GetSemiMajor() - mine.GetSemiMajor()) > 1e-3 or abs(stated.GetInvFlattening() - mine.GetInvFlattening()) > 1e-6:
        return f'its ellipsoid is not that of GDAL, {stated.GetAttrValue("SPHEROID")}'
    return ''


# Grids


class Grids(Readers):
    def __init__(self):
        super().__init__('GridDump')

    def read(self, path, crs=''):
        """The refusal as text, or frame, CRS, told, values and uncertainties."""
        with tempfile.NamedTemporaryFile() as out:
            self.ask(path, out.name, crs)
            lines = []
            while (line := self.line()) != 'end':
                lines.append(line)
            if lines[0].startswith('refused'):
                return lines[0]
            cols, rows = int(lines[0]), int(lines[1])
            values = np.fromfile(out.name, '<f4').reshape(-1, rows, cols)
            return [float(n) for n in lines[2:6]], lines[6], lines[7], values[0], values[1] if len(values) > 1 else None


def band(dataset, number):
    """A band from the northern row on, NaN for no-data and what a mask hides; packed numbers unpacked in double precision."""
    found = dataset.GetRasterBand(number)
    raw = found.ReadAsArray()
    missing = found.GetNoDataValue()
    gone = ~np.isfinite(raw.astype('f8'))
    if missing is not None:
        with np.errstate(over='ignore'):
            gone |= (raw == missing) | (raw.astype('f4') == np.float32(missing))
    if found.GetMaskFlags() & gdal.GMF_PER_DATASET:
        gone |= found.GetMaskBand().ReadAsArray() == 0
    values = (raw.astype('f8') * (found.GetScale() or 1) + (found.GetOffset() or 0)).astype('f4')
    values[gone] = np.nan
    return values if dataset.GetGeoTransform()[5] < 0 else values[::-1]


def coarsest(path, rows):
    """What a BAG of variable resolution is folded to: the shallowest finer cell of each cell that has any, the largest uncertainty."""
    low = gdal.OpenEx(path, open_options=['MODE=LOW_RES_GRID'])
    depth, unsure = band(low, 1), band(low, 2)
    for name, _ in gdal.OpenEx(path, open_options=['MODE=LIST_SUPERGRIDS']).GetSubDatasets():
        row, col = (int(n) for n in name.split(':')[-2:])
        fine = gdal.Open(name)
        for into, number in ((depth, 1), (unsure, 2)):
            values = band(fine, number)
            values = values[np.isfinite(values) & (values != 1e6)]
            into[rows - 1 - row, col] = values.max() if values.size else np.nan
    return depth, unsure


def finer_difference(grids, path, cell_m):
    """A BAG of variable resolution read on a plan's cell: every cell that GDAL fills, without interpolation, must be equal."""
    with tempfile.TemporaryDirectory() as folder:
        os.symlink(os.path.abspath(path), f'{folder}/survey.bag')
        with open(f'{folder}/plan.yaml', 'w') as plan:
            plan.write(f'cell: {cell_m} m\nbathymetry: {{file: survey.bag, values: elevation, unit: m}}\nmodule: {{height: 1 m, landing-radius: 0 m}}\n'
                       'criteria: {depth: {weight: 1, curve: [0 m, 1 m, 2 m, 3 m]}}\nsites: {apart: 1 m}\n')
        ours = grids.read(f'{folder}/plan.yaml')
    if isinstance(ours, str):
        return f'on {cell_m} m refused: {ours}'
    (west, north, width, height), _, _, values, _ = ours
    rows, cols = values.shape
    theirs = band(gdal.OpenEx(path, open_options=[
        'MODE=RESAMPLED_GRID', f'RESX={width}', f'RESY={height}', f'MINX={west}', f'MAXX={west + cols * width}', f'MINY={north - rows * height}',
        f'MAXY={north}', 'VALUE_POPULATION=MAX', 'INTERPOLATION=NO']), 1)
    filled = np.isfinite(theirs)
    differ = filled & (values != theirs)
    return f'on {cell_m} m {differ.sum()} of {filled.sum()} cells differ' if differ.any() or not filled.any() else ''


def frame_difference(frame, dataset):
    west, width, _, north, _, height = dataset.GetGeoTransform()
    if height > 0:
        north, height = north + dataset.RasterYSize * height, -height
    turns = 360 * round((frame[0] - west) / 360) if abs(frame[0] - west) > 300 else 0
    expected = [west + turns, north, width, -height]
    return f'frame {frame}, GDAL {expected}' if max(abs(np.array(frame) - expected)) > 1e-9 * max(1, abs(north)) else ''


def crs_for(west, north):
    """What a plan could state of a file that states no CRS."""
    return 'EPSG:4326' if abs(west) <= 360 and abs(north) <= 90 else 'EPSG:32610'


def compare_grid(grids, path, crs=''):
    """Verdict (equal, equal* where the CRS had to be stated, refused or FAIL), how many cells, what we say, what GDAL says."""
    try:
        dataset = gdal.Open(path)
        theirs = f'{dataset.RasterXSize} x {dataset.RasterYSize}, {dataset.RasterCount} band{"s" * (dataset.RasterCount > 1)}'
    except RuntimeError as e:
        dataset, theirs = None, str(e)
    ours = grids.read(path, crs)
    if isinstance(ours, str):
        if dataset is not None and not crs and 'states no CRS' in ours:
            verdict, *rest = compare_grid(grids, path, crs_for(dataset.GetGeoTransform()[0], dataset.GetGeoTransform()[3]))
            return verdict.replace('equal', 'equal*'), *rest
        return 'refused', '', told(ours), theirs
    if dataset is None:
        return 'FAIL', '', 'is read', theirs
    frame, wkt, notes, values, unsure = ours
    wrong = []
    if 'variable resolution' in notes:
        expected, expected_unsure = coarsest(path, values.shape[0])
        # Cells whose edges no node lies on, for there the format gives them to the cell on the west or south, and GDAL to the other.
        wrong += [finer_difference(grids, path, cell_m) for cell_m in (2, 5)]
    else:
        expected = band(dataset, 1)
        expected_unsure = band(dataset, 2) if unsure is not None and dataset.RasterCount > 1 else None
    if expected_unsure is not None:
        # 0 is BAG's word for an unknown uncertainty.
        expected_unsure = np.where(expected_unsure > 0, expected_unsure, np.nan)
    cells = f'{values.shape[1]} x {values.shape[0]}'
    if values.shape != expected.shape:
        return 'FAIL', cells, notes, theirs
    wrong.append(frame_difference(frame, dataset))
    for what, a, b in (('value', values, expected), ('uncertainty', unsure, expected_unsure)):
        if a is not None and b is not None:
            differ = ~((a == b) | (np.isnan(a) & np.isnan(b)))
            if differ.any():
                wrong.append(f'{differ.sum()} cells differ in {what}, first {a[differ][0]!r} and {b[differ][0]!r}')
    if dataset.GetSpatialRef() is not None and not crs:
        wrong.append(system_difference(dataset.GetSpatialRef(), wkt, frame[0] if frame[0] <= 180 else frame[0] - 360, frame[1]))
    unit = dataset.GetRasterBand(1).GetUnitType()
    if dataset.GetDriver().ShortName == 'GTiff' and f'; unit {unit}' * bool(unit) not in notes:
        wrong.append(f'no unit {unit}')
    said = f'{int(np.isfinite(values).sum())} with a value'
    if np.isfinite(values).any():
        said += f', {np.nanmin(values):.6g} to {np.nanmax(values):.6g}'
    if unsure is not None and np.isfinite(unsure).any():
        said += f'; uncertainty {np.nanmin(unsure):.4g} to {np.nanmax(unsure):.4g}'
    wrong = [w for w in wrong if w]
    return ('FAIL' if wrong else 'equal'), cells, '; '.join(wrong + [said, notes]), theirs


# Layers of features


class Layers(Readers):
    def __init__(self):
        super().__init__('LayerDump')

    def read(self, path, table='', crs=''):
        self.ask(path, table, crs)
        return json.loads(self.line())


def plain(geometry):
    """Name and vertices in two dimensions, with every ring and part in one order."""
    flat = geometry.Clone()
    flat.FlattenTo2D()
    flat = flat.Normalize()
    parts = []

    def walk(g):
        if g.GetGeometryName() in ('POINT', 'LINESTRING', 'POLYGON'):
            lines = [g] if g.GetPointCount() else [g.GetGeometryRef(i) for i in range(g.GetGeometryCount())]
            parts.append((g.GetGeometryName(), [p[:2] for line in lines for p in line.GetPoints() or []]))
        else:
            for i in range(g.GetGeometryCount()):
                walk(g.GetGeometryRef(i))
    walk(flat)
    if flat.GetGeometryName() == 'GEOMETRYCOLLECTION':
        parts.sort()
    # Some of one part are as good as that part.
    kind = flat.GetGeometryName()[5:] if flat.GetGeometryName().startswith('MULTI') and len(parts) == 1 else flat.GetGeometryName()
    return kind, np.array([p for _, vertices in parts for p in vertices]).reshape(-1, 2)


def moment(value):
    found = re.fullmatch(r'(\d{4})[-/](\d\d)[-/](\d\d)(?:[T ](\d\d):(\d\d):(\d\d(?:\.\d+)?))?(Z|[+-]\d\d(?::?\d\d)?)?', str(value))
    return found and tuple(float(n or 0) for n in found.groups()[:6])


def field(feature, i):
    kind = feature.GetFieldDefnRef(i).GetType()
    if not feature.IsFieldSetAndNotNull(i) or kind == ogr.OFTBinary:
        return None
    if kind in (ogr.OFTDate, ogr.OFTDateTime):
        return moment(feature.GetFieldAsString(i))
    return feature.GetField(i)


def same_value(ours, theirs):
    if ours in (None, '') and theirs in (None, '') or ours == theirs:
        return True
    if ours is None or theirs is None:
        return False
    if isinstance(theirs, tuple):
        return moment(ours) == theirs
    if isinstance(ours, str) and ours[:1] in '[{':
        return json.loads(ours) == (json.loads(theirs) if isinstance(theirs, str) else theirs)
    try:
        return float(ours) == float(theirs)
    except (TypeError, ValueError):
        return False


def features_of(layer):
    """Geometry (None where there is none or it is empty), attributes, id of every feature."""
    key = layer.GetFIDColumn()
    found = []
    for feature in layer:
        geometry = feature.GetGeometryRef()
        attributes = {feature.GetFieldDefnRef(i).GetName(): field(feature, i) for i in range(feature.GetFieldCount())}
        if key:
            attributes[key] = feature.GetFID()
        found.append((geometry.Clone() if geometry is not None and not geometry.IsEmpty() else None, attributes, feature.GetFID()))
    return found


def compare_features(ours, theirs, geographic, only=None):
    """What differs between our features, as LayerDump tells them, and GDAL's; and what was compared. only names the attributes that count."""
    wrong = []
    with_geometry = [f for f in theirs if f[0] is not None]
    # In formats of places GDAL passes over what has none.
    if len(ours['features']) != len(with_geometry) or only is None and ours['without'] != len(theirs) - len(with_geometry):
        wrong.append(f"{len(ours['features'])} features and {ours['without']} without geometry, GDAL "
                     f'{len(with_geometry)} and {len(theirs) - len(with_geometry)}')
    farthest, vertices, attributes = 0.0, 0, 0
    sums = np.zeros((2, 2))
    boxes, notes = [], set()
    for mine, (geometry, values, fid) in zip(ours['features'], with_geometry):
        parsed = ogr.CreateGeometryFromWkb(bytes.fromhex(mine['wkb']))
        (kind, a), (their_kind, b) = plain(parsed), plain(geometry)
        vertices += len(a)
        if not geometry.IsValid() and parsed.IsValid() and a.shape == b.shape:
            # A shapefile does not say which ring is a hole of which.
            notes.add('where our reading is valid and that of GDAL is not, vertices are compared and not polygons')
            farthest = max(farthest, abs(np.sort(a, 0) - np.sort(b, 0)).max())
            continue
        if kind != their_kind or a.shape != b.shape:
            wrong.append(f"feature {mine['id']}: {kind} of {len(a)} vertices, GDAL {their_kind} of {len(b)}")
            continue
        farthest = max(farthest, abs(a - b).max())
        sums += [[g.GetArea() if g.GetDimension() == 2 else 0, g.Boundary().Length() if g.GetDimension() == 2 and g.GetGeometryName() != 'GEOMETRYCOLLECTION'
                  else g.Length()] for g in (parsed, geometry)]
        boxes.append(np.array(parsed.GetEnvelope()) - geometry.GetEnvelope())
        for name in sorted(set(values) | set(mine['attributes'])) if only is None else only:
            attributes += 1
            met, expected = mine['attributes'].get(name), values.get(name)
            # The member "id" of a GeoJSON feature is its number to GDAL.
            if not same_value(met, expected) and not (name == 'id' and 'id' not in values and str(met) == str(fid)):
                wrong.append(f"feature {mine['id']}, {name}: {met!r}, GDAL {expected!r}")
    if farthest > (DEGREE if geographic else METRE):
        wrong.append(f'vertices are up to {farthest:.3g} off')
    if boxes and abs(np.array(boxes)).max() > (DEGREE if geographic else METRE):
        wrong.append('extents differ')
    if (abs(sums[0] - sums[1]) > 1e-9 * abs(sums[1]).max()).any():
        wrong.append(f'areas and lengths {sums[0]}, GDAL {sums[1]}')
    return wrong, '; '.join([f'{vertices} vertices, {attributes} attributes' + (f', up to {farthest:.1e} off' if farthest else ''), *notes])


def compare_layer(layers, path, table='', reference=None, only=None, crs=''):
    """Verdict (equal, equal* where the CRS had to be stated, alone where GDAL cannot, refused or FAIL), how many features, what we
    say, what GDAL says; reference gives GDAL's features where one layer is not all."""
    spatial = None
    try:
        if reference is None:
            source = gdal.OpenEx(path, gdal.OF_VECTOR)
            layer = source.GetLayerByName(table) if table else source.GetLayer(0)
            spatial = layer.GetSpatialRef()
            theirs = features_of(layer)
        else:
            theirs = reference(path)
        said = f'{sum(f[0] is not None for f in theirs)} features' + (f', {spatial.GetName()}' if spatial else '')
    except RuntimeError as e:
        theirs, said = None, str(e)
    ours = layers.read(path, table, crs)
    if 'refused' in ours:
        if not crs and re.search('state (its "crs"|crs in the plan)', ours['refused']):
            box = next((f[0].GetEnvelope() for f in theirs or [] if f[0] is not None), (0, 0, 0, 0))
            verdict, *rest = compare_layer(layers, path, table, reference, only, crs_for(box[0], box[3]))
            return verdict.replace('equal', 'equal*'), *rest
        return 'refused', '', told(ours['refused']), said
    number = str(len(ours['features'])) + (f" + {ours['without']} without geometry" if ours['without'] else '')
    if theirs is None:
        return 'alone', number, '; '.join(ours['notes']), said
    wrong, compared = compare_features(ours, theirs, 'GEOGCS' == ours['wkt'][:6], only)
    if spatial and not crs and ours['features']:
        box = ogr.CreateGeometryFromWkb(bytes.fromhex(ours['features'][0]['wkb'])).GetEnvelope()
        wrong += [w for w in [system_difference(spatial, ours['wkt'], box[0], box[2])] if w]
    return ('FAIL' if wrong else 'equal'), number, '; '.join(wrong[:4] + [compared] + ours['notes']), said


def names_of(path):
    """The layers that GDAL finds; a table without geometry is one."""
    source = gdal.OpenEx(path, gdal.OF_VECTOR)
    return [source.GetLayer(i).GetName() for i in range(source.GetLayerCount())]


def compare_rewritten(layers, path, table, driver, ending, scratch, options=(), reference=None, only=None):
    """The layer as GDAL writes it in another format, read by both."""
    written = os.path.join(scratch, f'rewritten.{ending}')
    for kind in (None, 'PROMOTE_TO_MULTI', 'GEOMETRY'):
        if os.path.exists(written):
            os.remove(written)
        try:
            gdal.VectorTranslate(written, path, format=driver, layers=[table], layerCreationOptions=list(options), geometryType=kind)
            return compare_layer(layers, written, reference=reference, only=only)
        except RuntimeError as e:
            refusal = str(e).split('\n')[0]
    return 'not made', '', '', refusal
