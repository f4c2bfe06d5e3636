package org.seacairn.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryTransformer;

/** Writes every generated file of {@code sample-layers/}. The plan, the module and the README are written by hand. */
public final class SampleCoast {
    /** Speed falls with depth and the flow veers a little. Common practice, no source. */
    private static final String CURRENT = """
            profile,depth_m,speed_kn,toward_deg
            strong day,0,3.8,12
            strong day,15,3.6,13
            strong day,40,2.9,15
            strong day,80,1.9,19
            strong day,130,1.1,26
            strong day,220,0.5,35
            easy day,0,1.7,8
            easy day,40,1.2,10
            easy day,90,0.8,14
            easy day,220,0.3,20
            """;

    private static final GeometryFactory DEGREES = new GeometryFactory();

    private SampleCoast() {}

    /** @param args the folder to write into; files of the same names are replaced */
    public static void main(String[] args) throws IOException, SQLException {
        if (args.length != 1) {
            throw new IllegalArgumentException("give one folder, for example sample-layers");
        }
        write(Path.of(args[0]));
    }

    static void write(Path folder) throws IOException, SQLException {
        Files.createDirectories(folder);
        GeoTiffFile.write(folder.resolve("bathymetry.tif"), new SampleSurvey().elevations(),
                SampleFrame.COLS, SampleFrame.ROWS, SampleFrame.WEST_M, SampleFrame.NORTH_M, SampleFrame.CELL_M,
                SampleFrame.EPSG, Integer.toString((int) SampleSurvey.NO_DATA));
        writeBottom(folder.resolve("bottom-types.gpkg"));
        ShapefileFiles.write(folder, "shipping-lanes", "LANE", SampleFeatures.lanes(), SampleFeatures.STATE_PLANE_WKT);
        Files.writeString(folder.resolve("cables.geojson"), SampleFeatures.cablesGeoJson());
        Files.writeString(folder.resolve("sonar-contacts.csv"), SampleFeatures.contactsCsv());
        Files.writeString(folder.resolve("reefs.csv"), SampleFeatures.reefsCsv(new SampleTerrain()));
        Files.writeString(folder.resolve("permit-areas.geojson"), SampleFeatures.permitAreasGeoJson());
        Files.writeString(folder.resolve("current.csv"), CURRENT);
    }

    /** Two tables, so that a plan has to say which of them it means. */
    private static void writeBottom(Path file) throws IOException, SQLException {
        List<GeoPackageFile.Row> kinds = SampleBottom.patches().stream()
                .map(patch -> new GeoPackageFile.Row(patch.kind(), inDegrees(patch.geometry())))
                .toList();
        List<GeoPackageFile.Row> lines = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            double x = 1_500 + 3_000 * i;
            lines.add(new GeoPackageFile.Row("line " + (i + 1), DEGREES.createLineString(new Coordinate[] {
                SampleFrame.longitudeLatitude(x, 400), SampleFrame.longitudeLatitude(x, 17_600)})));
        }
        Files.deleteIfExists(file);
        GeoPackageFile.write(file, List.of(
                new GeoPackageFile.Table("survey_lines", "LINESTRING", "line", lines),
                new GeoPackageFile.Table("bottom_types", "MULTIPOLYGON", "kind", kinds)));
    }

    private static MultiPolygon inDegrees(Geometry metres) {
        Geometry degrees = new GeometryTransformer() {
            @Override
            protected CoordinateSequence transformCoordinates(CoordinateSequence from, Geometry parent) {
                CoordinateSequence to = from.copy();
                for (int i = 0; i < to.size(); i++) {
                    Coordinate at = SampleFrame.longitudeLatitude(from.getX(i), from.getY(i));
                    to.setOrdinate(i, 0, at.x);
                    to.setOrdinate(i, 1, at.y);
                }
                return to;
            }
        }.transform(metres);
        List<Polygon> parts = new ArrayList<>();
        for (int i = 0; i < degrees.getNumGeometries(); i++) {
            parts.add((Polygon) degrees.getGeometryN(i));
        }
        return DEGREES.createMultiPolygon(parts.toArray(Polygon[]::new));
    }
}
