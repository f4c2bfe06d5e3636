package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

class VectorLayersTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"reefs.csv, CSV", "reefs.CSV, CSV", "reefs.txt, CSV", "a.b.GeoJSON, GeoJSON", "reefs.json, GeoJSON"})
    void picksTheReaderByTheEndOfTheName(String name, String format) throws IOException {
        Path file = Files.writeString(folder.resolve(name), format.equals("CSV") ? "lon,lat\n1,2\n" : "{\"type\":\"Point\",\"coordinates\":[1,2]}");
        VectorLayer layer = VectorLayers.read(Sources.plain(file));
        assertEquals(format, layer.format());
        assertEquals("trial", layer.label());
        assertEquals(file, layer.file());
    }

    @ParameterizedTest
    @CsvSource({"reefs.xls", "reefs.ods", "reefs.dbf", "csv", "reefs"})
    void listsTheFormatsForAnyOtherName(String name) throws IOException {
        Path file = Files.writeString(folder.resolve(name), "x");
        assertEquals(name + ", layer \"trial\" (line 12 of the plan): its name is of no format that can be read; give GeoPackage (.gpkg),"
                + " shapefile (.shp), GeoJSON (.geojson, .json), GPX (.gpx), KML (.kml, .kmz), CSV (.csv, .txt), FlatGeobuf (.fgb), S-57 chart (.000); of a workbook, save the sheet as CSV", Refusals.of(Sources.plain(file)));
    }

    @Test
    void refusesMissingFilesFoldersAndEmptyFiles() throws IOException {
        assertEquals("reefs.csv, layer \"trial\" (line 12 of the plan): there is no such file; check its name and folder",
                Refusals.of(Sources.plain(folder.resolve("reefs.csv"))));
        Path sub = Files.createDirectory(folder.resolve("sub.gpkg"));
        assertEquals("sub.gpkg, layer \"trial\" (line 12 of the plan): is a folder and not a file; name the file in it",
                Refusals.of(Sources.plain(sub)));
        Path empty = Files.createFile(folder.resolve("empty.shp"));
        assertEquals("empty.shp, layer \"trial\" (line 12 of the plan): is empty (0 bytes); export it again", Refusals.of(Sources.plain(empty)));
    }

    @Test
    void leavesOutThePlansLineWhereThereIsNone() {
        LayerFile source = new LayerFile("proposal", folder.resolve("sites.csv"), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), 0, Edges.GEODESIC);
        assertEquals("sites.csv, layer \"proposal\": there is no such file; check its name and folder", Refusals.of(source));
    }
}
