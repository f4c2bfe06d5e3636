package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which files beside a layer belong to it. */
class LayerFilesTest {
    @TempDir Path folder;

    private List<Path> make(String names) throws IOException {
        List<Path> files = Stream.of(names.split(" ")).map(folder::resolve).toList();
        for (Path file : files) {
            Files.createFile(file);
        }
        return files;
    }

    private static String names(List<Path> files) {
        return String.join(" ", files.stream().map(file -> file.getFileName().toString()).toList());
    }

    @ParameterizedTest
    @CsvSource({
        "lanes.shp lanes.shx lanes.dbf lanes.cpg lanes.prj lanes.qix lane.prj, lanes.shp lanes.dbf lanes.cpg lanes.prj",
        "LANES.SHP LANES.DBF lanes.Prj, LANES.SHP LANES.DBF lanes.Prj",
        "chart.000 CHART.002 chart.001 chart.txt other.001 chart.0010, chart.000 chart.001 CHART.002",
        "chart.001 chart.000, chart.001",
        "reefs.csv reefs.csvt reefs.prj, reefs.csv",
        "a.geojson a.prj, a.geojson",
        "a.gpkg a.gpkg-wal, a.gpkg",
        "a.unknown a.prj, a.unknown",
    })
    void ofAVectorLayer(String there, String belonging) throws IOException {
        assertEquals(belonging, names(VectorLayers.files(make(there).get(0))));
    }

    @ParameterizedTest
    @CsvSource({
        "d.asc d.prj d.PRJ, d.asc d.prj",
        "d.asc d.PRJ e.prj, d.asc d.PRJ",
        "d.tif d.prj d.tfw d.wld d.tif.ovr d.tif.aux.xml, d.tif d.prj d.tfw d.wld",
        "d.TIFF d.tfw, d.TIFF d.tfw",
        "d.bag d.prj d.xml, d.bag",
        "d.nc d.prj, d.nc",
        "d.xyz d.prj, d.xyz",
    })
    void ofABathymetry(String there, String belonging) throws IOException {
        assertEquals(belonging, names(Bathymetries.files(Sources.plain(make(there).get(0)))));
    }

    /** Then nobody opens it. */
    @Test
    void aCrsThatThePlanStatesLeavesOutThatBesideAnAsciiGrid() throws IOException {
        assertEquals("d.asc", names(Bathymetries.files(Sources.withCrs(make("d.asc d.prj").get(0), "EPSG:32617"))));
    }

    @Test
    void aFolderOfSuchANameIsPassedOver() throws IOException {
        Files.createDirectory(folder.resolve("lanes.prj"));
        Files.createDirectory(folder.resolve("d.tfw"));
        assertEquals("lanes.shp", names(VectorLayers.files(make("lanes.shp").get(0))));
        assertEquals("d.tif", names(Bathymetries.files(Sources.plain(make("d.tif").get(0)))));
    }
}
